//! The one error of the crate: opaque, with private kinds by area.

use core::fmt;

use crate::{
    size::{Length, Unit, inches},
    speech::{Figure, Speech},
};

/// Why a question could not be answered.
///
/// The kinds behind it are private; ask the `is_…` questions that matter to a
/// caller and show the rest with [`Display`](fmt::Display), which states one
/// fact in one sentence. [`Error::advice`] is the next step, where there is
/// one, and [`Error::instead`] the nearest tolerance class that would work.
///
/// ```
/// use fits_core::{Length, standards::iso286::Class};
/// let class: Class = "A11".parse()?;
/// let error = class.limits(Length::from_micrometres(800)?).unwrap_err();
/// assert_eq!(error.to_string(), "holes A are not defined at 0.8 mm: letters A and B start above 1 mm");
/// assert_eq!(error.instead().map(|class| class.to_string()).as_deref(), Some("C11"));
/// assert!(error.is_not_defined() && !error.is_out_of_table());
/// assert_eq!((error.subject(), error.choices().len()), (None, 0));
/// let error = "20 H7".parse::<Length>().unwrap_err();
/// assert!(error.is_unreadable() && !(error.is_not_listed() || error.is_ambiguous()));
/// assert_eq!((error.span(), error.advice().as_str()), (Some(2..5), "write `20mm` or `3/4in`"));
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, PartialEq)]
pub struct Error(Box<Detail>);

#[derive(Clone, PartialEq)]
struct Detail {
    kind: Kind,
    at: Option<(usize, usize)>,
    instead: Option<crate::standards::iso286::Class>,
    subject: Option<Subject>,
}

#[derive(Clone, PartialEq)]
pub(crate) enum Kind {
    /// Arithmetic left the range of a length.
    OutOfRange,
    /// A text is not a size.
    NotASize { why: &'static str, advice: &'static str },
    /// A text is not a tolerance class.
    NotAClass { why: Speech, advice: String },
    /// A text is not a thread's designation.
    NotAThread { why: Speech, advice: String },
    /// The standard's tables do not reach the size.
    OutOfTable { nominal: Length, table: &'static str, over: Length, up_to: Length },
    /// The same, of a table in inches.
    OutOfInchTable { nominal: Length, table: String, over: Length, up_to: Length },
    /// The standard defines no such class at this size.
    NotDefined { why: Speech },
    /// The same, with the next step.
    NotGiven { why: Speech, advice: String },
    /// The lower limit is above the upper limit.
    CrossedLimits { lower: Length, upper: Length },
    /// Parts of a fit that do not belong together.
    NotAPair { why: Speech },
    /// A plan that cannot be made.
    NoPlan { why: Speech },
    /// A figure beyond what the work allows, with the range that it allows.
    OutOfReach { why: Speech, advice: String },
    /// Parts that cannot be pressed or shrunk together.
    #[cfg_attr(not(feature = "uom"), allow(dead_code, reason = "joints need typed figures"))]
    NoJoint { why: Speech, advice: String },
    /// A word or a size that no list holds.
    NotListed { why: Speech, advice: String },
    /// A word that means several things.
    Ambiguous { why: Speech, choices: Vec<String> },
}

/// What a refusal is about: the value to change.
///
/// ```
/// use fits_core::{Subject, standards::materials::{Figures, Material}};
/// use uom::si::{f64::Pressure, pressure::gigapascal};
/// let figures = Figures::elastic(Pressure::new::<gigapascal>(200.0), 0.7);
/// let refused = Material::custom("my alloy", figures).unwrap_err();
/// assert_eq!(refused.subject(), Some(Subject::Poisson));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum Subject {
    /// The diameter that the parts share.
    Diameter,
    /// How long they are in contact.
    Length,
    /// The wall of a part, counted from the innermost, which is 0.
    Wall(usize),
    /// Poisson's ratio of a material.
    Poisson,
}

