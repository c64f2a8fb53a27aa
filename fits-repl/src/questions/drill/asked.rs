//! The nearest drills, read.

use crate::{
    query::Query,
    words::{
        fault::Parsed,
        keywords::{nothing_more, space},
        sizes::size_after,
    },
};

/// `drill SIZE`.
pub(crate) fn drill(input: &str, total: usize) -> Parsed<'_, Query> {
    let (input, _) = space(input)?;
    let (rest, size) =
        size_after(input, total, "the size is missing after `drill`", "as in `drill 0.7031in`")?;
    nothing_more(rest, Query::Drill(size))
}
