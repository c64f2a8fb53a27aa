//! Where the limits of one part or of a pair lie, and where a reading falls.

use fits_core::{
    Length, Limits,
    job::whole::{Cut, Paired},
    shop::{Reading as Judged, Verdict},
    size::{Decimals, Rounding, Unit},
    standards::iso286::Feature,
};

use crate::{
    answer::{FeatureAnswer, FitAnswer, PairReadingAnswer, ReadingAnswer, ReadingFigures},
    render::{
        draw::{
            Anchor, Area, Drawing, EDGE, Ink, LINE, Lean, Scale, Side, Stroke, TYPE, WIDTH, measure,
        },
        text::Text,
    },
};

/// The room of a zone's name, left of all.
const NAMES: f64 = 118.0;
/// How tall a zone is: two lines of words.
const TALL: f64 = 2.0 * LINE + 4.0;

/// One part.
struct Zone {
    caption: String,
    side: Option<Feature>,
    limits: Limits,
    /// What to cut for.
    aim: Option<String>,
    aim_at: Length,
    reading: Option<Seen>,
}

/// A reading and what is said of it.
struct Seen {
    size: Length,
    /// Expanded uncertainty, k = 2.
    uncertainty: Option<Length>,
    says: String,
    ink: Ink,
}

impl Zone {
    /// A feature as it is answered. One whose limits meet is there already.
    fn of(feature: &FeatureAnswer, text: &Text, reading: Option<Seen>) -> Self {
        let name = feature.kind.map_or("size", Feature::word);
        let is_there = feature.lower_mm == feature.upper_mm;
        let aims = text.units().map(|unit| Text::aim(feature, unit)).join("  ");
        Self {
            caption: format!("{name} {}", feature.class),
            side: feature.kind,
            limits: feature.limits,
            aim: (!is_there && feature.mic_yours.is_none()).then(|| format!("cut to {aims}")),
            aim_at: feature.aim_mm.0,
            reading,
        }
    }

    fn ink(&self) -> Ink {
        if self.side == Some(Feature::Shaft) { Ink::Shaft } else { Ink::Hole }
    }

    /// The least and the greatest that it may be: what it is, where it was read.
    fn sizes(&self) -> [Length; 2] {
        let read = self.reading.as_ref().map(|seen| seen.size);
        [self.limits.lower(), self.limits.upper()].map(|end| read.unwrap_or(end))
    }

    fn lean(&self) -> Lean {
        if self.side == Some(Feature::Shaft) { Lean::Down } else { Lean::Up }
    }
}

impl Seen {
    /// A judged reading.
    fn of(reading: &ReadingFigures, text: &Text) -> Self {
        let size = reading.at_20();
        let shown = text.units().map(|unit| Text::size(size, unit)).join("  ");
        let give = reading.uncertainty_mm;
        let uncertain =
            give.map_or(String::new(), |by| format!(" +/- {}", text.one_difference(by.0)));
        let ink = if reading.verdict == Verdict::Good { Ink::Good } else { Ink::Bad };
        let says = format!("read {shown}{uncertain}: {}", reading.verdict.word());
        Self { size, uncertainty: give.map(|by| by.0), says, ink }
    }
}

pub(super) fn feature(answer: &FeatureAnswer, text: &Text) -> Option<Drawing> {
    let name = answer.kind.map_or("size", Feature::word);
    let mut drawing = Drawing::new(&format!("{name} {}", called(answer, text)));
    zones(&mut drawing, text, Some(answer.nominal_mm.0), &[Zone::of(answer, text, None)])?;
    Some(drawing)
}

pub(super) fn reading(answer: &ReadingAnswer, text: &Text) -> Option<Drawing> {
    let feature = &answer.feature;
    let name = feature.kind.map_or("size", Feature::word);
    let verdict = answer.reading.verdict.word();
    let mut drawing = Drawing::new(&format!("{name} {}: {verdict}", called(feature, text)));
    let zone = Zone::of(feature, text, Some(Seen::of(&answer.reading, text)));
    zones(&mut drawing, text, Some(feature.nominal_mm.0), &[zone])?;
    Some(drawing)
}

