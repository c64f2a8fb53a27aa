//! The adviser's figures against a general linear-algebra crate and a general
//! statistics crate, and its advice against what the trade does.

use fits_core::{
    Length, Limits,
    shop::{
        adviser::{
            Action, Adviser, Because, FinishedPass, Next, Observed, Prior, Settings, Split, learn,
        },
        rehearse::{Rehearsal, RehearsedPart},
    },
    standards::{
        instruments::Uncertainty,
        iso286::{Class, Feature},
    },
};
use nalgebra::{DMatrix, DVector, Matrix2, Vector2};
use proptest::prelude::*;
use statrs::distribution::{ContinuousCDF, Normal};

fn um(count: f64) -> Length {
    #[allow(clippy::cast_possible_truncation, reason = "a few millimetres")]
    Length::from_tenth_nanometres((count * 1e4).round() as i64)
}

fn h7() -> Limits {
    let class: Class = "H7".parse().expect("a class");
    class.limits(Length::from_millimetres(20).expect("20 mm")).expect("defined")
}

fn prior() -> Prior {
    Prior { gain: 0.97, gain_sd: 0.04, offset: um(1.0), offset_sd: um(6.0), scatter: um(2.0) }
}

const GAUGE: Uncertainty = Uncertainty {
    repeat: Length::from_tenth_nanometres(25_000),
    bias: Length::from_tenth_nanometres(15_000),
};

fn adviser(feature: Feature, start: &str) -> Adviser {
    let start = start.parse().expect("a size");
    Adviser::new(h7(), feature, start, prior(), GAUGE, Settings::default()).expect("sensible")
}

/// The kinds of machine that are believed side by side, of how many machines
/// each is one, its scatter and the spread of its cut factor, as
/// `fits-core/src/shop/adviser/kinds.rs` states them.
const KINDS: [(f64, f64, f64); 4] =
    [(0.798, 1.0, 1.0), (0.115, 2.0, 1.0), (0.042, 4.0, 1.0), (0.045, 1.0, 3.0)];

/// All at once instead of step by step: everything unknown is one normal
/// vector, in millimetres, and conditioned on the means of all readings by a
/// general crate. Gives mean and spread of last size, cut factor and offset,
/// and how likely the readings are, as a logarithm.
fn batch(
    start: f64,
    cuts: &[(f64, Vec<f64>)],
    sign: f64,
    (times_scatter, times_gain): (f64, f64),
) -> (DVector<f64>, DMatrix<f64>, f64) {
    // Cut factor, offset, bias, scatter of the first reading, of each pass.
    let count = 4 + cuts.len();
    let mut mean = DVector::zeros(count);
    (mean[0], mean[1]) = (0.97, 0.001);
    let mut sd = DVector::from_element(count, 0.002 * times_scatter);
    (sd[0], sd[1], sd[2], sd[3]) = (0.04 * times_gain, 0.006, 0.0015, 0.0025);
    let own = DMatrix::from_diagonal(&sd.map(|sd| sd * sd));
    // The size as a sum of them: what was read, less bias, less its scatter.
    let mut size = DVector::zeros(count);
    (size[2], size[3]) = (-1.0, -1.0);
    let (mut rows, mut offs, mut noise) = (Vec::new(), Vec::new(), Vec::new());
    for (at, (dial, readings)) in cuts.iter().enumerate() {
        size[0] += sign * dial;
        size[1] += sign;
        size[4 + at] += sign;
        if !readings.is_empty() {
            #[allow(clippy::cast_precision_loss, reason = "a few readings")]
            let many = readings.len() as f64;
            let mut row = size.clone();
            row[2] += 1.0;
            offs.push(readings.iter().sum::<f64>() / many - start - row.dot(&mean));
            rows.push(row);
            noise.push(0.0025_f64.powi(2) / many);
        }
    }
    let mut wanted = DMatrix::zeros(3, count);
    wanted.set_row(0, &size.transpose());
    (wanted[(1, 0)], wanted[(2, 1)]) = (1.0, 1.0);
    let mut known = &wanted * &mean;
    let mut spread = &wanted * &own * wanted.transpose();
    let mut likely = 0.0;
    if !rows.is_empty() {
        let rows = DMatrix::from_rows(&rows.iter().map(DVector::transpose).collect::<Vec<_>>());
        let read =
            &rows * &own * rows.transpose() + DMatrix::from_diagonal(&DVector::from_vec(noise));
        let off = DVector::from_vec(offs);
        let inverse = read.clone().try_inverse().expect("well posed");
        let shared = &wanted * &own * rows.transpose();
        known += &shared * &inverse * &off;
        spread -= &shared * &inverse * shared.transpose();
        likely = -0.5 * (off.dot(&(&inverse * &off)) + read.determinant().ln());
    }
    known[0] += start;
    (known, spread, likely)
}

