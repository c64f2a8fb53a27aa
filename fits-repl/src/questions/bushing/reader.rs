//! Bushings: `bushing 20 od 26 long 20, hub steel od 60, bronze, running
//! 0.03..0.06`.

use fits_core::size::Number;
use nom::Err;

use crate::{
    query::{BushingText, Query, Size, Spot, Tolerance},
    questions::part::{clauses::once, reader::limits_after},
    words::{
        self,
        fault::{Fault, Parsed, fatal, fatal_fix},
        keywords::{
            keyword, name_with_figures, near_miss, separator, shortened, space, span, words_until,
        },
        sizes::{expression, number_fault, size_after, starts_size},
        tolerances::class,
    },
};

const EXAMPLE: &str = "as in `bushing 20 od 26 long 20, hub steel od 60, bronze`";

/// Words that begin a clause, and so end a material's name.
const CLAUSES: [&str; 8] = ["od", "long", "hub", "housing", "shaft", "running", "rpm", "warm"];

/// Words that say what the shaft does; `fast spindle` is two.
const SERVICES: [&str; 7] = ["for", "general", "rough", "motor", "spindle", "fast", "pivot"];

fn ends(word: &str) -> bool {
    CLAUSES.iter().chain(&SERVICES).any(|known| known.eq_ignore_ascii_case(word))
}

fn ends_a_service(word: &str) -> bool {
    CLAUSES.iter().any(|known| known.eq_ignore_ascii_case(word))
}

/// Is it the whole joint that is asked about, not a bought-in part alone?
pub(crate) fn is_asked(rest: &str) -> bool {
    if after_in_place(rest).is_some() {
        return true;
    }
    let mut words = rest.split(|c: char| c.is_whitespace() || c == ',');
    starts_size(rest.trim_start())
        && words.any(|word| {
            ["od", "lined", "housing"].iter().any(|known| known.eq_ignore_ascii_case(word))
        })
}

/// What stands after `in place`.
fn after_in_place(input: &str) -> Option<&str> {
    let (rest, ()) = keyword("in")(input.trim_start()).ok()?;
    keyword("place")(rest.trim_start()).ok().map(|(rest, ())| rest)
}

/// What stands after `bushing`.
pub(crate) fn bushing(input: &str, total: usize) -> Parsed<'_, Query> {
    let in_place = after_in_place(input);
    let (input, _) = space(in_place.unwrap_or(input))?;
    let (rest, bore) = with_limits(input, total, "the bore is missing")?;
    let mut text = BushingText {
        bore,
        in_place: in_place.is_some(),
        od: None,
        long: None,
        material: None,
        hub: None,
        hub_od: None,
        housing: None,
        shaft: None,
        shaft_material: None,
        running: None,
        service: None,
        rpm: None,
        warm: None,
    };
    let mut input = rest;
    loop {
        let (rest, _) = separator(input)?;
        if rest.is_empty() {
            return Ok((rest, Query::Bushing(Box::new(text))));
        }
        input = clause(rest, total, &mut text)?;
    }
}

/// A size and its limits, if any are given.
fn with_limits<'a>(input: &'a str, total: usize, missing: &str) -> Parsed<'a, (Size, Tolerance)> {
    if !starts_size(input) {
        return fatal(input, 0, missing, EXAMPLE);
    }
    let (rest, size) = expression(input, total)?;
    // `od`, `long` and the like are not classes.
    let (after, _) = separator(rest)?;
    let word = after.split(|c: char| !c.is_ascii_alphanumeric()).next().unwrap_or_default();
    let is_class = word.ends_with(|c: char| c.is_ascii_digit()) && word.len() <= 4;
    if !word.is_empty() && !is_class {
        return Ok((rest, (size, Tolerance::Bare)));
    }
    let (end, tolerance) = limits_after(rest, total)?;
    Ok(match tolerance {
        Some(tolerance) => (end, (size, tolerance)),
        None => (rest, (size, Tolerance::Bare)),
    })
}

