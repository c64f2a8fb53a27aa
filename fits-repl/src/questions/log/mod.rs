//! The pass log.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod dial_shown;
pub(crate) mod doubts;
pub(crate) mod figures;
pub(crate) mod note;
pub(crate) mod opened;
pub(crate) mod places;
pub(crate) mod reader;
pub(crate) mod readings_reader;
pub(crate) mod shown;
