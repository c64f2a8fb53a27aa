//! Joints, bushings, warm pairs and stacks as a machinist asks them: what is
//! taken, what is refused and with what to do, in the units of the question.

use fits_checks::near;
use fits_repl::{
    problem::Problem,
    render::{Colour, json, text::Text},
    session::Session,
};
use serde_json::Value;

fn answer(query: &str) -> Value {
    let mut out = Vec::new();
    json::object(&mut out, None, query, &Session::new().evaluate(query));
    serde_json::from_slice(&out).unwrap_or_else(|error| panic!("{query}: {error}"))
}

fn coloured(query: &str, colour: Colour) -> String {
    let mut session = Session::new();
    let answer =
        session.evaluate(query).unwrap_or_else(|problem| panic!("{query}: {}", problem.message));
    Text { settings: session.shown(), colour }.answer(&answer)
}

fn words(query: &str) -> String {
    coloured(query, Colour::Off)
}

fn problem(line: &str) -> Problem {
    match Session::new().evaluate(line) {
        Ok(answer) => panic!("`{line}` was answered: {answer:?}"),
        Err(problem) => problem,
    }
}

/// The message, the place and a part of the hint; what it offers is answered.
#[track_caller]
fn refused(line: &str, message: &str, at: &str, hint: &str) {
    let problem = problem(line);
    assert_eq!(problem.message, message, "{line}");
    assert_eq!(line.get(problem.at.clone()), Some(at), "{line}: the place");
    let said = problem.hint(line);
    assert!(said.contains(hint), "{line}: {said}");
    for query in said.split('`').skip(1).step_by(2).filter(|query| query.contains(' ')) {
        assert!(Session::new().evaluate(query).is_ok(), "{line}: the hint offers `{query}`");
    }
}

#[test]
fn refusals_say_where_and_what_instead() {
    for (line, message, at, hint) in [
        (
            "pick 20 holds 30 Nm, hub steel od 40 long 25, interference 0.03",
            "the interference is what `pick` finds",
            "0.03",
            "`assemble 20 interference 0.03",
        ),
        (
            "pick 20 holds 30 Nm, hub steel od 40 long 25, clearance 0.01",
            "`pick` does not take heat",
            "0.01",
            "`assemble 20 H7/s6",
        ),
        (
            "pick 20 holds 30 Nm, hub steel od 40 long 25, within 30 s",
            "`pick` does not take heat",
            "30 s",
            "`assemble 20 H7/s6",
        ),
        (
            "assemble 3/4in slip, hub 4140 od 2in long 1in",
            "nothing presses: the parts are loose by 0.3 thou to 1.6 thou",
            "3/4in slip",
            "as FN1",
        ),
        (
            "bushing 3/4in od 0.7in long 1in, hub steel, bronze",
            "an outside diameter of 0.7 in leaves no wall about a bore of 0.75 in",
            "0.7in",
            "",
        ),
        (
            "assemble 1in FN2, hub steel od 0.9in long 1in",
            "an outside diameter of 0.9 in leaves no wall about a bore of 1 in",
            "0.9in",
            "larger",
        ),
        (
            "bushing 3/4in lined",
            "lined wrapped bushing bore 0.75 in is not listed",
            "3/4in",
            "15 mm, 20 mm",
        ),
        (
            "bushing 3/4in od 1in long 1in, hub steel, nylon, warm 250F",
            "nylon 66 is not run at 250 °F: its limit is 212 °F",
            "250F",
            "",
        ),
    ] {
        refused(line, message, at, hint);
    }
}

#[test]
fn slips_are_mended() {
    for (line, message, at, hint) in [
        (
            "bushing 20 od 26 long 25, hub steel, bronze, gneral",
            "`gneral` is not understood here",
            "gneral",
            "`bushing 20 od 26 long 25, hub steel, bronze, general`",
        ),
        (
            "assemble 3/4in FN2, hub steel od 1.5 long 1",
            "this number has no unit: the question is in inches, bare numbers are millimetres",
            "1.5",
            "`assemble 3/4in FN2, hub steel od 1.5in long 1in`",
        ),
        (
            "pick 20 holds 30 Nm",
            "the hub's outside diameter or wall is missing",
            "",
            "`pick 20, hub od 40mm long 25mm holds 30 Nm`",
        ),
        (
            "pick 20 press under 500 kg, hub steel od 40 long 25",
            "kilograms are a mass, not a force",
            "500 kg",
            "`pick 20 press under 4.903 kN, hub steel od 40 long 25`",
        ),
        (
            "assemble 20 H7/s6, hub steel od 40, shaft steel id 19.9 long 20",
            "a wall of 0.05 mm is too thin for an interference of 0.048 mm",
            "19.9",
            "smaller id",
        ),
        (
            "assemble 20 H7/s6, hub steel od 40 long 20, shaft steel id 25",
            "an outside diameter of 20 mm leaves no wall about a bore of 25 mm",
            "25",
            "smaller id",
        ),
        ("20 H7/FN2", "FN2 is an inch class of both parts and stands alone", "FN2", "`20 FN2`"),
        (
            "assemble 20 interference 0, hub steel od 40 long 25",
            "nothing presses: there is no interference",
            "0",
            "tighter",
        ),
        (
            "20 H7/g6 at 60C, hole bronze, shaft steel",
            "this goes with a reading, and none is given",
            "60C",
            "`20 H7/g6 warm 60C, hole bronze, shaft steel`",
        ),
    ] {
        refused(line, message, at, hint);
    }
}

