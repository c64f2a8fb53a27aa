//! What each of some three thousand queries is answered, byte for byte: as text
//! and as JSON, with bare numbers in millimetres and in inches. A change of
//! structure changes nothing here; a change of an answer is seen in the diff.
//!
//! The queries are those of the README, the help, the checks and the phrases. A
//! line is asked in a session of its own; ` ; ` parts entries that follow one
//! another, and the last is shown. With `FITS_REGENERATE` set the answers are
//! written anew: read the difference.

use std::{collections::BTreeSet, fmt::Write as _, thread};

use fits_checks::{hold_generated, project_file};
use fits_repl::{
    query::Units,
    render::{Colour, json, text::Text},
    session::Session,
};
use serde_json::Value;

/// The answer of the last entry, as JSON and as text.
fn answered(entries: &str, units: Units) -> String {
    let mut session = Session::new();
    if units == Units::Inches {
        session.evaluate("units in").expect("a setting");
    }
    let (before, last) = entries.rsplit_once(" ; ").unwrap_or(("", entries));
    for entry in before.split(" ; ").filter(|entry| !entry.is_empty()) {
        // What is refused before the last entry shows in the answer to the last.
        let _ = session.evaluate(entry);
    }
    let answer = session.evaluate(last);
    let mut out = Vec::new();
    json::object_with(&mut out, None, last, session.beside(&[]), &answer);
    let mut out = String::from_utf8(out).expect("text");
    out.push('\n');
    let text = Text { settings: session.shown(), colour: Colour::Off };
    match &answer {
        Ok(answer) => {
            out += &(text.read_as(session.read_as(), session.slips()) + &text.answer(answer));
        }
        Err(problem) => out += &text.problem(last, problem),
    }
    out
}

/// A query's answers under both units; the second only where it differs.
fn both(query: &str) -> String {
    let millimetres = answered(query, Units::Millimetres);
    let inches = answered(query, Units::Inches);
    let mut out = format!("=== {query}\n{millimetres}");
    if inches != millimetres {
        let _ = write!(out, "--- units in\n{inches}");
    }
    out
}

#[track_caller]
fn is_as_frozen(list: &str) {
    let queries = std::fs::read_to_string(project_file(&format!("tests/frozen/{list}.txt")));
    let queries = queries.expect("a list of queries");
    let queries: Vec<&str> = queries.lines().collect();
    let (first, second) = queries.split_at(queries.len() / 2);
    let all = |queries: &[&str]| queries.iter().map(|query| both(query)).collect::<String>();
    let answers = thread::scope(|scope| {
        let second = scope.spawn(|| all(second));
        all(first) + &second.join().expect("answers")
    });
    hold_generated(&format!("tests/frozen/{list}.answers"), &answers);
}

/// Each field's path, a list's entries taken together.
fn fields(at: &str, value: &Value, found: &mut BTreeSet<String>) {
    match value {
        Value::Object(object) => {
            for (key, value) in object {
                let at = format!("{at}.{key}");
                fields(&at, value, found);
                found.insert(at);
            }
        }
        Value::Array(list) => list.iter().for_each(|value| fields(at, value, found)),
        _ => {}
    }
}

/// Other programs rely on the fields: none comes or goes unseen.
#[test]
fn the_fields_of_every_answer() {
    let mut found = BTreeSet::new();
    for list in ["readme", "help", "joints", "threads", "shop", "phrases"] {
        let answers =
            std::fs::read_to_string(project_file(&format!("tests/frozen/{list}.answers")));
        for line in answers.expect("answers").lines().filter(|line| line.starts_with("{\"query\""))
        {
            let answer: Value = serde_json::from_str(line).expect("JSON");
            fields(answer["answer"].as_str().unwrap_or("error"), &answer, &mut found);
        }
    }
    let found: String = found.into_iter().flat_map(|field| [field, "\n".into()]).collect();
    hold_generated("tests/frozen/fields.txt", &found);
}

#[test]
fn the_readme() {
    is_as_frozen("readme");
}

#[test]
fn the_help() {
    is_as_frozen("help");
}

#[test]
fn joints() {
    is_as_frozen("joints");
}

#[test]
fn threads() {
    is_as_frozen("threads");
}

#[test]
fn the_shop() {
    is_as_frozen("shop");
}

#[test]
fn the_phrases() {
    is_as_frozen("phrases");
}
