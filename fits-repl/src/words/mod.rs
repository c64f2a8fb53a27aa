//! Text to query: the grammar, on nom.
//!
//! What was typed and where. It knows words, numbers and their order; it
//! knows no table, so it can say of `Q7` only that it has the shape of a class.

pub(crate) mod amounts;
pub(crate) mod fault;
pub(crate) mod keywords;
pub(crate) mod quantities;
pub(crate) mod sizes;
pub(crate) mod temperatures;
pub(crate) mod tolerances;

use crate::questions;
use crate::questions::bushing;
use crate::questions::crib;
use crate::questions::joint;
use crate::questions::log;
use crate::questions::rehearse;
use crate::questions::stack;
use crate::questions::thread;
use fits_core::{
    size::{Number, Unit},
    standards::iso286::Feature,
};
use nom::{
    Err, Parser,
    branch::alt,
    character::complete::char,
    combinator::{opt, value},
    sequence::preceded,
};

pub(crate) use crate::words::keywords::near_miss;
use crate::{
    problem::Problem,
    query::{Dial, Expression, Part, Query, Spot, Tolerance, Units, Work},
    questions::part::clauses::clauses,
    words::{
        fault::{Fault, Known, Parsed, fatal, fatal_fix},
        keywords::{
            after_equals, keyword, separator, shortened, space, span, spot, unknown, word,
            words_until,
        },
        sizes::{expression, size_after},
        tolerances::tolerance,
    },
};

/// A longer line is not a query.
pub const LONGEST_LINE: usize = 4096;

/// Every keyword a query can begin with or hold.
pub(crate) const KEYWORDS: &[&str] = &[
    "align",
    "assemble",
    "at",
    "bore",
    "crib",
    "cut",
    "dial",
    "done",
    "drill",
    "from",
    "general",
    "grade",
    "help",
    "hole",
    "hub",
    "instrument",
    "log",
    "long",
    "material",
    "measures",
    "mics",
    "overhang",
    "pick",
    "read",
    "reads",
    "ream",
    "rehearse",
    "room",
    "runs",
    "scrap",
    "seat",
    "seed",
    "shaft",
    "spring",
    "stack",
    "thin",
    "turn",
    "turns",
    "undo",
    "units",
    "warm",
    "why",
    "with",
    "within",
];

/// Reads one line.
///
/// # Errors
/// The first place where no query goes on, with what would.
pub fn read(line: &str) -> Result<Query, Problem> {
    if line.len() > LONGEST_LINE {
        let start = (0..=LONGEST_LINE).rev().find(|&at| line.is_char_boundary(at)).unwrap_or(0);
        return Err(Problem::new(
            format!("the line is {} bytes long, a query has at most {LONGEST_LINE}", line.len()),
            start..line.len(),
        )
        .advise("type one query a line, as `20 H7/g6`"));
    }
    if let Some((at, control)) =
        line.char_indices().find(|(_, c)| c.is_control() && *c != '\t' && *c != '\r')
    {
        let end = at + control.len_utf8();
        let mended = line.replace(|c: char| c.is_control() && c != '\t', "");
        return Err(Problem::new(
            format!("the line holds a control character (U+{:04X})", u32::from(control)),
            at..end,
        )
        .advise("without it")
        .fix(0..line.len(), mended));
    }
    if let Some(at) = too_deep(line) {
        return Err(Problem::new("too many brackets in one size", at..at + 1)
            .advise("as in `(25.4 + 0.02)/2`"));
    }
    let at = |left: usize| line.len().saturating_sub(left);
    match query(line, line.len()) {
        Ok((_, query)) => Ok(query),
        Err(Err::Error(fault) | Err::Failure(fault)) => {
            let range = at(fault.left)..at(fault.left_after);
            let Some(known) = fault.known else {
                return Err(Problem::new("this is not understood", range).advise("see `help`"));
            };
            let Known { message, advice, fix } = *known;
            let mut problem = Problem::new(message, range).advise(advice);
            if let Some((from, to, with)) = fix {
                problem = problem.fix(at(from)..at(to), with);
            }
            Err(problem)
        }
        Err(Err::Incomplete(_)) => {
            Err(Problem::new("the line ends too soon", line.len()..line.len()).advise("see `help`"))
        }
    }
}

