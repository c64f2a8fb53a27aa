//! Drills of a drawer: one by one, or a set.

#[cfg(feature = "serde")]
use serde::{Deserialize, Serialize};

use crate::{
    size::Length,
    standards::drills::{Drill, Series},
};

/// A drill.
///
/// ```
/// use fits_core::job::OwnDrill;
/// let drill = OwnDrill { size: "8.5mm".parse()?, called: None };
/// assert_eq!(drill.name(), "8.5 mm");
/// # Ok::<(), fits_core::Error>(())
/// ```
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(Serialize, Deserialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is a row of a file, which its owner writes whole"
)]
pub struct OwnDrill {
    /// Its marked size.
    pub size: Length,
    /// What it is called, where its size alone is not its name: `#7`.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub called: Option<String>,
}

impl OwnDrill {
    /// The smaller first, then by what they are called.
    pub(crate) fn by_size(&self, other: &Self) -> core::cmp::Ordering {
        self.size.cmp(&other.size).then_with(|| self.called.cmp(&other.called))
    }

    /// What it is called: `#7`, `19/32 in`, `8.5 mm`.
    pub fn name(&self) -> String {
        if let Some(called) = &self.called {
            return called.clone();
        }
        let standard = |series| Drill::over(self.size, &[series]);
        [Series::Metric, Series::Fraction]
            .into_iter()
            .filter_map(standard)
            .find(|drill| drill.diameter() == self.size)
            .map_or_else(|| self.size.to_string(), |drill| drill.name().to_owned())
    }
}

/// The kinds of drill sets.
///
/// ```
/// use fits_core::job::DrillSeries;
/// assert_eq!(DrillSeries::Fraction.name(), "fraction");
/// ```
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(Serialize, Deserialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "lowercase"))]
#[non_exhaustive]
pub enum DrillSeries {
    /// Millimetres.
    Metric,
    /// Fractions of an inch.
    Fraction,
    /// #1 to #107.
    Number,
    /// A to Z.
    Letter,
}

impl DrillSeries {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Metric, Self::Fraction, Self::Number, Self::Letter];

    /// Its name, as the file has it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Metric => "metric",
            Self::Fraction => "fraction",
            Self::Number => "number",
            Self::Letter => "letter",
        }
    }

    const fn standard(self) -> Series {
        match self {
            Self::Metric => Series::Metric,
            Self::Fraction => Series::Fraction,
            Self::Number => Series::Number,
            Self::Letter => Series::Letter,
        }
    }
}

/// A set of drills: the standard sizes of a series between two sizes, or every
/// step between them.
///
/// ```
/// use fits_core::job::{DrillSeries, DrillSet};
/// let tenths = DrillSet {
///     series: DrillSeries::Metric,
///     from: Some("1mm".parse()?),
///     to: Some("10mm".parse()?),
///     step: Some("0.1mm".parse()?),
/// };
/// assert_eq!(tenths.drills().len(), 91);
/// # Ok::<(), fits_core::Error>(())
/// ```
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(Serialize, Deserialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is a row of a file, which its owner writes whole"
)]
pub struct DrillSet {
    /// The series; `set` in the file.
    #[cfg_attr(feature = "serde", serde(rename = "set"))]
    pub series: DrillSeries,
    /// The smallest; the series' own where nothing is said.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub from: Option<Length>,
    /// The largest.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub to: Option<Length>,
    /// The step; the standard sizes where nothing is said.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub step: Option<Length>,
}

/// More drills than this are not set.
const LARGEST_SET: i64 = 1000;

impl DrillSet {
    /// The drills of it, smallest first; none of a set that cannot be.
    pub fn drills(&self) -> Vec<OwnDrill> {
        let standard = || {
            Drill::all()
                .filter(|drill| drill.series() == self.series.standard())
                .filter(|drill| self.from.is_none_or(|from| drill.diameter() >= from))
                .filter(|drill| self.to.is_none_or(|to| drill.diameter() <= to))
                .map(|drill| OwnDrill {
                    size: drill.diameter(),
                    called: (self.series != DrillSeries::Metric).then(|| drill.name().to_owned()),
                })
                .collect()
        };
        let (Some(from), Some(to), Some(step)) = (self.from, self.to, self.step) else {
            return standard();
        };
        let span = to.tenth_nanometres().saturating_sub(from.tenth_nanometres());
        if !step.is_positive() || span < 0 {
            return Vec::new();
        }
        let last = span.div_euclid(step.tenth_nanometres()).min(LARGEST_SET);
        (0..=last)
            .filter_map(|number| from.checked_add(step.checked_mul(number).ok()?).ok())
            .map(|size| OwnDrill { size, called: None })
            .collect()
    }
}
