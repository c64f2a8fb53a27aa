//! The key and keyways of a shaft, read.

use crate::{
    query::Query,
    words::{
        fault::Parsed,
        keywords::{nothing_more, space},
        sizes::size_after,
    },
};

/// `keyway for SIZE`.
pub(crate) fn keyway(input: &str, total: usize) -> Parsed<'_, Query> {
    let (input, _) = space(input)?;
    let (rest, size) =
        size_after(input, total, "the shaft's size is missing", "as in `keyway for 25`")?;
    nothing_more(rest, Query::Keyway(size))
}
