//! Makes `known.csv` from the lists of phrases of the tests, and holds it to them.

use std::{collections::BTreeSet, fmt::Write, path::Path};

use super::slot::{MAY_BE_WORDS, Parted, Slot, parted};
use crate::sentence::{line::Line, plain_marks, spelled, token::System};

/// A phrase, or a plain query, taken apart.
fn line_parted(text: &str, system: System) -> Parted {
    let line = Line::new(text);
    let (view, unknown) = line.gist();
    parted(&line, &view, &unknown, system)
}

/// A phrase's line of the file; none where its query has what the phrase has not.
fn known(phrase: &str, units: &str, plain: &str) -> Option<String> {
    let system = match units {
        "in" => System::Inches,
        _ => System::Millimetres,
    };
    if phrase.contains(" ; ") || plain.contains(" ; ") || plain.contains(['{', '\n']) {
        return None;
    }
    let phrase = plain_marks(phrase);
    let phrase = spelled::figures(&phrase);
    let Parted { slots, words } = line_parted(&phrase, system);
    let query = line_parted(plain, system);
    let mut used = vec![false; slots.len()];
    let mut template = String::new();
    let mut end = 0;
    for slot in &query.slots {
        let same = |other: &Slot| {
            other.kind == slot.kind
                && match (other.mm, slot.mm) {
                    (Some(a), Some(b)) if slot.kind == "size" => (a - b).abs() < 1e-6,
                    _ => other.plain.eq_ignore_ascii_case(&slot.plain),
                }
        };
        let mut alike = (0..slots.len()).filter(|at| same(&slots[*at]));
        let first = alike.clone().next();
        // What is used twice is in the query twice.
        let found = alike.find(|at| !used[*at]).or(first);
        let Some(at) = found else {
            let is_word = MAY_BE_WORDS.contains(&slot.kind) || slot.kind == "times";
            let typed = &plain[slot.at.clone()];
            if is_word || typed.bytes().all(|byte| byte.is_ascii_digit()) {
                continue;
            }
            return None;
        };
        used[at] = true;
        template.push_str(&plain[end..slot.at.start]);
        write!(template, "{{{at}}}").ok()?;
        end = slot.at.end;
    }
    template.push_str(&plain[end..]);
    let is_whole =
        slots.iter().zip(&used).all(|(slot, used)| *used || MAY_BE_WORDS.contains(&slot.kind));
    if !is_whole || slots.is_empty() {
        return None;
    }
    let slot = |slot: &Slot| {
        let mm = slot.mm.map_or_else(String::new, |mm| format!("{mm:.4}"));
        format!("{}|{mm}|{}|{}", slot.kind, slot.beside[0], slot.beside[1])
    };
    let slots: Vec<String> = slots.iter().map(slot).collect();
    Some(format!("{},{},{template}", slots.join(" "), words.join(" ")))
}

#[test]
fn known_phrases_are_those_of_the_lists() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let Ok(lists) = std::fs::read_dir(root.join("tests/phrases")) else { return };
    // Lists that are to be measured as if they were new.
    let left_out = std::env::var("FITS_LEFT_OUT").unwrap_or_default();
    let mut all = BTreeSet::new();
    for list in lists {
        let path = list.expect("an entry").path();
        let name = path.file_name().expect("a name").to_string_lossy().into_owned();
        if path.extension().is_none_or(|end| end != "csv")
            || left_out.split(' ').any(|out| out == name)
        {
            continue;
        }
        let mut reader = csv::ReaderBuilder::new().flexible(true).from_path(&path).expect("a list");
        if reader.headers().expect("a header").get(2) != Some("canonical") {
            continue;
        }
        for row in reader.records() {
            let row = row.expect("a row");
            let (phrase, units, plain) = (&row[0], &row[1], &row[2]);
            if matches!(plain, "ASK" | "NONE") {
                continue;
            }
            all.extend(known(phrase, units, plain));
        }
    }
    let wanted: String = all.into_iter().map(|line| line + "\n").collect();
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/sentence/alike/known.csv");
    if std::env::var_os("FITS_REGENERATE").is_some() {
        std::fs::write(file, wanted).expect("written");
        return;
    }
    let found = std::fs::read_to_string(file).expect("known.csv");
    for (number, (found, wanted)) in found.lines().zip(wanted.lines()).enumerate() {
        assert_eq!(found, wanted, "known.csv:{}: regenerate it", number + 1);
    }
    assert_eq!(found.len(), wanted.len(), "known.csv: regenerate it");
}
