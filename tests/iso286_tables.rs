//! The generated tables of ISO 286 hold what `data/iso286/` says, and what it
//! says is whole: ranges without gaps, no cell missing, grades in order.

use std::fmt::Write as _;

use fits_checks::{Row, hold_generated, rows};

const SHAFTS: [&str; 28] = [
    "a", "b", "c", "cd", "d", "e", "ef", "f", "fg", "g", "h", "js", "j", "k", "m", "n", "p", "r",
    "s", "t", "u", "v", "x", "y", "z", "za", "zb", "zc",
];
/// Rows beside the letters' own: a letter in other grades.
const MORE_SHAFTS: [(&str, &str, &str); 3] =
    [("J7", "j", "7"), ("J8", "j", "8"), ("K_COARSE", "k", "<=3 or >7")];
const HOLES: [(&str, &str, &str); 6] = [
    ("J6", "J", "6"),
    ("J7", "J", "7"),
    ("J8", "J", "8"),
    ("M6", "M", "6"),
    ("K_COARSE", "K", ">8"),
    ("N_COARSE", "N", ">8"),
];
const MAIN: [u32; 22] = [
    0, 3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000,
    2500, 3150,
];
const STEPS: [u32; 42] = [
    0, 3, 6, 10, 14, 18, 24, 30, 40, 50, 65, 80, 100, 120, 140, 160, 180, 200, 225, 250, 280, 315,
    355, 400, 450, 500, 560, 630, 710, 800, 900, 1000, 1120, 1250, 1400, 1600, 1800, 2000, 2240,
    2500, 2800, 3150,
];
const GRADES: [&str; 20] = [
    "IT01", "IT0", "IT1", "IT2", "IT3", "IT4", "IT5", "IT6", "IT7", "IT8", "IT9", "IT10", "IT11",
    "IT12", "IT13", "IT14", "IT15", "IT16", "IT17", "IT18",
];
const DELTAS: [&str; 6] = ["IT3", "IT4", "IT5", "IT6", "IT7", "IT8"];

struct Sources(Vec<(String, String)>);

impl Sources {
    fn index(&mut self, row: &Row) -> usize {
        let entry = (row.text("status").to_owned(), row.text("source").to_owned());
        assert!(
            ["SEEN", "FORMULA", "MEMORY"].contains(&entry.0.as_str()),
            "{row}: unknown status {}",
            entry.0
        );
        self.0.iter().position(|known| *known == entry).unwrap_or_else(|| {
            self.0.push(entry);
            self.0.len() - 1
        })
    }
}

/// The one row of a table that holds for a range (over, up to).
fn at(table: &[Row], over: u32, up_to: u32, want: impl Fn(&Row) -> bool) -> Option<&Row> {
    let mut found = table.iter().filter(|row| {
        row.get::<u32>("over_mm") <= over && up_to <= row.get::<u32>("upto_mm") && want(row)
    });
    let first = found.next();
    if let (Some(first), Some(second)) = (first, found.next()) {
        panic!("{second}: overlaps {first}");
    }
    first
}

fn tenths(row: &Row) -> i32 {
    let text = row.text("value_um");
    let (whole, part) = text.split_once('.').unwrap_or((text, "0"));
    assert_eq!(part.len(), 1, "{row}: finer than 0.1 um");
    whole
        .parse::<i32>()
        .and_then(|whole| part.parse::<i32>().map(|part| whole * 10 + part))
        .unwrap_or_else(|_| panic!("{row}: {text}"))
}

fn value(value: Option<i32>) -> String {
    value.map_or_else(|| "N".into(), |value| value.to_string())
}

fn joined(cells: impl IntoIterator<Item = String>) -> String {
    cells.into_iter().collect::<Vec<_>>().join(", ")
}

