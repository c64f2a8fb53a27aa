//! Every limit deviation read in a published table, against the library.
//!
//! The rows stand in `tests/published/iso286_limits.csv`, each with its
//! source. Where a row and the library differ, the row is looked into and, if
//! it is the row that is wrong, listed in [`LEDGER`] with the reason. Of the
//! rows in the file none needs an entry today; the entries are values that
//! other prints give and that must not be believed: misprints, rows slipped by
//! one, halves of js rounded down. An entry that agrees with the library fails,
//! and so does a published row that differs without an entry.
//!
//! Sizes that stand for a range in an entry were picked inside it.

use std::collections::HashSet;

use fits_checks::rows;
use fits_core::{
    Deviations, Length,
    standards::iso286::{Class, Feature},
};

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum End {
    Upper,
    Lower,
}
use End::{Lower, Upper};

/// One end of a published class that is not what ISO 286 gives.
struct Departure {
    nominal: &'static str,
    class: &'static str,
    end: End,
    /// In micrometres.
    printed: &'static str,
    /// What the library gives, in micrometres, or `refused`.
    ours: &'static str,
    reason: &'static str,
}

const fn departs(
    nominal: &'static str,
    class: &'static str,
    end: End,
    printed: &'static str,
    ours: &'static str,
    reason: &'static str,
) -> Departure {
    Departure { nominal, class, end, printed, ours, reason }
}

const CORRIGENDUM: &str =
    "misprint of ISO 286-2:1988, put right by its Corrigendum 1:2006; deviation and grade add up";
const GOST: &str = "GOST 25347/ESDP rounds 5 I and 7 I another way than ISO 286-1, Table 1";
const BEARINGS: &str = "rolling bearing tables (SKF) carry older IT5 over 500 mm";
const GOST_ANNEX: &str = "GOST gives IT01 and IT0 over 500 mm, ISO 286-1 does not";
const TEXTBOOK: &str =
    "Machine Drawing (Narayana et al.), p. 221: typed; the shaft and IT7 + D give ours";
const TEXTBOOK_SLIP: &str =
    "Machine Drawing, p. 225: a shaft of 50 mm printed 49.050/49.075 for 49.950/49.975";
const SHIFTED: &str = "a web table of j5 and j6 shifted by one row over 18 to 65 mm";
const FG: &str = "the same web table: the value of fg";
const FOUR: &str = "a web copy of the EN table prints 4 for the delta sign; delta goes by grade";
const WIDTH: &str = "the printed width is not the grade's (M5: SKF reprint; E7: a list of hole limits; F8: machining supplier; f8: Sumitomo)";
const CROSSED: &str =
    "a handbook table of ANSI B4.2 prints 0.995 for 0.955: its least is above its most";
const NO_GRADE: &str = "steel supplier's bar table: the width is not a grade";
const MERGED: &str = "student table that averages the sub-ranges of r and s";
const SUPPLIER: &str = "supplier table: deviation or width typed wrong";
const GAUGE_MAKER: &str = "gauge maker's pages: the width is not the grade's";
const HALVES: &str = "ISO 286-1:1988 let js of an odd tolerance in IT7 to IT11 round down; the halves are kept here (Chinese table to 10 mm; SKF over 500 mm)";

