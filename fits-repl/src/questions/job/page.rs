//! A job in words: every figure to cut, every question, every remark.

use std::fmt::Write as _;

use fits_core::{
    Length, Limits,
    job::whole::{Feature, Job, Mate, Nominal, Paired, Question, Side, State, Worked},
    shop::{Reading, Verdict},
    size::{Decimals, Rounding, Unit},
    standards::iso286::Feature as Surface,
};

use super::place::Note;
use crate::{
    render::text::{figures::is_exact, lines::wrapped},
    session::Session,
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
fn play(length: Length, unit: Unit) -> String {
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
    let nominal =
        hole.nominal.as_ref().and_then(Nominal::size).or_else(|| shaft.nominal.as_ref()?.size())?;
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
        let features: Vec<(usize, &Feature)> =
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

fn nominal(feature: &Feature) -> String {
    let [own, other] = units(feature.unit);
    match &feature.nominal {
        Some(Nominal::Size(length)) => format!("{}  {}", size(*length, own), size(*length, other)),
        Some(Nominal::Between(low, high)) => match Limits::new(*low, *high) {
            Ok(limits) => format!("{}  {}", range(limits, own), range(limits, other)),
            Err(_) => String::new(),
        },
        Some(Nominal::Thread(name)) => name.clone(),
        None => "no size said".to_owned(),
    }
}

fn shown(
    out: &mut String,
    job: &Job,
    worked: &Worked<'_>,
    note: &Note,
    at: usize,
    feature: &Feature,
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
        let was = Feature { nominal: Some(was.clone()), ..feature.clone() };
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
fn joint(pair: &Paired, unit: Unit) -> Option<String> {
    let clearance = pair.clearance?;
    let judged = if pair.is_met()? { "as wanted" } else { "NOT as wanted" };
    Some(format!(
        "{}, {judged}: {} to {}",
        play(clearance, unit),
        play(pair.wanted.lower(), unit),
        play(pair.wanted.upper(), unit)
    ))
}

/// Order of making, what cannot pass, end play, what is next.
#[allow(clippy::too_many_lines, reason = "one thing told after another, each short")]
fn told(out: &mut String, job: &Job, worked: &Worked<'_>, note: &Note) {
    let mut said = String::new();
    for (index, mate) in job.mates.iter().enumerate() {
        if job.is_split(mate.hole) || job.is_split(mate.shaft) {
            continue;
        }
        let pair = worked.pair(index);
        let unit = job.features.get(mate.shaft).map_or(Unit::Millimetre, |feature| feature.unit);
        let name = format!("{} in {}", job.full_name(mate.shaft), job.full_name(mate.hole));
        if let Some(Ok(pair)) = pair
            && let Some(words) = joint(pair, unit)
        {
            wrapped(&mut said, "  ", &format!("{name}: {words}"));
            continue;
        }
        let (first, why) = job.first(mate);
        wrapped(
            &mut said,
            "  ",
            &format!("{name}: first the {}: {}", job.full_name(first), why.words()),
        );
        if let Some(Ok(pair)) = pair {
            if let Some(apart) = pair.apart {
                wrapped(
                    &mut said,
                    "    ! ",
                    &format!(
                        "their sizes differ by {}: the limits go by the hole's",
                        play(apart, unit)
                    ),
                );
            }
            if pair.closed_in {
                wrapped(
                    &mut said,
                    "    ! ",
                    "the bore was measured before pressing: counted as closed in by 70 to 100 % of its interference; mic it in place",
                );
            }
            if pair.choice.as_ref().is_some_and(|choice| choice.work_it_out) {
                wrapped(
                    &mut said,
                    "    ! ",
                    "a starting point: work out pressure and stress before it is pressed",
                );
            }
            if pair.known().is_unconfirmed() {
                wrapped(
                    &mut said,
                    "    ! ",
                    "unconfirmed: its limits, from memory; check before you cut",
                );
            }
        } else if let Some(Err(error)) = pair {
            note.tell_joint(&mut said, job, mate, &error.said_in(unit));
        }
        // What a word only starts is not asked alone.
        let starts = pair
            .and_then(|pair| pair.as_ref().ok())
            .is_some_and(|pair| pair.choice.as_ref().is_some_and(|choice| choice.work_it_out));
        if let Some(query) = query(job, mate).filter(|_| !starts) {
            let _ = writeln!(said, "    alone: `{query}`");
        }
    }
    if !said.is_empty() {
        let _ = writeln!(out, "JOINTS");
        out.push_str(&said);
    }
    for blocked in job.blocked() {
        if let Some(mate) = job.mates.get(blocked.mate) {
            let words = format!(
                "the {} ({}) passes over neither the {} nor the {} on its way to the {}, in the order of the note",
                job.full_name(mate.hole),
                size(blocked.hole, Unit::Millimetre),
                job.full_name(blocked.before),
                job.full_name(blocked.behind),
                job.full_name(mate.shaft),
            );
            note.tell_joint(out, job, mate, &words);
        }
    }
    for conflict in job.conflicts() {
        let [one, two] = conflict.mates.map(|at| {
            job.mates
                .get(at)
                .map_or_else(String::new, |mate| job.full_name(mate.other(conflict.feature)))
        });
        let feature = &job.features[conflict.feature];
        let words = format!(
            "the {} cannot suit both the {one} and the {two} as they were read: make one of these again",
            job.full_name(conflict.feature)
        );
        note.tell(out, feature.line, &feature.at, &words);
    }
    if let Some(play) = job.end_play() {
        let unit = job.features.get(play.between).map_or(Unit::Millimetre, |feature| feature.unit);
        let judged = match play.is_met {
            Some(true) => ", as wanted",
            Some(false) => ", NOT what is wanted",
            None => "",
        };
        let _ = writeln!(out, "END PLAY  {} by the lengths{judged}", size(play.left, unit));
    }
    let _ = writeln!(out, "NEXT");
    super::next::next(out, job, &mut Session::new());
}

/// Every question, with the line and a caret under its place.
fn questions(out: &mut String, job: &Job, worked: &Worked<'_>, note: &Note) {
    let mut all: Vec<Question> = job.questions.clone();
    all.extend(unsettled(job, worked));
    if all.is_empty() {
        return;
    }
    all.sort_by_key(|question| (question.line, question.at.start));
    let _ = writeln!(out, "QUESTIONS");
    for question in &all {
        let line = note.line(question.line);
        let answer = question
            .answer
            .clone()
            .or_else(|| answered(job, question, line))
            .map(|answer| format!(": {answer}"))
            .unwrap_or_default();
        let asks = if question.by_writer { "you ask: " } else { "" };
        let words = format!("{asks}{}{answer}", question.text);
        note.tell(out, question.line, &question.at, &words);
    }
}

/// Joints whose fit the note leaves open.
pub(crate) fn unsettled(job: &Job, worked: &Worked<'_>) -> Vec<Question> {
    let ask = |(mate, text): (&Mate, String)| Question {
        line: mate.line,
        at: 0..0,
        text,
        answer: Some(
            "say it as running, sliding, push, drive or press, or give classes or thou".into(),
        ),
        by_writer: false,
    };
    job.mates
        .iter()
        .enumerate()
        .filter(|(_, mate)| !job.is_split(mate.hole) && !job.is_split(mate.shaft))
        .filter(|(at, _)| worked.pair(*at).is_none())
        .filter_map(|(_, mate)| {
            let (hole, shaft) = (job.features.get(mate.hole)?, job.features.get(mate.shaft)?);
            (hole.side == Side::Hole && shaft.side == Side::Shaft).then_some(())?;
            let name =
                format!("the {} in the {}", job.full_name(mate.shaft), job.full_name(mate.hole));
            let numbered = |feature: &Feature| {
                job.parts.get(feature.part).is_some_and(|part| {
                    let name = part.name.to_lowercase();
                    name.contains("ball")
                        || name
                            .split([' ', '-'])
                            .any(|word| word.len() >= 3 && word.chars().all(|c| c.is_ascii_digit()))
                })
            };
            if numbered(hole) || numbered(shaft) {
                let seat = if numbered(hole) { "shaft" } else { "housing" };
                let at = if numbered(hole) { shaft } else { hole };
                let nominal = at.nominal.as_ref().and_then(Nominal::size).unwrap_or(Length::ZERO);
                let query =
                    format!("seat {seat} {} turns normal", size(nominal, at.unit).replace(' ', ""));
                let mut question =
                    ask((mate, format!("{name}: a bearing's seat goes by how it is loaded")));
                question.answer = Some(format!("ask `{query}`"));
                return Some(question);
            }
            let words = &mate.fit.words;
            Some(ask((
                mate,
                if words.is_empty() {
                    format!("which fit is {name}?")
                } else {
                    format!("`{words}` names no one fit for {name}")
                },
            )))
        })
        .collect()
}

/// An answer to the writer's own question, where there is one.
fn answered(job: &Job, question: &Question, line: &str) -> Option<String> {
    let asks_drill = question.by_writer && line.to_lowercase().contains("drill");
    if asks_drill {
        let thread = job.said.iter().filter(|said| said.line == question.line).find_map(
            |said| match &said.nominal {
                Some(Nominal::Thread(name)) => Some(name.clone()),
                _ => None,
            },
        )?;
        let query = format!("{thread} tap");
        let answer = Session::new().evaluate(&query).ok()?;
        let settings = crate::answer::SettingsAnswer {
            units: crate::query::Units::Inches,
            dial: crate::query::Dial::Diameter,
        };
        let text = crate::render::text::Text { settings, colour: crate::render::Colour::Off }
            .answer(&answer);
        let first = text
            .lines()
            .find(|line| line.starts_with("DRILL"))
            .unwrap_or_default()
            .split_whitespace()
            .collect::<Vec<_>>()
            .join(" ");
        return Some(format!("{first} (`{query}`)"));
    }
    let play = job.end_play()?;
    let of_play = job.said.iter().any(|said| {
        said.line == question.line
            && (said.feature == play.shoulders || said.feature == play.between)
    });
    (question.by_writer && of_play).then(|| {
        let unit = job.features.get(play.between).map_or(Unit::Millimetre, |feature| feature.unit);
        let met = match play.is_met {
            Some(true) => ", as wanted",
            Some(false) => ", not what is wanted",
            None => "",
        };
        format!("the lengths leave {} of end play{met}", size(play.left, unit))
    })
}
