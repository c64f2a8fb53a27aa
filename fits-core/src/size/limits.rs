//! [`Deviations`] from a nominal size and [`Limits`] of size.

#[cfg(feature = "serde")]
use serde::{Deserialize, Serialize};

use core::{
    fmt,
    hash::{Hash, Hasher},
};

use super::{Decimals, Length, Rounding, Unit};
use crate::{
    error::{Error, Kind},
    source::Known,
};

/// The lower and upper limit deviations from a nominal size (EI and ES of a
/// hole, ei and es of a shaft), and how well they are known.
///
/// ```
/// use fits_core::{Deviations, source::Known};
/// // g6 at 20 mm.
/// let g6 = Deviations::new("-0.020mm".parse()?, "-0.007mm".parse()?)?;
/// assert_eq!((g6.lower(), g6.upper()), ("-0.020mm".parse()?, "-0.007mm".parse()?));
/// assert_eq!(g6.known(), Known::Given);
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Deviations {
    lower: Length,
    upper: Length,
    known: Known,
}

impl PartialEq for Deviations {
    /// The same deviations, however they are known.
    fn eq(&self, other: &Self) -> bool {
        (self.lower, self.upper) == (other.lower, other.upper)
    }
}

impl Eq for Deviations {}

impl Hash for Deviations {
    fn hash<H: Hasher>(&self, state: &mut H) {
        (self.lower, self.upper).hash(state);
    }
}

impl Deviations {
    /// Deviations that do not cross, known as given.
    ///
    /// # Errors
    /// `lower` above `upper`.
    ///
    /// ```
    /// use fits_core::Deviations;
    /// let (lower, upper) = ("0mm".parse()?, "0.021mm".parse()?);
    /// assert!(Deviations::new(lower, upper).is_ok());
    /// assert!(Deviations::new(upper, lower).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn new(lower: Length, upper: Length) -> Result<Self, Error> {
        if lower > upper {
            return Err(Error::new(Kind::CrossedLimits { lower, upper }));
        }
        Ok(Self { lower, upper, known: Known::Given })
    }

    /// The same, known in this way.
    ///
    /// ```
    /// use fits_core::{Deviations, source::Known};
    /// let recalled = Deviations::new("0mm".parse()?, "0.021mm".parse()?)?.known_as(Known::Memory);
    /// assert_eq!(recalled.known(), Known::Memory);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    #[must_use]
    pub const fn known_as(self, known: Known) -> Self {
        Self { known, ..self }
    }

    /// How they are known: the worst of what went into them.
    pub const fn known(self) -> Known {
        self.known
    }

    /// The lower limit deviation: EI of a hole, ei of a shaft.
    pub const fn lower(self) -> Length {
        self.lower
    }

    /// The upper limit deviation: ES of a hole, es of a shaft.
    pub const fn upper(self) -> Length {
        self.upper
    }

    /// The limits of size that these deviations give at a nominal size.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::{Deviations, source::Known};
    /// let g6 = Deviations::new("-20um".parse()?, "-7um".parse()?)?.known_as(Known::Seen);
    /// let shaft = g6.about("20mm".parse()?)?;
    /// assert_eq!((shaft.to_string().as_str(), shaft.known()), ("19.980 to 19.993 mm", Known::Seen));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn about(self, nominal: Length) -> Result<Limits, Error> {
        let limits =
            Limits::new(nominal.checked_add(self.lower)?, nominal.checked_add(self.upper)?)?;
        Ok(limits.known_as(self.known))
    }
}

/// Limits of size: the least and the greatest size that is good, and how well
/// they are known. Limits are equal where both ends are, however they are known.
///
/// ```
/// use fits_core::{Length, Limits};
/// let hole = Limits::new("20mm".parse()?, "20.021mm".parse()?)?;
/// assert!(hole.contains("20.021mm".parse()?));
/// assert!(!hole.contains("20.0211mm".parse()?));
/// assert_eq!(hole.middle().to_string(), "20.0105 mm");
/// let hole = Limits::new("20mm".parse()?, "20.021mm".parse()?)?;
/// assert_eq!((hole.lower(), hole.upper()), ("20mm".parse()?, "20.021mm".parse()?));
/// assert_eq!(hole.tolerance(), "0.021mm".parse()?);
/// assert_eq!(hole.known(), fits_core::source::Known::Given);
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
#[cfg_attr(feature = "serde", derive(Serialize, Deserialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "serde", serde(try_from = "Ends", into = "Ends"))]
pub struct Limits {
    lower: Length,
    upper: Length,
    known: Known,
}

