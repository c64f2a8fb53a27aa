//! A note as a person writes it, read into a job.
//!
//! ```text
//! text ─lines▶ cells ─token▶ words and numbers ─clause▶ features ─joints▶ job
//! ```
//!
//! Nothing that was written is lost: what is no size is a remark, and what
//! could be meant in two ways is a question.

mod clause;
mod counts;
mod dates;
mod head;
mod joined;
mod joint_rows;
mod joints;
mod kept;
mod kinds;
mod layout;
mod legend;
mod lexicon;
mod line;
mod lines;
mod look;
mod names;
mod numbers;
mod place;
mod readings;
mod sizes;
mod spoken;
mod table;
mod talk;
mod tidy;
mod token;
mod told;
mod units;
mod wants;
mod work;

use fits_core::{
    job::whole::{Job, State},
    size::Unit,
};
use layout::Layout;
use legend::Legend;
use place::Place;
use table::Table;
use told::Told;
use wants::Wants;

/// Reads a note.
pub fn read(text: &str) -> Job {
    if tidy::is_tidy(text) {
        return tidy::read(text);
    }
    let layout = Layout::of(text);
    let spelled = layout.text(text);
    let mut reader = Reader::new(&spelled, layout);
    let lines: Vec<&str> = spelled.lines().map(str::trim_end).collect();
    for at in 0..lines.len() {
        reader.line(at + 1, lines[at], &lines[at + 1..]);
    }
    let Reader { mut told, wants, layout, .. } = reader;
    joints::settle(&mut told, wants.all());
    kept::figures(&mut told.job, &lines);
    layout.restore(&mut told.job, text);
    told.job
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

/// A note while its lines are read, one after another.
struct Reader {
    told: Told,
    wants: Wants,
    place: Place,
    table: Table,
    legend: Legend,
    layout: Layout,
}

/// What holds while a line is read.
#[derive(Default)]
#[allow(clippy::struct_excessive_bools, reason = "each is something a line may say")]
struct Line {
    number: usize,
    /// It is of a note of sentences: what is not sure is asked.
    prose: bool,
    /// The part that it stands under.
    under: Option<usize>,
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
    /// It speaks of a taper: its ends are big and small.
    tapers: bool,
    /// It says how many teeth.
    geared: bool,
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
    /// Its part is turned down from the stock that it names.
    turned: bool,
    done: bool,
    state: State,
    /// How many things the line said.
    found: usize,
    /// It began at the margin with the part's own name.
    declares: bool,
    is_row: bool,
}

impl Reader {
    fn new(text: &str, layout: Layout) -> Self {
        Self {
            told: Told::of(text),
            wants: Wants::default(),
            place: Place::of(text),
            table: Table::default(),
            legend: Legend::default(),
            layout,
        }
    }

    /// The text of a line, from a place on.
    fn text(&mut self, raw: &str, from: usize, line: &mut Line) {
        let found = self.legend.spelled(&self.told, &raw[from.min(raw.len())..], from);
        line.under = self.place.current;
        clause::text(&mut self.told, &mut self.wants, raw, &found, line);
    }
}
