//! Stacks: `stack screw 20 +0.05/0, tube -17 ±0.05, -2x 1.4 ±0.05, play
//! 0.1..0.2`.

use std::ops::Range;

use fits_core::shop::stack::{Direction, Spread};
use nom::{Err, Parser, branch::alt, bytes::complete::take_while, character::complete::char};

use crate::{
    query::{LinkText, Query, Spot, StackText, Tolerance},
    questions::part::reader::limits_after,
    words::{
        fault::{Fault, Parsed, fatal, fatal_fix},
        keywords::{keyword, near_miss, separator, shortened, space, span, words_until},
        sizes::{factor, minus, size_after, starts_size},
    },
};

const EXAMPLE: &str = "as in `stack 20 +0.05/0 -17 ±0.05 -2x 1.4 ±0.05`";

/// Words that end a link's name.
const RESERVED: [&str; 7] = ["all", "play", "runs", "seed", "normal", "triangular", "uniform"];

/// What stands after `stack`.
pub(crate) fn stack(mut input: &str, total: usize) -> Parsed<'_, Query> {
    let mut stack = StackText { links: Vec::new(), play: None, runs: None, seed: None, all: None };
    loop {
        let (rest, _) = separator(input)?;
        if rest.is_empty() {
            if stack.links.is_empty() {
                return fatal(rest, 0, "the links are missing after `stack`", EXAMPLE);
            }
            return Ok((rest, Query::Stack(Box::new(stack))));
        }
        input = clause(rest, total, &mut stack)?;
    }
}

fn clause<'a>(input: &'a str, total: usize, stack: &mut StackText) -> Result<&'a str, Err<Fault>> {
    if let Ok((after, ())) = keyword("play")(input) {
        if stack.play.is_some() {
            return said_twice(input, after);
        }
        let (after, _) = space(after)?;
        let missing = "the wanted play is missing";
        let advice = "as in `stack 20 -16.9 -2.9, play 0.1..0.2`";
        let (rest, from) = size_after(after, total, missing, advice)?;
        let (rest, _) = space(rest)?;
        let Some(rest) = rest.strip_prefix("..").or_else(|| rest.strip_prefix('\u{2026}')) else {
            return fatal(rest, 0, "the greatest play is missing", advice);
        };
        let (rest, _) = space(rest)?;
        let (rest, to) = size_after(rest, total, "the greatest play is missing", advice)?;
        stack.play = Some((from, to));
        return Ok(rest);
    }
    if let Ok((after, ())) = keyword("runs")(input) {
        return number(input, after, total, &mut stack.runs, "runs 1000000");
    }
    if let Ok((after, ())) = keyword("seed")(input) {
        return number(input, after, total, &mut stack.seed, "seed 7");
    }
    if let Ok((after, ())) = keyword("all")(input) {
        let (start, _) = space(after)?;
        let Some((end, spread)) = spread(start, total) else {
            return fatal(
                start,
                0,
                "the spread is missing after `all`",
                "uniform, triangular or normal, as `stack 20 ±0.1 -19.5 ±0.1, all normal`",
            );
        };
        if stack.all.is_some() {
            return said_twice(input, end);
        }
        stack.all = Some(spread);
        return Ok(end);
    }
    link(input, total, stack)
}

fn link<'a>(input: &'a str, total: usize, stack: &mut StackText) -> Result<&'a str, Err<Fault>> {
    let (after_name, name) =
        words_until(input, |word| RESERVED.iter().any(|known| known.eq_ignore_ascii_case(word)))?;
    let name = (!name.is_empty()).then(|| Spot { value: name, at: span(total, input, after_name) });
    let (start, _) = space(after_name)?;
    if let (Some(name), true) = (&name, !stack.links.is_empty() && !starts_sign(start))
        && let Some(known) = RESERVED.iter().find(|known| near_miss(&name.value, known))
    {
        let typed = input.len() - after_name.len();
        let message = format!("`{}` is not understood", shortened(&name.value));
        return fatal_fix(input, typed, message, "", Some((typed, (*known).to_owned())));
    }
    let sign: Parsed<'_, char> = alt((char('+'), minus)).parse(start);
    let (unsigned, direction) = match sign {
        Ok((rest, '+')) => (rest, Some(Direction::Adds)),
        Ok((rest, _)) => (rest, Some(Direction::TakesAway)),
        Err(_) => (start, None),
    };
    let (unsigned, _) = space(unsigned)?;
    let (body, count) = count(unsigned, total)?;
    let (rest, size, tolerance) = if let Some(rest) = body.strip_prefix('?') {
        (rest, None, Tolerance::Bare)
    } else {
        if !starts_size(body) || starts_sign(body) {
            return no_size(start, body, name.as_ref());
        }
        let (rest, size) = factor(body, total)?;
        let (rest, tolerance) = own_limits(rest, total)?;
        (rest, Some(size), tolerance)
    };
    let mut at: Range<usize> = span(total, start, rest);
    let (after, _) = space(rest)?;
    let (rest, spread) = match spread(after, total) {
        Some((rest, spread)) => {
            at.end = spread.at.end;
            (rest, Some(spread))
        }
        None => (rest, None),
    };
    stack.links.push(LinkText { name, direction, count, size, tolerance, spread, at });
    Ok(rest)
}

