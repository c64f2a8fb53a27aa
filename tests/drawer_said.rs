//! What comes out of the drawer, said as people say it: O-rings that go and that do
//! not, pistons with their metals in any order, tube by its outside, a plate's
//! thickness, drills that are near, bearings by number in trouble.

use fits_checks::{ask, inches, rows, takes};
use fits_core::{
    Length,
    standards::{
        drills::{Drill, Series},
        hardware::{Gland, GlandUse, ORing, RingOn},
    },
};
use fits_repl::session::Session;
use serde_json::Value;

fn inch_session() -> Session {
    let mut session = Session::new();
    takes(&mut session, "units in");
    session
}

#[track_caller]
fn read_as(phrase: &str) -> String {
    let mut session = inch_session();
    takes(&mut session, phrase);
    session.read_as().unwrap_or(phrase).to_owned()
}

#[track_caller]
fn asked(phrase: &str) -> Vec<String> {
    let found = ask(&mut inch_session(), phrase);
    let choices = found["error"]["choices"].as_array().unwrap_or_else(|| panic!("{found}"));
    choices.iter().map(|choice| choice.as_str().unwrap().to_owned()).collect()
}

fn size(row: &fits_checks::Row, column: &str) -> Length {
    inches(row.get(column))
}

/// Every ring goes with the bore and the rod that a maker prints for it, and our
/// groove lies within 4 thou of the printed one.
#[test]
fn rings_go_where_a_maker_puts_them() {
    let list = rows("tests/published/oring_grooves.csv");
    assert_eq!(list.len(), 15);
    for row in &list {
        let ring = ORing::dash(row.text("dash")).unwrap();
        let gland = Gland::find(GlandUse::Moving, ring.section()).unwrap();
        let (bore, rod) = (size(row, "bore"), size(row, "rod"));
        for on in [RingOn::Piston(bore), RingOn::Rod(rod)] {
            ring.fit(GlandUse::Moving, on).unwrap_or_else(|error| panic!("{row}: {error}"));
        }
        for (ours, theirs) in [
            (gland.in_piston(bore).unwrap().middle(), size(row, "piston_groove")),
            (gland.about_rod(rod).unwrap().middle(), size(row, "rod_groove")),
        ] {
            assert!((ours.millimetres() - theirs.millimetres()).abs() < 0.004 * 25.4, "{row}");
        }
    }
}

/// Two examples of a groove maker's page (`ponnmachine.com/groove_design.html`): 112 on
/// a 1/2 in rod, moving; 210 in a 1 in bore, standing.
#[test]
fn rings_of_worked_examples_go() {
    let inch = |text: &str| text.parse::<Length>().unwrap();
    let fit = |dash, used, on| ORing::dash(dash).unwrap().fit(used, on);
    assert!(fit("112", GlandUse::Moving, RingOn::Rod(inch("1/2in"))).is_ok());
    assert!(fit("210", GlandUse::Static, RingOn::Piston(inch("1in"))).is_ok());
}

/// For every ring and size: what goes is stretched by no less than nothing and no
/// more than the guides allow; what does not go is told with rings that do.
#[test]
fn a_ring_that_goes_is_stretched_as_the_guides_say() {
    let (mut goes, mut refused) = (0, 0);
    for used in [GlandUse::Moving, GlandUse::Static] {
        for ring in ORing::all() {
            let gland = Gland::find(used, ring.section()).unwrap();
            let (inside, outside) = (ring.inside(), ring.outside().unwrap());
            for sixteenths in 2..32 {
                let size = Length::INCH.checked_scale(sixteenths, 16).unwrap();
                let Ok(groove) = gland.in_piston(size) else { continue };
                let stretch = 100.0 * (groove.middle().millimetres() / inside.millimetres() - 1.0);
                match ring.fit(used, RingOn::Piston(size)) {
                    Ok(fit) => {
                        assert!((fit.stretch - stretch).abs() < 1e-9);
                        assert!((0.0..=12.0).contains(&stretch), "{} {size}", ring.number());
                        assert!(stretch <= 5.0 || fit.is_sold_by_size);
                        goes += 1;
                    }
                    Err(error) => {
                        assert!(!(0.0..=5.0).contains(&stretch), "{} {size}", ring.number());
                        assert!(error.advice().contains("bore"), "{}", error.advice());
                        refused += 1;
                    }
                }
                if ring.fit(used, RingOn::Rod(size)).is_ok() {
                    let about = gland.about_rod(size).unwrap().middle();
                    assert!(about <= outside, "{} {size}: does not reach", ring.number());
                    assert!(size.millimetres() <= 1.12 * inside.millimetres());
                }
            }
        }
    }
    assert!(goes > 90 && refused > 3000, "{goes} {refused}");
}

