//! A feature or a pair: its limits, tools and passes, and readings of it.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod circumstance;
pub(crate) mod clauses;
pub(crate) mod figures;
pub(crate) mod mates;
pub(crate) mod measured;
pub(crate) mod measured_figures;
pub(crate) mod measured_shown;
pub(crate) mod measuring;
pub(crate) mod plan_shape;
pub(crate) mod plans;
pub(crate) mod reader;
pub(crate) mod readings;
pub(crate) mod readings_shown;
pub(crate) mod resolve;
pub(crate) mod shown;
pub(crate) mod warm;
pub(crate) mod warm_figures;
pub(crate) mod warm_shown;
