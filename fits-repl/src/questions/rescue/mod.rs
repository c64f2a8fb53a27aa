//! A part that came out wrong: `rescue shaft 0.7478in should be 0.7495in, press`.

mod answered;
mod asked;
mod figures;
mod shown;

use crate::questions::prelude::*;

pub(crate) use self::{
    asked::{RescueOf, read},
    figures::{NamedLimits, RescueAnswer},
};

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] = &[
    Clause::free("rescue", "`hole` or `shaft` and what it measures", "the ways out, ranked")
        .opens(),
    Clause::free("should be", "a size, or two with `..`", "what a part in trouble should be"),
    Clause::free("mate", "a size, or two with `..`", "the other part as it is"),
    Clause::free("people", "", "the joint carries people"),
    Clause::free("shock", "", "the load is shock, or turns round"),
];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[HelpTopic {
    topic: "rescue",
    also: &["worn", "loose", "undersize", "oversize", "repair", "retaining compound"],
    lines: &[
        "A part that came out wrong or is worn: what it measures (two readings if it",
        "is out of round), what it should be, the fit; the ways out come ranked.",
        "mate SIZE or bearing NUMBER: the other part; long SIZE, torque T, od SIZE, at T,",
        "hub NAME, shaft NAME, bush NAME, wall SIZE, turns, shock, oily, people.",
    ],
    examples: &[
        ("rescue shaft 0.7478in should be 0.7495in, press", "a journal turned too small"),
        ("rescue hole 3 thou over 3/4in, press, long 1in", "a bore too big"),
        ("rescue hole 1.852in for bearing 6005", "a ring that spins in its bore"),
        ("rescue hole 0.753in 0.761in should be 3/4in, slip", "an egged hole"),
    ],
}];

impl Question for RescueOf {
    fn typed_in(&self, session: &Session) -> Units {
        self.0.first_size().map_or(session.units, |size| thought_in(size, session.units))
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.rescue(&self.0).map(|found| Answer::Rescue(Box::new(found)))
    }
}

impl Answered for RescueAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.rescue(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        self.reasons.clone()
    }

    fn unconfirmed(&self) -> Option<String> {
        let ways =
            self.ways.iter().filter(|way| way.verdict != fits_core::shop::rescue::Prospect::No);
        crate::questions::recalled("figures of", ways.map(|way| (way.way, way.known)))
    }

    fn is_out_of_limits(&self) -> bool {
        true
    }
}
