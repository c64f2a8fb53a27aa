//! The line as one question sees it: every token labelled, none passed over.

use std::{
    cell::RefCell,
    cmp::Reverse,
    collections::{HashMap, HashSet},
    ops::Range,
    rc::Rc,
};

use fits_core::standards::materials::Material;

use crate::sentence::{
    Slip,
    table::{Row, Table, plain_name, word_at},
    token::{Num, Token, Unit, token_at},
};

/// A line, its places looked up once for all questions.
pub(crate) struct Line {
    text: Rc<str>,
    places: RefCell<HashMap<usize, Rc<Place>>>,
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
        self.token.is_none() && is_word && !says_more && !KEPT.contains(&&*word.to_lowercase())
    }
}

/// A token and where it stands.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Item {
    pub(crate) token: Token,
    pub(crate) at: Range<usize>,
}

/// What one question sees.
pub(crate) struct View {
    pub(crate) items: Vec<Item>,
    /// The whole line.
    pub(crate) text: Rc<str>,
}

impl Line {
    pub(crate) fn new(text: &str) -> Self {
        Self { text: text.into(), places: RefCell::default() }
    }

    fn place(&self, at: usize) -> Rc<Place> {
        if let Some(place) = self.places.borrow().get(&at) {
            return Rc::clone(place);
        }
        let text = &*self.text;
        let byte = |at: usize| text.as_bytes().get(at);
        // A letter close to a figure is not a word: `6A` is a class begun.
        let is_glued = byte(at).is_some_and(u8::is_ascii_alphabetic)
            && at.checked_sub(1).and_then(byte).is_some_and(u8::is_ascii_digit);
        let words = if is_glued { Vec::new() } else { Table::get().matches(text, at) };
        let (said, end) = word_at(text, at).unwrap_or_else(|| {
            let next = text[at..].chars().next().map_or(1, char::len_utf8);
            (text[at..at + next].to_owned(), at + next)
        });
        // Known to some question: no slip of typing.
        let slip = if words.is_empty() { Table::get().slip(&said) } else { None };
        let meant = slip.map_or_else(Vec::new, |meant| {
            let mut rows = Table::get().matches(meant, 0);
            rows.retain(|(_, end)| *end == meant.len());
            rows.into_iter().map(|(row, _)| row).collect()
        });
        let place = Rc::new(Place { token: token_at(text, at), words, slip, meant, end });
        self.places.borrow_mut().insert(at, Rc::clone(&place));
        place
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

/// Words that turn a meaning round or change a figure: never passed over.
pub(super) const KEPT: &[&str] = &[
    "=",
    "assemble",
    "not",
    "no",
    "never",
    "without",
    "per",
    "side",
    "each",
    "radius",
    "rad",
    "left",
    "heavy",
    "light",
    "less",
    "minus",
    "plus",
    "over",
    "under",
    "half",
    "twice",
    "double",
    "both",
    "either",
    "than",
    "instead",
    "off",
    "undersize",
    "oversize",
    "wall",
    "thick",
    "thin",
    "below",
    "above",
    "except",
    "rather",
    "don't",
    "dont",
    "isn't",
    "isnt",
    "wasn't",
    "doesn't",
    "doesnt",
    "won't",
    "wont",
    "nor",
    "wrong",
    "neither",
    "unless",
    "depth",
    "deep",
    "taper",
    "tapered",
    "hot",
    "cold",
    "pitch",
    "circumference",
    "area",
    "hundred",
    "thousand",
    "third",
    "thirds",
    "cut",
    "x",
    "by",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "twenty",
    "thirty",
    "forty",
    "fifty",
    "sixty",
    "seventy",
    "eighty",
    "ninety",
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
    "wait",
    "sorry",
    "scratch",
    "correction",
    "meant",
    "oops",
    "instead",
];

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

impl View {
    pub(crate) fn tokens(&self) -> impl DoubleEndedIterator<Item = &Token> {
        self.items.iter().map(|item| &item.token)
    }

    /// What was typed for an item.
    pub(crate) fn said(&self, at: usize) -> String {
        self.items
            .get(at)
            .and_then(|item| self.text.get(item.at.clone()))
            .unwrap_or_default()
            .to_lowercase()
    }

    /// Is any of these words typed?
    pub(crate) fn types(&self, words: &[&str]) -> bool {
        let typed = |item: &Item| self.text.get(item.at.clone()).unwrap_or_default();
        self.items
            .iter()
            .any(|item| words.iter().any(|word| typed(item).eq_ignore_ascii_case(word)))
    }

    pub(crate) fn has(&self, kind: &str) -> bool {
        self.word(kind).is_some()
    }

    pub(crate) fn says(&self, kind: &str, name: &str) -> bool {
        self.tokens().any(
            |token| matches!(token, Token::Word { name: n, kind: k } if *k == kind && *n == name),
        )
    }

    /// The first word of a kind.
    pub(crate) fn word(&self, kind: &str) -> Option<&'static str> {
        self.words(kind).next()
    }

    pub(crate) fn words<'a>(&'a self, kind: &'a str) -> impl Iterator<Item = &'static str> + 'a {
        self.tokens().filter_map(move |token| match token {
            Token::Word { name, kind: k } if *k == kind => Some(*name),
            _ => None,
        })
    }

