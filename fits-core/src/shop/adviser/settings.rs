//! What the advice has to keep to: the owner's risk, the dial and the tool.

use super::Error;
use crate::size::Length;

/// Set over so far from the lathe's axis, the top slide moves the tool a tenth of
/// its travel: its sine is 0.1.
pub const TOP_SLIDE_DEGREES: f64 = 5.739;
/// The travel for one part of depth.
const TENTH: i64 = 10;
/// Standard deviation of that angle as set by the scale, in degrees (common
/// practice, no source).
const ANGLE_SD: f64 = 0.25;
/// More parts of a division than this cannot be told apart by eye.
const MOST_PARTS: i64 = 20;
/// A division split by eye, or one of the top slide, is set so well, in
/// divisions (common practice, no source).
const SPLIT_SD: f64 = 0.05;
/// A division is split where it is more than this share of the tolerance.
const COARSE: f64 = 0.125;

/// How far a division of the dial may be split by eye.
///
/// ```
/// use fits_core::shop::adviser::Split;
/// assert_eq!([Split::Whole, Split::Half, Split::Quarter].map(Split::parts), [1, 2, 4]);
/// assert_eq!(Split::Half.parts(), 2);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Split {
    /// Whole divisions alone.
    Whole,
    /// Halves.
    Half,
    /// Quarters.
    Quarter,
}

impl Split {
    /// Parts of a division.
    pub const fn parts(self) -> i64 {
        match self {
            Self::Whole => 1,
            Self::Half => 2,
            Self::Quarter => 4,
        }
    }
}

/// What the advice has to keep to.
///
/// ```
/// use fits_core::{Length, shop::adviser::Settings};
/// let settings = Settings::default()
///     .risk(0.02)
///     .dial_division("1 thou".parse()?)
///     .dial_turn(Some("0.1in".parse()?))
///     .least_chip("1 thou".parse()?)
///     .top_slide(Some("1 thou".parse()?));
/// assert!(settings.check().is_ok());
/// // A turn is not smaller than its graduation.
/// assert!(settings.dial_turn(Some("1 tenth".parse()?)).check().is_err());
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Settings {
    /// The most that the chance of overshooting may be after a cut, 0 to 1. It
    /// sets what scrap costs, too: at 0.05 three times an unfinished part.
    pub risk: f64,
    /// A division of the dial, as a change of diameter.
    pub step: Length,
    /// The least cut that a tool takes cleanly, on the diameter.
    pub least_cut: Length,
    /// The most that one pass takes, on the diameter.
    pub most_cut: Length,
    /// A whole turn of the dial, as a change of diameter, where it is known.
    pub dial_turn: Option<Length>,
    /// How far a division may be split near size, where it is coarse against the
    /// tolerance.
    pub split: Split,
    /// A division of the top slide, as its own travel, where the lathe has one
    /// that is set over by [`TOP_SLIDE_DEGREES`] near size. A boring head has none.
    pub top_slide: Option<Length>,
}

impl Default for Settings {
    /// One chance in twenty; divisions and least cut of 0.01 mm; at most
    /// 1.5 mm a pass; quarters of a division; no top slide. Common
    /// practice, no source.
    fn default() -> Self {
        let hundredth = Length::from_tenth_nanometres(100_000);
        Self {
            risk: 0.05,
            step: hundredth,
            least_cut: hundredth,
            most_cut: Length::from_tenth_nanometres(15_000_000),
            dial_turn: None,
            split: Split::Quarter,
            top_slide: None,
        }
    }
}

impl Settings {
    /// With another limit of risk.
    ///
    /// ```
    /// use fits_core::shop::adviser::Settings;
    /// assert_eq!(Settings::default().risk(0.01).risk, 0.01);
    /// ```
    #[must_use]
    pub const fn risk(self, risk: f64) -> Self {
        Self { risk, ..self }
    }

    /// What a scrapped part costs, where a good part is worth one and an
    /// unfinished part nothing. At the usual risk it costs two: scrap loses
    /// three times what an unfinished part loses.
    pub(super) fn scrap(&self) -> f64 {
        (0.1 / self.risk).clamp(0.5, 20.0)
    }

    /// With another division of the dial, as a change of diameter. The most
    /// that a pass takes is one division at least.
    ///
    /// ```
    /// use fits_core::shop::adviser::Settings;
    /// let step = "0.05mm".parse()?;
    /// assert_eq!(Settings::default().dial_division(step).step, step);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    #[must_use]
    pub fn dial_division(self, step: Length) -> Self {
        Self { step, most_cut: self.most_cut.max(step), ..self }
    }

