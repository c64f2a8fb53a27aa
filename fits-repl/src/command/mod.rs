//! The command line: one table of commands and one of options. The reader, the
//! help, the man page and the completions are made from them.

pub mod complete;
pub mod completions;
pub mod help;
pub mod man;
mod read;

pub use read::{Asked, Form, When, read};

/// What `fits` is told to do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(
    clippy::exhaustive_enums,
    reason = "each is told, or acted on, in its own way: a new one must not pass unseen"
)]
pub enum Command {
    /// Answer the query in its words; without one, open the prompt.
    Answer,
    /// Answer a file or a pipe, line by line.
    Batch,
    /// Read a note of parts and fits.
    Job,
    /// Write the page to print of a note.
    Sheet,
    /// Print the JSON Schema of the answers.
    Schema,
    /// Print the man page.
    Man,
    /// Print a shell's completions.
    Completions,
    /// Print what the word that is being typed may become: for completions.
    Candidates,
}

/// A command as the help has it.
#[derive(Debug)]
pub(crate) struct About {
    pub(crate) command: Command,
    /// The word that names it; none for a query.
    pub(crate) word: &'static str,
    /// What comes after it.
    pub(crate) takes: &'static str,
    /// What it does, in a few words.
    pub(crate) says: &'static str,
    /// More on it.
    pub(crate) more: &'static [&'static str],
}

pub(crate) const COMMANDS: [About; 8] = [
    About {
        command: Command::Answer,
        word: "",
        takes: "[QUERY]",
        says: "answer once; without a query, open the prompt",
        more: &[
            "Without --in, --mm or --units bare numbers are as the prompt remembers; with --json,",
            "and in batch, they are what the line says alone.",
            "",
            "Options may stand anywhere; after -- every word belongs to the query. Words",
            "with ( ) ' \" < > ; # & are quoted for the shell: fits '(25.4 + 0.02)/2'.",
        ],
    },
    About {
        command: Command::Batch,
        word: "batch",
        takes: "[FILE]",
        says: "read a query a line, write a JSON object a line",
        more: &[
            "Without a FILE, or with -, standard input is read; each answer is written before",
            "the next line is waited for. A line that is not understood is told in its place",
            "and the rest goes on. Lines may set units and keep a log, as at the prompt; with",
            "--alone each stands for itself, and a file may be split and run in any order.",
            "",
            "--csv writes a table instead: COLUMNS are fields of the JSON answer by their",
            "path, as query,hole.lower_mm,passes.0.to_mm; sizes as a person is shown them,",
            "rounded inward, as shown.hole.lower; line, error (its message), and any column",
            "of the input. Where the first line of the input names a column `query`, the",
            "input is CSV itself; else each line is a query. Blank lines and lines that begin",
            "with # and no digit are passed over. --csv implies --alone. Where no column",
            "tells an error, standard error does. `fits schema` describes every field.",
        ],
    },
    About {
        command: Command::Job,
        word: "job",
        takes: "FILE",
        says: "read a note of parts: every figure to cut",
        more: &[
            "The note is plain text as a person writes it: parts at the margin, features under",
            "them or rows of a table, readings in later lines. Nothing in it is changed. With -",
            "for FILE it is read from standard input.",
            "--csv writes all features, limits and readings as a table for the record.",
            "--tidy writes the note as the program has read it: `part NAME` at the margin,",
            "under it `name: size; what it goes in; what was read` for each feature, remarks",
            "behind >, questions behind ?, and last all lines as you wrote them, behind |. It is",
            "read back to the same job: an order to keep, and a check of what was understood.",
        ],
    },
    About {
        command: Command::Sheet,
        word: "sheet",
        takes: "FILE",
        says: "write a page to print for each part of a note",
        more: &[
            "fits sheet press.job > press.html",
            "With - for FILE the note is read from standard input.",
        ],
    },
    About {
        command: Command::Schema,
        word: "schema",
        takes: "[ANSWER]",
        says: "print the JSON Schema of every answer, or of one",
        more: &[
            "The kinds of ANSWER are the values of the field `answer`, as `fit`; `job_line` is a",
            "line of `fits job --json`.",
        ],
    },
    About { command: Command::Man, word: "man", takes: "", says: "print the man page", more: &[] },
    About {
        command: Command::Completions,
        word: "completions",
        takes: "SHELL",
        says: "print completions for bash, zsh, fish or powershell",
        more: &[
            "bash:        fits completions bash > ~/.local/share/bash-completion/completions/fits",
            "zsh:         fits completions zsh > a folder of your $fpath/_fits",
            "fish:        fits completions fish > ~/.config/fish/completions/fits.fish",
            "powershell:  fits completions powershell >> $PROFILE",
        ],
    },
    About {
        command: Command::Candidates,
        word: "candidates",
        takes: "-- WORD...",
        says: "print what the last WORD may become (completions ask it)",
        more: &["A candidate a line: the word, a tab, and what it says."],
    },
];

