//! Classes for a rolling bearing's seat: `seat shaft 25 turns normal`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod shown;

use self::{answered::SeatAnswer, asked::Seat};
use fits_core::source::Reason;

use crate::{
    answer::Answer,
    problem::Problem,
    query::Units,
    questions::{
        Answered, Question, help::answered::HelpAnswer, part::mates::thought_in,
        why::answered::why_asked,
    },
    render::text::Text,
    session::Session,
};

/// The words that its lines begin with or hold.
pub(crate) const WORDS: &[&str] = &["seat"];

/// Its help.
pub(crate) const HELP: &[HelpAnswer] = &[];

impl Question for Seat {
    fn typed_in(&self, session: &Session) -> Units {
        thought_in(&self.size, session.units)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.seats(self.feature, &self.size, self.load.as_ref())
    }

    fn reasons(&self, session: &Session, answer: &Answer) -> Result<Vec<Reason>, Problem> {
        Ok(why_asked(answer, session.shown))
    }
}

impl Answered for SeatAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.seat(out, self);
    }

    fn unconfirmed(&self) -> Option<String> {
        let doubtful = self.seats.iter().find(|seat| seat.known.is_unconfirmed());
        doubtful.map(|seat| format!("the seat {}", seat.class))
    }
}
