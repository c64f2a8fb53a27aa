//! A pair away from 20 °C.

use fits_core::{Kind, source::Known};
use schemars::JsonSchema;
use serde::Serialize;

use crate::{
    answer::{Ends, Mm},
    questions::part::warm::Found,
};

/// A pair over a range of temperature.
#[derive(Clone, Debug, JsonSchema, Serialize)]
pub struct WarmAnswer {
    /// What it was worked out from, for `why`.
    #[serde(skip)]
    pub(crate) found: Found,
    /// Nominal size.
    pub nominal_mm: Mm,
    /// The hole.
    pub hole: WarmPart,
    /// The shaft.
    pub shaft: WarmPart,
    /// At 20 °C.
    pub reference: AtFigures,
    /// At the colder end.
    pub cold: AtFigures,
    /// At the warmer end.
    pub warm: AtFigures,
    /// Does the tightest pair bind somewhere in the range, that runs at 20 °C?
    pub binds: bool,
    /// Does the loosest pair let go somewhere in the range, that holds at 20 °C?
    pub lets_go: bool,
    /// Where the smallest hole and the largest shaft are of one size; `null`
    /// where they never are.
    pub tightest_pair_meets_c: Option<f64>,
    /// Where the largest hole and the smallest shaft are.
    pub loosest_pair_meets_c: Option<f64>,
    /// What the clearance gains with each degree Celsius.
    pub change_per_c_mm: f64,
    /// The shaft that keeps the least clearance of 20 °C at the worse end.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shaft_to_keep: Option<Ends>,
    /// The clearance at 20 °C in damp, where a part swells.
    pub damp: Vec<DampFigures>,
    /// What else to know.
    pub notes: Vec<String>,
    /// What to be careful of.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub cautions: Vec<&'static str>,
    /// How the clearance is known: the worst of both parts' limits and expansions
    /// and of what damp does.
    pub known: Known,
    /// What of that comes from memory.
    #[serde(skip)]
    pub unconfirmed: Vec<String>,
}

/// One of its parts.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct WarmPart {
    /// The class, or how the limits were given.
    pub class: String,
    /// The material, by the table's name.
    pub material: String,
    /// Least good size at 20 °C.
    pub lower_mm: Mm,
    /// Greatest.
    pub upper_mm: Mm,
    /// Millionths of its length per degree Celsius.
    pub expansion_per_c_e6: f64,
    /// How its limits and its expansion are known: the worse of them.
    pub known: Known,
}

/// The clearance at one temperature; interference is below 0.
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct AtFigures {
    /// The temperature.
    pub at_c: f64,
    /// Least.
    pub min_mm: Mm,
    /// Greatest.
    pub max_mm: Mm,
    /// Clearance, transition or interference.
    pub kind: Kind,
}

/// The clearance in damp.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct DampFigures {
    /// `in room air` or `soaked`.
    pub state: &'static str,
    /// How much the part that swells grows, in percent.
    pub growth_percent: f64,
    /// Least clearance.
    pub min_mm: Mm,
    /// Greatest.
    pub max_mm: Mm,
}
