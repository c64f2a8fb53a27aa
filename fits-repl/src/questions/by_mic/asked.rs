//! A thread by its outside and its pitch, read.

use std::ops::Range;

use fits_core::standards::thread::{Designation, scan_expected};

use crate::{
    query::{Query, Spot},
    questions::thread::reader::refused,
    words::{
        fault::{Parsed, fatal},
        keywords::{keyword, nothing_more, space, span},
        said::{Said, Takes, said},
        sizes::starts_size,
    },
};

/// What is asked of a thread that has no name, or of the hole for an insert.
#[derive(Clone, Debug)]
pub enum ByMic {
    /// An outside or a bore and a pitch.
    Read {
        /// What was said.
        said: Said,
        /// Where it stands.
        at: Range<usize>,
    },
    /// The thread that an insert leaves.
    Insert(Spot<Designation>),
}

pub(crate) const EXAMPLE: &str = "as in `thread 0.308in 18 tpi` or `thread 7.85mm pitch 1.25mm`";

const TAKES: &[(&str, Takes)] = &[
    ("tpi", Takes::Before),
    ("pitch", Takes::Size),
    ("square", Takes::Nothing),
    ("nut", Takes::Nothing),
    ("thread", Takes::Small),
    ("screw", Takes::Small),
    ("by", Takes::Small),
    ("and", Takes::Small),
];

/// A line that begins with `thread` and a size, or with `insert` and a thread.
pub(crate) fn read(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    if let Ok((rest, ())) = keyword("insert")(input) {
        let (rest, _) = space(rest).ok()?;
        return Some(insert(rest, total));
    }
    if let Ok((rest, ())) = keyword("square")(input) {
        keyword("thread")(space(rest).ok()?.0).ok()?;
        return Some(by_mic(input, total));
    }
    let (rest, ()) = keyword("thread")(input).ok()?;
    let (after, _) = space(rest).ok()?;
    // A thread's name after the word, or a size alone, is the thread's own question.
    let is_read = starts_size(after)
        || ["square", "nut", "screw", "pitch"].iter().any(|word| keyword(word)(after).is_ok());
    let says = |word: &str| after.split([' ', ',']).any(|typed| typed.eq_ignore_ascii_case(word));
    let is_asked = ["tpi", "pitch", "square", "nut"].into_iter().any(says);
    (is_read && is_asked && !names_thread(after)).then(|| by_mic(rest, total))
}

/// Does a thread's name stand here: `3/8-24`, `#10-32`?
fn names_thread(text: &str) -> bool {
    matches!(fits_core::standards::thread::scan(text), Some(Ok(_)))
}

fn insert(input: &str, total: usize) -> Parsed<'_, Query> {
    const EXAMPLE: &str = "as in `insert M8` or `insert 1/4-20`";
    match scan_expected(input) {
        Some(Ok((designation, taken))) => {
            let rest = input.get(taken..).unwrap_or_default();
            let spot = Spot { value: designation, at: span(total, input, rest) };
            nothing_more(rest, Query::ByMic(Box::new(ByMic::Insert(spot))))
        }
        Some(Err(error)) => refused(input, &error),
        None => {
            fatal(input, input.trim_end().len(), "the thread is missing after `insert`", EXAMPLE)
        }
    }
}

fn by_mic(input: &str, total: usize) -> Parsed<'_, Query> {
    let (rest, said) = said(input, total, TAKES, EXAMPLE)?;
    let here =
        |at: &Range<usize>| input.get(input.len() - (total - at.start)..).unwrap_or_default();
    if said.has("tpi") && said.has("pitch") {
        return fatal(rest, 0, "the pitch is said twice", EXAMPLE);
    }
    let wanted = if said.has("tpi") || said.has("pitch") { 1 } else { 2 };
    if said.sizes.len() < wanted {
        let missing = if said.sizes.is_empty() { "the size read" } else { "the pitch" };
        return fatal(rest, 0, format!("{missing} is missing"), EXAMPLE);
    }
    if let Some(extra) = said.sizes.get(wanted) {
        return fatal(
            here(&extra.at),
            extra.at.len(),
            "one size and one pitch are wanted",
            EXAMPLE,
        );
    }
    let at = span(total, input, rest);
    Ok((rest, Query::ByMic(Box::new(ByMic::Read { said, at }))))
}
