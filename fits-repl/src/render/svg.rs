//! A joint as an SVG picture: its half section, and the stresses through the
//! walls beneath it. One self-contained file.

use std::fmt::Write as _;

use fits_core::size::{Decimals, Rounding, Unit};

use crate::{
    answer::{Answer, AssemblyAnswer, BodyFigures, SettingsAnswer, WallPoint},
    query::Units,
};

const WIDTH: f64 = 640.0;
const LEFT: f64 = 70.0;
const RIGHT: f64 = 610.0;
/// The band of the section.
const SECTION: (f64, f64) = (60.0, 150.0);
/// The band of the curves.
const CURVES: (f64, f64) = (190.0, 400.0);

/// One curve: name, colour, dashes, and which stress it draws.
type Curve = (&'static str, &'static str, &'static str, fn(&WallPoint) -> f64);

const DRAWN: [Curve; 3] = [
    ("hoop", "#b03020", "", |point| point.hoop_mpa),
    ("radial", "#2050a0", "6 4", |point| point.radial_mpa),
    ("von Mises", "#202020", "2 3", |point| point.von_mises_mpa),
];

/// The picture of an answer, where it has one.
pub fn picture(answer: &Answer, settings: SettingsAnswer) -> Option<String> {
    match answer {
        Answer::Assembly(assembly) => Some(joint(assembly, settings.units)),
        _ => None,
    }
}

fn joint(answer: &AssemblyAnswer, units: Units) -> String {
    let radius = |part: &BodyFigures| part.outside_mm.0.millimetres() / 2.0;
    let most = answer.parts.last().map_or(1.0, radius);
    let across = |mm: f64| LEFT + (RIGHT - LEFT) * mm / most;
    let points = || answer.parts.iter().flat_map(|part| &part.wall);
    let stresses = || DRAWN.iter().flat_map(|curve| points().map(curve.3)).chain([0.0]);
    let strengths = answer.parts.iter().filter_map(|part| part.strength_mpa);
    let high = stresses().chain(strengths).fold(1.0, f64::max) * 1.05;
    let low = stresses().fold(0.0, f64::min) * 1.05;
    let up = |mpa: f64| CURVES.1 - (CURVES.1 - CURVES.0) * (mpa - low) / (high - low);
    let mut out = String::new();
    let _ = writeln!(
        out,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {WIDTH} 450\" font-family=\"sans-serif\" font-size=\"13\" role=\"img\">"
    );
    let _ = writeln!(out, "<title>Stress through a pressed joint</title>");
    let _ = writeln!(out, "<rect width=\"{WIDTH}\" height=\"450\" fill=\"white\"/>");
    text(&mut out, LEFT, 28.0, "start", &title(answer, units));
    let made: Vec<String> =
        answer.parts.iter().map(|part| format!("{}: {}", part.part, part.material)).collect();
    text(&mut out, LEFT, 48.0, "start", &made.join("; "));
    text(&mut out, LEFT - 6.0, SECTION.1, "end", "axis");
    let names = ["#d8dde6", "#eee6d0", "#e3ecdc", "#f0dede", "#e6e0f0", "#dfeeee", "#eeeeee"];
    for (part, fill) in answer.parts.iter().zip(names) {
        let (from, to) = (across(part.bore_mm.0.millimetres() / 2.0), across(radius(part)));
        let _ = writeln!(
            out,
            "<rect x=\"{from:.1}\" y=\"{:.1}\" width=\"{:.1}\" height=\"{:.1}\" fill=\"{fill}\" stroke=\"#404040\"/>",
            SECTION.0,
            to - from,
            SECTION.1 - SECTION.0
        );
        let middle = f64::midpoint(from, to);
        text(&mut out, middle, 109.0, "middle", part.part);
        text(&mut out, to, SECTION.1 + 18.0, "end", &size(part, units));
        // Its strength, over its own wall.
        if let Some(strength) = part.strength_mpa {
            let y = up(strength);
            let _ = writeln!(
                out,
                "<line x1=\"{from:.1}\" y1=\"{y:.1}\" x2=\"{to:.1}\" y2=\"{y:.1}\" stroke=\"#207020\" stroke-width=\"2\"/>"
            );
        }
    }
    for mpa in [low / 1.05, 0.0, high / 1.05] {
        let y = up(mpa);
        let _ = writeln!(
            out,
            "<line x1=\"{LEFT}\" y1=\"{y:.1}\" x2=\"{RIGHT}\" y2=\"{y:.1}\" stroke=\"#c0c0c0\"/>"
        );
        text(&mut out, LEFT - 6.0, y + 4.0, "end", &stress(mpa, units));
    }
    for (_, colour, dashes, of) in DRAWN {
        for part in &answer.parts {
            let mut path = String::new();
            for point in &part.wall {
                let _ = write!(
                    path,
                    "{:.1},{:.1} ",
                    across(point.at_mm.0.millimetres() / 2.0),
                    up(of(point))
                );
            }
            // A solid shaft has one stress from the centre to the outside.
            if let ([only], true) = (part.wall.as_slice(), part.bore_growth_mm.is_none()) {
                let _ = write!(path, "{:.1},{:.1}", across(radius(part)), up(of(only)));
            }
            let _ = writeln!(
                out,
                "<polyline points=\"{}\" fill=\"none\" stroke=\"{colour}\" stroke-width=\"2\" stroke-dasharray=\"{dashes}\"/>",
                path.trim_end()
            );
        }
    }
    let legend = DRAWN.iter().map(|(name, colour, dashes, _)| (*name, *colour, *dashes));
    let mut x = LEFT;
    for (name, colour, dashes) in legend.chain([("strength", "#207020", "")]) {
        let _ = writeln!(
            out,
            "<line x1=\"{x:.0}\" y1=\"430\" x2=\"{:.0}\" y2=\"430\" stroke=\"{colour}\" stroke-width=\"2\" stroke-dasharray=\"{dashes}\"/>",
            x + 30.0
        );
        text(&mut out, x + 36.0, 434.0, "start", name);
        x += 130.0;
    }
    out.push_str("</svg>\n");
    out
}

fn text(out: &mut String, x: f64, y: f64, anchor: &str, words: &str) {
    let words = words.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;");
    let _ =
        writeln!(out, "<text x=\"{x:.1}\" y=\"{y:.1}\" text-anchor=\"{anchor}\">{words}</text>");
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
