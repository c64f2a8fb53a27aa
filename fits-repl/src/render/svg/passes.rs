//! A plan or a pass log: each pass a row, its size against the limits.

use fits_core::{Length, Limits, standards::iso286::Feature};

use crate::{
    answer::{EntryFigures, FeatureAnswer, PassFigure, PassFigures, PassLogAnswer, PassesAnswer},
    query::Dial,
    questions::part::plan_shape::PlanShape,
    render::{
        draw::{
            Anchor, Area, Drawing, EDGE, Ink, LINE, Lean, Scale, Side, Stroke, TYPE, WIDTH, measure,
        },
        svg::zones::whisker,
        text::Text,
    },
};

/// Where the sizes lie, between the words of a pass and its figure.
const PLOT: (f64, f64) = (235.0, WIDTH - 160.0);

/// One row.
struct Row {
    /// The pass, and what is dialled.
    words: [String; 2],
    size: Option<Length>,
    /// Expanded uncertainty, k = 2.
    uncertainty: Option<Length>,
    /// The size in both units, or why there is none.
    figures: [String; 2],
    /// A plan's size is still to be reached.
    is_read: bool,
}

/// A pass of a plan in words.
pub(crate) struct Step {
    pub(crate) name: String,
    /// What to dial, or the drill.
    pub(crate) dial: String,
    pub(crate) to: Length,
    /// The size after it in both units.
    pub(crate) figures: [String; 2],
}

/// The passes of a plan, equal roughing cuts as one.
pub(crate) fn steps(
    plan: &PassFigures,
    feature: &FeatureAnswer,
    dial: Dial,
    text: &Text,
) -> Vec<Step> {
    let shapes = text.units().map(|unit| PlanShape::of(plan, unit, feature));
    let dialled = |pass: &PassFigure| match (&pass.drill, pass.dial_mm) {
        (Some(drill), _) => drill.clone(),
        (None, _) if pass.name == "spring" => "leave the dial".into(),
        (None, Some(change)) => {
            let change = if dial == Dial::Radius { change.0.half() } else { change.0 };
            format!("dial {}", shapes[0].cut(change))
        }
        (None, None) => "as it measures".into(),
    };
    let is_alike = |one: &PassFigure, next: &PassFigure| {
        one.name == "rough" && next.name == "rough" && one.dial_mm == next.dial_mm
    };
    let step = |run: &[PassFigure]| {
        let pass = run.last()?;
        let (name, each) = match run.len() {
            1 => (pass.name.to_owned(), ""),
            count => (format!("{count} {}", pass.name), " each"),
        };
        Some(Step {
            name,
            dial: dialled(pass) + each,
            to: pass.to_mm.0,
            figures: shapes.map(|shape| shape.size(pass.to_mm.0)),
        })
    };
    plan.passes.chunk_by(is_alike).filter_map(step).collect()
}

pub(super) fn plan(answer: &PassesAnswer, text: &Text) -> Option<Drawing> {
    let feature = &answer.feature;
    let mut rows = Vec::new();
    if let Some(start) = answer.plan.start_mm {
        let shapes = text.units().map(|unit| PlanShape::of(&answer.plan, unit, feature));
        rows.push(Row {
            words: ["start".into(), String::new()],
            size: Some(start.0),
            uncertainty: None,
            figures: shapes.map(|shape| shape.size(start.0)),
            is_read: true,
        });
    }
    rows.extend(steps(&answer.plan, feature, answer.dial, text).into_iter().map(|step| Row {
        words: [step.name, step.dial],
        size: Some(step.to),
        uncertainty: None,
        figures: step.figures,
        is_read: false,
    }));
    let [unit, _] = text.units();
    let nominal = Text::size(feature.nominal_mm.0, unit);
    let mut drawing = Drawing::new(&format!("{} {nominal} {}", answer.work, feature.class));
    let side = feature.kind.unwrap_or(Feature::Hole);
    rows_of(&mut drawing, text, side, feature.limits, &rows)?;
    Some(drawing)
}

pub(super) fn log(answer: &PassLogAnswer, text: &Text) -> Option<Drawing> {
    let [unit, other] = text.units();
    let figures = |size: Length| [unit, other].map(|unit| Text::size(size, unit));
    let give = answer.reading_uncertainty_mm.0;
    let mut rows = vec![Row {
        words: ["start".into(), String::new()],
        size: Some(answer.start_mm.0),
        uncertainty: Some(give),
        figures: figures(answer.start_mm.0),
        is_read: true,
    }];
    let standing = answer.entries.iter().filter(|entry| !entry.undone && entry.entry != "undo");
    rows.extend(standing.enumerate().map(|(at, entry)| {
        let is_pass = matches!(entry.entry, "cut" | "spring");
        Row {
            words: [format!("{} {}", at + 1, entry.entry), dialled(text, entry, answer)],
            size: entry.reading_mm.map(|size| size.0),
            uncertainty: entry.reading_mm.map(|_| give),
            figures: match entry.reading_mm {
                Some(size) => figures(size.0),
                None if is_pass => ["not read".into(), String::new()],
                None => [String::new(), String::new()],
            },
            is_read: true,
        }
    }));
    // The start and the readings were judged together: what is known now.
    if let (Some(size), Some(sd)) = (answer.size_mm, answer.size_sd_mm) {
        rows.push(Row {
            words: ["best estimate".into(), String::new()],
            size: Some(size.0),
            uncertainty: sd.0.checked_mul(2).ok(),
            figures: figures(size.0),
            is_read: true,
        });
    }
    let nominal = Text::size(answer.nominal_mm.0, unit);
    let mut drawing =
        Drawing::new(&format!("pass log, {} {nominal} {}", answer.kind, answer.class));
    rows_of(&mut drawing, text, answer.kind, answer.limits, &rows)?;
    let words = format!("bars: +/- {}, {}", text.one_difference(give), answer.instrument);
    drawing.gap(4.0);
    drawing.paragraph(EDGE, WIDTH - 2.0 * EDGE, &words, false);
    Some(drawing)
}

