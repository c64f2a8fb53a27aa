//! The help of each command.

use std::fmt::Write as _;

use super::{COMMANDS, Command, EXAMPLES, FILES, OPTIONS, Opt, STATUSES, VARIABLES};
use crate::Home;

/// How an option is typed.
pub(crate) fn typed(option: &Opt) -> String {
    let short = option.short.map_or(String::new(), |short| format!("-{short}, "));
    let takes = if option.takes.is_empty() { String::new() } else { format!(" {}", option.takes) };
    format!("{short}--{}{takes}", option.long)
}

fn row(out: &mut String, left: &str, right: &str, width: usize) {
    let _ = writeln!(out, "  {left:width$}  {right}");
}

/// The help of a command, with this user's files.
pub fn help(command: Command, home: &Home) -> String {
    let mut out = String::new();
    let Some(about) = COMMANDS.iter().find(|about| about.command == command) else { return out };
    if command == Command::Answer {
        out += "Fits and tolerances at the lathe: what to cut both parts to, and how to get there.\n\n";
    } else {
        let _ = writeln!(out, "fits {}: {}\n", about.word, about.says);
    }
    let mut lead = "usage:";
    for shown in COMMANDS.iter().filter(|shown| {
        shown.command == command
            || command == Command::Answer && shown.command != Command::Candidates
    }) {
        let options = if matches!(shown.command, Command::Answer | Command::Batch) {
            "[OPTION]..."
        } else {
            ""
        };
        let words = ["fits", shown.word, options, shown.takes];
        let line = words.into_iter().filter(|word| !word.is_empty()).collect::<Vec<_>>().join(" ");
        let says = if command == Command::Answer { shown.says } else { "" };
        let _ = writeln!(out, "{}", format!("{lead:6} {line:29} {says}").trim_end());
        lead = "";
    }
    for line in about.more.iter().enumerate() {
        if line.0 == 0 {
            out.push('\n');
        }
        let _ = writeln!(out, "{}", line.1);
    }
    out += "\noptions:\n";
    for option in OPTIONS.iter().filter(|option| option.goes_with(command)) {
        row(&mut out, &typed(option), option.says, 15);
    }
    if matches!(command, Command::Answer | Command::Batch) {
        out += "\nexit status:\n";
        for (status, says) in STATUSES {
            row(&mut out, status, says, 1);
        }
    }
    if command == Command::Answer {
        out += "\nfiles:\n";
        for (is_config, name, says) in FILES {
            let folder = if is_config { &home.config } else { &home.data };
            if let Some(folder) = folder {
                let _ = writeln!(out, "  {}\n      {says}", folder.join(name).display());
            }
        }
        out += "\nenvironment:\n";
        for (name, says) in VARIABLES {
            let _ = writeln!(out, "  {name}: {says}");
        }
        out += "\nexamples:\n";
        for (line, says) in EXAMPLES {
            let _ = writeln!(out, "  {line}\n      {says}");
        }
    }
    out
}
