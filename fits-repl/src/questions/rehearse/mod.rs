//! The odds before cutting: `rehearse 20 H7 from 19.6`.

pub(crate) mod answered;
pub(crate) mod figures;
pub(crate) mod reader;
pub(crate) mod shown;

use self::{figures::RehearsalAnswer, reader::Rehearse};

use crate::{
    answer::Answer,
    problem::Problem,
    query::Units,
    questions::{Answered, Question, help::answered::HelpAnswer, part::mates::thought_in},
    render::text::Text,
    session::Session,
};

/// The words that its lines begin with or hold.
pub(crate) const WORDS: &[&str] = &["overhang", "rehearse", "runs", "seed"];

/// Its help.
pub(crate) const HELP: &[HelpAnswer] = &[];

impl Question for Rehearse {
    fn typed_in(&self, session: &Session) -> Units {
        thought_in(&self.0.size, session.units)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.rehearse(&self.0)
    }
}

impl Answered for RehearsalAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.rehearsal(out, self);
    }

    fn unconfirmed(&self) -> Option<String> {
        crate::questions::part::unconfirmed_of(&[&self.feature])
    }
}
