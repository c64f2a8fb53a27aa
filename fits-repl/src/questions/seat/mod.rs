//! Classes for a rolling bearing's seat: `seat shaft 25 turns normal`.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod shown;

use self::{
    answered::{SeatAnswer, SeatFigures},
    asked::Seat,
};
use crate::questions::prelude::*;

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
}

impl Answered for SeatAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.seat(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        let reason = |seat: &SeatFigures| Reason {
            figure: format!("{} for a {} bearing", seat.class, seat.bearing),
            value: between(seat.lower_mm.0, seat.upper_mm.0),
            rule: seat.reason.into(),
            source: seat.source.into(),
            known: seat.known,
        };
        self.seats.iter().map(reason).collect()
    }

    fn unconfirmed(&self) -> Option<String> {
        let doubtful = self.seats.iter().find(|seat| seat.known.is_unconfirmed());
        doubtful.map(|seat| format!("the seat {}", seat.class))
    }
}
