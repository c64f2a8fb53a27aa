//! The part that suits another with a wanted clearance.

use crate::{
    error::Error,
    size::{Length, Limits},
};

/// A part that suits others.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(clippy::exhaustive_structs, reason = "an aim and its limits are all")]
pub struct Suited {
    /// The one size to make.
    pub aim: Length,
    /// Limits that are right whatever the others measure; `None` where these
    /// vary by more than is wanted.
    pub limits: Option<Limits>,
}

/// The shaft that runs in a bore with a wanted clearance.
///
/// # Errors
/// Out of range.
///
/// ```
/// use fits_core::{Limits, shop::bushing::shaft_for};
/// let limits = |lower: &str, upper: &str| Limits::new(lower.parse()?, upper.parse()?);
/// let shaft = shaft_for(limits("20mm", "20.013mm")?, limits("0.03mm", "0.06mm")?)?;
/// assert_eq!(shaft.limits, Some(limits("19.953mm", "19.97mm")?));
/// # Ok::<(), fits_core::Error>(())
/// ```
pub fn shaft_for(bore: Limits, running: Limits) -> Result<Suited, Error> {
    let aim = bore.middle().checked_sub(running.middle())?;
    let limits = Limits::new(
        bore.upper().checked_sub(running.upper())?,
        bore.lower().checked_sub(running.lower())?,
    );
    Ok(Suited { aim, limits: limits.ok() })
}

/// The bore that a shaft runs in with a wanted clearance.
///
/// ```
/// use fits_core::{Limits, shop::bushing::bore_for};
/// let limits = |lower: &str, upper: &str| Limits::new(lower.parse()?, upper.parse()?);
/// let bore = bore_for(limits("19.987mm", "20mm")?, limits("0.03mm", "0.06mm")?)?;
/// assert_eq!(bore.limits, Some(limits("20.03mm", "20.047mm")?));
/// # Ok::<(), fits_core::Error>(())
/// ```
///
/// # Errors
/// Out of range.
pub fn bore_for(shaft: Limits, running: Limits) -> Result<Suited, Error> {
    let aim = shaft.middle().checked_add(running.middle())?;
    let limits = Limits::new(
        shaft.upper().checked_add(running.lower())?,
        shaft.lower().checked_add(running.upper())?,
    );
    Ok(Suited { aim, limits: limits.ok() })
}
