//! Pass logs on disk against what can go wrong: a kill at any moment, a full
//! disk, a torn or damaged line, a second program, a folder that is none.

use std::{
    fs,
    io::{BufRead as _, BufReader, Write as _},
    path::Path,
    process::{Child, ChildStdin, ChildStdout, Command, Stdio},
};

use fits_checks::{fits, isolate, nobody, program};
use serde_json::Value;

const OPENING: &str = "bore 20 H7 from 19.6";

/// A run of `fits batch` that is talked to line by line.
struct Run {
    child: Child,
    stdin: ChildStdin,
    stdout: BufReader<ChildStdout>,
}

impl Run {
    fn of(mut command: Command) -> Self {
        let mut child = command
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .expect("it runs");
        let stdin = child.stdin.take().expect("a pipe");
        let stdout = BufReader::new(child.stdout.take().expect("a pipe"));
        Self { child, stdin, stdout }
    }

    fn with_log(log: &Path) -> Self {
        let mut command = fits();
        command.arg("--log").arg(log).arg("batch");
        Self::of(command)
    }

    fn ask(&mut self, line: &str) -> Value {
        writeln!(self.stdin, "{line}").expect("it is read");
        let mut answer = String::new();
        self.stdout.read_line(&mut answer).expect("an answer");
        serde_json::from_str(&answer).unwrap_or_else(|error| panic!("{line}: {error}: {answer}"))
    }

    #[track_caller]
    fn takes(&mut self, line: &str) -> Value {
        let answer = self.ask(line);
        assert!(answer["error"].is_null(), "{line}: {answer}");
        answer
    }

    /// What it said on standard error, and how it ended.
    fn end(self) -> (String, Option<i32>) {
        let Self { child, stdin, stdout } = self;
        drop(stdin);
        drop(stdout);
        let output = child.wait_with_output().expect("it ends");
        (String::from_utf8_lossy(&output.stderr).into_owned(), output.status.code())
    }
}

/// The readings that a log file holds, line by line; every line is whole.
fn readings(log: &Path) -> Vec<String> {
    let text = fs::read_to_string(log).expect("the log");
    assert!(text.is_empty() || text.ends_with('\n'), "a torn line: {text}");
    text.lines()
        .map(|line| serde_json::from_str::<Value>(line).unwrap_or_else(|e| panic!("{e}: {line}")))
        .filter_map(|line| line["size"].as_str().map(str::to_owned))
        .collect()
}

#[test]
fn what_was_answered_is_on_disk_whenever_it_is_killed() {
    let folder = tempfile::tempdir().expect("a folder");
    let rounds: u32 =
        std::env::var("FITS_KILLS").map_or(50, |kills| kills.parse().expect("a count"));
    let mut log = folder.path().join("none");
    let mut answered: Vec<String> = Vec::new();
    for round in 0..rounds {
        // A new log now and then, so that a long loop stays quick.
        if round % 25 == 0 {
            log = folder.path().join(format!("log{round}.jsonl"));
            answered.clear();
            let mut first = Run::with_log(&log);
            first.takes(OPENING);
            first.takes("cut 0.2 = 19.79");
            first.end();
        }
        let mut run = Run::with_log(&log);
        let now = run.takes("log");
        assert_eq!(
            now["entries"].as_array().map(Vec::len),
            Some(readings(&log).len() + 1),
            "round {round}"
        );
        for number in 0..=(round % 5) {
            let read = format!("19.79{}", (round + number) % 3);
            run.takes(&format!("read {read}"));
            answered.push(format!("{read} mm").replace("19.790", "19.79"));
        }
        // The file is replaced by a copy, or moved away: nothing more is
        // answered as kept, and what was answered stays where it went.
        let away = folder.path().join("away");
        let is_away = cfg!(unix) && round % 5 == 3;
        if is_away {
            fs::rename(&log, &away).expect("moved");
            if round % 2 == 0 {
                fs::copy(&away, &log).expect("replaced");
            }
            let refused = run.ask("read 19.796");
            assert!(!refused["error"].is_null(), "round {round}: {refused}");
        }
        // One more is under way when it is killed: it may or may not be there.
        let _ = writeln!(run.stdin, "read 19.795");
        if round % 3 == 0 {
            std::thread::sleep(std::time::Duration::from_micros(u64::from(round % 40) * 50));
        }
        run.child.kill().expect("killed");
        run.child.wait().expect("it ends");
        if is_away {
            if let Ok(there) = fs::read_to_string(&log) {
                assert!(!there.contains("19.796"), "round {round}: written elsewhere");
            }
            fs::rename(&away, &log).expect("put back");
        }
        let mut again = Run::with_log(&log);
        again.takes("log");
        again.end();
        let kept = readings(&log);
        let mut wanted = answered.iter();
        let mut next = wanted.next();
        for reading in &kept {
            if Some(reading) == next {
                next = wanted.next();
            } else {
                assert_eq!(reading, "19.795 mm", "round {round}: {kept:?}");
            }
        }
        assert_eq!(next, None, "round {round}: an answered reading is lost: {kept:?}");
    }
}

