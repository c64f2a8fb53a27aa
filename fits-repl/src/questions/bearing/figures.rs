//! The JSON contract of a ball bearing's answer.

use fits_core::{
    shop::Verdict,
    source::Known,
    standards::{bought::Turning, iso286::Feature},
};
use serde::Serialize;

use crate::answer::{ClearanceFigures, Mm};

/// A ball bearing and the seats of its rings.
#[derive(Clone, Debug, Serialize, schemars::JsonSchema)]
#[non_exhaustive]
pub struct BearingAnswer {
    /// Its number.
    pub number: &'static str,
    /// Nominal bore.
    pub bore_mm: Mm,
    /// Nominal outside diameter.
    pub outside_mm: Mm,
    /// Its width; the open one's where both are made.
    pub width_mm: Mm,
    /// With shields or seals, where that is wider and it was not said which.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub closed_width_mm: Option<Mm>,
    /// The corner of its rings.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub corner_mm: Option<Mm>,
    /// The radius that a shoulder's fillet must stay under.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fillet_under_mm: Option<Mm>,
    /// What the housing is made of, where it was said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub housing_material: Option<String>,
    /// Its temperature and the ring's, where it was said.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub at_c: Option<f64>,
    /// What the housing opens by on the ring for each 10 °C that both warm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub opens_in_ten_degrees_mm: Option<Mm>,
    /// The seats of every case that was not ruled out.
    pub seats: Vec<BearingSeat>,
    /// What else to know.
    pub notes: Vec<String>,
    /// Where its sizes are written.
    pub source: &'static str,
    /// How the least known of its figures is known.
    pub known: Known,
    /// What of it comes from memory.
    #[serde(skip)]
    pub recalled: String,
}

/// One seat.
#[derive(Clone, Debug, Serialize, schemars::JsonSchema)]
#[non_exhaustive]
pub struct BearingSeat {
    /// A shaft under the inner ring, or a hole about the outer one.
    pub kind: Feature,
    /// Which part turns under a load that stands still.
    pub turns: Turning,
    /// `light`, `normal`, `heavy`, `by hand`, `slides`, `fixed`.
    pub case: &'static str,
    /// The class.
    pub class: String,
    /// Least good size.
    pub lower_mm: Mm,
    /// Greatest good size.
    pub upper_mm: Mm,
    /// On the ring, over the limits of both.
    pub clearance: ClearanceFigures,
    /// The same at the temperature.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub warm: Option<ClearanceFigures>,
    /// What a lathe holds it by; absent where it is finer than a lathe holds.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lathe: Option<&'static str>,
    /// The reading of it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reading: Option<SeatReading>,
    /// The case it is for.
    pub reason: &'static str,
    /// Where it is written.
    pub source: &'static str,
    /// How it is known.
    pub known: Known,
}

/// A seat as it measures.
#[derive(Clone, Copy, Debug, Serialize, schemars::JsonSchema)]
#[non_exhaustive]
pub struct SeatReading {
    /// What was read.
    pub reading_mm: Mm,
    /// Against the seat's limits.
    pub verdict: Verdict,
    /// Least clearance that it has on the ring; interference is below 0.
    pub min_mm: Mm,
    /// Greatest clearance.
    pub max_mm: Mm,
}