/// An option.
#[derive(Debug)]
pub(crate) struct Opt {
    /// Its name after two dashes.
    pub(crate) long: &'static str,
    /// Its letter after one.
    pub(crate) short: Option<char>,
    /// What comes after it; nothing for a flag.
    pub(crate) takes: &'static str,
    /// The words it takes; none where it takes any.
    pub(crate) values: &'static [&'static str],
    /// What it says.
    pub(crate) says: &'static str,
    /// The commands that it goes with; none for all.
    pub(crate) of: &'static [Command],
}

impl Opt {
    const fn flag(long: &'static str, says: &'static str, of: &'static [Command]) -> Self {
        Self { long, short: None, takes: "", values: &[], says, of }
    }

    const fn taking(self, takes: &'static str, values: &'static [&'static str]) -> Self {
        Self { takes, values, ..self }
    }

    const fn letter(self, short: char) -> Self {
        Self { short: Some(short), ..self }
    }

    pub(crate) fn goes_with(&self, command: Command) -> bool {
        self.of.is_empty() || self.of.contains(&command)
    }
}

const ANSWERS: &[Command] = &[Command::Answer, Command::Batch];
const ONCE: &[Command] = &[Command::Answer];
const LINES: &[Command] = &[Command::Batch];
const NOTES: &[Command] = &[Command::Job];
const STATUS: &[Command] = &[Command::Answer, Command::Batch, Command::Job];

pub(crate) const OPTIONS: [Opt; 17] = [
    Opt::flag("in", "bare numbers are inches", ANSWERS),
    Opt::flag("mm", "bare numbers are millimetres", ANSWERS),
    Opt::flag("units", "bare numbers are in these units", ANSWERS).taking("UNITS", &["mm", "in"]),
    Opt::flag("dial", "how the dials read", ANSWERS).taking("DIAL", &["diameter", "radius"]),
    Opt::flag("json", "one JSON object on one line", &[Command::Answer, Command::Job]),
    Opt::flag("svg", "the picture of a part, pair, reading, plan, log, joint or stack", ONCE),
    Opt::flag("shown", "add to JSON the sizes as a person is shown them", ANSWERS),
    Opt::flag("crib", "the tools one owns; batch knows none unless told", ANSWERS)
        .taking("FILE", &[]),
    Opt::flag("log", "keep the pass log in FILE; the prompt keeps its own", ANSWERS)
        .taking("FILE", &[]),
    Opt::flag("alone", "each line stands for itself: no settings, no log", LINES),
    Opt::flag("csv", "a table of these columns instead of JSON", LINES).taking("COLUMNS", &[]),
    Opt::flag("csv", "a table of features, limits and readings", NOTES),
    Opt::flag("tidy", "the note in the form that the program writes", NOTES),
    Opt::flag("exit-zero", "exit status 0 unless a file or the machine failed", STATUS),
    Opt::flag("color", "colour for a terminal (auto), always or never", ANSWERS)
        .taking("WHEN", &["auto", "always", "never"]),
    Opt::flag("help", "this text; queries: `fits help`, `fits help TOPIC`", &[]).letter('h'),
    Opt::flag("version", "the version", &[]).letter('V'),
];

/// The exit statuses.
pub(crate) const STATUSES: [(&str, &str); 4] = [
    ("0", "answered"),
    ("1", "answered, and a reading is out of its limits"),
    ("2", "a query or the command line was not understood"),
    ("3", "a file or the machine failed"),
];

/// The variables of the environment.
pub(crate) const VARIABLES: [(&str, &str); 5] = [
    ("NO_COLOR", "no colour, where it is not empty"),
    ("CLICOLOR", "no colour, where it is 0"),
    ("CLICOLOR_FORCE", "colour outside a terminal too, where it is neither empty nor 0"),
    ("COLUMNS", "how wide a terminal is, where it is not what the terminal says"),
    ("XDG_CONFIG_HOME, XDG_DATA_HOME", "where the files below are, instead of the home folder"),
];

/// The files, in the folders of [`crate::Home`].
pub(crate) const FILES: [(bool, &str, &str); 4] = [
    (true, "settings.toml", "the settings that the prompt remembers"),
    (true, "crib.toml", "the tools you own"),
    (false, "passes/", "the pass logs of the prompt, a file each"),
    (false, "history.txt", "what was typed at the prompt"),
];

/// Commands to try.
pub(crate) const EXAMPLES: [(&str, &str); 7] = [
    ("fits 3/4in slip", "what to cut both parts to"),
    ("fits 20mm H7/g6 --json", "the same for a program"),
    ("fits '20mm H7/g6, hole = 20.013mm'", "the shaft to suit a measured hole"),
    ("fits help bushing", "what can be asked of a bushing"),
    ("fits sheet press.job > press.html", "a page to hang by the lathe for each part"),
    ("fits batch parts.txt", "a query a line, a JSON object a line"),
    ("fits batch --alone --csv query,hole.lower_mm,hole.upper_mm parts.txt", "a table"),
];

/// The shells that have completions.
pub(crate) const SHELLS: [&str; 4] = ["bash", "zsh", "fish", "powershell"];