pub(super) fn fit(answer: &FitAnswer, text: &Text) -> Option<Drawing> {
    let title =
        format!("{}: {} fit", pair_called(&answer.hole, &answer.shaft, text), answer.kind.word());
    let mut drawing = Drawing::new(&title);
    let zone = |feature: &FeatureAnswer| {
        let measured = answer.measured.as_ref().filter(|it| Some(it.part) == feature.kind);
        let reading = measured.map(|it| Seen {
            size: it.size_mm.0,
            uncertainty: None,
            says: format!(
                "measured {}: {}",
                text.units().map(|unit| Text::size(it.size_mm.0, unit)).join("  "),
                it.verdict.word()
            ),
            ink: if it.verdict == Verdict::Good { Ink::Good } else { Ink::Bad },
        });
        let is_measured = reading.is_some();
        let mut zone = Zone::of(feature, text, reading);
        if is_measured || (answer.in_hand.is_some() && answer.in_hand == feature.kind) {
            zone.aim = None;
            if !zone.caption.ends_with("in hand") {
                zone.caption.push_str(", in hand");
            }
        }
        zone
    };
    let pair = [zone(&answer.hole), zone(&answer.shaft)];
    let scale = zones(&mut drawing, text, Some(answer.nominal_mm.0), &pair)?;
    let [hole, shaft] = pair.each_ref().map(Zone::sizes);
    let (least, most) = (answer.clearance.min_mm.0, answer.clearance.max_mm.0);
    let ends = [(shaft[1], hole[0], "tightest", least), (shaft[0], hole[1], "loosest", most)];
    for (from, to, name, play) in ends {
        between(&mut drawing, &scale, (from, to), &format!("at its {name} {}", text.play(play)));
    }
    Some(drawing)
}

/// One side of a joint; nothing where its limits wait for the other side.
fn side_of(side: Feature, cut: &Cut, text: &Text) -> Option<Zone> {
    let reading = cut.in_hand.map(|size| {
        let judged = cut.limits.and_then(|limits| Judged::judge(side, limits, size).ok());
        let verdict = judged.map_or(String::new(), |it| format!(": {}", it.verdict.word()));
        let is_good = judged.is_none_or(|it| it.verdict == Verdict::Good);
        let shown = text.units().map(|unit| Text::size(size, unit)).join("  ");
        Seen {
            size,
            uncertainty: None,
            says: format!("read {shown}{verdict}"),
            ink: if is_good { Ink::Good } else { Ink::Bad },
        }
    });
    let own = cut.in_hand.and_then(|size| Limits::new(size, size).ok());
    Some(Zone {
        caption: format!("{} {}", side.word(), cut.label),
        side: Some(side),
        limits: cut.limits.or(own)?,
        aim: None,
        aim_at: cut.aim,
        reading,
    })
}

/// A joint of a job, for a page that says the rest.
pub(crate) fn of_joint(pair: &Paired, text: &Text) -> Option<Drawing> {
    let mut drawing = Drawing::untitled("where the limits of both parts lie");
    let hole = side_of(Feature::Hole, &pair.hole, text);
    let shaft = side_of(Feature::Shaft, &pair.shaft, text);
    let is_measured = pair.clearance.is_some();
    let all: Vec<Zone> = [hole, shaft].into_iter().flatten().collect();
    let scale = zones(&mut drawing, text, Some(pair.nominal), &all)?;
    let [hole, shaft] = all.as_slice() else { return Some(drawing) };
    let ([low, high], [least, most]) = (hole.sizes(), shaft.sizes());
    let tightest = text.play(low.checked_sub(most).ok()?);
    let loosest = text.play(high.checked_sub(least).ok()?);
    if is_measured {
        between(&mut drawing, &scale, (most, low), &format!("as measured {tightest}"));
    } else {
        between(&mut drawing, &scale, (most, low), &format!("at its tightest {tightest}"));
        between(&mut drawing, &scale, (least, high), &format!("at its loosest {loosest}"));
    }
    Some(drawing)
}

/// A feature of a job by itself, for such a page.
pub(crate) fn of_cut(nominal: Length, side: Feature, cut: &Cut, text: &Text) -> Option<Drawing> {
    let mut drawing = Drawing::untitled("where the limits lie");
    zones(&mut drawing, text, Some(nominal), &[side_of(side, cut, text)?])?;
    Some(drawing)
}

