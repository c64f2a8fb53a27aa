//! The pass log: what is typed.

use std::ops::Range;

use crate::query::{Size, Spot, Warmth};

/// What is entered in a pass log, or asked of it.
#[allow(missing_docs, reason = "the fields of a variant are named in its line")]
#[derive(Clone, Debug)]
#[non_exhaustive]
pub enum LogQuery {
    /// `cut SIZE = READINGS`: dialled and read.
    Cut { dial: Size, read: Option<Readings>, sure: bool },
    /// `spring = READINGS`: a pass without infeed, and what was read.
    Spring { read: Option<Readings>, sure: bool },
    /// `read READINGS`: read again.
    Read { read: Readings, sure: bool },
    /// `undo`: the last entry is taken back.
    Undo,
    /// `done`: the part is finished.
    Done { sure: bool },
    /// `scrap`: it is scrap.
    Scrap,
    /// `log`: the log as it stands, or the list of logs where none is open.
    Show,
    /// `log list`: the logs there are.
    List,
    /// `log open NAME`: back to one of them.
    Open(Spot<String>),
    /// `log leave`: leave it as it is.
    Leave,
}

/// The readings at one place of the part.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct PlaceRead {
    /// Its name, where one was said.
    pub name: Option<Spot<String>>,
    /// What was read there, one at least.
    pub sizes: Vec<Size>,
}

/// What was read for an entry of the log.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Readings {
    /// Place by place; one at least.
    pub places: Vec<PlaceRead>,
    /// How warm the part was, where that was said.
    pub at: Option<Warmth>,
    /// What it is made of, where that was said beside the temperature.
    pub material: Option<Spot<String>>,
    /// What it was read with, where that was said.
    pub with: Option<Spot<String>>,
}

impl Readings {
    /// Every reading, in order.
    pub fn sizes(&self) -> impl DoubleEndedIterator<Item = &Size> {
        self.places.iter().flat_map(|place| &place.sizes)
    }

    /// From the first reading to the last.
    pub fn at(&self) -> Range<usize> {
        let mut sizes = self.sizes();
        let first = sizes.next().map_or(0..0, |size| size.at.clone());
        first.start..sizes.next_back().map_or(first.end, |size| size.at.end)
    }
}
