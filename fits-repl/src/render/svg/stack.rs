//! Parts end to end, and the play that they leave.

use fits_core::Length;

use crate::{
    answer::{Ends, StackAnswer},
    render::{
        draw::{Anchor, Area, Drawing, EDGE, Ink, LINE, Lean, Scale, Stroke, WIDTH},
        svg::zones::whisker,
        text::Text,
    },
};

const PLOT: (f64, f64) = (EDGE + 8.0, WIDTH - EDGE - 8.0);
/// How tall a part is drawn.
const TALL: f64 = 20.0;

pub(super) fn stack(answer: &StackAnswer, text: &Text) -> Option<Drawing> {
    let mut drawing = Drawing::new(&format!("play: {}", range(text, answer.worst)));
    chain(&mut drawing, answer, text)?;
    play(&mut drawing, answer, text)?;
    Some(drawing)
}

fn range(text: &Text, ends: Ends) -> String {
    text.units()
        .map(|unit| {
            let decimals = Text::usual(unit);
            let shown = |length: Length| length.shown(decimals, fits_core::size::Rounding::Nearest);
            format!("{} to {} {}", shown(ends.min_mm.0), shown(ends.max_mm.0), unit.symbol())
        })
        .join("; ")
}

/// Every part from where the one before it ended, forward or back.
fn chain(drawing: &mut Drawing, answer: &StackAnswer, text: &Text) -> Option<()> {
    let mut ends = vec![Length::ZERO];
    for link in &answer.links {
        let all = link.aim_mm.0.checked_mul(i64::from(link.count)).ok()?;
        let all = if link.sign == "-" { all.checked_neg().ok()? } else { all };
        ends.push(ends.last()?.checked_add(all).ok()?);
    }
    let scale = Scale::of(ends.iter().copied(), std::iter::empty(), PLOT)?;
    for ((link, run), number) in answer.links.iter().zip(ends.windows(2)).zip(1..) {
        let [from, to] = run else { continue };
        let name = link.name.clone().unwrap_or_else(|| format!("link {number}"));
        let count = if link.count == 1 { String::new() } else { format!("{} x ", link.count) };
        let sizes = range(text, Ends { min_mm: link.lower_mm, max_mm: link.upper_mm });
        let most = if answer.matters_most == Some(number - 1) && answer.links.len() > 1 {
            "; matters most"
        } else {
            ""
        };
        drawing.gap(6.0);
        let words = format!("{} {count}{name}: {sizes}{most}", link.sign);
        drawing.paragraph(EDGE, WIDTH - 2.0 * EDGE, &words, false);
        let top = drawing.below + 4.0;
        let (from, to) = (scale.at(*from).0, scale.at(*to).0);
        let (lean, ink) =
            if link.sign == "-" { (Lean::Down, Ink::Shaft) } else { (Lean::Up, Ink::Hole) };
        let (left, right) = (from.min(to), from.max(to));
        drawing.zone(Area { left, right, top, bottom: top + TALL }, lean, ink);
    }
    Some(())
}

/// The play: the worst case, the root sum square, what was wanted, and where
/// stacks put together at random fell.
fn play(drawing: &mut Drawing, answer: &StackAnswer, text: &Text) -> Option<()> {
    let worst = answer.worst;
    let wanted = answer.wanted.into_iter().flat_map(|ends| [ends.min_mm.0, ends.max_mm.0]);
    let must = [worst.min_mm.0, worst.max_mm.0, answer.aim_mm.0];
    let scale = Scale::of(must.into_iter(), wanted.chain([Length::ZERO]), PLOT)?;
    drawing.gap(14.0);
    drawing.paragraph(EDGE, WIDTH - 2.0 * EDGE, "The play, on a scale of its own", true);
    let rows = [
        ("worst case", Some(worst), Ink::Plain),
        ("root sum square", Some(answer.rss), Ink::Plain),
        ("wanted", answer.wanted, Ink::Good),
    ];
    let from = drawing.below;
    for (name, ends, ink) in rows {
        let Some(ends) = ends else { continue };
        drawing.gap(4.0);
        let words = format!("{name}: {}", range(text, ends));
        drawing.paragraph(EDGE, WIDTH - 2.0 * EDGE, &words, false);
        let y = drawing.below + 8.0;
        let (left, right) = (scale.at(ends.min_mm.0).0, scale.at(ends.max_mm.0).0);
        whisker(drawing, (left, right), y, ink);
        drawing.gap(4.0);
    }
    bars(drawing, answer, &scale);
    let to = drawing.below;
    // Below 0 it binds.
    let marks = [
        ("no play", Length::ZERO, Stroke::Dash),
        ("at the targets", answer.aim_mm.0, Stroke::Thin),
    ];
    for (name, at, stroke) in marks {
        if let (x, None) = scale.at(at) {
            drawing.line((x, from + LINE), (x, to + 6.0), stroke, Ink::Faint);
            let [one, other] = text.units().map(|unit| Text::size(at, unit));
            let words =
                if at == Length::ZERO { name.to_owned() } else { format!("{name} {one}  {other}") };
            drawing.free_words(x, to + LINE, Anchor::Middle, Ink::Plain, &words);
        }
    }
    drawing.gap(6.0);
    let found = &answer.simulated;
    let words = format!("bars: {} stacks put together at random, seed {}", found.runs, found.seed);
    drawing.paragraph(EDGE, WIDTH - 2.0 * EDGE, &words, false);
    Some(())
}

fn bars(drawing: &mut Drawing, answer: &StackAnswer, scale: &Scale) {
    const TALLEST: f64 = 90.0;
    let found = &answer.simulated;
    let most = found.histogram.iter().max().copied().unwrap_or(0);
    let share = |count: u64, of: u64| {
        let parts = |number: u64| f64::from(u32::try_from(number).unwrap_or(u32::MAX));
        if of == 0 { 0.0 } else { parts(count) / parts(of) }
    };
    let (least, greatest) = (found.min_mm.0.millimetres(), found.max_mm.0.millimetres());
    let foot = drawing.below + TALLEST + 8.0;
    let steps = u64::try_from(found.histogram.len()).unwrap_or(0);
    for (at, count) in (0_u64..).zip(&found.histogram) {
        let edge = |step: u64| scale.across(least + (greatest - least) * share(step, steps));
        let (left, right) = (edge(at), edge(at + 1));
        if *count > 0 && right > left {
            let top = foot - TALLEST * share(*count, most);
            drawing.metal(Area { left, right, top, bottom: foot });
        }
    }
    drawing.gap(4.0);
}
