//! A part drawn to scale: a stepped shaft from its diameters and lengths, or the
//! section of each bore. Where a length is not given the part is drawn plain, and
//! that is said.

use fits_core::{
    Length,
    job::whole::{Job, NominalSize, PartFeature, SizeKind},
    standards::iso286::Feature as Surface,
};

use crate::render::{
    draw::{Anchor, Area, Drawing, EDGE, Ink, LINE, Lean, Stroke, WIDTH},
    text::Text,
};

/// One step of a shaft, or one bore.
struct Step<'a> {
    feature: &'a PartFeature,
    /// Its number on the page.
    number: usize,
    across: Length,
    long: Option<Length>,
}

/// How tall the largest diameter is drawn at most.
const TALLEST: f64 = 96.0;
/// A shorter step is not seen.
const NARROWEST: f64 = 10.0;
/// How long a step is drawn whose length is not given.
const PLAIN: f64 = 96.0;

/// The picture of a part; nothing where it has no diameter.
pub(super) fn part(job: &Job, part: usize, text: &Text) -> Option<Drawing> {
    let mut shafts = Vec::new();
    let mut holes = Vec::new();
    let features = job.features_of(part).filter(|(at, _)| !job.is_split(*at));
    for (number, (_, feature)) in features.enumerate() {
        let Some(size) = feature.nominal.as_ref().and_then(NominalSize::size) else {
            continue;
        };
        let step =
            Step { feature, number: number + 1, across: size, long: length_of(job, part, feature) };
        match feature.side.surface() {
            Some(Surface::Shaft) => shafts.push(step),
            Some(Surface::Hole) => holes.push(step),
            None => {}
        }
    }
    // A sleeve's bore is as long as its outside.
    if let ([outside], [bore]) = (shafts.as_slice(), holes.as_mut_slice()) {
        bore.long = bore.long.or(outside.long);
    }
    let name = job.parts.get(part).map_or("part", |part| part.name.as_str());
    let mut drawing = Drawing::untitled(&format!("{name}, its picture"));
    let is_sleeve = matches!((shafts.as_slice(), holes.as_slice()), ([outside], [bore]) if bore.across < outside.across);
    match (shafts.as_slice(), holes.as_slice()) {
        ([], []) => return None,
        ([outside], [_]) if is_sleeve => sections(&mut drawing, text, &holes, Some(outside)),
        (_, []) => shaft(&mut drawing, text, &shafts),
        ([], _) => sections(&mut drawing, text, &holes, None),
        _ => {
            shaft(&mut drawing, text, &shafts);
            drawing.gap(10.0);
            sections(&mut drawing, text, &holes, None);
        }
    }
    Some(drawing)
}

/// The length of a step: a length of the same part that is named after it, or the
/// only one in its line where it is the line's only diameter.
pub(super) fn length_of(job: &Job, part: usize, feature: &PartFeature) -> Option<Length> {
    let lengths = || {
        job.features_of(part).filter(|(_, other)| other.side == SizeKind::Length).filter_map(
            |(_, other)| Some((other, other.nominal.as_ref().and_then(NominalSize::size)?)),
        )
    };
    let named = lengths().find(|(other, _)| {
        let rest = other.name.strip_prefix(feature.name.as_str()).map(str::trim);
        rest.is_some_and(|rest| {
            matches!(rest, "length" | "long" | "depth" | "deep" | "width" | "wide")
        })
    });
    if let Some((_, length)) = named {
        return Some(length);
    }
    let here = |other: &PartFeature| other.line == feature.line;
    let diameters = job
        .features_of(part)
        .filter(|(_, other)| other.side.surface().is_some() && here(other))
        .count();
    let mut in_line = lengths().filter(|(other, _)| here(other));
    match (in_line.next(), in_line.next()) {
        (Some((_, length)), None) if diameters == 1 => Some(length),
        // A bush and its bore are one length.
        _ => {
            let mut whole = lengths().filter(|(other, _)| other.name == "length");
            let count = job.features_of(part).filter(|(_, it)| it.side.surface().is_some()).count();
            whole.next().filter(|_| whole.next().is_none() && count <= 2).map(|(_, length)| length)
        }
    }
}

