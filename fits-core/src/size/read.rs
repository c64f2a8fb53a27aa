//! Reading sizes exactly: numbers, units, and the two together.
//!
//! Nothing passes through floating point. A decimal that would need a part of
//! 0.1 nm is refused; a common fraction (1/3 in, 1/256 in) is rounded to the
//! nearest 0.1 nm, halves to even.

use core::str::FromStr;

use super::{Length, length::divide_half_even};
use crate::error::{Error, Kind};

/// A unit of length that a shop uses.
///
/// ```
/// use fits_core::{Length, size::Unit};
/// assert_eq!((Unit::Thou.length(), Unit::Thou.is_inch()), (Length::THOU, true));
/// assert_eq!((Unit::Inch.symbol(), Unit::Millimetre.symbol()), ("in", "mm"));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Unit {
    /// Millimetre.
    Millimetre,
    /// Centimetre.
    Centimetre,
    /// Metre.
    Metre,
    /// Micrometre, a thousandth of a millimetre.
    Micrometre,
    /// Nanometre.
    Nanometre,
    /// Inch, 25.4 mm.
    Inch,
    /// Foot, 12 in.
    Foot,
    /// A thousandth of an inch.
    Thou,
    /// A tenth of a thousandth of an inch.
    Tenth,
    /// A millionth of an inch.
    Microinch,
}

/// Every spelling read, the longer ones first where one begins another.
const SPELLINGS: &[(&str, Unit)] = &[
    ("millimetres", Unit::Millimetre),
    ("millimeters", Unit::Millimetre),
    ("mm", Unit::Millimetre),
    ("inches", Unit::Inch),
    ("inch", Unit::Inch),
    ("in", Unit::Inch),
    ("\"", Unit::Inch),
    ("''", Unit::Inch),
    ("\u{2033}", Unit::Inch),
    ("\u{201d}", Unit::Inch),
    ("\u{201c}", Unit::Inch),
    ("thousandths", Unit::Thou),
    ("thou", Unit::Thou),
    ("tenths", Unit::Tenth),
    ("tenth", Unit::Tenth),
    ("microns", Unit::Micrometre),
    ("micron", Unit::Micrometre),
    ("um", Unit::Micrometre),
    ("\u{b5}m", Unit::Micrometre),
    ("\u{3bc}m", Unit::Micrometre),
    ("uin", Unit::Microinch),
    ("\u{b5}in", Unit::Microinch),
    ("\u{3bc}in", Unit::Microinch),
    ("nm", Unit::Nanometre),
    ("cm", Unit::Centimetre),
    ("m", Unit::Metre),
    ("feet", Unit::Foot),
    ("foot", Unit::Foot),
    ("ft", Unit::Foot),
];

impl Unit {
    /// Is it the inch or a unit that is counted in inches?
    pub const fn is_inch(self) -> bool {
        matches!(self, Self::Inch | Self::Foot | Self::Thou | Self::Tenth | Self::Microinch)
    }

    /// One of this unit.
    pub const fn length(self) -> Length {
        Length::from_tenth_nanometres(match self {
            Self::Millimetre => 10_000_000,
            Self::Centimetre => 100_000_000,
            Self::Metre => 10_000_000_000,
            Self::Micrometre => 10_000,
            Self::Nanometre => 10,
            Self::Inch => 254_000_000,
            Self::Foot => 3_048_000_000,
            Self::Thou => 254_000,
            Self::Tenth => 25_400,
            Self::Microinch => 254,
        })
    }

