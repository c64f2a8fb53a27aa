//! The key and keyways of a shaft, read.

use fits_core::standards::bought::KeyFit;
use nom::{Parser, sequence::preceded};

use crate::{
    query::{Query, Size},
    words::{
        fault::{Parsed, fatal},
        keywords::{keyword, separator, space, unknown},
        sizes::{expression, size_after, starts_size},
    },
};

/// What was measured of a keyway.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CutOf {
    /// Its width.
    Width,
    /// Its depth, from where the standard gives it.
    Depth,
    /// From its bottom to the far side.
    Across,
}

/// The key and keyways of a shaft.
#[derive(Clone, Debug)]
pub struct KeywayFor {
    /// The shaft's diameter.
    pub size: Size,
    /// How the key sits, where it is said.
    pub fit: Option<KeyFit>,
    /// The hub's keyway was measured, not the shaft's.
    pub of_hub: bool,
    /// What was measured.
    pub cut: Option<(CutOf, Size)>,
}

const EXAMPLE: &str =
    "as in `keyway for 1in`, `keyway for 1in tight`, `keyway for 1in wide 0.255in`";

const FITS: &[(&str, KeyFit)] = &[
    ("sliding", KeyFit::Sliding),
    ("slide", KeyFit::Sliding),
    ("free", KeyFit::Sliding),
    ("usual", KeyFit::Usual),
    ("normal", KeyFit::Usual),
    ("tight", KeyFit::Tight),
    ("press", KeyFit::Tight),
];

const CUTS: &[(&str, CutOf)] = &[
    ("wide", CutOf::Width),
    ("width", CutOf::Width),
    ("deep", CutOf::Depth),
    ("depth", CutOf::Depth),
    ("across", CutOf::Across),
    ("mic", CutOf::Across),
];

/// `keyway for SIZE`, then how the key sits, or what was measured.
pub(crate) fn keyway(input: &str, total: usize) -> Parsed<'_, Query> {
    let (input, _) = space(input)?;
    let (mut rest, size) = size_after(input, total, "the shaft's size is missing", EXAMPLE)?;
    let mut asked = KeywayFor { size, fit: None, of_hub: false, cut: None };
    loop {
        let (next, _) = separator(rest)?;
        if next.is_empty() {
            return match (asked.of_hub, &asked.cut) {
                (true, None) => fatal(next, 0, "what was measured of the hub is missing", EXAMPLE),
                _ => Ok((next, Query::Keyway(Box::new(asked)))),
            };
        }
        let after = |word: &'static str| keyword(word)(next).ok().map(|(after, ())| after);
        if let Some((after, fit)) =
            FITS.iter().find_map(|(word, fit)| after(word).map(|after| (after, *fit)))
        {
            if asked.fit.is_some_and(|other| other != fit) {
                return fatal(next, next.len() - after.len(), "the key sits one way", EXAMPLE);
            }
            asked.fit = Some(fit);
            rest = after;
        } else if let Some(after) = after("hub") {
            asked.of_hub = true;
            rest = after;
        } else if let Some(after) = after("shaft").filter(|_| !asked.of_hub) {
            rest = after;
        } else if let Some((after, cut)) =
            CUTS.iter().find_map(|(word, cut)| after(word).map(|after| (after, *cut)))
        {
            if asked.cut.is_some() {
                return fatal(
                    next,
                    next.len() - after.len(),
                    "one thing measured at a time",
                    EXAMPLE,
                );
            }
            let (after, _) = space(after)?;
            let after = after.strip_prefix('=').map_or(after, str::trim_start);
            if !starts_size(after) {
                return fatal(after, 0, "what was measured is missing", EXAMPLE);
            }
            let (after, size) = expression(after, total)?;
            asked.cut = Some((cut, size));
            rest = after;
        } else {
            return unknown(next);
        }
    }
}

/// A line that begins with `keyway for`.
pub(crate) fn read(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    let (rest, ()) =
        preceded(keyword("keyway"), preceded(space, keyword("for"))).parse(input).ok()?;
    Some(keyway(rest, total))
}
