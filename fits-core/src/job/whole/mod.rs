//! A whole job: the parts of a drawing, what is on them, what goes into what,
//! and what was read. Plain types; who reads them out of a note is not a part
//! of this.
//!
//! Features, parts and mates are named by their index in the job's own lists.

mod bench;
mod feature;
mod joint;
mod worked;

use core::ops::Range;

use crate::{
    shop::words::{Hub, Word},
    size::Limits,
};

pub use bench::{Blocked, Conflict, EndPlay, First};
pub use feature::{NominalSize, NotedReading, PartFeature, SizeKind, State, UnitFrom};
pub use joint::{Cut, Paired};
pub use worked::Worked;

/// Everything that a note says.
///
/// ```
/// use fits_core::job::whole::{PartFeature, FitSaid, First, Job, Mate, NominalSize, Part, SizeKind};
/// use fits_core::size::Unit;
/// let size = |text: &str| text.parse().map(NominalSize::Size);
/// let mut job = Job::default();
/// job.parts = ["frame", "crank"].map(|name| Part { name: name.into(), ..Part::default() }).into();
/// job.features = vec![
///     PartFeature::new(0, "bore", SizeKind::Hole, Unit::Inch, size("3/4in")?),
///     PartFeature::new(1, "journal", SizeKind::Shaft, Unit::Inch, size("3/4in")?),
/// ];
/// job.mates = vec![Mate { line: 1, hole: 0, shaft: 1, fit: FitSaid::default(), called: None }];
/// assert_eq!(job.full_name(1), "crank journal");
/// assert_eq!(job.features_of(1).count(), 1);
/// let (_, mate) = job.mates_of(1).next().expect("it goes into the bore");
/// assert_eq!(mate.other(1), 0);
/// assert_eq!(job.first(mate), (0, First::Hole));
/// assert_eq!((job.blocked().len(), job.conflicts().len(), job.end_play()), (0, 0, None));
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
    pub features: Vec<PartFeature>,
    /// What goes into what.
    pub mates: Vec<Mate>,
    /// What each line says, in the order of the note.
    pub said: Vec<Said>,
    /// What is to be asked, and what the writer asks.
    pub questions: Vec<Question>,
    /// All other text of the note, line by line: echoed, never dropped.
    pub remarks: Vec<NotedRemark>,
}

/// One part, or several alike.
///
/// ```
/// use fits_core::{job::whole::Part, shop::words::Hub};
/// let body = Part { material: Some("cast iron".into()), ..Part::default() };
/// assert_eq!(body.hub(), Hub::CastIron);
/// ```
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
    pub nominal: Option<NominalSize>,
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
pub struct NotedRemark {
    /// The line.
    pub line: usize,
    /// What it says.
    pub text: String,
    /// The part that it stands under.
    pub part: Option<usize>,
}

impl Job {
    /// The features of a part.
    ///
    /// ```
    /// use fits_core::{job::whole::{PartFeature, Job, Part, SizeKind}, size::Unit};
    /// let mut job = Job::default();
    /// job.parts = vec![Part::default(), Part::default()];
    /// job.features = vec![
    ///     PartFeature::new(0, "bore", SizeKind::Hole, Unit::Inch, None),
    ///     PartFeature::new(1, "journal", SizeKind::Shaft, Unit::Inch, None),
    /// ];
    /// let found: Vec<_> = job.features_of(1).map(|(index, it)| (index, it.name.as_str())).collect();
    /// assert_eq!(found, [(1, "journal")]);
    /// ```
    pub fn features_of(&self, part: usize) -> impl Iterator<Item = (usize, &PartFeature)> {
        self.features.iter().enumerate().filter(move |(_, feature)| feature.part == part)
    }

    /// The mates that a feature takes part in.
    ///
    /// ```
    /// use fits_core::job::whole::{FitSaid, Job, Mate};
    /// let mut job = Job::default();
    /// let mate = |hole, shaft| Mate { line: 1, hole, shaft, fit: FitSaid::default(), called: None };
    /// job.mates = vec![mate(0, 1), mate(2, 3)];
    /// let found: Vec<_> = job.mates_of(3).map(|(index, _)| index).collect();
    /// assert_eq!(found, [1]);
    /// ```
    pub fn mates_of(&self, feature: usize) -> impl Iterator<Item = (usize, &Mate)> {
        let takes_part = move |mate: &Mate| mate.hole == feature || mate.shaft == feature;
        self.mates.iter().enumerate().filter(move |(_, mate)| takes_part(mate))
    }

    /// `crank shaft gear seat`; the part's name alone where the feature has none.
    ///
    /// ```
    /// use fits_core::{job::whole::{PartFeature, Job, Part, SizeKind}, size::Unit};
    /// let mut job = Job::default();
    /// job.parts = vec![Part { name: "crank shaft".into(), ..Part::default() }];
    /// job.features = vec![PartFeature::new(0, "gear seat", SizeKind::Shaft, Unit::Inch, None)];
    /// assert_eq!(job.full_name(0), "crank shaft gear seat");
    /// ```
    pub fn full_name(&self, feature: usize) -> String {
        let Some(feature) = self.features.get(feature) else { return String::new() };
        let part = self.parts.get(feature.part).map_or("", |part| part.name.as_str());
        format!("{part} {}", feature.name).trim().to_owned()
    }
}

impl Mate {
    /// The other one of the two features.
    ///
    /// ```
    /// use fits_core::job::whole::{FitSaid, Mate};
    /// let mate = Mate { line: 1, hole: 4, shaft: 7, fit: FitSaid::default(), called: None };
    /// assert_eq!((mate.other(4), mate.other(7)), (7, 4));
    /// ```
    pub const fn other(&self, feature: usize) -> usize {
        if self.hole == feature { self.shaft } else { self.hole }
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
