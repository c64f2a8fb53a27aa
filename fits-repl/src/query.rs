//! What was typed, with its places: no tables, no meaning yet.

use std::ops::Range;

use fits_core::{
    size::{Number, Unit},
    standards::iso286::Feature,
};

pub use crate::questions::bushing::asked::BushingText;
pub use crate::questions::joint::asked::Body;
pub use crate::questions::joint::asked::Ends;
pub use crate::questions::joint::asked::JointText;
pub use crate::questions::joint::asked::SleeveText;
pub use crate::questions::joint::asked::WishText;
pub use crate::questions::part::measuring::Align;
pub use crate::questions::part::measuring::Collars;
pub use crate::questions::part::measuring::Measuring;
pub use crate::questions::part::measuring::Warmth;
pub use crate::questions::stack::asked::LinkText;
pub use crate::questions::stack::asked::StackText;
pub use crate::questions::thread::asked::Driven;
pub use crate::questions::thread::asked::Feed;
pub use crate::questions::thread::asked::Passes;
pub use crate::questions::thread::asked::Place;
pub use crate::questions::thread::asked::ThreadAsk;
pub use crate::questions::thread::asked::ThreadQuery;
pub use crate::words::amounts::Amount;
pub use crate::words::amounts::Dimension;
pub use crate::words::amounts::Quantity;
pub use crate::words::amounts::QuantityUnit;
pub use crate::words::amounts::Temperatures;

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
    /// Not at all: the size is a part in hand, or a word gives the fit.
    Bare,
}

/// The other feature of an unlike pair: `shaft 19.98..19.99`, `shaft g6`.
#[derive(Clone, Debug)]
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

/// What general tolerance is asked for (ISO 2768-1).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GeneralKind {
    /// A linear size.
    Linear,
    /// An external radius or a chamfer height.
    BrokenEdge,
    /// An angle, by the length of its shorter side.
    Angle,
}

/// What is wanted of a pair.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wanted {
    /// Play.
    Clearance,
    /// Grip.
    Interference,
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

/// The readings at one place of the part.
#[derive(Clone, Debug)]
pub struct PlaceRead {
    /// Its name, where one was said.
    pub name: Option<Spot<String>>,
    /// What was read there, one at least.
    pub sizes: Vec<Size>,
}

/// What was read for an entry of the log.
#[derive(Clone, Debug)]
pub struct Readings {
    /// Place by place; one at least.
    pub places: Vec<PlaceRead>,
    /// How warm the part was, where that was said.
    pub at: Option<Warmth>,
    /// What it is made of, where that was said beside the temperature.
    pub material: Option<Spot<String>>,
}

impl Readings {
    /// Every reading, in order.
    pub fn sizes(&self) -> impl DoubleEndedIterator<Item = &Size> {
        self.places.iter().flat_map(|place| &place.sizes)
    }

    /// From the first reading to the last.
    pub fn at(&self) -> Range<usize> {
        let mut sizes = self.sizes();
        let first = sizes.next().map_or(0..0, |size| size.at.clone());
        first.start..sizes.next_back().map_or(first.end, |size| size.at.end)
    }
}

/// What is entered in a pass log, or asked of it.
#[allow(missing_docs, reason = "the fields of a variant are named in its line")]
#[derive(Clone, Debug)]
pub enum LogQuery {
    /// `cut SIZE = READINGS`: dialled and read.
    Cut { dial: Size, read: Option<Readings>, sure: bool },
    /// `spring = READINGS`: a pass without infeed, and what was read.
    Spring { read: Option<Readings>, sure: bool },
    /// `read READINGS`: read again.
    Read { read: Readings, sure: bool },
    /// `undo`: the last entry is taken back.
    Undo,
    /// `done`: the part is finished.
    Done { sure: bool },
    /// `scrap`: it is scrap.
    Scrap,
    /// `log`: the log as it stands, or the list of logs where none is open.
    Show,
    /// `log list`: the logs there are.
    List,
    /// `log open NAME`: back to one of them.
    Open(Spot<String>),
    /// `log leave`: leave it as it is.
    Leave,
}

/// A tool for the crib, as typed.
#[allow(missing_docs, reason = "the fields of a variant are named in its line")]
#[derive(Clone, Debug)]
pub enum ToolText {
    /// `drill SIZE`.
    Drill(Size),
    /// `drill set SERIES A..B step SIZE`.
    DrillSet { series: Spot<String>, range: Option<(Size, Size)>, step: Option<Size> },
    /// `reamer SIZE cuts SIZE`.
    Reamer { size: Size, cuts: Option<Size> },
    /// `tap THREAD`.
    Tap(Spot<String>),
    /// `pin SIZE`.
    Pin(Size),
    /// `bar SIZE reach SIZE`, by the smallest bore it goes into.
    Bar { bore: Size, reach: Option<Size> },
    /// `instrument NAME repeat SIZE bias SIZE`.
    Instrument { name: Spot<String>, repeat: Size, bias: Option<Size> },
    /// `material NAME`, then its figures.
    Material { name: Spot<String>, figures: Vec<MaterialFigure> },
}

/// One figure of a material, as typed.
#[derive(Clone, Debug)]
pub struct MaterialFigure {
    /// Its name: `modulus`.
    pub name: Spot<String>,
    /// What was typed after it.
    pub read: FigureText,
}

/// What was typed of a material's figure.
#[derive(Clone, Debug)]
pub enum FigureText {
    /// A quantity with its unit, as a joint's.
    Amount(Amount),
    /// Poisson's ratio.
    Ratio(Spot<Number>),
}

/// What is asked of the crib.
#[derive(Clone, Debug)]
pub enum CribQuery {
    /// `crib`: all of it.
    Show,
    /// `crib add TOOL`.
    Add(Box<Spot<ToolText>>),
    /// `crib remove N`, by the number that `crib` shows.
    Remove(Spot<usize>),
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
