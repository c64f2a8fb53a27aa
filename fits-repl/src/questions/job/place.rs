//! Where in the note something is said: its file, its line, a caret under it.

use std::{fmt::Write as _, ops::Range};

use fits_core::job::whole::{Job, Mate};

use crate::render::text::lines::{excerpt, wrapped};

/// The note that a job was read from.
pub(super) struct Note<'a> {
    file: &'a str,
    lines: Vec<&'a str>,
}

impl<'a> Note<'a> {
    pub(super) fn new(file: &'a str, text: &'a str) -> Self {
        Self { file, lines: text.lines().collect() }
    }

    /// A line, the first is 1.
    pub(super) fn line(&self, number: usize) -> &'a str {
        number.checked_sub(1).and_then(|at| self.lines.get(at)).copied().unwrap_or_default()
    }

    /// Words about a place; all of the line where none is known.
    pub(super) fn tell(&self, out: &mut String, number: usize, at: &Range<usize>, words: &str) {
        let line = self.line(number);
        wrapped(out, "  ", &format!("{}:{number}: {words}", self.file));
        let whole = line.len() - line.trim_start().len()..line.trim_end().len();
        let at = if at.is_empty() { &whole } else { at };
        let (shown, start, end) = excerpt(line, at.start.min(line.len()), at.end.min(line.len()));
        let caret = "^".repeat(end.saturating_sub(start).max(1));
        let _ = writeln!(out, "      {shown}\n      {}{caret}", " ".repeat(start));
    }

    /// Words about a joint, at the feature that its line names.
    pub(super) fn tell_joint(&self, out: &mut String, job: &Job, mate: &Mate, words: &str) {
        let named = [mate.shaft, mate.hole]
            .into_iter()
            .filter_map(|at| job.features.get(at))
            .find(|feature| feature.line == mate.line);
        self.tell(out, mate.line, &named.map_or(0..0, |feature| feature.at.clone()), words);
    }
}