/// All kinds of machine together.
fn mixed(start: f64, cuts: &[(f64, Vec<f64>)], sign: f64) -> (DVector<f64>, DMatrix<f64>) {
    let each = KINDS.map(|(share, scatter, gain)| {
        let (mean, spread, likely) = batch(start, cuts, sign, (scatter, gain));
        (share.ln() + likely, mean, spread)
    });
    let top = each.iter().map(|one| one.0).fold(f64::MIN, f64::max);
    let sum: f64 = each.iter().map(|one| (one.0 - top).exp()).sum();
    let weight = |one: &(f64, DVector<f64>, DMatrix<f64>)| (one.0 - top).exp() / sum;
    let mean = each.iter().map(|one| &one.1 * weight(one)).sum::<DVector<f64>>();
    let spread = each
        .iter()
        .map(|one| {
            let off = &one.1 - &mean;
            (&one.2 + &off * off.transpose()) * weight(one)
        })
        .sum::<DMatrix<f64>>();
    (mean, spread)
}

fn compare(feature: Feature, start: f64, cuts: &[(f64, Vec<f64>)]) {
    let sign = if feature == Feature::Hole { 1.0 } else { -1.0 };
    let (mean, spread) = mixed(start, cuts, sign);
    let mut ours = adviser(feature, &format!("{start}mm"));
    for (dial, readings) in cuts {
        let readings: Vec<Length> = readings.iter().map(|mm| um(mm * 1e3)).collect();
        ours.cut(um(dial * 1e3), &readings).expect("in range");
    }
    let estimate = ours.estimate().expect("in range");
    let last = 0;
    let sd = |at: usize| spread[(at, at)].sqrt();
    let near = |what: &str, ours: f64, wanted: f64, within: f64| {
        assert!((ours - wanted).abs() <= within, "{what}: {ours} against {wanted}");
    };
    // The library's lengths are whole counts of 0.1 nm.
    near("size", estimate.size.millimetres(), mean[last], 2e-7);
    near("its sd", estimate.size_sd.millimetres(), sd(last), 2e-7);
    near("cut factor", estimate.gain, mean[last + 1], 1e-6);
    near("its sd", estimate.gain_sd, sd(last + 1), 1e-7);
    near("offset", estimate.offset.millimetres(), mean[last + 2], 2e-7);
    near("its sd", estimate.offset_sd.millimetres(), sd(last + 2), 2e-7);
    let normal = Normal::new(mean[last], sd(last)).expect("a spread");
    let (lower, upper) = (h7().lower().millimetres(), h7().upper().millimetres());
    let (below, above) = (normal.cdf(lower), 1.0 - normal.cdf(upper));
    let (under, over) = if sign > 0.0 { (below, above) } else { (above, below) };
    near("good", estimate.good, 1.0 - below - above, 3e-4);
    near("over", estimate.over, over, 3e-4);
    near("under", estimate.under, under, 3e-4);
}

