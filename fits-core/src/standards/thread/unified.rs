//! Unified threads: ASME B1.1.
//!
//! Every limit is computed, for listed and special sizes alike, along the
//! rounding chain that reproduces the published tables: size to four places,
//! tolerance of class 2A to six, each limit to four, and minor diameters of
//! nuts from 0.138 in on to three, halves to even (the greatest of 3B to four).
//! Odd published values stand in `tests/thread_published.rs`.

use super::{
    Class, Designation, Form, Nominal, Pitch, Series, Side, Sizes, Spread, Thread,
    unified_table::{CONSTANT, EXCEPTIONS, ROOTS, SERIES, SOURCES},
};
use crate::{
    error::{Error, Kind},
    size::Length,
    source::{Known, Provenance},
};

/// A size of UNC, UNF or UNEF.
#[derive(Debug)]
pub(super) struct Listed {
    pub(super) major: Length,
    /// Turns per inch, in halves.
    pub(super) half_turns: u16,
    pub(super) series: Series,
    pub(super) source: u8,
}

/// A constant-pitch series.
#[derive(Debug)]
pub(super) struct Constant {
    pub(super) turns: u16,
    pub(super) from: Length,
    pub(super) up_to: Length,
    pub(super) source: u8,
}

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

pub(super) fn provenance(source: u8) -> Provenance {
    const NOTHING: Provenance = Provenance { known: Known::Memory, text: "" };
    SOURCES.get(usize::from(source)).copied().unwrap_or(NOTHING)
}

/// A millionth of an inch.
const MICROINCH: i64 = Length::INCH.tenth_nanometres() / 1_000_000;

/// The graded series of a diameter.
fn graded(major: Length) -> &'static [Listed] {
    let from = SERIES.partition_point(|row| row.major < major);
    let to = SERIES.partition_point(|row| row.major <= major);
    SERIES.get(from..to).unwrap_or_default()
}

fn pitch_of(row: &Listed) -> Result<Pitch, Error> {
    if row.half_turns % 2 == 0 {
        Pitch::per_inch((row.half_turns / 2).into(), 1)
    } else {
        Pitch::per_inch(row.half_turns.into(), 2)
    }
}

/// The row of UNC, UNF or UNEF with this size and pitch.
pub(super) fn listed(major: Length, pitch: Pitch) -> Option<&'static Listed> {
    graded(major).iter().find(|row| is_pitch(pitch, row.half_turns))
}

/// Is the pitch 2/half_turns in?
fn is_pitch(pitch: Pitch, half_turns: u16) -> bool {
    pitch.is_per_inch() && pitch.scaled(half_turns.into(), 2) == Length::INCH
}

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

/// The constant-pitch series with this size and pitch.
pub(super) fn constant(major: Length, pitch: Pitch) -> Option<&'static Constant> {
    let is_size = is_primary(major) || is_secondary(major);
    CONSTANT.iter().find(|row| {
        is_size
            && row.from <= major
            && major <= row.up_to
            && pitch.scaled(row.turns.into(), 1) == Length::INCH
    })
}

/// Whole multiples of a part of an inch?
fn is_in(major: Length, parts: i64) -> bool {
    major.tenth_nanometres() % (Length::INCH.tenth_nanometres() / parts) == 0
}

const fn inch_parts(numerator: i64, denominator: i64) -> Length {
    Length::from_tenth_nanometres(Length::INCH.tenth_nanometres() / denominator * numerator)
}

/// The sizes that the tables prefer.
fn is_primary(major: Length) -> bool {
    let up_to = |numerator, denominator| major <= inch_parts(numerator, denominator);
    if !up_to(6, 1) || !major.is_positive() {
        false
    } else if !up_to(4, 1) {
        is_in(major, 2)
    } else if !up_to(3, 2) {
        is_in(major, 4)
    } else if !up_to(5, 8) {
        is_in(major, 8)
    } else if !up_to(1, 4) || up_to(1, 4) && major == inch_parts(1, 4) {
        is_in(major, 16)
    } else {
        screw_number(major).is_some_and(|number| !matches!(number, 1 | 12))
    }
}

/// The number of a number size.
pub(super) fn screw_number(major: Length) -> Option<u8> {
    [0, 1, 2, 3, 4, 5, 6, 8, 10, 12]
        .into_iter()
        .find(|number| Nominal::Number(*number).length().is_ok_and(|length| length == major))
}

