//! Clauses about how a part was measured: readings, instruments, temperatures;
//! and what a rehearsal takes.

use std::cell::Cell;

use fits_core::size::Number;

use crate::{
    query::{Dimension, Expression, Measuring, Operator, Part, Quantity, Size, Spot, Warmth},
    questions::part::clauses::{once, one_size, two_numbers},
    words::{
        clause::reserved,
        fault::{Parsed, fatal},
        keywords::{keyword, separator, space, span, words_until},
        quantities::quantity,
        sizes::{size_after, starts_size},
    },
};

const FAULT: &str = "as in `rehearse 20 H7 from 19.6 with bore gauge with fault backlash`";

/// One of these clauses, where the input begins with one.
pub(crate) fn measuring<'a>(
    input: &'a str,
    total: usize,
    part: &mut Part,
) -> Option<Parsed<'a, ()>> {
    // `at`, `overhang`, `room`, `runs`, `seed`, `with`, `within`.
    if !input.starts_with(['a', 'o', 'r', 's', 'w', 'A', 'O', 'R', 'S', 'W']) {
        return None;
    }
    if let Ok((after, ())) = keyword("with")(input) {
        if let Ok((start, _)) = space(after)
            && let Ok((name, ())) = keyword("fault")(start)
        {
            return Some(fault(name, total, of(part)));
        }
        return Some(instruments(after, total, of(part)));
    }
    if let Ok((after, ())) = keyword("at")(input) {
        return Some(warmth(input, after, total, &mut of(part).at, "at"));
    }
    if let Ok((after, ())) = keyword("room")(input) {
        return Some(warmth(input, after, total, &mut of(part).room, "room"));
    }
    if let Ok((after, ())) = keyword("within")(input) {
        const ADVICE: &str = "as in `20 H7 = 20.013 at 31C, hole aluminium, within 2um`";
        let missing = "the size is missing after `within`";
        return Some(one_size(input, after, total, &mut of(part).within, missing, ADVICE));
    }
    if let Ok((after, ())) = keyword("runs")(input) {
        return Some(count(input, after, total, &mut of(part).runs, "runs 1000"));
    }
    if let Ok((after, ())) = keyword("seed")(input) {
        return Some(count(input, after, total, &mut of(part).seed, "seed 7"));
    }
    if let Ok((after, ())) = keyword("overhang")(input) {
        return Some(ratio(input, after, total, &mut of(part).overhang));
    }
    None
}

/// What is said of measuring, made on the first such word.
pub(crate) fn of(part: &mut Part) -> &mut Measuring {
    part.measuring.get_or_insert_with(Box::default)
}

/// What goes wrong in a rehearsal: a name up to the next clause.
fn fault<'a>(input: &'a str, total: usize, slot: &mut Measuring) -> Parsed<'a, ()> {
    let (start, _) = space(input)?;
    // `short turn` holds a keyword of its own.
    let (rest, name) = words_until(start, |typed| {
        !typed.eq_ignore_ascii_case("turn")
            && reserved().any(|known| typed.eq_ignore_ascii_case(known))
    })?;
    if name.is_empty() {
        return fatal(start, 0, "the fault is missing after `with fault`", FAULT);
    }
    slot.fault = Some(Spot { value: name, at: span(total, start, rest) });
    Ok((rest, ()))
}

/// Names up to the next clause; `and` parts two.
pub(crate) fn instruments<'a>(
    input: &'a str,
    total: usize,
    slot: &mut Measuring,
) -> Parsed<'a, ()> {
    let mut input = input;
    loop {
        let (start, _) = space(input)?;
        // `bore gauge` and `small hole gauge` hold keywords of their own.
        // `dial indicator` opens with one.
        let small = Cell::new(false);
        let is_first = Cell::new(true);
        let (rest, name) = words_until(start, |typed| {
            let is = |word: &str| typed.eq_ignore_ascii_case(word);
            let own =
                is("bore") || is("hole") && small.get() || is("dial") && is_first.replace(false);
            is_first.set(false);
            small.set(is("small"));
            !own && (is("and") || is("sure") || reserved().any(is))
        })?;
        if name.is_empty() {
            return fatal(
                start,
                0,
                "the instrument is missing after `with`",
                "as in `20 H7 = 20.013 with bore gauge`",
            );
        }
        slot.instruments.push(Spot { value: name, at: span(total, start, rest) });
        let (next, _) = space(rest)?;
        match keyword("and")(next) {
            Ok((after, ())) => input = after,
            Err(_) => return Ok((rest, ())),
        }
    }
}

