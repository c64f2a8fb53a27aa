//! [`Length`]: an exact count of 0.1 nm.

use core::fmt;

use crate::error::{Error, Kind};

/// An exact length: an integer count of 0.1 nm.
///
/// One inch is 254 000 000 counts, one thou 254 000, one millionth of an inch
/// 254, 1/64 in 3 968 750 and 1/128 in 1 984 375: all exact. The range is
/// about ±900 000 km. Arithmetic is checked: leaving the range is an error,
/// never a wrap. Lengths compare exactly.
///
/// ```
/// use fits_core::Length;
/// let bore: Length = "3/4in".parse()?;
/// assert_eq!(bore, "19.05mm".parse()?);
/// assert_eq!(bore.tenth_nanometres(), 190_500_000);
/// assert_eq!(bore.to_string(), "19.05 mm");
/// let inch = Length::INCH;
/// assert_eq!((inch.millimetres(), inch.half()), (25.4, "12.7mm".parse()?));
/// let under = inch.checked_neg()?;
/// assert!(under.is_negative() && inch.is_positive());
/// assert_eq!(under.checked_abs()?, inch);
/// # Ok::<(), fits_core::Error>(())
/// ```
///
/// Source: the inch is 25.4 mm exactly (international yard and pound
/// agreement of 1959).
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Length(i64);

impl Length {
    /// No length.
    pub const ZERO: Self = Self(0);
    /// One micrometre.
    pub const MICROMETRE: Self = Self(10_000);
    /// One millimetre.
    pub const MILLIMETRE: Self = Self(10_000_000);
    /// One inch, 25.4 mm.
    pub const INCH: Self = Self(254_000_000);
    /// One thousandth of an inch.
    pub const THOU: Self = Self(254_000);
    /// One tenth of a thousandth of an inch.
    pub const TENTH: Self = Self(25_400);
    /// The greatest length.
    pub const MAX: Self = Self(i64::MAX);

    /// A length of so many 0.1 nm.
    ///
    /// ```
    /// use fits_core::Length;
    /// let thou = Length::from_tenth_nanometres(254_000);
    /// assert_eq!(thou, Length::THOU);
    /// assert_eq!(thou, Length::from_micrometres(25)?.checked_add(Length::from_tenth_nanometres(4_000))?);
    /// assert_eq!(Length::from_millimetres(1)?.checked_sub(thou)?.to_string(), "0.9746 mm");
    /// // Every step is checked: leaving the range is an error.
    /// assert!(Length::MAX.checked_mul(2).is_err());
    /// assert_eq!(thou.checked_scale(1, 4)?.checked_neg()?.checked_abs()?.to_string(), "0.00635 mm");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub const fn from_tenth_nanometres(count: i64) -> Self {
        Self(count)
    }

    /// A length of so many micrometres.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::Length;
    /// assert_eq!(Length::from_micrometres(21)?, "0.021mm".parse()?);
    /// assert!(Length::from_micrometres(i64::MAX).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn from_micrometres(count: i64) -> Result<Self, Error> {
        Self::MICROMETRE.checked_mul(count)
    }

    /// A length of so many millimetres.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::Length;
    /// assert_eq!(Length::from_millimetres(20)?.to_string(), "20 mm");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn from_millimetres(count: i64) -> Result<Self, Error> {
        Self::MILLIMETRE.checked_mul(count)
    }

    /// The exact count of 0.1 nm.
    pub const fn tenth_nanometres(self) -> i64 {
        self.0
    }

    /// This length in millimetres, as the nearest floating-point number.
    ///
    /// An integer divided once by a power of ten: up to 900 km the shortest
    /// decimal that names the result is the exact length.
    #[allow(clippy::cast_precision_loss, reason = "exact below 2^53 counts, nearest above")]
    pub fn millimetres(self) -> f64 {
        self.0 as f64 / 1e7
    }

    /// This length in micrometres, as a floating-point number: for physics.
    pub(crate) fn in_micrometres(self) -> f64 {
        self.millimetres() * 1e3
    }

    /// The length nearest to so many micrometres, as [`Self::nearest_millimetres`].
    pub(crate) fn nearest_micrometres(micrometres: f64) -> Result<Self, Error> {
        Self::nearest_millimetres(micrometres / 1e3)
    }

    /// The length nearest to so many millimetres, to 0.1 nm, halves to even.
    ///
    /// # Errors
    /// Not a finite number, or out of range.
    pub(crate) fn nearest_millimetres(millimetres: f64) -> Result<Self, Error> {
        let count = libm::rint(millimetres * 1e7);
        if count.is_nan() || count.abs() >= 9.2e18 {
            return Err(out_of_range());
        }
        #[allow(clippy::cast_possible_truncation, reason = "whole, and its size is checked above")]
        Ok(Self(count as i64))
    }

    /// The sum.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::Length;
    /// let (foot, inch): (Length, Length) = ("1ft".parse()?, "1in".parse()?);
    /// assert_eq!(foot.checked_add(inch)?, "13in".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn checked_add(self, other: Self) -> Result<Self, Error> {
        self.0.checked_add(other.0).map(Self).ok_or_else(out_of_range)
    }

    /// The difference.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::Length;
    /// let (hole, shaft): (Length, Length) = ("20.021mm".parse()?, "19.98mm".parse()?);
    /// assert_eq!(hole.checked_sub(shaft)?, "0.041mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn checked_sub(self, other: Self) -> Result<Self, Error> {
        self.0.checked_sub(other.0).map(Self).ok_or_else(out_of_range)
    }

    /// So many times this length.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::Length;
    /// assert_eq!("1/64in".parse::<Length>()?.checked_mul(64)?, Length::INCH);
    /// assert!(Length::INCH.checked_mul(i64::MAX).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn checked_mul(self, times: i64) -> Result<Self, Error> {
        self.0.checked_mul(times).map(Self).ok_or_else(out_of_range)
    }

    /// This length times `numerator / denominator`, halves rounded to even.
    ///
    /// # Errors
    /// Out of range, or a denominator of zero.
    ///
    /// ```
    /// use fits_core::Length;
    /// // A third of an inch, to the nearest 0.1 nm.
    /// assert_eq!(Length::INCH.checked_scale(1, 3)?, "8.4666667mm".parse()?);
    /// assert!(Length::INCH.checked_scale(1, 0).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn checked_scale(self, numerator: i128, denominator: i128) -> Result<Self, Error> {
        let product = i128::from(self.0).checked_mul(numerator).ok_or_else(out_of_range)?;
        let count = divide_half_even(product, denominator).ok_or_else(out_of_range)?;
        i64::try_from(count).map(Self).map_err(|_| out_of_range())
    }

    /// Half this length, halves of 0.1 nm rounded to even.
    #[must_use]
    pub fn half(self) -> Self {
        let down = self.0.div_euclid(2);
        let odd = self.0.rem_euclid(2);
        // An odd count lies between `down` and `down + 1`: take the even one.
        Self(down + (odd & down.rem_euclid(2)))
    }

    /// The length without its sign.
    ///
    /// # Errors
    /// Out of range.
    pub fn checked_abs(self) -> Result<Self, Error> {
        self.0.checked_abs().map(Self).ok_or_else(out_of_range)
    }

    /// The opposite length.
    ///
    /// # Errors
    /// Out of range.
    pub fn checked_neg(self) -> Result<Self, Error> {
        self.0.checked_neg().map(Self).ok_or_else(out_of_range)
    }

    /// Is it more than nothing?
    pub const fn is_positive(self) -> bool {
        self.0 > 0
    }

    /// Is it less than nothing?
    pub const fn is_negative(self) -> bool {
        self.0 < 0
    }
}

