//! Unified threads: ASME B1.1.
//!
//! Every limit is computed, for listed and special sizes alike, along the
//! rounding chain that reproduces the published tables: size to four places,
//! tolerance of class 2A to six, each limit to four, and minor diameters of
//! nuts from 0.138 in on to three, halves to even (the greatest of 3B to four).
//! Odd published values stand in `tests/thread_published.rs`.

use super::{
    Class, DiameterLimits, Form, Pitch, Series, Side, Sizes, Thread, Zone,
    unified_series::{inch_parts, is_pitch, tolerance_diameter},
    unified_table::{EXCEPTIONS, ROOTS},
};
use crate::{error::Error, size::Length};

/// A figure that is printed off the formula.
#[derive(Debug)]
pub(super) struct Exception {
    pub(super) major: Length,
    pub(super) half_turns: u16,
    pub(super) side: Side,
    pub(super) class: u8,
    pub(super) figure: Odd,
    pub(super) microinches: i64,
    pub(super) source: u8,
}

/// Which figure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Odd {
    Allowance,
    PitchTolerance,
}

/// Major less rounded-root minor diameter as the tables print it.
#[derive(Debug)]
pub(super) struct Root {
    pub(super) half_turns: u16,
    pub(super) microinches: i64,
}

/// A millionth of an inch.
const MICROINCH: i64 = Length::INCH.tenth_nanometres() / 1_000_000;

/// The printed figure of a thread, where the formula does not give it.
pub(super) fn exception(
    thread: &Thread,
    side: Side,
    class: u8,
    figure: Odd,
) -> Option<&'static Exception> {
    EXCEPTIONS.iter().find(|row| {
        (row.major, row.side, row.class, row.figure) == (thread.major, side, class, figure)
            && is_pitch(thread.pitch, row.half_turns)
    })
}

/// The number of a class on this side.
fn number(form: Form, side: Side, class: Class) -> Result<u8, Error> {
    let letter = match side {
        Side::External => 'A',
        Side::Internal => 'B',
    };
    if form == Form::UnifiedRounded && side == Side::Internal {
        return Err(Error::not_given(
            "UNR is a screw's form: its nut is UN",
            "leave out the R for the nut",
        ));
    }
    match class {
        Class::Zones { pitch, crest }
            if pitch == crest && pitch.position == letter && (1..=3).contains(&pitch.grade) =>
        {
            Ok(pitch.grade)
        }
        _ => Err(Error::not_given(
            format!("no {} Unified thread has class {class}", side.word()),
            format!("the nearest is {}", nearest(class, letter)),
        )),
    }
}

/// The class with the nearest number; 2 where it has none of this system.
pub(super) fn nearest(class: Class, letter: char) -> Class {
    match class {
        Class::Zones { pitch: Zone { grade, position }, .. } if position == letter => {
            Class::of(grade.clamp(1, 3), letter)
        }
        _ => Class::of(2, letter),
    }
}

/// Is it a class of the standard?
pub(super) fn check(form: Form, class: Class) -> Result<(), Error> {
    match class.side(form) {
        Some(side) => number(form, side, class).map(|_| ()),
        None => Err(Error::not_given(
            format!("a Unified thread has no class {class}"),
            "screws take 2A (1A, 3A), nuts 2B (1B, 3B)",
        )),
    }
}

/// Is the engagement usually the diameter, not nine pitches?
pub(super) fn is_engaged_by_diameter(thread: &Thread) -> bool {
    match thread.series {
        Series::Coarse | Series::Fine => true,
        Series::Constant => thread.pitch.scaled(8, 1) >= Length::INCH,
        _ => false,
    }
}

/// The usual length of engagement.
pub(super) fn usual_engagement(thread: &Thread) -> Length {
    if is_engaged_by_diameter(thread) {
        tolerance_diameter(thread.major)
    } else {
        thread.pitch.scaled(9, 1)
    }
}

/// In inches, on the last of so many places.
fn placed(inches: f64, places: u32) -> i64 {
    let step = 10_i64.pow(6_u32.saturating_sub(places));
    #[allow(clippy::cast_precision_loss, reason = "a small power of ten")]
    let steps = libm::rint(inches * 1e6 / step as f64);
    #[allow(clippy::cast_possible_truncation, reason = "sizes to 20 in are far below 2^53")]
    let steps = steps as i64;
    steps * step
}

/// So many parts of a millionth of an inch on the fourth place.
fn on_place_of(parts: i64, of: i64) -> i64 {
    let step = 100;
    to_step(parts, step * of) / of
}

/// Millionths of an inch on the last of so many places.
fn on_place(microinches: i64, places: u32) -> i64 {
    to_step(microinches, 10_i64.pow(6_u32.saturating_sub(places)))
}

/// To the nearest multiple, halves to even.
fn to_step(microinches: i64, step: i64) -> i64 {
    let down = microinches.div_euclid(step);
    let up = match (microinches.rem_euclid(step) * 2).cmp(&step) {
        core::cmp::Ordering::Less => 0,
        core::cmp::Ordering::Equal => down.rem_euclid(2),
        core::cmp::Ordering::Greater => 1,
    };
    (down + up) * step
}

pub(super) fn length(microinches: i64) -> Length {
    Length::from_tenth_nanometres(microinches.saturating_mul(MICROINCH))
}

/// The parts of a limit, in millionths of an inch.
#[derive(Clone, Copy, Debug)]
pub(super) struct Parts {
    /// The size, to four places.
    pub(super) major: i64,
    /// Pitch diameter tolerance of class 2A, to six places.
    pub(super) class_2a: i64,
    /// Allowance, to four.
    pub(super) allowance: i64,
    /// Pitch diameter tolerance of the class, to four.
    pub(super) pitch: i64,
    /// Crest tolerance of the class, to four.
    pub(super) crest: i64,
}

