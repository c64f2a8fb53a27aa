//! The settings: units, dials, instrument, material.

pub(crate) mod answered;
pub(crate) mod asked;

use self::{answered::InForce, asked::Setting};

use crate::{
    answer::Answer,
    problem::Problem,
    query::Units,
    questions::{Answered, Question, help::answered::HelpAnswer, part::mates::thought_in},
    render::text::Text,
    session::Session,
};

/// The words that its lines begin with or hold.
pub(crate) const WORDS: &[&str] = &["dial", "instrument", "material", "units"];

/// Its help.
pub(crate) const HELP: &[HelpAnswer] = &[];

impl Question for Setting {
    fn typed_in(&self, session: &Session) -> Units {
        match self {
            Self::Graduation(size)
            | Self::DialTurn(size)
            | Self::LeastChip(size)
            | Self::TopSlide(Some(size)) => thought_in(size, session.units),
            _ => session.units,
        }
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        Ok(session.in_force(None))
    }

    fn carry_out(&self, session: &mut Session, _: &str) -> Result<Answer, Problem> {
        session.set(self)
    }
}

impl Answered for InForce {
    fn show(&self, text: &Text, out: &mut String) {
        text.in_force(out, self);
    }
}