    pub(crate) fn numbers(&self) -> impl Iterator<Item = (usize, &Num)> {
        self.items.iter().enumerate().filter_map(|(at, item)| match &item.token {
            Token::Number(num) => Some((at, num)),
            _ => None,
        })
    }

    /// How many figures were typed: of limits each one.
    pub(super) fn figures(&self) -> usize {
        let of = |token: &Token| match token {
            Token::Number(_) | Token::Deviations { is_both: true, .. } => 1,
            Token::Deviations { .. } | Token::Span(..) => 2,
            _ => 0,
        };
        self.tokens().map(of).sum()
    }

    /// Only these kinds of words and these tokens: anything else is not this
    /// question's.
    pub(crate) fn only(&self, kinds: &[&str], allows: impl Fn(&Token) -> bool) -> Option<()> {
        self.tokens()
            .all(|token| match token {
                Token::Break => true,
                Token::Word { kind, .. } => {
                    matches!(*kind, "small" | "asking" | "connector") || kinds.contains(kind)
                }
                other => allows(other),
            })
            .then_some(())
    }

    /// Exactly one of what `find` finds; none and two are none.
    pub(crate) fn one<'a, T: PartialEq>(
        &'a self,
        find: impl Fn(&'a Token) -> Option<T>,
    ) -> Option<T> {
        let mut found = self.tokens().filter_map(find);
        let first = found.next()?;
        found.all(|other| other == first).then_some(first)
    }

    pub(crate) fn count(&self, is: impl Fn(&Token) -> bool) -> usize {
        self.tokens().filter(|token| is(token)).count()
    }

    /// What bare numbers are, by what stands beside them.
    pub(crate) fn evidence(&self) -> (bool, bool) {
        let (mut inch, mut metric) = (false, false);
        let mut note = |num: &Num| match num.unit {
            Some(Unit::Inch | Unit::Thou | Unit::Tenth) => inch = true,
            Some(Unit::Millimetre | Unit::Micron) => metric = true,
            None => inch |= num.is_fraction,
        };
        for token in self.tokens() {
            match token {
                Token::Number(num) => note(num),
                Token::Span(a, b) => {
                    note(a);
                    note(b);
                }
                Token::Deviations { upper, lower, .. } => {
                    note(upper);
                    note(lower);
                }
                _ => {}
            }
        }
        for token in self.tokens() {
            match token {
                Token::Thread { is_inch: true, .. } | Token::InchClass(_) | Token::Gauge(_) => {
                    inch = true;
                }
                Token::Bearing(ball) if ball.unit() == fits_core::size::Unit::Inch => inch = true,
                Token::Thread { is_inch: false, .. } | Token::Bearing(_) => metric = true,
                _ => {}
            }
        }
        (inch, metric)
    }

    /// Every number without a unit.
    pub(crate) fn bare(&self) -> impl Iterator<Item = &Num> {
        self.tokens().filter_map(|token| match token {
            Token::Number(num) | Token::Span(num, _) if num.unit.is_none() => Some(num),
            _ => None,
        })
    }

    /// A clause without its object: `with` or `from` and nothing more.
    pub(crate) fn dangles(&self) -> bool {
        // `job 12` and `print no. 1250` are names, not sizes.
        let names = |at: usize| {
            ["job", "drawing", "print", "step", "op", "sheet", "item", "line", "page", "mark"]
                .contains(&&*self.said(at))
        };
        if (0..self.items.len()).any(|at| {
            names(at)
                && matches!(
                    self.items.get(at + 1).map(|item| &item.token),
                    Some(Token::Number(_) | Token::Gauge(_))
                )
        }) {
            return true;
        }
        // `what do I tap it with?` has its object before it.
        !self.has("asking")
            && (0..self.items.len()).any(|at| {
                let ends = matches!(
                    self.items.get(at + 1).map(|item| &item.token),
                    None | Some(Token::Break)
                );
                // `3 thou over` ends a phrase of its own.
                let is_off = matches!(self.items[at].token, Token::Word { kind: "off", .. });
                ends && !is_off
                    && ["with", "w/", "from", "using", "and", "=", "at", "over"]
                        .contains(&&*self.said(at))
            })
    }

