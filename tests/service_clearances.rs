//! Running clearance by service against its rows and expansions worked out here;
//! printed holes against theirs; and torque shared among what holds it, against
//! shear over the areas of geometry.

use std::f64::consts::PI;

use fits_checks::{ask, near, rows, takes};
use fits_repl::session::Session;
use serde_json::Value;

fn answer(query: &str) -> Value {
    takes(&mut Session::new(), query)
}

fn figure(answer: &Value, name: &str) -> f64 {
    answer[name].as_f64().unwrap_or_else(|| panic!("no {name}: {answer}"))
}

/// A material's expansion in millionths, as `data/materials.csv` has it.
fn expansion(material: &str) -> f64 {
    rows("data/materials.csv")
        .iter()
        .find(|row| row.text("material") == material && row.text("figure") == "expansion_per_c_e6")
        .unwrap_or_else(|| panic!("{material}"))
        .get("value")
}

#[test]
fn a_hot_piston_is_given_what_it_grows_in_a_cold_cylinder() {
    let hot = answer("piston 1in aluminium in cast iron at 150C");
    let (inner, outer) = (expansion("aluminium 6061-T6"), expansion("grey cast iron"));
    let grows = |millionths: f64| 25.4 * millionths * 1e-6 * 130.0;
    // Iron in iron asks 1 to 2 thou at an inch; the rule for aluminium 3 to 5.
    let least = (0.0254 + grows(inner)).max(0.0762);
    let most = (0.0508 + grows(inner)).max(0.127);
    near(figure(&hot, "clearance_min_mm"), least, 1e-5);
    near(figure(&hot, "clearance_max_mm"), most, 1e-5);
    near(figure(&hot, "starting_min_mm"), least - grows(inner), 1e-4);
    near(figure(&hot, "hot_min_mm"), least - grows(inner) + grows(outer), 1e-4);
    near(figure(&hot, "inner_max_mm"), 25.4 - least, 1e-5);
    near(figure(&hot, "hole_min_mm"), 25.4 + least, 1e-5);
    // Cold it never binds, whatever the pair.
    for pair in
        ["aluminium in steel", "steel in aluminium", "brass in cast iron", "cast iron in cast iron"]
    {
        for heat in ["100C", "200C", "-20C"] {
            let found = answer(&format!("piston 40mm {pair} at {heat}"));
            assert!(figure(&found, "starting_min_mm") >= 0.0, "{pair} {heat}: {found}");
            assert!(figure(&found, "hot_min_mm") >= 0.0, "{pair} {heat}: {found}");
        }
    }
}

#[test]
fn every_row_of_a_service_reaches_its_answer() {
    let mut count = 0;
    for row in rows("data/service/clearances.csv") {
        let (head, kind) = (row.text("head"), row.text("kind"));
        let word = if head == "tube" { "telescope" } else { head };
        let kind = if kind == "plain" { "" } else { kind };
        let pair = row.text("pair").replace('/', " in ");
        let inches = f64::midpoint(row.get("from_in"), row.get("to_in"));
        let found = answer(&format!("{word} {inches}in {pair} {kind}"));
        let thou = |a: &str, b: &str| (row.get::<f64>(a) + row.get::<f64>(b) * inches) * 0.0254;
        near(figure(&found, "clearance_min_mm"), thou("least_a", "least_b"), 1e-5);
        near(figure(&found, "clearance_max_mm"), thou("most_a", "most_b"), 1e-5);
        assert_eq!(found["beyond_source"], false, "{row}");
        let known = match row.text("status") {
            "SEEN" => "seen",
            "MEMORY" => "memory",
            _ => "practice",
        };
        assert_eq!(found["known"], known, "{row}");
        count += 1;
    }
    assert_eq!(count, 16);
}

