//! Threads in words: what to turn and drill, limits, wires and passes.

use std::fmt::Write as _;

use fits_core::{
    Length, Limits,
    shop::Verdict,
    size::{Decimals, Rounding, Unit},
};

use crate::{
    answer::{
        BoreFigures, ClearanceHoleAnswer, Mm, OverWiresAnswer, SideFigures, TapAnswer, TapFigures,
        ThreadAnswer, ThreadName, WiresAnswer,
    },
    query::Units,
    questions::part::readings_shown::verdict_word,
    render::text::{Style, Text, lines::wrapped},
};

impl Text {
    pub(crate) fn thread(&self, out: &mut String, thread: &ThreadAnswer) {
        self.thread_name(out, &thread.name);
        if let Some(blank) = &thread.blank {
            self.aim_line(out, "CUT", "blank", blank.aim_mm.0, Rounding::Up);
        }
        if let Some(tap) = &thread.tap {
            self.drill_line(out, tap);
        }
        if let Some(bore) = &thread.bore {
            self.aim_line(out, "CUT", "bore", bore.aim_mm.0, Rounding::Nearest);
        }
        for (name, side) in [("screw", &thread.external), ("nut", &thread.internal)] {
            if let Some(side) = side {
                self.side(out, name, side);
            }
        }
        if let Some(play) = &thread.play
            && let (Some(least), Some(most)) = (play.pitch_min_mm, play.pitch_max_mm)
        {
            let play = |length: Length| match length {
                Length::ZERO => "none".to_owned(),
                length => self.play(length),
            };
            let (least, most) = (play(least.0), play(most.0));
            let _ = writeln!(out, "  play at the pitch diameter\n    least       {least}");
            let _ = writeln!(out, "    greatest    {most}");
        }
        for (name, depth) in
            [("screw", thread.external_depth_mm), ("nut", thread.internal_depth_mm)]
        {
            if let Some(depth) = depth {
                let words = self.difference(depth.0);
                let _ = writeln!(
                    out,
                    "  {:<14}{words} deep, with the usual tool",
                    format!("cut {name}")
                );
            }
        }
        if let Some(area) = thread.stress_area_mm2 {
            let (metric, inch) =
                (format!("{area:.1} mm2"), format!("{:.4} in2", area / (25.4 * 25.4)));
            let [one, other] = match self.settings.units {
                Units::Millimetres => [metric, inch],
                Units::Inches => [inch, metric],
            };
            let _ = writeln!(out, "  stress area   {one}   {other}");
        }
        Self::notes(out, &thread.name, &thread.notes);
        Self::cautions(out, &thread.cautions);
    }

    /// `M10x1.5-6g   ISO metric, coarse; pitch 1.5 mm`.
    pub(super) fn thread_name(&self, out: &mut String, name: &ThreadName) {
        let pitch = match name.tpi {
            Some(tpi) => format!("{} tpi", trimmed(tpi, 4)),
            None => format!("pitch {}", name.pitch_mm.0),
        };
        let starts = match name.starts {
            1 => String::new(),
            starts => {
                format!(", {starts} starts, lead {}", Self::size(name.lead_mm.0, self.units()[0]))
            }
        };
        let hand = if name.hand == "left" { ", left hand" } else { "" };
        let words = format!("{}, {}; {pitch}{starts}{hand}", name.form, name.series);
        let lead = format!("{}   ", self.style(Style::Strong, &name.designation));
        let width = name.designation.chars().count() + 3;
        if width + words.chars().count() <= 80 {
            let _ = writeln!(out, "{lead}{words}");
        } else {
            let _ = writeln!(out, "{}", lead.trim_end());
            wrapped(out, "  ", &words);
        }
    }

    pub(super) fn aim_line(
        &self,
        out: &mut String,
        lead: &str,
        name: &str,
        size: Length,
        toward: Rounding,
    ) {
        let [first, second] = self.units().map(|unit| Self::target(size, unit, toward));
        let first = self.style(Style::Strong, &format!("{first:<14}"));
        let _ = writeln!(out, "{lead:<6}{name:<8}{first}{second}");
    }

