//! Every tabulated standard tolerance and shaft deviation recomputed.
//!
//! The formulas are those behind ISO 286-1; the table rules where they differ,
//! so each cell that differs stands in a ledger, with both figures. An entry
//! whose cell agrees fails, and so does a cell that differs without an entry.
//!
//! Where the formulas come from:
//! - shafts up to 500 mm: Machine Drawing (Narayana, Kannaiah, Venkata Reddy),
//!   p. 222, Table 15.4, read;
//! - i = 0.45 ∛D + 0.001 D and the multiples 7, 10, 16, 25, 40, 64 of IT5 to
//!   IT10, I = 0.004 D + 2.1 over 500 mm, the multiples 2, 2.7, 3.7, 5 of IT1
//!   to IT4 over 500 mm, the linear formulas of IT01, IT0 and IT1, IT2 to IT4
//!   between IT1 and IT5 in geometric progression, shafts over 500 mm, and the
//!   steps of rounding: ISO 286-1:1988, Annex A, recalled (MEMORY);
//! - cd, ef, fg as geometric means of their neighbours: recalled (MEMORY);
//! - IT11 to IT18 as ten times the grade five finer: a rule of the table.
//!
//! IT01 to IT4 up to 500 mm have no rounding step that was read or recalled:
//! the nearest of the figures that Table 1 uses there is taken. j has no
//! formula. A recalled formula that reproduces hundreds of tabulated cells is
//! not likely to be wrong, but the ledger's reasons are only as good as it.

use std::collections::HashSet;

use fits_checks::{Row, rows};

const MAIN: [u32; 22] = [
    0, 3, 6, 10, 18, 30, 50, 80, 120, 180, 250, 315, 400, 500, 630, 800, 1000, 1250, 1600, 2000,
    2500, 3150,
];

/// A cell of the table that its formula does not give.
struct Departure {
    what: &'static str,
    over: u32,
    up_to: u32,
    table: f64,
    formula: f64,
    reason: &'static str,
}

const fn departs(
    what: &'static str,
    over: u32,
    up_to: u32,
    table: f64,
    formula: f64,
    reason: &'static str,
) -> Departure {
    Departure { what, over, up_to, table, formula, reason }
}

const SMALL: &str = "up to 10 mm the table goes its own way";
const KNOWN: &str =
    "a region where the table is known to leave its formula and is what is published";
const STEP: &str = "rounded to the other neighbour";
const FREE: &str = "the table's own choice, no reason published";
const TENFOLD: &str = "the one exception of the ten-fold rule";
const RECALLED: &str = "the table's cell is recalled, not read: it may be what is wrong";

