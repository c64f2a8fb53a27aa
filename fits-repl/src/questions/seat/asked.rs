//! Classes for a rolling bearing's seat, read.

use fits_core::standards::iso286::Feature;
use nom::{Parser, branch::alt, combinator::value};

use crate::{
    query::{Query, Size, Spot},
    words::{
        fault::{Parsed, fatal},
        keywords::{keyword, nothing_more, separator, space, span, words_until},
        sizes::expression,
    },
};

/// The seat of a rolling bearing.
#[derive(Clone, Debug)]
pub struct Seat {
    /// A shaft's, or a housing's.
    pub feature: Feature,
    /// Its size.
    pub size: Size,
    /// How the bearing is loaded, as typed.
    pub load: Option<Spot<String>>,
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
    nothing_more(end, Query::Seat(Seat { feature, size, load }))
}

/// A line that begins with `seat`.
pub(crate) fn read(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    keyword("seat")(input).ok().map(|(rest, ())| seat(rest, total))
}
