//! What holds for any size, class and text.

use approx::assert_relative_eq;
use fits_core::{
    Deviations, Fit, Kind, Length, Limits,
    shop::{
        bushing::{Bush, Bushing, bore_for},
        stack::{Direction, LastPart, Link, Runs, Spread, Stack},
    },
    size::{Decimals, Rounding, Unit},
    standards::{
        iso286::{Class, Feature, Grade, Letter, grade_within, standard_tolerance},
        materials::Material,
    },
};
use proptest::prelude::*;
use uom::si::{f64::Length as Typed, length::millimeter};

const fn count(count: i64) -> Length {
    Length::from_tenth_nanometres(count)
}

fn less(one: Length, other: Length) -> Length {
    one.checked_sub(other).unwrap()
}

/// Any size of the tables, and often a border of a range or its neighbour.
fn nominal() -> impl Strategy<Value = Length> {
    const BORDERS: [i64; 12] = [1, 3, 6, 10, 18, 30, 50, 120, 500, 1000, 2000, 3150];
    prop_oneof![
        (1_i64..=31_500_000_000).prop_map(count),
        (1_i64..=5_000_000_000).prop_map(count),
        (0..BORDERS.len(), -1_i64..=1)
            .prop_map(|(at, off)| count((BORDERS[at] * 10_000_000 + off).min(31_500_000_000))),
    ]
}

fn letter() -> impl Strategy<Value = Letter> {
    (0..28_usize).prop_map(|at| Letter::all().nth(at).unwrap())
}

fn grade() -> impl Strategy<Value = Grade> {
    (0..20_usize).prop_map(|at| Grade::all().nth(at).unwrap())
}

fn feature() -> impl Strategy<Value = Feature> {
    prop_oneof![Just(Feature::Hole), Just(Feature::Shaft)]
}

fn class() -> impl Strategy<Value = Class> {
    (feature(), letter(), grade()).prop_map(|(feature, letter, grade)| Class {
        feature,
        letter,
        grade,
    })
}

fn limits() -> impl Strategy<Value = Limits> {
    (-1_000_000_000_i64..40_000_000_000, 0_i64..10_000_000)
        .prop_map(|(lower, width)| Limits::new(count(lower), count(lower + width)).unwrap())
}

fn negated(deviations: Deviations) -> Deviations {
    Deviations::new(
        deviations.upper().checked_neg().unwrap(),
        deviations.lower().checked_neg().unwrap(),
    )
    .unwrap()
}