#[rustfmt::skip]
const TOLERANCES: &[Departure] = &[
    departs("IT4", 0, 3, 3.0, 2.5, SMALL),
    departs("IT6", 0, 3, 6.0, 5.0, SMALL),
    departs("IT7", 0, 3, 10.0, 9.0, SMALL),
    departs("IT9", 0, 3, 25.0, 22.0, SMALL),
    departs("IT10", 0, 3, 40.0, 35.0, SMALL),
    departs("IT01", 3, 6, 0.4, 0.3, SMALL),
    departs("IT1", 3, 6, 1.0, 0.8, SMALL),
    departs("IT3", 3, 6, 2.5, 2.0, SMALL),
    departs("IT4", 3, 6, 4.0, 3.5, SMALL),
    departs("IT6", 3, 6, 8.0, 7.0, SMALL),
    departs("IT9", 3, 6, 30.0, 29.0, SMALL),
    departs("IT10", 3, 6, 48.0, 47.0, SMALL),
    departs("IT11", 3, 6, 75.0, 80.0, TENFOLD),
    departs("IT7", 6, 10, 15.0, 14.0, SMALL),
    departs("IT10", 6, 10, 58.0, 57.0, SMALL),
    departs("IT01", 10, 18, 0.5, 0.4, STEP),
    departs("IT0", 10, 18, 0.8, 0.6, STEP),
    departs("IT1", 10, 18, 1.2, 1.0, STEP),
    departs("IT2", 10, 18, 2.0, 1.5, STEP),
    departs("IT4", 10, 18, 5.0, 4.5, STEP),
    departs("IT7", 10, 18, 18.0, 17.0, STEP),
    departs("IT10", 10, 18, 70.0, 69.0, STEP),
    departs("IT01", 18, 30, 0.6, 0.5, STEP),
    departs("IT0", 18, 30, 1.0, 0.8, STEP),
    departs("IT1", 18, 30, 1.5, 1.2, STEP),
    departs("IT2", 18, 30, 2.5, 2.0, STEP),
    departs("IT3", 18, 30, 4.0, 3.5, STEP),
    departs("IT2", 50, 80, 3.0, 3.5, STEP),
    departs("IT1", 80, 120, 2.5, 3.0, STEP),
    departs("IT01", 120, 180, 1.2, 1.5, STEP),
    departs("IT0", 120, 180, 2.0, 2.5, STEP),
    departs("IT2", 120, 180, 5.0, 6.0, STEP),
    departs("IT1", 180, 250, 4.5, 5.0, STEP),
    departs("IT2", 250, 315, 8.0, 9.0, STEP),
    departs("IT1", 315, 400, 7.0, 8.0, STEP),
    departs("IT2", 315, 400, 9.0, 11.0, FREE),
    departs("IT3", 315, 400, 13.0, 14.0, STEP),
    departs("IT4", 315, 400, 18.0, 19.0, STEP),
    departs("IT6", 315, 400, 36.0, 35.0, STEP),
    departs("IT1", 400, 500, 8.0, 10.0, FREE),
    departs("IT2", 400, 500, 10.0, 13.0, FREE),
    departs("IT3", 400, 500, 15.0, 16.0, STEP),
    departs("IT4", 400, 500, 20.0, 21.0, STEP),
    departs("IT6", 400, 500, 40.0, 39.0, STEP),
    departs("IT7", 400, 500, 63.0, 62.0, STEP),
    departs("IT2", 500, 630, 11.0, 12.0, STEP),
    departs("IT5", 500, 630, 32.0, 30.0, FREE),
    departs("IT6", 500, 630, 44.0, 43.0, STEP),
    departs("IT5", 630, 800, 36.0, 35.0, STEP),
    departs("IT6", 630, 800, 50.0, 49.0, STEP),
    departs("IT6", 800, 1000, 56.0, 57.0, STEP),
    departs("IT5", 1000, 1250, 47.0, 46.0, RECALLED),
    departs("IT1", 1250, 1600, 15.0, 16.0, STEP),
    departs("IT5", 1250, 1600, 55.0, 54.0, RECALLED),
    departs("IT1", 1600, 2000, 18.0, 19.0, STEP),
    departs("IT3", 1600, 2000, 35.0, 34.0, STEP),
    departs("IT5", 1600, 2000, 65.0, 64.0, STEP),
    departs("IT1", 2500, 3150, 26.0, 27.0, STEP),
    departs("IT3", 2500, 3150, 50.0, 49.0, STEP),
    departs("IT4", 2500, 3150, 68.0, 66.0, RECALLED),
    departs("IT5", 2500, 3150, 96.0, 94.0, RECALLED),
];

