//! Joints as they are typed and answered: the JSON fields, the words, what
//! inches change, the picture, and that no text is a panic.

use fits_checks::near;
use fits_repl::{
    answer::Answer,
    render::{Colour, json, svg, text::Text},
    session::Session,
};
use proptest::prelude::*;
use serde_json::Value;

fn answer(query: &str) -> Value {
    let mut out = Vec::new();
    json::object(&mut out, None, query, &Session::new().evaluate(query));
    serde_json::from_slice(&out).unwrap_or_else(|error| panic!("{query}: {error}"))
}

fn words(query: &str) -> String {
    let mut session = Session::new();
    let answer =
        session.evaluate(query).unwrap_or_else(|problem| panic!("{query}: {}", problem.message));
    Text { settings: session.shown(), colour: Colour::Off }.answer(&answer)
}

#[track_caller]
fn number(value: &Value, pointer: &str) -> f64 {
    value
        .pointer(pointer)
        .and_then(Value::as_f64)
        .unwrap_or_else(|| panic!("no number at {pointer} of {value}"))
}

/// What a joint must hold is held against what it holds at its loosest.
#[test]
fn a_joint_says_whether_it_holds_what_it_must() {
    let joint = "assemble 20mm H7/s6, hub steel 4140 prehard od 40mm long 25mm rz 0um, shaft steel";
    let held = number(&answer(joint), "/torque_n_m");
    for (share, is_held) in [(0.5, true), (0.999, true), (1.001, false), (4.0, false)] {
        let wanted = format!("{joint}, holds {:.4} Nm", held * share);
        let found = answer(&wanted);
        assert_eq!(found["must_hold"]["is_held"], is_held, "{wanted}");
        near(number(&found, "/must_hold/times"), 1.0 / share, 1e-3);
        assert_eq!(words(&wanted).contains("NOT held"), !is_held, "{wanted}");
    }
    // Along the axis as at the radius: twice the torque by the diameter.
    let along = answer(&format!("{joint}, holds {:.3} N", held / 0.01));
    near(number(&along, "/must_hold/times"), 1.0, 1e-3);
    // Aluminium lets go as it warms: the least of cold and warm counts.
    let hub = "assemble 20mm H7/s6, hub aluminium od 40mm long 25mm, shaft steel";
    let cold = answer(&format!("{hub}, holds 5 Nm"));
    assert_eq!(cold["must_hold"]["is_held"], true, "{cold}");
    let warm = answer(&format!("{hub}, warm 80C, holds 5 Nm"));
    assert_eq!(warm["must_hold"]["is_held"], false, "{warm}");
    // It goes by the length, and by a load.
    for end in ["", " long 25mm, holds 0 Nm"] {
        let short = format!("assemble 20mm H7/s6, hub steel od 40mm{end}, holds 5 Nm");
        assert!(answer(&short).get("error").is_some(), "{short}");
    }
}

#[test]
fn the_fields_that_others_rely_on() {
    let joint =
        answer("assemble 20 H7/s6, hub steel 4140 prehard od 40 long 25 rz 0um, shaft steel");
    assert_eq!(joint["answer"], "assembly");
    for (field, value) in [
        ("/nominal_mm", 20.0),
        ("/interference_min_mm", 0.014),
        ("/interference_max_mm", 0.048),
        // p = 3/8 E I / d of one stiffness.
        ("/pressure_mpa/min", 0.375 * 207_000.0 * 0.014 / 20.0),
        ("/pressure_mpa/max", 0.375 * 207_000.0 * 0.048 / 20.0),
        ("/press_force_n", 0.2 * 186.3 * std::f64::consts::PI * 500.0),
        ("/torque_n_m", 0.08 * 54.3375 * std::f64::consts::PI * 5.0),
        ("/shaft_stress_mpa", 186.3),
        ("/heat_to_c", 20.0 + 0.073 / 20.0 / 12.3e-6),
        ("/friction/min", 0.08),
    ] {
        near(number(&joint, field), value, 1e-3);
    }
    // 5/3 p around and p across.
    let counts = 186.3 * (25.0_f64 / 9.0 + 5.0 / 3.0 + 1.0).sqrt();
    near(number(&joint, "/hub_stress_mpa"), counts, 1e-4);
    assert_eq!(joint["yields"], false);
    assert_eq!(joint["bore_close_in_mm"], Value::Null);
    for field in ["cool_to_c", "cautions", "lead_in", "parts", "notes", "valid"] {
        assert!(joint.get(field).is_some(), "{field}");
    }
    let bushed =
        answer("assemble 20 interference 0.03, hub steel od 40, shaft bronze yield 200MPa id 16");
    near(number(&bushed, "/bore_close_in_mm"), 0.025_830_9, 1e-4);
}

