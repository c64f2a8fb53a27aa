//! The `fits` command: a prompt, one answer, or a line-by-line service.

use std::{
    ffi::{OsStr, OsString},
    io::{self, IsTerminal as _, Read as _, Write as _},
    process::ExitCode,
};

use fits_repl::{
    Home,
    batch::{self, Outcome, Reading, not_text},
    command::{self, Asked, Command, Form, When, complete, completions},
    line_editor, note,
    render::{Colour, follow_terminal, json, printable, svg, text::Text},
    schema,
    session::{Logs, Session},
    sheet, signals, table,
};

/// The machine failed.
const FAILED: u8 = 3;
/// The command line or a query was not understood.
const NOT_UNDERSTOOD: u8 = 2;

fn main() -> ExitCode {
    let asked = match command::read(std::env::args_os()) {
        Ok(asked) => asked,
        Err(message) => {
            complain(&format!("{message}\ntry `fits --help`"));
            return ExitCode::from(NOT_UNDERSTOOD);
        }
    };
    match run(asked) {
        Ok(status) => ExitCode::from(status),
        // Whoever read us has had enough: leave quietly.
        Err(error) if error.kind() == io::ErrorKind::BrokenPipe => ExitCode::SUCCESS,
        Err(error) => {
            complain(&error.to_string());
            let is_asked_wrongly = error.kind() == io::ErrorKind::InvalidInput;
            ExitCode::from(if is_asked_wrongly { NOT_UNDERSTOOD } else { FAILED })
        }
    }
}

/// Does what is asked, and gives the exit status.
fn run(asked: Asked) -> io::Result<u8> {
    if asked.version {
        return say(concat!("fits ", env!("CARGO_PKG_VERSION"), "\n"));
    }
    if asked.help {
        return say(&command::help::help(asked.command, &Home::of_user()));
    }
    let word = asked.words.first().map(|word| word.to_string_lossy().into_owned());
    match asked.command {
        Command::Answer if asked.words.is_empty() => prompt(asked),
        Command::Answer => once(asked),
        Command::Batch => lines(asked),
        Command::Job => job(asked),
        Command::Sheet => sheet_of(asked),
        Command::Schema => match schema::text(word.as_deref()) {
            Ok(text) => say(&text),
            Err(why) => refuse(&why),
        },
        Command::Man => say(&command::man::page()),
        Command::Completions => match completions::script(word.as_deref().unwrap_or_default()) {
            Some(script) => say(script),
            None => refuse(&format!(
                "there are completions for bash, zsh, fish and powershell, not for {}",
                word.unwrap_or_default()
            )),
        },
        Command::Candidates => {
            let words: Vec<String> =
                asked.words.iter().map(|word| word.to_string_lossy().into_owned()).collect();
            let found = complete::of_words(&words);
            let lines = found.iter().map(|one| format!("{}\t{}\n", one.word, one.says));
            say(&lines.collect::<String>())
        }
    }
}

fn say(text: &str) -> io::Result<u8> {
    write_out(text.as_bytes()).map(|()| 0)
}

/// The command line asks for what there is not.
fn refuse(why: &str) -> io::Result<u8> {
    Err(io::Error::new(io::ErrorKind::InvalidInput, why))
}

/// The exit status of answers.
fn status(outcome: Outcome, exit_zero: bool) -> u8 {
    if exit_zero && outcome != Outcome::Failed { 0 } else { outcome.status() }
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

/// Whose questions are answered.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Way {
    /// A person at a terminal: with the settings, the crib and the logs of
    /// their folder.
    Prompt,
    /// A person's one question: with the settings and the crib.
    Once,
    /// A program's one question: with the crib.
    Json,
    /// Lines out of a file or a pipe: with what the command line names, so
    /// that the same lines are always answered alike.
    Lines,
}

