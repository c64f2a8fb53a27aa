//! The command at a shell: options anywhere, colour, the man page by its linters,
//! completions in the real shells. What is not installed is skipped, and said.

use std::{
    io::Write as _,
    path::Path,
    process::{Command, Output, Stdio},
};

use fits_checks::{isolate, nobody, piped, program};
use fits_core::{
    shop::words::Word,
    standards::{instruments::Instrument, materials::Material},
};
use fits_repl::help::topics;
use rexpect::session::spawn_command;

fn fits(arguments: &[&str]) -> Output {
    fits_checks::fits().args(arguments).stdin(Stdio::null()).output().expect("it runs")
}

fn out(arguments: &[&str]) -> String {
    let output = fits(arguments);
    let error = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{arguments:?}: {error}");
    String::from_utf8(output.stdout).expect("text")
}

#[track_caller]
fn refuses(arguments: &[&str], said: &str) {
    let output = fits(arguments);
    let error = String::from_utf8_lossy(&output.stderr);
    assert_eq!(output.status.code(), Some(2), "{arguments:?}: {error}");
    assert!(error.contains(said), "{arguments:?}: {error}");
    assert!(output.stdout.is_empty(), "{arguments:?}");
}

#[test]
fn options_stand_anywhere() {
    let wanted = out(&["--json", "--in", "2 H7"]);
    for arguments in [
        &["2", "H7", "--json", "--in"][..],
        &["2", "--json", "H7", "--units", "in"],
        &["--units=in", "2", "H7", "--json"],
        &["--json", "--in", "--", "2", "H7"],
    ] {
        assert_eq!(out(arguments), wanted, "{arguments:?}");
    }
    let stack = out(&["--json", "stack 20mm -19.5mm"]);
    assert_eq!(out(&["stack", "20mm", "-19.5mm", "--json"]), stack);
    assert!(out(&["--mm", "batch", "/dev/null"]).is_empty());
}

#[test]
fn what_does_not_go_together_is_told() {
    for (arguments, said) in [
        (&["20 H7", "--json", "--json"][..], "`--json` is given twice"),
        (&["batch", "--crib", "a", "--crib", "b"], "`--crib` is given twice"),
        (&["--in", "--mm", "20 H7"], "`--in` and `--mm` do not go together"),
        (&["--in", "20 H7", "--units", "in"], "`--in` and `--units` do not go together"),
        (&["--json", "--svg", "20 H7"], "`--json` and `--svg` do not go together"),
        (&["batch", "--alone", "--log", "x"], "`--alone` and `--log` do not go together"),
        (&["batch", "--csv", "query", "--log", "x"], "`--csv` and `--log` do not go together"),
        (&["batch", "--shown", "--csv", "query"], "`--csv` and `--shown` do not go together"),
        (&["batch", "--json"], "`--json` does not go with `fits batch`"),
        (&["20 H7", "--alone"], "`--alone` does not go with one query"),
        (&["20 H7", "--shown"], "`--shown` goes with `--json`"),
        (&["20 H7", "--jsn"], "invalid option '--jsn': is `--json` meant?"),
        (&["20 H7", "--units", "cm"], "`--units cm`: it is `mm` or `in`"),
        (&["20 H7", "--color", "red"], "`--color red`: it is `auto`, `always` or `never`"),
        (&["20 H7", "--crib"], "missing argument for option '--crib'"),
        (&["man", "batch"], "`man` takes no words"),
        (&["completions"], "`completions` takes one shell: bash, zsh, fish, powershell"),
        (&["completions", "tcsh"], "not for tcsh"),
        (&["schema", "nonsense"], "no answer is `nonsense`: there are "),
    ] {
        refuses(arguments, said);
    }
}