/// Pixels a millimetre, and the width of each step.
fn scaled(steps: &[Step<'_>], tallest: f64) -> (f64, Vec<f64>) {
    let most = steps.iter().map(|step| step.across.millimetres()).fold(0.1, f64::max);
    let long: Option<f64> = steps.iter().map(|step| Some(step.long?.millimetres())).sum();
    let room = WIDTH - 2.0 * EDGE - 4.0;
    if let Some(long) = long.filter(|long| *long > 0.0) {
        let scale = (tallest / most).min(room / long);
        let wide = |step: &Step<'_>| step.long.map_or(0.0, |it| it.millimetres() * scale);
        (scale, steps.iter().map(wide).collect())
    } else {
        let count = f64::from(u32::try_from(steps.len()).unwrap_or(1).max(1));
        (tallest / most, vec![PLAIN.min(room / count); steps.len()])
    }
}

fn shaft(drawing: &mut Drawing, text: &Text, steps: &[Step<'_>]) {
    let (scale, wide) = scaled(steps, TALLEST);
    let most = steps.iter().map(|step| step.across.millimetres() * scale).fold(0.0, f64::max);
    drawing.gap(LINE + 6.0);
    let middle = drawing.below + most / 2.0;
    let whole: f64 = wide.iter().sum();
    let left = (WIDTH - whole) / 2.0;
    let mut x = left;
    let foot = middle + most / 2.0;
    for (step, wide) in steps.iter().zip(&wide) {
        let half = step.across.millimetres() * scale / 2.0;
        let area = Area { left: x, right: x + wide, top: middle - half, bottom: middle + half };
        drawing.metal(area);
        label(drawing, step, (x + wide / 2.0, middle - most / 2.0 - 8.0), middle - half);
        x += wide;
    }
    drawing.line((left - 8.0, middle), (x + 8.0, middle), Stroke::Chain, Ink::Faint);
    drawing.gap(4.0);
    lengths(drawing, steps, &wide, left, foot);
    legend(drawing, text, steps, &wide);
}

/// The number of a step above it, and a line down to it.
fn label(drawing: &mut Drawing, step: &Step<'_>, (x, y): (f64, f64), to: f64) {
    if to > y + 6.0 {
        drawing.line((x, y + 4.0), (x, to), Stroke::Thin, Ink::Faint);
    }
    drawing.words(x, y, Anchor::Middle, Ink::Plain, &step.number.to_string());
}

/// How long each step is, under it.
fn lengths(drawing: &mut Drawing, steps: &[Step<'_>], wide: &[f64], left: f64, foot: f64) {
    if steps.iter().any(|step| step.long.is_none()) {
        return;
    }
    let y = foot + 14.0;
    let mut x = left;
    for wide in wide {
        for end in [x, x + wide] {
            drawing.line((end, foot + 3.0), (end, y + 5.0), Stroke::Thin, Ink::Faint);
        }
        drawing.line((x, y), (x + wide, y), Stroke::Thin, Ink::Faint);
        x += wide;
    }
}

/// A step in words: the picture has only its number.
fn said(drawing: &mut Drawing, text: &Text, step: &Step<'_>) {
    let [one, other] = text.units();
    let units = if step.feature.unit == one { [one, other] } else { [other, one] };
    let shown = |size: Length| {
        let [one, other] = units.map(|unit| Text::size(size, unit));
        format!("{one} ({other})")
    };
    let long = step.long.map_or(String::new(), |long| format!(" \u{d7} {}", shown(long)));
    let name = &step.feature.name;
    drawing.gap(2.0);
    let words = format!("{} {name}: \u{d8} {}{long}", step.number, shown(step.across));
    drawing.paragraph(EDGE, WIDTH - 2.0 * EDGE, &words, false);
}

/// Every step in words, and whether they are to scale.
fn legend(drawing: &mut Drawing, text: &Text, steps: &[Step<'_>], wide: &[f64]) {
    for step in steps {
        said(drawing, text, step);
    }
    let note = if steps.iter().any(|step| step.long.is_none()) {
        "Diameters to scale; lengths not: not all are given."
    } else if wide.iter().any(|wide| *wide < NARROWEST) {
        "To scale; the narrowest steps hardly show."
    } else {
        "To scale."
    };
    drawing.gap(2.0);
    drawing.paragraph(EDGE, WIDTH - 2.0 * EDGE, note, false);
}

/// The section of each bore, side by side; of a sleeve with its outside.
fn sections(drawing: &mut Drawing, text: &Text, holes: &[Step<'_>], outside: Option<&Step<'_>>) {
    /// A wall where none is given, as a part of the bore.
    const WALL: f64 = 0.25;
    let outer = |hole: &Step<'_>| {
        let bore = hole.across.millimetres();
        outside.map_or(bore * (1.0 + 2.0 * WALL), |outside| outside.across.millimetres())
    };
    let most = holes.iter().map(outer).fold(0.1, f64::max);
    let (_, mut wide) = scaled(holes, TALLEST);
    let mut scale = TALLEST / most;
    let gap = 24.0;
    let gaps = gap * f64::from(u32::try_from(holes.len().saturating_sub(1)).unwrap_or(0));
    let room = WIDTH - 2.0 * EDGE - gaps;
    if let Some(long) = holes.iter().map(|hole| Some(hole.long?.millimetres())).sum::<Option<f64>>()
    {
        scale = scale.min(room / long.max(0.1));
        wide = holes.iter().filter_map(|hole| Some(hole.long?.millimetres() * scale)).collect();
    } else {
        let whole: f64 = wide.iter().sum();
        for wide in &mut wide {
            *wide *= (room / whole).min(1.0);
        }
    }
    drawing.gap(LINE + 6.0);
    let middle = drawing.below + most * scale / 2.0;
    let whole: f64 = wide.iter().sum::<f64>() + gaps;
    let mut x = (WIDTH - whole) / 2.0;
    for (hole, wide) in holes.iter().zip(&wide) {
        let (bore, out) = (hole.across.millimetres() * scale / 2.0, outer(hole) * scale / 2.0);
        for (top, bottom) in [(middle - out, middle - bore), (middle + bore, middle + out)] {
            let area = Area { left: x, right: x + wide, top, bottom };
            drawing.zone(area, Lean::Up, Ink::Plain);
        }
        for end in [x, x + wide] {
            drawing.line((end, middle - bore), (end, middle + bore), Stroke::Thin, Ink::Plain);
        }
        drawing.line((x - 6.0, middle), (x + wide + 6.0, middle), Stroke::Chain, Ink::Faint);
        let above = (x + wide / 2.0, middle - most * scale / 2.0 - 8.0);
        match outside {
            // The bore's own number stands in it.
            Some(outside) => {
                label(drawing, outside, above, middle - out);
                let number = hole.number.to_string();
                drawing.words(x + wide / 2.0, middle - 6.0, Anchor::Middle, Ink::Plain, &number);
            }
            None => label(drawing, hole, above, middle - out),
        }
        x += wide + gap;
    }
    drawing.gap(6.0);
    if let Some(outside) = outside {
        said(drawing, text, outside);
    }
    legend(drawing, text, holes, &wide);
    if outside.is_none() {
        let words = if holes.len() > 1 {
            "Each bore by itself; place and walls are not given."
        } else {
            "The wall is not given."
        };
        drawing.paragraph(EDGE, WIDTH - 2.0 * EDGE, words, false);
    }
}
