//! A thread's answer is known no better than the worst row that went into it:
//! the status columns of `data/threads/` say which rows no text confirms.

use fits_checks::rows;
use fits_core::source::Known;
use fits_repl::{
    render::{Colour, text::Text},
    session::Session,
};

fn asked(query: &str) -> (Known, usize) {
    let mut session = Session::new();
    let answer = session.evaluate(query).unwrap_or_else(|error| panic!("{query}: {error:?}"));
    let (name, reasons) = answer.thread_reasons().unwrap_or_else(|| panic!("{query}"));
    let worst = reasons.iter().fold(Known::Given, |worst, it| worst.worst(it.known));
    assert_eq!(name.known, worst, "{query}");
    assert_eq!(answer.unconfirmed().is_some(), worst == Known::Memory, "{query}");
    let text = Text { settings: session.shown(), colour: Colour::Off }.answer(&answer);
    (worst, text.lines().filter(|line| line.starts_with("! unconfirmed")).count())
}

#[test]
fn recalled_rows_mark_their_answers_once() {
    let mut seen = [0, 0];
    for row in rows("data/threads/npt.csv") {
        let recalled = row.text("status") == "MEMORY";
        let (known, lines) = asked(&format!("{} NPT", row.text("size")));
        assert_eq!(known == Known::Memory, recalled, "{row}");
        assert_eq!(lines, usize::from(recalled), "{row}");
        seen[usize::from(recalled)] += 1;
    }
    for row in rows("data/threads/clearance_holes.csv") {
        if row.text("fit") != "medium" {
            continue;
        }
        let recalled = row.text("status") == "MEMORY";
        let (known, lines) =
            asked(&format!("thread {} clearance", row.text("size").replace("No. ", "#")));
        assert_eq!(known == Known::Memory, recalled, "{row}");
        assert_eq!(lines, usize::from(recalled), "{row}");
        seen[usize::from(recalled)] += 1;
    }
    assert!(seen[0] > 20 && seen[1] > 5, "{seen:?}");
}

#[test]
fn every_kind_of_thread_answer_says_how_it_is_known() {
    for query in [
        "M10",
        "1/2 BSW",
        "2 BA",
        "R1/2",
        "Tr20x4",
        "1/2-10 Acme",
        "M10 tap",
        "1/4-20 tap",
        "3/8-24 wires",
        "3/8-24 2A over 0.39in wire 0.024in",
        "M10 cut",
        "1/2 BSW cut",
    ] {
        let (known, lines) = asked(query);
        assert_eq!(lines, usize::from(known == Known::Memory), "{query}");
    }
}
