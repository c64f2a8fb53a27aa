//! One JSON object on one line.

use std::fmt::Write as _;

use schemars::JsonSchema;
use serde::Serialize;

use crate::{
    answer::Answer,
    problem::{Code, Problem},
    query::Units,
    render::{printable::is_obeyed, shown},
};

/// What is written where there is no answer.
#[derive(Serialize, JsonSchema)]
pub(crate) struct Refusal<'a> {
    error: ErrorFields<'a>,
}

/// Why a query has no answer.
#[derive(Serialize, JsonSchema)]
struct ErrorFields<'a> {
    /// What kind of problem it is.
    code: Code,
    /// What is wrong, one fact.
    message: &'a str,
    /// Where: from this byte of the query up to that.
    at: [usize; 2],
    /// The next step in words.
    hint: String,
    /// The query that works in its place, where one is known.
    instead: Option<String>,
    /// The queries that it could mean, where it is asked back.
    #[serde(skip_serializing_if = "<[String]>::is_empty")]
    choices: &'a [String],
}

impl<'a> Refusal<'a> {
    pub(crate) fn of(problem: &'a Problem, query: &str) -> Self {
        Self {
            error: ErrorFields {
                code: problem.code(),
                message: &problem.message,
                at: [problem.at.start, problem.at.end],
                hint: problem.hint(query),
                instead: problem.mended(query),
                choices: &problem.choices,
            },
        }
    }
}

/// Appends the object for a query, without a line feed: `line` where the
/// query came with a number, `query` as typed, then the answer or the error.
pub fn object(out: &mut Vec<u8>, line: Option<u64>, query: &str, answer: &Result<Answer, Problem>) {
    object_with(out, line, query, Beside::default(), answer);
}

/// What stands beside a query and its answer.
#[derive(Clone, Copy, Debug, Default)]
pub struct Beside<'a> {
    /// The plain query that a phrase was taken for.
    pub read_as: Option<&'a str>,
    /// Limits and aims as a person is shown them in these units.
    pub shown: Option<Units>,
    /// What was found in the session's files: a line of a log that cannot be
    /// read, a damaged crib, a log that is open.
    pub file_notes: &'a [String],
}

/// The same with what stands beside it.
pub fn object_with(
    out: &mut Vec<u8>,
    line: Option<u64>,
    query: &str,
    beside: Beside<'_>,
    answer: &Result<Answer, Problem>,
) {
    let start = out.len();
    out.push(b'{');
    if let Some(line) = line {
        out.extend_from_slice(b"\"line\":");
        append(out, &line);
        out.push(b',');
    }
    out.extend_from_slice(b"\"query\":");
    append(out, query);
    if let Some(read_as) = beside.read_as {
        out.extend_from_slice(b",\"read_as\":");
        append(out, read_as);
    }
    if let (Some(units), Ok(answer)) = (beside.shown, answer) {
        out.extend_from_slice(b",\"shown\":");
        append(out, &shown::shown(answer, units));
    }
    if !beside.file_notes.is_empty() {
        out.extend_from_slice(b",\"file_notes\":");
        append(out, beside.file_notes);
    }
    // The answer is an object of its own: its opening brace becomes the comma
    // that joins its fields to these.
    let joint = out.len();
    match answer {
        Ok(answer) => append(out, answer),
        Err(problem) => append(out, &Refusal::of(problem, query)),
    }
    if let Some(brace) = out.get_mut(joint) {
        *brace = b',';
    }
    escape(out, start);
}

/// Escapes what a terminal would obey and JSON lets stand: it is inside
/// strings, where its number means the same.
fn escape(out: &mut Vec<u8>, start: usize) {
    let Some(bytes) = out.get(start..) else { return };
    // Nearly every object is plain ASCII, in which nothing is obeyed.
    if bytes.iter().all(|byte| matches!(byte, b' '..=b'~')) {
        return;
    }
    let Ok(text) = std::str::from_utf8(bytes) else { return };
    if !text.contains(is_obeyed) {
        return;
    }
    let mut escaped = String::with_capacity(text.len() + 16);
    for c in text.chars() {
        if is_obeyed(c) {
            let _ = write!(escaped, "\\u{:04x}", u32::from(c));
        } else {
            escaped.push(c);
        }
    }
    out.truncate(start);
    out.extend_from_slice(escaped.as_bytes());
}

/// Our types hold no map with odd keys and no failing writer, so this cannot
/// fail; were it to, the object would end early rather than the program.
fn append<T: Serialize + ?Sized>(out: &mut Vec<u8>, value: &T) {
    let _ = serde_json::to_writer(out, value);
}
