//! The words of the shop: what each is, and which questions know it.
//!
//! `words.csv` holds them, a row a meaning; fit words, materials and
//! instruments come from the library's own tables. A word that a question has
//! no row for rules that question out.

use std::{
    borrow::Cow,
    collections::{BTreeSet, HashMap},
    sync::LazyLock,
};

use crate::{sentence::ALL, words::near_miss};
use fits_core::{
    shop::words::Word,
    standards::{instruments::Instrument, materials::Material},
};

/// An entry of the pass log: a question after all of those in the list.
#[allow(clippy::cast_possible_truncation, reason = "fewer than 64 questions")]
pub(crate) const LOG: u8 = ALL.len() as u8;
const _: () = assert!(ALL.len() < 64, "a bit of a row for each question");

const FITTED: &str =
    "assemble bearing bought bushing fit plan pick-press rehearse ream suit warm pair rescue";
const METALS: &str = "assemble bought bushing fit log plan pair pick-press reading rehearse suit tap warm ream bearing hardware service weight settings";

/// Questions about parts and how they fit. `fitted`, `metals` and `parts` stand for these in a row.
const PARTS: &str = "fit suit pair reading plan rehearse pick bushing assemble pick-press warm bought bearing rescue";

/// A meaning of a spelling.
#[derive(Debug)]
pub(crate) struct Row {
    /// The word itself, as the plain query has it.
    pub(crate) name: &'static str,
    /// What it is: a small word, a noun of the hole, a role, a head…
    pub(crate) kind: &'static str,
    /// The questions that know it, a bit each.
    pub(super) questions: u64,
    /// A row for every question gives way to one that names its own.
    is_general: bool,
    /// A metal's number, `6061`: no size.
    is_number: bool,
}

impl Row {
    /// Which meaning of one spelling comes first: a question's own word, then
    /// what holds for all; a metal, a small word last.
    pub(crate) fn rank(&self) -> u8 {
        match (self.kind, self.is_general) {
            ("small", true) => 1,
            ("small", false) => 2,
            ("material", _) if self.is_number => 5,
            ("instrument" | "material", _) => 3,
            (_, true) => 6,
            (_, false) => 7,
        }
    }

    pub(crate) const fn is_of(&self, question: u8) -> bool {
        self.questions & (1 << question) != 0
    }
}

/// What follows the first word of a spelling, and its row.
#[derive(Debug)]
struct Spelling {
    rest: &'static str,
    row: usize,
}

/// The spellings that begin with one word.
#[derive(Debug, Default)]
struct Begun {
    all: Vec<Spelling>,
    /// The most words that any of them has after its first.
    most_after: usize,
}

/// Every spelling, by its first word.
#[derive(Debug)]
pub(crate) struct Table {
    rows: Vec<Row>,
    spellings: HashMap<&'static str, Begun>,
    /// Single words of five letters or more, for slips of typing.
    long: Vec<&'static str>,
}

static TABLE: LazyLock<Table> = LazyLock::new(Table::new);

/// One-word names that are verbs or sizes elsewhere: fits only before `fit`.
const NEEDS_FIT: &[&str] =
    &["tap", "tapping", "force", "thumb", "twist", "free", "wring", "keying", "drive", "driving"];

