//! The face of `fits-core` to callers: every function that a person would call
//! is shown in an example, and every value that comes back can be written by
//! serde.
//!
//! A function that a person would call is any public one: `unreachable_pub` sees
//! to it that every `pub` is within reach. It is shown where its own text holds an
//! example that rustdoc runs; of what takes `self` alone it is enough that an
//! example of its own type calls it.

use std::{collections::BTreeMap, fs, path::Path};

use fits_checks::project_file;

/// What holds no answer: it goes on from call to call.
const NO_ANSWERS: [&str; 5] = ["Adviser", "Compound", "Rehearsal", "Warm", "Worked"];

/// Names that several standards have, each for its own: they are written with the
/// module's name, and the front page says so.
const WITH_THEIR_MODULE: [(&str, &str); 3] = [
    ("Class", "each standard calls its own a class: `iso286::Class`, `thread::Class`"),
    ("Family", "of fits in B4.1, of bought-in parts, of materials"),
    ("Series", "of drills and of threads, as their tables have it"),
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

/// What documentation says of one item, and the examples in it that run.
#[derive(Default)]
struct Said {
    /// Is there a block of code that rustdoc runs?
    has_example: bool,
    code: String,
}

fn said(docs: &[&str]) -> Said {
    let (mut said, mut inside, mut runs) = (Said::default(), false, false);
    for line in docs {
        let line = line.trim_start_matches("///").trim();
        if let Some(kind) = line.strip_prefix("```") {
            inside = !inside;
            runs = inside && ["", "rust", "should_panic"].contains(&kind);
            said.has_example |= runs;
        } else if runs {
            said.code.push_str(line);
            said.code.push('\n');
        }
    }
    said
}

/// One public function or method, and the type that it is of.
struct Function {
    name: String,
    owner: Option<String>,
    /// It takes `self` alone.
    is_getter: bool,
    said: Said,
}

fn word(text: &str) -> String {
    text.chars().take_while(|c| c.is_ascii_alphanumeric() || *c == '_').collect()
}

/// The public functions of a file and its public types with what is said of them.
fn functions_and_types(text: &str) -> (Vec<Function>, Vec<(String, Said)>) {
    let (mut functions, mut types) = (Vec::new(), Vec::new());
    let (mut docs, mut owner) = (Vec::new(), None);
    let lines: Vec<&str> = text.lines().collect();
    for (at, whole) in lines.iter().enumerate() {
        let line = whole.trim_start();
        if line.starts_with("///") {
            docs.push(line);
            continue;
        }
        // Attributes stand between the documentation and its item.
        if line.starts_with("#[") || line.starts_with("clippy::") || line.starts_with("reason") {
            continue;
        }
        if line.starts_with(")]") {
            continue;
        }
        if let Some(rest) = whole.strip_prefix("impl") {
            let rest = rest.strip_prefix("<'a>").unwrap_or(rest).trim_start();
            owner = Some(word(rest));
        } else if *whole == "}" {
            owner = None;
        }
        if let Some(rest) = ["pub struct ", "pub enum "].iter().find_map(|it| line.strip_prefix(it))
        {
            types.push((word(rest), said(&docs)));
        }
        if let Some(rest) = ["pub fn ", "pub const fn "].iter().find_map(|it| line.strip_prefix(it))
        {
            let signature = lines[at..].join(" ");
            let (_, arguments) = signature.split_once('(').expect("arguments");
            let arguments = arguments.split_once(')').map_or("", |(inside, _)| inside).trim();
            functions.push(Function {
                name: word(rest),
                owner: owner.clone(),
                is_getter: arguments.ends_with("self") && !arguments.contains(','),
                said: said(&docs),
            });
        }
        docs.clear();
    }
    (functions, types)
}

/// How much of two paths is the same, from the front.
fn shared(one: &str, other: &str) -> usize {
    one.chars().zip(other.chars()).take_while(|(a, b)| a == b).count()
}

#[test]
fn what_a_person_would_call_is_shown() {
    let read: Vec<_> =
        files().into_iter().map(|(file, text)| (file, functions_and_types(&text))).collect();
    // The type of that name that stands nearest: names are used twice.
    let is_called = |file: &str, function: &Function| {
        let named = function.owner.as_deref().expect("a getter is of a type");
        let types =
            read.iter().flat_map(|(file, (_, types))| types.iter().map(move |it| (file, it)));
        let (_, (_, said)) = types
            .filter(|(_, (name, _))| name == named)
            .max_by_key(|(other, _)| shared(file, other))
            .unwrap_or_else(|| panic!("{file}: no type {named}"));
        said.code.contains(&format!(".{}()", function.name))
    };
    let (mut all, mut missing) = (0, Vec::new());
    for (file, (functions, _)) in &read {
        for function in functions {
            all += 1;
            let shown =
                function.said.has_example || function.is_getter && is_called(file, function);
            if !shown {
                let owner = function.owner.as_deref().unwrap_or("");
                missing.push(format!("{file}: {owner}::{}", function.name));
            }
        }
    }
    // So many that a walk which finds none, or half, fails.
    assert!(all > 800, "{all} functions found");
    assert!(missing.is_empty(), "{} of {all} are not shown:\n{missing:#?}", missing.len());
}

/// A name is one type's, whatever a caller brings in beside it.
#[test]
fn a_name_says_one_thing() {
    let files = files();
    let mut places: BTreeMap<String, Vec<&str>> = BTreeMap::new();
    for (file, text) in &files {
        for (name, _) in functions_and_types(text).1 {
            places.entry(name).or_default().push(file);
        }
    }
    assert!(places.len() > 150, "{} names found", places.len());
    for (name, places) in &places {
        let is_kept = WITH_THEIR_MODULE.iter().any(|(kept, _)| kept == name);
        assert_eq!(places.len() > 1, is_kept, "{name}: {places:#?}");
        let of_standards = places.iter().all(|place| place.contains("/standards/"));
        assert!(!is_kept || of_standards, "{name} is used outside the standards: {places:#?}");
    }
    let page = fs::read_to_string(project_file("fits-core/src/lib.rs")).expect("the front page");
    for (name, _) in WITH_THEIR_MODULE {
        assert!(page.contains(&format!("::{name}`")), "the front page does not say it of {name}");
    }
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

/// A pressure, a force and a torque can be had and given as plain numbers: what a
/// type has of them, typed, is read, set or taken in its block of `plain.rs`.
#[test]
fn what_is_typed_is_a_plain_number_too() {
    let plain = fs::read_to_string(project_file("fits-core/src/shop/plain.rs")).expect("plain.rs");
    let block = |owner: &str| {
        let (_, rest) = plain.split_once(&format!("impl {owner} {{"))?;
        rest.split_once("\n}").map(|(block, _)| block)
    };
    let (mut all, mut missing) = (0, Vec::new());
    for (file, text) in files().iter().filter(|(file, _)| !file.ends_with("plain.rs")) {
        let mut owner = String::new();
        for line in text.lines() {
            let opened = ["pub struct ", "impl "].iter().find_map(|it| line.strip_prefix(it));
            owner = opened.map_or(owner, word);
            let line = line.trim_start();
            let Some(rest) = line.strip_prefix("pub ") else { continue };
            let method = ["const fn ", "fn "].iter().find_map(|it| rest.strip_prefix(it));
            let typed = method.map_or(rest.split_once(": "), |method| method.split_once("-> "));
            let Some((name, typed)) = typed else { continue };
            if !["Pressure", "Force", "Torque"].iter().any(|it| typed.contains(it)) {
                continue;
            }
            let name = word(name);
            all += 1;
            let named = |it: char| it.is_ascii_alphanumeric() || it == '_';
            let is_plain = block(&owner).is_some_and(|block| {
                block.split(&format!("self.{name}")).skip(1).any(|rest| !rest.starts_with(named))
                    || block.contains(&format!("({name}: f64"))
            });
            if !is_plain {
                missing.push(format!("{file}: {owner}::{name}"));
            }
        }
    }
    assert!(all > 15, "{all} typed figures found");
    assert!(missing.is_empty(), "typed alone: {missing:#?}");
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
