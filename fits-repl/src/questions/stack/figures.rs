//! The play that parts end to end leave.

use fits_core::{Limits, source::Known};
use schemars::JsonSchema;
use serde::Serialize;

use crate::answer::Mm;

/// A least and a greatest length.
#[derive(Clone, Copy, Debug, PartialEq, Eq, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct Ends {
    /// Least.
    pub min_mm: Mm,
    /// Greatest.
    pub max_mm: Mm,
}

impl From<Limits> for Ends {
    fn from(limits: Limits) -> Self {
        Self { min_mm: Mm(limits.lower()), max_mm: Mm(limits.upper()) }
    }
}

/// A stack.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct StackAnswer {
    /// The play with every part at the limit that hurts.
    pub worst: Ends,
    /// The play with every part at its aim.
    pub aim_mm: Mm,
    /// The play within the root sum square about the aim.
    pub rss: Ends,
    /// The play wanted, where one was.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub wanted: Option<Ends>,
    /// The part to make last for the wanted play.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub last_part: Option<LastPartFigures>,
    /// Stacks put together at random.
    pub simulated: SimulatedFigures,
    /// The links, as typed.
    pub links: Vec<LinkFigures>,
    /// Which of the links has the greatest share of the variance; `null`
    /// where nothing varies.
    pub matters_most: Option<usize>,
    /// How the play is known: no better than any link.
    pub known: Known,
}

/// One link.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct LinkFigures {
    /// What it is called, or `null`.
    pub name: Option<String>,
    /// `+` or `-`.
    pub sign: &'static str,
    /// How many there are.
    pub count: u32,
    /// How its limits were given.
    pub class: String,
    /// Least good size of one.
    pub lower_mm: Mm,
    /// Greatest.
    pub upper_mm: Mm,
    /// The size to make one to.
    pub aim_mm: Mm,
    /// How its size may lie: `uniform`, `triangular` or `normal`.
    pub spread: &'static str,
    /// Its share of the worst case's width, 0 to 1.
    pub share_of_worst: f64,
    /// Its share of the variance, 0 to 1.
    pub share_of_variance: f64,
    /// How its limits are known.
    pub known: Known,
}

/// What stacks put together at random came to.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct SimulatedFigures {
    /// How many.
    pub runs: u64,
    /// Where the random numbers started.
    pub seed: u64,
    /// The mean play.
    pub mean_mm: Mm,
    /// Its standard deviation.
    pub sd_mm: Mm,
    /// Least play met.
    pub min_mm: Mm,
    /// Greatest.
    pub max_mm: Mm,
    /// Play that so many stay at or below.
    pub quantiles: Vec<QuantileFigures>,
    /// The chance that the stack has no play.
    pub probability_below_zero: f64,
    /// The chance that the play is as wanted; `null` where none was.
    pub probability_inside: Option<f64>,
    /// Stacks in equal steps from the least play to the greatest.
    pub histogram: Vec<u64>,
}

/// A play and the share of stacks at or below it.
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct QuantileFigures {
    /// The share, 0 to 1.
    pub share: f64,
    /// The play.
    pub play_mm: Mm,
}

/// The part made last.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct LastPartFigures {
    /// Which link it is, counted from 0.
    pub link: usize,
    /// The size to make it to.
    pub aim_mm: Mm,
    /// Limits that give the wanted play whatever the others measure; `null`
    /// where these vary by more than the play may.
    pub always: Option<Ends>,
    /// Limits that do while the others stay within their root sum square.
    pub usually: Option<Ends>,
    /// Where its limits were given: are they inside those of `always`, so
    /// that any good part will do?
    #[serde(skip_serializing_if = "Option::is_none")]
    pub as_given_will_do: Option<bool>,
}
