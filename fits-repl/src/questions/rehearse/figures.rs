//! The odds before cutting: the figures.

use fits_core::source::Reason;
use schemars::JsonSchema;
use serde::Serialize;

use crate::answer::{FeatureAnswer, Mm};

/// The odds before cutting.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
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
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct StrategyFigures {
    /// Which.
    pub strategy: &'static str,
    /// Ended inside the limits.
    #[serde(rename = "share_good")]
    pub good: f64,
    /// Ended with too much off, or given up.
    #[serde(rename = "share_over")]
    pub over: f64,
    /// Ended with metal left.
    #[serde(rename = "share_under")]
    pub under: f64,
    /// Passes, on average.
    #[serde(rename = "mean_passes")]
    pub passes: f64,
    /// Readings, on average.
    #[serde(rename = "mean_readings")]
    pub readings: f64,
}
