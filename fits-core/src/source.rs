//! Where a figure comes from: a standard, a table, a formula or practice.

use core::fmt;

use crate::{size::Unit, speech::Speech};
#[cfg(feature = "serde")]
use serde::Serialize;

/// How a figure is known.
///
/// ```
/// use fits_core::source::Known;
/// assert!(Known::Memory.is_unconfirmed() && !Known::Seen.is_unconfirmed());
/// assert_eq!(Known::Practice.words(), "common practice, no source");
/// ```
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "lowercase"))]
#[non_exhaustive]
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
    /// The one of two that is less to be relied on: what is worked out from both
    /// is known no better. From memory is the worst, then common practice, a
    /// rule, a published table, and what was given.
    ///
    /// ```
    /// use fits_core::source::Known;
    /// assert_eq!(Known::Seen.worst(Known::Formula), Known::Formula);
    /// assert_eq!(Known::Memory.worst(Known::Practice), Known::Memory);
    /// assert_eq!(Known::Given.worst(Known::Seen), Known::Seen);
    /// ```
    #[must_use]
    pub const fn worst(self, other: Self) -> Self {
        if self.doubt() < other.doubt() { other } else { self }
    }

    /// Grows as a figure is less to be relied on.
    const fn doubt(self) -> u8 {
        match self {
            Self::Given => 0,
            Self::Seen => 1,
            Self::Formula => 2,
            Self::Practice => 3,
            Self::Memory => 4,
        }
    }

    /// Was it only recalled? The answer then says so.
    pub const fn is_unconfirmed(self) -> bool {
        matches!(self, Self::Memory)
    }

    /// In words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Seen => "read in a published table",
            Self::Formula => "by rule",
            Self::Memory => "unconfirmed: it comes from memory, check it before you cut",
            Self::Practice => "common practice, no source",
            Self::Given => "as given",
        }
    }
}

impl fmt::Display for Known {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.words())
    }
}

/// Why one figure is what it is.
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(Serialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is built whole: what is new must be said by whoever builds one"
)]
pub struct Reason {
    /// The figure, as `IT7` or `largest reamer`.
    pub figure: String,
    /// Its value with its unit.
    #[cfg_attr(feature = "schema", schemars(with = "String"))]
    pub value: Speech,
    /// The rule or formula, with the numbers put in where there are any.
    #[cfg_attr(feature = "schema", schemars(with = "String"))]
    pub rule: Speech,
    /// Standard and table, or book and page.
    pub source: String,
    /// How it is known.
    pub known: Known,
}

impl Reason {
    /// It, with its figures said in a unit's own system.
    ///
    /// ```
    /// use fits_core::{size::Unit, standards::materials::{Material, Property}};
    /// let reason = Material::find("bronze")?.reason(Property::Expansion).expect("known");
    /// assert_eq!(reason.said_in(Unit::Inch).value, "10 millionths per °F");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    #[must_use]
    pub fn said_in(self, unit: Unit) -> Self {
        let [value, rule] = [&self.value, &self.rule].map(|speech| speech.said_in(unit).into());
        Self { value, rule, ..self }
    }
}

/// One row's provenance in a generated table.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Provenance {
    pub(crate) known: Known,
    pub(crate) text: &'static str,
}

impl Provenance {
    /// A figure that rests on the row.
    pub(crate) fn reason(
        self,
        figure: &str,
        value: impl Into<Speech>,
        rule: &'static str,
        known: Known,
    ) -> Reason {
        Reason {
            figure: figure.into(),
            value: value.into(),
            rule: rule.into(),
            source: self.text.into(),
            known,
        }
    }
}
