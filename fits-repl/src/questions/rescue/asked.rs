//! A part that came out wrong, read.

use crate::{
    query::Query,
    words::{
        fault::{Parsed, fatal},
        keywords::keyword,
        said::{Said, Takes, said},
    },
};

/// What a line says of a part in trouble.
#[derive(Clone, Debug)]
pub struct RescueOf(pub(crate) Said);

pub(crate) const EXAMPLE: &str = "as in `rescue shaft 0.7478in should be 0.7495in, press`";

const TAKES: &[(&str, Takes)] = &[
    ("hole", Takes::Name),
    ("bore", Takes::Name),
    ("hub", Takes::Name),
    ("shaft", Takes::Name),
    ("should be", Takes::Size),
    ("over", Takes::Before),
    ("under", Takes::Before),
    ("mate", Takes::Size),
    ("bearing", Takes::Bearing),
    ("long", Takes::Size),
    ("od", Takes::Size),
    ("wall", Takes::Size),
    ("bush", Takes::Name),
    ("torque", Takes::Torque),
    ("at", Takes::Temperature),
    ("turns", Takes::Nothing),
    ("stands", Takes::Nothing),
    ("shock", Takes::Nothing),
    ("oily", Takes::Nothing),
    ("people", Takes::Nothing),
    ("for", Takes::Small),
    ("is", Takes::Small),
    ("by", Takes::Small),
    ("and", Takes::Small),
];

/// A line that begins with `rescue`.
pub(crate) fn read(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    let (rest, ()) = keyword("rescue")(input).ok()?;
    Some(rescue(rest, total))
}

fn rescue(input: &str, total: usize) -> Parsed<'_, Query> {
    let (rest, said) = said(input, total, TAKES, EXAMPLE)?;
    if said.first_size().is_none() {
        return fatal(rest, 0, "what the part measures is missing", EXAMPLE);
    }
    Ok((rest, Query::Rescue(Box::new(RescueOf(said)))))
}
