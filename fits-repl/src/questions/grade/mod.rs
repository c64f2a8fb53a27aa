//! Standard tolerances: `20 grade 7`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod shown;

use self::{answered::GradeAnswer, asked::Grade};
use fits_core::source::Reason;

use crate::words::clause::Clause;
use crate::{
    answer::Answer,
    problem::Problem,
    query::Units,
    questions::{
        Answered, Question, help::answered::HelpTopic, part::mates::thought_in, recalled,
        why::answered::why_asked,
    },
    render::text::Text,
    session::Session,
};

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] =
    &[Clause::new("grade", "N", "a standard tolerance: IT, or of ASME B4.1 in inches")];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[];

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
