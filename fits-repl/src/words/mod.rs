//! Text to query: the grammar, on nom.
//!
//! What was typed and where. It knows words, numbers and their order; it
//! knows no table, so it can say of `Q7` only that it has the shape of a class.

pub(crate) mod amounts;
pub(crate) mod clause;
pub(crate) mod fault;
pub(crate) mod keywords;
pub(crate) mod quantities;
pub(crate) mod said;
pub(crate) mod sizes;
pub(crate) mod temperatures;
pub(crate) mod tolerances;

use fits_core::standards::iso286::Feature;
use nom::{
    Err, Parser,
    branch::alt,
    combinator::{opt, value},
};

use crate::{
    problem::{Code, Problem},
    query::{Query, Work},
    questions::{READERS, hardware, part::reader::part_or_size, thread},
    words::{
        fault::{Known, Parsed, fatal},
        keywords::{keyword, space, spot},
    },
};

pub(crate) use crate::words::keywords::near_miss;

/// A longer line is not a query.
pub const LONGEST_LINE: usize = 4096;

/// Reads one line.
///
/// # Errors
/// The first place where no query goes on, with what would.
pub fn read(line: &str) -> Result<Query, Problem> {
    read_line(line).map_err(|problem| match problem.kind {
        Code::NotAnswered => problem.kind(Code::NotUnderstood),
        _ => problem,
    })
}

fn read_line(line: &str) -> Result<Query, Problem> {
    if line.len() > LONGEST_LINE {
        let start = (0..=LONGEST_LINE).rev().find(|&at| line.is_char_boundary(at)).unwrap_or(0);
        return Err(Problem::new(
            format!("the line is {} bytes long, a query has at most {LONGEST_LINE}", line.len()),
            start..line.len(),
        )
        .advise("type one query a line, as `20mm H7/g6`")
        .kind(Code::TooLong));
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
        // `spring pin 1/4in` is a part.
        && hardware::read(line, line.len()).is_none()
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
    let begins_with_word = input.starts_with(|c: char| c.is_ascii_alphabetic() || c == '?');
    if begins_with_word && let Some(read) = READERS.iter().find_map(|read| read(input, total)) {
        return read;
    }
    if let Some(thread) = thread::reader::thread(input, total) {
        return thread;
    }
    if !begins_with_word {
        return part_or_size(input, total, None, None);
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
