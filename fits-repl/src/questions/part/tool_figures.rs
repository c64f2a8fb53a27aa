//! Fields of reamers, drills and passes.

use fits_core::source::Known;
use schemars::JsonSchema;
use serde::Serialize;

use crate::{
    answer::{CribReaming, Mm, NextFigures, OpenedLog},
    query::Dial,
    questions::part::figures::FeatureAnswer,
};

/// A reamer and the drill before it.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct ReamFigures {
    /// Smallest reamer.
    pub reamer_min_mm: Mm,
    /// Largest reamer.
    pub reamer_max_mm: Mm,
    /// Least stock to leave on the diameter.
    pub stock_min_mm: Mm,
    /// Most.
    pub stock_max_mm: Mm,
    /// Where the hole should be before the reamer, by drill or by boring.
    pub before_mm: Mm,
    /// It is bored before it is reamed: no drill that a shop owns leaves fitting
    /// stock.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bore_first: Option<bool>,
    /// The drill to begin with where it is bored first.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[serde(rename = "first_drill_name")]
    pub first_drill: Option<String>,
    /// The pre-drill to prefer; `null` where none that a shop owns leaves
    /// fitting stock.
    pub drill: Option<DrillFigures>,
    /// A number or letter drill, where the fraction leaves much.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub other_drill: Option<DrillFigures>,
    /// What the crib has for it, where there is a crib.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub crib: Option<Box<CribReaming>>,
    /// Inch reamers off the shelf that suit the hole; recalled sizes.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub inch_reamers: Vec<ReamerFigures>,
}

/// A reamer off the shelf and what a new one measures, as recalled.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct ReamerFigures {
    /// What it is sold as.
    pub name: String,
    /// The least a new one measures.
    pub min_mm: Mm,
    /// The most.
    pub max_mm: Mm,
    /// Where that is written.
    pub source: &'static str,
    /// How it is known.
    pub known: Known,
}

/// A drill before a reamer.
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct DrillFigures {
    /// Its name.
    pub name: &'static str,
    /// Its diameter.
    pub mm: Mm,
    /// The stock it leaves.
    pub leaves_mm: Mm,
}

/// Passes to a size.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct PassFigures {
    /// The passes in order.
    pub passes: Vec<PassFigure>,
    /// The size at the start of the cutting; `null` where it is not known.
    pub start_mm: Option<Mm>,
    /// The middle of the limits; the last pass ends as near to it as the dial
    /// comes.
    pub aim_mm: Mm,
    /// No cut is less, on the diameter.
    pub least_chip_mm: Mm,
    /// Is the drill in the crib? `null` where there is no crib or no drill.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub drill_in_crib: Option<bool>,
    /// The drill that would be chosen of all, where the crib has another.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub best_drill: Option<&'static str>,
}

/// One pass.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct PassFigure {
    /// Its name.
    pub name: &'static str,
    /// The size after it.
    pub to_mm: Mm,
    /// What to dial, on a dial that reads as set; `null` for a drill and for
    /// a first cut from an unknown size.
    pub dial_mm: Option<Mm>,
    /// The drill's name.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[serde(rename = "drill_name")]
    pub drill: Option<String>,
}

/// A reamer asked for by itself.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct ReamAnswer {
    /// The hole.
    pub hole: FeatureAnswer,
    /// The reamer.
    #[serde(flatten)]
    pub ream: ReamFigures,
}

/// Passes asked for by themselves.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct PassesAnswer {
    /// `bore` or `turn`.
    pub work: &'static str,
    /// How the dial reads.
    pub dial: Dial,
    /// The passes.
    #[serde(flatten)]
    pub plan: PassFigures,
    /// The feature.
    pub feature: FeatureAnswer,
    /// What to dial first, where the work is measured.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub next: Option<NextFigures>,
    /// The pass log that was opened for it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub log: Option<OpenedLog>,
    /// A log was to be kept in a file and is not; a note says why.
    #[serde(skip)]
    pub is_not_logged: bool,
    /// What else to know.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub notes: Vec<String>,
    /// What to be careful of.
    pub cautions: Vec<&'static str>,
}
