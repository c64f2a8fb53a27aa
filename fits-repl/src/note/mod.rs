//! A note as a person writes it, read into a job.
//!
//! ```text
//! text ─lines▶ cells ─token▶ words and numbers ─clause▶ features ─mates▶ job
//! ```
//!
//! Nothing that was written is lost: what is no size is a remark, and what
//! could be meant in two ways is a question.

mod clause;
mod dates;
mod found;
mod head;
mod header;
mod items;
mod joined;
mod joint_rows;
mod kinds;
mod led;
mod lexicon;
mod lines;
mod look;
mod mates;
mod names;
mod numbers;
mod opened;
mod owner;
mod parted;
mod phrases;
mod readings;
mod record;
mod row_mates;
mod settled;
mod sizes;
mod table;
mod tidy;
mod token;
mod whose;

use std::{
    collections::{HashMap, HashSet},
    ops::Range,
};

use fits_core::{
    job::whole::{FitSaid, Job, Question, Remark, State},
    size::Unit,
};
use look::{asks_first, is_mixed, is_prose, row_unit, things, unstruck};
use token::{Kind, Num, Token, tokens};

use lexicon::{feature, inwardness};

/// Reads a note.
pub fn read(text: &str) -> Job {
    if tidy::is_tidy(text) {
        return tidy::read(text);
    }
    let mut reader = Reader::new(text);
    let lines: Vec<&str> = text.lines().map(str::trim_end).collect();
    for at in 0..lines.len() {
        reader.line(at + 1, lines[at], &lines[at + 1..]);
    }
    reader.settle();
    reader.job
}

/// The note as JSON, an object for each thing that a line says, then one for
/// each feature with its limits.
pub fn json_lines(job: &Job) -> String {
    let figures = crate::questions::job::figures::figures(job);
    let cuts = figures.iter().map(|figure| crate::render::json::text(figure) + "\n");
    crate::questions::job::lines::lines(job) + &cuts.collect::<String>()
}

/// All features, limits and readings as CSV.
pub fn csv(job: &Job) -> String {
    crate::questions::job::figures::csv(job)
}

/// The job in the tidy form, which [`read`] reads back to the same job; `text`
/// is the note it was read from.
pub fn tidy(job: &Job, text: &str) -> String {
    tidy::write(job, text)
}

/// The job in words; `text` is the note it was read from, `file` its name.
pub fn page(job: &Job, text: &str, file: &str) -> String {
    crate::questions::job::page::page(job, text, file)
}

/// Does a reading of the job lie past its last limit?
pub fn is_out_of_limits(job: &Job) -> bool {
    let over = fits_core::shop::Verdict::Over.word();
    crate::questions::job::figures::figures(job).iter().any(|figure| figure.verdict == Some(over))
}

/// A mate by its name alone: found when the whole note is read.
struct Wanted {
    line: usize,
    at: Range<usize>,
    feature: usize,
    name: String,
    part: Option<usize>,
    /// The feature itself, where the note sizes it in the same breath.
    to: Option<usize>,
    fit: FitSaid,
    said: usize,
    matches: bool,
}

#[allow(clippy::struct_excessive_bools, reason = "each is something a line may say")]
pub(crate) struct Reader {
    job: Job,
    /// The parts' names as they are compared.
    stems: Vec<Vec<String>>,
    /// The features' names as they are compared, and the first of each name.
    names: Vec<Vec<String>>,
    of_part: Vec<Vec<usize>>,
    /// Parts by their whole names, and by pieces of them.
    exact: HashMap<String, usize>,
    keyed: HashMap<String, Vec<usize>>,
    by_name: HashMap<String, usize>,
    /// Words for parts that this note's own lines begin with.
    things: HashSet<String>,
    /// When each part was spoken of last, by the tick of a clock of its own.
    recent: Vec<usize>,
    tick: usize,
    /// The mates of each feature.
    mated: HashMap<usize, Vec<usize>>,
    /// The first part of each stuff.
    made_of: HashMap<String, usize>,
    wanted: Vec<Wanted>,
    unit: Option<(Unit, usize)>,
    /// What bare numbers most likely are.
    context: Unit,
    columns: Option<header::Columns>,
    /// The feature and the mate of the row above.
    above: (String, String),
    /// A ruled line here stands under the header.
    ruled: bool,
    /// The part that the lines below its name belong to.
    current: Option<usize>,
    /// The parts first named under it.
    block: Vec<usize>,
    /// The current part stands above its lines as a heading.
    is_heading: bool,
    last_feature: Option<usize>,
    /// The date of the readings that an indented line goes on with.
    hangs: Option<String>,
    /// A heading says that all under it was measured.
    measured: bool,
    /// It is not set off from them: a blank line ends them.
    flat: bool,
    dated: bool,
    /// Bullets at the margin open parts, those further in are of them.
    outline: bool,
    /// The note's own short forms: `PF press`.
    legend: HashMap<String, String>,
    /// Its lines are sentences: what is not sure is asked, line by line.
    prose: bool,
    has_text: bool,
}

