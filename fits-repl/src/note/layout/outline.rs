//! An outline of numbered parts with lettered features: their names, so that `2b` is
//! known wherever it stands.

use std::ops::Range;

use super::{
    Opened,
    labels::{self, Style},
    names, references,
    spelled::Spelled,
};

/// How many parts, and how many features among them, make an outline.
const PARTS: usize = 3;
const FEATURES: usize = 2;
/// How many numbered parts without letters, with lines further in under some of them.
const BARE_PARTS: usize = 5;

/// A part of an outline.
pub(super) struct Numbered {
    pub(super) name: String,
    /// Its features in the order of their letters.
    pub(super) features: Vec<Lettered>,
    line: usize,
}

/// A feature of it.
pub(super) struct Lettered {
    /// Blank where its line says none.
    pub(super) name: String,
    /// What stands behind its name: its letter, where another is called so too.
    mark: String,
    /// The place of its name in its line.
    at: Range<usize>,
}

impl Lettered {
    /// Its name with the mark that tells it from others.
    pub(super) fn full(&self) -> String {
        format!("{}{}", self.name, self.mark)
    }
}

/// What a line opens.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Opens {
    Nothing,
    /// A part, whose name begins there.
    Part(usize),
    /// A feature of a part, by its letter; where its text begins.
    Feature(usize, usize),
}

/// The parts of an outline and what each line of the note opens.
pub(super) struct Outline {
    pub(super) parts: Vec<Numbered>,
    lines: Vec<Opens>,
    /// The part that each line stands under.
    under: Vec<Option<usize>>,
}

impl Outline {
    /// The outline of a note: numbers that run from 1, at least three, each with a name,
    /// and letters under them; or more, with lines further in under them.
    pub(super) fn of(lines: &[&str]) -> Option<Self> {
        let mut found = Self { parts: Vec::new(), lines: Vec::new(), under: Vec::new() };
        let mut style = None;
        for (at, raw) in lines.iter().enumerate() {
            let opens = found.opens(raw, at + 1, &mut style)?;
            let above = found.under.last().copied().flatten();
            let goes_on = above.filter(|_| raw.starts_with([' ', '\t']));
            let last = found.parts.len().checked_sub(1);
            found.under.push(if opens == Opens::Nothing { goes_on } else { last });
            found.lines.push(opens);
        }
        let features: usize = found.parts.iter().map(|part| part.features.len()).sum();
        // A table has its own way with numbers.
        let is_row = |line: &str| line.contains(['|', '\t']);
        let further_in = (1..lines.len()).filter(|at| {
            lines[*at].starts_with(' ')
                && matches!(found.lines[at - 1], Opens::Part(_))
                && !is_row(lines[*at])
        });
        let is = found.parts.len() >= PARTS && features >= FEATURES
            || found.parts.len() >= BARE_PARTS && further_in.count() > 1;
        found.parts.iter_mut().for_each(Numbered::tell_apart);
        is.then_some(found)
    }

    /// What a line opens. A running number before an order makes the note a list of
    /// what is to be done: `2) Turn the screw`.
    fn opens(&mut self, raw: &str, line: usize, style: &mut Option<Style>) -> Option<Opens> {
        let number = self.parts.len();
        if let Some((written, next, start)) = labels::number(raw)
            && next == number + 1
            && style.is_none_or(|style| style == written)
        {
            let Some(end) = names::of_part(raw, start) else {
                return (number == 0).then_some(Opens::Nothing);
            };
            *style = Some(written);
            let name = raw[start..end].to_owned();
            self.parts.push(Numbered { name, features: Vec::new(), line });
            return Some(Opens::Part(start));
        }
        let Some(part) = self.parts.last_mut() else { return Some(Opens::Nothing) };
        let found = labels::letter(raw, number).filter(|(at, _)| *at == part.features.len());
        Some(found.map_or(Opens::Nothing, |(letter, start)| {
            let at = names::of_feature(raw, start);
            let name = raw[at.clone()].to_owned();
            part.features.push(Lettered { name, mark: String::new(), at });
            Opens::Feature(letter, start)
        }))
    }

    /// The parts, with the place of each name in its line as it is spelled out.
    pub(super) fn opened(&self) -> Vec<Opened> {
        self.parts.iter().map(|part| Opened { line: part.line, at: 0..part.name.len() }).collect()
    }

    /// A line with its own mark taken off and each reference as the names it stands for.
    pub(super) fn spelled(&self, at: usize, raw: &str) -> Spelled {
        let under = self.under[at];
        let mut pieces = Vec::new();
        let mut from = 0;
        match (self.lines[at], under.map(|part| &self.parts[part])) {
            (Opens::Part(start), Some(part)) => {
                pieces.push((0..start, String::new()));
                from = start + part.name.len();
            }
            (Opens::Feature(letter, start), Some(part)) => {
                // At the margin it stands under its part all the same.
                let indent = raw.len() - raw.trim_start().len();
                let lead = if indent == 0 { "  " } else { "" };
                pieces.push((indent..start, lead.to_owned()));
                from = start;
                let feature = &part.features[letter];
                if !feature.mark.is_empty() {
                    from = feature.at.end;
                    pieces.push((feature.at.clone(), feature.full()));
                }
            }
            _ => {}
        }
        pieces.extend(references::of(self, raw, from, under));
        Spelled::of(raw, pieces)
    }
}

impl Numbered {
    /// Two features of one name are told apart by their letters: `journal A`, `journal B`;
    /// `bore A` and `bore B` where the second line says `13/16 ream`.
    fn tell_apart(&mut self) {
        let names: Vec<String> = self.features.iter().map(|one| names::kind(&one.name)).collect();
        for (at, feature) in self.features.iter_mut().enumerate() {
            let alike = names.iter().filter(|name| **name == names[at]).count();
            if alike > 1 && !feature.name.is_empty() {
                if names::is_work(&feature.name) {
                    "bore".clone_into(&mut feature.name);
                }
                let letter = char::from(b'A' + u8::try_from(at).unwrap_or_default());
                feature.mark = format!(" {letter}");
            }
        }
    }
}
