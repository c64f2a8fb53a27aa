//! A job as JSON, an object for each thing that a line of the note says.

use fits_core::{
    Length,
    job::whole::{Job, NominalSize, SizeKind, State, UnitFrom},
    size::Unit,
};
use serde::Serialize;

use crate::{answer::Mm, render::json};

/// The other side of a joint.
#[derive(Serialize, schemars::JsonSchema)]
pub(crate) struct MateFigures<'a> {
    /// Its part.
    part: &'a str,
    /// Its feature's name.
    feature: &'a str,
    /// What the line calls it, where that is another name.
    #[serde(skip_serializing_if = "Option::is_none")]
    called: Option<&'a str>,
    /// No line names it: it is there because this one wants it.
    implied: bool,
}

/// What a line says of a feature.
#[derive(Serialize, schemars::JsonSchema)]
pub(crate) struct SaidFigures<'a> {
    /// The line of the note, from 1.
    line: usize,
    /// The part.
    part: &'a str,
    /// The feature's name.
    feature: &'a str,
    /// Hole, shaft, thread, length or other.
    side: SizeKind,
    /// The size wanted.
    #[serde(skip_serializing_if = "Option::is_none")]
    nominal_mm: Option<Mm>,
    /// The least wanted, where two are named.
    #[serde(skip_serializing_if = "Option::is_none")]
    lower_mm: Option<Mm>,
    /// The most.
    #[serde(skip_serializing_if = "Option::is_none")]
    upper_mm: Option<Mm>,
    /// The thread's designation.
    #[serde(skip_serializing_if = "Option::is_none")]
    designation: Option<&'a str>,
    /// The unit that its sizes are typed in: `mm` or `in`.
    unit: &'static str,
    /// How that is known: `written`, `line N` that says so, or `context`.
    unit_from: String,
    /// The class.
    #[serde(skip_serializing_if = "Option::is_none")]
    class: Option<&'a str>,
    /// How it goes with its mate, in the words of the note.
    #[serde(skip_serializing_if = "Option::is_none")]
    fit: Option<&'a str>,
    /// What it goes with.
    #[serde(skip_serializing_if = "Option::is_none")]
    mate: Option<MateFigures<'a>>,
    /// What was read.
    #[serde(skip_serializing_if = "Option::is_none")]
    reading_mm: Option<Mm>,
    /// When.
    #[serde(skip_serializing_if = "Option::is_none")]
    state: Option<State>,
    /// Said to be done.
    done: bool,
}

/// What is to be asked of a line.
#[derive(Serialize, schemars::JsonSchema)]
#[allow(clippy::struct_field_names, reason = "the key in JSON")]
pub(crate) struct Asked<'a> {
    /// The line of the note, from 1.
    line: usize,
    /// The question.
    asked: &'a str,
    /// From which byte of the line to which it is about.
    at: [usize; 2],
    /// What the note answers to it.
    #[serde(skip_serializing_if = "Option::is_none")]
    answer: Option<&'a str>,
}

/// What a line says that is no feature.
#[derive(Serialize, schemars::JsonSchema)]
pub(crate) struct Written<'a> {
    /// The line of the note, from 1.
    line: usize,
    /// Its text.
    remark: &'a str,
}

/// The objects, one a line, in the order of the note.
pub(crate) fn lines(job: &Job) -> String {
    let mut out: Vec<(usize, String)> = Vec::new();
    let mut put = |line: usize, text: String| out.push((line, text));
    for said in &job.said {
        let Some(feature) = job.features.get(said.feature) else { continue };
        let part = job.parts.get(feature.part).map_or("", |part| part.name.as_str());
        let (mut nominal, mut lower, mut upper, mut thread) = (None, None, None, None);
        match &said.nominal {
            Some(NominalSize::Size(size)) => nominal = Some(*size),
            Some(NominalSize::Between(low, high)) => (lower, upper) = (Some(*low), Some(*high)),
            Some(NominalSize::Thread(name)) => thread = Some(name.as_str()),
            None => {}
        }
        let mate = said.mate.and_then(|mate| job.mates.get(mate));
        let reading = said.reading.and_then(|reading| feature.readings.get(reading));
        let mm = |length: Option<Length>| length.map(Mm);
        put(
            said.line,
            json::text(&SaidFigures {
                line: said.line,
                part,
                feature: &feature.name,
                side: feature.side,
                nominal_mm: mm(nominal),
                lower_mm: mm(lower),
                upper_mm: mm(upper),
                designation: thread,
                unit: if feature.unit == Unit::Inch { "in" } else { "mm" },
                unit_from: match feature.unit_from {
                    UnitFrom::Written => "written".to_owned(),
                    UnitFrom::Line(line) => format!("line {line}"),
                    UnitFrom::Context => "context".to_owned(),
                },
                class: feature.class.as_deref(),
                fit: mate.map(|mate| mate.fit.words.as_str()).filter(|words| !words.is_empty()),
                mate: mate.and_then(|mate| {
                    // One of several alike has the mate of them all.
                    let is_own = mate.hole == said.feature || mate.shaft == said.feature;
                    let all = || {
                        job.features.iter().position(|one| one.instances.contains(&said.feature))
                    };
                    let own = if is_own { said.feature } else { all()? };
                    let other = job.features.get(mate.other(own))?;
                    Some(MateFigures {
                        part: job.parts.get(other.part).map_or("", |part| part.name.as_str()),
                        feature: &other.name,
                        called: mate.called.as_deref(),
                        implied: other.implied,
                    })
                }),
                reading_mm: mm(reading.map(|reading| reading.size)),
                state: reading.map(|reading| reading.state),
                done: feature.done,
            }),
        );
    }
    for question in &job.questions {
        let (asked, answer) = (question.text.as_str(), question.answer.as_deref());
        let at = [question.at.start, question.at.end];
        put(question.line, json::text(&Asked { line: question.line, asked, at, answer }));
    }
    for remark in &job.remarks {
        put(remark.line, json::text(&Written { line: remark.line, remark: &remark.text }));
    }
    out.sort_by_key(|(line, _)| *line);
    out.into_iter().map(|(_, text)| text + "\n").collect()
}
