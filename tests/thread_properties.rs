//! What holds for any thread: no screw is larger than its nut, finer classes
//! lie inside coarser ones, and a designation comes back from its text.

use fits_core::{
    Length,
    standards::thread::{
        Class, DiameterLimits, Nominal, Pitch, Side, Sizes, Thread, ThreadPair, Zone, scan,
        scan_expected,
    },
};
use proptest::prelude::*;

/// Any metric thread that can be, and often a usual one.
fn metric() -> impl Strategy<Value = Thread> {
    const USUAL: [(i64, i64); 10] = [
        (1000, 250),
        (1600, 350),
        (3000, 500),
        (8000, 1250),
        (10_000, 1500),
        (12_000, 1000),
        (20_000, 2500),
        (64_000, 6000),
        (95_000, 4000),
        (300_000, 8000),
    ];
    let of = |diameter, pitch| {
        let length = |count| Length::from_micrometres(count).unwrap();
        Thread::metric(length(diameter), Pitch::of(length(pitch)).unwrap())
    };
    prop_oneof![
        (0..USUAL.len()).prop_map(move |at| of(USUAL[at].0, USUAL[at].1).unwrap()),
        (500_i64..600_000, 100_i64..8000)
            .prop_filter_map("no core", move |(diameter, pitch)| of(diameter, pitch).ok()),
    ]
}

fn nominal() -> impl Strategy<Value = Nominal> {
    prop_oneof![
        (0..10_usize).prop_map(|at| Nominal::Number([0, 1, 2, 3, 4, 5, 6, 8, 10, 12][at])),
        (0_u16..6, 0_u16..16).prop_filter_map("no size", |(whole, sixteenths)| {
            let even = if sixteenths == 0 { 4 } else { sixteenths.trailing_zeros().min(4) };
            let (numerator, denominator) = (sixteenths >> even, 16_u16 >> even);
            (whole + sixteenths > 0).then_some(Nominal::Fraction { whole, numerator, denominator })
        }),
        (60_i64..6000).prop_map(|thou| Nominal::Decimal(Length::THOU.checked_mul(thou).unwrap())),
    ]
}

fn unified() -> impl Strategy<Value = Thread> {
    let pitch = prop_oneof![
        (3_i64..=80).prop_map(|turns| Pitch::per_inch(turns, 1).unwrap()),
        (5_i64..=40).prop_map(|turns| Pitch::per_inch(turns, 2).unwrap()),
    ];
    (nominal(), pitch)
        .prop_filter_map("no core", |(nominal, pitch)| Thread::unified(nominal, pitch).ok())
}

fn external_class() -> impl Strategy<Value = Class> {
    (3..=9_u8, 0..3_usize, 0..4_usize).prop_map(|(grade, crest, letter)| {
        let position = ['e', 'f', 'g', 'h'][letter];
        Class::Zones {
            pitch: Zone { grade, position },
            crest: Zone { grade: [4, 6, 8][crest], position },
        }
    })
}

fn internal_class() -> impl Strategy<Value = Class> {
    (4..=8_u8, 4..=8_u8, 0..2_usize).prop_map(|(grade, crest, letter)| {
        let position = ['G', 'H'][letter];
        Class::Zones { pitch: Zone { grade, position }, crest: Zone { grade: crest, position } }
    })
}

fn is_inside(inner: DiameterLimits, outer: DiameterLimits) -> bool {
    inner.max.is_none_or(|max| outer.max.is_none_or(|outer| max <= outer))
        && inner.min.is_none_or(|min| outer.min.is_none_or(|outer| min >= outer))
}

fn is_ordered(sizes: &Sizes) -> bool {
    let least = |spread: DiameterLimits| spread.min.or(spread.max).unwrap();
    [sizes.major, sizes.pitch, sizes.minor]
        .into_iter()
        .all(|spread| spread.min.is_none_or(|min| spread.max.is_none_or(|max| min < max)))
        && least(sizes.major) > least(sizes.pitch)
        && least(sizes.pitch) > least(sizes.minor)
        && sizes.pitch_tolerance.is_positive()
        && sizes.crest_tolerance.is_positive()
}

/// The thread that its own designation names, with the classes read back.
fn back(
    thread: &Thread,
    external: Option<Class>,
    internal: Option<Class>,
) -> (Thread, Option<Class>, Option<Class>) {
    let text = thread.designation(external, internal);
    let (designation, taken) =
        scan_expected(&text).unwrap_or_else(|| panic!("{text}")).expect(&text);
    assert_eq!(taken, text.len(), "{text}");
    let class = |side| designation.class(side).map(|class| class.value);
    let found = designation.resolve().expect(&text);
    (found, class(Side::External), class(Side::Internal))
}