#[rustfmt::skip]
const LEDGER: &[Departure] = &[
    departs("350", "A13", Upper, "2000", "2090", CORRIGENDUM),
    departs("100", "E8", Upper, "125", "126", CORRIGENDUM),
    departs("24", "R10", Upper, "-10", "-28", CORRIGENDUM),
    departs("300", "f9", Lower, "-185", "-186", CORRIGENDUM),
    departs("900", "h4", Lower, "-29", "-28", GOST),
    departs("1100", "h4", Lower, "-34", "-33", GOST),
    departs("1500", "h4", Lower, "-40", "-39", GOST),
    departs("1800", "h4", Lower, "-48", "-46", GOST),
    departs("2200", "h4", Lower, "-57", "-55", GOST),
    departs("3000", "h4", Lower, "-69", "-68", GOST),
    departs("600", "h5", Lower, "-30", "-32", GOST),
    departs("700", "h5", Lower, "-35", "-36", GOST),
    departs("1100", "h5", Lower, "-46", "-47", GOST),
    departs("1500", "h5", Lower, "-54", "-55", GOST),
    departs("2200", "h5", Lower, "-77", "-78", GOST),
    departs("3000", "h5", Lower, "-93", "-96", GOST),
    departs("700", "h5", Lower, "-32", "-36", BEARINGS),
    departs("900", "h5", Lower, "-36", "-40", BEARINGS),
    departs("1100", "h5", Lower, "-42", "-47", BEARINGS),
    departs("1500", "h5", Lower, "-50", "-55", BEARINGS),
    departs("1800", "h5", Lower, "-60", "-65", BEARINGS),
    departs("2200", "h5", Lower, "-70", "-78", BEARINGS),
    departs("600", "h01", Lower, "-4.5", "refused", GOST_ANNEX),
    departs("600", "h0", Lower, "-6", "refused", GOST_ANNEX),
    departs("3000", "h01", Lower, "-13", "refused", GOST_ANNEX),
    departs("3000", "h0", Lower, "-18", "refused", GOST_ANNEX),
    departs("220", "U8", Upper, "-256", "-258", TEXTBOOK),
    departs("380", "X8", Upper, "-650", "-660", TEXTBOOK),
    departs("50", "f7", Upper, "-925", "-25", TEXTBOOK_SLIP),
    departs("50", "f7", Lower, "-950", "-50", TEXTBOOK_SLIP),
    departs("25", "j5", Lower, "-3", "-4", SHIFTED),
    departs("25", "j6", Lower, "-3", "-4", SHIFTED),
    departs("40", "j5", Lower, "-4", "-5", SHIFTED),
    departs("40", "j6", Lower, "-4", "-5", SHIFTED),
    departs("60", "j5", Lower, "-5", "-7", SHIFTED),
    departs("60", "j6", Lower, "-5", "-7", SHIFTED),
    departs("8", "g6", Upper, "-8", "-5", FG),
    departs("5", "N6", Upper, "-4", "-5", FOUR),
    departs("24", "M5", Upper, "-4", "-5", WIDTH),
    departs("380", "E7", Upper, "185", "182", WIDTH),
    departs("3", "F8", Lower, "10", "6", WIDTH),
    departs("3", "f8", Upper, "-8", "-6", WIDTH),
    departs("1", "d9", Lower, "-5", "-45", CROSSED),
    departs("3", "h6", Lower, "-7", "-6", NO_GRADE),
    departs("3", "h7", Lower, "-9", "-10", NO_GRADE),
    departs("3", "h12", Lower, "-90", "-100", NO_GRADE),
    departs("25", "h6", Lower, "-30", "-13", NO_GRADE),
    departs("60", "s6", Lower, "56", "53", MERGED),
    departs("70", "s6", Lower, "56", "59", MERGED),
    departs("60", "r6", Lower, "42", "41", MERGED),
    departs("70", "r6", Lower, "42", "43", MERGED),
    departs("90", "r6", Lower, "54", "51", MERGED),
    departs("5", "H8", Upper, "19", "18", SUPPLIER),
    departs("3", "f7", Upper, "-5", "-6", SUPPLIER),
    departs("3", "p6", Upper, "20", "12", SUPPLIER),
    departs("110", "zc7", Upper, "605", "725", GAUGE_MAKER),
    departs("90", "ZC7", Upper, "-560", "-572", GAUGE_MAKER),
    departs("150", "ZB7", Lower, "-605", "-725", GAUGE_MAKER),
    departs("130", "za11", Upper, "600", "720", GAUGE_MAKER),
    departs("130", "ZA11", Lower, "-600", "-720", GAUGE_MAKER),
    departs("130", "zb9", Upper, "600", "720", GAUGE_MAKER),
    departs("130", "ZB9", Lower, "-600", "-720", GAUGE_MAKER),
    departs("260", "zb9", Upper, "1300", "1330", GAUGE_MAKER),
    departs("220", "A10", Upper, "845", "925", GAUGE_MAKER),
    departs("35", "A9", Upper, "360", "372", GAUGE_MAKER),
    departs("350", "C11", Upper, "600", "720", GAUGE_MAKER),
    departs("110", "C13", Upper, "600", "720", GAUGE_MAKER),
    departs("10", "js7", Upper, "7", "7.5", HALVES),
    departs("10", "js7", Lower, "-7", "-7.5", HALVES),
    departs("1100", "js7", Upper, "52", "52.5", HALVES),
    departs("1100", "js7", Lower, "-52", "-52.5", HALVES),
    departs("1500", "js7", Upper, "62", "62.5", HALVES),
    departs("1500", "js7", Lower, "-62", "-62.5", HALVES),
];

