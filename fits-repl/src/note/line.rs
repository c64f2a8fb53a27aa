//! One line of a note: what kind it is, and where in it the text begins.

use super::{
    Line, Reader, dates, head, joint_rows,
    lexicon::inwardness,
    lines,
    look::{asks_first, is_mixed, is_turned_down, row_unit, unstruck},
    place::first_word,
    talk,
    token::{Kind, Token, tokens},
};

impl Reader {
    pub(super) fn line(&mut self, number: usize, raw: &str, below: &[&str]) {
        if raw.trim().is_empty() {
            return self.place.blank_line();
        }
        let first = self.place.begins();
        if self.layout.is_heading(number) {
            self.place.ends_part();
            return self.told.remark(number, raw, None);
        }
        if self.is_frame(number, raw, below, first) {
            return self.told.remark(number, raw, None);
        }
        let next_indented = below
            .first()
            .is_some_and(|next| next.starts_with([' ', '\t', '-', '*', '[', '=', '\u{2022}']));
        let found = tokens(raw, 0);
        if first && is_title(raw, &found, next_indented) {
            self.told.job.title = Some(raw.trim().to_owned());
            return self.told.remark(number, raw, None);
        }
        let date = dates::date(raw, self.place.dated);
        let goes_on = below.first().is_some_and(|next| !next.trim().is_empty());
        if self.place.heads_readings(&self.told.names, raw, &found, next_indented, date.is_some())
            || goes_on && self.place.dates_readings(raw, next_indented, date.as_ref())
            || self.legend.reads(&found)
        {
            return self.told.remark(number, raw, None);
        }
        self.place.stays_measured(raw);
        if date.is_none()
            && self.table.row(&mut self.told, &mut self.wants, &mut self.place, number, raw)
        {
            return;
        }
        // What stands under a table is no more of its last row's part.
        if self.table.ends() {
            self.place.current = None;
        }
        if self.place.has_fits && self.under_fit(number, raw) {
            return;
        }
        if raw.contains("...") || raw.contains("\u{2026}\u{2026}") {
            return self.dotted_line(number, raw);
        }
        if let Some(name) = self.keyed_line(raw) {
            let start = raw.len() - name.len();
            let mut line = self.place.line(number);
            let from = if name.is_empty() { start } else { self.head(raw, start, &mut line, true) };
            self.text(raw, from, &mut line);
            if line.found == 0 {
                self.told.remark(number, raw, self.place.current);
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
            self.told.writers_question(number, raw);
            return self.told.remark(number, raw, None);
        }
        let turned = date.is_none() && is_turned_down(&found, below);
        self.plain_line(number, raw, &found, (next_indented, turned), date);
    }

    /// A heading that says how the joints under it go together, or one of those.
    fn under_fit(&mut self, number: usize, raw: &str) -> bool {
        if !raw.starts_with([' ', '\t']) {
            self.place.fit = joint_rows::fit_heading(raw);
            if self.place.fit.is_some() {
                self.place.current = None;
                self.told.remark(number, raw, None);
            }
            return self.place.fit.is_some();
        }
        let Some(fit) = self.place.fit.clone() else { return false };
        let mut line = Line { is_row: true, ..self.place.line(number) };
        joint_rows::row_under(&mut self.told, &mut self.wants, &mut line, raw, &fit)
    }

    /// A ruled line, a table's header or a line that gives the unit.
    fn is_frame(&mut self, number: usize, raw: &str, below: &[&str], first: bool) -> bool {
        if self.table.is_frame(raw, below) {
            self.legend.items = self.table.items().clone();
            self.legend.has_joints |= self.table.has_joints();
            return true;
        }
        let Some(unit) = lines::unit_line(raw) else { return false };
        self.told.units.said = Some((unit, number));
        if first {
            self.told.job.title = Some(raw.trim().to_owned());
        }
        true
    }

    /// `pin / frame ..... 3/8 ..... drive`: a joint a row, or a size of one thing.
    fn dotted_line(&mut self, number: usize, raw: &str) {
        let cells = joint_rows::cells(raw);
        let Some((at, first)) = cells.first().copied() else { return };
        let mut line = self.place.line(number);
        if let Some(names) = joint_rows::joint_names(first) {
            line.is_row = true;
            let rest = at + first.len();
            return joint_rows::joint_row(
                &mut self.told,
                &mut self.wants,
                &mut line,
                names,
                (raw, rest),
            );
        }
        let text = joint_rows::with_colon(raw, at + first.len());
        let from = self.head(&text, at, &mut line, false);
        self.text(&text, from, &mut line);
        if line.found == 0 {
            self.told.remark(number, raw, line.subject);
        }
    }

    /// A line of words and sizes: of a part, or what was measured.
    fn plain_line(
        &mut self,
        number: usize,
        raw: &str,
        found: &[Token],
        (next_indented, turned): (bool, bool),
        date: Option<(String, usize)>,
    ) {
        let (done, start) = lines::bullet(raw);
        let boxed = raw.starts_with(['[', '\u{2610}', '\u{2611}', '\u{2713}']);
        let numbered = raw.starts_with(|c: char| c.is_ascii_digit());
        let at_margin = (self.place.outline || numbered) && !raw.starts_with([' ', '\t']);
        let indented = start > 0 && (!boxed || self.place.is_heading) && !at_margin;
        let day = date.as_ref().map_or(0, |(_, end)| *end);
        let said = &found[found.partition_point(|token| token.at.start < day)..];
        let mut line = Line {
            done,
            asks: raw.ends_with('?') || raw.contains("? "),
            mixed: self.told.units.said.is_none() && is_mixed(found),
            turned,
            amends: talk::amends(first_word(found)),
            unit: row_unit(said),
            under_date: self.place.under_date,
            ..self.place.line(number)
        };
        let struck = unstruck(raw);
        let raw = struck.as_str();
        let from = if let Some(after) = self.place.dated_from(raw, start, date, &mut line) {
            head::part_in_dated(&mut self.told, raw, after, &mut line)
        } else if let Some(from) = self.place.measured_from(raw, start, indented, found, &mut line)
        {
            from
        } else if let Some(part) = self.layout.opens(number) {
            self.numbered_head(raw, part, &mut line)
        } else if indented {
            line.subject = self.place.current.filter(|_| !asks_first(&raw[start..]));
            head::part_within(&mut self.told, raw, start, &mut line)
        } else {
            let was = self.place.current;
            self.place.hangs = None;
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
            let hangs =
                start > 0 || self.place.prose || goes_on && !self.place.after_blank && !is_equal;
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
                .and_then(|part| self.told.job.parts.get(part))
                .is_some_and(|part| part.line != number);
            if !line.declares
                || again
                || raw[from.min(raw.len())..].contains(|c: char| c.is_alphanumeric())
            {
                self.told.remark(number, raw, part);
            }
        }
    }
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