/// What holds while a line is read.
#[derive(Default)]
#[allow(clippy::struct_excessive_bools, reason = "each is something a line may say")]
struct Line {
    number: usize,
    /// The part that is spoken of.
    subject: Option<usize>,
    feature: Option<usize>,
    mate_part: Option<usize>,
    mate_name: Option<String>,
    /// `not 3/16 keyway`: the next size is the feature's.
    corrects: Option<usize>,
    /// The part that was spoken of before a clause opened another.
    before: Option<usize>,
    /// The feature whose width, depth and length are said one after another.
    role_of: Option<usize>,
    /// A clause of it names its part.
    named: bool,
    /// It puts an earlier line right.
    amends: bool,
    /// A fit was said.
    fits: bool,
    /// A fit is said somewhere in it.
    fit_ahead: bool,
    /// It ends as a question.
    asks: bool,
    date: Option<String>,
    /// Sizes are readings.
    reads: bool,
    /// This clause says by a word that a size was measured.
    by_word: bool,
    unit: Option<Unit>,
    /// It has both inches and millimetres: a bare number may be either.
    mixed: bool,
    done: bool,
    state: State,
    /// How many things the line said.
    found: usize,
    /// It began at the margin with the part's own name.
    declares: bool,
    is_row: bool,
}

impl Reader {
    fn new(text: &str) -> Self {
        let mut votes = (0_usize, 0_usize);
        for token in text.lines().take(400).flat_map(|line| tokens(line, 0)) {
            let all: &[Num] = match &token.kind {
                Kind::Num(num) => std::slice::from_ref(num),
                Kind::Dims(all) => all,
                _ => &[],
            };
            for num in all {
                match num.unit {
                    Some(Unit::Millimetre) => votes.1 += 1,
                    Some(_) => votes.0 += 1,
                    None if num.is_inch_shaped() => votes.0 += 1,
                    None if num.places == 0 && num.over > 15 => votes.1 += 1,
                    None => {}
                }
            }
        }
        Self {
            job: Job::default(),
            stems: Vec::new(),
            names: Vec::new(),
            of_part: Vec::new(),
            exact: HashMap::new(),
            keyed: HashMap::new(),
            by_name: HashMap::new(),
            things: things(text),
            recent: Vec::new(),
            tick: 0,
            mated: HashMap::new(),
            made_of: HashMap::new(),
            wanted: Vec::new(),
            unit: None,
            context: if votes.0 >= votes.1 { Unit::Inch } else { Unit::Millimetre },
            columns: None,
            above: (String::new(), String::new()),
            ruled: false,
            current: None,
            block: Vec::new(),
            is_heading: false,
            last_feature: None,
            hangs: None,
            measured: false,
            flat: false,
            dated: false,
            outline: lines::is_outline(text),
            legend: HashMap::new(),
            prose: is_prose(text),
            has_text: false,
        }
    }

