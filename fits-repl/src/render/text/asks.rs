//! Drills and bearing seats in words.

use std::fmt::Write as _;

use fits_core::Limits;

use super::{Text, lines::wrapped};
use crate::answer::{DrillAnswer, NamedDrill, SeatAnswer};

impl Text {
    pub(super) fn drills(&self, out: &mut String, answer: &DrillAnswer) {
        let [first, second] = self.units();
        let mut line = |lead: &str, drill: &NamedDrill| {
            let (one, other) = (Self::size(drill.mm.0, first), Self::size(drill.mm.0, second));
            let off = drill.off_mm.0.checked_abs().unwrap_or(drill.off_mm.0);
            let off = if lead == "exact" { String::new() } else { self.one_difference(off) };
            let _ = writeln!(out, "  {lead:<7}{:<12}{one:<14}{other:<14}{off}", drill.name);
        };
        for (lead, drills) in
            [("exact", &answer.exact), ("under", &answer.under), ("over", &answer.over)]
        {
            for drill in drills {
                line(lead, drill);
            }
        }
        let _ =
            writeln!(out, "  a drill commonly cuts a little over its own size: try it on scrap");
    }

    pub(super) fn seat(&self, out: &mut String, answer: &SeatAnswer) {
        let [first, second] = self.units();
        let what = if answer.kind == fits_core::standards::iso286::Feature::Hole {
            "housing"
        } else {
            "shaft"
        };
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
            let _ = writeln!(out, "  {:<20}{class:<18}{one}  {other}", seat.bearing);
            wrapped(out, "      ", seat.reason);
        }
        let _ = writeln!(
            out,
            "  for metric bearings of class Normal; the maker's own table comes first"
        );
    }
}
