//! The generated tables of bought-in parts hold what `data/bought/` says, and
//! every row of it can be reached through the library.

use std::{collections::BTreeSet, fmt::Write as _};

use fits_checks::{Row, code, hold_generated, rows};
use fits_core::{
    Length, Limits,
    size::Unit,
    standards::{
        bought::{BoughtPart, Family, KeyStandard, Keyway, Load, seat},
        iso286::{Class, Feature},
    },
};
use proptest::{prop_assert, proptest};

const HEAD: &str =
    "//! Generated from `data/bought/` by `tests/bought_tables.rs`; do not edit.\n\n";
const TRADES: [&str; 7] = ["pins", "screws", "bar", "bushings", "bearings", "keys", "tube"];

fn part_rows() -> Vec<Row> {
    TRADES.iter().flat_map(|trade| rows(&format!("data/bought/{trade}.csv"))).collect()
}

fn unit(row: &Row) -> Unit {
    match row.text("unit") {
        "mm" => Unit::Millimetre,
        "in" => Unit::Inch,
        other => panic!("{row}: unknown unit {other}"),
    }
}

fn step(length: Length, counts: i64) -> Length {
    Length::from_tenth_nanometres(length.tenth_nanometres() + counts)
}

/// The first and the last size that a row holds for.
fn span(row: &Row) -> (Length, Length) {
    let unit = unit(row);
    let start = match row.text("start").strip_prefix('>') {
        Some(over) => step(row.length(over, unit), 1),
        None => row.length(row.text("start"), unit),
    };
    let end = match row.text("end") {
        "" => Length::MAX,
        text => match text.strip_prefix('<') {
            Some(below) => step(row.length(below, unit), -1),
            None => row.length(text, unit),
        },
    };
    assert!(start <= end, "{row}: the range is empty");
    (start, end)
}

fn class(row: &Row, text: &str) -> Class {
    text.parse().unwrap_or_else(|error| panic!("{row}: {text}: {error}"))
}

/// Deviations from nominal, where a row gives them by number.
fn deviations(row: &Row) -> Option<(Length, Length)> {
    let of = |unit| (row.length(row.text("low"), unit), row.length(row.text("high"), unit));
    Some(match row.text("limits") {
        "um" => of(Unit::Micrometre),
        "thou" => of(Unit::Thou),
        "size" => {
            let (start, end) = span(row);
            assert_eq!(start, end, "{row}: sizes belong to one nominal size");
            let (low, high) = of(unit(row));
            (low.checked_sub(start).unwrap(), high.checked_sub(start).unwrap())
        }
        "class" => return None,
        other => panic!("{row}: unknown kind of limits {other}"),
    })
}

fn gives(row: &Row) -> String {
    if let Some((low, high)) = deviations(row) {
        assert!(low <= high, "{row}: the limits cross");
        return format!("Gives::Deviations({}, {})", code(low), code(high));
    }
    let (low, high) = (class(row, row.text("low")), class(row, row.text("high")));
    assert_eq!(low.feature, high.feature, "{row}");
    format!("Gives::Classes({:?}, {:?})", row.text("low"), row.text("high"))
}

fn mate(row: &Row) -> String {
    let text = row.text("mate");
    if text.is_empty() {
        return "Mate::Nothing".into();
    }
    let Some((pair, unit)) = text.split_once(' ') else {
        let _ = class(row, text);
        return format!("Mate::Class({text:?})");
    };
    let unit = match unit {
        "um" => Unit::Micrometre,
        "thou" => Unit::Thou,
        other => panic!("{row}: unknown unit {other}"),
    };
    let (low, high) = pair.split_once('/').unwrap_or_else(|| panic!("{row}: {text}"));
    let (low, high) = (row.length(low, unit), row.length(high, unit));
    assert!(low <= high, "{row}: the mate's limits cross");
    format!("Mate::Deviations({}, {})", code(low), code(high))
}

fn yes(row: &Row, column: &str, yes: &str, no: &str) -> bool {
    match row.text(column) {
        text if text == yes => true,
        text if text == no => false,
        other => panic!("{row}: {column} is {other:?}"),
    }
}

