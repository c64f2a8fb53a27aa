//! A press that need not hold alone: `share 60Nm, shaft 1in, press 35Nm, pin 1/4in`.

mod answered;
mod asked;
mod shown;

use crate::questions::prelude::*;

pub(crate) use self::{
    answered::ShareAnswer,
    asked::{ShareOf, read},
};

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] = &[
    Clause::free("share", "a torque, a shaft and what holds it", "the share that each takes")
        .opens(),
    Clause::free("cross pin", "a size", "a pin across hub and shaft"),
];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[HelpTopic {
    topic: "share",
    also: &["pinned", "keyed", "cross pin"],
    lines: &[
        "A torque shared by a press and what stands beside it: press TORQUE (what the",
        "press holds, as `assemble` says), compound with gap SIZE and long SIZE, cross",
        "pin SIZE, key SIZE long SIZE, screw SIZE long SIZE (half in shaft, half in hub).",
        "of NAME: the pin's, key's or screw's metal; shock: the load turns round.",
    ],
    examples: &[
        ("share 60Nm, shaft 25mm, press 35Nm, cross pin 6mm", "a pin takes the rest"),
        ("share 20 lbf-ft, shaft 3/4in, compound, gap 2 thou, long 1in", "bonded alone"),
        ("share 60Nm, shaft 25mm, key 8mm, long 20mm, shock", "keyed, the load turns round"),
    ],
}];

impl Question for ShareOf {
    fn typed_in(&self, session: &Session) -> Units {
        self.said.size("shaft").map_or(session.units, |size| thought_in(size, session.units))
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.share(self).map(|found| Answer::Share(Box::new(found)))
    }
}

impl Answered for ShareAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.share(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        self.reasons.clone()
    }

    fn unconfirmed(&self) -> Option<String> {
        self.known.is_unconfirmed().then(|| "the strength of a compound or of a metal".into())
    }
}
