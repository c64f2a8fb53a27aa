//! The tailstock, read.

use crate::{
    query::{Part, Query, Size, Spot},
    questions::rehearse::reader::part,
    words::{
        fault::{Parsed, fatal},
        keywords::{keyword, separator, space, span, unknown},
        sizes::size_after,
    },
};

pub(crate) const COLLARS: &str =
    "two test diameters and their distance, as `align 19.98 20.01 over 150`";

/// After `align`.
pub(crate) fn align(input: &str, total: usize) -> Parsed<'_, Query> {
    let (input, _) = space(input)?;
    let (rest, collars) = if let Ok((after, ())) = keyword("taper")(input) {
        const RATIO: &str = "as in `align taper 1:50 over 200`";
        let (start, _) = space(after)?;
        let (rest, first) = size_after(start, total, "the taper is missing after `taper`", RATIO)?;
        let (rest, _) = space(rest)?;
        let colon =
            rest.strip_prefix(':').or_else(|| keyword("per")(rest).ok().map(|(rest, ())| rest));
        let Some(second) = colon else {
            return fatal(rest, 0, "a taper is one length over another", RATIO);
        };
        let (second, _) = space(second)?;
        let (rest, second) = size_after(second, total, "the taper's length is missing", RATIO)?;
        let at = span(total, start, rest);
        (rest, Collars::Ratio(Spot { value: (first, second), at }))
    } else {
        let (rest, first) = size_after(input, total, "nothing was measured", COLLARS)?;
        let (second, _) = separator(rest)?;
        let (rest, second) =
            size_after(second, total, "the second test diameter is missing", COLLARS)?;
        (rest, Collars::Two(first, second))
    };
    let (rest, over) = length(rest, total, "over", COLLARS)?;
    let Some(over) = over else {
        let (rest, _) = separator(rest)?;
        return fatal(rest, 0, "the distance is missing: `over` and a length", COLLARS);
    };
    let (rest, between) =
        length(rest, total, "between", "as in `align 19.98 20.01 over 150 between 400`")?;
    let (rest, _) = separator(rest)?;
    if rest.is_empty() {
        return Ok((rest, Query::Align(Box::new(Align { collars, over, between, part: None }))));
    }
    match part(rest, total)? {
        (end, Query::Part(part)) => {
            Ok((end, Query::Align(Box::new(Align { collars, over, between, part: Some(part) }))))
        }
        _ => unknown(rest),
    }
}

/// A word and the length after it, if the word stands there.
pub(crate) fn length<'a>(
    input: &'a str,
    total: usize,
    word: &'static str,
    advice: &str,
) -> Parsed<'a, Option<Size>> {
    let (start, _) = separator(input)?;
    let Ok((after, ())) = keyword(word)(start) else { return Ok((input, None)) };
    let (after, _) = space(after)?;
    let (rest, size) =
        size_after(after, total, &format!("the length is missing after `{word}`"), advice)?;
    Ok((rest, Some(size)))
}

/// `align …`.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Align {
    /// What is known of the taper.
    pub collars: Collars,
    /// `over SIZE`: between the collars; for a taper, between centres.
    pub over: Size,
    /// `between SIZE`: between centres.
    pub between: Option<Size>,
    /// What is to be turned, with `long SIZE`.
    pub part: Option<Box<Part>>,
}

/// `align A B over L`: what the tailstock is judged by.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub enum Collars {
    /// Two test diameters, by the headstock and by the tailstock.
    Two(Size, Size),
    /// `taper 1:50`.
    Ratio(Spot<(Size, Size)>),
}

impl Collars {
    /// Both sizes, in the order typed.
    pub const fn sizes(&self) -> (&Size, &Size) {
        match self {
            Self::Two(first, second) | Self::Ratio(Spot { value: (first, second), .. }) => {
                (first, second)
            }
        }
    }
}

/// A line that begins with `align`.
pub(crate) fn read(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    keyword("align")(input).ok().map(|(rest, ())| align(rest, total))
}
