//! The odds before cutting: `rehearse 20 H7 from 19.6`.

pub(crate) mod answered;
pub(crate) mod figures;
pub(crate) mod reader;
pub(crate) mod shown;

use self::{figures::RehearsalAnswer, reader::Rehearse};
use crate::questions::prelude::*;

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] = &[
    Clause::new("overhang", "N", "free length of the tool over its thickness").inside(),
    Clause::new("rehearse", "a part", "the odds before cutting"),
    Clause::new("runs", "N", "how many times it is simulated").inside(),
    Clause::new("seed", "N", "where chance begins").inside(),
];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[HelpTopic {
    topic: "rehearse",
    also: &["odds", "overhang", "rehearsal"],
    lines: &[
        "A simulated machinist cuts the part many times in three ways: by the adviser,",
        "by halves, and all at once. with INSTRUMENT is needed; hole or shaft MATERIAL,",
        "overhang N (free length over thickness), runs N and seed N may be given.",
        "with fault: short turn, backlash, light tool, rough or biased gauge.",
    ],
    examples: &[
        ("rehearse 20mm H7 from 19.6mm with bore gauge", "the odds before cutting"),
        ("rehearse 20mm g6 from 20.5mm with micrometer, runs 200, seed 7", "a shaft"),
        ("rehearse 20mm H7 from 19.6mm with bore gauge with fault rough", "with a fault"),
    ],
}];

impl Question for Rehearse {
    fn size(&self) -> Option<&Size> {
        Some(&self.0.size)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.rehearse(&self.0)
    }
}

impl Answered for RehearsalAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.rehearsal(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        [self.feature.why_aim()].into_iter().chain(self.reasons.iter().cloned()).collect()
    }

    fn unconfirmed(&self) -> Option<String> {
        crate::questions::part::unconfirmed_of(&[&self.feature])
    }
}
