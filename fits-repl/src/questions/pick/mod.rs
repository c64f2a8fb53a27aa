//! Standard classes for a wanted clearance: `pick 20 clearance 0.01..0.04`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod shown;

use fits_core::source::Known;

use self::{answered::PickAnswer, asked::Pick};
use crate::questions::{prelude::*, recalled};

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] = &[
    Clause::new("pick", "SIZE", "standard classes for a clearance, or for what a joint must do"),
    Clause::free("clearance", "A..B", "the play that is wanted"),
    Clause::free("interference", "A..B", "the grip that is wanted"),
];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[HelpTopic {
    topic: "pick",
    also: &[],
    lines: &["Standard fits that give a wanted range: preferred classes and the easiest first."],
    examples: &[
        ("pick 20mm clearance 0.01mm..0.06mm", "play"),
        ("pick 1in interference 0.5 thou..2 thou", "grip"),
        ("pick 20mm holds 30 Nm, hub steel od 40mm long 25mm", "by what it must hold"),
        ("pick 1in press under 3 tons, hub steel od 2in long 1in", "by the press"),
    ],
}];

impl Question for Pick {
    fn size(&self) -> Option<&Size> {
        Some(&self.size)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.pick(&self.size, self.wanted, &self.from, &self.to)
    }
}

impl Answered for PickAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.pick(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        vec![Reason {
            figure: "order".into(),
            value: format!("{} found", self.found).into(),
            rule: "preferred classes first, two-letter ones last; coarser grades, a preferred fit as if one grade coarser; then the middle of what is wanted".into(),
            source: Known::Practice.words().into(),
            known: Known::Practice,
        }]
    }

    fn unconfirmed(&self) -> Option<String> {
        let candidates = self.candidates.iter();
        recalled("the limits of", candidates.map(|it| (it.class.as_str(), it.known)))
    }
}
