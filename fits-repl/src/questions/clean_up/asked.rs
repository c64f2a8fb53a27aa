//! Readings of a bore, read.

use crate::{
    query::Query,
    words::{
        fault::{Parsed, fatal},
        keywords::{keyword, space},
        said::{Said, Takes, said},
    },
};

/// What a line says of a worn bore.
#[derive(Clone, Debug)]
pub struct CleanUpOf(pub(crate) Said);

pub(crate) const EXAMPLE: &str = "as in `clean up 0.753in 0.757in 0.761in, should be 3/4in`";

const TAKES: &[(&str, Takes)] = &[
    ("should be", Takes::Size),
    ("was", Takes::Size),
    ("out of line", Takes::Size),
    ("od", Takes::Size),
    ("wall", Takes::Size),
    ("bush", Takes::Name),
    ("bore", Takes::Small),
    ("hole", Takes::Small),
    ("by", Takes::Small),
    ("and", Takes::Small),
];

/// A line that begins with `clean up`.
pub(crate) fn read(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    let rest = if let Ok((rest, ())) = keyword("cleanup")(input) {
        rest
    } else {
        let (rest, ()) = keyword("clean")(input).ok()?;
        let (rest, _) = space(rest).ok()?;
        keyword("up")(rest).ok()?.0
    };
    Some(clean_up(rest, total))
}

fn clean_up(input: &str, total: usize) -> Parsed<'_, Query> {
    let (rest, said) = said(input, total, TAKES, EXAMPLE)?;
    if said.sizes.is_empty() {
        return fatal(rest, 0, "the readings of the bore are missing", EXAMPLE);
    }
    Ok((rest, Query::CleanUp(Box::new(CleanUpOf(said)))))
}
