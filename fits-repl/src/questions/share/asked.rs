//! A torque and what holds it, read.

use crate::{
    query::{Amount, Dimension, Query},
    words::{
        fault::{Parsed, fatal},
        keywords::{keyword, space},
        quantities::quantity,
        said::{Said, Takes, said},
    },
};

/// A torque and what holds it.
#[derive(Clone, Debug)]
pub struct ShareOf {
    /// The torque.
    pub(crate) torque: Amount,
    /// What holds it.
    pub(crate) said: Said,
}

pub(crate) const EXAMPLE: &str = "as in `share 60Nm, shaft 25mm, press 35Nm, cross pin 6mm`";

const TAKES: &[(&str, Takes)] = &[
    ("shaft", Takes::Size),
    ("press", Takes::Torque),
    ("compound", Takes::Nothing),
    ("gap", Takes::Size),
    ("cross pin", Takes::Size),
    ("pin", Takes::Size),
    ("key", Takes::Size),
    ("screw", Takes::Size),
    ("long", Takes::Size),
    ("of", Takes::Name),
    ("at", Takes::Temperature),
    ("shock", Takes::Nothing),
    ("oily", Takes::Nothing),
    ("and", Takes::Small),
    ("by", Takes::Small),
];

/// A line that begins with `share`.
pub(crate) fn read(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    let (rest, ()) = keyword("share")(input).ok()?;
    Some(share(rest, total))
}

fn share(input: &str, total: usize) -> Parsed<'_, Query> {
    let (input, _) = space(input)?;
    let missing = "the torque is missing after `share`";
    let (rest, torque) = quantity(input, total, Dimension::Torque, missing, EXAMPLE)?;
    let (end, said) = said(rest, total, TAKES, EXAMPLE)?;
    let stray = said.words.first().map(|word| &word.at).or(said.sizes.first().map(|size| &size.at));
    if let Some(at) = stray {
        let here = rest.get(rest.len() - (total - at.start)..).unwrap_or_default();
        return fatal(here, at.len(), "this does not go with a shared torque", EXAMPLE);
    }
    Ok((end, Query::Share(Box::new(ShareOf { torque, said }))))
}
