//! Clauses after a feature or a pair: readings and where the work is now.

use fits_core::{size::Number, standards::iso286::Feature};
use nom::{
    Parser,
    branch::alt,
    combinator::{opt, value},
    sequence::preceded,
};

use crate::{
    query::{Expression, Mate, Part, Query, Size, Spot, Tolerance},
    questions::part::{self, reader::limits_after},
    words::{
        self,
        clause::reserved,
        fault::{Parsed, fatal, fatal_fix},
        keywords::{
            after_equals, keyword, material_name, near_miss, phrase, separator, space, span, spot,
            unknown,
        },
        sizes::{expression, size_after, starts_size},
        tolerances::class,
    },
};

pub(crate) fn clauses(mut input: &str, total: usize, mut part: Box<Part>) -> Parsed<'_, Query> {
    loop {
        let (rest, _) = separator(input)?;
        if rest.is_empty() {
            return Ok((rest, Query::Part(part)));
        }
        input = clause(rest, total, &mut part)?.0;
    }
}

fn clause<'a>(input: &'a str, total: usize, part: &mut Part) -> Parsed<'a, ()> {
    if let Some(after) = after_equals(input) {
        return part::measured::reading(after, total, part, input);
    }
    if let Ok((after, ())) = keyword("from")(input) {
        const ADVICE: &str = "as in `bore 20 H7 from 19.6`";
        return one_size(
            input,
            after,
            total,
            &mut part.from,
            "the size is missing after `from`",
            ADVICE,
        );
    }
    if let Ok((after, ())) = keyword("long")(input) {
        const ADVICE: &str = "as in `20 running, long 40`";
        return one_size(
            input,
            after,
            total,
            &mut part.long,
            "the length is missing after `long`",
            ADVICE,
        );
    }
    if let Ok((after, ())) = keyword("hub")(input) {
        return material(after, total, &mut part.hub, "hub");
    }
    if let Ok((after, ())) = keyword("thin")(input) {
        let (end, _) =
            opt(preceded(space, alt((keyword("tube"), keyword("wall"))))).parse(after)?;
        return once(input, end, &mut part.thin, Spot { value: (), at: span(total, input, end) });
    }
    if let Ok((end, ())) = keyword("turns")(input) {
        return once(input, end, &mut part.turns, Spot { value: (), at: span(total, input, end) });
    }
    if let Some(read) = part::measured::measuring(input, total, part) {
        return read;
    }
    if let Ok((after, ())) = keyword("warm")(input) {
        let (end, warm) = words::temperatures::temperatures(after, total)?;
        return once(input, end, &mut part.warm, Box::new(warm));
    }
    let feature =
        alt((value(Feature::Hole, keyword("hole")), value(Feature::Shaft, keyword("shaft"))));
    if let Ok((after, feature)) = spot(total, feature)(input) {
        return of_feature(input, after, total, part, feature);
    }
    if let (Tolerance::Class(_), Ok(Some(_))) = (&part.tolerance, class(input, total)) {
        return fatal_fix(
            input,
            0,
            "two classes with nothing between them",
            "a slash parts hole and shaft",
            Some((0, "/".into())),
        );
    }
    let (end, words) = phrase(input)?;
    let is_slip = reserved().any(|known| near_miss(&words, known));
    if words.is_empty() || is_slip || part.word.is_some() {
        return unknown(input);
    }
    once(input, end, &mut part.word, Spot { value: words, at: span(total, input, end) })
}

/// Fills a slot that may be filled once.
pub(crate) fn once<'a, T>(
    input: &'a str,
    end: &'a str,
    slot: &mut Option<T>,
    found: T,
) -> Parsed<'a, ()> {
    if slot.is_some() {
        return fatal(input, input.len() - end.len(), "this is said twice", "keep one of them");
    }
    *slot = Some(found);
    Ok((end, ()))
}

pub(crate) fn one_size<'a>(
    input: &'a str,
    after: &'a str,
    total: usize,
    slot: &mut Option<Size>,
    missing: &str,
    advice: &str,
) -> Parsed<'a, ()> {
    if slot.is_some() {
        return fatal(input, input.len() - after.len(), "this is said twice", "keep one of them");
    }
    let (after, _) = space(after)?;
    let (end, size) = size_after(after, total, missing, advice)?;
    once(input, end, slot, size)
}

fn material<'a>(
    after: &'a str,
    total: usize,
    slot: &mut Option<Spot<String>>,
    word: &str,
) -> Parsed<'a, ()> {
    let (start, _) = space(after)?;
    let (end, name) = material_name(start)?;
    if name.is_empty() {
        return fatal(
            start,
            0,
            format!("the material is missing after `{word}`"),
            "as in `20 press, hub aluminium`",
        );
    }
    once(after, end, slot, Spot { value: name, at: span(total, start, end) })
}

/// `hole` or `shaft` after a feature: a reading, the mate, or a material.
fn of_feature<'a>(
    input: &'a str,
    after: &'a str,
    total: usize,
    part: &mut Part,
    feature: Spot<Feature>,
) -> Parsed<'a, ()> {
    let (after, _) = space(after)?;
    if let Some(after) = after_equals(after) {
        let slot = match feature.value {
            Feature::Hole => &mut part.hole,
            Feature::Shaft => &mut part.shaft,
        };
        let advice = "as in `20 H7/g6, hole = 20.013`";
        return one_size(input, after, total, slot, "the reading is missing after =", advice);
    }
    let (end, mate) = if starts_size(after) {
        let (rest, size) = expression(after, total)?;
        let (end, tolerance) = limits_after(rest, total)?;
        (end, Mate { feature, size: Some(size), tolerance: tolerance.unwrap_or(Tolerance::Bare) })
    } else if let Some((end, class)) = class(after, total)? {
        (end, Mate { feature, size: None, tolerance: Tolerance::Class(class) })
    } else {
        let (end, name) = material_name(after)?;
        if name.is_empty() {
            let word = feature.value;
            return fatal(
                after,
                0,
                format!("nothing stands after `{word}`"),
                format!("a reading, its limits or its material, as in `20 H7/g6, {word} = 20.013`"),
            );
        }
        if feature.value == Feature::Shaft {
            // Of all that a word's class depends on, the shaft's material is none.
            let found = Spot { value: name, at: span(total, after, end) };
            return once(input, end, &mut part.shaft_material, found);
        }
        return once(input, end, &mut part.hub, Spot { value: name, at: span(total, after, end) });
    };
    once(input, end, &mut part.mate, Box::new(mate))
}

/// `20/20` as a reading is two whole numbers, not a fraction: no shop
/// fraction is improper or has a denominator that is not a power of two.
pub(crate) fn two_numbers(size: &Size) -> Option<(Size, Size)> {
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
        i64::try_from(number).ok().map(|number| Expression::Number(Number::whole(number), None))
    };
    let at = size.at.clone();
    Some((
        Spot { value: whole(numerator)?, at: at.clone() },
        Spot { value: whole(denominator)?, at },
    ))
}
