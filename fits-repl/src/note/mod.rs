//! A note as a person writes it, read into a job.
//!
//! ```text
//! text ─lines▶ cells ─token▶ words and numbers ─clause▶ features ─mates▶ job
//! ```
//!
//! Nothing that was written is lost: what is no size is a remark, and what
//! could be meant in two ways is a question.

mod clause;
mod items;
mod lexicon;
mod lines;
mod mates;
mod names;
mod sizes;
mod table;
mod tidy;
mod token;

use std::{
    collections::{HashMap, HashSet},
    ops::Range,
};

use fits_core::{
    Length,
    job::whole::{
        Feature, FitSaid, Job, Nominal, Question, Reading, Remark, Said, Side, State, UnitFrom,
    },
    size::Unit,
};

use lexicon::{feature, inwardness, is_material, stems};
use token::{Kind, Num, Token, tokens};

/// The unit of a line's bare numbers, where one of them is in millimetres.
fn row_unit(found: &[Token]) -> Option<Unit> {
    let mut said = found.iter().filter_map(|token| match &token.kind {
        Kind::Num(num) => num.unit,
        _ => None,
    });
    let all_metric = said.clone().all(|unit| unit == Unit::Millimetre);
    said.next().filter(|_| all_metric)
}

/// Are there both inches and millimetres in a line?
fn is_mixed(found: &[Token]) -> bool {
    let has = |unit: Unit| {
        found.iter().any(|token| matches!(&token.kind, Kind::Num(num) if num.unit == Some(unit)))
    };
    has(Unit::Inch) && has(Unit::Millimetre)
}

/// A text without the sizes that are struck out: `~~3/8 pins~~`.
fn unstruck(raw: &str) -> String {
    let mut inside = false;
    let mut out = String::with_capacity(raw.len());
    for (at, piece) in raw.split("~~").enumerate() {
        if at > 0 {
            inside = !inside;
            out.push_str("  ");
        }
        out.extend(
            piece.chars().map(|c| if inside && (c.is_ascii_digit() || c == '/') { ' ' } else { c }),
        );
    }
    out
}

/// Are the lines sentences, not notes: long, and most with a full stop behind a word?
fn is_prose(text: &str) -> bool {
    let lines = || text.lines().take(400).filter(|line| !line.trim().is_empty());
    let words = |line: &str| {
        line.split_whitespace().filter(|word| word.starts_with(char::is_alphabetic)).count()
    };
    let stops = |line: &str| {
        line.split_whitespace()
            .filter(|word| {
                word.len() > 3 && word.ends_with('.') && word.starts_with(char::is_alphabetic)
            })
            .count()
    };
    let mut counts: Vec<usize> = lines().map(words).collect();
    counts.sort_unstable();
    let stops: usize = lines().map(stops).sum();
    counts.get(counts.len() / 2).is_some_and(|words| *words > 10) && stops * 2 > counts.len()
}

