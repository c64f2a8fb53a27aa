//! The questions that can be asked: a folder each.

pub(crate) mod align;
pub(crate) mod bushing;
pub(crate) mod crib;
pub(crate) mod drill;
pub(crate) mod general;
pub(crate) mod grade;
pub(crate) mod help;
pub(crate) mod joint;
pub(crate) mod keyway;
pub(crate) mod log;
pub(crate) mod part;
pub(crate) mod pick;
pub(crate) mod rehearse;
pub(crate) mod seat;
pub(crate) mod settings;
pub(crate) mod size;
pub(crate) mod stack;
pub(crate) mod thread;
pub(crate) mod why;
