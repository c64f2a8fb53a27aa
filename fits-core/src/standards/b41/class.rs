//! Names: the five families of fits and the classes in them.

use core::{fmt, str::FromStr};

#[cfg(feature = "serde")]
use serde::{Deserialize, Serialize};

use super::{Entry, table};
use crate::error::Error;

/// Where [`Class::description`] takes its words from.
pub const DESCRIPTION_SOURCE: &str =
    "ANSI B4.1-1967 (R2009), description of the fits, as reprinted in Machinery's Handbook";

/// A family of fits.
///
/// ```
/// use fits_core::standards::b41::Family;
/// // FN1 to FN5.
/// assert_eq!((Family::Force.name(), Family::Force.last()), ("FN", 5));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[expect(clippy::exhaustive_enums, reason = "the standard has five")]
pub enum Family {
    /// RC: running and sliding fits.
    Running,
    /// LC: locational clearance fits.
    LocationalClearance,
    /// LT: locational transition fits.
    LocationalTransition,
    /// LN: locational interference fits.
    LocationalInterference,
    /// FN: force and shrink fits.
    Force,
}

impl Family {
    /// The five, from the loosest use to the tightest.
    pub const ALL: [Self; 5] = [
        Self::Running,
        Self::LocationalClearance,
        Self::LocationalTransition,
        Self::LocationalInterference,
        Self::Force,
    ];

    /// The standard's two letters.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Running => "RC",
            Self::LocationalClearance => "LC",
            Self::LocationalTransition => "LT",
            Self::LocationalInterference => "LN",
            Self::Force => "FN",
        }
    }

    /// The number of its last class; the first is 1.
    pub const fn last(self) -> u8 {
        match self {
            Self::Running => 9,
            Self::LocationalClearance => 11,
            Self::LocationalTransition => 6,
            Self::LocationalInterference => 3,
            Self::Force => 5,
        }
    }

    /// Does a greater number mean a looser fit?
    const fn grows_looser(self) -> bool {
        matches!(self, Self::Running | Self::LocationalClearance)
    }

    /// Classes of the families before this one.
    const fn before(self) -> usize {
        match self {
            Self::Running => 0,
            Self::LocationalClearance => 9,
            Self::LocationalTransition => 20,
            Self::LocationalInterference => 26,
            Self::Force => 29,
        }
    }
}

/// A class of fits, such as RC4 or FN2: hole and shaft together.
///
/// ```
/// use fits_core::standards::b41::Class;
/// let class: Class = "rc 4".parse()?;
/// assert_eq!(class.to_string(), "RC4");
/// assert_eq!(class.description(), "close running fits");
/// assert_eq!(class.symbols(), ("H8", Some("f7")));
/// assert_eq!(Class::all().count(), 34);
/// let error = "RC10".parse::<Class>().unwrap_err();
/// assert_eq!(error.to_string(), "there is no RC10: RC runs from RC1 to RC9");
/// use fits_core::standards::b41::Family;
/// assert_eq!((class.family(), class.number()), (Family::Running, 4));
/// # Ok::<(), fits_core::Error>(())
/// ```
///
/// Source: ASME B4.1 (ANSI B4.1-1967, R2009).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Class {
    family: Family,
    /// From 1 to the family's last.
    number: u8,
}

