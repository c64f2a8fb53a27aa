//! The program in rough use: streams that are closed, sums without end,
//! and characters that a terminal would obey.

use std::{io::Write as _, process::Command};

use fits_checks::{fits, isolate, nobody, program};
use serde_json::Value;

/// Each term once: were each worked out twice, no such sum would ever end.
#[test]
fn a_sum_of_many_terms_with_units_is_answered() {
    // As many as fit in a line.
    let sum = format!("1in{}", "-1in+1in".repeat(500));
    let output = fits().args(["--json", &sum]).output().expect("it runs");
    let answer: Value = serde_json::from_slice(&output.stdout).expect("JSON");
    assert_eq!(answer["size_mm"], 25.4, "{}", answer["error"]);
    // A sum that goes to the right, in parentheses.
    let deep = format!("{}1mm{}", "1mm + (".repeat(30), ")".repeat(30));
    let output = fits().args(["--json", &deep]).output().expect("it runs");
    let answer: Value = serde_json::from_slice(&output.stdout).expect("JSON");
    assert!(
        answer["size_mm"] == 31.0 || answer["error"].is_object(),
        "neither added nor refused: {answer}"
    );
}

/// A closed stream is no reason to be killed: the status still says what came
/// of the query.
#[cfg(unix)]
#[test]
fn closed_streams_do_not_abort_it() {
    for closed in
        ["2>&-", ">&-", ">&- 2>&-", "<&- >&- 2>&-", "2>/dev/full", ">/dev/full 2>/dev/full"]
    {
        for arguments in [
            "'20 H7/g6'",
            "'20 q'",
            "--json '20 H7'",
            "--svg '20 H7'",
            "--nothing",
            "--help",
            "batch /dev/null",
            "",
        ] {
            let mut shell = Command::new("sh");
            isolate(&mut shell, &nobody());
            let script = format!("echo '20 q' | \"$0\" {arguments} {closed}");
            let output = shell.args(["-c", &script]).arg(program()).output().expect("it runs");
            let status = output.status;
            let code = status.code().unwrap_or(255);
            assert!(code <= 3, "{script}: {status}");
        }
    }
}

/// Thirty-two mebibytes without a line feed, then a query; the address space
/// is too small to hold them.
#[cfg(target_os = "linux")]
#[test]
fn a_line_without_end_is_refused_and_not_read_whole() {
    let feed = "head -c 33554432 /dev/zero | tr '\\0' 'x'; printf '\\n20 H7\\n'";
    for (arguments, is_json) in [("batch", true), ("", false)] {
        let mut shell = Command::new("sh");
        isolate(&mut shell, &nobody());
        let script = format!("({feed}) | (ulimit -v 44000; exec \"$0\" {arguments})");
        let output = shell.args(["-c", &script]).arg(program()).output().expect("it runs");
        let text = String::from_utf8_lossy(&output.stdout);
        let said = String::from_utf8_lossy(&output.stderr);
        assert_eq!(output.status.code(), Some(2), "{said}");
        assert!(text.len() < 20_000, "{}", text.len());
        if is_json {
            let lines: Vec<Value> = text
                .lines()
                .map(|line| serde_json::from_str(line).expect("an object a line"))
                .collect();
            assert_eq!(lines.len(), 2);
            let message = lines[0]["error"]["message"].as_str().unwrap_or_default();
            assert!(message.contains("longer than 1048576 bytes"), "{message}");
            assert_eq!((&lines[1]["line"], &lines[1]["class"]), (&2.into(), &"H7".into()));
        } else {
            assert!(text.contains("longer than 1048576 bytes"), "{text}");
            assert!(text.contains("20.000 to 20.021 mm"), "{text}");
        }
    }
    // A line of the most that is read is answered as any other too long one.
    for (length, wanted) in [(1 << 20, "is 1048576 bytes long"), ((1 << 20) + 1, "is longer than")]
    {
        let mut file = tempfile::NamedTempFile::new().expect("a file");
        file.write_all(&vec![b'x'; length]).expect("written");
        let output = fits().arg("batch").arg(file.path()).output().expect("it runs");
        let answer: Value = serde_json::from_slice(&output.stdout).expect("JSON");
        let message = answer["error"]["message"].as_str().unwrap_or_default();
        assert!(message.contains(wanted), "{message}");
    }
}

/// What a terminal must not be sent, written out apart from the program's own
/// list: the control characters of ISO/IEC 6429 but the line feed, and the
/// explicit directional characters of Unicode Standard Annex #9, table 4.
fn is_harmless(text: &str) -> bool {
    text.chars().all(|c| {
        let code = u32::from(c);
        let is_control = (code < 0x20 && c != '\n') || (0x7f..0xa0).contains(&code);
        let is_turning = [0x61c, 0x200e, 0x200f].contains(&code)
            || (0x202a..=0x202e).contains(&code)
            || (0x2066..=0x2069).contains(&code);
        !is_control && !is_turning
    })
}

#[test]
fn what_a_terminal_would_obey_is_never_sent_raw() {
    let folder = tempfile::tempdir().expect("a folder");
    let crib = folder.path().join("crib.toml");
    let odd = "\\u001b[2J\\u202e\\u0085\\u007f";
    let table = format!("[[material]]\nname = \"brass {odd}\"\nyield = \"100 MPa\"\n");
    let drill = format!("[[drill]]\nsize = \"10 mm {odd}\"\n");
    std::fs::write(&crib, format!("{table}{drill}\"k{odd}\" = 1\n")).expect("written");
    let log = folder.path().join("\u{1b}[31m\u{202e}").join("log");
    std::fs::write(folder.path().join("\u{1b}[31m\u{202e}"), "").expect("written");
    for query in [
        "crib",
        "\u{202e}20 H7/g6",
        "20 H7/\u{2067}\u{1b}]0;x\u{7}",
        "20 \u{9b}2J",
        "material \u{7f}\u{200f}",
        "crib remove \u{2066}",
        "log open \u{202e}",
        "20\tH7/q",
    ] {
        for form in [&[][..], &["--json"], &["--svg"]] {
            let mut command = fits();
            command.arg("--crib").arg(&crib).args(form).arg(query);
            let output = command.output().expect("it runs");
            for stream in [&output.stdout, &output.stderr] {
                let text = std::str::from_utf8(stream).expect("text");
                assert!(is_harmless(text), "{form:?} {query:?}: {text:?}");
            }
            if form == ["--json"] {
                // What was typed is all there for a program.
                let answer: Value = serde_json::from_slice(&output.stdout).expect("JSON");
                assert_eq!(answer["query"], query);
            }
        }
    }
    // Nor by the names of files and options.
    for arguments in [["--log", log.to_str().expect("text"), "20 H7"], ["--\u{1b}[2J", "", ""]] {
        let output = fits().args(arguments).output().expect("it runs");
        let said = std::str::from_utf8(&output.stderr).expect("text");
        assert!(!said.is_empty() && is_harmless(said), "{arguments:?}: {said:?}");
    }
}
