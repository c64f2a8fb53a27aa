//! A stack in words: the play first, then the part to make, then the links.

use std::fmt::Write as _;

use fits_core::{
    Length, Limits,
    size::{Decimals, Rounding, Unit},
};

use crate::{
    answer::{Ends, LinkFigures, Mm, StackAnswer},
    render::text::{Style, Text, lines::wrapped},
};

/// More links than this are shown by the ones that matter most.
const LINKS_SHOWN: usize = 6;

impl Text {
    pub(crate) fn stack(&self, out: &mut String, answer: &StackAnswer) {
        let play = |ends: Ends| {
            let [one, other] = self
                .units()
                .map(|unit| format!("{:<23} ", play_range(ends.min_mm, ends.max_mm, unit)));
            (one, other)
        };
        self.make(out, answer);
        let (one, other) = play(answer.worst);
        let _ = writeln!(
            out,
            "PLAY  worst case       {}{}",
            self.style(Style::Strong, &one),
            other.trim_end()
        );
        let mut line = |name: &str, ends: Ends, note: &str| {
            let (one, other) = play(ends);
            let _ = writeln!(out, "{}", format!("  {name:<21}{one}{other}{note}").trim_end());
        };
        line("root sum square", answer.rss, "");
        let found = &answer.simulated;
        let at = |share: f64| {
            found
                .quantiles
                .iter()
                .find(|found| found.share >= share)
                .map_or(found.max_mm, |found| found.play_mm)
        };
        line("997 of 1000 stacks", Ends { min_mm: at(0.001), max_mm: at(0.998) }, "");
        let [first, second] = self.units();
        let _ = writeln!(
            out,
            "  {:<21}{:<24}{}",
            "at the targets",
            Self::size(answer.aim_mm.0, first),
            Self::size(answer.aim_mm.0, second)
        );
        let mut chances = Vec::new();
        if answer.worst.min_mm.0.is_negative() {
            chances.push(format!("binds {}", percent(found.probability_below_zero)));
        } else {
            chances.push("never binds".to_owned());
        }
        if let Some(inside) = found.probability_inside {
            chances.push(format!("as wanted {}", percent(inside)));
        }
        let _ = writeln!(
            out,
            "  {} ({} simulated, seed {})",
            chances.join(", "),
            grouped(found.runs),
            found.seed
        );
        self.links(out, answer);
        let before = out.len();
        histogram(out, answer, first);
        if out.lines().count() > crate::render::text::LINES {
            out.truncate(before);
        }
    }

    /// The part to make last.
    fn make(&self, out: &mut String, answer: &StackAnswer) {
        let (Some(part), Some(wanted)) = (&answer.last_part, &answer.wanted) else { return };
        let [first, second] = self.units();
        let name = answer.links.get(part.link).map_or(String::new(), |link| named(link, part.link));
        let aim = format!("{:<23} ", Self::target(part.aim_mm.0, first, Rounding::Nearest));
        let shown: String = name.chars().take(16).collect();
        let _ = writeln!(
            out,
            "CUT   {shown:<17}{}{}",
            self.style(Style::Strong, &aim),
            Self::target(part.aim_mm.0, second, Rounding::Nearest)
        );
        let want = format!("play {}", play_range(wanted.min_mm, wanted.max_mm, first));
        let limits = |ends: Ends| Limits::new(ends.min_mm.0, ends.max_mm.0).ok();
        if let Some(always) = part.always.and_then(limits) {
            made(out, "always right", [first, second].map(|unit| to_make(always, unit)));
        } else {
            wrapped(
                out,
                "  ",
                &format!(
                    "no size gives {want} whatever the other parts measure: measure them, and put what they measure in their place"
                ),
            );
        }
        if part.as_given_will_do == Some(true) {
            let _ = writeln!(out, "  {:<21}any size inside its own limits will do", "");
        }
        if let Some(usually) = part.usually.and_then(limits)
            && part.always != part.usually
        {
            made(out, "by root sum square", [first, second].map(|unit| to_make(usually, unit)));
        }
        let is_far =
            answer.worst.max_mm.0 < wanted.min_mm.0 || answer.worst.min_mm.0 > wanted.max_mm.0;
        if part.as_given_will_do == Some(false) && is_far {
            let _ = writeln!(out, "  {:<21}far from it as given: {want} is wanted", "");
        }
    }

