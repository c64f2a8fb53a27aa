//! What to do about it: reamers and pre-drills, passes, verdicts on readings.

pub mod adviser;
pub mod align;
#[cfg(feature = "uom")]
pub mod assemble;
#[cfg(feature = "uom")]
pub mod bushing;
#[rustfmt::skip]
mod caution_table;
mod cautions;
mod chance;
mod check;
#[cfg(feature = "uom")]
pub mod cooling;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod inch_reamer_table;
mod inch_reamers;
#[cfg(feature = "uom")]
pub mod machining;
#[cfg(feature = "uom")]
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod machining_table;
pub mod infeed;
mod of_thread;
mod passes;
pub(crate) mod pick;
#[rustfmt::skip]
mod pick_table;
#[cfg(feature = "uom")]
mod plain;
mod ream;
mod reamer_cut;
pub mod rehearse;
#[cfg(feature = "uom")]
pub mod rescue;
#[cfg(feature = "uom")]
pub mod service;
#[cfg(feature = "uom")]
pub mod share;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod stock_table;
mod spec;
pub mod stack;
#[cfg(feature = "uom")]
mod swelling;
pub mod tap;
#[cfg(feature = "uom")]
pub mod verdict;
pub mod wires;
#[cfg(feature = "uom")]
#[rustfmt::skip]
mod swelling_table;
#[cfg(feature = "uom")]
pub mod warm;
pub mod words;

pub use cautions::Hazard;
pub use check::{Reading, Verdict};
pub use inch_reamers::InchReamer;
pub use passes::{CutRules, Pass, Passes, Stage, Start};
pub use pick::{Candidate, FitClasses, fits_with, nearest_b41, pick};
#[cfg(feature = "uom")]
pub use plain::{celsius, in_celsius};
pub use ream::{PreDrill, Ream};
pub use reamer_cut::{Cuts, ReamerCut, Remedy, reamer_cut};
pub use spec::{FitDesignation, Spec};
#[cfg(feature = "uom")]
pub use swelling::{Damp, swelling_reason};

use crate::{
    size::Length,
    source::{Known, Provenance},
};

/// Stock to leave on the diameter, for sizes up to and including `up_to`.
#[derive(Clone, Copy, Debug)]
struct StockRow {
    up_to: Length,
    /// Least stock for a reamer; for passes, what roughing leaves.
    first: Length,
    /// Most stock for a reamer; for passes, the most one roughing pass takes.
    second: Length,
    from: Provenance,
}

/// The row for a diameter; the last row holds beyond its end.
fn stock_for(table: &'static [StockRow], diameter: Length) -> StockRow {
    const NOTHING: StockRow = StockRow {
        up_to: Length::ZERO,
        first: Length::ZERO,
        second: Length::ZERO,
        from: Provenance { known: Known::Practice, text: "" },
    };
    let at = table.partition_point(|row| row.up_to < diameter);
    table.get(at).or(table.last()).copied().unwrap_or(NOTHING)
}