/// The names of parts that a note gives at the beginning of its lines: what
/// stands before a size, a metal, a feature and its size, or a colon.
fn things(text: &str) -> HashSet<String> {
    let mut found = HashSet::new();
    if is_prose(text) {
        return found;
    }
    for raw in text.lines() {
        let (_, start) = lines::bullet(raw);
        let all = tokens(&raw[start..], start);
        let plain = |token: &Token| {
            token.word().is_some_and(|word| {
                word.len() > 2
                    && !lexicon::is_small(word)
                    && !lexicon::is_pronoun(word)
                    && !lexicon::amends(word)
                    && !lexicon::says_measured(word)
                    && !lexicon::leads_to_mate(word)
                    && !lexicon::asks(word)
                    && !is_material(word)
                    && feature(word).is_none()
                    && lexicon::fit(&[word]).is_none()
            })
        };
        // `trunnions (2): gunmetal`: a part, whatever its name is elsewhere.
        let of_stuff = |at: usize| {
            let next = all.get(at + 1..).unwrap_or_default();
            let signs = next
                .iter()
                .take_while(|token| {
                    matches!(token.kind, Kind::Sign(':' | ',' | '-') | Kind::Count(_))
                })
                .count();
            signs > 0
                && next.get(signs).and_then(Token::word).is_some_and(is_material)
                && all[at].word().is_some_and(|word| word.len() > 2 && feature(word).is_some())
        };
        let end = all
            .iter()
            .enumerate()
            .take_while(|(at, token)| plain(token) || start == 0 && of_stuff(*at))
            .count();
        let Some(last) = end.checked_sub(1).and_then(|last| all[last].word()) else { continue };
        let is_size =
            |token: &Token| matches!(token.kind, Kind::Num(_) | Kind::Dims(_) | Kind::Thread(_));
        let next = all.get(end);
        let at_margin = !raw.starts_with([' ', '\t', '-', '*']);
        let named = next.is_some_and(|token| {
            token.is_sign(':')
                || matches!(token.kind, Kind::Count(_))
                || at_margin
                    && (is_size(token)
                        || matches!(token.kind, Kind::Sign(',' | '(' | '-'))
                        || token.word().is_some_and(|word| {
                            is_material(word) || lexicon::fit(&[word]).is_some()
                        })
                        || token.word().and_then(feature).is_some()
                            && all.get(end + 1).is_some_and(is_size))
        });
        let has_size = all.iter().any(is_size);
        let is_head = all[0].word().is_some_and(lexicon::heads_readings);
        if !is_head && end < 4 && named && has_size && !lexicon::is_adjective(last) {
            found.insert(lexicon::stem(last));
        }
    }
    found
}

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
    let cuts =
        figures.iter().map(|figure| serde_json::to_string(figure).unwrap_or_default() + "\n");
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

/// Does a line begin as a question does?
fn asks_first(text: &str) -> bool {
    ["what", "which", "how"].iter().any(|word| text.to_lowercase().starts_with(word))
}

