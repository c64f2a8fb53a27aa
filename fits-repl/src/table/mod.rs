//! A query a row in, a row of cells out: CSV as RFC 4180 has it.

mod rows;

use std::{
    borrow::Cow,
    io::{self, Write},
};

use crate::{
    answer::Answer,
    batch::{Outcome, not_text},
    problem::{Code, Problem},
    render::{
        cells::Wanted,
        json::{self, Head, Refusal},
    },
    schema,
    session::Session,
    table::rows::{Row, Rows, is_query},
};

/// The columns of a table.
#[derive(Clone, Debug)]
pub struct Columns {
    names: Vec<String>,
}

/// Ways to cut a part: they are worked out where a column names one.
const PLANS: [&str; 3] = ["ream", "bore", "turn"];

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
    fn unknown(&self, own: &[String], known: &[String]) -> Option<String> {
        let unknown =
            self.names.iter().find(|name| !own.contains(name) && !is_field(name, known))?;
        let near = own.iter().chain(known).find(|known| crate::words::near_miss(unknown, known));
        let ends = || {
            let last = [format!(".{unknown}"), format!("{unknown}_mm")];
            known.iter().find(|known| last.iter().any(|last| known.ends_with(last)))
        };
        let hint = near.or_else(ends).map_or_else(
            || "`fits schema` has every field".to_owned(),
            |near| format!("is `{near}` meant?"),
        );
        let unread = if own.iter().any(|name| is_damaged(name)) {
            ", and none that can be read in the first line, which is not UTF-8 text"
        } else {
            ""
        };
        Some(format!("no answer has the column `{unknown}`{unread}: {hint}"))
    }

    /// What is to be told before a row is read: columns of the input that an answer
    /// has too, and names that are no text.
    fn told(&self, own: &[String], known: &[String]) -> Vec<String> {
        let both = self.names.iter().filter(|name| own.contains(name) && !is_query(name));
        let both = both.filter(|name| is_figure(name) && is_field(name, known));
        let told = both.map(|name| {
            format!(
                "the column `{name}` is the answer's: the input's own is not copied, it needs \
                 another name"
            )
        });
        let damaged = own.iter().filter(|name| is_damaged(name));
        let damaged = damaged.map(|name| {
            format!("the first line is not UTF-8 text: the column `{name}` can't be asked for")
        });
        told.chain(damaged).collect()
    }
}

/// Is it a field of an answer, or stands beside one?
fn is_field(name: &str, known: &[String]) -> bool {
    let plain: Vec<&str> = name.split('.').filter(|part| part.parse::<usize>().is_err()).collect();
    let plain = plain.join(".");
    let of_shown = plain.strip_prefix("shown.").map(|size| format!("{size}_mm"));
    known.contains(&of_shown.unwrap_or(plain))
}

/// Is a field named so by the program alone? `note` and `part` are words for a
/// column of one's own; figures and what stands beside an answer never are.
fn is_figure(name: &str) -> bool {
    name.contains(['.', '_']) || matches!(name, "line" | "query" | "error" | "shown")
}

/// Does it hold the mark for bytes that are no text?
fn is_damaged(name: &str) -> bool {
    name.contains(char::REPLACEMENT_CHARACTER)
}

/// Appends a cell, quoted where it must be.
pub(super) fn append(out: &mut Vec<u8>, cell: &[u8]) {
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

/// Columns of the input under a word of one's own that an answer may have a field of
/// too: what that field is where the column is copied.
struct Hidden<'a>(Vec<(&'a str, Wanted)>);

impl<'a> Hidden<'a> {
    fn of(names: &'a [String], of_input: &[Option<usize>], known: &[String]) -> Self {
        let copied =
            names.iter().zip(of_input).filter(|(name, at)| at.is_some() && is_field(name, known));
        let wanted = copied.map(|(name, _)| {
            let mut field = Wanted::default();
            field.add(name, 0);
            (name.as_str(), field)
        });
        Self(wanted.collect())
    }

    /// Tells once of each that an answer has it.
    fn tell(&mut self, answer: &Answer, number: u64, complain: &impl Fn(&str)) {
        self.0.retain(|(name, field)| {
            let mut cell = [Vec::new()];
            field.pick(answer, &mut cell);
            let is_there = cell.iter().any(|cell| !cell.is_empty());
            if is_there {
                complain(&format!(
                    "line {number}: the answer has a `{name}` too, the column is the input's"
                ));
            }
            !is_there
        });
    }
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
    let known = schema::paths();
    let wrong =
        parted.or_else(|| columns.unclear(names)).or_else(|| columns.unknown(names, &known));
    if let Some(why) = wrong {
        return Err(io::Error::new(io::ErrorKind::InvalidInput, why));
    }
    for told in columns.told(names, &known) {
        complain(&told);
    }
    let query_at = own.as_ref().and_then(|own| own.iter().position(|name| is_query(name)));
    let own = own.unwrap_or_default();
    let of_input = |name: &String| {
        let at = own.iter().position(|own| own == name);
        // A figure that an answer has comes from the answer alone.
        at.filter(|_| !(is_figure(name) && is_field(name, &known)))
    };
    let of_input: Vec<Option<usize>> = columns.names.iter().map(of_input).collect();
    let has = |wanted| columns.names.iter().any(|name| name.split('.').next() == Some(wanted));
    let (tells_error, tells_shown) = (has("error"), has("shown"));
    session.plans = columns.names.iter().any(|name| PLANS.iter().any(|plan| name.contains(plan)));
    let mut hidden = Hidden::of(&columns.names, &of_input, &known);
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
        let row = match query_at {
            Some(at) => rows.next(at)?,
            None => rows.next_query()?,
        };
        let (number, answer, text) = match row {
            Row::End => {
                output.write_all(&out)?;
                output.flush()?;
                return Ok(worst);
            }
            Row::Broken(number, problem) => (number, Err(problem), Cow::default()),
            Row::Cells(number) => {
                let (answer, text) = ask(session, rows.cell(query_at.unwrap_or_default()));
                let kept = columns.names.iter().zip(&of_input);
                let damaged = kept.filter_map(|(name, at)| Some((name, rows.cell((*at)?)?)));
                (number, damaged_cell(damaged, &text).map_or(answer, Err), text)
            }
        };
        worst = worst.max(Outcome::of(&answer));
        if let Ok(answer) = &answer {
            hidden.tell(answer, number, &complain);
        }
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

/// The problem with a row whose kept cells are not all text: what is written of
/// them is not what was read, so the row is not answered.
fn damaged_cell<'a>(
    mut kept: impl Iterator<Item = (&'a String, &'a [u8])>,
    text: &str,
) -> Option<Problem> {
    let (name, _) = kept.find(|(_, cell)| std::str::from_utf8(cell).is_err())?;
    let message = format!("the cell `{name}` of this row is not UTF-8 text");
    let problem = Problem::new(message, 0..text.len());
    Some(problem.advise("save the table as UTF-8").kind(Code::NotText))
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
