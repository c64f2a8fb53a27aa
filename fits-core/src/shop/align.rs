//! The tailstock: set over to turn parallel, or to turn a taper.
//!
//! Half the difference of two test diameters, scaled from their distance to
//! the whole distance between centres (US Navy, Machinery Repairman, NAVEDTRA
//! 14345; set-over = length × taper per unit of length / 2).

use crate::{error::Error, size::Length, speech::say};

/// Which way the tailstock has to move.
///
/// ```
/// use fits_core::shop::align::Toward;
/// assert_eq!(Toward::Tool.word(), "toward the tool");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Toward {
    /// Toward the operator and the tool: the tailstock end came out large.
    Tool,
    /// Away from them: it came out small.
    Away,
    /// It stands right.
    Stay,
}

impl Toward {
    /// In words, as JSON has it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Tool => "toward the tool",
            Self::Away => "away from the tool",
            Self::Stay => "leave it",
        }
    }
}

/// A taper, as so much of diameter over so much of length.
///
/// ```
/// use fits_core::{Length, shop::align::{Taper, Toward}};
/// // 1 in per foot over a piece 3 ft long: set over 1.5 in.
/// let taper = Taper::new(Length::INCH, "12in".parse()?)?;
/// assert_eq!(taper.set_over("36in".parse()?)?, "1.5in".parse()?);
///
/// // The tailstock end is 8 tenths larger over 6 in.
/// let left = Taper::between("0.7503in".parse()?, "0.7511in".parse()?, "6in".parse()?)?;
/// assert_eq!(left.set_over("6in".parse()?)?, "0.0004in".parse()?);
/// assert_eq!(left.toward(), Toward::Tool);
/// assert_eq!(left.over("12in".parse()?)?, "0.0016in".parse()?);
/// assert_eq!(taper.per_foot()?, "1in".parse()?);
/// // 25.4 mm in 304.8 mm is 1 in 12.
/// assert_eq!(taper.per_100_mm()?.millimetres(), 8.333_333_3);
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Taper {
    /// Tailstock end less headstock end.
    difference: Length,
    /// Over this length; more than 0.
    length: Length,
}

impl Taper {
    /// So much of diameter over so much of length; more at the tailstock end
    /// is positive.
    ///
    /// # Errors
    /// No length, or a taper as steep as no lathe sets over.
    ///
    /// ```
    /// use fits_core::shop::align::Taper;
    /// let taper = Taper::new("2mm".parse()?, "100mm".parse()?)?;
    /// assert_eq!(taper.per_100_mm()?, "2mm".parse()?);
    /// assert!(Taper::new("2mm".parse()?, "0mm".parse()?).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn new(difference: Length, length: Length) -> Result<Self, Error> {
        if !length.is_positive() {
            return Err(Error::not_listed(
                say!("a length of {} has no taper", length),
                "give a distance above 0, as 150 mm or 6 in",
            ));
        }
        if difference.checked_abs()? >= length {
            return Err(Error::not_listed(
                say!("{} over {} is not a taper to set over for", difference, length),
                "a tailstock sets over for slight tapers",
            ));
        }
        Ok(Self { difference, length })
    }

    /// From two test diameters cut at one setting: the first by the
    /// headstock, the second by the tailstock.
    ///
    /// # Errors
    /// A diameter or a length that has no sense.
    ///
    /// ```
    /// use fits_core::shop::align::{Taper, Toward};
    /// let level = Taper::between("25mm".parse()?, "25mm".parse()?, "150mm".parse()?)?;
    /// assert_eq!(level.toward(), Toward::Stay);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn between(headstock: Length, tailstock: Length, apart: Length) -> Result<Self, Error> {
        for diameter in [headstock, tailstock] {
            if !diameter.is_positive() {
                return Err(Error::not_listed(
                    say!("{} is not a diameter", diameter),
                    "give what the two collars measure",
                ));
            }
        }
        Self::new(tailstock.checked_sub(headstock)?, apart)
    }

    /// The change of diameter over a length.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::shop::align::Taper;
    /// let taper = Taper::new("2mm".parse()?, "100mm".parse()?)?;
    /// assert_eq!(taper.over("250mm".parse()?)?, "5mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn over(self, length: Length) -> Result<Length, Error> {
        self.difference.checked_scale(
            i128::from(length.tenth_nanometres()),
            i128::from(self.length.tenth_nanometres()),
        )
    }

    /// The change of diameter over a foot, in the length's own unit.
    ///
    /// # Errors
    /// Out of range.
    pub fn per_foot(self) -> Result<Length, Error> {
        self.over(Length::INCH.checked_mul(12)?)
    }

    /// The change of diameter over 100 mm.
    ///
    /// # Errors
    /// Out of range.
    pub fn per_100_mm(self) -> Result<Length, Error> {
        self.over(Length::from_millimetres(100)?)
    }

    /// How far to move the tailstock, without a sign: half the change of
    /// diameter over the whole distance between centres.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::shop::align::Taper;
    /// // Half a millimetre in 150 mm, over 300 mm between centres: half of 1 mm.
    /// let taper = Taper::new("0.5mm".parse()?, "150mm".parse()?)?;
    /// assert_eq!(taper.set_over("300mm".parse()?)?, "0.5mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn set_over(self, between_centres: Length) -> Result<Length, Error> {
        // Halved last and once: no half of 0.1 nm is lost twice.
        self.difference
            .checked_scale(
                i128::from(between_centres.tenth_nanometres()),
                2 * i128::from(self.length.tenth_nanometres()),
            )?
            .checked_abs()
    }

    /// Which way, to take this taper out.
    pub const fn toward(self) -> Toward {
        if self.difference.is_positive() {
            Toward::Tool
        } else if self.difference.is_negative() {
            Toward::Away
        } else {
            Toward::Stay
        }
    }

    /// What of a tolerance is left over a length once this taper has had its
    /// share: below 0 where the taper alone is more than the tolerance.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::shop::align::Taper;
    /// let left = Taper::new("0.02mm".parse()?, "200mm".parse()?)?;
    /// assert_eq!(left.per_100_mm()?, "0.01mm".parse()?);
    /// assert_eq!(left.per_foot()?, "0.03048mm".parse()?);
    /// assert_eq!(left.leaves("0.021mm".parse()?, "100mm".parse()?)?, "0.011mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn leaves(self, tolerance: Length, length: Length) -> Result<Length, Error> {
        tolerance.checked_sub(self.over(length)?.checked_abs()?)
    }
}
