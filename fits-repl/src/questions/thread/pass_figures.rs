//! The passes of a thread, as figures.

use super::figures::{BlankFigures, ThreadName};
use crate::{answer::Mm, query::Dial};
use fits_core::source::{Known, Reason};
use schemars::JsonSchema;
use serde::Serialize;

/// How far to feed a tool that cuts a thread.
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct FeedFigures {
    /// Square to the axis.
    pub radial_mm: Mm,
    /// Along the compound at its angle.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub compound_mm: Option<Mm>,
    /// The compound's angle from square.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub compound_deg: Option<f64>,
    /// What the dial that feeds changes by.
    pub dial_mm: Mm,
}

/// How to cut a thread on the lathe.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct ThreadPassesAnswer {
    /// Which thread.
    #[serde(flatten)]
    pub name: ThreadName,
    /// `external` or `internal`.
    pub side: &'static str,
    /// The class.
    pub class: String,
    /// What to turn or bore the blank to.
    pub blank: BlankFigures,
    /// The whole depth, square to the axis.
    pub depth_mm: Mm,
    /// The diameter that the tool's end comes to.
    pub root_mm: Mm,
    /// The flat at the tool's end that the depth is for.
    pub flat_mm: Mm,
    /// The radius of the tool's end, where the depth is for a round one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub nose_radius_mm: Option<Mm>,
    /// `compound` or `straight`.
    #[serde(rename = "feed_by")]
    pub feed: &'static str,
    /// The compound's angle from square to the axis.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub compound_deg: Option<f64>,
    /// How the cross slide's dial is set.
    pub dial: Dial,
    /// What `dial_mm` of the passes counts: `compound travel`, `diameter` or
    /// `radius`.
    pub dial_reads: &'static str,
    /// The passes.
    pub passes: Vec<ThreadPassFigures>,
    /// The diameter to chamfer the start to.
    pub chamfer_to_mm: Mm,
    /// Where the thread runs out.
    pub relief: ReliefFigures,
    /// What to try it with.
    pub try_with: &'static str,
    /// What else to know.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub notes: Vec<String>,
    /// What to be careful of.
    pub cautions: Vec<&'static str>,
    /// Every figure's reason, for `why`.
    #[serde(skip)]
    pub reasons: Vec<Reason>,
}

/// One of them.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct ThreadPassFigures {
    /// Its number, `finish` or `spring`.
    pub name: String,
    /// The depth after it, square to the axis.
    pub depth_mm: Mm,
    /// What it adds to that.
    pub takes_mm: Mm,
    /// The compound's travel since the tool touched.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub compound_mm: Option<Mm>,
    /// What the dial of the slide that feeds reads, zero at the touch.
    pub dial_mm: Mm,
}

/// Where a thread runs out.
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct ReliefFigures {
    /// Incomplete thread at the end, at most.
    pub run_out_mm: Mm,
    /// From a shoulder to the first full thread, at most.
    pub shoulder_mm: Mm,
    /// A relief groove's diameter.
    pub groove_diameter_mm: Mm,
    /// Its width.
    pub groove_width_mm: Mm,
    /// How these are known: a table's, or a rule's from the pitch.
    pub known: Known,
}
