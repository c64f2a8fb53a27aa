//! Questions that name no pair: general tolerances, drills, classes for a
//! wanted clearance, bearing seats.

use crate::questions::joint;
use fits_core::standards::iso286::Feature;
use nom::{Parser, branch::alt, bytes::complete::take_while, combinator::value};

use crate::{
    query::{GeneralKind, Query, Size, Spot, Wanted},
    words::{
        fault::{Parsed, fatal, fatal_fix},
        keywords::{keyword, separator, space, span, unknown, word, words_until},
        sizes::{expression, size_after},
    },
};

fn nothing_more(input: &str, query: Query) -> Parsed<'_, Query> {
    let (rest, _) = separator(input)?;
    if rest.is_empty() { Ok((rest, query)) } else { unknown(rest) }
}

/// `SIZE general m`, then `radius`, `chamfer` or `angle`.
pub(crate) fn general(input: &str, total: usize, size: Size) -> Parsed<'_, Query> {
    let (input, _) = space(input)?;
    let Ok((rest, class)) = word(input) else {
        return fatal_fix(
            input,
            0,
            "the class is missing after `general`",
            "f, m, c or v",
            Some((0, " m".into())),
        );
    };
    let class = Spot { value: class.to_ascii_lowercase(), at: span(total, input, rest) };
    let (after, _) = separator(rest)?;
    let kind = alt((
        value(
            GeneralKind::BrokenEdge,
            alt((keyword("radius"), keyword("chamfer"), keyword("edge"))),
        ),
        value(GeneralKind::Angle, keyword("angle")),
    ))
    .parse(after);
    match kind {
        Ok((rest, kind)) => nothing_more(rest, Query::General { size, class, kind }),
        Err(_) => nothing_more(rest, Query::General { size, class, kind: GeneralKind::Linear }),
    }
}

/// `SIZE grade N`.
pub(crate) fn grade(input: &str, total: usize, size: Size) -> Parsed<'_, Query> {
    let (input, _) = space(input)?;
    let (rest, number) = take_while(|c: char| c.is_ascii_alphanumeric())(input)?;
    if number.is_empty() {
        return fatal_fix(
            input,
            0,
            "the number is missing after `grade`",
            "as in `3/4in grade 8`",
            Some((0, " 8".into())),
        );
    }
    let grade = Spot { value: number.to_owned(), at: span(total, input, rest) };
    nothing_more(rest, Query::Grade { size, grade })
}

/// `keyway for SIZE`.
pub(crate) fn keyway(input: &str, total: usize) -> Parsed<'_, Query> {
    let (input, _) = space(input)?;
    let (rest, size) =
        size_after(input, total, "the shaft's size is missing", "as in `keyway for 25`")?;
    nothing_more(rest, Query::Keyway(size))
}

/// `drill SIZE`.
pub(crate) fn drill(input: &str, total: usize) -> Parsed<'_, Query> {
    let (input, _) = space(input)?;
    let (rest, size) =
        size_after(input, total, "the size is missing after `drill`", "as in `drill 0.7031in`")?;
    nothing_more(rest, Query::Drill(size))
}

/// `pick SIZE clearance A..B` or `pick SIZE interference A..B`; or by what a
/// joint must do, as `pick SIZE holds TORQUE`.
pub(crate) fn pick(input: &str, total: usize) -> Parsed<'_, Query> {
    const EXAMPLE: &str = "as in `pick 20 clearance 0.01..0.04`";
    let (input, _) = space(input)?;
    let (rest, size) = size_after(input, total, "the size is missing after `pick`", EXAMPLE)?;
    let (rest, _) = separator(rest)?;
    if joint::reader::starts_wish(rest) {
        return joint::reader::pick(rest, total, size);
    }
    let Ok((rest, wanted)) = alt((
        value(Wanted::Clearance, keyword("clearance")),
        value(Wanted::Interference, keyword("interference")),
    ))
    .parse(rest) else {
        return fatal(rest, 0, "`clearance` or `interference` is missing", EXAMPLE);
    };
    let (rest, _) = space(rest)?;
    let (rest, from) = size_after(rest, total, "the least of the range is missing", EXAMPLE)?;
    let (after, _) = space(rest)?;
    let Some(after) = after.strip_prefix("..").or_else(|| after.strip_prefix('\u{2026}')) else {
        return fatal(after, 0, "the greatest of the range is missing", EXAMPLE);
    };
    let (after, _) = space(after)?;
    let (rest, to) = size_after(after, total, "the greatest of the range is missing", EXAMPLE)?;
    nothing_more(rest, Query::Pick { size, wanted, from, to })
}

/// `seat shaft SIZE` or `seat housing SIZE`, and how it is loaded.
pub(crate) fn seat(input: &str, total: usize) -> Parsed<'_, Query> {
    const EXAMPLE: &str = "as in `seat shaft 25 rotating normal`";
    let (input, _) = space(input)?;
    let Ok((rest, feature)) = alt((
        value(Feature::Shaft, keyword("shaft")),
        value(Feature::Hole, alt((keyword("housing"), keyword("hole")))),
    ))
    .parse(input) else {
        return fatal(input, 0, "`shaft` or `housing` is missing after `seat`", EXAMPLE);
    };
    let (rest, _) = space(rest)?;
    if rest.is_empty() {
        return fatal(rest, 0, "the size of the seat is missing", EXAMPLE);
    }
    let (rest, size) = expression(rest, total)?;
    let (rest, _) = separator(rest)?;
    let (end, load) = words_until(rest, |_| false)?;
    let load = (!load.is_empty()).then(|| Spot { value: load, at: span(total, rest, end) });
    nothing_more(end, Query::Seat { feature, size, load })
}
