//! Classes for a rolling bearing's seat: `seat shaft 25 turns normal`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod shown;

use self::{answered::SeatAnswer, asked::Seat};
use fits_core::source::Reason;

use crate::words::clause::Clause;
use crate::{
    answer::Answer,
    problem::Problem,
    query::Units,
    questions::{
        Answered, Question, help::answered::HelpTopic, part::mates::thought_in,
        why::answered::why_asked,
    },
    render::text::Text,
    session::Session,
};

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] =
    &[Clause::new("seat", "shaft or housing, SIZE, LOAD", "a rolling bearing's seat")];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[];

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
