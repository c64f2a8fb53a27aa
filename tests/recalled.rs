//! A recalled figure says so where it is used, in the text by one `!` line and in
//! JSON by `known`, in every kind of question; and what was read does not say it.

use std::collections::BTreeMap;

use fits_checks::rows;
use fits_core::standards::iso286::Class;
use fits_repl::{
    answer::SettingsAnswer,
    query::{Dial, Units},
    render::{Colour, text::Text},
    session::Session,
};
use serde_json::Value;

const PLAIN: Text = Text {
    settings: SettingsAnswer { units: Units::Millimetres, dial: Dial::Diameter },
    colour: Colour::Off,
};

/// How often a line of the text says that something is recalled, and whether any
/// `known` of the JSON does.
fn said(query: &str) -> (usize, bool) {
    let answer =
        Session::new().evaluate(query).unwrap_or_else(|error| panic!("{query}: {error:?}"));
    let text = PLAIN.answer(&answer);
    let lines = text.lines().filter(|line| line.starts_with("! unconfirmed")).count();
    (lines, recalls(&serde_json::to_value(&answer).unwrap()))
}

fn recalls(json: &Value) -> bool {
    match json {
        // Reamers off the shelf say it in their own line, at a prompt in inches.
        Value::Object(fields) => fields
            .iter()
            .filter(|(name, _)| *name != "inch_reamers")
            .any(|(name, value)| (name == "known" && value == "memory") || recalls(value)),
        Value::Array(list) => list.iter().any(recalls),
        _ => false,
    }
}

fn says_it_once(query: &str) {
    assert_eq!(said(query), (1, true), "{query}");
}

fn says_nothing(query: &str) {
    assert_eq!(said(query), (0, false), "{query}");
}

// 20 cd9 rests on a deviation that data/iso286/shaft_deviations.csv recalls; 20 f7 and
// 20 H7 on cells that were read.
#[test]
fn every_kind_of_question_passes_it_on() {
    for query in [
        "20 cd9",
        "20 H8/cd9",
        "20 cd9 = 19.9",
        "20 H8/cd9 = 20.01/19.9",
        "turn 20 cd9 from 22",
        "ream 20 CD8",
        "stack 20 cd9 -17 ±0.05",
        "20 H8/cd9 warm 60C, hole steel, shaft brass",
        "20 H7/g6 warm 60C, hole PEEK, shaft steel",
        "pick 20 holds 30 Nm, hub 303 od 40 long 25",
        // Friction is recalled whatever the metal.
        "pick 20 holds 30 Nm, hub 1045 od 40 long 25",
        "assemble 20 H7/s6, hub steel 12L14 od 40 long 25, shaft steel",
        "bushing 20 od 26 long 20, hub steel, bronze",
        "bushing 20 od 26 long 20, hub steel, bronze, warm 50C",
        "assemble 20 H7/s6, hub 1045 od 40 long 25, shaft steel",
        "assemble 20 H7/s6, hub 303 od 40 long 25, shaft steel",
        "1100 grade IT4",
        "pick 20 clearance 0.012..0.030",
        "10in LC7",
        "4in FN2",
        "2mm K9",
        "assemble 20 H7/s6, hub tool steel od 40 long 25, shaft steel",
        "assemble 20 H7/s6, hub steel 12L14 od 40 long 25, shaft steel, shrink",
        "bushing 20 od 26 long 20, hub steel, bronze, for spindle",
        "bushing 20 od 26 long 20, hub steel, nylon",
        "bushing 20 od 26 long 20, hub 303, bronze",
    ] {
        says_it_once(query);
    }
    for query in [
        "20 f7",
        "20 H7/f7",
        "20 f7 = 19.97",
        "turn 20 f7 from 22",
        "stack 20 f7 -17 ±0.05",
        "20 H7/g6 warm 60C, hole steel, shaft brass",
        "20 grade 7",
        "3/4in grade 8",
        "12.5 general m",
        "40 general m angle",
        "pick 60 clearance 0.01..0.06",
        "seat shaft 25 turns normal",
        "1in FN2",
        "keyway for 20mm",
        "2mm K8",
    ] {
        says_nothing(query);
    }
}

/// The middle of a range in millimetres.
fn middle(row: &fits_checks::Row, from: &str, to: &str) -> f64 {
    f64::midpoint(row.get(from), row.get(to))
}

#[test]
fn every_recalled_grade_says_so_and_no_other() {
    let mut recalled = 0;
    for row in rows("data/iso286/grades.csv") {
        let at = middle(&row, "over_mm", "upto_mm");
        let is_recalled = row.text("status") == "MEMORY";
        // One of each other kind is enough: the rest is one branch.
        if !is_recalled && at < 500.0 && row.text("grade") != "IT7" {
            continue;
        }
        let query = format!("{at}mm grade {}", row.text("grade"));
        if is_recalled {
            recalled += 1;
            says_it_once(&query);
        } else {
            says_nothing(&query);
        }
    }
    assert!(recalled >= 9, "{recalled}");
}

#[test]
fn every_recalled_deviation_says_so() {
    let mut recalled = 0;
    for row in rows("data/iso286/shaft_deviations.csv") {
        if row.text("status") != "MEMORY" {
            continue;
        }
        let at = middle(&row, "over_mm", "upto_mm");
        let class = format!("{}9", row.text("letter"));
        let size: fits_core::Length = format!("{at}mm").parse().unwrap();
        if class.parse::<Class>().unwrap().limits(size).is_ok() {
            recalled += 1;
            says_it_once(&format!("{at}mm {class}"));
            says_it_once(&format!("stack {at}mm {class} -2 ±0.05"));
        }
    }
    assert!(recalled >= 8, "{recalled}");
}

