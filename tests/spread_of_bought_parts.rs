//! A bought part that varies by more than a fit allows still gets a size to ream
//! or turn, with the play that its whole spread makes: never tighter than the
//! word, looser by what it varies.
//!
//! Limits are ASME B4.1's as printed (RC4, LC5, FN2 in thou: Machinery's Handbook,
//! tables of running, locational and force fits) and B18.3's of shoulder screws;
//! the sums are made here.

use fits_checks::{ask, takes};
use fits_repl::session::Session;

fn thou(value: &serde_json::Value) -> f64 {
    (value.as_f64().unwrap_or_else(|| panic!("{value}")) / 0.0254 * 100.0).round() / 100.0
}

#[test]
fn a_hole_is_given_with_the_play_it_makes() {
    // Part's limits, the word's least and most clearance, the hole's own width:
    // all in thou.
    for (query, part, nominal, word, width) in [
        ("shoulder screw 3/8in, running", (371.0, 373.0), 375.0, (0.5, 2.0), 0.9),
        ("inch shoulder screw 1/2in, sliding", (496.0, 498.0), 500.0, (0.25, 1.35), 0.7),
        ("low-carbon cold drawn bar 3/4in, running", (748.0, 750.0), 750.0, (0.8, 2.8), 1.2),
        ("drill rod 3/8in, sliding", (374.5, 375.5), 375.0, (0.2, 1.2), 0.6),
        ("drawn-over-mandrel tube outside 1in, running", (1000.0, 1005.0), 1000.0, (0.8, 2.8), 1.2),
    ] {
        let answer = takes(&mut Session::new(), query);
        let hole = &answer["hole"];
        let lower: f64 = f64::max(part.1 + word.0, nominal);
        assert!((thou(&hole["lower_mm"]) - lower).abs() < 0.06, "{query}: {hole}");
        assert!((thou(&hole["upper_mm"]) - lower - width).abs() < 0.06, "{query}: {hole}");
        let clearance = &answer["clearance"];
        assert!(
            (thou(&clearance["min_mm"]) - (lower - part.1)).abs() < 0.06,
            "{query}: {clearance}"
        );
        assert!(
            (thou(&clearance["max_mm"]) - (lower + width - part.0)).abs() < 0.06,
            "{query}: {clearance}"
        );
        assert_eq!(answer["held_to"]["agrees"], false, "{query}");
        assert!(answer["ream"].is_object(), "{query}: a reamer makes it: {answer}");
        // What one that is measured would have is a line that works.
        let notes = answer["notes"].to_string();
        let measured = notes.split('`').nth(1).unwrap_or_else(|| panic!("{query}: {notes}"));
        let of_one = takes(&mut Session::new(), measured);
        assert!(thou(&of_one["clearance"]["max_mm"]) <= word.1 + 0.06, "{measured}: {of_one}");
    }
}

/// A press on bar: never tighter than FN2, and it says that the loosest do not hold.
#[test]
fn a_press_on_bar_says_that_the_loosest_do_not_hold() {
    let answer = takes(&mut Session::new(), "low-carbon cold drawn bar 3/4in, press");
    // FN2 at 0.71 to 0.95 in: 0.6 to 1.9 thou of interference, the hole 0.8 wide.
    assert!((thou(&answer["clearance"]["min_mm"]) + 1.9).abs() < 0.06, "{answer}");
    assert!((thou(&answer["clearance"]["max_mm"]) - 0.9).abs() < 0.06, "{answer}");
    assert!(answer["notes"].to_string().contains("do not hold"), "{answer}");
}

/// The bore of drawn tube is the hole in hand: the shaft is turned to the least.
#[test]
fn a_shaft_in_drawn_tube() {
    let answer = takes(&mut Session::new(), "drawn-over-mandrel tube bore 1in, running");
    // A513 type 5 of any outside: at most 15 thou under; RC4 at 0.71 to 1.19 in.
    let least = thou(&answer["hole"]["lower_mm"]);
    assert!((thou(&answer["shaft"]["upper_mm"]) - (least - 0.8)).abs() < 0.06, "{answer}");
    assert!((thou(&answer["clearance"]["min_mm"]) - 0.8).abs() < 0.06, "{answer}");
}

#[test]
fn phrases_name_the_screw() {
    let mut session = Session::new();
    for phrase in [
        "shoulder screw 3/8, running",
        "3/8 shoulder bolt running",
        "running fit for a 3/8 stripper bolt",
    ] {
        let answer = takes(&mut session, phrase);
        assert_eq!(answer["shaft"]["class"], "inch shoulder screw", "{phrase}: {answer}");
    }
    // A part that varies little keeps the word's whole range.
    let dowel = takes(&mut session, "dowel 1/4in, press");
    assert!(dowel["held_to"].is_null(), "{dowel}");
    let asked = ask(&mut session, "shoulder screw 8mm, running");
    assert!(asked["error"]["choices"].as_array().is_some_and(|ways| ways.len() == 2), "{asked}");
}