/// Does a line begin as an entry of the pass log does?
pub(crate) fn is_entry(line: &str) -> bool {
    let line = line.trim_start();
    ["cut", "spring", "read", "undo", "done", "scrap"]
        .iter()
        .any(|word| keyword(word)(line).is_ok())
}

/// Where brackets nest deeper than any size needs.
pub(crate) fn too_deep(line: &str) -> Option<usize> {
    const DEEPEST: i32 = 32;
    let mut depth = 0;
    line.bytes().position(|byte| {
        depth += match byte {
            b'(' => 1,
            b')' => -1,
            _ => 0,
        };
        depth > DEEPEST
    })
}

pub(crate) fn query(input: &str, total: usize) -> Parsed<'_, Query> {
    let (input, _) = space(input)?;
    if input.trim().is_empty() {
        return fatal(
            input,
            input.len(),
            "nothing was asked",
            "type a size and a class, as `20 H7/g6`, or `help`",
        );
    }
    // Most lines begin with a number: no word is tried against it.
    if input.starts_with(|c: char| c.is_ascii_alphabetic() || c == '?') {
        let known = thread::led::led(input, total)
            .or_else(|| command(input, total))
            .or_else(|| question(input, total));
        if let Some(read) = known {
            return read;
        }
    }
    if let Some(thread) = thread::reader::thread(input, total) {
        return thread;
    }
    let (input, work) = opt(spot(
        total,
        alt((
            value(Work::Ream, keyword("ream")),
            value(Work::Bore, keyword("bore")),
            value(Work::Turn, keyword("turn")),
        )),
    ))
    .parse(input)?;
    let (input, _) = space(input)?;
    let (input, feature) = opt(spot(
        total,
        alt((value(Feature::Hole, keyword("hole")), value(Feature::Shaft, keyword("shaft")))),
    ))
    .parse(input)?;
    let (input, _) = space(input)?;
    part_or_size(input, total, work, feature)
}

/// Settings, help and reasons; the pass log and the crib.
pub(crate) fn command(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    if let Ok((rest, ())) = alt((keyword("help"), value((), char('?')))).parse(input) {
        let topic = rest.trim_start();
        let typed = topic.trim_end();
        let at = total - topic.len()..total - topic.len() + typed.len();
        let topic = (!typed.is_empty()).then(|| Spot { value: typed.to_owned(), at });
        return Some(Ok(("", Query::Help(topic))));
    }
    if let Ok((rest, ())) = keyword("why")(input) {
        return Some(why(rest.trim_start(), total));
    }
    if let Ok((rest, ())) = keyword("units")(input) {
        let choice = alt((
            value(Units::Millimetres, keyword("mm")),
            value(Units::Inches, alt((keyword("in"), keyword("inch"), keyword("inches")))),
        ));
        let read = setting(rest, choice, "units are `units mm` or `units in`");
        return Some(read.map(|(rest, units)| (rest, Query::Units(units))));
    }
    if let Ok((rest, ())) = keyword("dial")(input) {
        if let Ok((size, ())) = preceded(space, keyword("graduation")).parse(rest) {
            return Some(log::reader::graduation(size, total));
        }
        if let Ok((size, ())) = preceded(space, keyword("turn")).parse(rest) {
            return Some(log::reader::turn(size, total));
        }
        let choice = alt((
            value(Dial::Diameter, keyword("diameter")),
            value(Dial::Radius, keyword("radius")),
        ));
        let read = setting(rest, choice, "dials are `dial diameter` or `dial radius`");
        return Some(read.map(|(rest, dial)| (rest, Query::Dial(dial))));
    }
    if let Ok((rest, ())) =
        preceded(keyword("least"), preceded(space, keyword("chip"))).parse(input)
    {
        return Some(log::reader::least_chip(rest, total));
    }
    if let Ok((rest, ())) = preceded(keyword("top"), preceded(space, keyword("slide"))).parse(input)
    {
        return Some(log::reader::top_slide(rest, total));
    }
    if let Ok((rest, ())) = keyword("settings")(input)
        && rest.trim().is_empty()
    {
        return Some(Ok(("", Query::Units(None))));
    }
    if let Ok((rest, ())) = keyword("crib")(input) {
        return Some(crib::reader::crib(rest, total));
    }
    log::reader::log(input, total)
}