#[test]
fn the_filter_agrees_with_least_squares_over_the_whole_log() {
    compare(Feature::Hole, 19.6, &[]);
    compare(Feature::Hole, 19.6, &[(0.3, vec![19.884])]);
    compare(
        Feature::Hole,
        19.6,
        &[(0.3, vec![19.884, 19.886]), (0.05, vec![]), (0.06, vec![20.004, 20.006, 20.005])],
    );
    compare(Feature::Shaft, 20.4, &[(0.25, vec![20.161]), (0.14, vec![20.021, 20.018])]);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    #[test]
    fn the_filter_agrees_with_least_squares_on_any_log(
        cuts in prop::collection::vec(
            ((5_u32..400), prop::collection::vec(-9_i32..9, 0..4)),
            0..5,
        ),
        hole: bool,
    ) {
        let feature = if hole { Feature::Hole } else { Feature::Shaft };
        let (start, sign) = if hole { (19.0, 1.0) } else { (21.0, -1.0) };
        let mut size = start;
        let cuts: Vec<(f64, Vec<f64>)> = cuts
            .into_iter()
            .map(|(dial, off)| {
                let dial = f64::from(dial) / 1000.0;
                size += sign * 0.96 * dial;
                (dial, off.into_iter().map(|off| ((size + f64::from(off) / 1e3) * 1e3).round() / 1e3).collect())
            })
            .collect();
        compare(feature, start, &cuts);
    }

    #[test]
    fn undoing_is_replaying_without_the_last(
        cuts in prop::collection::vec((10_u32..200, 0_u32..9), 1..6),
    ) {
        let mut size = 19.0;
        let entries: Vec<Observed> = cuts
            .iter()
            .map(|&(dial, off)| {
                let dial = f64::from(dial) / 1000.0;
                size += 0.97 * dial;
                Observed::Cut {
                    dialled: um(dial * 1e3),
                    readings: vec![um(size * 1e3 + f64::from(off))],
                }
            })
            .collect();
        let (last, before) = entries.split_last().expect("one at least");
        let replayed = adviser(Feature::Hole, "19mm").replay(before).expect("in range");
        let mut on = replayed.clone();
        on.enter(last).expect("in range");
        prop_assert_eq!(&on, &adviser(Feature::Hole, "19mm").replay(&entries).expect("in range"));
        prop_assert_eq!(on.next(), on.clone().next());
        // What is refused leaves it as it was.
        prop_assert!(on.cut(Length::ZERO, &[]).is_err());
        prop_assert!(on.read(&[]).is_err());
        prop_assert!(on.cut(um(10.0), &[um(-5.0)]).is_err());
        prop_assert_eq!(on, adviser(Feature::Hole, "19mm").replay(&entries).expect("in range"));
    }

    #[test]
    fn advice_can_be_dialled_and_keeps_to_the_risk(
        start in 16_000_i32..20_030,
        gain in 70_u32..120,
        gain_sd in 0_u32..15,
        repeat in 0_u32..20,
        step in 1_u32..30,
    ) {
        let mut settings = Settings::default();
        settings.step = um(f64::from(step));
        let prior = Prior {
            gain: f64::from(gain) / 100.0,
            gain_sd: f64::from(gain_sd) / 100.0,
            ..prior()
        };
        let instrument = Uncertainty { repeat: um(f64::from(repeat)), bias: um(1.0) };
        let adviser = Adviser::new(
            h7(), Feature::Hole, um(f64::from(start)), prior, instrument, settings,
        ).expect("sensible");
        let next = adviser.next();
        let now = adviser.estimate().expect("in range");
        prop_assert!((0.0..=1.0).contains(&next.good) && (0.0..=1.0).contains(&next.over));
        match next.action {
            Action::Cut => {
                let dial = next.dial.expect("a cut has a dial");
                // In whole divisions; in quarters where the dial is coarse.
                let (counts, division) = (dial.tenth_nanometres(), settings.step.tenth_nanometres());
                prop_assert_eq!(4 * counts % division, 0, "{}", dial);
                if counts % division != 0 {
                    prop_assert!(8 * division > h7().tolerance().tenth_nanometres());
                    prop_assert!(now.size.millimetres() + dial.millimetres() > 19.9, "{}", dial);
                }
                prop_assert!(dial >= settings.least_cut);
                prop_assert!(dial <= settings.most_cut || settings.step > settings.most_cut);
                // Metal does not come back, and no cut risks more than it may.
                prop_assert!(
                    next.over >= now.over - 1e-12 && next.over <= settings.risk + 1e-12,
                    "over {} from {}", next.over, now.over
                );
                prop_assert!(next.readings > 0);
            }
            Action::ReadAgain => prop_assert!(next.readings > 0 && next.dial.is_none()),
            // With metal left it says why.
            Action::Stop => prop_assert!(
                now.good >= 0.95 || next.because.is_some(),
                "{next:?}"
            ),
            Action::Scrap => prop_assert!(now.over > 0.95),
        }
    }
}