#[rustfmt::skip]
const DEVIATIONS: &[Departure] = &[
    departs("a", 10, 14, 290.0, 280.0, STEP),
    departs("a", 18, 24, 300.0, 290.0, STEP),
    departs("a", 120, 140, 460.0, 450.0, STEP),
    departs("a", 160, 180, 580.0, 600.0, STEP),
    departs("a", 225, 250, 820.0, 840.0, STEP),
    departs("a", 315, 355, 1_200.0, 1_150.0, STEP),
    departs("a", 355, 400, 1_350.0, 1_300.0, STEP),
    departs("b", 3, 6, 140.0, 145.0, SMALL),
    departs("b", 6, 10, 150.0, 145.0, SMALL),
    departs("b", 14, 18, 150.0, 155.0, STEP),
    departs("b", 24, 30, 160.0, 165.0, STEP),
    departs("b", 100, 120, 240.0, 230.0, STEP),
    departs("b", 120, 140, 260.0, 250.0, KNOWN),
    departs("b", 140, 160, 280.0, 270.0, KNOWN),
    departs("b", 225, 250, 420.0, 430.0, STEP),
    departs("b", 450, 500, 840.0, 860.0, STEP),
    departs("c", 0, 3, 60.0, 58.0, SMALL),
    departs("c", 10, 14, 95.0, 85.0, KNOWN),
    departs("c", 14, 18, 95.0, 90.0, KNOWN),
    departs("c", 18, 24, 110.0, 95.0, KNOWN),
    departs("c", 24, 30, 110.0, 100.0, KNOWN),
    departs("c", 30, 40, 120.0, 105.0, KNOWN),
    departs("c", 65, 80, 150.0, 155.0, STEP),
    departs("c", 80, 100, 170.0, 165.0, STEP),
    departs("c", 100, 120, 180.0, 185.0, STEP),
    departs("c", 180, 200, 240.0, 250.0, STEP),
    departs("c", 250, 280, 300.0, 310.0, STEP),
    departs("c", 400, 450, 440.0, 430.0, STEP),
    departs("c", 450, 500, 480.0, 470.0, STEP),
    departs("cd", 0, 3, 34.0, 35.0, SMALL),
    departs("d", 6, 10, 40.0, 39.0, SMALL),
    departs("e", 80, 120, 72.0, 70.0, STEP),
    departs("e", 315, 400, 125.0, 120.0, STEP),
    departs("e", 800, 1000, 170.0, 180.0, KNOWN),
    departs("ef", 0, 3, 10.0, 9.0, SMALL),
    departs("f", 0, 3, 6.0, 7.0, SMALL),
    departs("f", 315, 400, 62.0, 60.0, STEP),
    departs("f", 400, 500, 68.0, 65.0, STEP),
    departs("f", 500, 630, 76.0, 74.0, STEP),
    departs("f", 630, 800, 80.0, 82.0, STEP),
    departs("f", 800, 1000, 86.0, 90.0, KNOWN),
    departs("fg", 0, 3, 4.0, 3.0, SMALL),
    departs("g", 0, 3, 2.0, 3.0, SMALL),
    departs("g", 630, 800, 24.0, 23.0, STEP),
    departs("g", 800, 1000, 26.0, 25.0, STEP),
    departs("g", 1000, 1250, 28.0, 27.0, STEP),
    departs("g", 1250, 1600, 30.0, 29.0, STEP),
    departs("g", 2500, 3150, 38.0, 37.0, STEP),
    departs("k", 0, 3, 0.0, 1.0, SMALL),
    departs("m", 0, 3, 2.0, 4.0, SMALL),
    departs("m", 1000, 1250, 40.0, 39.0, STEP),
    departs("m", 1250, 1600, 48.0, 47.0, STEP),
    departs("m", 1600, 2000, 58.0, 56.0, KNOWN),
    departs("m", 2000, 2500, 68.0, 66.0, STEP),
    departs("m", 2500, 3150, 76.0, 80.0, KNOWN),
    departs("n", 0, 3, 4.0, 6.0, SMALL),
    departs("n", 80, 120, 23.0, 24.0, STEP),
    departs("n", 500, 630, 44.0, 43.0, STEP),
    departs("n", 630, 800, 50.0, 49.0, STEP),
    departs("n", 800, 1000, 56.0, 57.0, STEP),
    departs("p", 0, 3, 6.0, 10.0, KNOWN),
    departs("p", 1600, 2000, 170.0, 165.0, STEP),
    departs("p", 2000, 2500, 195.0, 200.0, STEP),
    departs("r", 0, 3, 10.0, 9.0, SMALL),
    departs("r", 10, 14, 23.0, 22.0, STEP),
    departs("r", 14, 18, 23.0, 22.0, STEP),
    departs("r", 30, 40, 34.0, 33.0, STEP),
    departs("r", 40, 50, 34.0, 33.0, STEP),
    departs("r", 140, 160, 65.0, 66.0, STEP),
    departs("r", 180, 200, 77.0, 78.0, STEP),
    departs("r", 200, 225, 80.0, 81.0, STEP),
    departs("r", 450, 500, 132.0, 130.0, STEP),
    departs("r", 1400, 1600, 330.0, 320.0, KNOWN),
    departs("r", 2500, 2800, 550.0, 540.0, STEP),
    departs("s", 0, 3, 14.0, 15.0, SMALL),
    departs("s", 630, 710, 340.0, 350.0, STEP),
    departs("s", 1250, 1400, 640.0, 660.0, STEP),
    departs("s", 1800, 2000, 920.0, 900.0, STEP),
    departs("t", 24, 30, 41.0, 38.0, KNOWN),
    departs("t", 30, 40, 48.0, 47.0, STEP),
    departs("t", 40, 50, 54.0, 53.0, STEP),
    departs("t", 560, 630, 450.0, 440.0, STEP),
    departs("t", 1120, 1250, 840.0, 860.0, STEP),
    departs("u", 0, 3, 18.0, 12.0, SMALL),
    departs("u", 3, 6, 23.0, 16.0, SMALL),
    departs("u", 6, 10, 28.0, 23.0, SMALL),
    departs("u", 10, 14, 33.0, 30.0, FREE),
    departs("u", 14, 18, 33.0, 34.0, STEP),
    departs("u", 18, 24, 41.0, 42.0, STEP),
    departs("u", 400, 450, 490.0, 485.0, STEP),
    departs("u", 450, 500, 540.0, 535.0, STEP),
    departs("v", 14, 18, 39.0, 38.0, STEP),
    departs("x", 0, 3, 20.0, 13.0, SMALL),
    departs("x", 3, 6, 28.0, 19.0, SMALL),
    departs("x", 6, 10, 34.0, 27.0, SMALL),
    departs("x", 10, 14, 40.0, 37.0, FREE),
    departs("x", 14, 18, 45.0, 43.0, FREE),
    departs("z", 0, 3, 26.0, 14.0, SMALL),
    departs("z", 3, 6, 35.0, 23.0, SMALL),
    departs("z", 6, 10, 42.0, 34.0, SMALL),
    departs("z", 10, 14, 50.0, 48.0, FREE),
    departs("z", 14, 18, 60.0, 58.0, FREE),
    departs("za", 0, 3, 32.0, 19.0, SMALL),
    departs("za", 3, 6, 42.0, 31.0, SMALL),
    departs("za", 6, 10, 52.0, 46.0, SMALL),
    departs("zb", 0, 3, 40.0, 32.0, SMALL),
    departs("zb", 3, 6, 50.0, 47.0, SMALL),
    departs("zb", 14, 18, 108.0, 106.0, STEP),
    departs("zb", 40, 50, 242.0, 240.0, STEP),
    departs("zc", 0, 3, 60.0, 49.0, SMALL),
    departs("zc", 3, 6, 80.0, 69.0, SMALL),
];

