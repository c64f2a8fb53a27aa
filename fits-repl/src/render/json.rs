//! One JSON object on one line.

use std::fmt::Write as _;

use serde::Serialize;

use crate::{
    answer::Answer, problem::Problem, query::Units, render::printable::is_obeyed, sentence::Slip,
};

#[derive(Serialize)]
struct Refusal<'a> {
    error: ErrorFields<'a>,
}

#[derive(Serialize)]
struct ErrorFields<'a> {
    message: &'a str,
    at: [usize; 2],
    hint: String,
    #[serde(skip_serializing_if = "<[String]>::is_empty")]
    choices: &'a [String],
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
    /// Words that were taken for slips of typing.
    pub slips: &'a [Slip],
    /// The units that the question was put in: what its bare numbers were taken for.
    pub units: Option<Units>,
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
    if !beside.slips.is_empty() {
        out.extend_from_slice(b",\"slips\":");
        append(out, beside.slips);
    }
    // The settings name theirs themselves.
    let is_named = !matches!(answer, Ok(Answer::Settings(_)) | Err(_));
    if let Some(units) = beside.units.filter(|_| is_named) {
        out.extend_from_slice(b",\"units\":");
        append(out, &units);
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
        Err(problem) => append(
            out,
            &Refusal {
                error: ErrorFields {
                    message: &problem.message,
                    at: [problem.at.start, problem.at.end],
                    hint: problem.hint(query),
                    choices: &problem.choices,
                },
            },
        ),
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
