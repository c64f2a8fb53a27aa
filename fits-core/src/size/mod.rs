//! Exact lengths: what they are, how they are read and how they are written.
//!
//! What belongs here: [`Length`], [`Deviations`], [`Limits`], the units a shop
//! uses, and rounding for the eye. What does not: any published table.

mod length;
mod limits;
mod read;
mod sized;
#[cfg(feature = "uom")]
mod typed;
mod write;

pub use length::Length;
pub(crate) use length::divide_half_even;
pub use limits::{Deviations, Limits};
pub use read::{Number, Unit};
pub use sized::Size;
pub(crate) use write::inches;
pub use write::{Decimals, Rounding};
