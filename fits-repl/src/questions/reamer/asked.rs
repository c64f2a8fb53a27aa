//! What a reamer cut, read: `reamer 1/4in cut 0.2508in, pin 0.2502in`.

use crate::{
    query::{Query, Size},
    questions::part::clauses::once,
    words::{
        fault::{Parsed, fatal},
        keywords::{after_equals, keyword, separator, shortened, space},
        sizes::{expression, size_after, starts_size},
    },
};

/// `reamer SIZE cut SIZE`.
#[derive(Clone, Debug)]
pub struct ReamerCutOf {
    /// The reamer's nominal size.
    pub size: Size,
    /// What the hole measures.
    pub hole: Size,
    /// `pin SIZE` or `shaft SIZE`.
    pub pin: Option<Size>,
    /// `measures SIZE`: the reamer itself.
    pub measures: Option<Size>,
}

const EXAMPLE: &str = "as in `reamer 1/4in cut 0.2508in, pin 0.2502in`";

/// A line that begins with `reamer`, a size and `cut`.
pub(crate) fn read(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    let (rest, ()) = keyword("reamer")(input).ok()?;
    let start = rest.trim_start();
    let (after, size) = starts_size(start).then(|| expression(start, total))?.ok()?;
    let (after, _) = separator(after).ok()?;
    let (after, ()) = keyword("cut")(after).or_else(|_| keyword("cuts")(after)).ok()?;
    Some(cut(after, total, size))
}

fn cut(input: &str, total: usize, size: Size) -> Parsed<'_, Query> {
    let (input, _) = space(input)?;
    let (mut input, hole) = size_after(input, total, "what it cut is missing", EXAMPLE)?;
    let (mut pin, mut measures) = (None, None);
    loop {
        let (rest, _) = separator(input)?;
        if rest.is_empty() {
            let of = ReamerCutOf { size, hole, pin, measures };
            return Ok((rest, Query::ReamerCut(Box::new(of))));
        }
        let named = keyword("pin")(rest).or_else(|_| keyword("shaft")(rest));
        let (after, slot) = match (named, after_equals(rest)) {
            (Ok((after, ())), _) => (after, &mut pin),
            (Err(_), Some(after)) => (after, &mut measures),
            (Err(_), None) => {
                let typed = rest.find([' ', ',', ';']).unwrap_or(rest.len());
                let word = shortened(rest.get(..typed).unwrap_or(rest));
                return fatal(rest, typed, format!("`{word}` is not understood here"), EXAMPLE);
            }
        };
        let (start, _) = space(after)?;
        let (end, found) = size_after(start, total, "the size is missing", EXAMPLE)?;
        input = once(rest, end, slot, found)?.0;
    }
}
