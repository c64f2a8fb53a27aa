//! The program: one-shot, batch, exit statuses, streams.

use std::{
    io::{BufRead as _, BufReader, Read as _, Write as _},
    process::{Child, Output, Stdio},
};

use fits_checks::{example, program};
use serde_json::Value;

fn fits(arguments: &[&str]) -> Output {
    fits_checks::fits().args(arguments).stdin(Stdio::null()).output().expect("it runs")
}

fn open_batch() -> Child {
    fits_checks::fits()
        .arg("batch")
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .expect("it runs")
}

fn batch(input: &[u8]) -> (Vec<Value>, i32) {
    let mut child = open_batch();
    let mut stdin = child.stdin.take().expect("a pipe");
    let input = input.to_vec();
    let writer = std::thread::spawn(move || stdin.write_all(&input));
    let output = child.wait_with_output().expect("it ends");
    writer.join().expect("it writes").expect("it is read");
    let text = String::from_utf8(output.stdout).expect("text");
    (
        text.lines()
            .map(|line| {
                serde_json::from_str(line).unwrap_or_else(|error| panic!("{error}: {line}"))
            })
            .collect(),
        output.status.code().unwrap_or(-1),
    )
}

#[track_caller]
fn says(arguments: &[&str], status: i32, out: &str, err: &str) {
    let output = fits(arguments);
    let (stdout, stderr) =
        (String::from_utf8_lossy(&output.stdout), String::from_utf8_lossy(&output.stderr));
    assert_eq!(output.status.code(), Some(status), "{arguments:?}: {stdout}{stderr}");
    assert!(stdout.contains(out), "{arguments:?}: no {out:?} in {stdout}");
    assert!(stderr.contains(err), "{arguments:?}: no {err:?} in {stderr}");
    assert_eq!(stdout.is_empty(), out.is_empty(), "{arguments:?}: {stdout}");
    assert_eq!(stderr.is_empty(), err.is_empty(), "{arguments:?}: {stderr}");
}

#[test]
fn a_query_is_answered_once_quoted_or_not() {
    let quoted = fits(&["20 H7/g6"]);
    let bare = fits(&["20", "H7/g6"]);
    assert_eq!(quoted.stdout, bare.stdout);
    assert!(String::from_utf8_lossy(&quoted.stdout).starts_with("CUT     hole    20.010 mm"));
    assert!(!quoted.stdout.contains(&0x1b), "colour outside a terminal");
}

#[test]
fn exit_statuses() {
    says(&["20", "H7/g6"], 0, "clearance fit", "");
    says(&["20", "H7", "=", "20.013"], 0, "GOOD", "");
    says(&["20", "H7", "=", "20.03"], 1, "OVER", "");
    says(&["20", "H7", "=", "19.9"], 1, "CUT MORE", "");
    says(&["20 H7/g6 = 20.013/19.985"], 0, "inside", "");
    says(&["20 H7/g6 = 20.03/19.985"], 1, "OUTSIDE", "");
    says(&["20", "H99"], 2, "", "there is no tolerance grade IT99");
    says(&["-20", "H7"], 2, "", "less than nothing");
    says(&["--json", "-20 H7"], 2, "\"at\":[0,3]", "");
    says(&["--nonsense"], 2, "", "invalid option '--nonsense'");
    says(&["--json"], 2, "", "a query is missing");
    says(&["batch", "no such file"], 3, "", "no such file");
    says(&["batch", "a", "b"], 2, "", "one file");
    says(&["--version"], 0, concat!("fits ", env!("CARGO_PKG_VERSION"), "\n"), "");
    says(&["--help"], 0, "usage: fits", "");
    says(&["help", "ream"], 0, "DIN 1420", "");
    says(&["why", "20", "H7"], 0, "IT7 = 21 um", "");
}

