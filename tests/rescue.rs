//! A part in trouble. Its figures are those of the single queries that it names; a
//! bond's area is that of ISO 10123's collar, as a test machine's maker works it out
//! (testresources.net: 20 mm bore, 18 mm high, 1131 mm²); its torque is recomputed from
//! the rows of `data/rescue/`; bores that clean up are held to outlines sampled here.

use std::f64::consts::PI;

use fits_checks::{Row, ask, near, rows, takes};
use fits_core::{
    Length,
    shop::rescue::{Bond, CleanUp, next_size},
    size::Unit,
    source::Known,
};
use fits_repl::session::Session;
use serde_json::Value;

fn answer(query: &str) -> Value {
    takes(&mut Session::new(), query)
}

/// A way by its name.
#[track_caller]
fn way(answer: &Value, name: &str) -> Value {
    let ways = answer["ways"].as_array().expect("ways");
    let found = ways.iter().find(|way| way["way"] == name);
    found.unwrap_or_else(|| panic!("no {name} in {answer}")).clone()
}

fn limits<'a>(way: &'a Value, of: &str) -> &'a Value {
    let all = way["limits"].as_array().expect("limits");
    all.iter().find(|limits| limits["of"] == of).unwrap_or_else(|| panic!("no {of}: {way}"))
}

#[test]
fn the_mate_is_suited_as_it_is_by_itself() {
    let mut count = 0;
    for part in ["shaft", "hole"] {
        let other = if part == "shaft" { "hole" } else { "shaft" };
        for (size, wanted) in [
            ("0.7478in", "0.7495in"),
            ("0.7530in", "0.7500in"),
            ("1.2473in", "1.2500in"),
            ("24.930mm", "25mm"),
            ("47.041mm", "47mm"),
            ("6.02mm", "6mm"),
        ] {
            for word in ["press", "light press", "push", "snug", "sliding", "running", "shrink"] {
                let query = format!("rescue {part} {size} should be {wanted}, {word}");
                let rescue = answer(&query);
                let suit = way(&rescue, "suit the mate");
                let by_itself = answer(suit["ask"].as_str().expect("a query"));
                let wanted = limits(&suit, other);
                assert_eq!(wanted["min_mm"], by_itself[other]["lower_mm"], "{query}");
                assert_eq!(wanted["max_mm"], by_itself[other]["upper_mm"], "{query}");
                count += 1;
            }
        }
    }
    assert_eq!(count, 84);
}

#[test]
fn a_sleeve_and_the_next_size_are_fitted_as_they_are_by_themselves() {
    for (query, name, hole, shaft) in [
        ("rescue hole 0.753in should be 3/4in, press", "bush", "bore to", "bush outside"),
        ("rescue hole 1.852in for bearing 47mm", "bush", "bore to", "bush outside"),
        (
            "rescue hole 20.3mm should be 20mm, sliding, bush bronze",
            "bush",
            "bore to",
            "bush outside",
        ),
        ("rescue hole 90.3mm should be 90mm, sliding", "bush", "bore to", "bush outside"),
        ("rescue shaft 1.495in should be 1.5in, press", "sleeve", "sleeve bore", "turn to"),
        ("rescue shaft 39.9mm should be 40mm, press", "sleeve", "sleeve bore", "turn to"),
        ("rescue hole 0.753in should be 3/4in, press", "next size", "bore to", "pin"),
        ("rescue hole 20.3mm should be 20mm, sliding", "next size", "bore to", "pin"),
    ] {
        let found = way(&answer(query), name);
        let by_itself = answer(found["ask"].as_str().expect("a query"));
        for (of, part) in [(hole, "hole"), (shaft, "shaft")] {
            assert_eq!(limits(&found, of)["min_mm"], by_itself[part]["lower_mm"], "{query}: {of}");
            assert_eq!(limits(&found, of)["max_mm"], by_itself[part]["upper_mm"], "{query}: {of}");
        }
    }
}

#[test]
fn a_bond_shears_over_the_area_of_the_standard_s_collar() {
    let (bore, high): (Length, Length) = ("20mm".parse().unwrap(), "18mm".parse().unwrap());
    near(Bond::area_mm2(bore, high), 1131.0, 1e-4);
    // "About 3700 psi" is 25.5 MPa.
    let bond =
        Bond { shear_mpa: 25.5, kept: 1.0, safety: 1.0, allowed_mpa: 25.5, known: Known::Seen };
    near(bond.push_n(bore, high), 1131.0 * 3700.0 * 0.006_894_757, 1e-3);
    near(bond.torque_n_m(bore, high), bond.push_n(bore, high) * 0.010, 1e-12);
}

fn row(table: &'static str, column: &str, wanted: &str) -> Row {
    rows(table).into_iter().find(|row| row.text(column) == wanted).expect(wanted)
}

/// A factor of `data/rescue/factors.csv`.
fn factor(group: &str, name: &str, at: &str) -> f64 {
    rows("data/rescue/factors.csv")
        .iter()
        .find(|row| row.text("group") == group && row.text("name") == name && row.text("at") == at)
        .unwrap_or_else(|| panic!("{group} {name} {at}"))
        .get("factor")
}

