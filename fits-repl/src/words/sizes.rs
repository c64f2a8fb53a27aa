//! Sizes: numbers with units, drill gauges and small sums.

use fits_core::{
    Length,
    size::{Number, Unit},
};
use nom::{Err, Parser, branch::alt, bytes::complete::take_while, character::complete::char};

use crate::{
    query::{Expression, Operator, Size, Spot},
    words::{
        fault::{Fault, Parsed, fatal, fatal_fix},
        keywords::{keyword, space, span, unknown, word},
    },
};

pub(crate) fn size_after<'a>(
    input: &'a str,
    total: usize,
    message: &str,
    advice: &str,
) -> Parsed<'a, Size> {
    if starts_size(input) { expression(input, total) } else { fatal(input, 0, message, advice) }
}

pub(crate) fn starts_size(input: &str) -> bool {
    input.starts_with(|c: char| {
        c.is_ascii_digit()
            || matches!(
                c,
                '.' | '(' | '#' | '-' | '+' | '\u{2212}' | '\u{2300}' | '\u{d8}' | '\u{f8}'
            )
    }) || keyword("letter")(input).is_ok()
}

pub(crate) fn minus(input: &str) -> Parsed<'_, char> {
    alt((char('-'), char('\u{2212}'))).parse(input)
}

/// The operator that a text begins with, if it is one of these.
fn operator<'a>(input: &'a str, of: &[(char, Operator)]) -> Option<(&'a str, Operator)> {
    of.iter().find_map(|(sign, operator)| Some((input.strip_prefix(*sign)?, *operator)))
}

/// `term (+|- term)*`. A sign with a space before it and none after it is a
/// deviation's, not an operator.
pub(crate) fn expression(input: &str, total: usize) -> Parsed<'_, Size> {
    const SUMS: &[(char, Operator)] =
        &[('+', Operator::Plus), ('-', Operator::Minus), ('\u{2212}', Operator::Minus)];
    let (mut rest, mut left) = term(input, total)?;
    loop {
        let (after, spaces) = space(rest)?;
        let Some((after, operator)) = operator(after, SUMS) else { return Ok((rest, left)) };
        if after.starts_with(['-', '/']) && operator == Operator::Plus {
            return Ok((rest, left)); // `+-` and `+/-`: a tolerance either way
        }
        let (next, spaces_after) = space(after)?;
        if !spaces.is_empty() && spaces_after.is_empty() {
            return Ok((rest, left));
        }
        if !starts_size(next) {
            return fatal(next, 0, "a size is missing after the sign", "as in `3/4in - 15 thou`");
        }
        let (end, right) = term(next, total)?;
        left = joined(left, operator, right);
        rest = end;
    }
}

/// `factor (*|/ factor)*`. A slash between two readings is left alone: it
/// divides only where a plain number follows and the left side is a sum in
/// brackets or has spaces about the slash.
pub(crate) fn term(input: &str, total: usize) -> Parsed<'_, Size> {
    const PRODUCTS: &[(char, Operator)] = &[('*', Operator::Times), ('/', Operator::Over)];
    let (mut rest, mut left) = factor(input, total)?;
    loop {
        let (after, spaces) = space(rest)?;
        let Some((after, operator)) = operator(after, PRODUCTS) else { return Ok((rest, left)) };
        let (next, spaces_after) = space(after)?;
        let bracketed = input.starts_with('(');
        let divides = bracketed || (!spaces.is_empty() && !spaces_after.is_empty());
        if operator == Operator::Over && !divides {
            return Ok((rest, left));
        }
        if !starts_size(next) {
            return fatal(
                next,
                0,
                "a number is missing after the operator",
                "as in `2 * 0.0045in` or `(25.4 + 0.02)/2`",
            );
        }
        let (end, right) = factor(next, total)?;
        left = joined(left, operator, right);
        rest = end;
    }
}

pub(crate) fn joined(left: Size, operator: Operator, right: Size) -> Size {
    let at = left.at.start..right.at.end;
    Spot { value: Expression::Two(Box::new(left), operator, Box::new(right)), at }
}

