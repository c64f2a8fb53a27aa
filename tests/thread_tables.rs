//! The thread tables that core carries are what `data/threads/` says, and the
//! data are whole, run the right way, and stand within one preferred number of
//! the standard's formulas.

use std::{collections::BTreeMap, fmt::Write as _};

use fits_checks::{Row, code, hold_generated, rows};
use fits_core::{Length, size::Unit};

/// The steps of diameters of ISO 965-1, in mm.
const STEPS: [&str; 10] = ["0.99", "1.4", "2.8", "5.6", "11.2", "22.4", "45", "90", "180", "355"];

fn index(list: &mut Vec<String>, text: String) -> usize {
    list.iter().position(|known| *known == text).unwrap_or_else(|| {
        list.push(text);
        list.len() - 1
    })
}

fn list(kind: &str, entries: &[String]) -> String {
    assert!(entries.len() <= 256, "more than a byte counts");
    let lines: String = entries.iter().flat_map(|entry| ["    ", entry, ",\n"]).collect();
    format!("pub(super) static {kind}; {}] = [\n{lines}];\n", entries.len())
}

fn millimetres(row: &Row, text: &str) -> Length {
    row.length(text, Unit::Millimetre)
}

/// The cell of each grade of one quantity, pitch and step.
type Cells<'a> = BTreeMap<(String, String, String, u8), &'a Row>;

fn cells(tolerances: &[Row]) -> Cells<'_> {
    let mut cells = BTreeMap::new();
    for row in tolerances {
        let key = (
            row.text("quantity").to_owned(),
            row.text("over_mm").to_owned(),
            row.text("pitch_mm").to_owned(),
            row.get("grade"),
        );
        if let Some(before) = cells.insert(key, row) {
            panic!("{row}: again after {before}");
        }
    }
    cells
}

fn sorted_pitches<'a>(rows: impl Iterator<Item = &'a Row>) -> Vec<String> {
    let mut pitches: Vec<String> = rows.map(|row| row.text("pitch_mm").to_owned()).collect();
    let value = |text: &str| text.parse::<f64>().expect("a pitch");
    pitches.sort_by(|one, two| value(one).total_cmp(&value(two)));
    pitches.dedup();
    pitches
}

/// `[Cell { .. }, ..]` of these grades.
fn cell_list<'a>(
    sources: &mut Vec<String>,
    grades: impl IntoIterator<Item = Option<&'a Row>>,
) -> String {
    let cells: Vec<String> = grades
        .into_iter()
        .map(|row| match row {
            Some(row) => format!(
                "Cell {{ micrometres: {}, source: {} }}",
                row.get::<u16>("um"),
                index(sources, row.provenance())
            ),
            None => "NONE".to_owned(),
        })
        .collect();
    format!("[{}]", cells.join(", "))
}

fn metric() -> String {
    let tolerances = rows("data/threads/metric_tolerances.csv");
    let deviations = rows("data/threads/metric_deviations.csv");
    let engagement = rows("data/threads/engagement.csv");
    let cells = cells(&tolerances);
    let find = |quantity: &str, over: &str, pitch: &str, grade: u8| {
        cells.get(&(quantity.to_owned(), over.to_owned(), pitch.to_owned(), grade)).copied()
    };
    let mut sources = Vec::new();
    let mut body = String::new();

    let pitches = sorted_pitches(tolerances.iter().chain(&deviations));
    writeln!(body, "pub(super) static PITCHES: [PitchRow; {}] = [", pitches.len()).unwrap();
    for pitch in &pitches {
        let of = |position: &str| {
            deviations
                .iter()
                .find(|row| row.text("position") == position && row.text("pitch_mm") == pitch)
        };
        let first = tolerances.iter().find(|row| row.text("pitch_mm") == pitch).unwrap();
        let off = cell_list(&mut sources, ["e", "f", "g"].map(of));
        let major = cell_list(&mut sources, [4, 6, 8].map(|grade| find("Td", "", pitch, grade)));
        let minor = cell_list(&mut sources, (4..=8).map(|grade| find("TD1", "", pitch, grade)));
        writeln!(body, "    PitchRow {{ pitch: {}, // {pitch} mm\n        deviations: {off},\n        major: {major},\n        minor: {minor} }},", code(millimetres(first, pitch))).unwrap();
    }
    writeln!(body, "];\n\npub(super) static STEPS: [Step; {}] = [", STEPS.len() - 1).unwrap();
    for range in STEPS.windows(2) {
        let of_step = |row: &&Row| row.text("over_mm") == range[0];
        let first = tolerances.iter().find(of_step).unwrap();
        writeln!(
            body,
            "    Step {{ over: {}, up_to: {}, rows: &[",
            code(millimetres(first, range[0])),
            code(millimetres(first, range[1]))
        )
        .unwrap();
        for pitch in sorted_pitches(tolerances.iter().filter(of_step)) {
            let external =
                cell_list(&mut sources, (3..=9).map(|grade| find("Td2", range[0], &pitch, grade)));
            let internal =
                cell_list(&mut sources, (4..=8).map(|grade| find("TD2", range[0], &pitch, grade)));
            let (from, to) = engagement
                .iter()
                .filter(of_step)
                .find(|row| row.text("pitch_mm") == pitch)
                .map_or((0, 0), |row| {
                    let value =
                        |column| millimetres(row, row.text(column)).tenth_nanometres() / 10_000;
                    (value("from_mm"), value("to_mm"))
                });
            writeln!(body, "        StepRow {{ pitch: {}, // {pitch} mm\n            external: {external},\n            internal: {internal},\n            engagement: [{from}, {to}] }},", code(millimetres(first, &pitch))).unwrap();
        }
        body += "    ] },\n";
    }
    body += "];\n\n";
    let series = rows("data/threads/metric_series.csv");
    writeln!(body, "pub(super) static SERIES: [Listed; {}] = [", series.len()).unwrap();
    for row in &series {
        let pitch = |text: &str| code(millimetres(row, text));
        let coarse = match row.text("coarse_mm") {
            "" => "None".to_owned(),
            text => format!("Some({})", pitch(text)),
        };
        let fine: Vec<String> = row.text("fine_mm").split_whitespace().map(pitch).collect();
        writeln!(
            body,
            "    Listed {{ nominal: {}, choice: {}, coarse: {coarse}, fine: &[{}], note: {:?}, source: {} }}, // M{}",
            pitch(row.text("nominal_mm")),
            row.get::<u8>("choice"),
            fine.join(", "),
            row.text("note"),
            index(&mut sources, row.provenance()),
            row.text("nominal_mm"),
        )
        .unwrap();
    }
    body += "];\n";
    let mut out = String::from(
        "//! Generated from `data/threads/` by `tests/thread_tables.rs`; do not edit.\n\nuse super::metric::{Cell, Listed, PitchRow, Step, StepRow};\nuse crate::{size::Length, source::{Known, Provenance}};\n\nconst NONE: Cell = Cell { micrometres: 0, source: 0 };\n\n",
    );
    out += &list("SOURCES: [Provenance", &sources);
    out + "\n" + &body
}

