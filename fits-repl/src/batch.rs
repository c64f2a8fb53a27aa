//! A query a line in, a JSON object a line out.

use std::{
    io::{self, BufRead, Read as _, Write},
    time::{Duration, Instant},
};

use crate::{
    answer::Answer,
    problem::{Code, Problem},
    render::json,
    session::Session,
    words::LONGEST_LINE,
};

/// What a run of queries came to, worst first.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
#[non_exhaustive]
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
#[non_exhaustive]
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
    .advise("type one query a line, as `20mm H7/g6`")
    .kind(Code::TooLong);
    (problem, text)
}

/// Bytes gathered before they are written, while more input is waiting.
const ENOUGH: usize = 1 << 16;

/// Input that says on a terminal how far it is read, where its size is known.
#[derive(Debug)]
pub struct Watched<R> {
    input: R,
    size: Option<u64>,
    read: u64,
    told: Option<Instant>,
}

impl<R> Watched<R> {
    /// With the bytes that there are to read; none where nothing is to be said.
    pub const fn new(input: R, size: Option<u64>) -> Self {
        Self { input, size, read: 0, told: None }
    }
}

impl<R: io::Read> io::Read for Watched<R> {
    fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
        let count = self.input.read(buffer)?;
        let Some(size) = self.size.filter(|size| *size > 0) else { return Ok(count) };
        self.read += count as u64;
        let is_due = self.told.is_none_or(|told| told.elapsed() > Duration::from_millis(200));
        let line = match count {
            0 => "\r\x1b[K".to_owned(),
            _ if is_due => format!("\r{} % read", (self.read * 100 / size).min(100)),
            _ => return Ok(count),
        };
        self.told = Some(Instant::now());
        // A terminal that is gone needs nothing.
        let _ = io::stderr().write_all(line.as_bytes());
        Ok(count)
    }
}

/// The mark that some programs put before a text.
pub(crate) const BYTE_ORDER_MARK: &[u8] = b"\xef\xbb\xbf";

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
        let (notes, mark) =
            if number == 1 { (file_notes, BYTE_ORDER_MARK) } else { (&[][..], &[][..]) };
        let line = bytes.strip_prefix(mark).unwrap_or(&bytes);
        let line = line.strip_suffix(b"\n").unwrap_or(line);
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
        .advise("type it again without the bytes that are not text, as `20mm H7/g6`")
        .kind(Code::NotText);
    (problem, text)
}
