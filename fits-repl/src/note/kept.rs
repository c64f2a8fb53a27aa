//! A figure of a line that stands nowhere in the job is kept: its line is a remark.

use std::{
    collections::{HashMap, HashSet},
    ops::Range,
};

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
    let held = Held::of(job);
    let is_lost = |(at, raw): &(usize, &&str)| {
        let line = at + 1;
        if raw.is_empty() || held.remarked.contains(&line) {
            return false;
        }
        let (_, start) = lines::bullet(raw);
        let from = dates::date(&raw[start..], true).map_or(start, |(_, end)| start + end);
        let is_kept = |num: &Num| num.at.start < from || held.has(line, num, raw);
        let found = tokens(raw, 0);
        !found.iter().enumerate().all(|(at, token)| match &token.kind {
            Kind::Num(num) => is_kept(num) || is_ordinal(&found, at),
            Kind::Range(low, high) => is_kept(low) && is_kept(high),
            Kind::Dims(nums) => nums.iter().all(is_kept),
            Kind::Word(word) => !word.starts_with(|c: char| c.is_ascii_digit()),
            _ => true,
        })
    };
    let lost: Vec<NotedRemark> = (text.iter().enumerate())
        .filter(is_lost)
        .map(|(at, raw)| NotedRemark { line: at + 1, text: raw.trim().to_owned(), part: None })
        .collect();
    job.remarks.extend(lost);
    job.remarks.sort_by_key(|remark| remark.line);
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

/// What the job holds of each line, and what its names have of figures.
#[derive(Default)]
struct Held {
    lengths: HashMap<usize, Vec<Length>>,
    asked: HashMap<usize, Vec<Range<usize>>>,
    remarked: HashSet<usize>,
    /// The words of names, fits and materials that have figures.
    words: HashSet<String>,
    counts: HashSet<u32>,
}

impl Held {
    fn of(job: &Job) -> Self {
        let mut held = Self::default();
        for part in &job.parts {
            held.name(&part.name);
            part.material.iter().for_each(|material| held.name(material));
            held.counts.extend(part.count);
        }
        for feature in &job.features {
            held.name(&feature.name);
            feature.class.iter().for_each(|class| held.name(class));
            for reading in &feature.readings {
                held.lengths.entry(reading.line).or_default().push(reading.size);
            }
            for (line, size) in &feature.earlier {
                held.size(*line, size);
            }
            let own = held.lengths.entry(feature.line).or_default();
            own.extend(feature.deviations.iter().flat_map(|it| [it.lower(), it.upper()]));
            feature.nominal.iter().for_each(|size| held.size(feature.line, size));
        }
        for said in &job.said {
            said.nominal.iter().for_each(|size| held.size(said.line, size));
        }
        for mate in &job.mates {
            held.name(&mate.fit.words);
            mate.called.iter().for_each(|called| held.name(called));
            let own = held.lengths.entry(mate.line).or_default();
            own.extend(mate.fit.clearance.iter().flat_map(|it| [it.lower(), it.upper()]));
        }
        for question in &job.questions {
            held.asked.entry(question.line).or_default().push(question.at.clone());
        }
        held.remarked.extend(job.remarks.iter().map(|remark| remark.line));
        held
    }

    fn name(&mut self, text: &str) {
        let words = text.split([' ', ',', '(', ')']);
        let has_figure = |word: &&str| word.contains(|c: char| c.is_ascii_digit());
        self.words.extend(words.filter(has_figure).map(str::to_owned));
    }

    fn size(&mut self, line: usize, size: &NominalSize) {
        let own = self.lengths.entry(line).or_default();
        match size {
            NominalSize::Size(size) => own.push(*size),
            NominalSize::Between(low, high) => own.extend([*low, *high]),
            NominalSize::Thread(name) => self.name(name),
        }
    }

    /// Is a number of the line among them, in whichever unit it was taken?
    fn has(&self, line: usize, num: &Num, raw: &str) -> bool {
        let said = raw.get(num.at.clone()).unwrap_or_default().trim();
        let lengths = [Unit::Inch, Unit::Millimetre].map(|unit| num.length(unit));
        let own = self.lengths.get(&line).map_or(&[][..], Vec::as_slice);
        lengths.iter().flatten().any(|one| {
            let is = |held: &Length| held.tenth_nanometres().abs() == one.tenth_nanometres().abs();
            own.iter().any(is)
        }) || self.words.contains(said)
            || num.is_whole() && u32::try_from(num.over).is_ok_and(|of| self.counts.contains(&of))
            || (self.asked.get(&line).into_iter().flatten())
                .any(|at| at.start < num.at.end && num.at.start < at.end)
    }
}
