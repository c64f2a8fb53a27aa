//! The `fits` command: a prompt, one answer, or a line-by-line service.

use std::{
    ffi::OsString,
    io::{self, IsTerminal as _, Write as _},
    path::PathBuf,
    process::ExitCode,
};

use fits_repl::{
    Home,
    batch::{self, Outcome, Reading, not_text},
    line_editor, note,
    render::{Colour, json, printable, svg, text::Text},
    session::{Logs, Session},
    sheet, signals,
};

const USAGE: &str = "\
Fits and tolerances at the lathe: what to cut both parts to, and how to get there.

usage: fits                     open the prompt
       fits [--json|--svg] QUERY   answer once: text, one JSON object, a picture
       fits job FILE [--json|--csv]   a note of parts and fits: every figure to cut
       fits sheet FILE          a page to print for each part of a job, in HTML
       fits batch [FILE]        read a query a line, write a JSON object a line

options:
  --json         one JSON object on one line
  --svg          the picture of a part, pair, reading, plan, log, joint or stack
  --crib FILE    the tools one owns; batch knows none unless told
  --log FILE     keep the pass log in FILE; the prompt keeps its own
  -h, --help     this text; queries: `fits help`
  -V, --version  the version

exit status: 0 answered; 1 answered, and a reading is out of limits;
2 a query was not understood; 3 a file or the machine failed

examples: fits 20 H7/g6
          fits '20 H7/g6, hole = 20.013'
          fits --json 'bore 3/4in H7 from 0.735in'
";

/// The machine failed.
const FAILED: u8 = 3;
/// The command line or a query was not understood.
const NOT_UNDERSTOOD: u8 = 2;

/// What one answer is written as.
#[derive(Clone, Copy, PartialEq)]
enum Form {
    Text,
    Json,
    Svg,
    Csv,
}

/// What the command line asks for.
enum Task {
    Usage,
    Version,
    Prompt,
    Once { form: Form, query: OsString },
    Batch(Option<OsString>),
    Job { file: PathBuf, form: Form },
    Sheet(PathBuf),
}

fn main() -> ExitCode {
    let (files, task) = match task(std::env::args_os()) {
        Ok(task) => task,
        Err(message) => {
            complain(&format!("{message}\ntry `fits --help`"));
            return ExitCode::from(NOT_UNDERSTOOD);
        }
    };
    let done = match task {
        Task::Usage => write_out(USAGE.as_bytes()).map(|()| 0),
        Task::Version => {
            write_out(concat!("fits ", env!("CARGO_PKG_VERSION"), "\n").as_bytes()).map(|()| 0)
        }
        Task::Prompt => prompt(files),
        Task::Once { form, query } => once(files, form, query),
        Task::Batch(file) => lines(files, file),
        Task::Job { file, form } => job(&file, form),
        Task::Sheet(file) => sheet_of(files, &file),
    };
    match done {
        Ok(status) => ExitCode::from(status),
        // Whoever read us has had enough: leave quietly.
        Err(error) if error.kind() == io::ErrorKind::BrokenPipe => ExitCode::SUCCESS,
        Err(error) => {
            complain(&error.to_string());
            ExitCode::from(FAILED)
        }
    }
}

