//! A job in words: every figure to cut, every question, every remark.

use std::fmt::Write as _;

use fits_core::{
    Length, Limits,
    job::whole::{Job, Mate, NominalSize, Paired, PartFeature, State, Worked},
    shop::{Reading, Verdict},
    size::{Decimals, Rounding, Unit},
    standards::iso286::Feature as Surface,
};

use super::place::Note;
use crate::{
    questions::job::told::{questions, told},
    render::text::{figures::is_exact, lines::wrapped},
};

/// Both units, the feature's own first.
pub(super) const fn units(own: Unit) -> [Unit; 2] {
    match own {
        Unit::Inch => [Unit::Inch, Unit::Millimetre],
        _ => [Unit::Millimetre, Unit::Inch],
    }
}

fn usual(unit: Unit) -> Decimals {
    if unit == Unit::Inch { Decimals::INCHES } else { Decimals::MILLIMETRES }
}

/// A size in a unit: `0.7500 in`.
pub(crate) fn size(length: Length, unit: Unit) -> String {
    let decimals = usual(unit);
    format!("{} {}", length.shown(decimals, Rounding::Nearest), unit.symbol())
}

/// Limits in a unit, each rounded to the inside.
pub(crate) fn range(limits: Limits, unit: Unit) -> String {
    let decimals = Decimals::for_limits(unit, limits);
    if limits.lower() == limits.upper() {
        // One size was said, and no range.
        return size(limits.lower(), unit);
    }
    let (low, high) = (
        limits.lower().shown(decimals, Rounding::Up),
        limits.upper().shown(decimals, Rounding::Down),
    );
    format!("{low} to {high} {}", unit.symbol())
}

/// Clearance, or interference where it is below 0.
pub(super) fn play(length: Length, unit: Unit) -> String {
    let word = if length.is_negative() { "interference" } else { "clearance" };
    format!("{} {word}", size(length.checked_abs().unwrap_or(length), unit))
}

/// A size as it is typed: every figure of it, in millimetres where inches would
/// need more than six.
pub(crate) fn exact(length: Length, unit: Unit) -> String {
    let inches = Decimals { unit: Unit::Inch, places: 6 };
    let is_inch = unit == Unit::Inch && is_exact(length, inches);
    let unit = if is_inch { unit } else { Unit::Millimetre };
    let decimals = if is_inch { inches } else { Decimals { unit, places: 7 } };
    let text = length.shown(decimals, Rounding::Nearest).to_string();
    format!("{}{}", text.trim_end_matches('0').trim_end_matches('.'), unit.symbol())
}

/// The plain query that gives a joint's figures.
pub(crate) fn query(job: &Job, mate: &Mate) -> Option<String> {
    let (hole, shaft) = (job.features.get(mate.hole)?, job.features.get(mate.shaft)?);
    let nominal = hole
        .nominal
        .as_ref()
        .and_then(NominalSize::size)
        .or_else(|| shaft.nominal.as_ref()?.size())?;
    let unit = hole.unit;
    let exact = |length: Length| exact(length, unit);
    let classes = hole.class.as_deref().zip(shaft.class.as_deref());
    let mut text = match (classes, mate.fit.word, mate.fit.clearance) {
        (_, _, Some(_)) => return None,
        (Some((above, below)), ..) => format!("{} {above}/{below}", exact(nominal)),
        (None, Some(word), _) if hole.class.is_none() && shaft.class.is_none() => {
            let case = job.circumstance(mate, nominal);
            let hub = match case.hub {
                fits_core::shop::words::Hub::Steel => "",
                fits_core::shop::words::Hub::CastIron => ", hub cast iron",
                fits_core::shop::words::Hub::Aluminium => ", hub aluminium",
                fits_core::shop::words::Hub::BronzeBushing => ", hub bronze",
                fits_core::shop::words::Hub::PlasticBushing => ", hub plastic",
            };
            let thin = if case.thin_wall { ", thin wall" } else { "" };
            format!("{} {}{hub}{thin}", exact(nominal), word.name())
        }
        _ => return None,
    };
    for (feature, name) in [(hole, "hole"), (shaft, "shaft")] {
        if let Some(reading) = feature.reading() {
            let _ = write!(text, ", {name} = {}", exact(reading.size));
        }
    }
    Some(text)
}

/// The whole job. `text` is the note in `file`, for the places of what is told.
pub(crate) fn page(job: &Job, text: &str, file: &str) -> String {
    let mut out = String::new();
    let note = &Note::new(file, text);
    let worked = &job.worked();
    if let Some(title) = &job.title {
        let _ = writeln!(out, "{title}");
    }
    for (index, part) in job.parts.iter().enumerate() {
        let features: Vec<(usize, &PartFeature)> =
            worked.features_of(index).filter(|(at, _)| !job.is_split(*at)).collect();
        if features.is_empty() && part.material.is_none() {
            continue;
        }
        let mut about: Vec<String> = Vec::new();
        about.extend(part.count.map(|count| format!("{count} off")));
        about.extend(part.material.clone());
        about.extend(part.bought.then(|| "bought".to_owned()));
        let about =
            if about.is_empty() { String::new() } else { format!("   {}", about.join(", ")) };
        let _ = writeln!(out, "{}{about}", part.name.to_uppercase());
        if worked.features_of(index).all(|(_, feature)| feature.implied) && part.material.is_none()
        {
            let words = "this part is named only as a mate: it is made with what the mate needs";
            let at = note.line(part.line).find(&part.name);
            let at = at.map_or(0..0, |at| at..at + part.name.len());
            note.tell(&mut out, part.line, &at, words);
        }
        for (at, feature) in features {
            shown(&mut out, job, worked, note, at, feature);
        }
    }
    told(&mut out, job, worked, note);
    questions(&mut out, job, worked, note);
    if !job.remarks.is_empty() {
        let _ = writeln!(out, "REMARKS");
        for remark in &job.remarks {
            wrapped(&mut out, &format!("  {:>3}  ", remark.line), &remark.text);
        }
    }
    out
}

