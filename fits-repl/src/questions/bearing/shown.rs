//! A ball bearing by its number, in words.

use std::fmt::Write as _;

use fits_core::{
    Length, Limits,
    shop::Verdict,
    size::Unit,
    standards::{bought::Turning, iso286::Feature},
};

use crate::{
    questions::bearing::{BearingAnswer, figures::BearingSeat},
    render::text::{Text, lines::wrapped},
};

impl Text {
    pub(crate) fn bearing(&self, out: &mut String, answer: &BearingAnswer) {
        let sizes = self.units().map(|unit| {
            let sizes = [answer.bore_mm, answer.outside_mm, answer.width_mm];
            let figures = sizes.map(|size| {
                Self::size(size.0, unit).trim_end_matches(unit.symbol()).trim_end().to_owned()
            });
            format!("{} {}", figures.join(" x "), unit.symbol())
        });
        let _ = writeln!(out, "BEARING {:<8}{}", answer.number, sizes.join("   "));
        if let Some(closed) = answer.closed_width_mm {
            let [unit, _] = self.units();
            wrapped(
                out,
                "  width     ",
                &format!(
                    "{} open, {} shielded or sealed: which is yours?",
                    Self::size(answer.width_mm.0, unit),
                    Self::size(closed.0, unit)
                ),
            );
        }
        self.bearing_fillet(out, answer);
        if let Some(opens) = answer.opens_in_ten_degrees_mm
            && let Ok(by) = opens.0.checked_abs()
        {
            let way = if opens.0.is_negative() { "closes" } else { "opens" };
            let housing = answer.housing_material.as_deref().unwrap_or_default();
            let warmer = if self.units()[0] == Unit::Inch { "18 °F" } else { "10 °C" };
            wrapped(
                out,
                "  housing   ",
                &format!("{way} {} on the ring per {warmer}: {housing}", self.difference(by)),
            );
        }
        let mut last = None;
        let is_one_case = answer
            .seats
            .iter()
            .all(|seat| Some(seat.turns) == answer.seats.first().map(|it| it.turns));
        let mut seats = answer.seats.iter().peekable();
        while let Some(seat) = seats.next() {
            if last != Some(seat.turns) {
                let case = match seat.turns {
                    Turning::Shaft => "the shaft turns, the load stands still: a spindle, a crank",
                    Turning::Housing => {
                        "the housing turns, the load stands still: a wheel, an idler"
                    }
                };
                let _ = writeln!(out, "{case}");
                last = Some(seat.turns);
            }
            // Two loads that one seat serves are one row.
            let mut case = seat.case.to_owned();
            while let Some(other) = seats.next_if(|next| {
                next.kind == seat.kind
                    && next.class == seat.class
                    && case != "by hand"
                    && next.turns == seat.turns
            }) {
                case = format!("{case}, {}", other.case);
            }
            // Every case at once makes a table; the play is shown where one case is asked for.
            let is_told = is_one_case || seat.warm.is_some() || seat.reading.is_some();
            self.bearing_seat(out, seat, &case, answer.at_c, is_told);
        }
        if !is_one_case {
            wrapped(out, "  ", "say shaft turns or housing turns for the play on the rings");
        }
        for note in &answer.notes {
            wrapped(out, "  ", note);
        }
    }

    fn bearing_fillet(&self, out: &mut String, answer: &BearingAnswer) {
        let both = |size| self.units().map(|unit| Self::size(size, unit)).join("  ");
        let words = match (answer.fillet_under_mm, answer.corner_mm) {
            (Some(under), Some(corner)) if under == corner => {
                format!("under {}, the rings' least corner", both(under.0))
            }
            (Some(under), Some(corner)) => format!(
                "under {}: half of the corner printed, {}, of which the least is not known",
                both(under.0),
                both(corner.0)
            ),
            _ => "corners not known: under what a radius gauge shows on yours".to_owned(),
        };
        wrapped(out, "  fillet    ", &words);
    }

    fn bearing_seat(
        &self,
        out: &mut String,
        seat: &BearingSeat,
        case: &str,
        at_c: Option<f64>,
        is_told: bool,
    ) {
        let [first, second] = self.units();
        let Ok(limits) = Limits::new(seat.lower_mm.0, seat.upper_mm.0) else { return };
        let what = if seat.kind == Feature::Hole { "housing" } else { "shaft" };
        let _ = writeln!(
            out,
            "  {what:<8}{case:<14}{:<4}{:<22}{}",
            seat.class,
            Self::range(limits, first),
            Self::range(limits, second)
        );
        if !is_told {
            return;
        }
        let one = |play| match play {
            Length::ZERO => "line to line".to_owned(),
            play => self.one_play(play),
        };
        let play = |from, to| format!("{} to {}", one(to), one(from));
        let clearance = &seat.clearance;
        let mut words = format!("on the ring {}", play(clearance.min_mm.0, clearance.max_mm.0));
        if let (Some(warm), Some(at)) = (&seat.warm, at_c) {
            let _ = write!(
                words,
                "; at {} {}",
                self.one_temperature(at),
                play(warm.min_mm.0, warm.max_mm.0)
            );
        }
        if let Some(reading) = &seat.reading {
            let verdict = match reading.verdict {
                Verdict::Over if seat.kind == Feature::Hole => "too large",
                Verdict::Over => "too small",
                other => other.word(),
            };
            let _ = write!(
                words,
                "; read {}: {verdict}, {}",
                Self::size(reading.reading_mm.0, first),
                play(reading.min_mm.0, reading.max_mm.0)
            );
        }
        wrapped(out, "          ", &words);
    }
}
