//! Wire thread inserts and square threads.
//!
//! An insert's coil stands two pitches' worth of thread further out: the hole is
//! tapped with the insert's own tap, whose pitch diameter is the thread's plus
//! 1.299 of the pitch (recalled; a forming-tap maker's minor diameters fit it).

use super::{Form, Pitch, Thread};
use crate::{
    error::Error,
    size::{Length, Limits},
    source::Known,
    speech::say,
    standards::drills::{Drill, Series},
};

/// Trillionths of the pitch to add to the nominal diameter.
const MINOR: i64 = 216_506_350_946;
const PITCH: i64 = 649_519_052_838;
const MAJOR: i64 = 1_515_544_456_623;

/// The hole for a wire thread insert.
#[derive(Clone, Copy, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct InsertHole {
    /// The bore before the insert's tap: least by the form, most by the nut's own
    /// tolerance of its minor diameter.
    pub bore: Limits,
    /// Pitch diameter of the insert's tap, the least.
    pub pitch_diameter: Length,
    /// Major diameter of the insert's tap, the least.
    pub major: Length,
    /// The drill: the one nearest a third of the way up.
    pub drill: Option<Drill>,
    /// How it is known.
    pub known: Known,
}

impl Thread {
    /// The hole and the tap for a wire thread insert that leaves this thread.
    ///
    /// # Errors
    /// Neither a metric nor a Unified thread.
    ///
    /// ```
    /// use fits_core::standards::thread::Thread;
    /// let hole = "1/4-20".parse::<Thread>()?.insert_hole()?;
    /// assert!((hole.bore.lower().millimetres() / 25.4 - 0.2608).abs() < 1e-4);
    /// assert!((hole.pitch_diameter.millimetres() / 25.4 - 0.2825).abs() < 1e-4);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn insert_hole(&self) -> Result<InsertHole, Error> {
        if !matches!(self.form(), Form::Metric | Form::Unified) {
            return Err(Error::not_listed(
                say!(
                    "wire inserts are known here for metric and Unified threads, not for {}",
                    self.to_string()
                ),
                "name one as `insert M8` or `insert 1/4-20`",
            ));
        }
        let at = |trillionths| self.major().checked_add(self.pitch().part(trillionths));
        let least = at(MINOR)?;
        let nut = self.internal(None)?;
        let bore = Limits::new(least, least.checked_add(nut.crest_tolerance)?)?;
        let third = least.checked_add(nut.crest_tolerance.checked_scale(1, 3)?)?;
        let all: &[Series] = match self.form() {
            Form::Metric => &[Series::Metric],
            _ => &[Series::Number, Series::Letter, Series::Fraction],
        };
        let inside = |drill: &Drill| bore.contains(drill.diameter());
        let distance =
            |drill: &Drill| drill.diameter().tenth_nanometres().abs_diff(third.tenth_nanometres());
        let drill = [Drill::under(third, all), Drill::over(third, all)]
            .into_iter()
            .flatten()
            .filter(inside)
            .min_by_key(distance);
        Ok(InsertHole {
            bore,
            pitch_diameter: at(PITCH)?,
            major: at(MAJOR)?,
            drill,
            known: Known::Memory,
        })
    }
}

/// A square thread as old machines have it: thread and space are half the pitch
/// wide and deep. No standard gives limits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct SquareThread {
    /// Outside diameter.
    pub major: Length,
    /// Its pitch.
    pub pitch: Pitch,
    /// Half the pitch: depth of thread, width of the tool.
    pub half_pitch: Length,
    /// Diameter at the root: the nut's bore before clearance.
    pub minor: Length,
    /// Diameter at half the depth.
    pub middle: Length,
}

impl SquareThread {
    /// Of a diameter and a pitch.
    ///
    /// # Errors
    /// The pitch leaves no core.
    ///
    /// ```
    /// use fits_core::standards::thread::{Pitch, SquareThread};
    /// let thread = SquareThread::of("1in".parse()?, Pitch::per_inch(5, 1)?)?;
    /// assert_eq!((thread.half_pitch, thread.minor), ("0.1in".parse()?, "0.8in".parse()?));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn of(major: Length, pitch: Pitch) -> Result<Self, Error> {
        let half_pitch = pitch.scaled(1, 2);
        let minor = major.checked_sub(pitch.scaled(1, 1))?;
        if minor.checked_mul(2)? < major {
            return Err(Error::not_given(
                say!(
                    "a square thread of {} pitch leaves {} of core in {}",
                    pitch.in_words(),
                    minor.max(Length::ZERO),
                    major
                ),
                "a quarter of the diameter and less is usual",
            ));
        }
        Ok(Self { major, pitch, half_pitch, minor, middle: major.checked_sub(half_pitch)? })
    }
}
