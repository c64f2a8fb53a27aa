//! Parts end to end: `stack screw 20 ±0.05, tube -17 ±0.05`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod figures;
pub(crate) mod reader;
pub(crate) mod shown;

use self::{asked::StackText, figures::StackAnswer};
use crate::questions::{prelude::*, recalled};

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] = &[
    Clause::new("stack", "SIZE SIZE ...", "the play that parts end to end leave"),
    Clause::free("play", "A..B", "the play that is wanted"),
    Clause::free("all", "normal or uniform", "how the sizes of all links spread"),
];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[HelpTopic {
    topic: "stack",
    also: &["play", "washer", "runs", "seed"],
    lines: &[
        "Parts end to end and their play. + adds, - takes away, 2x is two alike;",
        "each by limits, a class, or what it measures; a name before it if you like.",
        "play A..B wanted gives the length to make the last part to, or the one marked ?.",
        "uniform, triangular or normal after a link says how its size may lie; all normal",
        "is of every link. runs N and seed N steer the simulation.",
    ],
    examples: &[
        ("stack 12 \u{b1}0.1 -5 \u{b1}0.05 -6.8 +0/-0.1", "end play of three"),
        ("stack screw 20 +0.05/0, tube -17 \u{b1}0.05, washer -2x 1.4 \u{b1}0.05", "named"),
        ("stack 20.03, -2x 1.4 \u{b1}0.02, tube -?, play 0.1..0.3", "the tube to make"),
        ("stack 20 h9 -19.7 \u{b1}0.05, all normal, runs 1000000", "simulated longer"),
    ],
}];

/// A line that begins with `stack`.
pub(crate) fn read(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    keyword("stack")(input).ok().map(|(rest, ())| reader::stack(rest, total))
}

impl Question for StackText {
    fn typed_in(&self, session: &Session) -> Units {
        session.stack_thought_in(self)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.stack(self)
    }
}

impl Answered for StackAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.stack(out, self);
    }

    fn reasons(&self, units: Units) -> Vec<Reason> {
        answered::reasons(self, units)
    }

    fn unconfirmed(&self) -> Option<String> {
        recalled("the limits of", self.links.iter().map(|link| (link.class.as_str(), link.known)))
    }
}
