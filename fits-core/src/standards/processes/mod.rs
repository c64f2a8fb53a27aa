//! Which grades machining processes commonly hold.
//!
//! From `data/holemaking/processes.csv`, whose rows say how each is known.

#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod table;

use super::iso286::{Feature, Grade};
use crate::source::{Known, Provenance};

/// A machining process and the grades it commonly holds.
///
/// ```
/// use fits_core::standards::{iso286::Grade, processes::Process};
/// let reaming = Process::all().find(|process| process.name() == "reaming").expect("listed");
/// let (finest, coarsest) = reaming.grades().expect("known");
/// assert!(finest <= Grade::it(7).unwrap() && coarsest >= Grade::it(7).unwrap());
/// assert!(reaming.known().is_unconfirmed(), "the chart's ends are recalled");
/// assert!(!reaming.source().is_empty());
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Process(&'static Entry);

#[derive(Debug)]
struct Entry {
    name: &'static str,
    holes: bool,
    shafts: bool,
    finest: u8,
    coarsest: u8,
    from: Provenance,
}

impl Process {
    /// Every process listed, in the order a small shop reaches for them.
    ///
    /// ```
    /// use fits_core::standards::processes::Process;
    /// assert!(Process::all().any(|process| process.name() == "turning"));
    /// ```
    pub fn all() -> impl Iterator<Item = Self> {
        table::PROCESSES.iter().map(Self)
    }

    /// The processes that commonly hold a grade on such a feature.
    ///
    /// ```
    /// use fits_core::standards::{iso286::{Feature, Grade}, processes::Process};
    /// let it7 = Grade::it(7).expect("IT7");
    /// let names: Vec<_> = Process::holding(it7, Feature::Hole).map(Process::name).collect();
    /// assert!(names.contains(&"reaming"));
    /// assert!(!names.contains(&"drilling"));
    /// ```
    pub fn holding(grade: Grade, feature: Feature) -> impl Iterator<Item = Self> {
        Self::all().filter(move |process| {
            let makes = match feature {
                Feature::Hole => process.0.holes,
                Feature::Shaft => process.0.shafts,
            };
            // The finest is 1 or more.
            makes && grade.up_to(process.0.coarsest) && !grade.up_to(process.0.finest - 1)
        })
    }

    /// Its name in the trade.
    pub const fn name(self) -> &'static str {
        self.0.name
    }

    /// The finest and the coarsest grade it commonly holds.
    pub const fn grades(self) -> Option<(Grade, Grade)> {
        match (Grade::it(self.0.finest), Grade::it(self.0.coarsest)) {
            (Some(finest), Some(coarsest)) => Some((finest, coarsest)),
            _ => None,
        }
    }

    /// How that is known.
    pub const fn known(self) -> Known {
        self.0.from.known
    }

    /// Where it is written.
    pub const fn source(self) -> &'static str {
        self.0.from.text
    }
}
