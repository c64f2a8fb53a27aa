//! Joints in words: what the press must give and what it holds come first,
//! then whether it keeps, then heat and lead-in, then a picture of the wall.

use std::fmt::Write as _;

use fits_core::{
    Length, Limits,
    size::{Decimals, Rounding, Unit},
    standards::iso286::Feature,
};

use crate::{
    answer::{AssemblyAnswer, BodyFigures},
    render::text::{LINES, Style, Text, lines::wrapped, quantities::figures},
};

/// Columns of the picture's bars.
const BARS: f64 = 40.0;

impl Text {
    pub(crate) fn assembly(&self, out: &mut String, answer: &AssemblyAnswer) {
        // What should not be pressed is said before anything to cut.
        if !answer.valid {
            self.keeps(out, answer);
        }
        for feature in [&answer.hole, &answer.shaft].into_iter().flatten() {
            self.cut_line(out, "CUT", feature.kind.map_or("size", Feature::word), feature);
        }
        if answer.valid {
            self.keeps(out, answer);
        }
        let lubricant = answer.lubricant;
        let (low, high) = (answer.friction.min, answer.friction.max);
        if let Some(force) = answer.press_force_n {
            let value = self.style(Style::Strong, &format!("{:<21} ", self.force(force)));
            // A shrunk joint is pressed only to part it.
            let (word, when) = match answer.joining {
                "shrink" => ("APART", "to press it apart cold"),
                _ if answer.soft_press_force_n.is_some() => ("FORCE", "as if nothing gave"),
                _ => ("FORCE", "by the end of the stroke"),
            };
            let _ = writeln!(out, "{word} {value}{when}, friction {high} ({lubricant})");
        }
        if let Some(soft) = answer.soft_press_force_n {
            let _ = writeln!(
                out,
                "      choose the press by it; {} at the metal's least yield",
                self.one_force(soft)
            );
        }
        if let (Some(torque), Some(axial)) = (answer.torque_n_m, answer.axial_hold_n) {
            let (value, along) = if torque > 0.0 {
                (self.torque(torque), format!("; {} along", self.one_force(axial)))
            } else {
                ("nothing".to_owned(), String::new())
            };
            let value = self.style(Style::Strong, &format!("{value:<21} "));
            let _ = writeln!(out, "HOLDS {value}at the loosest, friction {low}{along}");
        } else if answer.press_force_n.is_some() {
            let value = self.style(Style::Strong, "nothing to count on");
            let _ = writeln!(out, "HOLDS {value}: a part gives");
        }
        if let Some(wanted) = &answer.must_hold {
            self.must_hold(out, wanted);
        }
        if answer.finish_is_assumed && answer.torque_n_m.is_some() {
            let ground = answer
                .ground_torque_n_m
                .map_or(String::new(), |torque| format!("; ground, {}", self.one_torque(torque)));
            let _ = writeln!(out, "      taken as reamed and fine turned, Rz 6.3 um each{ground}");
        }
        // What should not be pressed needs no lead-in.
        if answer.valid {
            self.lead_in(out, answer);
        }
        let range = Limits::new(answer.interference_min_mm.0, answer.interference_max_mm.0);
        if let Ok(range) = range {
            let _ =
                writeln!(out, "  {:<12} {} on the diameter", "interference", self.tightness(range));
        }
        self.worked_by(out, answer);
        let (least, most) = (answer.pressure_mpa.min * 1e6, answer.pressure_mpa.max * 1e6);
        let pressures =
            if least < most { self.pressures(least, most) } else { self.pressure(most) };
        let _ = writeln!(out, "  {:<12} {pressures}", "pressure");
        for outer in &answer.outer_pressures_mpa {
            let said = self.pressures(outer.min * 1e6, outer.max * 1e6);
            let _ = writeln!(out, "  {:<12} {said}", "further out");
        }
        self.at_work(out, answer);
        for part in &answer.parts {
            self.body(out, part);
        }
        self.heat(out, answer);
        let mut cautions = String::new();
        Self::cautions(&mut cautions, &answer.cautions);
        if !answer.unconfirmed.is_empty() {
            crate::render::text::unconfirmed(&mut cautions, &answer.unconfirmed.join(", "));
        }
        // Cautions stay; notes go from the end where the screen is full.
        for note in &answer.notes {
            let before = out.len();
            wrapped(out, "  ", note);
            if out.lines().count() + cautions.lines().count() > LINES {
                out.truncate(before);
                break;
            }
        }
        out.push_str(&cautions);
        // The picture is the first to go where the screen is full.
        let before = out.len();
        self.wall(out, answer);
        if out.lines().count() > LINES {
            out.truncate(before);
        }
    }

