//! [`Nominal`]: the size in a thread's name.

use core::fmt;

use crate::{
    error::Error,
    size::{Length, inches},
};

/// The size as a thread's name says it.
///
/// ```
/// use fits_core::standards::thread::Nominal;
/// // No. 10 is 0.060 + 10 x 0.013 in.
/// assert_eq!(Nominal::Number(10).length()?, "0.190in".parse()?);
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Nominal {
    /// Millimetres: M10, Tr20.
    Millimetres(Length),
    /// Whole inches and a common fraction: 3/8, 1-1/8, 1.
    Fraction {
        /// Whole inches.
        whole: u16,
        /// 0 where there is no fraction.
        numerator: u16,
        /// 1 where there is no fraction.
        denominator: u16,
    },
    /// Inches as a decimal: 0.375.
    Decimal(Length),
    /// A number size: #10, 2 BA.
    Number(u8),
}

impl Nominal {
    /// The length it names; a number size is read as the Unified screw number
    /// (0.060 in and 0.013 in more for each number; ASME B1.1, table of
    /// standard series). Other systems look their numbers up.
    ///
    /// # Errors
    /// A fraction over zero, or out of range.
    pub fn length(self) -> Result<Length, Error> {
        match self {
            Self::Millimetres(length) | Self::Decimal(length) => Ok(length),
            Self::Fraction { whole, numerator, denominator } => Length::INCH
                .checked_scale(numerator.into(), denominator.into())?
                .checked_add(Length::INCH.checked_mul(whole.into())?),
            Self::Number(number) => Length::THOU.checked_mul(60 + 13 * i64::from(number)),
        }
    }
}

impl fmt::Display for Nominal {
    /// `10`, `1-1/8`, `0.375`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::Millimetres(length) => f.write_str(length.to_string().trim_end_matches(" mm")),
            Self::Fraction { whole, numerator: 0, .. } => write!(f, "{whole}"),
            Self::Fraction { whole: 0, numerator, denominator } => {
                write!(f, "{numerator}/{denominator}")
            }
            Self::Fraction { whole, numerator, denominator } => {
                write!(f, "{whole}-{numerator}/{denominator}")
            }
            // The standard writes decimal sizes with three places or more.
            Self::Decimal(length) => {
                let text = inches(length);
                let places = text.split_once('.').map_or(0, |(_, places)| places.len());
                let point = if places == 0 { "." } else { "" };
                write!(f, "{text}{point}{:0<1$}", "", 3_usize.saturating_sub(places))
            }
            Self::Number(number) => write!(f, "{number}"),
        }
    }
}
