//! One JSON object on one line.

use std::io;

use schemars::JsonSchema;
use serde::Serialize;
use serde_json::{Map, Value, ser::Formatter};

use crate::{
    answer::Answer,
    problem::{Code, Problem},
    query::Units,
    render::{printable::is_obeyed, shown, writer::Writer},
    sentence::Slip,
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
#[non_exhaustive]
pub struct Beside<'a> {
    /// The plain query that a phrase was taken for.
    pub read_as: Option<&'a str>,
    /// Words that were taken for slips of typing.
    pub slips: &'a [Slip],
    /// The units that the question was put in: what its bare numbers were taken for.
    pub units: Option<Units>,
    /// Limits and aims as a person is shown them in these units.
    pub shown: Option<Units>,
    /// What was found in the session's files: a line of a log that cannot be
    /// read, a damaged crib, a log that is open.
    pub file_notes: &'a [String],
}

/// What stands before an answer or an error, in this order.
#[derive(Serialize, JsonSchema)]
pub(crate) struct Head<'a> {
    /// The number of the line, in a batch.
    #[serde(skip_serializing_if = "Option::is_none")]
    line: Option<u64>,
    /// What was asked, as typed.
    query: &'a str,
    /// The plain queries that a phrase was taken for, parted by ` ; `.
    #[serde(skip_serializing_if = "Option::is_none")]
    read_as: Option<&'a str>,
    /// Words that were taken for slips of typing.
    #[serde(skip_serializing_if = "<[Slip]>::is_empty")]
    slips: &'a [Slip],
    /// The units that the question was put in: what its bare numbers were taken for.
    #[serde(skip_serializing_if = "Option::is_none")]
    units: Option<Units>,
    /// With `--shown`: limits and aims in words, under the names that they have in the
    /// answer without `_mm`, in the units of the question.
    #[serde(skip_serializing_if = "Option::is_none")]
    shown: Option<Map<String, Value>>,
    /// What was found in the files of tools and logs.
    #[serde(skip_serializing_if = "<[String]>::is_empty")]
    file_notes: &'a [String],
}

impl<'a> Head<'a> {
    pub(crate) fn of(
        line: Option<u64>,
        query: &'a str,
        beside: Beside<'a>,
        answer: &Result<Answer, Problem>,
    ) -> Self {
        let shown = beside.shown.zip(answer.as_ref().ok());
        // The settings name theirs themselves.
        let is_named = !matches!(answer, Ok(Answer::Settings(_)) | Err(_));
        Self {
            line,
            query,
            read_as: beside.read_as,
            slips: beside.slips,
            units: beside.units.filter(|_| is_named),
            shown: shown.map(|(units, answer)| shown::shown(answer, units)),
            file_notes: beside.file_notes,
        }
    }
}

/// The same with what stands beside it.
pub fn object_with(
    out: &mut Vec<u8>,
    line: Option<u64>,
    query: &str,
    beside: Beside<'_>,
    answer: &Result<Answer, Problem>,
) {
    append(out, &Head::of(line, query, beside, answer));
    // The answer is an object of its own: the two braces between them become the
    // comma that joins its fields to these.
    out.pop();
    let joint = out.len();
    match answer {
        Ok(answer) => append(out, answer),
        Err(problem) => append(out, &Refusal::of(problem, query)),
    }
    if let Some(brace) = out.get_mut(joint) {
        *brace = b',';
    }
}

/// Our types hold no map with odd keys and no failing writer, so this cannot
/// fail; were it to, the object would end early rather than the program.
fn append<T: Serialize + ?Sized>(out: &mut Vec<u8>, value: &T) {
    let _ = write(out, value);
}

/// Appends a value in which nothing is left that a terminal would obey.
pub(crate) fn write<T: Serialize + ?Sized>(out: &mut Vec<u8>, value: &T) -> serde_json::Result<()> {
    value.serialize(Writer(out))
}

/// The same as a text of its own.
pub(crate) fn text<T: Serialize + ?Sized>(value: &T) -> String {
    let mut out = Vec::new();
    append(&mut out, value);
    String::from_utf8(out).unwrap_or_default()
}

/// Compact JSON that escapes what a terminal would obey and JSON lets stand: it is
/// inside strings, where its number means the same.
pub(super) struct ForTerminal;

impl Formatter for ForTerminal {
    fn write_string_fragment<W: io::Write + ?Sized>(
        &mut self,
        out: &mut W,
        fragment: &str,
    ) -> io::Result<()> {
        // Nearly every text: no character of it is looked at by itself.
        if fragment.bytes().fold(true, |all, byte| all & matches!(byte, b' '..=b'~')) {
            return out.write_all(fragment.as_bytes());
        }
        let mut rest = fragment;
        while let Some((at, obeyed)) = rest.char_indices().find(|(_, c)| is_obeyed(*c)) {
            let (plain, from) = rest.split_at(at);
            write!(out, "{plain}\\u{:04x}", u32::from(obeyed))?;
            rest = from.strip_prefix(obeyed).unwrap_or_default();
        }
        out.write_all(rest.as_bytes())
    }
}
