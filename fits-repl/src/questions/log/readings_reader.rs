//! What was read for an entry of the log: one place or several, named or not,
//! several readings at each, how warm the part was, and what read it.

use crate::{
    query::{Expression, Measuring, Operator, PlaceRead, Readings, Size, Spot},
    questions::part::measured::{instruments, warmth},
    words::{
        fault::{Parsed, fatal},
        keywords::{keyword, name_with_figures, separator, space, span, word},
        sizes::{size_after, starts_size},
    },
};

/// Names of places: along the part, and about it.
pub(crate) const ALONG: [&str; 10] = [
    "front",
    "back",
    "mouth",
    "bottom",
    "middle",
    "top",
    "left",
    "right",
    "headstock",
    "tailstock",
];
pub(crate) const ABOUT: [&str; 4] = ["across", "along", "upright", "level"];

/// A place's name, where one stands.
fn place(input: &str, total: usize) -> Option<(&str, Spot<String>)> {
    let (rest, typed) = word(input).ok()?;
    let typed = typed.to_ascii_lowercase();
    let is_known = ALONG.iter().chain(&ABOUT).any(|known| **known == typed);
    is_known.then(|| (rest, Spot { value: typed, at: span(total, input, rest) }))
}

/// Does what was read begin here?
pub(crate) fn starts(input: &str) -> bool {
    starts_size(input) || place(input, input.len()).is_some()
}

/// The readings, `at` a temperature and `with` an instrument.
pub(crate) fn readings<'a>(
    input: &'a str,
    total: usize,
    missing: &str,
    advice: &str,
) -> Parsed<'a, Readings> {
    let (mut rest, places) = places(input, total, missing, advice)?;
    let mut found = Readings { places, at: None, material: None, with: None };
    loop {
        let (after, _) = separator(rest)?;
        if let Ok((warm, ())) = keyword("at")(after) {
            rest = temperature(input, after, warm, total, &mut found)?.0;
        } else if let Ok((name, ())) = keyword("with")(after) {
            rest = instrument(after, name, total, &mut found)?.0;
        } else {
            return Ok((rest, found));
        }
    }
}

/// What it was read with: one instrument.
fn instrument<'a>(
    clause: &'a str,
    input: &'a str,
    total: usize,
    found: &mut Readings,
) -> Parsed<'a, ()> {
    const ONE: &str = "as in `read 19.95 with bore gauge`";
    let mut named = Measuring::default();
    let (rest, ()) = instruments(input, total, &mut named)?;
    let length = clause.len() - rest.len();
    let mut names = named.instruments.into_iter();
    let first = names.next();
    if found.with.is_some() || names.next().is_some() {
        return fatal(clause, length, "one entry is read with one instrument", ONE);
    }
    found.with = first;
    Ok((rest, ()))
}

/// How warm the part was, and what it is made of.
fn temperature<'a>(
    input: &'a str,
    clause: &'a str,
    warm: &'a str,
    total: usize,
    found: &mut Readings,
) -> Parsed<'a, ()> {
    let (rest, ()) = warmth(clause, warm, total, &mut found.at, "at")?;
    if let Some(either) = found.at.as_ref().and_then(|at| at.either.as_ref()) {
        let length = either.at.len();
        let at = &input[input.len() - (total - either.at.start)..];
        return fatal(
            at,
            length,
            "a log does not weigh how well a temperature is known",
            "leave that out, or judge the reading apart, as \
             `20 H7 = 20.013 with bore gauge at 31±1C, hole steel`",
        );
    }
    let (mut start, _) = separator(rest)?;
    for before in ["of", "hole", "shaft"] {
        if let Ok((after, ())) = keyword(before)(start) {
            start = space(after)?.0;
        }
    }
    let ends = |typed: &str| ["sure", "with"].iter().any(|word| typed.eq_ignore_ascii_case(word));
    let (end, name) = name_with_figures(start, ends)?;
    if name.is_empty() {
        return Ok((rest, ()));
    }
    found.material = Some(Spot { value: name, at: span(total, start, end) });
    Ok((end, ()))
}

/// `20.001`, `20.001 20.002`, `20.001 / 20.011`, `20.001 front 20.011 back`,
/// `front 20.001 back 20.011`.
fn places<'a>(
    input: &'a str,
    total: usize,
    missing: &str,
    advice: &str,
) -> Parsed<'a, Vec<PlaceRead>> {
    const NAMED: &str = "as in `cut 0.15 = 20.001 front 20.011 back`";
    let (mut rest, _) = space(input)?;
    let names_first = place(rest, total).is_some();
    let mut places: Vec<PlaceRead> = Vec::new();
    let mut is_new = true;
    let mut end = rest;
    loop {
        let before = places.last();
        if let Some((after, name)) = place(rest, total) {
            let length = rest.len() - after.len();
            if places.iter().any(|it| it.name.as_ref().is_some_and(|it| it.value == name.value)) {
                return fatal(rest, length, "this place is named twice", NAMED);
            }
            if names_first {
                let waits = before.is_some_and(|place| place.sizes.is_empty());
                if waits {
                    return fatal(
                        rest,
                        length,
                        "the reading of the place before is missing",
                        NAMED,
                    );
                }
                places.push(PlaceRead { name: Some(name), sizes: Vec::new() });
                is_new = false;
            } else if let Some(last) = places.last_mut().filter(|_| !is_new) {
                last.name = Some(name);
                is_new = true;
            } else {
                return fatal(rest, length, "no reading stands before this place", NAMED);
            }
            rest = after;
        } else if starts_size(rest) {
            let (after, size) = size_after(rest, total, missing, advice)?;
            // A slash with spaces about it reads as a division.
            let mut sizes = Vec::new();
            split(size, rest.starts_with('('), &mut sizes);
            for (count, size) in sizes.into_iter().enumerate() {
                match places.last_mut() {
                    Some(last) if !is_new && count == 0 => last.sizes.push(size),
                    _ => places.push(PlaceRead { name: None, sizes: vec![size] }),
                }
                is_new = false;
            }
            rest = after;
        } else if before.is_none_or(|place| place.sizes.is_empty()) || rest.len() == end.len() {
            break;
        }
        end = rest;
        let (next, _) = separator(rest)?;
        if let Some(after) = next.strip_prefix('/') {
            (rest, is_new) = (space(after)?.0, true);
            if !starts(rest) {
                return fatal(rest, 0, "the second place's reading is missing after /", advice);
            }
        } else if next.len() < rest.len() && starts(next) {
            rest = next;
        } else {
            break;
        }
    }
    if places.last().is_none_or(|place| place.sizes.is_empty()) {
        return fatal(end, 0, missing, advice);
    }
    let is_named = |place: &PlaceRead| place.name.is_some();
    if places.iter().any(is_named)
        && let Some(unnamed) = places.iter().find(|place| !is_named(place))
        && let Some(size) = unnamed.sizes.first()
    {
        let at = &input[input.len() - (total - size.at.start)..];
        return fatal(at, size.at.len(), "which place is this? the others are named", NAMED);
    }
    Ok((end, places))
}

fn split(size: Size, in_brackets: bool, into: &mut Vec<Size>) {
    match size.value {
        Expression::Two(one, Operator::Over, other) if !in_brackets => {
            split(*one, false, into);
            split(*other, false, into);
        }
        value => into.push(Spot { value, at: size.at }),
    }
}