/// A size as Unified tables write it: `No. 10`, `1-1/8`.
fn unified_size(row: &Row) -> Length {
    let text = row.text("size");
    match text.strip_prefix("No. ") {
        Some(number) => {
            let number: i64 = number.parse().unwrap_or_else(|_| panic!("{row}: {text}"));
            Length::THOU.checked_mul(60 + 13 * number).expect("a size")
        }
        None => row.length(text, Unit::Inch),
    }
}

fn half_turns(row: &Row) -> f64 {
    2.0 * row.get::<f64>("tpi")
}

fn unified() -> String {
    let mut sources = Vec::new();
    let mut body = String::new();
    let mut series: Vec<(Length, f64, Row)> = rows("data/threads/unified_series.csv")
        .into_iter()
        .map(|row| (unified_size(&row), half_turns(&row), row))
        .collect();
    series.sort_by(|one, two| one.0.cmp(&two.0).then(one.1.total_cmp(&two.1)));
    writeln!(body, "pub(super) static SERIES: [Listed; {}] = [", series.len()).unwrap();
    for (major, turns, row) in &series {
        let name = match row.text("series") {
            "UNC" => "Coarse",
            "UNF" => "Fine",
            "UNEF" => "ExtraFine",
            other => panic!("{row}: no series {other}"),
        };
        writeln!(
            body,
            "    Listed {{ major: {}, half_turns: {turns}, series: Series::{name}, source: {} }}, // {}-{}",
            code(*major),
            index(&mut sources, row.provenance()),
            row.text("size"),
            row.text("tpi"),
        )
        .unwrap();
    }
    let constant = rows("data/threads/unified_constant.csv");
    writeln!(body, "];\n\npub(super) static CONSTANT: [Constant; {}] = [", constant.len()).unwrap();
    for row in &constant {
        writeln!(
            body,
            "    Constant {{ turns: {}, from: {}, up_to: {}, source: {} }},",
            row.get::<u16>("tpi"),
            code(row.length(row.text("from_in"), Unit::Inch)),
            code(row.length(row.text("to_in"), Unit::Inch)),
            index(&mut sources, row.provenance()),
        )
        .unwrap();
    }
    let odd = rows("data/threads/unified_exceptions.csv");
    writeln!(body, "];\n\npub(super) static EXCEPTIONS: [Exception; {}] = [", odd.len()).unwrap();
    for row in &odd {
        let class = row.text("class").as_bytes();
        assert!(matches!(class, [b'1'..=b'3', b'A' | b'B']), "{row}: class");
        let figure = match row.text("figure") {
            "allowance" => "Allowance",
            "pitch tolerance" => "PitchTolerance",
            other => panic!("{row}: no figure {other}"),
        };
        writeln!(
            body,
            "    Exception {{ major: {}, half_turns: {}, side: Side::{}, class: {}, figure: Odd::{figure}, microinches: {}, source: {} }}, // {}-{}",
            code(unified_size(row)),
            half_turns(row),
            if class[1] == b'A' { "External" } else { "Internal" },
            class[0] - b'0',
            row.length(row.text("in"), Unit::Inch).tenth_nanometres() / 254,
            index(&mut sources, row.provenance()),
            row.text("size"),
            row.text("tpi"),
        )
        .unwrap();
    }
    let roots = rows("data/threads/unified_root.csv");
    writeln!(body, "];\n\npub(super) static ROOTS: [Root; {}] = [", roots.len()).unwrap();
    for row in &roots {
        writeln!(
            body,
            "    Root {{ half_turns: {}, microinches: {} }}, // {}",
            half_turns(row),
            row.length(row.text("in"), Unit::Inch).tenth_nanometres() / 254,
            row.text("tpi"),
        )
        .unwrap();
    }
    body += "];\n";
    let mut out = String::from(
        "//! Generated from `data/threads/` by `tests/thread_tables.rs`; do not edit.\n\nuse super::{Series, Side, unified::{Exception, Odd, Root}, unified_series::{Constant, Listed}};\nuse crate::{size::Length, source::{Known, Provenance}};\n\n",
    );
    out += &list("SOURCES: [Provenance", &sources);
    out + "\n" + &body
}

#[test]
fn the_generated_tables_are_what_the_data_give() {
    hold_generated("fits-core/src/standards/thread/metric_table.rs", &metric());
    hold_generated("fits-core/src/standards/thread/unified_table.rs", &unified());
}