/// Common practice, no source: measure after a first cut, skim to see what the
/// tool takes, and never dial the whole remainder at once on an unknown tool.
#[test]
fn the_first_cut_stops_short_and_the_last_one_does_not() {
    let mut adviser = adviser(Feature::Hole, "19.6mm");
    let first = adviser.next();
    assert_eq!(first.action, Action::Cut);
    assert!(first.measuring && first.readings > 0, "{first:?}");
    let dial = first.dial.expect("a cut").millimetres();
    assert!((0.1..0.39).contains(&dial), "{dial} mm of 0.41");
    // It took 3 % less than dialled.
    let after = 19.6 + 0.97 * dial;
    adviser.cut(first.dial.expect("a cut"), &[um(after * 1e3), um(after * 1e3)]).expect("in range");
    // One more cut may be measured: it tells a rough machine from a usual one.
    let mut size = after;
    for _ in 0..2 {
        let next = adviser.next();
        assert_eq!(next.action, Action::Cut);
        assert!(next.good > 0.9, "{next:?}");
        if !next.measuring {
            return;
        }
        size += 0.97 * next.dial.expect("a cut").millimetres();
        adviser.cut(next.dial.expect("a cut"), &[um(size * 1e3); 2]).expect("in range");
    }
    panic!("still measuring: {:?}", adviser.next());
}

/// Common practice, no source: about 15 thou is left for the boring head's
/// last cuts; from there a careful machinist is one measuring cut from size.
#[test]
fn fifteen_thou_left_is_two_or_three_cuts() {
    let class: Class = "H7".parse().expect("a class");
    let limits = class.limits("0.75in".parse().expect("a size")).expect("defined");
    let mut settings = Settings::default();
    settings.step = "0.5thou".parse().expect("a step");
    let mut adviser = Adviser::new(
        limits,
        Feature::Hole,
        "0.735in".parse().expect("a size"),
        prior(),
        GAUGE,
        settings,
    )
    .expect("sensible");
    let mut size = 0.735 * 25.4;
    let mut cuts = 0;
    while let (Action::Cut, Some(dial)) = (adviser.next().action, adviser.next().dial) {
        cuts += 1;
        size += 0.95 * dial.millimetres();
        adviser.cut(dial, &[um(size * 1e3), um(size * 1e3), um(size * 1e3)]).expect("in range");
        assert!(cuts < 6, "still cutting");
    }
    assert!((2..=3).contains(&cuts), "{cuts} cuts");
    assert!(limits.contains(um(size * 1e3)), "{size}");
}

#[test]
fn a_light_tool_is_said_to_be_light() {
    let mut adviser = adviser(Feature::Hole, "19mm");
    assert_eq!(adviser.remark(), None, "nothing is known before the first cut");
    for size in [19.28, 19.56] {
        adviser.cut(um(300.0), &[um(size * 1e3), um(size * 1e3)]).expect("in range");
    }
    let remark = adviser.remark().expect("a tool that takes 0.28 of 0.30");
    assert!((-0.09..-0.04).contains(&remark.by), "{remark:?}");
    assert!(remark.dial > remark.not, "{remark:?}");
    assert!(remark.by_sd > 0.0 && remark.by_sd < 0.05, "{remark:?}");
}

#[test]
fn a_slip_in_reading_is_read_again() {
    let mut adviser = adviser(Feature::Hole, "19.6mm");
    // 19.88 was to be read; 19.38 was typed.
    adviser.cut(um(290.0), &[um(19_380.0)]).expect("in range");
    let surprise = adviser.surprise().expect("half a millimetre off");
    assert!(surprise.deviations > 20.0);
    assert_eq!(surprise.read, um(19_380.0));
    assert_eq!(adviser.next().action, Action::ReadAgain);
    let mut again = self::adviser(Feature::Hole, "19.6mm");
    again.cut(um(290.0), &[um(19_882.0)]).expect("in range");
    assert_eq!(again.surprise(), None);
}

