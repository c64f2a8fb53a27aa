//! Clauses in any order: what a line says after the word that opens it.
//!
//! A question lists its clauses; each is a word or two and what it takes. Bare sizes
//! and other words are kept in their order for the question to judge.

use std::ops::Range;

use fits_core::size::{Number, Unit};

use crate::{
    query::{Amount, Dimension, Size, Spot},
    questions::bearing::is_number,
    words::{
        fault::{Parsed, fatal},
        keywords::{keyword, name_with_figures, separator, space, span, unknown, words_until},
        quantities::quantity,
        sizes::{expression, starts_size},
    },
};

/// What a clause takes after its word.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Takes {
    /// Nothing.
    Nothing,
    /// A size, or two with `..` between.
    Size,
    /// A ball bearing's number, or the size of its ring.
    Bearing,
    /// A torque.
    Torque,
    /// A temperature.
    Temperature,
    /// A name; nothing where a size or a comma follows.
    Name,
    /// The size before it: `3 thou over`.
    Before,
    /// Nothing, and it says nothing.
    Small,
}

/// What was said after a clause's word.
#[derive(Clone, Debug)]
pub(crate) enum Value {
    Nothing,
    Size(Size, Option<Size>),
    Amount(Amount),
    Name(Spot<String>),
}

/// One clause: its word, where it stood, what it took.
#[derive(Clone, Debug)]
pub(crate) struct Clause {
    pub(crate) word: &'static str,
    pub(crate) at: Range<usize>,
    pub(crate) value: Value,
}

/// All that a line says.
#[derive(Clone, Debug)]
pub struct Said {
    /// The bare sizes in their order.
    pub(crate) sizes: Vec<Size>,
    /// The clauses in their order.
    pub(crate) clauses: Vec<Clause>,
    /// Names and words that are no clause.
    pub(crate) words: Vec<Spot<String>>,
    /// The line's end.
    pub(crate) end: usize,
}

impl Said {
    /// Every clause of a word: a bare one and one that names something are two.
    pub(crate) fn all(&self, word: &str) -> impl Iterator<Item = &Clause> {
        self.clauses.iter().filter(move |clause| clause.word == word)
    }

    pub(crate) fn has(&self, word: &str) -> bool {
        self.all(word).next().is_some()
    }

    pub(crate) fn size(&self, word: &str) -> Option<&Size> {
        self.sizes_of(word).map(|(size, _)| size)
    }

    /// A clause's size, or the two ends of it.
    pub(crate) fn sizes_of(&self, word: &str) -> Option<(&Size, Option<&Size>)> {
        self.all(word).find_map(|clause| match &clause.value {
            Value::Size(size, other) => Some((size, other.as_ref())),
            _ => None,
        })
    }

    pub(crate) fn amount(&self, word: &str) -> Option<&Amount> {
        self.all(word).find_map(|clause| match &clause.value {
            Value::Amount(amount) => Some(amount),
            _ => None,
        })
    }

    pub(crate) fn name(&self, word: &str) -> Option<&Spot<String>> {
        self.all(word).find_map(|clause| match &clause.value {
            Value::Name(name) => Some(name),
            _ => None,
        })
    }

    /// The first size of the line, for the units that it is thought in.
    pub(crate) fn first_size(&self) -> Option<&Size> {
        self.sizes.first().or_else(|| {
            self.clauses.iter().find_map(|clause| match &clause.value {
                Value::Size(size, _) => Some(size),
                _ => None,
            })
        })
    }
}

/// A clause's word here, of one word or two.
fn said_here(input: &str, words: &'static str) -> Option<usize> {
    let mut rest = input;
    for (at, word) in words.split(' ').enumerate() {
        if at > 0 {
            rest = space(rest).ok()?.0;
        }
        rest = keyword(word)(rest).ok()?.0;
    }
    Some(input.len() - rest.len())
}

