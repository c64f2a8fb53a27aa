//! What a job is told and asked, below its figures.

use std::fmt::Write as _;

use fits_core::{
    Length,
    job::whole::{Job, Mate, NominalSize, PartFeature, Question, SizeKind, Worked},
    size::Unit,
};

use crate::{
    questions::job::{
        page::{joint, play, query, size},
        place::Note,
    },
    render::text::lines::wrapped,
    session::Session,
};

/// Order of making, what cannot pass, end play, what is next.
#[allow(clippy::too_many_lines, reason = "one thing told after another, each short")]
pub(super) fn told(out: &mut String, job: &Job, worked: &Worked<'_>, note: &Note) {
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
pub(super) fn questions(out: &mut String, job: &Job, worked: &Worked<'_>, note: &Note) {
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
            (hole.side == SizeKind::Hole && shaft.side == SizeKind::Shaft).then_some(())?;
            let name =
                format!("the {} in the {}", job.full_name(mate.shaft), job.full_name(mate.hole));
            let numbered = |feature: &PartFeature| {
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
                let nominal =
                    at.nominal.as_ref().and_then(NominalSize::size).unwrap_or(Length::ZERO);
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
                Some(NominalSize::Thread(name)) => Some(name.clone()),
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