proptest! {
    // ISO 286-1: the general rule for A to H, and JS by its nature.
    #[test]
    fn holes_a_to_h_and_js_mirror_their_shafts(
        nominal in nominal(), at in 0..12_usize, grade in grade()
    ) {
        let shaft = Class { feature: Feature::Shaft, letter: Letter::all().nth(at).unwrap(), grade };
        let mirrored = shaft.mirrored();
        prop_assert_eq!(mirrored.feature, Feature::Hole);
        match (shaft.deviations(nominal), mirrored.deviations(nominal)) {
            (Ok(shaft), Ok(hole)) => prop_assert_eq!(negated(shaft), hole),
            (shaft, hole) => prop_assert!(shaft.is_err() && hole.is_err(), "{} {:?}", mirrored, hole),
        }
    }

    // The special rule, with delta: K to N to IT8 and P to ZC to IT7, over 3
    // up to 500 mm, lie delta above the mirror.
    #[test]
    fn holes_with_delta_do_not_mirror(
        nominal in 30_000_001_i64..=5_000_000_000, at in 13..28_usize, number in 3_u8..=7
    ) {
        let nominal = count(nominal);
        let (grade, finer) = (Grade::it(number).unwrap(), Grade::it(number - 1).unwrap());
        let hole = Class { feature: Feature::Hole, letter: Letter::all().nth(at).unwrap(), grade };
        // k has its value from IT4 on only; M6 has an exception.
        prop_assume!(number > 3 || at > 13);
        let is_exception = hole.to_string() == "M6"
            && nominal > count(2_500_000_000) && nominal <= count(3_150_000_000);
        if let (Ok(shaft), Ok(found)) =
            (hole.mirrored().deviations(nominal), hole.deviations(nominal))
        {
            let delta = less(
                standard_tolerance(grade, nominal).unwrap(),
                standard_tolerance(finer, nominal).unwrap(),
            );
            let above = less(found.upper(), negated(shaft).upper());
            prop_assert!(delta.is_positive());
            prop_assert_eq!(above == delta, !is_exception, "{} at {}", hole, nominal);
            prop_assert_ne!(negated(shaft), found);
        }
    }

    #[test]
    fn limits_never_cross_and_keep_the_grade(nominal in nominal(), class in class()) {
        match class.limits(nominal) {
            Ok(limits) => {
                prop_assert_eq!(Ok(limits.tolerance()), standard_tolerance(class.grade, nominal));
                prop_assert!(limits.contains(limits.lower()) && limits.contains(limits.upper()));
                prop_assert!(limits.contains(limits.middle()));
                prop_assert_eq!(grade_within(limits.tolerance(), nominal), Some(class.grade));
                let above = less(limits.lower(), nominal);
                let below = less(nominal, limits.upper());
                match class.letter.cmp(&Letter::H) {
                    _ if class.letter == Letter::JS => prop_assert_eq!(above, below),
                    core::cmp::Ordering::Equal => prop_assert!(above == Length::ZERO || below == Length::ZERO),
                    core::cmp::Ordering::Less => prop_assert!(above.is_positive() || below.is_positive()),
                    core::cmp::Ordering::Greater => {}
                }
            }
            Err(error) => {
                prop_assert!(error.is_not_defined() || error.is_out_of_table(), "{}", error);
                if let Some(instead) = error.instead() {
                    prop_assert!(instead.limits(nominal).is_ok(), "{}", instead);
                }
                prop_assert_eq!(error.is_not_defined(), error.instead().is_some());
            }
        }
    }

    #[test]
    fn tolerances_grow_with_the_grade_and_the_size(
        one in nominal(), other in nominal(), fine in grade(), coarse in grade()
    ) {
        let (small, large) = (one.min(other), one.max(other));
        let (fine, coarse) = (fine.min(coarse), fine.max(coarse));
        if let (Ok(less), Ok(more)) =
            (standard_tolerance(fine, small), standard_tolerance(coarse, small))
        {
            prop_assert_eq!(less.cmp(&more), fine.cmp(&coarse));
        }
        if let (Ok(less), Ok(more)) =
            (standard_tolerance(fine, small), standard_tolerance(fine, large))
        {
            prop_assert!(less <= more);
        }
    }

    #[test]
    fn clearance_is_the_difference_of_the_limits(nominal in nominal(), hole in class(), shaft in class()) {
        let hole = Class { feature: Feature::Hole, ..hole };
        let shaft = Class { feature: Feature::Shaft, ..shaft };
        if let (Ok(in_hole), Ok(on_shaft)) = (hole.limits(nominal), shaft.limits(nominal)) {
            let fit = Fit::of_classes(nominal, hole, shaft).unwrap();
            let (least, most) = (fit.clearance().lower(), fit.clearance().upper());
            prop_assert_eq!(least, less(in_hole.lower(), on_shaft.upper()));
            prop_assert_eq!(most, less(in_hole.upper(), on_shaft.lower()));
            prop_assert_eq!(
                fit.clearance().tolerance(),
                in_hole.tolerance().checked_add(on_shaft.tolerance()).unwrap()
            );
            let kind = match (least.is_negative(), most.is_positive()) {
                (false, _) => Kind::Clearance,
                (true, false) => Kind::Interference,
                (true, true) => Kind::Transition,
            };
            prop_assert_eq!(fit.kind(), kind);
            let chance = fit.chance_of_clearance();
            match kind {
                Kind::Clearance => prop_assert!((chance.even - 1.0).abs() < 1e-9),
                Kind::Interference => prop_assert!(chance.even.abs() < 1e-9),
                Kind::Transition => prop_assert!((0.0..=1.0).contains(&chance.even)),
            }
        } else {
            prop_assert!(Fit::of_classes(nominal, hole, shaft).is_err());
        }
    }

    #[test]
    fn what_display_prints_is_read_back(
        tenth_nanometres in prop_oneof![any::<i64>(), Just(i64::MIN), Just(i64::MAX), -20_000_000_i64..20_000_000]
    ) {
        let length = count(tenth_nanometres);
        prop_assert_eq!(length.to_string().parse(), Ok(length));
    }

    #[test]
    fn classes_are_read_back(class in class()) {
        prop_assert_eq!(class.to_string().parse(), Ok(class));
    }

    #[test]
    fn no_text_is_a_panic(text in any::<String>(), soup in "[-+0-9a-zA-Z.,/ \"'\u{2033}\u{b5}\u{2212}]{0,40}") {
        for text in [text, soup] {
            if let Err(error) = text.parse::<Length>() {
                // The place lies in the text and on its letters' borders.
                if let Some(span) = error.span() {
                    prop_assert!(text.get(span.clone()).is_some(), "{:?} at {:?}", text, span);
                }
                prop_assert!(!error.to_string().is_empty());
            }
            if let Err(error) = text.parse::<Class>() {
                if let Some(span) = error.span() {
                    prop_assert!(text.get(span.clone()).is_some(), "{:?} at {:?}", text, span);
                }
                prop_assert!(error.is_unreadable());
            }
        }
    }

    #[test]
    fn shown_limits_lie_inside(
        tenth_nanometres in any::<i64>(), places in 0_u8..=9, inch in any::<bool>()
    ) {
        let length = count(tenth_nanometres);
        let unit = if inch { Unit::Inch } else { Unit::Millimetre };
        let decimals = Decimals { unit, places };
        // Compared as whole numbers of 0.1 nm scaled by the places shown.
        let scale = 10_i128.pow(u32::from(places));
        let unit = i128::from(unit.length().tenth_nanometres());
        let exact = i128::from(tenth_nanometres) * scale;
        let steps = |rounding| -> i128 {
            let text = length.shown(decimals, rounding).to_string();
            text.replace('.', "").parse::<i128>().unwrap() * unit
        };
        let (down, up) = (steps(Rounding::Down), steps(Rounding::Up));
        prop_assert!(down <= exact && exact - down < unit);
        prop_assert!(up >= exact && up - exact < unit);
        let nearest = steps(Rounding::Nearest);
        prop_assert!((nearest - exact).abs() * 2 <= unit);
        prop_assert!(nearest == down || nearest == up);
    }

    #[test]
    fn limits_shown_with_their_own_decimals_do_not_cross(limits in limits(), inch in any::<bool>()) {
        // Wide enough that six decimals of an inch lie inside.
        prop_assume!(limits.tolerance() >= Length::MICROMETRE);
        let unit = if inch { Unit::Inch } else { Unit::Millimetre };
        let decimals = Decimals::for_limits(unit, limits);
        let most = if inch { 6 } else { 5 };
        prop_assert!(decimals.places <= most);
        let lower = decimals.round(limits.lower(), Rounding::Up);
        let upper = decimals.round(limits.upper(), Rounding::Down);
        prop_assert!(limits.contains(lower) && limits.contains(upper), "{} {}", lower, upper);
        prop_assert!(lower <= upper);
        // The most that is lost is a tenth of the tolerance, or two last places.
        let lost = limits.tolerance().tenth_nanometres() - less(upper, lower).tenth_nanometres();
        let last = unit.length().tenth_nanometres() / 10_i64.pow(u32::from(decimals.places));
        prop_assert!(lost * 10 <= limits.tolerance().tenth_nanometres() || lost <= 2 * last);
    }

    #[test]
    fn typed_lengths_come_back(tenth_nanometres in -31_500_000_000_i64..=31_500_000_000) {
        let length = count(tenth_nanometres);
        let typed = Typed::from(length);
        prop_assert_eq!(Length::nearest(typed), Ok(length));
        #[allow(clippy::cast_precision_loss, reason = "below 2^53")]
        let millimetres = tenth_nanometres as f64 / 1e7;
        assert_relative_eq!(typed.get::<millimeter>(), millimetres, max_relative = 1e-14);
        assert_relative_eq!(length.millimetres(), millimetres);
    }

    #[test]
    fn the_even_chance_is_the_area_with_clearance(
        hole in 1_i64..400, shaft in 1_i64..400, least in -700_i64..400
    ) {
        let fit = in_micrometres(hole, shaft, least);
        let wanted = by_midpoints(hole, shaft, least, |_, _| 1.0);
        prop_assert!(
            (fit.chance_of_clearance().even - wanted).abs() < 2e-3,
            "{} against {}", fit.chance_of_clearance().even, wanted
        );
    }

    #[test]
    fn the_normal_chance_is_the_weight_with_clearance(
        hole in 1_i64..400, shaft in 1_i64..400, least in -700_i64..400
    ) {
        // Limits at three standard deviations; the cells beyond them are left
        // out of the sum, 0.3 % of each.
        let bell = |x: f64| (-x * x / 2.0).exp();
        let fit = in_micrometres(hole, shaft, least);
        let wanted = by_midpoints(hole, shaft, least, |x, y| bell(6.0 * x) * bell(6.0 * y));
        prop_assert!(
            (fit.chance_of_clearance().normal - wanted).abs() < 5e-3,
            "{} against {}", fit.chance_of_clearance().normal, wanted
        );
    }
}