    /// The grip at each end of the temperatures it works at.
    fn at_work(&self, out: &mut String, answer: &AssemblyAnswer) {
        for at in &answer.at_work {
            let range = Limits::new(at.interference_min_mm.0, at.interference_max_mm.0);
            let holds = match (at.pressure_mpa, at.torque_n_m) {
                (None, _) => "LETS GO; ".to_owned(),
                (_, Some(torque)) if torque > 0.0 => format!("holds {}; ", self.torque(torque)),
                (_, Some(_)) => "holds nothing at the loosest; ".to_owned(),
                (_, None) => String::new(),
            };
            let grips = match range {
                Ok(range) if range.upper().is_negative() => {
                    let ends =
                        [range.upper(), range.lower()].map(|end| self.one_play(Self::turned(end)));
                    format!("{} to {}", ends[0], ends[1])
                }
                Ok(range) => self.tightness(range),
                Err(_) => String::new(),
            };
            let yields = if at.yields { "; yields at the tightest" } else { "" };
            let pressure = at.pressure_mpa.map_or(String::new(), |it| {
                format!("; {} at the tightest", self.one_pressure(it.max * 1e6))
            });
            let lead = format!("  {:<12} ", format!("at {}", self.one_temperature(at.at_c)));
            wrapped(out, &lead, &format!("{holds}{grips}{pressure}{yields}"));
        }
    }

    fn turned(interference: Length) -> Length {
        interference.checked_neg().unwrap_or(interference)
    }

    fn keeps(&self, out: &mut String, answer: &AssemblyAnswer) {
        let what = format!("{} {}", Self::size(answer.nominal_mm.0, self.units()[0]), answer.class);
        let not_judged: Vec<&str> = answer
            .parts
            .iter()
            .filter(|part| part.strength_mpa.is_none())
            .map(|part| part.part)
            .collect();
        let lighter = match (&answer.lighter, answer.elastic_up_to_mm) {
            (Some(lighter), _) => {
                let loose = lighter.interference_min_mm.0.is_negative();
                let loose = if loose { ", but may come out loose" } else { "" };
                format!("; {} would keep{loose}", lighter.class)
            }
            (None, Some(up_to)) => {
                format!("; nothing over {} would keep", self.one_difference(up_to.0))
            }
            (None, None) => String::new(),
        };
        let (style, word, rest) = if answer.yields {
            let cracks = answer
                .parts
                .iter()
                .any(|part| part.brittle && part.safety.is_some_and(|safety| safety < 1.0));
            let word = match (cracks, answer.valid, answer.torque_n_m) {
                (true, ..) => "CRACKS",
                (false, true, _) => "GIVES A LITTLE",
                (false, false, Some(_)) => "YIELDS",
                (false, false, None) => "NO JOINT, IT YIELDS:",
            };
            (Style::Bad, word, format!("at the tightest{lighter}"))
        } else if let Some(part) = answer.parts.iter().find(|part| !part.keeps) {
            let times = part.safety.map_or(String::new(), figures);
            let (name, margin) = (part.part, part.margin);
            let rest = format!(
                "the {name} is only {times} times under its tensile strength; brittle wants {margin}{lighter}"
            );
            (Style::Bad, "MAY CRACK", rest)
        } else if not_judged.is_empty() {
            let worst = answer
                .parts
                .iter()
                .filter_map(|part| part.safety.map(|safety| (part, safety)))
                .min_by(|a, b| (a.1 / a.0.margin).total_cmp(&(b.1 / b.0.margin)));
            let rest = worst.map_or("nothing pulls".to_owned(), |(part, safety)| {
                let kind = if part.brittle { "brittle wants " } else { "wants " };
                format!(
                    "the {} {} times under its strength ({kind}{})",
                    part.part,
                    figures(safety),
                    part.margin
                )
            });
            (Style::Good, "OK", rest)
        } else {
            let unknown = not_judged.join(" and ");
            (Style::Faint, "MIND", format!("no strength known of the {unknown}: yield not judged"))
        };
        let word = self.style(style, word);
        wrapped(out, "", &format!("{word} {what}: {rest}"));
    }