    fn drill_line(&self, out: &mut String, tap: &TapFigures) {
        let name = self.style(Style::Strong, &format!("{:<14}", tap.drill.name));
        let unit = self.units().into_iter().find(|unit| !tap.drill.name.ends_with(unit.symbol()));
        let size = unit.map_or(String::new(), |unit| Self::size(tap.drill.mm.0, unit));
        let _ = writeln!(
            out,
            "DRILL tap     {name}{size:<14}{:.0} % of thread ({:.0} % as cut)",
            tap.percent, tap.cut_percent
        );
        if tap.drill_within_limits == Some(false) {
            let _ = writeln!(out, "  the drill itself is outside the nut's limits");
        } else if tap.within_limits == Some(false) {
            let cuts = Self::target(tap.cuts_mm.0, self.units()[0], Rounding::Nearest);
            let _ = writeln!(
                out,
                "  inside the nut's limits; as commonly cut, {cuts}, it is outside: go gently"
            );
        }
        if tap.published {
            let _ = writeln!(out, "  published     the drill that a published table gives");
        }
        let words = match (tap.drill_in_crib, &tap.best_drill, &tap.nearest_in_crib) {
            (None, ..) => return,
            (Some(true), Some(rather), _) => {
                let inside = match tap.drill_within_limits {
                    Some(true) => " inside the limits",
                    _ => "",
                };
                format!("from the crib, its nearest{inside}; rather {rather}")
            }
            (Some(true), None, _) => "from the crib".to_owned(),
            (Some(false), _, Some(near)) => {
                format!("not in the crib, whose nearest, {near}, is not as good")
            }
            (Some(false), _, None) => "no drill of the crib leaves a thread".to_owned(),
        };
        wrapped(out, "  ", &words);
    }

    /// What to bore to, and the drill before it.
    fn bore_lines(&self, out: &mut String, bore: &BoreFigures) {
        self.aim_line(out, "BORE", "tap", bore.aim_mm.0, Rounding::Nearest);
        if let Some(drill) = &bore.first_drill {
            let unit = self.units().into_iter().find(|unit| !drill.name.ends_with(unit.symbol()));
            let size = unit.map_or(String::new(), |unit| Self::size(drill.mm.0, unit));
            let _ = writeln!(
                out,
                "  first drill   {:<14}{size:<14}then bore or ream to size",
                drill.name
            );
        }
    }

    fn side(&self, out: &mut String, name: &str, side: &SideFigures) {
        let mut lead = format!("{name} {}", side.class).trim_end().to_owned();
        for (diameter, min, max) in [
            ("major", side.major_min_mm, side.major_max_mm),
            ("pitch", side.pitch_min_mm, side.pitch_max_mm),
            ("minor", side.minor_min_mm, side.minor_max_mm),
        ] {
            let Some([one, other]) = self.spread(min, max) else { continue };
            let _ = writeln!(out, "  {lead:<14}{diameter:<7}{one:<26}{other}");
            lead.clear();
        }
    }

    /// Limits in both units; `and up`, `at most` where one end is open.
    pub(super) fn spread(&self, min: Option<Mm>, max: Option<Mm>) -> Option<[String; 2]> {
        let units = self.units();
        Some(match (min, max) {
            (Some(min), Some(max)) => {
                let limits = Limits::new(min.0, max.0).ok()?;
                units.map(|unit| Self::range(limits, unit))
            }
            (Some(min), None) => {
                units.map(|unit| format!("{} and up", Self::target(min.0, unit, Rounding::Up)))
            }
            (None, Some(max)) => {
                units.map(|unit| format!("at most {}", Self::target(max.0, unit, Rounding::Down)))
            }
            (None, None) => return None,
        })
    }

    /// What was taken for granted, and what else to know.
    pub(super) fn notes(out: &mut String, name: &ThreadName, notes: &[String]) {
        if !name.assumed.is_empty() {
            wrapped(out, "  ", &name.assumed.join("; "));
        }
        for note in notes {
            wrapped(out, "  ", note);
        }
    }