/// Flags come first; from the first word that is none, all is the query.
fn task(arguments: impl Iterator<Item = OsString>) -> Result<(Files, Task), String> {
    let mut parser = lexopt::Parser::from_iter(arguments);
    let (mut files, mut form) = (Files::default(), Form::Text);
    loop {
        // `-20 H7` and `-.5in` are queries, if bad ones, not flags.
        if let Some(raw) = parser.try_raw_args()
            && raw.peek().and_then(|word| word.to_str()).is_some_and(is_negative_number)
        {
            return Ok((files, Task::Once { form, query: rest(&mut parser, None)? }));
        }
        match parser.next().map_err(|error| error.to_string())? {
            Some(lexopt::Arg::Long("json")) => form = Form::Json,
            Some(lexopt::Arg::Long("svg")) => form = Form::Svg,
            Some(lexopt::Arg::Long("crib")) => files.crib = Some(file(&mut parser)?),
            Some(lexopt::Arg::Long("log")) => files.log = Some(file(&mut parser)?),
            Some(lexopt::Arg::Long("help") | lexopt::Arg::Short('h')) => {
                return Ok((files, Task::Usage));
            }
            Some(lexopt::Arg::Long("version") | lexopt::Arg::Short('V')) => {
                return Ok((files, Task::Version));
            }
            Some(lexopt::Arg::Value(word)) if word == "batch" => return batch(parser, files),
            Some(lexopt::Arg::Value(word)) if word == "sheet" => {
                let (Some(note), None) = (parser.value().ok(), parser.value().ok()) else {
                    return Err("`sheet` takes one note: `fits sheet FILE > sheet.html`".into());
                };
                return Ok((files, Task::Sheet(note.into())));
            }
            Some(lexopt::Arg::Value(word)) if word == "job" => {
                return job_task(parser, files, form);
            }
            Some(lexopt::Arg::Value(word)) => {
                return Ok((files, Task::Once { form, query: rest(&mut parser, Some(word))? }));
            }
            Some(other) => return Err(other.unexpected().to_string()),
            None if form == Form::Svg => return Err("a query is missing after --svg".into()),
            None if form == Form::Json => return Err("a query is missing after --json".into()),
            None => return Ok((files, Task::Prompt)),
        }
    }
}

/// What stands after `batch`: a file, and the files of the shop.
fn batch(mut parser: lexopt::Parser, mut files: Files) -> Result<(Files, Task), String> {
    let mut input = None;
    while let Some(argument) = parser.next().map_err(|error| error.to_string())? {
        match argument {
            lexopt::Arg::Long("crib") => files.crib = Some(file(&mut parser)?),
            lexopt::Arg::Long("log") => files.log = Some(file(&mut parser)?),
            lexopt::Arg::Value(name) if input.is_none() => input = Some(name),
            lexopt::Arg::Value(_) => {
                return Err("`batch` takes one file, or none for standard input".into());
            }
            other => return Err(other.unexpected().to_string()),
        }
    }
    Ok((files, Task::Batch(input)))
}

/// What stands after `job`: a note, and what is wanted of it.
fn job_task(
    mut parser: lexopt::Parser,
    files: Files,
    mut form: Form,
) -> Result<(Files, Task), String> {
    let (mut note, mut opens) = (None, false);
    while let Some(argument) = parser.next().map_err(|error| error.to_string())? {
        match argument {
            lexopt::Arg::Long("json") => form = Form::Json,
            lexopt::Arg::Long("csv") => form = Form::Csv,
            lexopt::Arg::Value(word) if word == "open" && note.is_none() && !opens => opens = true,
            lexopt::Arg::Value(name) if note.is_none() => note = Some(PathBuf::from(name)),
            lexopt::Arg::Value(_) => return Err("`job` takes one note".into()),
            other => return Err(other.unexpected().to_string()),
        }
    }
    let file = note.ok_or("the note is missing after `job`: `fits job FILE`")?;
    Ok((files, Task::Job { file, form }))
}

/// The file after an option.
fn file(parser: &mut lexopt::Parser) -> Result<PathBuf, String> {
    parser.value().map(PathBuf::from).map_err(|error| error.to_string())
}

fn is_negative_number(word: &str) -> bool {
    word.strip_prefix('-')
        .is_some_and(|rest| rest.starts_with(|c: char| c.is_ascii_digit() || c == '.'))
}

/// The words of the query, joined by spaces.
fn rest(parser: &mut lexopt::Parser, first: Option<OsString>) -> Result<OsString, String> {
    let mut query = first.unwrap_or_default();
    for word in parser.raw_args().map_err(|error| error.to_string())? {
        if !query.is_empty() {
            query.push(" ");
        }
        query.push(word);
    }
    Ok(query)
}

fn write_out(bytes: &[u8]) -> io::Result<()> {
    let mut out = io::stdout().lock();
    out.write_all(bytes)?;
    out.flush()
}

/// Says what is wrong on standard error, which may be closed.
fn complain(what: &str) {
    let _ = writeln!(io::stderr(), "fits: {}", printable(what, Colour::Off));
}

/// What the command line says of files.
#[derive(Clone, Debug, Default)]
struct Files {
    crib: Option<PathBuf>,
    log: Option<PathBuf>,
}

