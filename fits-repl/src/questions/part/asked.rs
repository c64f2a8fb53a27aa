//! A feature or a pair, as typed.

use std::ops::Range;

use fits_core::standards::iso286::Feature;

use crate::query::{Measuring, Size, Spot, Temperatures};

/// A tolerance class as typed: `H7`.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct ClassText {
    /// All of it.
    pub typed: Spot<String>,
    /// How many letters it begins with.
    pub(crate) letters: usize,
}

impl ClassText {
    /// Where the whole class stood.
    pub fn at(&self) -> Range<usize> {
        self.typed.at.clone()
    }

    /// The letters.
    pub fn letters(&self) -> &str {
        self.typed.value.get(..self.letters).unwrap_or_default()
    }

    /// What stands after them.
    pub fn grade(&self) -> &str {
        self.typed.value.get(self.letters..).unwrap_or_default()
    }

    /// Where the letters end.
    pub(crate) const fn parted_at(&self) -> usize {
        self.typed.at.start + self.letters
    }
}

/// How the limits of a feature or a pair were given.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub enum Tolerance {
    /// By one class.
    Class(ClassText),
    /// By two: hole and shaft.
    Pair(ClassText, ClassText),
    /// By two signed deviations, in the order typed.
    Deviations(Size, Size),
    /// By one deviation either way.
    Either(Size),
    /// By both limits; the size before `..` is the first of them.
    UpTo(Size),
    /// Not at all: the size is a part in hand, or a word gives the fit.
    Bare,
}

/// The other feature of an unlike pair: `shaft 19.98..19.99`, `shaft g6`.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Mate {
    /// Which it is.
    pub feature: Spot<Feature>,
    /// Its size; the pair's nominal size where only a class was given.
    pub size: Option<Size>,
    /// Its limits.
    pub tolerance: Tolerance,
}

/// What to do with the feature.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Work {
    /// Ream the hole.
    Ream,
    /// Bore the hole.
    Bore,
    /// Turn the shaft.
    Turn,
}

impl Work {
    /// The keyword.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Ream => "ream",
            Self::Bore => "bore",
            Self::Turn => "turn",
        }
    }
}

/// A feature or a pair, with its clauses.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Part {
    /// `ream`, `bore` or `turn` before it.
    pub work: Option<Spot<Work>>,
    /// `hole` or `shaft` before it.
    pub feature: Option<Spot<Feature>>,
    /// The nominal size, or the first of two limits.
    pub size: Size,
    /// Its limits.
    pub tolerance: Tolerance,
    /// `from SIZE`.
    pub from: Option<Size>,
    /// `= SIZE`: a reading of the one feature, or of the hole of a pair.
    pub reading: Option<Size>,
    /// `= SIZE/SIZE`: the shaft's.
    pub second_reading: Option<Size>,
    /// `hole = SIZE`.
    pub hole: Option<Size>,
    /// `shaft = SIZE`.
    pub shaft: Option<Size>,
    /// A bought-in part by its name, before the size: `dowel`.
    pub bought: Option<Spot<String>>,
    /// The other feature of an unlike pair.
    pub mate: Option<Box<Mate>>,
    /// How it fits, in a shop's words: `light press`.
    pub word: Option<Spot<String>>,
    /// What the outer part is made of: `hub aluminium`.
    pub hub: Option<Spot<String>>,
    /// `long SIZE`: how long the parts are engaged.
    pub long: Option<Size>,
    /// `turns`: one part turns in the other.
    pub turns: Option<Spot<()>>,
    /// `thin`, `thin tube`, `thin wall`.
    pub thin: Option<Spot<()>>,
    /// How it was measured.
    pub measuring: Option<Box<Measuring>>,
    /// What the shaft is made of: `shaft steel`.
    pub shaft_material: Option<Spot<String>>,
    /// `warm TEMP` or `warm TEMP..TEMP`: where the pair works.
    pub warm: Option<Box<Temperatures>>,
}

impl Part {
    /// A feature or a pair with no clauses.
    pub const fn new(
        work: Option<Spot<Work>>,
        feature: Option<Spot<Feature>>,
        size: Size,
        tolerance: Tolerance,
    ) -> Self {
        Self {
            work,
            feature,
            size,
            tolerance,
            from: None,
            reading: None,
            second_reading: None,
            hole: None,
            shaft: None,
            bought: None,
            mate: None,
            word: None,
            hub: None,
            long: None,
            turns: None,
            thin: None,
            measuring: None,
            shaft_material: None,
            warm: None,
        }
    }
}