/// A temperature, and `±` how well it is known.
pub(crate) fn warmth<'a>(
    input: &'a str,
    after: &'a str,
    total: usize,
    slot: &mut Option<Warmth>,
    word: &str,
) -> Parsed<'a, ()> {
    const ADVICE: &str = "as in `20 H7 = 20.013 at 31C, hole aluminium`";
    let (start, _) = space(after)?;
    let missing = format!("the temperature is missing after `{word}`");
    let (end, mut temperature) = quantity(start, total, Dimension::Temperature, &missing, ADVICE)?;
    let (sign, _) = space(end)?;
    let after_sign = sign
        .strip_prefix('\u{b1}')
        .or_else(|| sign.strip_prefix("+/-"))
        .or_else(|| sign.strip_prefix("+-"));
    let Some(after_sign) = after_sign else {
        return once(input, end, slot, Warmth { temperature, either: None });
    };
    let (start, _) = space(after_sign)?;
    let missing = "the temperature's uncertainty is missing after the sign";
    let (end, either) = quantity(start, total, Dimension::Temperature, missing, ADVICE)?;
    if either.value.number < 0.0 {
        return fatal(start, start.len() - end.len(), "an uncertainty has no sign", ADVICE);
    }
    // `31±1C`: the unit stands once.
    let unit = temperature.value.unit.or(either.value.unit);
    temperature.value.unit = unit;
    let either = Spot {
        value: Quantity { unit: either.value.unit.or(unit), ..either.value },
        at: either.at,
    };
    once(input, end, slot, Warmth { temperature, either: Some(either) })
}

fn count<'a>(
    input: &'a str,
    after: &'a str,
    total: usize,
    slot: &mut Option<Spot<u64>>,
    example: &str,
) -> Parsed<'a, ()> {
    let (start, _) = space(after)?;
    let digits = start.bytes().take_while(u8::is_ascii_digit).count();
    let (typed, end) = start.split_at(digits);
    let Ok(value) = typed.parse::<u64>() else {
        let message = if typed.is_empty() {
            "a whole number is missing here".to_owned()
        } else {
            format!("{typed} is too large a number")
        };
        return fatal(
            start,
            digits,
            message,
            format!("as in `rehearse 20 H7 from 19.6 with bore gauge, {example}`"),
        );
    };
    once(input, end, slot, Spot { value, at: span(total, start, end) })
}

fn ratio<'a>(
    input: &'a str,
    after: &'a str,
    total: usize,
    slot: &mut Option<Spot<f64>>,
) -> Parsed<'a, ()> {
    let (start, _) = space(after)?;
    let Ok(Some((number, taken))) = Number::scan(start) else {
        return fatal(
            start,
            0,
            "a number is missing after `overhang`: free length over thickness",
            "as in `rehearse 20 H7 from 19.6 with bore gauge, overhang 5`",
        );
    };
    let (top, bottom) = number.ratio();
    #[allow(clippy::cast_precision_loss, reason = "a ratio of shop lengths")]
    let value = top as f64 / bottom as f64;
    let end = &start[taken..];
    once(input, end, slot, Spot { value, at: span(total, start, end) })
}

/// `= SIZE`, `= SIZE SIZE …` at one place, `= SIZE/SIZE` at two or of a pair.
pub(crate) fn reading<'a>(
    after: &'a str,
    total: usize,
    part: &mut Part,
    input: &'a str,
) -> Parsed<'a, ()> {
    if part.reading.is_some() {
        return fatal(input, 1, "this is said twice", "keep one of them");
    }
    let mut places: Vec<Vec<Size>> = vec![Vec::new()];
    let (mut rest, _) = space(after)?;
    let mut missing = "the reading is missing after =";
    loop {
        let (end, size) = size_after(
            rest,
            total,
            missing,
            if missing.ends_with('=') {
                "as in `20 H7 = 20.013`"
            } else {
                "as in `20 H7/g6 = 20.013/19.985`"
            },
        )?;
        push(&mut places, rest, size);
        rest = end;
        let (slash, _) = space(rest)?;
        if let Some(next) = slash.strip_prefix('/') {
            rest = space(next)?.0;
            places.push(Vec::new());
            missing = "the shaft's reading is missing after the slash";
            continue;
        }
        let (next, _) = separator(rest)?;
        // A number after a comma or a space is another reading of the place.
        if next.len() == rest.len() || !starts_size(next) {
            break;
        }
        rest = next;
    }
    let mut firsts = places.iter().map(|place| place.first().cloned());
    part.reading = firsts.next().flatten();
    part.second_reading = firsts.next().flatten();
    let plain = places.len() <= 2 && places.iter().all(|place| place.len() == 1);
    if !plain {
        of(part).places = places;
    }
    Ok((rest, ()))
}

/// Puts a reading to its place: a slash with spaces about it parts two, too,
/// and so does one between whole numbers.
fn push(places: &mut Vec<Vec<Size>>, start: &str, size: Size) {
    let (first, second) = match size.value {
        Expression::Two(hole, Operator::Over, shaft) if !start.starts_with('(') => {
            (*hole, Some(*shaft))
        }
        value => {
            let size = Spot { value, at: size.at };
            two_numbers(&size).map_or((size, None), |(hole, shaft)| (hole, Some(shaft)))
        }
    };
    if let Some(place) = places.last_mut() {
        place.push(first);
    }
    places.extend(second.map(|second| vec![second]));
}
