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
    /// A word taken for another that differs by a slip of typing.
    pub(super) slips: Vec<(String, &'static str)>,
}

impl<'a> Line<'a> {
    pub(super) fn new(text: &'a str) -> Self {
        Self { text, places: RefCell::default() }
    }

    fn place(&self, at: usize) -> Place {
        if let Some(place) = self.places.borrow().get(&at) {
            return place.clone();
        }
        let mut words = Table::get().matches(self.text, at);
        if words.is_empty() {
            words.extend(self.material(at));
        }
        let place = Place { token: token_at(self.text, at), words };
        self.places.borrow_mut().insert(at, place.clone());
        place
    }

    /// A metal said in an order that the table does not list.
    fn material(&self, at: usize) -> Option<(&'static Row, usize)> {
        let _ = at;
        None
    }

    /// The line as a question sees it; where it does not know a word, the
    /// place of the word.
    pub(super) fn view(&self, question: u8) -> Result<View, Range<usize>> {
        let mut items: Vec<Item> = Vec::new();
        let mut slips = Vec::new();
        let mut at = 0;
        loop {
            let rest = self.text.get(at..).unwrap_or_default();
            let skip = rest.len() - rest.trim_start_matches([' ', '\t']).len();
            at += skip;
            // A hyphen between words parts them.
            if rest.get(skip..).is_some_and(|rest| {
                rest.starts_with('-') && rest.get(1..2).is_some_and(|next| next.starts_with(|c: char| c.is_ascii_alphabetic()))
            }) && skip == 0
                && at > 0
            {
                at += 1;
            }
            if at >= self.text.len() {
                return Ok(View { items, slips });
            }
            let place = self.place(at);
            let word = place
                .words
                .iter()
                .filter(|(row, _)| row.is_of(question))
                .max_by_key(|(row, end)| (*end, !row.is_general(), row.kind != "small"));
            let wins = match (&place.token, word) {
                (Some((token, end)), Some((row, word_end))) => {
                    word_end > end || (word_end == end && row.kind == "material" && matches!(token, Token::Number(_) | Token::Bearing(..)))
                        || (word_end == end && matches!(token, Token::Shaft(_)) && row.kind == "material")
                }
                (None, Some(_)) => true,
                _ => false,
            };
            if let (true, Some((row, end))) = (wins, word) {
                items.push(Item { token: Token::Word { name: row.name, kind: row.kind }, at: at..*end });
                at = *end;
            } else if let Some((token, end)) = place.token {
                items.push(Item { token, at: at..end });
                at = end;
            } else {
                let (said, end) = word_at(self.text, at).unwrap_or_else(|| {
                    let next = self.text[at..].chars().next().map_or(1, char::len_utf8);
                    (self.text[at..at + next].to_owned(), at + next)
                });
                // Known to another question: not a slip.
                let is_known = !place.words.is_empty();
                let meant = Table::get().slip(&said).filter(|_| !is_known);
                let row = meant.and_then(|meant| {
                    Table::get()
                        .matches(meant, 0)
                        .into_iter()
                        .filter(|(row, end)| row.is_of(question) && *end == meant.len())
                        .max_by_key(|(row, _)| !row.is_general())
                });
                let (Some(meant), Some((row, _))) = (meant, row) else { return Err(at..end) };
                slips.push((said, meant));
                items.push(Item { token: Token::Word { name: row.name, kind: row.kind }, at: at..end });
                at = end;
            }
        }
    }
}

impl View {
    pub(super) fn tokens(&self) -> impl DoubleEndedIterator<Item = &Token> {
        self.items.iter().map(|item| &item.token)
    }

    pub(super) fn has(&self, kind: &str) -> bool {
        self.word(kind).is_some()
    }

    pub(super) fn says(&self, kind: &str, name: &str) -> bool {
        self.tokens().any(|token| matches!(token, Token::Word { name: n, kind: k } if *k == kind && *n == name))
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
    pub(super) fn one<'a, T: PartialEq>(&'a self, find: impl Fn(&'a Token) -> Option<T>) -> Option<T> {
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
                Token::Thread { is_inch: true, .. } | Token::InchClass(_) | Token::Gauge(_) => inch = true,
                Token::Thread { is_inch: false, .. } | Token::Bearing(..) => metric = true,
                _ => {}
            }
        }
        (inch, metric)
    }

    /// Every number without a unit.
    pub(super) fn bare(&self) -> impl Iterator<Item = &Num> {
        self.tokens().filter_map(|token| match token {
            Token::Number(num) if num.unit.is_none() => Some(num),
            Token::Span(num, _) if num.unit.is_none() => Some(num),
            _ => None,
        })
    }

    /// `in` after a number and a space: inches, or into?
    pub(super) fn settle_in(&mut self, setting: Option<System>) {
        let mut at = 1;
        while at < self.items.len() {
            let is_in = matches!(self.items[at].token, Token::Word { name: "in", kind: "connector" })
                && self.items[at].at.len() == 2;
            let before = match &self.items[at - 1].token {
                Token::Number(num) => Some(num.clone()),
                _ => None,
            };
            let deviations = matches!(self.items[at - 1].token, Token::Deviations { .. });
            if is_in && (before.as_ref().is_some_and(|num| num.unit.is_none() || num.is_fraction) || deviations) {
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
                        matches!(*kind, "role" | "fit" | "shaft" | "hole" | "reads" | "start" | "vague" | "head" | "untoleranced" | "gap")
                            || (*kind == "connector" && *name != "in")
                            || (*kind == "small" && !matches!(self.items.get(at + 2).map(|item| &item.token), Some(Token::Word { kind: "hub" | "material" | "bushing", .. })))
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
    QUESTIONS.iter().position(|known| *known == question).and_then(|at| u8::try_from(at).ok()).unwrap_or(LOG)
}

/// Two metals said one after the other are one: `660 bronze`.
pub(super) fn join_materials(view: &mut View, line: &str) -> Option<()> {
    let mut at = 1;
    while at < view.items.len() {
        let is = |token: &Token| matches!(token, Token::Word { kind: "material", .. });
        if is(&view.items[at - 1].token) && is(&view.items[at].token) {
            let range = view.items[at - 1].at.start..view.items[at].at.end;
            let said = line.get(range.clone())?;
            let one = |item: &Item| match item.token { Token::Word { name, .. } => name, _ => "" };
            let found = Material::find(said)
                .or_else(|_| Material::find(&format!("{} {}", line.get(view.items[at - 1].at.clone()).unwrap_or_default(), one(&view.items[at]))))
                .or_else(|_| Material::find(&format!("{} {}", one(&view.items[at - 1]), line.get(view.items[at].at.clone()).unwrap_or_default())))
                .ok()?;
            view.items[at - 1] = Item { token: Token::Word { name: found.name(), kind: "material" }, at: range };
            view.items.remove(at);
        } else {
            at += 1;
        }
    }
    Some(())
}
