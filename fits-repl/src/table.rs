//! A query a row in, a row of cells out: CSV as RFC 4180 has it.

use std::{
    borrow::Cow,
    io::{self, Write},
};

use csv_core::{ReadRecordResult, Reader};

use crate::{
    answer::Answer,
    batch::{BYTE_ORDER_MARK, Outcome, Reading, not_text, read_line, too_long},
    problem::Problem,
    render::{
        cells::Wanted,
        json::{self, Head, Refusal},
    },
    schema,
    session::Session,
};

/// The columns of a table.
#[derive(Clone, Debug)]
pub struct Columns {
    names: Vec<String>,
}

/// Ways to cut a part: they are worked out where a column names one.
const PLANS: [&str; 3] = ["ream", "bore", "turn"];

/// Columns that are never the input's own.
const BESIDE: [&str; 3] = ["line", "query", "error"];

impl Columns {
    /// Reads `query,hole.lower_mm`.
    ///
    /// # Errors
    /// A name is missing, or stands there twice.
    pub fn read(typed: &str) -> Result<Self, String> {
        let names: Vec<String> = typed.split(',').map(|name| name.trim().to_owned()).collect();
        for (at, name) in names.iter().enumerate() {
            if name.is_empty() {
                return Err("a column has no name: `--csv query,hole.lower_mm`".into());
            }
            if names[..at].contains(name) {
                return Err(format!("the column `{name}` is named twice"));
            }
        }
        Ok(Self { names })
    }

    /// The query's column or one that is asked for, where the input has two of it.
    fn unclear(&self, own: &[String]) -> Option<String> {
        let is_read = |name: &String| is_query(name) || self.names.contains(name);
        let twice = |(at, name): (usize, &String)| {
            own[..at].iter().any(|it| it == name || is_query(it) && is_query(name))
        };
        let found =
            own.iter().enumerate().find(|&(at, name)| is_read(name) && twice((at, name)))?;
        Some(format!("the input has two columns `{}`", found.1))
    }

    /// The first that is neither a field of an answer nor among the input's own,
    /// told with the nearest that there is.
    fn unknown(&self, own: &[String]) -> Option<String> {
        let known = schema::paths();
        let fields = |name: &str| {
            let plain: Vec<&str> =
                name.split('.').filter(|part| part.parse::<usize>().is_err()).collect();
            let plain = plain.join(".");
            let of_shown = plain.strip_prefix("shown.").map(|size| format!("{size}_mm"));
            known.contains(&of_shown.unwrap_or(plain))
        };
        let unknown = self.names.iter().find(|name| !own.contains(name) && !fields(name))?;
        let near = own.iter().chain(&known).find(|known| crate::words::near_miss(unknown, known));
        let ends = || {
            let last = [format!(".{unknown}"), format!("{unknown}_mm")];
            known.iter().find(|known| last.iter().any(|last| known.ends_with(last)))
        };
        let hint = near.or_else(ends).map_or_else(
            || "`fits schema` has every field".to_owned(),
            |near| format!("is `{near}` meant?"),
        );
        Some(format!("no answer has the column `{unknown}`: {hint}"))
    }
}

/// A row of the input.
enum Row {
    End,
    /// Its line's number; its cells are read.
    Cells(u64),
    /// It is too long, or a quote in it is not closed: its line's number.
    Broken(u64, Problem),
}

/// Rows that span lines are no longer than this: a quote that is never closed
/// would take the rest of the file.
const LONGEST_SPAN: usize = 1 << 16;

/// The rows of an input, and the cells of the one that was read last.
struct Rows<R> {
    input: io::BufReader<R>,
    number: u64,
    /// Lines that were read and are to be read again.
    again: Vec<u8>,
    /// Of the last of these only the start was read.
    is_cut: bool,
    line: Vec<u8>,
    /// How `line` was read, where that was not told yet.
    untold: Option<Reading>,
    reader: Reader,
    /// The cells, one after the other, and where each ends.
    text: Vec<u8>,
    ends: Vec<usize>,
}

