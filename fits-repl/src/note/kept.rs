//! A figure of a line that stands nowhere in the job is kept: its line is a remark.

use std::ops::Range;

use fits_core::{
    Length,
    job::whole::{Job, NominalSize, NotedRemark},
    size::Unit,
};

use super::{
    dates, lines,
    token::{Kind, Num, Token, tokens},
};

/// Adds a remark for each line that has a figure which no size, reading, fit, name,
/// count, question or remark holds: `12mm plate`.
pub(super) fn figures(job: &mut Job, text: &[&str]) {
    for (at, raw) in text.iter().enumerate() {
        let line = at + 1;
        if raw.is_empty() || job.remarks.iter().any(|remark| remark.line == line) {
            continue;
        }
        let (_, start) = lines::bullet(raw);
        let from = dates::date(&raw[start..], true).map_or(start, |(_, end)| start + end);
        let held = Held::of(job, line);
        let is_kept = |num: &Num| num.at.start < from || held.has(num, raw);
        let found = tokens(raw, 0);
        let all_kept = found.iter().enumerate().all(|(at, token)| match &token.kind {
            Kind::Num(num) => is_kept(num) || is_ordinal(&found, at),
            Kind::Range(low, high) => is_kept(low) && is_kept(high),
            Kind::Dims(nums) => nums.iter().all(is_kept),
            Kind::Word(word) => !word.starts_with(|c: char| c.is_ascii_digit()),
            _ => true,
        });
        if !all_kept {
            let remark = NotedRemark { line, text: raw.trim().to_owned(), part: None };
            let place = job.remarks.partition_point(|before| before.line <= line);
            job.remarks.insert(place, remark);
        }
    }
}

/// `4. Nut`, `nr 12`: a number that numbers something.
fn is_ordinal(found: &[Token], at: usize) -> bool {
    let is_sign = |token: &Token, signs: &[char]| signs.iter().any(|sign| token.is_sign(*sign));
    let next = found.get(at + 1);
    let opens = at == 0 && next.is_some_and(|next| is_sign(next, &['.', ')']));
    // `| 3 | shaft | …`: the number of the row.
    let in_cell = at == 1 && is_sign(&found[0], &['|']);
    let opens = opens || in_cell && next.is_some_and(|next| is_sign(next, &['|']));
    let before = at.checked_sub(1).and_then(|at| found[at].word());
    opens || matches!(before, Some("nr" | "no" | "nos" | "item" | "joint" | "number"))
}

/// What the job holds of one line.
struct Held<'a> {
    lengths: Vec<Length>,
    texts: Vec<&'a str>,
    counts: Vec<u32>,
    asked: Vec<Range<usize>>,
}

impl<'a> Held<'a> {
    fn of(job: &'a Job, line: usize) -> Self {
        let mut held = Self {
            lengths: Vec::new(),
            texts: job.parts.iter().map(|part| part.name.as_str()).collect(),
            counts: job.parts.iter().filter_map(|part| part.count).collect(),
            asked: Vec::new(),
        };
        held.texts.extend(job.parts.iter().filter_map(|part| part.material.as_deref()));
        for feature in &job.features {
            held.texts.push(&feature.name);
            held.texts.extend(feature.class.as_deref());
            for reading in feature.readings.iter().filter(|reading| reading.line == line) {
                held.lengths.push(reading.size);
            }
            for (_, size) in feature.earlier.iter().filter(|(at, _)| *at == line) {
                held.size(size);
            }
            if feature.line == line {
                held.lengths.extend(
                    feature.deviations.iter().flat_map(|given| [given.lower(), given.upper()]),
                );
                feature.nominal.iter().for_each(|size| held.size(size));
            }
        }
        for said in job.said.iter().filter(|said| said.line == line) {
            said.nominal.iter().for_each(|size| held.size(size));
        }
        for mate in &job.mates {
            held.texts.push(&mate.fit.words);
            held.texts.extend(mate.called.as_deref());
            let clearance = mate.fit.clearance.filter(|_| mate.line == line);
            held.lengths.extend(clearance.iter().flat_map(|it| [it.lower(), it.upper()]));
        }
        for question in job.questions.iter().filter(|question| question.line == line) {
            held.asked.push(question.at.clone());
        }
        held
    }

    fn size(&mut self, size: &'a NominalSize) {
        match size {
            NominalSize::Size(size) => self.lengths.push(*size),
            NominalSize::Between(low, high) => self.lengths.extend([*low, *high]),
            NominalSize::Thread(name) => self.texts.push(name),
        }
    }

    /// Is a number of the line among them, in whichever unit it was taken?
    fn has(&self, num: &Num, raw: &str) -> bool {
        let said = raw.get(num.at.clone()).unwrap_or_default().trim();
        let lengths = [Unit::Inch, Unit::Millimetre].map(|unit| num.length(unit));
        lengths.iter().flatten().any(|one| {
            let is = |held: &Length| held.tenth_nanometres().abs() == one.tenth_nanometres().abs();
            self.lengths.iter().any(is)
        }) || self.texts.iter().any(|text| text.contains(said))
            || num.is_whole() && self.counts.iter().any(|count| i128::from(*count) == num.over)
            || self.asked.iter().any(|at| at.start < num.at.end && num.at.start < at.end)
    }
}
