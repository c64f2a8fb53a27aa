//! The questions that can be asked: a folder each.

pub(crate) mod asks;
pub(crate) mod asks_answered;
pub(crate) mod asks_figures;
pub(crate) mod asks_shown;
pub(crate) mod bushing;
pub(crate) mod crib;
pub(crate) mod joint;
pub(crate) mod log;
pub(crate) mod part;
pub(crate) mod rehearse;
pub(crate) mod stack;
pub(crate) mod thread;
pub(crate) mod why;
