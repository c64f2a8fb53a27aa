//! A ball bearing by its number: `bearing 6204, shaft turns`.

mod answered;
mod asked;
pub(crate) mod figures;
mod shown;

use crate::questions::prelude::*;

pub(crate) use self::{
    asked::{BearingOf, is_number, read},
    figures::BearingAnswer,
};

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] = &[
    Clause::free("bearing", "a number", "a ball bearing and the seats of its rings").opens(),
    Clause::free("turns", "after shaft or housing", "which part turns under the load"),
];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[HelpTopic {
    topic: "bearings",
    also: &["bearing", "ball bearing", "brg", "6203", "r8"],
    lines: &[
        "A ball bearing by its number: 608, 623 to 629, 6000, 6200 and 6300, inch R,",
        "and RLS and RMS of old British machines. The seats of both rings, by which",
        "part turns (shaft turns, housing turns) and how hard it is loaded (light,",
        "normal, heavy); housing MATERIAL, warm TEMP; shaft SIZE and housing SIZE",
        "are what the seats measure; shielded or open. Other sizes: `help parts`.",
    ],
    examples: &[
        ("bearing 6203", "the seats of every case"),
        ("bearing 6204, shaft turns, housing aluminium", "a crank in light alloy"),
        ("bearing 6203, shaft turns, light, shaft 17.003mm", "a seat as it measures"),
        ("bearing R8 shielded, housing turns", "an idler on an inch bearing"),
        ("bearing 6204, housing aluminium, warm 60C", "a housing that runs warm"),
    ],
}];

impl Question for BearingOf {
    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.bearing(self).map(|answer| Answer::Bearing(Box::new(answer)))
    }
}

impl Answered for BearingAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.bearing(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        answered::reasons(self)
    }

    fn unconfirmed(&self) -> Option<String> {
        (!self.recalled.is_empty()).then(|| self.recalled.clone())
    }

    fn is_out_of_limits(&self) -> bool {
        Self::is_out_of_limits(self)
    }
}
