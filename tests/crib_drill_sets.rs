//! Sets of drills, as they are called at the bench: fractions are of an inch,
//! numbers are names.

use fits_repl::{
    render::{Colour, text::Text},
    session::Session,
};

/// The crib's text after a set is added.
fn added(units: &str, set: &str) -> Result<String, String> {
    let mut session = Session::new();
    let mut ask = |query: &str| session.evaluate(query).map_err(|problem| problem.message);
    ask(&format!("units {units}"))?;
    let answer = ask(&format!("crib add drill set {set}"))?;
    Ok(Text { settings: session.shown(), colour: Colour::Off }.answer(&answer))
}

#[test]
fn bare_fractions_are_of_an_inch_and_numbers_are_names() {
    for units in ["mm", "in"] {
        // 1/16 to 1/2 by sixty-fourths: 4/64 to 32/64.
        let text = added(units, "fraction 1/16..1/2 step 1/64").unwrap();
        assert!(text.contains("0.0625 in to 0.5 in by 0.015625 in: 29 drills"), "{text}");
        let text = added(units, "fraction 1/16..1/2").unwrap();
        assert!(text.contains("1/16 in to 1/2 in: 29 drills"), "{text}");
        for set in ["number 1..60", "number 60..1", "number #1..#60"] {
            let text = added(units, set).unwrap();
            assert!(text.contains("number #1 to #60: 60 drills"), "{set}: {text}");
        }
    }
    let text = added("mm", "metric 1..13 step 0.5").unwrap();
    assert!(text.contains("1 mm to 13 mm by 0.5 mm: 25 drills"), "{text}");
}

#[test]
fn a_numbered_set_has_no_step_and_no_such_number_is_refused() {
    assert_eq!(added("mm", "number 1..60 step 1").unwrap_err(), "number drills have no step");
    assert!(added("mm", "number 1..600").is_err());
}