/// A file of tools that is not there is no empty one.
#[test]
fn a_crib_that_is_not_there_is_told() {
    for arguments in [
        &["20mm H7", "--crib", "no/such.toml"][..],
        &["20mm H7", "--json", "--crib", "no/such.toml"],
        &["batch", "/dev/null", "--crib", "no/such.toml"],
        &["batch", "/dev/null", "--csv", "query", "--crib", "no/such.toml"],
    ] {
        let told = fits(arguments).stderr;
        let told = String::from_utf8_lossy(&told);
        assert!(told.contains("no/such.toml: there is no such file"), "{arguments:?}: {told}");
    }
    assert!(out(&["20mm H7", "--json", "--crib", "no/such.toml"]).contains("\"file_notes\":[\"no"));
}

/// `-` is standard input for a note too.
#[test]
fn a_note_is_read_from_a_pipe() {
    let note = "part block\n  bore: 20mm H7; 20.01mm\n";
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("note.job");
    std::fs::write(&file, note).expect("written");
    let file = file.to_str().expect("a name");
    for command in [&["job", "--json"][..], &["job", "--csv"], &["sheet"]] {
        let output = piped(&[command, &["-"]].concat(), note.as_bytes());
        let text = String::from_utf8(output.stdout).expect("text");
        assert_eq!(text, out(&[command, &[file]].concat()), "{command:?}");
        assert!(text.contains("block"), "{command:?}: {text}");
    }
    let output = piped(&["job", "-"], b"part a\n\xff\n");
    assert_eq!(output.status.code(), Some(3));
    let told = String::from_utf8_lossy(&output.stderr);
    assert!(told.contains("standard input: line 2 is not UTF-8 text"), "{told}");
}

#[test]
fn every_command_has_its_help() {
    let help = out(&["--help"]);
    for wanted in ["settings.toml", "crib.toml", "passes/", "history.txt", "`fits help TOPIC`"] {
        assert!(help.contains(wanted), "{wanted}: {help}");
    }
    // Where this person's files are.
    let settings = nobody().join("config/fits/settings.toml");
    if cfg!(target_os = "linux") {
        assert!(help.contains(settings.to_str().expect("a name")), "{help}");
    }
    for command in ["batch", "schema", "man", "completions", "candidates"] {
        for arguments in [[command, "--help"], ["--help", command], [command, "-h"]] {
            let help = out(&arguments);
            assert!(help.starts_with(&format!("fits {command}: ")), "{arguments:?}: {help}");
        }
    }
    for text in [help, out(&["batch", "--help"])] {
        for line in text.lines().filter(|line| !line.starts_with("  /")) {
            assert!(line.chars().count() <= 88, "{line}");
        }
    }
}

#[test]
fn colour_as_it_is_told() {
    let colours = |arguments: &[&str], variables: &[(&str, &str)]| {
        let mut command = fits_checks::fits();
        command.args(arguments).arg("20 H7/g6").stdin(Stdio::null()).env_remove("CLICOLOR_FORCE");
        command.envs(variables.iter().copied());
        command.output().expect("it runs").stdout.contains(&0x1b)
    };
    // Outside a terminal; no-color.org and the CLICOLOR convention.
    assert!(!colours(&[], &[]));
    assert!(colours(&["--color", "always"], &[]));
    assert!(colours(&["--color=always"], &[("NO_COLOR", "1")]));
    assert!(colours(&[], &[("CLICOLOR_FORCE", "1")]));
    assert!(!colours(&[], &[("CLICOLOR_FORCE", "0")]));
    assert!(!colours(&[], &[("CLICOLOR_FORCE", "1"), ("NO_COLOR", "1")]));
    assert!(colours(&[], &[("CLICOLOR_FORCE", "1"), ("NO_COLOR", "")]));
    assert!(!colours(&["--color", "never"], &[("CLICOLOR_FORCE", "1")]));
}

