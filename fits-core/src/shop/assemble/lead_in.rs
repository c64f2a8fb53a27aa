//! What lets one part enter the other straight.

use super::millimetres;
use crate::{
    error::Error,
    size::Length,
    source::{Known, Reason},
    speech::say,
};

/// The chamfer of the part that is pressed in, and the pilot that may stand
/// in its place.
///
/// ```
/// use fits_core::shop::assemble::lead_in;
/// let entry = lead_in("27mm".parse()?, "27mm".parse()?)?;
/// assert_eq!(entry.reasons()[0].value, "5° by 3 mm");
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct LeadIn {
    /// The chamfer's angle to the axis, in degrees.
    pub angle: u8,
    /// The chamfer's length along the axis.
    pub length: Length,
    /// What the chamfer takes off the diameter at the end.
    pub allowance: Length,
    /// The pilot's diameter: a short land turned under the bore's least size.
    pub pilot: (Length, Length),
    /// How long the pilot is.
    pub pilot_length: Length,
}

/// Lead-in for a joint of a diameter whose bore is `bore` at its least.
///
/// # Errors
/// Out of range.
///
/// ```
/// use fits_core::shop::assemble::lead_in;
/// let entry = lead_in("27mm".parse()?, "27mm".parse()?)?;
/// assert_eq!((entry.angle, entry.length.to_string().as_str()), (5, "3 mm"));
/// assert_eq!(entry.pilot.1.to_string(), "26.9746 mm");
/// # Ok::<(), fits_core::Error>(())
/// ```
pub fn lead_in(diameter: Length, bore: Length) -> Result<LeadIn, Error> {
    let length = libm::cbrt(diameter.millimetres());
    let angle = 5_u8;
    let allowance = 2.0 * length * libm::tan(f64::from(angle).to_radians());
    Ok(LeadIn {
        angle,
        length: millimetres(length)?,
        allowance: millimetres(allowance)?,
        pilot: (bore.checked_sub(Length::THOU.checked_mul(2)?)?, bore.checked_sub(Length::THOU)?),
        // An eighth of an inch, or an eighth of a small diameter.
        pilot_length: Length::INCH.checked_scale(1, 8)?.min(diameter.checked_scale(1, 2)?),
    })
}

impl LeadIn {
    /// Where its figures come from.
    pub fn reasons(&self) -> Vec<Reason> {
        vec![
            Reason {
                figure: "lead-in".into(),
                value: say!("{}° by {}", self.angle, self.length),
                rule: "5° and the cube root of the diameter in millimetres".into(),
                source: "DIN 7190-1, from memory".into(),
                known: Known::Memory,
            },
            Reason {
                figure: "pilot".into(),
                value: say!("{} to {}", self.pilot.0, self.pilot.1),
                rule: "one or two thou under the bore's least size, up to 1/8 in long".into(),
                source: Known::Practice.words().into(),
                known: Known::Practice,
            },
        ]
    }
}
