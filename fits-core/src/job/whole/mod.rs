//! A whole job: the parts of a drawing, what is on them, what goes into what,
//! and what was read. Plain types; who reads them out of a note is not a part
//! of this.
//!
//! Features, parts and mates are named by their index in the job's own lists.

mod bench;
mod joint;
mod worked;

use core::ops::Range;

use crate::{
    shop::words::{Hub, Word},
    size::{Deviations, Length, Limits, Unit},
    standards::iso286::Feature as Surface,
};

pub use bench::{Blocked, Conflict, First, Play};
pub use joint::{Cut, Paired};
pub use worked::Worked;

/// Everything that a note says.
///
/// ```
/// use fits_core::job::whole::{Feature, FitSaid, First, Job, Mate, Nominal, Part, Side};
/// use fits_core::size::Unit;
/// let size = |text: &str| text.parse().map(Nominal::Size);
/// let mut job = Job::default();
/// job.parts = ["frame", "crank"].map(|name| Part { name: name.into(), ..Part::default() }).into();
/// job.features = vec![
///     Feature::new(0, "bore", Side::Hole, Unit::Inch, size("3/4in")?),
///     Feature::new(1, "journal", Side::Shaft, Unit::Inch, size("3/4in")?),
/// ];
/// job.mates = vec![Mate { line: 1, hole: 0, shaft: 1, fit: FitSaid::default(), called: None }];
/// assert_eq!(job.full_name(1), "crank journal");
/// assert_eq!(job.features_of(1).count(), 1);
/// let (_, mate) = job.mates_of(1).next().expect("it goes into the bore");
/// assert_eq!(mate.other(1), 0);
/// assert_eq!(job.first(mate), (0, First::Hole));
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Job {
    /// The first line, where it is a title.
    pub title: Option<String>,
    /// The parts, in the order of the note.
    pub parts: Vec<Part>,
    /// The features of all parts, in the order of the note.
    pub features: Vec<Feature>,
    /// What goes into what.
    pub mates: Vec<Mate>,
    /// What each line says, in the order of the note.
    pub said: Vec<Said>,
    /// What is to be asked, and what the writer asks.
    pub questions: Vec<Question>,
    /// All other text of the note, line by line: echoed, never dropped.
    pub remarks: Vec<Remark>,
}

/// One part, or several alike.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is built whole: what is new must be said by whoever builds one"
)]
pub struct Part {
    /// As written: `crank shaft`.
    pub name: String,
    /// The line that names it first, the first line is 1.
    pub line: usize,
    /// What it is made of, as written.
    pub material: Option<String>,
    /// How many.
    pub count: Option<u32>,
    /// Bought, not made.
    pub bought: bool,
}

/// What kind of a size a feature has.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "serde", serde(rename_all = "lowercase"))]
#[non_exhaustive]
pub enum Side {
    /// A hole: a bore, an inside.
    Hole,
    /// A shaft: a journal, an outside.
    Shaft,
    /// A thread.
    Thread,
    /// A length along the part, a thickness, a depth.
    Length,
    /// A keyway, a flat.
    Other,
}

impl Side {
    /// The side of a fit, where it is one.
    pub const fn surface(self) -> Option<Surface> {
        match self {
            Self::Hole => Some(Surface::Hole),
            Self::Shaft => Some(Surface::Shaft),
            _ => None,
        }
    }

    /// Its word.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Hole => "hole",
            Self::Shaft => "shaft",
            Self::Thread => "thread",
            Self::Length => "length",
            Self::Other => "other",
        }
    }
}

/// The size that a feature is to have.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[expect(
    clippy::exhaustive_enums,
    reason = "each is told, or acted on, in its own way: a new one must not pass unseen"
)]
pub enum Nominal {
    /// One size.
    Size(Length),
    /// Anything between two: an end play of 0.2 to 0.4 mm.
    Between(Length, Length),
    /// A thread by its designation: `5/16-18`.
    Thread(String),
}

