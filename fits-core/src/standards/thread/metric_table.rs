use super::metric::{Listed, PitchRow, Step};
use crate::source::Provenance;
pub(super) static SOURCES: [Provenance; 0] = [];
pub(super) static PITCHES: [PitchRow; 0] = [];
pub(super) static STEPS: [Step; 0] = [];
pub(super) static SERIES: [Listed; 0] = [];
