//! Untoleranced inch sizes by how they are written: the table is what the data
//! give, and the answer holds it beside ISO 2768-1.
//!
//! No standard sets what title blocks print: what is taken is what working engineers
//! tell each other, and is marked as common practice without a source.

use std::fmt::Write as _;

use fits_checks::{ask, code, hold_generated, rows, takes};
use fits_core::{Length, size::Unit, standards::title_block::Written};
use fits_repl::session::Session;
use serde_json::Value;

#[test]
fn the_table_is_what_the_data_give() {
    let list = rows("data/title_block/title_block.csv");
    let mut out = String::from(
        "//! Generated from `data/title_block/title_block.csv` by `tests/title_blocks.rs`; do not edit.\n\nuse super::Row;\nuse crate::{size::Length, source::{Known, Provenance}};\n\n",
    );
    writeln!(out, "pub(super) static ROWS: [Row; {}] = [", list.len()).unwrap();
    let mut before: Option<(String, Length)> = None;
    for row in &list {
        let plus_minus = row.length(row.text("plus_minus"), Unit::Inch);
        let decimals = match row.text("written") {
            "fraction" => "None".to_owned(),
            count => format!("Some({})", count.parse::<u32>().unwrap_or_else(|_| panic!("{row}"))),
        };
        // More decimals are held closer.
        if let Some((trade, wider)) = &before
            && trade == row.text("trade")
            && decimals != "None"
        {
            assert!(plus_minus < *wider, "{row}: wider than with a decimal less");
        }
        before = Some((row.text("trade").to_owned(), plus_minus));
        writeln!(
            out,
            "    Row {{ trade: {:?}, decimals: {decimals}, plus_minus: {}, from: {}, note: {:?} }},",
            row.text("trade"),
            code(plus_minus),
            row.provenance(),
            row.text("note")
        )
        .unwrap();
    }
    out += "];\n";
    hold_generated("fits-core/src/standards/title_block/table.rs", &out);
}

fn plus_minus(answer: &Value, by: &str) -> f64 {
    let sets = answer["sets"].as_array().unwrap();
    let set =
        sets.iter().find(|set| set["practice"] == by).unwrap_or_else(|| panic!("{by}: {answer}"));
    set["plus_minus_mm"].as_f64().unwrap()
}

#[test]
fn how_it_is_written_decides() {
    let mut session = Session::new();
    for (query, written, by, usual, no_block) in [
        ("title block 0.750in", "3 decimals", "machined parts", 0.005, Some(0.0005)),
        ("title block .75in", "2 decimals", "machined parts", 0.010, Some(0.005)),
        ("title block 1.5in", "1 decimal", "machined parts", 0.030, Some(0.05)),
        ("title block 0.7500in", "4 decimals", "machined parts", 0.0005, Some(0.00005)),
        // The old rule is told of 5/32 (1/64) and 1-7/8 (1/16): of 3/4 it would be 1/8.
        ("title block 3/4in", "a fraction over 4", "a common block", 1.0 / 32.0, None),
        ("title block 3-1/2in", "a fraction over 2", "a closer block", 1.0 / 64.0, None),
        ("title block 1-7/8in", "a fraction over 8", "a common block", 0.03125, Some(0.0625)),
        ("title block 5/32", "a fraction over 32", "a closer block", 1.0 / 64.0, Some(0.015_625)),
    ] {
        let answer = takes(&mut session, query);
        assert_eq!(answer["written"], written, "{query}");
        assert!((plus_minus(&answer, by) / 25.4 - usual).abs() < 1e-7, "{query}");
        let sets = answer["sets"].as_array().unwrap();
        assert_eq!(sets.iter().any(|set| set["practice"] == "no block"), no_block.is_some());
        if let Some(no_block) = no_block {
            assert!((plus_minus(&answer, "no block") / 25.4 - no_block).abs() < 1e-7, "{query}");
        }
        // What is called tight is no wider than what is called usual.
        let width = |name: &str| {
            let set = sets.iter().find(|set| set["practice"] == name)?;
            set["plus_minus_mm"].as_f64()
        };
        for (closer, wider) in
            [("a tight block", "machined parts"), ("a closer block", "a common block")]
        {
            if let (Some(closer), Some(wider)) = (width(closer), width(wider)) {
                assert!(closer < wider, "{answer}");
            }
        }
        assert!(["practice", "memory"].contains(&answer["known"].as_str().unwrap()), "{answer}");
    }
}

/// ISO 2768-1, table 1: 19.05 mm lies in 6 to 30: f 0.1, m 0.2, c 0.5.
#[test]
fn the_standard_stands_beside_it() {
    let answer = takes(&mut Session::new(), "title block 0.750in");
    assert!((plus_minus(&answer, "ISO 2768-f") - 0.1).abs() < 1e-9);
    assert!((plus_minus(&answer, "ISO 2768-m") - 0.2).abs() < 1e-9);
    assert!((plus_minus(&answer, "ISO 2768-c") - 0.5).abs() < 1e-9);
    assert!(Written::Decimals(7).practices().next().is_none());
}

#[test]
fn what_it_cannot_say_is_asked() {
    let mut session = Session::new();
    for query in [
        "title block 2in",
        "title block 12.5mm",
        "title block",
        "title block .75",
        "title block 0in",
    ] {
        let refused = ask(&mut session, query);
        assert!(refused["error"].is_object(), "{query}: {refused}");
        let hint = refused["error"]["hint"].as_str().unwrap();
        for works in hint.split('`').skip(1).step_by(2) {
            takes(&mut session, works);
        }
    }
    session.evaluate("units in").unwrap();
    let said = takes(&mut session, "1.250 by the title block");
    assert_eq!(said["written"], "3 decimals", "{said}");
}
