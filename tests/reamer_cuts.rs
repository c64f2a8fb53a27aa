//! What a reamer cut, over or under: how it stands to H7, the pin in hand, and what
//! to try. What to do is common practice without a source; what is judged is ISO
//! 286-2: at 6 to 10 mm H7 is 0 to 15 um, H8 to 22, H9 to 36, H10 to 58.

use fits_checks::{ask, takes};
use fits_repl::session::Session;
use serde_json::Value;

fn answer(query: &str) -> Value {
    takes(&mut Session::new(), query)
}

#[test]
fn the_hole_is_judged_by_the_class_it_is_in() {
    for (hole, cuts, class) in [
        ("8.000mm", "usual", "H5"),
        ("8.015mm", "usual", "H7"),
        ("8.016mm", "over", "H8"),
        ("8.022mm", "over", "H8"),
        ("8.036mm", "over", "H9"),
        ("8.037mm", "wild", "H10"),
        ("7.999mm", "under", ""),
    ] {
        let found = answer(&format!("reamer 8mm cut {hole}"));
        assert_eq!(found["cuts"], cuts, "{hole}: {found}");
        assert_eq!(found["class"].as_str().unwrap_or_default(), class, "{hole}: {found}");
        assert_eq!(found["remedies"].as_array().unwrap().is_empty(), cuts == "usual", "{found}");
    }
}

/// 0.2508 in takes a 0.2502 in pin with 6 tenths, and a dowel of B18.8.2, 0.2501 to
/// 0.2503, with 5 to 7.
#[test]
fn the_pins_in_it() {
    let found = answer("reamer 1/4in cut 0.2508in, pin 0.2502in");
    assert!((found["over_mm"].as_f64().unwrap() - 0.020_32).abs() < 1e-9);
    assert_eq!(found["class"], "H8");
    let play = |found: &Value, at: usize, end: &str| {
        found["pin_fits"][at]["clearance"][end].as_f64().unwrap() / 0.00254
    };
    assert!((play(&found, 0, "min_mm") - 6.0).abs() < 1e-6, "{found}");
    let dowel = answer("reamer 1/4in cut 0.2508in");
    assert_eq!(dowel["pin_fits"][1]["pin_name"], "inch dowel pin", "{dowel}");
    assert!((play(&dowel, 1, "min_mm") - 5.0).abs() < 1e-6, "{dowel}");
    assert!((play(&dowel, 1, "max_mm") - 7.0).abs() < 1e-6, "{dowel}");
    // What it offers to keep is taken.
    let remember = found["remember"].as_str().unwrap();
    assert_eq!(remember, "crib add reamer 0.25in cuts 0.2508in");
}

/// A reamer that is itself over cuts so however it runs.
#[test]
fn a_reamer_that_is_over_is_not_blamed_on_the_set_up() {
    let found = answer("reamer 1/4in cut 0.2511in, measures 0.2509in");
    assert_eq!(found["remedies"], serde_json::json!(["mic-reamer"]), "{found}");
    let runs_out = answer("reamer 1/4in cut 0.2511in, measures 0.2502in");
    assert_eq!(runs_out["remedies"][0], "run-true", "{runs_out}");
}

#[test]
fn phrases_and_refusals() {
    let mut session = Session::new();
    for phrase in [
        "reamer 1/4 cut .2508",
        "my 1/4 reamer cuts .2508",
        "a 1/4 reamer cut .2508 for a pin .2502",
    ] {
        let found = takes(&mut session, phrase);
        assert_eq!(found["answer"], "reamer_cut", "{phrase}: {found}");
        assert!((found["over_mm"].as_f64().unwrap() - 0.020_32).abs() < 1e-9, "{phrase}: {found}");
    }
    for query in [
        "reamer 1/4in cut 0.3in",
        "reamer 1/4in cut",
        "reamer 1/4in cut 0.2508in, pin 6in",
        "reamer 1/4in cut 0.2508in, wobbly",
        "reamer 0in cut 0in",
    ] {
        let refused = ask(&mut session, query);
        assert!(refused["error"].is_object(), "{query}: {refused}");
        let hint = refused["error"]["hint"].as_str().unwrap_or_default().to_owned();
        for works in hint.split('`').skip(1).step_by(2) {
            takes(&mut session, works);
        }
    }
}
