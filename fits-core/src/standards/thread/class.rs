//! [`Class`]: a tolerance class as a thread's designation says it.

use core::fmt;

use super::Form;

/// Which of the two threads.
///
/// ```
/// use fits_core::standards::thread::Side;
/// assert_eq!(Side::External.word(), "external");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[expect(clippy::exhaustive_enums, reason = "a thread is inside or outside")]
pub enum Side {
    /// A screw.
    External,
    /// A nut.
    Internal,
}

impl Side {
    /// The word.
    pub const fn word(self) -> &'static str {
        match self {
            Self::External => "external",
            Self::Internal => "internal",
        }
    }
}

/// A grade and the letter of its position: `6g`, `2A`, `4G`; grade 0 is none
/// (pipe class `A`).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[expect(clippy::exhaustive_structs, reason = "a grade and a position are all")]
pub struct Zone {
    /// 0 where the class has no number.
    pub grade: u8,
    /// An ASCII letter.
    pub position: char,
}

/// The words of systems that name their classes in words.
///
/// ```
/// use fits_core::standards::thread::Quality;
/// assert_eq!(Quality::Close.word(), "close");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Quality {
    /// Close.
    Close,
    /// Medium.
    Medium,
    /// Free.
    Free,
    /// Normal.
    Normal,
}

impl Quality {
    /// The word.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Close => "close",
            Self::Medium => "medium",
            Self::Free => "free",
            Self::Normal => "normal",
        }
    }
}

/// A tolerance class of a thread, of any system. What it allows is looked up
/// by the thread it is asked of.
///
/// ```
/// use fits_core::standards::thread::Class;
/// assert_eq!(Class::read("5g6g").expect("a class").to_string(), "5g6g");
/// assert_eq!(Class::read("6g6g").expect("a class").to_string(), "6g");
/// assert!(Class::read("g6").is_none());
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Class {
    /// One zone for the pitch diameter and one for the crest diameter; most
    /// systems give both the same.
    Zones {
        /// Of the pitch diameter.
        pitch: Zone,
        /// Of the crest: the major diameter of a screw, the minor of a nut.
        crest: Zone,
    },
    /// A word.
    Word(Quality),
    /// The one class of a system that has no choice: NPT, the nut of G.
    Sole,
}

impl Class {
    /// One zone for both diameters.
    ///
    /// ```
    /// use fits_core::standards::thread::Class;
    /// assert_eq!(Class::of(6, 'g').to_string(), "6g");
    /// ```
    pub const fn of(grade: u8, position: char) -> Self {
        let zone = Zone { grade, position };
        Self::Zones { pitch: zone, crest: zone }
    }

    /// The class that the whole text is, whatever system has it; `None` where
    /// it has not the shape of one.
    ///
    /// ```
    /// use fits_core::standards::thread::Class;
    /// assert_eq!(Class::read("2A"), Some(Class::of(2, 'A')));
    /// assert_eq!(Class::read("20 H7"), None);
    /// ```
    pub fn read(text: &str) -> Option<Self> {
        match *text.as_bytes() {
            [letter @ (b'A' | b'B')] => Some(Self::of(0, letter.into())),
            [grade, letter] => Some(zone(grade, letter)?.both()),
            // `free` has four letters too.
            [grade, letter, crest, crest_letter] if grade.is_ascii_digit() => {
                Some(Self::Zones { pitch: zone(grade, letter)?, crest: zone(crest, crest_letter)? })
            }
            _ => [Quality::Close, Quality::Medium, Quality::Free, Quality::Normal]
                .into_iter()
                .find(|quality| text.eq_ignore_ascii_case(quality.word()))
                .map(Self::Word),
        }
    }

    /// With the capital that the inch systems write: `2a` is 2A.
    pub(super) fn capital(self, form: Form) -> Self {
        match self {
            Self::Zones { pitch, crest }
                if pitch == crest
                    && matches!(
                        (form, pitch.position),
                        (Form::Unified | Form::UnifiedRounded, 'a' | 'b')
                            | (Form::Acme | Form::StubAcme, 'c' | 'g')
                    ) =>
            {
                Self::of(pitch.grade, pitch.position.to_ascii_uppercase())
            }
            _ => self,
        }
    }

    /// The side that the class is for in a system; `None` where it serves
    /// both (Acme 2G, a word) or is not a class of the system.
    ///
    /// ```
    /// use fits_core::standards::thread::{Class, Form, Side};
    /// let nut = Class::read("6H").expect("a class");
    /// assert_eq!(nut.side(Form::Metric), Some(Side::Internal));
    /// ```
    pub fn side(self, form: Form) -> Option<Side> {
        if let Self::Word(quality) = self {
            return match (form, quality) {
                (Form::Whitworth | Form::Ba, Quality::Close | Quality::Free) => {
                    Some(Side::External)
                }
                (Form::Whitworth, Quality::Normal) => Some(Side::Internal),
                _ => None,
            };
        }
        let Self::Zones { pitch: Zone { position, .. }, .. } = self else { return None };
        match form {
            Form::Metric | Form::Trapezoidal if position.is_ascii_lowercase() => {
                Some(Side::External)
            }
            Form::Metric | Form::Trapezoidal => Some(Side::Internal),
            Form::Unified | Form::UnifiedRounded if position == 'A' => Some(Side::External),
            Form::Unified | Form::UnifiedRounded if position == 'B' => Some(Side::Internal),
            // ISO 228-1 gives A and B to the external thread only.
            Form::PipeParallel => Some(Side::External),
            _ => None,
        }
    }
}

impl Zone {
    const fn both(self) -> Class {
        Class::Zones { pitch: self, crest: self }
    }
}

fn zone(grade: u8, letter: u8) -> Option<Zone> {
    (grade.is_ascii_digit() && grade != b'0' && letter.is_ascii_alphabetic())
        .then(|| Zone { grade: grade - b'0', position: letter.into() })
}

impl fmt::Display for Zone {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.grade {
            0 => write!(f, "{}", self.position),
            grade => write!(f, "{grade}{}", self.position),
        }
    }
}

impl fmt::Display for Class {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Zones { pitch, crest } if pitch == crest => pitch.fmt(f),
            Self::Zones { pitch, crest } => write!(f, "{pitch}{crest}"),
            Self::Word(quality) => f.write_str(quality.word()),
            Self::Sole => f.write_str("the one class"),
        }
    }
}
