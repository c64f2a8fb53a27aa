//! The tools of the shop: `crib add reamer 19`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod figures;
pub(crate) mod reader;
pub(crate) mod reasons;
pub(crate) mod shown;

use self::{asked::CribQuery, figures::CribAnswer};
use crate::questions::prelude::*;

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] =
    &[Clause::new("crib", "add or remove", "the tools of the shop")];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[HelpTopic {
    topic: "crib",
    also: &["tool", "tools"],
    lines: &[
        "The tools you own, in a TOML file of your configuration folder (the prompt and",
        "fits QUERY read it; batch only what --crib names). Plans use what is there and",
        "say what they would rather have. `crib remove` and a number takes one out.",
    ],
    examples: &[
        ("crib add reamer 3/4in cuts 0.7504in", "a reamer and what it really cuts"),
        ("crib add drill set metric 1..13 step 0.5", "or fraction, number, letter"),
        ("crib add drill #7", "one drill"),
        ("crib add tap M10x1.25", "a tap"),
        ("crib add pin 20", "a gauge pin: holes name those near their limits"),
        ("crib add bar 12mm reach 60mm", "a boring bar: smallest bore, reach"),
        ("crib add instrument my gauge repeat 0.003 bias 0.002", "as deviations"),
        ("crib add material odd bronze modulus 105GPa poisson 0.34", "its figures"),
        ("crib", "all of it, numbered"),
    ],
}];

/// A line that begins with `crib`.
pub(crate) fn read(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    keyword("crib")(input).ok().map(|(rest, ())| reader::crib(rest, total))
}

impl Question for CribQuery {
    fn stands_alone(&self) -> bool {
        matches!(self, Self::Show)
    }

    fn typed_in(&self, session: &Session) -> Units {
        session.crib_in(self)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        Ok(session.in_force(None))
    }

    fn carry_out(&self, session: &mut Session, _: &str) -> Result<Answer, Problem> {
        session.crib(self)
    }
}

impl Answered for CribAnswer {
    fn show(&self, _: &Text, out: &mut String) {
        Text::crib(out, self);
    }
}
