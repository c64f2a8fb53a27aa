//! Layouts in which marks stand for words: they are spelled out before the note is read.
//!
//! ```text
//! 1 Screw                         Screw
//!   a) journal 5/8, runs in 2a      journal 5/8, runs in Nut bore
//! x pin 3/8                       [x] pin 3/8
//! ```
//!
//! What is read of such a line stands in the job at its place in the line as it was written.

mod labels;
mod names;
mod outline;
mod references;
mod spelled;
mod ticks;

use std::{borrow::Cow, ops::Range};

use fits_core::job::whole::Job;

use outline::Outline;
use spelled::Spelled;
use ticks::Ticks;

/// A part whose name stands behind its number.
pub(super) struct Opened {
    pub(super) line: usize,
    /// The place of its name in the line as it is spelled out.
    pub(super) at: Range<usize>,
}

/// How a note is laid out, and its lines spelled out.
#[derive(Default)]
pub(super) struct Layout {
    /// None where nothing was to be spelled out.
    lines: Vec<Spelled>,
    pub(super) parts: Vec<Opened>,
    ticks: Ticks,
}

impl Layout {
    /// The layout of a note.
    pub(super) fn of(text: &str) -> Self {
        let lines: Vec<&str> = text.lines().map(str::trim_end).collect();
        if let Some(outline) = Outline::of(&lines) {
            let spelled = (0..lines.len()).map(|at| outline.spelled(at, lines[at])).collect();
            return Self { lines: spelled, parts: outline.opened(), ..Self::default() };
        }
        Ticks::of(&lines).map_or_else(Self::default, |ticks| {
            let spelled = lines.iter().map(|line| ticks.spelled(line)).collect();
            Self { lines: spelled, ticks, ..Self::default() }
        })
    }

    /// The note as it is read.
    pub(super) fn text<'a>(&self, text: &'a str) -> Cow<'a, str> {
        if self.lines.is_empty() {
            return Cow::Borrowed(text);
        }
        Cow::Owned(self.lines.iter().flat_map(|line| [line.text.as_str(), "\n"]).collect())
    }

    /// The part that a line opens by its number.
    pub(super) fn opens(&self, line: usize) -> Option<usize> {
        self.parts.iter().position(|part| part.line == line)
    }

    /// Is the line the heading of lines with ticks?
    pub(super) fn is_heading(&self, line: usize) -> bool {
        self.ticks.headings.contains(&line)
    }

    /// Puts what the job holds of each line at its place in the line as it was written.
    pub(super) fn restore(&self, job: &mut Job, text: &str) {
        if self.lines.is_empty() {
            return;
        }
        let line = |number: usize| self.lines.get(number.wrapping_sub(1));
        let put = |number: usize, at: &mut Range<usize>| {
            if let Some(line) = line(number) {
                *at = line.original(at);
            }
        };
        for feature in &mut job.features {
            put(feature.line, &mut feature.at);
            for reading in &mut feature.readings {
                put(reading.line, &mut reading.at);
            }
        }
        let written: Vec<&str> = text.lines().collect();
        let said = |number: usize, said: &mut String| {
            if line(number).is_some_and(|line| line.text.trim() == said.as_str()) {
                written[number - 1].trim().clone_into(said);
            }
        };
        for question in &mut job.questions {
            put(question.line, &mut question.at);
            said(question.line, &mut question.text);
        }
        for remark in &mut job.remarks {
            said(remark.line, &mut remark.text);
        }
    }
}
