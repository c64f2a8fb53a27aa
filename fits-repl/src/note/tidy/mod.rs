//! The tidy form: what the program itself writes of a note, a part at the
//! margin and a sentence for each feature under it, and reads back as it is.
//!
//! ```text
//! # tidy job
//! part crank shaft; of crs; 2 off
//!   journal L: shaft 0.75in; read 0.7493in on 10/11; goes in bushings: id; fit running
//!   > a remark
//! ? a question; what would settle it
//! | a line as the person wrote it
//! ```

mod reader;

pub(super) use self::reader::read;

use std::fmt::Write as _;

use fits_core::{
    job::whole::{Job, Mate, NominalSize, NotedRemark, PartFeature, Question, SizeKind, State},
    size::Unit,
};

use crate::questions::job::page::exact;

/// The first line of a tidy note.
const HEAD: &str = "# tidy job";

pub(super) const SIDES: [SizeKind; 5] =
    [SizeKind::Hole, SizeKind::Shaft, SizeKind::Thread, SizeKind::Length, SizeKind::Other];

pub(super) fn is_tidy(text: &str) -> bool {
    text.lines().next().is_some_and(|line| line.trim_end() == HEAD)
}

/// A text in which no sign of the form stands bare.
fn plain(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.trim().chars() {
        if matches!(c, ';' | ':' | '\\' | '~' | '>' | '?') {
            out.push('\\');
        }
        out.push(if c.is_control() { ' ' } else { c });
    }
    out
}

/// The pieces between a bare sign.
pub(super) fn pieces(text: &str, sign: char) -> Vec<&str> {
    let mut escaped = false;
    let is_sign = |c: char| {
        let is = c == sign && !escaped;
        escaped = c == '\\' && !escaped;
        is
    };
    text.split(is_sign).map(str::trim).collect()
}

pub(super) fn bare(text: &str) -> String {
    let mut escaped = false;
    let keeps = |c: &char| {
        escaped = *c == '\\' && !escaped;
        !escaped
    };
    text.trim().chars().filter(keeps).collect()
}

/// Names, numbered behind `~` where two are alike.
fn numbered(names: impl Iterator<Item = String>) -> Vec<String> {
    let mut seen = std::collections::HashMap::<String, usize>::new();
    let call = |name: String| {
        let before = seen.entry(name.clone()).or_default();
        *before += 1;
        if *before > 1 { format!("{name} ~{before}") } else { name }
    };
    names.map(call).collect()
}

/// What each part is called: `bush`, `bush ~2`.
fn part_calls(job: &Job) -> Vec<String> {
    numbered(job.parts.iter().map(|part| plain(&part.name)))
}

/// What each feature is called: its part and its name.
pub(super) fn calls(job: &Job) -> Vec<String> {
    let parts = part_calls(job);
    numbered(job.features.iter().map(|feature| {
        let part = parts.get(feature.part).map_or("", String::as_str);
        format!("{part}: {}", plain(&feature.name))
    }))
}

/// The job in the tidy form; behind it all that the person wrote, as written.
pub(super) fn write(job: &Job, text: &str) -> String {
    let mut out = format!("{HEAD}\n");
    if let Some(title) = &job.title {
        let _ = writeln!(out, "title {}", plain(title));
    }
    let calls = calls(job);
    let part_calls = part_calls(job);
    let mut of_part = vec![Vec::new(); job.parts.len()];
    for (at, feature) in job.features.iter().enumerate() {
        of_part[feature.part].push(at);
    }
    let mut into = vec![Vec::new(); job.features.len()];
    for (at, mate) in job.mates.iter().enumerate() {
        into[mate.shaft].push(at);
    }
    // Where a feature has several, the first one counts: their order is told
    // where it is not that of the parts.
    let by_parts: Vec<usize> =
        of_part.iter().flatten().flat_map(|at: &usize| into[*at].clone()).collect();
    let is_told = !by_parts.is_sorted();
    let mut one_of: Vec<Option<usize>> = vec![None; job.features.len()];
    for (at, feature) in job.features.iter().enumerate() {
        for one in &feature.instances {
            one_of[*one] = Some(at);
        }
    }
    let mut said: Vec<(usize, Beside)> =
        job.remarks.iter().map(|it| (it.line, Beside::It(it))).collect();
    said.extend(job.questions.iter().map(|it| (it.line, Beside::Asked(it))));
    said.sort_by_key(|(line, _)| *line);
    let mut said = said.into_iter().peekable();
    let mut current = None;
    for (at, part) in job.parts.iter().enumerate() {
        while let Some((_, one)) = said.next_if(|(line, _)| *line < part.line) {
            one.write(&mut out, &part_calls, current);
        }
        let _ = write!(out, "part {}", part_calls[at]);
        if let Some(material) = &part.material {
            let _ = write!(out, "; of {}", plain(material));
        }
        if let Some(count) = part.count {
            let _ = write!(out, "; {count} off");
        }
        out.push_str(if part.bought { "; bought\n" } else { "\n" });
        current = Some(at);
        for &at in &of_part[at] {
            feature(&mut out, &job.features[at]);
            if let Some(all) = one_of[at] {
                let _ = write!(out, "; one of {}", calls[all]);
            }
            for &number in &into[at] {
                let mate = &job.mates[number];
                goes(&mut out, mate, &calls[mate.hole], job.features[at].unit);
                if is_told {
                    let _ = write!(out, "; joint {}", number + 1);
                }
            }
            out.push('\n');
        }
    }
    for (_, one) in said {
        one.write(&mut out, &part_calls, current);
    }
    if is_tidy(text) {
        out.extend(
            text.lines().filter(|line| line.starts_with('|')).map(|line| format!("{line}\n")),
        );
    } else {
        out.extend(text.lines().map(|line| format!("{}\n", format!("| {line}").trim_end())));
    }
    out
}

