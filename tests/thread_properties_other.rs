//! Any trapezoidal, Acme, stub Acme and Whitworth thread, listed or not: its
//! limits run the right way, or it is refused with a next step.

use fits_core::{
    Length,
    standards::thread::{Class, Form, Pitch, Side, Sizes, Thread, ThreadPair},
};
use proptest::prelude::*;

/// The limits of both sides, in each class that the system has.
fn all_sizes(thread: &Thread) -> Vec<(Sizes, Sizes)> {
    let (screws, nuts): (&[&str], &[&str]) = match thread.form() {
        Form::Trapezoidal => (&["7e", "8e", "8c", "9c"], &["7H", "8H", "9H"]),
        Form::Whitworth => (&["close", "medium", "free"], &["medium", "normal"]),
        _ => (&["4G", "3G", "2G"], &["4G", "3G", "2G"]),
    };
    let sizes = |side, class: &str| {
        let read = Class::read(class).expect("a class");
        thread
            .sizes(side, Some(read), None)
            .unwrap_or_else(|error| panic!("{thread} {class}: {error}"))
    };
    let pairs = screws.iter().flat_map(|screw| nuts.iter().map(move |nut| (*screw, *nut)));
    pairs.map(|(screw, nut)| (sizes(Side::External, screw), sizes(Side::Internal, nut))).collect()
}

fn judge(thread: Result<Thread, fits_core::Error>) -> Result<(), TestCaseError> {
    let thread = match thread {
        Ok(thread) => thread,
        Err(error) => {
            prop_assert!(!error.to_string().is_empty() && !error.advice().is_empty(), "{error:?}");
            return Ok(());
        }
    };
    let name = thread.to_string();
    let read: Thread =
        name.parse().map_err(|error| TestCaseError::fail(format!("{name}: {error}")))?;
    prop_assert_eq!(read, thread);
    for (screw, nut) in all_sizes(&thread) {
        let pair = ThreadPair::new(screw, nut);
        prop_assert_eq!(pair.interference(), None, "{} {}/{}", name, nut.class, screw.class);
        for sizes in [screw, nut] {
            for spread in [sizes.major, sizes.pitch, sizes.minor] {
                if let (Some(max), Some(min)) = (spread.max, spread.min) {
                    prop_assert!(min < max, "{name} {}: {min} to {max}", sizes.class);
                }
            }
            prop_assert!(
                sizes.pitch_tolerance.is_positive() && sizes.crest_tolerance.is_positive()
            );
        }
        prop_assert!(screw.deviation <= Length::ZERO && nut.deviation == Length::ZERO);
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1000, ..ProptestConfig::default() })]

    #[test]
    fn any_trapezoidal_thread(
        hundredths in 1_i64..120_000,
        pitch in prop_oneof![1_i64..6000, (3_i64..90).prop_map(|halves| 50 * halves)],
        starts in 1_u8..8,
    ) {
        let length = |count: i64| Length::from_micrometres(10 * count).unwrap();
        let thread = Pitch::of(length(pitch))
            .and_then(|pitch| Thread::trapezoidal(length(hundredths), pitch))
            .and_then(|thread| thread.with_starts(starts));
        judge(thread)?;
    }

    #[test]
    fn any_inch_thread(
        ten_thousandths in 1_i64..450_000,
        turns in 1_i64..400,
        over in prop::sample::select(vec![1_i64, 2, 4, 8]),
        form in 0..3,
        starts in 1_u8..8,
    ) {
        let diameter = Length::TENTH.checked_mul(ten_thousandths).unwrap();
        let thread = Pitch::per_inch(turns, over).and_then(|pitch| match form {
            0 => Thread::acme(diameter, pitch),
            1 => Thread::stub_acme(diameter, pitch),
            _ => Thread::whitworth(diameter, pitch),
        });
        judge(thread.and_then(|thread| thread.with_starts(starts)))?;
    }

    /// Whatever is typed, an answer or a sentence; never a panic.
    #[test]
    fn any_name(
        name in "(Tr|G|R|Rp|Rc)?[0-9./-]{1,7}(x[0-9.]{1,5}(P[0-9.]{1,4})?)?( (Acme|Stub Acme|BSW|BSF|Whitworth|BA|NPT|BSP))?(-| )?(7e|8c|7H|2G|4G|2C|A|B|6g|close|medium|free|normal)?(/7e|/2G|/close)?( LH)?( [0-9]{1,3} starts)?",
    ) {
        if let Ok(thread) = name.parse::<Thread>() {
            let again: Thread = thread.to_string().parse().map_err(|error| {
                TestCaseError::fail(format!("{name}: {thread}: {error}"))
            })?;
            prop_assert_eq!(again.pitch(), thread.pitch());
            prop_assert!(!thread.reasons().is_empty());
            for side in [Side::External, Side::Internal] {
                match thread.why(side, None, None) {
                    Ok(why) => prop_assert!(!why.is_empty()),
                    Err(error) => prop_assert!(!error.advice().is_empty(), "{name}: {error}"),
                }
            }
        }
    }
}
