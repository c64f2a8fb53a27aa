//! The line as one question sees it: every token labelled, none passed over.

use std::{cell::RefCell, collections::HashMap, ops::Range};

use fits_core::standards::materials::Material;

use super::{
    table::{LOG, QUESTIONS, Row, Table, word_at},
    token::{Num, System, Token, Unit, token_at},
};

/// A line, its places looked up once for all questions.
pub(super) struct Line<'a> {
    pub(super) text: &'a str,
    places: RefCell<HashMap<usize, Place>>,
}

#[derive(Clone)]
struct Place {
    token: Option<(Token, usize)>,
    words: Vec<(&'static Row, usize)>,
}

/// A token and where it stands.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Item {
    pub(super) token: Token,
    pub(super) at: Range<usize>,
}

/// What one question sees.
pub(super) struct View {
    pub(super) items: Vec<Item>,
    /// The whole line.
    pub(super) text: String,
}

impl<'a> Line<'a> {
    pub(super) fn new(text: &'a str) -> Self {
        Self { text, places: RefCell::default() }
    }

    fn place(&self, at: usize) -> Place {
        if let Some(place) = self.places.borrow().get(&at) {
            return place.clone();
        }
        let words = Table::get().matches(self.text, at);
        let place = Place { token: token_at(self.text, at), words };
        self.places.borrow_mut().insert(at, place.clone());
        place
    }

    /// The line as a question sees it; where it does not know a word, the
    /// place of the word.
    pub(super) fn view(&self, question: u8) -> Result<View, Range<usize>> {
        let mut search = Search { line: self, question, dead: HashMap::new() };
        let mut items = Vec::new();
        match search.from(0, &mut items) {
            Ok(()) => {
                items.reverse();
                Ok(View { items, text: self.text.to_owned() })
            }
            Err(place) => Err(place),
        }
    }
}

/// Tries the longest spelling first at each place; a shorter one where the
/// words after it are known to nobody else.
struct Search<'a> {
    line: &'a Line<'a>,
    question: u8,
    dead: HashMap<usize, Range<usize>>,
}

impl Search<'_> {
    /// The items from here to the end, the last one first.
    fn from(&mut self, at: usize, items: &mut Vec<Item>) -> Result<(), Range<usize>> {
        let text = self.line.text;
        let rest = text.get(at..).unwrap_or_default();
        let mut at = at + rest.len() - rest.trim_start_matches([' ', '\t']).len();
        // A hyphen between words parts them.
        let letter = |place: usize| text.as_bytes().get(place).is_some_and(u8::is_ascii_alphabetic);
        if text.as_bytes().get(at) == Some(&b'-')
            && at > 0
            && letter(at + 1)
            && !text[..at].ends_with(' ')
        {
            at += 1;
        }
        if at >= text.len() {
            return Ok(());
        }
        if let Some(place) = self.dead.get(&at) {
            return Err(place.clone());
        }
        let mut place = self.line.place(at);
        // A letter close to a figure is no word: `6A` is a class begun.
        if at > 0 && text.as_bytes().get(at - 1).is_some_and(u8::is_ascii_digit) && letter(at) {
            place.words.clear();
        }
        let mut options: Vec<(Token, usize, (usize, u8))> = place
            .words
            .iter()
            .filter(|(row, _)| row.is_of(self.question))
            .map(|(row, end)| {
                (Token::Word { name: row.name, kind: row.kind }, *end, (*end, row.rank()))
            })
            .collect();
        if let Some((token, end)) = place.token {
            // A number gives way to a metal of the same name, and to a longer word.
            options.push((token, end, (end, 4)));
        }
        options.sort_by_key(|option| std::cmp::Reverse(option.2));
        options.dedup_by(|a, b| a.1 == b.1);
        let mut furthest: Option<Range<usize>> = None;
        for (token, end, _) in options {
            match self.from(end, items) {
                Ok(()) => {
                    items.push(Item { token, at: at..end });
                    return Ok(());
                }
                Err(place) => {
                    if furthest.as_ref().is_none_or(|far| far.start < place.start) {
                        furthest = Some(place);
                    }
                }
            }
        }
        if let Some(furthest) = furthest {
            self.dead.insert(at, furthest.clone());
            return Err(furthest);
        }
        let (said, end) = word_at(text, at).unwrap_or_else(|| {
            let next = text[at..].chars().next().map_or(1, char::len_utf8);
            (text[at..at + next].to_owned(), at + next)
        });
        // Known to another question: no slip of typing.
        if place.words.is_empty()
            && let Some(meant) = Table::get().slip(&said)
        {
            let row = Table::get()
                .matches(meant, 0)
                .into_iter()
                .filter(|(row, end)| row.is_of(self.question) && *end == meant.len())
                .max_by_key(|(row, _)| row.rank());
            if let Some((row, _)) = row
                && self.from(end, items).is_ok()
            {
                items.push(Item {
                    token: Token::Word { name: row.name, kind: row.kind },
                    at: at..end,
                });
                return Ok(());
            }
        }
        self.dead.insert(at, at..end);
        Err(at..end)
    }
}

impl View {
    pub(super) fn tokens(&self) -> impl DoubleEndedIterator<Item = &Token> {
        self.items.iter().map(|item| &item.token)
    }