/// `why`, alone or of a query.
pub(crate) fn why(of: &str, total: usize) -> Parsed<'_, Query> {
    if of.is_empty() {
        return Ok(("", Query::Why(None)));
    }
    if keyword("why")(of).is_ok() {
        return fatal(of, 3, "one `why` is enough", "as in `why 20 H7`");
    }
    let (end, of) = query(of, total)?;
    Ok((end, Query::Why(Some(Box::new(of)))))
}

/// Questions that a word of their own opens.
pub(crate) fn question(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    let after = |word| keyword(word)(input).ok().map(|(rest, ())| rest);
    // `drill rod 3/8in` is a part, `drill 0.7031in` a question.
    if let Some(rest) = after("drill")
        && !matches!(words_until(rest, |_| false), Ok((_, name)) if !name.is_empty() && !name.starts_with("letter"))
    {
        return Some(questions::asks::drill(rest, total));
    }
    if let Ok((rest, ())) =
        preceded(keyword("keyway"), preceded(space, keyword("for"))).parse(input)
    {
        return Some(questions::asks::keyway(rest, total));
    }
    if let Some(rest) = after("assemble") {
        return Some(joint::reader::assemble(rest, total));
    }
    if let Some(rest) = after("pick") {
        return Some(questions::asks::pick(rest, total));
    }
    if let Some(rest) = after("seat") {
        return Some(questions::asks::seat(rest, total));
    }
    if let Some(rest) =
        after("bushing").or_else(|| after("bush")).filter(|rest| bushing::reader::is_asked(rest))
    {
        return Some(bushing::reader::bushing(rest, total));
    }
    if let Some(rest) = after("stack") {
        return Some(stack::reader::stack(rest, total));
    }
    rehearse::reader::practice(input, total)
}

/// The rest of `units` or `dial`: a choice or nothing.
pub(crate) fn setting<'a, T>(
    input: &'a str,
    mut choice: impl Parser<&'a str, Output = T, Error = Fault>,
    advice: &str,
) -> Parsed<'a, Option<T>> {
    let (input, _) = space(input)?;
    if input.is_empty() {
        return Ok((input, None));
    }
    let Ok((rest, chosen)) = choice.parse(input) else {
        return fatal(
            input,
            input.trim_end().len(),
            format!("`{}` is no such setting", shortened(input.trim_end())),
            advice,
        );
    };
    let (rest, _) = space(rest)?;
    if !rest.is_empty() {
        return fatal(rest, rest.trim_end().len(), "something follows the setting", advice);
    }
    Ok((rest, Some(chosen)))
}

pub(crate) fn part_or_size(
    input: &str,
    total: usize,
    work: Option<Spot<Work>>,
    feature: Option<Spot<Feature>>,
) -> Parsed<'_, Query> {
    let (input, bought) = bought(input, total)?;
    size_must_start(input)?;
    let (rest, size) = expression(input, total)?;
    let (rest, tolerance) = limits_after(rest, total)?;
    let tolerance = match tolerance {
        Some(tolerance) => tolerance,
        None => Tolerance::Bare,
    };
    if matches!(tolerance, Tolerance::Bare) {
        let (after, _) = separator(rest)?;
        let alone = work.is_none() && feature.is_none() && bought.is_none();
        if after.is_empty() && alone {
            return Ok((after, Query::Size(size)));
        }
        if alone && let Ok((after, ())) = keyword("general")(after) {
            return questions::asks::general(after, total, size);
        }
        if alone && let Ok((after, ())) = keyword("grade")(after) {
            return questions::asks::grade(after, total, size);
        }
        let is_reading = after_equals(after).is_some() || keyword("from")(after).is_ok();
        if bought.is_none() && (after.is_empty() || is_reading) {
            let class = match (work.map(|work| work.value), feature.map(|feature| feature.value)) {
                (Some(Work::Turn), _) | (_, Some(Feature::Shaft)) => "g6",
                _ => "H7",
            };
            return fatal_fix(
                after,
                0,
                "the tolerance is missing after the size",
                "give a class",
                Some((0, format!(" {class} "))),
            );
        }
        let is_whole =
            matches!(size.value, Expression::Number(number, None) if !number.is_fraction());
        if is_whole && matches!(Number::scan(after), Ok(Some((next, _))) if next.is_fraction()) {
            // `1 1/2in`
            let gap = rest.len() - after.len();
            return fatal_fix(
                rest,
                gap,
                "a mixed number is joined by a hyphen",
                "",
                Some((gap, "-".into())),
            );
        }
        if !after.starts_with(|c: char| c.is_ascii_alphabetic() || c == '=') && !after.is_empty() {
            return unknown(after);
        }
    }
    clauses(rest, total, Part { bought, ..Part::new(work, feature, size, tolerance) })
}

