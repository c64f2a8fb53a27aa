//! Parts pressed or shrunk together.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod at_work;
pub(crate) mod figures;
pub(crate) mod reader;
pub(crate) mod reasons;
pub(crate) mod resolved;
pub(crate) mod shown;