#[test]
fn a_bond_s_torque_is_what_its_rows_give() {
    let query = "rescue hole 20.1mm should be 20mm, long 25mm, hub aluminium, at 100C, shock, oily";
    let figures = way(&answer(query), "retaining compound")["amounts"].clone();
    // No mate is given: a shaft of 20 mm, so the gap is 0.10 mm.
    let strong: f64 =
        row("data/rescue/compounds.csv", "kind", "high strength thin").get("shear_mpa");
    let kept = factor("gap", "", "0.10")
        * factor("metal", "aluminium", "")
        * factor("heat", "", "100")
        * factor("oil", "", "");
    let torque =
        PI * 20.0 * 20.0 * 25.0 / 2.0 * strong * kept / factor("safety", "shock", "") / 1e3;
    near(figures["torque_n_m"].as_f64().unwrap(), torque, 1e-9);
    near(figures["push_n"].as_f64().unwrap(), torque * 1e3 / 10.0, 1e-9);
    // Between two rows of the gap the straight line; past 1.5 diameters nothing more.
    let long = |query| {
        way(&answer(query), "retaining compound")["amounts"]["torque_n_m"].as_f64().unwrap()
    };
    let [at, half, past] = [
        long("rescue hole 20.05mm should be 20mm, long 30mm"),
        long("rescue hole 20.075mm should be 20mm, long 30mm"),
        long("rescue hole 20.05mm should be 20mm, long 90mm"),
    ];
    near(half / at, 0.9, 1e-9);
    near(past, at, 1e-12);
}

#[test]
fn what_cannot_be_done_names_the_figure_that_fails() {
    let says = |query: &str, name: &str| {
        let found = way(&answer(query), name);
        assert_eq!(found["verdict"], "no", "{query}: {found}");
        found["notes"][0].as_str().unwrap().to_owned()
    };
    assert_eq!(
        says("rescue hole 20.3mm should be 20mm", "retaining compound"),
        "a gap of 0.3 mm is beyond high strength thick's 0.25 mm"
    );
    assert_eq!(
        says("rescue hole 20.5mm should be 20mm, od 30mm", "bush"),
        "a bush wants a bore of 27 mm: that leaves a wall of 1.5 mm in 30 mm, and 2.7 mm is the least"
    );
    assert_eq!(
        says("rescue shaft 19.9mm should be 20mm, wall 1mm", "sleeve"),
        "a wall of 1 mm is under the 3 mm that a sleeve on a shaft wants"
    );
    let held =
        says("rescue hole 20.1mm should be 20mm, long 20mm, torque 500Nm", "retaining compound");
    assert!(held.ends_with("of the 500 N\u{b7}m asked"), "{held}");
    assert_eq!(
        says("rescue hole 20.1mm should be 20mm, long 20mm, at 200C", "retaining compound"),
        "200 °C is above the 150 °C that high strength thick stands"
    );
    assert_eq!(
        says("rescue shaft 19.4mm should be 20mm", "plating"),
        "0.6 mm to build up, and it raises 0.5 mm at the most"
    );
    for (way, query) in [
        ("knurl", "rescue shaft 24.97mm for bearing 25mm"),
        ("shim", "rescue hole 52.2mm for bearing 52mm"),
        ("suit the mate", "rescue hole 52.2mm for bearing 52mm"),
    ] {
        assert_eq!(says(query, way), "not under a rolling bearing");
    }
    assert!(
        says("rescue hole 20.1mm should be 20mm, running", "retaining compound").contains("move")
    );
}

#[test]
fn what_carries_people_is_made_anew_or_its_mate_is() {
    let rescue = answer("rescue hole 20.1mm should be 20mm, press, people");
    for found in rescue["ways"].as_array().unwrap() {
        let may = ["suit the mate", "next size", "new part"];
        let is_named = may.contains(&found["way"].as_str().unwrap());
        assert_eq!(found["verdict"] != "no", is_named, "{found}");
    }
    let cautions = rescue["cautions"].to_string();
    assert!(cautions.contains("ask someone licensed"), "{cautions}");
}

#[test]
fn the_strongest_for_the_least_effort_comes_first() {
    for query in [
        "rescue shaft 0.7478in should be 0.7495in, press",
        "rescue hole 1.852in for bearing 47mm",
        "rescue hole 0.753in 0.761in mate 3/4in",
    ] {
        let rescue = answer(query);
        let ways = rescue["ways"].as_array().unwrap();
        let worth = |way: &Value| {
            let figure = |name: &str| way[name].as_i64().unwrap();
            let no = i64::from(way["verdict"] == "no");
            (no, figure("effort") - figure("strength") + i64::from(way["verdict"] == "care"))
        };
        assert!(ways.is_sorted_by_key(worth), "{query}: {ways:#?}");
        assert!(ways.len() >= 10, "{query}");
    }
    let spare = answer("rescue shaft 0.7510in should be 0.7495in, press");
    assert_eq!(spare["ways"][0]["way"], "cut to size");
    assert!(spare["missing_mm"].as_f64().unwrap() < 0.0);
}

