//! The clearance of a service, in words.

use std::fmt::Write as _;

use fits_core::{
    Limits,
    shop::service::PrintedGrip,
    size::{Decimals, Rounding, Unit},
};

use crate::{
    answer::Mm,
    questions::service::{PrintedAnswer, RunsAnswer},
    render::text::{Style, Text, lines::wrapped},
};

impl Text {
    /// A range of clearances: thou to a tenth, or 0.001 mm.
    fn gap(&self, least: Mm, most: Mm) -> String {
        let in_unit = |unit: Unit| {
            let decimals = match unit {
                Unit::Inch => Decimals { unit: Unit::Thou, places: 1 },
                _ => Decimals::MILLIMETRES,
            };
            let [least, most] = [least, most].map(|it| it.0.shown(decimals, Rounding::Nearest));
            format!("{least} to {most} {}", decimals.unit.symbol())
        };
        self.units().map(in_unit).join("  ")
    }

    pub(crate) fn runs(&self, out: &mut String, answer: &RunsAnswer) {
        let kind = if answer.kind == "plain" { String::new() } else { format!("{} ", answer.kind) };
        let gap = self.gap(answer.clearance_min_mm, answer.clearance_max_mm);
        let _ = writeln!(out, "CLEARANCE  {}", self.style(Style::Strong, &gap));
        let [first, _] = self.units();
        let pair = match (&answer.inner, &answer.outer) {
            (Some(inner), Some(outer)) => format!(", {inner} in {outer}"),
            (Some(inner), None) => format!(", {inner}"),
            (None, Some(outer)) => format!(", in {outer}"),
            (None, None) => String::new(),
        };
        wrapped(
            out,
            "  ",
            &format!(
                "{kind}{} of {}{pair}: to machine at 20 \u{b0}C, on the diameter",
                answer.service,
                Self::size(answer.size_mm.0, first)
            ),
        );
        let mut line = |name: &str, least: Mm, most: Mm| {
            if let Ok(limits) = Limits::new(least.0, most.0) {
                self.limits_line(out, name, limits);
            }
        };
        line("hole at size", answer.inner_min_mm, answer.inner_max_mm);
        line("or the hole", answer.hole_min_mm, answer.hole_max_mm);
        if let (Some(celsius), Some(hot), Some(most), Some(starting), Some(starting_most)) = (
            answer.at_c,
            answer.hot_min_mm,
            answer.hot_max_mm,
            answer.starting_min_mm,
            answer.starting_max_mm,
        ) {
            let rule = self.gap(answer.rule_min_mm, answer.rule_max_mm);
            wrapped(out, "  ", &format!("the rule for it by itself: {rule}"));
            let at = self.temperature(celsius);
            wrapped(out, "  ", &format!("both at {at}: {} is left", self.gap(hot, most)));
            wrapped(
                out,
                "  ",
                &format!("outer part still cold: {} is left", self.gap(starting, starting_most)),
            );
        }
        if !answer.note.is_empty() {
            wrapped(out, "  ", answer.note);
        }
        if answer.beyond_source {
            wrapped(
                out,
                "  ",
                "the size lies outside those that the source speaks of: try it before you trust it",
            );
        }
        if answer.known == fits_core::source::Known::Practice {
            wrapped(out, "  ", "common practice, no source");
        }
        if answer.at_c.is_none() && answer.service == "piston" {
            wrapped(
                out,
                "  ",
                "say how hot it gets, as at 150C, and what both are made of: heat closes it",
            );
        }
    }

    pub(crate) fn printed(&self, out: &mut String, answer: &PrintedAnswer) {
        let [first, other] = self.units();
        if let Ok(limits) = Limits::new(answer.draw_min_mm.0, answer.draw_max_mm.0) {
            let one = Self::range(limits, first);
            let _ = writeln!(
                out,
                "DRAW    hole    {:<28}{}",
                self.style(Style::Strong, &one),
                Self::range(limits, other)
            );
        }
        let grip = if answer.grip == PrintedGrip::Slip { "slip" } else { "press" };
        wrapped(
            out,
            "  ",
            &format!(
                "printed {} on a metal pin of {}, {grip}",
                answer.material,
                Self::size(answer.pin_mm.0, first)
            ),
        );
        wrapped(
            out,
            "  ",
            &format!(
                "round holes come out about {} small: {} is left",
                self.difference(answer.comes_out_small_mm.0),
                self.gap(answer.left_min_mm, answer.left_max_mm)
            ),
        );
        wrapped(out, "  ", answer.note);
        wrapped(
            out,
            "  ",
            &format!(
                "creeps above about {} and slowly under any steady load; no heat to fit it, no shrink",
                self.temperature(answer.creeps_above_c)
            ),
        );
        wrapped(
            out,
            "  ",
            "common practice, no source: print a block of holes in steps of 0.05 mm first and try the pin; ream or drill for a true hole",
        );
    }
}
