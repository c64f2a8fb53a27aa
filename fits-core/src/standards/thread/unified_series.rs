//! Unified sizes and series: ASME B1.1, UNC, UNF, UNEF and the constant-pitch
//! series, and special sizes of any diameter and pitch.

use super::{
    Designation, Form, Nominal, Pitch, Series, Thread,
    unified_table::{CONSTANT, SERIES, SOURCES},
};
use crate::{
    error::Error,
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

pub(super) fn provenance(source: u8) -> Provenance {
    const NOTHING: Provenance = Provenance { known: Known::Memory, text: "" };
    SOURCES.get(usize::from(source)).copied().unwrap_or(NOTHING)
}

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

/// A pitch of a size that UNC has not: the first that it is listed with.
pub(super) fn first_pitch(major: Length) -> Option<Pitch> {
    pitch_of(graded(major).first()?).ok()
}

/// The row of UNC, UNF or UNEF with this size and pitch.
pub(super) fn listed(major: Length, pitch: Pitch) -> Option<&'static Listed> {
    graded(major).iter().find(|row| is_pitch(pitch, row.half_turns))
}

/// Is the pitch `2/half_turns` in?
pub(super) fn is_pitch(pitch: Pitch, half_turns: u16) -> bool {
    pitch.is_turns(half_turns.into(), 2)
}

/// The constant-pitch series with this size and pitch.
pub(super) fn constant(major: Length, pitch: Pitch) -> Option<&'static Constant> {
    let is_size = is_primary(major) || is_secondary(major);
    CONSTANT.iter().find(|row| {
        is_size && row.from <= major && major <= row.up_to && pitch.is_turns(row.turns.into(), 1)
    })
}

/// Whole multiples of a part of an inch?
fn is_in(major: Length, parts: i64) -> bool {
    major.tenth_nanometres() % (Length::INCH.tenth_nanometres() / parts) == 0
}

pub(super) const fn inch_parts(numerator: i64, denominator: i64) -> Length {
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
    } else if !up_to(1, 4) || major == inch_parts(1, 4) {
        is_in(major, 16)
    } else {
        is_number_size(major)
    }
}

/// The screw numbers.
const NUMBERS: [u8; 10] = [0, 1, 2, 3, 4, 5, 6, 8, 10, 12];

/// Is there such a screw number?
pub(super) fn is_screw_number(number: u8) -> bool {
    NUMBERS.contains(&number)
}

/// Is it the size of a screw number?
fn is_number_size(major: Length) -> bool {
    NUMBERS
        .into_iter()
        .any(|number| Nominal::Number(number).length().is_ok_and(|length| length == major))
}

/// The other sizes of the tables.
fn is_secondary(major: Length) -> bool {
    if is_primary(major) || major > inch_parts(6, 1) {
        return false;
    }
    let parts = if major > inch_parts(2, 1) { 8 } else { 16 };
    major > inch_parts(1, 4) && is_in(major, parts)
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
        // A pitch that such a size can have: a quarter of it or less.
        let turns = [4, 8, 12, 16, 20, 28, 32, 40, 48, 64]
            .into_iter()
            .find(|turns| major.checked_mul(*turns).is_ok_and(|all| all >= inch_parts(4, 1)));
        match turns {
            Some(turns) if major <= inch_parts(20, 1) => {
                format!("give the turns per inch, as `{name}-{turns}`")
            }
            _ => "sizes are written in inches, as `3/8-16`".into(),
        }
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
        let (major, pitch) = (nominal.length()?, pitch.said_per_inch());
        let refuse = |why: String| Err(Error::not_given(why, pitches(major, nominal)));
        if !major.is_positive() || major > inch_parts(20, 1) {
            return refuse(format!("{nominal} is not a Unified thread: they end at 20 in"));
        }
        if pitch.scaled(2, 1) > major {
            let name = match nominal {
                Nominal::Number(number) => format!("#{number}"),
                size => format!("{size} in"),
            };
            return refuse(format!("a pitch of {pitch} leaves no core in {name}"));
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
        if !is_screw_number(number) {
            let why = format!("there is no screw size #{number}: #0 to #6, #8, #10 and #12");
            let advice = "write other sizes in inches, as `1/4-20`";
            return Err(Error::not_listed(why, advice).at(place.0, place.1));
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
            return Err(Error::not_given(why, advice).at(place.0, place.1));
        };
        let thread = Thread::unified(nominal, pitch_of(row)?)?;
        Thread { is_pitch_assumed: said.is_none(), ..thread }
    };
    let thread = Thread { form: designation.form, ..thread };
    let Some(said) = designation.series else { return Ok(thread) };
    let is_so = said.value == thread.series
        // UN covers them all; UNS may be said of a size of one's own choice.
        || said.value == Series::Constant;
    if is_so {
        // A coarse, fine or extra fine pitch called UN keeps its own series and limits: the
        // tables print a size and pitch once, by those letters.
        return Ok(thread);
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
    let advice = match (thread.series, said.value) {
        // The same thread by its own letters.
        (Series::Special, _) => {
            format!("{}, or of its own: `{thread}`", pitches(major, nominal))
        }
        _ => pitches(major, nominal),
    };
    Err(Error::not_given(why, advice).at(said.at.0, said.at.1))
}
