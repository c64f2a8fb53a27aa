//! How a part was measured, and what a rehearsal takes, as typed.

use crate::query::{Amount, Quantity, Size, Spot};

/// A temperature, and how well it is known: `31C`, `31±1C`.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Warmth {
    /// The temperature.
    pub temperature: Amount,
    /// Its standard uncertainty.
    pub either: Option<Spot<Quantity>>,
}

/// What is said of readings beside the readings.
#[derive(Clone, Debug, Default)]
#[non_exhaustive]
pub struct Measuring {
    /// Every place with its readings, the first ones too, where there is more
    /// than one reading of the one feature or of the hole.
    pub places: Vec<Vec<Size>>,
    /// `with INSTRUMENT`, once for each.
    pub instruments: Vec<Spot<String>>,
    /// `at TEMP`: the part's.
    pub at: Option<Warmth>,
    /// `room TEMP`: the gauge's, and what the part cools to.
    pub room: Option<Warmth>,
    /// `within SIZE`: how near a warm part is to come to its size.
    pub within: Option<Size>,
    /// `runs N`.
    pub runs: Option<Spot<u64>>,
    /// `seed N`.
    pub seed: Option<Spot<u64>>,
    /// `with fault NAME`: what goes wrong in a rehearsal.
    pub fault: Option<Spot<String>>,
    /// `overhang N`: free length over thickness.
    pub overhang: Option<Spot<f64>>,
}

impl Measuring {
    /// Is anything said that changes how readings are judged?
    pub const fn is_of_readings(&self) -> bool {
        !self.places.is_empty() || !self.instruments.is_empty() || self.at.is_some()
    }
}