fn families(out: &mut String) {
    let parts = part_rows();
    let list = rows("data/bought/families.csv");
    let named: BTreeSet<&str> = list.iter().map(|row| row.text("family")).collect();
    assert_eq!(named.len(), list.len(), "a family stands twice");
    for row in &parts {
        assert!(named.contains(row.text("family")), "{row}: no such family");
    }
    writeln!(out, "pub(super) static FAMILIES: [Entry; {}] = [", list.len()).unwrap();
    for family in &list {
        let own: Vec<&Row> =
            parts.iter().filter(|row| row.text("family") == family.text("family")).collect();
        assert!(!own.is_empty(), "{family}: has no rows");
        let units: BTreeSet<&str> = own.iter().map(|row| row.text("unit")).collect();
        let unit = if units.contains("mm") { "Millimetre" } else { "Inch" };
        let list = |column| {
            let words = family.text(column).split('|').filter(|word| !word.is_empty());
            words.collect::<Vec<&str>>()
        };
        let (words, silent) = (list("words"), list("silent"));
        writeln!(
            out,
            "    Entry {{ name: {:?}, noun: {:?}, words: &{words:?}, silent: &{silent:?}, feature: Feature::{}, by_outside: {}, mic_yours: {}, standard: {:?}, ask: {:?}, unit: Unit::{unit}, rows: &[",
            family.text("family"),
            family.text("noun"),
            if yes(family, "surface", "hole", "shaft") { "Hole" } else { "Shaft" },
            yes(family, "by", "outside", "own"),
            yes(family, "mic", "yes", "no"),
            family.text("standard"),
            family.text("ask"),
        )
        .unwrap();
        for row in own {
            let (start, end) = span(row);
            writeln!(
                out,
                "        Row {{ start: {}, end: {}, gives: {}, mate: {}, from: {}, note: {:?} }},",
                code(start),
                code(end),
                gives(row),
                mate(row),
                row.provenance(),
                row.text("note")
            )
            .unwrap();
        }
        *out += "    ] },\n";
    }
    *out += "];\n";
}

fn key_standard(row: &Row) -> &'static str {
    match row.text("standard") {
        "DIN 6885" => "Din6885",
        "ANSI B17.1" => "AnsiB171",
        "ANSI B17.1 rectangular" => "AnsiB171Rectangular",
        other => panic!("{row}: unknown standard {other}"),
    }
}

fn keyways(out: &mut String) {
    let list = rows("data/bought/keyways.csv");
    writeln!(out, "\npub(super) static KEYWAYS: [KeywayRow; {}] = [", list.len()).unwrap();
    for row in &list {
        let size = |column: &str| row.length(row.text(column), unit(row));
        let both = |least: &str, most: &str| {
            assert!(size(least) < size(most), "{row}: the depths cross");
            format!("[{}, {}]", code(size(least)), code(size(most)))
        };
        writeln!(
            out,
            "    KeywayRow {{ standard: KeyStandard::{}, over: {}, up_to: {}, width: {}, height: {}, shaft: {}, hub: {}, from: {}, note: {:?} }},",
            key_standard(row),
            code(size("over")),
            code(size("upto")),
            code(size("width")),
            code(size("height")),
            both("shaft_low", "shaft_high"),
            both("hub_low", "hub_high"),
            row.provenance(),
            row.text("note")
        )
        .unwrap();
    }
    *out += "];\n";
}

fn load(row: &Row) -> Load {
    Load::ALL
        .into_iter()
        .find(|load| load.words() == row.text("load"))
        .unwrap_or_else(|| panic!("{row}: unknown load"))
}

fn seat_span(row: &Row) -> (Length, Length) {
    let over = row.length(row.text("over_mm"), Unit::Millimetre);
    let up_to = match row.text("upto_mm") {
        "" => Length::MAX,
        text => row.length(text, Unit::Millimetre),
    };
    (over, up_to)
}

