//! The crib: what is typed.

use fits_core::size::Number;

use crate::query::{Amount, Size, Spot};

/// A tool for the crib, as typed.
#[allow(missing_docs, reason = "the fields of a variant are named in its line")]
#[derive(Clone, Debug)]
#[non_exhaustive]
pub enum ToolText {
    /// `drill SIZE`.
    Drill(Size),
    /// `drill set SERIES A..B step SIZE`.
    DrillSet { series: Spot<String>, range: Option<(Size, Size)>, step: Option<Size> },
    /// `reamer SIZE cuts SIZE`.
    Reamer { size: Size, cuts: Option<Size> },
    /// `tap THREAD`.
    Tap(Spot<String>),
    /// `pin SIZE`.
    Pin(Size),
    /// `bar SIZE reach SIZE`, by the smallest bore it goes into.
    Bar { bore: Size, reach: Option<Size> },
    /// `instrument NAME repeat SIZE bias SIZE`.
    Instrument { name: Spot<String>, repeat: Size, bias: Option<Size> },
    /// `material NAME`, then its figures.
    Material { name: Spot<String>, figures: Vec<MaterialFigure> },
}

/// One figure of a material, as typed.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct MaterialFigure {
    /// Its name: `modulus`.
    pub name: Spot<String>,
    /// What was typed after it.
    pub read: FigureText,
}

/// What was typed of a material's figure.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub enum FigureText {
    /// A quantity with its unit, as a joint's.
    Amount(Amount),
    /// Poisson's ratio.
    Ratio(Spot<Number>),
}

/// What is asked of the crib.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub enum CribQuery {
    /// `crib`: all of it.
    Show,
    /// `crib add TOOL`.
    Add(Box<Spot<ToolText>>),
    /// `crib remove N`, by the number that `crib` shows.
    Remove(Spot<usize>),
}