/// A fit with these tolerances and least clearance, in micrometres.
fn in_micrometres(hole: i64, shaft: i64, least: i64) -> Fit {
    let um = |value| Length::from_micrometres(value).unwrap();
    // The shaft ends at 20 mm.
    Fit::of_limits(
        um(20_000),
        Limits::new(um(20_000 + least), um(20_000 + least + hole)).unwrap(),
        Limits::new(um(20_000 - shaft), um(20_000)).unwrap(),
    )
    .unwrap()
}

/// The weighted share of pairs with clearance, summed over a grid of sizes.
/// The weight is a function of where hole and shaft stand, -0.5 to 0.5.
fn by_midpoints(hole: i64, shaft: i64, least: i64, weight: impl Fn(f64, f64) -> f64) -> f64 {
    const CELLS: u32 = 400;
    #[allow(clippy::cast_precision_loss, reason = "micrometres")]
    let (hole, shaft, least) = (hole as f64, shaft as f64, least as f64);
    let middle = |cell: u32| (f64::from(cell) + 0.5) / f64::from(CELLS);
    let (mut with, mut all) = (0.0, 0.0);
    for in_hole in 0..CELLS {
        for on_shaft in 0..CELLS {
            let (up, down) = (middle(in_hole), middle(on_shaft));
            let share = weight(up - 0.5, 0.5 - down);
            all += share;
            let clearance = least + up * hole + down * shaft;
            if clearance > 0.0 {
                with += share;
            } else if clearance > -1e-9 {
                with += share / 2.0;
            }
        }
    }
    with / all
}