proptest! {
    #[test]
    fn no_metric_screw_is_larger_than_its_nut(
        thread in metric(), screw in external_class(), nut in internal_class(),
    ) {
        let pair = ThreadPair::new(
            thread.external(Some(screw)).unwrap(),
            thread.internal(Some(nut)).unwrap(),
        );
        prop_assert_eq!(pair.interference(), None);
        for play in [pair.pitch(), pair.major(), pair.minor()] {
            let least = play.least.unwrap();
            prop_assert!(!least.is_negative());
            prop_assert!(play.greatest.is_none_or(|greatest| greatest > least));
        }
    }

    #[test]
    fn no_unified_screw_is_larger_than_its_nut(thread in unified(), screw in 1..=3_u8, nut in 1..=3_u8) {
        let screw = thread.external(Some(Class::of(screw, 'A'))).unwrap();
        let nut = thread.internal(Some(Class::of(nut, 'B'))).unwrap();
        prop_assert!(is_ordered(&screw) && is_ordered(&nut), "{screw:?} {nut:?}");
        let pair = ThreadPair::new(screw, nut);
        prop_assert_eq!(pair.interference(), None);
        prop_assert_eq!(pair.pitch().least, screw.deviation.checked_neg().ok());
    }

    #[test]
    fn metric_grades_are_nested(
        thread in metric(), grade in 4..8_u8, letter in 0..4_usize, nut in 0..2_usize,
    ) {
        let class = |grade, position, crest| Some(Class::Zones {
            pitch: Zone { grade, position },
            crest: Zone { grade: crest, position },
        });
        let letter = ['e', 'f', 'g', 'h'][letter];
        let finer = thread.external(class(grade, letter, 4)).unwrap();
        let coarser = thread.external(class(grade + 1, letter, 6)).unwrap();
        prop_assert!(is_inside(finer.pitch, coarser.pitch) && is_inside(finer.major, coarser.major));
        let letter = ['G', 'H'][nut];
        let finer = thread.internal(class(grade, letter, grade)).unwrap();
        let coarser = thread.internal(class(grade + 1, letter, grade + 1)).unwrap();
        prop_assert!(is_inside(finer.pitch, coarser.pitch) && is_inside(finer.minor, coarser.minor));
    }

    #[test]
    fn unified_classes_are_nested(thread in unified()) {
        let screw = |class| thread.external(Some(Class::of(class, 'A'))).unwrap();
        let nut = |class| thread.internal(Some(Class::of(class, 'B'))).unwrap();
        prop_assert!(is_inside(screw(2).pitch, screw(1).pitch));
        prop_assert!(is_inside(screw(2).major, screw(1).major));
        prop_assert!(screw(3).pitch.min >= screw(2).pitch.min);
        prop_assert!(screw(3).pitch_tolerance <= screw(2).pitch_tolerance);
        prop_assert!(is_inside(nut(3).pitch, nut(2).pitch) && is_inside(nut(2).pitch, nut(1).pitch));
    }

    #[test]
    fn a_longer_engagement_never_tightens(thread in unified(), one in 1..40_i64, more in 1..40_i64) {
        let length = |pitches: i64| Some(thread.pitch().scaled(pitches, 1));
        let of = |engaged| thread.sizes(Side::External, None, engaged).unwrap().pitch_tolerance;
        prop_assert!(of(length(one + more)) >= of(length(one)));
    }

    #[test]
    fn a_metric_designation_comes_back(
        thread in metric(), starts in 1..5_u8, left in any::<bool>(),
        screw in proptest::option::of(external_class()), nut in proptest::option::of(internal_class()),
    ) {
        let thread = thread.with_starts(starts).unwrap();
        let thread = if left { thread.left_hand() } else { thread };
        prop_assert_eq!(back(&thread, screw, nut), (thread, screw, nut));
    }

    #[test]
    fn a_unified_designation_comes_back(
        thread in unified(), starts in 1..5_u8, left in any::<bool>(),
        screw in 0..=3_u8, nut in 0..=3_u8,
    ) {
        let thread = thread.with_starts(starts).unwrap();
        let thread = if left { thread.left_hand() } else { thread };
        let class = |number, letter| (number > 0).then(|| Class::of(number, letter));
        let (screw, nut) = (class(screw, 'A'), class(nut, 'B'));
        prop_assert_eq!(back(&thread, screw, nut), (thread, screw, nut));
    }

    #[test]
    fn every_figure_is_explained(thread in prop_oneof![metric(), unified()]) {
        for side in [Side::External, Side::Internal] {
            let reasons = thread.why(side, None, None).unwrap();
            for figure in ["major diameter", "pitch diameter", "minor diameter", "pitch diameter tolerance"] {
                prop_assert!(reasons.iter().any(|reason| reason.figure == figure), "{figure}");
            }
            prop_assert!(reasons.iter().all(|reason| !reason.source.is_empty() && !reason.value.is_empty()));
let is_said = reasons.iter().any(|reason| reason.figure == "outside the tables");
            prop_assert_eq!(thread.sizes(side, None, None).unwrap().outside.is_some(), is_said);
        }
        prop_assert!(thread.reasons().len() >= 4);
    }

    #[test]
    fn any_text_is_read_or_left_alone(text in "(M|Tr|G|R|#|[0-9])?[0-9./x#P -]{0,8}(UN[CFS]?|Acme|BSW|BA|NPT|LH|6g|2A)?[ -]?[0-9A-Za-z/µ×\"]{0,4}") {
        for scanned in [scan(&text), scan_expected(&text)].into_iter().flatten() {
            match scanned {
                Ok((designation, taken)) => {
                    prop_assert!(taken <= text.len() && text.is_char_boundary(taken));
                    if let Err(error) = designation.resolve() {
                        let span = error.span();
                        prop_assert!(span.is_none_or(|span| span.start <= span.end && span.end <= text.len()));
                    }
                }
                Err(error) => {
                    let span = error.span().expect("a place");
                    prop_assert!(span.start <= span.end && span.end <= text.len(), "{span:?}");
                    prop_assert!(text.is_char_boundary(span.start) && text.is_char_boundary(span.end));
                }
            }
        }
    }
}
