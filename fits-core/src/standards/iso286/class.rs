//! Names: the kind of feature, the letters, the grades, and the class they make.

use core::{fmt, str::FromStr};

#[cfg(feature = "serde")]
use serde::{Deserialize, Serialize};

use crate::error::Error;

/// An internal or an external feature of size.
///
/// ```
/// use fits_core::standards::iso286::Feature;
/// assert_eq!((Feature::Hole.word(), Feature::Hole.mate()), ("hole", Feature::Shaft));
/// ```
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(Serialize, Deserialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "lowercase"))]
#[expect(clippy::exhaustive_enums, reason = "a surface is inside or outside")]
pub enum Feature {
    /// An internal feature: a bore, a slot, the inside of a tube.
    Hole,
    /// An external feature: a shaft, a key, a plug.
    Shaft,
}

impl Feature {
    /// The standard's word: `hole` or `shaft`.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Hole => "hole",
            Self::Shaft => "shaft",
        }
    }

    /// The feature it mates with.
    #[must_use]
    pub const fn mate(self) -> Self {
        match self {
            Self::Hole => Self::Shaft,
            Self::Shaft => Self::Hole,
        }
    }
}

impl fmt::Display for Feature {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.word())
    }
}

const SHAFT_LETTERS: [&str; 28] = [
    "a", "b", "c", "cd", "d", "e", "ef", "f", "fg", "g", "h", "js", "j", "k", "m", "n", "p", "r",
    "s", "t", "u", "v", "x", "y", "z", "za", "zb", "zc",
];
const HOLE_LETTERS: [&str; 28] = [
    "A", "B", "C", "CD", "D", "E", "EF", "F", "FG", "G", "H", "JS", "J", "K", "M", "N", "P", "R",
    "S", "T", "U", "V", "X", "Y", "Z", "ZA", "ZB", "ZC",
];

/// A fundamental deviation identifier, without regard to hole or shaft:
/// `h` and `H` are the same letter.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Letter(u8);

impl Letter {
    pub(crate) const B: Self = Self(1);
    /// The zero line: the basis of a hole-basis or shaft-basis fit.
    pub const H: Self = Self(10);
    /// Symmetrical about the nominal size.
    pub const JS: Self = Self(11);
    pub(crate) const J: Self = Self(12);
    pub(crate) const K: Self = Self(13);
    pub(crate) const M: Self = Self(14);
    pub(crate) const N: Self = Self(15);

    /// Every letter, from the loosest to the tightest.
    ///
    /// ```
    /// use fits_core::standards::iso286::{Feature, Letter};
    /// let names: Vec<_> = Letter::all().map(|letter| letter.name(Feature::Shaft)).collect();
    /// assert_eq!((names[0], names.last()), ("a", Some(&"zc")));
    /// ```
    pub fn all() -> impl DoubleEndedIterator<Item = Self> {
        // There are 28.
        (0..28).map(Self)
    }