    /// Interference in both units, or clearance and interference.
    fn tightness(&self, range: Limits) -> String {
        let (low, high) = (range.lower(), range.upper());
        if low == high {
            return self.difference(high);
        }
        if low.is_negative() {
            let loose = low.checked_neg().unwrap_or(low);
            return format!(
                "from {} clearance to {} interference",
                self.one_difference(loose),
                self.one_difference(high)
            );
        }
        let ends = self.units().map(|unit| {
            let unit = if unit == Unit::Inch { Unit::Thou } else { unit };
            let decimals = match unit {
                Unit::Thou => Decimals { unit, places: 2 },
                _ => Decimals::MILLIMETRES,
            };
            format!(
                "{} to {} {}",
                low.shown(decimals, Rounding::Nearest),
                high.shown(decimals, Rounding::Nearest),
                unit.symbol()
            )
        });
        ends.join("   ")
    }

    fn worked_by(&self, out: &mut String, answer: &AssemblyAnswer) {
        let Some(other) = answer.other_smoothing_pressure_mpa else { return };
        let (least, most) = (answer.working_min_mm.0, answer.working_max_mm.0);
        let said = format!(
            "{} to {} once smoothed: 0.8 Rz lost for grip, 0.4 for stress; the other way about {} to {}",
            self.one_difference(least),
            self.one_difference(most),
            self.one_pressure(other.min * 1e6),
            self.one_pressure(other.max * 1e6)
        );
        wrapped(out, "               ", &said);
    }

    fn body(&self, out: &mut String, part: &BodyFigures) {
        let stress = if part.brittle { part.hoop_mpa.max(0.0) } else { part.von_mises_mpa };
        let of = match (part.strength_mpa, part.brittle) {
            (Some(strength), false) => format!(" of {}", self.one_pressure(strength * 1e6)),
            (Some(strength), true) => {
                format!(" pull of {} (brittle)", self.one_pressure(strength * 1e6))
            }
            (None, _) => String::new(),
        };
        let mut moves = Vec::new();
        let way = |length: Length| if length.is_negative() { "closes" } else { "grows" };
        if let Some(bore) = part.bore_growth_mm.filter(|_| part.part != "hub") {
            moves.push(format!("bore {} {}", way(bore.0), self.size_of(bore.0)));
        }
        if part.part == "hub" {
            let outside = part.outside_growth_mm.0;
            moves.push(format!("outside {} {}", way(outside), self.size_of(outside)));
        }
        let moves =
            if moves.is_empty() { String::new() } else { format!("; {}", moves.join(", ")) };
        wrapped(
            out,
            &format!("  {:<12} ", part.part),
            &format!("{}: {}{of}{moves}", part.material, self.one_pressure(stress * 1e6)),
        );
    }

    fn size_of(&self, length: Length) -> String {
        self.one_difference(length.checked_abs().unwrap_or(length))
    }

