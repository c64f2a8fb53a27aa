//! What was typed of a thread.

use fits_core::{size::Number, standards::thread::Designation};

use crate::query::{Size, Spot};

/// What is asked of a thread.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum ThreadAsk {
    /// Its limits, blank and tap drill.
    Limits,
    /// `tap`: drills for it, or what a drill gives.
    Tap,
    /// `clearance`: holes that its screw passes.
    Clearance,
    /// `wires`: the size over three wires.
    Wires,
    /// `over SIZE`: what a size over wires comes to.
    Over,
    /// `cut`: how to cut it on the lathe.
    Cut,
}

impl ThreadAsk {
    /// The keyword.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Limits => "limits",
            Self::Tap => "tap",
            Self::Clearance => "clearance",
            Self::Wires => "wires",
            Self::Over => "over",
            Self::Cut => "cut",
        }
    }
}

/// How the tool is fed into a thread.
#[derive(Clone, Copy, Debug)]
#[non_exhaustive]
pub enum Feed {
    /// Along the compound, at its angle in degrees; the usual one where none
    /// was typed.
    Compound(Option<Number>),
    /// Straight in, by the cross slide.
    Straight,
}

/// How freely a screw is to pass.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Passes {
    /// `close`, `fine`.
    Close,
    /// `normal`, `medium`.
    Normal,
    /// `loose`, `coarse`.
    Loose,
}

/// Which thread of a pair is meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Place {
    /// On the outside, as on a screw.
    Outside,
    /// In the bore, as in a nut.
    Inside,
}

/// How a tap is driven.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Driven {
    /// By hand.
    Hand,
    /// By a machine.
    Power,
}

/// A thread and what is asked of it.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct ThreadQuery {
    /// The thread as typed.
    pub thread: Spot<Designation>,
    /// What is asked, with the place of its word.
    pub ask: Spot<ThreadAsk>,
    /// `tap 70%`.
    pub percent: Option<Spot<Number>>,
    /// `tap 8.6`, `tap #50`: a drill in hand.
    pub drill: Option<Size>,
    /// `hub MATERIAL`: what is tapped.
    pub hub: Option<Spot<String>>,
    /// `hand` or `power`.
    pub driven: Option<Spot<Driven>>,
    /// `form`: a thread-forming tap.
    pub form: Option<Spot<()>>,
    /// `wires SIZE`, `wire SIZE`.
    pub wire: Option<Size>,
    /// `over SIZE`.
    pub over: Option<Size>,
    /// `compound ANGLE`, `straight`.
    pub feed: Option<Spot<Feed>>,
    /// `clearance close`.
    pub passes: Option<Spot<Passes>>,
    /// `inside`, `outside`; `nut`, `screw`.
    pub place: Option<Spot<Place>>,
    /// `nose SIZE`, `radius SIZE`: the radius of the tool's end.
    pub nose: Option<Size>,
    /// `flat SIZE`: the width of the tool's end.
    pub flat: Option<Size>,
    /// `long SIZE`: the length of engagement.
    pub long: Option<Size>,
}

impl ThreadQuery {
    /// A thread with nothing else said.
    pub const fn new(thread: Spot<Designation>) -> Self {
        let at = thread.at.start..thread.at.end;
        Self {
            thread,
            ask: Spot { value: ThreadAsk::Limits, at },
            percent: None,
            drill: None,
            hub: None,
            driven: None,
            form: None,
            wire: None,
            over: None,
            feed: None,
            passes: None,
            place: None,
            nose: None,
            flat: None,
            long: None,
        }
    }
}
