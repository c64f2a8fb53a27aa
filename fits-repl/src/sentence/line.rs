//! A line, its places looked up once, and the way of each question through it.

use std::{cell::OnceCell, cmp::Reverse, collections::HashSet, ops::Range, rc::Rc};

use crate::sentence::{
    Slip,
    spelled::number,
    table::{Row, Table, word_at},
    token::{Token, token_at},
    view::{Item, View},
};

/// A line, its places looked up once for all questions.
pub(crate) struct Line {
    text: Rc<str>,
    /// What stands at each byte, where it was looked up.
    places: Vec<OnceCell<Box<Place>>>,
}

struct Place {
    token: Option<(Token, usize)>,
    words: Vec<(&'static Row, usize)>,
    /// The word that a slip of typing could have meant, and where what was typed ends.
    slip: Option<&'static str>,
    meant: Vec<&'static Row>,
    end: usize,
}

impl Place {
    /// May this word, which stands here, be passed over in a guess?
    fn may_be_passed(&self, word: &str) -> bool {
        let is_letter = |byte: u8| byte.is_ascii_alphabetic() || matches!(byte, b'\'' | b'/');
        let is_word = word.len() > 1 && word.bytes().all(is_letter);
        // What a part is made of, or how it is to fit, is not passed over.
        let says_more = self.words.iter().any(|(row, _)| MEANT.contains(&row.kind));
        self.token.is_none() && is_word && !says_more && !is_kept(&word.to_lowercase())
    }
}

impl Line {
    pub(crate) fn new(text: &str) -> Self {
        Self { text: text.into(), places: text.bytes().map(|_| OnceCell::new()).collect() }
    }

    pub(super) fn text(&self) -> &str {
        &self.text
    }

    /// What stands at a place inside the line.
    fn place(&self, at: usize) -> &Place {
        self.places[at].get_or_init(|| Box::new(self.looked_up(at)))
    }

    fn looked_up(&self, at: usize) -> Place {
        let text = &*self.text;
        let byte = |at: usize| text.as_bytes().get(at);
        // A letter close to a figure is not a word: `6A` is a class begun.
        let is_glued = byte(at).is_some_and(u8::is_ascii_alphabetic)
            && at.checked_sub(1).and_then(byte).is_some_and(u8::is_ascii_digit);
        let words = if is_glued { Vec::new() } else { Table::get().matches(text, at) };
        let (said, end) = word_at(text, at).unwrap_or_else(|| {
            let next = text[at..].chars().next().map_or(1, char::len_utf8);
            (text[at..at + next].into(), at + next)
        });
        // Known to some question: no slip of typing.
        let slip = if words.is_empty() { Table::get().slip(&said) } else { None };
        let meant = slip.map_or_else(Vec::new, |meant| {
            let mut rows = Table::get().matches(meant, 0);
            rows.retain(|(_, end)| *end == meant.len());
            rows.into_iter().map(|(row, _)| row).collect()
        });
        Place { token: token_at(text, at), words, slip, meant, end }
    }

    /// The questions that know every word of the line but so many, a bit each,
    /// from none passed over upward: all of a line is looked up once, and
    /// only those read it.
    pub(super) fn known_to<const LEVELS: usize>(&self) -> [u64; LEVELS] {
        let end = self.text.len();
        let mut reached = vec![[0; LEVELS]; end + 1];
        reached[0] = [u64::MAX; LEVELS];
        for from in 0..end {
            let here = std::mem::replace(&mut reached[from], [0; LEVELS]);
            if here == [0; LEVELS] {
                continue;
            }
            let at = next_place(&self.text, from);
            let mut go_on = |end: usize, questions: u64, passed: usize| {
                for (level, before) in (passed..LEVELS).zip(here) {
                    reached[end][level] |= before & questions;
                }
            };
            if at >= end {
                go_on(end, u64::MAX, 0);
                continue;
            }
            let place = self.place(at);
            let mut known = 0;
            if let Some((_, end)) = &place.token {
                go_on(*end, u64::MAX, 0);
                known = u64::MAX;
            }
            for (row, end) in &place.words {
                go_on(*end, row.questions, 0);
                known |= row.questions;
            }
            for row in &place.meant {
                go_on(place.end, row.questions & !known, 0);
            }
            if LEVELS > 1 && place.may_be_passed(&self.text[at..place.end]) {
                go_on(place.end, u64::MAX, 1);
            }
        }
        reached[end]
    }