impl Table {
    pub(crate) fn get() -> &'static Self {
        &TABLE
    }

    fn new() -> Self {
        let mut table = Self {
            rows: Vec::with_capacity(1 << 10),
            spellings: HashMap::with_capacity(1 << 12),
            long: Vec::with_capacity(1 << 12),
        };
        for line in include_str!("words.csv").lines().skip(1) {
            let mut cells = line.splitn(4, ',');
            let mut cell = || cells.next().unwrap_or_default().trim_matches('"');
            let (name, kind, questions, spellings) = (cell(), cell(), cell(), cell());
            table.add(name, kind, questions, spellings.split('|'));
        }
        for word in Word::all() {
            let names = std::iter::once(word.name()).chain(word.aliases().iter().copied());
            let (verbs, names): (Vec<_>, Vec<_>) = names.partition(|name| NEEDS_FIT.contains(name));
            table.add(word.name(), "fit", "fitted", names.into_iter());
            for verb in verbs {
                table.add_owned(word.name(), "fit", "fitted", format!("{verb} fit"));
            }
        }
        for said in
            Word::ambiguous().filter(|said| !matches!(*said, "fit" | "light" | "heavy" | "medium"))
        {
            table.add(said, "vague", "fit suit plan bought", std::iter::once(said));
        }
        for said in ["light", "heavy", "medium", "close", "easy", "hand"] {
            table.add_owned(said, "vague", "fit suit", format!("{said} fit"));
        }
        // A rolling bearing goes by its own question.
        for material in Material::all().filter(|material| material.name() != "rolling bearing") {
            let names = std::iter::once(material.name())
                .chain(material.aliases().iter().copied())
                // `bushing bronze 3/4 ID …` is a bushing, and of bronze.
                .filter(|name| {
                    !matches!(*name, "iron" | "al" | "tool") && !name.contains("bushing")
                });
            let name = plain_name(material);
            let (numbers, names): (Vec<_>, Vec<_>) =
                names.partition(|name| name.bytes().any(|byte| byte.is_ascii_digit()));
            table.add(name, "material", "metals", names.into_iter());
            table.add(name, "material", "metals", numbers.into_iter());
            if let Some(row) = table.rows.last_mut() {
                row.is_number = true;
            }
        }
        for instrument in Instrument::all() {
            let names =
                std::iter::once(instrument.name()).chain(instrument.aliases()).filter(|name| {
                    !matches!(*name, "plug" | "scale" | "rule" | "comparator" | "indicator")
                });
            table.add(
                instrument.name(),
                "instrument",
                "plan reading rehearse settings log suit pair",
                names,
            );
        }
        table
    }

    fn add_owned(
        &mut self,
        name: &'static str,
        kind: &'static str,
        questions: &str,
        spelling: String,
    ) {
        // Made once for the life of the program.
        self.add(name, kind, questions, std::iter::once(&*spelling.leak()));
    }

    fn add(
        &mut self,
        name: &'static str,
        kind: &'static str,
        questions: &str,
        spellings: impl Iterator<Item = &'static str>,
    ) {
        let is_general = questions == "all";
        let bits = bits_of(questions);
        let row = self.rows.len();
        self.rows.push(Row { name, kind, questions: bits, is_general, is_number: false });
        // As thumbs type them: `whats`, `dont`; but `i'd` is no inside diameter.
        let bare = |spelling: &&'static str| {
            let is_other = ["i'd", "i'll", "we'll", "we're", "he'll", "she'll", "we'd", "she'd"];
            let is_typed =
                spelling.contains('\'') && !is_other.iter().any(|it| spelling.contains(it));
            is_typed.then(|| &*spelling.replace('\'', "").leak())
        };
        let spellings = spellings.flat_map(|said| std::iter::once(said).chain(bare(&said)));
        for spelling in spellings {
            let lower: &'static str = match lowered(spelling) {
                Cow::Borrowed(lower) => lower,
                Cow::Owned(lower) => lower.leak(),
            };
            let mut words = lower.split([' ', '-']).filter(|word| !word.is_empty());
            let Some(first) = words.next() else { continue };
            let after = words.count();
            let rest = if after == 0 { "" } else { lower.trim_start_matches([' ', '-']) };
            let rest = rest.get(first.len() + 1..).unwrap_or_default();
            let begun = self.spellings.entry(first).or_default();
            begun.most_after = begun.most_after.max(after);
            begun.all.push(Spelling { rest: rest.trim_start_matches([' ', '-']), row });
            if after == 0 && lower.len() >= 4 && lower.is_ascii() {
                self.long.push(lower);
            }
        }
    }

    /// Every spelling that begins here, the shortest first: its row, and where it ends.
    pub(crate) fn matches(&self, line: &str, at: usize) -> Vec<(&'static Row, usize)> {
        let Some((first, end)) = word_at(line, at) else { return Vec::new() };
        let Some(Begun { all, most_after }) = self.spellings.get(&*first) else {
            return Vec::new();
        };
        let after = |end: usize| {
            let gap = line[end..].len() - line[end..].trim_start_matches([' ', '-', '\t']).len();
            if gap > 0 { word_at(line, end + gap) } else { None }
        };
        let next = if *most_after > 0 { after(end) } else { None };
        let after = std::iter::successors(next, |(_, end)| after(*end));
        let after: Vec<_> = after.take(*most_after).collect();
        let mut found = Vec::new();
        for spelling in all {
            // Most are passed over by their second word.
            let is_begun = |(next, _): &(Cow<'_, str>, usize)| spelling.rest.starts_with(&**next);
            if !spelling.rest.is_empty() && !after.first().is_some_and(is_begun) {
                continue;
            }
            let mut words = after.iter();
            let (mut length, mut ends) = (0, end);
            let is_typed =
                spelling.rest.split([' ', '-']).filter(|word| !word.is_empty()).all(|word| {
                    let typed = words.next().filter(|(typed, _)| typed == word);
                    (length, ends) = typed.map_or((length, ends), |(_, end)| (length + 1, *end));
                    typed.is_some()
                });
            if let Some(row) = TABLE.rows.get(spelling.row).filter(|_| is_typed) {
                found.push((length, row, ends));
            }
        }
        found.sort_by_key(|(length, ..)| *length);
        found.into_iter().map(|(_, row, end)| (row, end)).collect()
    }

    /// The one known word that a slip of typing could have meant.
    pub(crate) fn slip(&self, word: &str) -> Option<&'static str> {
        if word.len() < 5 || !word.bytes().all(|byte| byte.is_ascii_alphabetic()) {
            return None;
        }
        let mut near = self.long.iter().filter(|known| is_slip(word, known));
        let first = near.next()?;
        let meanings = |word: &str| -> BTreeSet<(&str, &str)> {
            let spellings = self.spellings.get(word).map_or(&[][..], |begun| &begun.all).iter();
            let alone = spellings.filter(|spelling| spelling.rest.is_empty());
            let rows = alone.filter_map(|spelling| self.rows.get(spelling.row));
            rows.map(|row| (row.name, row.kind)).collect()
        };
        near.all(|other| {
            other == first
                || other.trim_end_matches('s') == first.trim_end_matches('s')
                || meanings(other) == meanings(first)
        })
        .then_some(*first)
    }

    /// Does a spelling of some question begin with this word?
    pub(crate) fn knows(&self, word: &str) -> bool {
        self.spellings.contains_key(word)
    }
}

