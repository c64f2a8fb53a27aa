//! A pair away from 20 °C in words: whether it runs or holds, then the
//! clearance at each end.

use std::fmt::Write as _;

use fits_core::{Kind, Limits};

use crate::{
    answer::{AtFigures, WarmAnswer},
    render::text::{Style, Text, lines::wrapped},
};

impl Text {
    pub(crate) fn fit_warm(&self, out: &mut String, answer: &WarmAnswer) {
        let (style, headline) = self.verdict_warm(answer);
        let mut lines = String::new();
        wrapped(&mut lines, "", &headline);
        for line in lines.lines() {
            let _ = writeln!(out, "{}", self.style(style, line));
        }
        let (hole, shaft) = (&answer.hole, &answer.shaft);
        wrapped(
            out,
            "  ",
            &format!(
                "hole {} of {}, shaft {} of {}",
                hole.class, hole.material, shaft.class, shaft.material
            ),
        );
        let _ = writeln!(
            out,
            "{}",
            self.style(Style::Faint, &format!("  {:<20}{:<28}loosest pair", "at", "tightest pair"))
        );
        let mut last = None;
        for end in [answer.cold, answer.reference, answer.warm] {
            if last.replace(end.at_c.to_bits()) == Some(end.at_c.to_bits()) {
                continue;
            }
            let [least, most] = [end.min_mm, end.max_mm].map(|play| self.one_play(play.0));
            let _ = writeln!(out, "  {:<20}{least:<28}{most}", self.temperature(end.at_c));
        }
        for damp in &answer.damp {
            let [least, most] = [damp.min_mm, damp.max_mm].map(|play| self.one_play(play.0));
            let _ = writeln!(out, "  {:<20}{least:<28}{most}", format!("{}, 20 °C", damp.state));
        }
        for (name, meets) in [
            ("the tightest pair", answer.tightest_pair_meets_c),
            ("the loosest pair", answer.loosest_pair_meets_c),
        ] {
            if let Some(meets) = meets {
                let side = if answer.change_per_c_mm > 0.0 { "below" } else { "above" };
                let _ = writeln!(out, "  {name} binds {side} {}", self.temperature(meets));
            }
        }
        if let Some(limits) =
            answer.shaft_to_keep.and_then(|ends| Limits::new(ends.min_mm.0, ends.max_mm.0).ok())
        {
            let [first, second] = self.units().map(|unit| Self::range(limits, unit));
            let word =
                if answer.reference.kind == Kind::Interference { "no tighter" } else { "as loose" };
            let _ = writeln!(out, "  to be {word} at the worse end as at 20 °C, cut the shaft to");
            let _ = writeln!(out, "    {first:<28}{second}");
        }
        for note in &answer.notes {
            wrapped(out, "  ", note);
        }
        Self::cautions(out, &answer.cautions);
    }

    fn verdict_warm(&self, answer: &WarmAnswer) -> (Style, String) {
        let from = self.temperature(answer.cold.at_c);
        let to = self.temperature(answer.warm.at_c);
        let range = format!("from {from} to {to}");
        let end = |at: f64| self.temperature(at);
        let worse = |cold: AtFigures, hot: AtFigures| {
            if cold.min_mm.0 < hot.min_mm.0 { cold } else { hot }
        };
        match answer.reference.kind {
            Kind::Clearance if answer.binds => {
                let meets = answer.tightest_pair_meets_c.map_or(String::new(), end);
                let side = if answer.change_per_c_mm > 0.0 { "below" } else { "above" };
                let worst = worse(answer.cold, answer.warm);
                let also =
                    if worst.max_mm.0.is_negative() { ", every pair at the end" } else { "" };
                (
                    Style::Bad,
                    format!("BINDS {side} {meets}: the smallest hole with the largest shaft{also}"),
                )
            }
            Kind::Clearance if answer.damp.iter().any(|damp| damp.min_mm.0.is_negative()) => {
                (Style::Bad, format!("RUNS {range} dry, and BINDS in damp"))
            }
            Kind::Clearance => (Style::Good, format!("RUNS {range}")),
            Kind::Interference if answer.lets_go => {
                let meets = answer.loosest_pair_meets_c.map_or(String::new(), end);
                let side = if answer.change_per_c_mm > 0.0 { "above" } else { "below" };
                (
                    Style::Bad,
                    format!("LETS GO {side} {meets}: the largest hole with the smallest shaft"),
                )
            }
            Kind::Interference => (Style::Good, format!("HOLDS {range}")),
            Kind::Transition => {
                (Style::Strong, format!("LOOSE OR TIGHT, as the parts fall, {range}"))
            }
        }
    }
}
