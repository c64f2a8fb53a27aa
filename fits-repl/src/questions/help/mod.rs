//! Help, by topic.

pub(crate) mod answered;
pub(crate) mod shown;
