//! Reamers and pre-drills against DIN 1420 rows, and what every plan of
//! passes must keep.
//!
//! `tests/published/reamers.csv` holds the reamers read in a catalogue (SEEN:
//! the seven rows of H7 and the worked example of 10 D8) and those computed by
//! the published rule (COMPUTED: no outside check of the rule, but of this
//! library's arithmetic). The stock is the published one of
//! `data/holemaking/reaming_stock.csv`; the figures of passes are common
//! practice without a source, so only their properties are checked.

use fits_checks::rows;
use fits_core::{
    Length, Limits,
    shop::{CutRules, Pass, Passes, Ream, Stage, Start},
    standards::{
        drills::{Drill, Series},
        iso286::{Class, Feature},
    },
};
use proptest::prelude::*;

#[track_caller]
fn size(text: &str) -> Length {
    text.parse().unwrap_or_else(|error| panic!("{text}: {error}"))
}

fn mm(text: &str) -> Length {
    size(&format!("{text}mm"))
}

#[track_caller]
fn limits(nominal: Length, class: &str) -> Limits {
    let class: Class = class.parse().expect(class);
    class.limits(nominal).expect("defined")
}

fn less(one: Length, other: Length) -> Length {
    one.checked_sub(other).unwrap()
}

#[test]
fn reamers_are_those_of_din_1420() {
    let (mut seen, mut computed) = (0, 0);
    for row in &rows("tests/published/reamers.csv") {
        let (over, up_to) = (mm(row.text("over_mm")), mm(row.text("upto_mm")));
        // Inside the range and at its end; reamers begin at 1 mm.
        let inside = over.checked_add(up_to).unwrap().half().max(mm("1"));
        for nominal in [inside, up_to] {
            let ream = Ream::of(limits(nominal, row.text("hole")))
                .unwrap_or_else(|error| panic!("{row}: {error}"));
            let at = |column: &str| match row.text("unit") {
                "um" => nominal.checked_add(size(&format!("{}um", row.text(column)))).unwrap(),
                "mm" => mm(row.text(column)),
                unit => panic!("{row}: {unit}"),
            };
            assert_eq!(
                (ream.reamer.lower(), ream.reamer.upper()),
                (at("size_low"), at("size_high")),
                "{row}: {nominal}"
            );
            assert!(ream.hole.contains(ream.reamer.lower()), "{row}");
            assert!(ream.hole.contains(ream.reamer.upper()), "{row}");
        }
        match row.text("status") {
            "SEEN" => seen += i32::from(!row.is_unconfirmed()),
            "COMPUTED" => computed += 1,
            status => panic!("{row}: {status}"),
        }
    }
    assert_eq!((seen, computed), (7, 21));
}

#[test]
fn the_worked_example_of_10_d8() {
    // Hole 10.040 to 10.062, IT8 22 um: 15 % is 3.3 um, up to 4; 35 % is
    // 7.7 um, up to 8 (the published worked example of DIN 1420).
    let hole = limits(mm("10"), "D8");
    assert_eq!((hole.lower(), hole.upper()), (mm("10.040"), mm("10.062")));
    let ream = Ream::of(hole).unwrap();
    assert_eq!((ream.reamer.lower(), ream.reamer.upper()), (mm("10.050"), mm("10.058")));
}

/// The published stock for a hole.
fn published_stock(hole: Length) -> (Length, Length) {
    rows("data/holemaking/reaming_stock.csv")
        .iter()
        .find(|row| mm(row.text("over_mm")) < hole && hole <= mm(row.text("upto_mm")))
        .map(|row| (mm(row.text("least_mm")), mm(row.text("most_mm"))))
        .expect("a row")
}