#[test]
fn a_printed_hole_is_drawn_larger_by_its_row_and_all_of_it_is_practice() {
    for row in rows("data/service/printed.csv") {
        for grip in ["slip", "press"] {
            let found = answer(&format!("printed {} hole 8mm pin, {grip}", row.text("material")));
            let add = |end: &str| row.get::<f64>(&format!("{grip}_{end}_mm"));
            near(figure(&found, "draw_min_mm"), 8.0 + add("least"), 1e-9);
            near(figure(&found, "draw_max_mm"), 8.0 + add("most"), 1e-9);
            let left = figure(&found, "left_min_mm");
            near(left, add("least") - row.get::<f64>("small_mm"), 1e-9);
            // A slip fit is loose as it commonly comes out, a press is tight.
            assert_eq!(left > 0.0, grip == "slip", "{row}");
            assert_eq!(found["known"], "practice");
        }
    }
    let mut session = Session::new();
    takes(&mut session, "3d printed petg hole for a 6mm pin, press fit");
    assert_eq!(session.read_as(), Some("printed PETG 6mm, press"));
    let plain = answer("printed pla 6mm press");
    assert_eq!(plain["draw_min_mm"], answer("printed PLA hole for 6mm pin, press")["draw_min_mm"]);
}

#[test]
fn a_torque_is_shared_by_grip_first_then_by_shear() {
    let shared = answer("share 60Nm, shaft 25mm, press 35Nm, cross pin 6mm");
    // Steel as A36: 250 MPa; two sections, 0.577 of it over 2, at half the shaft.
    let pin = 2.0 * PI / 4.0 * 36.0 * 0.577 * 250.0 / 2.0 * 12.5 / 1e3;
    near(figure(&shared["parts"][1], "carries_n_m"), pin, 1e-9);
    near(figure(&shared["parts"][1], "takes_n_m"), 25.0, 1e-12);
    assert_eq!(shared["holds"], true);
    // A key: sheared over its width, crushed over half its height; the less counts.
    let key = answer("share 60Nm, shaft 25mm, key 8mm, long 20mm");
    let (shear, crush): (f64, f64) = (8.0 * 20.0 * 0.577 * 125.0, 4.0 * 20.0 * 125.0);
    near(figure(&key["parts"][0], "carries_n_m"), shear.min(crush) * 12.5 / 1e3, 1e-9);
    // Half the bond of a joint pressed cold counts.
    let bonded = |query: &str, part: usize| figure(&answer(query)["parts"][part], "carries_n_m");
    near(
        bonded("share 60Nm, shaft 25mm, press 35Nm, compound, long 20mm", 1),
        bonded("share 60Nm, shaft 25mm, compound, gap 0.001mm, long 20mm", 0) / 2.0,
        1e-9,
    );
    // Turning round, the pin must hold it all, and cannot.
    let round = answer("share 60Nm, shaft 25mm, press 35Nm, cross pin 6mm, shock");
    assert_eq!(round["holds"], false);
    near(figure(&round, "left_n_m"), 60.0 - pin / 2.0, 1e-9);
    // The rescue's compound and the share's are one.
    let rescue = answer("rescue hole 20.1mm should be 20mm, long 20mm");
    let ways = rescue["ways"].as_array().unwrap();
    let bond = ways.iter().find(|way| way["way"] == "retaining compound").unwrap();
    near(
        bonded("share 10Nm, shaft 20mm, compound, gap 0.1mm, long 20mm", 0),
        bond["amounts"]["torque_n_m"].as_f64().unwrap(),
        1e-12,
    );
}

#[test]
fn what_is_wrong_is_pointed_at_with_a_hint_that_works() {
    for (query, at) in [
        ("piston", [6, 6]),
        ("piston 1in at 150C", [7, 10]),
        ("piston 1in nonsense in cast iron", [11, 19]),
        ("piston 1in lapped ringed", [18, 24]),
        ("hinge 1/2in lapped", [12, 18]),
        ("printed petg hole", [17, 17]),
        ("printed petg 8mm", [16, 16]),
        ("share 60Nm", [10, 10]),
        ("share 60Nm, shaft 25mm", [22, 22]),
        ("share 60Nm, shaft 25mm, compound, long 20mm", [43, 43]),
        ("share 60Nm, shaft 25mm, compound, gap 0.4mm, long 20mm", [34, 37]),
        ("share 60Nm, shaft 25mm, press 35Nm, cross pin 16mm", [36, 45]),
        ("share 0Nm, shaft 25mm, press 35Nm", [6, 9]),
    ] {
        let error = ask(&mut Session::new(), query)["error"].clone();
        assert_eq!(error["at"], serde_json::json!(at), "{query}: {error}");
        for hint in error["hint"].as_str().unwrap().split('`').skip(1).step_by(2) {
            takes(&mut Session::new(), hint);
        }
    }
}
