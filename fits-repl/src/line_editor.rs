//! The prompt: line editing, history, completion, a live hint.
//!
//! Used only when both ends are terminals; everything about the line editor
//! stays in this file. History is appended, never saved over.

use std::{
    cell::RefCell,
    io::{self, Write as _},
    path::PathBuf,
    rc::Rc,
};

use rustyline::{
    CompletionType, Config, Context, Editor, Helper, Highlighter, Validator,
    completion::{Completer, Pair},
    error::ReadlineError,
    hint::{Hint, Hinter},
    history::FileHistory,
};

use crate::{
    answer::Answer,
    batch::Outcome,
    command::complete::of_query,
    query::{Query, Units},
    render::{Colour, follow_terminal, printable, text::Text},
    session::Session,
    signals,
};

/// Lines of history kept.
const HISTORY_LINES: usize = 10_000;

#[derive(Helper, Highlighter, Validator)]
struct Assistant {
    session: Rc<RefCell<Session>>,
}

/// A short answer shown after the cursor; never part of the line.
struct Glimpse(String);

impl Hint for Glimpse {
    fn display(&self) -> &str {
        &self.0
    }
    fn completion(&self) -> Option<&str> {
        None
    }
}

impl Completer for Assistant {
    type Candidate = Pair;

    fn complete(
        &self,
        line: &str,
        at: usize,
        _: &Context<'_>,
    ) -> rustyline::Result<(usize, Vec<Pair>)> {
        let (start, words) = of_query(line.get(..at).unwrap_or(line));
        Ok((
            start,
            words
                .into_iter()
                .map(|one| Pair {
                    display: one.word.to_string(),
                    replacement: one.word.into_owned(),
                })
                .collect(),
        ))
    }
}

impl Hinter for Assistant {
    type Hint = Glimpse;

    /// What the line would answer, in a few words.
    fn hint(&self, line: &str, at: usize, _: &Context<'_>) -> Option<Glimpse> {
        if at != line.len()
            || line.trim().is_empty()
            || !matches!(crate::read(line).ok()?, Query::Part(_))
        {
            return None;
        }
        let mut trial = self.session.borrow().trial();
        let words = match trial.evaluate(line).ok()? {
            Answer::Feature(feature) => format!("{} to {}", feature.lower_mm.0, feature.upper_mm.0),
            Answer::Fit(fit) => format!(
                "{}, {} to {}",
                fit.kind.word(),
                fit.clearance.min_mm.0,
                fit.clearance.max_mm.0
            ),
            Answer::Reading(reading) => reading.reading.verdict.word().to_owned(),
            _ => return None,
        };
        Some(Glimpse(format!("   {words}")))
    }
}

/// The history file: in the user's data folder, made if it is not there.
fn history_file() -> Option<PathBuf> {
    let folder = dirs::data_dir()?.join("fits");
    std::fs::create_dir_all(&folder).ok()?;
    Some(folder.join("history.txt"))
}

/// Writes what is no answer. The line editor's own output is standard output.
fn say(text: &str) -> io::Result<()> {
    write_out(&printable(text, Colour::Off))
}

/// Writes to a terminal that may be gone, where `print!` would panic.
fn write_out(text: &str) -> io::Result<()> {
    let mut out = io::stdout().lock();
    out.write_all(text.as_bytes())?;
    out.flush()
}

/// Reads lines at a terminal until Ctrl-D.
///
/// # Errors
/// The terminal failed.
pub fn run(session: Session, notes: &[String], colour: Colour) -> io::Result<Outcome> {
    let config = Config::builder()
        .max_history_size(HISTORY_LINES)
        .and_then(|builder| builder.history_ignore_dups(true))
        .map_err(io::Error::other)?
        .completion_type(CompletionType::List)
        .color_mode(match colour {
            Colour::On => rustyline::ColorMode::Enabled,
            Colour::Off => rustyline::ColorMode::Disabled,
        })
        .build();
    signals::watch()?;
    let mut editor: Editor<Assistant, FileHistory> =
        Editor::with_config(config).map_err(io::Error::other)?;
    let session = Rc::new(RefCell::new(session));
    editor.set_helper(Some(Assistant { session: Rc::clone(&session) }));
    let history = history_file();
    if let Some(file) = &history
        && file.exists()
        && let Err(error) = editor.load_history(file)
    {
        say(&format!("fits: the history could not be read: {error}\n"))?;
    }
    say(&format!(
        "fits {}. Type a size and how it fits: 3/4in slip, or 20 H7/g6. `help`: more; Ctrl-D leaves.\n",
        env!("CARGO_PKG_VERSION")
    ))?;
    for note in notes {
        say(&format!("{note}\n"))?;
    }
    if !session.borrow().units_are_chosen() {
        say("inches or millimetres? `inches` or `mm` sets it, and it is remembered; until then\n\
             bare numbers are millimetres, and one that looks like inches is asked about\n")?;
    }
    let mut history_works = true;
    // What comes next may be the end of a line that a stray byte broke: it is
    // shown again, not answered as if it were the whole.
    let (mut is_broken, mut again) = (false, String::new());
    loop {
        let prompt = match session.borrow().units {
            Units::Millimetres => "fits mm> ",
            Units::Inches => "fits in> ",
        };
        match editor.readline_with_initial(prompt, (&std::mem::take(&mut again), "")) {
            Ok(line) if line.trim().is_empty() => is_broken = false,
            Ok(line) if std::mem::take(&mut is_broken) => {
                say("not answered yet: a stray byte stood before this; Enter answers it\n")?;
                again = line;
            }
            Ok(line) if ["quit", "exit"].contains(&line.trim()) => return Ok(Outcome::Answered),
            Ok(line) => {
                let added = editor.add_history_entry(&line).unwrap_or(false);
                if let Some(file) = history.as_ref().filter(|_| added && history_works)
                    && let Err(error) = editor.append_history(file)
                {
                    history_works = false;
                    say(&format!("fits: the history is not kept: {error}\n"))?;
                }
                let mut session = session.borrow_mut();
                signals::begin();
                follow_terminal();
                // The answer to what the prompt asked.
                let is_inches = !session.units_are_chosen() && line.trim() == "in";
                let line = if is_inches { "inches".to_owned() } else { line };
                let answer = session.evaluate(&line);
                let text = Text { settings: session.shown(), colour };
                let shown = match answer {
                    Ok(answer) => {
                        text.read_as(session.read_as(), session.slips()) + &text.answer(&answer)
                    }
                    Err(problem) => text.problem(&line, &problem),
                };
                write_out(&shown)?;
            }
            Err(ReadlineError::Interrupted) => is_broken = false,
            // A byte that is not a text: the line is gone, the prompt stays.
            Err(ReadlineError::Io(error)) if error.kind() == io::ErrorKind::InvalidData => {
                is_broken = true;
                say("that was not UTF-8 text: type the line again\n")?;
            }
            Err(ReadlineError::Eof) => return Ok(Outcome::Answered),
            Err(error) => return Err(io::Error::other(error)),
        }
    }
}
