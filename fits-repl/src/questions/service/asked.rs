//! A service and its size, read.

use std::ops::Range;

use crate::{
    query::Query,
    words::{
        fault::{Parsed, fatal},
        keywords::{keyword, space},
        said::{Said, Takes, said},
    },
};

/// What runs in what.
#[derive(Clone, Debug)]
pub struct ServiceOf {
    /// The service, as the library has it.
    pub(crate) service: &'static str,
    /// Where its word stands.
    pub(crate) at: Range<usize>,
    /// The rest of the line.
    pub(crate) said: Said,
}

/// Heads, the library's word, and an example.
const HEADS: [(&str, &str, &str); 7] = [
    ("piston", "piston", "as in `piston 1in aluminium in cast iron at 150C`"),
    ("telescope", "tube", "as in `telescope 1in` or `telescope 1in thin`"),
    ("hinge", "hinge", "as in `hinge 1/2in` or `hinge 1/2in rough`"),
    ("crank", "crank", "as in `crank 3/4in` or `crank 3/4in rough`"),
    ("roller", "roller", "as in `roller 1/2in`"),
    ("slide", "slide", "as in `slide 2in gib`"),
    ("printed", "printed", "as in `printed petg hole 8mm pin, slip`"),
];

/// Kinds of a service, as they are said.
pub(crate) const KINDS: [(&str, &str); 6] = [
    ("ringed", "ringed"),
    ("lapped", "lapped"),
    ("soft ring", "soft ring"),
    ("rough", "rough"),
    ("thin", "thin"),
    ("gib", "gib"),
];

const TAKES: &[(&str, Takes)] = &[
    ("soft ring", Takes::Nothing),
    ("ringed", Takes::Nothing),
    ("lapped", Takes::Nothing),
    ("rough", Takes::Nothing),
    ("thin", Takes::Nothing),
    ("gib", Takes::Nothing),
    ("at", Takes::Temperature),
    ("in", Takes::Name),
    ("on", Takes::Small),
    ("with", Takes::Small),
    ("for", Takes::Small),
    ("hole", Takes::Small),
    ("pin", Takes::Small),
    ("a", Takes::Small),
];

/// The example of a service.
pub(crate) fn example(service: &str) -> &'static str {
    HEADS.iter().find(|head| head.1 == service).map_or("", |head| head.2)
}

/// A line that begins with a service.
pub(crate) fn read(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    let (rest, (word, service, example)) =
        HEADS.iter().find_map(|head| Some((keyword(head.0)(input).ok()?.0, *head)))?;
    let at = total - input.len()..total - input.len() + word.len();
    let (after, _) = space(rest).ok()?;
    if after.is_empty() {
        return Some(fatal(after, 0, format!("the size is missing after `{word}`"), example));
    }
    Some(service_of(rest, total, service, at, example))
}

fn service_of<'a>(
    input: &'a str,
    total: usize,
    service: &'static str,
    at: Range<usize>,
    example: &'static str,
) -> Parsed<'a, Query> {
    let (rest, said) = said(input, total, TAKES, example)?;
    let here =
        |at: &Range<usize>| input.get(input.len() - (total - at.start)..).unwrap_or_default();
    match &said.sizes[..] {
        [_] => Ok((rest, Query::Service(Box::new(ServiceOf { service, at, said })))),
        [] => fatal(rest, 0, "the size is missing", example),
        [_, extra, ..] => fatal(here(&extra.at), extra.at.len(), "one size is wanted", example),
    }
}