    /// The line as a question sees it; none where it does not know a word.
    pub(super) fn view(&self, question: u8) -> Option<View> {
        self.view_without(question, 0).map(|(view, _)| view)
    }

    /// The line with so many words passed over at most, and where they stand.
    pub(super) fn view_without(
        &self,
        question: u8,
        most: usize,
    ) -> Option<(View, Vec<Range<usize>>)> {
        let mut search =
            Search { line: self, question, dead: HashSet::new(), left: most, passed: Vec::new() };
        let mut items = Vec::new();
        search.goes_on(0, &mut items).then(|| {
            items.reverse();
            search.passed.reverse();
            (View { items, text: Rc::clone(&self.text) }, search.passed)
        })
    }

    /// What stands in the line, whoever knows it, and the words that nobody knows.
    pub(super) fn gist(&self) -> (View, Vec<Range<usize>>) {
        let (mut items, mut unknown) = (Vec::new(), Vec::new());
        let mut at = next_place(&self.text, 0);
        while at < self.text.len() {
            let place = self.place(at);
            let weight = |row: &Row| GIST.iter().position(|kind| *kind == row.kind);
            let word = place
                .words
                .iter()
                .map(|(row, end)| (*end, Reverse(weight(row).unwrap_or(GIST.len())), *row))
                .max_by_key(|(end, weight, _)| (*end, *weight));
            let found = match (&place.token, word) {
                (Some((token, end)), word) if word.is_none_or(|(other, ..)| other <= *end) => {
                    Some((token.clone(), *end))
                }
                (_, Some((end, _, row))) => {
                    Some((Token::Word { name: row.name, kind: row.kind }, end))
                }
                _ => None,
            };
            let end = found.as_ref().map_or(place.end, |(_, end)| *end);
            match found {
                Some((token, end)) => items.push(Item { token, at: at..end }),
                None => unknown.push(at..place.end),
            }
            at = next_place(&self.text, end);
        }
        (View { items, text: Rc::clone(&self.text) }, unknown)
    }

