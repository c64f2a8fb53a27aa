//! The tailstock: `align 19.98 20.01 over 150`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod shown;

use fits_core::source::Known;

use self::{answered::AlignAnswer, asked::Align};
use crate::questions::prelude::*;

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] = &[
    Clause::new("align", "A B over L", "how far to move the tailstock"),
    Clause::free("taper", "A:B", "a taper to set over for"),
    Clause::free("between", "SIZE", "between the centres"),
];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[HelpTopic {
    topic: "align",
    also: &["tailstock", "taper"],
    lines: &[
        "Two test diameters cut at one setting, headstock first, and their distance:",
        "how far and which way to move the tailstock. between SIZE: the whole distance",
        "between centres. A part with long SIZE: what the taper leaves of its tolerance.",
    ],
    examples: &[
        ("align 19.98 20.01 over 150", "to turn parallel"),
        ("align 0.7503in 0.7511in over 6in between 14in", "scaled to the centres"),
        ("align 19.98 20.01 over 150, 20 g6 long 40", "does a fit survive it?"),
        ("align taper 1:50 over 200", "a taper wanted"),
    ],
}];

impl Question for Align {
    fn typed_in(&self, session: &Session) -> Units {
        session.align_in(self)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.align(self)
    }
}

impl Answered for AlignAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.align(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        vec![Reason {
            figure: "set-over".into(),
            value: self.set_over_mm.0.into(),
            rule: "half the change of diameter over the whole length between centres".into(),
            source: "US Navy, Machinery Repairman, NAVEDTRA 14345".into(),
            known: Known::Seen,
        }]
    }
}
