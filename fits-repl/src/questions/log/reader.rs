//! Entries of the pass log and questions about it, and the settings that a
//! log begins with.

use crate::questions::log;
use nom::{Err, Parser, combinator::opt, sequence::preceded};

use crate::{
    query::{LogQuery, Query, Readings, Spot},
    questions::log::readings_reader::readings,
    words::{
        fault::{Fault, Parsed, fatal, fatal_fix},
        keywords::{keyword, separator, space, span, unknown},
        sizes::size_after,
    },
};

/// A line of the log, where the line begins as one does.
pub(crate) fn log(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    type Entry = fn(&str, usize) -> Parsed<'_, LogQuery>;
    const ENTRIES: [(&str, Entry); 7] = [
        ("cut", cut),
        ("spring", spring),
        ("read", read),
        ("undo", |rest, _| Ok((rest, LogQuery::Undo))),
        ("done", |rest, _| sure(rest).map(|(rest, sure)| (rest, LogQuery::Done { sure }))),
        ("scrap", |rest, _| Ok((rest, LogQuery::Scrap))),
        ("log", question),
    ];
    for (word, entry) in ENTRIES {
        if let Ok((rest, ())) = keyword(word)(input) {
            return Some(entry(rest, total).and_then(|(rest, value)| {
                let at = span(total, input, rest);
                let (rest, _) = separator(rest)?;
                if rest.is_empty() {
                    Ok((rest, Query::Log(Spot { value, at })))
                } else {
                    left_over(rest)
                }
            }));
        }
    }
    None
}

/// What an entry does not take.
fn left_over<T>(rest: &str) -> Result<T, Err<Fault>> {
    let length = rest.trim_end().len();
    if keyword("at")(rest).is_ok() {
        return fatal(
            rest,
            length,
            "a temperature belongs to a reading, and there is none",
            "as in `cut 0.2 = 19.79 at 31C steel`",
        );
    }
    if keyword("with")(rest).is_ok() {
        return fatal(
            rest,
            length,
            "an instrument belongs to a reading, and there is none",
            "as in `cut 0.2 = 19.79 with bore gauge`",
        );
    }
    unknown(rest)
}

fn cut(input: &str, total: usize) -> Parsed<'_, LogQuery> {
    const EXAMPLE: &str = "give what was dialled and read, as `cut 0.2 = 19.79`";
    let (input, _) = space(input)?;
    let (rest, dial) =
        size_after(input, total, "what was dialled is missing after `cut`", EXAMPLE)?;
    let (rest, read) = equals(rest, total, EXAMPLE)?;
    let (after, _) = separator(rest)?;
    if read.is_none() && log::readings_reader::starts(after) {
        return fatal_fix(after, 0, "what was read comes after =", "", Some((0, "= ".into())));
    }
    let (rest, sure) = sure(rest)?;
    Ok((rest, LogQuery::Cut { dial, read, sure }))
}

fn spring(input: &str, total: usize) -> Parsed<'_, LogQuery> {
    const EXAMPLE: &str = "give what was read, as `spring = 19.99`";
    let (after, _) = space(input)?;
    let (rest, read) = if log::readings_reader::starts(after) {
        let (rest, read) = readings(after, total, "the reading is missing", EXAMPLE)?;
        (rest, Some(read))
    } else {
        equals(input, total, EXAMPLE)?
    };
    let (rest, sure) = sure(rest)?;
    Ok((rest, LogQuery::Spring { read, sure }))
}

fn read(input: &str, total: usize) -> Parsed<'_, LogQuery> {
    let (input, _) = space(input)?;
    let input = input.strip_prefix('=').unwrap_or(input);
    let (rest, read) =
        readings(input, total, "the reading is missing after `read`", "as in `read 19.792`")?;
    let (rest, sure) = sure(rest)?;
    Ok((rest, LogQuery::Read { read, sure }))
}

/// `= READINGS`, if they are there.
fn equals<'a>(input: &'a str, total: usize, advice: &str) -> Parsed<'a, Option<Readings>> {
    let (after, _) = separator(input)?;
    let Some(after) = after.strip_prefix('=') else { return Ok((input, None)) };
    let (rest, read) = readings(after, total, "the reading is missing after =", advice)?;
    Ok((rest, Some(read)))
}

/// The word that confirms a doubtful entry.
fn sure(input: &str) -> Parsed<'_, bool> {
    opt(preceded(separator, keyword("sure")))
        .parse(input)
        .map(|(rest, found)| (rest, found.is_some()))
}

fn question(input: &str, total: usize) -> Parsed<'_, LogQuery> {
    let (input, _) = space(input)?;
    if input.is_empty() {
        return Ok((input, LogQuery::Show));
    }
    if let Ok((rest, ())) = keyword("list")(input) {
        return Ok((rest, LogQuery::List));
    }
    if let Ok((rest, ())) = keyword("leave")(input) {
        return Ok((rest, LogQuery::Leave));
    }
    if let Ok((rest, ())) = keyword("open")(input) {
        let name = named(rest, total);
        if name.value.is_empty() {
            return fatal(
                rest,
                0,
                "the log's name is missing",
                "the names are listed by `log list`",
            );
        }
        return Ok(("", LogQuery::Open(name)));
    }
    fatal(
        input,
        input.trim_end().len(),
        "this is not asked of a log",
        "`log`, `log list`, `log leave`, or log open and a name of the list",
    )
}

/// The rest of a line as a name.
fn named(rest: &str, total: usize) -> Spot<String> {
    let name = rest.trim();
    let start = total - rest.trim_start().len();
    Spot { value: name.to_owned(), at: start..start + name.len() }
}
