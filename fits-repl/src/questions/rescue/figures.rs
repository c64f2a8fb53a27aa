//! The ways out: the figures of the answer.

use std::collections::BTreeMap;

use fits_core::{
    Limits,
    shop::rescue::Prospect,
    source::{Known, Reason},
    speech::Speech,
    standards::iso286::Feature,
};
use serde::{Serialize, Serializer};

use crate::answer::Mm;

/// A part in trouble and the ways out.
#[derive(Clone, Debug, Serialize, schemars::JsonSchema)]
pub struct RescueAnswer {
    /// Which part is wrong.
    pub part: Feature,
    /// The least reading.
    pub is_min_mm: Mm,
    /// The greatest reading.
    pub is_max_mm: Mm,
    /// What it should be, at the least.
    pub should_be_min_mm: Mm,
    /// And at the most.
    pub should_be_max_mm: Mm,
    /// Metal missing on the diameter at the worst place; below 0 there is some to spare.
    pub missing_mm: Mm,
    /// The mate, at the least.
    pub mate_min_mm: Mm,
    /// And at the most.
    pub mate_max_mm: Mm,
    /// The mate was not given: it is what goes with the part as it should be.
    pub mate_taken: bool,
    /// Hole less shaft as they are, at the least; below 0 they grip.
    pub gap_min_mm: Mm,
    /// And at the most.
    pub gap_max_mm: Mm,
    /// How long the joint is, where it was said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub long_mm: Option<Mm>,
    /// The torque that it must hold, where it was said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub torque_n_m: Option<f64>,
    /// The hottest service in degrees Celsius, where it was said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at_c: Option<f64>,
    /// What the hole is in, where it was said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hub_material: Option<String>,
    /// What the shaft is made of, where it was said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shaft_material: Option<String>,
    /// What a bush would be made of, where it was said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bush_material: Option<String>,
    /// What else was said of its work: `turns`, `shock`, `oily`, `people`.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub duty: Vec<&'static str>,
    /// The ways, the best first.
    pub ways: Vec<WayFigures>,
    /// What was taken that was not said.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub notes: Vec<String>,
    /// What to be careful of.
    pub cautions: Vec<&'static str>,
    /// Why the figures are what they are.
    #[serde(skip)]
    pub reasons: Vec<Reason>,
    /// The readings, for rendering.
    #[serde(skip)]
    pub is: Limits,
    /// What it should be, for rendering.
    #[serde(skip)]
    pub wanted: Limits,
    /// The mate, for rendering.
    #[serde(skip)]
    pub mate: Limits,
    /// The mate is a bearing's ring.
    #[serde(skip)]
    pub is_ring: bool,
}

/// One way out.
#[derive(Clone, Debug, Serialize, schemars::JsonSchema)]
pub struct WayFigures {
    /// Its name.
    pub way: &'static str,
    /// `good`, `care` or `no`.
    pub verdict: Prospect,
    /// From 0 to 5, judged.
    pub strength: u32,
    /// From 0 to 5, judged.
    pub effort: u32,
    /// Who does it.
    pub who: &'static str,
    /// Sizes to cut.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub limits: Vec<NamedLimits>,
    /// Other figures.
    #[serde(rename = "amounts", skip_serializing_if = "BTreeMap::is_empty")]
    pub figures: BTreeMap<&'static str, f64>,
    /// What is to be known of it.
    #[serde(serialize_with = "sentences")]
    #[schemars(with = "Vec<String>")]
    pub notes: Vec<Speech>,
    /// A query that gives the same figures, with more.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ask: Option<String>,
    /// How it is known.
    pub known: Known,
    /// Where it is written.
    pub source: &'static str,
}

/// Limits by name.
#[derive(Clone, Copy, Debug, Serialize, schemars::JsonSchema)]
pub struct NamedLimits {
    /// What they are of.
    pub of: &'static str,
    /// Least.
    pub min_mm: Mm,
    /// Greatest.
    pub max_mm: Mm,
    /// The same, for rendering.
    #[serde(skip)]
    pub limits: Limits,
}

impl NamedLimits {
    pub(crate) const fn of(of: &'static str, limits: Limits) -> Self {
        Self { of, min_mm: Mm(limits.lower()), max_mm: Mm(limits.upper()), limits }
    }
}

/// Sentences in millimetres.
pub(crate) fn sentences<S: Serializer>(says: &[Speech], serializer: S) -> Result<S::Ok, S::Error> {
    serializer.collect_seq(says.iter().map(ToString::to_string))
}
