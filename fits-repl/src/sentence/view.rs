//! The line as one question sees it: every token labelled, none passed over.

use std::{ops::Range, rc::Rc};

use crate::sentence::{
    settle::numbers_in,
    token::{Num, Token, Unit},
};

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

    /// Was one of these small words typed for an item?
    fn says_any(&self, at: usize, words: &[&str]) -> bool {
        let typed = self.items.get(at).and_then(|item| self.text.get(item.at.clone()));
        typed.is_some_and(|typed| words.iter().any(|word| typed.eq_ignore_ascii_case(word)))
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

    /// Does a number stand at a place?
    pub(crate) fn is_number(&self, at: usize) -> bool {
        matches!(self.items.get(at), Some(Item { token: Token::Number(_), .. }))
    }

    /// The kind of the word at a place, where it is one.
    pub(crate) fn kind_at(&self, at: usize) -> Option<&'static str> {
        match self.items.get(at)?.token {
            Token::Word { kind, .. } => Some(kind),
            _ => None,
        }
    }

    /// The nearest place before another whose word is of none of these kinds.
    pub(crate) fn lead(&self, at: usize, idle: &[&str]) -> Option<usize> {
        (0..at).rev().find(|at| !self.kind_at(*at).is_some_and(|kind| idle.contains(&kind)))
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

    /// How many figures were typed: of limits each one, of a thread those of its name.
    pub(super) fn figures(&self) -> usize {
        let of = |token: &Token| match token {
            Token::Number(_) | Token::Temperature(_) | Token::Deviations { is_both: true, .. } => 1,
            Token::Deviations { .. } | Token::Span(..) => 2,
            Token::Thread { name, .. } | Token::Gauge(name) => numbers_in(name),
            _ => 0,
        };
        self.tokens().map(of).sum()
    }

    /// The classes of holes and shafts that were typed, each by itself.
    pub(super) fn classes(&self) -> impl Iterator<Item = &str> {
        self.tokens()
            .filter_map(|token| match token {
                Token::Hole(text)
                | Token::Shaft(text)
                | Token::Pair(text)
                | Token::InchClass(text) => Some(text.split('/')),
                _ => None,
            })
            .flatten()
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

    /// Do thousandths and tenths alone say that it is inches?
    pub(crate) fn tells_only_thou(&self) -> bool {
        let is_inch = |num: &Num| num.is_fraction || num.unit == Some(Unit::Inch);
        !self.tokens().any(|token| match token {
            Token::Number(num) => is_inch(num),
            Token::Span(a, b) => is_inch(a) || is_inch(b),
            Token::InchClass(_) | Token::Gauge(_) | Token::Thread { .. } | Token::Bearing(_) => {
                true
            }
            _ => false,
        })
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
            let names =
                ["job", "drawing", "print", "step", "op", "sheet", "item", "line", "page", "mark"];
            self.says_any(at, &names)
        };
        let is_named = |(at, item): (usize, &Item)| {
            let next = self.items.get(at + 2).map(|item| &item.token);
            let is_size = matches!(
                next,
                Some(
                    Token::Hole(_)
                        | Token::Shaft(_)
                        | Token::Pair(_)
                        | Token::Deviations { .. }
                        // `job 150 between centres`
                        | Token::Word { kind: "role", .. }
                )
            );
            names(at)
                && match &item.token {
                    Token::Number(num) => num.places == 0 && !num.is_fraction && !is_size,
                    Token::Gauge(_) => true,
                    _ => false,
                }
        };
        if self.items.iter().skip(1).enumerate().any(is_named) {
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
                    && self.says_any(at, &["with", "w/", "from", "using", "and", "=", "at", "over"])
            })
    }
}
