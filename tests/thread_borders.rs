//! Where a rule of a thread table changes with the size: one side of the
//! border, the border itself and the other side, a ten-thousandth apart or
//! less. Sizes are compared as whole counts, so no border falls to the wrong
//! side by a rounding.

use fits_checks::rows;
use fits_core::{
    Length,
    size::Unit,
    standards::thread::{Class, Pitch, Series, Side, Thread},
};

const COUNT: Length = Length::from_tenth_nanometres(1);

fn inches(text: &str) -> Length {
    format!("{text}in").parse().unwrap()
}

#[allow(clippy::unnecessary_wraps, reason = "an option is what limits are asked with")]
fn class(text: &str) -> Option<Class> {
    Some(Class::read(text).unwrap())
}

/// One count below, at and one count above.
fn around(border: Length) -> [Length; 3] {
    [border.checked_sub(COUNT).unwrap(), border, border.checked_add(COUNT).unwrap()]
}

#[test]
fn the_allowance_of_bs_84_ends_above_three_quarters() {
    // BS 84: medium and free screws to 3/4 in stand 0.3 T below the basic size.
    let border = inches("0.75");
    let mut seen = 0;
    let listed = rows("data/threads/whitworth_sizes.csv");
    let listed = listed.iter().map(|row| {
        let name = format!("{}-{} {}", row.text("size"), row.text("tpi"), row.text("series"));
        name.parse::<Thread>().unwrap_or_else(|error| panic!("{name}: {error}"))
    });
    let ten = Pitch::per_inch(10, 1).unwrap();
    let beside = around(border).map(|size| Thread::whitworth(size, ten).unwrap());
    for thread in listed.chain(beside) {
        let size = thread.major();
        let unit = {
            let [d, p] = [size.millimetres() / 25.4, thread.pitch().inches()];
            0.002 * d.cbrt() + 0.003 * d.sqrt() + 0.005 * p.sqrt()
        };
        for word in ["medium", "free"] {
            let screw = thread.external(class(word)).unwrap();
            let top = screw.major.max.unwrap();
            let room = size.checked_sub(top).unwrap().millimetres() / 25.4;
            let wanted = if size <= border { 0.3 * unit } else { 0.0 };
            assert!((room - wanted).abs() < 0.000_051, "{thread} {word}: {room} for {wanted}");
            seen += 1;
        }
        let close = thread.external(class("close")).unwrap();
        assert_eq!(close.major.max, Some(size), "{thread} close");
    }
    assert!(seen > 60, "{seen}");
    // As printed: 0.7482 in, not 0.7500.
    for name in ["3/4 BSW", "3/4 BSF"] {
        let thread: Thread = name.parse().unwrap();
        let top = thread.external(class("medium")).unwrap().major.max.unwrap();
        assert!(top <= inches("0.7483"), "{name}: {top}");
    }
}

#[test]
fn the_nut_of_bs_84_changes_at_22_and_26_turns() {
    for (turns, over, more) in [
        (2599, 100, 0.005),
        (26, 1, 0.004),
        (2601, 100, 0.004),
        (2199, 100, 0.007),
        (22, 1, 0.005),
        (2201, 100, 0.005),
    ] {
        let thread = Thread::whitworth(inches("1"), Pitch::per_inch(turns, over).unwrap()).unwrap();
        let nut = thread.internal(None).unwrap();
        let width = nut.minor.max.unwrap().checked_sub(nut.minor.min.unwrap()).unwrap();
        let wanted = 0.2 * thread.pitch().inches() + more;
        assert!((width.millimetres() / 25.4 - wanted).abs() < 0.000_11, "{thread}: {width}");
    }
}

#[test]
fn the_nut_of_b1_1_changes_at_a_quarter_at_four_and_at_thirteen_turns() {
    // ASME B1.1, tolerances of the minor diameter of internal threads.
    let whole = |p: f64| 0.25 * p - 0.4 * p * p;
    let sized = |p: f64, d: f64| 0.05 * (p * p).cbrt() + 0.03 * p / d - 0.002;
    let wanted = |thread: &Thread, third: bool| {
        let (p, d) = (thread.pitch().inches(), thread.major().millimetres() / 25.4);
        let is_small = thread.major() < inches("0.25");
        if third {
            let finer = thread.pitch().scaled(25, 2) < Length::INCH;
            let least = if finer { 0.23 * p - 1.5 * p * p } else { 0.120 * p };
            sized(p, d).max(least).min(0.394 * p)
        } else if is_small {
            sized(p, d).max(whole(p)).min(0.394 * p)
        } else if thread.pitch() > Pitch::per_inch(4, 1).unwrap() {
            0.15 * p
        } else {
            whole(p)
        }
    };
    let check = |size: Length, turns: (i64, i64)| {
        let pitch = Pitch::per_inch(turns.0, turns.1).unwrap();
        let nominal = fits_core::standards::thread::Nominal::Decimal(size);
        let thread = Thread::unified(nominal, pitch).unwrap();
        for (name, third) in [("2B", false), ("3B", true)] {
            let got = thread.internal(class(name)).unwrap().crest_tolerance;
            let gap = got.millimetres() / 25.4 - wanted(&thread, third);
            assert!(gap.abs() < 0.000_052, "{thread} {name}: {got}, {gap}");
        }
    };
    for size in around(inches("0.25")) {
        for turns in [9, 20, 28, 64] {
            check(size, (turns, 1));
        }
    }
    for turns in [(399, 100), (4, 1), (401, 100), (1249, 100), (25, 2), (1251, 100), (13, 1)] {
        check(inches("4"), turns);
        check(inches("2"), turns);
    }
}

