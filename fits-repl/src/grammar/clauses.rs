//! Clauses after a feature or a pair: readings and where the work is now.

use fits_core::{size::Number, standards::iso286::Feature};
use nom::{Parser, branch::alt, combinator::value};

use super::{
    fault::{Parsed, fatal},
    sizes::size_after,
    words::{keyword, separator, space, unknown},
};
use crate::query::{Expression, Operator, Part, Query, Size, Spot};

pub(super) fn clauses(mut input: &str, total: usize, mut part: Part) -> Parsed<'_, Query> {
    loop {
        let (rest, _) = separator(input)?;
        if rest.is_empty() {
            return Ok((rest, Query::Part(Box::new(part))));
        }
        let (slot, missing, advice, after) = if let Some(after) = rest.strip_prefix('=') {
            (
                &mut part.reading,
                "the reading is missing after =",
                "as in `20 H7 = 20.013`",
                after,
            )
        } else if let Ok((after, ())) = keyword("from")(rest) {
            (
                &mut part.from,
                "the size is missing after `from`",
                "as in `bore 20 H7 from 19.6`",
                after,
            )
        } else if let Ok((after, feature)) = alt((
            value(Feature::Hole, keyword("hole")),
            value(Feature::Shaft, keyword("shaft")),
        ))
        .parse(rest)
        {
            let (after, _) = space(after)?;
            let Some(after) = after.strip_prefix('=') else {
                return fatal(
                    after,
                    0,
                    format!("an = is missing after `{feature}`"),
                    format!("as in `20 H7/g6, {feature} = 20.013`"),
                );
            };
            let slot = match feature {
                Feature::Hole => &mut part.hole,
                Feature::Shaft => &mut part.shaft,
            };
            (
                slot,
                "the reading is missing after =",
                "as in `20 H7/g6, hole = 20.013`",
                after,
            )
        } else {
            return unknown(rest);
        };
        if slot.is_some() {
            return fatal(
                rest,
                rest.len() - after.len(),
                "this is said twice",
                "keep one of them",
            );
        }
        let (after, _) = space(after)?;
        let (mut after, size) = size_after(after, total, missing, advice)?;
        let is_plain_reading = rest.starts_with('=');
        let size = match size.value {
            // A slash with spaces about it parts two readings, too.
            Expression::Two(hole, Operator::Over, shaft)
                if is_plain_reading && !rest_of(rest).starts_with('(') =>
            {
                part.reading = Some(*hole);
                part.second_reading = Some(*shaft);
                input = after;
                continue;
            }
            value => Spot { value, at: size.at },
        };
        if let Some((hole, shaft)) = is_plain_reading.then(|| two_numbers(&size)).flatten() {
            part.reading = Some(hole);
            part.second_reading = Some(shaft);
            input = after;
            continue;
        }
        *slot = Some(size);
        if is_plain_reading {
            let (slash, _) = space(after)?;
            if let Some(second) = slash.strip_prefix('/') {
                let (second, _) = space(second)?;
                let (rest, shaft) = size_after(
                    second,
                    total,
                    "the shaft's reading is missing after the slash",
                    "as in `20 H7/g6 = 20.013/19.985`",
                )?;
                part.second_reading = Some(shaft);
                after = rest;
            }
        }
        input = after;
    }
}

/// What stands after the `=` of a clause.
pub(super) fn rest_of(clause: &str) -> &str {
    clause.trim_start_matches('=').trim_start()
}

/// `20/20` as a reading is two whole numbers, not a fraction: no shop
/// fraction is improper or has a denominator that is not a power of two.
pub(super) fn two_numbers(size: &Size) -> Option<(Size, Size)> {
    let Expression::Number(number, None) = size.value else {
        return None;
    };
    if !number.is_fraction() {
        return None;
    }
    let (numerator, denominator) = number.ratio();
    if numerator < denominator && denominator.count_ones() == 1 {
        return None;
    }
    let whole = |number: i128| {
        i64::try_from(number)
            .ok()
            .map(|number| Expression::Number(Number::whole(number), None))
    };
    let at = size.at.clone();
    Some((
        Spot {
            value: whole(numerator)?,
            at: at.clone(),
        },
        Spot {
            value: whole(denominator)?,
            at,
        },
    ))
}
