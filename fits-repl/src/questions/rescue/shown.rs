//! The ways out, in words.

use std::fmt::Write as _;

use fits_core::{Length, Limits, shop::rescue::Prospect, size::Unit, speech::Speech};

use crate::{
    questions::rescue::figures::{NamedLimits, RescueAnswer, WayFigures},
    render::text::{LINES, Style, Text, lines::wrapped},
};

/// So many ways are shown in full at the most.
const IN_FULL: usize = 3;
/// Two lines are left for what is unconfirmed.
const PAGE: usize = LINES - 2;

impl Text {
    pub(crate) fn rescue(&self, out: &mut String, answer: &RescueAnswer) {
        for in_full in (1..=IN_FULL).rev() {
            let mut page = String::new();
            self.rescue_page(&mut page, answer, in_full);
            if in_full == 1 || page.lines().count() <= PAGE {
                out.push_str(&page);
                return;
            }
        }
    }

    fn rescue_page(&self, out: &mut String, answer: &RescueAnswer, in_full: usize) {
        let [first, _] = self.units();
        let is = self.both_or_range(answer.is, "WRONG", answer.part.word());
        let _ = writeln!(out, "{is}");
        let missing = answer.missing_mm.0;
        let (by, what) = if missing.is_negative() {
            (missing.checked_neg().unwrap_or_default(), "to spare")
        } else {
            (missing, "missing")
        };
        let wanted = said_limits(answer.wanted, first);
        wrapped(out, "  ", &format!("should be {wanted}: {} {what}", self.difference(by)));
        let (least, most) = (answer.gap_min_mm.0, answer.gap_max_mm.0);
        let loose = |by: Length| {
            if by.is_negative() {
                format!("{} tight", self.one_difference(by.checked_neg().unwrap_or_default()))
            } else {
                format!("{} loose", self.one_difference(by))
            }
        };
        let gap = if least == most {
            loose(least)
        } else {
            format!("{} to {}", loose(least), loose(most))
        };
        let taken =
            if answer.mate_taken { " (taken: what goes with it as it should be)" } else { "" };
        let mate = if answer.is_ring { "ring" } else { answer.part.mate().word() };
        wrapped(
            out,
            "  ",
            &format!("the {mate} {}{taken}: as it is {gap}", said_limits(answer.mate, first)),
        );
        for note in &answer.notes {
            wrapped(out, "  ", note);
        }
        let (can, cannot): (Vec<_>, Vec<_>) =
            answer.ways.iter().partition(|way| way.verdict != Prospect::No);
        for (at, way) in can.iter().take(in_full).enumerate() {
            self.way(out, at + 1, way, first);
        }
        let brief = |way: &&WayFigures| {
            let who = if way.who == "you" { String::new() } else { format!(" ({})", way.who) };
            format!("{}{who}", way.way)
        };
        if can.len() > in_full {
            let rest: Vec<_> = can.iter().skip(in_full).map(brief).collect();
            wrapped(out, "  also ", &rest.join(", "));
        }
        // Those that one reason forbids stand on one line.
        let mut refused: Vec<(String, Vec<&str>)> = Vec::new();
        for way in cannot {
            let why = way.notes.first().map_or_else(String::new, |why| why.said_in(first));
            match refused.iter_mut().find(|(known, _)| *known == why) {
                Some((_, ways)) => ways.push(way.way),
                None => refused.push((why, vec![way.way])),
            }
        }
        let refused: Vec<_> =
            refused.iter().map(|(why, ways)| format!("{}: {why}", ways.join(", "))).collect();
        if !refused.is_empty() {
            wrapped(out, "  not ", &refused.join("; "));
        }
        Self::cautions(out, &answer.cautions);
    }

    fn way(&self, out: &mut String, number: usize, way: &WayFigures, unit: Unit) {
        let name = self.style(Style::Strong, way.way);
        let care = if way.verdict == Prospect::Care { ", with care" } else { "" };
        let who = if way.who == "you" { String::new() } else { format!(", {}", way.who) };
        let _ = writeln!(
            out,
            "{number} {name}: strength {} of 5, effort {}{care}{who}",
            way.strength, way.effort
        );
        for NamedLimits { of, limits, .. } in &way.limits {
            self.limits_or_size(out, of, *limits);
        }
        wrapped(out, "    ", &joined(&way.notes, unit));
    }

    /// Limits on a line; a size alone where both ends are one.
    pub(crate) fn limits_or_size(&self, out: &mut String, name: &str, limits: Limits) {
        if limits.tolerance() == Length::ZERO {
            let [one, other] = self.units().map(|unit| Self::size(limits.lower(), unit));
            let _ = writeln!(out, "  {name:<13} {one:<28}{other}");
        } else {
            self.limits_line(out, name, limits);
        }
    }

    /// A reading, or the least and the greatest of several.
    fn both_or_range(&self, is: Limits, lead: &str, name: &str) -> String {
        let [one, other] = self.units().map(|unit| said_limits(is, unit));
        format!("{lead:<7} {name:<8}{one:<22}{other}")
    }
}

/// Limits in one unit; a size alone where both ends are one.
pub(crate) fn said_limits(limits: Limits, unit: Unit) -> String {
    if limits.tolerance() == Length::ZERO {
        Text::size(limits.lower(), unit)
    } else {
        Text::range(limits, unit)
    }
}

/// Sentences of an answer, one after another.
pub(crate) fn joined(says: &[Speech], unit: Unit) -> String {
    let says: Vec<_> =
        says.iter().map(|one| one.said_in(unit)).filter(|it| !it.is_empty()).collect();
    says.join("; ")
}