fn seats(out: &mut String) {
    let list = rows("data/bought/seats.csv");
    writeln!(out, "\npub(super) static SEATS: [SeatRow; {}] = [", list.len()).unwrap();
    for row in &list {
        let shaft = yes(row, "side", "shaft", "housing");
        let feature = if shaft { Feature::Shaft } else { Feature::Hole };
        for column in ["class", "finer"] {
            if !row.text(column).is_empty() {
                assert_eq!(class(row, row.text(column)).feature, feature, "{row}");
            }
        }
        let (over, up_to) = seat_span(row);
        writeln!(
            out,
            "    SeatRow {{ feature: Feature::{}, bearing: {:?}, load: Load::{:?}, over: {}, up_to: {}, class: {:?}, finer: {:?}, from: {}, reason: {:?} }},",
            if shaft { "Shaft" } else { "Hole" },
            row.text("bearing"),
            load(row),
            code(over),
            code(up_to),
            row.text("class"),
            row.text("finer"),
            row.provenance(),
            row.text("reason")
        )
        .unwrap();
    }
    *out += "];\n";
}

#[test]
fn the_tables_are_what_the_data_give() {
    let mut out = format!(
        "{HEAD}use super::{{Entry, Gives, Mate, Row, keyway::{{KeyStandard, KeywayRow}}, seat::{{Load, SeatRow}}}};\nuse crate::{{size::{{Length, Unit}}, source::{{Known, Provenance}}, standards::iso286::Feature}};\n\n"
    );
    families(&mut out);
    keyways(&mut out);
    seats(&mut out);
    hold_generated("fits-core/src/standards/bought/table.rs", &out);
}

fn family(row: &Row) -> Family {
    Family::named(row.text("family")).unwrap_or_else(|error| panic!("{row}: {error}"))
}

/// A size that a row holds for: its last, or one just inside an open end.
fn inside(row: &Row) -> Length {
    let (start, end) = span(row);
    if end == Length::MAX { step(start, 10_000_000) } else { end }
}

#[test]
fn every_row_is_reached_at_its_ends() {
    let list = part_rows();
    for row in &list {
        let family = family(row);
        let (start, end) = span(row);
        let mut at = vec![inside(row)];
        // A millionth of an inch over nothing is not a part to ask for.
        if start > Length::MICROMETRE {
            at.push(start);
        }
        for size in at {
            let ask = |size: Length| -> BoughtPart {
                if family.goes_by_outside() {
                    family.part_of(size.half(), size)
                } else {
                    family.part(size)
                }
                .unwrap_or_else(|error| panic!("{row}: {error}"))
            };
            let part = ask(size);
            assert_eq!(part.source, row.text("source"), "{row}");
            assert_eq!(part.note, row.text("note"), "{row}");
            assert_eq!(part.mate.is_some(), !row.text("mate").is_empty(), "{row}");
            assert!(part.limits.lower().is_positive(), "{row}: {:?}", part.limits);
            let wanted = match deviations(row) {
                Some((low, high)) => Limits::new(
                    part.nominal.checked_add(low).unwrap(),
                    part.nominal.checked_add(high).unwrap(),
                ),
                None => Limits::new(
                    class(row, row.text("low")).limits(part.nominal).unwrap().lower(),
                    class(row, row.text("high")).limits(part.nominal).unwrap().upper(),
                ),
            };
            assert_eq!(Ok(part.limits), wanted, "{row} at {size}");
        }
        if end != Length::MAX && !family.goes_by_outside() {
            // One step past the last row there is nothing, and it says so.
            let past = step(end, 1);
            if let Err(error) = family.part(past) {
                assert!(error.is_not_listed(), "{row}: {error}");
                assert!(error.advice().starts_with("listed near it: "), "{row}");
            }
        }
    }
    assert_eq!(list.len(), 372, "rows came or went: say why in the changelog");
}

