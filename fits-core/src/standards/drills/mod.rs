//! Standard twist drills: number, letter, fractional inch and metric sizes.
//!
//! From `data/drills/drills.csv`, whose rows say how each is known.

#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod table;

use crate::{
    size::Length,
    source::{Known, Provenance},
};

/// The series a drill size belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[expect(
    clippy::exhaustive_enums,
    reason = "each is told, or acted on, in its own way: a new one must not pass unseen"
)]
pub enum Series {
    /// #1 to #107.
    Number,
    /// A to Z.
    Letter,
    /// Sixty-fourths of an inch to 1-3/4 in, thirty-seconds to 3 in.
    Fraction,
    /// Millimetres, to 25 mm.
    Metric,
}

/// One standard drill size.
///
/// ```
/// use fits_core::standards::drills::Drill;
/// let drill = Drill::named("#7").expect("a number drill");
/// assert_eq!(drill.diameter(), "0.2010in".parse()?);
/// assert_eq!(Drill::named("F").map(Drill::diameter), Some("0.257in".parse()?));
/// use fits_core::standards::drills::Series;
/// assert_eq!((drill.name(), drill.series()), ("#7", Series::Number));
/// // The list of number drills that was read does not name itself.
/// assert!(drill.known().is_unconfirmed() && drill.source().contains("number drills"));
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Drill(&'static Entry);

/// Sorted by diameter in the table.
#[derive(Debug)]
struct Entry {
    name: &'static str,
    series: Series,
    diameter: Length,
    from: Provenance,
}

impl Drill {
    /// Every standard size, smallest first.
    ///
    /// ```
    /// use fits_core::standards::drills::{Drill, Series};
    /// let letters = Drill::all().filter(|drill| drill.series() == Series::Letter);
    /// assert_eq!(letters.count(), 26);
    /// ```
    pub fn all() -> impl DoubleEndedIterator<Item = Self> {
        table::DRILLS.iter().map(Self)
    }

    /// The drill with a name: `#7`, `F`, `19/32 in`, `8.5 mm`.
    ///
    /// ```
    /// use fits_core::standards::drills::Drill;
    /// let letter = Drill::named("F").expect("listed");
    /// assert_eq!(letter.diameter(), "0.257in".parse()?);
    /// assert!(Drill::named("#120").is_none());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn named(name: &str) -> Option<Self> {
        Self::all().find(|drill| drill.name() == name)
    }

    /// The largest drill up to a size, from the series allowed.
    ///
    /// ```
    /// use fits_core::standards::drills::{Drill, Series};
    /// let inch = [Series::Fraction, Series::Letter];
    /// let named = |drill: Option<Drill>| drill.map(Drill::name);
    /// assert_eq!(named(Drill::under("0.41in".parse()?, &inch)), Some("13/32 in"));
    /// assert_eq!(named(Drill::over("0.41in".parse()?, &inch)), Some("Z"));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn under(size: Length, allowed: &[Series]) -> Option<Self> {
        Self::largest(Length::ZERO, size, allowed)
    }

    /// The largest drill from one size up to another, from the series allowed.
    pub(crate) fn largest(from: Length, to: Length, allowed: &[Series]) -> Option<Self> {
        let place = |is_before: &dyn Fn(Length) -> bool| {
            table::DRILLS.partition_point(|entry| is_before(entry.diameter))
        };
        let within = place(&|diameter| diameter < from)..place(&|diameter| diameter <= to);
        let found = table::DRILLS.get(within).unwrap_or_default();
        found.iter().rev().map(Self).find(|drill| allowed.contains(&drill.series()))
    }

    /// The smallest drill from a size up, from the series allowed.
    ///
    /// ```
    /// use fits_core::standards::drills::{Drill, Series};
    /// let found = Drill::over("0.25in".parse()?, &[Series::Letter]).expect("there is one");
    /// // E is 1/4 in itself.
    /// assert_eq!(found.name(), "E");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn over(size: Length, allowed: &[Series]) -> Option<Self> {
        let start = table::DRILLS.partition_point(|entry| entry.diameter < size);
        table::DRILLS[start..].iter().map(Self).find(|drill| allowed.contains(&drill.series()))
    }

    /// What it is called: `#7`, `F`, `19/32 in`, `8.5 mm`.
    pub const fn name(self) -> &'static str {
        self.0.name
    }

    /// The series it belongs to.
    pub const fn series(self) -> Series {
        self.0.series
    }

    /// Its nominal diameter.
    pub const fn diameter(self) -> Length {
        self.0.diameter
    }

    /// How its size is known.
    pub const fn known(self) -> Known {
        self.0.from.known
    }

    /// The list its size comes from.
    pub const fn source(self) -> &'static str {
        self.0.from.text
    }
}