/// Whose questions are answered.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Way {
    /// A person at a terminal: with the settings, the crib and the logs of
    /// their folder.
    Prompt,
    /// One question: with the crib.
    Once,
    /// Lines out of a file or a pipe: with what the command line names, so
    /// that the same lines are always answered alike.
    Lines,
}

/// A session, and what was wrong with its files.
fn session(files: Files, way: Way) -> io::Result<(Session, Vec<String>)> {
    let mut session = Session::new();
    session.progress = Some(progress);
    session.today = Some(today);
    let home = Home::of_user();
    let mut notes = Vec::new();
    if way == Way::Prompt {
        notes.extend(session.use_own_settings(&home));
    }
    match files.crib {
        Some(file) => notes.extend(session.use_crib(file)),
        None if way != Way::Lines => notes.extend(session.use_own_crib(&home)),
        None => {}
    }
    let logs = match (files.log, way, home.data) {
        (Some(file), ..) => Logs::File(file),
        (None, Way::Prompt, Some(folder)) => Logs::Folder(folder.join("passes")),
        (None, Way::Once, _) => Logs::Off,
        _ => Logs::Memory,
    };
    notes.extend(session.keep_logs(logs)?);
    Ok((session, notes))
}

/// The same for a program: the notes go to standard error too.
fn session_for_lines(files: Files, way: Way) -> io::Result<(Session, Vec<String>)> {
    let (session, notes) = session(files, way)?;
    for note in &notes {
        complain(note);
    }
    Ok((session, notes))
}

/// Today by the system's clock, in UTC, as 2026-11-27 (days to a date by the
/// proleptic Gregorian calendar).
fn today() -> String {
    let seconds = std::time::SystemTime::now()
        .duration_since(std::time::UNIX_EPOCH)
        .map_or(0, |since| since.as_secs());
    let days = seconds / 86_400 + 719_468;
    let (era, day) = (days / 146_097, days % 146_097);
    let year = (day - day / 1_460 + day / 36_524 - day / 146_096) / 365;
    let day = day - (365 * year + year / 4 - year / 100);
    let month = (5 * day + 2) / 153;
    let date = day - (153 * month + 2) / 5 + 1;
    let month = if month < 10 { month + 3 } else { month - 9 };
    let year = year + era * 400 + u64::from(month <= 2);
    format!("{year:04}-{month:02}-{date:02}")
}

/// One line at a terminal, gone when the work is done or stopped.
fn progress(done: u64, of: u64) -> bool {
    let goes_on = !signals::stopped();
    if io::stderr().is_terminal() {
        let line = if goes_on && done < of {
            format!("\r{done} of {of}, Ctrl-C stops")
        } else {
            "\r\x1b[K".to_owned()
        };
        let _ = io::stderr().write_all(line.as_bytes());
    }
    goes_on
}

fn colour() -> Colour {
    let refused = std::env::var_os("NO_COLOR").is_some_and(|value| !value.is_empty());
    let plain = std::env::var_os("TERM").is_some_and(|term| term == "dumb");
    if refused || plain || !io::stdout().is_terminal() { Colour::Off } else { Colour::On }
}

fn once(files: Files, form: Form, query: OsString) -> io::Result<u8> {
    let (mut session, notes) = session_for_lines(files, Way::Once)?;
    let (query, answer) = match query.into_string() {
        Ok(text) => {
            let answer = session.evaluate(&text);
            (text, answer)
        }
        Err(raw) => {
            let bytes = raw.as_encoded_bytes();
            let Err(error) = std::str::from_utf8(bytes) else {
                return Ok(NOT_UNDERSTOOD);
            };
            let (problem, text) = not_text(bytes, error);
            (text, Err(problem))
        }
    };
    let status = Outcome::of(&answer).status();
    if form == Form::Json {
        let mut out = Vec::new();
        let beside = json::Beside { read_as: session.read_as(), file_notes: &notes };
        json::object_with(&mut out, None, &query, beside, &answer);
        out.push(b'\n');
        write_out(&out)?;
        return Ok(status);
    }
    let text = Text { settings: session.shown(), colour: colour() };
    match answer {
        Ok(answer) if form == Form::Svg => {
            let Some(picture) = svg::picture(&answer, session.shown()) else {
                complain(
                    "this answer has no picture; a part, pair, reading, plan, log, joint or stack has one",
                );
                return Ok(NOT_UNDERSTOOD);
            };
            write_out(printable(&picture, Colour::Off).as_bytes())?;
        }
        Ok(answer) => {
            write_out(text.read_as(session.read_as()).as_bytes())?;
            write_out(text.answer(&answer).as_bytes())?;
        }
        Err(problem) => {
            let plain = Text {
                colour: if io::stderr().is_terminal() { text.colour } else { Colour::Off },
                ..text
            };
            let _ = write!(io::stderr(), "{}", plain.problem(&query, &problem));
        }
    }
    Ok(status)
}