pub(super) fn pair_reading(answer: &PairReadingAnswer, text: &Text) -> Option<Drawing> {
    let (hole, shaft) = (&answer.hole, &answer.shaft);
    let within = if answer.within { "within the fit" } else { "NOT within the fit" };
    let title = format!("{}: {within}", pair_called(&hole.feature, &shaft.feature, text));
    let mut drawing = Drawing::new(&title);
    let zone =
        |part: &ReadingAnswer| Zone::of(&part.feature, text, Some(Seen::of(&part.reading, text)));
    let scale = zones(&mut drawing, text, Some(answer.nominal_mm.0), &[zone(hole), zone(shaft)])?;
    let says = format!("as measured {}", text.play(answer.actual_clearance_mm.0));
    between(&mut drawing, &scale, (shaft.reading.at_20(), hole.reading.at_20()), &says);
    let [low, high] =
        [answer.clearance.min_mm.0, answer.clearance.max_mm.0].map(|end| text.play(end));
    drawing.gap(6.0);
    drawing.paragraph(EDGE, WIDTH - 2.0 * EDGE, &format!("the fit: {low}; to {high}"), false);
    Some(drawing)
}

fn called(feature: &FeatureAnswer, text: &Text) -> String {
    let [unit, _] = text.units();
    match feature.class {
        "limits" => Text::range(feature.limits, unit),
        class => format!("{} {class}", Text::size(feature.nominal_mm.0, unit)),
    }
}

fn pair_called(hole: &FeatureAnswer, shaft: &FeatureAnswer, text: &Text) -> String {
    let [unit, _] = text.units();
    let class = if hole.class == shaft.class {
        hole.class.to_owned()
    } else if hole.class.contains(' ') || shaft.class.contains(' ') {
        format!("hole {}, shaft {}", hole.class, shaft.class)
    } else {
        format!("{}/{}", hole.class, shaft.class)
    };
    format!("{} {class}", Text::size(hole.nominal_mm.0, unit))
}

/// The zones on one scale, each under its caption, and the line of nominal size
/// through them.
fn zones(
    drawing: &mut Drawing,
    text: &Text,
    nominal: Option<Length>,
    zones: &[Zone],
) -> Option<Scale> {
    let limits = || zones.iter().flat_map(|zone| [zone.limits.lower(), zone.limits.upper()]);
    let whiskers = |seen: &Seen| {
        let by = seen.uncertainty.unwrap_or(Length::ZERO);
        [Some(seen.size), seen.size.checked_sub(by).ok(), seen.size.checked_add(by).ok()]
    };
    let readings = || zones.iter().filter_map(|zone| zone.reading.as_ref());
    let should = readings().flat_map(whiskers).flatten().chain(nominal);
    // The limits stand on both sides of a zone.
    let labels = zones.iter().flat_map(|zone| text.units().map(|unit| ends(zone.limits, unit)));
    let wide = labels.flatten().map(|label| measure::width(&label) * TYPE).fold(0.0, f64::max);
    let stretch = (EDGE + NAMES + wide + 12.0, WIDTH - EDGE - wide - 8.0);
    let scale = Scale::of(limits(), should, stretch)?;
    if let Some(nominal) = nominal {
        let (x, off) = scale.at(nominal);
        let shown = text.units().map(|unit| Text::size(nominal, unit)).join("  ");
        drawing.gap(LINE);
        let y = drawing.below;
        match off {
            None => drawing.words(x, y, Anchor::Middle, Ink::Plain, &format!("nominal {shown}")),
            Some(side) => beyond(drawing, side, y, &format!("nominal {shown}")),
        }
    }
    for zone in zones {
        one(drawing, text, &scale, nominal, zone);
    }
    Some(scale)
}

/// Both limits in a unit, rounded inward.
fn ends(limits: Limits, unit: Unit) -> [String; 2] {
    let decimals = Decimals::for_limits(unit, limits);
    [(limits.lower(), Rounding::Up), (limits.upper(), Rounding::Down)]
        .map(|(size, toward)| format!("{} {}", size.shown(decimals, toward), unit.symbol()))
}

