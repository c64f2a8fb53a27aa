//! The nearest drills: `drill 0.7031in`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod shown;

use fits_core::standards::drills::Drill;

use self::{
    answered::{DrillAnswer, NamedDrill},
    asked::DrillFor,
};
use crate::questions::{prelude::*, recalled, why::answered::said};

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
    fn size(&self) -> Option<&Size> {
        Some(&self.0)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.drills(&self.0)
    }

    fn reasons(&self, session: &Session, answer: &Answer) -> Result<Vec<Reason>, Problem> {
        let Answer::Drill(drills) = answer else { return Ok(Vec::new()) };
        let found = drills.exact.iter().chain(&drills.under).chain(&drills.over);
        let reason = |found: &NamedDrill| {
            let drill = Drill::named(found.name)?;
            Some(Reason {
                figure: format!("drill {}", found.name),
                value: said(session.shown, found.mm.0).into(),
                rule: "".into(),
                source: format!("standard drill sizes; {}", drill.source()),
                known: drill.known(),
            })
        };
        Ok(found.filter_map(reason).collect())
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