/// The page to print of a note.
fn sheet_of(files: Files, file: &std::path::Path) -> io::Result<u8> {
    let text = std::fs::read_to_string(file)
        .map_err(|error| io::Error::new(error.kind(), format!("{}: {error}", file.display())))?;
    let job = fits_repl::note::read(&text);
    if job.parts.is_empty() {
        complain(&format!("{}: no part is named in it", file.display()));
        return Ok(NOT_UNDERSTOOD);
    }
    let (mut session, _) = session_for_lines(files, Way::Once)?;
    write_out(sheet::page(&job, &mut session).as_bytes())?;
    Ok(0)
}

/// A note, read: what to cut, what to ask, what is left.
fn job(file: &std::path::Path, form: Form) -> io::Result<u8> {
    let named =
        |error: io::Error| io::Error::new(error.kind(), format!("{}: {error}", file.display()));
    let bytes = std::fs::read(file).map_err(named)?;
    let text = String::from_utf8(bytes).map_err(|error| {
        let at = error.utf8_error().valid_up_to();
        let line = error.as_bytes()[..at].iter().filter(|byte| **byte == b'\n').count() + 1;
        named(io::Error::new(io::ErrorKind::InvalidData, format!("line {line} is not UTF-8 text")))
    })?;
    let job = note::read(&text);
    let out = match form {
        Form::Json => note::json_lines(&job),
        Form::Csv => note::csv(&job),
        _ => printable(&note::page(&job, &text), Colour::Off).into_owned(),
    };
    write_out(out.as_bytes())?;
    Ok(u8::from(note::is_out_of_limits(&job)))
}

fn lines(files: Files, file: Option<OsString>) -> io::Result<u8> {
    let (mut session, notes) = session_for_lines(files, Way::Lines)?;
    let out = io::stdout().lock();
    let outcome = match file {
        None => batch::run(io::stdin().lock(), out, &mut session, &notes)?,
        Some(file) => {
            let input = std::fs::File::open(&file).map_err(|error| {
                io::Error::new(error.kind(), format!("{}: {error}", file.display()))
            })?;
            batch::run(input, out, &mut session, &notes)?
        }
    };
    Ok(outcome.status())
}

/// The prompt at a terminal; plain lines in and out where either end is none.
fn prompt(files: Files) -> io::Result<u8> {
    if io::stdin().is_terminal() && io::stdout().is_terminal() {
        let (session, notes) = session(files, Way::Prompt)?;
        return line_editor::run(session, &notes, colour()).map(Outcome::status);
    }
    let (mut session, _) = session_for_lines(files, Way::Lines)?;
    let mut worst = Outcome::default();
    let mut bytes = Vec::new();
    let mut input = io::stdin().lock();
    loop {
        let reading = batch::read_line(&mut input, &mut bytes)?;
        let line = bytes.trim_ascii_end();
        let (text, answer) = match std::str::from_utf8(line) {
            _ if reading == Reading::End => return Ok(worst.status()),
            _ if reading == Reading::TooLong => {
                let (problem, text) = batch::too_long(line);
                (text, Err(problem))
            }
            Ok("") => continue,
            Ok(text) => (text.to_owned(), session.evaluate(text)),
            Err(error) => {
                let (problem, text) = not_text(line, error);
                (text, Err(problem))
            }
        };
        worst = worst.max(Outcome::of(&answer));
        let render = Text { settings: session.shown(), colour: Colour::Off };
        let shown = match &answer {
            Ok(answer) => render.read_as(session.read_as()) + &render.answer(answer),
            Err(problem) => render.problem(&text, problem),
        };
        write_out(shown.as_bytes())?;
    }
}
