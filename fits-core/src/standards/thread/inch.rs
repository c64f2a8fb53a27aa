//! Figures of the inch systems: listed sizes, and rounding to the last place.
//!
//! Limits of ASME B1.5 and BS 84 stand to 0.0001 in, halves upward.

use super::{Pitch, Series};
use crate::{error::Error, size::Length, source::Provenance};

/// A size in a list of inch threads.
#[derive(Debug)]
pub(super) struct Listed {
    pub(super) major: Length,
    /// Turns per inch: the first over the second.
    pub(super) turns: (i64, i64),
    pub(super) series: Series,
    pub(super) from: Provenance,
}

impl Listed {
    pub(super) fn pitch(&self) -> Result<Pitch, Error> {
        Pitch::per_inch(self.turns.0, self.turns.1)
    }

    /// The entry of a size and pitch.
    pub(super) fn find(
        list: &'static [Self],
        major: Length,
        pitch: Pitch,
    ) -> Option<&'static Self> {
        list.iter().find(|entry| entry.major == major && entry.pitch() == Ok(pitch))
    }
}

/// In inches, the nearest floating-point number.
pub(super) fn inches(length: Length) -> f64 {
    length.millimetres() / 25.4
}

/// The nearest 0.0001 in, halves upward.
#[allow(clippy::cast_possible_truncation, reason = "whole, and no thread has 10^9 in")]
pub(super) fn to_tenth(inches: f64) -> Length {
    // A half that floating point holds a little low is still a half.
    let tenths = libm::floor(inches * 1e4 + 0.5 + 1e-6);
    Length::TENTH.checked_mul(tenths as i64).unwrap_or(Length::MAX)
}
