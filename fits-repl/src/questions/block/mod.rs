//! An inch size that carries no tolerance: `title block 0.750in`.

pub(crate) mod answered;
mod asked;
mod shown;

use crate::questions::prelude::*;

pub(crate) use self::{
    answered::TitleBlockAnswer,
    asked::{BlockOf, read},
};

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] =
    &[Clause::free("title", "block SIZE", "an inch size that carries no tolerance").opens()];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[HelpTopic {
    topic: "untoleranced",
    also: &["title", "block", "title block", "title blocks"],
    lines: &[
        "An inch size without a tolerance, by how it is written: .750 has three",
        "decimals, 3/4 is a fraction. What shops commonly take, with ISO 2768 beside it.",
        "No standard sets it: the drawing's own block rules.",
    ],
    examples: &[
        ("title block 0.750in", "three decimals"),
        ("title block 1-7/8in", "a fraction"),
        ("0.750in general m", "ISO 2768 alone"),
    ],
}];

impl Question for BlockOf {
    fn typed_in(&self, _: &Session) -> Units {
        Units::Inches
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.title_block(self).map(|answer| Answer::TitleBlock(Box::new(answer)))
    }
}

impl Answered for TitleBlockAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.title_block(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        self.reasons()
    }

    fn unconfirmed(&self) -> Option<String> {
        crate::questions::recalled(
            "what is taken by",
            self.sets.iter().map(|set| (set.practice, set.known)),
        )
    }
}
