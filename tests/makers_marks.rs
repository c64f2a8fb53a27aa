//! Makers' marks are at most understood: no name, answer, hint or help page shows
//! one.

use fits_checks::rows;
use fits_core::standards::{bought::Family, materials::Material};
use fits_repl::{
    answer::SettingsAnswer,
    help::topics,
    query::{Dial, Units},
    render::{Colour, text::Text},
    session::Session,
};

const PLAIN: Text = Text {
    settings: SettingsAnswer { units: Units::Millimetres, dial: Dial::Diameter },
    colour: Colour::Off,
};

fn silent(table: &str) -> Vec<String> {
    let list = rows(table);
    let words = list.iter().flat_map(|row| row.text("silent").split('|'));
    words.filter(|word| !word.is_empty()).map(str::to_owned).collect()
}

/// Does a text hold a mark as words of its own?
fn shows(text: &str, mark: &str) -> bool {
    let lower = text.to_lowercase();
    let words: Vec<&str> =
        lower.split(|c: char| !c.is_ascii_alphanumeric()).filter(|word| !word.is_empty()).collect();
    format!(" {} ", words.join(" ")).contains(&format!(" {mark} "))
}

/// What the program answers to a query, or what it advises: a refusal may
/// repeat the word that was typed.
fn said(query: &str) -> String {
    let mut session = Session::new();
    match session.evaluate(query) {
        Ok(answer) => PLAIN.read_as(session.read_as(), session.slips()) + &PLAIN.answer(&answer),
        Err(problem) => problem.hint(""),
    }
}

#[test]
fn marks_are_understood_and_shown_by_nothing() {
    let (parts, materials) =
        (silent("data/bought/families.csv"), silent("data/material_names.csv"));
    assert!(parts.len() >= 4 && materials.len() >= 15, "{parts:?} {materials:?}");
    for word in &parts {
        assert!(Family::called(word).is_ok(), "{word}");
    }
    for word in &materials {
        assert!(Material::find(word).is_ok(), "{word}");
    }
    let pages: Vec<String> = topics().map(|topic| said(&format!("help {}", topic.topic))).collect();
    for mark in parts.iter().chain(&materials) {
        for page in &pages {
            assert!(!shows(page, mark), "{mark}: {page}");
        }
        for family in Family::all() {
            let shown = [family.name(), family.differs(), family.standard()];
            for text in shown.into_iter().chain(family.words().iter().copied()) {
                assert!(!shows(text, mark), "{mark}: {text}");
            }
        }
        for material in Material::all() {
            let shown = material.aliases().iter().copied().chain([material.name()]);
            for text in shown {
                assert!(!shows(text, mark), "{mark}: {text}");
            }
        }
        // A slip of it leads to something else or nowhere.
        for at in 0..mark.len() {
            let slip = format!("{}{}", &mark[..at], &mark[at + 1..]);
            for error in [
                Family::called(&slip).err().map(|error| error.advice()),
                Material::find(&slip).err().map(|error| error.advice()),
            ] {
                let advice = error.unwrap_or_default();
                assert!(!shows(&advice, mark), "{slip}: {advice}");
            }
        }
        for query in [
            format!("assemble 20 H7/s6, hub {mark} od 40 long 25, shaft steel"),
            format!("bushing 20, {mark}"),
            format!("20 {mark}"),
            format!("{mark} 20 mm"),
            format!("20 H7/g6 warm 60C, hole {mark}, shaft steel"),
            format!("a 20 mm steel shaft running in {mark}"),
            format!("{mark} hub 40 mm od 25 long pressed on a 20 mm steel shaft"),
        ] {
            let text = said(&query);
            assert!(!shows(&text, mark), "{query}: {text}");
        }
    }
}

/// A name that only stands for a maker is not a word for a part.
#[test]
fn a_makers_name_is_no_part() {
    for (word, name) in [
        ("timken bore", "timken"),
        ("timken od", "timken"),
        ("thomson shaft", "thomson"),
        ("stressproof", "stressproof"),
        ("du bushing", "du"),
    ] {
        let error = Family::called(word).unwrap_err();
        assert!(!shows(&error.advice(), name), "{word}: {}", error.advice());
    }
}
