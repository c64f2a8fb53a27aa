//! A bushing in words: the shaft to turn or the bore to ream first, then the
//! press and what is left of the bore.

use std::fmt::Write as _;

use fits_core::{
    Limits,
    size::{Decimals, Rounding, Unit},
};

use crate::{
    answer::{BushingAnswer, BushingPart, Ends, Mm, SuitedFigures},
    render::text::{LINES, Style, Text, lines::wrapped, unconfirmed},
};

impl Text {
    pub(crate) fn bushing(&self, out: &mut String, answer: &BushingAnswer) {
        let lead = |out: &mut String, word: &str, name: &str, aim: Mm, toward: Rounding| {
            let [first, second] = self.units().map(|unit| Self::target(aim.0, unit, toward));
            let first = format!("{first:<26}");
            let _ =
                writeln!(out, "{word:<7} {name:<16}{}{second}", self.style(Style::Strong, &first));
        };
        let suited = |part: &SuitedFigures| {
            part.lower_mm.zip(part.upper_mm).and_then(|(low, high)| Limits::new(low.0, high.0).ok())
        };
        let shaft = answer.shaft.lower_mm.zip(answer.shaft.upper_mm);
        let shaft = shaft.and_then(|(low, high)| Limits::new(low.0, high.0).ok());
        if let (true, Some(ream)) = (answer.shaft.given, &answer.ream_in_place) {
            let word = if answer.sized_by == Some("burnish") { "PIN" } else { "REAM" };
            lead(out, word, "bore in place", ream.aim_mm, Rounding::Down);
            if let Some(limits) = suited(ream) {
                self.bushing_line(out, "limits", limits);
            }
            if let Some(before) = &answer.bore_before {
                lead(out, "or", "before pressing", before.aim_mm, Rounding::Down);
                if let Some(limits) = suited(before) {
                    self.bushing_line(out, "limits", limits);
                }
            }
        } else {
            let word = if answer.shaft.given { "IN HAND" } else { "CUT" };
            lead(out, word, "shaft", answer.shaft.aim_mm, Rounding::Up);
            match shaft {
                Some(limits) if limits.lower() == limits.upper() => {}
                Some(limits) => self.bushing_line(out, "limits", limits),
                None => {
                    let or = if answer.ream_in_place.is_some() { "; or" } else { "" };
                    let words = format!(
                        "these bores vary by more than the play may: press it in, mic the bore, and turn the shaft to suit{or}"
                    );
                    wrapped(out, "  ", &words);
                }
            }
            if let Some(limits) = answer.ream_in_place.as_ref().and_then(suited) {
                self.bushing_line(
                    out,
                    &format!("{} in place", answer.sized_by.unwrap_or("size")),
                    limits,
                );
                let _ = writeln!(out, "  {:<20}for a shaft of h6", "");
            }
        }
        self.before_pressing(out, answer);
        let ends = |out: &mut String, name: &str, ends: Ends| {
            let [first, second] = self.units().map(|unit| play_of(ends, unit));
            let _ = writeln!(out, "  {name:<20}{first:<26}{second}");
        };
        if let (Some(press), Some(closes)) = (answer.interference, answer.closes_in) {
            ends(out, "interference", press);
            ends(out, "the bore closes by", closes);
        }
        ends(out, "bore in place", answer.bore_in_place);
        let unreamed = answer.shaft.given && answer.ream_in_place.is_some();
        ends(out, if unreamed { "unreamed it has" } else { "runs with" }, answer.clearance);
        if answer.clearance.min_mm.0.is_negative() {
            let _ = writeln!(out, "  {:<20}{}", "", self.style(Style::Bad, "it may bind"));
        }
        if answer.clearance != answer.running {
            ends(out, "wanted", answer.running);
        }
        let mut facts = vec![format!("wanted {}", answer.running_by)];
        facts.extend(answer.press_force_n.map(|force| format!("press {}", self.force(force))));
        wrapped(out, "  ", &facts.join("; "));
        for at in &answer.in_service {
            let name = format!("{} {}", self.one_temperature(at.at_c), at.damp);
            let play = Ends { min_mm: at.min_mm, max_mm: at.max_mm };
            let [first, second] = self.units().map(|unit| play_of(play, unit));
            let binds = if at.min_mm.0.is_negative() {
                format!("  {}", self.style(Style::Bad, "BINDS"))
            } else {
                String::new()
            };
            let _ = writeln!(out, "  {name:<20}{first:<26}{second}{binds}");
            if at.interference_min_mm.0.is_negative() {
                let _ = writeln!(out, "  {:<20}loose in its housing there", "");
            }
        }
        let mut rest = String::new();
        for note in &answer.notes {
            wrapped(&mut rest, "  ", note);
        }
        Self::cautions(&mut rest, &answer.cautions);
        // Cautions stay; notes go from the end where the screen is full.
        let mut doubt = String::new();
        if answer.known.is_unconfirmed() {
            unconfirmed(&mut doubt, &answer.unconfirmed);
        }
        let taken = out.lines().count() + doubt.lines().count();
        let room = LINES.saturating_sub(taken);
        let lines: Vec<&str> = rest.lines().collect();
        let cautions = lines.iter().filter(|line| line.starts_with('!')).count();
        let shown = room.saturating_sub(cautions);
        for (at, line) in lines.iter().enumerate() {
            if line.starts_with('!') || at < shown {
                let _ = writeln!(out, "{line}");
            }
        }
    }

    /// The three surfaces as made.
    fn before_pressing(&self, out: &mut String, answer: &BushingAnswer) {
        let mut line = |name: &str, part: &Option<BushingPart>| {
            let Some(part) = part else { return };
            let Ok(limits) = Limits::new(part.lower_mm.0, part.upper_mm.0) else { return };
            let name: String = format!("{name} {}", part.class).chars().take(19).collect();
            self.bushing_line(out, &name, limits);
        };
        line("housing", &answer.housing);
        line("outside", &answer.outside);
        line("bore", &answer.bore);
    }

    pub(crate) fn bushing_line(&self, out: &mut String, name: &str, limits: Limits) {
        let is_one = limits.lower() == limits.upper();
        let [first, second] = self.units().map(|unit| {
            if is_one { Self::size(limits.lower(), unit) } else { Self::range(limits, unit) }
        });
        let _ = writeln!(out, "  {name:<20}{first:<26}{second}");
    }
}

/// A range to the nearest place shown.
fn play_of(ends: Ends, unit: Unit) -> String {
    let places = if unit == Unit::Inch { 4 } else { 3 };
    // What binds is never rounded away.
    let tight = if ends.min_mm.0.is_negative() { Rounding::Down } else { Rounding::Nearest };
    let shown = |size: Mm, rounding| size.0.shown(Decimals { unit, places }, rounding);
    format!(
        "{} to {} {}",
        shown(ends.min_mm, tight),
        shown(ends.max_mm, Rounding::Nearest),
        unit.symbol()
    )
}
