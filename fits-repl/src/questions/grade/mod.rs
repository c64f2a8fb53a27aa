//! Standard tolerances: `20 grade 7`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod shown;

use self::{answered::GradeAnswer, asked::Grade};
use crate::questions::{prelude::*, recalled};

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] =
    &[Clause::new("grade", "N", "a standard tolerance: IT, or of ASME B4.1 in inches").inside()];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[];

impl Question for Grade {
    fn size(&self) -> Option<&Size> {
        Some(&self.size)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.grade(&self.size, &self.grade)
    }
}

impl Answered for GradeAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.grade(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        vec![self.reason.clone()]
    }

    fn unconfirmed(&self) -> Option<String> {
        recalled("grade", [(self.grade.as_str(), self.known)].into_iter())
    }
}
