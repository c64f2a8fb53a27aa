//! The crib: the figures of its answers.

use fits_core::job::Crib;
use schemars::JsonSchema;
use serde::Serialize;

use crate::answer::Mm;

/// The crib.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct CribAnswer {
    /// The file; `null` where it is kept in memory only.
    pub file: Option<String>,
    /// What was added or taken out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub changed: Option<String>,
    /// Every tool with its number, in a person's words.
    pub list: Vec<String>,
    /// The tools as the file has them.
    pub crib: Crib,
    /// What else to know.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub notes: Vec<String>,
}

/// What the crib has for a hole to be reamed.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct CribReaming {
    /// Its reamers that land inside the limits, the best first.
    pub reamers: Vec<OwnReamer>,
    /// Where none does: the one that comes nearest.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub nearest: Option<OwnReamer>,
    /// Its drill that leaves fitting stock; `null` where none does.
    pub drill: Option<OwnDrillFigures>,
}

/// A drill of the crib before a reamer.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct OwnDrillFigures {
    /// Its name.
    pub name: String,
    /// Its diameter.
    pub mm: Mm,
    /// The stock it leaves, or how far it is off the size asked about.
    pub leaves_mm: Mm,
}

/// A reamer of the crib.
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct OwnReamer {
    /// Its marked size.
    pub size_mm: Mm,
    /// What it cuts; `null` where it was never tried.
    pub cuts_mm: Option<Mm>,
}

/// A gauge pin.
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct PinFigures {
    /// Its size.
    pub mm: Mm,
    /// How far it is off the limit; below 0 under it.
    pub off_mm: Mm,
}

/// Gauge pins of the crib that judge a hole.
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct PinsFigures {
    /// The largest that must go in.
    pub goes_in: Option<PinFigures>,
    /// The smallest that must not.
    pub stays_out: Option<PinFigures>,
}
