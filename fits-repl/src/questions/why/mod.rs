//! Where each figure comes from.

pub(crate) mod answered;
pub(crate) mod shown;
