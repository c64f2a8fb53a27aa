//! The tailstock against worked examples read elsewhere, and by its own rules.

use fits_checks::{named, rows};
use fits_core::{
    Length,
    shop::align::{Taper, Toward},
    size::Unit,
};
use fits_repl::{answer::Answer, session::Session};
use proptest::prelude::*;

fn length(text: &str) -> Length {
    text.parse().expect(text)
}

#[test]
fn set_over_as_printed() {
    let list = rows("tests/published/tailstock.csv");
    assert_eq!(named(&list), 2);
    for row in list {
        let inches = |column: &str| row.length(row.text(column), Unit::Inch);
        let taper = Taper::new(inches("taper_in"), inches("per_in")).expect("a taper");
        let found = taper.set_over(inches("length_in")).expect("in range");
        assert_eq!(found, inches("set_over_in"), "{row}");
        // The same, asked for in words.
        let query = format!(
            "align taper {}in per {}in over {}in",
            row.text("taper_in"),
            row.text("per_in"),
            row.text("length_in")
        );
        let Ok(Answer::Align(answer)) = Session::new().evaluate(&query) else {
            panic!("{row}: {query}");
        };
        assert_eq!(answer.set_over_mm.0, inches("set_over_in"), "{row}");
        assert!(answer.wanted);
    }
}

/// US Navy, Machinery Repairman, NAVEDTRA 14345: equal collars mean the
/// centres are aligned; the tailstock end large, it comes toward the tool.
#[test]
fn which_way() {
    for (head, tail, toward) in [
        ("19.98mm", "20.01mm", Toward::Tool),
        ("0.7511in", "0.7503in", Toward::Away),
        ("20mm", "20mm", Toward::Stay),
    ] {
        let taper = Taper::between(length(head), length(tail), length("150mm")).expect("a taper");
        assert_eq!(taper.toward(), toward, "{head} {tail}");
    }
}

#[test]
fn scaled_to_the_whole_distance_between_centres() {
    // 0.03 mm over 150 mm is 0.08 mm over 400 mm: half of it is 0.04 mm.
    let Ok(Answer::Align(answer)) =
        Session::new().evaluate("align 19.98 20.01 over 150 between 400, 20 g6 long 40")
    else {
        panic!("the tailstock");
    };
    assert_eq!(answer.set_over_mm.0, length("0.04mm"));
    assert_eq!(answer.per_100_mm_mm.0, length("0.02mm"));
    assert_eq!(answer.per_foot_mm.0, length("0.06096mm"));
    let part = answer.part.expect("a part was named");
    // 13 µm wide, and 8 µm of taper over 40 mm.
    assert_eq!((part.taper_mm.0, part.leaves_mm.0), (length("0.008mm"), length("0.005mm")));
    assert!(part.survives);
    let Ok(Answer::Align(answer)) =
        Session::new().evaluate("align 19.98 20.01 over 150, 20 g6 long 80")
    else {
        panic!("the tailstock");
    };
    assert!(!answer.part.expect("a part").survives);
}

proptest! {
    /// Setting over by what is told takes the taper out: the axis then moves
    /// by as much as the radius differed, all along.
    #[test]
    fn moved_so_the_next_collars_are_alike(
        head in 15_000_000_i64..30_000_000,
        off in -300_000_i64..300_000,
        apart in 50_i64..800,
        more in 0_i64..400,
    ) {
        let count = Length::from_tenth_nanometres;
        let apart_length = Length::from_millimetres(apart).unwrap();
        let between = Length::from_millimetres(apart + more).unwrap();
        let taper = Taper::between(count(head * 10), count((head + off) * 10), apart_length).unwrap();
        let moved = taper.set_over(between).unwrap();
        // The collars' radii change by their share of the move.
        let share = moved.checked_scale(apart.into(), (apart + more).into()).unwrap();
        let radius = count((off * 10).abs()).half();
        let miss = share.tenth_nanometres().abs_diff(radius.tenth_nanometres());
        prop_assert!(miss <= 1, "{miss}");
        let back = Taper::between(count((head + off) * 10), count(head * 10), apart_length).unwrap();
        prop_assert_eq!(back.set_over(between).unwrap(), moved);
    }
}
