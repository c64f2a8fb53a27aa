//! The straight drill before an NPT tap lies near K0, the basic minor diameter
//! at the small end of the screw: ASME B1.20.1, E0 - 0.8 P. A maker of taps has
//! the hole close to it.

use fits_checks::{mm, rows};
use fits_core::{
    size::Unit,
    standards::{
        drills::{Drill, Series},
        thread::Thread,
    },
};
use fits_repl::{
    answer::{Answer, TapAnswer},
    session::Session,
};

fn tap(query: &str) -> TapAnswer {
    match Session::new().evaluate(query) {
        Ok(Answer::Tap(tap)) => *tap,
        other => panic!("{query}: {other:?}"),
    }
}

/// Charts that print another drill for NPT than the list that is followed.
const OTHER_CHARTS: [(&str, &str, &str); 5] = [
    ("1/8", "Q", "darley.co.uk"),
    ("3/8", "9/16 in", "darley.co.uk"),
    ("1/2", "45/64 in", "darley.co.uk"),
    ("1-1/2", "1-3/4 in", "tonixtools.com"),
    ("2", "2-1/4 in", "tonixtools.com"),
];

/// Greatest straight holes for Rc in millimetres, the far end with incomplete and with
/// complete threads: Yamawa catalogue 2021, p. 720, after JIS B 0203.
const YAMAWA: [(&str, f64, f64); 10] = [
    ("1/16", 6.1, 6.2),
    ("1/8", 8.1, 8.2),
    ("1/4", 10.7, 10.9),
    ("3/8", 14.2, 14.4),
    ("1/2", 17.6, 17.9),
    ("3/4", 23.0, 23.3),
    ("1", 29.0, 29.3),
    ("1-1/4", 37.6, 37.9),
    ("1-1/2", 43.5, 43.8),
    ("2", 55.0, 55.4),
];

#[test]
fn every_npt_names_a_drill_or_a_bore_and_the_other_charts_stand_beside() {
    for row in rows("data/threads/npt.csv") {
        let size = row.text("size");
        let answer = tap(&format!("{size} NPT tap"));
        let thread: Thread = format!("{size} NPT").parse().unwrap();
        let (small, pitch) = (thread.taper().unwrap().small_end, thread.pitch().inches());
        let k0 = small.millimetres() / 25.4 - 0.8 * pitch;
        match (&answer.first, &answer.bore) {
            (Some(first), None) => {
                assert_eq!(first.published, !row.text("tap_drill_in").is_empty(), "{row}");
                assert_eq!(first.drill_within_limits, None, "{row}");
                // Where the screw's end comes: the handwheel's K0 less a sixteenth of L3.
                let turns =
                    if row.length(size, Unit::Inch).millimetres() > 50.81 { 2.0 } else { 3.0 };
                let end = k0 - turns * pitch / 16.0;
                let drill = first.drill.mm.0.millimetres() / 25.4;
                let wanted = 100.0 - 100.0 * (drill - end) / (1.6 * pitch);
                assert!((first.percent - wanted).abs() < 0.02, "{row}: {wanted}");
                assert!((50.0..=100.0).contains(&first.percent), "{row}: {}", first.percent);
                let others = &answer.alternatives;
                let size = first.drill.mm.0;
                // A hole under the minor diameter there is more than full thread.
                let left = |it: Drill| {
                    100.0 - 100.0 * (it.diameter().millimetres() / 25.4 - end) / (1.6 * pitch)
                };
                let inch = || Drill::all().filter(|it| it.series() != Series::Metric);
                let above = inch().filter(|it| it.diameter() > size).min_by_key(|it| it.diameter());
                let below = inch().filter(|it| it.diameter() < size).max_by_key(|it| it.diameter());
                let beside =
                    |it: Drill| others.iter().any(|other| other.drill.mm.0 == it.diameter());
                for next in above.into_iter().chain(below.filter(|_| above.is_some())) {
                    assert_eq!(
                        beside(next),
                        (50.0..=100.0).contains(&left(next)),
                        "{row}: {}",
                        next.name()
                    );
                }
                assert!(others.iter().all(|other| other.percent >= 50.0), "{row}");
            }
            (None, Some(bore)) => {
                assert!((bore.aim_mm.0.millimetres() / 25.4 - k0).abs() < 1e-4, "{row}");
            }
            other => panic!("{row}: {other:?}"),
        }
    }
    for (size, drill, chart) in OTHER_CHARTS {
        let answer = tap(&format!("{size} NPT tap"));
        let beside = answer.alternatives.iter().any(|other| other.drill.name == drill);
        assert!(beside, "{size} NPT: {drill} of {chart}");
    }
}