#[test]
fn a_bias_never_averages_out() {
    let mut adviser = adviser(Feature::Hole, "20.0105mm");
    for _ in 0..40 {
        adviser.read(&[um(20_010.5); 25]).expect("in range");
    }
    let sd = adviser.estimate().expect("in range").size_sd.millimetres();
    // 1001 readings with the one at the start.
    let wanted = f64::hypot(0.0015, 0.0025 / 1001_f64.sqrt());
    assert!((sd - wanted).abs() < 2e-7, "{sd}: the bias is 0.0015");
    assert_eq!(adviser.next().action, Action::Stop);
}

#[test]
fn too_much_off_is_scrap_and_far_off_is_roughing() {
    assert_eq!(adviser(Feature::Hole, "20.06mm").next().action, Action::Scrap);
    assert_eq!(adviser(Feature::Shaft, "19.95mm").next().action, Action::Scrap);
    let rough = adviser(Feature::Hole, "12mm").next();
    assert_eq!((rough.action, rough.measuring), (Action::Cut, true));
    assert_eq!(rough.dial, Some(Settings::default().most_cut));
    assert!(rough.good > 0.5, "{rough:?}");
}

/// A tolerance that no dial can hit still ends: with the best that can be had.
#[test]
fn a_hopeless_tolerance_ends() {
    let limits = Limits::new(um(20_000.0), um(20_001.0)).expect("limits");
    let mut adviser = Adviser::new(
        limits,
        Feature::Hole,
        um(19_600.0),
        prior(),
        Uncertainty { repeat: um(6.0), bias: um(4.0) },
        Settings::default(),
    )
    .expect("sensible");
    let (mut size, mut steps) = (19_600.0, 0);
    loop {
        let next = adviser.next();
        steps += 1;
        assert!(steps < 100, "it never ends: {next:?}");
        match (next.action, next.dial) {
            (Action::Cut, Some(dial)) => {
                size += 0.97 * dial.millimetres() * 1e3;
                let readings = vec![um(size); next.readings as usize];
                if dial.is_positive() {
                    adviser.cut(dial, &readings).expect("in range");
                } else {
                    adviser.spring(&readings).expect("in range");
                }
            }
            (Action::ReadAgain, _) => {
                adviser.read(&vec![um(size); next.readings as usize]).expect("in range");
            }
            _ => break,
        }
    }
}

#[test]
fn senseless_figures_are_refused() {
    let with = |prior, instrument, settings| {
        Adviser::new(h7(), Feature::Hole, um(19_600.0), prior, instrument, settings)
            .expect_err("refused")
            .to_string()
    };
    let (good, fine) = (prior(), Settings::default());
    assert_eq!(with(Prior { gain: f64::NAN, ..good }, GAUGE, fine), "the cut factor has no sense");
    assert_eq!(
        with(good, Uncertainty { repeat: um(-1.0), ..GAUGE }, fine),
        "a standard deviation is less than 0"
    );
    assert_eq!(with(good, GAUGE, fine.risk(0.0)), "the risk has no sense");
    let mut no_dial = fine;
    no_dial.step = Length::ZERO;
    assert_eq!(with(good, GAUGE, no_dial), "no cut can be dialled");
}

