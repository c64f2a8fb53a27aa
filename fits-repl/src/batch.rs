//! A query a line in, a JSON object a line out.

use std::io::{self, BufRead, Read as _, Write};

use crate::{
    answer::Answer, problem::Problem, render::json, session::Session, words::LONGEST_LINE,
};

/// What a run of queries came to, worst first.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Outcome {
    /// Every query was answered.
    #[default]
    Answered,
    /// Every query was answered, and a reading is out of its limits.
    OutOfLimits,
    /// A query was not understood.
    NotUnderstood,
    /// A file failed, or a log that was asked for is not kept.
    Failed,
}

impl Outcome {
    /// Of one query.
    pub fn of(answer: &Result<Answer, Problem>) -> Self {
        match answer {
            Ok(answer) if answer.is_not_logged() => Self::Failed,
            Ok(answer) if answer.is_out_of_limits() => Self::OutOfLimits,
            Ok(_) => Self::Answered,
            Err(problem) if problem.is_failure => Self::Failed,
            Err(_) => Self::NotUnderstood,
        }
    }

    /// The exit status that says so.
    pub const fn status(self) -> u8 {
        match self {
            Self::Answered => 0,
            Self::OutOfLimits => 1,
            Self::NotUnderstood => 2,
            Self::Failed => 3,
        }
    }
}

/// The longest line that is read: no query is nearly so long, and a file
/// without line feeds would be read whole into memory.
pub const LONGEST_READ: usize = 1 << 20;

/// How far a line was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reading {
    /// There is none.
    End,
    /// To its end.
    Whole,
    /// It is longer than [`LONGEST_READ`]: its start is kept, what follows was
    /// passed over.
    TooLong,
}

/// Reads a line with its line feed.
///
/// # Errors
/// The input failed.
pub fn read_line(input: &mut impl BufRead, bytes: &mut Vec<u8>) -> io::Result<Reading> {
    bytes.clear();
    let most = LONGEST_READ as u64 + 1;
    if input.by_ref().take(most).read_until(b'\n', bytes)? == 0 {
        return Ok(Reading::End);
    }
    if bytes.len() <= LONGEST_READ || bytes.ends_with(b"\n") {
        return Ok(Reading::Whole);
    }
    bytes.truncate(LONGEST_LINE);
    input.skip_until(b'\n')?;
    Ok(Reading::TooLong)
}

/// The problem with a line that is too long to be read, and its start.
pub fn too_long(start: &[u8]) -> (Problem, String) {
    let text = String::from_utf8_lossy(start).into_owned();
    let problem = Problem::new(
        format!(
            "the line is longer than {LONGEST_READ} bytes, a query has at most {LONGEST_LINE}: \
             only its start was read"
        ),
        0..text.len(),
    )
    .advise("type one query a line, as `20 H7/g6`");
    (problem, text)
}

/// Bytes gathered before they are written, while more input is waiting.
const ENOUGH: usize = 1 << 16;

/// Answers every line until the input ends; the first answer holds what was
/// found in the session's files. Answers are written out as soon as no further
/// input is waiting, so a program may talk to it line by line.
///
/// # Errors
/// Reading or writing failed.
pub fn run(
    input: impl io::Read,
    mut output: impl Write,
    session: &mut Session,
    file_notes: &[String],
) -> io::Result<Outcome> {
    let mut input = io::BufReader::with_capacity(ENOUGH, input);
    let mut out = Vec::with_capacity(2 * ENOUGH);
    let mut bytes = Vec::new();
    let mut worst = Outcome::default();
    let mut number = 0;
    loop {
        let reading = read_line(&mut input, &mut bytes)?;
        if reading == Reading::End {
            output.write_all(&out)?;
            output.flush()?;
            return Ok(worst);
        }
        number += 1;
        let notes = if number == 1 { file_notes } else { &[] };
        let line = bytes.strip_suffix(b"\n").unwrap_or(&bytes);
        let line = line.strip_suffix(b"\r").unwrap_or(line);
        worst = worst.max(if reading == Reading::TooLong {
            let (problem, text) = too_long(line);
            let beside = json::Beside { file_notes: notes, ..json::Beside::default() };
            json::object_with(&mut out, Some(number), &text, beside, &Err(problem));
            Outcome::NotUnderstood
        } else {
            answer_bytes(&mut out, number, line, session, notes)
        });
        out.push(b'\n');
        if out.len() >= ENOUGH || !input.buffer().contains(&b'\n') {
            output.write_all(&out)?;
            output.flush()?;
            out.clear();
        }
    }
}

fn answer_bytes(
    out: &mut Vec<u8>,
    number: u64,
    line: &[u8],
    session: &mut Session,
    notes: &[String],
) -> Outcome {
    match std::str::from_utf8(line) {
        Ok(text) => {
            let answer = session.evaluate(text);
            json::object_with(out, Some(number), text, session.beside(notes), &answer);
            Outcome::of(&answer)
        }
        Err(error) => {
            let (problem, text) = not_text(line, error);
            let beside = json::Beside { file_notes: notes, ..json::Beside::default() };
            json::object_with(out, Some(number), &text, beside, &Err(problem));
            Outcome::NotUnderstood
        }
    }
}

/// The problem with bytes that are not text, and the text with a mark in
/// their place.
pub fn not_text(line: &[u8], error: std::str::Utf8Error) -> (Problem, String) {
    let text = String::from_utf8_lossy(line).into_owned();
    let start = error.valid_up_to();
    let end = start + char::REPLACEMENT_CHARACTER.len_utf8();
    // What is left without them may not be a query either: it is not offered.
    let problem = Problem::new("the line is not UTF-8 text", start..end.min(text.len()))
        .advise("type it again without the bytes that are not text, as `20 H7/g6`");
    (problem, text)
}
