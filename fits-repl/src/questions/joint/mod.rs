//! Parts pressed or shrunk together: `assemble 20 H7/s6, hub steel od 40 long 25`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod at_work;
pub(crate) mod figures;
pub(crate) mod reader;
pub(crate) mod reasons;
pub(crate) mod resolved;
pub(crate) mod shown;

use self::{
    asked::{GripText, JointText},
    figures::{AssemblyAnswer, PickGripAnswer},
};
use fits_core::source::Reason;

use crate::{
    answer::Answer,
    problem::Problem,
    query::{Query, Units},
    questions::{Answered, Question, help::answered::HelpAnswer, part::mates::thought_in},
    render::text::Text,
    session::Session,
    words::{fault::Parsed, keywords::keyword},
};

/// The words that its lines begin with or hold.
pub(crate) const WORDS: &[&str] = &["assemble", "hub"];

/// Its help.
pub(crate) const HELP: &[HelpAnswer] = &[];

/// A line that begins with `assemble`; `pick` is read with the other picks.
pub(crate) fn read(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    keyword("assemble")(input).ok().map(|(rest, ())| reader::assemble(rest, total))
}

impl Question for JointText {
    fn typed_in(&self, session: &Session) -> Units {
        thought_in(&self.head.size, session.units)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.assemble(self).map_err(|it| session.spoken_of(it))
    }

    fn reasons(&self, session: &Session, _: &Answer) -> Result<Vec<Reason>, Problem> {
        session.why_assembly(self)
    }
}

impl Question for GripText {
    fn typed_in(&self, session: &Session) -> Units {
        self.joint.typed_in(session)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.pick_grip(&self.joint, &self.wishes).map_err(|it| session.spoken_of(it))
    }

    fn reasons(&self, session: &Session, _: &Answer) -> Result<Vec<Reason>, Problem> {
        session.why_grip(&self.joint)
    }
}

impl Answered for AssemblyAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.assembly(out, self);
    }
}

impl Answered for PickGripAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.pick_grip(out, self);
    }

    fn unconfirmed(&self) -> Option<String> {
        (!self.unconfirmed.is_empty()).then(|| self.unconfirmed.join(", "))
    }
}
