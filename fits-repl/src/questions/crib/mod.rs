//! The tools of the shop: `crib add reamer 19`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod figures;
pub(crate) mod reader;
pub(crate) mod reasons;
pub(crate) mod shown;

use self::{asked::CribQuery, figures::CribAnswer};

use crate::{
    answer::Answer,
    problem::Problem,
    query::{Query, Units},
    questions::{Answered, Question, help::answered::HelpAnswer},
    render::text::Text,
    session::Session,
    words::{fault::Parsed, keywords::keyword},
};

/// The words that its lines begin with or hold.
pub(crate) const WORDS: &[&str] = &["crib"];

/// Its help.
pub(crate) const HELP: &[HelpAnswer] = &[];

/// A line that begins with `crib`.
pub(crate) fn read(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    keyword("crib")(input).ok().map(|(rest, ())| reader::crib(rest, total))
}

impl Question for CribQuery {
    fn typed_in(&self, session: &Session) -> Units {
        session.crib_in(self)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        Ok(session.in_force(None))
    }

    fn carry_out(&self, session: &mut Session, _: &str) -> Result<Answer, Problem> {
        session.crib(self)
    }
}

impl Answered for CribAnswer {
    fn show(&self, _: &Text, out: &mut String) {
        Text::crib(out, self);
    }
}