    /// The unit's usual symbol.
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Millimetre => "mm",
            Self::Centimetre => "cm",
            Self::Metre => "m",
            Self::Micrometre => "um",
            Self::Nanometre => "nm",
            Self::Inch => "in",
            Self::Foot => "ft",
            Self::Thou => "thou",
            Self::Tenth => "tenths",
            Self::Microinch => "uin",
        }
    }

    /// The unit that the text begins with and the bytes it takes, if it does.
    ///
    /// A unit word ends where a letter or digit does not follow, so `20 m6`
    /// holds no metres. Letter case is not regarded.
    ///
    /// ```
    /// use fits_core::size::Unit;
    /// assert_eq!(Unit::scan("thou under"), Some((Unit::Thou, 4)));
    /// assert_eq!(Unit::scan("m6"), None);
    /// ```
    pub fn scan(text: &str) -> Option<(Self, usize)> {
        let bytes = text.as_bytes();
        let first = bytes.first()?.to_ascii_lowercase();
        let mut likely = SPELLINGS.iter().filter(|(it, _)| it.as_bytes().first() == Some(&first));
        likely.find_map(|&(spelling, unit)| {
            let matched = bytes
                .get(..spelling.len())
                .is_some_and(|start| start.eq_ignore_ascii_case(spelling.as_bytes()));
            let is_word = spelling.ends_with(|c: char| c.is_ascii_alphabetic());
            let goes_on = bytes.get(spelling.len()).is_some_and(u8::is_ascii_alphanumeric);
            (matched && !(is_word && goes_on)).then_some((unit, spelling.len()))
        })
    }
}

/// An exact number as it was typed: a decimal or a common fraction.
///
/// ```
/// use fits_core::size::{Number, Unit};
/// let (number, taken) = Number::scan("1-1/2in")?.expect("a number");
/// assert_eq!(taken, 5);
/// assert_eq!(number.of(Unit::Inch)?.to_string(), "38.1 mm");
/// assert!(number.is_fraction());
/// assert_eq!(number.ratio(), (3, 2));
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Number {
    numerator: i128,
    denominator: i128,
    /// Typed as a decimal: must come out exactly.
    is_decimal: bool,
}

/// More digits than this cannot be a size.
const MOST_DIGITS: usize = 24;

impl Number {
    /// A vulgar fraction as a rule is divided, `3/4` or `1-1/64`: halves to
    /// two hundred and fifty-sixths. In a shop those are of an inch.
    ///
    /// ```
    /// use fits_core::size::Number;
    /// let vulgar = |text| Number::scan(text).unwrap().unwrap().0.is_vulgar();
    /// assert!(vulgar("3/4") && vulgar("1-1/64"));
    /// assert!(!vulgar("0.75") && !vulgar("3") && !vulgar("1/3"));
    /// ```
    pub const fn is_vulgar(self) -> bool {
        !self.is_decimal && matches!(self.denominator, 2 | 4 | 8 | 16 | 32 | 64 | 128 | 256)
    }

