//! A sentence with figures in it, said in the units that are asked for.

use crate::size::{Decimals, Length, Rounding, Unit};
use core::fmt;
use std::borrow::Cow;

/// A sentence whose figures are kept as what they are, so that it can be said
/// in millimetres and degrees Celsius or in inches and degrees Fahrenheit, and
/// a name in it stays as it was typed.
///
/// [`Display`](fmt::Display) says it in millimetres.
///
/// ```
/// use fits_core::{Length, size::Unit, speech::Speech};
/// let speech = Speech::of("no wall about a bore of {}", ["25.4mm".parse::<Length>()?]);
/// assert_eq!(speech.to_string(), "no wall about a bore of 25.4 mm");
/// assert_eq!(speech.said_in(Unit::Inch), "no wall about a bore of 1 in");
/// assert!(!speech.is_empty());
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Speech {
    /// The words; `{}` stands for each figure in turn, if there is one.
    words: Cow<'static, str>,
    figures: Vec<Figure>,
}

/// A figure in a sentence, or words that are put into it.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
pub enum Figure {
    /// Words, a name or a number as it stands.
    Words(String),
    /// Words among millimetres, and other words among inches.
    Either([String; 2]),
    /// A length.
    Length(Length),
    /// A small difference of size: thou in inches.
    Small(Length),
    /// A length that was worked out: to 0.001 mm or 0.0001 in.
    About(Length),
    /// A temperature in degrees Celsius, whole degrees.
    Celsius(f64),
    /// An expansion in millionths per degree Celsius.
    Millionths(f64),
    /// A torque in newton metres, three figures.
    NewtonMetres(f64),
    /// A force in newtons, three figures.
    Newtons(f64),
    /// A pressure or stress in megapascals, three figures.
    Megapascals(f64),
}

impl From<Length> for Figure {
    fn from(length: Length) -> Self {
        Self::Length(length)
    }
}

impl From<&Length> for Figure {
    fn from(length: &Length) -> Self {
        Self::Length(*length)
    }
}

impl From<String> for Figure {
    fn from(words: String) -> Self {
        Self::Words(words)
    }
}

impl From<&str> for Figure {
    fn from(words: &str) -> Self {
        Self::Words(words.to_owned())
    }
}

/// Numbers stand as they are.
macro_rules! as_it_stands {
    ($($number:ty),*) => {
        $(impl From<$number> for Figure {
            fn from(number: $number) -> Self {
                Self::Words(number.to_string())
            }
        })*
    };
}
as_it_stands!(u8, u32, u64, usize, i64, f64);

impl From<String> for Speech {
    fn from(words: String) -> Self {
        Self { words: Cow::Owned(words), figures: Vec::new() }
    }
}

impl From<Length> for Speech {
    fn from(length: Length) -> Self {
        Self::of("{}", [length])
    }
}

impl From<&'static str> for Speech {
    fn from(words: &'static str) -> Self {
        Self { words: Cow::Borrowed(words), figures: Vec::new() }
    }
}

impl Speech {
    /// Words with `{}` for each figure.
    ///
    /// ```
    /// use fits_core::{Length, size::Unit, speech::Speech};
    /// let said = Speech::of("the bore is {} small", [Length::from_micrometres(20)?]);
    /// assert_eq!(said.said_in(Unit::Millimetre), "the bore is 0.02 mm small");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn of<F: Into<Figure>>(words: &'static str, figures: impl IntoIterator<Item = F>) -> Self {
        let figures = figures.into_iter().map(Into::into).collect();
        Self { words: Cow::Borrowed(words), figures }
    }

    /// Is nothing said?
    pub fn is_empty(&self) -> bool {
        self.words.is_empty()
    }

    /// It, with lengths in a unit; inches go with degrees Fahrenheit.
    ///
    /// ```
    /// use fits_core::{size::Unit, speech::{Figure, Speech}};
    /// let said = Speech::of("warm it to {}", [Figure::Celsius(100.0)]);
    /// assert_eq!(said.said_in(Unit::Millimetre), "warm it to 100 °C");
    /// assert_eq!(said.said_in(Unit::Inch), "warm it to 212 °F");
    /// ```
    pub fn said_in(&self, unit: Unit) -> String {
        if self.figures.is_empty() {
            return self.words.clone().into_owned();
        }
        let mut out = String::with_capacity(self.words.len() + 16);
        let mut figures = self.figures.iter();
        let mut parts = self.words.split("{}").peekable();
        while let Some(part) = parts.next() {
            out.push_str(part);
            if let (Some(_), Some(figure)) = (parts.peek(), figures.next()) {
                out.push_str(&figure.said_in(unit));
            }
        }
        out
    }
}

