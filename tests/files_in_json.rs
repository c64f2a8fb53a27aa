//! What is wrong with the files of a session is in the JSON as well as on
//! standard error, and a log that is asked for and not kept is a failure.

use std::{fs, io::Write as _, path::Path, process::Stdio};

use fits_checks::fits;
use serde_json::Value;

fn once(option: &str, file: &Path, query: &str) -> (Value, String, Option<i32>) {
    let output = fits().arg("--json").arg(option).arg(file).arg(query).output().expect("it runs");
    let object =
        serde_json::from_slice(&output.stdout).unwrap_or_else(|error| panic!("{query}: {error}"));
    (object, String::from_utf8_lossy(&output.stderr).into_owned(), output.status.code())
}

fn notes(object: &Value) -> String {
    let list = object["file_notes"].as_array().cloned().unwrap_or_default();
    list.iter().map(|note| note.as_str().expect("text")).collect::<Vec<_>>().join("\n")
}

#[test]
fn a_damaged_crib_is_in_the_object() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("crib.toml");
    fs::write(&file, "[[reamer]]\nsize = \"20 mm\"\n\n[[drill]\n").expect("written");
    for query in ["ream 20 H7", "20 H99"] {
        let (object, said, _) = once("--crib", &file, query);
        assert!(notes(&object).contains("line 4 cannot be read"), "{object}");
        assert!(said.contains("line 4 cannot be read"), "{said}");
        assert_eq!(object["query"], query);
    }
    fs::write(&file, "[[reamer]]\nsize = \"20 mm\"\ncuts = \"20.01 mm\"\n").expect("written");
    let (object, said, status) = once("--crib", &file, "ream 20 H7");
    assert_eq!((object.get("file_notes"), said.as_str(), status), (None, "", Some(0)));
}

#[test]
fn a_damaged_log_is_in_the_first_object() {
    let folder = tempfile::tempdir().expect("a folder");
    let log = folder.path().join("log.jsonl");
    let batch = |lines: &str| {
        let mut child = fits()
            .arg("--log")
            .arg(&log)
            .arg("batch")
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .expect("it runs");
        child.stdin.take().expect("a pipe").write_all(lines.as_bytes()).expect("it is read");
        let output = child.wait_with_output().expect("it ends");
        let text = String::from_utf8(output.stdout).expect("text");
        text.lines().map(|line| serde_json::from_str(line).expect("an object")).collect::<Vec<_>>()
    };
    let new = batch("bore 20 H7 from 19.6\ncut 0.2 = 19.79\ncut 0.1 = 19.886\n");
    assert!(new.iter().all(|object: &Value| object.get("file_notes").is_none()), "{new:?}");
    let text = fs::read_to_string(&log).expect("the log");
    let mut lines: Vec<&str> = text.lines().collect();
    lines[1] = "{\"entry\":\"cut\",\"dial\":";
    fs::write(&log, lines.join("\n") + "\n{\"entry\":").expect("damaged");
    let found = batch("log\n20 H7\n");
    let said = notes(&found[0]);
    assert!(said.contains("line 2 cannot be read"), "{said}");
    assert!(said.contains("line 4 was torn: it is set aside in"), "{said}");
    assert_eq!(found[1].get("file_notes"), None);
    let (object, ..) = once("--log", &log, "log");
    assert!(notes(&object).contains("line 2 cannot be read"), "{object}");
}

/// The same work is asked about; other work is planned, and its log, which was
/// asked for, is not kept.
#[test]
fn a_plan_beside_the_log_of_another_says_so_with_its_status() {
    let folder = tempfile::tempdir().expect("a folder");
    let log = folder.path().join("log.jsonl");
    for query in ["bore 20 H7 from 19.6", "cut 0.2 = 19.79"] {
        assert_eq!(once("--log", &log, query).2, Some(0), "{query}");
    }
    let (object, _, status) = once("--log", &log, "bore 20 H7 from 19.6");
    assert_eq!(status, Some(2), "{object}");
    assert!(notes(&object).contains("is open: 20 mm H7, 1 entry"), "{object}");
    let (object, _, status) = once("--log", &log, "bore 22 H7 from 19.6");
    let noted = object["notes"].to_string();
    assert!(noted.contains("no log is opened: the pass log log goes on"), "{object}");
    assert_eq!(status, Some(3));
    let kept = fs::read_to_string(&log).expect("the log");
    assert_eq!(kept.lines().count(), 2, "{kept}");
}
