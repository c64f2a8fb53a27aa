//! The nearest drills: `drill 0.7031in`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod shown;