/// The questions of a row, a bit each: by name, or a set of them.
fn bits_of(questions: &str) -> u64 {
    let bit = |question: &str| match question {
        "all" => (1 << ALL.len()) - 1,
        "parts" => bits_of(PARTS),
        "fitted" => bits_of(FITTED),
        "metals" => bits_of(METALS),
        "log" => 1 << LOG,
        _ => ALL.iter().position(|(known, _)| *known == question).map_or(0, |at| 1 << at),
    };
    questions.split(' ').fold(0, |bits, question| bits | bit(question))
}

/// The plainest name of a metal that says the same: letters and spaces alone.
pub(crate) fn plain_name(material: &'static Material) -> &'static str {
    let names = std::iter::once(material.name()).chain(material.aliases().iter().copied());
    let is_plain = |name: &str| name.chars().all(|c| c.is_ascii_lowercase() || c == ' ');
    names.into_iter().find(|name| is_plain(name)).unwrap_or_else(|| material.name())
}

/// One letter more, less, other or two exchanged; the first letter stands.
pub(crate) fn is_slip(typed: &str, known: &str) -> bool {
    typed.as_bytes().first() == known.as_bytes().first() && near_miss(typed, known)
}

/// The word that begins here, in small letters, and its end. A hyphen between
/// letters parts words; a full stop at the end is none of the word's.
pub(crate) fn word_at(line: &str, at: usize) -> Option<(Cow<'_, str>, usize)> {
    let rest = line.get(at..)?;
    let bytes = rest.as_bytes();
    let mut end = 0;
    while let Some(byte) = bytes.get(end) {
        let ends = match byte {
            b' ' | b'\t' | b',' | b';' | b':' | b'?' | b'!' | b'(' | b')' | b'"' => true,
            b'=' => end > 0,
            b'-' => {
                let letter = |at: Option<&u8>| at.is_some_and(u8::is_ascii_alphabetic);
                (end > 0 && letter(bytes.get(end - 1)) && letter(bytes.get(end + 1)))
                    || (end > 0 && letter(bytes.get(end + 1)))
            }
            b'.' => {
                bytes.get(end + 1).is_none_or(|next| matches!(next, b' ' | b',' | b'?'))
                    && !matches!(&bytes[..end], b"i.d" | b"o.d" | b"c.i")
            }
            _ => false,
        };
        if ends {
            break;
        }
        end += 1;
        // `=` and the slash between two figures stand alone.
        let is_slash = *byte == b'/'
            && end == 1
            && bytes.get(1).is_some_and(|next| next.is_ascii_digit() || *next == b'.');
        if *byte == b'=' || is_slash {
            break;
        }
    }
    let word = rest.get(..end)?;
    (!word.is_empty()).then(|| (lowered(word), at + end))
}

/// A text in small letters: most are.
fn lowered(text: &str) -> Cow<'_, str> {
    let is_small = text.bytes().all(|byte| byte.is_ascii() && !byte.is_ascii_uppercase());
    if is_small { text.into() } else { text.to_lowercase().into() }
}
