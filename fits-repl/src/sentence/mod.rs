//! The shop's sentence: a phrase to a plain query, a question back, or nothing.
//!
//! It stands behind the plain grammar and computes no answer. Every question
//! tries the phrase by itself and knows its own words only; a word or a number
//! that is left over rules the question out. Where two questions, or two
//! readings of the figures, are left, the person is asked.

mod align;
mod alike;
mod apart;
mod asked;
mod assemble;
mod bearing;
mod bought;
mod bushing;
mod clean_up;
mod corrected;
mod crib;
mod dial;
mod each_part;
mod fit;
mod hardware;
mod holes;
mod joint;
mod line;
mod links;
mod log;
mod log_words;
mod loose;
mod marks;
mod named;
mod number;
mod offered;
mod pair;
mod plan;
mod reading;
mod rescue;
mod roles;
mod settings;
mod settle;
mod settled;
mod several;
mod share;
mod short;
mod sizes;
pub(crate) mod spelled;
mod stack;
mod suit;
mod sums;
mod table;
mod threads;
mod token;
mod tools;
mod tube;
mod unsure;
mod vague;
mod view;
mod weight;
mod work;

pub(crate) use self::{
    alike::{Alike, alike},
    asked::ends,
    holes::{fraction_threads, screw_pitches},
    loose::{Guess, guess, is_pair, others},
    offered::{Lack, lacks, offered},
    token::System,
    unsure::{decimal_commas, fractions_of_a_millimetre, replaced},
};
use self::{
    line::Line,
    marks::plain_marks,
    settle::{in_units, settle},
    settled::join_materials,
    table::LOG,
    unsure::{cast, in_mils, in_or_into, large_fraction, spoken_hundreds},
    view::View,
};
use crate::words::clause::reserved;

/// What a question makes of a phrase.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Said {
    /// Plain queries, the last one is the question.
    Plain(Vec<String>),
    /// It could be any of these.
    Ask {
        /// What is not said.
        why: String,
        /// Plain queries, each of which works.
        choices: Vec<String>,
    },
}

impl Said {
    fn plain(query: impl Into<String>) -> Self {
        Self::Plain(vec![query.into()])
    }

    fn ask(why: impl Into<String>, choices: Vec<String>) -> Self {
        Self::Ask { why: why.into(), choices }
    }

    /// The same with more at the end of each query.
    fn and_so(self, more: &str) -> Self {
        let with = |queries: Vec<String>| queries.into_iter().map(|it| it + more).collect();
        match self {
            Self::Plain(lines) => Self::Plain(with(lines)),
            Self::Ask { why, choices } => Self::Ask { why, choices: with(choices) },
        }
    }

    /// The plain queries that may be meant: one, or what is asked about.
    fn queries(self) -> Vec<String> {
        match self {
            Self::Plain(lines) => vec![lines.join(" ; ")],
            Self::Ask { choices, .. } => choices,
        }
    }
}

/// A word that was taken for a slip of typing.
#[derive(Clone, Debug, PartialEq, Eq, schemars::JsonSchema, serde::Serialize)]
#[non_exhaustive]
pub struct Slip {
    /// As it was typed.
    pub typed: String,
    /// As it was read.
    pub read: String,
}

impl std::fmt::Display for Slip {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "read `{}` as `{}`", self.typed, self.read)
    }
}

/// A line with the one word mended that nobody knows and that is a slip of
/// typing of a keyword, or of a word of the shop.
pub(crate) fn mended(line: &str) -> Option<(String, Slip)> {
    let table = table::Table::get();
    let is_letter = |c: char| c.is_ascii_alphabetic();
    let unknown = line.split(|c: char| !is_letter(c)).find_map(|typed| {
        let word = typed.to_lowercase();
        let is_known = table.knows(&word) || reserved().any(|known| known == word);
        if word.len() < 5 || is_known {
            return None;
        }
        let mut keywords = reserved().filter(|known| table::is_slip(&word, known));
        let read = match (keywords.next(), keywords.next()) {
            (Some(keyword), None) => keyword,
            (None, _) => table.slip(&word)?,
            _ => return None,
        };
        Some((typed, read))
    });
    let (typed, read) = unknown?;
    let at = line.find(typed)?;
    let glued = |c: Option<char>| c.is_some_and(char::is_alphanumeric);
    if glued(line[..at].chars().next_back()) || glued(line[at + typed.len()..].chars().next()) {
        return None;
    }
    let mended = format!("{}{read}{}", &line[..at], &line[at + typed.len()..]);
    Some((mended, Slip { typed: typed.to_owned(), read: read.to_owned() }))
}