/// A session, and what was wrong with its files.
fn session(asked: &mut Asked, way: Way) -> io::Result<(Session, Vec<String>)> {
    let mut session = Session::new();
    session.progress = Some(progress);
    // Readings go into a note at the prompt alone.
    session.today = (way == Way::Prompt).then_some(today);
    let home = Home::of_user();
    let mut notes = Vec::new();
    if matches!(way, Way::Prompt | Way::Once) {
        notes.extend(session.use_own_settings(&home));
    }
    if let Some(units) = asked.units {
        session.take_units(units);
    }
    if let Some(dial) = asked.dial {
        session.dial = dial;
    }
    match asked.crib.take() {
        Some(file) => {
            // The prompt makes it with the first tool.
            if let Ok(false) = file.try_exists() {
                notes.push(format!("{}: there is no such file, no tool is known", file.display()));
            }
            notes.extend(session.use_crib(file));
        }
        None if way != Way::Lines => notes.extend(session.use_own_crib(&home)),
        None => {}
    }
    (session.alone, session.tells_shown) = (asked.alone, asked.shown);
    let logs = match (asked.log.take(), way, home.data) {
        (Some(file), ..) => Logs::File(file),
        (None, Way::Prompt, Some(folder)) => Logs::Folder(folder.join("passes")),
        (None, Way::Once | Way::Json, _) => Logs::Off,
        _ if asked.alone => Logs::Off,
        _ => Logs::Memory,
    };
    notes.extend(session.keep_logs(logs)?);
    Ok((session, notes))
}

/// The same for a program: the notes go to standard error too.
fn session_for_lines(asked: &mut Asked, way: Way) -> io::Result<(Session, Vec<String>)> {
    let (session, notes) = session(asked, way)?;
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

/// Whether a stream gets colour: the option decides, then the environment
/// (`NO_COLOR`, then `CLICOLOR_FORCE`, then `CLICOLOR`), then the terminal.
fn colour(when: When, is_terminal: bool) -> Colour {
    let set = |name| std::env::var_os(name).filter(|value: &OsString| !value.is_empty());
    let is = |name, wanted: &str| set(name).is_some_and(|value| value == OsStr::new(wanted));
    let shows = match when {
        When::Always => true,
        When::Never => false,
        When::Auto if set("NO_COLOR").is_some() => false,
        When::Auto if set("CLICOLOR_FORCE").is_some() && !is("CLICOLOR_FORCE", "0") => true,
        When::Auto => is_terminal && !is("CLICOLOR", "0") && !is("TERM", "dumb"),
    };
    if shows { Colour::On } else { Colour::Off }
}

fn once(mut asked: Asked) -> io::Result<u8> {
    let way = if asked.form == Form::Json { Way::Json } else { Way::Once };
    let (mut session, notes) = session_for_lines(&mut asked, way)?;
    let (form, query) = (asked.form, asked.query());
    if io::stdout().is_terminal() {
        follow_terminal();
    }
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
    let status = status(Outcome::of(&answer), asked.exit_zero);
    if form == Form::Json {
        let mut out = Vec::new();
        json::object_with(&mut out, None, &query, session.beside(&notes), &answer);
        out.push(b'\n');
        write_out(&out)?;
        return Ok(status);
    }
    let text =
        Text { settings: session.shown(), colour: colour(asked.color, io::stdout().is_terminal()) };
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
            write_out(text.read_as(session.read_as(), session.slips()).as_bytes())?;
            write_out(text.answer(&answer).as_bytes())?;
        }
        Err(problem) => {
            let plain = Text { colour: colour(asked.color, io::stderr().is_terminal()), ..text };
            let _ = write!(io::stderr(), "{}", plain.problem(&query, &problem));
        }
    }
    Ok(status)
}

