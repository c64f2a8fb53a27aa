//! The face of `fits-core` to callers: every function that a person would call
//! is shown in an example, and every value that comes back can be written by
//! serde.
//!
//! A function that a person would call is any public one but a plain getter,
//! which takes `self` alone and cannot fail. It is shown where its own text
//! holds a code block, or where one of the same file or of the front page calls
//! it: rustdoc runs them all.

use std::{fs, path::Path};

use fits_checks::project_file;

/// Of a hundred functions that a person would call, so many are shown at least.
const SHOWN: usize = 97;

/// What holds no answer: it is asked, or goes on from call to call.
const NO_ANSWERS: [&str; 10] = [
    "Adviser",
    "Compound",
    "Number",
    "Rehearsal",
    "Simulated",
    "Stack",
    "TapHole",
    "Warm",
    "WireThread",
    "Worked",
];

/// Every file of the library but the generated tables, without its own tests.
fn files() -> Vec<(String, String)> {
    fn walk(folder: &Path, found: &mut Vec<(String, String)>) {
        for entry in fs::read_dir(folder).expect("a folder") {
            let path = entry.expect("an entry").path();
            let name = path.display().to_string();
            if path.is_dir() {
                walk(&path, found);
            } else if path.extension().is_some_and(|it| it == "rs") && !name.ends_with("table.rs") {
                let text = fs::read_to_string(&path).expect("a text");
                let end = text.find("#[cfg(test)]\nmod tests").unwrap_or(text.len());
                found.push((name, text[..end].to_owned()));
            }
        }
    }
    let mut found = Vec::new();
    walk(&project_file("fits-core/src"), &mut found);
    found.sort();
    found
}

/// The lines of code in a file's documentation.
fn examples(text: &str) -> String {
    let mut inside = false;
    let mut code = String::new();
    for line in text.lines() {
        let line = line.trim_start();
        let Some(doc) = line.strip_prefix("///").or_else(|| line.strip_prefix("//!")) else {
            continue;
        };
        if doc.trim_start().starts_with("```") {
            inside = !inside;
        } else if inside {
            code.push_str(doc);
            code.push('\n');
        }
    }
    code
}

/// One public function: its name, whether it is a plain getter, and whether
/// its own text holds an example.
struct Function {
    name: String,
    is_getter: bool,
    has_example: bool,
}

fn functions(text: &str) -> Vec<Function> {
    let (mut found, mut docs) = (Vec::new(), String::new());
    let lines: Vec<&str> = text.lines().map(str::trim_start).collect();
    for (at, line) in lines.iter().enumerate() {
        if line.starts_with("///") {
            docs.push_str(line);
            continue;
        }
        if line.starts_with("#[") {
            continue;
        }
        let opened = ["pub fn ", "pub const fn "].iter().find_map(|opens| line.strip_prefix(opens));
        if let Some(rest) = opened {
            let name: String =
                rest.chars().take_while(|c| c.is_ascii_alphanumeric() || *c == '_').collect();
            let signature: String = lines[at..]
                .iter()
                .scan(false, |done, line| {
                    let before = *done;
                    *done |= line.contains('{');
                    (!before).then_some(*line)
                })
                .collect();
            let (arguments, result) = signature.split_once("->").unwrap_or((&signature, ""));
            let arguments = arguments.split_once('(').map_or("", |(_, after)| after);
            let takes: Vec<&str> =
                arguments.split([',', ')']).map(str::trim).filter(|it| !it.is_empty()).collect();
            let of_self = matches!(takes.as_slice(), [only, ..] if only.ends_with("self"));
            let alone = takes.len() == 1 || takes.get(1).is_some_and(|it| it.starts_with('{'));
            found.push(Function {
                is_getter: of_self && alone && !result.contains("Result<"),
                has_example: docs.contains("```"),
                name,
            });
        }
        docs.clear();
    }
    found
}

#[test]
fn what_a_person_would_call_is_shown() {
    let files = files();
    let front = files
        .iter()
        .find(|(name, _)| name.ends_with("src/lib.rs"))
        .map(|(_, text)| examples(text))
        .expect("the front page");
    let (mut shown, mut all, mut missing) = (0, 0, Vec::new());
    for (file, text) in &files {
        let code = examples(text);
        for function in functions(text).into_iter().filter(|function| !function.is_getter) {
            all += 1;
            let called = [".", "::", " ", "("].iter().any(|before| {
                let call = format!("{before}{}(", function.name);
                code.contains(&call) || *before != " " && front.contains(&call)
            });
            if function.has_example || called {
                shown += 1;
            } else {
                missing.push(format!("{file}: {}", function.name));
            }
        }
    }
    // So many that a walk which finds none, or half, fails.
    assert!(all > 250, "{all} functions found");
    assert!(shown * 100 >= SHOWN * all, "{shown} of {all} are shown; not these:\n{missing:#?}");
}

/// The front page answers each question with an example.
#[test]
fn the_front_page_shows_each_question() {
    let page = fs::read_to_string(project_file("fits-core/src/lib.rs")).expect("the front page");
    let rows: Vec<&str> = page.lines().filter(|line| line.starts_with("//! | ")).skip(2).collect();
    assert!(rows.len() >= 18, "{} rows", rows.len());
    for row in rows {
        let anchor = row.rsplit_once("](#").map_or("", |(_, end)| end).trim_end_matches(") |");
        let heading = page
            .lines()
            .position(|line| {
                line.strip_prefix("//! ## ")
                    .is_some_and(|title| title.to_lowercase().replace(' ', "-") == anchor)
            })
            .unwrap_or_else(|| panic!("no heading for {row}"));
        assert_eq!(page.lines().nth(heading + 1), Some("//! ```"), "{row}");
    }
}

/// Types that come back are written by serde: derived, or in `written.rs`.
#[test]
fn every_value_is_written() {
    let files = files();
    let written = fs::read_to_string(project_file("fits-core/src/written.rs")).expect("written.rs");
    let (mut all, mut missing) = (0, Vec::new());
    for (file, text) in &files {
        let lines: Vec<&str> = text.lines().collect();
        for (at, line) in lines.iter().enumerate() {
            let opened = ["pub struct ", "pub enum "].iter().find_map(|it| line.strip_prefix(it));
            let Some(rest) = opened else { continue };
            let name: String = rest.chars().take_while(char::is_ascii_alphanumeric).collect();
            let mut above = lines[..at].iter().rev().take_while(|line| {
                line.starts_with("#[") || line.starts_with("    ") || line.starts_with(')')
            });
            let derived = above.any(|line| line.contains("Serialize"));
            let by_hand = text.contains(&format!("Serialize for {name} "))
                || written.contains(&format!(" {name} =>"))
                || written.contains(&format!(" {name} {{"));
            let is_asked = NO_ANSWERS.contains(&name.as_str());
            all += 1;
            if !derived && !by_hand && !is_asked {
                missing.push(format!("{file}: {name}"));
            }
        }
    }
    assert!(all > 150, "{all} types found");
    assert!(missing.is_empty(), "not written: {missing:#?}");
}

#[test]
fn an_error_prints_its_sentence() {
    let error = "20 H7".parse::<fits_core::Length>().unwrap_err();
    assert_eq!(format!("{error:?}"), "the size has no unit (write `20mm` or `3/4in`)");
    assert_eq!(serde_json::to_string(&error).expect("it writes"), "\"the size has no unit\"");
}
