//! The parts of a joint as they are typed: material, sizes, figures of its own.

use super::reader::{CLAUSES, EXAMPLE, Now};
use super::wish_reader::WISHES;
use crate::{
    query::{Amount, Body, Dimension, Ends, JointText, SleeveText, Spot},
    questions::part::clauses::{once, one_size},
    words::{
        fault::{Parsed, fatal},
        keywords::{space, span},
        quantities::quantity,
        sizes::{number_fault, size_after},
    },
};
use fits_core::size::Number;

/// A part's material after its name.
pub(super) fn part<'a>(
    start: &'a str,
    total: usize,
    joint: &mut JointText,
    now: Now,
    at: std::ops::Range<usize>,
) -> Parsed<'a, ()> {
    let slot = match now {
        Now::Hub => &mut joint.hub.material,
        Now::Shaft => &mut joint.shaft.material,
        Now::Sleeve => {
            let sleeve =
                SleeveText { body: Body::default(), at, classes: None, interference: None };
            joint.sleeves.push(sleeve);
            match joint.sleeves.last_mut() {
                Some(sleeve) => &mut sleeve.body.material,
                None => return Ok((start, ())),
            }
        }
    };
    material(start, total, slot)
}

/// A size or a figure of one part.
pub(super) fn of_body<'a>(
    input: &'a str,
    after: &'a str,
    total: usize,
    body: &mut Body,
    typed: &str,
) -> Parsed<'a, bool> {
    let (start, _) = space(after)?;
    let done = |(end, ()): (&'a str, ())| (end, true);
    let figure = |dimension, missing: &str, slot: &mut Option<Amount>| {
        const FIGURES: &str =
            "as in `assemble 30 interference 0.035, hub e 110GPa nu 0.28 od 62, shaft steel`";
        let (end, found) = quantity(start, total, dimension, missing, FIGURES)?;
        once(input, end, slot, found).map(done)
    };
    match typed {
        "od" => {
            let missing = "the outside diameter is missing after `od`";
            one_size(input, after, total, &mut body.od, missing, EXAMPLE).map(done)
        }
        "id" => {
            let missing = "the bore is missing after `id`";
            one_size(input, after, total, &mut body.id, missing, EXAMPLE).map(done)
        }
        "wall" => {
            let missing = "the wall is missing after `wall`";
            one_size(input, after, total, &mut body.wall, missing, EXAMPLE).map(done)
        }
        "e" => figure(Dimension::Pressure, "the modulus is missing after `e`", &mut body.modulus),
        "yield" => {
            figure(Dimension::Pressure, "the strength is missing after `yield`", &mut body.strength)
        }
        "alpha" => figure(
            Dimension::Expansion,
            "the expansion is missing after `alpha`",
            &mut body.expansion,
        ),
        "nu" => {
            let (end, found) = plain(start, total, "Poisson's ratio is missing after `nu`")?;
            once(input, end, &mut body.poisson, found).map(done)
        }
        _ => Ok((input, false)),
    }
}

/// A plain number.
fn plain<'a>(input: &'a str, total: usize, missing: &str) -> Parsed<'a, Spot<f64>> {
    match Number::scan(input) {
        Ok(Some((number, taken))) => {
            let (top, bottom) = number.ratio();
            #[allow(clippy::cast_precision_loss, reason = "a measured figure: 53 bits are plenty")]
            let number = top as f64 / bottom as f64;
            let end = input.get(taken..).unwrap_or_default();
            Ok((end, Spot { value: number, at: span(total, input, end) }))
        }
        Ok(None) => fatal(input, 0, missing, EXAMPLE),
        Err(error) => number_fault(input, &error),
    }
}

pub(super) fn friction(input: &str, total: usize) -> Parsed<'_, Spot<(f64, f64)>> {
    let missing = "the coefficient is missing after `friction`";
    let (rest, low) = plain(input, total, missing)?;
    let Some(after) = rest.strip_prefix("..") else {
        return Ok((rest, Spot { value: (low.value, low.value), at: low.at }));
    };
    let (end, high) = plain(after, total, missing)?;
    Ok((end, Spot { value: (low.value, high.value), at: span(total, input, end) }))
}

/// A size, or two with a mark between them.
pub(super) fn ends<'a>(
    input: &'a str,
    total: usize,
    mark: &str,
    missing: &str,
) -> Parsed<'a, Ends> {
    let (rest, from) = size_after(input, total, missing, EXAMPLE)?;
    let (after, _) = space(rest)?;
    let Some(after) = after.strip_prefix(mark) else {
        return Ok((rest, Ends { from, to: None }));
    };
    let (after, _) = space(after)?;
    let (end, to) = size_after(after, total, missing, EXAMPLE)?;
    Ok((end, Ends { from, to: Some(to) }))
}

/// Words and numbers up to a comma or a word that ends them: `aluminium
/// 6061-T6`.
pub(super) fn name<'a>(input: &'a str, ends: &[&[&str]]) -> Parsed<'a, String> {
    let mut found = String::new();
    let mut rest = input;
    loop {
        let (next, _) = space(rest)?;
        let end = next
            .find(|c: char| !(c.is_alphanumeric() || matches!(c, '-' | '.' | '/' | '\'')))
            .unwrap_or(next.len());
        let (typed, after) = next.split_at(end);
        let small = typed.to_ascii_lowercase();
        if typed.is_empty() || ends.iter().any(|list| list.contains(&small.as_str())) {
            return Ok((rest, found));
        }
        if !found.is_empty() {
            found.push(' ');
        }
        found.push_str(typed);
        rest = after;
    }
}

/// A material's name; none where figures follow at once.
fn material<'a>(input: &'a str, total: usize, slot: &mut Option<Spot<String>>) -> Parsed<'a, ()> {
    let (end, name) = name(input, &[CLAUSES, WISHES])?;
    if name.is_empty() {
        return Ok((input, ()));
    }
    once(input, end, slot, Spot { value: name, at: span(total, input, end) })
}