/// One job's cut factor and offset by the textbook formula, by a general crate.
#[test]
fn learning_from_one_long_job_agrees_with_ridge_regression() {
    // So much is known of the job that the middle moves a quarter of the way:
    // the prior counts as three jobs.
    let truth = |dial: f64| 0.9 * dial + 4.0;
    let dials: Vec<f64> = (1..=40).map(|at| 10.0 * f64::from(at)).collect();
    let passes: Vec<FinishedPass> = dials
        .iter()
        .map(|dial| FinishedPass {
            dialled: um(*dial),
            took: um(truth(*dial)),
            took_sd: Length::ZERO,
        })
        .collect();
    let before = Prior { gain: 1.0, gain_sd: 0.05, offset: Length::ZERO, ..prior() };
    let learned = learn(&before, &[&passes]).expect("in range");
    // The fixed point, worked out by itself: the job given the middle, the
    // middle given the job.
    let (mut middle, mut apart, mut scatter) =
        (Vector2::new(1.0, 0.0), Vector2::new(0.05 * 0.05, 36.0), 4.0);
    for _ in 0..200 {
        let mut normal = Matrix2::from_diagonal(&apart.map(|it| 1.0 / it));
        let mut right = normal * middle;
        for dial in &dials {
            let row = Vector2::new(*dial, 1.0);
            normal += row * row.transpose() / scatter;
            right += row * (truth(*dial) / scatter);
        }
        let spread = normal.try_inverse().expect("well posed");
        let job = spread * right;
        let from = Vector2::new(1.0, 0.0);
        let first = Vector2::new(0.05 * 0.05, 36.0);
        middle = (from * 3.0 + job) / 4.0;
        let square = |it: Vector2<f64>| it.component_mul(&it);
        apart = ((first + square(from - middle)) * 3.0 + spread.diagonal() + square(job - middle))
            / 4.0;
        let left: f64 = dials
            .iter()
            .map(|dial| {
                let row = Vector2::new(*dial, 1.0);
                let off = truth(*dial) - row.dot(&job);
                off * off + (row.transpose() * spread * row)[0]
            })
            .sum();
        scatter = (3.0 * 4.0 + left) / 43.0;
    }
    assert!((learned.gain - middle[0]).abs() < 1e-6, "{} {}", learned.gain, middle[0]);
    assert!((learned.gain_sd - apart[0].sqrt()).abs() < 1e-5);
    assert!((learned.offset.millimetres() * 1e3 - middle[1]).abs() < 1e-3);
    assert!((learned.offset_sd.millimetres() * 1e3 - apart[1].sqrt()).abs() < 1e-2);
    assert!((learned.scatter.millimetres() * 1e3 - scatter.sqrt()).abs() < 1e-2);
}

#[test]
fn many_alike_jobs_are_believed() {
    let pass = |dial: f64| FinishedPass {
        dialled: um(dial),
        took: um(0.92 * dial - 2.0),
        took_sd: um(2.0),
    };
    let job = [pass(300.0), pass(150.0), pass(60.0), pass(0.0)];
    let few = vec![job.as_slice(); 2];
    let many = vec![job.as_slice(); 60];
    let before = Prior { gain: 1.0, gain_sd: 0.05, offset: Length::ZERO, ..prior() };
    let (few, many) = (learn(&before, &few).unwrap(), learn(&before, &many).unwrap());
    assert!((many.gain - 0.92).abs() < (few.gain - 0.92).abs());
    assert!((many.gain - 0.92).abs() < 0.01, "{many:?}");
    assert!(many.gain_sd < before.gain_sd && many.scatter < before.scatter, "{many:?}");
}

/// The chance told before the first cut against what rehearsals come to, with
/// dials from fine to far too coarse.
#[test]
fn the_chance_told_is_near_what_rehearsing_gives_with_any_dial() {
    let one = |class: &str, nominal: &str, feature, start: &str, step: f64| {
        let class: Class = class.parse().expect("a class");
        let work = RehearsedPart {
            limits: class.limits(nominal.parse().expect("a size")).expect("defined"),
            feature,
            start: start.parse().expect("a size"),
            machine: prior(),
            instrument: GAUGE,
            settings: Settings::default().dial_division(um(step)),
        };
        let RehearsedPart { limits, feature, start, machine, instrument, settings } = work;
        let told = Adviser::new(limits, feature, start, machine, instrument, settings)
            .expect("sensible")
            .next();
        let mut rehearsal = Rehearsal::new(work, 7).expect("sensible");
        for _ in 0..1000 {
            rehearsal.run().expect("in range");
        }
        let [.., adviser] = rehearsal.odds();

        (told.good, adviser)
    };
    let (hole, shaft) = (Feature::Hole, Feature::Shaft);
    for (class, nominal, feature, start, step) in [
        ("H7", "20mm", hole, "19.6mm", 10.0),
        ("H7", "20mm", hole, "19.6mm", 20.0),
        ("H7", "20mm", hole, "19.6mm", 40.0),
        ("H7", "20mm", hole, "19.6mm", 50.0),
        ("H6", "20mm", hole, "19.8mm", 10.0),
        ("g6", "20mm", shaft, "20.4mm", 10.0),
        ("g6", "20mm", shaft, "20.4mm", 40.0),
        ("h6", "1in", shaft, "1.010in", 25.4),
        ("H8", "20mm", hole, "18mm", 50.0),
    ] {
        let (told, adviser) = one(class, nominal, feature, start, step);
        assert!(
            (told - adviser.good).abs() < 0.1,
            "{class} {nominal} from {start}, step {step}: told {told}, is {adviser:?}"
        );
    }
}

