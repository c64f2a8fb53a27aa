//! The tools of the shop.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod figures;
pub(crate) mod reader;
pub(crate) mod reasons;
pub(crate) mod shown;
