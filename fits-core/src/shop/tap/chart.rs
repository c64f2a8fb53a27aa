//! The tap drills that charts give, from `data/threads/tap_chart.csv`.

use super::chart_table;
use crate::{
    size::Length,
    source::{Known, Provenance},
    standards::{
        drills::Drill,
        thread::{Form, Pitch, Thread},
    },
};

/// The chart's drill for a Unified thread of class 2B.
///
/// ```
/// use fits_core::shop::tap::ChartDrill;
/// let found = ChartDrill::of(&"1/4-20".parse()?).expect("in the chart");
/// assert_eq!(found.drill().map(|drill| drill.name()), Some("#7"));
/// assert!(!found.known().is_unconfirmed() && !found.source().is_empty());
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct ChartDrill(&'static Row);

#[derive(Debug)]
pub(super) struct Row {
    pub(super) major: Length,
    /// Per inch.
    pub(super) turns: i64,
    pub(super) drill: &'static str,
    pub(super) from: Provenance,
}

impl ChartDrill {
    /// The drill for a thread, where the chart has it.
    ///
    /// ```
    /// use fits_core::shop::tap::ChartDrill;
    /// let found = ChartDrill::of(&"1/4-20".parse()?).and_then(ChartDrill::drill);
    /// assert_eq!(found.map(|drill| drill.name()), Some("#7"));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn of(thread: &Thread) -> Option<Self> {
        if !matches!(thread.form(), Form::Unified | Form::UnifiedRounded) {
            return None;
        }
        let is_it = |row: &&Row| {
            row.major == thread.major() && Pitch::per_inch(row.turns, 1) == Ok(thread.pitch())
        };
        chart_table::ROWS.iter().find(is_it).map(Self)
    }

    /// The drill: `tests/tap_chart.rs` holds every row to a listed one.
    pub fn drill(self) -> Option<Drill> {
        Drill::named(self.0.drill)
    }

    /// How the row is known.
    pub const fn known(self) -> Known {
        self.0.from.known
    }

    /// Where it is written.
    pub const fn source(self) -> &'static str {
        self.0.from.text
    }
}
