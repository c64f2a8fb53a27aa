//! Standard tolerances: `20 grade 7`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod shown;

use fits_core::standards::{b41, iso286};

use self::{answered::GradeAnswer, asked::Grade};
use crate::questions::{prelude::*, recalled};

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] =
    &[Clause::new("grade", "N", "a standard tolerance: IT, or of ASME B4.1 in inches")];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[];

impl Question for Grade {
    fn size(&self) -> Option<&Size> {
        Some(&self.size)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.grade(&self.size, &self.grade)
    }

    fn reasons(&self, session: &Session, answer: &Answer) -> Result<Vec<Reason>, Problem> {
        let _ = session;
        let Answer::Grade(found) = answer else { return Ok(Vec::new()) };
        // The number alone names a grade of ASME B4.1; an IT grade is the
        // tolerance of any class in it, with all that is known of the cell.
        let nominal = found.nominal_mm.0;
        let reason = match found.grade.strip_prefix("IT") {
            None => {
                found.grade.parse().ok().and_then(|grade| b41::grade_reason(grade, nominal).ok())
            }
            Some(number) => {
                let grade = number.parse::<iso286::Grade>().ok();
                grade.and_then(|grade| grade.reason(nominal).ok())
            }
        };
        Ok(reason.into_iter().collect())
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