#[test]
fn a_ring_that_cannot_go_is_refused_with_those_that_do() {
    for (query, says, advises) in [
        ("o-ring 210 piston moving bore 1/2in", "lies loose", "012"),
        ("o-ring 112 rod static 2in", "stretches ring 112", "112 goes with 1/2 in"),
        ("o-ring 210 rod moving 1/2in", "buckles", "112"),
        ("o-ring 201 piston moving bore 1/2in", "50.9 percent", "202"),
    ] {
        let error = ask(&mut inch_session(), query)["error"].clone();
        assert!(error["message"].as_str().unwrap().contains(says), "{error}");
        assert!(error["hint"].as_str().unwrap().contains(advises), "{error}");
    }
    // What is advised does go.
    for query in ["o-ring 012 piston moving bore 1/2in", "o-ring 112 rod moving 1/2in"] {
        takes(&mut inch_session(), query);
    }
}

#[test]
fn a_piston_keeps_its_metals_in_any_order() {
    for phrase in [
        "piston 1.5 bore ali in cast iron how much clearance",
        "how much clearance for a 1.5 ali piston in a cast iron bore",
        "bore 1.5 cast iron, ali piston, clearance?",
        "clearance piston ali bore 1.5 in cast iron",
        "cast iron bore 1.5in, aluminium piston, clearance",
        "1.5 piston, ali in iron, what clearance",
    ] {
        let found = takes(&mut inch_session(), phrase);
        assert_eq!(found["answer"], "runs", "{phrase}: {found}");
        assert!(found["inner"].as_str().unwrap().contains("alumin"), "{phrase}: {found}");
        assert!(found["outer"].as_str().unwrap().contains("iron"), "{phrase}: {found}");
        // 3 to 5 thou an inch for aluminium in iron.
        let least = found["clearance_min_mm"].as_f64().unwrap() / 25.4;
        assert!((least - 0.0045).abs() < 1e-7, "{phrase}: {found}");
    }
    // No other question makes a running fit of a piston.
    for phrase in ["piston 1.5 running fit", "clearance for a 1.5 piston wobbly", "1.5 piston fit"]
    {
        let found = ask(&mut inch_session(), phrase).to_string();
        assert!(!found.contains("in running") && !found.contains("RC4"), "{phrase}: {found}");
    }
    // One that is measured is a shaft like another.
    assert_eq!(
        read_as("piston measures .998 in a 1.000 bore, how much clearance"),
        "hole 1.000in, shaft 0.998in"
    );
    // Metals are kept where a bore alone is said.
    let plain = read_as("3/4 cast iron bore for a shaft, what running clearance");
    assert!(plain.contains("cast iron"), "{plain}");
}

#[test]
fn a_tube_is_sold_by_its_outside_and_a_plate_by_its_thickness() {
    for phrase in ["tube 1in wall 0.065in press", "tube 1in od wall 0.065in press"] {
        let found = takes(&mut inch_session(), phrase);
        // 1 - 2 x 0.065.
        assert!((found["nominal_mm"].as_f64().unwrap() - 0.87 * 25.4).abs() < 1e-6, "{found}");
        assert!(read_as(phrase).contains("od 1in wall 0.065in"), "{phrase}");
    }
    let plates = asked("3/8 press in 2 plate");
    assert!(plates.iter().any(|choice| choice.contains("long 2in")), "{plates:?}");
    assert!(plates.iter().any(|choice| choice.contains("od 2in")), "{plates:?}");
    let tubes = asked("dom tube 3/4 running");
    assert_eq!(tubes, ["dom tube outside 3/4in, running", "dom tube bore 3/4in, running"]);
    assert_eq!(read_as("1/4 dowel press in dom tube"), "dowel 1/4in, press, hub dom");
    let bushing = asked("bushing 3/4in bore .7485 after pressing");
    assert!(bushing.iter().all(|choice| choice.starts_with("bushing in place 0.7485in")));
    for choice in tubes.iter().chain(&plates).chain(&bushing) {
        takes(&mut inch_session(), choice);
    }
}

/// B41's press in brittle iron: the refusal is read before any size to cut.
#[test]
fn a_verdict_that_refuses_stands_first() {
    use fits_repl::render::{Colour, text::Text};
    for (query, first) in [
        ("assemble 1in press, hub cast iron od 2in, shaft steel", "CRACKS"),
        ("assemble 0.824in FN2, hub galvanised tube wall 0.049in long 1in", "NO JOINT"),
        ("assemble 20mm H7/s6, hub steel 4140 prehard od 40mm long 25mm", "CUT"),
    ] {
        let mut session = Session::new();
        let answer = session.evaluate(query).unwrap();
        let text = Text { settings: session.shown(), colour: Colour::Off }.answer(&answer);
        assert!(text.starts_with(first), "{query}: {text}");
    }
}