#[allow(clippy::too_many_lines, reason = "one file, written from top to bottom")]
fn generate() -> String {
    let grades = rows("data/iso286/grades.csv");
    let shafts = rows("data/iso286/shaft_deviations.csv");
    let deltas = rows("data/iso286/delta.csv");
    let holes = rows("data/iso286/hole_exceptions.csv");
    // Source 0 stands for cells that have none.
    let mut sources = Sources(vec![("FORMULA".into(), String::new())]);
    let mut out = String::from(
        "//! Generated from `data/iso286/` by `tests/iso286_tables.rs`; do not edit.\n\nuse super::rules::NONE as N;\nuse crate::source::{Known, Provenance};\n\n",
    );
    let tenth_nanometres = |mm: &u32| (u64::from(*mm) * 10_000_000).to_string();
    writeln!(out, "/// The sub-ranges of nominal size: up to and including, in counts of 0.1 nm.")
        .unwrap();
    writeln!(
        out,
        "pub(super) const STEP_UP_TO: [i64; 41] = [{}];\n",
        joined(STEPS[1..].iter().map(tenth_nanometres))
    )
    .unwrap();
    let main_of = STEPS[1..]
        .iter()
        .map(|up_to| MAIN[1..].iter().position(|main| up_to <= main).unwrap().to_string());
    writeln!(out, "/// The main range that each sub-range belongs to.\npub(super) const STEP_MAIN: [u8; 41] = [{}];\n", joined(main_of)).unwrap();

    let mut values = String::new();
    let mut from = String::new();
    for range in MAIN.windows(2) {
        let cells: Vec<_> = GRADES
            .iter()
            .map(|grade| at(&grades, range[0], range[1], |row| row.text("grade") == *grade))
            .collect();
        writeln!(values, "    [{}],", joined(cells.iter().map(|row| value(row.map(tenths)))))
            .unwrap();
        writeln!(
            from,
            "    [{}],",
            joined(cells.iter().map(|row| row.map_or(0, |row| sources.index(row)).to_string()))
        )
        .unwrap();
    }
    writeln!(out, "/// Standard tolerances by main range and grade, in 0.1 um.\npub(super) static GRADES: [[i32; 20]; 21] = [\n{values}];\n\npub(super) static GRADE_SOURCES: [[u8; 20]; 21] = [\n{from}];\n").unwrap();

    let (mut values, mut from) = (String::new(), String::new());
    for range in MAIN.windows(2).take(13) {
        let cells: Vec<_> = DELTAS
            .iter()
            .map(|grade| {
                at(&deltas, range[0], range[1], |row| row.text("grade") == *grade).unwrap_or_else(
                    || {
                        panic!(
                            "data/iso286/delta.csv: no {grade} over {} up to {}",
                            range[0], range[1]
                        )
                    },
                )
            })
            .collect();
        writeln!(values, "    [{}],", joined(cells.iter().map(|row| value(Some(tenths(row))))))
            .unwrap();
        writeln!(from, "    [{}],", joined(cells.iter().map(|row| sources.index(row).to_string())))
            .unwrap();
    }
    writeln!(out, "/// Deltas by main range to 500 mm and grade IT3 to IT8, in 0.1 um.\npub(super) static DELTAS: [[i32; 6]; 13] = [\n{values}];\n\npub(super) static DELTA_SOURCES: [[u8; 6]; 13] = [\n{from}];\n").unwrap();

    writeln!(out, "/// A row of deviations by sub-range, in um, and the source of each.\npub(super) struct Row(pub(super) [i32; 41], pub(super) [u8; 41]);\n").unwrap();
    let mut row_text = |table: &[Row], letter: &str, grades: &dyn Fn(&str) -> bool| {
        let cells: Vec<_> = STEPS
            .windows(2)
            .map(|range| {
                at(table, range[0], range[1], |row| {
                    row.text("letter") == letter && grades(row.text("grades"))
                })
            })
            .collect();
        let number =
            |row: &Row| (row.text("value_um") != "undefined").then(|| row.get::<i32>("value_um"));
        format!(
            "    Row([{}], [{}]),\n",
            joined(cells.iter().map(|row| value(row.and_then(number)))),
            joined(cells.iter().map(|row| row.map_or(0, |row| sources.index(row)).to_string()))
        )
    };
    let mut body = String::new();
    for letter in SHAFTS {
        body += &row_text(&shafts, letter, &|grades| match letter {
            "j" => grades == "5-6",
            "k" => grades == "4-7",
            _ => grades == "all",
        });
    }
    for (_, letter, grades) in MORE_SHAFTS {
        body += &row_text(&shafts, letter, &|found| found == grades);
    }
    for (number, (name, ..)) in MORE_SHAFTS.iter().enumerate() {
        writeln!(out, "pub(super) const ROW_{name}: usize = {};", SHAFTS.len() + number).unwrap();
    }
    writeln!(out, "\n/// es of a to h, ei of j to zc, one row a letter, then the rows of other grades.\npub(super) static SHAFTS: [Row; 31] = [\n{body}];\n").unwrap();
    let mut body = String::new();
    for (number, (name, letter, grades)) in HOLES.iter().enumerate() {
        writeln!(out, "pub(super) const ROW_HOLE_{name}: usize = {number};").unwrap();
        body += &row_text(&holes, letter, &|found| found == *grades);
    }
    writeln!(out, "\n/// ES of the holes that no rule gives.\npub(super) static HOLES: [Row; 6] = [\n{body}];\n").unwrap();

    let count = sources.0.len();
    assert!(count <= 256, "more sources than a byte counts");
    writeln!(
        out,
        "/// Where the cells come from.\npub(super) static SOURCES: [Provenance; {count}] = ["
    )
    .unwrap();
    for (status, text) in &sources.0 {
        let known = match status.as_str() {
            "SEEN" => "Seen",
            "FORMULA" => "Formula",
            _ => "Memory",
        };
        writeln!(out, "    Provenance {{ known: Known::{known}, text: {text:?} }},").unwrap();
    }
    out += "];\n";
    out
}

#[test]
fn the_generated_tables_are_what_the_data_give() {
    hold_generated("fits-core/src/standards/iso286/tables.rs", &generate());
}