/// `dividend / divisor` to the nearest integer, halves to the even one.
pub(crate) fn divide_half_even(dividend: i128, divisor: i128) -> Option<i128> {
    if divisor == 1 {
        return Some(dividend);
    }
    let quotient = dividend.checked_div_euclid(divisor)?;
    // It fits, whatever the product does.
    let remainder = dividend.wrapping_sub(quotient.wrapping_mul(divisor));
    let up = match remainder.checked_mul(2)?.cmp(&divisor.checked_abs()?) {
        core::cmp::Ordering::Less => 0,
        core::cmp::Ordering::Equal => quotient.rem_euclid(2),
        core::cmp::Ordering::Greater => 1,
    };
    quotient.checked_add(up * divisor.signum())
}

pub(crate) fn out_of_range() -> Error {
    Error::new(Kind::OutOfRange)
}

impl fmt::Display for Length {
    /// The exact length in millimetres with as many places as it takes.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = if self.0 < 0 { "-" } else { "" };
        let count = self.0.unsigned_abs();
        let (whole, part) = (count / 10_000_000, count % 10_000_000);
        if part == 0 {
            return write!(f, "{sign}{whole} mm");
        }
        let mut places = 7;
        let mut digits = part;
        while digits % 10 == 0 {
            digits /= 10;
            places -= 1;
        }
        write!(f, "{sign}{whole}.{digits:0places$} mm")
    }
}

#[cfg(feature = "serde")]
impl serde::Serialize for Length {
    /// Written as its exact text, `"19.05 mm"`.
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

#[cfg(feature = "schema")]
impl schemars::JsonSchema for Length {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Length".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({
            "type": "string",
            "description": "A length as its exact text with its unit.",
        })
    }
}

#[cfg(feature = "serde")]
impl<'de> serde::Deserialize<'de> for Length {
    /// Read from a text with a unit, as [`str::parse`] reads it.
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Text;
        impl serde::de::Visitor<'_> for Text {
            type Value = Length;
            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("a size with its unit, as \"19.05 mm\"")
            }
            fn visit_str<E: serde::de::Error>(self, text: &str) -> Result<Length, E> {
                text.parse().map_err(E::custom)
            }
        }
        deserializer.deserialize_str(Text)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn halves_go_to_even() {
        for (count, half) in
            [(0, 0), (1, 0), (2, 1), (3, 2), (5, 2), (7, 4), (-1, 0), (-3, -2), (-5, -2)]
        {
            assert_eq!(Length(count).half(), Length(half), "half of {count}");
        }
        for (dividend, divisor, quotient) in [
            (7, 2, 4),
            (5, 2, 2),
            (-5, 2, -2),
            (-7, 2, -4),
            (7, -2, -4),
            (10, 4, 2),
            (11, 4, 3),
            (9, 4, 2),
        ] {
            assert_eq!(divide_half_even(dividend, divisor), Some(quotient), "{dividend}/{divisor}");
        }
        assert_eq!(divide_half_even(1, 0), None);
    }

    #[test]
    fn arithmetic_never_wraps() {
        assert!(Length::MAX.checked_add(Length(1)).is_err());
        assert!(Length(i64::MIN).checked_abs().is_err());
        assert!(Length(i64::MIN).checked_neg().is_err());
        assert!(Length::MAX.checked_mul(2).is_err());
        assert!(Length::INCH.checked_scale(i128::MAX, 3).is_err());
    }
}