    pub(crate) fn tap(&self, out: &mut String, tap: &TapAnswer) {
        self.thread_name(out, &tap.name);
        let [first, second] = self.units();
        if let Some(form) = tap.form_tap.as_ref().filter(|_| tap.forms) {
            let name = self.style(Style::Strong, &format!("{:<14}", form.drill.name));
            let hole = Self::target(form.hole_mm.0, first, Rounding::Nearest);
            let _ = writeln!(
                out,
                "DRILL form    {name}{:.0} % of thread; the hole by rule is {hole}",
                form.percent
            );
            let _ = writeln!(out, "  for a tap that cuts:");
        }
        if let Some(drill) = &tap.first {
            self.drill_line(out, drill);
        }
        if let Some(bore) = &tap.bore {
            self.bore_lines(out, bore);
        }
        if let Some([one, other]) = self.spread(tap.minor_min_mm, tap.minor_max_mm) {
            let _ = writeln!(
                out,
                "  {:<14}{:<7}{one:<26}{other}",
                format!("nut {}", tap.class).trim_end(),
                "minor"
            );
        }
        for (count, other) in tap.alternatives.iter().enumerate() {
            let lead = if count == 0 { "or" } else { "" };
            let outside = match (other.drill_within_limits, other.within_limits) {
                (Some(false), _) => "  outside",
                (_, Some(false)) => "  outside as cut",
                _ => "",
            };
            let _ = writeln!(
                out,
                "  {lead:<14}{:<12}{:<14}{:<14}{:.0} %{outside}",
                other.drill.name,
                Self::size(other.drill.mm.0, first),
                Self::size(other.drill.mm.0, second),
                other.percent
            );
        }
        if let Some(advised) = &tap.advised {
            let _ = writeln!(
                out,
                "  advised       {:.0} to {:.0} % of thread: {}",
                advised.min_percent, advised.max_percent, advised.of
            );
            let leaves = match (&tap.first, &tap.bore) {
                (Some(drill), None) if !tap.in_hand => Some(drill.percent),
                (_, bore) => bore.as_ref().map(|bore| bore.percent),
            };
            if let Some((percent, kept)) = leaves.zip(tap.limits_keep)
                && !(advised.min_percent..=advised.max_percent).contains(&percent.round())
            {
                let (least, most) = (kept.min_percent, kept.max_percent);
                let keeps = if least > advised.max_percent && percent > least {
                    format!("asks for more: its limits keep {least:.0} to {most:.0} %")
                } else {
                    format!("keeps {least:.0} to {most:.0} %; drills commonly cut over their size")
                };
                let _ = writeln!(out, "  the class     {keeps}");
            }
        }
        if let Some(form) = tap.form_tap.as_ref().filter(|_| !tap.forms) {
            let hole = Self::target(form.hole_mm.0, first, Rounding::Nearest);
            let _ = writeln!(
                out,
                "  forming tap   drill {}, the hole by rule is {hole}",
                form.drill.name
            );
        }
        if let Some(engage) = tap.engage_mm {
            let near = |size: Length| short(size, first);
            let blind = tap.blind_drill_mm.map_or(String::new(), |drill| {
                format!("; in a blind hole drill {} deep for that", near(drill.0))
            });
            let _ = writeln!(out, "  engage        about {}{blind}", near(engage.0));
        }
        Self::notes(out, &tap.name, &tap.notes);
        Self::cautions(out, &tap.cautions);
    }

    pub(crate) fn clearance_holes(&self, out: &mut String, answer: &ClearanceHoleAnswer) {
        self.thread_name(out, &answer.name);
        for hole in &answer.holes {
            let Some([one, other]) = self.spread(Some(hole.min_mm), Some(hole.max_mm)) else {
                continue;
            };
            let drill = hole.drill.as_ref().map_or(String::new(), |drill| format!("drill {drill}"));
            let line = format!("{:<9}{one:<26}{other:<24}{drill}", hole.series);
            let line = line.trim_end();
            match answer.asked {
                Some(asked) if asked == hole.series => {
                    let _ = writeln!(out, "HOLE  {}", self.style(Style::Strong, line));
                }
                Some(_) => {
                    let _ = writeln!(out, "  or  {line}");
                }
                None => {
                    let _ = writeln!(out, "  {line}");
                }
            }
        }
        let _ = writeln!(out, "  holes that the screw passes, {}", answer.source);
    }

