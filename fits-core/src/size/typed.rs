//! `uom` lengths, at the public boundary only.

use uom::si::{f64::Length as Typed, length::millimeter};

use super::Length;
use crate::error::Error;

impl From<Length> for Typed {
    /// The nearest typed length: `uom` holds metres as a floating-point
    /// number, so 0.0127 mm may come back with noise in the last place.
    fn from(length: Length) -> Self {
        Self::new::<millimeter>(length.millimetres())
    }
}

impl Length {
    /// The length nearest to a typed one, to 0.1 nm, halves to even.
    ///
    /// # Errors
    /// Not a finite number, or out of range.
    ///
    /// ```
    /// use fits_core::Length;
    /// use uom::si::{f64::Length as Typed, length::inch};
    /// let half_thou = Length::nearest(Typed::new::<inch>(0.0005))?;
    /// assert_eq!(half_thou, Length::from_tenth_nanometres(127_000));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn nearest(typed: Typed) -> Result<Self, Error> {
        Self::nearest_millimetres(typed.get::<millimeter>())
    }
}
