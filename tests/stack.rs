//! Stacks against a textbook, against moments known in closed form and against
//! the distributions of `statrs`.

use approx::{assert_abs_diff_eq, assert_relative_eq};
use fits_core::{
    Length, Limits,
    shop::stack::{Direction, LastPart, Link, MOST_PARTS, Runs, Simulated, Spread, Stack},
};
use statrs::distribution::{ContinuousCDF, Normal, Triangular};

fn size(text: &str) -> Length {
    text.parse().unwrap_or_else(|error| panic!("{text}: {error}"))
}

fn about(middle: &str, half: &str) -> Limits {
    let (middle, half) = (size(middle), size(half));
    Limits::new(middle.checked_sub(half).unwrap(), middle.checked_add(half).unwrap()).unwrap()
}

fn link(direction: Direction, count: u32, limits: Limits, spread: Spread) -> Link {
    Link::new(direction, limits).times(count).spread(spread)
}

fn plus(middle: &str, half: &str) -> Link {
    link(Direction::Adds, 1, about(middle, half), Spread::Uniform)
}

fn minus(middle: &str, half: &str) -> Link {
    link(Direction::TakesAway, 1, about(middle, half), Spread::Uniform)
}

fn runs(runs: u64, seed: u64, threads: usize) -> Runs {
    Runs { runs, seed, threads }
}

// Budynas and Nisbett, Shigley's Mechanical Engineering Design, 9th edition,
// Example 1-3: three sleeves on a shouldered screw.
#[test]
fn a_shouldered_screw_in_a_textbook() {
    let screw = plus("1.750in", "0.003in");
    let sleeves =
        [minus("0.750in", "0.001in"), minus("0.120in", "0.005in"), minus("0.875in", "0.001in")];
    let stack = Stack::new([&[screw][..], &sleeves].concat()).unwrap();
    assert_eq!(stack.aim(), size("0.005in"));
    assert_eq!(stack.worst().lower(), size("0.005in").checked_sub(size("0.010in")).unwrap());
    assert_eq!(stack.worst().upper(), size("0.015in"));
    // (b): the length of the last sleeve for a gap of 0.003 in at the least,
    // its own tolerance kept: 0.867 in.
    let wanted = Limits::new(size("0.003in"), size("0.023in")).unwrap();
    let others = [screw, sleeves[0], sleeves[1]];
    let last = LastPart::of(&others, Direction::TakesAway, 1, wanted).unwrap();
    assert_eq!(last.aim, size("0.867in"));
    assert_eq!(last.always, Some(about("0.867in", "0.001in")));
}

// The same book's problem of a gap w = d - a - b - c, solved on a published web
// page: d 6.520 +/- 0.010, a 1.500 +/- 0.001, b 2.000 +/- 0.003, c 3.000 +/-
// 0.004 in give w = 0.020 +/- 0.018; for 0.010 at the least, d is 6.528.
#[test]
fn a_problem_of_the_same_textbook() {
    let pieces =
        [minus("1.500in", "0.001in"), minus("2.000in", "0.003in"), minus("3.000in", "0.004in")];
    let stack = Stack::new([&[plus("6.520in", "0.010in")][..], &pieces].concat()).unwrap();
    assert_eq!(stack.worst(), about("0.020in", "0.018in"));
    let wanted = about("0.028in", "0.018in");
    let groove = LastPart::of(&pieces, Direction::Adds, 1, wanted).unwrap();
    assert_eq!(groove.always, Some(about("6.528in", "0.010in")));
}

// Ten parts of +/- 0.1 are +/- 1 at worst and +/- 0.316 by root sum square: the
// square root of ten times 0.01.
#[test]
fn root_sum_square_of_equal_parts() {
    let ten = link(Direction::Adds, 10, about("5mm", "0.1mm"), Spread::Normal);
    let stack = Stack::new(vec![ten]).unwrap();
    assert_eq!(stack.worst(), about("50mm", "1mm"));
    let half = stack.root_sum_square().unwrap().tolerance().millimetres() / 2.0;
    assert_abs_diff_eq!(half, 0.1_f64.sqrt(), epsilon = 1e-7);
    assert_eq!(stack.shares().len(), 1);
    assert_abs_diff_eq!(stack.shares()[0].variance, 1.0, epsilon = 1e-12);
}