fn size(text: &str) -> Length {
    format!("{text}mm").parse().unwrap_or_else(|error| panic!("{text}: {error}"))
}

fn micrometres(text: &str) -> Length {
    format!("{text}um").parse().unwrap_or_else(|error| panic!("{text}: {error}"))
}

fn class(text: &str) -> Class {
    text.parse().unwrap_or_else(|error| panic!("{text}: {error}"))
}

fn at(end: End, deviations: Deviations) -> Length {
    match end {
        Upper => deviations.upper(),
        Lower => deviations.lower(),
    }
}

#[test]
fn every_published_row_agrees_or_is_in_the_ledger() {
    let mut unlisted = Vec::new();
    for row in &rows("tests/published/iso286_limits.csv") {
        let (nominal, name) = (row.text("nominal_mm"), row.text("class"));
        let found = class(name).deviations(size(nominal));
        for (end, column) in [(Upper, "upper_um"), (Lower, "lower_um")] {
            let printed = row.text(column);
            let (agrees, ours) = match &found {
                Ok(ours) => (at(end, *ours) == micrometres(printed), at(end, *ours).to_string()),
                Err(error) => (false, error.to_string()),
            };
            let is_listed = LEDGER.iter().any(|entry| {
                (entry.nominal, entry.class, entry.end, entry.printed)
                    == (nominal, name, end, printed)
            });
            if !agrees && !is_listed {
                unlisted.push(format!(
                    "{row}: {nominal} {name} prints {printed} um, ours {ours} ({})",
                    row.text("source")
                ));
            }
        }
        if let Ok(deviations) = found {
            let limits = class(name).limits(size(nominal)).expect(name);
            assert_eq!(Ok(limits), deviations.about(size(nominal)), "{row}");
        }
    }
    assert!(unlisted.is_empty(), "{} differ:\n{}", unlisted.len(), unlisted.join("\n"));
}

#[test]
fn every_entry_of_the_ledger_still_differs() {
    let mut seen = HashSet::new();
    for entry in LEDGER {
        let name = format!("{} {} {:?} {}", entry.nominal, entry.class, entry.end, entry.printed);
        assert!(seen.insert(name.clone()), "{name} stands twice");
        match class(entry.class).deviations(size(entry.nominal)) {
            Ok(deviations) => {
                let ours = at(entry.end, deviations);
                assert_ne!(
                    ours,
                    micrometres(entry.printed),
                    "{name}: agrees now, delete the entry ({})",
                    entry.reason
                );
                assert_eq!(ours, micrometres(entry.ours), "{name}: {}", entry.reason);
            }
            Err(error) => assert_eq!(entry.ours, "refused", "{name}: {error}"),
        }
    }
}

#[test]
fn the_rows_reach_far_enough() {
    let list = rows("tests/published/iso286_limits.csv");
    let borders: HashSet<String> = rows("data/iso286/shaft_deviations.csv")
        .iter()
        .map(|row| row.text("upto_mm").to_owned())
        .collect();
    let count = |want: &dyn Fn(&str, Class) -> bool| {
        list.iter().filter(|row| want(row.text("nominal_mm"), class(row.text("class")))).count()
    };
    let above = |nominal: &str| size(nominal) > size("500");
    for (what, found, least) in [
        ("rows", list.len(), 300),
        ("holes", count(&|_, class| class.feature == Feature::Hole), 150),
        ("shafts", count(&|_, class| class.feature == Feature::Shaft), 150),
        ("rows over 500 mm", count(&|nominal, _| above(nominal)), 30),
        ("rows on a border of a range", count(&|nominal, _| borders.contains(nominal)), 300),
        ("rows inside a range", count(&|nominal, _| !borders.contains(nominal)), 50),
    ] {
        assert!(found >= least, "{found} {what}, at least {least} wanted");
    }
    let letters: HashSet<&str> = list
        .iter()
        .map(|row| {
            let name = row.text("class");
            name.trim_end_matches(|c: char| c.is_ascii_digit())
        })
        .collect();
    assert!(letters.len() >= 40, "only {} letters reached", letters.len());
}
