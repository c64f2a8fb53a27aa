//! A job as JSON, an object for each thing that a line of the note says.

use fits_core::{
    Length,
    job::whole::{Job, Nominal, Side, State, UnitFrom},
    size::Unit,
};
use serde::Serialize;

use crate::{answer::Mm, render::json};

/// The other side of a joint.
#[derive(Serialize, schemars::JsonSchema)]
struct MateFigures<'a> {
    part: &'a str,
    feature: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    called: Option<&'a str>,
    implied: bool,
}

/// What a line says of a feature.
#[derive(Serialize, schemars::JsonSchema)]
struct SaidFigures<'a> {
    line: usize,
    part: &'a str,
    feature: &'a str,
    side: Side,
    #[serde(skip_serializing_if = "Option::is_none")]
    nominal_mm: Option<Mm>,
    #[serde(skip_serializing_if = "Option::is_none")]
    lower_mm: Option<Mm>,
    #[serde(skip_serializing_if = "Option::is_none")]
    upper_mm: Option<Mm>,
    #[serde(skip_serializing_if = "Option::is_none")]
    designation: Option<&'a str>,
    unit: &'static str,
    unit_from: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    class: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    fit: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    mate: Option<MateFigures<'a>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    reading_mm: Option<Mm>,
    #[serde(skip_serializing_if = "Option::is_none")]
    state: Option<State>,
    done: bool,
}

#[derive(Serialize, schemars::JsonSchema)]
#[allow(clippy::struct_field_names, reason = "the key in JSON")]
struct Asked<'a> {
    line: usize,
    asked: &'a str,
    at: [usize; 2],
    #[serde(skip_serializing_if = "Option::is_none")]
    answer: Option<&'a str>,
}

#[derive(Serialize, schemars::JsonSchema)]
struct Written<'a> {
    line: usize,
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
            Some(Nominal::Size(size)) => nominal = Some(*size),
            Some(Nominal::Between(low, high)) => (lower, upper) = (Some(*low), Some(*high)),
            Some(Nominal::Thread(name)) => thread = Some(name.as_str()),
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