#[test]
fn shares_add_up_and_name_the_worst() {
    let stack =
        Stack::new(vec![plus("20mm", "0.1mm"), minus("10mm", "0.05mm"), minus("9.8mm", "0.05mm")])
            .unwrap();
    let shares = stack.shares();
    assert_abs_diff_eq!(shares[0].worst, 0.5, epsilon = 1e-12);
    // Twice the tolerance is four times the variance: 4 of 6.
    assert_abs_diff_eq!(shares[0].variance, 4.0 / 6.0, epsilon = 1e-12);
    let sum: f64 = shares.iter().map(|share| share.variance).sum();
    assert_abs_diff_eq!(sum, 1.0, epsilon = 1e-12);
    let still = Stack::new(vec![plus("20mm", "0mm"), minus("10mm", "0mm")]).unwrap();
    assert!(still.shares().iter().all(|share| share.worst == 0.0 && share.variance == 0.0));
}

/// One part of a spread, 1 mm wide from 0 to 1, beside a measured one.
fn alone(spread: Spread, count: u64) -> Simulated {
    let whole = Limits::new(size("5mm"), size("6mm")).unwrap();
    let stack = Stack::new(vec![
        link(Direction::Adds, 1, whole, spread),
        link(Direction::TakesAway, 1, about("5mm", "0mm"), spread),
    ])
    .unwrap();
    stack.simulate(runs(count, 11, 2), None).unwrap()
}

#[test]
fn each_spread_has_the_quantiles_of_its_distribution() {
    const RUNS: u64 = 1_000_000;
    let normal = Normal::new(0.5, 1.0 / 6.0).unwrap();
    let triangular = Triangular::new(0.0, 1.0, 0.5).unwrap();
    let cut = normal.cdf(0.0);
    for spread in Spread::ALL {
        let found = alone(spread, RUNS);
        let below = |x: f64| match spread {
            Spread::Uniform => x,
            Spread::Triangular => triangular.cdf(x),
            Spread::Normal => (normal.cdf(x) - cut) / (1.0 - 2.0 * cut),
        };
        for share in [0.001, 0.01, 0.05, 0.25, 0.5, 0.75, 0.95, 0.99, 0.999] {
            let at = found.quantile(share).millimetres();
            // Five standard errors of a share, and the width of a bin.
            let error = 5.0 * (share * (1.0 - share) / 1e6).sqrt() + 2e-4;
            assert_abs_diff_eq!(below(at), share, epsilon = error);
        }
        let sd = found.deviation.millimetres();
        assert_relative_eq!(sd * sd, spread.variance(), max_relative = 0.006);
        assert_abs_diff_eq!(found.mean.millimetres(), 0.5, epsilon = 0.0015);
        assert!(!found.least.is_negative() && found.greatest <= size("1mm"));
    }
}

// Kept between three standard deviations, a normal's variance is 1 - 6 phi(3) /
// (2 Phi(3) - 1) of what it was: integrated here in ten thousand steps.
#[test]
fn the_variances_are_the_integrals_of_their_densities() {
    let normal = Normal::new(0.5, 1.0 / 6.0).unwrap();
    let triangular = Triangular::new(0.0, 1.0, 0.5).unwrap();
    for spread in Spread::ALL {
        let cdf = |x: f64| match spread {
            Spread::Uniform => x,
            Spread::Triangular => triangular.cdf(x),
            Spread::Normal => normal.cdf(x),
        };
        let steps = 10_000;
        let (mut mass, mut second) = (0.0, 0.0);
        for at in 0..steps {
            let (from, to) = (f64::from(at) / 1e4, f64::from(at + 1) / 1e4);
            let part = cdf(to) - cdf(from);
            mass += part;
            second += part * (f64::midpoint(from, to) - 0.5).powi(2);
        }
        assert_relative_eq!(spread.variance(), second / mass, max_relative = 1e-6);
    }
}

#[test]
fn the_sum_has_the_moments_of_its_parts() {
    let stack = Stack::new(vec![
        link(Direction::Adds, 1, about("40mm", "0.05mm"), Spread::Normal),
        link(Direction::TakesAway, 2, about("1.5mm", "0.03mm"), Spread::Triangular),
        link(Direction::TakesAway, 1, about("36.9mm", "0.04mm"), Spread::Uniform),
    ])
    .unwrap();
    let found = stack.simulate(runs(1_000_000, 3, 2), None).unwrap();
    let wanted = (0.1_f64.powi(2) * Spread::Normal.variance()
        + 2.0 * 0.06_f64.powi(2) / 24.0
        + 0.08_f64.powi(2) / 12.0)
        .sqrt();
    assert_abs_diff_eq!(stack.deviation().millimetres(), wanted, epsilon = 1e-7);
    assert_relative_eq!(found.deviation.millimetres(), wanted, max_relative = 0.004);
    assert_abs_diff_eq!(found.mean.millimetres(), 0.1, epsilon = 5.0 * wanted / 1000.0);
}

