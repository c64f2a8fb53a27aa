//! Standard classes for a wanted clearance, read.

use nom::{Parser, branch::alt, combinator::value};

use crate::{
    query::{Query, Size},
    questions::joint,
    words::{
        fault::{Parsed, fatal},
        keywords::{keyword, nothing_more, separator, space},
        sizes::size_after,
    },
};

/// `pick SIZE clearance A..B` or `pick SIZE interference A..B`; or by what a
/// joint must do, as `pick SIZE holds TORQUE`.
pub(crate) fn pick(input: &str, total: usize) -> Parsed<'_, Query> {
    const EXAMPLE: &str = "as in `pick 20 clearance 0.01..0.04`";
    let (input, _) = space(input)?;
    let (rest, size) = size_after(input, total, "the size is missing after `pick`", EXAMPLE)?;
    let (rest, _) = separator(rest)?;
    if joint::wish_reader::starts_wish(rest) {
        return joint::wish_reader::pick(rest, total, size);
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
    nothing_more(rest, Query::Pick(Pick { size, wanted, from, to }))
}

/// `pick SIZE clearance A..B`: classes that give it.
#[derive(Clone, Debug)]
pub struct Pick {
    /// The nominal size.
    pub size: Size,
    /// Play or grip.
    pub wanted: Wanted,
    /// The least.
    pub from: Size,
    /// The most.
    pub to: Size,
}

/// What is wanted of a pair.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Wanted {
    /// Play.
    Clearance,
    /// Grip.
    Interference,
}

/// A line that begins with `pick`.
pub(crate) fn read(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    keyword("pick")(input).ok().map(|(rest, ())| pick(rest, total))
}
