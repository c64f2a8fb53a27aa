//! What was typed, with its places: no tables, no meaning yet.

use std::ops::Range;

use fits_core::{
    size::{Number, Unit},
    standards::iso286::Feature,
};

pub use crate::{
    questions::{
        align::asked::{Align, Collars},
        bushing::asked::BushingText,
        crib::asked::{CribQuery, FigureText, MaterialFigure, ToolText},
        general::asked::GeneralKind,
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

/// The machine that work is cut on.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, serde::Serialize)]
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

/// One line, read.
#[allow(missing_docs, reason = "the fields of a variant are named in its line")]
#[derive(Clone, Debug)]
pub enum Query {
    /// A size alone.
    Size(Size),
    /// A feature or a pair.
    Part(Box<Part>),
    /// `SIZE general CLASS`: an untoleranced size.
    General { size: Size, class: Spot<String>, kind: GeneralKind },
    /// `SIZE grade N`: a standard tolerance.
    Grade { size: Size, grade: Spot<String> },
    /// `keyway for SIZE`: the key and keyways of a shaft.
    Keyway(Size),
    /// `drill SIZE`: the nearest drills.
    Drill(Size),
    /// `pick SIZE clearance A..B`: classes that give it.
    Pick { size: Size, wanted: Wanted, from: Size, to: Size },
    /// `assemble SIZE …`: parts pressed or shrunk together.
    Assemble(Box<JointText>),
    /// `pick SIZE holds TORQUE …`: classes by what a joint must do.
    PickGrip { joint: Box<JointText>, wishes: Box<WishText> },
    /// `seat shaft SIZE LOAD`: the class for a rolling bearing's seat.
    Seat { feature: Feature, size: Size, load: Option<Spot<String>> },
    /// `align A B over L`: the tailstock.
    Align(Box<Align>),
    /// `rehearse` a part: the odds before cutting.
    Rehearse(Box<Part>),
    /// A thread and what is asked of it.
    Thread(Box<ThreadQuery>),
    /// `bushing SIZE od SIZE …`: a bushing, its housing and its shaft.
    Bushing(Box<BushingText>),
    /// `stack LINK LINK …`: the play that parts end to end leave.
    Stack(Box<StackText>),
    /// `units`, with the new one if there is one.
    Units(Option<Units>),
    /// `dial`, with the new one if there is one.
    Dial(Option<Dial>),
    /// `dial graduation SIZE`: the division of the dials.
    Graduation(Size),
    /// `dial turn SIZE`: what a whole turn of the dials reads.
    DialTurn(Size),
    /// `least chip SIZE`: the least cut on the diameter that is no rubbing.
    LeastChip(Size),
    /// `top slide SIZE`: its divisions; `top slide none`: there is none.
    TopSlide(Option<Size>),
    /// `machine`, with the new one as typed if there is one.
    Machine(Option<Spot<String>>),
    /// `risk`, with the new one as typed if there is one.
    Risk(Option<Spot<String>>),
    /// `instrument`, with the new one if there is one.
    Instrument(Option<Spot<String>>),
    /// `material`, with the new one if there is one.
    Material(Option<Spot<String>>),
    /// An entry of the pass log, or a question about it.
    Log(Spot<LogQuery>),
    /// A question about the crib, or a change of it.
    Crib(CribQuery),
    /// `why`, of the last answer or of the query after it.
    Why(Option<Box<Query>>),
    /// `help`, with the topic and its place.
    Help(Option<Spot<String>>),
}