    /// `the bore` and `7/8 bore` are nouns; `mic .7505` is a verb.
    pub(super) fn settle_nouns(&mut self) {
        // A boss that a shaft goes into is a hub.
        let goes_in = (0..self.items.len()).any(|at| {
            matches!(self.items[at].token, Token::Word { kind: "shaft", .. })
                && self.said(at) != "boss"
        });
        for at in 0..self.items.len() {
            if goes_in
                && matches!(self.items[at].token, Token::Word { kind: "shaft", .. })
                && self.said(at) == "boss"
            {
                self.items[at].token = Token::Word { name: "hub", kind: "hub" };
            }
        }
        for at in 0..self.items.len() {
            let said = self.said(at);
            let before = at.checked_sub(1);
            let after_number = before.is_some_and(|before| {
                matches!(self.items[before].token, Token::Number(_) | Token::Hole(_))
            });
            let after_article = before.is_some_and(|before| {
                ["the", "a", "my", "its", "what's the", "whats the", "what is the", "this"]
                    .contains(&&*self.said(before))
            });
            let next_number =
                matches!(self.items.get(at + 1).map(|item| &item.token), Some(Token::Number(_)));
            let next_reads = matches!(
                self.items.get(at + 1).map(|item| &item.token),
                Some(Token::Word { kind: "reads", .. })
            );
            let token = &mut self.items[at].token;
            match token {
                Token::Word { kind: kind @ "head", name: name @ "bore" }
                    if said == "bore" && (after_number || after_article || next_reads) =>
                {
                    (*kind, *name) = ("hole", "hole");
                }
                Token::Word { kind: kind @ "instrument", name: name @ "micrometer" }
                    if next_number && matches!(&*said, "mic" | "mike") =>
                {
                    (*kind, *name) = ("reads", "reads");
                }
                _ => {}
            }
        }
    }

    /// `hole came out 25.010, shaft?`, `mics: …`: a part at the end whose
    /// figure is not said is what is asked for, when the other was measured; a
    /// verb before a colon reads nothing.
    pub(super) fn settle_asked(&mut self) {
        let small = Token::Word { name: "-", kind: "small" };
        if let [first, second, ..] = &mut self.items[..]
            && matches!(first.token, Token::Word { kind: "reads", .. })
            && second.token == Token::Break
        {
            first.token = small.clone();
        }
        let is_filler = |token: &Token| {
            matches!(token, Token::Break | Token::Word { kind: "small" | "asking", .. })
        };
        let Some(last) = self.items.iter().rposition(|item| !is_filler(&item.token)) else {
            return;
        };
        let Token::Word { kind: kind @ ("hole" | "shaft"), .. } = self.items[last].token else {
            return;
        };
        let before = &self.items[..last];
        let reads =
            before.iter().rposition(|item| matches!(item.token, Token::Word { kind: "reads", .. }));
        let Some(reads) = reads else { return };
        let (of, read) = before.split_at(reads);
        let other = if kind == "hole" { "shaft" } else { "hole" };
        let is_others = of
            .iter()
            .rfind(|item| matches!(item.token, Token::Word { kind: "hole" | "shaft", .. }))
            .is_some_and(|item| matches!(item.token, Token::Word { kind, .. } if kind == other));
        let one_figure = matches!(
            &read[1..],
            [Item { token: Token::Number(_), .. }, rest @ ..]
                if rest.iter().all(|item| is_filler(&item.token))
        );
        if is_others && one_figure {
            self.items[last].token = small;
        }
    }

    /// `3/4 press - hole and shaft`, `shaft + hole`: a sign before a word, or at
    /// the end, parts what is said; in a stack it takes a part away.
    pub(super) fn settle_signs(&mut self) {
        if self.says("head", "stack") {
            return;
        }
        for at in 0..self.items.len() {
            let before_word = matches!(
                self.items.get(at + 1).map(|item| &item.token),
                None | Some(
                    Token::Break
                        | Token::Word {
                            kind: "hole" | "shaft" | "asking" | "small" | "head" | "reads" | "fit",
                            ..
                        }
                )
            );
            if before_word && matches!(self.items[at].token, Token::Plus | Token::Minus) {
                self.items[at].token = Token::Break;
            }
        }
    }

