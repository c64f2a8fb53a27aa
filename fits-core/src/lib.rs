//! Fits and tolerances for one-off machine work.
//!
//! Exact [`Length`]s, the limits that published standards give, how two parts
//! go together ([`Fit`]), and what a shop does about it: reamers, pre-drills,
//! boring and turning passes, verdicts on readings ([`shop`]).
//!
//! The crate knows no terminal, no file system, no clock and no global state.
//! A question that has no answer is an [`Error`] that says why and what would
//! work; nothing panics.
//!
//! ```
//! use fits_core::{Fit, Length};
//! let nominal = Length::from_millimetres(20)?;
//! let fit = Fit::of_classes(nominal, "H7".parse()?, "g6".parse()?)?;
//! assert_eq!(fit.clearance().lower().to_string(), "0.007 mm");
//! assert_eq!(fit.clearance().upper().to_string(), "0.041 mm");
//! # Ok::<(), fits_core::Error>(())
//! ```
//!
//! # What is not covered
//! Geometry (roundness, straightness, position), surface texture beyond what a
//! process commonly leaves, and any certificate: the standards' own text
//! outranks the tables here.

mod error;
mod fit;
pub mod job;
mod nearest;
pub mod shop;
pub mod size;
pub mod source;
pub mod speech;
pub mod standards;
#[cfg(feature = "serde")]
mod written;

pub use error::Error;
pub use fit::{Basis, Chance, Fit, Kind};
pub use size::{Deviations, Length, Limits};
