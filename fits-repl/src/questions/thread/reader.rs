//! Threads: the designation as the core reads it, and what is asked of it.

use fits_core::{
    Error,
    size::{Number, Unit},
    standards::thread::{self, Nominal},
};
use nom::{
    Parser,
    branch::alt,
    combinator::{opt, value},
    sequence::preceded,
};

use crate::{
    query::{Driven, Expression, Feed, Passes, Place, Query, Size, Spot, ThreadAsk, ThreadQuery},
    questions::part::clauses::once,
    words::{
        fault::{Parsed, fatal},
        keywords::{
            keyword, near_miss, separator, shortened, space, span, spot, word, words_until,
        },
        sizes::{size_after, starts_size},
    },
};

/// The words that may follow a thread.
pub(crate) const WORDS: &[&str] = &[
    "bolt",
    "by",
    "clearance",
    "compound",
    "cut",
    "drill",
    "external",
    "flat",
    "form",
    "hand",
    "hub",
    "inside",
    "internal",
    "long",
    "nose",
    "nut",
    "outside",
    "over",
    "power",
    "radius",
    "screw",
    "straight",
    "tap",
    "thread",
    "wire",
    "wires",
];

const EXAMPLE: &str = "as in `M10 tap 70%`, `3/8-24 2A wires` or `M10x1.25 cut`";

/// A thread at the start of a line, if one stands there.
pub(crate) fn thread(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    let found = match keyword("thread")(input).and_then(|(rest, ())| space(rest)) {
        Ok((rest, _)) => match thread::scan_expected(rest) {
            Some(found) => (rest, found),
            None => {
                return Some(fatal(
                    rest,
                    rest.trim_end().len(),
                    "a thread's name is missing after `thread`",
                    "as in `thread 3/8` or `M10x1.25`",
                ));
            }
        },
        // A bare fraction is a thread where only a thread can be asked so.
        Err(_) => match thread::scan(input) {
            Some(found) => (input, found),
            // Most lines hold no word at all.
            None if !has_word(input) => return None,
            None => (input, thread::scan_expected(input).filter(|found| asks(input, found))?),
        },
    };
    let (input, found) = found;
    Some(match found {
        Ok((designation, taken)) => {
            let rest = &input[taken..];
            // `1/2-10 thou` is a sum of sizes.
            if designation.form.is_inch() && Unit::scan(rest.trim_start()).is_some() {
                return None;
            }
            let spot = Spot { value: designation, at: span(total, input, rest) };
            clauses(rest, total, ThreadQuery::new(spot))
        }
        Err(error) => refused(input, &error),
    })
}

/// Does a word of three letters stand there, as all do that [`asks`] looks for?
fn has_word(input: &str) -> bool {
    input.as_bytes().windows(3).any(|run| run.iter().all(u8::is_ascii_alphabetic))
}

/// Does a word that only a thread takes follow: `3/8 tap 70%`?
fn asks(input: &str, found: &Result<(thread::Designation, usize), Error>) -> bool {
    let Ok((designation, taken)) = found else { return false };
    let Ok((rest, _)) = separator(&input[*taken..]) else { return false };
    let is = |words: &[&'static str]| words.iter().any(|&word| keyword(word)(rest).is_ok());
    match rest.bytes().next().map(|byte| byte.to_ascii_lowercase()) {
        Some(b't' | b'w') if is(&["tap", "wires"]) => true,
        Some(b'c') if is(&["cut"]) => true,
        // Other sizes are asked for a fit so, or bought.
        Some(b'c' | b'o' | b'n' | b's' | b'b' | b't') => {
            is_thread_size(designation)
                && is(&["clearance", "over", "nut", "screw", "bolt", "thread"])
        }
        _ => false,
    }
}

/// A bare fraction of an inch or a screw's number: `3/8`, `#10`.
pub(crate) fn is_thread_size(designation: &thread::Designation) -> bool {
    match designation.nominal.value {
        Nominal::Fraction { numerator, .. } => numerator > 0,
        Nominal::Number(_) => true,
        _ => false,
    }
}

/// The core's refusal, at its place.
pub(crate) fn refused<'a, T>(input: &'a str, error: &Error) -> Parsed<'a, T> {
    let at = error.span().unwrap_or(0..input.trim_end().len());
    let rest = input.get(at.start..).unwrap_or_default();
    let advice = match error.advice() {
        advice if advice.is_empty() => "see `help threads`".to_owned(),
        advice => advice,
    };
    fatal(rest, at.len(), error.to_string(), advice)
}

pub(crate) fn clauses(mut input: &str, total: usize, mut query: ThreadQuery) -> Parsed<'_, Query> {
    loop {
        let (rest, _) = separator(input)?;
        if rest.is_empty() {
            return Ok((rest, Query::Thread(Box::new(query))));
        }
        input = clause(rest, total, &mut query)?.0;
    }
}

