//! Single-point threads: depths against published ones, plans that hold
//! together, and what is left to feed.

use fits_checks::{listed_threads, named, rows};
use fits_core::{
    Length, Limits,
    shop::{
        infeed::{DialReads, How, Infeed, Nose, Slide, ThreadCut, try_with},
        wires::WireThread,
    },
    standards::{
        iso286::Feature,
        thread::{Side, Thread},
    },
};
use proptest::prelude::*;

fn mm(value: f64) -> Length {
    #[allow(clippy::cast_possible_truncation, reason = "a test's own small numbers")]
    Length::from_tenth_nanometres((value * 1e7).round() as i64)
}

fn how(slide: Slide, dial: DialReads) -> How {
    How::new(slide, dial, mm(0.02))
}

/// With a first cut of so much.
fn first(how: How, depth: f64) -> How {
    let mut changed = how;
    changed.first = Some(mm(depth));
    changed
}

const STRAIGHT: Slide = Slide::Cross;

fn m10(nose: Nose) -> ThreadCut {
    ThreadCut {
        feature: Feature::Shaft,
        pitch: mm(1.5),
        half_angle_degrees: 30.0,
        blank: mm(10.0),
        pitch_diameter: mm(10.0 - 0.649_519_053 * 1.5),
        nose,
    }
}

#[test]
fn depths_are_the_published_ones() {
    let list = rows("tests/published/infeed.csv");
    for row in &list {
        let half: f64 = row.get("half_angle");
        let value: f64 = row.get("value");
        if row.text("kind") == "compound" {
            let how = how(Slide::Compound { degrees: half }, DialReads::Diameter);
            let plan = Infeed::plan(m10(Nose::Flat(mm(1.5 / 8.0))), how).unwrap();
            let last = plan.list.last().unwrap();
            let times = last.compound.unwrap().millimetres() / plan.depth.millimetres();
            assert!((times - value).abs() < 0.000_006, "{row}: {times}");
            assert_eq!(last.dial, last.compound.unwrap(), "{row}: a compound's dial is its travel");
            continue;
        }
        let size = mm(row.get::<f64>("size") * 10.0);
        let nose = if row.text("nose") == "flat" { Nose::Flat(size) } else { Nose::Radius(size) };
        // Pitch 10 mm; the height above the pitch line of each basic form.
        let half_height = match row.text("half_angle") {
            "30" => 0.375 * 0.866_025_404,
            "27.5" => 0.320_163_5,
            "23.75" => 0.3,
            _ => 0.25,
        };
        let inside = row.text("kind") == "internal";
        // Inside, the crest of 60 degrees is cut off H/4 from the pitch line.
        let above = if inside { 0.25 * 0.866_025_404 } else { half_height };
        let pitch_diameter = 80.0;
        let cut = ThreadCut {
            feature: if inside { Feature::Hole } else { Feature::Shaft },
            pitch: mm(10.0),
            half_angle_degrees: half,
            blank: mm(pitch_diameter + if inside { -20.0 } else { 20.0 } * above),
            pitch_diameter: mm(pitch_diameter),
            nose,
        };
        let depth = cut.depth().unwrap().millimetres() / 10.0;
        let allowed = if half < 26.0 { 0.000_1 } else { 0.000_005 };
        assert!((depth - value).abs() < allowed, "{row}: {depth}");
    }
    assert_eq!(named(&list), 10);
}

