//! The limits of one side of a thread.

use super::{Class, Side};
use crate::size::Length;

/// The greatest and the least good size of one diameter; `None` where the
/// standard gives none.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(clippy::exhaustive_structs, reason = "a range has two ends")]
pub struct DiameterLimits {
    /// The greatest.
    pub max: Option<Length>,
    /// The least.
    pub min: Option<Length>,
}

impl DiameterLimits {
    pub(crate) const fn of(max: Length, min: Length) -> Self {
        Self { max: Some(max), min: Some(min) }
    }

    /// The tolerance; zero where a limit is missing.
    pub(super) fn width(&self) -> Length {
        let both = self.max.zip(self.min);
        both.and_then(|(max, min)| max.checked_sub(min).ok()).unwrap_or_default()
    }

    /// Is this size good, as far as limits are given?
    ///
    /// ```
    /// use fits_core::standards::thread::Thread;
    /// let minor = "M10".parse::<Thread>()?.internal(None)?.minor;
    /// assert!(minor.contains("8.5mm".parse()?) && !minor.contains("8.7mm".parse()?));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn contains(&self, size: Length) -> bool {
        self.max.is_none_or(|max| size <= max) && self.min.is_none_or(|min| size >= min)
    }
}

/// The limits of a thread in one class.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Sizes {
    /// Screw or nut.
    pub side: Side,
    /// The class asked for, or the usual one.
    pub class: Class,
    /// Major diameter. A nut's has no upper limit.
    pub major: DiameterLimits,
    /// Pitch (effective) diameter.
    pub pitch: DiameterLimits,
    /// Minor diameter. A metric screw's upper limit is of a flat root, its
    /// lower one of the root with the least radius; a Unified screw's upper
    /// limit is of the rounded root, a reference in the tables.
    pub minor: DiameterLimits,
    /// Fundamental deviation: es of a screw (zero or less), EI of a nut
    /// (zero or more). Its size is the Unified allowance.
    pub deviation: Length,
    /// Tolerance of the pitch diameter.
    pub pitch_tolerance: Length,
    /// Tolerance of the crest: of a screw's major, a nut's minor diameter.
    pub crest_tolerance: Length,
    /// Why the standard's tables do not hold this size, and what was done.
    pub outside: Option<&'static str>,
}

impl Sizes {
    /// Of the limits of major, pitch and minor diameter; tolerances are their widths.
    pub(super) fn of(
        side: Side,
        class: Class,
        [major, pitch, minor]: [DiameterLimits; 3],
        deviation: Length,
    ) -> Self {
        let crest = if side == Side::External { &major } else { &minor };
        Self {
            pitch_tolerance: pitch.width(),
            crest_tolerance: crest.width(),
            side,
            class,
            major,
            pitch,
            minor,
            deviation,
            outside: None,
        }
    }
}
