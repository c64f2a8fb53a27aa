//! The nearest drills: `drill 0.7031in`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod shown;

use fits_core::standards::drills::Drill;

use self::{
    answered::{DrillAnswer, NamedDrill},
    asked::DrillFor,
};
use crate::questions::{prelude::*, recalled};

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
}

impl Answered for DrillAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.drills(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        let found = self.exact.iter().chain(&self.under).chain(&self.over);
        let reason = |found: &NamedDrill| {
            let drill = Drill::named(found.name)?;
            Some(Reason {
                figure: format!("drill {}", found.name),
                value: found.mm.0.into(),
                rule: "".into(),
                source: format!("standard drill sizes; {}", drill.source()),
                known: drill.known(),
            })
        };
        found.filter_map(reason).collect()
    }

    fn unconfirmed(&self) -> Option<String> {
        let drills = [&self.exact, &self.under, &self.over].into_iter().flatten();
        recalled("the size of drill", drills.map(|drill| (drill.name, drill.known)))
    }
}