/// A number with its unit, a drill gauge, a bracket, or the opposite of one.
pub(crate) fn factor(input: &str, total: usize) -> Parsed<'_, Size> {
    // Most begin with a digit: no sign is tried against it.
    if input.starts_with(|c: char| c.is_ascii_digit()) {
        return number(input, total);
    }
    if let Ok((rest, _)) = minus(input) {
        let (rest, _) = space(rest)?;
        if !starts_size(rest) || rest.starts_with(['-', '+', '\u{2212}']) {
            return fatal(rest, 0, "a size is missing after the sign", "as in `3/4in - 15 thou`");
        }
        let (rest, inner) = factor(rest, total)?;
        return Ok((
            rest,
            Spot { value: Expression::Negative(Box::new(inner)), at: span(total, input, rest) },
        ));
    }
    if let Some(rest) = input.strip_prefix('+') {
        if !starts_size(rest) || rest.starts_with(['-', '+', '\u{2212}']) {
            return fatal(rest, 0, "a size is missing after the sign", "as in `3/4in + 15 thou`");
        }
        return factor(rest, total);
    }
    if let Some(rest) = input.strip_prefix('(') {
        return bracket(rest, total, input);
    }
    if let Some(rest) = input.strip_prefix('#') {
        let (rest, digits) = take_while(|c: char| c.is_ascii_digit())(rest)?;
        if digits.is_empty() {
            return fatal(
                rest,
                0,
                "the drill's number is missing after #",
                "number drills run from `#1` to `#107`",
            );
        }
        return Ok((
            rest,
            Spot { value: Expression::Gauge(format!("#{digits}")), at: span(total, input, rest) },
        ));
    }
    if let Ok((rest, ())) = keyword("letter")(input) {
        let (rest, _) = space(rest)?;
        return match word(rest) {
            Ok((end, letter)) if letter.len() == 1 => Ok((
                end,
                Spot {
                    value: Expression::Gauge(letter.to_ascii_uppercase()),
                    at: span(total, input, end),
                },
            )),
            _ => fatal(
                rest,
                0,
                "the drill's letter is missing",
                "letter drills run from `letter A` to `letter Z`",
            ),
        };
    }
    number(input, total)
}

pub(crate) fn bracket<'a>(inside: &'a str, total: usize, whole: &'a str) -> Parsed<'a, Size> {
    let (inside, _) = space(inside)?;
    if !starts_size(inside) {
        return fatal(inside, 0, "a size is missing in the brackets", "as in `(25.4 + 0.02)/2`");
    }
    let (rest, inner) = expression(inside, total)?;
    let (rest, _) = space(rest)?;
    let Some(end) = rest.strip_prefix(')') else {
        return fatal(rest, 0, "the closing bracket is missing", "as in `(25.4 + 0.02)/2`");
    };
    Ok((end, Spot { value: inner.value, at: span(total, whole, end) }))
}

pub(crate) fn number(input: &str, total: usize) -> Parsed<'_, Size> {
    // A diameter sign may stand before a size.
    let digits = input.strip_prefix(['\u{2300}', '\u{d8}', '\u{f8}']).unwrap_or(input);
    let (digits, _) = space(digits)?;
    let (number, taken) = match Number::scan(digits) {
        Ok(Some(found)) => found,
        Ok(None) => return unknown(input),
        Err(error) => return number_fault(digits, &error),
    };
    let rest = &digits[taken..];
    let (spaced, _) = space(rest)?;
    let (rest, unit) = match Unit::scan(spaced) {
        Some((unit, length)) => (&spaced[length..], Some(unit)),
        // A vulgar fraction is inches, whatever bare numbers are.
        None if number.is_vulgar() => (rest, Some(Unit::Inch)),
        None => (rest, None),
    };
    Ok((rest, Spot { value: Expression::Number(number, unit), at: span(total, input, rest) }))
}

/// The core's refusal of a number, with the mended line where there is one.
pub(crate) fn number_fault<T>(input: &str, error: &fits_core::Error) -> Result<T, Err<Fault>> {
    let at = error.span().unwrap_or(0..input.len());
    let rest = input.get(at.start..).unwrap_or_default();
    let length = at.len();
    if let Some(after_comma) = rest.strip_prefix(',') {
        let whole: &str = &input[..at.start];
        let after: String = after_comma.chars().take_while(char::is_ascii_digit).collect();
        let point = format!("{whole}.{after}");
        let is_size = |unit: &str| format!("{point}{unit}").parse::<Length>().is_ok();
        // Seven figures and more are not a size of a part in any unit.
        if whole.len() > 6 || !(is_size("mm") && is_size("in")) {
            return fatal(
                &input[at.start..],
                1,
                format!("the comma after {whole} can be read in several ways"),
                "leave it out, or put a space after it if two things are meant",
            );
        }
        let other = if after.len() == 3 {
            format!("`{whole}{after}` if it groups thousands")
        } else {
            "a space after it if two things are meant".into()
        };
        // Ten-thousandths look like inches: alone they are asked about.
        let decimal = if after.len() == 4 { point } else { format!("`{point}`") };
        return fatal_fix(
            &input[at.start..],
            1,
            format!("the comma in {whole},{after} can be read in two ways"),
            format!("{decimal} if it is a decimal point, {other}; so"),
            Some((1, ".".into())),
        );
    }
    let advice = match error.advice() {
        advice if advice.is_empty() => "as in `20 H7`".to_owned(),
        advice if advice.contains('`') => advice,
        advice => format!("{advice}, as in `20 H7`"),
    };
    fatal(rest, length, error.to_string(), advice)
}
