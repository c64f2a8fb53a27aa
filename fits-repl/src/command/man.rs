//! The man page, in the macros of man(7), from the tables.

use std::fmt::Write as _;

use super::{COMMANDS, Command, EXAMPLES, FILES, OPTIONS, STATUSES, VARIABLES};
use crate::{help::topics, questions::CLAUSES};

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
    // A line that begins with a dot is a macro.
    if out.starts_with('.') { format!("\\&{out}") } else { out }
}

/// An argument of a macro.
fn quoted(text: &str) -> String {
    format!("\"{}\"", plain(text).replace('"', "\\(dq"))
}

fn term(out: &mut String, tag: &str, says: &str) {
    let _ = writeln!(out, ".TP\n.B {}\n{}", quoted(tag), plain(says));
}

/// Lines as they stand.
fn verbatim<'a>(out: &mut String, lines: impl Iterator<Item = &'a str>) {
    *out += ".PP\n.nf\n";
    for line in lines {
        let _ = writeln!(out, "{}", if line.is_empty() { ".sp".to_owned() } else { plain(line) });
    }
    *out += ".fi\n";
}

/// The page.
pub fn page() -> String {
    let mut out = String::new();
    let version = env!("CARGO_PKG_VERSION");
    let _ =
        writeln!(out, ".TH FITS 1 {} {}", quoted("2026-11-27"), quoted(&format!("fits {version}")));
    out += ".SH NAME\nfits \\- fits and tolerances at the lathe\n.SH SYNOPSIS\n";
    for about in COMMANDS.iter().filter(|about| about.command != Command::Candidates) {
        let _ = write!(out, ".B fits");
        if !about.word.is_empty() {
            let _ = write!(out, " {}", about.word);
        }
        out.push('\n');
        if matches!(about.command, Command::Answer | Command::Batch) {
            out += "[\\fIOPTION\\fR]...\n";
        }
        if !about.takes.is_empty() {
            let _ = writeln!(out, "{}", plain(about.takes));
        }
        out += ".br\n";
    }
    out += ".SH DESCRIPTION\nWhat to cut both parts of a joint to, and how to get there: \
            sizes, classes and the words of the shop go in, limits, tools and passes come out.\n";
    out += "Without a query and at a terminal the prompt opens.\n.SH COMMANDS\n";
    for about in &COMMANDS {
        let words = ["fits", about.word, about.takes];
        let words = words.into_iter().filter(|word| !word.is_empty()).collect::<Vec<_>>();
        let _ = writeln!(out, ".SS {}", quoted(&words.join(" ")));
        let mut says = about.says.to_owned();
        if let Some(first) = says.get_mut(..1) {
            first.make_ascii_uppercase();
        }
        let _ = writeln!(out, "{}.", plain(&says));
        for paragraph in about.more.split(|line| line.is_empty()) {
            if about.command == Command::Completions {
                verbatim(&mut out, paragraph.iter().copied());
            } else if !paragraph.is_empty() {
                let _ =
                    writeln!(out, ".PP\n{}", plain(&paragraph.join("\n")).replace("\n.", "\n\\&."));
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
    out += ".SH QUERIES\nWhat opens a query or stands in one. `fits help TOPIC` says more, with examples; the topics are"
        .replace('`', "\\(ga")
        .as_str();
    let names: Vec<&str> = topics().map(|topic| topic.topic).collect();
    let _ = writeln!(out, "\n{}.", plain(&names.join(", ")));
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
    out += ".SH FILES\nElsewhere than under Linux \\(gafits \\-\\-help\\(ga names their places.\n";
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
