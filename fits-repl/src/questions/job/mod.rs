//! A whole job out of a note: `job open FILE`, `next`, `journal = .7498`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod figures;
pub(crate) mod lines;
pub(crate) mod page;

use self::{answered::JobAnswer, asked::JobQuery};
use crate::{questions::prelude::*, render::text::lines::wrapped};

pub(crate) use self::asked::read;

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] = &[
    Clause::new("job", "open FILE, close", "a note of parts and fits, read as a whole"),
    Clause::new("next", "", "what the open job needs next"),
];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[HelpTopic {
    topic: "job",
    also: &["note", "next"],
    lines: &[
        "A note as one writes it, parts at the margin, their features below, is read",
        "into a job: `fits job FILE`, or `job open FILE` here. `job` shows every figure",
        "to cut and every question, `next` what to do next. With a job open,",
        "a feature, `=` and a size enter a reading: it is written to the note's end.",
        "`fits job FILE --csv` writes the record, `--json` an object for each line.",
    ],
    examples: &[],
}];

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
