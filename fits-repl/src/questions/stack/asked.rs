//! A stack as typed: links, what play is wanted, how to simulate.

use fits_core::shop::stack::{Direction, Spread};

use crate::query::{Size, Spot, Tolerance};

/// One link: `- 2x washer 1.5 ±0.05 normal`.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct LinkText {
    /// What it is called.
    pub name: Option<Spot<String>>,
    /// Its sign; none where none was typed.
    pub direction: Option<Direction>,
    /// How many there are.
    pub count: Spot<u32>,
    /// Its size; none where `?` stands for a part still to be made.
    pub size: Option<Size>,
    /// Its limits.
    pub tolerance: Tolerance,
    /// How its size may lie in them, where it was said.
    pub spread: Option<Spot<Spread>>,
    /// From its sign or number to its end.
    pub at: std::ops::Range<usize>,
}

/// `stack LINK LINK …`, with its clauses.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct StackText {
    /// The links.
    pub links: Vec<LinkText>,
    /// `play SIZE..SIZE`.
    pub play: Option<(Size, Size)>,
    /// `runs N`.
    pub runs: Option<Spot<u64>>,
    /// `seed N`.
    pub seed: Option<Spot<u64>>,
    /// `all normal`: of the links that say no spread.
    pub all: Option<Spot<Spread>>,
}
