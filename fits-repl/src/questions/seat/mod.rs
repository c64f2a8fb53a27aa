//! Classes for a rolling bearing's seat: `seat shaft 25 turns normal`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod shown;