fn clause<'a>(input: &'a str, total: usize, query: &mut ThreadQuery) -> Parsed<'a, ()> {
    let asked = alt((
        value(ThreadAsk::Tap, alt((keyword("tap"), keyword("drill")))),
        value(ThreadAsk::Clearance, keyword("clearance")),
        value(ThreadAsk::Wires, keyword("wires")),
        value(ThreadAsk::Over, keyword("over")),
        value(ThreadAsk::Cut, keyword("cut")),
    ));
    if let Ok((rest, ask)) = spot(total, asked)(input) {
        return ask_clause(input, rest, total, query, ask);
    }
    let driven =
        alt((value(Driven::Hand, keyword("hand")), value(Driven::Power, keyword("power"))));
    if let Ok((rest, driven)) = spot(total, driven)(input) {
        return once(input, rest, &mut query.driven, driven);
    }
    let outside = alt((keyword("outside"), keyword("external"), keyword("screw"), keyword("bolt")));
    let inside = alt((keyword("inside"), keyword("internal"), keyword("nut")));
    let place = alt((value(Place::Outside, outside), value(Place::Inside, inside)));
    if let Ok((rest, place)) = spot(total, place)(input) {
        return once(input, rest, &mut query.place, place);
    }
    if let Ok((rest, form)) = spot(total, keyword("form"))(input) {
        let (end, ()) = once(input, rest, &mut query.form, form)?;
        return match percent(end, total)? {
            (end, Some(percent)) => once(input, end, &mut query.percent, percent),
            (end, None) => Ok((end, ())),
        };
    }
    if let Ok((rest, ())) = keyword("compound")(input) {
        // `compound at 29.5 deg` says the same.
        let (number, _) = preceded(space, opt(preceded(keyword("at"), space))).parse(rest)?;
        let (end, angle) = match Number::scan(number) {
            Ok(Some((angle, taken))) => (degrees(&number[taken..])?.0, Some(angle)),
            _ => (rest, None),
        };
        let feed = Spot { value: Feed::Compound(angle), at: span(total, input, end) };
        return once(input, end, &mut query.feed, feed);
    }
    if let Ok((rest, feed)) = spot(total, value(Feed::Straight, keyword("straight")))(input) {
        return once(input, rest, &mut query.feed, feed);
    }
    if let Ok((rest, ())) = keyword("wire")(input) {
        return sized(input, rest, total, &mut query.wire, "the wire's size is missing");
    }
    // A tool's nose is round; a flat is said so.
    if let Ok((rest, ())) = alt((keyword("nose"), keyword("radius"))).parse(input) {
        let missing = "the radius of the tool's end is missing";
        let rest = skipped(rest, &["radius"])?.0;
        return sized(input, rest, total, &mut query.nose, missing);
    }
    if let Ok((rest, ())) = keyword("flat")(input) {
        let missing = "the width of the tool's flat is missing";
        return sized(input, rest, total, &mut query.flat, missing);
    }
    if let Ok((rest, ())) = keyword("long")(input) {
        return sized(input, rest, total, &mut query.long, "the length is missing after `long`");
    }
    if let Ok((rest, ())) = keyword("hub")(input) {
        let (start, _) = space(rest)?;
        let (end, Some(hub)) = material(start, total)? else {
            let missing = "the material is missing after `hub`";
            return fatal(start, 0, missing, "as in `M10 tap, hub aluminium`");
        };
        return once(input, end, &mut query.hub, hub);
    }
    // `M10 thread`, `tap by hand`.
    if let Ok((rest, ())) = alt((keyword("thread"), keyword("by"))).parse(input) {
        return Ok((rest, ()));
    }
    strange(input)
}

/// `tap`, `wires`, `over` … with what may stand right after each.
fn ask_clause<'a>(
    input: &'a str,
    rest: &'a str,
    total: usize,
    query: &mut ThreadQuery,
    ask: Spot<ThreadAsk>,
) -> Parsed<'a, ()> {
    let may_join = query.ask.value == ThreadAsk::Cut && ask.value == ThreadAsk::Over
        || query.ask.value == ThreadAsk::Over && ask.value == ThreadAsk::Cut;
    if query.ask.value != ThreadAsk::Limits && !may_join {
        return fatal(
            input,
            ask.at.len(),
            format!("`{}` and `{}` are two questions", query.ask.value.word(), ask.value.word()),
            "ask one at a time",
        );
    }
    // A reading taken while cutting is a reading.
    if may_join && ask.value == ThreadAsk::Cut {
        return Ok((rest, ()));
    }
    query.ask = ask;
    ask_tail(input, rest, total, query)
}