/// Reads clauses to the end of the line.
pub(crate) fn said<'a>(
    mut input: &'a str,
    total: usize,
    takes: &'static [(&'static str, Takes)],
    example: &str,
) -> Parsed<'a, Said> {
    let mut found = Said { sizes: Vec::new(), clauses: Vec::new(), words: Vec::new(), end: total };
    loop {
        let (rest, _) = separator(input)?;
        input = rest;
        if input.is_empty() {
            return Ok((input, found));
        }
        let named = takes
            .iter()
            .filter(|(_, kind)| *kind != Takes::Before)
            .find_map(|(word, kind)| Some((*word, *kind, said_here(input, word)?)));
        if let Some((word, kind, length)) = named {
            let rest = input.get(length..).unwrap_or_default();
            let at = span(total, input, rest);
            let (rest, value) = taken(rest, total, (word, kind), takes, example)?;
            let is_bare = |value: &Value| matches!(value, Value::Nothing);
            let again = |clause: &Clause| is_bare(&clause.value) == is_bare(&value);
            if kind != Takes::Small && found.all(word).any(again) {
                return fatal(input, length, format!("`{word}` is said twice"), example);
            }
            if kind != Takes::Small {
                found.clauses.push(Clause { word, at, value });
            }
            input = rest;
        } else if starts_size(input) {
            let (rest, size) = expression(input, total)?;
            let (after, _) = space(rest)?;
            let before = takes
                .iter()
                .filter(|(_, kind)| *kind == Takes::Before)
                .find_map(|(word, _)| Some((*word, said_here(after, word)?)));
            if let Some((word, length)) = before {
                let end = after.get(length..).unwrap_or_default();
                if found.has(word) {
                    return fatal(after, length, format!("`{word}` is said twice"), example);
                }
                let at = span(total, after, end);
                found.clauses.push(Clause { word, at, value: Value::Size(size, None) });
                input = end;
            } else {
                found.sizes.push(size);
                input = rest;
            }
        } else {
            let (rest, name) = words_to(input, takes)?;
            if name.is_empty() {
                return unknown(input);
            }
            found.words.push(Spot { value: name, at: span(total, input, rest) });
            input = rest;
        }
    }
}

/// Words up to the next clause, with figures among them: `nylon 66`. A figure with a
/// unit is a size.
fn words_to<'a>(input: &'a str, takes: &'static [(&'static str, Takes)]) -> Parsed<'a, String> {
    let ends = |typed: &str| {
        takes.iter().any(|(word, _)| {
            word.split(' ').next().is_some_and(|first| first.eq_ignore_ascii_case(typed))
        })
    };
    let (plain, words) = words_until(input, ends)?;
    let (next, _) = space(plain)?;
    let is_size = matches!(Number::scan(next), Ok(Some((_, taken)))
        if next.get(taken..).is_some_and(|rest| Unit::scan(rest.trim_start()).is_some()));
    if is_size { Ok((plain, words)) } else { name_with_figures(input, ends) }
}

/// A number as ball bearings have it, without a unit.
fn bearing_number(input: &str) -> Option<(&str, &str)> {
    let end = input.find([' ', ',', ';']).unwrap_or(input.len());
    let (typed, after) = input.split_at(end);
    let has_unit = Unit::scan(after.trim_start()).is_some();
    (!has_unit && is_number(typed)).then_some((after, typed))
}

fn taken<'a>(
    rest: &'a str,
    total: usize,
    (word, kind): (&'static str, Takes),
    takes: &'static [(&'static str, Takes)],
    example: &str,
) -> Parsed<'a, Value> {
    let (start, _) = space(rest)?;
    match kind {
        Takes::Nothing | Takes::Before | Takes::Small => Ok((rest, Value::Nothing)),
        Takes::Size | Takes::Bearing => {
            if let Some((end, number)) = bearing_number(start).filter(|_| kind == Takes::Bearing) {
                let at = span(total, start, end);
                return Ok((end, Value::Name(Spot { value: number.to_owned(), at })));
            }
            if !starts_size(start) {
                return fatal(start, 0, format!("a size is missing after `{word}`"), example);
            }
            let (rest, size) = expression(start, total)?;
            let (next, _) = space(rest)?;
            let Some(second) = next.strip_prefix("..") else {
                return Ok((rest, Value::Size(size, None)));
            };
            let (second, _) = space(second)?;
            if !starts_size(second) {
                return fatal(second, 0, "the second size is missing after `..`", example);
            }
            let (rest, second) = expression(second, total)?;
            Ok((rest, Value::Size(size, Some(second))))
        }
        Takes::Torque | Takes::Temperature => {
            let dimension = match kind {
                Takes::Torque => Dimension::Torque,
                _ => Dimension::Temperature,
            };
            let missing = format!("{} is missing after `{word}`", dimension.words());
            let (rest, amount) = quantity(start, total, dimension, &missing, example)?;
            Ok((rest, Value::Amount(amount)))
        }
        Takes::Name => {
            let (end, name) = words_to(start, takes)?;
            if name.is_empty() {
                return Ok((rest, Value::Nothing));
            }
            Ok((end, Value::Name(Spot { value: name, at: span(total, start, end) })))
        }
    }
}
