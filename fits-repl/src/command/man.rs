//! The man page, in the macros of man(7), from the tables.

use std::fmt::Write as _;

use super::{COMMANDS, Command, EXAMPLES, FILES, OPTIONS, STATUSES, VARIABLES};
use crate::{help::topics, questions::CLAUSES};

/// The widest line of the source: what a linter of man pages allows.
const COLUMNS: usize = 78;

/// A paragraph, in lines of words. Spaces and line ends are alike.
fn paragraph(out: &mut String, text: &str) {
    let mut width = 0;
    for word in text.split_whitespace().map(plain) {
        if width > 0 {
            let is_full = width + 1 + word.len() > COLUMNS;
            out.push(if is_full { '\n' } else { ' ' });
            width = if is_full { 0 } else { width + 1 };
        }
        // A line that begins with a dot is a macro.
        if width == 0 && word.starts_with('.') {
            *out += "\\&";
        }
        *out += &word;
        width += word.len();
    }
    out.push('\n');
}

/// A text that roff takes as it stands.
fn plain(text: &str) -> String {
    let mut out = String::new();
    for c in text.chars() {
        match c {
            '\\' => out += "\\e",
            '-' => out += "\\-",
            '`' => out += "\\(ga",
            '\'' => out += "\\(aq",
            '^' => out += "\\(ha",
            '~' => out += "\\(ti",
            '\u{b1}' => out += "\\(+-",
            '\u{b0}' => out += "\\(de",
            '\u{d7}' => out += "\\(mu",
            c if c.is_ascii() => out.push(c),
            c => {
                let _ = write!(out, "\\[u{:04X}]", u32::from(c));
            }
        }
    }
    out
}

/// An argument of a macro.
fn quoted(text: &str) -> String {
    format!("\"{}\"", plain(text).replace('"', "\\(dq"))
}

fn term(out: &mut String, tag: &str, says: &str) {
    let _ = writeln!(out, ".TP\n.B {}", quoted(tag));
    paragraph(out, says);
}

/// Lines as they stand.
fn verbatim<'a>(out: &mut String, lines: impl Iterator<Item = &'a str>) {
    *out += ".PP\n.nf\n";
    for line in lines {
        let _ = writeln!(out, "{}", if line.is_empty() { ".sp".to_owned() } else { plain(line) });
    }
    *out += ".fi\n";
}

/// When the page was last looked over.
const DATE: &str = "2026-11-27";

/// The page.
pub fn page() -> String {
    let mut out = String::new();
    let version = env!("CARGO_PKG_VERSION");
    let _ = writeln!(out, ".TH FITS 1 {DATE} {}", quoted(&format!("fits {version}")));
    out += ".SH NAME\nfits \\- fits and tolerances at the lathe\n.SH SYNOPSIS\n";
    let shown = COMMANDS.iter().filter(|about| about.command != Command::Candidates);
    for (at, about) in shown.enumerate() {
        if at > 0 {
            out += ".br\n";
        }
        let name = if about.word.is_empty() { "" } else { " " };
        let _ = writeln!(out, ".B fits{name}{}", about.word);
        if matches!(about.command, Command::Answer | Command::Batch) {
            out += "[\\fIOPTION\\fR]...\n";
        }
        if !about.takes.is_empty() {
            paragraph(&mut out, about.takes);
        }
    }
    out += ".SH DESCRIPTION\n";
    paragraph(
        &mut out,
        "What to cut both parts of a joint to, and how to get there: sizes, classes and the \
         words of the shop go in, limits, tools and passes come out. Without a query and at a \
         terminal the prompt opens.",
    );
    out += ".SH COMMANDS\n";
    for about in &COMMANDS {
        let words = ["fits", about.word, about.takes];
        let words = words.into_iter().filter(|word| !word.is_empty()).collect::<Vec<_>>();
        let _ = writeln!(out, ".SS {}", quoted(&words.join(" ")));
        let mut says = about.says.to_owned();
        if let Some(first) = says.get_mut(..1) {
            first.make_ascii_uppercase();
        }
        paragraph(&mut out, &format!("{says}."));
        for lines in about.more.split(|line| line.is_empty()) {
            if about.command == Command::Completions {
                verbatim(&mut out, lines.iter().copied());
            } else if !lines.is_empty() {
                out += ".PP\n";
                paragraph(&mut out, &lines.join(" "));
            }
        }
    }
    out += ".SH OPTIONS\n";
    for option in &OPTIONS {
        let with: Vec<&str> = COMMANDS
            .iter()
            .filter(|about| option.of.contains(&about.command))
            .map(|about| if about.word.is_empty() { "a query" } else { about.word })
            .collect();
        let with =
            if with.is_empty() { String::new() } else { format!(" (with {})", with.join(" and ")) };
        term(&mut out, &super::help::typed(option), &format!("{}{with}.", option.says));
    }
    out += ".SH QUERIES\n";
    let names: Vec<&str> = topics().map(|topic| topic.topic).collect();
    paragraph(
        &mut out,
        &format!(
            "What opens a query or stands in one. `fits help TOPIC` says more, with examples; \
             the topics are {}.",
            names.join(", ")
        ),
    );
    for clause in CLAUSES.iter().flat_map(|clauses| clauses.iter()) {
        term(
            &mut out,
            format!("{} {}", clause.word, clause.takes).trim_end(),
            &format!("{}.", clause.says),
        );
    }
    out += ".SH EXIT STATUS\n";
    for (status, says) in STATUSES {
        term(&mut out, status, &format!("{says}."));
    }
    out += ".SH ENVIRONMENT\n";
    for (name, says) in VARIABLES {
        term(&mut out, name, &format!("{says}."));
    }
    out += ".SH FILES\n";
    paragraph(&mut out, "Elsewhere than under Linux `fits --help` names their places.");
    for (is_config, name, says) in FILES {
        let folder = if is_config { "~/.config/fits/" } else { "~/.local/share/fits/" };
        term(&mut out, &format!("{folder}{name}"), &format!("{says}."));
    }
    out += ".SH EXAMPLES\n";
    for (line, says) in EXAMPLES {
        term(&mut out, line, &format!("{says}."));
    }
    out
}
