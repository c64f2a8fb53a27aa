//! A real pseudo-terminal: type a pair, recall it, complete a class, make an
//! error, clear a line, leave; history is kept.

use std::{
    io::Write as _,
    path::Path,
    process::Command,
    thread,
    time::{Duration, Instant},
};

use fits_checks::program;
use rexpect::session::{PtySession, spawn_command};

const ENOUGH_MS: u64 = 20_000;

fn open(home: &Path, colour: bool) -> PtySession {
    let mut terminal = start(home, colour);
    terminal.exp_string("fits mm> ").expect("the prompt");
    terminal
}

fn start(home: &Path, colour: bool) -> PtySession {
    // A fresh pseudo-terminal has no size.
    let mut command = Command::new("sh");
    command.args(["-c", "stty rows 24 cols 80; exec \"$0\""]).arg(program());
    command
        .env("XDG_DATA_HOME", home)
        .env("XDG_CONFIG_HOME", home.join("config"))
        .env("HOME", home)
        .env("TERM", "xterm")
        .env("COLUMNS", "80")
        .env_remove("NO_COLOR");
    if !colour {
        command.env("NO_COLOR", "1");
    }
    let mut terminal = spawn_command(command, Some(ENOUGH_MS)).expect("a terminal");
    terminal.exp_string("Ctrl-D leaves").expect("the greeting");
    terminal
}

fn type_keys(terminal: &mut PtySession, keys: &str) {
    terminal.send(keys).expect("typed");
    terminal.flush().expect("sent");
}

#[test]
fn a_session_at_the_prompt() {
    let home = tempfile::tempdir().expect("a folder");
    let mut terminal = open(home.path(), false);

    terminal.send_line("20 H7/g6").expect("typed");
    terminal.exp_string("CUT     hole    20.010 mm").expect("what to cut");
    terminal.exp_string("clearance fit, hole-basis").expect("the fit");
    terminal.exp_string("fits mm> ").expect("the prompt");

    // Recall it with the up arrow.
    type_keys(&mut terminal, "\x1b[A");
    terminal.exp_string("20 H7/g6").expect("the line again");
    terminal.send_line("").expect("typed");
    terminal.exp_string("CUT     shaft   19.987 mm").expect("answered again");
    terminal.exp_string("fits mm> ").expect("the prompt");

    // Complete a class: only JS7 begins so.
    type_keys(&mut terminal, "20 J\t");
    terminal.exp_string("20 JS7").expect("completed");
    terminal.send_line("").expect("typed");
    terminal.exp_string("19.990 to 20.010 mm").expect("its limits");
    terminal.exp_string("fits mm> ").expect("the prompt");

    // An error, with its caret.
    terminal.send_line("20 h7/G6").expect("typed");
    terminal.exp_string("the hole's comes first").expect("the message");
    terminal.exp_string("     ^^").expect("the caret");
    terminal.exp_string("`20 H7/g6`").expect("the hint");
    terminal.exp_string("fits mm> ").expect("the prompt");

    // Ctrl-C clears the line and stays.
    type_keys(&mut terminal, "20 H7 = 9");
    terminal.send_control('c').expect("typed");
    // The line's own redraws hold a prompt as well.
    terminal.exp_string("\r\n").expect("the line is left");
    terminal.exp_string("fits mm> ").expect("the prompt");
    terminal.send_line("units in").expect("typed");
    terminal.exp_string("units in, dial diameter").expect("the setting");
    terminal.exp_string("fits in> ").expect("the new prompt");
    terminal.send_control('d').expect("typed");
    terminal.exp_eof().expect("it leaves");

    let history =
        std::fs::read_to_string(home.path().join("fits").join("history.txt")).expect("a history");
    for line in ["20 H7/g6", "20 JS7", "20 h7/G6", "units in"] {
        assert!(history.lines().any(|kept| kept == line), "{line} is not in {history}");
    }
}