/// Geometric mean of a range; the first one begins at 1 mm.
fn mean(over: u32, up_to: u32) -> f64 {
    (f64::from(over.max(1)) * f64::from(up_to)).sqrt()
}

/// To a multiple of the first step whose end the figure is not above.
fn rounded(value: f64, steps: &[(f64, f64)]) -> f64 {
    let (_, step) = steps
        .iter()
        .find(|(end, _)| value <= *end)
        .unwrap_or_else(|| panic!("no rounding step for {value}"));
    (value / step).round() * step
}

const TOLERANCE_STEPS: &[(f64, f64)] = &[(100.0, 1.0), (200.0, 5.0), (500.0, 10.0)];
const TOLERANCE_STEPS_OVER_500: &[(f64, f64)] =
    &[(60.0, 1.0), (100.0, 2.0), (200.0, 5.0), (500.0, 10.0), (1000.0, 20.0)];
const A_TO_G_STEPS: &[(f64, f64)] =
    &[(45.0, 1.0), (60.0, 2.0), (200.0, 5.0), (500.0, 10.0), (1000.0, 20.0), (2000.0, 50.0)];
const K_TO_ZC_STEPS: &[(f64, f64)] = &[
    (100.0, 1.0),
    (300.0, 2.0),
    (600.0, 5.0),
    (800.0, 10.0),
    (1000.0, 20.0),
    (2000.0, 50.0),
    (5000.0, 100.0),
];
const D_TO_U_STEPS_OVER_500: &[(f64, f64)] = &[
    (60.0, 1.0),
    (100.0, 2.0),
    (200.0, 5.0),
    (500.0, 10.0),
    (1000.0, 20.0),
    (2000.0, 50.0),
    (5000.0, 100.0),
];
/// The figures of IT01 to IT4 below 10 µm; whole micrometres above.
const FINE: [f64; 18] =
    [0.3, 0.4, 0.5, 0.6, 0.8, 1.0, 1.2, 1.5, 2.0, 2.5, 3.0, 3.5, 4.0, 4.5, 5.0, 6.0, 7.0, 8.0];