#[test]
fn pre_drills_leave_the_published_stock() {
    // A drill cuts 0.05 mm over when one is chosen for reaming (trade-training
    // notes): the least stock must be left even so.
    let oversize = mm("0.05");
    let (mut metric, mut fraction) = (0, 0);
    for tenths in 10..=800 {
        let hole = limits(Length::from_micrometres(tenths * 100).unwrap(), "H7");
        let ream = Ream::of(hole).expect("reamed");
        let (least, most) = published_stock(hole.lower());
        assert_eq!((ream.stock.lower(), ream.stock.upper()), (least, most));
        let before = ream.before();
        assert_eq!(less(hole.lower(), before), ream.stock.middle(), "{hole:?}");
        let largest = less(less(hole.lower(), least), oversize);
        for (found, series) in [(ream.metric, Series::Metric), (ream.fraction, Series::Fraction)] {
            let best = Drill::all()
                .filter(|drill| drill.series() == series && drill.diameter() <= largest)
                .max_by_key(|drill| drill.diameter());
            // Half as much again as the most is where a drill is no use.
            let usable = best.filter(|drill| {
                let leaves = less(hole.lower(), drill.diameter());
                leaves.checked_mul(2).unwrap() <= most.checked_mul(3).unwrap()
            });
            assert_eq!(
                found.map(|found| found.drill.name()),
                usable.map(Drill::name),
                "{series:?} before {}",
                hole.lower()
            );
            if let Some(found) = found {
                assert_eq!(found.leaves, less(hole.lower(), found.drill.diameter()));
                assert!(less(found.leaves, oversize) >= least);
                assert_eq!(found.drill.series(), series);
            }
        }
        metric += usize::from(ream.metric.is_some());
        fraction += usize::from(ream.fraction.is_some());
    }
    assert!(metric > 200 && fraction > 300, "{metric} {fraction}");
}

#[test]
fn holes_that_are_not_reamed_are_refused() {
    for (nominal, class, sentence) in [
        ("81", "H7", "reamers are not usual above 80 mm: bore it"),
        ("0.9", "H7", "reamers are not usual below 1 mm: drill it"),
        ("10", "H2", "the tolerance is finer than reaming holds: bore and hone it"),
    ] {
        let error = Ream::of(limits(mm(nominal), class)).unwrap_err();
        assert_eq!(error.to_string(), sentence);
    }
}

