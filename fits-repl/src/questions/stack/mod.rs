//! Parts end to end: `stack screw 20 ±0.05, tube -17 ±0.05`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod figures;
pub(crate) mod reader;
pub(crate) mod shown;

use self::{asked::StackText, figures::StackAnswer};
use fits_core::source::Reason;

use crate::{
    answer::Answer,
    problem::Problem,
    query::{Query, Units},
    questions::{Answered, Question, help::answered::HelpAnswer, recalled},
    render::text::Text,
    session::Session,
    words::{fault::Parsed, keywords::keyword},
};

/// The words that its lines begin with or hold.
pub(crate) const WORDS: &[&str] = &["stack"];

/// Its help.
pub(crate) const HELP: &[HelpAnswer] = &[];

/// A line that begins with `stack`.
pub(crate) fn read(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    keyword("stack")(input).ok().map(|(rest, ())| reader::stack(rest, total))
}

impl Question for StackText {
    fn typed_in(&self, session: &Session) -> Units {
        session.stack_thought_in(self)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.stack(self)
    }

    fn reasons(&self, session: &Session, answer: &Answer) -> Result<Vec<Reason>, Problem> {
        let mut reasons = Vec::new();
        session.why_stack(&mut reasons, answer);
        Ok(reasons)
    }
}

impl Answered for StackAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.stack(out, self);
    }

    fn unconfirmed(&self) -> Option<String> {
        recalled("the limits of", self.links.iter().map(|link| (link.class.as_str(), link.known)))
    }
}
