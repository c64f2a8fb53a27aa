//! The generated tables of ISO 2768-1 hold what `data/iso2768/` says, that is
//! whole, and every cell and every published row reaches the answer.

use std::{collections::BTreeSet, fmt::Write as _};

use fits_checks::{Row, hold_generated, named, rows, sources_and_doubts};
use fits_core::{
    Error, Length,
    source::Known,
    standards::iso2768::{Class, LEAST, Quantity},
};

const CLASSES: [&str; 4] = ["f", "m", "c", "v"];
/// The borders of each table; the last range of edges and angles has no end.
const TABLES: [(&str, &str, &[&str]); 3] = [
    ("linear", "LINEAR", &["0.5", "3", "6", "30", "120", "400", "1000", "2000", "4000"]),
    ("edge", "EDGE", &["0.5", "3", "6", ""]),
    ("angular", "ANGULAR", &["0", "10", "50", "120", "400", ""]),
];

fn mm(text: &str) -> Length {
    format!("{text}mm").parse().unwrap()
}

fn cell<'a>(table: &'a [Row], quantity: &str, class: &str, over: &str, up_to: &str) -> &'a Row {
    let mut found = table.iter().filter(|row| {
        [("quantity", quantity), ("class", class), ("over_mm", over), ("upto_mm", up_to)]
            .iter()
            .all(|(column, wanted)| row.text(column) == *wanted)
    });
    let row =
        found.next().unwrap_or_else(|| panic!("no {quantity} {class} over {over} up to {up_to}"));
    if let Some(again) = found.next() {
        panic!("{again}: again after {row}");
    }
    row
}

fn index(list: &mut Vec<String>, text: String) -> usize {
    list.iter().position(|known| *known == text).unwrap_or_else(|| {
        list.push(text);
        list.len() - 1
    })
}

/// Counts of 0.1 nm, or minutes of arc; 0 where the standard gives none.
fn value(row: &Row) -> i64 {
    match (row.text("plus_minus"), row.text("quantity")) {
        ("", _) => 0,
        (_, "angular") => row.get("plus_minus"),
        (text, _) => mm(text).tenth_nanometres(),
    }
}

fn generate() -> String {
    let table = rows("data/iso2768/general.csv");
    let (mut sources, mut doubts) = (Vec::new(), vec![String::new()]);
    let mut body = String::new();
    for (quantity, name, borders) in TABLES {
        writeln!(body, "\npub(super) static {name}: [Row; {}] = [", borders.len() - 1).unwrap();
        for range in borders.windows(2) {
            let cells = CLASSES.map(|class| cell(&table, quantity, class, range[0], range[1]));
            let up_to = match range[1] {
                "" => "Length::MAX".to_owned(),
                up_to => format!("Length::from_tenth_nanometres({})", mm(up_to).tenth_nanometres()),
            };
            let from = cells.map(|row| {
                assert_eq!(row.text("status"), "SEEN", "{row}: unknown status");
                index(
                    &mut sources,
                    format!("Provenance {{ known: Known::Seen, text: {:?} }}", row.text("source")),
                )
            });
            let doubt = cells.map(|row| index(&mut doubts, row.text("doubt").to_owned()));
            writeln!(
                body,
                "    Row {{ up_to: {up_to}, values: {:?}, sources: {from:?}, doubts: {doubt:?} }},",
                cells.map(value)
            )
            .unwrap();
        }
        body += "];\n";
    }
    let mut out = String::from(
        "//! Generated from `data/iso2768/` by `tests/iso2768_tables.rs`; do not edit.\n\nuse super::Row;\nuse crate::{size::Length, source::{Known, Provenance}};\n\n",
    );
    out += &sources_and_doubts(&sources, &doubts);
    out + &body
}

#[test]
fn the_generated_table_is_what_the_data_give() {
    hold_generated("fits-core/src/standards/iso2768/table.rs", &generate());
}

#[test]
fn tolerances_grow_with_the_class_and_lengths_with_the_size() {
    let table = rows("data/iso2768/general.csv");
    let mut reached = 0;
    for (quantity, _, borders) in TABLES {
        let mut before = [0; 4];
        for (number, range) in borders.windows(2).enumerate() {
            let values =
                CLASSES.map(|class| value(cell(&table, quantity, class, range[0], range[1])));
            let given: Vec<i64> = values.iter().copied().filter(|value| *value > 0).collect();
            assert!(given.is_sorted(), "{quantity} over {}", range[0]);
            for (class, (now, before)) in values.iter().zip(before).enumerate() {
                // The longer the side, the finer the angle.
                let ordered = if quantity == "angular" { *now < before } else { *now >= before };
                assert!(
                    ordered || *now == 0 || number == 0,
                    "{quantity} {} over {}",
                    CLASSES[class],
                    range[0]
                );
                reached += 1;
            }
            before = values;
        }
    }
    assert_eq!(reached, table.len(), "a row belongs to no range");
}

/// The answer in a row's own terms; `None` where it is refused.
fn answer(quantity: &str, class: Class, size: Length) -> Result<i64, Error> {
    match quantity {
        "linear" => class.linear(size).map(Length::tenth_nanometres),
        "edge" => class.edge(size).map(Length::tenth_nanometres),
        "angular" => class.angle(size).map(i64::from),
        other => panic!("{other}"),
    }
}

