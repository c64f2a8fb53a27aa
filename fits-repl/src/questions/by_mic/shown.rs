//! A thread by its outside and its pitch, in words.

use std::fmt::Write as _;

use fits_core::{Length, Limits, size::Unit};

use crate::{
    questions::by_mic::{InsertAnswer, SquareThreadAnswer, ThreadsByMicAnswer},
    render::text::{Style, Text, lines::wrapped},
};

/// So many are shown; JSON has all.
const SHOWN: usize = 6;

impl Text {
    pub(crate) fn threads_by_mic(&self, out: &mut String, answer: &ThreadsByMicAnswer) {
        let [first, _] = self.units();
        let size = Self::size(answer.size_mm.0, first);
        let pitch = match first {
            Unit::Inch => format!("{:.4} turns an inch", 25.4 / answer.pitch_mm)
                .replace(".0000 ", " ")
                .replace("000 turns", " turns"),
            _ => format!("{} mm pitch", (answer.pitch_mm * 1e4).round() / 1e4),
        };
        let _ = writeln!(out, "{} {size}, {pitch}", answer.of);
        for thread in answer.threads.iter().take(SHOWN) {
            let name = format!("{:<16}", thread.name);
            let pitch = match thread.tpi {
                Some(tpi) => format!("{tpi} tpi"),
                None => format!("{} mm", thread.pitch_mm),
            };
            let _ = writeln!(
                out,
                "{} {}, {pitch}, {:.1} degrees{}",
                self.style(Style::Strong, &name),
                thread.system,
                thread.angle_deg,
                if thread.tapers { ", on a taper" } else { "" }
            );
            if let Ok(limits) = Limits::new(thread.crest_min_mm.0, thread.crest_max_mm.0) {
                self.limits_line(out, "new", limits);
            }
            let off = thread.outside_mm.0;
            let mut says = Vec::new();
            if off == Length::ZERO {
                says.push("the reading lies inside".to_owned());
            } else if off.is_negative() {
                let by = self.one_difference(off.checked_neg().unwrap_or_default());
                says.push(format!("the reading is {by} under: turned down, worn, or not it"));
            } else {
                says.push(format!("the reading is {} over", self.one_difference(off)));
            }
            if thread.pitch_off_percent.abs() > 0.4 {
                says.push(format!(
                    "its pitch is {:+.1} % of the one read",
                    thread.pitch_off_percent
                ));
            }
            if let Some(drill) = thread.tap_drill_mm {
                says.push(format!("tap drill {}", Self::size(drill.0, first)));
            }
            wrapped(out, "  ", &says.join("; "));
        }
        if answer.threads.len() > SHOWN {
            let rest: Vec<_> =
                answer.threads.iter().skip(SHOWN).map(|thread| thread.name.clone()).collect();
            wrapped(out, "  or ", &rest.join(", "));
        }
        wrapped(
            out,
            "  ",
            "read the pitch over ten threads and try the flank angle: 60, 55 and 47.5 degrees look alike on a short screw; a good nut settles it",
        );
    }

    fn thread_size(&self, out: &mut String, name: &str, size: Length) {
        let [one, other] = self.units().map(|unit| Self::size(size, unit));
        let _ = writeln!(out, "  {name:<20}{one:<16}{other}");
    }

    pub(crate) fn square_thread(&self, out: &mut String, answer: &SquareThreadAnswer) {
        let mut line = |name, size| self.thread_size(out, name, size);
        line("outside", answer.major_mm.0);
        line("depth, tool width", answer.half_pitch_mm.0);
        line("root, nut's bore", answer.minor_mm.0);
        line("middle of depth", answer.middle_mm.0);
        wrapped(
            out,
            "  ",
            "no standard gives limits: cut the nut first, tool a few thou wider for its space, and the screw to run in it",
        );
    }

    pub(crate) fn insert(&self, out: &mut String, answer: &InsertAnswer) {
        let [first, other] = self.units();
        let _ = writeln!(out, "{} wire thread insert", answer.designation);
        if let (Some(drill), Some(size)) = (answer.drill_name, answer.drill_mm) {
            let _ = writeln!(
                out,
                "DRILL   {:<10}{:<16}{}",
                self.style(Style::Strong, drill),
                Self::size(size.0, first),
                Self::size(size.0, other)
            );
        }
        if let Ok(limits) = Limits::new(answer.bore_min_mm.0, answer.bore_max_mm.0) {
            self.limits_line(out, "bore", limits);
        }
        let mut line = |name, size| self.thread_size(out, name, size);
        line("tap, pitch dia.", answer.tap_pitch_diameter_mm.0);
        line("tap, outside", answer.tap_major_mm.0);
        wrapped(
            out,
            "  ",
            "it takes the insert's own tap; leave the coil's last turn under the face; the maker's sheet comes first",
        );
    }
}
