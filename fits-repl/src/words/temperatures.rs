//! `warm 60C`, `warm -20C..60C`: where a pair works.

use crate::{
    query::{Dimension, Spot, Temperatures},
    words::{
        fault::Parsed,
        keywords::{space, span},
        quantities::quantity,
    },
};

pub(crate) fn temperatures(after: &str, total: usize) -> Parsed<'_, Temperatures> {
    const ADVICE: &str = "as in `20 H7/g6 warm -20C..60C, hole aluminium, shaft steel`";
    let (start, _) = space(after)?;
    let one = |input, missing| quantity(input, total, Dimension::Temperature, missing, ADVICE);
    let (rest, first) = one(start, "the temperature is missing after `warm`")?;
    let (next, _) = space(rest)?;
    let second = next.strip_prefix("..").or_else(|| next.strip_prefix('\u{2026}'));
    let Some(second) = second else {
        return Ok((rest, Spot { value: (first, None), at: span(total, start, rest) }));
    };
    let (second, _) = space(second)?;
    let (rest, second) = one(second, "the second temperature is missing after `..`")?;
    Ok((rest, Spot { value: (first, Some(second)), at: span(total, start, rest) }))
}