#[test]
fn history_is_there_the_next_time_and_two_sessions_keep_both() {
    let home = tempfile::tempdir().expect("a folder");
    let mut first = open(home.path(), false);
    let mut second = open(home.path(), false);
    for (terminal, query) in [(&mut first, "30 H8/f7"), (&mut second, "12 H7/p6")] {
        terminal.send_line(query).expect("typed");
        terminal.exp_string("CUT").expect("an answer");
        terminal.exp_string("fits mm> ").expect("the prompt");
    }
    for mut terminal in [first, second] {
        terminal.send_control('d').expect("typed");
        terminal.exp_eof().expect("it leaves");
    }
    let mut third = open(home.path(), false);
    type_keys(&mut third, "\x1b[A");
    third.exp_string("12 H7/p6").expect("the last line");
    type_keys(&mut third, "\x1b[A");
    third.exp_string("30 H8/f7").expect("the one before");
    third.send_control('c').expect("typed");
    // The line's own redraws hold a prompt as well.
    third.exp_string("\r\n").expect("the line is left");
    third.exp_string("fits mm> ").expect("the prompt");
    third.send_control('d').expect("typed");
    third.exp_eof().expect("it leaves");
}

#[test]
fn colour_is_used_at_a_terminal_unless_refused() {
    for colour in [true, false] {
        let home = tempfile::tempdir().expect("a folder");
        let mut terminal = open(home.path(), colour);
        terminal.send_line("20 H7 = 20.013").expect("typed");
        let before = terminal.exp_string("reads 20.013 mm").expect("the verdict");
        assert_eq!(before.contains("\x1b[1;32mGOOD"), colour, "{before:?}");
        terminal.send_control('d').expect("typed");
        terminal.exp_eof().expect("it leaves");
    }
}

#[test]
fn a_byte_that_is_no_text_does_not_end_the_prompt() {
    let home = tempfile::tempdir().expect("a folder");
    let mut terminal = open(home.path(), false);
    // The keys go in as bytes: the session's own way takes text alone.
    let mut keys = terminal.process().get_file_handle().expect("the terminal");
    // What followed the byte would be a query of its own: it is asked about.
    keys.write_all(b"1\xff").expect("typed");
    terminal.exp_string("not UTF-8 text").expect("the message");
    terminal.exp_string("fits mm> ").expect("the prompt");
    terminal.send_line("20 H7/g6").expect("typed");
    let (before, _) = terminal.exp_regex("not answered yet").expect("a word");
    assert!(!before.contains("CUT "), "{before}");
    terminal.send_line("").expect("typed");
    terminal.exp_string("CUT     hole").expect("answered when it was confirmed");
    terminal.exp_string("fits mm> ").expect("the prompt");
    for bytes in [&b"20 \xff H7"[..], b"\xe2\x28\xa1"] {
        keys.write_all(bytes).expect("typed");
        terminal.send_line("").expect("typed");
        terminal.exp_string("not UTF-8 text").expect("the message");
        terminal.exp_string("fits mm> ").expect("the prompt");
    }
    leave_line(&mut terminal);
    says(&mut terminal, "20 H7/g6", &["CUT     hole    20.010 mm"]);
    terminal.send_control('d').expect("typed");
    terminal.exp_eof().expect("it leaves");
}

/// Comes to an empty line, whatever is still on its way: what was read in one
/// go with a stray byte is lost with it, so a mark is typed until it is shown.
fn leave_line(terminal: &mut PtySession) {
    let shows_mark = (0..20).any(|_| {
        type_keys(terminal, "~");
        let end = Instant::now() + Duration::from_secs(2);
        while Instant::now() < end {
            match terminal.try_read() {
                Some('~') => return true,
                Some(_) => {}
                None => thread::sleep(Duration::from_millis(10)),
            }
        }
        false
    });
    assert!(shows_mark, "the prompt takes no keys");
    terminal.send_control('c').expect("typed");
    terminal.exp_string("\r\n").expect("the line is left");
    terminal.exp_string("fits mm> ").expect("the prompt");
}

