//! General tolerances of untoleranced sizes: `20 general m`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod shown;

use self::{answered::GeneralAnswer, asked::General};
use crate::questions::prelude::*;

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] = &[
    Clause::new("general", "f, m, c or v", "an untoleranced size (ISO 2768-1)").inside(),
    Clause::free("radius", "", "of an edge: a radius or chamfer"),
    Clause::free("chamfer", "", "of an edge: a radius or chamfer"),
    Clause::free("angle", "", "of an angle, by its shorter side"),
];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[HelpTopic {
    topic: "general",
    also: &[],
    lines: &["ISO 2768-1 for sizes that no tolerance is given to: f, m, c or v."],
    examples: &[
        ("12.5mm general m", "a length"),
        ("2 general c radius", "a radius or chamfer"),
        ("40mm general m angle", "an angle, by its shorter side"),
    ],
}];

impl Question for General {
    fn size(&self) -> Option<&Size> {
        Some(&self.size)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.general(&self.size, &self.class, self.kind)
    }
}

impl Answered for GeneralAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.general(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        self.reasons.clone()
    }

    fn unconfirmed(&self) -> Option<String> {
        self.known.is_unconfirmed().then(|| "this tolerance".to_owned())
    }
}
