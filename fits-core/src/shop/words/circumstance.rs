//! What a fit is for, as far as it changes the classes of a word.

use crate::size::Length;
#[cfg(feature = "serde")]
use serde::{Deserialize, Serialize};

/// What the outer part is made of, or the bushing that is one of the two.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(Serialize, Deserialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "serde", serde(rename_all = "kebab-case"))]
#[expect(
    clippy::exhaustive_enums,
    reason = "each is told, or acted on, in its own way: a new one must not pass unseen"
)]
pub enum Hub {
    /// Steel or wrought iron.
    #[default]
    Steel,
    /// Cast iron.
    CastIron,
    /// Aluminium.
    Aluminium,
    /// A bronze bushing: pressed into its housing, or the shaft in it.
    BronzeBushing,
    /// A plastic bushing: pressed into its housing, or the shaft in it.
    PlasticBushing,
}

/// What the fit is for.
///
/// ```
/// use fits_core::shop::words::Circumstance;
/// assert!(Circumstance::plain("20mm".parse()?).with_thin_wall().thin_wall);
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Circumstance {
    /// The size that both parts share.
    pub nominal: Length,
    /// What the outer part, or the bushing, is made of.
    pub hub: Hub,
    /// How long the parts are engaged, where it is known.
    pub length: Option<Length>,
    /// Does one part turn in the other, where it is known?
    pub turns: Option<bool>,
    /// Is one of the parts a thin tube?
    pub thin_wall: bool,
}

impl Circumstance {
    /// Solid steel at a size, nothing else known.
    ///
    /// ```
    /// use fits_core::shop::words::{Circumstance, Hub};
    /// let plain = Circumstance::plain("20mm".parse()?);
    /// assert_eq!((plain.hub, plain.length, plain.turns), (Hub::Steel, None, None));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub const fn plain(nominal: Length) -> Self {
        Self { nominal, hub: Hub::Steel, length: None, turns: None, thin_wall: false }
    }

    /// With another hub, or a bushing.
    ///
    /// ```
    /// use fits_core::shop::words::{Circumstance, Hub, Word};
    /// let case = Circumstance::plain("20mm".parse()?)
    ///     .with_hub(Hub::BronzeBushing)
    ///     .with_length("40mm".parse()?)
    ///     .turning(true);
    /// assert!(Word::find("running")?.choose(&case).is_ok());
    /// // A press holds the shaft still.
    /// assert!(Word::find("press")?.choose(&case).is_err());
    /// assert!(Circumstance::plain("20mm".parse()?).with_thin_wall().thin_wall);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    #[must_use]
    pub const fn with_hub(self, hub: Hub) -> Self {
        Self { hub, ..self }
    }

    /// With a known length of engagement.
    ///
    /// ```
    /// use fits_core::shop::words::Circumstance;
    /// let long = Circumstance::plain("20mm".parse()?).with_length("60mm".parse()?);
    /// assert_eq!(long.length, Some("60mm".parse()?));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    #[must_use]
    pub const fn with_length(self, length: Length) -> Self {
        Self { length: Some(length), ..self }
    }

    /// Where it is known whether one part turns in the other.
    ///
    /// ```
    /// use fits_core::shop::words::Circumstance;
    /// assert_eq!(Circumstance::plain("20mm".parse()?).turning(true).turns, Some(true));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    #[must_use]
    pub const fn turning(self, turns: bool) -> Self {
        Self { turns: Some(turns), ..self }
    }

    /// With a thin tube as one of the parts.
    #[must_use]
    pub const fn with_thin_wall(self) -> Self {
        Self { thin_wall: true, ..self }
    }
}