impl Class {
    /// The class with a number in a family.
    ///
    /// # Errors
    /// The family has no such class.
    ///
    /// ```
    /// use fits_core::standards::b41::{Class, Family};
    /// assert_eq!(Class::new(Family::Force, 2)?, "FN2".parse()?);
    /// assert!(Class::new(Family::Force, 6).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn new(family: Family, number: u8) -> Result<Self, Error> {
        if (1..=family.last()).contains(&number) {
            Ok(Self { family, number })
        } else {
            Err(no_such_class(family, &number.to_string()))
        }
    }

    /// Every class, family by family.
    ///
    /// ```
    /// use fits_core::standards::b41::Class;
    /// // 9 RC, 11 LC, 6 LT, 3 LN and 5 FN.
    /// assert_eq!(Class::all().count(), 34);
    /// ```
    pub fn all() -> impl Iterator<Item = Self> {
        Family::ALL
            .into_iter()
            .flat_map(|family| (1..=family.last()).map(move |number| Self { family, number }))
    }

    /// The family.
    pub const fn family(self) -> Family {
        self.family
    }

    /// The number in the family, from 1.
    pub const fn number(self) -> u8 {
        self.number
    }

    /// Its place among the 34 classes, which the families count.
    const fn index(self) -> usize {
        // Widening; numbers are held to the families.
        self.family.before() + self.number as usize - 1
    }

    pub(super) fn entry(self) -> &'static Entry {
        &table::CLASSES[self.index()]
    }

    /// How the standard writes it.
    ///
    /// ```
    /// use fits_core::standards::b41::Class;
    /// assert_eq!("lc 11".parse::<Class>()?.name(), "LC11");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn name(self) -> &'static str {
        static NAMES: [[u8; 4]; 34] = Class::names();
        // Letters and digits.
        core::str::from_utf8(NAMES[self.index()].trim_ascii_end()).unwrap_or_default()
    }

    /// Every name, written once for all, with blanks after it.
    const fn names() -> [[u8; 4]; 34] {
        let mut all = [[b' '; 4]; 34];
        let mut at = 0;
        while at < Family::ALL.len() {
            let (family, mut number) = (Family::ALL[at], 1);
            let letters = family.name().as_bytes();
            while number <= family.last() {
                let class = Self { family, number };
                all[class.index()] = match number {
                    0..10 => [letters[0], letters[1], b'0' + number, b' '],
                    _ => [letters[0], letters[1], b'0' + number / 10, b'0' + number % 10],
                };
                number += 1;
            }
            at += 1;
        }
        all
    }

    /// The standard's own term for the class ([`DESCRIPTION_SOURCE`]).
    ///
    /// ```
    /// use fits_core::standards::b41::Class;
    /// assert_eq!("FN3".parse::<Class>()?.description(), "heavy drive fits");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn description(self) -> &'static str {
        self.entry().description
    }

    /// The symbols over the columns of hole and shaft; the standard has none
    /// for the shafts of RC9, LC10, LC11 and FN1.
    pub fn symbols(self) -> (&'static str, Option<&'static str>) {
        let [hole, shaft] = self.entry().symbols;
        (hole, (!shaft.is_empty()).then_some(shaft))
    }

    /// The grades of hole and shaft, as in [`super::grade_tolerance`]; where
    /// the shaft has no symbol, the grade that its tolerances equal or come
    /// nearest to.
    ///
    /// ```
    /// use fits_core::standards::b41::Class;
    /// assert_eq!("RC4".parse::<Class>()?.grades(), (8, 7));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn grades(self) -> (u8, u8) {
        let [hole, shaft] = self.entry().grades;
        (hole, shaft)
    }

    /// The next looser class of the family, by the standard's numbering.
    ///
    /// ```
    /// use fits_core::standards::b41::Class;
    /// let next = |name: &str| name.parse::<Class>().map(Class::looser);
    /// assert_eq!(next("RC4")?, Some("RC5".parse()?));
    /// assert_eq!(next("FN2")?, Some("FN1".parse()?));
    /// assert_eq!(next("RC9")?, None);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    #[must_use]
    pub fn looser(self) -> Option<Self> {
        self.neighbour(self.family.grows_looser())
    }

    /// The next tighter class of the family, by the standard's numbering.
    ///
    /// ```
    /// use fits_core::standards::b41::Class;
    /// assert_eq!("RC4".parse::<Class>()?.tighter(), Some("RC3".parse()?));
    /// assert_eq!("FN5".parse::<Class>()?.tighter(), None);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    #[must_use]
    pub fn tighter(self) -> Option<Self> {
        self.neighbour(!self.family.grows_looser())
    }

    fn neighbour(self, next: bool) -> Option<Self> {
        let number = if next { self.number + 1 } else { self.number - 1 };
        Self::new(self.family, number).ok()
    }
}

fn no_such_class(family: Family, number: &str) -> Error {
    let (name, last) = (family.name(), family.last());
    Error::not_a_class(
        format!("there is no {name}{number}: {name} runs from {name}1 to {name}{last}"),
        format!("write {name}1 to {name}{last}"),
    )
}

impl fmt::Display for Class {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.name())
    }
}

impl FromStr for Class {
    type Err = Error;

    /// Reads `RC4`, `fn 2`: either case, with or without a space.
    ///
    /// # Errors
    /// No such family, or no such class in it.
    fn from_str(text: &str) -> Result<Self, Error> {
        let split = text.find(|c: char| !c.is_ascii_alphabetic()).unwrap_or(text.len());
        let (name, number) = text.split_at(split);
        let family = Family::ALL
            .into_iter()
            .find(|family| family.name().eq_ignore_ascii_case(name))
            .ok_or_else(|| {
                Error::not_a_class(
                    format!("there is no family of inch fits {name:?}"),
                    "the families are RC, LC, LT, LN and FN, as in RC4",
                )
                .at(0, split)
            })?;
        let digits = number.trim_start_matches(' ');
        if digits.is_empty() {
            let (name, last) = (family.name(), family.last());
            return Err(Error::not_a_class(
                format!("{name} is a family: its class is missing"),
                format!("write {name}1 to {name}{last}"),
            )
            .at(0, text.len()));
        }
        // A sign or a leading zero is not a number of a class.
        let plain = !digits.starts_with(['0', '+']);
        digits
            .parse()
            .ok()
            .filter(|_| plain)
            .and_then(|number| Self::new(family, number).ok())
            .ok_or_else(|| no_such_class(family, digits).at(0, text.len()))
    }
}

#[cfg(feature = "serde")]
impl Serialize for Class {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

#[cfg(feature = "serde")]
impl<'de> Deserialize<'de> for Class {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        String::deserialize(deserializer)?.parse().map_err(serde::de::Error::custom)
    }
}
