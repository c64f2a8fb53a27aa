//! The end of a threading tool, round or flat, and how its slides are set.

use fits_repl::{
    answer::{Answer, ThreadPassesAnswer},
    render::{Colour, text::Text},
    session::Session,
};

fn evaluate(query: &str) -> (ThreadPassesAnswer, String) {
    let mut session = Session::new();
    let answer = session.evaluate(query).unwrap_or_else(|problem| panic!("{query}: {problem:?}"));
    let text = Text { settings: session.shown(), colour: Colour::Off }.answer(&answer);
    match answer {
        Answer::ThreadPasses(passes) => {
            (*passes, text.split_whitespace().collect::<Vec<_>>().join(" "))
        }
        other => panic!("{query}: {other:?}"),
    }
}

/// The width of the groove at a diameter, by steps along the flank from the
/// deepest point of the tool: an independent picture of the tool's outline.
fn groove_at(up: f64, radius: Option<f64>, flat: f64) -> f64 {
    let half = 30_f64.to_radians();
    let Some(radius) = radius else { return flat + 2.0 * up * half.tan() };
    // The circle touches the flank where its normal stands square to it.
    let touch = radius * (1.0 - half.sin());
    assert!(up >= touch);
    2.0 * (radius * half.cos() + (up - touch) * half.tan())
}

#[test]
fn the_groove_is_half_a_pitch_wide_at_the_pitch_diameter() {
    for (query, radius, flat) in [
        ("M10x1.5 cut, nose 0.2mm", Some(0.2), 0.0),
        ("M10x1.5 cut, nose radius 0.2mm", Some(0.2), 0.0),
        ("M10x1.5 cut, radius 0.2mm", Some(0.2), 0.0),
        ("M20x2.5 cut, nose 0.5mm", Some(0.5), 0.0),
        ("M20x2.5 cut inside, nose 0.1mm", Some(0.1), 0.0),
        ("M10x1.5 cut, flat 0.2mm", None, 0.2),
        ("M20x2.5 cut, flat 0.5mm", None, 0.5),
    ] {
        let (passes, text) = evaluate(query);
        let thread: fits_core::standards::thread::Thread =
            query.split(' ').next().unwrap().parse().unwrap();
        let sizes =
            if passes.side == "external" { thread.external(None) } else { thread.internal(None) };
        let pitch = sizes.unwrap().pitch;
        let pitch =
            f64::midpoint(pitch.max.unwrap().millimetres(), pitch.min.unwrap().millimetres());
        let up = (passes.root_mm.0.millimetres() - pitch).abs() / 2.0;
        let half = thread.pitch().millimetres() / 2.0;
        let width = groove_at(up, radius, flat);
        assert!((width - half).abs() < 1e-4, "{query}: {width} for {half}");
        let said = if radius.is_some() { "tool nose radius" } else { "tool flat" };
        assert!(text.contains(said), "{query}: {text}");
        assert_eq!(passes.nose_radius_mm.map(|it| it.0.millimetres()), radius, "{query}");
    }
}

#[test]
fn round_and_flat_are_not_said_together() {
    let problem = Session::new().evaluate("M10x1.5 cut, nose 0.2mm flat 0.2mm").unwrap_err();
    assert_eq!(problem.message, "a tool's end is round or flat, not both");
}

#[test]
fn the_compound_is_said_from_both_ways_and_inside_feeds_back() {
    let (_, outside) = evaluate("M10x1.5 cut");
    assert!(outside.contains("29.5 deg from the cross slide, 60.5 from the bed"), "{outside}");
    assert!(
        outside.contains(
            "touch the blank, both dials to zero; pull out and return by the cross slide"
        ),
        "{outside}"
    );
    assert!(!outside.contains("toward you"), "{outside}");
    let (_, inside) = evaluate("M10x1.5 cut inside");
    assert!(inside.contains("touch the bore"), "{inside}");
    assert!(inside.contains("inside it feeds toward you, the dial counts back"), "{inside}");
    let (_, straight) = evaluate("M10x1.5 cut inside straight");
    assert!(!straight.contains("from the bed") && straight.contains("toward you"), "{straight}");
}
