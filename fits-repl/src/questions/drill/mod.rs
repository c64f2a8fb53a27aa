//! The nearest drills: `drill 0.7031in`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod shown;

use self::{answered::DrillAnswer, asked::DrillFor};
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
pub(crate) const CLAUSES: &[Clause] = &[Clause::new("drill", "SIZE", "the nearest drills")];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[HelpTopic {
    topic: "drills",
    also: &[],
    lines: &["The nearest standard drills: fractions, letters, numbers, metric."],
    examples: &[("drill 0.7031in", "under and over"), ("drill #7", "one by its name")],
}];

impl Question for DrillFor {
    fn typed_in(&self, session: &Session) -> Units {
        thought_in(&self.0, session.units)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.drills(&self.0)
    }

    fn reasons(&self, session: &Session, answer: &Answer) -> Result<Vec<Reason>, Problem> {
        Ok(why_asked(answer, session.shown))
    }
}

impl Answered for DrillAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.drills(out, self);
    }

    fn unconfirmed(&self) -> Option<String> {
        let drills = [&self.exact, &self.under, &self.over].into_iter().flatten();
        recalled("the size of drill", drills.map(|drill| (drill.name, drill.known)))
    }
}
