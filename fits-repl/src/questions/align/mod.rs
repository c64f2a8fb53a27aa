//! The tailstock: `align 19.98 20.01 over 150`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod shown;