/// What every plan keeps, whatever it was asked for.
#[track_caller]
fn hold(plan: &Passes, start: Start, rules: &CutRules) {
    let name = |pass: &Pass| pass.stage.name();
    let step = rules.step.tenth_nanometres();
    let is_measured = matches!(start, Start::From(_));
    // Inside the limits, and no farther off the middle than half a division
    // unless the least chip goes past it; at the middle where the first cut can
    // see to it.
    if is_measured {
        let off = less(plan.aim, plan.limits.middle()).checked_abs().unwrap();
        let near = off.tenth_nanometres() * 2 <= step + 1;
        let only =
            plan.list[0].takes.is_some_and(|takes| less(takes, rules.least_chip) <= rules.step);
        assert!(near || only, "{plan:?}");
        assert!(plan.limits.contains(plan.aim), "{plan:?}");
    } else {
        assert_eq!(plan.aim, plan.limits.middle());
    }
    assert!(plan.list.len() <= 40);
    // It ends at the aim, with a pass that is set to take nothing.
    let spring = plan.list.last().expect("passes");
    assert_eq!((spring.stage, spring.takes), (Stage::Spring, Some(Length::ZERO)));
    assert_eq!(spring.to, plan.aim);
    let cuts = &plan.list[..plan.list.len() - 1];
    let finish = cuts.last().expect("a cut");
    assert_eq!((finish.stage, finish.to), (Stage::Finish, plan.aim));
    // Each cut goes on towards the aim and takes what it says; what the first
    // takes from a size that was not measured is not said.
    let mut at = plan.start.filter(|_| is_measured);
    let mut from = if cuts[0].stage == Stage::Drill { None } else { plan.start };
    for pass in cuts {
        if let Some(before) = from {
            match plan.feature {
                Feature::Hole => assert!(pass.to > before && pass.to <= plan.aim, "{plan:?}"),
                Feature::Shaft => assert!(pass.to < before && pass.to >= plan.aim, "{plan:?}"),
            }
        }
        let takes = at.map(|before| less(pass.to, before).checked_abs().unwrap());
        assert_eq!(pass.takes, takes, "{}", name(pass));
        from = Some(pass.to);
        at = from.filter(|_| pass.stage != Stage::Drill);
    }
    // The order of the stages; one drill, one of each finish cut at most.
    let rank = |pass: &Pass| match pass.stage {
        Stage::Drill => 0,
        Stage::Rough => 1,
        Stage::SemiFinish => 2,
        Stage::Finish => 3,
        Stage::Spring => 4,
    };
    for pair in plan.list.windows(2) {
        let repeats = pair[0].stage == Stage::Rough;
        assert!(rank(&pair[0]) + usize::from(!repeats) <= rank(&pair[1]));
    }
    // No cut takes more than the practice's figure, or two least chips, and
    // none is under the least chip.
    let row = rows("data/holemaking/passes.csv")
        .into_iter()
        .find(|row| plan.limits.middle() <= mm(row.text("upto_mm")))
        .expect("a row");
    let chips = rules.least_chip.tenth_nanometres();
    let divisions = (chips + step - 1) / step;
    let most = mm(row.text("rough_mm")).max(Length::from_tenth_nanometres(2 * divisions * step));
    for takes in cuts.iter().filter_map(|pass| pass.takes) {
        assert!(rules.least_chip <= takes && takes <= most, "{takes}: {plan:?}");
    }
    // Whole divisions, but for the last where it is split.
    let known: Vec<i64> =
        cuts.iter().filter_map(|pass| Some(pass.takes?.tenth_nanometres())).collect();
    if let [whole @ .., _] = known.as_slice() {
        assert!(whole.iter().all(|takes| takes % step == 0), "{plan:?}");
    }
    // The last two cuts are equal within a step.
    if let [.., semi, finish] = cuts
        && semi.stage == Stage::SemiFinish
        && let (Some(semi), Some(finish)) = (semi.takes, finish.takes)
    {
        let apart = less(semi, finish).checked_abs().unwrap();
        assert!(apart <= rules.step, "{semi} then {finish} at a step of {step}");
    }
}

fn feature() -> impl Strategy<Value = Feature> {
    prop_oneof![Just(Feature::Hole), Just(Feature::Shaft)]
}