fn rounded_fine(value: f64) -> f64 {
    if value > 8.5 {
        return value.round();
    }
    let off = |figure: &f64| (figure - value).abs();
    FINE.into_iter().min_by(|one, other| off(one).total_cmp(&off(other))).unwrap()
}

/// The tabulated values, by main range.
struct Tolerances(Vec<Row>);

impl Tolerances {
    fn at(&self, over: u32, up_to: u32, grade: &str) -> f64 {
        let grade = format!("IT{grade}");
        self.0
            .iter()
            .find(|row| {
                row.text("grade") == grade
                    && row.get::<u32>("over_mm") <= over
                    && up_to <= row.get::<u32>("upto_mm")
            })
            .unwrap_or_else(|| panic!("no {grade} over {over} up to {up_to}"))
            .get("value_um")
    }

    /// The formula of a grade in a main range, rounded.
    fn by_formula(&self, over: u32, up_to: u32, grade: &str) -> f64 {
        let d = mean(over, up_to);
        let unit = if up_to <= 500 { 0.45 * d.cbrt() + 0.001 * d } else { 0.004 * d + 2.1 };
        let it1 = 0.8 + 0.020 * d;
        let step = |number: i32| it1 * (7.0 * unit / it1).powf(f64::from(number - 1) / 4.0);
        let large = up_to > 500;
        let multiple = match grade {
            "01" => return rounded_fine(0.3 + 0.008 * d),
            "0" => return rounded_fine(0.5 + 0.012 * d),
            "1" if !large => return rounded_fine(it1),
            "2" if !large => return rounded_fine(step(2)),
            "3" if !large => return rounded_fine(step(3)),
            "4" if !large => return rounded_fine(step(4)),
            "1" => 2.0,
            "2" => 2.7,
            "3" => 3.7,
            "4" => 5.0,
            "5" => 7.0,
            "6" => 10.0,
            "7" => 16.0,
            "8" => 25.0,
            "9" => 40.0,
            "10" => 64.0,
            _ => {
                let finer = grade.parse::<u32>().unwrap() - 5;
                return 10.0 * self.at(over, up_to, &finer.to_string());
            }
        };
        rounded(multiple * unit, if large { TOLERANCE_STEPS_OVER_500 } else { TOLERANCE_STEPS })
    }
}

