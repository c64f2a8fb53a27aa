//! The key and keyways of a shaft: `keyway for 25`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod shown;

use self::{answered::KeywayAnswer, asked::KeywayFor};
use crate::questions::prelude::*;

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] = &[
    Clause::free("keyway", "for SIZE", "the key and keyways of a shaft; tight, sliding, wide SIZE")
        .opens(),
    Clause::free("key", "shaft SIZE", "the same").opens(),
];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[];

impl Question for KeywayFor {
    fn size(&self) -> Option<&Size> {
        Some(&self.size)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.keyway(self)
    }
}

impl Answered for KeywayAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.keyway(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        self.reasons.clone()
    }

    fn unconfirmed(&self) -> Option<String> {
        self.key.known.is_unconfirmed().then(|| "this key or its keyways".to_owned())
    }

    fn is_out_of_limits(&self) -> bool {
        self.cut.as_ref().is_some_and(|cut| cut.verdict == "over")
    }
}