    /// A whole number.
    ///
    /// ```
    /// use fits_core::size::{Number, Unit};
    /// assert_eq!(Number::whole(20).of(Unit::Millimetre)?, "20mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub const fn whole(number: i64) -> Self {
        // Widening.
        Self { numerator: number as i128, denominator: 1, is_decimal: true }
    }

    /// The number that the text begins with and the bytes it takes; `None`
    /// where the text does not begin with a number.
    ///
    /// Read: `20`, `20.5`, `.5`, `3/4`, `1-1/2`. Signs are left to the caller.
    ///
    /// # Errors
    /// A comma inside the number, an exponent, a fraction over zero, a point
    /// with no digit after it, or too many digits. The error's span counts
    /// from the start of `text`.
    ///
    /// ```
    /// use fits_core::size::Number;
    /// let (number, taken) = Number::scan("20.5mm")?.expect("it begins with a number");
    /// assert_eq!((number.ratio(), taken), ((205, 10), 4));
    /// assert!(Number::scan("mm")?.is_none());
    /// assert!(Number::scan("20,5").is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn scan(text: &str) -> Result<Option<(Self, usize)>, Error> {
        let bytes = text.as_bytes();
        let is = |at: usize, byte: u8| bytes.get(at) == Some(&byte);
        let whole = digits_from(bytes, 0);
        // `20..21` is a range, not a point.
        let point = is(whole, b'.') && !is(whole + 1, b'.');
        let places = if point { digits_from(bytes, whole + 1) } else { 0 };
        if whole == 0 && places == 0 {
            return Ok(None);
        }
        let end = whole + if point { 1 + places } else { 0 };
        if point && places == 0 {
            return Err(not_a_size("a digit is missing after the point", "write `20` or `20.0`")
                .at(end, end));
        }
        if is(end, b',') && digits_from(bytes, end + 1) > 0 {
            let why = "a comma inside a number can mean a decimal point or thousands";
            return Err(not_a_size(why, "").at(end, end + 1));
        }
        if let Some(after) = exponent_end(bytes, end) {
            return Err(not_a_size(
                "sizes are not written with an exponent",
                "write the size out, and a space before a tolerance class",
            )
            .at(0, after));
        }
        if point {
            return Self::decimal(bytes, whole, end).map(|number| Some((number, end)));
        }
        if let Some(found) = Self::fraction(bytes, whole)? {
            return Ok(Some(found));
        }
        let numerator = value_of(bytes, 0, whole)?;
        Ok(Some((Self { numerator, denominator: 1, is_decimal: true }, whole)))
    }

    /// The decimal in `bytes[..end]` whose point stands at `point`.
    fn decimal(bytes: &[u8], point: usize, end: usize) -> Result<Self, Error> {
        let part = bytes.get(point + 1..end).unwrap_or_default();
        let kept = part.len() - part.iter().rev().take_while(|b| **b == b'0').count();
        let whole = value_of(bytes, 0, point)?;
        let part = value_of(bytes, point + 1, kept)?;
        // Neither a tenth of a nanometre nor a light year is a size.
        if kept > MOST_DIGITS / 2 || whole > 1_000_000_000_000_000 {
            return Err(too_many_digits().at(0, end));
        }
        // At most twelve places, so the power is in range.
        let scale = 10_i128.pow(u32::try_from(kept).unwrap_or(0));
        Ok(Self { numerator: whole * scale + part, denominator: scale, is_decimal: true })
    }

    /// The fraction or mixed number that begins `bytes`, whose first run of
    /// digits is `first` long: `3/4`, `1-1/2`, with no spaces inside.
    fn fraction(bytes: &[u8], first: usize) -> Result<Option<(Self, usize)>, Error> {
        let is = |at: usize, byte: u8| bytes.get(at) == Some(&byte);
        let (units, start, top) = if is(first, b'/') {
            (0, 0, first)
        } else {
            let top = digits_from(bytes, first + 1);
            if !is(first, b'-') || top == 0 || !is(first + 1 + top, b'/') {
                return Ok(None);
            }
            (value_of(bytes, 0, first)?, first + 1, top)
        };
        let below = start + top + 1;
        let bottom = digits_from(bytes, below);
        let end = below + bottom;
        // `20/19.985` is two numbers, not a fraction.
        if bottom == 0 || is(end, b'.') && digits_from(bytes, end + 1) > 0 {
            return Ok(None);
        }
        let denominator = value_of(bytes, below, bottom)?;
        if denominator == 0 {
            return Err(not_a_size(
                "a fraction over zero is not a size",
                "write `1/2`, `3/4` or the like",
            )
            .at(below, end));
        }
        let numerator = units
            .checked_mul(denominator)
            .and_then(|units| units.checked_add(value_of(bytes, start, top).ok()?))
            .ok_or_else(|| too_many_digits().at(0, end))?;
        Ok(Some((Self { numerator, denominator, is_decimal: false }, end)))
    }

    /// So many of a unit.
    ///
    /// # Errors
    /// Out of range, or a decimal finer than 0.1 nm.
    ///
    /// ```
    /// use fits_core::size::{Number, Unit};
    /// let (number, _) = Number::scan("3/8")?.expect("a number");
    /// assert_eq!(number.of(Unit::Inch)?, "9.525mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn of(self, unit: Unit) -> Result<Length, Error> {
        let count = self
            .numerator
            .checked_mul(i128::from(unit.length().tenth_nanometres()))
            .ok_or_else(super::length::out_of_range)?;
        if self.is_decimal && self.denominator > 1 && count % self.denominator != 0 {
            return Err(not_a_size(
                "the size is finer than 0.1 nm, the smallest step kept",
                if unit.is_inch() {
                    "an inch takes six decimals"
                } else {
                    "a millimetre takes seven decimals"
                },
            ));
        }
        let count =
            divide_half_even(count, self.denominator).ok_or_else(super::length::out_of_range)?;
        i64::try_from(count)
            .map(Length::from_tenth_nanometres)
            .map_err(|_| super::length::out_of_range())
    }

    /// Was it typed as a common fraction?
    pub const fn is_fraction(self) -> bool {
        !self.is_decimal
    }

    /// Numerator and denominator.
    pub const fn ratio(self) -> (i128, i128) {
        (self.numerator, self.denominator)
    }

    /// The number of such a ratio, rounded where a length is made of it.
    ///
    /// # Errors
    /// A denominator of zero.
    ///
    /// ```
    /// use fits_core::size::{Number, Unit};
    /// let third = Number::from_ratio(1, 3)?;
    /// assert_eq!(third.of(Unit::Inch)?.to_string(), "8.4666667 mm");
    /// assert_eq!(Number::whole(20).of(Unit::Millimetre)?, "20mm".parse()?);
    /// assert!(Number::from_ratio(1, 0).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn from_ratio(numerator: i128, denominator: i128) -> Result<Self, Error> {
        if denominator == 0 {
            return Err(not_a_size("a division by zero is not a size", ""));
        }
        Ok(Self { numerator, denominator, is_decimal: false })
    }
}

