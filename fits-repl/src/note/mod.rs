//! A note as a person writes it, read into a job.
//!
//! ```text
//! text ─lines▶ cells ─token▶ words and numbers ─clause▶ features ─mates▶ job
//! ```
//!
//! Nothing that was written is lost: what is no size is a remark, and what
//! could be meant in two ways is a question.

mod cell;
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
mod line;
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
mod short;
mod sizes;
mod table;
mod talk;
mod tidy;
mod token;
mod whose;
mod work;

use std::{
    collections::{HashMap, HashSet},
    ops::Range,
};

use fits_core::{
    job::whole::{FitSaid, Job, Question, Remark, State},
    size::Unit,
};
use look::{is_prose, things};
use token::{Kind, Num, Token, tokens};

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
    /// Only the feature's own name says it: `gear seat`.
    hinted: bool,
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
    /// The feature, the mate, the size and the fit of the row above.
    above: [String; 4],
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
    /// A line with a date stands above in this paragraph.
    under_date: bool,
    /// Bullets at the margin open parts, those further in are of them.
    outline: bool,
    /// The note's own short forms: `PF press`.
    legend: HashMap<String, String>,
    /// Its lines are sentences: what is not sure is asked, line by line.
    prose: bool,
    has_text: bool,
    /// The line above is a row of a table.
    in_rows: bool,
    /// A blank line was read; one stands above this line.
    blank: bool,
    after_blank: bool,
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
    /// A line with a date stands above in its paragraph.
    under_date: bool,
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
            above: Default::default(),
            ruled: false,
            current: None,
            block: Vec::new(),
            is_heading: false,
            last_feature: None,
            hangs: None,
            measured: false,
            flat: false,
            dated: false,
            under_date: false,
            outline: lines::is_outline(text),
            legend: HashMap::new(),
            prose: is_prose(text),
            has_text: false,
            in_rows: false,
            blank: false,
            after_blank: false,
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
            match &mut token.kind {
                Kind::Num(num) if self.is_of_an_inch_size(num) => num.unit = Some(Unit::Inch),
                Kind::Range(low, high) if self.is_of_an_inch_size(high) => {
                    (low.unit, high.unit) = (Some(Unit::Inch), Some(Unit::Inch));
                }
                _ => {}
            }
        }
        found
    }

    fn remark(&mut self, line: usize, text: &str, part: Option<usize>) {
        self.job.remarks.push(Remark { line, text: text.trim().to_owned(), part });
    }

    fn writers_question(&mut self, line: usize, raw: &str) {
        let at = raw.len() - raw.trim_start().len()..raw.trim_end().len();
        let text = raw.trim().to_owned();
        self.job.questions.push(Question { line, at, text, answer: None, by_writer: true });
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
