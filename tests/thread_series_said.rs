//! A thread by the letters of its series: ASME B1.1 gives one size and pitch
//! one set of limits, whatever it is called.

use fits_checks::rows;
use fits_core::standards::thread::{Series, Thread};

/// `UN` of a coarse, fine or extra fine pitch is that series' own thread,
/// except where the constant-pitch table lists the pitch, too.
#[test]
fn un_of_a_graded_pitch_agrees_with_its_own_letters() {
    let mut held = 0;
    for row in rows("data/threads/unified_series.csv") {
        let (size, turns) = (row.text("size"), row.text("tpi"));
        let Some(plain) = format!("{size}-{turns}").parse::<Thread>().ok() else { continue };
        if plain.series() == Series::Constant {
            continue;
        }
        let said: Thread = format!("{size}-{turns} UN").parse().unwrap_or_else(|error| {
            panic!("{row}: {error}");
        });
        if said.series() == Series::Constant {
            continue;
        }
        assert_eq!(said.series(), plain.series(), "{row}");
        let pitch = |thread: &Thread| thread.internal(None).expect("a nut").pitch;
        assert_eq!(pitch(&said), pitch(&plain), "{row}");
        held += 1;
    }
    assert!(held > 20, "{held}");
}

#[test]
fn another_graded_series_than_the_threads_own_is_still_refused() {
    for wrong in ["1/2-13 UNF", "1/2-20 UNC"] {
        assert!(wrong.parse::<Thread>().is_err(), "{wrong}");
    }
}