    /// The words of a view that were taken for slips of typing.
    pub(crate) fn slips(&self, view: &View) -> Vec<Slip> {
        let slip = |item: &Item| {
            let place = self.place(item.at.start);
            let Token::Word { .. } = item.token else { return None };
            let read = place.slip.filter(|_| place.token.is_none())?;
            Some(Slip { typed: self.text.get(item.at.clone())?.to_owned(), read: read.to_owned() })
        };
        view.items.iter().filter_map(slip).collect()
    }
}

/// Words that turn a meaning round: where one stands nothing is offered either.
pub(super) const TURNS: &[&str] = &[
    "not",
    "no",
    "never",
    "without",
    "except",
    "neither",
    "nor",
    "unless",
    "isn't",
    "isnt",
    "don't",
    "dont",
    "wasn't",
    "doesn't",
    "doesnt",
    "won't",
    "wont",
    "instead",
    "wait",
    "sorry",
    "scratch",
    "correction",
    "meant",
    "oops",
    "radius",
    "rad",
    "per",
    "side",
    "circumference",
    "area",
    "half",
    "twice",
    "double",
    "third",
    "thirds",
    "wrong",
    "tapered",
    "split",
    "slit",
    "slotted",
    "assemble",
    "=",
    "than",
    "rather",
];

/// Words that say or change a figure, beside the numbers.
const FIGURES: &[&str] = &[
    "each",
    "left",
    "heavy",
    "light",
    "less",
    "minus",
    "plus",
    "over",
    "under",
    "both",
    "either",
    "off",
    "undersize",
    "oversize",
    "wall",
    "od",
    "id",
    "o.d.",
    "i.d.",
    "thick",
    "thin",
    "below",
    "above",
    "depth",
    "deep",
    "long",
    "length",
    "wide",
    "lg",
    "taper",
    "hot",
    "heat",
    "heated",
    "heating",
    "temp",
    "temperature",
    "force",
    "torque",
    "tons",
    "cold",
    "pitch",
    "hundred",
    "thousand",
    "cut",
    "x",
    "by",
    "oh",
    "point",
    "quarter",
    "eighth",
    "eighths",
    "sixteenth",
    "sixteenths",
    "inch",
    "or",
    "piston",
    "pistons",
];

/// Is the word, in small letters, one that is never passed over?
pub(super) fn is_kept(word: &str) -> bool {
    // Nought, and `thirteen` to `nineteen`, are numbers that may be passed over.
    let is_number = || matches!(number(word), Some(1..=12 | 20..));
    TURNS.contains(&word) || FIGURES.contains(&word) || is_number()
}

/// The kinds that say most of a line, the first of them first.
const GIST: &[&str] = &[
    "fit",
    "material",
    "hole",
    "shaft",
    "hub",
    "bushing",
    "bought",
    "key",
    "should",
    "off",
    "trouble",
    "reads",
    "start",
    "role",
    "head",
    "connector",
    "asking",
];

/// Kinds of words that are never passed over.
pub(super) const MEANT: &[&str] =
    &["material", "fit", "instrument", "off", "plastic", "service", "key"];

/// Tries the longest spelling first at each place; a shorter one where the
/// words after it are known to nobody else.
struct Search<'a> {
    line: &'a Line,
    question: u8,
    /// Places from which the end is not reached with so many words to pass over.
    dead: HashSet<(usize, usize)>,
    /// Words that may still be passed over, and those that were, the last first.
    left: usize,
    passed: Vec<Range<usize>>,
}

/// Where the next word or number begins: after blanks, and after a hyphen that
/// parts two words.
fn next_place(text: &str, at: usize) -> usize {
    let rest = text.get(at..).unwrap_or_default();
    let at = at + rest.len() - rest.trim_start_matches([' ', '\t']).len();
    let letter = |place: usize| text.as_bytes().get(place).is_some_and(u8::is_ascii_alphabetic);
    let parts = text.as_bytes().get(at) == Some(&b'-')
        && at > 0
        && letter(at + 1)
        && !text[..at].ends_with(' ');
    at + usize::from(parts)
}

impl Search<'_> {
    /// Is the end reached from here? Its items, the last one first.
    fn goes_on(&mut self, at: usize, items: &mut Vec<Item>) -> bool {
        let text = &*self.line.text;
        let at = next_place(text, at);
        if at >= text.len() {
            return true;
        }
        if self.dead.contains(&(at, self.left)) {
            return false;
        }
        let place = self.line.place(at);
        let word = |row: &Row| Token::Word { name: row.name, kind: row.kind };
        let mut options: Vec<(Token, usize, u8)> = place
            .words
            .iter()
            .filter(|(row, _)| row.is_of(self.question))
            .map(|(row, end)| (word(row), *end, row.rank()))
            .collect();
        if let Some((token, end)) = &place.token {
            // A number gives way to a metal of the same name, and to a longer word.
            options.push((token.clone(), *end, 4));
        }
        options.sort_by_key(|(_, end, rank)| Reverse((*end, *rank)));
        options.dedup_by_key(|(_, end, _)| *end);
        if options.is_empty() {
            let meant = place.meant.iter().filter(|row| row.is_of(self.question));
            options.extend(meant.max_by_key(|row| row.rank()).map(|row| (word(row), place.end, 0)));
        }
        for (token, end, _) in options {
            if self.goes_on(end, items) {
                items.push(Item { token, at: at..end });
                return true;
            }
        }
        if self.left > 0 && place.may_be_passed(&text[at..place.end]) {
            self.left -= 1;
            let reached = self.goes_on(place.end, items);
            self.left += 1;
            if reached {
                self.passed.push(at..place.end);
                return true;
            }
        }
        self.dead.insert((at, self.left));
        false
    }
}
