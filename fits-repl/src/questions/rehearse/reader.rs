//! `align` and `rehearse`.

use fits_core::standards::iso286::Feature;
use nom::{
    Parser,
    branch::alt,
    combinator::{opt, value},
};

use crate::{
    query::{Part, Query},
    questions::part::reader::part_or_size,
    words::{
        fault::{Parsed, fatal},
        keywords::{keyword, space, spot},
    },
};

/// `rehearse` a part.
#[derive(Clone, Debug)]
pub struct Rehearse(pub Box<Part>);

/// A line that begins with `rehearse`.
pub(crate) fn read(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    keyword("rehearse")(input).ok().map(|(rest, ())| rehearse(rest, total))
}

/// After `rehearse`.
fn rehearse(input: &str, total: usize) -> Parsed<'_, Query> {
    let (input, _) = space(input)?;
    match part(input, total)? {
        (rest, Query::Part(part)) => Ok((rest, Query::Rehearse(Rehearse(part)))),
        _ => fatal(
            input,
            input.trim_end().len(),
            "a rehearsal needs the part's limits and where it starts",
            "as in `rehearse 20 H7 from 19.6 with bore gauge`",
        ),
    }
}

pub(crate) fn part(input: &str, total: usize) -> Parsed<'_, Query> {
    let (input, feature) = opt(spot(
        total,
        alt((value(Feature::Hole, keyword("hole")), value(Feature::Shaft, keyword("shaft")))),
    ))
    .parse(input)?;
    let (input, _) = space(input)?;
    part_or_size(input, total, None, feature)
}