/// The note that is named, or for `-` standard input: its name and its text.
fn note_of(asked: &mut Asked) -> io::Result<(String, String)> {
    let file = asked.words.pop().unwrap_or_default();
    let is_piped = file == "-";
    let file = std::path::PathBuf::from(file);
    let name = if is_piped { "standard input".to_owned() } else { file.display().to_string() };
    let named = |error: io::Error| io::Error::new(error.kind(), format!("{name}: {error}"));
    let mut bytes = Vec::new();
    if is_piped {
        io::stdin().lock().read_to_end(&mut bytes).map_err(named)?;
    } else {
        bytes = std::fs::read(&file).map_err(named)?;
    }
    let text = String::from_utf8(bytes).map_err(|error| {
        let at = error.utf8_error().valid_up_to();
        let line = error.as_bytes()[..at].split(|byte| *byte == b'\n').count();
        named(io::Error::new(io::ErrorKind::InvalidData, format!("line {line} is not UTF-8 text")))
    })?;
    Ok((name, text))
}

/// The page to print of a note.
fn sheet_of(mut asked: Asked) -> io::Result<u8> {
    let (name, text) = note_of(&mut asked)?;
    let job = fits_repl::note::read(&text);
    if job.parts.is_empty() {
        complain(&format!("{name}: no part is named in it"));
        return Ok(NOT_UNDERSTOOD);
    }
    let (mut session, _) = session_for_lines(&mut asked, Way::Once)?;
    write_out(sheet::page(&job, &mut session).as_bytes())?;
    Ok(0)
}

/// A note, read: what to cut, what to ask, what is left.
fn job(mut asked: Asked) -> io::Result<u8> {
    let (name, text) = note_of(&mut asked)?;
    let job = note::read(&text);
    let (out, is_exact) = match asked.form {
        Form::Json => (note::json_lines(&job), true),
        // A file keeps each character of the note; a terminal obeys none.
        Form::Csv => (note::csv(&job), !io::stdout().is_terminal()),
        Form::Tidy => (note::tidy(&job, &text), !io::stdout().is_terminal()),
        _ => (note::page(&job, &text, &name), false),
    };
    let out = if is_exact { out.into() } else { printable(&out, Colour::Off) };
    write_out(out.as_bytes())?;
    Ok(u8::from(note::is_out_of_limits(&job) && !asked.exit_zero))
}

fn lines(mut asked: Asked) -> io::Result<u8> {
    asked.alone |= asked.csv.is_some();
    let (mut session, notes) = session_for_lines(&mut asked, Way::Lines)?;
    let columns = match asked.csv.as_deref().map(table::Columns::read) {
        None => None,
        Some(Ok(columns)) => Some(columns),
        Some(Err(why)) => return refuse(&why),
    };
    let file = asked.words.pop().filter(|name| name != "-");
    let (input, size): (Box<dyn io::Read>, _) = match file {
        None => (Box::new(io::stdin().lock()), None),
        Some(file) => {
            let input = std::fs::File::open(&file).map_err(|error| {
                io::Error::new(error.kind(), format!("{}: {error}", file.display()))
            })?;
            let size = input.metadata().ok().filter(std::fs::Metadata::is_file).map(|it| it.len());
            (Box::new(input), size)
        }
    };
    let out = io::stdout().lock();
    // Answers on the same terminal show by themselves how far it is.
    let size = size.filter(|_| !io::stdout().is_terminal() && io::stderr().is_terminal());
    let input = batch::Watched::new(input, size);
    let outcome = match columns {
        Some(columns) => table::run(input, out, &mut session, &columns, complain)?,
        None => batch::run(input, out, &mut session, &notes)?,
    };
    Ok(status(outcome, asked.exit_zero))
}

/// The prompt at a terminal; plain lines in and out where either end is none.
fn prompt(mut asked: Asked) -> io::Result<u8> {
    if io::stdin().is_terminal() && io::stdout().is_terminal() {
        let (session, notes) = session(&mut asked, Way::Prompt)?;
        let colour = colour(asked.color, true);
        return line_editor::run(session, &notes, colour).map(Outcome::status);
    }
    let (mut session, _) = session_for_lines(&mut asked, Way::Lines)?;
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
            Ok(answer) => {
                render.read_as(session.read_as(), session.slips()) + &render.answer(answer)
            }
            Err(problem) => render.problem(&text, problem),
        };
        write_out(shown.as_bytes())?;
    }
}