#[test]
fn every_rc_names_a_drill_and_the_hole_for_full_thread_beside() {
    for row in rows("data/threads/pipe_r.csv") {
        let size = row.text("size");
        let answer = tap(&format!("Rc{size} tap"));
        assert_eq!(format!("{:?}", tap(&format!("{size} Rc tap"))), format!("{answer:?}"));
        let Some(first) = answer.first else {
            assert!(answer.bore.is_some(), "{row}");
            continue;
        };
        assert_eq!(first.published, !row.text("tap_drill_mm").is_empty(), "{row}");
        let held = YAMAWA.iter().find(|(name, ..)| *name == size);
        assert_eq!(held.is_some(), !row.text("full_thread_mm").is_empty(), "{row}");
        let Some((_, incomplete, full)) = held else { continue };
        let beside = answer.alternatives.iter().any(|other| other.drill.mm.0 == mm(*full));
        assert!(beside, "{row}: {full}");
        // The maker's two holes lie about the hundred percent of a made-up screw's end.
        let thread: Thread = format!("Rc{size}").parse().unwrap();
        let taper = thread.taper().unwrap();
        let end =
            thread.basic_minor_diameter().millimetres() - taper.useful_length.millimetres() / 16.0;
        assert!(*incomplete < end + 0.05 && end < full + 0.05, "{row}: {end}");
        // The list's drill is larger: it leaves the end shallow.
        assert!(first.drill.mm.0 > mm(*full), "{row}");
    }
}

#[test]
fn both_ways_of_asking_agree_and_nothing_typed_is_dropped() {
    let asked = format!("{:?}", tap("1/2 NPT tap"));
    assert_eq!(format!("{:?}", tap("drill for 1/2 NPT")), asked);
    assert_eq!(tap("1/2 NPT tap").first.unwrap().drill.name, "23/32 in");
    assert_eq!(tap("1/2 Rc tap").first.unwrap().drill.name, "18.75 mm");
    assert_eq!(tap("3 NPT tap").first.unwrap().drill.name, "3-1/4 in");
    assert!(tap("1/2 NPT tap, hub steel").notes.iter().any(|note| note.contains("material")));
    assert!(tap("1/2 NPT tap 45/64").in_hand);
    for query in ["1/2 NPT tap 75%", "1/2 NPT tap form", "R1/2 tap"] {
        assert!(Session::new().evaluate(query).is_err(), "{query}");
    }
    let mut session = Session::new();
    session.evaluate("crib add drill 45/64in").unwrap();
    match session.evaluate("1/2 NPT tap") {
        Ok(Answer::Tap(tap)) => {
            let first = tap.first.unwrap();
            assert_eq!((&*first.drill.name, first.drill_in_crib), ("45/64 in", Some(true)));
            assert_eq!(first.best_drill.as_deref(), Some("23/32 in"));
        }
        other => panic!("{other:?}"),
    }
}

#[test]
fn the_drill_is_near_the_minor_diameter_at_the_small_end() {
    let mut seen = 0;
    for row in rows("data/threads/npt.csv") {
        let thread: Thread = format!("{} NPT", row.text("size")).parse().unwrap();
        let Some(drill) = thread.pipe_tap_drill() else { continue };
        let small = thread.taper().unwrap().small_end.millimetres() / 25.4;
        let over = drill.millimetres() / 25.4 - (small - 0.8 * thread.pitch().inches());
        assert!((-0.010..=0.020).contains(&over), "{row}: {over}");
        seen += 1;
    }
    assert_eq!(seen, 15);
}
