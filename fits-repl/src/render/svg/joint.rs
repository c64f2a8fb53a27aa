//! A joint: its half section, and the stresses through the walls beneath it.

use fits_core::size::{Decimals, Rounding, Unit};

use crate::{
    answer::{AssemblyAnswer, BodyFigures, WallPoint},
    query::Units,
    render::{
        draw::{Anchor, Area, Drawing, EDGE, Ink, LINE, Stroke, WIDTH},
        text::Text,
    },
};

const LEFT: f64 = 125.0;
const RIGHT: f64 = WIDTH - 30.0;
/// How tall the section and the curves are.
const SECTION: f64 = 90.0;
const CURVES: f64 = 230.0;

/// One curve: name, ink, dashes, and which stress it draws.
type Curve = (&'static str, Ink, Stroke, fn(&WallPoint) -> f64);

const DRAWN: [Curve; 3] = [
    ("hoop", Ink::Bad, Stroke::Heavy, |point| point.hoop_mpa),
    ("radial", Ink::Hole, Stroke::Dash, |point| point.radial_mpa),
    ("von Mises", Ink::Plain, Stroke::Dots, |point| point.von_mises_mpa),
];

pub(super) fn joint(answer: &AssemblyAnswer, text: &Text) -> Drawing {
    let units = text.settings.units;
    let radius = |part: &BodyFigures| part.outside_mm.0.millimetres() / 2.0;
    let most = answer.parts.last().map_or(1.0, radius);
    let across = |mm: f64| LEFT + (RIGHT - LEFT) * mm / most;
    let points = || answer.parts.iter().flat_map(|part| &part.wall);
    let stresses = || DRAWN.iter().flat_map(|curve| points().map(curve.3)).chain([0.0]);
    let strengths = answer.parts.iter().filter_map(|part| part.strength_mpa);
    let high = stresses().chain(strengths).fold(1.0, f64::max) * 1.05;
    let low = stresses().fold(0.0, f64::min) * 1.05;
    let mut drawing = Drawing::new(&title(answer, units));
    let made: Vec<String> =
        answer.parts.iter().map(|part| format!("{}: {}", part.part, part.material)).collect();
    drawing.paragraph(EDGE, WIDTH - 2.0 * EDGE, &made.join("; "), false);
    drawing.gap(LINE);
    let (top, bottom) = (drawing.below, drawing.below + SECTION);
    for part in &answer.parts {
        let (left, right) = (across(part.bore_mm.0.millimetres() / 2.0), across(radius(part)));
        drawing.metal(Area { left, right, top, bottom });
    }
    drawing.line((LEFT, top - 8.0), (LEFT, bottom + 8.0), Stroke::Chain, Ink::Plain);
    drawing.words(LEFT - 8.0, bottom, Anchor::End, Ink::Plain, "axis");
    // Names and sizes of thin walls are staggered.
    for part in &answer.parts {
        let from = across(part.bore_mm.0.millimetres() / 2.0);
        let middle = f64::midpoint(from, across(radius(part)));
        drawing.free_words(middle, top + LINE, Anchor::Middle, Ink::Plain, part.part);
    }
    for part in &answer.parts {
        let words = size(part, units);
        drawing.free_words(across(radius(part)), bottom + LINE, Anchor::End, Ink::Plain, &words);
    }
    drawing.gap(LINE);
    let foot = drawing.below + CURVES;
    let up = |mpa: f64| foot - CURVES * (mpa - low) / (high - low);
    for mpa in [high / 1.05, 0.0, low / 1.05] {
        let y = up(mpa);
        drawing.line((LEFT, y), (RIGHT, y), Stroke::Thin, Ink::Faint);
        drawing.free_words(LEFT - 8.0, y + 6.0, Anchor::End, Ink::Plain, &stress(mpa, units));
    }
    // The strength of each part, over its own wall.
    for part in &answer.parts {
        if let Some(strength) = part.strength_mpa {
            let y = up(strength);
            let (left, right) = (across(part.bore_mm.0.millimetres() / 2.0), across(radius(part)));
            drawing.line((left, y), (right, y), Stroke::Chain, Ink::Good);
        }
    }
    for (_, ink, stroke, of) in DRAWN {
        for part in &answer.parts {
            let at = |point: &WallPoint| across(point.at_mm.0.millimetres() / 2.0);
            let mut curve: Vec<_> = part.wall.iter().map(|it| (at(it), up(of(it)))).collect();
            // A solid shaft has one stress from the centre to the outside.
            if let ([only], true) = (part.wall.as_slice(), part.bore_growth_mm.is_none()) {
                curve.push((across(radius(part)), up(of(only))));
            }
            drawing.curve(&curve, stroke, ink);
        }
    }
    drawing.gap(LINE);
    let y = drawing.below;
    let legend = DRAWN.iter().map(|(name, ink, stroke, _)| (*name, *ink, *stroke));
    let mut x = EDGE;
    for (name, ink, stroke) in legend.chain([("strength", Ink::Good, Stroke::Chain)]) {
        drawing.line((x, y - 6.0), (x + 50.0, y - 6.0), stroke, ink);
        drawing.words(x + 58.0, y, Anchor::Start, Ink::Plain, name);
        x += 166.0;
    }
    drawing
}

fn title(answer: &AssemblyAnswer, units: Units) -> String {
    let pressure = stress(answer.pressure_mpa.max, units);
    let yields = if answer.yields { ": yields" } else { "" };
    format!("{} at its tightest, {pressure} at the joint{yields}", answer.class)
}

fn stress(mpa: f64, units: Units) -> String {
    match units {
        Units::Millimetres => format!("{:.0} MPa", mpa + 0.0),
        Units::Inches => format!("{:.1} ksi", mpa / 6.894_757_293 + 0.0),
    }
}

fn size(part: &BodyFigures, units: Units) -> String {
    let unit = units.unit();
    let places = if unit == Unit::Inch { 3 } else { 2 };
    let shown = part.outside_mm.0.shown(Decimals { unit, places }, Rounding::Nearest);
    format!("{shown} {}", unit.symbol())
}
