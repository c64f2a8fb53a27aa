//! What a shop keeps on file: the tools it owns, what was cut and read, and a
//! whole job ([`whole`]).
//! Plain types that serde writes and reads; who stores them is not a part of
//! this.

mod crib;
mod drill_set;
mod log;
mod log_entry;
#[cfg(feature = "uom")]
mod replay;
mod serves;
pub mod whole;

pub use crib::{Bar, Crib, GaugePin, LandedReamer, OwnInstrument, OwnMaterial, Pins, Reamer, Tap};
pub use drill_set::{DrillSeries, DrillSet, OwnDrill};
pub use log::{Gauge, LogState, Opening, PassLog, Place, VERSION};
pub use log_entry::{Entry, Seen};
#[cfg(feature = "uom")]
pub use replay::Doubt;
pub use serves::{CribPlan, FirstDrill, Reaming};
