//! General tolerances of untoleranced sizes: `20 general m`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod shown;