/// Holds cells to their formulas and the ledger, and counts those that agree.
fn hold(cells: &[(String, u32, u32, f64, f64)], ledger: &[Departure]) -> usize {
    let same = |one: f64, other: f64| (one - other).abs() < 1e-6;
    let mut unlisted = Vec::new();
    let mut agreed = 0;
    for (what, over, up_to, table, formula) in cells {
        let entry = ledger
            .iter()
            .find(|entry| (entry.what, entry.over, entry.up_to) == (what, *over, *up_to));
        match (same(*table, *formula), entry) {
            (true, None) => agreed += 1,
            (true, Some(entry)) => panic!(
                "{what} over {over} up to {up_to}: agrees now, delete the entry ({})",
                entry.reason
            ),
            (false, Some(entry)) => assert!(
                same(entry.table, *table) && same(entry.formula, *formula),
                "{what} over {over} up to {up_to}: table {table}, formula {formula}; the entry says {} and {}",
                entry.table,
                entry.formula
            ),
            (false, None) => unlisted.push(format!(
                "    departs({what:?}, {over}, {up_to}, {table:.1}, {formula:.1}, REASON),"
            )),
        }
    }
    assert!(
        unlisted.is_empty(),
        "{} cells are not what the formula gives:\n{}",
        unlisted.len(),
        unlisted.join("\n")
    );
    let mut seen = HashSet::new();
    for entry in ledger {
        let name = (entry.what, entry.over, entry.up_to);
        assert!(seen.insert(name), "{name:?} stands twice");
        assert!(
            cells.iter().any(|(what, over, up_to, ..)| name == (what, *over, *up_to)),
            "{name:?} names no cell: delete the entry"
        );
    }
    agreed
}

#[test]
fn standard_tolerances_follow_their_formulas_or_the_ledger() {
    let tolerances = Tolerances(rows("data/iso286/grades.csv"));
    let cells: Vec<_> = tolerances
        .0
        .iter()
        .map(|row| {
            let (over, up_to) = (row.get("over_mm"), row.get("upto_mm"));
            let grade = row.text("grade");
            (
                grade.to_owned(),
                over,
                up_to,
                row.get("value_um"),
                tolerances.by_formula(over, up_to, &grade[2..]),
            )
        })
        .collect();
    assert_eq!(cells.len(), 13 * 20 + 8 * 18);
    let agreed = hold(&cells, TOLERANCES);
    assert!(agreed >= 330, "only {agreed} of {} agree", cells.len());
}

#[test]
fn each_fifth_grade_is_ten_times_as_coarse() {
    let tolerances = Tolerances(rows("data/iso286/grades.csv"));
    let mut exceptions = Vec::new();
    for range in MAIN.windows(2) {
        for number in 6..=13 {
            let fine = tolerances.at(range[0], range[1], &number.to_string());
            let coarse = tolerances.at(range[0], range[1], &(number + 5).to_string());
            if (coarse - 10.0 * fine).abs() > 1e-9 {
                exceptions.push((range[0], range[1], number, fine, coarse));
            }
        }
    }
    assert_eq!(exceptions, [(3, 6, 6, 8.0, 75.0)]);
}