/// A terminal so wide, and what a query prints in it.
fn in_terminal(columns: u16, variables: &[(&str, &str)], query: &str) -> String {
    let mut command = Command::new("sh");
    command.args(["-c", &format!("stty rows 24 cols {columns}; exec \"$0\" \"$1\"")]);
    command.arg(program()).arg(query);
    isolate(&mut command, &nobody());
    command.env("TERM", "xterm").env_remove("COLUMNS").envs(variables.iter().copied());
    let mut terminal = spawn_command(command, Some(20_000)).expect("a terminal");
    terminal.exp_eof().expect("it ends")
}

#[test]
fn lines_are_as_wide_as_the_terminal() {
    const QUERY: &str = "20mm H7/g6 warm 60C, hole nylon, shaft steel";
    let widest = |columns| {
        let text = in_terminal(columns, &[("NO_COLOR", "1")], QUERY);
        let prose = text.find("a free plastic part").expect("words about plastic");
        text[prose..].lines().map(|line| line.trim_end().chars().count()).max().unwrap_or(0)
    };
    assert!(widest(50) <= 50, "{}", widest(50));
    assert!((60..=80).contains(&widest(80)), "{}", widest(80));
    assert!((81..=100).contains(&widest(150)), "{}", widest(150));
    assert!(in_terminal(80, &[], "20 H7/g6").contains('\x1b'));
    assert!(!in_terminal(80, &[("CLICOLOR", "0")], "20 H7/g6").contains("\x1b["));
    assert!(!in_terminal(80, &[("NO_COLOR", "1")], "20 H7/g6").contains("\x1b["));
}

/// Runs a program of the distribution on a file; nothing where it is not there.
fn tool(name: &str, arguments: &[&str], file: &Path) -> Option<Output> {
    let output = Command::new(name).args(arguments).arg(file).env("LC_ALL", "C.UTF-8").output();
    if output.is_err() {
        eprintln!("skipped: {name} is not installed");
    }
    output.ok()
}

#[test]
fn the_man_page_passes_its_linters() {
    let page = out(&["man"]);
    let mut file = tempfile::Builder::new().suffix(".1").tempfile().expect("a file");
    file.write_all(page.as_bytes()).expect("written");
    let text = |output: &Output| {
        [&output.stdout, &output.stderr].map(|it| String::from_utf8_lossy(it).into_owned()).concat()
    };
    if let Some(output) = tool("mandoc", &["-T", "lint"], file.path()) {
        assert_eq!(text(&output), "");
        assert!(output.status.success());
    }
    if let Some(output) = tool("man", &["--warnings", "-l"], file.path()) {
        assert_eq!(String::from_utf8_lossy(&output.stderr), "");
        let shown = String::from_utf8_lossy(&output.stdout);
        for wanted in ["NAME", "SYNOPSIS", "OPTIONS", "QUERIES", "EXIT STATUS", "FILES"] {
            assert!(shown.contains(wanted), "{wanted}");
        }
    }
    if let Some(output) = tool("lexgrog", &[], file.path()) {
        assert!(text(&output).contains("fits - fits and tolerances at the lathe"), "{output:?}");
    }
}

/// What `fits` offers for a line; the last word is the one being typed.
fn offered(words: &[&str]) -> Vec<String> {
    let all = out(&[&["candidates", "--"], words].concat());
    all.lines().map(|line| line.split('\t').next().unwrap_or(line).to_owned()).collect()
}

