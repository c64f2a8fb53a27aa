//! A clearance hole goes by the screw's diameter: sizes without a coarse pitch
//! have theirs too.

use fits_checks::rows;
use fits_repl::{answer::Answer, session::Session};

fn holes(query: &str) -> Vec<f64> {
    match Session::new().evaluate(query) {
        Ok(Answer::ClearanceHole(answer)) => {
            answer.holes.iter().map(|hole| hole.min_mm.0.millimetres()).collect()
        }
        other => panic!("{query}: {other:?}"),
    }
}

#[test]
fn every_listed_screw_has_its_holes_by_the_size_alone() {
    let mut sizes: Vec<String> = Vec::new();
    for row in rows("data/threads/clearance_holes.csv") {
        let size = row.text("size").replace("No. ", "#");
        if !sizes.contains(&size) {
            sizes.push(size);
        }
    }
    assert!(sizes.len() > 50, "{}", sizes.len());
    for size in &sizes {
        // A bare whole number is a size for a fit, unless a thread is said.
        assert_eq!(holes(&format!("thread {size} clearance")).len(), 3, "{size}");
    }
}

#[test]
fn m80_and_number_nought_by_the_tables() {
    // ISO 273:1979, fine, medium, coarse.
    assert_eq!(holes("M80 clearance"), [82.0, 86.0, 91.0]);
    // ASME B18.2.8, No. 0: normal 0.076 in.
    assert!((holes("#0 clearance")[1] - 0.076 * 25.4).abs() < 1e-6);
}

#[test]
fn what_depends_on_the_pitch_still_asks_for_it() {
    for query in ["M80", "M80 tap", "#0", "#0 tap", "#7 clearance", "M7.3 clearance"] {
        assert!(Session::new().evaluate(query).is_err(), "{query}");
    }
}