/// The other sizes of the tables.
fn is_secondary(major: Length) -> bool {
    if is_primary(major) || major > inch_parts(6, 1) {
        return false;
    }
    if major > inch_parts(2, 1) {
        is_in(major, 8)
    } else if major > inch_parts(1, 4) {
        is_in(major, 16)
    } else {
        screw_number(major).is_some()
    }
}

/// The diameter that the tolerance is of: above 2 in a secondary size carries
/// that of the next primary one (found by fitting the published limits: 2-3/8
/// as 2-1/2, 5-3/4 as 6; no text read says so).
pub(super) fn tolerance_diameter(major: Length) -> Length {
    if !is_secondary(major) || major <= inch_parts(2, 1) {
        return major;
    }
    // Six inches are primary, so the search ends.
    (1..=96)
        .map(|sixteenths| inch_parts(sixteenths, 16))
        .find(|size| *size > major && is_primary(*size))
        .unwrap_or(major)
}

/// What pitches a size is listed with, in words.
pub(super) fn pitches(major: Length, name: Nominal) -> String {
    let rows: Vec<String> = graded(major)
        .iter()
        .filter_map(|row| Some((row, pitch_of(row).ok()?)))
        .map(|(row, pitch)| {
            format!("`{name}-{}` {}", pitch.figure(), symbol(Form::Unified, row.series))
        })
        .collect();
    if rows.is_empty() {
        format!("give the turns per inch, as `{name}-12`")
    } else {
        format!("listed: {}", rows.join(", "))
    }
}

/// The letters of a series.
pub(super) const fn symbol(form: Form, series: Series) -> &'static str {
    match (form, series) {
        (Form::UnifiedRounded, Series::Coarse) => "UNRC",
        (Form::UnifiedRounded, Series::Fine) => "UNRF",
        (Form::UnifiedRounded, Series::ExtraFine) => "UNREF",
        (Form::UnifiedRounded, Series::Special) => "UNRS",
        (Form::UnifiedRounded, _) => "UNR",
        (_, Series::Coarse) => "UNC",
        (_, Series::Fine) => "UNF",
        (_, Series::ExtraFine) => "UNEF",
        (_, Series::Special) => "UNS",
        _ => "UN",
    }
}

impl Thread {
    /// A Unified thread of any size and pitch; a special one where no series
    /// has it.
    ///
    /// ```
    /// use fits_core::standards::thread::{Nominal, Pitch, Series, Thread};
    /// let quarter = Nominal::Decimal("0.25in".parse()?);
    /// let thread = Thread::unified(quarter, Pitch::per_inch(19, 1)?)?;
    /// assert_eq!(thread.series(), Series::Special);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    ///
    /// # Errors
    /// The pitch is above half the diameter or finer than 100 turns per inch,
    /// or the diameter above 20 in.
    pub fn unified(nominal: Nominal, pitch: Pitch) -> Result<Self, Error> {
        let major = nominal.length()?;
        let refuse =
            |why: String| Err(Error::new(Kind::NotGiven { why, advice: pitches(major, nominal) }));
        if !major.is_positive() || major > inch_parts(20, 1) {
            return refuse(format!("{nominal} is no Unified thread: they end at 20 in"));
        }
        if pitch.scaled(2, 1) > major {
            return refuse(format!("a pitch of {pitch} leaves no core in {nominal} in"));
        }
        if pitch.scaled(100, 1) < Length::INCH {
            return refuse(format!("{pitch} is finer than any Unified thread"));
        }
        let series = match (listed(major, pitch), constant(major, pitch)) {
            (Some(row), _) => row.series,
            (None, Some(_)) => Series::Constant,
            (None, None) => Series::Special,
        };
        Ok(Self {
            form: Form::Unified,
            nominal,
            major,
            pitch,
            starts: 1,
            left: false,
            series,
            is_pitch_assumed: false,
        })
    }
}

