//! Where a figure comes from: a standard, a table, a formula or practice.

use serde::Serialize;

/// How a figure is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Known {
    /// Read in the published table that the row names.
    Seen,
    /// Computed by a published formula or rule.
    Formula,
    /// Recalled, not found in a text: check it before a costly part.
    Memory,
    /// Common practice, no source.
    Practice,
    /// Typed in by whoever asks, or read from a file of theirs.
    Given,
}

impl Known {
    /// In words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Seen => "read in a published table",
            Self::Formula => "by rule",
            Self::Memory => "recalled, not confirmed by a text: check it before a costly part",
            Self::Practice => "common practice, no source",
            Self::Given => "as given",
        }
    }
}

/// Why one figure is what it is.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Reason {
    /// The figure, as `IT7` or `largest reamer`.
    pub figure: String,
    /// Its value with its unit.
    pub value: String,
    /// The rule or formula, with the numbers put in where there are any.
    pub rule: String,
    /// Standard and table, or book and page.
    pub source: String,
    /// How it is known.
    pub known: Known,
}

/// One row's provenance in a generated table.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Provenance {
    pub(crate) known: Known,
    pub(crate) text: &'static str,
}
