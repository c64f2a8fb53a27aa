//! Where in the note a line stands: whose it is, and whether it was measured.

use super::{
    Line, dates, joint_rows,
    lexicon::{self, feature},
    lines,
    look::is_prose,
    names::Names,
    token::{Kind, Token, tokens},
};

/// What the lines above say of the next, and how the note is laid out.
#[derive(Default)]
#[allow(clippy::struct_excessive_bools, reason = "each is something the lines above may say")]
pub(super) struct Place {
    /// The part that the lines below its name belong to.
    pub(super) current: Option<usize>,
    /// The current part stands above its lines as a heading.
    pub(super) is_heading: bool,
    /// The date of the readings that an indented line goes on with.
    pub(super) hangs: Option<String>,
    /// A heading says that all under it was measured.
    measured: bool,
    /// It is not set off from them: a blank line ends them.
    flat: bool,
    pub(super) dated: bool,
    /// A line with a date stands above in this paragraph.
    pub(super) under_date: bool,
    /// Bullets at the margin open parts, those further in are of them.
    pub(super) outline: bool,
    /// Its lines are sentences: what is not sure is asked, line by line.
    pub(super) prose: bool,
    has_text: bool,
    /// The note is parted by headings that say how joints go together.
    pub(super) has_fits: bool,
    /// The one that the line stands under.
    pub(super) fit: Option<String>,
    /// A blank line was read; one stands above this line.
    blank: bool,
    pub(super) after_blank: bool,
}

impl Place {
    /// The beginning of a note.
    pub(super) fn of(text: &str) -> Self {
        Self {
            outline: lines::is_outline(text),
            prose: is_prose(text),
            has_fits: joint_rows::has_fit_headings(text),
            ..Self::default()
        }
    }

    /// A blank line: a new paragraph names its own part, and is no more of what was measured.
    pub(super) fn blank_line(&mut self) {
        self.measured &= !std::mem::take(&mut self.flat);
        self.current = self.current.filter(|_| !self.prose);
        (self.blank, self.under_date) = (true, false);
    }

    /// A heading: what stands under it is of no part that stood above.
    pub(super) fn ends_part(&mut self) {
        (self.current, self.is_heading, self.hangs) = (None, false, None);
    }

    /// A line that is not blank; is it the first?
    pub(super) fn begins(&mut self) -> bool {
        self.after_blank = std::mem::take(&mut self.blank);
        !std::mem::replace(&mut self.has_text, true)
    }

    /// A line at this place, of which nothing is read yet.
    pub(super) fn line(&self, number: usize) -> Line {
        Line { number, prose: self.prose, ..Line::default() }
    }

    /// Is a line further in, or with such a mark, still of what was measured?
    pub(super) fn stays_measured(&mut self, raw: &str) {
        self.measured &= self.flat || lines::bullet(raw).1 > 0 && !raw.starts_with('#');
    }

    /// `## Measured so far`: the lines under it are readings.
    pub(super) fn heads_readings(
        &mut self,
        names: &Names,
        raw: &str,
        found: &[Token],
        next_indented: bool,
        dated: bool,
    ) -> bool {
        let is_named = || {
            found.iter().any(|token| {
                token.word().is_some_and(|word| feature(word).is_some() || names.is_thing(word))
            })
        };
        // `WHAT I GOT`
        let all_words = found.iter().all(|token| token.word().is_some() || token.is_sign(':'));
        let last = found.iter().rev().find_map(Token::word).unwrap_or_default();
        let heads = (lexicon::heads_readings(first_word(found))
            || all_words && lexicon::surely_measured(last))
            && !dated
            && !(is_named() || raw.contains('.'))
            && found.len() < 7;
        if heads {
            (self.measured, self.current, self.hangs) = (true, None, None);
            self.flat = !next_indented;
        }
        heads
    }

    /// `14/3 measured`, with the readings under it.
    pub(super) fn dates_readings(
        &mut self,
        raw: &str,
        next_indented: bool,
        date: Option<&(String, usize)>,
    ) -> bool {
        let Some((date, at)) = date else { return false };
        let is_all = tokens(&raw[*at..], *at).iter().all(|token| match &token.kind {
            Kind::Word(word) => lexicon::says_measured(word) || lexicon::is_small(word),
            kind => matches!(kind, Kind::Sign(_)),
        });
        if is_all {
            (self.measured, self.dated, self.current) = (true, true, None);
            (self.flat, self.hangs) = (!next_indented, Some(date.clone()));
        }
        is_all
    }

    /// Where the text begins of a line with a date: it says what was measured.
    pub(super) fn dated_from(
        &mut self,
        raw: &str,
        start: usize,
        date: Option<(String, usize)>,
        line: &mut Line,
    ) -> Option<usize> {
        let within = || dates::date(&raw[start..], self.dated);
        let (date, after) = date.or_else(|| within().map(|(date, at)| (date, at + start)))?;
        (line.date, line.reads, self.dated) = (Some(date), true, true);
        self.under_date = true;
        self.hangs.clone_from(&line.date);
        Some(after)
    }

    /// Where the text begins of a line that says by a word, or by the lines above it,
    /// what was measured.
    pub(super) fn measured_from(
        &mut self,
        raw: &str,
        start: usize,
        indented: bool,
        found: &[Token],
        line: &mut Line,
    ) -> Option<usize> {
        let colon = found.iter().find(|token| token.is_sign(':'));
        let hangs = || self.hangs.clone().filter(|date| !date.is_empty());
        let marked = raw.trim_start().starts_with(['-', '*', '[']);
        if let Some(colon) = colon
            && start > 0
            && lexicon::heads_readings(first_word(found))
        {
            // `* check: 45.03 top`: this line of the part was read.
            (line.reads, line.subject) = (true, self.current);
            return Some(colon.at.end);
        }
        if start == 0 && found.first().and_then(Token::word).is_some_and(lexicon::surely_measured) {
            // `got  journal .7498`: all of the line, and what hangs under it, was read.
            line.reads = true;
            self.hangs = Some(String::new());
            return Some(found[0].at.end);
        }
        if self.measured && (start > 0 || self.flat) || indented && !marked && self.hangs.is_some()
        {
            (line.reads, line.date) = (true, hangs());
            return Some(start);
        }
        None
    }
}

/// The first word that is no mark of a heading.
pub(super) fn first_word(found: &[Token]) -> &str {
    found.iter().filter_map(Token::word).find(|word| !word.starts_with('#')).unwrap_or_default()
}