#[test]
fn the_normal_chance_is_the_published_phi() {
    // Φ(z) to four places, as any table of the standard normal distribution
    // prints it (for instance CRC Standard Mathematical Tables); recalled.
    for (z, phi) in [
        (-3.0, 0.0013),
        (-2.0, 0.0228),
        (-1.0, 0.1587),
        (-0.5, 0.3085),
        (0.0, 0.5),
        (0.25, 0.5987),
        (0.5, 0.6915),
        (1.0, 0.8413),
        (1.28, 0.8997),
        (1.5, 0.9332),
        (1.645, 0.9500),
        (1.96, 0.9750),
        (2.0, 0.9772),
        (2.5, 0.9938),
        (3.0, 0.9987),
    ] {
        // Tolerances of 30 and 40 um: the clearance's deviation is 50/6 um.
        let middle: f64 = z * 50.0 / 6.0;
        #[allow(clippy::cast_possible_truncation, reason = "tenths of a nanometre")]
        let least = count(((middle - 35.0) * 1e4).round() as i64);
        let um = |value| Length::from_micrometres(value).unwrap();
        let lower = um(20_000).checked_add(least).unwrap();
        let fit = Fit::of_limits(
            um(20_000),
            Limits::new(lower, lower.checked_add(um(30)).unwrap()).unwrap(),
            Limits::new(um(19_960), um(20_000)).unwrap(),
        )
        .unwrap();
        let normal = fit.chance_of_clearance().normal;
        assert!((normal - phi).abs() < 6e-5, "{z}: {normal}, printed {phi}");
    }
}

#[test]
fn letters_j_to_zc_need_not_mirror() {
    let at = |class: &str| {
        let class: Class = class.parse().unwrap();
        class.deviations(Length::from_millimetres(20).unwrap()).unwrap()
    };
    for (hole, shaft) in [("J7", "j7"), ("K7", "k7"), ("M7", "m7"), ("N9", "n9"), ("P7", "p7")] {
        assert_ne!(at(hole), negated(at(shaft)), "{hole}");
    }
    for (hole, shaft) in [("P8", "p8"), ("ZC9", "zc9"), ("H7", "h7"), ("JS7", "js7")] {
        assert_eq!(at(hole), negated(at(shaft)), "{hole}");
    }
}