impl<R: io::Read> Rows<R> {
    fn new(input: R) -> Self {
        Self {
            input: io::BufReader::with_capacity(1 << 16, input),
            number: 0,
            again: Vec::new(),
            is_cut: false,
            line: Vec::new(),
            untold: None,
            reader: Reader::new(),
            text: Vec::new(),
            ends: Vec::new(),
        }
    }

    /// Is nothing left that was read and not looked at? Then the next row waits
    /// for the input.
    fn waits(&self) -> bool {
        self.again.is_empty() && !self.input.buffer().contains(&b'\n')
    }

    /// The next line into `self.line`.
    fn next_line(&mut self) -> io::Result<Reading> {
        self.number += 1;
        if self.again.is_empty() {
            return read_line(&mut self.input, &mut self.line);
        }
        let end =
            self.again.iter().position(|byte| *byte == b'\n').map_or(self.again.len(), |at| at + 1);
        self.line.clear();
        self.line.extend(self.again.drain(..end));
        let is_cut = self.again.is_empty() && std::mem::take(&mut self.is_cut);
        Ok(if is_cut { Reading::TooLong } else { Reading::Whole })
    }

    /// The next line that is neither blank nor a comment. `#7` is a drill.
    fn next_full_line(&mut self) -> io::Result<Reading> {
        if let Some(reading) = self.untold.take() {
            return Ok(reading);
        }
        loop {
            let reading = self.next_line()?;
            if self.number == 1
                && let Some(rest) = self.line.strip_prefix(BYTE_ORDER_MARK)
            {
                self.line = rest.to_vec();
            }
            let line = self.line.trim_ascii();
            let is_comment =
                line.first() == Some(&b'#') && !line.get(1).is_some_and(u8::is_ascii_digit);
            if reading != Reading::Whole || !(line.is_empty() || is_comment) {
                return Ok(reading);
            }
        }
    }

    /// The next row, its cells read.
    fn next(&mut self) -> io::Result<Row> {
        match self.next_full_line()? {
            Reading::End => return Ok(Row::End),
            Reading::TooLong => {
                // The cells before the one that is too long say whose row it is.
                self.begin_cells();
                self.add_cells();
                return Ok(Row::Broken(self.number, too_long(&self.line).0));
            }
            Reading::Whole => {}
        }
        let start = self.number;
        let mut whole = Vec::new();
        self.begin_cells();
        loop {
            if self.add_cells() {
                return Ok(Row::Cells(start));
            }
            // The row goes on: a quote is open, or the last line has no end.
            whole.append(&mut self.line);
            let reading = if whole.len() < LONGEST_SPAN && whole.ends_with(b"\n") {
                self.next_line()?
            } else {
                Reading::End
            };
            match reading {
                Reading::Whole => {}
                Reading::End if !whole.ends_with(b"\n") => self.line.clear(),
                Reading::End | Reading::TooLong => {
                    // Only the line that opened it is lost.
                    let first = whole.iter().position(|byte| *byte == b'\n').unwrap_or(whole.len());
                    let mut again = whole.split_off((first + 1).min(whole.len()));
                    again.append(&mut self.line);
                    again.append(&mut self.again);
                    (self.again, self.number) = (again, start);
                    self.is_cut |= reading == Reading::TooLong;
                    let problem = Problem::new("a quote is opened here and not closed", 0..first)
                        .advise("a cell that holds quotes doubles them, as \"1\"\" press\"");
                    return Ok(Row::Broken(start, problem));
                }
            }
        }
    }

    fn begin_cells(&mut self) {
        self.reader.reset();
        self.text.clear();
        self.ends.clear();
    }

    /// Adds the cells of the line that are whole; says whether the row ends there.
    fn add_cells(&mut self) -> bool {
        let (mut written, mut ended) = (self.text.len(), self.ends.len());
        let mut rest = self.line.as_slice();
        let is_whole = loop {
            self.text.resize(written + rest.len() + 1, 0);
            self.ends.resize(ended + rest.len() + 1, 0);
            let (result, taken, wrote, ends) = self.reader.read_record(
                rest,
                self.text.get_mut(written..).unwrap_or_default(),
                self.ends.get_mut(ended..).unwrap_or_default(),
            );
            rest = rest.get(taken..).unwrap_or_default();
            (written, ended) = (written + wrote, ended + ends);
            match result {
                ReadRecordResult::Record | ReadRecordResult::End => break true,
                ReadRecordResult::InputEmpty => break false,
                ReadRecordResult::OutputFull | ReadRecordResult::OutputEndsFull => {}
            }
        };
        self.text.truncate(written);
        self.ends.truncate(ended);
        is_whole
    }

