//! A feature or a pair, read.

use fits_core::{
    size::{Number, Unit},
    standards::iso286::Feature,
};
use nom::Err;

use crate::{
    query::{Expression, Part, Query, Spot, Tolerance, Work},
    questions::{self, part::clauses::clauses},
    words::{
        fault::{Fault, Parsed, fatal, fatal_fix},
        keywords::{after_equals, keyword, separator, space, span, unknown, word, words_until},
        sizes::{expression, size_after},
        tolerances::tolerance,
    },
};

pub(crate) fn part_or_size(
    input: &str,
    total: usize,
    work: Option<Spot<Work>>,
    feature: Option<Spot<Feature>>,
) -> Parsed<'_, Query> {
    let (input, bought) = bought(input, total)?;
    size_must_start(input)?;
    let (rest, size) = expression(input, total)?;
    let (rest, tolerance) = limits_after(rest, total)?;
    let tolerance = match tolerance {
        Some(tolerance) => tolerance,
        None => Tolerance::Bare,
    };
    if matches!(tolerance, Tolerance::Bare) {
        let (after, _) = separator(rest)?;
        let alone = work.is_none() && feature.is_none() && bought.is_none();
        if after.is_empty() && alone {
            return Ok((after, Query::Size(size)));
        }
        if alone && let Ok((after, ())) = keyword("general")(after) {
            return questions::general::asked::general(after, total, size);
        }
        if alone && let Ok((after, ())) = keyword("grade")(after) {
            return questions::grade::asked::grade(after, total, size);
        }
        let is_reading = after_equals(after).is_some() || keyword("from")(after).is_ok();
        if bought.is_none() && (after.is_empty() || is_reading) {
            let class = match (work.map(|work| work.value), feature.map(|feature| feature.value)) {
                (Some(Work::Turn), _) | (_, Some(Feature::Shaft)) => "g6",
                _ => "H7",
            };
            return fatal_fix(
                after,
                0,
                "the tolerance is missing after the size",
                "give a class",
                Some((0, format!(" {class} "))),
            );
        }
        let is_whole =
            matches!(size.value, Expression::Number(number, None) if !number.is_fraction());
        if is_whole && matches!(Number::scan(after), Ok(Some((next, _))) if next.is_fraction()) {
            // `1 1/2in`
            let gap = rest.len() - after.len();
            return fatal_fix(
                rest,
                gap,
                "a mixed number is joined by a hyphen",
                "",
                Some((gap, "-".into())),
            );
        }
        if !after.starts_with(|c: char| c.is_ascii_alphabetic() || c == '=') && !after.is_empty() {
            return unknown(after);
        }
    }
    let mut part = Box::new(Part::new(work, feature, size, tolerance));
    part.bought = bought;
    clauses(rest, total, part)
}

/// The limits after a size, if any are given there.
pub(crate) fn limits_after(rest: &str, total: usize) -> Parsed<'_, Option<Tolerance>> {
    let (after, _) = separator(rest)?;
    if after.is_empty() {
        return Ok((rest, None));
    }
    let second = after.strip_prefix("..").or_else(|| after.strip_prefix('\u{2026}'));
    if let Some(second) = second {
        let (second, _) = space(second)?;
        let (end, upper) = size_after(
            second,
            total,
            "the upper limit is missing after `..`",
            "write both limits, as `hole 20.00..20.02`",
        )?;
        return Ok((end, Some(Tolerance::UpTo(upper))));
    }
    let (end, tolerance) = tolerance(after, total)?;
    Ok(if tolerance.is_some() { (end, tolerance) } else { (rest, None) })
}

/// A bought-in part's name, where words stand before a size: `shoulder screw
/// 3/8in`, `m6 dowel pin 6mm`.
pub(crate) fn bought(input: &str, total: usize) -> Parsed<'_, Option<Spot<String>>> {
    let Ok((first, letters)) = word(input) else { return Ok((input, None)) };
    let is_unit = Unit::scan(input).is_some_and(|(_, taken)| taken == letters.len());
    if letters.eq_ignore_ascii_case("letter") {
        return Ok((input, None));
    }
    // A class may open the name where a word, not a size, follows it.
    let digits = first.len() - first.trim_start_matches(|c: char| c.is_ascii_digit()).len();
    let opening = if digits > 0 { &input[..letters.len() + digits] } else { "" };
    // A name may hold keywords: `bearing bore`, `N9 keyway in the shaft`.
    let (rest, name) = words_until(&input[opening.len()..], |_| false)?;
    // A unit alone is not a name: `inch key` is one.
    if digits > 0 && name.len() < 3 || is_unit && name.len() == letters.len() {
        return Ok((input, None));
    }
    let (after, _) = separator(rest)?;
    let size_follows = after.starts_with(|c: char| {
        c.is_ascii_digit() || matches!(c, '.' | '#' | '(' | '\u{2300}' | '\u{d8}')
    });
    if name.is_empty() || after == rest || !size_follows {
        return Ok((input, None));
    }
    let value = if opening.is_empty() { name } else { format!("{opening} {name}") };
    Ok((after, Some(Spot { value, at: span(total, input, rest) })))
}

/// Refuses what cannot begin a size, with what is meant most likely.
pub(crate) fn size_must_start(input: &str) -> Result<(), Err<Fault>> {
    if input.is_empty() {
        return fatal(input, 0, "the size is missing", "as in `bore 20 H7` or `hole 20 ±0.02`");
    }
    let Ok((rest, letters)) = word(input) else {
        return Ok(());
    };
    if letters.eq_ignore_ascii_case("letter") {
        return Ok(());
    }
    if letters.eq_ignore_ascii_case("m") && !rest.starts_with(|c: char| c.is_ascii_digit()) {
        let gap = rest.len() - rest.trim_start_matches([' ', '-']).len();
        return fatal_fix(
            input,
            1,
            "a metric thread has its size right after the M",
            "as in `M10` or `M10x1.25`",
            rest[gap..].starts_with(|c: char| c.is_ascii_digit()).then(|| (1 + gap, "M".into())),
        );
    }
    if Unit::scan(input).is_some_and(|(_, taken)| taken == letters.len()) {
        return fatal_fix(
            input,
            letters.len(),
            format!("`{letters}` has no number before it: a class needs its size"),
            "",
            Some((0, if letters.eq_ignore_ascii_case("in") { "3/4".into() } else { "20 ".into() })),
        );
    }
    if rest.starts_with(|c: char| c.is_ascii_digit()) && letters.len() <= 2 {
        let advice = if letters == "m" { "a metric thread takes the capital" } else { "" };
        let before = if letters == "m" { (1, "M".into()) } else { (0, "20 ".into()) };
        return fatal_fix(
            input,
            letters.len(),
            "a class needs its nominal size before it",
            advice,
            Some(before),
        );
    }
    unknown(input)
}
