//! What was typed, with its places: no tables, no meaning yet.

use std::ops::Range;

use fits_core::{
    shop::infeed::DialReads,
    size::{Number, Unit},
};

pub use crate::{
    questions::{
        align::asked::{Align, Collars},
        bushing::asked::BushingText,
        crib::asked::{CribQuery, FigureText, MaterialFigure, ToolText},
        general::asked::GeneralKind,
        job::asked::JobQuery,
        joint::asked::{Body, Ends, JointText, SleeveText, WishText},
        log::asked::{LogQuery, PlaceRead, Readings},
        part::{
            asked::{ClassText, Mate, Part, Tolerance, Work},
            measuring::{Measuring, Warmth},
        },
        pick::asked::Wanted,
        stack::asked::{LinkText, StackText},
        thread::asked::{Driven, Feed, Passes, Place, ThreadAsk, ThreadQuery},
    },
    words::amounts::{Amount, Dimension, Quantity, QuantityUnit, Temperatures},
};

pub use crate::questions::Query;

/// A part of the text and where it stood, in bytes.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Spot<T> {
    /// What it is.
    pub value: T,
    /// Where it stood.
    pub at: Range<usize>,
}

/// A size as typed: one number, or a small sum.
#[derive(Clone, Debug)]
#[non_exhaustive]
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
#[non_exhaustive]
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

/// The unit that bare numbers take.
#[derive(Clone, Copy, Debug, PartialEq, Eq, schemars::JsonSchema, serde::Serialize)]
#[expect(clippy::exhaustive_enums, reason = "sizes are thought in one of two systems")]
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
#[derive(Clone, Copy, Debug, PartialEq, Eq, schemars::JsonSchema, serde::Serialize)]
#[serde(rename_all = "lowercase")]
#[non_exhaustive]
pub enum Dial {
    /// The change of diameter.
    Diameter,
    /// The tool's own travel, half the change of diameter.
    Radius,
}

impl Dial {
    /// What it counts, for the core.
    pub(crate) const fn reads(self) -> DialReads {
        match self {
            Self::Diameter => DialReads::Diameter,
            Self::Radius => DialReads::Radius,
        }
    }

    /// The keyword.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Diameter => "diameter",
            Self::Radius => "radius",
        }
    }
}

/// The machine that work is cut on.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, schemars::JsonSchema, serde::Serialize)]
#[non_exhaustive]
pub enum Machine {
    /// A lathe.
    #[default]
    #[serde(rename = "lathe")]
    Lathe,
    /// A boring head on a mill.
    #[serde(rename = "boring head")]
    BoringHead,
}

impl Machine {
    /// Its name, as typed and as JSON has it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Lathe => "lathe",
            Self::BoringHead => "boring head",
        }
    }

    /// The machine of that name.
    pub fn named(name: &str) -> Option<Self> {
        [Self::Lathe, Self::BoringHead].into_iter().find(|one| one.word() == name)
    }
}
