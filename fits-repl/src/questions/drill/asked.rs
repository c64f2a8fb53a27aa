//! The nearest drills, read.

use crate::{
    query::{Query, Size},
    words::{
        fault::Parsed,
        keywords::{keyword, nothing_more, space, words_until},
        sizes::size_after,
    },
};

/// The drills about a size.
#[derive(Clone, Debug)]
pub struct DrillFor(pub Size);

/// `drill SIZE`.
pub(crate) fn drill(input: &str, total: usize) -> Parsed<'_, Query> {
    let (input, _) = space(input)?;
    let (rest, size) =
        size_after(input, total, "the size is missing after `drill`", "as in `drill 0.7031in`")?;
    nothing_more(rest, Query::Drill(DrillFor(size)))
}

/// `drill SIZE`; `drill rod 3/8in` is a part.
pub(crate) fn read(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    let (rest, ()) = keyword("drill")(input).ok()?;
    let is_part = matches!(words_until(rest, |_| false), Ok((_, name)) if !name.is_empty() && !name.starts_with("letter"));
    (!is_part).then(|| drill(rest, total))
}