    fn links(&self, out: &mut String, answer: &StackAnswer) {
        let [first, _] = self.units();
        let _ = writeln!(
            out,
            "{}",
            self.style(
                Style::Faint,
                "  link                 limits                 spread     of worst of variance"
            )
        );
        let mut order: Vec<(usize, &LinkFigures)> = answer.links.iter().enumerate().collect();
        let hidden = order.len().saturating_sub(LINKS_SHOWN);
        if hidden > 0 {
            order.sort_by(|(_, a), (_, b)| b.share_of_variance.total_cmp(&a.share_of_variance));
            order.truncate(LINKS_SHOWN);
            order.sort_by_key(|(at, _)| *at);
        }
        for (at, link) in order {
            let count = if link.count == 1 { String::new() } else { format!("{}x ", link.count) };
            let lead: String =
                format!("{} {count}{}", link.sign, named(link, at)).chars().take(20).collect();
            let size = match Limits::new(link.lower_mm.0, link.upper_mm.0) {
                Ok(limits) if limits.tolerance() != Length::ZERO => Self::range(limits, first),
                _ => Self::size(link.lower_mm.0, first),
            };
            let mark =
                if answer.matters_most == Some(at) && answer.links.len() > 1 { " <" } else { "" };
            // What a long size takes, the columns after it give.
            let over = size.chars().count().saturating_sub(22);
            let spread = 11_usize.saturating_sub(over).max(10);
            let share = 6_usize.saturating_sub(over.saturating_sub(11 - spread)).max(3);
            let _ = writeln!(
                out,
                "  {lead:<20} {size:<22} {:<spread$}{:>share$.0} % {:>9.0} %{mark}",
                link.spread,
                link.share_of_worst * 100.0,
                link.share_of_variance * 100.0
            );
        }
        if hidden > 0 {
            let _ = writeln!(out, "  and {hidden} more that matter less");
        }
    }
}

/// What to make a part to: limits, or one size where there is no room.
fn to_make(limits: Limits, unit: Unit) -> String {
    if limits.tolerance() == Length::ZERO {
        Text::size(limits.lower(), unit)
    } else {
        Text::range(limits, unit)
    }
}

fn made(out: &mut String, name: &str, [one, other]: [String; 2]) {
    let _ = writeln!(out, "  {name:<20} {one:<23} {other}");
}

/// The link's name, or its place in the row.
fn named(link: &LinkFigures, at: usize) -> String {
    link.name.clone().unwrap_or_else(|| format!("link {}", at + 1))
}

/// A range of play to the nearest place shown.
fn play_range(least: Mm, most: Mm, unit: Unit) -> String {
    let places = if unit == Unit::Inch { 4 } else { 3 };
    let shown = |length: Length| length.shown(Decimals { unit, places }, Rounding::Nearest);
    format!("{} to {} {}", shown(least.0), shown(most.0), unit.symbol())
}

/// A chance in percent: 0 and 100 only where no run says otherwise.
fn percent(chance: f64) -> String {
    match chance {
        0.0 => "in no run".to_owned(),
        1.0 => "in every run".to_owned(),
        few if few < 0.001 => "under 0.1 %".to_owned(),
        most if most > 0.999 => "over 99.9 %".to_owned(),
        some => format!("{:.1} %", some * 100.0),
    }
}

/// A number in groups of three.
fn grouped(number: u64) -> String {
    let digits = number.to_string();
    let mut out = String::new();
    for (at, digit) in digits.chars().enumerate() {
        if at > 0 && (digits.len() - at).is_multiple_of(3) {
            out.push(' ');
        }
        out.push(digit);
    }
    out
}

/// A small picture of where the play falls.
fn histogram(out: &mut String, answer: &StackAnswer, unit: Unit) {
    const ROWS: u64 = 4;
    let bars = &answer.simulated.histogram;
    let Some(most) = bars.iter().max().copied().filter(|most| *most > 0) else { return };
    let (least, greatest) = (answer.simulated.min_mm.0, answer.simulated.max_mm.0);
    if least == greatest {
        return;
    }
    for row in (1..=ROWS).rev() {
        // Half a row and more is drawn as one.
        let drawn: String = bars
            .iter()
            .map(|count| if count * ROWS * 2 >= most * (2 * row - 1) { '#' } else { ' ' })
            .collect();
        let _ = writeln!(out, "{}", format!("  {:<21}{drawn}", "").trim_end());
    }
    let places = if unit == Unit::Inch { 4 } else { 3 };
    let decimals = Decimals { unit, places };
    let (low, high) = (
        least.shown(decimals, Rounding::Nearest).to_string(),
        format!("{} {}", greatest.shown(decimals, Rounding::Nearest), unit.symbol()),
    );
    let gap = bars.len().saturating_sub(low.len()).max(high.len() + 1);
    let _ = writeln!(out, "  {:<21}{low}{high:>gap$}", "");
}
