//! The arguments to what is asked.

use std::{ffi::OsString, path::PathBuf};

use super::{COMMANDS, Command, OPTIONS, Opt};
use crate::{
    query::{Dial, Units},
    words::near_miss,
};

/// What one answer is written as.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[non_exhaustive]
pub enum Form {
    /// Words.
    #[default]
    Text,
    /// One JSON object.
    Json,
    /// A picture.
    Svg,
    /// A table.
    Csv,
    /// A note in the tidy form.
    Tidy,
}

/// When colour is used.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(
    clippy::exhaustive_enums,
    reason = "each is told, or acted on, in its own way: a new one must not pass unseen"
)]
pub enum When {
    /// As the terminal and the environment say.
    Auto,
    /// Always.
    Always,
    /// Never.
    Never,
}

/// What the command line asks for.
#[derive(Clone, Debug)]
#[allow(clippy::struct_excessive_bools, reason = "each is a flag that is typed")]
#[non_exhaustive]
pub struct Asked {
    /// The command.
    pub command: Command,
    /// Its words, without the one that names it.
    pub words: Vec<OsString>,
    /// The help of the command.
    pub help: bool,
    /// The version.
    pub version: bool,
    /// What an answer is written as.
    pub form: Form,
    /// Bare numbers are this.
    pub units: Option<Units>,
    /// The dials read this.
    pub dial: Option<Dial>,
    /// Sizes in JSON as a person is shown them.
    pub shown: bool,
    /// The file of the tools.
    pub crib: Option<PathBuf>,
    /// The file of the pass log.
    pub log: Option<PathBuf>,
    /// Every line stands for itself.
    pub alone: bool,
    /// The columns of a table.
    pub csv: Option<String>,
    /// Only a failure has an exit status of its own.
    pub exit_zero: bool,
    /// When colour is used.
    pub color: When,
}

impl Asked {
    /// The words of the query, joined by spaces.
    pub fn query(&self) -> OsString {
        self.words.join(std::ffi::OsStr::new(" "))
    }

    fn take(&mut self, option: &Opt, parser: &mut lexopt::Parser) -> Result<(), String> {
        let mut value = || parser.value().map_err(|error| error.to_string());
        let mut word = || Ok::<_, String>(value()?.to_string_lossy().into_owned());
        match option.long {
            "in" => self.units = Some(Units::Inches),
            "mm" => self.units = Some(Units::Millimetres),
            "units" => {
                self.units = Some(match word()?.as_str() {
                    "mm" => Units::Millimetres,
                    "in" => Units::Inches,
                    other => return Err(format!("`--units {other}`: it is `mm` or `in`")),
                });
            }
            "dial" => {
                self.dial = Some(match word()?.as_str() {
                    "diameter" => Dial::Diameter,
                    "radius" => Dial::Radius,
                    other => return Err(format!("`--dial {other}`: it is `diameter` or `radius`")),
                });
            }
            "color" => {
                self.color = match word()?.as_str() {
                    "auto" => When::Auto,
                    "always" => When::Always,
                    "never" => When::Never,
                    other => {
                        return Err(format!(
                            "`--color {other}`: it is `auto`, `always` or `never`"
                        ));
                    }
                };
            }
            "json" => self.form = Form::Json,
            "svg" => self.form = Form::Svg,
            "shown" => self.shown = true,
            "crib" => self.crib = Some(value()?.into()),
            "log" => self.log = Some(value()?.into()),
            "alone" => self.alone = true,
            "tidy" => self.form = Form::Tidy,
            "csv" if option.takes.is_empty() => self.form = Form::Csv,
            "csv" => self.csv = Some(word()?),
            "exit-zero" => self.exit_zero = true,
            "help" => self.help = true,
            _ => self.version = true,
        }
        Ok(())
    }
}

/// Options that say the same thing or contradict each other.
const CLASHES: [(&str, &str, &str); 10] = [
    ("json", "csv", "the output is one or the other"),
    ("json", "tidy", "the output is one or the other"),
    ("csv", "tidy", "the output is one or the other"),
    ("in", "mm", "bare numbers are one or the other"),
    ("in", "units", "the units are said twice"),
    ("mm", "units", "the units are said twice"),
    ("json", "svg", "an answer is written as one or the other"),
    ("alone", "log", "a log follows from one line to the next"),
    ("csv", "log", "a log follows from one line to the next, a row stands for itself"),
    ("csv", "shown", "name such a column, as shown.hole.lower"),
];

