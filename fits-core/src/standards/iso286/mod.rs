//! ISO 286-1:2010 and ISO 286-2: tolerance classes of holes and shafts.
//!
//! The tables (standard tolerances, fundamental deviations of shafts, deltas,
//! the holes that no rule gives) live in `data/iso286/` and are generated into
//! `tables.rs`. The rules that derive holes from them live in `rules.rs`.

mod class;
mod rules;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod tables;

pub use class::{Class, Feature, Grade, Letter};
pub use rules::{NOMINAL_OVER, NOMINAL_UP_TO, grade_within, standard_tolerance};
