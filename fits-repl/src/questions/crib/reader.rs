//! The crib: what is shown, added and taken out.

use fits_core::size::Number;
use nom::{Parser, branch::alt, combinator::value};

use crate::{
    query::{
        CribQuery, Dimension, Expression, FigureText, MaterialFigure, Query, Size, Spot, ToolText,
    },
    words::{
        fault::{Parsed, fatal},
        keywords::{keyword, separator, shortened, space, span, unknown, word, words_until},
        quantities::quantity,
        sizes::{size_after, starts_size},
    },
};

const TOOLS: &str = "drill, drill set, reamer, tap, pin, bar, instrument or material, as \
                     `crib add reamer 20 cuts 20.012`";

/// After `crib`.
pub(crate) fn crib(input: &str, total: usize) -> Parsed<'_, Query> {
    let (input, _) = space(input)?;
    if input.is_empty() {
        return Ok((input, Query::Crib(CribQuery::Show)));
    }
    if let Ok((rest, ())) = keyword("add")(input) {
        let (start, _) = space(rest)?;
        let (end, tool) = tool(start, total)?;
        let at = span(total, start, end);
        let (rest, _) = separator(end)?;
        if !rest.is_empty() {
            return unknown(rest);
        }
        return Ok((rest, Query::Crib(CribQuery::Add(Box::new(Spot { value: tool, at })))));
    }
    if let Ok((rest, ())) = alt((keyword("remove"), keyword("drop"))).parse(input) {
        let number = rest.trim();
        return match number.parse() {
            Ok(value) => {
                let start = total - rest.trim_start().len();
                let at = start..start + number.len();
                Ok(("", Query::Crib(CribQuery::Remove(Spot { value, at }))))
            }
            Err(_) => fatal(
                rest.trim_start(),
                number.len(),
                "a tool is taken out by its number",
                "the numbers stand in `crib`",
            ),
        };
    }
    fatal(
        input,
        input.trim_end().len(),
        "this is not done with a crib",
        "`crib` shows it; `crib add drill 8.5` and `crib remove 1` change it",
    )
}

fn tool(input: &str, total: usize) -> Parsed<'_, ToolText> {
    let Ok((rest, kind)) = word(input) else {
        return fatal(input, 0, "the kind of tool is missing", TOOLS);
    };
    let (after, _) = space(rest)?;
    match kind.to_ascii_lowercase().as_str() {
        "drill" | "drills" => match keyword("set")(after) {
            Ok((after, ())) => drill_set(after, total),
            Err(_) => {
                sized(after, total, "drill 8.5").map(|(rest, size)| (rest, ToolText::Drill(size)))
            }
        },
        "reamer" => {
            let (rest, size) = sized(after, total, "reamer 20 cuts 20.012")?;
            let (rest, cuts) = clause(rest, total, "cuts")?;
            Ok((rest, ToolText::Reamer { size, cuts }))
        }
        "tap" => {
            let name = after.trim();
            let start = total - after.len();
            if name.is_empty() {
                return fatal(after, 0, "the thread is missing", "as in `crib add tap M10x1.25`");
            }
            let at = start..start + name.len();
            Ok(("", ToolText::Tap(Spot { value: name.to_owned(), at })))
        }
        "pin" => sized(after, total, "pin 20").map(|(rest, size)| (rest, ToolText::Pin(size))),
        "bar" => {
            let (rest, bore) = sized(after, total, "bar 12 reach 60")?;
            let (rest, reach) = clause(rest, total, "reach")?;
            Ok((rest, ToolText::Bar { bore, reach }))
        }
        "instrument" => instrument(after, total),
        "material" => material(after, total),
        _ => fatal(input, kind.len(), format!("a crib holds no `{}`", shortened(kind)), TOOLS),
    }
}

fn sized<'a>(input: &'a str, total: usize, example: &str) -> Parsed<'a, Size> {
    let advice = format!("as in `crib add {example}`");
    size_after(input, total, "the size is missing", &advice)
}

/// A word and a size, if it is there.
fn clause<'a>(input: &'a str, total: usize, name: &'static str) -> Parsed<'a, Option<Size>> {
    let (after, _) = separator(input)?;
    let Ok((after, ())) = keyword(name)(after) else { return Ok((input, None)) };
    let (after, _) = space(after)?;
    let message = format!("the size is missing after `{name}`");
    size_after(after, total, &message, "give what it measures, with its unit")
        .map(|(rest, size)| (rest, Some(size)))
}

/// A letter drill by its bare letter, as a set's ends are typed.
fn letter(input: &str, total: usize) -> Option<(&str, Size)> {
    let (rest, name) = word(space(input).ok()?.0).ok()?;
    let value = Expression::Gauge(name.to_ascii_uppercase());
    (name.len() == 1).then(|| {
        (space(rest).map_or(rest, |(rest, _)| rest), Spot { value, at: span(total, input, rest) })
    })
}

