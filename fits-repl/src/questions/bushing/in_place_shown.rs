//! A bushing measured in place, in words: the shaft to turn, then the ways out.

use std::fmt::Write as _;

use fits_core::{
    Limits,
    shop::bushing::{BushRemedy, RunningPlay},
    size::Rounding,
};

use crate::{
    answer::Ends,
    questions::bushing::figures::BushingInPlaceAnswer,
    render::text::{Style, Text, lines::wrapped},
};

fn limits(ends: &Ends) -> Option<Limits> {
    Limits::new(ends.min_mm.0, ends.max_mm.0).ok()
}

impl Text {
    pub(crate) fn bushing_in_place(&self, out: &mut String, answer: &BushingInPlaceAnswer) {
        let [first, second] = self.units();
        let size = |size, unit| Self::size(size, unit);
        let _ = writeln!(
            out,
            "IN HAND bore in place   {:<26}{}",
            size(answer.bore_mm.0, first),
            size(answer.bore_mm.0, second)
        );
        let shaft = &answer.shaft;
        let aim = [first, second].map(|unit| Self::target(shaft.aim_mm.0, unit, Rounding::Up));
        let word = if answer.given_shaft.is_some() { "or" } else { "CUT" };
        if let (Some(given), Some(clearance)) = (&answer.given_shaft, &answer.clearance) {
            if let Some(given) = limits(given) {
                self.bushing_line(out, "shaft", given);
            }
            let verdict = match answer.play_verdict {
                Some(RunningPlay::Tight) => "TOO TIGHT: ",
                Some(RunningPlay::Loose) => "TOO LOOSE: ",
                _ => "GOOD: ",
            };
            let (low, high) = (clearance.min_mm.0, clearance.max_mm.0);
            let words = if low == high {
                self.play(low)
            } else {
                format!("{} to {}", self.play(low), self.play(high))
            };
            wrapped(out, "  ", &format!("{verdict}it has {words}"));
        }
        let _ = writeln!(
            out,
            "{word:<7} {:<16}{}{}",
            "shaft",
            self.style(Style::Strong, &format!("{:<26}", aim[0])),
            aim[1]
        );
        if let Some((low, high)) = shaft.lower_mm.zip(shaft.upper_mm)
            && let Ok(range) = Limits::new(low.0, high.0)
        {
            self.bushing_line(out, "limits", range);
        }
        for way in &answer.remedies {
            self.way_out(out, *way, answer);
        }
        if let Some(wanted) = limits(&answer.running) {
            self.bushing_line(out, "wanted", wanted);
        }
        wrapped(out, "  ", &format!("wanted {}; {}", answer.running_by, answer.material));
        for note in &answer.notes {
            wrapped(out, "  ", note);
        }
    }

    fn way_out(&self, out: &mut String, way: BushRemedy, answer: &BushingInPlaceAnswer) {
        let open = answer.open_by_mm.map_or(String::new(), |by| self.difference(by.0));
        let words = match way {
            BushRemedy::Shaft if answer.given_shaft.is_none() => return,
            BushRemedy::Ream => format!("ream, hone or scrape the bore in place by {open}"),
            BushRemedy::Bore => {
                format!(
                    "bore or ream it in place by {open} with a keen edge: a dull one pushes it aside"
                )
            }
            BushRemedy::Burnish => {
                format!("burnish it by {open}: press a polished pin through, oiled")
            }
            BushRemedy::Shaft => "turn the shaft down, to the size above".to_owned(),
            BushRemedy::LargerShaft => "make a larger shaft, to the size above".to_owned(),
            BushRemedy::Another => "press in another bushing, or one made to suit".to_owned(),
        };
        wrapped(out, "  ", &words);
        if matches!(way, BushRemedy::Ream | BushRemedy::Bore | BushRemedy::Burnish) {
            if let Some(bore) = answer.wanted_bore() {
                self.bushing_line(out, "bore to reach", bore);
            } else {
                let aim = answer.bore_for_it.map_or(String::new(), |bore| {
                    self.units().map(|unit| Self::size(bore.aim_mm.0, unit)).join("  ")
                });
                wrapped(
                    out,
                    "  ",
                    &format!("to {aim}; that shaft varies by more than the play may"),
                );
            }
            if let Some(reamer) = answer.reamer.as_ref().and_then(limits) {
                self.bushing_line(out, "reamer", reamer);
            }
        }
    }
}
