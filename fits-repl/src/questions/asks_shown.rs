//! General tolerances, picked classes, drills and bearing seats in words.

use std::fmt::Write as _;

use fits_core::{Length, Limits, standards::iso286::Feature};

use crate::{
    answer::{DrillAnswer, GeneralAnswer, GradeAnswer, KeywayAnswer, Mm, PickAnswer, SeatAnswer},
    render::text::{Text, lines::wrapped},
};

impl Text {
    pub(crate) fn general(&self, out: &mut String, answer: &GeneralAnswer) {
        let [first, second] = self.units();
        let size = |unit| Self::size(answer.nominal_mm.0, unit);
        let class = format!("ISO 2768-{} ({})", answer.class, answer.word);
        if let Some(minutes) = answer.plus_minus_arcmin {
            let (degrees, rest) = (minutes / 60, minutes % 60);
            let _ = writeln!(
                out,
                "+/- {degrees} deg {rest:02} min   {class}, shorter side {}",
                size(first)
            );
            return;
        }
        if let Some(either) = answer.plus_minus_mm {
            let _ = writeln!(
                out,
                "+/- {}   {class}, {} of {}",
                self.difference(either.0),
                answer.kind,
                size(first)
            );
        }
        if let (Some(lower), Some(upper)) = (answer.lower_mm, answer.upper_mm)
            && let Ok(limits) = Limits::new(lower.0, upper.0)
        {
            let _ = writeln!(
                out,
                "  {:<28}{}",
                Self::range(limits, first),
                Self::range(limits, second)
            );
        }
        let _ = writeln!(out, "  for sizes that no other tolerance is given to");
    }

    pub(crate) fn grade(&self, out: &mut String, answer: &GradeAnswer) {
        let [first, _] = self.units();
        let (size, tolerance) =
            (Self::size(answer.nominal_mm.0, first), self.difference(answer.tolerance_mm.0));
        let _ = writeln!(out, "{tolerance}   grade {} at {size}", answer.grade);
        wrapped(out, "  ", &answer.source);
    }

    pub(crate) fn keyway(&self, out: &mut String, answer: &KeywayAnswer) {
        let [first, second] = self.units();
        let size = |size: Mm, unit| Self::size(size.0, unit);
        let shaft = answer.shaft_mm;
        let _ = writeln!(
            out,
            "{} key for a shaft of {}   {}",
            answer.standard,
            size(shaft, first),
            size(shaft, second)
        );
        for key in [Some(&answer.key), answer.rectangular.as_ref()].into_iter().flatten() {
            let sides =
                |unit| format!("{} x {}", size(key.width_mm, unit), size(key.height_mm, unit));
            let _ = writeln!(out, "  {:<13} {:<28}{}", "key", sides(first), sides(second));
            let mut line = |name: &str, least: Mm, most: Mm| {
                if let Ok(limits) = Limits::new(least.0, most.0) {
                    self.limits_line(out, name, limits);
                }
            };
            // What is measured comes first.
            line("mic, shaft", key.across_shaft_min_mm, key.across_shaft_max_mm);
            line("mic, hub", key.across_hub_min_mm, key.across_hub_max_mm);
            line("depth, shaft", key.shaft_depth_min_mm, key.shaft_depth_max_mm);
            line("depth, hub", key.hub_depth_min_mm, key.hub_depth_max_mm);
            line("width, shaft", key.shaft_width_min_mm, key.shaft_width_max_mm);
            line("width, hub", key.hub_width_min_mm, key.hub_width_max_mm);
            if !key.note.is_empty() {
                wrapped(out, "  ", key.note);
            }
        }
        wrapped(
            out,
            "  ",
            "mic: bottom of the keyway to the far side (S and T); a shaft or bore off its nominal size moves it as much",
        );
        let from = match answer.depth_from {
            "side" => "depths at the side of the keyway",
            _ => "depths from the top of the shaft or bore",
        };
        let _ = writeln!(out, "  {from}");
    }

    pub(crate) fn pick(&self, out: &mut String, answer: &PickAnswer) {
        let wanted = [answer.wanted_min_mm, answer.wanted_max_mm].map(|end| self.play(end.0));
        wrapped(out, "wanted: ", &format!("{} to {}", wanted[0], wanted[1]));
        if answer.found == 0 {
            let _ = writeln!(out, "no standard fit lies inside; the nearest:");
        } else {
            let _ = writeln!(
                out,
                "{} standard fits lie inside, the easiest to make first:",
                answer.found
            );
        }
        for found in &answer.candidates {
            let mark = match (found.preferred, found.outside_mm.0.is_positive()) {
                (_, true) => format!("outside by {}", self.one_difference(found.outside_mm.0)),
                (true, false) => "preferred".to_owned(),
                (false, false) => String::new(),
            };
            let ends = [found.min_mm, found.max_mm].map(|end| self.one_play(end.0));
            // How far outside may be long to say.
            let room = if found.outside_mm.0.is_positive() { 20 } else { 22 };
            let _ =
                writeln!(out, "  {:<10}{:>22} to {:<room$}{mark}", found.class, ends[0], ends[1]);
        }
    }

    pub(crate) fn drills(&self, out: &mut String, answer: &DrillAnswer) {
        let [first, second] = self.units();
        let mut line = |lead: &str, name: &str, size: Mm, off: Mm| {
            let (one, other) = (Self::size(size.0, first), Self::size(size.0, second));
            let off = match off.0.checked_abs().unwrap_or(off.0) {
                Length::ZERO => String::new(),
                off => self.one_difference(off),
            };
            let line = format!("  {lead:<7}{name:<12}{one:<14}{other:<14}{off}");
            let _ = writeln!(out, "{}", line.trim_end());
        };
        // Those of the crib first: they are there.
        for own in answer.crib.iter().flatten() {
            line("crib", &own.name, own.mm, own.leaves_mm);
        }
        for (lead, drills) in
            [("exact", &answer.exact), ("under", &answer.under), ("over", &answer.over)]
        {
            for drill in drills {
                line(lead, drill.name, drill.mm, drill.off_mm);
            }
        }
        let _ =
            writeln!(out, "  a drill commonly cuts a little over its own size: try it on scrap");
    }

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
