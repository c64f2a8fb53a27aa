//! What a bar or a tube weighs: `weight 1in steel long 12in`.

mod answered;
mod asked;
mod shown;

use crate::questions::prelude::*;

pub(crate) use self::answered::WeightAnswer;
pub(crate) use self::asked::read;
pub(crate) use self::asked::{Section, WeightOf};

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] =
    &[Clause::new("weight", "a section and a material", "what stock weighs")];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[HelpTopic {
    topic: "weight",
    also: &["weigh", "mass", "density"],
    lines: &[
        "What stock weighs: its section, what it is made of, and long SIZE.",
        "A size alone is a round bar; square, hex (across flats), flat A x B, and",
        "tube SIZE wall SIZE are others.",
    ],
    examples: &[
        ("weight 1in steel long 12in", "a round bar"),
        ("weight tube 1in wall 0.05in aluminium long 9in", "the press's handle"),
        ("weight hex 17mm brass long 50mm", "across its flats"),
        ("weight flat 20mm x 5mm steel long 1m", "a flat"),
    ],
}];

impl Question for WeightOf {
    fn size(&self) -> Option<&Size> {
        Some(self.section.first())
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.weight(self).map(Answer::Weight)
    }
}

impl Answered for WeightAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.weight(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        self.reasons.clone()
    }

    fn unconfirmed(&self) -> Option<String> {
        self.known.is_unconfirmed().then(|| format!("the density of {}", self.material))
    }
}
