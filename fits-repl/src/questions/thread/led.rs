//! Threads asked with the question first: `tap M10`, `drill for M10`, `wires
//! 3/8-24`, `over 10.2 M10`.

use fits_core::standards::thread::{self, Form};

use crate::{
    query::{Place, Query, Size, Spot, ThreadAsk, ThreadQuery},
    questions::thread::reader::{ask_tail, clauses, is_thread_size, refused, skipped},
    words::{
        fault::{Parsed, fatal},
        keywords::{keyword, space, span, spot},
        sizes::size_after,
    },
};

/// What the opening word says.
#[derive(Clone, Copy)]
enum Opening {
    Ask(ThreadAsk),
    /// A tap drill, where a thread follows; else a drill.
    Drill,
    Side(Place),
}

const OPENINGS: [(&str, Opening); 9] = [
    ("tap", Opening::Ask(ThreadAsk::Tap)),
    ("drill", Opening::Drill),
    ("clearance", Opening::Ask(ThreadAsk::Clearance)),
    ("cut", Opening::Ask(ThreadAsk::Cut)),
    ("wires", Opening::Ask(ThreadAsk::Wires)),
    ("over", Opening::Ask(ThreadAsk::Over)),
    ("nut", Opening::Side(Place::Inside)),
    ("screw", Opening::Side(Place::Outside)),
    ("bolt", Opening::Side(Place::Outside)),
];

/// A question of a thread that its word opens, if a thread stands after it.
pub(crate) fn led(input: &str, total: usize) -> Option<Parsed<'_, Query>> {
    let first = input.bytes().next()?.to_ascii_lowercase();
    if !matches!(first, b't' | b'd' | b'c' | b'w' | b'o' | b'n' | b's' | b'b') {
        return None;
    }
    let (rest, opening) = OPENINGS.into_iter().find_map(|(word, opening)| {
        let (rest, said) = spot(total, keyword(word))(input).ok()?;
        Some((rest, Spot { value: opening, at: said.at }))
    })?;
    let (rest, over) = match opening.value {
        Opening::Ask(ThreadAsk::Over) => {
            let (after, _) = space(rest).ok()?;
            let (rest, size) = size_after(after, total, "", "").ok()?;
            (rest, Some(size))
        }
        _ => (rest, None),
    };
    let after_word = rest;
    let (rest, ()) =
        skipped(rest, &["drill", "hole", "holes", "size", "for", "of", "a", "an"]).ok()?;
    let (start, _) = space(rest).ok()?;
    let found = match thread::scan(start) {
        Some(found) => Some(found),
        // A size alone may be a cut's or a drill's.
        None if word_of_threads(opening.value).is_some() => {
            thread::scan_expected(start).filter(|found| {
                let Ok((designation, _)) = found else { return false };
                designation.form == Form::Metric || is_thread_size(designation)
            })
        }
        None => None,
    };
    let Some(found) = found else {
        return none_named(after_word, word_of_threads(opening.value)?);
    };
    Some(asked(start, total, found, opening, over))
}

/// A word that only threads are asked with.
const fn word_of_threads(opening: Opening) -> Option<&'static str> {
    match opening {
        Opening::Ask(ask @ (ThreadAsk::Tap | ThreadAsk::Wires | ThreadAsk::Clearance)) => {
            Some(ask.word())
        }
        _ => None,
    }
}

/// No thread stands after such a word.
fn none_named<'a>(rest: &'a str, word: &str) -> Option<Parsed<'a, Query>> {
    let (rest, _) = space(rest).ok()?;
    Some(fatal(
        rest,
        rest.trim_end().len(),
        format!("no thread is named after `{word}`"),
        format!("as in `M10 {word}` or `3/8-24 {word}`"),
    ))
}

fn asked(
    start: &str,
    total: usize,
    found: Result<(thread::Designation, usize), fits_core::Error>,
    opening: Spot<Opening>,
    over: Option<Size>,
) -> Parsed<'_, Query> {
    let (designation, taken) = match found {
        Ok(found) => found,
        Err(error) => return refused(start, &error),
    };
    let rest = &start[taken..];
    let spot = Spot { value: designation, at: span(total, start, rest) };
    let mut query = ThreadQuery { over, ..ThreadQuery::new(spot) };
    let at = opening.at;
    let value = match opening.value {
        Opening::Ask(ask) => ask,
        Opening::Drill => ThreadAsk::Tap,
        Opening::Side(value) => {
            query.place = Some(Spot { value, at });
            return clauses(rest, total, query);
        }
    };
    query.ask = Spot { value, at };
    let (rest, ()) = ask_tail(rest, rest, total, &mut query)?;
    clauses(rest, total, query)
}
