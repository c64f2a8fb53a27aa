//! What a shop keeps on file: the tools it owns, what was cut and read, and a
//! whole job ([`whole`]).
//! Plain types that serde writes and reads; who stores them is not a part of
//! this.

mod crib;
mod log;
#[cfg(feature = "uom")]
mod replay;
mod serves;
pub mod whole;

pub use crib::{
    Bar, Crib, DrillSeries, DrillSet, GaugePin, LandedReamer, OwnDrill, OwnInstrument, OwnMaterial,
    Pins, Reamer, Tap,
};
pub use log::{Entry, Gauge, Opening, PassLog, Place, Seen, State, VERSION};
#[cfg(feature = "uom")]
pub use replay::Doubt;
pub use serves::{CribPlan, FirstDrill, Reaming};