/// Is it said so in millimetres?
impl PartialEq<&str> for Speech {
    fn eq(&self, other: &&str) -> bool {
        self.said_in(Unit::Millimetre) == *other
    }
}

impl Figure {
    /// It, in a unit's own system.
    ///
    /// ```
    /// use fits_core::{Length, size::Unit, speech::Figure};
    /// let inch = Figure::Length(Length::INCH);
    /// assert_eq!(inch.said_in(Unit::Millimetre), "25.4 mm");
    /// assert_eq!(inch.said_in(Unit::Inch), "1 in");
    /// ```
    pub fn said_in(&self, unit: Unit) -> String {
        match (self, unit) {
            (Self::Words(words) | Self::Either([words, _]), Unit::Millimetre)
            | (Self::Words(words) | Self::Either([_, words]), _) => words.clone(),
            (Self::Length(length) | Self::Small(length), Unit::Millimetre) => length.to_string(),
            (Self::About(length), Unit::Millimetre) => {
                let shown = length.shown(Decimals::MILLIMETRES, Rounding::Nearest).to_string();
                format!("{} mm", trimmed(&shown))
            }
            (Self::About(length), _) => {
                let shown = length.shown(Decimals::INCHES, Rounding::Nearest).to_string();
                format!("{} in", trimmed(&shown))
            }
            (Self::Small(length), _) if is_small(*length) => {
                let decimals = Decimals { unit: Unit::Thou, places: 1 };
                format!("{} thou", length.shown(decimals, Rounding::Nearest))
            }
            (Self::Length(length) | Self::Small(length), _) => {
                let decimals = Decimals { unit: Unit::Inch, places: 6 };
                format!("{} in", trimmed(&length.shown(decimals, Rounding::Nearest).to_string()))
            }
            (Self::Celsius(celsius), Unit::Millimetre) => format!("{celsius:.0} °C"),
            (Self::Celsius(celsius), _) => format!("{:.0} °F", celsius * 1.8 + 32.0),
            (Self::Millionths(each), Unit::Millimetre) => format!("{each} millionths"),
            (Self::Millionths(each), _) => {
                format!("{} millionths", trimmed(&format!("{:.2}", each / 1.8)))
            }
            (Self::NewtonMetres(torque), Unit::Millimetre) => three(*torque, "N\u{b7}m"),
            (Self::NewtonMetres(torque), _) => three(torque / 1.355_817_948, "lbf\u{b7}ft"),
            (Self::Newtons(force), Unit::Millimetre) => three(*force, "N"),
            (Self::Newtons(force), _) => three(force / 4.448_221_615, "lbf"),
            (Self::Megapascals(stress), Unit::Millimetre) => three(*stress, "MPa"),
            (Self::Megapascals(stress), _) => three(stress * 145.037_738, "psi"),
        }
    }
}

/// Three figures and a unit: strengths and friction are not known to more.
fn three(value: f64, unit: &str) -> String {
    if value == 0.0 {
        return format!("0 {unit}");
    }
    let size = libm::floor(libm::log10(value.abs()));
    if size >= 2.0 {
        let step = libm::pow(10.0, size - 2.0);
        return format!("{:.0} {unit}", libm::round(value / step) * step);
    }
    // From tens to thousandths.
    let places = if size >= 1.0 {
        1
    } else if size >= 0.0 {
        2
    } else {
        3
    };
    format!("{value:.places$} {unit}")
}

fn is_small(length: Length) -> bool {
    length != Length::ZERO
        && length.checked_abs().is_ok_and(|length| length < Length::MILLIMETRE.half())
}

fn trimmed(text: &str) -> &str {
    text.trim_end_matches('0').trim_end_matches('.')
}

impl fmt::Display for Speech {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.said_in(Unit::Millimetre))
    }
}

/// A sentence with figures: `say!("a bore of {} in {}", bore, "steel")`.
macro_rules! say {
    ($words:literal $(, $figure:expr)* $(,)?) => {
        $crate::speech::Speech::of::<$crate::speech::Figure>(
            $words,
            [$($crate::speech::Figure::from($figure)),*],
        )
    };
}
pub(crate) use say;