pub(super) fn nominal(feature: &PartFeature) -> String {
    let [own, other] = units(feature.unit);
    match &feature.nominal {
        Some(NominalSize::Size(length)) => {
            format!("{}  {}", size(*length, own), size(*length, other))
        }
        Some(NominalSize::Between(low, high)) => match Limits::new(*low, *high) {
            Ok(limits) => format!("{}  {}", range(limits, own), range(limits, other)),
            Err(_) => String::new(),
        },
        Some(NominalSize::Thread(name)) => name.clone(),
        None => "no size said".to_owned(),
    }
}

fn shown(
    out: &mut String,
    job: &Job,
    worked: &Worked<'_>,
    note: &Note,
    at: usize,
    feature: &PartFeature,
) {
    let [own, other] = units(feature.unit);
    let done = if feature.done { " done" } else { "" };
    let implied = if feature.implied { " (not listed, needed by its mate)" } else { "" };
    let _ = writeln!(
        out,
        "  {:<16} {:<6} {}{implied}{done}",
        feature.name,
        feature.side.word(),
        nominal(feature)
    );
    let limits = match worked.limits(at) {
        Some(Ok((limits, _))) => Some(limits),
        Some(Err(error)) => {
            note.tell(out, feature.line, &feature.at, &error.said_in(own));
            None
        }
        None => None,
    };
    let read = feature.reading();
    if let (Some(limits), None) = (limits, read) {
        let word = if job.parts.get(feature.part).is_some_and(|part| part.bought) {
            "MIC "
        } else {
            "CUT "
        };
        let _ = writeln!(out, "    {word} {:<26} {}", range(limits, own), range(limits, other));
    }
    for (index, mate) in worked.mates_of(at) {
        let goes = if mate.shaft == at { "in" } else { "on" };
        let fit = if mate.fit.words.is_empty() { "fit not said" } else { mate.fit.words.as_str() };
        let with = job.full_name(mate.other(at));
        let label = match worked.pair(index) {
            Some(Ok(pair)) => feature
                .side
                .surface()
                .map(|surface| pair.cut(surface).label.clone())
                .map(|label| format!("{label}, "))
                .unwrap_or_default(),
            _ => String::new(),
        };
        let _ = writeln!(out, "    {label}{fit} {goes} {with}");
    }
    if let Some(reading) = read {
        let state = if reading.state == State::InPlace { ", in place" } else { "" };
        let date = reading.date.as_ref().map(|date| format!(", {date}")).unwrap_or_default();
        let _ = writeln!(
            out,
            "    READ {}  {}{state}{date}",
            size(reading.size, own),
            size(reading.size, other)
        );
        if let (Some(limits), Some(surface)) = (limits, feature.side.surface()) {
            verdict(out, job, at, surface, limits, reading.size, own);
        }
    }
    for (line, was) in &feature.earlier {
        let was = PartFeature { nominal: Some(was.clone()), ..feature.clone() };
        let _ = writeln!(out, "    before, line {line}: {}", nominal(&was));
    }
}

/// A reading against the limits the feature would have; the ways out if it is past them.
fn verdict(
    out: &mut String,
    job: &Job,
    at: usize,
    surface: Surface,
    limits: Limits,
    read: Length,
    unit: Unit,
) {
    let Ok(judged) = Reading::judge(surface, limits, read) else { return };
    match judged.verdict {
        Verdict::Good | Verdict::TooClose => {}
        Verdict::CutMore => {
            let _ = writeln!(
                out,
                "    {} to come off to the first limit of {}",
                size(judged.to_first_limit, unit),
                range(limits, unit)
            );
        }
        Verdict::Over => {
            let past = judged.to_last_limit.checked_abs().unwrap_or(judged.to_last_limit);
            let spoils: Vec<String> =
                job.mates_of(at).map(|(_, mate)| job.full_name(mate.other(at))).collect();
            let words = format!(
                "past its last limit of {} by {}: it concerns {}; cut that to suit, sleeve or plate this one, or make it again",
                range(limits, unit),
                size(past, unit),
                if spoils.is_empty() { "no mate".to_owned() } else { spoils.join(" and ") },
            );
            wrapped(out, "    OUT  ", &words);
        }
    }
}

/// A joint with both sides read: what it comes to.
pub(super) fn joint(pair: &Paired, unit: Unit) -> Option<String> {
    let clearance = pair.clearance?;
    let judged = if pair.is_met()? { "as wanted" } else { "NOT as wanted" };
    Some(format!(
        "{}, {judged}: {} to {}",
        play(clearance, unit),
        play(pair.wanted.lower(), unit),
        play(pair.wanted.upper(), unit)
    ))
}