#[test]
fn the_common_nose_reaches_the_basic_root() {
    let plan = Infeed::plan(
        m10(ThreadCut::common_nose(mm(1.5), 30.0).unwrap()),
        how(STRAIGHT, DialReads::Diameter),
    )
    .unwrap();
    // American National form: D - 1.299 P, a flat of P/8.
    assert!((plan.root.millimetres() - (10.0 - 1.299_038 * 1.5)).abs() < 1e-5);
    assert!((plan.flat.millimetres() - 1.5 / 8.0).abs() < 1e-6);
    assert_eq!(plan.chamfer_to, plan.root);
    // By the root diameter, the same.
    let again =
        Infeed::plan(m10(Nose::Reaches(plan.root)), how(STRAIGHT, DialReads::Radius)).unwrap();
    assert!((again.depth.millimetres() - plan.depth.millimetres()).abs() < 1e-6);
    // The dial: diameter is twice radius.
    assert_eq!(plan.list.last().unwrap().dial, plan.depth.checked_mul(2).unwrap());
    assert_eq!(again.list.last().unwrap().dial, again.depth);
    assert!(ThreadCut::common_nose(mm(4.0), 15.0).is_err());
    assert_eq!(Slide::usual_compound(30.0), Slide::Compound { degrees: 29.5 });
    assert!(try_with(Feature::Shaft).contains("wires") && try_with(Feature::Hole).contains("plug"));
}

#[test]
fn the_usual_number_of_passes_is_the_tool_makers() {
    // Widia 2017, p. 685: 6 to 8 passes at 1.25 to 1.5 mm, 8 to 10 at 2 mm.
    for (pitch, most) in [(1.5, 8), (2.0, 10), (3.0, 12), (0.5, 5)] {
        let cut = ThreadCut {
            pitch: mm(pitch),
            blank: mm(20.0),
            pitch_diameter: mm(20.0 - 0.649_519 * pitch),
            nose: Nose::Flat(mm(pitch / 8.0)),
            ..m10(Nose::Flat(mm(0.1)))
        };
        let plan = Infeed::plan(cut, how(STRAIGHT, DialReads::Diameter)).unwrap();
        let cutting = plan.list.iter().filter(|pass| pass.name != "spring").count();
        assert!(cutting <= most && cutting + 3 >= most, "{pitch}: {cutting} of {most}");
    }
    // Without a first cut asked for: depth sqrt(q / (n - 1)), q 0.3, 1, 2 ...
    let mut fine = how(STRAIGHT, DialReads::Radius);
    fine.step = mm(0.0001);
    let plan = Infeed::plan(m10(Nose::Flat(mm(0.1875))), fine).unwrap();
    let rough = plan.depth.millimetres() - 0.05;
    for (pass, q) in plan.list.iter().zip([0.3_f64, 1.0, 2.0, 3.0, 4.0, 5.0, 6.0]) {
        let wanted = rough * (q / 6.0).sqrt();
        assert!((pass.depth.millimetres() - wanted).abs() < 0.0001, "{}: {wanted}", pass.depth);
    }
    // The first cut of so many equal areas: depth / sqrt(n).
    let first = first(how(STRAIGHT, DialReads::Radius), 0.3);
    let plan = Infeed::plan(m10(Nose::Flat(mm(0.1875))), first).unwrap();
    let area = |depth: Length| depth.millimetres().powi(2);
    assert!(plan.list[0].depth <= mm(0.3));
    let (one, two) = (area(plan.list[0].depth), area(plan.list[1].depth));
    assert!((two / one - 2.0).abs() < 0.2, "areas {one} {two}");
}