    fn cell(&self, at: usize) -> Option<&[u8]> {
        let start = if at == 0 { 0 } else { *self.ends.get(at - 1)? };
        self.text.get(start..*self.ends.get(at)?)
    }

    /// The line as one cell.
    fn take_line(&mut self) {
        self.text.clear();
        self.text.extend_from_slice(self.line.trim_ascii_end());
        self.ends.clear();
        self.ends.push(self.text.len());
    }

    /// The next row of lines that are a query each.
    fn next_query(&mut self) -> io::Result<Row> {
        Ok(match self.next_full_line()? {
            Reading::End => Row::End,
            Reading::TooLong => Row::Broken(self.number, too_long(&self.line).0),
            Reading::Whole => {
                self.take_line();
                Row::Cells(self.number)
            }
        })
    }

    /// A first line whose columns are parted by something else than commas.
    fn parted_otherwise(&self) -> Option<String> {
        let (_, by) =
            OTHER_SEPARATORS.into_iter().find(|&(by, _)| self.names_parted_by(by).is_some())?;
        Some(format!(
            "the columns of the first line are parted by {by}: save the table with commas"
        ))
    }

    /// The names of the columns, if the first line names one `query`; else that
    /// line is read again.
    fn header(&mut self) -> io::Result<Option<Vec<String>>> {
        let reading = self.next_full_line()?;
        self.untold = Some(reading);
        if reading != Reading::Whole {
            return Ok(None);
        }
        let names = self.names_parted_by(',');
        if names.is_some() {
            self.untold = None;
        }
        Ok(names)
    }

    /// The names that the line has where `by` parts them, if one is `query`.
    fn names_parted_by(&self, by: char) -> Option<Vec<String>> {
        let line = String::from_utf8_lossy(&self.line);
        let names: Vec<String> =
            line.split(by).map(|name| name.trim().trim_matches('"').trim().to_owned()).collect();
        names.iter().any(|name| is_query(name)).then_some(names)
    }
}

/// What other programs part the cells of a row with.
const OTHER_SEPARATORS: [(char, &str); 2] = [(';', "`;`"), ('\t', "tabs")];

fn is_query(name: &str) -> bool {
    name.eq_ignore_ascii_case("query")
}

/// Appends a cell, quoted where it must be.
fn append(out: &mut Vec<u8>, cell: &[u8]) {
    if cell.iter().any(|byte| matches!(byte, b',' | b'"' | b'\n' | b'\r')) {
        out.push(b'"');
        for byte in cell {
            if *byte == b'"' {
                out.push(b'"');
            }
            out.push(*byte);
        }
        out.push(b'"');
    } else {
        out.extend_from_slice(cell);
    }
}

fn append_row<'a>(out: &mut Vec<u8>, cells: impl Iterator<Item = &'a [u8]>) {
    for (at, cell) in cells.enumerate() {
        if at > 0 {
            out.push(b',');
        }
        append(out, cell);
    }
    out.push(b'\n');
}

/// Bytes gathered before they are written, while more input is waiting.
const ENOUGH: usize = 1 << 16;

