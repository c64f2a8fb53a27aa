//! Threads: limits, tap drills, wires and passes.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod figures;
pub(crate) mod led;
pub(crate) mod reader;
pub(crate) mod shown;
