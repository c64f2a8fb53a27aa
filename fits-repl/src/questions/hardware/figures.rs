//! What is known of a ring, a pin, a Woodruff key, a plug or an O-ring.

use std::fmt;

use fits_core::{
    Error, Length, Limits,
    size::Unit,
    source::{Known, Reason},
    speech::{Figure, Speech},
};
use serde::{Serialize, Serializer};

use crate::answer::Mm;

/// A sentence with its figures, in JSON as it is said in millimetres.
#[derive(Clone)]
pub struct Note(pub Speech);

impl fmt::Debug for Note {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:?}", self.0.to_string())
    }
}

impl schemars::JsonSchema for Note {
    fn inline_schema() -> bool {
        true
    }
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Note".into()
    }
    fn json_schema(generator: &mut schemars::SchemaGenerator) -> schemars::Schema {
        String::json_schema(generator)
    }
}

impl Serialize for Note {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(&self.0.said_in(Unit::Millimetre))
    }
}

/// A sentence with figures in it.
macro_rules! said {
    ($words:literal $(, $figure:expr)* $(,)?) => {
        fits_core::speech::Speech::of::<fits_core::speech::Figure>(
            $words,
            [$(fits_core::speech::Figure::from($figure)),*],
        )
    };
}
pub(crate) use said;

/// One size of the part or of what is cut for it.
#[derive(Clone, Debug, Serialize, schemars::JsonSchema)]
pub struct SizeFigures {
    /// What it is.
    pub name: &'static str,
    /// The least it may be.
    pub min_mm: Mm,
    /// The most: the same where it is one size.
    pub max_mm: Mm,
    /// How it is known.
    pub known: Known,
}

/// What a pin across a shaft carries.
#[derive(Clone, Copy, Debug, Serialize, schemars::JsonSchema)]
pub struct CrossPinFigures {
    /// The torque at which the pin's shear reaches its yield.
    pub yields_n_m: f64,
    /// The torque asked about; half of that where none is.
    pub torque_n_m: f64,
    /// The pin's shear stress at that torque.
    pub shear_mpa: f64,
    /// The greatest pressure in the shaft's hole at that torque.
    pub shaft_mpa: f64,
    /// The pressure in the collar's wall at that torque.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub collar_mpa: Option<f64>,
}

/// How an O-ring sits in its groove.
#[derive(Clone, Copy, Debug, Serialize, schemars::JsonSchema)]
#[allow(clippy::struct_field_names, reason = "the names in JSON carry their unit")]
pub struct SqueezeFigures {
    /// The least squeeze, in percent of the section.
    pub min_percent: f64,
    /// The greatest.
    pub max_percent: f64,
    /// How much of the smallest groove it fills, in percent.
    pub filled_percent: f64,
}

/// A part out of the drawer, and what is cut for it.
#[derive(Clone, Debug, Serialize, schemars::JsonSchema)]
pub struct HardwareAnswer {
    /// What it is: `retaining ring`, `taper pin`...
    pub part: &'static str,
    /// The same with its size and standard, in words.
    pub title: Note,
    /// Its sizes, what is cut first.
    pub sizes: Vec<SizeFigures>,
    /// The drill, where one is chosen.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub drill_name: Option<&'static str>,
    /// What a pin across a shaft carries.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub carries: Option<CrossPinFigures>,
    /// How an O-ring is squeezed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub squeeze: Option<SqueezeFigures>,
    /// What else to know, in words.
    pub notes: Vec<Note>,
    /// How it is known: the worst of its sizes.
    pub known: Known,
    /// Why.
    #[serde(skip)]
    pub reasons: Vec<Reason>,
}

impl HardwareAnswer {
    pub(crate) fn new(part: &'static str, title: Speech) -> Self {
        Self {
            part,
            title: Note(title),
            sizes: Vec::new(),
            drill_name: None,
            carries: None,
            squeeze: None,
            notes: Vec::new(),
            known: Known::Given,
            reasons: Vec::new(),
        }
    }

    /// Limits of a size, as the standard has them.
    pub(crate) fn limits(&mut self, name: &'static str, limits: Limits) -> &mut Self {
        self.known = self.known.worst(limits.known());
        self.sizes.push(SizeFigures {
            name,
            min_mm: Mm(limits.lower()),
            max_mm: Mm(limits.upper()),
            known: limits.known(),
        });
        self
    }

    /// One size.
    pub(crate) fn size(&mut self, name: &'static str, size: Length, known: Known) -> &mut Self {
        self.known = self.known.worst(known);
        self.sizes.push(SizeFigures { name, min_mm: Mm(size), max_mm: Mm(size), known });
        self
    }

    /// A sentence.
    pub(crate) fn note(&mut self, note: impl Into<Speech>) -> &mut Self {
        self.notes.push(Note(note.into()));
        self
    }

    /// A reason with its figure.
    pub(crate) fn why(
        &mut self,
        figure: &str,
        value: impl Into<String>,
        rule: &str,
        source: &str,
        known: Known,
    ) -> &mut Self {
        self.reasons.push(Reason {
            figure: figure.into(),
            value: value.into().into(),
            rule: rule.to_owned().into(),
            source: source.into(),
            known,
        });
        self
    }

    /// The same for every size that has no reason yet.
    pub(crate) fn why_all(&mut self, rule: &str, source: &str) -> &mut Self {
        let reasons = self.sizes.iter().map(|size| Reason {
            figure: size.name.into(),
            value: if size.min_mm == size.max_mm {
                size.min_mm.0.to_string().into()
            } else {
                format!("{} to {}", size.min_mm.0, size.max_mm.0).into()
            },
            rule: rule.to_owned().into(),
            source: source.into(),
            known: size.known,
        });
        self.reasons.extend(reasons);
        self
    }
}

/// A small difference, thou in inches.
pub(crate) const fn small(length: Length) -> Figure {
    Figure::Small(length)
}

/// What the core refused while an answer was put together.
pub(crate) type Made = Result<HardwareAnswer, Error>;
