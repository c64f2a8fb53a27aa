//! Spaces, words and keywords, and words that nothing goes with.

use std::ops::Range;

use nom::{Err, Parser, bytes::complete::take_while, error::ErrorKind};

use crate::{
    query::{Query, Spot},
    words::{
        clause::reserved,
        fault::{Fault, Parsed, fatal, fatal_fix},
    },
};

pub(crate) fn is_space(c: char) -> bool {
    c.is_whitespace()
}

pub(crate) fn space(input: &str) -> Parsed<'_, &str> {
    take_while(is_space)(input)
}

/// Spaces and commas, in any number.
pub(crate) fn separator(input: &str) -> Parsed<'_, &str> {
    take_while(|c| is_space(c) || c == ',' || c == ';')(input)
}

/// A run of letters, where a word may begin.
pub(crate) fn word(input: &str) -> Parsed<'_, &str> {
    nom::bytes::complete::take_while1(|c: char| c.is_ascii_alphabetic())(input)
}

/// A keyword in any case, with no letter or digit after it.
pub(crate) fn keyword<'a>(wanted: &'static str) -> impl FnMut(&'a str) -> Parsed<'a, ()> {
    move |input| {
        let (rest, found) = word(input)?;
        if found.eq_ignore_ascii_case(wanted) && !rest.starts_with(|c: char| c.is_ascii_digit()) {
            Ok((rest, ()))
        } else {
            Err(Err::Error(nom::error::ParseError::from_error_kind(input, ErrorKind::Tag)))
        }
    }
}

/// What follows `=` or a word for it: `mics`, `measures`, `reads`.
pub(crate) fn after_equals(input: &str) -> Option<&str> {
    input.strip_prefix('=').or_else(|| {
        ["mics", "measures", "reads"]
            .into_iter()
            .find_map(|said| keyword(said)(input).ok().map(|(rest, ())| rest))
    })
}

pub(crate) fn span(total: usize, input: &str, rest: &str) -> Range<usize> {
    total - input.len()..total - rest.len()
}

pub(crate) fn spot<'a, T>(
    total: usize,
    mut parser: impl Parser<&'a str, Output = T, Error = Fault>,
) -> impl FnMut(&'a str) -> Parsed<'a, Spot<T>> {
    move |input| {
        let (rest, value) = parser.parse(input)?;
        Ok((rest, Spot { value, at: span(total, input, rest) }))
    }
}

/// A word that nothing goes with.
pub(crate) fn unknown<T>(input: &str) -> Result<T, Err<Fault>> {
    let typed = input.split(|c: char| is_space(c) || c == ',').next().unwrap_or(input);
    let length = typed.len().max(input.chars().next().map_or(0, char::len_utf8));
    let near = reserved().find(|known| near_miss(&typed.to_ascii_lowercase(), known));
    match near {
        Some(known) => fatal_fix(
            input,
            length,
            format!("`{}` is not understood", shortened(typed)),
            "",
            Some((length, (*known).to_owned())),
        ),
        None => fatal(
            input,
            length,
            format!("`{}` is not understood here", shortened(typed)),
            "a size comes first, then its class, as `20 H7/g6`; see `help`",
        ),
    }
}

/// Is one word a slip of the finger away from another: one letter wrong,
/// missing, doubled or swapped?
pub(crate) fn near_miss(typed: &str, known: &str) -> bool {
    let (a, b): (&[u8], &[u8]) = (typed.as_bytes(), known.as_bytes());
    if a.len() < 3 || a == b || a.len().abs_diff(b.len()) > 1 {
        return false;
    }
    let start = a.iter().zip(b).take_while(|(a, b)| a == b).count();
    let end = a.iter().rev().zip(b.iter().rev()).take_while(|(a, b)| a == b).count();
    let (shorter, longer) = (a.len().min(b.len()), a.len().max(b.len()));
    let swapped = a.len() == b.len()
        && start + end + 2 == a.len()
        && a.get(start) == b.get(start + 1)
        && a.get(start + 1) == b.get(start);
    swapped
        || start + end >= shorter && longer - shorter <= 1
        || start + end + 1 == longer && a.len() == b.len()
}

/// A text short enough to stand in a message.
pub(crate) fn shortened(text: &str) -> String {
    if text.chars().count() <= 24 {
        text.to_owned()
    } else {
        text.chars().take(21).chain("...".chars()).collect()
    }
}

/// Words of letters and hyphens up to a keyword, joined by single spaces:
/// `light press`, `cast iron`.
pub(crate) fn phrase(input: &str) -> Parsed<'_, String> {
    words_until(input, |typed| reserved().any(|known| known.eq_ignore_ascii_case(typed)))
}

/// Words of letters and hyphens up to one that ends them.
pub(crate) fn words_until(input: &str, ends: impl Fn(&str) -> bool) -> Parsed<'_, String> {
    let mut found = String::new();
    let mut rest = input;
    loop {
        let (next, _) = space(rest)?;
        let end = next
            .find(|c: char| !(c.is_alphabetic() || matches!(c, '-' | '\'')))
            .unwrap_or(next.len());
        let (typed, after) = next.split_at(end);
        let is_word = typed.starts_with(char::is_alphabetic)
            && !after.starts_with(|c: char| c.is_ascii_digit());
        if !is_word || ends(typed) {
            return Ok((rest, found));
        }
        if !found.is_empty() {
            found.push(' ');
        }
        found.push_str(&typed.to_lowercase());
        rest = after;
    }
}

/// A material's name up to a keyword.
pub(crate) fn material_name(input: &str) -> Parsed<'_, String> {
    name_with_figures(input, |typed| reserved().any(|known| known.eq_ignore_ascii_case(typed)))
}

/// Words and the figures among them, up to a comma or a word that ends them:
/// `nylon 66`, `aluminium 6061-T6`.
pub(crate) fn name_with_figures(input: &str, ends: impl Fn(&str) -> bool) -> Parsed<'_, String> {
    let (mut rest, mut found) = words_until(input, &ends)?;
    while !found.is_empty() {
        let (next, _) = space(rest)?;
        let end = next
            .find(|c: char| !(c.is_ascii_alphanumeric() || matches!(c, '-' | '.' | '/')))
            .unwrap_or(next.len());
        let (typed, after) = next.split_at(end);
        if !typed.starts_with(|c: char| c.is_ascii_digit()) || typed.contains("..") {
            break;
        }
        let (after, more) = words_until(after, &ends)?;
        found = format!("{found} {}", typed.to_lowercase());
        if !more.is_empty() {
            found = format!("{found} {more}");
        }
        rest = after;
    }
    Ok((rest, found))
}

pub(crate) fn nothing_more(input: &str, query: Query) -> Parsed<'_, Query> {
    let (rest, _) = separator(input)?;
    if rest.is_empty() { Ok((rest, query)) } else { unknown(rest) }
}
