//! What the rules of threads give beyond the tables, worked by hand, and the
//! usual classes.

use fits_core::{
    Length,
    standards::thread::{Class, Engagement, Side, Sizes, Thread, engagement},
};
use uom::si::angle::degree;

fn thread(name: &str) -> Thread {
    name.parse().unwrap_or_else(|error| panic!("{name}: {error}"))
}

fn size(text: &str) -> Length {
    text.parse().unwrap_or_else(|error| panic!("{text}: {error}"))
}

#[track_caller]
fn sizes(name: &str, class: &str) -> Sizes {
    let class = Class::read(class).expect("a class");
    let side = class.side(thread(name).form()).expect("a side");
    thread(name).sizes(side, Some(class), None).expect(name)
}

#[test]
fn metric_figures_outside_the_tables_follow_the_formulas() {
    // P 1.2, d 5.6 to 11.2, mean 7.92: 90 P^0.4 d^0.1 = 119.1, so 118.
    // Grades are four R 40 numbers apart, a nut's tolerance five above.
    // 180 P^(2/3) - 3.15/sqrt(P) = 200.4 for the crest of grade 6.
    // 50 + 11 P = 63.2, 30 + 11 P = 43.2 (so 42.5, whole 42), 15 + 11 P = 28.2.
    for (class, pitch, crest, deviation) in [
        ("6g", "118um", "200um", "28um"),
        ("4h", "75um", "125um", "0um"),
        ("8e", "190um", "315um", "63um"),
        ("6f", "118um", "200um", "42um"),
    ] {
        let sizes = sizes("M10x1.2", class);
        assert_eq!(sizes.pitch_tolerance, size(pitch), "{class}");
        assert_eq!(sizes.crest_tolerance, size(crest), "{class}");
        assert_eq!(sizes.deviation, size(deviation).checked_neg().unwrap(), "{class}");
        assert!(sizes.outside.is_some());
    }
    // 230 P^0.7 = 261.3 of grade 6; 433 P - 190 P^1.22 = 222.6 below 1 mm.
    assert_eq!(sizes("M10x1.2", "6H").pitch_tolerance, size("160um"));
    assert_eq!(sizes("M10x1.2", "6H").crest_tolerance, size("265um"));
    assert_eq!(sizes("M10x1.2", "8H").crest_tolerance, size("425um"));
    assert_eq!(sizes("M10x0.9", "6H").crest_tolerance, size("224um"));
    // Inside the tables nothing is said.
    assert_eq!(sizes("M10x1.25", "6g").outside, None);
    assert_eq!(sizes("M10x1.25", "6h").outside, None);
    // M6x0.5 has no cell in its step, though many charts print one.
    assert!(sizes("M6x0.5", "6g").outside.is_some());
}

#[test]
fn the_usual_classes_go_by_size_and_engagement() {
    // ISO 965-1, medium quality; DIN 13 for the sizes up to M1.4.
    for (name, screw, nut) in
        [("M10", "6g", "6H"), ("M1.6", "6g", "6H"), ("M1.4", "6h", "5H"), ("M1x0.2", "6h", "4H")]
    {
        assert_eq!(thread(name).external(None).unwrap().class.to_string(), screw, "{name}");
        assert_eq!(thread(name).internal(None).unwrap().class.to_string(), nut, "{name}");
    }
    for (engaged, group, screw, nut) in [
        ("4.9mm", Engagement::Short, "5g6g", "5H"),
        ("5mm", Engagement::Normal, "6g", "6H"),
        ("15mm", Engagement::Normal, "6g", "6H"),
        ("15.1mm", Engagement::Long, "7g6g", "7H"),
    ] {
        let (ten, engaged) = (thread("M10"), size(engaged));
        assert_eq!(Engagement::of(&ten, engaged), group);
        let class = |side| ten.sizes(side, None, Some(engaged)).unwrap().class.to_string();
        assert_eq!(class(Side::External), screw, "{engaged}");
        assert_eq!(class(Side::Internal), nut, "{engaged}");
    }
    assert_eq!(thread("1/4-20").external(None).unwrap().class.to_string(), "2A");
    assert_eq!(thread("1/4-20").internal(None).unwrap().class.to_string(), "2B");
}

#[test]
fn engagements_not_read_follow_the_formula_and_say_so() {
    // 2.24 and 6.7 times 0.75 mm times 5.6^0.2.
    let (from, to, is_read) = engagement(&thread("M10x0.75"));
    assert_eq!((from, to, is_read), (size("2.371mm"), size("7.092mm"), false));
}

#[test]
fn unified_minor_diameters_are_rounded_by_size_and_class() {
    // The least is 0.1042 and the tolerance 0.0099 before rounding; a nut of
    // 0.138 in is the smallest whose limits are rounded to three places.
    let two = sizes("6-32", "2B").minor;
    assert_eq!((two.min, two.max), (Some(size("0.104in")), Some(size("0.114in"))));
    assert_eq!(sizes("5-40", "2B").minor.min, Some(size("0.0979in")));
    // Coarser than 4 turns: 0.15 P; at 4 turns 0.25 P - 0.4 P².
    assert_eq!(sizes("6-3 UNS", "2B").crest_tolerance, size("0.05in"));
    assert_eq!(sizes("6-4", "2B").crest_tolerance, size("0.0375in"));
}

#[test]
fn a_pitch_leaves_a_core() {
    assert!("M10x5".parse::<Thread>().is_ok());
    let error = "M10x5.1".parse::<Thread>().unwrap_err();
    assert_eq!(error.to_string(), "a pitch of 5.1 mm leaves no core in M10");
    assert!("1/4-8".parse::<Thread>().is_ok());
    assert!("1/4-7".parse::<Thread>().is_err());
}

#[test]
fn positions_that_are_not_held_name_the_nearest() {
    let error = thread("M10").external(Class::read("6c")).unwrap_err();
    assert_eq!(error.advice(), "the nearest is 6e, the usual one 6g");
    let error = thread("M10").external(Class::read("5e")).unwrap_err();
    assert_eq!(error.advice(), "the nearest is 5e6e, the usual one 6g");
    let error = thread("M10").internal(Class::read("9G")).unwrap_err();
    assert_eq!(error.advice(), "the nearest is 8G, the usual one 6H");
}

#[test]
fn more_starts_lead_further() {
    let (one, two) = (thread("M10x1.5"), thread("M10xPh3P1.5"));
    let tangent = |thread: &Thread| thread.lead_angle().get::<degree>().to_radians().tan();
    assert!((tangent(&two) / tangent(&one) - 2.0).abs() < 1e-9);
    assert_eq!(two.external(None).unwrap().pitch, one.external(None).unwrap().pitch);
}

#[test]
fn triangles_are_half_the_cotangent_of_the_flank_angle() {
    for name in ["M10x1", "1-8"] {
        let height = thread(name).triangle_height().millimetres();
        let flank = thread(name).form().flank_half_angle_degrees().to_radians();
        let wanted = thread(name).pitch().millimetres() / 2.0 / flank.tan();
        assert!((height - wanted).abs() < 1e-6, "{name}");
        assert!((thread(name).height().millimetres() - 0.625 * wanted).abs() < 1e-6, "{name}");
    }
}