fn one(drawing: &mut Drawing, text: &Text, scale: &Scale, nominal: Option<Length>, zone: &Zone) {
    drawing.gap(6.0);
    let from = drawing.below;
    let top = from + zone.aim.as_ref().map_or(0.0, |_| LINE + 10.0);
    let bottom = top + TALL;
    if let Some((x, None)) = nominal.map(|nominal| scale.at(nominal)) {
        drawing.line((x, from), (x, bottom), Stroke::Dash, Ink::Faint);
    }
    drawing.below = top;
    drawing.paragraph(EDGE, NAMES, &zone.caption, true);
    if let Some(aim) = &zone.aim {
        let (x, _) = scale.at(zone.aim_at);
        drawing.words(x, top - 16.0, Anchor::Middle, Ink::Plain, aim);
        drawing.shape(&[(x - 7.0, top - 11.0), (x + 7.0, top - 11.0), (x, top - 1.0)], Ink::Plain);
    }
    let [(left, _), (right, _)] =
        [zone.limits.lower(), zone.limits.upper()].map(|end| scale.at(end));
    let is_size = zone.limits.tolerance() == Length::ZERO;
    if is_size {
        drawing.line((left, top), (left, bottom), Stroke::Heavy, zone.ink());
    } else {
        drawing.zone(Area { left, right, top, bottom }, zone.lean(), zone.ink());
    }
    // Before the limits, which stay readable upon its line.
    if let Some(seen) = &zone.reading {
        read(drawing, scale, (top, bottom), seen);
    }
    for (row, unit) in text.units().into_iter().enumerate() {
        let y = top + TYPE + 2.0 + if row == 0 { 0.0 } else { LINE };
        let [lower, upper] = ends(zone.limits, unit);
        if !is_size {
            drawing.words(left - 6.0, y, Anchor::End, Ink::Plain, &lower);
            drawing.words(right + 6.0, y, Anchor::Start, Ink::Plain, &upper);
        } else if zone.reading.is_none() {
            let size = Text::size(zone.limits.upper(), unit);
            drawing.words(right + 8.0, y, Anchor::Start, Ink::Plain, &size);
        }
    }
}

/// A reading: a line through the zone, how far it is uncertain, and its words.
fn read(drawing: &mut Drawing, scale: &Scale, (top, bottom): (f64, f64), seen: &Seen) {
    let (x, off) = scale.at(seen.size);
    let under = bottom + 16.0;
    match off {
        None => {
            drawing.line((x, top - 2.0), (x, under), Stroke::Heavy, seen.ink);
            let ends = seen.uncertainty.and_then(|by| {
                Some((seen.size.checked_sub(by).ok()?, seen.size.checked_add(by).ok()?))
            });
            if let Some((from, to)) = ends {
                whisker(drawing, (scale.at(from).0, scale.at(to).0), bottom + 9.0, seen.ink);
            }
            let foot = [(x - 7.0, under + 8.0), (x + 7.0, under + 8.0), (x, under - 2.0)];
            drawing.shape(&foot, seen.ink);
            drawing.gap(LINE - 2.0);
            let y = drawing.below;
            drawing.words(x, y, Anchor::Middle, seen.ink, &seen.says);
        }
        Some(side) => beyond(drawing, side, bottom + LINE, &seen.says),
    }
}

/// How far a size is uncertain, on the line `y`.
pub(super) fn whisker(drawing: &mut Drawing, (from, to): (f64, f64), y: f64, ink: Ink) {
    drawing.line((from, y), (to, y), Stroke::Thin, ink);
    for x in [from, to] {
        drawing.line((x, y - 5.0), (x, y + 5.0), Stroke::Thin, ink);
    }
}

/// What lies outside of the picture, and on which side.
fn beyond(drawing: &mut Drawing, side: Side, y: f64, says: &str) {
    let (x, anchor, tip) = match side {
        Side::Below => (EDGE + 14.0, Anchor::Start, -12.0),
        Side::Above => (WIDTH - EDGE - 14.0, Anchor::End, 12.0),
    };
    let middle = y - TYPE * 0.35;
    drawing.shape(&[(x, middle - 7.0), (x, middle + 7.0), (x + tip, middle)], Ink::Plain);
    let far = if side == Side::Below { "smaller" } else { "larger" };
    drawing.words(x - tip / 2.0, y, anchor, Ink::Plain, &format!("{says} ({far} than is drawn)"));
}

/// A distance along the scale, its words above it.
fn between(drawing: &mut Drawing, scale: &Scale, (from, to): (Length, Length), says: &str) {
    let (from, to) = (scale.at(from).0, scale.at(to).0);
    drawing.gap(LINE);
    let y = drawing.below;
    drawing.words(f64::midpoint(from, to), y, Anchor::Middle, Ink::Plain, says);
    whisker(drawing, (from, to), y + 13.0, Ink::Plain);
}