/// Makers of the kinds that say why, and what to do next.
macro_rules! refusals {
    ($($(#[$with:meta])* $name:ident $kind:ident)*) => {
        impl Error {
            $($(#[$with])* pub(crate) fn $name(why: impl Into<Speech>, advice: impl Into<String>) -> Self {
                Self::new(Kind::$kind { why: why.into(), advice: advice.into() })
            })*
        }
    };
}

refusals! {
    not_a_class NotAClass
    not_a_thread NotAThread
    not_given NotGiven
    #[cfg(feature = "uom")]
    no_joint NoJoint
    not_listed NotListed
    out_of_reach OutOfReach
}

impl Error {
    pub(crate) fn new(kind: Kind) -> Self {
        Self(Box::new(Detail { kind, at: None, instead: None, subject: None }))
    }

    pub(crate) fn no_plan(why: impl Into<Speech>) -> Self {
        Self::new(Kind::NoPlan { why: why.into() })
    }

    pub(crate) fn not_a_pair(why: impl Into<Speech>) -> Self {
        Self::new(Kind::NotAPair { why: why.into() })
    }

    pub(crate) fn not_defined(why: impl Into<Speech>) -> Self {
        Self::new(Kind::NotDefined { why: why.into() })
    }

    /// It, with what it is about.
    #[cfg_attr(not(feature = "uom"), allow(dead_code, reason = "joints need typed figures"))]
    pub(crate) fn about(mut self, subject: Subject) -> Self {
        self.0.subject = Some(subject);
        self
    }

    pub(crate) fn at(mut self, start: usize, end: usize) -> Self {
        self.0.at = Some((start, end));
        self
    }

    pub(crate) fn or_instead(mut self, class: Option<crate::standards::iso286::Class>) -> Self {
        self.0.instead = class;
        self
    }

    /// Is the nominal size beyond the standard's tables?
    pub fn is_out_of_table(&self) -> bool {
        matches!(self.0.kind, Kind::OutOfTable { .. } | Kind::OutOfInchTable { .. })
    }

    /// Does the standard define no such class at this size?
    pub fn is_not_defined(&self) -> bool {
        matches!(self.0.kind, Kind::NotDefined { .. } | Kind::NotGiven { .. })
    }

    /// Is it a text that could not be read?
    pub fn is_unreadable(&self) -> bool {
        matches!(
            self.0.kind,
            Kind::NotASize { .. } | Kind::NotAClass { .. } | Kind::NotAThread { .. }
        )
    }

    /// Is it a word or a size that the list asked for does not hold?
    pub fn is_not_listed(&self) -> bool {
        matches!(self.0.kind, Kind::NotListed { .. })
    }

    /// Does the word mean several things? [`Error::choices`] lists them.
    pub fn is_ambiguous(&self) -> bool {
        matches!(self.0.kind, Kind::Ambiguous { .. })
    }

    /// What an ambiguous word could mean, each a name to ask with; empty where
    /// nothing was ambiguous.
    pub fn choices(&self) -> &[String] {
        match &self.0.kind {
            Kind::Ambiguous { choices, .. } => choices,
            _ => &[],
        }
    }

    /// The bytes of the text read that are at fault, where a text was read.
    pub fn span(&self) -> Option<core::ops::Range<usize>> {
        self.0.at.map(|(start, end)| start..end)
    }

    /// The value to change, where several were given and one is at fault.
    pub fn subject(&self) -> Option<Subject> {
        self.0.subject
    }

    /// The nearest tolerance class that is defined, where there is one.
    pub fn instead(&self) -> Option<crate::standards::iso286::Class> {
        self.0.instead
    }

    /// The next step, in a few words; empty where there is none.
    pub fn advice(&self) -> String {
        match &self.0.kind {
            Kind::OutOfRange => "give a size that a part can have".to_owned(),
            Kind::NotASize { advice, .. } => (*advice).to_owned(),
            Kind::NotAClass { advice, .. }
            | Kind::NotAThread { advice, .. }
            | Kind::NotListed { advice, .. }
            | Kind::OutOfReach { advice, .. }
            | Kind::NotGiven { advice, .. }
            | Kind::NoJoint { advice, .. } => advice.clone(),
            Kind::Ambiguous { choices, .. } => format!("say which: {}", choices.join(", ")),
            Kind::OutOfTable { over, up_to, .. } => {
                format!("sizes over {over} up to {up_to} are tabulated")
            }
            Kind::OutOfInchTable { over, up_to, .. } => {
                format!("sizes over {} in up to {} in are tabulated", inches(*over), inches(*up_to))
            }
            _ => String::new(),
        }
    }
}

impl Error {
    /// Its sentence, where the error was made with one.
    const fn speech(&self) -> Option<&Speech> {
        match &self.0.kind {
            Kind::NotAClass { why, .. }
            | Kind::NotAThread { why, .. }
            | Kind::NotDefined { why }
            | Kind::NotGiven { why, .. }
            | Kind::NotAPair { why }
            | Kind::NoPlan { why }
            | Kind::OutOfReach { why, .. }
            | Kind::NoJoint { why, .. }
            | Kind::NotListed { why, .. }
            | Kind::Ambiguous { why, .. } => Some(why),
            _ => None,
        }
    }

    /// What is wrong, its figures kept.
    #[cfg(feature = "uom")]
    pub(crate) fn why(&self) -> Speech {
        self.speech().cloned().unwrap_or_else(|| self.to_string().into())
    }

    /// What is wrong, with lengths in a unit; inches go with degrees Fahrenheit.
    /// [`Display`](fmt::Display) says it in millimetres.
    ///
    /// ```
    /// use fits_core::{Length, Limits, size::Unit};
    /// let error = Limits::new(Length::INCH, Length::THOU).unwrap_err();
    /// assert_eq!(error.to_string(), "the lower limit 25.4 mm is above the upper limit 0.0254 mm");
    /// assert_eq!(error.said_in(Unit::Inch), "the lower limit 1 in is above the upper limit 0.001 in");
    /// // `Debug` is the sentence, too: `unwrap` and `?` in `main` show it.
    /// assert_eq!(format!("{error:?}"), error.to_string());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn said_in(&self, unit: Unit) -> String {
        let size = |length: Length| Figure::from(length).said_in(unit);
        match &self.0.kind {
            Kind::OutOfRange => "the size is out of range: lengths end near 900 000 km".to_owned(),
            Kind::NotASize { why, .. } => (*why).to_owned(),
            Kind::OutOfTable { nominal, table, over, up_to } => format!(
                "nominal size {} is outside {table} (over {}, up to {})",
                size(*nominal),
                size(*over),
                size(*up_to)
            ),
            Kind::OutOfInchTable { nominal, table, over, up_to } => format!(
                "nominal size {} in is outside {table} (over {} in, up to {} in)",
                inches(*nominal),
                inches(*over),
                inches(*up_to)
            ),
            Kind::CrossedLimits { lower, upper } => {
                format!(
                    "the lower limit {} is above the upper limit {}",
                    size(*lower),
                    size(*upper)
                )
            }
            _ => self.speech().map_or_else(String::new, |why| why.said_in(unit)),
        }
    }
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.said_in(Unit::Millimetre))
    }
}

impl fmt::Debug for Error {
    /// The sentence, and the next step where there is one: what `unwrap`, `?`
    /// in `main` and a failed test show.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let advice = self.advice();
        if advice.is_empty() {
            return write!(f, "{self}");
        }
        write!(f, "{self} ({advice})")
    }
}

impl core::error::Error for Error {}