/// The limits after a size, if any are given there.
pub(crate) fn limits_after(rest: &str, total: usize) -> Parsed<'_, Option<Tolerance>> {
    let (after, _) = separator(rest)?;
    if after.is_empty() {
        return Ok((rest, None));
    }
    let second = after.strip_prefix("..").or_else(|| after.strip_prefix('\u{2026}'));
    if let Some(second) = second {
        let (second, _) = space(second)?;
        let (end, upper) = size_after(
            second,
            total,
            "the upper limit is missing after `..`",
            "write both limits, as `hole 20.00..20.02`",
        )?;
        return Ok((end, Some(Tolerance::UpTo(upper))));
    }
    let (end, tolerance) = tolerance(after, total)?;
    Ok(if tolerance.is_some() { (end, tolerance) } else { (rest, None) })
}

/// A bought-in part's name, where words stand before a size: `shoulder screw
/// 3/8in`, `m6 dowel pin 6mm`.
pub(crate) fn bought(input: &str, total: usize) -> Parsed<'_, Option<Spot<String>>> {
    let Ok((first, letters)) = word(input) else { return Ok((input, None)) };
    let is_unit = Unit::scan(input).is_some_and(|(_, taken)| taken == letters.len());
    if letters.eq_ignore_ascii_case("letter") {
        return Ok((input, None));
    }
    // A class may open the name where a word, not a size, follows it.
    let digits = first.len() - first.trim_start_matches(|c: char| c.is_ascii_digit()).len();
    let opening = if digits > 0 { &input[..letters.len() + digits] } else { "" };
    // A name may hold keywords: `bearing bore`, `N9 keyway in the shaft`.
    let (rest, name) = words_until(&input[opening.len()..], |_| false)?;
    // A unit alone is no name: `inch key` is one.
    if digits > 0 && name.len() < 3 || is_unit && name.len() == letters.len() {
        return Ok((input, None));
    }
    let (after, _) = separator(rest)?;
    let size_follows = after.starts_with(|c: char| {
        c.is_ascii_digit() || matches!(c, '.' | '#' | '(' | '\u{2300}' | '\u{d8}')
    });
    if name.is_empty() || after == rest || !size_follows {
        return Ok((input, None));
    }
    let value = if opening.is_empty() { name } else { format!("{opening} {name}") };
    Ok((after, Some(Spot { value, at: span(total, input, rest) })))
}

/// Refuses what cannot begin a size, with what is meant most likely.
pub(crate) fn size_must_start(input: &str) -> Result<(), Err<Fault>> {
    if input.is_empty() {
        return fatal(input, 0, "the size is missing", "as in `bore 20 H7` or `hole 20 ±0.02`");
    }
    let Ok((rest, letters)) = word(input) else {
        return Ok(());
    };
    if letters.eq_ignore_ascii_case("letter") {
        return Ok(());
    }
    if letters.eq_ignore_ascii_case("m") && !rest.starts_with(|c: char| c.is_ascii_digit()) {
        let gap = rest.len() - rest.trim_start_matches([' ', '-']).len();
        return fatal_fix(
            input,
            1,
            "a metric thread has its size right after the M",
            "as in `M10` or `M10x1.25`",
            rest[gap..].starts_with(|c: char| c.is_ascii_digit()).then(|| (1 + gap, "M".into())),
        );
    }
    if Unit::scan(input).is_some_and(|(_, taken)| taken == letters.len()) {
        return fatal_fix(
            input,
            letters.len(),
            format!("`{letters}` has no number before it: a class needs its size"),
            "",
            Some((0, if letters.eq_ignore_ascii_case("in") { "3/4".into() } else { "20 ".into() })),
        );
    }
    if rest.starts_with(|c: char| c.is_ascii_digit()) && letters.len() <= 2 {
        let advice = if letters == "m" { "a metric thread takes the capital" } else { "" };
        let before = if letters == "m" { (1, "M".into()) } else { (0, "20 ".into()) };
        return fatal_fix(
            input,
            letters.len(),
            "a class needs its nominal size before it",
            advice,
            Some(before),
        );
    }
    unknown(input)
}