#[test]
fn bad_plans_are_refused_with_the_range() {
    let cut = m10(Nose::Flat(mm(0.1875)));
    let refused = |cut: ThreadCut, how: How| {
        let error = Infeed::plan(cut, how).unwrap_err();
        (error.to_string(), error.advice())
    };
    let straight = how(STRAIGHT, DialReads::Diameter);
    let (why, advice) = refused(cut, how(Slide::Compound { degrees: 31.0 }, DialReads::Diameter));
    assert_eq!(why, "with the compound at 31 degrees the trailing flank is cut wrong");
    assert_eq!(advice, "from 0 to 30 degrees");
    let (why, advice) = refused(cut, first(straight, 2.0));
    assert_eq!(why, "a first cut of 2 mm does not go with this thread's depth");
    assert_eq!(advice, "from 0.147 mm to 0.924 mm");
    assert!(Infeed::plan(cut, first(straight, 0.01)).is_err());
    assert!(Infeed::plan(cut, first(straight, 0.147)).is_ok());
    assert!(Infeed::plan(ThreadCut { blank: mm(9.0), ..cut }, straight).is_err());
    assert!(Infeed::plan(ThreadCut { nose: Nose::Flat(mm(0.8)), ..cut }, straight).is_err());
    assert!(Infeed::plan(ThreadCut { nose: Nose::Radius(mm(2.0)), ..cut }, straight).is_err());
    assert!(Infeed::plan(ThreadCut { nose: Nose::Reaches(mm(9.5)), ..cut }, straight).is_err());
    assert!(Infeed::plan(ThreadCut { nose: Nose::Reaches(mm(7.0)), ..cut }, straight).is_err());
    assert!(Infeed::plan(ThreadCut { half_angle_degrees: f64::NAN, ..cut }, straight).is_err());
    assert!(
        Infeed::plan(cut, how(Slide::Compound { degrees: f64::NAN }, DialReads::Radius)).is_err()
    );
}

#[test]
fn a_reading_over_wires_says_what_to_feed() {
    // M10x1.5 6g: pitch diameter 8.862 to 8.994 (ISO 965-2).
    let limits = Limits::new(mm(8.862), mm(8.994)).unwrap();
    let thread = WireThread::new(mm(1.5), mm(1.5), 30.0, limits.middle(), mm(9.85)).unwrap();
    let wire = thread.best_wire().unwrap();
    let over = thread.over(wire).unwrap().over.checked_add(mm(0.1)).unwrap();
    let now = thread.pitch_diameter_of(wire, over).unwrap();
    let left = Infeed::to_go(
        Feature::Shaft,
        now,
        limits,
        how(Slide::Compound { degrees: 29.5 }, DialReads::Diameter),
    )
    .unwrap();
    assert!((left.radial.millimetres() - 0.05).abs() < 1e-6 && !left.good);
    assert!((left.compound.unwrap().millimetres() - 0.05 * 1.148_956).abs() < 1e-6);
    assert_eq!(left.compound, Some(left.dial));
    let straight = how(STRAIGHT, DialReads::Diameter);
    let at = |size: f64| Infeed::to_go(Feature::Shaft, mm(size), limits, straight);
    assert!(at(8.95).unwrap().good);
    let under_middle = at(8.9).unwrap();
    assert!(under_middle.good && under_middle.dial == Length::ZERO);
    assert_eq!(
        at(8.8).unwrap_err().to_string(),
        "a pitch diameter of 8.8 mm is under the lower limit 8.862 mm already"
    );
    let inside = Infeed::to_go(Feature::Hole, mm(9.2), limits, straight).unwrap_err();
    assert_eq!(
        inside.to_string(),
        "a pitch diameter of 9.2 mm is over the upper limit 8.994 mm already"
    );
}

/// The first pass that takes more on the dial than the one before it.
fn rises(plan: &Infeed) -> Option<String> {
    let mut at = Length::ZERO;
    let mut before: Option<Length> = None;
    for pass in &plan.list {
        let takes = pass.dial.checked_sub(at).unwrap();
        // A compound's travel is kept to 0.1 nm.
        if before.is_some_and(|before| takes.tenth_nanometres() > before.tenth_nanometres() + 2) {
            return Some(format!("pass {} takes {takes} after {}", pass.name, before.unwrap()));
        }
        (at, before) = (pass.dial, Some(takes));
    }
    None
}

