//! Standard tolerances: `20 grade 7`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod shown;

use self::{answered::GradeAnswer, asked::Grade};
use fits_core::source::Reason;

use crate::{
    answer::Answer,
    problem::Problem,
    query::Units,
    questions::{
        Answered, Question, help::answered::HelpAnswer, part::mates::thought_in, recalled,
        why::answered::why_asked,
    },
    render::text::Text,
    session::Session,
};

/// The words that its lines begin with or hold.
pub(crate) const WORDS: &[&str] = &["grade"];

/// Its help.
pub(crate) const HELP: &[HelpAnswer] = &[];

impl Question for Grade {
    fn typed_in(&self, session: &Session) -> Units {
        thought_in(&self.size, session.units)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.grade(&self.size, &self.grade)
    }

    fn reasons(&self, session: &Session, answer: &Answer) -> Result<Vec<Reason>, Problem> {
        Ok(why_asked(answer, session.shown))
    }
}

impl Answered for GradeAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.grade(out, self);
    }

    fn unconfirmed(&self) -> Option<String> {
        recalled("grade", [(self.grade.as_str(), self.known)].into_iter())
    }
}