    /// With what a whole turn of the dial changes the diameter by.
    ///
    /// ```
    /// use fits_core::shop::adviser::Settings;
    /// let turn = Some("4mm".parse()?);
    /// assert_eq!(Settings::default().dial_turn(turn).dial_turn, turn);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    #[must_use]
    pub const fn dial_turn(self, turn: Option<Length>) -> Self {
        Self { dial_turn: turn, ..self }
    }

    /// With the least that a tool cuts rather than rubs, on the diameter
    /// ([`least_chip`](super::super::machining::least_chip) has what is common).
    ///
    /// ```
    /// use fits_core::shop::adviser::Settings;
    /// let least = "0.04mm".parse()?;
    /// assert_eq!(Settings::default().least_chip(least).least_cut, least);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    #[must_use]
    pub fn least_chip(self, least: Length) -> Self {
        Self { least_cut: least, most_cut: self.most_cut.max(least), ..self }
    }

    /// With a top slide of such divisions, or without one.
    ///
    /// ```
    /// use fits_core::shop::adviser::Settings;
    /// let division = Some("0.02mm".parse()?);
    /// assert_eq!(Settings::default().top_slide(division).top_slide, division);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    #[must_use]
    pub const fn top_slide(self, division: Option<Length>) -> Self {
        Self { top_slide: division, ..self }
    }

    /// In how many parts a division is dialled where the tolerance is so: by the
    /// top slide, where there is one, else by eye. One where it is fine enough.
    ///
    /// ```
    /// use fits_core::shop::adviser::Settings;
    /// // A division of 0.05 mm is coarse for 0.021 mm.
    /// let coarse = Settings::default().dial_division("0.05mm".parse()?);
    /// assert!(coarse.parts("0.021mm".parse()?) > 1);
    /// assert_eq!(Settings::default().parts("0.1mm".parse()?), 1);
    /// assert!(coarse.risk(2.0).check().is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn parts(&self, tolerance: Length) -> i64 {
        if self.step.in_micrometres() <= COARSE * tolerance.in_micrometres() {
            return Split::Whole.parts();
        }
        let count = |division: Length| {
            // A division of the top slide moves the tool a tenth of it.
            let on_diameter = 2 * division.tenth_nanometres() / TENTH;
            self.step.tenth_nanometres().checked_div(on_diameter)
        };
        match self.top_slide.and_then(count) {
            Some(parts) => parts.clamp(self.split.parts(), MOST_PARTS),
            None => self.split.parts(),
        }
    }

    /// What the top slide is to be dialled for a change of diameter: five times
    /// as much, as its travel moves the tool a tenth, and that counts twice.
    /// Nothing where the cross slide's divisions reach it, or there is no top
    /// slide.
    ///
    /// ```
    /// use fits_core::{Length, shop::adviser::Settings};
    /// let settings = Settings::default().top_slide(Some("0.01mm".parse()?));
    /// assert_eq!(settings.on_top_slide("0.006mm".parse()?), Some("0.03mm".parse()?));
    /// assert_eq!(settings.on_top_slide("0.02mm".parse()?), None);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn on_top_slide(&self, change: Length) -> Option<Length> {
        let past = change.tenth_nanometres().checked_rem(self.step.tenth_nanometres())?;
        if past == 0 || self.top_slide.is_none() {
            return None;
        }
        change.checked_scale(TENTH.into(), 2).ok()
    }

    /// How well a part of a division is set, in micrometres, for a cut as large
    /// as half the tolerance.
    pub(crate) fn setting(&self, tolerance: Length) -> f64 {
        #[allow(clippy::cast_precision_loss, reason = "a hundred at most")]
        let parts = self.parts(tolerance) as f64;
        let division = self.step.in_micrometres();
        if parts <= 1.0 {
            0.0
        } else if self.top_slide.is_some() {
            let angle = ANGLE_SD / TOP_SLIDE_DEGREES * tolerance.in_micrometres() / 2.0;
            libm::hypot(SPLIT_SD * division / parts, angle)
        } else {
            SPLIT_SD * division
        }
    }

    /// Are they sensible?
    ///
    /// # Errors
    /// A risk outside 0 to 1, no cut that can be dialled, or a turn smaller
    /// than a division.
    pub fn check(&self) -> Result<(), Error> {
        if !(self.risk > 0.0 && self.risk < 1.0) {
            return Err(Error::not_listed("the risk has no sense", "it lies between 0 and 1"));
        }
        if !self.step.is_positive()
            || self.least_cut.is_negative()
            || self.most_cut < self.least_cut
            || self.most_cut < self.step
        {
            return Err(Error::not_listed(
                "no cut can be dialled",
                "the step is more than 0, and the most a pass takes is more than the least",
            ));
        }
        if self.dial_turn.is_some_and(|turn| turn < self.step) {
            return Err(Error::not_listed(
                "a turn of the dial is smaller than one division",
                "give what a whole turn changes the diameter by",
            ));
        }
        Ok(())
    }
}