    /// What was typed for an item.
    pub(super) fn said(&self, at: usize) -> String {
        self.items
            .get(at)
            .and_then(|item| self.text.get(item.at.clone()))
            .unwrap_or_default()
            .to_lowercase()
    }

    /// Is any of these words typed?
    pub(super) fn types(&self, words: &[&str]) -> bool {
        (0..self.items.len()).any(|at| words.contains(&&*self.said(at)))
    }

    pub(super) fn has(&self, kind: &str) -> bool {
        self.word(kind).is_some()
    }

    pub(super) fn says(&self, kind: &str, name: &str) -> bool {
        self.tokens().any(
            |token| matches!(token, Token::Word { name: n, kind: k } if *k == kind && *n == name),
        )
    }

    /// The first word of a kind.
    pub(super) fn word(&self, kind: &str) -> Option<&'static str> {
        self.words(kind).next()
    }

    pub(super) fn words<'a>(&'a self, kind: &'a str) -> impl Iterator<Item = &'static str> + 'a {
        self.tokens().filter_map(move |token| match token {
            Token::Word { name, kind: k } if *k == kind => Some(*name),
            _ => None,
        })
    }

    pub(super) fn numbers(&self) -> impl Iterator<Item = (usize, &Num)> {
        self.items.iter().enumerate().filter_map(|(at, item)| match &item.token {
            Token::Number(num) => Some((at, num)),
            _ => None,
        })
    }

    /// Only these kinds of words and these tokens: anything else is not this
    /// question's.
    pub(super) fn only(&self, kinds: &[&str], allows: impl Fn(&Token) -> bool) -> Option<()> {
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
    pub(super) fn one<'a, T: PartialEq>(
        &'a self,
        find: impl Fn(&'a Token) -> Option<T>,
    ) -> Option<T> {
        let mut found = self.tokens().filter_map(find);
        let first = found.next()?;
        found.all(|other| other == first).then_some(first)
    }

    pub(super) fn count(&self, is: impl Fn(&Token) -> bool) -> usize {
        self.tokens().filter(|token| is(token)).count()
    }

    /// What bare numbers are, by what stands beside them.
    pub(super) fn evidence(&self) -> (bool, bool) {
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
                Token::Thread { is_inch: false, .. } | Token::Bearing(..) => metric = true,
                _ => {}
            }
        }
        (inch, metric)
    }

    /// Every number without a unit.
    pub(super) fn bare(&self) -> impl Iterator<Item = &Num> {
        self.tokens().filter_map(|token| match token {
            Token::Number(num) | Token::Span(num, _) if num.unit.is_none() => Some(num),
            _ => None,
        })
    }

    /// A clause without its object: `with` or `from` and nothing more.
    pub(super) fn dangles(&self) -> bool {
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
                ends && ["with", "w/", "from", "using", "and", "=", "at", "over"]
                    .contains(&&*self.said(at))
            })
    }

    /// `the bore` and `7/8 bore` are nouns; `mic .7505` is a verb.
    pub(super) fn settle_nouns(&mut self) {
        for at in 0..self.items.len() {
            let said = self.said(at);
            let before = at.checked_sub(1);
            let after_number =
                before.is_some_and(|before| matches!(self.items[before].token, Token::Number(_)));
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

    /// `in` after a number and a space: inches, or into?
    pub(super) fn settle_in(&mut self, setting: Option<System>) {
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
                let _ = setting;
            }
            at += 1;
        }
    }
}

/// The name of a question's bit.
pub(super) fn number_of(question: &str) -> u8 {
    if question == "log" {
        return LOG;
    }
    QUESTIONS
        .iter()
        .position(|known| *known == question)
        .and_then(|at| u8::try_from(at).ok())
        .unwrap_or(LOG)
}

/// Two metals said one after the other are one: `660 bronze`.
pub(super) fn join_materials(view: &mut View, line: &str) -> Option<()> {
    let mut at = 1;
    while at < view.items.len() {
        let is = |token: &Token| matches!(token, Token::Word { kind: "material", .. });
        if is(&view.items[at - 1].token) && is(&view.items[at].token) {
            let range = view.items[at - 1].at.start..view.items[at].at.end;
            let said = line.get(range.clone())?;
            let one = |item: &Item| match item.token {
                Token::Word { name, .. } => name,
                _ => "",
            };
            let found = Material::find(said)
                .or_else(|_| {
                    Material::find(&format!(
                        "{} {}",
                        line.get(view.items[at - 1].at.clone()).unwrap_or_default(),
                        one(&view.items[at])
                    ))
                })
                .or_else(|_| {
                    Material::find(&format!(
                        "{} {}",
                        one(&view.items[at - 1]),
                        line.get(view.items[at].at.clone()).unwrap_or_default()
                    ))
                })
                .ok()?;
            let is_plain = |name: &str| name.chars().all(|c| c.is_ascii_lowercase() || c == ' ');
            let name = if is_plain(found.name()) {
                found.name()
            } else {
                found
                    .aliases()
                    .iter()
                    .copied()
                    .find(|alias| is_plain(alias))
                    .unwrap_or_else(|| found.name())
            };
            view.items[at - 1] = Item { token: Token::Word { name, kind: "material" }, at: range };
            view.items.remove(at);
        } else {
            at += 1;
        }
    }
    Some(())
}