#[test]
fn metric_steps_end_with_the_size_that_they_name() {
    // ISO 965-1: above the first size, up to and with the last.
    let mut seen = 0;
    for row in rows("data/threads/metric_tolerances.csv") {
        let (side, letter) = match row.text("quantity") {
            "Td2" => (Side::External, 'h'),
            "TD2" => (Side::Internal, 'H'),
            _ => continue,
        };
        let pitch: Length = row.length(row.text("pitch_mm"), Unit::Millimetre);
        let [over, up_to] =
            ["over_mm", "upto_mm"].map(|it| row.length(row.text(it), Unit::Millimetre));
        let um: i64 = row.get("um");
        for size in [over.checked_add(COUNT).unwrap(), up_to] {
            let Ok(thread) = Thread::metric(size, Pitch::of(pitch).unwrap()) else { continue };
            let sizes = thread.sizes(side, Some(Class::of(row.get("grade"), letter)), None);
            let Ok(sizes) = sizes else { continue };
            let wanted = Length::MICROMETRE.checked_mul(um).unwrap();
            assert_eq!(sizes.pitch_tolerance, wanted, "M{size}x{pitch} {side:?}");
            seen += 1;
        }
    }
    assert!(seen > 500, "{seen}");
    let quarter = "0.3mm".parse().unwrap();
    for (size, wanted) in around("1.4mm".parse().unwrap()).into_iter().zip(["6h", "6h", "6g"]) {
        let thread = Thread::metric(size, Pitch::of(quarter).unwrap()).unwrap();
        assert_eq!(thread.default_class(Side::External), class(wanted), "{size}");
    }
}

#[test]
fn constant_series_begin_and_end_with_the_sizes_that_they_name() {
    for row in rows("data/threads/unified_constant.csv") {
        let turns: i64 = row.get("tpi");
        for column in ["from_in", "to_in"] {
            let end: Length = format!("{}in", row.text(column)).parse().unwrap();
            for (size, is_listed) in around(end).into_iter().zip([false, true, false]) {
                let nominal = fits_core::standards::thread::Nominal::Decimal(size);
                let pitch = Pitch::per_inch(turns, 1).unwrap();
                let thread = Thread::unified(nominal, pitch).unwrap();
                let is_special = thread.series() == Series::Special;
                assert_eq!(is_special, !is_listed, "{size}-{turns}");
            }
        }
    }
}

#[test]
fn trapezoidal_steps_end_with_the_size_that_they_name() {
    // ISO 2903: the pitch diameter's tolerance above the first size, up to and with the last.
    let mut seen = 0;
    for row in rows("data/threads/trapezoidal_tolerances.csv") {
        let (side, name) = match row.text("quantity") {
            "Td2_7" => (Side::External, "7e"),
            "TD2_7" => (Side::Internal, "7H"),
            _ => continue,
        };
        let [pitch, over, up_to] =
            ["pitch_mm", "over_mm", "upto_mm"].map(|it| row.length(row.text(it), Unit::Millimetre));
        let um: i64 = row.get("value_um");
        for size in [over.checked_add(COUNT).unwrap(), up_to] {
            let Ok(thread) = Thread::trapezoidal(size, Pitch::of(pitch).unwrap()) else {
                continue;
            };
            let Ok(sizes) = thread.sizes(side, class(name), None) else { continue };
            let wanted = Length::MICROMETRE.checked_mul(um).unwrap();
            assert_eq!(sizes.pitch_tolerance, wanted, "Tr{size}x{pitch} {name}");
            seen += 1;
        }
    }
    assert!(seen > 20, "{seen}");
}

#[test]
fn both_classes_of_a_pair_are_kept_in_either_order() {
    for (typed, screw, nut) in [
        ("medium/medium", "medium", "medium"),
        ("close/medium", "close", "medium"),
        ("medium/close", "close", "medium"),
        ("free/normal", "free", "normal"),
        ("normal/free", "free", "normal"),
        ("normal/medium", "medium", "normal"),
        ("medium/normal", "medium", "normal"),
    ] {
        let line = format!("1/2 BSW {typed}");
        let (found, taken) = fits_core::standards::thread::scan(&line).unwrap().unwrap();
        assert_eq!(taken, line.len(), "{line}");
        found.resolve().unwrap();
        let typed =
            [Side::External, Side::Internal].map(|side| found.class(side).map(|it| it.value));
        assert_eq!(typed, [class(screw), class(nut)], "{line}");
    }
}
