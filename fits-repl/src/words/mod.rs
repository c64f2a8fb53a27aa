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

use fits_core::standards::iso286::Feature;
use nom::{
    Err, Parser,
    branch::alt,
    character::complete::char,
    combinator::{opt, value},
    sequence::preceded,
};

use crate::{
    problem::Problem,
    query::{Dial, Query, Spot, Units, Work},
    questions::{
        self, bushing, crib, joint, log, part::reader::part_or_size, rehearse, stack, thread,
    },
    words::{
        fault::{Fault, Known, Parsed, fatal},
        keywords::{keyword, shortened, space, spot, words_until},
    },
};

pub(crate) use crate::words::keywords::near_miss;

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
        return Some(questions::drill::asked::drill(rest, total));
    }
    if let Ok((rest, ())) =
        preceded(keyword("keyway"), preceded(space, keyword("for"))).parse(input)
    {
        return Some(questions::keyway::asked::keyway(rest, total));
    }
    if let Some(rest) = after("assemble") {
        return Some(joint::reader::assemble(rest, total));
    }
    if let Some(rest) = after("pick") {
        return Some(questions::pick::asked::pick(rest, total));
    }
    if let Some(rest) = after("seat") {
        return Some(questions::seat::asked::seat(rest, total));
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
