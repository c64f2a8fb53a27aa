//! A hole that a reamer cut over or under: `reamer 1/4in cut 0.2508in`.

pub(crate) mod answered;
mod asked;
mod shown;

use crate::questions::prelude::*;

pub(crate) use self::{
    answered::ReamerCutAnswer,
    asked::{ReamerCutOf, read},
};

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] = &[
    Clause::free("reamer", "SIZE cut SIZE", "what a reamer cut, and what to do").opens(),
    Clause::free("measures", "SIZE", "what the reamer itself measures"),
];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[HelpTopic {
    topic: "reamer",
    also: &["reamers", "oversize hole", "reamer cuts over"],
    lines: &[
        "What a reamer cut, over or under its size: the class that the hole is in, the",
        "play of the pin in hand, and what is usually wrong. `pin SIZE`: the pin that",
        "is to go in; `measures SIZE`: what the reamer itself measures.",
    ],
    examples: &[
        ("reamer 1/4in cut 0.2508in", "a hole that came out over"),
        ("reamer 1/4in cut 0.2508in, pin 0.2502in", "with the pin in hand"),
        ("reamer 10mm cut 9.996mm, measures 10.002mm", "one that came out under"),
        ("crib add reamer 1/4in cuts 0.2508in", "remembered: plans offer it where it suits"),
    ],
}];

impl Question for ReamerCutOf {
    fn typed_in(&self, session: &Session) -> Units {
        thought_in(&self.size, session.units)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.reamer_cut(self).map(|answer| Answer::ReamerCut(Box::new(answer)))
    }
}

impl Answered for ReamerCutAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.reamer_cut(out, self);
    }

    fn unconfirmed(&self) -> Option<String> {
        self.known.is_unconfirmed().then(|| "what a new reamer measures".to_owned())
    }
}
