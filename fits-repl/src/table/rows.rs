//! The rows of a CSV, each with its line.

use std::io::{self};

use csv_core::{ReadRecordResult, Reader};

use crate::{
    batch::{BYTE_ORDER_MARK, Reading, read_line, too_long},
    problem::Problem,
};

/// A row of the input.
pub(super) enum Row {
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
pub(super) struct Rows<R> {
    pub(super) input: io::BufReader<R>,
    pub(super) number: u64,
    /// Lines that were read and are to be read again.
    pub(super) again: Vec<u8>,
    /// Of the last of these only the start was read.
    pub(super) is_cut: bool,
    pub(super) line: Vec<u8>,
    /// How `line` was read, where that was not told yet.
    pub(super) untold: Option<Reading>,
    pub(super) reader: Reader,
    /// The cells, one after the other, and where each ends.
    pub(super) text: Vec<u8>,
    pub(super) ends: Vec<usize>,
}

impl<R: io::Read> Rows<R> {
    pub(super) fn new(input: R) -> Self {
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
    pub(super) fn waits(&self) -> bool {
        self.again.is_empty() && !self.input.buffer().contains(&b'\n')
    }

    /// The next line into `self.line`.
    pub(super) fn next_line(&mut self) -> io::Result<Reading> {
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
    pub(super) fn next_full_line(&mut self) -> io::Result<Reading> {
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

    /// The next row, its cells read; its query stands at a place.
    pub(super) fn next(&mut self, query_at: usize) -> io::Result<Row> {
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
                let is_one_line = !whole.trim_ascii_end().contains(&b'\n') && self.line.len() < 2;
                if whole.is_empty() || is_one_line {
                    return Ok(Row::Cells(start));
                }
                whole.append(&mut self.line);
                if spans_lines(&whole) && !self.cell(query_at).is_some_and(has_two_lines) {
                    return Ok(Row::Cells(start));
                }
                return Ok(self.only_first_is_lost(start, whole));
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
                Reading::End if !whole.ends_with(b"\n") => self.line = b"\n".to_vec(),
                Reading::End | Reading::TooLong => {
                    whole.append(&mut self.line);
                    self.is_cut |= reading == Reading::TooLong;
                    return Ok(self.only_first_is_lost(start, whole));
                }
            }
        }
    }

    /// Of lines that a quote took together, the one that opened it is lost; the
    /// others are read again.
    fn only_first_is_lost(&mut self, start: u64, mut whole: Vec<u8>) -> Row {
        let first = whole.iter().position(|byte| *byte == b'\n').unwrap_or(whole.len());
        let mut again = whole.split_off((first + 1).min(whole.len()));
        again.append(&mut self.again);
        (self.again, self.number) = (again, start);
        // Its own cells say whose row it is; the one that is open is none.
        self.line = whole;
        self.begin_cells();
        self.add_cells();
        let problem = Problem::new("a quote is opened here and not closed", 0..first)
            .advise("a cell that holds quotes doubles them, as \"1\"\" press\"");
        Row::Broken(start, problem)
    }

    pub(super) fn begin_cells(&mut self) {
        self.reader.reset();
        self.text.clear();
        self.ends.clear();
    }

    /// Adds the cells of the line that are whole; says whether the row ends there.
    pub(super) fn add_cells(&mut self) -> bool {
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

    pub(super) fn cell(&self, at: usize) -> Option<&[u8]> {
        let start = if at == 0 { 0 } else { *self.ends.get(at - 1)? };
        self.text.get(start..*self.ends.get(at)?)
    }

    /// The line as one cell.
    pub(super) fn take_line(&mut self) {
        self.text.clear();
        self.text.extend_from_slice(self.line.trim_ascii_end());
        self.ends.clear();
        self.ends.push(self.text.len());
    }

    /// The next row of lines that are a query each.
    pub(super) fn next_query(&mut self) -> io::Result<Row> {
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
    pub(super) fn parted_otherwise(&self) -> Option<String> {
        let (_, by) =
            OTHER_SEPARATORS.into_iter().find(|&(by, _)| self.names_parted_by(by).is_some())?;
        Some(format!(
            "the columns of the first line are parted by {by}: save the table with commas"
        ))
    }

    /// The names of the columns, if the first line names one `query`; else that
    /// line is read again.
    pub(super) fn header(&mut self) -> io::Result<Option<Vec<String>>> {
        let reading = self.next_full_line()?;
        self.untold = Some(reading);
        if reading != Reading::Whole {
            return Ok(None);
        }
        if self.names_parted_by(',').is_none() {
            return Ok(None);
        }
        // It is a row as any other: a name may hold a comma.
        let name = |cell: &[u8]| String::from_utf8_lossy(cell).trim().to_owned();
        let names: Vec<String> = match self.next(usize::MAX)? {
            Row::Cells(_) => (0..).map_while(|at| self.cell(at)).map(name).collect(),
            _ => Vec::new(),
        };
        if names.iter().any(|name| is_query(name)) {
            return Ok(Some(names));
        }
        Err(io::Error::new(
            io::ErrorKind::InvalidInput,
            "the names in the first line can't be told apart: a quote in it is not closed, or \
             parts nothing",
        ))
    }

    /// The names that the line has where `by` parts them, if one is `query`.
    pub(super) fn names_parted_by(&self, by: char) -> Option<Vec<String>> {
        let line = String::from_utf8_lossy(&self.line);
        let names: Vec<String> =
            line.split(by).map(|name| name.trim().trim_matches('"').trim().to_owned()).collect();
        names.iter().any(|name| is_query(name)).then_some(names)
    }
}

/// Do the quotes of a row hold its line feeds as a writer of CSV puts them: at the
/// start of a cell and at its end, doubled inside? A quote that was forgotten takes
/// lines until the next, which then stands in the middle of a cell.
fn spans_lines(row: &[u8]) -> bool {
    let row = row.trim_ascii_end();
    let (mut is_open, mut is_start, mut bytes) = (false, true, row.iter().peekable());
    while let Some(byte) = bytes.next() {
        match (byte, is_open) {
            (b'"', true) if bytes.next_if_eq(&&b'"').is_some() => {}
            (b'"', true) => {
                if !matches!(bytes.peek(), None | Some(b',')) {
                    return false;
                }
                is_open = false;
            }
            (b'"', false) if !is_start => return false,
            (b'"', false) => is_open = true,
            _ => {}
        }
        is_start = *byte == b',' && !is_open;
    }
    !is_open
}

/// A query never goes on in a next line.
fn has_two_lines(cell: &[u8]) -> bool {
    cell.trim_ascii().contains(&b'\n')
}

/// What other programs part the cells of a row with.
const OTHER_SEPARATORS: [(char, &str); 2] = [(';', "`;`"), ('\t', "tabs")];

pub(super) fn is_query(name: &str) -> bool {
    name.eq_ignore_ascii_case("query")
}