/// A hundredth of a millimetre, in whole divisions.
const FINE: (f64, Split) = (10.0, Split::Whole);

fn after(
    feature: Feature,
    class: &str,
    start: &str,
    (step, split): (f64, Split),
    log: &[(f64, Option<f64>)],
) -> Adviser {
    let class: Class = class.parse().expect("a class");
    let limits = class.limits(Length::from_millimetres(20).expect("20 mm")).expect("defined");
    let mut settings = Settings::default();
    (settings.step, settings.split) = (um(step), split);
    let start = start.parse().expect("a size");
    let mut adviser =
        Adviser::new(limits, feature, start, prior(), GAUGE, settings).expect("sensible");
    for (dial, read) in log {
        let read: Vec<Length> = read.iter().map(|mm| um(mm * 1e3)).collect();
        adviser.cut(um(dial * 1e3), &read).expect("in range");
    }
    adviser
}

/// Reads the same again for as long as that is asked for.
fn settled(mut adviser: Adviser, read: f64) -> Next {
    for _ in 0..12 {
        let next = adviser.next();
        if next.action != Action::ReadAgain {
            return next;
        }
        let readings = vec![um(read * 1e3); next.readings as usize];
        adviser.read(&readings).expect("in range");
    }
    panic!("it reads for ever: {:?}", adviser.next());
}

/// The least cut of the dial would take too much: a division is split, and
/// where it may not be, it stops and says so.
#[test]
fn a_coarse_dial_is_split_or_stops_before_it_oversteps() {
    let (hole, shaft) = (Feature::Hole, Feature::Shaft);
    let (first, second) = ([(0.05, Some(19.99))], [(0.16, Some(20.04)), (0.04, Some(20.001))]);
    for (feature, class, start, step, log, read) in [
        (hole, "H7", "19.942mm", 50.0, &first[..], 19.99),
        (shaft, "g6", "20.2mm", 40.0, &second[..], 20.001),
    ] {
        let whole = settled(after(feature, class, start, (step, Split::Whole), log), read);
        assert_eq!((whole.action, whole.because), (Action::Stop, Some(Because::CoarseDial)));
        assert!(whole.over < 0.02, "{whole:?}");
    }
    let split = settled(after(hole, "H7", "19.942mm", (50.0, Split::Quarter), &first), 19.99);
    assert_eq!((split.action, split.dial), (Action::Cut, Some(um(12.5))), "{split:?}");
    assert!(split.over <= Settings::default().risk, "{split:?}");
}

/// Metal does not come back: no pass is advised for a part that is too far.
#[test]
fn no_pass_mends_what_is_off() {
    let over =
        after(Feature::Hole, "H7", "19.6mm", FINE, &[(0.2, Some(19.79)), (0.23, Some(20.03))]);
    let mut log = over.clone();
    for _ in 0..4 {
        assert!(matches!(log.next().action, Action::ReadAgain | Action::Scrap), "{:?}", log.next());
        log.read(&[um(20_030.0)]).expect("in range");
    }
    assert_eq!(log.next().action, Action::Scrap);
    // Near the limit it is neither stopped for good nor given up.
    let near =
        after(Feature::Hole, "H7", "19.8mm", FINE, &[(0.1, Some(19.898)), (0.12, Some(20.0215))]);
    assert_eq!(settled(near, 20.0215).because, Some(Because::TooClose));
}

#[test]
fn a_pass_that_was_not_measured_is_measured_first() {
    let adviser =
        after(Feature::Hole, "H7", "19.6mm", FINE, &[(0.2, None), (0.1, None), (0.1, None)]);
    let next = adviser.next();
    assert_eq!((next.action, next.because), (Action::ReadAgain, Some(Because::NotMeasured)));
    assert!(next.good + next.over <= 1.0, "{next:?}");
}