#[test]
fn no_grade_is_missing_and_grades_grow() {
    let grades = rows("data/iso286/grades.csv");
    let mut reached = 0;
    for range in MAIN.windows(2) {
        let mut before = 0;
        for grade in GRADES {
            let row = at(&grades, range[0], range[1], |row| row.text("grade") == grade);
            if range[0] >= 500 && ["IT01", "IT0"].contains(&grade) {
                assert!(row.is_none(), "{}: ISO 286-1 gives no {grade} above 500 mm", row.unwrap());
                continue;
            }
            let row = row.unwrap_or_else(|| {
                panic!("data/iso286/grades.csv: no {grade} over {} up to {}", range[0], range[1])
            });
            assert_eq!(
                (row.get::<u32>("over_mm"), row.get::<u32>("upto_mm")),
                (range[0], range[1]),
                "{row}: not a main range"
            );
            let value = tenths(row);
            assert!(value > before, "{row}: {grade} is not more than the grade before");
            before = value;
            reached += 1;
        }
    }
    assert_eq!(
        reached,
        grades.len(),
        "a row of data/iso286/grades.csv belongs to no range and grade"
    );
    for grade in GRADES {
        let column: Vec<_> = grades.iter().filter(|row| row.text("grade") == grade).collect();
        for pair in column.windows(2) {
            assert!(tenths(pair[0]) <= tenths(pair[1]), "{}: {grade} shrinks with size", pair[1]);
        }
    }
}

#[test]
fn every_letter_is_whole_over_the_sizes_the_standard_gives_it() {
    let shafts = rows("data/iso286/shaft_deviations.csv");
    let mut reached = 0;
    for letter in SHAFTS.iter().filter(|letter| **letter != "js") {
        let (over, up_to) = match *letter {
            "a" | "b" | "c" | "j" | "x" | "z" | "za" | "zb" | "zc" => (0, 500),
            "cd" | "ef" | "fg" => (0, 50),
            "t" => (24, 3150),
            "v" => (14, 500),
            "y" => (18, 500),
            _ => (0, 3150),
        };
        let mut groups: Vec<&str> = shafts
            .iter()
            .filter(|row| row.text("letter") == *letter)
            .map(|row| row.text("grades"))
            .collect();
        groups.sort_unstable();
        groups.dedup();
        for grades in groups {
            let up_to = if *letter == "j" && grades == "8" { 3 } else { up_to };
            let mut end = over;
            let mut before: Option<i32> = None;
            for row in shafts
                .iter()
                .filter(|row| row.text("letter") == *letter && row.text("grades") == grades)
            {
                assert_eq!(
                    row.get::<u32>("over_mm"),
                    end,
                    "{row}: a gap or an overlap before this range"
                );
                end = row.get("upto_mm");
                assert!(STEPS.contains(&end), "{row}: {end} mm is not a border of the standard");
                let is_upper = SHAFTS.iter().position(|known| known == letter) <= Some(10);
                assert_eq!(row.text("which"), if is_upper { "es" } else { "ei" }, "{row}");
                let value: i32 = row.get("value_um");
                if !["j", "k"].contains(letter) {
                    assert!(
                        before.is_none_or(|before| value.abs() >= before.abs()),
                        "{row}: {letter} shrinks with size"
                    );
                }
                before = Some(value);
                reached += 1;
            }
            assert_eq!(
                end, up_to,
                "data/iso286/shaft_deviations.csv: {letter} ({grades}) ends at {end} mm"
            );
        }
    }
    assert_eq!(
        reached,
        shafts.len(),
        "a row of data/iso286/shaft_deviations.csv has an unknown letter"
    );
}

#[test]
fn each_delta_is_the_difference_of_two_grades() {
    // ISO 286-1:1988, 4.1.2: delta is the tolerance of the grade less that of
    // the next finer one; nothing up to 3 mm.
    let grades = rows("data/iso286/grades.csv");
    let deltas = rows("data/iso286/delta.csv");
    assert_eq!(deltas.len(), 13 * DELTAS.len());
    for row in &deltas {
        let (over, up_to) = (row.get("over_mm"), row.get("upto_mm"));
        let number: u32 = row.text("grade")[2..].parse().unwrap();
        let it = |number: u32| {
            tenths(
                at(&grades, over, up_to, |row| row.text("grade") == format!("IT{number}")).unwrap(),
            )
        };
        let difference = if up_to <= 3 { 0 } else { it(number) - it(number - 1) };
        assert_eq!(tenths(row), difference, "{row}");
    }
}

#[test]
fn the_holes_that_no_rule_gives_are_all_there() {
    let holes = rows("data/iso286/hole_exceptions.csv");
    for (name, letter, grades) in HOLES {
        let count = holes
            .iter()
            .filter(|row| row.text("letter") == letter && row.text("grades") == grades)
            .count();
        assert_eq!(
            count,
            if name == "M6" { 1 } else { 13 },
            "data/iso286/hole_exceptions.csv: rows of {letter} {grades}"
        );
    }
    assert_eq!(holes.len(), 5 * 13 + 1);
}
