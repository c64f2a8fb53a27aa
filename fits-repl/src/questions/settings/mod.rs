//! The settings: units, dials, instrument, material.

pub(crate) mod answered;
pub(crate) mod asked;

use self::{answered::InForce, asked::Setting};
use crate::questions::prelude::*;

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] = &[
    Clause::new("dial", "diameter, radius, graduation or turn", "how the dials read"),
    Clause::new("instrument", "a name", "what readings are taken with"),
    Clause::new("material", "a name", "what the work is made of"),
    Clause::new("units", "mm or in", "what bare numbers are"),
    Clause::free("risk", "careful, usual, bold or N%", "how often a cut may overshoot").opens(),
    Clause::free("least", "chip SIZE", "the least cut that does not rub").opens(),
];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[HelpTopic {
    topic: "settings",
    also: &["units", "dial", "setting", "graduation", "risk", "machine", "slide"],
    lines: &[
        "The prompt remembers them in a TOML file of your configuration folder. fits",
        "QUERY and batch begin anew each time, so that a line is always answered alike.",
    ],
    examples: &[
        ("units in", "bare numbers are inches; `inches` does it too"),
        ("units mm", "bare numbers are millimetres; `metric` too"),
        ("dial radius", "the dial reads tool travel"),
        ("dial diameter", "the dial reads change of diameter"),
        ("dial graduation 0.02mm", "what the dial is divided in"),
        ("dial turn 2mm", "what a whole turn of the dial reads"),
        ("least chip 0.02mm", "the least cut that does not rub, on the diameter"),
        ("risk 2%", "how often a cut may overshoot; or `usual`"),
        ("instrument bore gauge", "what bores are read with; shafts apart"),
        ("machine boring head", "its dials are its own; or lathe"),
        ("top slide 0.02mm", "its divisions: set over 5.7°, it takes a tenth"),
        ("settings", "all of them"),
        ("material aluminium", "what the work is made of"),
    ],
}];

impl Question for Setting {
    fn stands_alone(&self) -> bool {
        false
    }

    fn typed_in(&self, session: &Session) -> Units {
        match self {
            Self::Graduation(size)
            | Self::DialTurn(size)
            | Self::LeastChip(size)
            | Self::TopSlide(Some(size)) => thought_in(size, session.units),
            _ => session.units,
        }
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        Ok(session.in_force(None))
    }

    fn carry_out(&self, session: &mut Session, _: &str) -> Result<Answer, Problem> {
        session.set(self)
    }
}

impl Answered for InForce {
    fn show(&self, text: &Text, out: &mut String) {
        text.in_force(out, self);
    }
}