#[test]
fn no_pass_of_a_listed_size_is_heavier_than_the_one_before_it() {
    let mut plans = 0;
    for name in listed_threads() {
        let thread: Thread = name.parse().unwrap_or_else(|error| panic!("{name}: {error}"));
        for side in [Side::External, Side::Internal] {
            let Ok(sizes) = thread.sizes(side, None, None) else { continue };
            let Ok(cut) = ThreadCut::of_thread(&thread, &sizes, None) else { continue };
            let half = thread.form().flank_half_angle_degrees();
            for slide in [STRAIGHT, Slide::usual_compound(half)] {
                for dial in [DialReads::Diameter, DialReads::Radius] {
                    for step in [mm(0.01), mm(0.02), Length::THOU] {
                        let how = How::new(slide, dial, step);
                        let plan = Infeed::plan(cut, how)
                            .unwrap_or_else(|error| panic!("{name} {side:?}: {error}"));
                        assert_eq!(rises(&plan), None, "{name} {side:?} {how:?}");
                        plans += 1;
                        for pass in plan.list.iter().filter(|pass| pass.name != "spring") {
                            let is_last = pass.name == "finish";
                            let floor = if is_last { 0.0249 } else { 0.0499 };
                            assert!(
                                pass.takes >= mm(floor),
                                "{name} {side:?} {how:?}: {} takes {}",
                                pass.name,
                                pass.takes
                            );
                        }
                        let finish = plan.list.iter().find(|pass| pass.name == "finish").unwrap();
                        // A dial of whole thou read by radius leaves no less.
                        assert!(finish.takes <= mm(0.0761), "{name}: {}", finish.takes);
                    }
                }
            }
        }
    }
    assert!(plans > 10_000, "{plans}");
}

proptest! {
    #[test]
    fn nothing_panics(
        lengths in prop::array::uniform6(any::<i64>()),
        half in prop_oneof![any::<f64>(), Just(30.0)],
        degrees in prop_oneof![any::<f64>(), 0.0_f64..30.0],
        shift in 0_u32..50,
    ) {
        let [pitch, blank, pitch_diameter, nose, step, first] =
            lengths.map(|count| Length::from_tenth_nanometres(count >> shift));
        for nose in [Nose::Flat(nose), Nose::Radius(nose), Nose::Reaches(nose), Nose::Flat(Length::ZERO)] {
            for feature in [Feature::Hole, Feature::Shaft] {
                let cut = ThreadCut { feature, pitch, half_angle_degrees: half, blank, pitch_diameter, nose };
                for (slide, first) in [(Slide::Cross, None), (Slide::Compound { degrees }, Some(first))] {
                    let mut how = How::new(slide, DialReads::Diameter, step);
                    (how.first, how.springs) = (first, 1);
                    let _ = Infeed::plan(cut, how).map(|plan| plan.reasons());
                    if let Ok(limits) = Limits::new(blank, pitch_diameter) {
                        let _ = Infeed::to_go(feature, pitch, limits, how);
                    }
                }
            }
        }
    }

    #[test]
    fn passes_run_down_to_the_depth(
        hole in any::<bool>(),
        pitch in 0.4_f64..8.0,
        times in 6.0_f64..40.0,
        angle in 0.0_f64..=1.0,
        compound in any::<bool>(),
        diameter in any::<bool>(),
        step in prop::sample::select(vec![0.0001, 0.01, 0.02, 0.0254, 0.05]),
        half in prop::sample::select(vec![30.0, 27.5, 23.75]),
        share in prop::option::of(0.25_f64..0.8),
    ) {
        let feature = if hole { Feature::Hole } else { Feature::Shaft };
        let blank = times * pitch;
        let off = 0.6 * pitch * if hole { 1.0 } else { -1.0 };
        let cut = ThreadCut {
            feature,
            pitch: mm(pitch),
            half_angle_degrees: half,
            blank: mm(blank),
            pitch_diameter: mm(blank + off),
            nose: ThreadCut::common_nose(mm(pitch), half).unwrap(),
        };
        let depth = cut.depth().unwrap();
        let slide = if compound { Slide::Compound { degrees: half * angle } } else { Slide::Cross };
        let dial = if diameter { DialReads::Diameter } else { DialReads::Radius };
        let first = share.map(|share| mm(0.9 * share * depth.millimetres()));
        let mut how = How::new(slide, dial, mm(step));
        (how.first, how.springs) = (first, 1);
        let plan = Infeed::plan(cut, how);
        let plan = plan.map_err(|error| TestCaseError::fail(format!("{error}: {}", error.advice())))?;
        prop_assert_eq!(plan.depth, depth);
        let mut at = Length::ZERO;
        for pass in &plan.list {
            prop_assert_eq!(pass.depth.checked_sub(at).unwrap(), pass.takes);
            prop_assert!(pass.takes.is_positive() || pass.name == "spring");
            prop_assert!(pass.depth <= depth);
            prop_assert_eq!(pass.compound.is_some(), compound);
            // What cuts can be set on the dial, but for the last.
            if pass.name != "finish" && pass.name != "spring" {
                let steps = pass.dial.millimetres() / step;
                prop_assert!((steps - steps.round()).abs() < 1e-3, "{} is {} steps", pass.dial, steps);
            }
            at = pass.depth;
        }
        prop_assert_eq!(at, depth);
        prop_assert_eq!(rises(&plan), None);
        prop_assert_eq!(plan.list.iter().filter(|pass| pass.name == "finish").count(), 1);
        prop_assert!(plan.list.len() <= 44);
        // The groove is half a pitch wide at the pitch diameter: the flat that
        // the root needs is the nose's.
        if let Nose::Flat(flat) = cut.nose {
            prop_assert!((plan.flat.millimetres() - flat.millimetres()).abs() < 1e-5);
        }
    }
}

