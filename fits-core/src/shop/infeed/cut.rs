//! What a threading tool has to cut: the thread's figures, the tool's nose, the
//! depth that they give.

use crate::{error::Error, size::Length, standards::iso286::Feature};

/// The tip of the threading tool.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[expect(
    clippy::exhaustive_enums,
    reason = "each is told, or acted on, in its own way: a new one must not pass unseen"
)]
pub enum Nose {
    /// Ground flat to a width.
    Flat(Length),
    /// Rounded to a radius.
    Radius(Length),
    /// Whatever reaches this diameter when the pitch diameter is right: the
    /// minor diameter outside, the major inside.
    Reaches(Length),
}

/// A thread to cut: plain figures, any symmetric form.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is built whole: what is new must be said by whoever builds one"
)]
pub struct ThreadCut {
    /// Hole: inside. Shaft: outside.
    pub feature: Feature,
    /// Crest to crest, not the lead.
    pub pitch: Length,
    /// Of one flank from square across the axis.
    pub half_angle_degrees: f64,
    /// What the blank measures: the major diameter outside, the minor inside;
    /// the middle of its limits unless it is there already.
    pub blank: Length,
    /// The pitch diameter to end at.
    pub pitch_diameter: Length,
    /// The tool's tip.
    pub nose: Nose,
}

impl ThreadCut {
    /// The nose that its form commonly has: 60 degrees P/8 flat (American
    /// National form), 55 degrees radius 0.137329 P (BS 84), 47.5 degrees
    /// 0.1808 P (BS 93). The power threads have none: give the root diameter.
    ///
    /// # Errors
    /// A form with no common nose, or out of range.
    ///
    /// ```
    /// use fits_core::shop::infeed::{Nose, ThreadCut};
    /// assert_eq!(ThreadCut::common_nose("1.5mm".parse()?, 30.0)?, Nose::Flat("0.1875mm".parse()?));
    /// // 0.137329 of the pitch.
    /// assert_eq!(ThreadCut::common_nose("1mm".parse()?, 27.5)?, Nose::Radius("0.137329mm".parse()?));
    /// assert!(ThreadCut::common_nose("1mm".parse()?, 14.5).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn common_nose(pitch: Length, half_angle_degrees: f64) -> Result<Nose, Error> {
        let near = |angle: f64| (half_angle_degrees - angle).abs() < 1e-6;
        if near(30.0) {
            Ok(Nose::Flat(pitch.checked_scale(1, 8)?))
        } else if near(27.5) {
            Ok(Nose::Radius(pitch.checked_scale(137_329, 1_000_000)?))
        } else if near(23.75) {
            Ok(Nose::Radius(pitch.checked_scale(1_808, 10_000)?))
        } else {
            Err(Error::out_of_reach(
                format!("no usual tool nose is known for flanks at {half_angle_degrees} degrees"),
                "give the root diameter or the nose".to_owned(),
            ))
        }
    }

    /// Radial depth from the blank.
    ///
    /// # Errors
    /// A nose too wide for the thread, a blank on the wrong side of the pitch
    /// diameter, a half angle that is none.
    ///
    /// ```
    /// use fits_core::{shop::infeed::ThreadCut, standards::thread::Thread};
    /// let thread: Thread = "M10".parse()?;
    /// let cut = ThreadCut::of_thread(&thread, &thread.external(None)?, None)?;
    /// // Less than a sharp V, more than the thread's own height would be on a nut.
    /// assert!(cut.depth()? > "0.8mm".parse()? && cut.depth()? < "1.3mm".parse()?);
    /// assert!(ThreadCut::common_nose("1.5mm".parse()?, 30.0).is_ok());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn depth(&self) -> Result<Length, Error> {
        if !(5.0..=60.0).contains(&self.half_angle_degrees) || !self.pitch.is_positive() {
            return Err(Error::out_of_reach(
                format!(
                    "flanks at {} degrees with a pitch of {} are not a thread",
                    self.half_angle_degrees, self.pitch
                ),
                "half angles from 5 to 60 degrees".to_owned(),
            ));
        }
        let metal = match self.feature {
            Feature::Shaft => self.blank.checked_sub(self.pitch_diameter)?,
            Feature::Hole => self.pitch_diameter.checked_sub(self.blank)?,
        };
        if !metal.is_positive() {
            return Err(Error::out_of_reach(
                format!(
                    "a blank of {} leaves no thread at a pitch diameter of {}",
                    self.blank, self.pitch_diameter
                ),
                match self.feature {
                    Feature::Shaft => "the blank is larger than the pitch diameter".to_owned(),
                    Feature::Hole => "the bore is smaller than the pitch diameter".to_owned(),
                },
            ));
        }
        let (sine, cosine) = libm::sincos(self.half_angle_degrees.to_radians());
        let (cot, pitch) = (cosine / sine, self.pitch.millimetres());
        let below = match self.nose {
            Nose::Flat(flat) => 0.25 * pitch * cot - 0.5 * flat.millimetres() * cot,
            Nose::Radius(radius) => 0.25 * pitch * cot - radius.millimetres() * (1.0 / sine - 1.0),
            Nose::Reaches(root) => {
                let off = match self.feature {
                    Feature::Shaft => self.pitch_diameter.checked_sub(root)?,
                    Feature::Hole => root.checked_sub(self.pitch_diameter)?,
                };
                off.half().millimetres()
            }
        };
        let given = match self.nose {
            Nose::Flat(size) | Nose::Radius(size) => !size.is_negative(),
            Nose::Reaches(_) => below <= 0.25 * pitch * cot,
        };
        if below <= 0.0 || !given {
            return Err(Error::out_of_reach(
                "a tool nose of that size cannot cut this thread",
                match self.nose {
                    Nose::Flat(_) => format!("a flat under {}", self.pitch.half()),
                    Nose::Radius(_) => "the radius of the form's root or less".to_owned(),
                    Nose::Reaches(_) => {
                        "a root between the pitch diameter and the sharp point".to_owned()
                    }
                },
            ));
        }
        let depth = metal.half().checked_add(Length::nearest_millimetres(below)?)?;
        if self.feature == Feature::Shaft && depth.checked_mul(2)? >= self.blank {
            return Err(Error::out_of_reach(
                format!("a depth of {depth} goes through a blank of {}", self.blank),
                "check the pitch".to_owned(),
            ));
        }
        Ok(depth)
    }

    /// The flat that a tool has at the diameter where its tip ends.
    pub(super) fn flat_at(&self, root: Length) -> Result<Length, Error> {
        let slope = libm::tan(self.half_angle_degrees.to_radians());
        let off = root.checked_sub(self.pitch_diameter)?.checked_abs()?.millimetres();
        Length::nearest_millimetres(0.5 * self.pitch.millimetres() - off * slope)
    }
}
