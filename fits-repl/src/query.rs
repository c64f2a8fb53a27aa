//! What was typed, with its places: no tables, no meaning yet.

use std::ops::Range;

use fits_core::{
    size::{Number, Unit},
    standards::iso286::Feature,
};

/// A part of the text and where it stood, in bytes.
#[derive(Clone, Debug)]
pub struct Spot<T> {
    /// What it is.
    pub value: T,
    /// Where it stood.
    pub at: Range<usize>,
}

/// A size as typed: one number, or a small sum.
#[derive(Clone, Debug)]
pub enum Expression {
    /// A number, with its unit if one was typed.
    Number(Number, Option<Unit>),
    /// A drill gauge by its name: `#7`, `F`.
    Gauge(String),
    /// The opposite of another.
    Negative(Box<Spot<Expression>>),
    /// Two joined by an operator.
    Two(Box<Spot<Expression>>, Operator, Box<Spot<Expression>>),
}

/// An operator between two sizes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Operator {
    /// `+`
    Plus,
    /// `-`
    Minus,
    /// `*`
    Times,
    /// `/`
    Over,
}

/// A size and its place.
pub type Size = Spot<Expression>;

/// A tolerance class as typed: `H7`.
#[derive(Clone, Debug)]
pub struct ClassText {
    /// The letters.
    pub letters: Spot<String>,
    /// The digits after them.
    pub grade: Spot<String>,
}

impl ClassText {
    /// Where the whole class stood.
    pub fn at(&self) -> Range<usize> {
        self.letters.at.start..self.grade.at.end
    }
}

/// How the limits of a feature or a pair were given.
#[derive(Clone, Debug)]
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
}

/// What to do with the feature.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
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
}

/// The unit that bare numbers take.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize)]
pub enum Units {
    /// Millimetres.
    #[serde(rename = "mm")]
    Millimetres,
    /// Inches.
    #[serde(rename = "in")]
    Inches,
}

impl Units {
    /// The unit.
    pub const fn unit(self) -> Unit {
        match self {
            Self::Millimetres => Unit::Millimetre,
            Self::Inches => Unit::Inch,
        }
    }
}

/// What a dial reads when the tool moves.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Dial {
    /// The change of diameter.
    Diameter,
    /// The tool's own travel, half the change of diameter.
    Radius,
}

impl Dial {
    /// The keyword.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Diameter => "diameter",
            Self::Radius => "radius",
        }
    }
}

/// One line, read.
#[derive(Clone, Debug)]
pub enum Query {
    /// A size alone.
    Size(Size),
    /// A feature or a pair.
    Part(Box<Part>),
    /// `units`, with the new one if there is one.
    Units(Option<Units>),
    /// `dial`, with the new one if there is one.
    Dial(Option<Dial>),
    /// `why`, of the last answer or of the query after it.
    Why(Option<Box<Query>>),
    /// `help`, with the topic and its place.
    Help(Option<Spot<String>>),
}