impl Nominal {
    /// One size: the middle of a range has none.
    pub const fn size(&self) -> Option<Length> {
        match self {
            Self::Size(size) => Some(*size),
            _ => None,
        }
    }
}

/// How the unit of a size is known.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[expect(
    clippy::exhaustive_enums,
    reason = "each is told, or acted on, in its own way: a new one must not pass unseen"
)]
pub enum UnitFrom {
    /// Written beside the number or in its row.
    #[default]
    Written,
    /// A line of the note that says it for all.
    Line(usize),
    /// A fraction, a leading point, or what the rest of the note is in.
    Context,
}

/// A surface or a length of a part.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is built whole: what is new must be said by whoever builds one"
)]
pub struct Feature {
    /// The part that it is on.
    pub part: usize,
    /// As written: `gear seat`; `bore` where the note only says that there is one.
    pub name: String,
    /// The line that names it first.
    pub line: usize,
    /// Its place in that line, in bytes.
    pub at: Range<usize>,
    /// What kind of size.
    pub side: Side,
    /// The size wanted; the latest word of the note.
    pub nominal: Option<Nominal>,
    /// The unit that the size is written in.
    pub unit: Unit,
    /// How that unit is known.
    pub unit_from: UnitFrom,
    /// Its tolerance class: `f7`.
    pub class: Option<String>,
    /// Its own deviations: `+0.1/0`.
    pub deviations: Option<Deviations>,
    /// What was read on it, in the order of the note; the last one counts.
    pub readings: Vec<Reading>,
    /// Said to be done.
    pub done: bool,
    /// Never listed: a mate that another feature needs.
    pub implied: bool,
    /// The features that this one stands for, where it was said of several
    /// alike and they were told apart later: `journals`, then `journal L`.
    pub instances: Vec<usize>,
    /// Lines that said something else before, with what they said.
    pub earlier: Vec<(usize, Nominal)>,
}

/// When a reading was taken.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[expect(
    clippy::exhaustive_enums,
    reason = "each is told, or acted on, in its own way: a new one must not pass unseen"
)]
pub enum State {
    /// The part by itself, or nothing said.
    #[default]
    Free,
    /// Pressed into its place.
    InPlace,
    /// The worn part that is being replaced.
    OldPart,
}

/// A size that was measured.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is built whole: what is new must be said by whoever builds one"
)]
pub struct Reading {
    /// The line that says it.
    pub line: usize,
    /// Its place in that line, in bytes.
    pub at: Range<usize>,
    /// What was read.
    pub size: Length,
    /// When.
    pub state: State,
    /// The date beside it, as written.
    pub date: Option<String>,
}

/// A hole and a shaft, or two threads, that go together.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is built whole: what is new must be said by whoever builds one"
)]
pub struct Mate {
    /// The line that says it first.
    pub line: usize,
    /// The feature with the hole or the nut's thread.
    pub hole: usize,
    /// The feature that goes into it.
    pub shaft: usize,
    /// What is said of the fit.
    pub fit: FitSaid,
    /// The note's word for the other part, where it is not that part's name.
    pub called: Option<String>,
}

/// A fit as a note says it.
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is built whole: what is new must be said by whoever builds one"
)]
pub struct FitSaid {
    /// As written: `press`, `running, 1.5 to 2 thou`.
    pub words: String,
    /// The shop's word that it is.
    pub word: Option<Word>,
    /// Clearance wanted, interference below 0: `2 thou`.
    pub clearance: Option<Limits>,
}

/// What one line says of one feature.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is built whole: what is new must be said by whoever builds one"
)]
pub struct Said {
    /// The line.
    pub line: usize,
    /// The feature.
    pub feature: usize,
    /// The size said here.
    pub nominal: Option<Nominal>,
    /// The index, among the feature's, of a reading said here.
    pub reading: Option<usize>,
    /// The index of the mate said here.
    pub mate: Option<usize>,
}