#[test]
fn readings_words_and_interferences_come_to_the_same() {
    let by_reading = answer("assemble 20 = 20.010/20.040, hub steel od 40 long 25");
    let by_figure = answer("assemble 20 interference 0.03, hub steel od 40 long 25");
    assert_eq!(by_reading["pressure_mpa"], by_figure["pressure_mpa"]);
    assert_eq!(by_reading["class"], "measured");
    let by_class = answer("assemble 3/4in FN2, hub steel od 1.5in long 1in");
    let by_word = answer("assemble 3/4in press, hub steel od 1.5in long 1in");
    assert_eq!(by_class["pressure_mpa"], by_word["pressure_mpa"]);
    assert_eq!(by_word["class"], "press FN2");
    // Each part by its own reading or limits.
    for query in [
        "assemble 20 H7/s6, hole = 20.010, shaft = 20.040, hub steel od 40 long 25",
        "assemble hole 20.010, shaft 20.040, hub steel od 40 long 25",
    ] {
        let named = answer(query);
        near(
            number(&named, "/pressure_mpa/max"),
            number(&by_figure, "/pressure_mpa/max"),
            // Nominal 20 or 20.01.
            1e-3,
        );
    }
    let unlike = answer("assemble hole 20 H7, shaft 20.03..20.04, hub steel od 40 long 25");
    near(number(&unlike, "/interference_min_mm"), 0.009, 1e-9);
    near(number(&unlike, "/interference_max_mm"), 0.04, 1e-9);
    // A word minds the hub: aluminium takes a lighter class.
    let soft = answer("assemble 3/4in press, hub aluminium od 1.5in long 1in");
    assert!(number(&soft, "/interference_max_mm") <= number(&by_word, "/interference_max_mm"));
    // A wall is the outside less the bore, halved.
    let wall = answer("assemble 20 H7/s6, hub steel wall 10 long 25");
    let od = answer("assemble 20 H7/s6, hub steel od 40 long 25");
    assert_eq!(wall["pressure_mpa"], od["pressure_mpa"]);
}

#[test]
fn clauses_stand_in_any_order() {
    let one = answer("assemble 20 H7/s6, hub brass od 40 long 25, shaft steel id 8 oil");
    for other in [
        "assemble 20 H7/s6 oil, shaft steel id 8, hub brass long 25 od 40",
        "assemble 20 H7/s6, long 25, oil, hub brass od 40, shaft steel id 8",
        "ASSEMBLE 20 H7/s6, HUB Brass OD 40 LONG 25, Shaft STEEL ID 8 OIL",
    ] {
        let mut other = answer(other);
        other["query"] = one["query"].clone();
        assert_eq!(other, one);
    }
}

#[test]
fn lubricant_and_way_of_joining_change_the_grip() {
    let torque = |clause: &str| {
        number(
            &answer(&format!("assemble 20 H7/s6, hub steel od 40 long 25 {clause}")),
            "/torque_n_m",
        )
    };
    let dry = torque("");
    near(torque("oil"), dry * 0.06 / 0.08, 1e-4);
    near(torque("shrink"), dry * 0.15 / 0.08, 1e-4);
    near(torque("shrink degreased"), dry * 0.20 / 0.08, 1e-4);
    near(torque("friction 0.12"), dry * 0.12 / 0.08, 1e-4);
    near(torque("friction 0.1..0.2"), dry * 0.10 / 0.08, 1e-4);
}

#[test]
fn a_question_in_inches_is_answered_in_inches_first() {
    let text = words("assemble 3/4in FN2, hub steel od 1.5in long 1in");
    let heads: Vec<_> = text.lines().filter_map(|line| line.split_whitespace().next()).collect();
    assert_eq!(heads[..4], ["CUT", "CUT", "GIVES", "FORCE"], "{text}");
    let first = text.lines().find(|line| line.starts_with("FORCE ")).expect("a force");
    assert!(first.find("lbf").is_some() && first.find("lbf") < first.find("kN"), "{first}");
    assert!(text.contains("psi   ") && text.contains("\u{b0}F ("), "{text}");
    let text = words("assemble 20 H7/s6, hub steel od 40 long 25");
    assert!(text.contains("MPa   ") && text.contains("\u{b0}C ("), "{text}");
}