/// What is known beside the line.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Setting {
    /// What bare numbers are, where it was ever chosen.
    pub units: Option<System>,
    /// A pass log is open.
    pub log_is_open: bool,
    /// Where the work of the open log began, in millimetres.
    pub log_from: Option<f64>,
    /// A dial counts what comes off each side.
    pub dial_is_radius: bool,
}

type Question = fn(&View, System) -> Option<Said>;

/// Every question by its name in `words.csv`; its place is its bit in a row.
const ALL: &[(&str, Question)] = &[
    ("fit", fit::fit),
    ("suit", suit::suit),
    ("pair", pair::pair),
    ("reading", reading::reading),
    ("plan", plan::plan),
    ("rehearse", plan::rehearse),
    ("ream", tools::ream),
    ("drill", tools::drill),
    ("size", tools::size),
    ("thread", threads::thread),
    ("tap", holes::tap),
    ("clearance", holes::clearance),
    ("wires", threads::wires),
    ("thread-cut", threads::cut),
    ("assemble", assemble::assemble),
    ("pick-press", assemble::pick_press),
    ("bushing", bushing::bushing),
    ("stack", stack::stack),
    ("warm", reading::warm),
    ("keyway", bought::keyway),
    ("general", bought::general),
    ("grade", bought::grade),
    ("pick", pair::pick),
    ("bearing", bearing::bearing),
    ("bought", bought::bought),
    ("align", align::align),
    ("hardware", hardware::hardware),
    ("settings", settings::settings),
    ("help", tools::help),
    ("why", tools::why),
    ("rescue", rescue::rescue),
    ("by-mic", rescue::by_mic),
    ("service", rescue::service),
    ("weight", weight::weight),
    ("clean-up", clean_up::clean_up),
    ("share", share::share),
    ("insert", threads::insert),
    ("crib", crib::crib),
];

/// A longer phrase is not a sentence.
const LONGEST: usize = 400;

/// `where do the figures for 290 M6 come from?`: what is asked about.
fn asked_why(text: &str) -> Option<&str> {
    let rest = ["where do the figures for ", "where does ", "where do ", "why "].iter().find_map(
        |lead| {
            text.get(..lead.len())
                .filter(|start| start.eq_ignore_ascii_case(lead))
                .and_then(|_| text.get(lead.len()..))
        },
    )?;
    let rest = rest.trim_end_matches(['?', ' ', '.']);
    let rest = [
        " come out like that",
        " come out like this",
        " come out so",
        " come out that way",
        " comes out like that",
        " what it is",
        " what they are",
        " so",
        " like that",
        " that big",
        " that much",
        " that tight",
        " that loose",
    ]
    .iter()
    .find_map(|tail| rest.strip_suffix(tail))
    .map_or(rest, |rest| rest.strip_prefix("is ").unwrap_or(rest));
    let of = rest
        .strip_suffix(" come from")
        .or_else(|| text.to_lowercase().starts_with("why ").then_some(rest))?;
    of.bytes().any(|byte| byte.is_ascii_digit()).then_some(of)
}

/// A line with its numbers in words as figures, and without slips of the tongue;
/// none where it is not known what is taken back.
fn prepared(text: &str, setting: Setting) -> Option<corrected::Corrected> {
    let text = spelled::figures(text);
    // In a log `scratch that` takes an entry back.
    if setting.log_is_open {
        return Some(corrected::Corrected { text, slip: None });
    }
    corrected::corrected(&text)
}

/// Reads a phrase; none where no question takes all of it.
pub(crate) fn read(text: &str, setting: Setting) -> Option<Said> {
    read_with_slips(text, setting).map(|(said, _)| said)
}

