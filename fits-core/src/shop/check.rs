//! A reading against limits: cut more, good, or over.
//!
//! The reading is taken as it stands; [`super::verdict`] knows its uncertainty.

#[cfg(feature = "serde")]
use serde::{Deserialize, Serialize};

use crate::{
    error::Error,
    size::{Length, Limits},
    standards::iso286::Feature,
};

/// What a reading says about the part.
///
/// ```
/// use fits_core::shop::Verdict;
/// assert_eq!(Verdict::CutMore.word(), "cut more");
/// ```
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(Serialize, Deserialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "lowercase"))]
#[expect(
    clippy::exhaustive_enums,
    reason = "each is told, or acted on, in its own way: a new one must not pass unseen"
)]
pub enum Verdict {
    /// There is metal left to take off.
    #[cfg_attr(feature = "serde", serde(rename = "cut more"))]
    CutMore,
    /// Inside the limits: stop.
    Good,
    /// Past the limits: too much is off.
    Over,
    /// So near a limit that the reading's uncertainty decides nothing.
    #[cfg_attr(feature = "serde", serde(rename = "too close to call"))]
    TooClose,
}

impl Verdict {
    /// In words, as JSON has it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::CutMore => "cut more",
            Self::Good => "good",
            Self::Over => "over",
            Self::TooClose => "too close to call",
        }
    }
}

/// A reading judged. Each figure is the metal still to come off, as a change
/// of diameter: positive while there is some, negative when it is past.
///
/// ```
/// use fits_core::{Length, shop::{Reading, Verdict}, standards::iso286::{Class, Feature}};
/// let class: Class = "H7".parse()?;
/// let hole = class.limits(Length::from_millimetres(20)?)?;
/// let reading = Reading::judge(Feature::Hole, hole, "19.982mm".parse()?)?;
/// assert_eq!(reading.verdict, Verdict::CutMore);
/// assert_eq!(reading.to_aim.to_string(), "0.0285 mm");
/// assert_eq!(reading.to_first_limit.to_string(), "0.018 mm");
/// assert_eq!(reading.to_last_limit.to_string(), "0.039 mm");
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Reading {
    /// Cut more, good or over.
    pub verdict: Verdict,
    /// To the middle of the limits.
    pub to_aim: Length,
    /// To the limit met first: a hole's lower, a shaft's upper.
    pub to_first_limit: Length,
    /// To the limit that must not be passed: a hole's upper, a shaft's lower.
    pub to_last_limit: Length,
}

impl Reading {
    /// Judges a size read on a part.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::{shop::{Reading, Verdict}, standards::iso286::{Class, Feature}};
    /// let shaft = "h6".parse::<Class>()?.limits("20mm".parse()?)?;
    /// let read = Reading::judge(Feature::Shaft, shaft, "20.012mm".parse()?)?;
    /// assert_eq!((read.verdict, read.to_first_limit), (Verdict::CutMore, "0.012mm".parse()?));
    /// let read = Reading::judge(Feature::Shaft, shaft, "19.98mm".parse()?)?;
    /// assert_eq!(read.verdict, Verdict::Over);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn judge(feature: Feature, limits: Limits, size: Length) -> Result<Self, Error> {
        let left = |target: Length| match feature {
            Feature::Hole => target.checked_sub(size),
            Feature::Shaft => size.checked_sub(target),
        };
        let (first, last) = match feature {
            Feature::Hole => (limits.lower(), limits.upper()),
            Feature::Shaft => (limits.upper(), limits.lower()),
        };
        let (to_first_limit, to_last_limit) = (left(first)?, left(last)?);
        let verdict = if to_first_limit.is_positive() {
            Verdict::CutMore
        } else if to_last_limit.is_negative() {
            Verdict::Over
        } else {
            Verdict::Good
        };
        Ok(Self { verdict, to_aim: left(limits.middle())?, to_first_limit, to_last_limit })
    }
}
