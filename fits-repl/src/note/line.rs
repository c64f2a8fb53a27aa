//! One line of a note: what kind it is, and where in it the text begins.

use super::{
    Line, Reader, dates, header,
    lexicon::{self, feature, inwardness},
    lines,
    look::{asks_first, is_mixed, row_unit, unstruck},
    talk,
    token::{Kind, Token, tokens},
};

impl Reader {
    pub(super) fn line(&mut self, number: usize, raw: &str, below: &[&str]) {
        if raw.trim().is_empty() {
            // A new paragraph names its own part, and is no more of what was measured.
            self.measured &= !std::mem::take(&mut self.flat);
            self.current = self.current.filter(|_| !self.prose);
            (self.blank, self.under_date) = (true, false);
            return;
        }
        let first = !std::mem::replace(&mut self.has_text, true);
        self.after_blank = std::mem::take(&mut self.blank);
        if self.is_frame(number, raw, below, first) {
            return self.remark(number, raw, None);
        }
        let next_indented = below
            .first()
            .is_some_and(|next| next.starts_with([' ', '\t', '-', '*', '[', '=', '\u{2022}']));
        let found = tokens(raw, 0);
        if first && is_title(raw, &found, next_indented) {
            self.job.title = Some(raw.trim().to_owned());
            return self.remark(number, raw, None);
        }
        let date = dates::date(raw, self.dated);
        let goes_on = below.first().is_some_and(|next| !next.trim().is_empty());
        if self.heads_readings(raw, &found, next_indented, date.is_some())
            || goes_on && self.dates_readings(raw, next_indented, date.as_ref())
            || self.is_legend(&found)
        {
            return self.remark(number, raw, None);
        }
        self.measured &= self.flat || lines::bullet(raw).1 > 0 && !raw.starts_with('#');
        if date.is_none()
            && let Some(columns) = self.columns.clone()
            && self.row(number, raw, &columns)
        {
            self.in_rows = true;
            return;
        }
        // What stands under a table is no more of its last row's part.
        if std::mem::take(&mut self.in_rows) {
            self.current = None;
        }
        if raw.contains("...") || raw.contains("\u{2026}\u{2026}") {
            return self.joint_row(number, raw);
        }
        if let Some(name) = self.keyed_line(raw) {
            let start = raw.len() - name.len();
            let mut line = Line { number, ..Line::default() };
            let from = if name.is_empty() { start } else { self.head(raw, start, &mut line, true) };
            self.text(raw, from, &mut line);
            if line.found == 0 {
                self.remark(number, raw, self.current);
            }
            return;
        }
        // `does 1 thou split a wheel?`: nothing in it says what a size is to be.
        let said = raw.trim();
        if date.is_none()
            && talk::is_question(first_word(&found))
            && !found.iter().any(|token| matches!(token.kind, Kind::Thread(_)))
            && (said.ends_with('?') || said.starts_with('?'))
        {
            self.writers_question(number, raw);
            return self.remark(number, raw, None);
        }
        self.plain_line(number, raw, &found, next_indented, date);
    }

    /// A ruled line, a table's header or a line that gives the unit.
    fn is_frame(&mut self, number: usize, raw: &str, below: &[&str], first: bool) -> bool {
        if !raw.contains(|c: char| c.is_alphanumeric()) {
            // A ruled line under rows ends their table.
            if !std::mem::take(&mut self.ruled) {
                self.columns = None;
            }
            return true;
        }
        self.ruled = false;
        if let Some(columns) = header::header(raw, &below[..below.len().min(40)]) {
            (self.columns, self.ruled) = (Some(columns), true);
            return true;
        }
        let Some(unit) = lines::unit_line(raw) else { return false };
        self.unit = Some((unit, number));
        if first {
            self.job.title = Some(raw.trim().to_owned());
        }
        true
    }

