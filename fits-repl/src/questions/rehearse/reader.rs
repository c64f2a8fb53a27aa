//! `align` and `rehearse`.

use crate::{
    query::{Align, Collars, Query, Size, Spot},
    words::{
        fault::{Parsed, fatal},
        keywords::{keyword, separator, space, span, spot, unknown},
        part_or_size,
        sizes::size_after,
    },
};
use fits_core::standards::iso286::Feature;
use nom::{
    Parser,
    branch::alt,
    combinator::{opt, value},
};

const COLLARS: &str = "two test diameters and their distance, as `align 19.98 20.01 over 150`";

/// Either of them, where the line begins so.
pub(crate) fn practice(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    if !input.starts_with(['a', 'A', 'r', 'R']) {
        return None;
    }
    if let Ok((rest, ())) = keyword("align")(input) {
        return Some(align(rest, total));
    }
    keyword("rehearse")(input).ok().map(|(rest, ())| rehearse(rest, total))
}

/// After `align`.
fn align(input: &str, total: usize) -> Parsed<'_, Query> {
    let (input, _) = space(input)?;
    let (rest, collars) = if let Ok((after, ())) = keyword("taper")(input) {
        const RATIO: &str = "as in `align taper 1:50 over 200`";
        let (start, _) = space(after)?;
        let (rest, first) = size_after(start, total, "the taper is missing after `taper`", RATIO)?;
        let (rest, _) = space(rest)?;
        let colon =
            rest.strip_prefix(':').or_else(|| keyword("per")(rest).ok().map(|(rest, ())| rest));
        let Some(second) = colon else {
            return fatal(rest, 0, "a taper is one length over another", RATIO);
        };
        let (second, _) = space(second)?;
        let (rest, second) = size_after(second, total, "the taper's length is missing", RATIO)?;
        let at = span(total, start, rest);
        (rest, Collars::Ratio(Spot { value: (first, second), at }))
    } else {
        let (rest, first) = size_after(input, total, "nothing was measured", COLLARS)?;
        let (second, _) = separator(rest)?;
        let (rest, second) =
            size_after(second, total, "the second test diameter is missing", COLLARS)?;
        (rest, Collars::Two(first, second))
    };
    let (rest, over) = length(rest, total, "over", COLLARS)?;
    let Some(over) = over else {
        let (rest, _) = separator(rest)?;
        return fatal(rest, 0, "the distance is missing: `over` and a length", COLLARS);
    };
    let (rest, between) =
        length(rest, total, "between", "as in `align 19.98 20.01 over 150 between 400`")?;
    let (rest, _) = separator(rest)?;
    if rest.is_empty() {
        return Ok((rest, Query::Align(Box::new(Align { collars, over, between, part: None }))));
    }
    match part(rest, total)? {
        (end, Query::Part(part)) => {
            Ok((end, Query::Align(Box::new(Align { collars, over, between, part: Some(part) }))))
        }
        _ => unknown(rest),
    }
}

/// A word and the length after it, if the word stands there.
fn length<'a>(
    input: &'a str,
    total: usize,
    word: &'static str,
    advice: &str,
) -> Parsed<'a, Option<Size>> {
    let (start, _) = separator(input)?;
    let Ok((after, ())) = keyword(word)(start) else { return Ok((input, None)) };
    let (after, _) = space(after)?;
    let (rest, size) =
        size_after(after, total, &format!("the length is missing after `{word}`"), advice)?;
    Ok((rest, Some(size)))
}

/// After `rehearse`.
fn rehearse(input: &str, total: usize) -> Parsed<'_, Query> {
    let (input, _) = space(input)?;
    match part(input, total)? {
        (rest, Query::Part(part)) => Ok((rest, Query::Rehearse(part))),
        _ => fatal(
            input,
            input.trim_end().len(),
            "a rehearsal needs the part's limits and where it starts",
            "as in `rehearse 20 H7 from 19.6 with bore gauge`",
        ),
    }
}

fn part(input: &str, total: usize) -> Parsed<'_, Query> {
    let (input, feature) = opt(spot(
        total,
        alt((value(Feature::Hole, keyword("hole")), value(Feature::Shaft, keyword("shaft")))),
    ))
    .parse(input)?;
    let (input, _) = space(input)?;
    part_or_size(input, total, None, feature)
}