/// Each drill named is the nearest of its series on that side, by brute force; none
/// but the nearest of all is far off, and none that is near is left out.
#[test]
fn near_drills_are_near() {
    for thou in (40..2000_i32).step_by(37) {
        let wanted = f64::from(thou) / 1000.0;
        let found = takes(&mut inch_session(), &format!("drill {wanted}in"));
        let far = (wanted / 20.0).max(1.0 / 64.0);
        for (side, sign) in [("under", -1.0), ("over", 1.0)] {
            let named: Vec<f64> = found[side]
                .as_array()
                .unwrap()
                .iter()
                .map(|drill| drill["mm"].as_f64().unwrap() / 25.4)
                .collect();
            let near =
                [Series::Fraction, Series::Letter, Series::Number, Series::Metric].map(|series| {
                    Drill::all()
                        .filter(|drill| drill.series() == series)
                        .map(|drill| drill.diameter().millimetres() / 25.4)
                        .filter(|size| (size - wanted) * sign > 1e-7)
                        .min_by(|a, b| (a - wanted).abs().total_cmp(&(b - wanted).abs()))
                });
            for size in near.into_iter().flatten() {
                let is_near = (size - wanted).abs() < far - 1e-7;
                let is_named = named.iter().any(|it| (it - size).abs() < 1e-6);
                assert!(is_named || !is_near, "{wanted}: {size} left out");
                let is_nearest = named.first().is_some_and(|it| (it - size).abs() < 1e-6);
                let is_far = (size - wanted).abs() > far + 1e-7;
                assert!(!(is_named && is_far) || is_nearest, "{wanted}: {size} is far");
            }
        }
    }
}

/// A bearing's number stands for its ring: 6203 is 17 by 40 mm, R8 1/2 by 1-1/8 in.
#[test]
fn a_part_in_trouble_takes_a_bearing_by_its_number() {
    let by_number = |query: &str, size: &str| {
        let strip = |mut value: Value| {
            value.as_object_mut().unwrap().retain(|key, _| key != "query" && key != "read_as");
            value
        };
        let found = strip(takes(&mut inch_session(), query));
        assert_eq!(found, strip(takes(&mut inch_session(), size)), "{query}");
    };
    by_number("rescue hole 40.03mm for bearing 6203", "rescue hole 40.03mm for bearing 40mm");
    by_number("rescue shaft 16.97mm for bearing 6203-2RS", "rescue shaft 16.97mm for bearing 17mm");
    by_number("rescue hole 1.127in for bearing R8", "rescue hole 1.127in for bearing 1-1/8in");
    let spins = "bearing spins in the housing 40.03, 6203";
    assert_eq!(read_as(spins), "rescue hole 40.03mm for bearing 6203");
    assert_eq!(read_as("6203 spun on the shaft 16.97"), "rescue shaft 16.97mm for bearing 6203");
    let none = ask(&mut inch_session(), "rescue hole 40.03mm for bearing 6293");
    assert!(none["error"]["message"].as_str().unwrap().contains("6293"), "{none}");
}

/// No more thread than a tap is made to cut (OD 1621: 83) where some drill keeps the
/// nut's limits with less; percents from the Whitworth depth, 0.6403 P a side.
#[test]
fn a_tap_is_not_given_more_thread_than_it_stands() {
    for (query, major, tpi) in [("1/2-26 Whitworth tap", 0.5, 26.0), ("1/4-40 ME tap", 0.25, 40.0)]
    {
        let found = takes(&mut inch_session(), query);
        let percent = |drill: &Value| {
            let size = drill["drill"]["mm"].as_f64().unwrap() / 25.4;
            100.0 * (major - size) / (2.0 * 0.640_327 / tpi)
        };
        let first = percent(&found);
        assert!((60.0..=83.4).contains(&first), "{query}: {first}");
        // One in the range that is advised is listed beside it.
        let (low, high) = (&found["advised"]["min_percent"], &found["advised"]["max_percent"]);
        let range = low.as_f64().unwrap()..=high.as_f64().unwrap();
        let others = found["alternatives"].as_array().unwrap();
        assert!(others.iter().any(|drill| range.contains(&percent(drill))), "{found}");
    }
    let pipe = takes(&mut inch_session(), "quarter BSP tapping");
    assert!(pipe["notes"].to_string().contains("`Rc1/4 tap`"), "{pipe}");
    takes(&mut inch_session(), "Rc1/4 tap");
}

/// A reamer under its own size that cuts the nominal one runs out: it is told so.
#[test]
fn a_worn_reamer_and_one_off_what_is_asked_are_said() {
    let worn = takes(&mut inch_session(), "reamer 3/8in cut 0.3751in, measures 0.3747in");
    assert_eq!(worn["cuts"], "usual");
    assert_eq!(worn["remedies"], serde_json::json!(["run-true", "hone-lead", "worn"]));
    let sound = takes(&mut inch_session(), "reamer 3/8in cut 0.3753in, measures 0.3751in");
    assert_eq!(sound["remedies"], serde_json::json!([]));
}
