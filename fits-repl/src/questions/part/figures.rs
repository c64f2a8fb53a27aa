//! A feature or a pair: the figures of its answers.

use fits_core::{
    Basis, Kind, Length, Limits,
    shop::{Reading, Verdict},
    source::Known,
    standards::{
        iso286::{Feature, Grade},
        processes::Process,
    },
};
use schemars::{JsonSchema, Schema, SchemaGenerator};
use serde::{Serialize, Serializer};

use crate::{
    answer::{MeasuredReading, Mm, PinsFigures, six_places},
    questions::part::{
        mates::Resolved,
        tool_figures::{PassFigures, ReamFigures},
    },
};

/// One feature: limits and aim, and where they come from.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct FeatureAnswer {
    /// The limits, for rendering.
    #[serde(skip)]
    pub limits: Limits,
    /// What the limits rest on, for `why`; of a pair its hole has it, for both.
    #[serde(skip)]
    pub(crate) rests_on: Option<Box<Resolved>>,
    /// Hole or shaft; `None` where a feature was given by bare limits.
    pub kind: Option<Feature>,
    /// Nominal size.
    pub nominal_mm: Mm,
    /// The class, or how the limits were given.
    pub class: &'static str,
    /// Least good size.
    pub lower_mm: Mm,
    /// Greatest good size.
    pub upper_mm: Mm,
    /// The one size to cut for.
    pub aim_mm: Mm,
    /// The limits' source.
    pub source: &'static str,
    /// How the limits are known: the worst of what went into them.
    pub known: Known,
    /// The grade held, as `IT7`; the coarsest within where no class was given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub grade: Option<&'static str>,
    /// Processes that commonly hold it.
    #[serde(skip_serializing_if = "Processes::is_empty")]
    pub processes: Processes,
    /// How it is known that they do: the worst of them.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub processes_known: Option<Known>,
    /// Gauge pins of the crib that judge the hole.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pins: Option<Box<PinsFigures>>,
    /// For a bought-in part: does it vary by maker?
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mic_yours: Option<bool>,
    /// What else to know of a bought-in part.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub notes: Vec<String>,
    /// The reamer, for a hole asked for alone.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ream: Option<Box<ReamFigures>>,
    /// Why it is not reamed, for a hole asked for alone.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub not_reamed: Option<String>,
    /// Boring passes, for a hole asked for alone.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bore: Option<Box<PassFigures>>,
    /// Turning passes, for a shaft asked for alone.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub turn: Option<Box<PassFigures>>,
    /// What to be careful of.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub cautions: Vec<&'static str>,
}

/// Processes that commonly hold a grade: none where no part is to be made.
#[derive(Clone, Copy, Debug, Default)]
pub struct Processes(Option<(Grade, Feature)>);

impl Processes {
    /// Those that hold a grade on such a feature.
    pub const fn holding(grade: Grade, feature: Feature) -> Self {
        Self(Some((grade, feature)))
    }

    /// They themselves, in the order that a small shop reaches for them.
    pub fn all(self) -> impl Iterator<Item = Process> {
        self.0.into_iter().flat_map(|(grade, feature)| Process::holding(grade, feature))
    }

    /// Their names.
    pub fn names(self) -> impl Iterator<Item = &'static str> {
        self.all().map(Process::name)
    }

    /// Is there none?
    pub fn is_empty(&self) -> bool {
        self.all().next().is_none()
    }
}

impl Serialize for Processes {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_seq(self.names())
    }
}

impl JsonSchema for Processes {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Processes".into()
    }

    fn inline_schema() -> bool {
        true
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        Vec::<&str>::json_schema(generator)
    }
}

/// Least, greatest and aimed-at clearance; interference is below 0.
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct ClearanceFigures {
    /// Least.
    pub min_mm: Mm,
    /// Greatest.
    pub max_mm: Mm,
    /// With both parts at their aims.
    pub aim_mm: Mm,
}

/// A pair.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct FitAnswer {
    /// Nominal size.
    pub nominal_mm: Mm,
    /// Clearance, transition or interference.
    pub kind: Kind,
    /// Hole-basis, shaft-basis, both or neither.
    pub basis: Basis,
    /// The hole.
    pub hole: FeatureAnswer,
    /// The shaft.
    pub shaft: FeatureAnswer,
    /// The clearance.
    pub clearance: ClearanceFigures,
    /// How it is known: no better than either part.
    pub known: Known,
    /// For a transition fit, the chance of clearance.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub chance_of_clearance: Option<ChanceFigures>,
    /// One part measured, the other one's limits follow it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub measured: Option<MeasuredFigures>,
    /// One part in hand, the other one's limits follow it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub in_hand: Option<Feature>,
    /// The shop word that chose the classes, and its neighbours.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub choice: Option<Box<ChoiceFigures>>,
    /// How a pair whose limits were given stands to the word beside it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub held_to: Option<HeldTo>,
    /// The words that a pair of two readings could be called by.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub fit_words: Vec<&'static str>,
    /// The preferred fits and classes of ASME B4.1 that it could be of, the one
    /// whose middle is nearest first.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub fit_classes: Vec<String>,
    /// What to know of a bought-in part, and of what was said of the parts.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub notes: Vec<String>,
    /// The reamer; `null` where the hole is not reamed.
    pub ream: Option<Box<ReamFigures>>,
    /// Why it is not.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub not_reamed: Option<String>,
    /// The boring passes; `null` where none can be planned.
    pub bore: Option<Box<PassFigures>>,
    /// What to be careful of.
    pub cautions: Vec<&'static str>,
}