/// How many digits stand from a place on.
fn digits_from(bytes: &[u8], from: usize) -> usize {
    bytes.get(from..).unwrap_or_default().iter().take_while(|b| b.is_ascii_digit()).count()
}

/// The whole number in so many digits from a place.
fn value_of(bytes: &[u8], from: usize, count: usize) -> Result<i128, Error> {
    let digits = bytes.get(from..from + count).unwrap_or_default();
    if digits.iter().skip_while(|b| **b == b'0').count() > MOST_DIGITS {
        return Err(too_many_digits().at(from, from + count));
    }
    Ok(digits.iter().fold(0, |sum, b| sum * 10 + i128::from(b - b'0')))
}

/// Where an exponent that begins at a place ends, if one does.
fn exponent_end(bytes: &[u8], at: usize) -> Option<usize> {
    if !bytes.get(at)?.eq_ignore_ascii_case(&b'e') {
        return None;
    }
    let sign = usize::from(bytes.get(at + 1).is_some_and(|b| matches!(b, b'+' | b'-')));
    let digits = digits_from(bytes, at + 1 + sign);
    (digits > 0).then_some(at + 1 + sign + digits)
}

fn too_many_digits() -> Error {
    not_a_size(
        "too many digits for a size",
        "a size to 0.1 nm has at most 7 decimals of a millimetre",
    )
}

pub(crate) fn not_a_size(why: &'static str, advice: &'static str) -> Error {
    Error::new(Kind::NotASize { why, advice })
}

impl FromStr for Length {
    type Err = Error;

    /// Reads one size with its unit: `20mm`, `0.75in`, `3/4in`, `1-1/2in`,
    /// `3/4"`, `15 thou`, `2 tenths`, `0.4um`, a sign before it or not.
    ///
    /// # Errors
    /// Not a number with a unit, or out of range. A comma inside a number is
    /// refused, since it can mean two things.
    fn from_str(text: &str) -> Result<Self, Error> {
        read(text).map(|(length, _)| length)
    }
}

/// One size and the unit that it was typed in.
pub(super) fn read(text: &str) -> Result<(Length, Unit), Error> {
    let start = text.len() - text.trim_start().len();
    let body = text.trim();
    let (negative, unsigned) = match body.strip_prefix(['-', '\u{2212}']) {
        Some(rest) => (true, rest),
        None => (false, body.strip_prefix('+').unwrap_or(body)),
    };
    let offset = start + body.len() - unsigned.len();
    let shifted = |error: Error| match error.span() {
        Some(span) => error.at(span.start + offset, span.end + offset),
        None => error.at(start, start + body.len()),
    };
    let Some((number, taken)) = Number::scan(unsigned).map_err(shifted)? else {
        return Err(not_a_size("a size begins with a number", "write `20mm` or `3/4in`")
            .at(start, start + body.len()));
    };
    let rest = unsigned[taken..].trim_start();
    let Some((unit, unit_length)) = Unit::scan(rest) else {
        return Err(not_a_size("the size has no unit", "write `20mm` or `3/4in`")
            .at(offset + taken, start + body.len()));
    };
    if unit_length != rest.len() {
        let at = start + body.len() - rest.len() + unit_length;
        return Err(not_a_size("something follows the size", "write one number and its unit")
            .at(at, start + body.len()));
    }
    // Before the unit, so that the least length of all is read too.
    let numerator = if negative { number.numerator.saturating_neg() } else { number.numerator };
    let length = Number { numerator, ..number }.of(unit).map_err(shifted)?;
    Ok((length, unit))
}
