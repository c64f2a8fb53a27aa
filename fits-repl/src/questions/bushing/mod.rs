//! A bushing, its housing and its shaft: `bushing 20 od 26 long 20, hub steel od 60`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod figures;
pub(crate) mod reader;
pub(crate) mod shown;

use self::{asked::BushingText, figures::BushingAnswer};
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
pub(crate) const WORDS: &[&str] = &[];

/// Its help.
pub(crate) const HELP: &[HelpAnswer] = &[];

/// A line that begins with `bushing` or `bush`, and goes on as a question.
pub(crate) fn read(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    let (rest, ()) = keyword("bushing")(input).or_else(|_| keyword("bush")(input)).ok()?;
    reader::is_asked(rest).then(|| reader::bushing(rest, total))
}

impl Question for BushingText {
    fn typed_in(&self, session: &Session) -> Units {
        thought_in(&self.bore.0, session.units)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.bushing(self).map_err(|it| session.spoken_of(it))
    }

    fn reasons(&self, session: &Session, answer: &Answer) -> Result<Vec<Reason>, Problem> {
        let mut reasons = Vec::new();
        session.why_bushing(&mut reasons, self, answer)?;
        Ok(reasons)
    }
}

impl Answered for BushingAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.bushing(out, self);
    }

    fn unconfirmed(&self) -> Option<String> {
        self.known.is_unconfirmed().then(|| self.unconfirmed.clone())
    }
}
