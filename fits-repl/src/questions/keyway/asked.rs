//! The key and keyways of a shaft, read.

use nom::{Parser, sequence::preceded};

use crate::{
    query::{Query, Size},
    words::{
        fault::Parsed,
        keywords::{keyword, nothing_more, space},
        sizes::size_after,
    },
};

/// The key and keyways of a shaft.
#[derive(Clone, Debug)]
pub struct KeywayFor(pub Size);

/// `keyway for SIZE`.
pub(crate) fn keyway(input: &str, total: usize) -> Parsed<'_, Query> {
    let (input, _) = space(input)?;
    let (rest, size) =
        size_after(input, total, "the shaft's size is missing", "as in `keyway for 25`")?;
    nothing_more(rest, Query::Keyway(KeywayFor(size)))
}

/// A line that begins with `keyway for`.
pub(crate) fn read(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    let (rest, ()) =
        preceded(keyword("keyway"), preceded(space, keyword("for"))).parse(input).ok()?;
    Some(keyway(rest, total))
}