    /// The letter with this name for such a feature: capitals name holes.
    ///
    /// # Errors
    /// No such letter, or one written for the other feature.
    ///
    /// ```
    /// use fits_core::standards::iso286::{Feature, Letter};
    /// assert_eq!(Letter::named("JS", Feature::Hole)?, Letter::JS);
    /// let error = Letter::named("Q", Feature::Hole).unwrap_err();
    /// assert_eq!(error.to_string(), "there is no fundamental deviation Q");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn named(name: &str, feature: Feature) -> Result<Self, Error> {
        let names = match feature {
            Feature::Hole => &HOLE_LETTERS,
            Feature::Shaft => &SHAFT_LETTERS,
        };
        // 28 names: the position fits.
        if let Some(at) =
            (0..).zip(names).find_map(|(at, known)| known.bytes().eq(name.bytes()).then_some(at))
        {
            return Ok(Self(at));
        }
        let (why, advice) = if names.iter().any(|known| known.eq_ignore_ascii_case(name)) {
            match feature {
                Feature::Hole => {
                    (format!("{name} does not name a hole"), "the hole takes the capital")
                }
                Feature::Shaft => {
                    (format!("{name} does not name a shaft"), "the shaft takes the small letter")
                }
            }
        } else {
            (
                format!("there is no fundamental deviation {name}"),
                "the letters i, l, o, q and w are not used",
            )
        };
        Err(Error::not_a_class(why, advice).at(0, name.len()))
    }

    /// The existing letter nearest in the alphabet to a name that is none.
    ///
    /// ```
    /// use fits_core::standards::iso286::{Feature, Grade, Letter};
    /// assert_eq!(Letter::nearest("Hh").name(Feature::Hole), "H");
    /// assert_eq!(Grade::it(7).map(|grade| grade.to_string()).as_deref(), Some("7"));
    /// assert_eq!(Grade::it(19), None);
    /// ```
    pub fn nearest(name: &str) -> Self {
        let lower = name.to_ascii_lowercase();
        let first = lower.bytes().next().unwrap_or(b'h');
        Self::all()
            .filter(|letter| letter.name(Feature::Shaft).len() == 1)
            .min_by_key(|letter| {
                let own = letter.name(Feature::Shaft).bytes().next().unwrap_or(b'h');
                (own.abs_diff(first), own)
            })
            .unwrap_or(Self::H)
    }

    /// How the standard writes it for such a feature.
    ///
    /// ```
    /// use fits_core::standards::iso286::{Feature, Letter};
    /// assert_eq!((Letter::H.name(Feature::Hole), Letter::H.name(Feature::Shaft)), ("H", "h"));
    /// ```
    pub fn name(self, feature: Feature) -> &'static str {
        match feature {
            Feature::Hole => HOLE_LETTERS[self.index()],
            Feature::Shaft => SHAFT_LETTERS[self.index()],
        }
    }

    /// Position among the 28, always below 28.
    pub(crate) fn index(self) -> usize {
        usize::from(self.0)
    }
}

const GRADE_NAMES: [&str; 20] = [
    "IT01", "IT0", "IT1", "IT2", "IT3", "IT4", "IT5", "IT6", "IT7", "IT8", "IT9", "IT10", "IT11",
    "IT12", "IT13", "IT14", "IT15", "IT16", "IT17", "IT18",
];

/// A standard tolerance grade, IT01 to IT18.
///
/// ```
/// use fits_core::standards::iso286::Grade;
/// assert_eq!(Grade::it(7).map(Grade::name), Some("IT7"));
/// assert_eq!(Grade::all().next().map(|finest| finest.name()), Some("IT01"));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Grade(u8);

impl Grade {
    /// IT01, the finest.
    pub const IT01: Self = Self(0);
    /// IT0.
    pub const IT0: Self = Self(1);
    /// IT18, the coarsest.
    pub const IT18: Self = Self(19);

    pub(crate) const IT3: Self = Self(4);
    pub(crate) const IT5: Self = Self(6);
    pub(crate) const IT6: Self = Self(7);
    pub(crate) const IT7: Self = Self(8);
    pub(crate) const IT8: Self = Self(9);

    /// The grade IT1 to IT18 with this number.
    ///
    /// ```
    /// use fits_core::standards::iso286::Grade;
    /// assert_eq!(Grade::it(7).map(Grade::name), Some("IT7"));
    /// assert_eq!(Grade::it(19), None);
    /// ```
    pub const fn it(number: u8) -> Option<Self> {
        match number {
            1..=18 => Some(Self(number + 1)),
            _ => None,
        }
    }

    /// Every grade, from the finest to the coarsest.
    ///
    /// ```
    /// use fits_core::standards::iso286::Grade;
    /// // IT01, IT0 and IT1 to IT18.
    /// assert_eq!(Grade::all().count(), 20);
    /// ```
    pub fn all() -> impl DoubleEndedIterator<Item = Self> {
        (0..20).map(Self)
    }

    /// Its name: `IT01`, `IT7`.
    pub fn name(self) -> &'static str {
        GRADE_NAMES[self.index()]
    }

    /// Position among the 20, always below 20.
    pub(crate) fn index(self) -> usize {
        usize::from(self.0)
    }

    /// Is it finer than, or as fine as, the grade with this number?
    pub(crate) fn up_to(self, number: u8) -> bool {
        self.0 <= number + 1
    }
}

impl fmt::Display for Grade {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.name()[2..])
    }
}

impl FromStr for Grade {
    type Err = Error;