/// The area of each chip, by stepping down the groove in thin slices: a tool of
/// this flat and half angle opens the groove by twice the tangent.
fn chips(plan: &Infeed) -> Vec<f64> {
    let (flat, tangent) = (plan.flat.millimetres(), plan.cut.half_angle_degrees.to_radians().tan());
    let area = |depth: f64| {
        let slices = 2000;
        let thick = depth / f64::from(slices);
        // Each slice is as wide as the tool is at its height above the tip.
        (0..slices).map(|at| thick * (flat + 2.0 * tangent * thick * (f64::from(at) + 0.5))).sum()
    };
    let mut before = 0.0;
    plan.list
        .iter()
        .filter(|pass| pass.takes.is_positive())
        .map(|pass| {
            let now: f64 = area(pass.depth.millimetres());
            let chip = now - before;
            before = now;
            chip
        })
        .collect()
}

#[test]
fn chips_of_a_power_thread_are_of_one_area() {
    for (diameter, pitch, half) in [(20.0, 4.0, 15.0), (12.0, 3.0, 15.0), (25.4, 5.08, 14.5)] {
        let cut = ThreadCut {
            feature: Feature::Shaft,
            pitch: mm(pitch),
            half_angle_degrees: half,
            blank: mm(diameter),
            pitch_diameter: mm(diameter - pitch / 2.0),
            nose: Nose::Reaches(mm(diameter - pitch - 0.5)),
        };
        let plan = Infeed::plan(cut, How::new(Slide::Cross, DialReads::Radius, mm(0.01))).unwrap();
        let chips = chips(&plan);
        let (finish, rough) = chips.split_last().unwrap();
        let mean = rough.iter().sum::<f64>() / f64::from(u32::try_from(rough.len()).unwrap());
        for (number, chip) in rough.iter().enumerate() {
            // A division of the dial, 0.01 mm over the groove's width, is not split.
            assert!(
                (chip / mean - 1.0).abs() < 0.2,
                "Tr{diameter}x{pitch} cut {number}: {chip} of {mean}"
            );
        }
        assert!(*finish < mean, "{finish}");
        // Nothing rubs.
        assert!(
            plan.list
                .iter()
                .filter(|pass| pass.name.parse::<u32>().is_ok())
                .all(|pass| pass.takes >= mm(0.05))
        );
    }
}
