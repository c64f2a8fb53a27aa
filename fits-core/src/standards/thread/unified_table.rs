use super::unified::{Constant, Listed};
use crate::source::Provenance;
pub(super) static SOURCES: [Provenance; 0] = [];
pub(super) static SERIES: [Listed; 0] = [];
pub(super) static CONSTANT: [Constant; 0] = [];
