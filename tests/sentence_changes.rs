//! Two neighbouring words exchanged, one word left out: what is then read
//! otherwise stands in `tests/phrases/changes.txt`, each line looked at.
//!
//! A changed answer is no fault by itself: `shaft .749 hole .750` without
//! `shaft` asks less. What the ledger holds back is a change that nobody saw.

use std::fmt::Write as _;

use fits_checks::project_file;
use fits_repl::{render::json, session::Session};
use serde_json::Value;

/// The last answer without its query, and how it was read.
fn ask(units: &str, text: &str) -> Option<(Value, String)> {
    let mut session = Session::new();
    if units != "unset" {
        session.evaluate(&format!("units {units}")).expect("units");
    }
    let mut last = None;
    for line in text.split(" ; ") {
        let line = line.trim();
        let answer = session.evaluate(line);
        last = answer.is_ok().then(|| {
            let mut out = Vec::new();
            json::object(&mut out, None, "", &answer);
            let value = serde_json::from_slice(&out).expect("one object");
            (value, session.read_as().unwrap_or(line).to_owned())
        });
    }
    last
}

fn with_words(words: &[&str], order: impl Iterator<Item = usize>) -> String {
    order.map(|at| words[at]).collect::<Vec<_>>().join(" ")
}

#[test]
fn each_changed_reading_was_looked_at() {
    let mut found = String::new();
    let mut tried = 0;
    for name in ["seen", "american"] {
        let path = project_file(&format!("tests/phrases/{name}.csv"));
        let mut rows = csv::ReaderBuilder::new().flexible(true).from_path(path).expect(name);
        for row in rows.records() {
            let row = row.expect(name);
            let (phrase, units) = (&row[0], &row[1]);
            if phrase.contains(" ; ") {
                continue;
            }
            let Some((answer, read_as)) = ask(units, phrase) else { continue };
            let words: Vec<&str> = phrase.split_whitespace().collect();
            let swapped = (1..words.len()).map(|at| {
                with_words(
                    &words,
                    (0..words.len()).map(|place| match place {
                        _ if place == at - 1 => at,
                        _ if place == at => at - 1,
                        _ => place,
                    }),
                )
            });
            for other in swapped {
                tried += 1;
                let Some((changed, changed_as)) = ask(units, &other) else { continue };
                if changed != answer {
                    writeln!(found, "{phrase} [{units}]\n  {read_as}\n  {other}\n  {changed_as}")
                        .expect("text");
                }
            }
        }
    }
    assert!(tried > 1500, "only {tried} tried");
    fits_checks::hold_generated("tests/phrases/changes.txt", &found);
}