#[test]
fn classes_words_materials_instruments_and_topics_are_offered() {
    for topic in topics() {
        let (start, _) = topic.topic.split_at(topic.topic.len() - 1);
        assert!(offered(&["help", start]).contains(&topic.topic.to_owned()), "{}", topic.topic);
    }
    for word in Word::all() {
        assert!(offered(&["20mm", ""]).contains(&word.name().to_owned()), "{}", word.name());
    }
    let materials = offered(&["20mm", "press,", "hub", ""]);
    for material in Material::all() {
        assert!(materials.contains(&material.name().to_owned()), "{}", material.name());
    }
    let instruments = offered(&["20mm", "H7", "=", "20.01mm", "with", ""]);
    for instrument in Instrument::all() {
        assert!(instruments.contains(&instrument.name().to_owned()), "{}", instrument.name());
    }
    for (words, wanted) in [
        (&["20", "H7/g"][..], "H7/g6"),
        (&["20", "E1"], "E10"),
        (&["20 H7/h1"], "20 H7/h11"),
        (&["assemble", "20mm", "H7/s6,", "sh"], "shrink"),
        (&["bushing", "20mm", "hou"], "housing"),
        (&["ba"], "batch"),
        (&["sche"], "schema"),
        (&["completions", "f"], "fish"),
        (&["batch", "--al"], "--alone"),
        (&["batch", "--units", "i"], "in"),
        (&["20", "H7", "--color=al"], "--color=always"),
        (&["20", "H7", "--color", "=", "al"], "always"),
    ] {
        assert!(offered(words).contains(&wanted.to_owned()), "{words:?}: {:?}", offered(words));
    }
    // Whatever a line may begin with, and what stands in it.
    for word in [
        "bush",
        "bushing",
        "rescue",
        "clean up",
        "thread",
        "pick",
        "circlip",
        "piston",
        "weight",
        "share",
        "bearing",
        "undo",
        "instrument",
        "retaining",
        "tap",
        "o-ring",
        "insert",
        "title",
    ] {
        let first = word.split(' ').next().unwrap_or(word);
        let typed = &first[..first.len() - 1];
        let got = offered(&[typed]);
        assert!(got.contains(&word.to_owned()), "{word}: {got:?}");
    }
    for (words, wanted) in [
        (&["M10", "ta"][..], "tap"),
        (&["1/4-20", "2"], "2B"),
        (&["M10", "6"], "6H"),
        (&["M10", "6"], "6g"),
        (&["20mm", "press,", "hole", "alu"], "aluminium"),
        (&["20mm", "press,", "shaft", "ste"], "steel"),
        (&["bushing", "bro"], "bronze"),
        (&["weight", "round", "20mm", "stee"], "steel"),
        (&["20", "sl"], "slip"),
        (&["1in", "FN"], "FN5"),
        (&["1in", "FN"], "FN3"),
        (&["why", "20", "H7/g"], "g6"),
        (&["why", "resc"], "rescue"),
        (&["help", "walk"], "walk-through"),
        (&["schema", "fi"], "fit"),
        (&["schema", "job"], "job_line"),
        (&["batch", "--csv", "query,hole.lo"], "query,hole.lower_mm"),
        (&["batch", "--csv", "qu"], "query"),
        (&["rescue", "hole", "20.05mm", "sho"], "should be"),
    ] {
        let got = offered(words);
        let is_there = got.iter().any(|one| one == wanted || one.ends_with(&format!("/{wanted}")));
        assert!(is_there, "{words:?}: {got:?}");
    }
    assert_eq!(offered(&["batch", "--units", ""]), ["mm", "in"]);
    // Nothing that is refused: an option given, or of another command.
    assert!(!offered(&["20", "H7", "--json", "--"]).contains(&"--json".to_owned()));
    assert!(!offered(&["20", "H7", "--"]).contains(&"--csv".to_owned()));
    assert!(offered(&["batch", "--crib", ""]).is_empty());
}

/// The folder of the program before the others.
fn with_program(command: &mut Command, home: &Path) {
    let folder = program().parent().expect("a folder").to_owned();
    let others = std::env::var_os("PATH").unwrap_or_default();
    let all = std::iter::once(folder).chain(std::env::split_paths(&others));
    isolate(command, home);
    command.env("PATH", std::env::join_paths(all).expect("folders")).env("TERM", "dumb");
}

fn is_there(shell: &str) -> bool {
    let found = Command::new(shell).arg("--version").output().is_ok();
    if !found {
        eprintln!("skipped: {shell} is not installed");
    }
    found
}