fn is_instance_word(word: &str) -> bool {
    names::is_instance(&lexicon::stem(word))
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
    columns: Option<lines::Columns>,
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
        if let Some(columns) = lines::header(raw, rows) {
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
                || lines::date(raw.rsplit("  ").next().unwrap_or_default(), true).is_some()
                || raw.contains("started"))
            && !is_heading
        {
            self.job.title = Some(raw.trim().to_owned());
            return self.remark(number, raw, None);
        }
        let date = lines::date(raw, self.dated);
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
            .or_else(|| lines::date(&raw[start..], self.dated).map(|(date, at)| (date, at + start)))
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

    /// `Part: shaft` opens a part: what stands behind its key. `Material: CI`
    /// and `Qty 2` are of the part above: nothing is left of them.
    fn keyed_line<'a>(&mut self, raw: &'a str) -> Option<&'a str> {
        let text = &raw[lines::bullet(raw).1..];
        let (key, said) = text.split_once(':').or_else(|| text.split_once(' '))?;
        let is_colon = text.as_bytes().get(key.len()) == Some(&b':');
        let said = said.trim();
        let part = self.current.map(|part| &mut self.job.parts[part]);
        match (lines::column(key).filter(|_| !said.is_empty())?, part) {
            (lines::Column::Part, _) if is_colon => Some(said),
            (lines::Column::Material, Some(part)) if is_colon => {
                part.material.get_or_insert_with(|| said.to_owned());
                Some("")
            }
            (lines::Column::Count, Some(part)) => {
                let (count, rest) = said.split_once(',').unwrap_or((said, ""));
                part.count = Some(count.trim().parse().ok()?);
                part.bought |= rest.contains("bought");
                Some("")
            }
            _ => None,
        }
    }

    /// Short forms with what each stands for: `PF press  SL slide`.
    fn is_legend(&mut self, found: &[Token]) -> bool {
        let signs = |token: &&Token| {
            matches!(token.kind, Kind::Sign('=' | ',' | '-' | ':' | ';' | '.' | '(' | ')'))
        };
        let words: Vec<Option<&str>> =
            found.iter().filter(|token| !signs(token)).map(Token::word).collect();
        let (pairs, rest) = words.as_chunks::<2>();
        let is_pair = |pair: &[Option<&str>; 2]| {
            matches!(pair, [Some(short), Some(full)]
                if short.len() < 4 && lexicon::is_short_of(short, full))
        };
        let says_fit =
            |pair: &&[Option<&str>; 2]| pair[1].is_some_and(|full| lexicon::fit(&[full]).is_some());
        let is = rest.is_empty()
            && pairs.iter().filter(says_fit).count() > 1
            && pairs.iter().all(is_pair);
        if is {
            let all = pairs.iter().map(|pair| pair.map(|word| word.unwrap_or_default().to_owned()));
            self.legend.extend(all.map(|[short, full]| (short, full)));
        }
        is
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

    /// A part of its own under a heading, `grip: brass tube`; where the rest begins.
    fn part_within(&mut self, raw: &str, start: usize, line: &mut Line) -> usize {
        let found = tokens(&raw[start..], start);
        // `6004 (2), in the drawer`: a bearing goes by its number.
        if let [Token { kind: Kind::Code(code), at }, next, ..] = found.as_slice()
            && matches!(next.kind, Kind::Count(_) | Kind::Dims(_) | Kind::Sign(','))
            && code.starts_with(|c: char| c.is_ascii_digit())
        {
            let part = self.part_named(&code.to_uppercase(), line.number);
            self.describe(part, &found[1..]);
            (line.subject, line.declares) = (Some(part), true);
            return at.end;
        }
        // `ball weights 2 off`: what is counted is a part.
        let words: Vec<&str> = found.iter().map_while(Token::word).collect();
        if let Some(Token { kind: Kind::Count(count), at }) = found.get(words.len())
            && let Some(last) = words.last()
            && words.len() < 4
            && feature(last).is_none()
            && !words.iter().any(|word| lexicon::is_small(word) || lexicon::leads_to_mate(word))
        {
            let part = self.part_named(&raw[start..found[words.len() - 1].at.end], line.number);
            let many = &mut self.job.parts[part].count;
            *many = many.or(Some(*count));
            self.describe(part, &found[words.len()..]);
            self.touch(part);
            self.block.push(part);
            (line.subject, line.declares) = (Some(part), true);
            return at.end;
        }
        let dash = |at: usize, token: &Token| {
            token.is_sign('-') && raw[..token.at.start].ends_with(' ') && at > 0
        };
        let Some(colon) =
            found.iter().enumerate().position(|(at, token)| token.is_sign(':') || dash(at, token))
        else {
            return start;
        };
        let words: Vec<&str> = found[..colon].iter().map_while(Token::word).collect();
        let end = words.iter().position(|word| lexicon::leads_to_mate(word)).unwrap_or(words.len());
        let named = words[..end].last().is_some_and(|last| self.is_thing(last))
            && words.len() == colon
            && (end == 1 || feature(words[end - 1]).is_none())
            && !words[..end].iter().any(|word| lexicon::is_small(word));
        if !named {
            return start;
        }
        let part = self.part_named(&raw[start..found[end - 1].at.end], line.number);
        self.describe(part, &found[end..]);
        self.touch(part);
        self.block.push(part);
        (line.subject, line.declares) = (Some(part), true);
        found[end - 1].at.end
    }

    /// The part that a line at the margin opens; where the rest begins.
    #[allow(clippy::too_many_lines, reason = "one sign of a name after another, each short")]
    fn head(&mut self, raw: &str, start: usize, line: &mut Line, opens_block: bool) -> usize {
        let mut found = self.spelled(&raw[start..], start);
        // `they are 10.2`: what the line before spoke of.
        if found.first().and_then(Token::word).is_some_and(lexicon::is_pronoun) {
            line.subject = self.current;
            return start;
        }
        let opening = found.iter().take_while(|token| {
            matches!(
                token.word(),
                Some(
                    "couple"
                        | "pair"
                        | "of"
                        | "the"
                        | "a"
                        | "new"
                        | "two"
                        | "three"
                        | "four"
                        | "six"
                        | "eight"
                )
            )
        });
        let opening = opening.count();
        let named =
            found.get(opening).and_then(Token::word).is_some_and(|word| self.is_thing(word))
                || self.part_phrase(&found[opening..]).is_some();
        let start = match found.get(opening) {
            Some(name) if opening > 0 && named => name.at.start,
            _ => start,
        };
        found.retain(|token| token.at.start >= start);
        // `2 off  bushes`: how many stands first.
        let count = found.first().and_then(|token| match token.kind {
            Kind::Count(count) => Some(count),
            _ => None,
        });
        let start = match (count, found.get(1)) {
            (Some(_), Some(name)) => name.at.start,
            _ => start,
        };
        found.drain(..usize::from(count.is_some() && found.len() > 1));
        let mut end = 0;
        while let Some(token) = found.get(end) {
            let (Kind::Word(word) | Kind::Code(word)) = &token.kind else { break };
            let begins_name = end == 0 && self.part_phrase(&found).is_some_and(|count| count > 1);
            let stops = lexicon::leads_to_mate(word)
                || end > 0 && matches!(word.as_str(), "bought" | "boughtin" | "existing" | "old")
                || lexicon::is_small(word)
                || lexicon::says_measured(word)
                || (is_material(word)
                    && end > 0
                    && inwardness(word).is_none()
                    && matches!(found[end - 1].word(), Some(last) if inwardness(last).is_some()))
                || (feature(word).is_some()
                    && !self.is_thing(word)
                    && !(lexicon::names_place(word)
                        && found
                            .get(end + 1)
                            .and_then(Token::word)
                            .is_some_and(|next| inwardness(next).is_some())))
                || (lexicon::fit(&[word]).is_some() && !begins_name);
            let is_code = matches!(token.kind, Kind::Code(_));
            let apart = end > 0 && token.at.start > found[end - 1].at.end + 1;
            if apart
                || stops && !begins_name
                || is_code && end > 0 && !word.starts_with("no")
                || end > 4
            {
                break;
            }
            end += 1;
        }
        if let Some(Token { kind: Kind::Num(num), .. }) = found.get(end)
            && num.is_whole()
            && num.unit.is_none()
            && num.over < 10
            && end > 0
            && !found.get(end + 1).is_some_and(|next| matches!(next.kind, Kind::Num(_)))
            && found
                .get(end + 1)
                .is_some_and(|next| matches!(next.kind, Kind::Sign(':' | '-' | '(' | ',')))
        {
            end += 1;
        }
        // The name ends with the word for the part; a seat is no part's name.
        let is_kind = |token: &Token| token.word().is_some_and(|word| inwardness(word).is_some());
        let is_mark = |token: &Token| token.word().is_none_or(is_instance_word);
        if let Some(last) = (0..end).rev().find(|at| is_kind(&found[*at]))
            && !found[last + 1..end].iter().any(is_mark)
            && !(opens_block
                && found.get(end).is_none_or(|next| matches!(next.kind, Kind::Sign(_))))
        {
            end = last + 1;
        }
        if found.get(end).and_then(Token::word).is_some_and(|word| lexicon::stem(word) == "seat") {
            return start;
        }
        // `handle end of the crank shaft`: it is the shaft's.
        let behind: Vec<&str> = found[end..].iter().take(2).filter_map(Token::word).collect();
        if matches!(behind.as_slice(), [word, "of"] if feature(word).is_some()) {
            return start;
        }
        let words: Vec<&str> = found[..end].iter().filter_map(Token::word).collect();
        let next = found.get(end);
        let last = words.last().copied().unwrap_or_default();
        let said = if end > 0 { stems(&raw[start..found[end - 1].at.end]) } else { Vec::new() };
        let called = self.part_called(&said);
        let known = called.is_some_and(|(_, score)| score >= 62);
        let is_name = known
            || self.is_thing(last)
            || end > 0 && matches!(found[end - 1].kind, Kind::Code(_)) && end < 3
            || end > 0 && next.is_some_and(|next| next.is_sign(':') && end < 4)
            || end > 0
                && end < 4
                && opens_block
                && next.is_none_or(|next| {
                    next.is_sign('(') || next.is_sign('-') || self.outline && next.is_sign(',')
                });
        if end == 0
            || !is_name
            || lexicon::asks(words.first().copied().unwrap_or_default())
            || raw[start..].trim_end().ends_with('?') && !known && inwardness(last).is_none()
        {
            return start;
        }
        let stop = found[end - 1].at.end;
        let sizes: Vec<Length> = found[end..]
            .iter()
            .filter_map(|token| match &token.kind {
                Kind::Num(num) if num.places > 1 => self.length(num, None),
                _ => None,
            })
            .collect();
        let part = match (called, self.part_by_size(&said, &sizes)) {
            (Some((part, score)), _) if (85..=100).contains(&score) => part,
            (_, Some(part)) => part,
            _ => self.new_part(raw[start..stop].trim_start_matches(['#', '*', ' ']), line.number),
        };
        self.touch(part);
        (line.subject, self.current, line.declares) = (Some(part), Some(part), true);
        self.block.clear();
        self.is_heading = opens_block
            && !found[end..].iter().any(|token| {
                matches!(
                    token.kind,
                    Kind::Num(_) | Kind::Dims(_) | Kind::Range(..) | Kind::Thread(_)
                )
            });
        self.last_feature = None;
        let many = &mut self.job.parts[part].count;
        *many = many.or(count);
        self.describe(part, &found[end..]);
        stop
    }

    /// What a line that opens a part says of it: how many, what of, bought.
    fn describe(&mut self, part: usize, found: &[Token]) {
        let mut material: Vec<&str> = Vec::new();
        let mut ended = false;
        for (at, token) in found.iter().enumerate() {
            let part = &mut self.job.parts[part];
            match &token.kind {
                Kind::Count(count) if part.count.is_none() => part.count = Some(*count),
                Kind::Word(word) if word == "bought" || word == "boughtin" => part.bought = true,
                Kind::Word(word)
                    if is_material(word)
                        && !ended
                        && (material.is_empty()
                            || found[at - 1].word() == material.last().copied()) =>
                {
                    material.push(word);
                }
                Kind::Code(word)
                    if at > 0 && found[at - 1].is_sign('(') && part.material.is_none() =>
                {
                    material.push(word);
                }
                Kind::Sign('-') | Kind::Num(_) | Kind::Dims(_) => ended = !material.is_empty(),
                Kind::Sign('.') | Kind::Thread(_) => break,
                Kind::Word(word) if matches!(word.as_str(), "w" | "with" | "on" | "in") => break,
                _ => {}
            }
        }
        let is_form = matches!(
            material.as_slice(),
            ["flat" | "plate" | "bar" | "sheet" | "round" | "stock" | "tube"]
        );
        if !material.is_empty() && !is_form && self.job.parts[part].material.is_none() {
            self.job.parts[part].material = Some(material.join(" "));
        }
    }

    /// The unit of a bare number, and how it is known.
    fn unit_of(&self, num: &Num, row: Option<Unit>) -> (Unit, UnitFrom) {
        // `.5906 (15mm)`: three decimals of a note in inches are inches.
        let note = self.unit.map_or(self.context, |(unit, _)| unit);
        let is_inch = num.is_inch_shaped() || note == Unit::Inch && num.places > 2;
        if let Some(unit) = num.unit.or(row.filter(|row| !(is_inch && *row == Unit::Millimetre))) {
            return (unit, UnitFrom::Written);
        }
        if num.is_inch_shaped() && self.unit.is_none_or(|(unit, _)| unit == Unit::Millimetre) {
            return (Unit::Inch, UnitFrom::Context);
        }
        match self.unit {
            Some((unit, line)) => (unit, UnitFrom::Line(line)),
            None => (self.context, UnitFrom::Context),
        }
    }

    fn length(&self, num: &Num, row: Option<Unit>) -> Option<Length> {
        num.length(self.unit_of(num, row).0)
    }

    /// The feature of that name on a part, or a new one.
    fn feature(
        &mut self,
        line: &Line,
        part: usize,
        name: &str,
        side: Side,
        at: Range<usize>,
    ) -> usize {
        let said = stems(name);
        let found = self
            .features_of(part)
            .find(|(at, feature)| feature.side == side && self.names[*at] == said)
            .map(|(at, _)| at);
        found.unwrap_or_else(|| self.new_feature(line.number, part, name, side, at))
    }

    fn new_feature(
        &mut self,
        line: usize,
        part: usize,
        name: &str,
        side: Side,
        at: Range<usize>,
    ) -> usize {
        let said = stems(name);
        self.by_name.entry(said.join(" ")).or_insert(self.job.features.len());
        self.names.push(said);
        self.of_part[part].push(self.job.features.len());
        let unit = self.unit.map_or(self.context, |(unit, _)| unit);
        self.job.features.push(Feature {
            line,
            at,
            unit_from: UnitFrom::Context,
            ..Feature::new(part, name.trim(), side, unit, None)
        });
        self.job.features.len() - 1
    }

    /// The features of a part; the job itself would look through all of them.
    fn features_of(&self, part: usize) -> impl Iterator<Item = (usize, &Feature)> {
        self.of_part[part].iter().map(|at| (*at, &self.job.features[*at]))
    }

    /// A length that was taken for one part's belongs to another.
    fn move_to(&mut self, feature: usize, part: usize) {
        let was = std::mem::replace(&mut self.job.features[feature].part, part);
        self.of_part[was].retain(|at| *at != feature);
        self.of_part[part].push(feature);
    }

    /// A word more of a feature's name.
    fn rename(&mut self, feature: usize, word: &str) {
        let name = &mut self.job.features[feature].name;
        name.push(' ');
        name.push_str(word);
        self.names[feature] = stems(name);
        self.by_name.entry(self.names[feature].join(" ")).or_insert(feature);
    }

    /// A size said of a feature.
    fn size(&mut self, line: &mut Line, feature: usize, nominal: Nominal, unit: (Unit, UnitFrom)) {
        let was = self.job.features[feature].nominal.replace(nominal.clone());
        let one = &mut self.job.features[feature];
        if let Some(was) = was.filter(|was| *was != nominal) {
            one.earlier.push((one.line, was));
        }
        (one.unit, one.unit_from) = (
            if matches!(unit.0, Unit::Millimetre | Unit::Inch) { unit.0 } else { one.unit },
            unit.1,
        );
        one.done |= line.done;
        self.say(line, feature).nominal = Some(nominal);
    }

    /// What this line has said of a feature already.
    fn said_here(&self, line: &Line, feature: usize) -> Option<usize> {
        let here = self.job.said.iter().enumerate().rev();
        here.take_while(|(_, said)| said.line == line.number)
            .find(|(_, said)| said.feature == feature)
            .map(|(at, _)| at)
    }

    /// What this line says of a feature.
    fn say(&mut self, line: &mut Line, feature: usize) -> &mut Said {
        line.found += 1;
        line.feature = Some(feature);
        self.last_feature = Some(feature);
        self.touch(self.job.features[feature].part);
        let at = self.said_here(line, feature).unwrap_or_else(|| {
            self.job.said.push(Said {
                line: line.number,
                feature,
                nominal: None,
                reading: None,
                mate: None,
            });
            self.job.said.len() - 1
        });
        &mut self.job.said[at]
    }

    /// A reading of a feature; asked where its unit is in doubt.
    fn reading(&mut self, line: &mut Line, feature: usize, num: &Num) {
        let feature = match self.measurable(feature, line, num) {
            Some(feature) => feature,
            None => return self.ask_measured(line, num),
        };
        let one = &self.job.features[feature];
        let own = if one.nominal.is_none() && num.is_inch_shaped() { Unit::Inch } else { one.unit };
        let bare = line.unit.unwrap_or(own);
        let Some(size) = num.length(bare) else { return };
        let is_bare = num.unit.is_none() && !num.is_inch_shaped();
        if one.nominal.is_none() && is_bare && bare == Unit::Inch && num.value() > 11.9 {
            return self.ask_measured(line, num);
        }
        if let Some(nominal) = one.nominal.as_ref().and_then(Nominal::size) {
            let ratio = size.millimetres() / nominal.millimetres();
            if (ratio - 25.4).abs() < 2.0 || (ratio * 25.4 - 1.0).abs() < 0.08 {
                let name = self.job.full_name(feature);
                let other = if bare == Unit::Inch { "mm" } else { "in" };
                self.ask(
                    line.number,
                    num.at.clone(),
                    format!("is this reading of the {name} in {other}?"),
                    Some("write its unit beside it".into()),
                );
                line.found += 1;
                return;
            }
        }
        self.put_reading(line, feature, size, num.at.clone());
    }

    /// The feature that a reading can be of: one far off the size of the feature
    /// said is of another on that side of the part, or of none.
    fn measurable(&self, feature: usize, line: &Line, num: &Num) -> Option<usize> {
        let one = &self.job.features[feature];
        let size = num.length(line.unit.unwrap_or(one.unit));
        let Some((size, nominal)) = size.zip(one.nominal.as_ref().and_then(Nominal::size)) else {
            return Some(feature);
        };
        let ratio = size.millimetres() / nominal.millimetres();
        let is_unit = |ratio: f64| (ratio - 25.4).abs() < 2.0;
        let least = if one.side.surface().is_some() { 0.75 } else { 0.5 };
        if (least..1.0 / least).contains(&ratio)
            || !nominal.is_positive()
            || is_unit(ratio)
            || is_unit(1.0 / ratio)
        {
            return Some(feature);
        }
        let alike = self.stems[one.part].last().map(|last| self.ending(last)).unwrap_or_default();
        std::iter::once(one.part)
            .chain(alike)
            .filter_map(|part| self.nearest(part, Some(one.side), size))
            .find(|at| self.is_near(*at, size))
    }

    fn put_reading(&mut self, line: &mut Line, feature: usize, size: Length, at: Range<usize>) {
        let (state, date) = (line.state, line.date.clone());
        let reading = Reading { line: line.number, at, size, state, date };
        let one = &self.job.features[feature];
        if line.date.is_some() && one.nominal.is_none() && one.line == line.number {
            let text =
                format!("nothing before says that there is a {}", self.job.full_name(feature));
            let answer = "the reading is kept; give its size on a line of its own";
            self.ask(line.number, reading.at.clone(), text, Some(answer.into()));
        }
        let one = &mut self.job.features[feature];
        one.readings.push(reading);
        one.done |= line.done;
        let index = one.readings.len() - 1;
        let said = self.say(line, feature);
        if said.reading.is_some() {
            let said = Said {
                line: line.number,
                feature,
                nominal: None,
                reading: Some(index),
                mate: None,
            };
            self.job.said.push(said);
        } else {
            said.reading = Some(index);
        }
    }
}