/// The farthest of an outline's points from a place on its long axis: circles of a
/// radius whose middles lie from 0 to `shift` along it.
fn farthest(radius: f64, shift: f64, from: f64) -> f64 {
    let mut most: f64 = 0.0;
    for step in 0..=200 {
        let middle = shift * f64::from(step) / 200.0;
        for degree in 0..360 {
            let (sine, cosine) = f64::from(degree).to_radians().sin_cos();
            most = most.max((middle + radius * cosine - from).hypot(radius * sine));
        }
    }
    most
}

#[test]
fn a_bore_that_cleans_up_takes_in_the_whole_outline() {
    for (radius, shift) in [(9.525, 0.2), (12.5, 0.05), (20.0, 1.0), (3.0, 0.3)] {
        let mm = |value: f64| -> Length { format!("{value:.7}mm").parse().unwrap() };
        let (across, along) = (2.0 * radius, 2.0 * radius + shift);
        let bore = CleanUp::of(&[mm(across), mm(along)], None, None).unwrap();
        // Set to the middle of what is there, or to where it was.
        near(bore.on_its_middle.millimetres() / 2.0, farthest(radius, shift, shift / 2.0), 1e-7);
        near(bore.on_the_old_middle.millimetres() / 2.0, farthest(radius, shift, 0.0), 1e-7);
        // A place out of line is a circle off the axis.
        let off = CleanUp::of(&[mm(across)], None, Some(mm(shift))).unwrap();
        near(off.on_its_middle.millimetres() / 2.0, farthest(radius, 0.0, shift), 1e-7);
        for unit in [Unit::Inch, Unit::Millimetre] {
            let next = bore.next(unit).unwrap();
            assert!(next >= bore.on_its_middle && next_size(next, unit) == Ok(next));
        }
    }
    let bush = answer("clean up 25.02 25.11 25.3, was 25, should be 25, out of line 0.1, od 45");
    assert_eq!(bush["cleans_up_mm"], 25.5);
    assert_eq!(bush["cleans_up_on_old_middle_mm"], 25.8);
    // Over 25.5 mm and two walls of 1/8 in.
    assert_eq!(bush["bush"]["wall_mm"], 3.5);
    assert_eq!(bush["bush"]["left_wall_mm"], 6.5);
    let none = answer("clean up 0.753in 0.761in, should be 3/4in, od 1.1in");
    assert!(none["no_bush"].as_str().unwrap().contains("is the least"), "{none}");
}

#[test]
fn what_is_wrong_is_pointed_at_with_a_hint_that_works() {
    for (query, at) in [
        ("rescue", [6, 6]),
        ("rescue 0.7478in", [7, 15]),
        ("rescue shaft 0.7478in", [21, 21]),
        ("rescue shaft 0.7478in should be", [31, 31]),
        ("rescue shaft 0.7478in should be 0.7495in should be 0.75in", [41, 50]),
        ("rescue shaft 0.7495in should be 0.7495in, press", [13, 21]),
        ("rescue shaft 0 should be 1in", [13, 14]),
        ("rescue shaft 0.7478in hole 0.7in should be 0.7495in", [7, 12]),
        ("rescue hole 3 thou over", [0, 23]),
        ("rescue hole 1.852in for bearing 47mm, mate 46.99mm", [43, 50]),
        ("clean up", [8, 8]),
        ("clean up 0.75in 0.753in was 0.8in", [28, 33]),
        ("clean up 25.02 25.3, od 45", [24, 26]),
    ] {
        let error = ask(&mut Session::new(), query)["error"].clone();
        assert_eq!(error["at"], serde_json::json!(at), "{query}: {error}");
        let hint = error["hint"].as_str().unwrap();
        let mut hints = hint.split('`').skip(1).step_by(2).peekable();
        assert!(hints.peek().is_some(), "{query}: {hint}");
        for hint in hints {
            takes(&mut Session::new(), hint);
        }
    }
}

#[test]
fn a_phrase_of_the_shop_is_read() {
    for (phrase, plain) in [
        ("shaft .7478 should be .7495, press", "rescue shaft 0.7478in should be 0.7495in, press"),
        (
            "press, shaft .7478 supposed to be .7495",
            "rescue shaft 0.7478in should be 0.7495in, press",
        ),
        ("bearing spins in its bore 1.852 for 47 mm", "rescue hole 1.852in for bearing 47mm"),
        (
            "the bore is worn, bearing is loose, 1.852 for a 47mm",
            "rescue hole 1.852in for bearing 47mm",
        ),
        ("egged hole .753 by .761 for a 3/4 pin", "rescue hole 0.753in 0.761in mate 3/4in"),
        ("hole is 3 thou oversize for a 3/4 pin", "rescue hole 3 thou over 3/4in"),
    ] {
        let mut session = Session::new();
        takes(&mut session, phrase);
        assert_eq!(session.read_as(), Some(plain), "{phrase}");
    }
    let asked = ask(&mut Session::new(), "hole 3 thou over");
    assert_eq!(asked["error"]["choices"].as_array().map(Vec::len), Some(2), "{asked}");
}