#[test]
fn ranges_do_not_overlap_and_grow_no_finer() {
    let list = part_rows();
    for family in Family::all() {
        let own: Vec<&Row> =
            list.iter().filter(|row| row.text("family") == family.name()).collect();
        for pair in own.windows(2) {
            if unit(pair[0]) != unit(pair[1]) {
                continue;
            }
            let (before, after) = (span(pair[0]), span(pair[1]));
            assert!(before.1 < after.0, "{}: overlaps {}", pair[1], pair[0]);
            if let (Some(small), Some(large)) = (deviations(pair[0]), deviations(pair[1])) {
                let width = |(low, high): (Length, Length)| high.checked_sub(low).unwrap();
                // The 3/8 in lined bush is of another make than the 1/8 in one.
                if family.name() != "lined wrapped bushing bore" {
                    assert!(width(small) <= width(large), "{}: narrower", pair[1]);
                }
            }
        }
    }
}

#[test]
fn words_are_plain_and_lead_somewhere() {
    for family in Family::all() {
        assert_eq!(Family::named(family.name()).unwrap().name(), family.name());
        assert!(!family.differs().is_empty(), "{}", family.name());
        let mut seen = BTreeSet::new();
        for word in family.words() {
            assert!(seen.insert(*word), "{}: {word} twice", family.name());
            assert_eq!(*word, word.to_lowercase(), "{}", family.name());
            assert!(!word.contains('-'), "{}: {word}", family.name());
            let found = Family::called(word).unwrap();
            assert!(found.contains(&family), "{word} misses {}", family.name());
            assert_eq!(
                Family::called(&format!("  {}S ", word.to_uppercase().replace(' ', "-"))).unwrap(),
                found
            );
        }
    }
}

#[track_caller]
fn refused(text: &str, size: &str) -> (String, String) {
    let error = BoughtPart::find(text, size.parse().unwrap()).expect_err("an answer");
    (error.to_string(), error.advice())
}

#[test]
fn refusals_offer_the_way_on() {
    assert_eq!(
        refused("dowel", "0.3in"),
        (
            "dowel pin 7.62 mm is not listed (ASME B18.8.2)".into(),
            "listed near it: 1/4 in, 5/16 in".into()
        )
    );
    assert_eq!(
        refused("shoulder screws", "7mm").0,
        "shoulder screw 7 mm is not listed (ASME B18.3)"
    );
    assert_eq!(
        refused("metric tube", "31mm"),
        (
            "drawn tube 31 mm is not listed (EN 10305-1)".into(),
            "listed near it: 30 mm, 32 mm".into()
        )
    );
    assert_eq!(
        refused("dowl", "1/4in"),
        ("no bought-in part is called dowl".into(), "nearest: dowel".into())
    );
    assert_eq!(refused("dowel", "8mm").1, "say which: m6 dowel pin, ASME metric dowel pin");
    let (why, _) = refused("bearing", "25mm");
    assert!(why.contains("bearing bore (the inner ring: goes on a shaft)"), "{why}");
}

#[test]
fn a_bore_by_outside_diameter_widens_where_that_is_not_given() {
    let dom = Family::named("dom tube bore").unwrap();
    let bore: Length = "1.25in".parse().unwrap();
    let part = dom.part_of(bore, "1.5in".parse().unwrap()).unwrap();
    assert_eq!(part.limits.lower(), "1.245in".parse().unwrap());
    assert_eq!(part.limits.upper(), bore);
    let wide = dom.part(bore).unwrap();
    assert_eq!(wide.limits.lower(), "1.235in".parse().unwrap());
    assert_eq!(wide.limits.upper(), bore);
    assert!(dom.part_of(bore, bore).is_err());
    assert!(dom.part("6in".parse().unwrap()).unwrap_err().is_not_listed());
    let sintered = Family::named("metric sintered bushing bore");
    assert_eq!(
        sintered.unwrap().part("10mm".parse().unwrap()).unwrap().limits.upper().to_string(),
        "10.035 mm"
    );
}