    /// `heat to 200`, `heated it up to 150`: a temperature whose scale is not said,
    /// and no size.
    pub(super) fn settle_heat(&mut self) {
        for at in 1..self.items.len() {
            let Token::Number(Num { unit: None, text, .. }) = &self.items[at].token else {
                continue;
            };
            let before = self.items[..at].iter().enumerate().rev().find(|(_, item)| {
                !matches!(item.token, Token::Word { kind: "small" | "connector" | "asking", .. })
            });
            let is_heat = before.is_some_and(|(place, _)| {
                let said = self.said(place);
                said.starts_with("heat") || said.starts_with("freez") || said.starts_with("chill")
            });
            let leads_on = self.said(at - 1).ends_with("to") || self.said(at - 1) == "at";
            if is_heat && leads_on {
                self.items[at].token = Token::Temperature(text.clone());
            }
        }
    }

    /// `2 to 4 thou`: the unit of the second is the first's.
    pub(super) fn settle_ranges(&mut self) {
        for at in 2..self.items.len() {
            let Token::Number(Num {
                unit: unit @ Some(Unit::Thou | Unit::Tenth | Unit::Micron),
                value,
                ..
            }) = self.items[at].token
            else {
                continue;
            };
            if matches!(&*self.said(at - 1), "to" | "-")
                && let Token::Number(first) = &mut self.items[at - 2].token
                && first.unit.is_none()
                && !first.is_fraction
                && !first.leads
                && first.value < value
            {
                first.unit = unit;
            }
        }
    }

    /// `in` after a number and a space: inches, or into?
    pub(crate) fn settle_in(&mut self) {
        let mut at = 1;
        while at < self.items.len() {
            let is_in =
                matches!(self.items[at].token, Token::Word { name: "in", kind: "connector" })
                    && self.items[at].at.len() == 2;
            let before = match &self.items[at - 1].token {
                Token::Number(num) => Some(num.clone()),
                _ => None,
            };
            let deviations = matches!(self.items[at - 1].token, Token::Deviations { .. });
            if is_in
                && (before.as_ref().is_some_and(|num| num.unit.is_none() || num.is_fraction)
                    || deviations)
            {
                let is_inches = match self.items.get(at + 1).map(|item| &item.token) {
                    None
                    | Some(
                        Token::Break
                        | Token::Hole(_)
                        | Token::Shaft(_)
                        | Token::Pair(_)
                        | Token::InchClass(_)
                        | Token::Deviations { .. }
                        | Token::Minus
                        | Token::Plus,
                    ) => true,
                    Some(Token::Word { kind, name }) => {
                        matches!(
                            *kind,
                            "role"
                                | "fit"
                                | "shaft"
                                | "hole"
                                | "reads"
                                | "start"
                                | "vague"
                                | "head"
                                | "untoleranced"
                                | "gap"
                        ) || (*kind == "connector" && *name != "in")
                            || (*kind == "small"
                                && ["dia", "diameter", "diam", "thick", "long", "deep", "please"]
                                    .contains(&&*self.said(at + 1)))
                    }
                    _ => false,
                };
                if is_inches {
                    if let (Some(mut num), Some(item)) = (before, self.items.get_mut(at - 1)) {
                        num.unit = Some(Unit::Inch);
                        item.token = Token::Number(num);
                    }
                    self.items.remove(at);
                    continue;
                }
            }
            at += 1;
        }
    }
}

/// Two metals said one after the other are one: `660 bronze`.
pub(crate) fn join_materials(view: &mut View) -> Option<()> {
    let line = Rc::clone(&view.text);
    let mut at = 1;
    while at < view.items.len() {
        let is = |token: &Token| matches!(token, Token::Word { kind: "material", .. });
        // `bronze steel housing`: the second is the housing's.
        let is_hubs = matches!(
            view.items.get(at + 1).map(|item| &item.token),
            Some(Token::Word { kind: "hub", .. })
        );
        if is(&view.items[at - 1].token) && is(&view.items[at].token) {
            let range = view.items[at - 1].at.start..view.items[at].at.end;
            // `steel steel`: of both parts.
            if view.items[at - 1].token == view.items[at].token {
                at += 1;
                continue;
            }
            let said = line.get(range.clone())?;
            let one = |item: &Item| match item.token {
                Token::Word { name, .. } => name,
                _ => "",
            };
            let found = Material::named(said)
                .or_else(|| {
                    Material::named(&format!(
                        "{} {}",
                        line.get(view.items[at - 1].at.clone()).unwrap_or_default(),
                        one(&view.items[at])
                    ))
                })
                .or_else(|| {
                    Material::named(&format!(
                        "{} {}",
                        one(&view.items[at - 1]),
                        line.get(view.items[at].at.clone()).unwrap_or_default()
                    ))
                });
            let Some(found) = found else {
                if is_hubs {
                    at += 1;
                    continue;
                }
                return None;
            };
            let name = plain_name(found);
            view.items[at - 1] = Item { token: Token::Word { name, kind: "material" }, at: range };
            view.items.remove(at);
        } else {
            at += 1;
        }
    }
    Some(())
}
