//! A whole job out of a note: `job open FILE`, `next`, `journal = .7498`.

pub(crate) mod answered;
pub(crate) mod asked;
mod end_of_log;
pub(crate) mod figures;
pub(crate) mod lines;
mod next;
pub(crate) mod page;
mod place;
mod told;

use self::{answered::JobAnswer, asked::JobQuery};
use crate::{questions::prelude::*, render::text::lines::wrapped};

pub(crate) use self::asked::read;

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] = &[
    Clause::free(
        "job",
        "open FILE, close",
        "a note of parts and fits, read as a whole: every figure to cut",
    )
    .opens(),
    Clause::free("next", "", "what the open job needs next").opens(),
];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[];

impl Question for JobQuery {
    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.trial().job_query(self, "job")
    }

    fn carry_out(&self, session: &mut Session, line: &str) -> Result<Answer, Problem> {
        session.job_query(self, line)
    }
}

impl Answered for JobAnswer {
    fn show(&self, _: &Text, out: &mut String) {
        for note in &self.notes {
            wrapped(out, "", note);
        }
        out.push_str(&self.page);
    }

    fn is_out_of_limits(&self) -> bool {
        self.features
            .iter()
            .any(|feature| feature.verdict == Some(fits_core::shop::Verdict::Over.word()))
    }
}