#[test]
fn every_keyway_row_is_reached_and_shafts_follow_without_gaps() {
    let list = rows("data/bought/keyways.csv");
    let mut end: Option<(String, Length)> = None;
    for row in &list {
        let size = |column: &str| row.length(row.text(column), unit(row));
        let standard = match key_standard(row) {
            "Din6885" => KeyStandard::Din6885,
            "AnsiB171" => KeyStandard::AnsiB171,
            _ => KeyStandard::AnsiB171Rectangular,
        };
        if let Some((before, end)) = &end
            && before == row.text("standard")
        {
            assert_eq!(size("over"), *end, "{row}: a gap before this row");
        }
        end = Some((row.text("standard").to_owned(), size("upto")));
        for shaft in [step(size("over"), 1), size("upto")] {
            let keyway = Keyway::for_shaft(standard, shaft).unwrap();
            assert_eq!(keyway.width(), size("width"), "{row}");
            assert_eq!(keyway.height(), size("height"), "{row}");
            let depths = |low, high| Limits::new(size(low), size(high));
            assert_eq!(keyway.shaft_depth(), depths("shaft_low", "shaft_high"), "{row}");
            assert_eq!(keyway.hub_depth(), depths("hub_low", "hub_high"), "{row}");
            let (own, hub) = (keyway.shaft_depth().unwrap(), keyway.hub_depth().unwrap());
            // The key stands proud of the shaft, and fits under the hub's floor.
            assert!(own.upper() < keyway.height(), "{row}");
            let room = own.lower().checked_add(hub.lower()).unwrap();
            assert!(room > keyway.height(), "{row}: no room over the key");
            let widths = keyway.widths().unwrap_or_else(|error| panic!("{row}: {error}"));
            assert!(widths.iter().all(|part| part.feature == Feature::Hole), "{row}");
        }
    }
    let error = Keyway::for_shaft(KeyStandard::AnsiB171, "12in".parse().unwrap()).unwrap_err();
    assert_eq!(error.to_string(), "no ANSI B17.1 key is held here for a shaft of 12 in");
    assert_eq!(error.advice(), "shafts over 5/16 in up to 11 in are held");
}

#[test]
fn every_seat_row_is_reached() {
    let list = rows("data/bought/seats.csv");
    for row in &list {
        let feature = if row.text("side") == "shaft" { Feature::Shaft } else { Feature::Hole };
        let (over, up_to) = seat_span(row);
        let at = if up_to == Length::MAX { step(over, 100_000_000) } else { up_to };
        let found = seat(feature, load(row), at).unwrap();
        assert!(
            found.iter().any(|seat| seat.class.to_string() == row.text("class")
                && seat.bearing == row.text("bearing")
                && seat.reason == row.text("reason")
                && seat.finer.map(|class| class.to_string()).unwrap_or_default()
                    == row.text("finer")),
            "{row}: not offered at {at}"
        );
        // A class that a table names exists at its sizes.
        if let Ok(limits) = class(row, row.text("class")).limits(at) {
            assert!(limits.lower() < limits.upper(), "{row}");
        } else {
            panic!("{row}: {} is not defined at {at}", row.text("class"));
        }
    }
    let error = seat(Feature::Hole, Load::StandsFixed, "52mm".parse().unwrap()).unwrap_err();
    assert_eq!(error.to_string(), "no housing seat is listed for `stands fixed` at 52 mm");
    assert!(error.advice().contains("stands slides"), "{}", error.advice());
}

proptest! {
    /// Any text, size and load gives an answer or an error, never a panic.
    #[test]
    fn anything_asked_is_answered_or_refused(
        text in ".{0,24}",
        nominal in proptest::num::i64::ANY,
        near in -1_000_000_000..5_000_000_000_i64,
        load in 0..Load::ALL.len(),
    ) {
        for size in [nominal, near].map(Length::from_tenth_nanometres) {
            let _ = BoughtPart::find(&text, size);
            for family in Family::all() {
                match family.part(size) {
                    Ok(part) => prop_assert!(size.is_positive() && part.limits.lower() <= part.limits.upper()),
                    Err(error) => prop_assert!(!error.to_string().is_empty()),
                }
                let _ = family.part_of(size, Length::INCH);
            }
            for standard in [KeyStandard::Din6885, KeyStandard::AnsiB171] {
                let _ = Keyway::for_shaft(standard, size);
            }
            for feature in [Feature::Hole, Feature::Shaft] {
                let _ = seat(feature, Load::ALL[load], size);
            }
        }
    }
}