fn drill_set(input: &str, total: usize) -> Parsed<'_, ToolText> {
    let (input, _) = space(input)?;
    let Ok((rest, series)) = word(input) else {
        return fatal(
            input,
            0,
            "the series is missing after `set`",
            "metric, fraction, number or letter, as `crib add drill set metric 1..13 step 0.5`",
        );
    };
    let series = Spot { value: series.to_ascii_lowercase(), at: span(total, input, rest) };
    let (after, _) = separator(rest)?;
    if series.value.starts_with("letter")
        && let Some((rest, from)) = letter(after, total)
        && let Some(last) = rest.strip_prefix("..").or_else(|| rest.strip_prefix('\u{2026}'))
    {
        let Some((rest, to)) = letter(last, total) else {
            let example = "as in `crib add drill set letter A..Z`";
            return fatal(last, last.len(), "the last letter of the set is missing", example);
        };
        return Ok((rest, ToolText::DrillSet { series, range: Some((from, to)), step: None }));
    }
    if !starts_size(after) {
        return Ok((rest, ToolText::DrillSet { series, range: None, step: None }));
    }
    let (rest, from) = size_after(after, total, "", "")?;
    let (after, _) = space(rest)?;
    let Some(after) = after.strip_prefix("..").or_else(|| after.strip_prefix('\u{2026}')) else {
        return fatal(
            after,
            0,
            "the largest of the set is missing",
            "as in `crib add drill set metric 1..13 step 0.5`",
        );
    };
    let (after, _) = space(after)?;
    let (rest, to) = sized(after, total, "drill set metric 1..13 step 0.5")?;
    let (rest, step) = clause(rest, total, "step")?;
    Ok((rest, ToolText::DrillSet { series, range: Some((from, to)), step }))
}

/// A name up to one of some words.
fn name_until<'a>(
    input: &'a str,
    total: usize,
    ends: &[&str],
    example: &str,
) -> Parsed<'a, Spot<String>> {
    let (rest, name) =
        words_until(input, |word| ends.iter().any(|end| word.eq_ignore_ascii_case(end)))?;
    if name.is_empty() {
        return fatal(input, 0, "the name is missing", format!("as in `crib add {example}`"));
    }
    Ok((rest, Spot { value: name, at: span(total, input, rest) }))
}

fn instrument(input: &str, total: usize) -> Parsed<'_, ToolText> {
    const EXAMPLE: &str = "instrument my bore gauge repeat 0.002 bias 0.002";
    let (rest, name) = name_until(input, total, &["repeat", "bias"], EXAMPLE)?;
    let (rest, repeat) = clause(rest, total, "repeat")?;
    let (rest, bias) = clause(rest, total, "bias")?;
    let Some(repeat) = repeat else {
        return fatal(
            rest,
            0,
            "how its readings scatter is missing",
            format!(
                "read one size ten times and give the standard deviation: `crib add {EXAMPLE}`"
            ),
        );
    };
    Ok((rest, ToolText::Instrument { name, repeat, bias }))
}

const FIGURES: [&str; 4] = ["modulus", "poisson", "expansion", "yield"];

fn material(input: &str, total: usize) -> Parsed<'_, ToolText> {
    const EXAMPLE: &str = "material odd bronze modulus 105GPa poisson 0.34 yield 120MPa";
    let (mut rest, name) = name_until(input, total, &FIGURES, EXAMPLE)?;
    let mut figures = Vec::new();
    loop {
        let (after, _) = separator(rest)?;
        if after.is_empty() {
            break;
        }
        let found = alt((
            value(FIGURES[0], keyword(FIGURES[0])),
            value(FIGURES[1], keyword(FIGURES[1])),
            value(FIGURES[2], keyword(FIGURES[2])),
            value(FIGURES[3], keyword(FIGURES[3])),
        ))
        .parse(after);
        let Ok((end, figure)) = found else { return unknown(after) };
        let figure = Spot { value: figure.to_owned(), at: span(total, after, end) };
        let (start, _) = space(end)?;
        let advice = format!("as in `crib add {EXAMPLE}`");
        let missing = format!("the number is missing after `{}`", figure.value);
        let dimension = match figure.value.as_str() {
            "poisson" => None,
            "expansion" => Some(Dimension::Expansion),
            _ => Some(Dimension::Pressure),
        };
        let (end, read) = if let Some(dimension) = dimension {
            let (end, amount) = quantity(start, total, dimension, &missing, &advice)?;
            (end, FigureText::Amount(amount))
        } else {
            let Ok(Some((number, taken))) = Number::scan(start) else {
                return fatal(start, 0, missing, advice);
            };
            let (end, at) = (&start[taken..], span(total, start, &start[taken..]));
            if end.starts_with(|c: char| c.is_alphanumeric()) {
                return fatal(end, 1, "Poisson's ratio has no unit", advice);
            }
            (end, FigureText::Ratio(Spot { value: number, at }))
        };
        figures.push(MaterialFigure { name: figure, read });
        rest = end;
    }
    Ok((rest, ToolText::Material { name, figures }))
}