#[test]
fn what_matters_is_said() {
    for (query, said) in [
        (
            "assemble 20 H7/k6, hub steel od 40 long 25",
            "from 0.019 mm clearance to 0.015 mm interference",
        ),
        ("assemble 20 H7/k6, hub steel od 40 long 25", "nothing presses: a retaining compound"),
        (
            "assemble 20 H7/s6, hub steel od 40 long 25",
            "GIVES A LITTLE 20.000 mm H7/s6: at the tightest; nothing over 0.028 mm would keep",
        ),
        ("assemble 20 H7/s6, hub steel od 40 long 25", "elastic-plastic"),
        ("assemble 20 H7/s6, hub steel od 40 long 25 rz 6.3um", "0.8 Rz lost for grip, 0.4"),
        ("assemble 20 H7/s6, hub nylon od 40 long 25", "do not count on its grip"),
        ("assemble 20 H7/s6, hub galvanised tube wall 1.5 long 25", "zinc coat"),
        ("assemble 20 H7/s6, hub steel od 40 long 25 blind", "vent it first"),
        ("assemble 20 H7/r6, hub cast iron od 40 long 25", "brittle hub"),
        ("assemble 20 H7/s6, hub sintered bronze od 40 long 25", "oil in the pores"),
        ("assemble 20 H7/s6, hub steel od 40", "give `long` for press force and torque"),
        ("assemble 60 H7/s6, hub steel od 120 long 60", "ask someone licensed"),
        ("assemble 20 H7/s6, hub steel od 40 long 25, shrink", "heat and cold: burns"),
        ("assemble 20 H7/s6, hub 304 od 40 long 25, shaft 304", "this pair galls: never dry"),
        (
            "assemble 20 H7/s6, hub 6061 od 40 long 25, shaft steel",
            "the parts expand unlike: at 60 \u{b0}C",
        ),
        (
            "assemble 20 interference 0.015 on radius, hub steel od 40",
            "0.030 mm 1.2 thou on the diameter",
        ),
        (
            "assemble 20 = 20.010 \u{b1}0.002/20.040 \u{b1}0.003, hub steel od 40",
            "0.025 to 0.035 mm",
        ),
        ("assemble 20 = 20.010/20.040 \u{b1}0.005, hub steel od 40", "0.020 to 0.040 mm"),
        (
            "assemble 20 interference 0.03, hub e 110GPa nu 0.3 od 40",
            "no strength known of the hub",
        ),
        ("assemble 0.824in FN2, hub galvanised tube wall 0.049in long 1in", "NO JOINT, IT YIELDS"),
        ("assemble 20 H7/s6, hub 7075 od 40 long 25", "the hub stands 120 \u{b0}C"),
    ] {
        let text = words(query);
        let one_line = text.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(one_line.contains(said), "{query}: no `{said}` in\n{text}");
    }
}

#[test]
fn a_lighter_class_keeps_and_holds_or_none_is_named() {
    let joint =
        answer("assemble 0.824in FN2, hub galvanised tube wall 0.049in long 1in, shaft steel");
    assert_eq!(joint["yields"], true);
    assert!(joint.get("lighter").is_none(), "{joint}");
    assert!(joint["notes"].to_string().contains("no standard class keeps and still grips"));
    let hub = "hub steel 4140 prehard od 40 long 25, shaft steel";
    let heavy = answer(&format!("assemble 20 H7/x6, {hub}"));
    assert_eq!(heavy["yields"], true);
    assert!(number(&heavy["lighter"], "/interference_min_mm") > 0.0);
    let class = heavy["lighter"]["class"].as_str().expect("a class");
    let lighter = answer(&format!("assemble 20 {class}, {hub}"));
    assert_eq!((&lighter["yields"], &lighter["keeps"]), (&false.into(), &true.into()), "{class}");
    assert!(number(&lighter, "/working_min_mm") > 0.0, "{class} does not hold");
    let up_to = number(&joint, "/elastic_up_to_mm");
    let again = answer(&format!(
        "assemble 0.824in interference {:.6}mm, hub galvanised tube wall 0.049in long 1in, shaft steel",
        up_to * 0.99
    ));
    assert_eq!(again["yields"], false);
    // p D / 2 t, by the mean diameter.
    let hub = &again["parts"][1];
    let pressure = number(&again, "/pressure_mpa/max");
    near(number(hub, "/hoop_mpa"), pressure * 0.873 / 2.0 / 0.049, 0.06);
}