    #[allow(clippy::too_many_lines, reason = "one kind of line after another, each short")]
    fn line(&mut self, number: usize, raw: &str, below: &[&str]) {
        if raw.trim().is_empty() {
            // A new paragraph names its own part, and is no more of what was measured.
            self.measured &= !std::mem::take(&mut self.flat);
            self.current = self.current.filter(|_| !self.prose);
            return;
        }
        let next_indented = below
            .first()
            .is_some_and(|next| next.starts_with([' ', '\t', '-', '*', '[', '=', '\u{2022}']));
        let first = !std::mem::replace(&mut self.has_text, true);
        if !raw.contains(|c: char| c.is_alphanumeric()) {
            // A ruled line under rows ends their table.
            if !std::mem::take(&mut self.ruled) {
                self.columns = None;
            }
            return self.remark(number, raw, None);
        }
        self.ruled = false;
        let rows = &below[..below.len().min(40)];
        if let Some(columns) = header::header(raw, rows) {
            (self.columns, self.ruled) = (Some(columns), true);
            return self.remark(number, raw, None);
        }
        if let Some(unit) = lines::unit_line(raw) {
            self.unit = Some((unit, number));
            if first {
                self.job.title = Some(raw.trim().to_owned());
            }
            return self.remark(number, raw, None);
        }
        let found = tokens(raw, 0);
        let has_size = found.iter().any(|token| {
            matches!(
                token.kind,
                Kind::Num(_) | Kind::Dims(_) | Kind::Range(..) | Kind::Thread(_) | Kind::Class(_)
            )
        });
        let last_word = found.iter().rev().find_map(Token::word);
        let is_heading = last_word.is_some_and(|word| inwardness(word).is_some()) && next_indented;
        if first
            && (!has_size
                || dates::date(raw.rsplit("  ").next().unwrap_or_default(), true).is_some()
                || raw.contains("started"))
            && !is_heading
        {
            self.job.title = Some(raw.trim().to_owned());
            return self.remark(number, raw, None);
        }
        let date = dates::date(raw, self.dated);
        // `## Measured so far`: the lines under it are readings.
        let mut words = found.iter().filter_map(Token::word);
        let first_word = words.find(|word| !word.starts_with('#')).unwrap_or_default();
        let is_named = found.iter().any(|token| {
            token.word().is_some_and(|word| feature(word).is_some() || self.is_thing(word))
        });
        if lexicon::heads_readings(first_word)
            && date.is_none()
            && !(is_named || raw.contains('.'))
            && found.len() < 7
        {
            (self.measured, self.current, self.hangs) = (true, None, None);
            self.flat = !next_indented;
            return self.remark(number, raw, None);
        }
        // `14/3 measured`, with the readings under it.
        let tail = date.as_ref().map(|(_, at)| tokens(&raw[*at..], *at));
        let goes_on = below.first().is_some_and(|next| !next.trim().is_empty());
        if goes_on
            && let (Some((date, _)), Some(tail)) = (&date, &tail)
            && tail.iter().all(|token| match &token.kind {
                Kind::Word(word) => lexicon::says_measured(word) || lexicon::is_small(word),
                kind => matches!(kind, Kind::Sign(_)),
            })
        {
            (self.measured, self.dated, self.current) = (true, true, None);
            (self.flat, self.hangs) = (!next_indented, Some(date.clone()));
            return self.remark(number, raw, None);
        }
        if self.is_legend(&found) {
            return self.remark(number, raw, None);
        }
        self.measured &= self.flat || lines::bullet(raw).1 > 0 && !raw.starts_with('#');
        if date.is_none()
            && let Some(columns) = self.columns.clone()
            && self.row(number, raw, &columns)
        {
            return;
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
        let (done, start) = lines::bullet(raw);
        let boxed = raw.starts_with(['[', '\u{2610}', '\u{2611}', '\u{2713}']);
        let numbered = raw.starts_with(|c: char| c.is_ascii_digit());
        let at_margin = (self.outline || numbered) && !raw.starts_with([' ', '\t']);
        let indented = start > 0 && (!boxed || self.is_heading) && !at_margin;
        let asks = raw.ends_with('?') || raw.contains("? ");
        let mixed = self.unit.is_none() && is_mixed(&found);
        let amends = lexicon::amends(first_word);
        let mut line =
            Line { number, done, asks, mixed, amends, unit: row_unit(&found), ..Line::default() };
        let struck = unstruck(raw);
        let raw = struck.as_str();
        let from;
        if let Some((date, after)) = date
            .or_else(|| dates::date(&raw[start..], self.dated).map(|(date, at)| (date, at + start)))
        {
            (line.date, line.reads, from) = (Some(date), true, after);
            self.dated = true;
            self.hangs.clone_from(&line.date);
        } else if start > 0
            && found.iter().any(|token| token.is_sign(':'))
            && lexicon::heads_readings(first_word)
        {
            // `* check: 45.03 top`: this line of the part was read.
            (line.reads, line.subject) = (true, self.current);
            from =
                found.iter().find(|token| token.is_sign(':')).map_or(start, |colon| colon.at.end);
        } else if found.first().and_then(Token::word).is_some_and(lexicon::surely_measured)
            && start == 0
        {
            // `got  journal .7498`: all of the line, and what hangs under it, was read.
            line.reads = true;
            from = found[0].at.end;
            self.hangs = Some(String::new());
        } else if self.measured && (start > 0 || self.flat) {
            line.date = self.hangs.clone().filter(|date| !date.is_empty());
            (line.reads, from) = (true, start);
        } else if indented
            && start > 0
            && !raw.trim_start().starts_with(['-', '*', '['])
            && self.hangs.is_some()
        {
            (line.reads, line.date) = (true, self.hangs.clone().filter(|date| !date.is_empty()));
            from = start;
        } else if indented {
            line.subject = self.current.filter(|_| !asks_first(&raw[start..]));
            from = self.part_within(raw, start, &mut line);
        } else {
            let was = self.current;
            self.hangs = None;
            let opens = next_indented && (start == 0 || at_margin);
            from = self.head(raw, start, &mut line, opens);
            if line.subject.is_none() && (start > 0 || self.prose) && !asks_first(&raw[start..]) {
                line.subject = was;
            }
        }
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

    /// The tokens of a text, the note's own short forms spelled out.
    fn spelled(&self, text: &str, from: usize) -> Vec<Token> {
        let mut found = tokens(text, from);
        for token in &mut found {
            if let Kind::Word(word) = &mut token.kind
                && let Some(full) = self.legend.get(word.as_str())
            {
                word.clone_from(full);
            }
        }
        found
    }

    fn remark(&mut self, line: usize, text: &str, part: Option<usize>) {
        self.job.remarks.push(Remark { line, text: text.trim().to_owned(), part });
    }

    fn ask(
        &mut self,
        line: usize,
        at: Range<usize>,
        text: impl Into<String>,
        answer: Option<String>,
    ) {
        self.job.questions.push(Question { line, at, text: text.into(), answer, by_writer: false });
    }
}