/// The same, with the words that were taken for slips of typing.
pub(crate) fn read_with_slips(text: &str, setting: Setting) -> Option<(Said, Vec<Slip>)> {
    if text.len() > LONGEST {
        return None;
    }
    let text = &*plain_marks(text);
    if let Some(said) = spoken_hundreds(text, setting) {
        return said.map(|said| (said, Vec::new()));
    }
    let corrected::Corrected { text, slip } = prepared(text, setting)?;
    let text = &*text;
    if let Some(said) = in_mils(text, setting) {
        return said.map(|said| (said, Vec::new()));
    }
    if let Some(said) = cast(text, setting) {
        return Some((said, Vec::new()));
    }
    if let Some(said) = in_or_into(text, setting).or_else(|| large_fraction(text, setting)) {
        return Some((said, Vec::new()));
    }
    if let Some(of) = asked_why(text) {
        let (plain, slips) = match read_with_slips(of, setting) {
            Some((Said::Plain(lines), slips)) => {
                let [only] = <[String; 1]>::try_from(lines).ok()?;
                (only, slips)
            }
            Some((Said::Ask { .. }, _)) => return None,
            None => (of.to_owned(), Vec::new()),
        };
        return Some((Said::plain(format!("why {plain}")), slips));
    }
    let line = Line::new(text);
    let [known_to] = line.known_to();
    let otherwise = || {
        let told = if setting.log_is_open { log_words::told(text) } else { None };
        told.map(|said| (said, Vec::new())).or_else(|| apart::unit_apart(text, setting))
    };
    if known_to == 0 {
        return otherwise();
    }
    let view = |question: u8| {
        let knows = known_to & (1 << question) != 0;
        knows.then(|| line.view(question)).flatten().and_then(ready)
    };
    let mut slips: Vec<Slip> = slip.into_iter().collect();
    let mut note = |view: &View| {
        for slip in line.slips(view) {
            if !slips.contains(&slip) {
                slips.push(slip);
            }
        }
    };
    let mut found: Vec<(&str, Said)> = (0..)
        .zip(ALL)
        .filter_map(|(bit, (name, question))| {
            let view = view(bit)?;
            let said = in_units(&view, setting, question)?;
            note(&view);
            Some((*name, said))
        })
        .collect();
    if let Some(view) = view(LOG)
        && let Some(said) = log_entry(&view, setting)
    {
        note(&view);
        // Beside an open log, what may be an entry is no size alone.
        if setting.log_is_open {
            found.retain(|(name, _)| *name != "size");
        }
        found.push(("log", said));
    }
    match settle(found) {
        Some(said) => Some((said, slips)),
        None => otherwise(),
    }
}

/// A view with its nouns, its `in`, its signs and its metals settled.
fn ready(mut view: View) -> Option<View> {
    view.settle_signs();
    view.settle_deviations();
    view.settle_count();
    view.settle_asked();
    view.settle_heat();
    view.settle_nouns();
    view.settle_ranges();
    view.settle_in();
    view.settle_sums();
    view.settle_bearing();
    join_materials(&mut view)?;
    (!view.dangles()).then_some(view)
}

/// Does a word or a class of the line say how parts are to fit?
pub(crate) fn says_fit(text: &str) -> bool {
    let text = plain_marks(text);
    let (view, _) = Line::new(&text).gist();
    view.has("fit") || view.classes().next().is_some()
}

/// Would the line be an entry, were a log open?
pub(crate) fn is_spoken_entry(text: &str, setting: Setting) -> bool {
    if text.len() > LONGEST {
        return false;
    }
    let setting = Setting { log_is_open: true, ..setting };
    let Some(corrected::Corrected { text, .. }) = prepared(&plain_marks(text), setting) else {
        return false;
    };
    let view = Line::new(&text).view(LOG).and_then(ready);
    view.is_some_and(|view| matches!(log_entry(&view, setting), Some(Said::Plain(_))))
}

/// What is dialled and read is in the units in force, or in those said.
fn log_entry(view: &View, setting: Setting) -> Option<Said> {
    if setting.log_is_open || setting.units.is_some() {
        let (inch, metric) = view.evidence();
        let system = match (inch, metric) {
            (true, false) => System::Inches,
            (false, true) => System::Millimetres,
            _ => setting.units.or_else(|| read_in(view, setting)).unwrap_or(System::Millimetres),
        };
        return log::log(view, system, setting);
    }
    let closed = Setting { log_is_open: false, ..setting };
    in_units(view, setting, move |view, system| log::log(view, system, closed))
}

/// The units that the figures of an entry are in by what the open log's work measures: read
/// in the others they are far from it.
fn read_in(view: &View, setting: Setting) -> Option<System> {
    let from = setting.log_from?;
    let largest = view.numbers().map(|(_, num)| num.value).fold(0.0, f64::max);
    let is_near = |unit: f64| (largest * unit - from).abs() < 0.25 * from;
    [(25.4, System::Inches), (1.0, System::Millimetres)]
        .into_iter()
        .find_map(|(unit, system)| is_near(unit).then_some(system))
}

/// Each once, in their order.
pub(crate) fn distinct(choices: Vec<String>) -> Vec<String> {
    let mut unique: Vec<String> = Vec::with_capacity(choices.len());
    for choice in choices {
        if !unique.contains(&choice) {
            unique.push(choice);
        }
    }
    unique
}
