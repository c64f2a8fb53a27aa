//! Classes for a rolling bearing's seat: `seat shaft 25 turns normal`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod shown;

use self::{
    answered::{SeatAnswer, SeatFigures},
    asked::Seat,
};
use crate::{
    answer::Mm,
    questions::{prelude::*, why::answered::said},
};

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] =
    &[Clause::new("seat", "shaft or housing, SIZE, LOAD", "a rolling bearing's seat")];

/// Its help.
pub(crate) const HELP: &[HelpTopic] = &[];

impl Question for Seat {
    fn size(&self) -> Option<&Size> {
        Some(&self.size)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.seats(self.feature, &self.size, self.load.as_ref())
    }

    fn reasons(&self, session: &Session, answer: &Answer) -> Result<Vec<Reason>, Problem> {
        let Answer::Seat(seat) = answer else { return Ok(Vec::new()) };
        let said = |size: Mm| said(session.shown, size.0);
        let reason = |seat: &SeatFigures| Reason {
            figure: format!("{} for a {} bearing", seat.class, seat.bearing),
            value: format!("{} to {}", said(seat.lower_mm), said(seat.upper_mm)).into(),
            rule: seat.reason.into(),
            source: seat.source.into(),
            known: seat.known,
        };
        Ok(seat.seats.iter().map(reason).collect())
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
