//! How a thread is fed: the slide, what its dial reads, and the steps it can be set to.

use crate::{error::Error, size::Length};

/// Which slide feeds the tool in.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[expect(
    clippy::exhaustive_enums,
    reason = "each is told, or acted on, in its own way: a new one must not pass unseen"
)]
pub enum Slide {
    /// The cross slide, straight in.
    Cross,
    /// The compound, swung so many degrees from the cross slide's way.
    Compound {
        /// Not more than the flank's half angle, else the trailing flank rubs.
        degrees: f64,
    },
}

/// What the cross slide's dial counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[expect(clippy::exhaustive_enums, reason = "a dial counts travel or twice it")]
pub enum DialReads {
    /// The change of diameter.
    Diameter,
    /// The slide's own travel.
    Radius,
}

impl DialReads {
    /// What the dial shows for a change of diameter.
    ///
    /// ```
    /// use fits_core::{Length, shop::infeed::DialReads};
    /// let cut: Length = "0.5mm".parse()?;
    /// assert_eq!(DialReads::Radius.dialled(cut), "0.25mm".parse()?);
    /// assert_eq!(DialReads::Radius.on_diameter("0.25mm".parse()?)?, cut);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    #[must_use]
    pub fn dialled(self, change: Length) -> Length {
        match self {
            Self::Diameter => change,
            Self::Radius => change.half(),
        }
    }

    /// A dial's figure as a change of diameter: of one division, what
    /// [`CutRules::stepping`](crate::shop::CutRules::stepping) takes, so that
    /// the cuts of a plan are whole divisions.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::shop::infeed::DialReads;
    /// let division = "0.02mm".parse()?;
    /// assert_eq!(DialReads::Diameter.on_diameter(division)?, division);
    /// assert_eq!(DialReads::Radius.on_diameter(division)?, "0.04mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn on_diameter(self, dialled: Length) -> Result<Length, Error> {
        match self {
            Self::Diameter => Ok(dialled),
            Self::Radius => dialled.checked_mul(2),
        }
    }
}

/// How it is to be cut.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct How {
    /// The slide that feeds.
    pub slide: Slide,
    /// What the cross slide's dial counts; a compound's dial counts its travel.
    pub dial: DialReads,
    /// The least that the dial can be set to.
    pub step: Length,
    /// Radial depth of the first cut; nothing: by the usual number of passes.
    pub first: Option<Length>,
    /// Passes without infeed at the end (common practice: two).
    pub springs: u8,
}

impl Slide {
    /// The compound half a degree short of the flank's half angle, so that the
    /// trailing flank is cleaned as it goes: 29.5 degrees for 60-degree
    /// threads (common practice, no source).
    ///
    /// ```
    /// use fits_core::shop::infeed::Slide;
    /// let usual = Slide::usual_compound(30.0);
    /// assert!(matches!(usual, Slide::Compound { degrees } if degrees < 30.0));
    /// ```
    pub fn usual_compound(half_angle_degrees: f64) -> Self {
        Self::Compound { degrees: (half_angle_degrees - 0.5).max(0.0) }
    }
}

impl How {
    /// By such a slide, dial and division; the usual number of passes, and two
    /// without infeed after them.
    ///
    /// ```
    /// use fits_core::shop::infeed::{DialReads, How, Slide};
    /// let how = How::new(Slide::Cross, DialReads::Radius, "0.02mm".parse()?);
    /// assert_eq!((how.first, how.springs), (None, 2));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub const fn new(slide: Slide, dial: DialReads, step: Length) -> Self {
        Self { slide, dial, step, first: None, springs: 2 }
    }

    pub(super) fn feed(&self, radial: Length) -> Result<Length, Error> {
        match self.slide {
            Slide::Cross => Ok(radial),
            Slide::Compound { degrees } => {
                Length::nearest_millimetres(radial.millimetres() / libm::cos(degrees.to_radians()))
            }
        }
    }

    pub(super) fn radial(&self, feed: Length) -> Result<Length, Error> {
        match self.slide {
            Slide::Cross => Ok(feed),
            Slide::Compound { degrees } => {
                Length::nearest_millimetres(feed.millimetres() * libm::cos(degrees.to_radians()))
            }
        }
    }

    pub(super) fn compound(&self, feed: Length) -> Option<Length> {
        matches!(self.slide, Slide::Compound { .. }).then_some(feed)
    }

    pub(super) fn times(&self) -> i64 {
        match (self.slide, self.dial) {
            (Slide::Cross, DialReads::Diameter) => 2,
            _ => 1,
        }
    }

    /// The dial's reading at a radial depth, in tenths of a nanometre.
    pub(super) fn dialled(&self, radial: Length) -> Result<i64, Error> {
        Ok(self.feed(radial)?.checked_mul(self.times())?.tenth_nanometres())
    }

    pub(super) fn division(&self) -> i64 {
        self.step.tenth_nanometres().max(1)
    }

    /// The slide's travel at so many divisions of its dial.
    pub(super) fn travel(&self, steps: i64) -> Result<Length, Error> {
        Length::from_tenth_nanometres(self.division())
            .checked_mul(steps)?
            .checked_scale(1, self.times().into())
    }
}