/// What may stand right after the word that asks.
pub(crate) fn ask_tail<'a>(
    input: &'a str,
    rest: &'a str,
    total: usize,
    query: &mut ThreadQuery,
) -> Parsed<'a, ()> {
    let asked = query.ask.value;
    let rest = match asked {
        ThreadAsk::Tap | ThreadAsk::Clearance => {
            skipped(rest, &["drill", "hole", "holes", "in"])?.0
        }
        _ => rest,
    };
    let (after, _) = space(rest)?;
    match asked {
        ThreadAsk::Over if query.over.is_none() => {
            sized(input, rest, total, &mut query.over, "the size over the wires is missing")
        }
        ThreadAsk::Wires if starts_size(after) => {
            sized(input, rest, total, &mut query.wire, "the wire's size is missing")
        }
        ThreadAsk::Tap if starts_size(after) => {
            if let (end, Some(percent)) = percent(after, total)? {
                return once(input, end, &mut query.percent, percent);
            }
            sized(input, rest, total, &mut query.drill, "the drill is missing")
        }
        ThreadAsk::Tap => {
            // A drill's letter alone, or the material.
            if let Ok((end, letter)) = word(after)
                && letter.len() == 1
                && !end.starts_with(|c: char| c.is_ascii_digit())
            {
                let value = Expression::Gauge(letter.to_ascii_uppercase());
                let drill = Spot { value, at: span(total, after, end) };
                return once(input, end, &mut query.drill, drill);
            }
            match material(after, total)? {
                (end, Some(hub)) => once(input, end, &mut query.hub, hub),
                (_, None) => Ok((rest, ())),
            }
        }
        ThreadAsk::Clearance => {
            let passes = alt((
                value(Passes::Close, alt((keyword("close"), keyword("fine")))),
                value(Passes::Normal, alt((keyword("normal"), keyword("medium")))),
                value(Passes::Loose, alt((keyword("loose"), keyword("coarse")))),
            ));
            match spot(total, passes)(after) {
                Ok((end, passes)) => once(input, end, &mut query.passes, passes),
                Err(_) => Ok((rest, ())),
            }
        }
        _ => Ok((rest, ())),
    }
}

/// Words that add nothing: `tap drill`, `clearance hole`.
pub(crate) fn skipped<'a>(mut rest: &'a str, words: &[&'static str]) -> Parsed<'a, ()> {
    loop {
        let (after, _) = space(rest)?;
        let end = words.iter().find_map(|&word| keyword(word)(after).ok());
        match end {
            Some((end, ())) => rest = end,
            None => return Ok((rest, ())),
        }
    }
}

/// A material's name, up to a word of threads or one near it.
fn material(start: &str, total: usize) -> Parsed<'_, Option<Spot<String>>> {
    let ends = |typed: &str| {
        let typed = typed.to_ascii_lowercase();
        WORDS.iter().any(|known| *known == typed || near_miss(&typed, known))
    };
    let (end, name) = words_until(start, ends)?;
    let found = (!name.is_empty()).then(|| Spot { value: name, at: span(total, start, end) });
    Ok((end, found))
}

/// `70%`, if that stands here.
fn percent(input: &str, total: usize) -> Parsed<'_, Option<Spot<Number>>> {
    let (start, _) = space(input)?;
    if let Ok(Some((number, taken))) = Number::scan(start) {
        let (sign, _) = space(&start[taken..])?;
        if let Some(end) = sign.strip_prefix('%') {
            return Ok((end, Some(Spot { value: number, at: span(total, start, end) })));
        }
    }
    Ok((input, None))
}

pub(crate) fn sized<'a>(
    input: &'a str,
    after: &'a str,
    total: usize,
    slot: &mut Option<Size>,
    missing: &str,
) -> Parsed<'a, ()> {
    let (after, _) = space(after)?;
    let (end, size) = size_after(after, total, missing, EXAMPLE)?;
    once(input, end, slot, size)
}

/// `°`, `deg` or nothing.
fn degrees(input: &str) -> Parsed<'_, ()> {
    value(
        (),
        opt(preceded(
            space,
            alt((
                value((), nom::character::complete::char('\u{b0}')),
                keyword("deg"),
                keyword("degrees"),
            )),
        )),
    )
    .parse(input)
}

/// A word that does not go with a thread.
fn strange<T>(input: &str) -> Result<T, nom::Err<crate::words::fault::Fault>> {
    let typed = input.split([' ', ',', ';', '\t']).next().unwrap_or(input);
    let lower = typed.to_ascii_lowercase();
    if lower == "hole" {
        return crate::words::fault::fatal_fix(
            input,
            typed.len(),
            "a thread has two holes: its tap's and the one that its screw passes",
            "say clearance for that; for the tap's",
            Some((typed.len(), "tap".to_owned())),
        );
    }
    if let Some(near) = WORDS.iter().find(|known| near_miss(&lower, known)) {
        return crate::words::fault::fatal_fix(
            input,
            typed.len(),
            format!("`{}` does not go with a thread", shortened(typed)),
            "",
            Some((typed.len(), (*near).to_owned())),
        );
    }
    fatal(input, typed.len(), format!("`{}` does not go with a thread", shortened(typed)), EXAMPLE)
}