#[test]
fn what_is_asked_elsewhere_says_where() {
    for (end, message, at, hint) in [
        ("at 400C", "`at` does not go with `assemble`", "at", "warm 100C"),
        ("heat 200C", "`heat` does not go with `assemble`", "heat", "clearance 0.03"),
        ("holds", "the torque is missing after `holds`", "", "`pick 20 holds 30 Nm"),
        ("press under 9 kN", "`press` does not go with `assemble`", "press", "press under 60 kN"),
        ("ra 1.6um", "`ra` does not go with `assemble`", "ra", "rz 6.3um"),
        ("tallow", "`tallow` is not understood here", "tallow", "friction 0.1"),
        ("molykote", "`molykote` is not understood here", "molykote", "a lubricant is dry, oil"),
    ] {
        let joint = "assemble 20 H7/s6, hub steel od 40 long 25";
        refused(&format!("{joint}, {end}"), message, at, hint);
    }
}

#[test]
fn services_are_read_as_help_words_them() {
    let bare = answer("bushing 20 od 26 long 20, hub steel, bronze, running rough");
    for end in [", rough", ", for rough", ", rough rpm 200", " rough", ", running for rough"] {
        let found = answer(&format!("bushing 20 od 26 long 20, hub steel, bronze{end}"));
        assert_eq!(found["running"], bare["running"], "{end}");
    }
    let fast = words("bushing 20 od 26 long 20, hub steel, bronze, fast spindle");
    assert!(fast.contains("for fast spindle service"), "{fast}");
}

#[test]
fn at_reference_the_slope_still_says_which_side() {
    let query = "20 H7/g6 warm 20C, hole bronze, shaft steel";
    // 20 mm x (18 - 11.7) millionths.
    near(answer(query)["change_per_c_mm"].as_f64().expect("a slope"), 0.000_126, 1e-3);
    let text = words(query);
    assert!(text.contains("binds below -36 °C"), "{text}");
    assert_eq!(answer("3/4in RC4 warm 120F, hole bronze, shaft steel")["warm"]["at_c"], 48.9);
}

#[test]
fn a_stack_that_is_far_off_says_so_and_its_aim_is_one_size() {
    let text = words("stack 12 ±0.1 -5 ±0.05 play 0.1..0.3");
    assert!(text.contains("always right         11.800 mm               0.46457 in"), "{text}");
    assert!(text.contains("far from it as given: play 0.100 to 0.300 mm is wanted"), "{text}");
    let near = words("stack 12 ±0.1 -11.8 ±0.05 play 0.1..0.3");
    assert!(!near.contains("far from it"), "{near}");
}

#[test]
fn lines_keep_to_the_screen_and_columns_stay_apart() {
    for query in [
        "stack 99999 -2x 1.4 ±0.02, tube -?, play 0.1..0.3",
        "stack 12 ±0.1 -5 ±0.05 play 0.1..0.3",
        "pick 20 clearance 33..19999",
        "pick 20 clearance 4in..19999",
        "assemble 3/4in FN2, hub steel od 1.5in long 1in",
        "assemble 20 H7/s6, hub aluminium od 40 long 25, shaft steel, warm 100C",
        "pick 20 holds 4 kN, hub steel od 40 long 25",
    ] {
        let text = words(query);
        for line in text.lines() {
            assert!(line.chars().count() <= 80, "{query}: {line}");
            for glued in ["mmuniform", "mm3", "ftat", "mat "] {
                assert!(!line.contains(glued), "{query}: {line}");
            }
        }
    }
}

#[test]
fn colour_does_not_change_where_lines_break() {
    let query = "assemble 20 H7/s6, hub steel od 40 long 25";
    let mut seen = String::new();
    for (at, piece) in coloured(query, Colour::On).split('\x1b').enumerate() {
        seen += if at == 0 { piece } else { piece.split_once('m').expect("a code").1 };
    }
    assert_eq!(seen, words(query));
}

