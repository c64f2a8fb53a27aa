//! The top slide set over, so that its travel moves the tool a tenth of it: the
//! angle, what is dialled, and what it is worth where the dial is coarse.

use fits_core::{
    Length,
    shop::{
        adviser::{Prior, Settings, TOP_SLIDE_DEGREES},
        rehearse::{Rehearsal, RehearsedPart},
    },
    standards::{
        instruments::Uncertainty,
        iso286::{Class, Feature},
    },
};
use fits_repl::{render::json, session::Session};
use serde_json::Value;

fn size(text: &str) -> Length {
    text.parse().expect(text)
}

/// The sine of the angle is a tenth. G. Lautard, The Machinist's Bedside Reader,
/// as its readers report it: set at 5.75 degrees, a thousandth of travel is a tenth of a
/// thousandth of cut.
#[test]
fn the_angle_takes_a_tenth() {
    assert!((TOP_SLIDE_DEGREES.to_radians().sin() - 0.1).abs() < 1e-5);
    assert!((5.74_f64.to_radians().sin() - 0.1).abs() < 2e-5);
    assert!((5.75_f64.to_radians().sin() - TOP_SLIDE_DEGREES.to_radians().sin()).abs() < 5e-4);
    let settings = Settings::default().dial_division(size("0.02mm"));
    let settings = settings.top_slide(Some(size("0.01mm")));
    for (change, travel) in [("0.002mm", "0.01mm"), ("0.006mm", "0.03mm"), ("0.05mm", "0.25mm")] {
        let dialled = settings.on_top_slide(size(change)).expect(change);
        assert_eq!(dialled, size(travel), "{change}");
        // The travel's sine counts on both sides.
        let cut = 2.0 * dialled.millimetres() * TOP_SLIDE_DEGREES.to_radians().sin();
        assert!((cut - size(change).millimetres()).abs() < 1e-5 * cut.max(1.0));
    }
    // Whole divisions are dialled on the cross slide.
    assert_eq!(settings.on_top_slide(size("0.04mm")), None);
    assert_eq!(Settings::default().on_top_slide(size("0.006mm")), None);
}

/// A coarse dial: more parts end good with the top slide than by splitting a
/// division by eye, and no more are scrapped.
#[test]
fn a_coarse_dial_gains_by_it() {
    let class: Class = "H6".parse().expect("a class");
    let rehearsed = |top_slide: Option<Length>| {
        let work = RehearsedPart {
            limits: class.limits(size("20mm")).expect("defined"),
            feature: Feature::Hole,
            start: size("19.6mm"),
            machine: Prior {
                gain: 0.97,
                gain_sd: 0.04,
                offset: Length::ZERO,
                offset_sd: size("6um"),
                scatter: size("2um"),
            },
            instrument: Uncertainty { repeat: size("2um"), bias: size("1.5um") },
            settings: Settings::default().dial_division(size("0.05mm")).top_slide(top_slide),
        };
        let mut rehearsal = Rehearsal::new(work, 7).expect("sensible");
        for _ in 0..400 {
            rehearsal.run().expect("in range");
        }
        rehearsal.odds()[2]
    };
    let (by_eye, set_over) = (rehearsed(None), rehearsed(Some(size("0.025mm"))));
    assert!(set_over.good > by_eye.good + 0.02, "{set_over:?} against {by_eye:?}");
    assert!(set_over.over <= by_eye.over + 0.01, "{set_over:?} against {by_eye:?}");
}

/// Orders at a coarse dial, asked of the program; the first that is not a whole
/// division.
fn part_of_a_division(settings: &[&str], start: &str) -> (Value, String) {
    let mut session = Session::new();
    let mut out = Vec::new();
    for line in settings.iter().chain([&start]) {
        out.clear();
        json::object(&mut out, None, line, &session.evaluate(line));
    }
    let last: Value = serde_json::from_slice(&out).expect("JSON");
    (last["next"].clone(), last.to_string())
}

#[test]
fn the_order_says_the_number_on_the_top_slide() {
    let start = "bore 20 H7 from 19.990 with bore gauge";
    let (next, all) = part_of_a_division(&["dial graduation 0.05mm", "top slide 0.01mm"], start);
    let (dial, travel) = (next["dial_mm"].as_f64(), next["top_slide_mm"].as_f64());
    let (Some(dial), Some(travel)) = (dial, travel) else { panic!("{all}") };
    assert!((travel - 5.0 * dial).abs() < 1e-9, "{next}");
    // None is kept by a boring head, and by a lathe that has none.
    for settings in [
        &["top slide 0.01mm", "machine boring head", "dial graduation 0.05mm"][..],
        &["dial graduation 0.05mm"],
        &["dial graduation 0.05mm", "top slide 0.01mm", "top slide none"],
    ] {
        let (next, all) = part_of_a_division(settings, start);
        assert!(next["action"].is_string() && next["top_slide_mm"].is_null(), "{all}");
    }
}

/// A stop at a coarse dial says by how much it is short and what takes that off,
/// and the note at the start how fine the advice goes: never to split a division
/// alone.
#[test]
fn a_split_division_always_has_its_number() {
    for (settings, number) in [
        (&["dial graduation 0.04mm"][..], "quarters, 0.010 mm"),
        (&["dial graduation 0.04mm", "top slide 0.02mm"], "goes to 0.004 mm"),
        (&["machine boring head", "dial graduation 0.04mm"], "quarters, 0.010 mm"),
    ] {
        let (_, all) = part_of_a_division(settings, "bore 20 H7 from 19.6 with bore gauge");
        let plan: Value = serde_json::from_str(&all).expect("JSON");
        let note = plan["notes"][0].as_str().expect("a note");
        assert!(note.contains(number), "{note}");
        let has_slide = note.contains("top slide");
        assert_eq!(has_slide, settings[0] != "machine boring head", "{note}");
    }
}
