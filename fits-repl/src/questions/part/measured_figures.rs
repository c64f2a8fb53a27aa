//! What is known of readings beside their verdict, the tailstock, and the odds
//! of a rehearsal.

use fits_core::{shop::align::Toward, source::Reason};
use serde::{Serialize, Serializer};

use crate::answer::{FeatureAnswer, Mm, six_places};

/// Readings with their instrument and temperature.
#[derive(Clone, Debug, Serialize)]
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
    pub form: Option<FormFigures>,
    /// Warm work.
    #[serde(flatten, skip_serializing_if = "Option::is_none")]
    pub warm: Option<WarmFigures>,
    /// Why the figures are what they are.
    #[serde(skip)]
    pub reasons: Vec<Reason>,
}

/// Two places or more: out of round, or taper.
#[derive(Clone, Debug, Serialize)]
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
#[derive(Clone, Debug, Serialize)]
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

/// The tailstock.
#[derive(Clone, Debug, Serialize)]
pub struct AlignAnswer {
    /// Were two collars measured, or is a taper wanted?
    pub wanted: bool,
    /// How far to move the tailstock.
    pub set_over_mm: Mm,
    /// Which way.
    #[serde(serialize_with = "toward")]
    pub toward: Toward,
    /// Change of diameter over the length given; more by the tailstock is
    /// positive.
    pub taper_mm: Mm,
    /// Over which length.
    pub over_mm: Mm,
    /// Between centres.
    pub between_mm: Mm,
    /// Was that told?
    #[serde(skip)]
    pub between_told: bool,
    /// Change of diameter over 100 mm.
    pub per_100_mm_mm: Mm,
    /// Change of diameter over a foot.
    pub per_foot_mm: Mm,
    /// The part to be turned, where one was named.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub part: Option<TaperedFigures>,
}

fn toward<S: Serializer>(toward: &Toward, serializer: S) -> Result<S::Ok, S::Error> {
    serializer.serialize_str(toward.word())
}

/// A part and what a taper does to it.
#[derive(Clone, Debug, Serialize)]
pub struct TaperedFigures {
    /// The part.
    pub feature: FeatureAnswer,
    /// How long it is.
    pub long_mm: Mm,
    /// Change of diameter over that.
    pub taper_mm: Mm,
    /// What of the tolerance is left; below nought where the taper is more.
    pub leaves_mm: Mm,
    /// Is anything left?
    pub survives: bool,
}

/// The odds before cutting.
#[derive(Clone, Debug, Serialize)]
pub struct RehearsalAnswer {
    /// How each strategy fared.
    pub strategies: Vec<StrategyFigures>,
    /// How often each was run.
    pub runs: u64,
    /// The seed: the same one gives the same runs.
    pub seed: u64,
    /// What goes wrong in every run, where it was asked.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fault: Option<&'static str>,
    /// The same in words.
    #[serde(skip)]
    pub fault_says: Option<&'static str>,
    /// The part.
    pub feature: FeatureAnswer,
    /// Where it starts.
    pub from_mm: Mm,
    /// The instrument.
    pub instrument: String,
    /// What was taken for granted: settings.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub assumed: Vec<String>,
    /// Its standard uncertainty from reading to reading.
    pub repeat_mm: Mm,
    /// The same in each reading.
    pub bias_mm: Mm,
    /// Change of diameter for each unit dialled.
    pub cut_factor: f64,
    /// Its standard deviation.
    pub cut_factor_sd: f64,
    /// Standard deviation of the offset of every pass.
    pub offset_sd_mm: Mm,
    /// Standard deviation of one pass from the next.
    pub scatter_mm: Mm,
    /// The smallest step dialled, as a change of diameter.
    pub step_mm: Mm,
    /// Cautions: a long overhang.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub cautions: Vec<&'static str>,
    /// Why the figures are what they are.
    #[serde(skip)]
    pub reasons: Vec<Reason>,
}

/// How a strategy fared; shares are of all runs.
#[derive(Clone, Copy, Debug, Serialize)]
pub struct StrategyFigures {
    /// Which.
    pub strategy: &'static str,
    /// Ended inside the limits.
    pub good: f64,
    /// Ended with too much off, or given up.
    pub over: f64,
    /// Ended with metal left.
    pub under: f64,
    /// Passes, on average.
    pub passes: f64,
    /// Readings, on average.
    pub readings: f64,
}