/// The thread that an inch designation names.
pub(super) fn resolve(designation: &Designation) -> Result<Thread, Error> {
    let (nominal, place) = (designation.nominal.value, designation.nominal.at);
    if let Nominal::Number(number) = nominal {
        if number > 12 {
            let why = format!("there is no screw size #{number}: numbers run from #0 to #12");
            let advice = "write larger sizes in inches, as `1/4-20`".into();
            return Err(Error::new(Kind::NotListed { why, advice }).at(place.0, place.1));
        }
    }
    let major = nominal.length().map_err(|error| error.at(place.0, place.1))?;
    let said = designation.series.map(|series| series.value);
    let thread = if let Some(pitch) = designation.pitch {
        Thread::unified(nominal, pitch.value).map_err(|error| error.at(pitch.at.0, pitch.at.1))?
    } else {
        let wanted = said.unwrap_or(Series::Coarse);
        let row = graded(major).iter().find(|row| row.series == wanted);
        let Some(row) = row else {
            let why = match wanted {
                Series::Constant | Series::Special => {
                    format!("{nominal} {} has no pitch", symbol(designation.form, wanted))
                }
                _ => format!("{nominal} is not listed in {}", symbol(designation.form, wanted)),
            };
            let advice = pitches(major, nominal);
            return Err(Error::new(Kind::NotGiven { why, advice }).at(place.0, place.1));
        };
        let thread = Thread::unified(nominal, pitch_of(row)?)?;
        Thread { is_pitch_assumed: said.is_none(), ..thread }
    };
    let thread = Thread { form: designation.form, ..thread };
    let Some(said) = designation.series else { return Ok(thread) };
    let is_so = said.value == thread.series
        // UN covers them all; UNS may be said of a size of one's own choice.
        || said.value == Series::Constant && constant(major, thread.pitch).is_some()
        || said.value == Series::Constant && thread.series == Series::Special;
    if is_so {
        let is_constant = said.value == Series::Constant && thread.series != Series::Special;
        let series = if is_constant { Series::Constant } else { thread.series };
        return Ok(Thread { series, ..thread });
    }
    let why = match thread.series {
        Series::Special => {
            format!("{nominal}-{} is in no series", thread.pitch.figure())
        }
        series => format!(
            "{nominal}-{} is {}, not {}",
            thread.pitch.figure(),
            symbol(thread.form, series),
            symbol(thread.form, said.value)
        ),
    };
    let advice = pitches(major, nominal);
    Err(Error::new(Kind::NotGiven { why, advice }).at(said.at.0, said.at.1))
}

/// The number of a class on this side.
fn number(form: Form, side: Side, class: Class) -> Result<u8, Error> {
    let (letter, advice) = match side {
        Side::External => ('A', "screws take `1A`, `2A` or `3A`"),
        Side::Internal => ('B', "nuts take `1B`, `2B` or `3B`"),
    };
    if form == Form::UnifiedRounded && side == Side::Internal {
        return Err(Error::new(Kind::NotGiven {
            why: "UNR is a screw's form: its nut is UN".into(),
            advice: "leave out the R for the nut".into(),
        }));
    }
    match class {
        Class::Zones { pitch, crest }
            if pitch == crest && pitch.position == letter && (1..=3).contains(&pitch.grade) =>
        {
            Ok(pitch.grade)
        }
        _ => Err(Error::new(Kind::NotGiven {
            why: format!("no {} Unified thread has class {class}", side.word()),
            advice: advice.into(),
        })),
    }
}

/// Is it a class of the standard?
pub(super) fn check(form: Form, class: Class) -> Result<(), Error> {
    match class.side(form) {
        Some(side) => number(form, side, class).map(|_| ()),
        None => Err(Error::new(Kind::NotGiven {
            why: format!("a Unified thread has no class {class}"),
            advice: "screws take `1A`, `2A` or `3A`, nuts `1B`, `2B` or `3B`".into(),
        })),
    }
}

/// Is the engagement usually the diameter, not nine pitches?
fn is_engaged_by_diameter(thread: &Thread) -> bool {
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

fn length(microinches: i64) -> Length {
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
        Side::Internal => nut_crest(p, root, in_inches(thread.major), number),
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
fn nut_crest(p: f64, root: f64, diameter: f64, number: u8) -> f64 {
    let turns = 1.0 / p;
    let by_size = 0.05 * root + 0.03 * p / diameter - 0.002;
    let most = 0.394 * p;
    if number == 3 {
        let least = if turns > 12.5 { 0.23 * p - 1.5 * p * p } else { 0.120 * p };
        by_size.max(least).min(most)
    } else if diameter < 0.25 {
        by_size.max(0.25 * p - 0.4 * p * p).min(most)
    } else if turns < 3.999 {
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
        return Err(Error::new(Kind::NotGiven {
            why: "a length of engagement is more than nought".into(),
            advice: String::new(),
        }));
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
                Spread::of(length(most), length(most - crest)),
                Spread::of(length(middle), length(middle - pitch)),
                Spread { max: Some(length(minor)), min: None },
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
                Spread { max: None, min: Some(length(major)) },
                Spread::of(length(middle + pitch), length(middle)),
                Spread::of(length(most), length(three(least))),
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