/// What is typed at a shell, with a tab at its end, and what becomes of it.
const TYPED: [(&str, &str); 7] = [
    ("fits 20 J\t", "fits 20 JS7"),
    ("fits \"20 H7/h1\t", "fits \"20 H7/h11"),
    ("fits --color=al\t", "fits --color=always"),
    ("fits batch --cs\t", "fits batch --csv"),
    ("fits comp\t", "fits completions"),
    ("fits completions f\t", "fits completions fish"),
    ("fits help bushi\t", "fits help bushings"),
];

/// Types at a real shell.
fn completes(shell: &str, arguments: &[&str], setup: &str) {
    if !is_there(shell) {
        return;
    }
    let home = tempfile::tempdir().expect("a folder");
    for (typed, wanted) in TYPED {
        // Where the terminal does not echo, bash does not either.
        let mut command = Command::new("sh");
        command.args(["-c", "stty echo rows 24 cols 80; exec \"$0\" \"$@\"", shell]);
        command.args(arguments).current_dir(home.path());
        with_program(&mut command, home.path());
        let mut terminal = spawn_command(command, Some(20_000)).expect("a terminal");
        // What is typed before the prompt is there may be lost.
        terminal.send_line(&format!("{setup}; PS1='re''ady> '")).expect("typed");
        terminal.exp_string("ready> ").unwrap_or_else(|error| panic!("{shell}: {error}"));
        terminal.send(typed).expect("typed");
        terminal.flush().expect("sent");
        terminal
            .exp_string(wanted)
            .unwrap_or_else(|error| panic!("{shell}: {typed:?} is not {wanted:?}: {error}"));
        // A shell does not heed the signal that would end it: the line is cleared
        // and it is told to leave.
        terminal.send_line("\x15exit").expect("typed");
        terminal.exp_eof().unwrap_or_else(|error| panic!("{shell}: {error}"));
    }
}

#[test]
fn bash_completes() {
    completes("bash", &["--norc", "--noprofile", "-i"], "source <(fits completions bash)");
}

#[test]
fn zsh_completes() {
    let setup = "autoload -Uz compinit; compinit -u -D; source <(fits completions zsh)";
    completes("zsh", &["-f", "-i"], setup);
}

#[test]
fn fish_completes() {
    if !is_there("fish") {
        return;
    }
    let home = tempfile::tempdir().expect("a folder");
    std::fs::write(home.path().join("note.job"), "").expect("written");
    for (typed, wanted) in [
        ("fits 20 J", "JS7"),
        ("fits 20 H7/h1", "H7/h11"),
        ("fits --color=al", "--color=always"),
        ("fits batch --cs", "--csv\ta table of these columns instead of JSON"),
        ("fits 20 press, hub cast bro", "bronze"),
        ("fits completions f", "fish"),
        ("fits job no", "note.job"),
        ("fits sheet no", "note.job"),
    ] {
        let mut command = Command::new("fish");
        command.args(["--no-config", "-c"]).current_dir(home.path());
        command.arg(format!("fits completions fish | source; complete -C '{typed}'"));
        with_program(&mut command, home.path());
        let output = command.output().expect("it runs");
        let text = String::from_utf8_lossy(&output.stdout);
        assert!(text.lines().any(|line| line == wanted), "{typed}: {text}");
    }
}

#[test]
fn powershell_completes() {
    if !is_there("pwsh") {
        return;
    }
    let home = tempfile::tempdir().expect("a folder");
    for (typed, wanted) in [("fits 20 J", "JS7"), ("fits batch --cs", "--csv")] {
        let mut command = Command::new("pwsh");
        command.args(["-NoProfile", "-Command"]).arg(format!(
            "fits completions powershell | Out-String | Invoke-Expression; \
             (TabExpansion2 '{typed}' {}).CompletionMatches.CompletionText",
            typed.len()
        ));
        with_program(&mut command, home.path());
        let output = command.output().expect("it runs");
        let text = String::from_utf8_lossy(&output.stdout);
        assert!(text.lines().any(|line| line == wanted), "{typed}: {text}");
    }
}