/// The formula of a shaft's deviation, without its sign, rounded; `None` for
/// one that has none.
fn shaft_by_formula(
    tolerances: &Tolerances,
    shafts: &[Row],
    letter: &str,
    over: u32,
    up_to: u32,
    table: f64,
) -> Option<f64> {
    let d = mean(over, up_to);
    let it = |grade: &str| tolerances.at(over, up_to, grade);
    let large = up_to > 500;
    let unrounded = |letter: &str| match letter {
        "a" if d <= 120.0 => 265.0 + 1.3 * d,
        "a" => 3.5 * d,
        "b" if d <= 160.0 => 140.0 + 0.85 * d,
        "b" => 1.8 * d,
        "c" if d <= 40.0 => 52.0 * d.powf(0.2),
        "c" => 95.0 + 0.8 * d,
        "d" => 16.0 * d.powf(0.44),
        "e" => 11.0 * d.powf(0.41),
        "f" => 5.5 * d.powf(0.41),
        "g" => 2.5 * d.powf(0.34),
        "k" if large => 0.0,
        "k" => 0.6 * d.cbrt(),
        "m" if large => 0.024 * d + 12.6,
        "m" => it("7") - it("6"),
        "n" if large => 0.04 * d + 21.0,
        "n" => 5.0 * d.powf(0.34),
        "p" if large => 0.072 * d + 37.8,
        "p" => it("7"),
        "s" if !large && d <= 50.0 => it("8"),
        "s" => it("7") + 0.4 * d,
        "t" => it("7") + 0.63 * d,
        "u" => it("7") + d,
        "v" => it("7") + 1.25 * d,
        "x" => it("7") + 1.6 * d,
        "y" => it("7") + 2.0 * d,
        "z" => it("7") + 2.5 * d,
        "za" => it("8") + 3.15 * d,
        "zb" => it("9") + 4.0 * d,
        "zc" => it("10") + 5.0 * d,
        other => panic!("no formula for {other}"),
    };
    // Of the tabulated neighbours; the sub-range that begins where this one does.
    let of_two = |one: &str, other: &str| {
        let tabulated = |letter: &str| -> f64 {
            let row = shafts.iter().find(|row| {
                row.text("letter") == letter
                    && row.get::<u32>("over_mm") <= over
                    && over < row.get::<u32>("upto_mm")
            });
            row.expect(letter).get("value_um")
        };
        (tabulated(one) * tabulated(other)).sqrt()
    };
    // The formulas of p and of small s leave a choice: IT7 + 0 to 5 µm, IT8 + 1 to 4 µm.
    let within = |least: f64, most: f64| Some(table.clamp(least, most));
    let value = match letter {
        "h" => return Some(0.0),
        "j" => return None,
        "cd" => of_two("c", "d"),
        "ef" => of_two("e", "f"),
        "fg" => of_two("f", "g"),
        "p" if !large => return within(it("7"), it("7") + 5.0),
        "s" if !large && d <= 50.0 => return within(it("8") + 1.0, it("8") + 4.0),
        "r" => of_two("p", "s"),
        _ => unrounded(letter),
    };
    let steps = if large {
        D_TO_U_STEPS_OVER_500
    } else if letter < "h" {
        A_TO_G_STEPS
    } else {
        K_TO_ZC_STEPS
    };
    Some(rounded(value, steps))
}

#[test]
fn shaft_deviations_follow_their_formulas_or_the_ledger() {
    let tolerances = Tolerances(rows("data/iso286/grades.csv"));
    let shafts = rows("data/iso286/shaft_deviations.csv");
    let mut without = 0;
    let mut cells = Vec::new();
    for row in &shafts {
        let (over, up_to) = (row.get("over_mm"), row.get("upto_mm"));
        let letter = row.text("letter");
        let table = row.get::<f64>("value_um").abs();
        if letter == "k" && row.text("grades") != "4-7" {
            assert!(table.abs() < 1e-9, "{row}: k in other grades is 0");
            continue;
        }
        match shaft_by_formula(&tolerances, &shafts, letter, over, up_to, table) {
            Some(formula) => cells.push((letter.to_owned(), over, up_to, table, formula)),
            None => without += 1,
        }
    }
    assert_eq!(without, 13 + 13 + 1, "j has no formula");
    let agreed = hold(&cells, DEVIATIONS);
    assert!(agreed >= 480, "only {agreed} of {} agree", cells.len());
}
