//! A feature of a part: its kind, its size and what was read on it.

use crate::{
    size::{Deviations, Length, Unit},
    standards::iso286::Feature as Surface,
};
use core::ops::Range;

/// What kind of a size a feature has.
///
/// ```
/// use fits_core::{job::whole::SizeKind, standards::iso286::Feature};
/// assert_eq!((SizeKind::Hole.word(), SizeKind::Hole.surface()), ("hole", Some(Feature::Hole)));
/// assert_eq!(SizeKind::Thread.surface(), None);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "Side"))]
#[cfg_attr(feature = "serde", serde(rename_all = "lowercase"))]
#[non_exhaustive]
pub enum SizeKind {
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

impl SizeKind {
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
///
/// ```
/// use fits_core::job::whole::NominalSize;
/// let (least, most) = ("19mm".parse()?, "20mm".parse()?);
/// assert_eq!(NominalSize::Size(most).size(), Some(most));
/// assert_eq!(NominalSize::Between(least, most).size(), None);
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[expect(
    clippy::exhaustive_enums,
    reason = "each is told, or acted on, in its own way: a new one must not pass unseen"
)]
pub enum NominalSize {
    /// One size.
    Size(Length),
    /// Anything between two: an end play of 0.2 to 0.4 mm.
    Between(Length, Length),
    /// A thread by its designation: `5/16-18`.
    Thread(String),
}

impl NominalSize {
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
///
/// ```
/// use fits_core::{job::whole::{PartFeature, NominalSize, SizeKind}, size::Unit};
/// let size = "20mm".parse()?;
/// let bore = PartFeature::new(0, "bore", SizeKind::Hole, Unit::Millimetre, NominalSize::Size(size));
/// assert_eq!(bore.size(), Some(size));
/// assert!(bore.reading().is_none(), "nothing was read on it yet");
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is built whole: what is new must be said by whoever builds one"
)]
pub struct PartFeature {
    /// The part that it is on.
    pub part: usize,
    /// As written: `gear seat`; `bore` where the note only says that there is one.
    pub name: String,
    /// The line that names it first.
    pub line: usize,
    /// Its place in that line, in bytes.
    pub at: Range<usize>,
    /// What kind of size.
    pub side: SizeKind,
    /// The size wanted; the latest word of the note.
    pub nominal: Option<NominalSize>,
    /// The unit that the size is written in.
    pub unit: Unit,
    /// How that unit is known.
    pub unit_from: UnitFrom,
    /// Its tolerance class: `f7`.
    pub class: Option<String>,
    /// Its own deviations: `+0.1/0`.
    pub deviations: Option<Deviations>,
    /// What was read on it, in the order of the note; the last one counts.
    pub readings: Vec<NotedReading>,
    /// Said to be done.
    pub done: bool,
    /// Never listed: a mate that another feature needs.
    pub implied: bool,
    /// The features that this one stands for, where it was said of several
    /// alike and they were told apart later: `journals`, then `journal L`.
    pub instances: Vec<usize>,
    /// Lines that said something else before, with what they said.
    pub earlier: Vec<(usize, NominalSize)>,
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
pub struct NotedReading {
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

impl PartFeature {
    /// A feature of which no more is said than its kind and its size.
    ///
    /// ```
    /// use fits_core::{job::whole::{PartFeature, NominalSize, SizeKind}, size::Unit};
    /// let thread = NominalSize::Thread("M10".into());
    /// let hole = PartFeature::new(0, "tapped hole", SizeKind::Thread, Unit::Millimetre, thread);
    /// assert_eq!((hole.size(), hole.done), (None, false));
    /// ```
    pub fn new(
        part: usize,
        name: &str,
        side: SizeKind,
        unit: Unit,
        nominal: impl Into<Option<NominalSize>>,
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
        self.nominal.as_ref().and_then(NominalSize::size)
    }

    /// The reading that counts: the last one taken on the new part.
    pub fn reading(&self) -> Option<&NotedReading> {
        self.readings.iter().rev().find(|reading| reading.state != State::OldPart)
    }
}
