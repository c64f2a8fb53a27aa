//! A bushing, its housing and its shaft.

use fits_core::{
    shop::bushing::{BushRemedy, RunningPlay},
    source::{Known, Reason},
};
use schemars::JsonSchema;
use serde::Serialize;

use crate::{
    answer::{Ends, Mm},
    questions::bushing::answered::Found,
};

/// A bushing whose bore in place was measured.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct BushingInPlaceAnswer {
    /// What the bore measures.
    pub bore_mm: Mm,
    /// `solid bronze`, `sintered bronze`, `plastic` or `lined`.
    pub kind: &'static str,
    /// The bushing's material, by the table's name.
    pub material: String,
    /// The clearance wanted.
    pub running: Ends,
    /// `as given`, or the service or rule it goes by.
    pub running_by: String,
    /// The shaft that has it.
    pub shaft: SuitedFigures,
    /// The shaft that is there.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub given_shaft: Option<Ends>,
    /// The clearance with that.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub clearance: Option<Ends>,
    /// How that stands to what is wanted.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub play_verdict: Option<RunningPlay>,
    /// The bore that the shaft wants, where this one does not do.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bore_for_it: Option<SuitedFigures>,
    /// What there is to open for it, on the diameter.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub open_by_mm: Option<Mm>,
    /// What to do, most usual first.
    pub remedies: Vec<BushRemedy>,
    /// The sliding speed, where the turns were given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub speed_m_per_s: Option<f64>,
    /// Limits of the reamer, where the bore is reamed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reamer: Option<Ends>,
    /// What else to know.
    pub notes: Vec<String>,
    /// How the least known figure is known.
    pub known: Known,
}

/// A bushing in its housing, and what runs in it.
#[derive(Clone, Debug, JsonSchema, Serialize)]
pub struct BushingAnswer {
    /// What is pressed where, for `why`; none for a lined bushing.
    #[serde(skip)]
    pub(crate) found: Option<Box<Found>>,
    /// Why it runs so, and the figures of tables that went in.
    #[serde(skip)]
    pub reasons: Vec<Reason>,
    /// Nominal bore.
    pub nominal_mm: Mm,
    /// `solid bronze`, `sintered bronze`, `plastic` or `lined`.
    pub kind: &'static str,
    /// The bushing's material, by the table's name.
    pub material: String,
    /// The housing's; empty for a lined bushing.
    pub housing_material: String,
    /// The bore of the housing; `null` for a lined bushing.
    pub housing: Option<BushingPart>,
    /// The outside of the bushing.
    pub outside: Option<BushingPart>,
    /// Its bore as made.
    pub bore: Option<BushingPart>,
    /// Interference in the housing, least and most; below 0 it is loose.
    pub interference: Option<Ends>,
    /// How much the bore closes in.
    pub closes_in: Option<Ends>,
    /// Pressure in the housing.
    pub pressure_mpa: Option<PressureFigures>,
    /// What the press must give, oiled.
    pub press_force_n: Option<f64>,
    /// Does a part yield at the most interference?
    pub yields: bool,
    /// The most of a part's section that yields, from zero to one.
    pub yielded_share: f64,
    /// The bore in place.
    pub bore_in_place: Ends,
    /// The clearance wanted, and by what.
    pub running: Ends,
    /// `as given`, or the service or rule it goes by.
    pub running_by: String,
    /// How the fit is known: the worst of its limits, its running clearance and
    /// its materials.
    pub known: Known,
    /// What of that comes from memory.
    #[serde(skip)]
    pub unconfirmed: String,
    /// The shaft: to turn, or as given.
    pub shaft: ShaftFigures,
    /// The clearance with that shaft, least and greatest.
    pub clearance: Ends,
    /// The bore to ream or bore in place for the shaft.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ream_in_place: Option<SuitedFigures>,
    /// How a bore that is sized in place is finished: `ream`, or `burnish` where
    /// a cutting edge closes the pores.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sized_by: Option<&'static str>,
    /// The bore to make before pressing, where it is not finished in place.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bore_before: Option<SuitedFigures>,
    /// The clearance at work: warm, and in damp.
    pub in_service: Vec<InServiceFigures>,
    /// Length over bore; `null` where no length matters.
    pub length_over_bore: Option<f64>,
    /// The sliding speed, where the turns were given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub speed_m_per_s: Option<f64>,
    /// What else to know.
    pub notes: Vec<String>,
    /// What to be careful of.
    pub cautions: Vec<&'static str>,
}

/// One surface.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct BushingPart {
    /// The class, or how the limits were given.
    pub class: String,
    /// Least good size.
    pub lower_mm: Mm,
    /// Greatest.
    pub upper_mm: Mm,
}

/// Least and most pressure.
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct PressureFigures {
    /// Least.
    pub min: f64,
    /// Most.
    pub max: f64,
}

/// The shaft.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct ShaftFigures {
    /// Was it given, not solved for?
    pub given: bool,
    /// The size to turn it to.
    pub aim_mm: Mm,
    /// Limits that are right in every such bore; `null` where the bores vary
    /// by more than is wanted.
    pub lower_mm: Option<Mm>,
    /// The greatest.
    pub upper_mm: Option<Mm>,
}

/// A size that suits others.
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct SuitedFigures {
    /// The size to make.
    pub aim_mm: Mm,
    /// Limits; `null` where the others vary by more than is wanted.
    pub lower_mm: Option<Mm>,
    /// The greatest.
    pub upper_mm: Option<Mm>,
}

/// The clearance at work.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct InServiceFigures {
    /// The temperature.
    pub at_c: f64,
    /// `dry`, `in room air` or `soaked`.
    #[serde(rename = "damp_state")]
    pub damp: &'static str,
    /// Least clearance.
    pub min_mm: Mm,
    /// Greatest.
    pub max_mm: Mm,
    /// Least interference in the housing; below 0 it comes loose.
    pub interference_min_mm: Mm,
}
