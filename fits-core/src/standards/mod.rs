//! What published tables say. What to do about it lives in [`crate::shop`].

pub mod b41;
pub mod bought;
pub mod drills;
pub mod hardware;
pub mod instruments;
pub mod iso2768;
pub mod iso286;
#[cfg(feature = "uom")]
pub mod materials;
pub mod processes;
pub mod thread;
pub mod title_block;