/// Something to be answered by a person, or asked by one.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is built whole: what is new must be said by whoever builds one"
)]
pub struct Question {
    /// The line.
    pub line: usize,
    /// The place in that line, in bytes.
    pub at: Range<usize>,
    /// What is asked.
    pub text: String,
    /// What would settle it, or the answer to the writer's own question.
    pub answer: Option<String>,
    /// The writer of the note asks it.
    pub by_writer: bool,
}

/// Text that is no size.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is built whole: what is new must be said by whoever builds one"
)]
pub struct Remark {
    /// The line.
    pub line: usize,
    /// What it says.
    pub text: String,
    /// The part that it stands under.
    pub part: Option<usize>,
}

impl Job {
    /// The features of a part.
    pub fn features_of(&self, part: usize) -> impl Iterator<Item = (usize, &Feature)> {
        self.features.iter().enumerate().filter(move |(_, feature)| feature.part == part)
    }

    /// The mates that a feature takes part in.
    pub fn mates_of(&self, feature: usize) -> impl Iterator<Item = (usize, &Mate)> {
        let takes_part = move |mate: &Mate| mate.hole == feature || mate.shaft == feature;
        self.mates.iter().enumerate().filter(move |(_, mate)| takes_part(mate))
    }

    /// `crank shaft gear seat`; the part's name alone where the feature has none.
    pub fn full_name(&self, feature: usize) -> String {
        let Some(feature) = self.features.get(feature) else { return String::new() };
        let part = self.parts.get(feature.part).map_or("", |part| part.name.as_str());
        format!("{part} {}", feature.name).trim().to_owned()
    }
}

impl Mate {
    /// The other one of the two features.
    pub const fn other(&self, feature: usize) -> usize {
        if self.hole == feature { self.shaft } else { self.hole }
    }
}

impl Feature {
    /// A feature of which no more is said than its kind and its size.
    pub fn new(
        part: usize,
        name: &str,
        side: Side,
        unit: Unit,
        nominal: impl Into<Option<Nominal>>,
    ) -> Self {
        Self {
            part,
            name: name.to_owned(),
            line: 1,
            at: 0..0,
            side,
            nominal: nominal.into(),
            unit,
            unit_from: UnitFrom::Written,
            class: None,
            deviations: None,
            readings: Vec::new(),
            done: false,
            implied: false,
            instances: Vec::new(),
            earlier: Vec::new(),
        }
    }

    /// Its one size: a thread has none, nor what may be anything between two.
    pub fn size(&self) -> Option<Length> {
        self.nominal.as_ref().and_then(Nominal::size)
    }

    /// The reading that counts: the last one taken on the new part.
    pub fn reading(&self) -> Option<&Reading> {
        self.readings.iter().rev().find(|reading| reading.state != State::OldPart)
    }
}

impl Part {
    /// What a fit in this part, or with it as a bushing, goes by.
    pub fn hub(&self) -> Hub {
        let said = format!("{} {}", self.name, self.material.as_deref().unwrap_or_default());
        let said = said.to_lowercase();
        let holds = |words: &[&str]| words.iter().any(|word| said.contains(word));
        let is_bush = holds(&["bush", "bearing", "brg"]);
        let bronze = ["bronze", "brass", "lg2", "pb1", "cusn", "gunmetal", "sae 660"];
        if holds(&["nylon", "acetal", "delrin", "ptfe", "plastic", "pom", "hdpe", "uhmw"]) {
            Hub::PlasticBushing
        } else if holds(&bronze) && is_bush {
            Hub::BronzeBushing
        } else if holds(&["alumin", "6061", "dural"]) {
            Hub::Aluminium
        } else if holds(&["cast iron", "en-gjl", "grey iron", "gray iron"])
            || said.split_whitespace().any(|word| word == "ci")
        {
            Hub::CastIron
        } else {
            Hub::Steel
        }
    }
}
