//! Classes for a rolling bearing's seat, in words.

use std::fmt::Write as _;

use fits_core::{Limits, standards::iso286::Feature};

use crate::{
    answer::SeatAnswer,
    render::text::{Text, lines::wrapped},
};

impl Text {
    pub(crate) fn seat(&self, out: &mut String, answer: &SeatAnswer) {
        let [first, second] = self.units();
        let what = if answer.kind == Feature::Hole { "housing" } else { "shaft" };
        let _ = writeln!(out, "{what} seat, load {}", answer.load);
        for seat in &answer.seats {
            let Ok(limits) = Limits::new(seat.lower_mm.0, seat.upper_mm.0) else {
                continue;
            };
            let (one, other) = (Self::range(limits, first), Self::range(limits, second));
            let class = seat
                .finer
                .as_ref()
                .map_or(seat.class.clone(), |finer| format!("{} ({finer} finer)", seat.class));
            let _ = writeln!(out, "  {:<20}{class:<18}{one}", seat.bearing);
            wrapped(out, "      ", &format!("{other}; {}", seat.reason));
        }
        let _ = writeln!(
            out,
            "  for metric bearings of class Normal; the maker's own table comes first"
        );
    }
}