fn clause<'a>(input: &'a str, total: usize, text: &mut BushingText) -> Result<&'a str, Err<Fault>> {
    if let Ok((after, ())) = keyword("od")(input) {
        let (after, _) = space(after)?;
        let missing = "the outside diameter is missing after `od`";
        // After `hub` it is the housing's.
        if text.hub.is_some() && text.hub_od.is_none() && text.od.is_some() {
            let (end, size) = size_after(after, total, missing, EXAMPLE)?;
            text.hub_od = Some(size);
            return Ok(end);
        }
        let (end, od) = with_limits(after, total, missing)?;
        return Ok(once(input, end, &mut text.od, od)?.0);
    }
    if let Ok((after, ())) = keyword("long")(input) {
        let (after, _) = space(after)?;
        let (end, size) = size_after(after, total, "the length is missing after `long`", EXAMPLE)?;
        return Ok(once(input, end, &mut text.long, size)?.0);
    }
    if let Ok((after, ())) = keyword("hub")(input) {
        let (end, found) = name(after, total, "the material is missing after `hub`")?;
        return Ok(once(input, end, &mut text.hub, found)?.0);
    }
    if let Ok((after, ())) = keyword("housing")(input) {
        let (start, _) = space(after)?;
        let (end, found) = feature(start, total)?;
        let Some(found) = found else {
            let found = name(after, total, "nothing stands after `housing`")?;
            return Ok(once(input, found.0, &mut text.hub, found.1)?.0);
        };
        return Ok(once(input, end, &mut text.housing, found)?.0);
    }
    if let Ok((after, ())) = keyword("shaft")(input) {
        let (start, _) = space(after)?;
        let start = start.strip_prefix('=').map_or(start, str::trim_start);
        let (end, found) = feature(start, total)?;
        let Some(found) = found else {
            let found = name(after, total, "nothing stands after `shaft`")?;
            return Ok(once(input, found.0, &mut text.shaft_material, found.1)?.0);
        };
        return Ok(once(input, end, &mut text.shaft, found)?.0);
    }
    if let Ok((after, ())) = keyword("running")(input) {
        return running(input, after, total, text);
    }
    if let Ok((after, ())) = keyword("rpm")(input) {
        let (start, _) = space(after)?;
        let advice = "as in `bushing 20 od 26 long 20, hub steel od 60, bronze, rpm 300`";
        let (number, taken) = match Number::scan(start) {
            Ok(Some(found)) => found,
            Ok(None) => {
                return fatal(start, 0, "the turns a minute are missing after `rpm`", advice);
            }
            Err(error) => return number_fault(start, &error),
        };
        let (top, bottom) = number.ratio();
        #[allow(clippy::cast_precision_loss, reason = "a speed: 53 bits are plenty")]
        let value = top as f64 / bottom as f64;
        let end = start.get(taken..).unwrap_or_default();
        let found = Spot { value, at: span(total, start, end) };
        return Ok(once(input, end, &mut text.rpm, found)?.0);
    }
    if let Ok((after, ())) = keyword("warm")(input) {
        let (end, found) = words::temperatures::temperatures(after, total)?;
        return Ok(once(input, end, &mut text.warm, found)?.0);
    }
    let first = input.split([' ', ',']).next().unwrap_or(input);
    if SERVICES.iter().any(|known| known.eq_ignore_ascii_case(first)) {
        return running(input, input, total, text);
    }
    let (end, value) = name_with_figures(input, ends)?;
    if !value.is_empty() && text.material.is_some() {
        // The material is said: this is a slip of another word, or none.
        let small = first.to_ascii_lowercase();
        let message = format!("`{}` is not understood here", shortened(first));
        let mut words = SERVICES.iter().chain(&CLAUSES);
        return match words.find(|known| near_miss(&small, known)) {
            Some(known) => {
                let fix = Some((first.len(), (*known).to_owned()));
                fatal_fix(input, first.len(), message, "nearest", fix)
            }
            None => fatal(
                input,
                first.len(),
                message,
                "one material is named; a service is general, rough, motor, spindle, fast spindle or pivot",
            ),
        };
    }
    if value.is_empty() {
        let typed = input.split([' ', ',']).next().unwrap_or(input);
        let message = format!("`{}` is not understood here", shortened(typed));
        return fatal(input, typed.len(), message, EXAMPLE);
    }
    let found = Spot { value, at: span(total, input, end) };
    Ok(once(input, end, &mut text.material, found)?.0)
}

/// A class, or a size with or without limits; `None` where a word stands.
fn feature(start: &str, total: usize) -> Parsed<'_, Option<(Option<Size>, Tolerance)>> {
    if starts_size(start) {
        let (end, (size, tolerance)) = with_limits(start, total, "")?;
        return Ok((end, Some((Some(size), tolerance))));
    }
    let letters = start.trim_start_matches(|c: char| c.is_ascii_alphabetic());
    if start.len() - letters.len() <= 3
        && letters.starts_with(|c: char| c.is_ascii_digit())
        && let Some((end, class)) = class(start, total)?
    {
        return Ok((end, Some((None, Tolerance::Class(class)))));
    }
    Ok((start, None))
}

fn name<'a>(after: &'a str, total: usize, missing: &str) -> Parsed<'a, Spot<String>> {
    let (start, _) = space(after)?;
    let (end, value) = name_with_figures(start, ends)?;
    if value.is_empty() {
        return fatal(start, 0, missing, EXAMPLE);
    }
    Ok((end, Spot { value, at: span(total, start, end) }))
}

/// `running 0.03..0.06` or `running rough`.
fn running<'a>(
    input: &'a str,
    after: &'a str,
    total: usize,
    text: &mut BushingText,
) -> Result<&'a str, Err<Fault>> {
    let (start, _) = space(after)?;
    let advice = "as in `bushing 20 od 26 long 20, hub steel od 60, bronze, running 0.03..0.06`";
    if !starts_size(start) {
        let start = keyword("for")(start).map_or(start, |(after, ())| after.trim_start());
        let (end, value) = words_until(start, ends_a_service)?;
        if value.is_empty() {
            return fatal(
                start,
                0,
                "the clearance or the service is missing after `running`",
                advice,
            );
        }
        let found = Spot { value, at: span(total, start, end) };
        return Ok(once(input, end, &mut text.service, found)?.0);
    }
    let (rest, from) = expression(start, total)?;
    let (rest, _) = space(rest)?;
    let Some(second) = rest.strip_prefix("..").or_else(|| rest.strip_prefix('\u{2026}')) else {
        return fatal(rest, 0, "the greatest clearance is missing", advice);
    };
    let (second, _) = space(second)?;
    let (end, to) = size_after(second, total, "the greatest clearance is missing", advice)?;
    Ok(once(input, end, &mut text.running, (from, to))?.0)
}