fn quantity(row: &Row) -> Quantity {
    match row.text("quantity") {
        "linear" => Quantity::Linear,
        "edge" => Quantity::Edge,
        "angular" => Quantity::Angular,
        other => panic!("{row}: {other}"),
    }
}

#[test]
fn every_cell_is_given_from_border_to_border() {
    let step = Length::from_tenth_nanometres(1);
    for row in rows("data/iso2768/general.csv") {
        let class: Class = row.get("class");
        let over = mm(row.text("over_mm"));
        // "0,5 up to 3": the first range holds its lower border.
        let first = if over == LEAST { over } else { over.checked_add(step).unwrap() };
        let last = match row.text("upto_mm") {
            "" => Length::MAX,
            up_to => mm(up_to),
        };
        for size in [first, last] {
            let found = answer(row.text("quantity"), class, size);
            match value(&row) {
                0 => {
                    let error = found.unwrap_err();
                    assert!(error.is_not_defined() && !error.advice().is_empty(), "{row}");
                    let nearest = class.nearest(quantity(&row), size).unwrap();
                    assert!(error.advice().ends_with(nearest.letter()), "{row}");
                    assert!(answer(row.text("quantity"), nearest, size).is_ok(), "{row}");
                }
                wanted => {
                    assert_eq!(found.unwrap(), wanted, "{row} at {size}");
                    let reasons = class.reasons(quantity(&row), size).unwrap();
                    assert!(reasons.iter().all(|reason| reason.known == Known::Seen));
                    assert_eq!(reasons[0].source, row.text("source"), "{row}");
                    assert_eq!(
                        reasons.len(),
                        1 + usize::from(!row.text("doubt").is_empty()),
                        "{row}"
                    );
                    assert!(reasons.get(1).is_none_or(|reason| reason.rule == row.text("doubt")));
                }
            }
        }
    }
}

/// Published cells that are not followed: quantity, class, size, printed, why.
#[rustfmt::skip]
const DEPARTURES: [(&str, &str, &str, &str, &str); 4] = [
    ("linear", "c", "2", "0.15", "two other reprints print 0.2"),
    ("linear", "c", "5", "0.2", "two other reprints print 0.3"),
    ("linear", "m", "120", "0.5", "the article's slip: 120 closes the range over 30 up to 120, which has 0.3"),
    ("angular", "c", "200", "20", "the other reprints print 15"),
];

#[test]
fn published_tables_are_given_or_stand_in_the_ledger() {
    let list = rows("tests/published/iso2768.csv");
    let mut left: BTreeSet<_> = DEPARTURES.into_iter().collect();
    for row in &list {
        let found = answer(row.text("quantity"), row.get("class"), mm(row.text("size_mm")));
        let same = match row.text("plus_minus") {
            "-" => found.as_ref().is_err_and(Error::is_not_defined),
            text if row.text("quantity") == "angular" => found.ok() == text.parse().ok(),
            text => found.ok() == Some(mm(text).tenth_nanometres()),
        };
        let columns = ["quantity", "class", "size_mm", "plus_minus"].map(|column| row.text(column));
        let listed =
            left.iter().find(|entry| [entry.0, entry.1, entry.2, entry.3] == columns).copied();
        match listed {
            Some(entry) => {
                assert!(!same, "{row} agrees: delete its entry");
                left.remove(&entry);
            }
            None => assert!(same, "{row}"),
        }
    }
    assert!(left.is_empty(), "entries that name no published cell: {left:?}");
    let named = named(&list);
    assert!(named >= 60, "{named} rows that name their source");
}

#[test]
fn what_the_standard_does_not_give_is_refused_with_the_next_step() {
    let refused = |answer: Result<Length, Error>| {
        let error = answer.unwrap_err();
        (error.to_string(), error.advice())
    };
    for class in Class::ALL {
        for size in ["0.4999mm", "0mm", "-3mm"] {
            let (why, advice) = refused(class.linear(size.parse().unwrap()));
            assert!(why.starts_with("ISO 2768-1 gives no tolerance below 0.5 mm, so none at "));
            assert_eq!(advice, "write the deviations at the dimension");
            assert!(class.edge(size.parse().unwrap()).is_err());
        }
        let error = class.linear(mm("4000.1")).unwrap_err();
        assert!(error.is_out_of_table());
        assert_eq!(
            error.to_string(),
            "nominal size 4000.1 mm is outside the general tolerances of ISO 2768-1 (over 0.5 mm, up to 4000 mm)"
        );
        assert!(class.angle(Length::ZERO).is_err());
        assert_eq!(class.letter().parse::<Class>().unwrap(), class);
        assert_eq!(class.word().parse::<Class>().unwrap(), class);
        let json = serde_json::to_string(&class).unwrap();
        assert_eq!(json, format!("\"{class}\""));
        assert_eq!(serde_json::from_str::<Class>(&json).unwrap(), class);
    }
    assert_eq!(
        refused(Class::Fine.linear(mm("2500"))),
        (
            "ISO 2768-1 gives class f no tolerance for lengths at 2500 mm".into(),
            "the nearest class that has one there is m".into()
        )
    );
    assert_eq!(
        refused(Class::VeryCoarse.linear(mm("3"))).1,
        "the nearest class that has one there is c"
    );
    let error = "g".parse::<Class>().unwrap_err();
    assert_eq!(error.to_string(), "there is no general tolerance class \"g\"");
    assert_eq!(error.advice(), "the classes are f, m, c and v");
}