    /// Reads `01`, `0`, `1` … `18`.
    ///
    /// # Errors
    /// No such grade.
    fn from_str(text: &str) -> Result<Self, Error> {
        let grade = match text {
            "01" => Some(Self::IT01),
            "0" => Some(Self::IT0),
            _ if text.starts_with(['0', '+']) => None,
            _ => text.parse().ok().and_then(Self::it),
        };
        grade.ok_or_else(|| {
            Error::not_a_class(
                if text.is_empty() {
                    "the tolerance grade is missing".to_owned()
                } else {
                    format!("there is no tolerance grade IT{text}")
                },
                "grades run from IT01, IT0, IT1 to IT18",
            )
            .at(0, text.len())
        })
    }
}

/// A tolerance class, such as H7 of a hole or g6 of a shaft.
///
/// ```
/// use fits_core::{Length, standards::iso286::Class};
/// let class: Class = "g6".parse()?;
/// let limits = class.limits(Length::from_millimetres(20)?)?;
/// assert_eq!(limits.lower().to_string(), "19.98 mm");
/// assert_eq!(limits.upper().to_string(), "19.993 mm");
/// assert_eq!(class.mirrored().to_string(), "G6");
/// # Ok::<(), fits_core::Error>(())
/// ```
///
/// Source: ISO 286-1:2010, clause 4.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[expect(clippy::exhaustive_structs, reason = "a class is these three")]
pub struct Class {
    /// Hole or shaft.
    pub feature: Feature,
    /// The fundamental deviation.
    pub letter: Letter,
    /// The tolerance grade.
    pub grade: Grade,
}

impl Class {
    /// The same letter and grade of the other feature: H7 for h7.
    #[must_use]
    pub const fn mirrored(self) -> Self {
        Self { feature: self.feature.mate(), ..self }
    }

    /// How the standard writes it.
    ///
    /// ```
    /// use fits_core::standards::iso286::Class;
    /// assert_eq!("zc11".parse::<Class>()?.name(), "zc11");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn name(self) -> &'static str {
        static HOLES: [[Written; 20]; 28] = written(&HOLE_LETTERS);
        static SHAFTS: [[Written; 20]; 28] = written(&SHAFT_LETTERS);
        let written = match self.feature {
            Feature::Hole => &HOLES,
            Feature::Shaft => &SHAFTS,
        };
        let name = written[self.letter.index()][self.grade.index()].trim_ascii_end();
        // Letters and digits.
        core::str::from_utf8(name).unwrap_or_default()
    }
}

/// At most two letters and two digits, then blanks.
type Written = [u8; 4];

/// Every class of these letters, written once for all.
const fn written(letters: &[&str; 28]) -> [[Written; 20]; 28] {
    let mut all = [[[b' '; 4]; 20]; 28];
    let mut at = 0;
    while at < 20 * 28 {
        let (letter, grade) = (letters[at / 20].as_bytes(), GRADE_NAMES[at % 20].as_bytes());
        let mut place = 0;
        // A grade's name begins with IT, which no class has.
        while place + 2 < letter.len() + grade.len() {
            all[at / 20][at % 20][place] =
                if place < letter.len() { letter[place] } else { grade[2 + place - letter.len()] };
            place += 1;
        }
        at += 1;
    }
    all
}

impl fmt::Display for Class {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}

impl FromStr for Class {
    type Err = Error;

    /// Reads `H7`, `js6`, `ZC11`, `h01`.
    ///
    /// # Errors
    /// No such letter or grade.
    fn from_str(text: &str) -> Result<Self, Error> {
        let split = text.find(|c: char| !c.is_ascii_alphabetic()).unwrap_or(text.len());
        let (name, grade) = text.split_at(split);
        let feature = match name.bytes().next() {
            Some(first) if first.is_ascii_uppercase() => Feature::Hole,
            Some(_) => Feature::Shaft,
            None => {
                return Err(Error::not_a_class(
                    "a tolerance class begins with its letter",
                    "write `H7` for a hole, `g6` for a shaft",
                )
                .at(0, text.len()));
            }
        };
        let letter = Letter::named(name, feature)?;
        let grade = grade.parse().map_err(|error: Error| error.at(split, text.len()))?;
        Ok(Self { feature, letter, grade })
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