    /// `## Measured so far`: the lines under it are readings.
    fn heads_readings(
        &mut self,
        raw: &str,
        found: &[Token],
        next_indented: bool,
        dated: bool,
    ) -> bool {
        let is_named = || {
            found.iter().any(|token| {
                token.word().is_some_and(|word| feature(word).is_some() || self.is_thing(word))
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
    fn dates_readings(
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

    /// A line of words and sizes: of a part, or what was measured.
    fn plain_line(
        &mut self,
        number: usize,
        raw: &str,
        found: &[Token],
        next_indented: bool,
        date: Option<(String, usize)>,
    ) {
        let (done, start) = lines::bullet(raw);
        let boxed = raw.starts_with(['[', '\u{2610}', '\u{2611}', '\u{2713}']);
        let numbered = raw.starts_with(|c: char| c.is_ascii_digit());
        let at_margin = (self.outline || numbered) && !raw.starts_with([' ', '\t']);
        let indented = start > 0 && (!boxed || self.is_heading) && !at_margin;
        let mut line = Line {
            number,
            done,
            asks: raw.ends_with('?') || raw.contains("? "),
            mixed: self.unit.is_none() && is_mixed(found),
            amends: talk::amends(first_word(found)),
            unit: row_unit(found),
            under_date: self.under_date,
            ..Line::default()
        };
        let struck = unstruck(raw);
        let raw = struck.as_str();
        let from = self.measured_from(raw, start, indented, found, date, &mut line);
        let from = if let Some(from) = from {
            from
        } else if indented {
            line.subject = self.current.filter(|_| !asks_first(&raw[start..]));
            self.part_within(raw, start, &mut line)
        } else {
            let was = self.current;
            self.hangs = None;
            let opens = next_indented && (start == 0 || at_margin);
            let from = self.head(raw, start, &mut line, opens);
            // `3/8 hole, runs on the pin`, right under the name of its part.
            let goes_on = found.first().is_some_and(|first| {
                first.at.start == 0
                    && first.word().is_none()
                    && !matches!(first.kind, Kind::Code(_))
            });
            // `Ø17 = 17.004` goes by the size alone.
            let is_equal = found.iter().any(|token| token.is_sign('='));
            let hangs = start > 0 || self.prose || goes_on && !self.after_blank && !is_equal;
            if line.subject.is_none() && hangs && !asks_first(&raw[start..]) {
                line.subject = was;
            }
            from
        };
        let before = line.found;
        self.text(raw, from, &mut line);
        if line.found == before {
            let part = line.subject;
            let again = part
                .and_then(|part| self.job.parts.get(part))
                .is_some_and(|part| part.line != number);
            if !line.declares
                || again
                || raw[from.min(raw.len())..].contains(|c: char| c.is_alphanumeric())
            {
                self.remark(number, raw, part);
            }
        }
    }

    /// Where the text of a line begins that says what was measured.
    fn measured_from(
        &mut self,
        raw: &str,
        start: usize,
        indented: bool,
        found: &[Token],
        date: Option<(String, usize)>,
        line: &mut Line,
    ) -> Option<usize> {
        let within = || dates::date(&raw[start..], self.dated);
        if let Some((date, after)) = date.or_else(|| within().map(|(date, at)| (date, at + start)))
        {
            (line.date, line.reads, self.dated) = (Some(date), true, true);
            self.under_date = true;
            self.hangs.clone_from(&line.date);
            return Some(self.part_in_dated(raw, after, line));
        }
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
fn first_word(found: &[Token]) -> &str {
    found.iter().filter_map(Token::word).find(|word| !word.starts_with('#')).unwrap_or_default()
}

/// Does the first line say what the job is, and no size?
fn is_title(raw: &str, found: &[Token], next_indented: bool) -> bool {
    // `rake gearbox 9/4`: a date ends it.
    let last = raw.split_whitespace().last().unwrap_or_default();
    let dated = dates::date(last, false).is_some_and(|(_, end)| end == last.len());
    let end = if dated { raw.trim_end().len() - last.len() } else { raw.len() };
    let has_size = found.iter().filter(|token| token.at.start < end).any(|token| {
        matches!(
            token.kind,
            Kind::Num(_) | Kind::Dims(_) | Kind::Range(..) | Kind::Thread(_) | Kind::Class(_)
        )
    });
    let last_word = found.iter().rev().find_map(Token::word);
    let is_heading = last_word.is_some_and(|word| inwardness(word).is_some()) && next_indented;
    let is_dated = || {
        dates::date(raw.rsplit("  ").next().unwrap_or_default(), true).is_some()
            || raw.contains("started")
    };
    (!has_size || is_dated()) && !is_heading
}