// The difference of two like uniform parts has a triangular distribution, and
// the sum of three that of Irwin and Hall.
#[test]
fn chances_are_those_of_sums_of_uniform_parts() {
    let two = Stack::new(vec![plus("10mm", "0.1mm"), minus("9.95mm", "0.1mm")]).unwrap();
    let wanted = Limits::new(size("0mm"), size("0.1mm")).unwrap();
    let found = two.simulate(runs(1_000_000, 5, 2), Some(wanted)).unwrap();
    let play = Triangular::new(-0.15, 0.25, 0.05).unwrap();
    assert_abs_diff_eq!(found.below_nought, play.cdf(0.0), epsilon = 0.0025);
    let inside = play.cdf(0.1) - play.cdf(0.0);
    assert_abs_diff_eq!(found.inside.unwrap(), inside, epsilon = 0.0025);
    // Below a third of three parts' range: u = 1 of 3, one sixth.
    let three = link(Direction::Adds, 3, about("0mm", "0.5mm"), Spread::Uniform);
    let stack = Stack::new(vec![three, minus("-0.5mm", "0mm")]).unwrap();
    let found = stack.simulate(runs(1_000_000, 6, 2), None).unwrap();
    assert_abs_diff_eq!(found.below_nought, 1.0 / 6.0, epsilon = 0.002);
}

#[test]
fn the_same_seed_gives_the_same_figures_on_any_number_of_threads() {
    let stack = Stack::new(vec![
        link(Direction::Adds, 1, about("20mm", "0.05mm"), Spread::Normal),
        minus("12mm", "0.1mm"),
        minus("7.9mm", "0.02mm"),
    ])
    .unwrap();
    // A piece more than five, so that threads end unevenly.
    let count = 5 * 65_536 + 17;
    let one = stack.simulate(runs(count, 42, 1), None).unwrap();
    for threads in [2, 3, 5, 64] {
        assert_eq!(stack.simulate(runs(count, 42, threads), None).unwrap(), one, "{threads}");
    }
    assert_ne!(stack.simulate(runs(count, 43, 1), None).unwrap().mean, one.mean);
    assert_eq!(one.histogram(48).iter().sum::<u64>(), count);
    let worst = stack.worst();
    assert!(worst.contains(one.least) && worst.contains(one.greatest));
}

#[test]
fn what_is_no_stack_is_refused() {
    #[track_caller]
    fn refused(stack: Result<Stack, fits_core::Error>) -> String {
        stack.expect_err("a refusal").to_string()
    }
    assert_eq!(refused(Stack::new(vec![plus("20mm", "0mm")])), "one part alone is not a stack");
    assert_eq!(refused(Stack::new(Vec::new())), "one part alone is not a stack");
    let many = link(Direction::Adds, MOST_PARTS, about("1mm", "0mm"), Spread::Uniform);
    assert_eq!(
        refused(Stack::new(vec![many, plus("1mm", "0mm")])),
        "a stack has at most 1000 parts, this one 1001"
    );
    let far = Limits::new(Length::MAX, Length::MAX).unwrap();
    let far = link(Direction::Adds, 2, far, Spread::Uniform);
    assert!(refused(Stack::new(vec![far])).contains("out of range"));
    let stack = Stack::new(vec![plus("20mm", "0.1mm"), minus("19mm", "0.1mm")]).unwrap();
    for count in [0, 600_000_000] {
        assert!(stack.simulate(runs(count, 1, 1), None).is_err(), "{count} runs");
    }
    let wanted = Limits::new(size("30mm"), size("31mm")).unwrap();
    let error = LastPart::of(&[plus("20mm", "0mm")], Direction::TakesAway, 1, wanted).unwrap_err();
    assert_eq!(error.to_string(), "the last part would be -10.5 mm long");
    assert!(LastPart::of(&[plus("20mm", "0mm")], Direction::TakesAway, 0, wanted).is_err());
    // The others vary by more than the play may.
    let wanted = Limits::new(size("0.1mm"), size("0.2mm")).unwrap();
    let found = LastPart::of(&[plus("20mm", "0.1mm")], Direction::TakesAway, 1, wanted).unwrap();
    assert_eq!((found.always, found.aim), (None, size("19.85mm")));
}
