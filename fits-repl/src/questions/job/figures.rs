//! A job's figures: the limits of every feature, for JSON and for the record.

use fits_core::{
    job::whole::{Job, NominalSize, SizeKind, State},
    shop::Reading,
    source::Known,
};
use serde::Serialize;

use crate::answer::Mm;

/// One feature: what to cut it to, and what was read.
#[derive(Clone, Debug, Serialize, schemars::JsonSchema)]
pub struct CutFigures {
    /// The line of the note that names it.
    pub note_line: usize,
    /// The part.
    pub part: String,
    /// The feature.
    #[serde(rename = "feature_name")]
    pub feature: String,
    /// Hole, shaft, thread, length or other.
    pub side: SizeKind,
    /// The size wanted.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub size_mm: Option<Mm>,
    /// The thread's designation.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub thread: Option<String>,
    /// The least that it may measure.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lower_mm: Option<Mm>,
    /// The most.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub upper_mm: Option<Mm>,
    /// What to aim at.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub aim_mm: Option<Mm>,
    /// How the limits are known.
    pub known: Known,
    /// What it goes with, and how.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub mates: String,
    /// What was read.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reading_mm: Option<Mm>,
    /// When.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub state: Option<State>,
    /// The date beside it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub date: Option<String>,
    /// The reading against the limits.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub verdict: Option<&'static str>,
    /// Said to be done.
    pub done: bool,
}

/// The figures of all features that stand for themselves.
pub(crate) fn figures(job: &Job) -> Vec<CutFigures> {
    let worked = job.worked();
    let one = |(at, feature): (usize, &fits_core::job::whole::PartFeature)| {
        let limits = worked.limits(at).and_then(Result::ok).map(|(limits, _)| limits);
        let reading = feature.reading();
        let verdict = limits.zip(feature.side.surface()).zip(reading).and_then(
            |((limits, surface), reading)| {
                Reading::judge(surface, limits, reading.size)
                    .ok()
                    .map(|judged| judged.verdict.word())
            },
        );
        let mates: Vec<String> = worked
            .mates_of(at)
            .map(|(_, mate)| {
                format!("{} {}", mate.fit.words, job.full_name(mate.other(at))).trim().to_owned()
            })
            .collect();
        CutFigures {
            note_line: feature.line,
            part: job.parts.get(feature.part).map(|part| part.name.clone()).unwrap_or_default(),
            feature: feature.name.clone(),
            side: feature.side,
            size_mm: feature.nominal.as_ref().and_then(NominalSize::size).map(Mm),
            thread: match &feature.nominal {
                Some(NominalSize::Thread(name)) => Some(name.clone()),
                _ => None,
            },
            lower_mm: limits.map(|limits| Mm(limits.lower())),
            upper_mm: limits.map(|limits| Mm(limits.upper())),
            aim_mm: limits.map(|limits| Mm(limits.middle())),
            known: limits.map_or(Known::Given, fits_core::Limits::known),
            mates: mates.join("; "),
            reading_mm: reading.map(|reading| Mm(reading.size)),
            state: reading.map(|reading| reading.state),
            date: reading.and_then(|reading| reading.date.clone()),
            verdict,
            done: feature.done,
        }
    };
    job.features.iter().enumerate().filter(|(at, _)| !job.is_split(*at)).map(one).collect()
}

/// The record: all features, limits and readings, a row each.
pub(crate) fn csv(job: &Job) -> String {
    let mut out = "line,part,feature,side,size_mm,thread,lower_mm,upper_mm,aim_mm,mates,reading_mm,state,date,verdict,done\r\n".to_owned();
    for row in figures(job) {
        let mm = |size: Option<Mm>| {
            size.map(|size| size.0.millimetres().to_string()).unwrap_or_default()
        };
        let state = match row.state {
            Some(State::InPlace) => "in place",
            Some(State::OldPart) => "old part",
            Some(State::Free) => "free",
            None => "",
        };
        let cells = [
            row.note_line.to_string(),
            row.part,
            row.feature,
            row.side.word().to_owned(),
            mm(row.size_mm),
            row.thread.unwrap_or_default(),
            mm(row.lower_mm),
            mm(row.upper_mm),
            mm(row.aim_mm),
            row.mates,
            mm(row.reading_mm),
            state.to_owned(),
            row.date.unwrap_or_default(),
            row.verdict.unwrap_or_default().to_owned(),
            if row.done { "done" } else { "" }.to_owned(),
        ];
        out.push_str(&cells.map(|cell| quoted(&cell)).join(","));
        out.push_str("\r\n");
    }
    out
}

/// A cell as RFC 4180 has it; a spreadsheet runs none as a formula.
fn quoted(cell: &str) -> String {
    let formula = cell.starts_with(['=', '+', '-', '@', '\t']) && cell.parse::<f64>().is_err();
    let cell = if formula { format!("'{cell}") } else { cell.to_owned() };
    if cell.contains([',', '"', '\n', '\r']) {
        format!("\"{}\"", cell.replace('"', "\"\""))
    } else {
        cell
    }
}