#[test]
fn a_torn_last_line_is_set_aside_wherever_it_was_torn() {
    let folder = tempfile::tempdir().expect("a folder");
    let log = folder.path().join("log.jsonl");
    let mut run = Run::with_log(&log);
    run.takes(OPENING);
    run.takes("cut 0.2 = 19.79");
    run.takes("read 19.792");
    run.end();
    let whole = fs::read(&log).expect("the log");
    let last =
        whole[..whole.len() - 1].iter().rposition(|byte| *byte == b'\n').expect("a line") + 1;
    for length in last..=whole.len() {
        fs::write(&log, &whole[..length]).expect("torn");
        let aside = folder.path().join("log.jsonl.torn");
        let _ = fs::remove_file(&aside);
        let mut run = Run::with_log(&log);
        let entries = run.takes("log")["entries"].as_array().expect("entries").len();
        let (said, _) = run.end();
        // Whole but for its line feed, it is kept.
        let is_whole = length + 1 >= whole.len();
        assert_eq!(entries, if is_whole { 2 } else { 1 }, "{length}");
        let is_torn = length > last && !is_whole;
        assert_eq!(aside.exists(), is_torn, "{length}: {said}");
        if is_torn {
            assert!(said.contains("line 3 was torn: it is set aside in"), "{said}");
            let kept = fs::read(&aside).expect("the side file");
            assert_eq!(kept[..kept.len() - 1], whole[last..length], "{length}");
        }
        readings(&log);
    }
}

/// A log called as what is set aside would be is not written to as such.
#[test]
fn a_log_that_is_called_torn_is_cut_off_all_the_same() {
    let folder = tempfile::tempdir().expect("a folder");
    let log = folder.path().join("z.torn");
    let mut run = Run::with_log(&log);
    run.takes(OPENING);
    run.takes("cut 0.2 = 19.79");
    run.end();
    let whole = fs::read(&log).expect("the log");
    fs::write(&log, &whole[..whole.len() - 5]).expect("torn");
    let mut run = Run::with_log(&log);
    assert_eq!(run.takes("log")["entries"].as_array().map(Vec::len), Some(0));
    run.takes("cut 0.2 = 19.79");
    run.end();
    assert_eq!(fs::read(&log).expect("the log"), whole);
    assert!(folder.path().join("z.torn.torn").exists());
}

/// What is written to a file that has lost its name is lost with it.
#[cfg(unix)]
#[test]
fn a_log_replaced_or_removed_under_an_open_program_takes_no_entry() {
    for is_replaced in [true, false] {
        let folder = tempfile::tempdir().expect("a folder");
        let log = folder.path().join("log.jsonl");
        let mut run = Run::with_log(&log);
        run.takes(OPENING);
        run.takes("cut 0.2 = 19.79");
        let copy = folder.path().join("copy");
        fs::copy(&log, &copy).expect("copied");
        let wanted = if is_replaced {
            fs::rename(&copy, &log).expect("replaced");
            "was replaced by another file since it was opened"
        } else {
            fs::remove_file(&log).expect("removed");
            "was moved or removed since it was opened"
        };
        let refused = run.ask("read 19.792");
        let message = refused["error"]["message"].as_str().unwrap_or_default().to_owned();
        assert!(
            message.starts_with("nothing is entered:") && message.contains(wanted),
            "{message}"
        );
        // It does not show the entry as kept either.
        let now = run.takes("log");
        assert_eq!(now["entries"].as_array().map(Vec::len), Some(1), "{now}");
        assert_eq!(run.end().1, Some(3));
        if is_replaced {
            assert!(readings(&log).is_empty());
        }
        assert_eq!(log.exists(), is_replaced);
    }
}