proptest! {
    #[test]
    fn plans_end_inside_by_cuts_of_whole_divisions(
        feature in feature(),
        nominal in 90_000_000_i64..5_000_000_000,
        tolerance in 10_000_i64..2_000_000,
        off in prop_oneof![1_i64..3_000_000, 1_i64..600_000_000],
        step in prop_oneof![Just(50_000_i64), Just(100_000), Just(254_000), Just(500_000), 1_i64..1_000_000],
        least in prop_oneof![Just(100_000_i64), Just(200_000), 10_000_i64..10_000_000],
    ) {
        let count = Length::from_tenth_nanometres;
        let limits = Limits::new(count(nominal), count(nominal + tolerance)).unwrap();
        let rules = CutRules::stepping(count(step)).with_least_chip(count(least));
        let start = match feature {
            Feature::Hole => nominal - off,
            Feature::Shaft => nominal + tolerance + off,
        };
        prop_assume!(start > 0);
        let start = Start::From(count(start));
        match Passes::plan(feature, limits, start, &rules) {
            Ok(plan) => hold(&plan, start, &rules),
            Err(error) => {
                let text = error.to_string();
                if text.ends_with("roughing passes: start nearer to size") {
                    // More than 35 passes of at least 0.5 mm.
                    prop_assert!(off > 35 * 5_000_000);
                } else if text.contains("a tool rubs under") {
                    // The least chip goes past the last limit, or to it.
                    prop_assert!(off + tolerance <= least + 1, "{}", text);
                } else {
                    prop_assert!(text.starts_with("no boring tool goes into"), "{}", text);
                    prop_assert!(feature == Feature::Hole && nominal - off < 80_000_000);
                }
            }
        }
        let open = Passes::plan(feature, limits, Start::Open, &rules).unwrap();
        prop_assert_eq!(open.start, None);
        hold(&open, Start::Open, &rules);
        // After any drill that leaves the cuts.
        if feature == Feature::Hole {
            let range = Passes::drill_range(limits, &rules).unwrap();
            for drill in [range.lower(), range.middle(), range.upper()] {
                if drill >= rules.smallest_bore {
                    let start = Start::Drilled(drill);
                    hold(&Passes::plan(feature, limits, start, &rules).unwrap(), start, &rules);
                }
            }
        }
    }

    #[test]
    fn work_that_is_good_or_over_is_refused(
        feature in feature(),
        nominal in 90_000_000_i64..5_000_000_000,
        tolerance in 10_000_i64..2_000_000,
        part in 0.0..=1.0_f64,
        past in 1_i64..10_000_000,
    ) {
        let count = Length::from_tenth_nanometres;
        let limits = Limits::new(count(nominal), count(nominal + tolerance)).unwrap();
        let refused = |size: i64| Passes::plan(feature, limits, Start::From(count(size)), &CutRules::stepping(mm("0.01")))
            .map(|plan| plan.list)
            .unwrap_err()
            .to_string();
        #[allow(clippy::cast_possible_truncation, clippy::cast_precision_loss, reason = "a place inside")]
        let inside = nominal + (part * tolerance as f64) as i64;
        prop_assert_eq!(
            refused(inside),
            format!("{} is good already: no cut is left", count(inside))
        );
        let (size, sentence) = match feature {
            Feature::Hole => {
                let size = nominal + tolerance + past;
                (size, format!("a bore of {} is over the upper limit {} already", count(size), limits.upper()))
            }
            Feature::Shaft => {
                let size = nominal - past;
                (size, format!("a shaft of {} is under the lower limit {} already", count(size), limits.lower()))
            }
        };
        prop_assert_eq!(refused(size), sentence);
    }
}

#[test]
fn both_ends_of_the_limits_are_good() {
    let hole = limits(mm("20"), "H7");
    let rules = CutRules::stepping(mm("0.01"));
    for good in [hole.lower(), hole.middle(), hole.upper()] {
        let error = Passes::plan(Feature::Hole, hole, Start::From(good), &rules).unwrap_err();
        assert_eq!(error.to_string(), format!("{good} is good already: no cut is left"));
    }
    let plan = Passes::plan(Feature::Hole, hole, Start::From(mm("19.6")), &rules).unwrap();
    // 41 steps of the dial; half a step more would be the middle.
    assert_eq!(plan.list[0].takes, Some(mm("0.2")));
    assert_eq!(plan.list[1].takes, Some(mm("0.21")));
}

#[test]
fn no_tool_is_sent_where_it_rubs_or_does_not_go_in() {
    let hole = limits(mm("20"), "H7");
    let rules = CutRules::stepping(mm("0.01")).with_least_chip(mm("0.03"));
    let plan = |from| Passes::plan(Feature::Hole, hole, Start::From(mm(from)), &rules);
    // 0.0155 to the middle, 0.026 to the last limit: no chip of 0.03.
    let rubs = plan("19.995").unwrap_err().to_string();
    assert_eq!(rubs, "0.0155 mm is left, and a tool rubs under 0.03 mm: polish or hone it to size");
    // A chip of 0.03 ends inside: it is taken, not less.
    let plan_of_one = plan("19.988").unwrap();
    assert_eq!(plan_of_one.list[0].takes, Some(mm("0.03")));
    assert_eq!(plan_of_one.aim, mm("20.018"));
    let small = plan("7.9").unwrap_err().to_string();
    assert_eq!(small, "no boring tool goes into 7.9 mm: drill it to 8 mm or more first");
    let mut rules = rules;
    rules.smallest_bore = mm("5");
    let hole = limits(mm("6"), "H7");
    assert!(Passes::plan(Feature::Hole, hole, Start::From(mm("5.5")), &rules).is_ok());
}
