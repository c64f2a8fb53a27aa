//! [`Size`]: a length and the unit it was typed in.

use core::{fmt, str::FromStr};

use super::{Length, Rounding, Unit, read::read, write::Decimals};
use crate::error::Error;

/// A nominal size that keeps the unit it was typed in.
///
/// The unit decides where a person's system does: a shop's word is a pair of
/// ISO 286 at 25.4 mm and a class of ASME B4.1 at 1 in. Everything else goes by
/// [`Size::length`], and two sizes are equal only where the unit is, too.
///
/// ```
/// use fits_core::{Size, size::Unit};
/// let size: Size = "1-1/2in".parse()?;
/// assert_eq!((size.to_string().as_str(), size.unit()), ("1.5 in", Unit::Inch));
/// assert_eq!(size.length(), "38.1mm".parse()?);
/// assert!(size.is_inch() && !"38.1mm".parse::<Size>()?.is_inch());
///
/// // Nothing is guessed: a bare number is refused.
/// let error = "20".parse::<Size>().unwrap_err();
/// assert_eq!(error.to_string(), "the size has no unit");
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Size {
    length: Length,
    unit: Unit,
}

impl Size {
    /// A length that is thought of in a unit.
    ///
    /// ```
    /// use fits_core::{Size, size::Unit};
    /// let size = Size::new("25.4mm".parse()?, Unit::Inch);
    /// assert_eq!(size, "1in".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub const fn new(length: Length, unit: Unit) -> Self {
        Self { length, unit }
    }

    /// The exact length.
    pub const fn length(self) -> Length {
        self.length
    }

    /// The unit it was typed in.
    pub const fn unit(self) -> Unit {
        self.unit
    }

    /// Was it typed in inches, feet, thou, tenths or millionths?
    pub const fn is_inch(self) -> bool {
        self.unit.is_inch()
    }
}

impl From<Length> for Size {
    /// A length by itself is metric, as [`Length`]'s own text is.
    fn from(length: Length) -> Self {
        Self::new(length, Unit::Millimetre)
    }
}

impl FromStr for Size {
    type Err = Error;

    /// Reads what [`Length`] reads, and keeps the unit.
    ///
    /// # Errors
    /// As for [`Length`].
    fn from_str(text: &str) -> Result<Self, Error> {
        read(text).map(|(length, unit)| Self { length, unit })
    }
}

impl fmt::Display for Size {
    /// In its own unit, with as many places as it takes, at most nine.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let decimals = Decimals { unit: self.unit, places: 9 };
        let text = self.length.shown(decimals, Rounding::Nearest).to_string();
        let text = text.trim_end_matches('0').trim_end_matches('.');
        f.pad(&format!("{text} {}", self.unit.symbol()))
    }
}