#[test]
fn batch_answers_each_line_in_place() {
    let mut input = b"20 H7/g6\n20 H\n\nunits in\n0.75 H7\r\n20\0 H7\n".to_vec();
    input.extend_from_slice(b"20 \xff H7\n");
    input.extend_from_slice("20 H7 ".repeat(20_000).as_bytes());
    input.extend_from_slice(b"\nwhy\n0.75 H7 = 0.7503");
    let (answers, status) = batch(&input);
    let kinds: Vec<&str> =
        answers.iter().map(|answer| answer["answer"].as_str().unwrap_or("error")).collect();
    assert_eq!(
        kinds,
        [
            "fit", "error", "error", "settings", "feature", "error", "error", "error", "why",
            "reading"
        ]
    );
    for (number, answer) in (1..).zip(&answers) {
        assert_eq!(answer["line"], number);
        if answer["answer"].is_null() {
            assert!(
                answer["error"]["message"].is_string()
                    && answer["error"]["at"].is_array()
                    && answer["error"]["hint"].is_string()
            );
        }
    }
    assert_eq!(answers[4]["nominal_mm"], 19.05);
    assert_eq!(answers[6]["error"]["message"], "the line is not UTF-8 text");
    assert_eq!(answers[6]["error"]["at"], serde_json::json!([3, 6]));
    assert_eq!(status, 2);
    assert_eq!(batch(b"20 H7\n20 g6\n").1, 0);
    assert_eq!(batch(b"20 H7\n20 H7 = 21\n").1, 1);
    assert_eq!(batch(b"").1, 0);
}

#[test]
fn batch_answers_before_the_next_line_comes() {
    let mut child = open_batch();
    let mut stdin = child.stdin.take().expect("a pipe");
    let mut stdout = BufReader::new(child.stdout.take().expect("a pipe"));
    for (number, query) in ["20 H7 = 19.9", "20 H7 = 20.002", "dial radius"].iter().enumerate() {
        writeln!(stdin, "{query}").expect("it is read");
        let mut line = String::new();
        stdout.read_line(&mut line).expect("an answer");
        let answer: Value = serde_json::from_str(&line).expect("JSON");
        assert_eq!(answer["line"], number + 1);
        assert_eq!(answer["query"], *query);
    }
    drop(stdin);
    assert!(child.wait().expect("it ends").code() == Some(1));
}

#[test]
fn batch_reads_a_file() {
    let mut file = tempfile::NamedTempFile::new().expect("a file");
    writeln!(file, "30 H7/f7\n12 H8/f7").expect("written");
    let output = fits(&["batch", file.path().to_str().expect("a name")]);
    assert_eq!(String::from_utf8_lossy(&output.stdout).lines().count(), 2);
    assert!(output.status.success());
}

#[test]
fn a_closed_pipe_ends_it_quietly() {
    let mut child = fits_checks::fits()
        .arg("batch")
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("it runs");
    let mut stdin = child.stdin.take().expect("a pipe");
    drop(child.stdout.take());
    let _ = stdin.write_all("20 H7/g6\n".repeat(10_000).as_bytes());
    drop(stdin);
    let mut said = String::new();
    child.stderr.take().expect("a pipe").read_to_string(&mut said).expect("text");
    assert_eq!(said, "");
    assert_eq!(child.wait().expect("it ends").code(), Some(0));
}

#[test]
fn without_a_terminal_the_prompt_reads_plain_lines() {
    let mut child = fits_checks::fits()
        .env("TERM", "dumb")
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .expect("it runs");
    child
        .stdin
        .take()
        .expect("a pipe")
        .write_all(b"units in\n\n0.75 H7 = 0.7503\nwhat\n")
        .expect("it is read");
    let output = child.wait_with_output().expect("it ends");
    let text = String::from_utf8_lossy(&output.stdout);
    assert!(
        text.starts_with("units in, dial diameter\nGOOD: stop   hole H7 reads 0.7503 in"),
        "{text}"
    );
    assert!(text.contains("`what` is not understood here\n  what\n  ^^^^\n"), "{text}");
    assert_eq!(output.status.code(), Some(2));
}

#[test]
fn the_examples_do_what_they_say() {
    let list = example("part_list", &[]);
    assert_eq!(list.lines().count(), 5, "{list}");
    assert!(list.contains(
        "crank journal: hole 20 mm to 20.021 mm, shaft 19.98 mm to 19.993 mm, clearance fit"
    ));
    let talk = example("talk_to_batch", &[program()]);
    assert_eq!(
        talk.lines().collect::<Vec<_>>(),
        [
            "aim for 25.0105 mm",
            "24.610: cut more, 0.4005 mm to go",
            "24.815: cut more, 0.1955 mm to go",
            "25.004: good, 0.0065 mm to go",
        ]
    );
}