fn dialled(text: &Text, entry: &EntryFigures, log: &PassLogAnswer) -> String {
    entry.dial_mm.map_or(String::new(), |dial| {
        let is_radius = text.settings.dial == Dial::Radius;
        let shown = if is_radius { dial.0.half() } else { dial.0 };
        format!("dial {}", Text::dialled(shown, log.step_mm.0))
    })
}

/// The band of the limits down the picture, and a row a pass.
fn rows_of(
    drawing: &mut Drawing,
    text: &Text,
    side: Feature,
    limits: Limits,
    rows: &[Row],
) -> Option<()> {
    /// Two lines of words and some air.
    const ROW: f64 = 2.0 * LINE + 10.0;
    let should = rows.iter().filter_map(|row| row.size);
    let scale = Scale::of([limits.lower(), limits.upper()].into_iter(), should, PLOT)?;
    let [one, other] = text.units().map(|unit| Text::range(limits, unit));
    drawing.paragraph(EDGE, WIDTH - 2.0 * EDGE, &format!("limits: {one}; {other}"), false);
    drawing.gap(8.0);
    let top = drawing.below;
    let at = |row: usize| top + ROW * f64::from(u32::try_from(row).unwrap_or(u32::MAX));
    let bottom = at(rows.len());
    let [(left, _), (right, _)] = [limits.lower(), limits.upper()].map(|end| scale.at(end));
    let (lean, ink) = match side {
        Feature::Hole => (Lean::Up, Ink::Hole),
        Feature::Shaft => (Lean::Down, Ink::Shaft),
    };
    drawing.zone(Area { left, right, top, bottom }, lean, ink);
    for (number, row) in rows.iter().enumerate() {
        let y = at(number);
        if number > 0 {
            drawing.line((EDGE, y), (PLOT.0, y), Stroke::Dots, Ink::Faint);
            drawing.line((PLOT.1, y), (WIDTH - EDGE, y), Stroke::Dots, Ink::Faint);
        }
        for (line, words) in row.words.iter().enumerate() {
            let below = if line == 0 { LINE } else { 2.0 * LINE };
            // A long name of a drill keeps out of the plot.
            let most = (PLOT.0 - EDGE) / TYPE;
            let first = measure::lines(words, most).into_iter().next();
            drawing.words(EDGE, y + below, Anchor::Start, Ink::Plain, &first.unwrap_or_default());
        }
        for (line, words) in row.figures.iter().enumerate() {
            let below = if line == 0 { LINE } else { 2.0 * LINE };
            drawing.words(WIDTH - EDGE, y + below, Anchor::End, Ink::Plain, words);
        }
        if let Some(size) = row.size {
            point(drawing, &scale, row, size, y + ROW / 2.0, limits.contains(size));
        }
    }
    Some(())
}

/// A size in its row: a full mark is read, an empty one planned; an arrow at the
/// edge lies outside of the picture.
fn point(drawing: &mut Drawing, scale: &Scale, row: &Row, size: Length, y: f64, is_in: bool) {
    let ink = if is_in { Ink::Good } else { Ink::Plain };
    let (x, off) = scale.at(size);
    match off {
        Some(Side::Below) => {
            drawing.shape(&[(x + 12.0, y - 7.0), (x + 12.0, y + 7.0), (x, y)], ink);
        }
        Some(Side::Above) => {
            drawing.shape(&[(x - 12.0, y - 7.0), (x - 12.0, y + 7.0), (x, y)], ink);
        }
        None => {
            let ends = row
                .uncertainty
                .and_then(|by| Some((size.checked_sub(by).ok()?, size.checked_add(by).ok()?)));
            if let Some((from, to)) = ends {
                whisker(drawing, (scale.at(from).0, scale.at(to).0), y, ink);
            }
            let around = [(x, y - 8.0), (x + 8.0, y), (x, y + 8.0), (x - 8.0, y)];
            if row.is_read {
                drawing.shape(&around, ink);
            } else {
                let [first, ..] = around;
                let closed: Vec<_> = around.into_iter().chain([first]).collect();
                drawing.curve(&closed, Stroke::Heavy, ink);
            }
        }
    }
}