#[track_caller]
fn says(terminal: &mut PtySession, line: &str, wanted: &[&str]) {
    terminal.send_line(line).expect("typed");
    for wanted in wanted {
        terminal.exp_string(wanted).unwrap_or_else(|error| panic!("{line}: {wanted}: {error}"));
    }
    terminal.exp_string("> ").expect("the prompt");
}

#[test]
fn a_pass_log_goes_on_the_next_time_and_teaches() {
    let home = tempfile::tempdir().expect("a folder");
    let mut terminal = open(home.path(), false);
    says(&mut terminal, "cut 0.2", &["no pass log is open", "`bore 20 H7 from 19.6`"]);
    says(&mut terminal, "bore 20 H7 from 19.6", &["DIAL  ", "pass log bore-20-H7-1 is open; then"]);
    says(&mut terminal, "cut 0.2 = 19.79", &["19.790 mm", "log bore-20-H7-1"]);
    says(
        &mut terminal,
        "read 19.83",
        &["19.830 mm after 19.790 mm with no cut", "read 19.83 sure"],
    );
    // The machine goes off in the middle.
    drop(terminal);

    let mut terminal = start(home.path(), false);
    terminal
        .exp_string("pass log bore-20-H7-1 is open: 20 mm H7, 1 entry; `log` shows it")
        .expect("the log");
    terminal.exp_string("fits mm> ").expect("the prompt");
    // Another one meanwhile only reads it.
    let mut other = start(home.path(), false);
    other.exp_string("is open in another fits").expect("a note");
    other.exp_string("fits mm> ").expect("the prompt");
    says(&mut other, "bore 12 H7 from 11.6", &["pass log bore-12-H7-1 is open"]);
    says(&mut other, "log open bore-20-H7-1", &["open in another fits"]);
    says(&mut other, "read 19.791", &["nothing is entered:", "leave the other fits"]);
    other.send_control('d').expect("typed");
    other.exp_eof().expect("it leaves");

    says(&mut terminal, "cut 0.17 = 19.955", &["2 cut"]);
    says(&mut terminal, "cut 0.05 = 20.003", &["3 cut"]);
    says(&mut terminal, "done", &["DONE", "log bore-20-H7-1, done"]);
    says(
        &mut terminal,
        "bore 20 H7 from 19.6",
        &["bore-20-H7-2 is open", "as one finished log taught"],
    );
    says(&mut terminal, "log list", &["open here: bore-20-H7-2", "bore-20-H7-1", "done"]);
    says(&mut terminal, "log open bore-20-H7-1", &["DONE", "20.003 mm"]);
    says(&mut terminal, "log open bore-20-H7-9", &["there is no pass log bore-20-H7-9"]);
    terminal.send_control('d').expect("typed");
    terminal.exp_eof().expect("it leaves");
}

#[test]
fn the_prompt_remembers_its_settings_and_knows_the_crib() {
    let home = tempfile::tempdir().expect("a folder");
    let mut terminal = open(home.path(), false);
    says(&mut terminal, "crib add reamer 3/4in cuts 0.7504in", &["added: reamer 0.75 in, cuts"]);
    says(&mut terminal, "dial radius", &["dial radius", "remembered"]);
    terminal.send_line("units in").expect("typed");
    terminal.exp_string("remembered").expect("a note");
    terminal.exp_string("fits in> ").expect("the new prompt");
    terminal.send_control('d').expect("typed");
    terminal.exp_eof().expect("it leaves");

    let mut terminal = start(home.path(), false);
    terminal.exp_string("fits in> ").expect("the prompt remembers");
    says(&mut terminal, "ream 3/4 H7", &["crib  the 0.7500 in that cuts 0.7504 in"]);
    says(&mut terminal, "crib remove 1", &["taken out", "the crib is empty"]);
    terminal.send_control('d').expect("typed");
    terminal.exp_eof().expect("it leaves");
}

