//! Standard classes for a wanted clearance: `pick 20 clearance 0.01..0.04`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod shown;
