use super::machining::{Cuts, Tool};
use crate::{size::Length, source::{Known, Provenance}, standards::{iso286::Feature, materials::Family}};
pub(super) static TOOLS: [Tool; 0] = [];
pub(super) static FAMILIES: [Cuts; 0] = [];
