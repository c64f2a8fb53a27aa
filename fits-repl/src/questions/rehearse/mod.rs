//! The odds before cutting.

pub(crate) mod answered;
pub(crate) mod figures;
pub(crate) mod reader;
pub(crate) mod shown;