fn link() -> impl Strategy<Value = Link> {
    (0..2_usize, 1..4_u32, 1_000_000_i64..400_000_000, 0_i64..2_000_000, 0..3_usize).prop_map(
        |(way, parts, lower, width, spread)| {
            let limits = Limits::new(count(lower), count(lower + width)).unwrap();
            Link::new([Direction::Adds, Direction::TakesAway][way], limits)
                .times(parts)
                .spread(Spread::ALL[spread])
        },
    )
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn stacks_stay_inside_the_worst_case_and_quantiles_rise(
        links in prop::collection::vec(link(), 2..6), seed in any::<u64>()
    ) {
        let stack = Stack::new(links).unwrap();
        let (worst, rss) = (stack.worst(), stack.root_sum_square().unwrap());
        prop_assert!(worst.contains(stack.aim()) && rss.tolerance() <= worst.tolerance());
        let found = stack.simulate(Runs { runs: 2000, seed, threads: 3 }, Some(worst)).unwrap();
        prop_assert!(worst.contains(found.least) && worst.contains(found.greatest));
        prop_assert_eq!(found.inside, Some(1.0));
        let all: Vec<Length> = [0.0, 0.1, 0.5, 0.9, 1.0].map(|share| found.quantile(share)).into();
        prop_assert!(all.windows(2).all(|pair| pair[0] <= pair[1]));
    }
}

proptest! {
    // Whatever the others measure, the last part inside its limits gives the
    // play that was wanted.
    #[test]
    fn the_last_part_gives_the_play_wanted(
        others in prop::collection::vec(link(), 1..5), way in 0..2_usize, parts in 1..4_u32,
        middle in -50_000_000_i64..50_000_000, half in 0_i64..30_000_000
    ) {
        let wanted = Limits::new(count(middle - half), count(middle + half)).unwrap();
        let direction = [Direction::Adds, Direction::TakesAway][way];
        let Ok(last) = LastPart::of(&others, direction, parts, wanted) else { return Ok(()) };
        if let Some(limits) = last.always {
            let made = Link::new(direction, limits).times(parts).spread(Spread::Uniform);
            let worst = Stack::new([&others[..], &[made]].concat()).unwrap().worst();
            prop_assert!(wanted.contains(worst.lower()) && wanted.contains(worst.upper()));
        }
    }

    #[test]
    fn a_tighter_bushing_closes_more_and_its_shaft_runs_as_wanted(
        bore in 60_000_000_i64..600_000_000, wall in 10..60_i64, press in 10_000_i64..600_000,
        least in 0_i64..500_000, width in 100_000_i64..900_000, name in 0..4_usize
    ) {
        let bush = ["bronze", "sintered bronze", "nylon", "acetal"][name];
        let outside = bore + bore * wall / 100;
        let exactly = |size: i64| Limits::new(count(size), count(size)).unwrap();
        let bushing = |press: i64| Bushing {
            bore: Limits::new(count(bore), count(bore + 50_000)).unwrap(),
            outside: exactly(outside + press),
            material: Material::find(bush).unwrap(),
            housing: exactly(outside),
            housing_outside: count(2 * outside),
            hub: Material::find("steel").unwrap(),
            length: count(bore),
        };
        let (loose, tight) = (bushing(press).press().unwrap(), bushing(2 * press).press().unwrap());
        prop_assert!(loose.closes_in.upper() < tight.closes_in.lower());
        // Elastic: twice the press, twice the close-in.
        let ratio = tight.closes_in.lower().millimetres() / loose.closes_in.lower().millimetres();
        prop_assert!((ratio - 2.0).abs() < 1e-2, "{}", ratio);
        let wanted = Limits::new(count(least), count(least + width)).unwrap();
        if let Some(shaft) = loose.shaft_for(wanted).unwrap().limits {
            prop_assert_eq!(less(loose.bore.lower(), shaft.upper()), wanted.lower());
            prop_assert_eq!(less(loose.bore.upper(), shaft.lower()), wanted.upper());
            let again = bore_for(shaft, wanted).unwrap();
            prop_assert_eq!(again.limits.map(Limits::lower), Some(loose.bore.lower()));
        }
        prop_assert!(Bush::of(bushing(press).material).made(count(outside), count(bore)).is_err());
    }
}