fn starts_sign(input: &str) -> bool {
    input.starts_with(['+', '-', '\u{2212}'])
}

/// `2x`, `2 *`; one where nothing is said.
fn count(input: &str, total: usize) -> Parsed<'_, Spot<u32>> {
    let (rest, digits) = take_while(|c: char| c.is_ascii_digit())(input)?;
    let (times, _) = space(rest)?;
    let one = Spot { value: 1, at: span(total, input, input) };
    let Some(after) = times.strip_prefix(['x', 'X', '*', '\u{d7}']).filter(|_| !digits.is_empty())
    else {
        return Ok((input, one));
    };
    let (after, _) = space(after)?;
    let at = span(total, input, rest);
    match digits.parse() {
        Ok(value) if value > 0 => Ok((after, Spot { value, at })),
        _ => fatal(
            input,
            digits.len(),
            format!("{} is not a number of parts", shortened(digits)),
            "two washers of 1.5 each are written `stack 20 -16.9 -2x 1.5`",
        ),
    }
}

/// The limits after a link's size. A sign there opens the next link unless a
/// slash and a second deviation follow.
fn own_limits(rest: &str, total: usize) -> Parsed<'_, Tolerance> {
    let (after, _) = space(rest)?;
    let either = ["\u{b1}", "+-", "+/-"].iter().any(|sign| after.starts_with(sign));
    if starts_sign(after) && !either {
        let is_pair = factor(after, total).is_ok_and(|(end, _)| end.trim_start().starts_with('/'));
        if !is_pair {
            return Ok((rest, Tolerance::Bare));
        }
    } else if after.starts_with(|c: char| c.is_ascii_alphabetic()) {
        // A class holds its grade; any other word names the next link.
        let letters =
            after.len() - after.trim_start_matches(|c: char| c.is_ascii_alphabetic()).len();
        let is_class = letters <= 3
            && after
                .get(letters..)
                .is_some_and(|rest| rest.starts_with(|c: char| c.is_ascii_digit()));
        if !is_class {
            return Ok((rest, Tolerance::Bare));
        }
    } else if !either && !after.starts_with("..") && !after.starts_with('\u{2026}') {
        return Ok((rest, Tolerance::Bare));
    }
    let (end, tolerance) = limits_after(rest, total)?;
    Ok((if tolerance.is_some() { end } else { rest }, tolerance.unwrap_or(Tolerance::Bare)))
}

fn spread(input: &str, total: usize) -> Option<(&str, Spot<Spread>)> {
    Spread::ALL.into_iter().find_map(|spread| {
        let (rest, ()) = keyword(spread.word())(input).ok()?;
        Some((rest, Spot { value: spread, at: span(total, input, rest) }))
    })
}

fn number<'a>(
    input: &'a str,
    after: &'a str,
    total: usize,
    slot: &mut Option<Spot<u64>>,
    example: &str,
) -> Result<&'a str, Err<Fault>> {
    if slot.is_some() {
        return said_twice(input, after);
    }
    let (start, _) = space(after)?;
    let (rest, digits) = take_while(|c: char| c.is_ascii_digit() || c == '_')(start)?;
    let advice = format!("a whole number, as in `stack 20 ±0.1 -19.5 ±0.1, {example}`");
    if rest.starts_with(|c: char| c.is_alphanumeric() || matches!(c, '.' | '-' | '+')) {
        let typed = start.split([' ', ',']).next().unwrap_or(start);
        return fatal(
            start,
            typed.len(),
            format!("`{}` is not a whole number", shortened(typed)),
            advice,
        );
    }
    match digits.replace('_', "").parse() {
        Ok(value) => {
            *slot = Some(Spot { value, at: span(total, start, rest) });
            Ok(rest)
        }
        Err(_) if digits.is_empty() => fatal(start, 0, "a number is missing here", advice),
        Err(_) => fatal(start, digits.len(), "the number is too great", advice),
    }
}

fn said_twice<T>(input: &str, end: &str) -> Result<T, Err<Fault>> {
    fatal(input, input.len() - end.len(), "this is said twice", "keep one of them")
}

/// No size where a link's stands: a word that is none, or nothing.
fn no_size<T>(start: &str, body: &str, name: Option<&Spot<String>>) -> Result<T, Err<Fault>> {
    let Some(name) = name else {
        let typed = body.split([' ', ',']).next().unwrap_or(body);
        let shown = shortened(typed);
        return if typed.is_empty() {
            fatal(body, 0, "the link's size is missing", EXAMPLE)
        } else {
            fatal(body, typed.len(), format!("`{shown}` is not understood in a stack"), EXAMPLE)
        };
    };
    fatal(start, 0, format!("the size of `{}` is missing", shortened(&name.value)), EXAMPLE)
}
