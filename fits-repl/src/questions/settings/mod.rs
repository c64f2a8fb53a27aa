//! The settings: units, dials, instrument, material.

pub(crate) mod answered;