/// Answers every row until the input ends. A query that is refused is told in the
/// column `error`, or else to `complain`; the rest goes on.
///
/// # Errors
/// Reading or writing failed; of kind [`io::ErrorKind::InvalidInput`] where a column is
/// unknown.
pub fn run(
    input: impl io::Read,
    mut output: impl Write,
    session: &mut Session,
    columns: &Columns,
    complain: impl Fn(&str),
) -> io::Result<Outcome> {
    let mut rows = Rows::new(input);
    let own = rows.header()?;
    let names = own.as_deref().unwrap_or_default();
    let parted = own.is_none().then(|| rows.parted_otherwise()).flatten();
    if let Some(why) = parted.or_else(|| columns.unclear(names)).or_else(|| columns.unknown(names))
    {
        return Err(io::Error::new(io::ErrorKind::InvalidInput, why));
    }
    let query_at = own.as_ref().and_then(|own| own.iter().position(|name| is_query(name)));
    let own = own.unwrap_or_default();
    let of_input = |name: &String| {
        let at = own.iter().position(|own| own == name);
        at.filter(|_| !BESIDE.contains(&name.as_str()))
    };
    let of_input: Vec<Option<usize>> = columns.names.iter().map(of_input).collect();
    let has = |wanted| columns.names.iter().any(|name| name.split('.').next() == Some(wanted));
    let (tells_error, tells_shown) = (has("error"), has("shown"));
    session.plans = columns.names.iter().any(|name| PLANS.iter().any(|plan| name.contains(plan)));
    let mut wanted = Wanted::default();
    for (cell, (name, of_input)) in columns.names.iter().zip(&of_input).enumerate() {
        // What is copied from the row is looked for nowhere else.
        if of_input.is_none() && !matches!(name.as_str(), "line" | "query") {
            wanted.add(name, cell);
        }
    }
    let mut out = Vec::with_capacity(2 * ENOUGH);
    append_row(&mut out, columns.names.iter().map(String::as_bytes));
    let mut cells: Vec<Vec<u8>> = vec![Vec::new(); columns.names.len()];
    let mut worst = Outcome::default();
    loop {
        let row = if query_at.is_some() { rows.next()? } else { rows.next_query()? };
        let (number, answer, text) = match row {
            Row::End => {
                output.write_all(&out)?;
                output.flush()?;
                return Ok(worst);
            }
            Row::Broken(number, problem) => (number, Err(problem), Cow::default()),
            Row::Cells(number) => {
                let (answer, text) = ask(session, rows.cell(query_at.unwrap_or_default()));
                (number, answer, text)
            }
        };
        worst = worst.max(Outcome::of(&answer));
        cells.iter_mut().for_each(Vec::clear);
        let is_found = match &answer {
            Ok(answer) => wanted.pick(answer, &mut cells),
            Err(problem) => wanted.pick(&Refusal::of(problem, &text), &mut cells),
        };
        // What stands beside an answer is named by no field of one.
        if !is_found {
            let beside = if answer.is_ok() {
                let shown = tells_shown.then_some(session.shown().units);
                json::Beside { shown, ..session.beside(&[]) }
            } else {
                json::Beside::default()
            };
            wanted.pick(&Head::of(Some(number), &text, beside, &answer), &mut cells);
        }
        for ((cell, name), of_input) in cells.iter_mut().zip(&columns.names).zip(&of_input) {
            match (of_input, name.as_str(), &answer) {
                (Some(at), ..) => {
                    let own = String::from_utf8_lossy(rows.cell(*at).unwrap_or_default());
                    cell.extend_from_slice(own.as_bytes());
                }
                (None, "query", _) => cell.extend_from_slice(text.as_bytes()),
                (None, "line", _) => cell.extend_from_slice(number.to_string().as_bytes()),
                (None, "error", Err(problem)) => {
                    cell.clear();
                    cell.extend_from_slice(problem.message.as_bytes());
                }
                _ => {}
            }
        }
        append_row(&mut out, cells.iter().map(Vec::as_slice));
        if let (Err(problem), false) = (&answer, tells_error) {
            complain(&format!("line {number}: {}; {}", problem.message, problem.hint(&text)));
        }
        if out.len() >= ENOUGH || rows.waits() {
            output.write_all(&out)?;
            output.flush()?;
            out.clear();
        }
    }
}

/// The answer of a cell, and its text.
fn ask<'a>(
    session: &mut Session,
    cell: Option<&'a [u8]>,
) -> (Result<Answer, Problem>, Cow<'a, str>) {
    let Some(cell) = cell else {
        let problem = Problem::new("this row has no cell for the query", 0..0)
            .advise("the first line names the columns");
        return (Err(problem), Cow::default());
    };
    match std::str::from_utf8(cell) {
        Ok(text) => (session.evaluate(text.trim()), text.trim().into()),
        Err(error) => {
            let (problem, text) = not_text(cell, error);
            (Err(problem), text.into())
        }
    }
}