#[test]
fn every_class_of_b4_1_names_the_standard_and_says_what_is_recalled() {
    let mut recalled = 0;
    for table in ["rc", "lc", "lt", "ln", "fn"] {
        for row in rows(&format!("data/b41/{table}.csv")) {
            assert!(row.text("source").contains("B4.1"), "{row}");
            let at = middle(&row, "over_in", "upto_in");
            let query = format!("{at:.3}in {}", row.text("class"));
            if row.text("status") == "MEMORY" {
                recalled += 1;
                says_it_once(&query);
            } else {
                says_nothing(&query);
            }
        }
    }
    assert!(recalled >= 27, "{recalled}");
}

#[test]
fn every_recalled_drill_says_so() {
    let mut recalled = 0;
    for row in rows("data/drills/drills.csv") {
        if row.text("status") == "MEMORY" {
            recalled += 1;
            says_it_once(&format!("drill {}{}", row.text("size"), row.text("unit")));
        }
    }
    assert!(recalled >= 40, "{recalled}");
}

/// The recalled rows of a table.
fn recalled_rows(table: &str) -> Vec<fits_checks::Row> {
    rows(table).into_iter().filter(|row| row.text("status") == "MEMORY").collect()
}

/// A size of a row of bought-in parts: its end, or the middle of a range whose end
/// belongs to the next row.
fn bought_size(row: &fits_checks::Row) -> String {
    let (start, end) = (row.text("start"), row.text("end"));
    let inside = match (end.strip_prefix('<'), start.strip_prefix('>')) {
        (Some(end), _) => {
            let start: f64 = start.trim_start_matches('>').parse().unwrap();
            f64::midpoint(start, end.parse().unwrap()).to_string()
        }
        (None, Some(_)) if end.is_empty() => "50".to_owned(),
        (None, None) if end.is_empty() => start.to_owned(),
        _ => end.to_owned(),
    };
    format!("{inside}{}", row.text("unit"))
}

// A bar's size is one that is sold; 0.15 in is only where a range ends.
#[test]
fn every_recalled_part_off_the_shelf_says_so() {
    let mut recalled = 0;
    for table in ["bar", "bearings", "bushings", "keys", "pins", "screws", "tube"] {
        for row in recalled_rows(&format!("data/bought/{table}.csv")) {
            let family = match row.text("family") {
                "turned, ground and polished bar" => "tgp",
                family => family,
            };
            let size = match bought_size(&row) {
                end if end == "0.15in" => "1/8in".to_owned(),
                size => size,
            };
            recalled += 1;
            says_it_once(&format!("{family} {size}"));
        }
    }
    assert!(recalled >= 90, "{recalled}");
}

#[test]
fn every_recalled_figure_of_a_material_says_so() {
    let mut by_material: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for row in recalled_rows("data/materials.csv") {
        let figures = by_material.entry(row.text("material").to_owned()).or_default();
        figures.push(row.text("figure").to_owned());
    }
    let mut recalled = 0;
    for (material, figures) in by_material {
        let has = |figure: &str| figures.iter().any(|it| it == figure);
        let strength = ["modulus_gpa", "poisson", "yield_mpa", "tensile_mpa"];
        if strength.into_iter().any(has) {
            recalled += 1;
            says_it_once(&format!("assemble 20 H7/s6, hub {material} od 40 long 25, shaft steel"));
            says_it_once(&format!("assemble 20 H7/s6, hub steel od 40 long 25, shaft {material}"));
        }
        // A warm pair reads their numbers as classes, and refuses.
        let is_class = ["C95400", "C86300"].iter().any(|it| material.ends_with(it));
        if has("expansion_per_c_e6") && !is_class {
            recalled += 1;
            says_it_once(&format!("20 H7/g6 warm 40C, hole {material}, shaft steel"));
            says_it_once(&format!("20 H7/g6 warm 40C, hole steel, shaft {material}"));
        }
    }
    assert!(recalled >= 90, "{recalled}");
}

#[test]
fn recalled_swelling_says_so() {
    let swelling = recalled_rows("data/swelling.csv");
    assert!(swelling.len() >= 3);
    for row in swelling {
        let material = row.text("material");
        says_it_once(&format!("20 H7/g6 warm 40C, hole {material}, shaft steel"));
        says_it_once(&format!("bushing 20 od 26 long 20, hub steel, {material}"));
    }
}

#[test]
fn recalled_running_clearance_says_so() {
    let running = recalled_rows("data/bushings/running.csv");
    assert!(running.len() >= 15, "{}", running.len());
    for row in running {
        let bore: f64 = row.get("diameter_in");
        let (od, service) = (bore + 0.5, row.text("service"));
        says_it_once(&format!(
            "bushing {bore}in od {od}in long {bore}in, hub steel, bronze, for {service}"
        ));
    }
}

#[test]
fn recalled_deviations_of_holes_say_so() {
    let mut recalled = 0;
    for row in recalled_rows("data/iso286/hole_exceptions.csv") {
        // Grades coarser than 8.
        assert_eq!(row.text("grades"), ">8", "{row}");
        let at = middle(&row, "over_mm", "upto_mm");
        for grade in 9..=11 {
            recalled += 1;
            says_it_once(&format!("{at}mm {}{grade}", row.text("letter")));
        }
    }
    assert!(recalled >= 3, "{recalled}");
    // Every delta was read, or follows.
    assert!(recalled_rows("data/iso286/delta.csv").is_empty());
}
