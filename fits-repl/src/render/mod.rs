//! Answers to words and pictures, one file a format.

mod bar;
pub(crate) mod cells;
pub(crate) mod draw;
pub mod json;
pub(crate) mod markup;
mod printable;
pub(crate) mod shown;
pub mod svg;
pub mod text;
mod writer;

pub use crate::render::{printable::printable, text::lines::follow_terminal};

/// Whether colour may be used. It never carries meaning alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Colour {
    /// A terminal that shows it.
    On,
    /// Anything else, or `NO_COLOR` is set.
    Off,
}