impl PartialEq for Limits {
    /// The same sizes are good, however that is known.
    fn eq(&self, other: &Self) -> bool {
        (self.lower, self.upper) == (other.lower, other.upper)
    }
}

impl Eq for Limits {}

impl Hash for Limits {
    fn hash<H: Hasher>(&self, state: &mut H) {
        (self.lower, self.upper).hash(state);
    }
}

#[cfg_attr(feature = "serde", derive(Serialize, Deserialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "serde", serde(deny_unknown_fields))]
struct Ends {
    lower: Length,
    upper: Length,
}

impl TryFrom<Ends> for Limits {
    type Error = Error;
    fn try_from(ends: Ends) -> Result<Self, Error> {
        Self::new(ends.lower, ends.upper)
    }
}

impl From<Limits> for Ends {
    fn from(limits: Limits) -> Self {
        Self { lower: limits.lower, upper: limits.upper }
    }
}

impl Limits {
    /// Limits that do not cross, known as given.
    ///
    /// # Errors
    /// `lower` above `upper`, or further apart than a length can say.
    ///
    /// ```
    /// use fits_core::Limits;
    /// let (lower, upper) = ("20mm".parse()?, "20.021mm".parse()?);
    /// assert_eq!(Limits::new(lower, upper)?.to_string(), "20.000 to 20.021 mm");
    /// assert!(Limits::new(upper, lower).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn new(lower: Length, upper: Length) -> Result<Self, Error> {
        if lower > upper {
            return Err(Error::new(Kind::CrossedLimits { lower, upper }));
        }
        upper.checked_sub(lower)?;
        Ok(Self { lower, upper, known: Known::Given })
    }

    /// The same limits, known in this way.
    ///
    /// ```
    /// use fits_core::{Limits, source::Known, standards::{b41, iso286::Class}};
    /// let typed = Limits::new("20mm".parse()?, "20.021mm".parse()?)?;
    /// assert_eq!(typed.known(), Known::Given);
    /// let hole: Limits = "H7".parse::<Class>()?.limits("20mm".parse()?)?;
    /// assert_eq!(hole.known(), Known::Formula);
    /// assert_eq!(typed, hole);
    /// let drive = "FN2".parse::<b41::Class>()?.fit("4in".parse()?)?;
    /// assert_eq!(drive.shaft().known(), Known::Memory);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    #[must_use]
    pub const fn known_as(self, known: Known) -> Self {
        Self { known, ..self }
    }

    /// How they are known: the worst of what went into them.
    pub const fn known(self) -> Known {
        self.known
    }

    /// The least size that is good.
    pub const fn lower(self) -> Length {
        self.lower
    }

    /// The greatest size that is good.
    pub const fn upper(self) -> Length {
        self.upper
    }

    /// The tolerance: upper limit less lower limit.
    pub fn tolerance(self) -> Length {
        // `new` has checked that the difference is a length.
        Length::from_tenth_nanometres(self.upper.tenth_nanometres() - self.lower.tenth_nanometres())
    }

    /// The middle of the limits, exact to 0.1 nm (halves to even).
    pub fn middle(self) -> Length {
        let half = self.tolerance().half();
        // Not above `upper`, so in range.
        Length::from_tenth_nanometres(self.lower.tenth_nanometres() + half.tenth_nanometres())
    }

    /// Both ends as text in a unit, rounded inward so that no bad part passes,
    /// with as many places as [`Decimals::for_limits`] says.
    ///
    /// ```
    /// use fits_core::{Limits, size::Unit};
    /// let hole = Limits::new("20mm".parse()?, "20.021mm".parse()?)?;
    /// assert_eq!(hole.shown(Unit::Inch).to_string(), "0.78741 to 0.78822 in");
    /// assert_eq!(hole.to_string(), "20.000 to 20.021 mm");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn shown(self, unit: Unit) -> impl fmt::Display {
        let decimals = Decimals::for_limits(unit, self);
        let lower = self.lower.shown(decimals, Rounding::Up);
        let upper = self.upper.shown(decimals, Rounding::Down);
        format!("{lower} to {upper} {}", unit.symbol())
    }

    /// Is this size good? Both limits are.
    ///
    /// ```
    /// use fits_core::Limits;
    /// let hole = Limits::new("20mm".parse()?, "20.021mm".parse()?)?;
    /// assert!(hole.contains("20mm".parse()?) && hole.contains("20.021mm".parse()?));
    /// assert!(!hole.contains("20.0211mm".parse()?));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn contains(self, size: Length) -> bool {
        self.lower <= size && size <= self.upper
    }
}

impl fmt::Display for Limits {
    /// In millimetres, rounded inward: [`Limits::shown`].
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.shown(Unit::Millimetre))
    }
}