    pub(crate) fn wires(&self, out: &mut String, wires: &WiresAnswer) {
        self.thread_name(out, &wires.name);
        let Ok(over) = Limits::new(wires.over_min_mm.0, wires.over_max_mm.0) else { return };
        let units = self.units();
        let [one, other] = units.map(|unit| Self::range(over, unit));
        let one = self.style(Style::Strong, &format!("{one:<26}"));
        let _ = writeln!(out, "MIC   over wires  {one}{other}");
        self.wires_used(out, wires);
    }

    fn wires_used(&self, out: &mut String, wires: &WiresAnswer) {
        let units = self.units();
        let exact =
            |size: Length| units.map(|unit| wire_size(size, unit, Rounding::Nearest)).join("   ");
        let _ = writeln!(out, "  wire          {}", exact(wires.wire_mm.0));
        if wires.wire_mm.0 != wires.best_wire_mm.0 {
            let _ = writeln!(out, "  best wire     {}", exact(wires.best_wire_mm.0));
        }
        let least = wire_size(wires.wire_min_mm.0, units[0], Rounding::Up);
        let most = wire_size(wires.wire_max_mm.0, units[0], Rounding::Down);
        let _ = writeln!(out, "  usable        {least} to {most}");
        if let Some([one, other]) = self.spread(Some(wires.pitch_min_mm), Some(wires.pitch_max_mm))
        {
            let _ = writeln!(
                out,
                "  {:<14}{:<7}{one:<26}{other}",
                format!("screw {}", wires.class),
                "pitch"
            );
        }
        Self::notes(out, &wires.name, &wires.notes);
    }

    pub(crate) fn over_wires(&self, out: &mut String, answer: &OverWiresAnswer) {
        let (style, word) = verdict_word(answer.verdict);
        let [first, second] = self.units();
        let _ = writeln!(
            out,
            "{}   pitch diameter {}   {}",
            self.style(style, word),
            Self::size(answer.pitch_diameter_mm.0, first),
            Self::size(answer.pitch_diameter_mm.0, second)
        );
        if answer.verdict == Verdict::Over
            && let Ok(past) = answer.wires.pitch_min_mm.0.checked_sub(answer.pitch_diameter_mm.0)
        {
            self.past_the_limit(out, past);
        }
        if let Some(feed) = &answer.feed {
            let lead = match (feed.compound_mm, feed.compound_deg) {
                (Some(compound), Some(angle)) => format!(
                    "{} along the compound at {angle} degrees ({} square in)",
                    self.one_difference(compound.0),
                    self.one_difference(feed.radial_mm.0)
                ),
                _ => format!("{} on the dial, straight in", self.one_difference(feed.dial_mm.0)),
            };
            let _ = writeln!(out, "FEED  {lead}");
            let _ = writeln!(
                out,
                "  the pitch diameter has {} to lose to the middle",
                self.difference(answer.to_go_mm.0)
            );
            if let Some(angle) = feed.compound_deg {
                let bed = 90.0 - angle;
                let _ = writeln!(out, "  degrees from the cross slide: {bed} from the bed");
            }
        }
        let wires = &answer.wires;
        self.thread_name(out, &wires.name);
        if let Some([one, other]) = self.spread(Some(wires.over_min_mm), Some(wires.over_max_mm)) {
            let _ = writeln!(out, "  {:<14}{:<7}{one:<26}{other}", "over wires", "");
        }
        self.wires_used(out, wires);
    }
}

/// A wire's size: 0.0001 mm, 0.00001 in.
fn wire_size(size: Length, unit: Unit, toward: Rounding) -> String {
    let usual = Text::usual(unit);
    let decimals = Decimals { places: usual.places + 1, ..usual };
    format!("{} {}", size.shown(decimals, toward), unit.symbol())
}

/// A depth, no finer than it is drilled: 0.1 mm, 0.01 in.
fn short(size: Length, unit: Unit) -> String {
    let decimals = Decimals { unit, places: if unit == Unit::Inch { 2 } else { 1 } };
    format!("{} {}", size.shown(decimals, Rounding::Up), unit.symbol())
}

/// A figure without needless zeros.
fn trimmed(value: f64, places: usize) -> String {
    let text = format!("{value:.places$}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}
