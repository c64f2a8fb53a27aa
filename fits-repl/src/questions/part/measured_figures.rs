//! What is known of readings beside their verdict, the tailstock, and the odds
//! of a rehearsal.

use fits_core::source::Reason;
use schemars::JsonSchema;
use serde::Serialize;

use crate::answer::{Mm, six_places};

/// Readings with their instrument and temperature.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct MeasuredReading {
    /// How many readings.
    pub readings: u32,
    /// The size at 20 °C.
    pub size_at_20_mm: Mm,
    /// The instrument, where one was named.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub instrument: Option<String>,
    /// What was taken for granted: settings.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub assumed: Vec<String>,
    /// Standard uncertainty; half of `uncertainty_mm`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub standard_uncertainty_mm: Option<Mm>,
    /// Does it come more from what is the same in each reading than from what
    /// averages out?
    #[serde(skip)]
    pub bias_rules: bool,
    /// Inside this of a limit nothing is proven.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub guard_mm: Option<Mm>,
    /// The chance that too much is off.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "six_places")]
    pub probability_over: Option<f64>,
    /// The chance that there is metal to take off.
    #[serde(skip_serializing_if = "Option::is_none", serialize_with = "six_places")]
    pub probability_under: Option<f64>,
    /// From the least to the most read at one place.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub spread_mm: Option<Mm>,
    /// Do repeats scatter more than the instrument does by itself?
    #[serde(skip_serializing_if = "Option::is_none")]
    pub scatters: Option<bool>,
    /// The places read, where there are two or more.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[serde(rename = "form_error")]
    pub form: Option<FormFigures>,
    /// Warm work.
    #[serde(flatten, skip_serializing_if = "Option::is_none")]
    pub warm: Option<WarmFigures>,
    /// Why the figures are what they are.
    #[serde(skip)]
    pub reasons: Vec<Reason>,
}

/// Two places or more: out of round, or taper.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct FormFigures {
    /// Each place's size at 20 °C, in the order given.
    pub places_mm: Vec<Mm>,
    /// Between the largest and the smallest.
    pub difference_mm: Mm,
    /// What the instrument's scatter alone exceeds once in twenty times.
    pub explained_mm: Option<Mm>,
    /// Is it the part rather than the instrument?
    pub real: bool,
}

/// A part that was not at 20 °C.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct WarmFigures {
    /// The part's temperature.
    pub temperature_c: f64,
    /// What it is of.
    pub material: String,
    /// The gauge's.
    pub room_c: f64,
    /// How much larger the part is than at 20 °C.
    pub growth_mm: Mm,
    /// How long until it is within `wait_within_mm` of its size in the room:
    /// an estimate.
    pub wait_min: f64,
    /// See `wait_min`.
    pub wait_within_mm: Mm,
}