    fn heat(&self, out: &mut String, answer: &AssemblyAnswer) {
        let Some(clearance) = answer.clearance_mm else { return };
        let alone = answer.heat_alone == Some(true);
        let stands = |part: Option<&str>, limit: Option<f64>| match (part, limit) {
            (Some(part), Some(limit)) => {
                format!("the {part} stands {}", self.temperature(limit))
            }
            _ => "no limit is known".into(),
        };
        let mut ways = Vec::new();
        let mut not = Vec::new();
        match answer.heat_to_c {
            Some(to) if alone => ways.push(format!("hub to {}", self.temperature(to))),
            Some(to) => not.push(format!(
                "not by heat alone: it takes {}, {}",
                self.temperature(to),
                stands(answer.heat_limit_of, answer.heat_limit_c)
            )),
            None => {}
        }
        match (answer.cool_to_c, answer.cold_limit_c) {
            (Some(to), _) => ways.push(format!("shaft to {}", self.temperature(to))),
            (None, Some(_)) if !alone => not.push(format!(
                "not by cold alone: {}",
                stands(answer.cold_limit_of, answer.cold_limit_c)
            )),
            _ => {}
        }
        if let Some(both) = &answer.heat_and_cold {
            ways.push(format!(
                "both: shaft in {} at {}, hub to {}",
                both.coolant,
                self.temperature(both.cool_to_c),
                self.temperature(both.heat_to_c)
            ));
        }
        if ways.is_empty() && not.is_empty() {
            not.push("no: too much to open, or no expansion is known".into());
        }
        let play = self.one_difference(clearance.0);
        wrapped(
            out,
            &format!("  {:<12} ", "by heat"),
            &[ways.join(", or ")]
                .into_iter()
                .filter(|ways| !ways.is_empty())
                .chain(not)
                .chain([format!("{play} play")])
                .collect::<Vec<_>>()
                .join("; "),
        );
    }

    fn lead_in(&self, out: &mut String, answer: &AssemblyAnswer) {
        let lead = &answer.lead_in;
        let [unit, _] = self.units();
        let places = if unit == Unit::Inch { 2 } else { 1 };
        let along = |length: Length| {
            format!(
                "{} {}",
                length.shown(Decimals { unit, places }, Rounding::Nearest),
                unit.symbol()
            )
        };
        let pilot = Self::target(lead.pilot_max_mm.0, unit, Rounding::Down);
        let words = format!(
            "{} deg by {} ({} off the diameter), or a pilot of {pilot} or a thou less, {} long",
            lead.angle_deg,
            along(lead.length_mm.0),
            along(lead.allowance_mm.0),
            along(lead.pilot_length_mm.0)
        );
        wrapped(out, &format!("  {:<12} ", "lead-in"), &words);
    }

    /// Stress through the hub's wall, bore to outside, against its strength.
    fn wall(&self, out: &mut String, answer: &AssemblyAnswer) {
        let Some(hub) = answer.parts.last() else { return };
        let [unit, _] = self.units();
        let counts = |point: &crate::answer::WallPoint| {
            if hub.brittle { point.hoop_mpa } else { point.von_mises_mpa }
        };
        let most = hub.wall.iter().map(counts).fold(hub.strength_mpa.unwrap_or(0.0), f64::max);
        if most <= 0.0 {
            return;
        }
        let column = |stress: f64| (stress / most * BARS).round().max(0.0);
        let name = if hub.brittle { "hub's hoop stress" } else { "hub's von Mises stress" };
        let mark = hub.strength_mpa.map_or("", |_| ", | its strength");
        let _ = writeln!(out, "  {name} through the wall{mark}");
        for point in hub.wall.iter().step_by(2) {
            let filled = column(counts(point));
            let limit = hub.strength_mpa.map(column);
            let mut bar = String::new();
            let mut at = 0.0;
            while at <= BARS {
                let is_limit = limit.is_some_and(|limit| (limit - at).abs() < 0.5);
                bar.push(if is_limit {
                    '|'
                } else if at < filled {
                    '='
                } else {
                    ' '
                });
                at += 1.0;
            }
            let place = Self::size(point.at_mm.0, unit);
            let stress = self.one_pressure(counts(point) * 1e6);
            let _ = writeln!(out, "  {place:>12} {:<41} {stress}", bar.trim_end());
        }
    }
}