/// How a pair whose limits were given stands to a shop's word.
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct HeldTo {
    /// The word.
    pub word: &'static str,
    /// Every such pair is inside the word's own range.
    pub agrees: bool,
    /// The word whose fit is nearest.
    #[serde(rename = "nearest_word")]
    pub nearest: &'static str,
    /// The word's least clearance at this size; interference is below 0.
    pub min_mm: Mm,
    /// Its most.
    pub max_mm: Mm,
}

/// The chance of clearance in a transition fit.
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct ChanceFigures {
    /// Sizes spread evenly between the limits.
    #[serde(serialize_with = "six_places")]
    pub spread_evenly: f64,
    /// Sizes normal about the middle, the limits at three standard deviations.
    #[serde(serialize_with = "six_places")]
    pub centred: f64,
}

/// What a shop word chose, and why.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct ChoiceFigures {
    /// The word, as the table has it.
    pub word: &'static str,
    /// The class or classes it took.
    pub class: String,
    /// Why.
    pub reason: &'static str,
    /// Where that is written.
    pub source: &'static str,
    /// How it is known.
    pub known: Known,
    /// The circumstance that changed the word's usual class.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub changed_by: Option<&'static str>,
    /// The next looser word and its class.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub looser: Option<NeighbourFigures>,
    /// The next tighter word and its class.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tighter: Option<NeighbourFigures>,
    /// The class is a start: pressure, stress and force want working out.
    pub work_it_out: bool,
}

/// A neighbouring choice.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct NeighbourFigures {
    /// The word.
    pub word: &'static str,
    /// Its class or classes.
    pub class: String,
}

/// The part that was measured first.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct MeasuredFigures {
    /// Which.
    pub part: Feature,
    /// What it measures.
    pub size_mm: Mm,
    /// What its own limits say of it.
    pub verdict: Verdict,
}

/// A reading of one feature.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct ReadingAnswer {
    /// The feature.
    #[serde(flatten)]
    pub feature: FeatureAnswer,
    /// The judged reading.
    #[serde(flatten)]
    pub reading: ReadingFigures,
}

/// A reading judged.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct ReadingFigures {
    /// What was read.
    pub reading_mm: Mm,
    /// The reading's expanded uncertainty, k = 2; `null` where no instrument
    /// was named.
    pub uncertainty_mm: Option<Mm>,
    /// Cut more, good or over.
    pub verdict: Verdict,
    /// Metal still to come off to the aim, on the diameter; below 0 when
    /// past it.
    pub to_go_mm: Mm,
    /// To the limit met first.
    pub to_first_limit_mm: Mm,
    /// To the limit that must not be passed.
    pub to_last_limit_mm: Mm,
    /// The chance that the part is good; `null` where no instrument was named.
    #[serde(serialize_with = "six_places")]
    pub probability_good: Option<f64>,
    /// What is known beside, where more than one reading, an instrument or a
    /// temperature was given.
    #[serde(flatten, skip_serializing_if = "Option::is_none")]
    pub measured: Option<Box<MeasuredReading>>,
}

impl ReadingFigures {
    /// The size at 20 °C, as far as it is known.
    pub fn at_20(&self) -> Length {
        self.measured.as_ref().map_or(self.reading_mm.0, |measured| measured.size_at_20_mm.0)
    }

    /// From the judgement of a size.
    pub fn new(size: Length, reading: Reading) -> Self {
        Self {
            reading_mm: Mm(size),
            uncertainty_mm: None,
            verdict: reading.verdict,
            to_go_mm: Mm(reading.to_aim),
            to_first_limit_mm: Mm(reading.to_first_limit),
            to_last_limit_mm: Mm(reading.to_last_limit),
            probability_good: None,
            measured: None,
        }
    }
}

/// A measured pair.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct PairReadingAnswer {
    /// Nominal size.
    pub nominal_mm: Mm,
    /// The hole.
    pub hole: ReadingAnswer,
    /// The shaft.
    pub shaft: ReadingAnswer,
    /// The fit's own range.
    pub clearance: ClearanceFigures,
    /// The pair's actual clearance.
    pub actual_clearance_mm: Mm,
    /// Is it within the fit's range?
    pub within: bool,
    /// What to be careful of.
    pub cautions: Vec<&'static str>,
}