#[test]
fn why_is_said_in_the_units_of_the_question() {
    for (query, said) in [
        (
            "why assemble 3/4in FN2, hub steel od 1.5in long 1in",
            "hub alone to = 660 °F (68 + 0.002884 in / (6.5 millionths x 0.75 in))",
        ),
        ("why assemble 3/4in FN2, hub steel od 1.5in long 1in", "pilot = 0.748 in to 0.749 in"),
        ("why bushing 3/4in od 1in long 1in, hub steel, bronze", "0.001125 in to 0.00275 in"),
        ("why 1in FN2 warm 300F, hole bronze, shaft steel", "least clearance at 300 °F"),
        ("why 1in FN2 warm 300F, hole bronze, shaft steel", "the tightest pair meets = 612.9 °F"),
        ("bushing 3/4in od 1in long 1in, hub steel, nylon, warm 120F", "120 °F dry"),
    ] {
        let text = words(query);
        assert!(text.contains(said), "{query}: {text}");
    }
}

#[test]
fn what_works_alone_works_in_a_joint() {
    let suited = answer("assemble 20 H7/s6, hole = 20.013, hub steel od 40 long 25");
    assert_eq!(suited["interference_min_mm"], 0.014);
    assert_eq!(suited["interference_max_mm"], 0.048);
    let text = words("assemble 20 H7/s6, hole = 20.013, hub steel od 40 long 25");
    assert!(text.contains("the shaft to suit: 20.027 mm to 20.061 mm"), "{text}");
    let text = words("assemble shaft 0.7510in, press, hub steel od 1.5in long 1in");
    assert!(text.contains("the hole to suit: 0.7491 in to 0.7504 in"), "{text}");
    let text = words("assemble 3/4in shrink, hub 4140 od 2in long 1in");
    assert!(text.contains("shrink FN4"), "{text}");
}

#[test]
fn a_force_along_is_held_by_the_torque_at_the_radius() {
    let along = answer("pick 20 holds 3 kN, hub steel 4140 od 40 long 25");
    let torque = answer("pick 20 holds 30 Nm, hub steel 4140 od 40 long 25");
    assert_eq!(along["holds_n"], 3000.0);
    assert_eq!(along["candidates"], torque["candidates"]);
    assert!(torque.get("holds_n").is_none());
    let blind = words("pick 20 holds 30 Nm, hub steel od 40 long 25, blind");
    assert!(blind.contains("! blind hole"), "{blind}");
}

#[test]
fn exponents_are_read_in_a_modulus_and_an_expansion() {
    let plain = answer("assemble 3/4in FN2, hub e 30Mpsi nu 0.3 alpha 6.5/F od 1.5in long 1in");
    let long = answer("assemble 3/4in FN2, hub e 30e6psi nu 0.3 alpha 6.5e-6/F od 1.5in long 1in");
    for figure in ["pressure_mpa", "heat_to_c", "press_force_n"] {
        assert!(!plain[figure].is_null(), "{figure}");
        assert_eq!(plain[figure], long[figure], "{figure}");
    }
}

// Interference less D (alpha of the hub - alpha of the shaft) (T - 20), linear
// expansion about 20 °C (ISO 1).
#[test]
fn the_grip_at_work_goes_by_what_expansion_leaves() {
    let joint =
        answer("assemble 20 H7/s6, hub aluminium od 40 long 25, shaft steel, warm 20C..100C");
    let [cold, hot] = [0, 1].map(|at| joint["at_work"][at].clone());
    assert_eq!(cold["torque_n_m"], joint["torque_n_m"]);
    assert_eq!(cold["pressure_mpa"], joint["pressure_mpa"]);
    // The pair's own clearance there, each part grown by itself.
    let pair = answer("20 H7/s6 warm 100C, hole aluminium, shaft steel");
    let grown = pair["warm"]["min_mm"].as_f64().expect("a clearance");
    near(hot["interference_max_mm"].as_f64().expect("one"), -grown, 1e-2);
    let same = answer("assemble 20 interference 0.02832, hub aluminium od 40 long 25, shaft steel");
    let pressure = |it: &Value| it["pressure_mpa"]["max"].as_f64().expect("a pressure");
    near(pressure(&hot), pressure(&same), 1e-3);
    assert_eq!(hot["torque_n_m"], 0.0);
    refused(
        "assemble 20 H7/s6, hub aluminium od 40 long 25, shaft steel, warm 200C",
        "aluminium 6061-T6 is not run at 200 °C: its limit is 150 °C",
        "200C",
        "302 °F",
    );
    assert!(answer("assemble 20 H7/s6, hub steel od 40 long 25").get("at_work").is_none());
}