/// Long work is done once, when it is asked for, and tells how far it is: not
/// at every keystroke, where the line is looked at.
#[test]
fn long_work_waits_for_the_line() {
    let home = tempfile::tempdir().expect("a folder");
    let mut terminal = open(home.path(), false);
    for key in "rehearse 20 H7 from 19.6 with bore gauge, runs 400".chars() {
        type_keys(&mut terminal, &key.to_string());
    }
    terminal.send_line("").expect("typed");
    let before = terminal.exp_string("50 of 400").expect("how far it is");
    assert!(!before.contains(" of "), "it ran before it was asked for: {before:?}");
    terminal.exp_string("350 of 400").expect("how far it is");
    terminal.exp_string("400 runs, seed 1").expect("the answer");
    terminal.exp_string("adviser").expect("the first of three");
    terminal.exp_string("fits mm> ").expect("the prompt");
}

#[test]
fn ctrl_c_stops_a_rehearsal_and_tells_the_odds_so_far() {
    let home = tempfile::tempdir().expect("a folder");
    let mut terminal = open(home.path(), false);
    terminal.send_line("rehearse 20 H7 from 19.6 with bore gauge, runs 1000000").expect("typed");
    terminal.exp_string("of 1000000, Ctrl-C stops").expect("progress");
    terminal.send_control('c').expect("typed");
    let (_, runs) = terminal.exp_regex("[0-9 ]+ runs, seed 1").expect("the odds so far");
    let runs: u64 =
        runs.replace(' ', "").trim_end_matches("runs,seed1").parse().expect("a count of runs");
    assert!((1..1_000_000).contains(&runs), "{runs}");
    terminal.exp_string("fits mm> ").expect("the prompt");
    // The wish to stop holds for that line alone.
    terminal.send_line("rehearse 20 H7 from 19.6 with bore gauge, runs 120").expect("typed");
    terminal.exp_string("120 runs, seed 1").expect("all of them");
    terminal.exp_string("fits mm> ").expect("the prompt");
}

/// The shell stays when the program is ended, and tells the terminal's state.
#[test]
fn the_terminal_is_put_back_when_the_program_is_ended() {
    for signal in ["TERM", "HUP"] {
        let home = tempfile::tempdir().expect("a folder");
        let mut command = Command::new("sh");
        let script = "stty rows 24 cols 80; before=$(stty -g); echo $$ >\"$1/shell\"; \
            \"$0\"; ended=$?; \
            test \"$before\" = \"$(stty -g)\" && echo put back, $ended";
        command.args(["-c", script]).arg(program()).arg(home.path());
        command.env("XDG_DATA_HOME", home.path()).env("HOME", home.path()).env("TERM", "xterm");
        command.env("XDG_CONFIG_HOME", home.path().join("config"));
        let mut terminal = spawn_command(command, Some(ENOUGH_MS)).expect("a terminal");
        terminal.exp_string("fits mm> ").expect("the prompt");
        let shell = std::fs::read_to_string(home.path().join("shell")).expect("its number");
        let killed = Command::new("sh")
            .args(["-c", "kill -$0 $(cat /proc/$1/task/$1/children)", signal, shell.trim()])
            .status()
            .expect("killed");
        assert!(killed.success());
        let status = if signal == "TERM" { 128 + 15 } else { 128 + 1 };
        terminal.exp_string(&format!("put back, {status}")).expect(signal);
    }
}

#[test]
fn the_prompt_asks_once_which_unit() {
    for (reply, prompt) in [("in", "fits in> "), ("inches", "fits in> "), ("mm", "fits mm> ")] {
        let home = tempfile::tempdir().expect("a folder");
        let mut terminal = start(home.path(), false);
        terminal.exp_string("inches or millimetres?").expect("the question");
        terminal.exp_string("fits mm> ").expect("the prompt");
        terminal.send_line(reply).expect("typed");
        terminal.exp_string("remembered").expect("a note");
        terminal.exp_string(prompt).expect("the new prompt");
        terminal.send_control('d').expect("typed");
        terminal.exp_eof().expect("it leaves");
        let mut terminal = start(home.path(), false);
        let before = terminal.exp_string(prompt).expect("the prompt");
        assert!(!before.contains("inches or millimetres?"), "{before}");
        terminal.send_control('d').expect("typed");
        terminal.exp_eof().expect("it leaves");
    }
}
