//! Standard tolerances: `20 grade 7`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod shown;
