//! Standard classes for a wanted clearance: `pick 20 clearance 0.01..0.04`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod shown;

use self::{answered::PickAnswer, asked::Pick};
use fits_core::source::Reason;

use crate::{
    answer::Answer,
    problem::Problem,
    query::Units,
    questions::{
        Answered, Question, help::answered::HelpAnswer, part::mates::thought_in, recalled,
        why::answered::why_asked,
    },
    render::text::Text,
    session::Session,
};

/// The words that its lines begin with or hold.
pub(crate) const WORDS: &[&str] = &["pick"];

/// Its help.
pub(crate) const HELP: &[HelpAnswer] = &[];

impl Question for Pick {
    fn typed_in(&self, session: &Session) -> Units {
        thought_in(&self.size, session.units)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.pick(&self.size, self.wanted, &self.from, &self.to)
    }

    fn reasons(&self, session: &Session, answer: &Answer) -> Result<Vec<Reason>, Problem> {
        Ok(why_asked(answer, session.shown))
    }
}

impl Answered for PickAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.pick(out, self);
    }

    fn unconfirmed(&self) -> Option<String> {
        let candidates = self.candidates.iter();
        recalled("the limits of", candidates.map(|it| (it.class.as_str(), it.known)))
    }
}