/// What stands beside the features.
enum Beside<'a> {
    It(&'a NotedRemark),
    Asked(&'a Question),
}

impl Beside<'_> {
    fn write(&self, out: &mut String, calls: &[String], current: Option<usize>) {
        match self {
            Self::It(NotedRemark { text, part, .. }) => {
                let text = plain(text);
                let name = |part: usize| calls.get(part).map_or("", String::as_str);
                let _ = match part {
                    None => writeln!(out, "> {text}"),
                    Some(part) if Some(*part) == current => writeln!(out, "  > {text}"),
                    Some(part) => writeln!(out, "> {}: {text}", name(*part)),
                };
            }
            Self::Asked(Question { text, answer, by_writer, .. }) => {
                let sign = if *by_writer { "??" } else { "?" };
                let answer = answer.as_ref().map(|it| format!("; {}", plain(it)));
                let _ = writeln!(out, "{sign} {}{}", plain(text), answer.unwrap_or_default());
            }
        }
    }
}

fn sized(nominal: &NominalSize, unit: Unit) -> String {
    match nominal {
        NominalSize::Size(size) => exact(*size, unit),
        NominalSize::Between(low, high) => {
            format!("{} to {}", exact(*low, unit), exact(*high, unit))
        }
        NominalSize::Thread(name) => format!("of {}", plain(name)),
    }
}

pub(super) fn feature(out: &mut String, one: &PartFeature) {
    let _ = write!(out, "  {}: {}", plain(&one.name), one.side.word());
    let size = one.nominal.as_ref().map(|nominal| sized(nominal, one.unit)).unwrap_or_default();
    if !size.is_empty() {
        let _ = write!(out, " {size}");
    }
    if !size.ends_with(one.unit.symbol()) {
        out.push_str(if one.unit == Unit::Inch { "; inches" } else { "; millimetres" });
    }
    if let Some(class) = &one.class {
        let _ = write!(out, "; class {}", plain(class));
    }
    if let Some(off) = one.deviations {
        let _ = write!(
            out,
            "; off {} to {}",
            exact(off.lower(), one.unit),
            exact(off.upper(), one.unit)
        );
    }
    for (flag, word) in [(one.done, "done"), (one.implied, "not listed")] {
        if flag {
            let _ = write!(out, "; {word}");
        }
    }
    for (_, was) in &one.earlier {
        let _ = write!(out, "; was {}", sized(was, one.unit));
    }
    for reading in &one.readings {
        let _ = write!(out, "; read {}", exact(reading.size, one.unit));
        out.push_str(match reading.state {
            State::Free => "",
            State::InPlace => " in place",
            State::OldPart => " old part",
        });
        if let Some(date) = &reading.date {
            let _ = write!(out, " on {}", plain(date));
        }
    }
}

pub(super) fn goes(out: &mut String, mate: &Mate, hole: &str, unit: Unit) {
    let _ = write!(out, "; goes in {hole}");
    if !mate.fit.words.is_empty() {
        let _ = write!(out, "; fit {}", plain(&mate.fit.words));
    }
    if let Some(word) = mate.fit.word.filter(|word| word.name() != mate.fit.words) {
        let _ = write!(out, "; as {}", word.name());
    }
    if let Some(play) = mate.fit.clearance {
        let _ = write!(
            out,
            "; clearance {} to {}",
            exact(play.lower(), unit),
            exact(play.upper(), unit)
        );
    }
    if let Some(called) = &mate.called {
        let _ = write!(out, "; called {}", plain(called));
    }
}