/// Reads the arguments, the program's own name first. Options may stand
/// anywhere; after `--` there is none.
///
/// # Errors
/// An option that is unknown, is given twice, lacks its value, clashes with
/// another or does not go with the command; words that the command does not take.
pub fn read(arguments: impl Iterator<Item = OsString>) -> Result<Asked, String> {
    let mut parser = lexopt::Parser::from_iter(arguments);
    let mut asked = Asked {
        command: Command::Answer,
        words: Vec::new(),
        help: false,
        version: false,
        form: Form::Text,
        units: None,
        dial: None,
        shown: false,
        crib: None,
        log: None,
        alone: false,
        csv: None,
        exit_zero: false,
        color: When::Auto,
    };
    let mut given: Vec<&Opt> = Vec::new();
    loop {
        if let Some(mut raw) = parser.try_raw_args() {
            let next = raw.peek().and_then(|word| word.to_str()).unwrap_or_default();
            if next == "--" {
                let _ = raw.next();
                asked.words.extend(raw);
                break;
            }
            // `-20 H7`, and the links of a stack `-.5in`, `-?`.
            let is_short = OPTIONS.iter().any(|option| {
                next.strip_prefix('-')
                    .is_some_and(|rest| option.short.is_some_and(|short| rest.chars().eq([short])))
            });
            let in_query = is_negative(next)
                || !asked.words.is_empty()
                    && next.starts_with('-')
                    && !next.starts_with("--")
                    && !is_short;
            if in_query {
                asked.words.extend(raw.next());
                continue;
            }
        }
        let Some(argument) = parser.next().map_err(|error| error.to_string())? else { break };
        let name = match argument {
            lexopt::Arg::Value(word) => {
                let named =
                    COMMANDS.iter().find(|about| !about.word.is_empty() && about.word == word);
                match named {
                    Some(about) if asked.words.is_empty() && asked.command == Command::Answer => {
                        asked.command = about.command;
                    }
                    _ => asked.words.push(word),
                }
                continue;
            }
            lexopt::Arg::Long("colour") => "color",
            lexopt::Arg::Long(name) => name,
            lexopt::Arg::Short(letter) => {
                let known = OPTIONS.iter().find(|option| option.short == Some(letter));
                known.map(|option| option.long).ok_or(format!("invalid option '-{letter}'"))?
            }
        };
        // `--csv` takes columns in a batch, and none of a note.
        let mut named = OPTIONS.iter().filter(|option| option.long == name);
        let own = named.clone().find(|option| option.goes_with(asked.command));
        let Some(option) = own.or_else(|| named.next()) else {
            let near = OPTIONS.iter().find(|option| near_miss(name, option.long));
            let near = near.map(|option| format!(": is `--{}` meant?", option.long));
            return Err(format!("invalid option '--{name}'{}", near.unwrap_or_default()));
        };
        if given.iter().any(|before| before.long == option.long) {
            return Err(format!("`--{}` is given twice", option.long));
        }
        given.push(option);
        asked.take(option, &mut parser)?;
    }
    check(&asked, &given)?;
    Ok(asked)
}

fn is_negative(word: &str) -> bool {
    word.strip_prefix('-')
        .is_some_and(|rest| rest.starts_with(|c: char| c.is_ascii_digit() || c == '.' || c == '?'))
}

/// What goes with what.
fn check(asked: &Asked, given: &[&Opt]) -> Result<(), String> {
    if asked.help || asked.version {
        return Ok(());
    }
    let is_given = |name: &str| given.iter().any(|option| option.long == name);
    for (one, other, why) in CLASHES {
        if is_given(one) && is_given(other) {
            return Err(format!("`--{one}` and `--{other}` do not go together: {why}"));
        }
    }
    let about = COMMANDS.iter().find(|about| about.command == asked.command);
    let word = about.map_or("", |about| about.word);
    if let Some(option) = given.iter().find(|option| !option.goes_with(asked.command)) {
        let with = if word.is_empty() {
            "one query, it goes with `fits batch`".to_owned()
        } else {
            format!("`fits {word}`")
        };
        return Err(format!("`--{}` does not go with {with}", option.long));
    }
    match (asked.command, asked.words.len()) {
        (Command::Answer, 0) => {
            let wants = ["json", "svg", "shown", "exit-zero"].iter().find(|name| is_given(name));
            wants.map_or(Ok(()), |name| Err(format!("a query is missing after --{name}")))
        }
        (Command::Answer, _) if asked.shown && asked.form != Form::Json => {
            Err("`--shown` goes with `--json` or `fits batch`".into())
        }
        (Command::Job, n) if n != 1 => {
            Err("`job` takes one note: `fits job FILE`, or - for standard input".into())
        }
        (Command::Sheet, n) if n != 1 => {
            Err("`sheet` takes one note, or - for standard input: `fits sheet FILE > sheet.html`"
                .into())
        }
        (Command::Batch, 2..) => Err("`batch` takes one file, or none for standard input".into()),
        (Command::Schema, 2..) => Err("`schema` takes one kind of answer, or none".into()),
        (Command::Man, 1..) => Err("`man` takes no words".into()),
        (Command::Completions, n) if n != 1 => {
            Err(format!("`completions` takes one shell: {}", super::SHELLS.join(", ")))
        }
        _ => Ok(()),
    }
}