/// The pitch diameter tolerance of a class in thousandths of that of 2A.
pub(super) const fn share(side: Side, number: u8) -> i64 {
    match (side, number) {
        (Side::External, 1) => 1500,
        (Side::External, 2) => 1000,
        (Side::External, _) => 750,
        (Side::Internal, 1) => 1950,
        (Side::Internal, 2) => 1300,
        (Side::Internal, _) => 975,
    }
}

fn in_inches(length: Length) -> f64 {
    length.millimetres() / 25.4
}

pub(super) fn parts(thread: &Thread, side: Side, number: u8, engaged: Length) -> Parts {
    let p = libm::rint(thread.pitch.inches() * 1e8) / 1e8;
    let root = libm::cbrt(p * p);
    let tolerated = in_inches(tolerance_diameter(thread.major));
    let class_2a = placed(
        0.0015 * libm::cbrt(tolerated) + 0.0015 * libm::sqrt(in_inches(engaged)) + 0.015 * root,
        6,
    );
    let major = placed(in_inches(thread.major), 4);
    let allowance = match (side, number) {
        (Side::External, 1 | 2) => on_place_of(class_2a * 3, 10),
        _ => 0,
    };
    let pitch = on_place_of(class_2a * share(side, number), 1000);
    let crest = match side {
        Side::External if number == 1 => 0.090 * root,
        Side::External => 0.060 * root,
        Side::Internal => nut_crest(thread, p, root, number),
    };
    let odd = |figure, formula| {
        let is_usual = engaged == usual_engagement(thread);
        exception(thread, side, number, figure)
            .filter(|_| is_usual)
            .map_or(formula, |row| row.microinches)
    };
    Parts {
        major,
        class_2a,
        allowance: odd(Odd::Allowance, allowance),
        pitch: odd(Odd::PitchTolerance, pitch),
        crest: placed(crest, 4),
    }
}

/// Tolerance of a nut's minor diameter.
fn nut_crest(thread: &Thread, p: f64, root: f64, number: u8) -> f64 {
    let by_size = 0.05 * root + 0.03 * p / in_inches(thread.major) - 0.002;
    let most = 0.394 * p;
    if number == 3 {
        let least = if thread.pitch.scaled(25, 2) < Length::INCH {
            0.23 * p - 1.5 * p * p
        } else {
            0.120 * p
        };
        by_size.max(least).min(most)
    } else if thread.major < inch_parts(1, 4) {
        by_size.max(0.25 * p - 0.4 * p * p).min(most)
    } else if thread.pitch.scaled(4, 1) > Length::INCH {
        0.15 * p
    } else {
        0.25 * p - 0.4 * p * p
    }
}

/// Major less minor diameter of the rounded root, in trillionths of a pitch:
/// 11/8 of the triangle.
const ROUNDED_ROOT: i64 = 1_190_784_930_203;

/// A factor of the pitch in millionths of an inch.
fn part(pitch: Pitch, trillionths: i64) -> i64 {
    placed(in_inches(pitch.part(trillionths)), 6)
}

/// Major less minor diameter of the rounded root: as printed, or by the
/// formula.
fn root(pitch: Pitch) -> i64 {
    ROOTS
        .iter()
        .find(|row| is_pitch(pitch, row.half_turns))
        .map_or_else(|| part(pitch, ROUNDED_ROOT), |row| row.microinches)
}

pub(super) fn sizes(
    thread: &Thread,
    side: Side,
    class: Option<Class>,
    engaged: Option<Length>,
) -> Result<Sizes, Error> {
    let class = class.unwrap_or(match side {
        Side::External => Class::of(2, 'A'),
        Side::Internal => Class::of(2, 'B'),
    });
    let number = number(thread.form, side, class)?;
    let engaged = engaged.unwrap_or_else(|| usual_engagement(thread));
    if !engaged.is_positive() {
        return Err(Error::not_given("a length of engagement is more than 0", ""));
    }
    let Parts { major, allowance, pitch, crest, .. } = parts(thread, side, number, engaged);
    let factor = |trillionths: i64| part(thread.pitch, trillionths);
    let four = |microinches: i64| on_place(microinches, 4);
    let (major, middle, minor) = match side {
        Side::External => {
            let most = major - allowance;
            let middle = four(most - factor(thread.form.to_pitch_line()));
            let minor = four(most - root(thread.pitch));
            (
                DiameterLimits::of(length(most), length(most - crest)),
                DiameterLimits::of(length(middle), length(middle - pitch)),
                DiameterLimits { max: Some(length(minor)), min: None },
            )
        }
        Side::Internal => {
            let middle = four(major - factor(thread.form.to_pitch_line()));
            let least = four(major - factor(thread.form.to_minor()));
            let most = least + crest;
            let is_small = major < 138_000;
            let three = |microinches| {
                if is_small { microinches } else { on_place(microinches, 3) }
            };
            let most = if number == 3 { most } else { three(most) };
            (
                DiameterLimits { max: None, min: Some(length(major)) },
                DiameterLimits::of(length(middle + pitch), length(middle)),
                DiameterLimits::of(length(most), length(three(least))),
            )
        }
    };
    Ok(Sizes {
        side,
        class,
        major,
        pitch: middle,
        minor,
        deviation: length(-allowance),
        pitch_tolerance: length(pitch),
        crest_tolerance: length(crest),
        outside: (thread.series == Series::Special)
            .then_some("in no series of ASME B1.1: computed by its formulas"),
    })
}
