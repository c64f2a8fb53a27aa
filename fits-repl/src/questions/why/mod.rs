//! Where each figure comes from: `why 20 H7/g6`.

pub(crate) mod answered;
pub(crate) mod shown;

use self::answered::WhyAnswer;
use crate::{
    questions::prelude::*,
    words::{self, fault::fatal},
};

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] =
    &[Clause::new("why", "a query", "where each figure comes from")];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[HelpTopic {
    topic: "why",
    also: &[],
    lines: &["Where each figure of the last answer comes from: standard, table, rule, doubts."],
    examples: &[
        ("why 20mm H7/g6", "of a query named"),
        ("why 290mm M6", "of one with an exception"),
    ],
}];

/// `why`, of the last answer or of the query after it.
#[derive(Clone, Debug)]
pub struct Why(pub Option<Box<Query>>);

/// A line that begins with `why`.
pub(crate) fn read(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    keyword("why")(input).ok().map(|(rest, ())| of(rest.trim_start(), total))
}

/// `why`, alone or of a query.
fn of(of: &str, total: usize) -> Parsed<'_, Query> {
    if of.is_empty() {
        return Ok(("", Query::Why(Why(None))));
    }
    if keyword("why")(of).is_ok() {
        return fatal(of, 3, "one `why` is enough", "as in `why 20 H7`");
    }
    let (end, of) = words::query(of, total)?;
    Ok((end, Query::Why(Why(Some(Box::new(of))))))
}

impl Question for Why {
    fn stands_alone(&self) -> bool {
        self.0.is_some()
    }

    fn typed_in(&self, session: &Session) -> Units {
        self.0.as_ref().map_or(session.units, |of| of.question().typed_in(session))
    }

    fn size(&self) -> Option<&Size> {
        self.0.as_ref().and_then(|of| of.question().size())
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        Ok(session.in_force(None))
    }

    fn carry_out(&self, session: &mut Session, line: &str) -> Result<Answer, Problem> {
        match &self.0 {
            None => session.why_last(line),
            Some(of) => session.why(of, line.trim_start().get(3..).unwrap_or_default().trim()),
        }
    }
}

impl Answered for WhyAnswer {
    fn show(&self, _: &Text, out: &mut String) {
        Text::why(out, self);
    }
}