/// A hub that yields right through presses with what von Mises' ellipse gives,
/// gone through from its outside inwards in small steps.
#[test]
fn nothing_is_held_beyond_what_the_parts_bear() {
    for query in [
        "assemble 20 = 20.000/20.100, hub steel od 30 long 20",
        "assemble 20 interference 0.2, hub steel od 30 long 20",
    ] {
        let joint = answer(query);
        // Equilibrium, the hoop stress from the ellipse's upper half.
        let (mut radial, steps) = (0.0_f64, 20_000);
        for at in 0..steps {
            let step = 5.0 / f64::from(steps);
            let radius = 15.0 - step * (f64::from(at) + 0.5);
            let root = (4.0 * 250.0_f64.powi(2) - 3.0 * radial * radial).sqrt();
            let hoop = f64::midpoint(radial, root);
            radial -= (hoop - radial) / radius * step;
        }
        near(number(&joint, "/pressure_mpa/max"), -radial, 1e-3);
        // Past the documented share it is not a joint: nothing is counted on.
        assert_eq!(joint["torque_n_m"], Value::Null);
        assert_eq!(joint["valid"], false);
    }
    let cracked = answer("assemble 20 H8/zc7, hub cast iron od 40 long 20");
    assert_eq!(cracked["torque_n_m"], Value::Null);
    assert_eq!(cracked["axial_hold_n"], Value::Null);
    let text = words("assemble 20 H8/zc7, hub cast iron od 40 long 20");
    assert!(text.contains("nothing to count on") && text.contains("CRACKS"), "{text}");
    let sleeved = "sleeve steel 4140 od 26 H7/k6, hub steel 4140 od 50 long 20, shaft steel 4140";
    let loose = answer(&format!("assemble 20 H7/p6, {sleeved}"));
    near(number(&loose, "/torque_n_m"), 0.0, 0.0);
    assert!(loose["notes"].to_string().contains("holds nothing"));
}

#[test]
fn a_yielded_zone_bears_its_strength_and_no_more() {
    let joint = answer("assemble 3/4in FN2, hub steel od 1.5in long 1in, shaft steel, oil");
    let pressure = number(&joint, "/pressure_mpa/max");
    near(number(&joint, "/shaft_stress_mpa"), pressure, 1e-4);
    let hub = &joint["parts"][1];
    near(number(&hub["wall"][0], "/radial_mpa"), -pressure, 1e-4);
    for point in hub["wall"].as_array().unwrap() {
        assert!(number(point, "/von_mises_mpa") <= 250.0 * 1.0001, "{point}");
    }
    near(number(&joint, "/hub_stress_mpa"), 250.0, 1e-4);
    // The resultant of the hoop stress is what the pressure pulls with.
    let wall = hub["wall"].as_array().unwrap();
    let pull: f64 = wall
        .windows(2)
        .map(|pair| {
            let across = (number(&pair[1], "/at_mm") - number(&pair[0], "/at_mm")) / 2.0;
            across * f64::midpoint(number(&pair[0], "/hoop_mpa"), number(&pair[1], "/hoop_mpa"))
        })
        .sum();
    near(pull, pressure * 0.375 * 25.4, 0.02);
}

#[test]
fn picked_classes_do_what_is_wanted() {
    let picked =
        answer("pick 20 holds 30 Nm, hub safe, hub steel 4140 prehard od 40 long 25, shaft 4140");
    assert_eq!(picked["answer"], "pick_grip");
    let found = picked["candidates"].as_array().unwrap();
    assert!(!found.is_empty() && number(&picked, "/found") >= 1.0);
    for candidate in found {
        assert!(number(candidate, "/torque_n_m") >= 30.0, "{candidate}");
        assert!(number(candidate, "/safety") >= 1.0, "{candidate}");
        assert_eq!(candidate["meets"], true);
        // As the joint itself is answered.
        let class = candidate["class"].as_str().unwrap();
        let joint = answer(&format!(
            "assemble 20 {class}, hub steel 4140 prehard od 40 long 25, shaft 4140"
        ));
        assert_eq!(joint["torque_n_m"], candidate["torque_n_m"], "{class}");
        assert_eq!(joint["valid"], candidate["valid"], "{class}");
    }
    let iron = answer("pick 20 holds 150 Nm, hub cast iron od 40 long 20");
    for candidate in iron["candidates"].as_array().unwrap() {
        assert!(candidate["meets"] == false || candidate["valid"] == true, "{candidate}");
    }
    assert!(iron["cautions"].to_string().contains("brittle hub"));
    let none = answer("pick 20 holds 5000 Nm, hub safe, hub steel od 40 long 25");
    assert_eq!(none["found"], 0);
}