#[test]
fn a_damaged_line_in_the_middle_is_said_and_left() {
    let folder = tempfile::tempdir().expect("a folder");
    let log = folder.path().join("log.jsonl");
    let mut run = Run::with_log(&log);
    run.takes(OPENING);
    run.takes("cut 0.2 = 19.79");
    run.takes("cut 0.1 = 19.886");
    run.end();
    let text = fs::read_to_string(&log).expect("the log");
    let mut lines: Vec<&str> = text.lines().collect();
    lines[1] = "{\"entry\":\"cut\",\"dial\":";
    fs::write(&log, lines.join("\n") + "\n").expect("damaged");
    let mut run = Run::with_log(&log);
    let now = run.takes("log");
    assert_eq!(now["size_mm"], 19.886, "it begins anew from the reading after the gap: {now}");
    run.takes("read 19.887");
    let (said, _) = run.end();
    assert!(
        said.contains("damaged: line 2 cannot be read and is left in the file; 1 other entries"),
        "{said}"
    );
    let after = fs::read_to_string(&log).expect("the log");
    assert!(after.starts_with(&(lines.join("\n") + "\n")), "{after}");
    assert_eq!(after.lines().count(), 4);
    // Where nothing was read since, the size is not known.
    fs::write(&log, lines[..2].join("\n") + "\n").expect("damaged");
    let mut run = Run::with_log(&log);
    let now = run.takes("log");
    assert_eq!((&now["size_mm"], &now["next"]["action"]), (&Value::Null, &"read again".into()));
    run.end();
}

#[test]
fn what_is_no_log_is_refused_and_unknown_keys_are_said() {
    let folder = tempfile::tempdir().expect("a folder");
    let log = folder.path().join("log.jsonl");
    for text in ["shopping list\n", "{\"entry\":\"cut\",\"dial\":\"1 mm\"}\n"] {
        fs::write(&log, text).expect("written");
        let (said, status) = Run::with_log(&log).end();
        assert_eq!(status, Some(3), "{said}");
        assert!(said.contains("it does not begin as a pass log does"), "{said}");
        assert_eq!(fs::read_to_string(&log).expect("the file"), text);
    }
    let (said, status) = Run::with_log(folder.path()).end();
    assert_eq!(status, Some(3), "{said}");
    let (said, status) = Run::with_log(&log.join("below a file")).end();
    assert_eq!(status, Some(3), "{said}");

    fs::remove_file(&log).expect("removed");
    let mut run = Run::with_log(&log);
    run.takes(OPENING);
    run.end();
    let mut text = fs::read_to_string(&log).expect("the log");
    text += "{\"entry\":\"cut\",\"dial\":\"0.2 mm\",\"raed\":\"19.79 mm\"}\n";
    fs::write(&log, &text).expect("written");
    let mut run = Run::with_log(&log);
    run.takes("read 19.79");
    let (said, _) = run.end();
    assert!(said.contains("line 2: `raed` is not understood; it is kept"), "{said}");
    assert!(fs::read_to_string(&log).expect("the log").starts_with(&text));
}

#[test]
fn a_second_program_only_reads() {
    let folder = tempfile::tempdir().expect("a folder");
    let log = folder.path().join("log.jsonl");
    let mut first = Run::with_log(&log);
    first.takes(OPENING);
    first.takes("cut 0.2 = 19.79");
    let mut second = Run::with_log(&log);
    let seen = second.takes("log");
    assert_eq!(seen["entries"].as_array().map(Vec::len), Some(1));
    let refused = second.ask("read 19.792");
    let message = refused["error"]["message"].as_str().unwrap_or_default().to_owned();
    assert!(
        message.starts_with("nothing is entered") && message.contains("only read"),
        "{message}"
    );
    let (said, status) = second.end();
    assert!(said.contains("is open in another fits: this one only reads it"), "{said}");
    assert_eq!(status, Some(3));
    first.takes("read 19.792");
    first.end();
    assert_eq!(readings(&log), ["19.792 mm"]);
}