#[test]
fn why_shows_the_formula_with_its_numbers() {
    let text =
        words("why assemble 20 interference 0.03, hub steel od 40 long 25, shaft steel id 10");
    let one_line = text.split_whitespace().collect::<Vec<_>>().join(" ");
    for said in [
        "0.03 mm / 20 mm / (((40² + 20²)/(40² - 20²) + 0.292)/207.0 GPa + ((20² + 10²)/(20² - 10²) - 0.292)/207.0 GPa)",
        "Lamé",
        "x pi x 20 mm x 25 mm",
        "Young's modulus, steel = 207 GPa",
        "DIN 7190-1, clause 5.2",
    ] {
        assert!(one_line.contains(said), "no `{said}` in\n{text}");
    }
}

#[test]
fn the_picture_is_one_whole_svg() {
    let mut session = Session::new();
    let answer = session
        .evaluate("assemble 20 H7/s6, shaft steel, sleeve bronze od 26 H7/p6, hub aluminium od 50")
        .unwrap();
    let picture = svg::picture(&answer, session.shown()).expect("a picture");
    assert!(picture.starts_with("<svg ") && picture.ends_with("</svg>\n"));
    for name in ["shaft", "sleeve", "hub", "hoop", "radial", "von Mises", "strength"] {
        assert!(picture.contains(name), "{name}");
    }
    assert_eq!(picture.matches("<polyline").count(), 9, "three curves through three parts");
    assert!(!picture.contains("NaN") && !picture.contains("inf"));
    let other = session.evaluate("drill 0.7031in").unwrap();
    assert!(svg::picture(&other, session.shown()).is_none());
}

#[test]
fn answers_fit_the_screen() {
    for query in [
        "assemble 20 H7/s6, hub 7075 od 40 long 25 rz 6.3um, shaft nylon id 10 blind",
        "assemble 3/4in FN5, hub cast iron wall 0.2in long 1in rz 250uin, shaft sintered bronze id 0.5in",
        "assemble 20 H7/s6, shaft bronze id 14, sleeve steel od 26 H7/p6, hub magnesium od 50 long 25",
        "pick 3/4in holds 10 lbf-ft, press under 5 tons, hub safe, hub aluminium od 1.5in long 1in",
        "assemble 100 interference 0.1..0.2, hub e 110GPa od 200 long 100, shaft e 70GPa nu 0.33 id 50",
    ] {
        let text = words(query);
        assert!(text.lines().count() <= 23, "{query}: {} lines\n{text}", text.lines().count());
        for line in text.lines() {
            assert!(line.chars().count() <= 80, "{query}: {line}");
        }
    }
}

proptest! {
    #[test]
    fn no_text_is_a_panic(
        soup in "(assemble|pick) [0-9]{0,3}(mm|in|) ?(H7/s6|FN2|press|interference|holds|) ?[-+0-9a-zA-Z.,/ =]{0,60}"
    ) {
        let mut session = Session::new();
        match session.evaluate(&soup) {
            Ok(answer) => {
                let text = Text { settings: session.shown(), colour: Colour::Off };
                prop_assert!(!text.answer(&answer).is_empty());
            }
            Err(problem) => prop_assert!(problem.at.end <= soup.len()),
        }
    }

    #[test]
    fn tighter_presses_harder_and_thicker_keeps_better(
        size in 5_u32..200, thousandths in 1_u32..20, wall in 10_u32..300
    ) {
        let size = f64::from(size);
        let interference = size * f64::from(thousandths) / 2e4;
        let od = size * (1.0 + f64::from(wall) / 100.0);
        let joint = |interference: f64, od: f64| {
            let query = format!(
                "assemble {size} interference {interference:.5}, hub e 200GPa nu 0.3 od {od:.4} long 10"
            );
            match Session::new().evaluate(&query) {
                Ok(Answer::Assembly(joint)) => Some(joint.pressure_mpa.max),
                _ => None,
            }
        };
        if let (Some(one), Some(tighter), Some(thicker)) = (
            joint(interference, od),
            joint(interference * 1.1, od),
            joint(interference, od * 1.1),
        ) {
            prop_assert!(tighter > one && thicker > one, "{one} {tighter} {thicker}");
        }
    }
}