/// A file size limit stands for a full disk: a write ends in the middle.
#[cfg(target_os = "linux")]
#[test]
fn a_full_disk_is_said_at_once_and_nothing_is_pretended() {
    let folder = tempfile::tempdir().expect("a folder");
    let log = folder.path().join("log.jsonl");
    let mut shell = Command::new("sh");
    shell
        .args(["-c", "trap '' XFSZ; ulimit -f 2; exec \"$0\" --log \"$1\" batch"])
        .arg(program())
        .arg(&log);
    isolate(&mut shell, &nobody());
    let mut run = Run::of(shell);
    run.takes(OPENING);
    run.takes("cut 0.2 = 19.79");
    let mut taken = 0;
    let refused = loop {
        let answer = run.ask("read 19.792");
        if answer["error"].is_object() {
            break answer;
        }
        taken += 1;
        assert!(taken < 200, "the limit was never met");
    };
    let message = refused["error"]["message"].as_str().unwrap_or_default();
    assert!(message.starts_with("nothing is entered:"), "{message}");
    // What was half written is off again, and the log says what is kept.
    assert_eq!(readings(&log).len(), taken);
    let now = run.takes("log");
    assert_eq!(now["entries"].as_array().map(Vec::len), Some(taken + 1));
    let (_, status) = run.end();
    assert_eq!(status, Some(3));
}

#[test]
fn a_log_may_be_kept_one_question_at_a_time() {
    let folder = tempfile::tempdir().expect("a folder");
    let log = folder.path().join("log.jsonl");
    let ask = |query: &str| {
        let output =
            fits().arg("--json").arg("--log").arg(&log).arg(query).output().expect("it runs");
        serde_json::from_slice::<Value>(&output.stdout).expect("JSON")
    };
    assert_eq!(ask(OPENING)["log"]["name"], "log");
    assert_eq!(ask("cut 0.2 = 19.79")["answer"], "pass_log");
    assert_eq!(ask("cut 0.1 = 19.886")["entries"].as_array().map(Vec::len), Some(2));
    assert_eq!(ask("undo")["next"]["action"], "cut");
    assert_eq!(ask("scrap")["state"], "scrap");
    // The next part goes into the same file.
    assert!(ask("turn 20 g6 from 20.5")["log"].is_object());
    assert_eq!(ask("log")["kind"], "shaft");
    // Without a file none is opened.
    let output = fits().args(["--json", OPENING]).output().expect("it runs");
    let plain: Value = serde_json::from_slice(&output.stdout).expect("JSON");
    assert_eq!(plain["log"], Value::Null);
}

/// The answer stands, and the status says that nothing is kept.
#[test]
fn a_log_that_was_asked_for_and_is_not_kept_ends_in_status_3() {
    let folder = tempfile::tempdir().expect("a folder");
    let log = folder.path().join("log.jsonl");
    let mut first = Run::with_log(&log);
    first.takes(OPENING);
    let ask = |log: &Path, query: &str| {
        let output =
            fits().arg("--json").arg("--log").arg(log).arg(query).output().expect("it runs");
        let answer = serde_json::from_slice::<Value>(&output.stdout).expect("JSON");
        (answer, output.status.code())
    };
    // Another program writes it.
    let (answer, status) = ask(&log, "turn 20 g6 from 20.5");
    assert_eq!((status, &answer["log"]), (Some(3), &Value::Null), "{answer}");
    let notes = answer["notes"].to_string();
    assert!(notes.contains("no log is opened, nothing is kept"), "{notes}");
    let mut second = Run::with_log(&log);
    second.takes("turn 20 g6 from 20.5");
    assert_eq!(second.end().1, Some(3));
    first.end();
    // Nothing reads so large a bore: the same.
    let free = folder.path().join("free.jsonl");
    let (answer, status) = ask(&free, "bore 2000 H7 from 1999");
    assert_eq!((status, &answer["log"]), (Some(3), &Value::Null), "{answer}");
    // What is kept, and what is not a job, ends well.
    assert_eq!(ask(&free, OPENING).1, Some(0));
    assert_eq!(ask(&free, "20 H7").1, Some(0));
    // Where none was asked for, none is missed.
    let plain = fits().arg("bore 2000 H7 from 1999").output().expect("it runs");
    assert_eq!(plain.status.code(), Some(0));
}
