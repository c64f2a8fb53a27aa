//! Every command in the README runs, and prints what the README shows.
//!
//! With `FITS_REGENERATE` set the outputs are written anew.

use std::process::Command;

use fits_checks::{hold_generated, isolate, nobody, program, project_file};
use fits_repl::{
    query::Units,
    render::{Colour, text::Text},
    session::Session,
};

/// Commands that are not run here: they are what runs this test, or build.
const NOT_RUN: &str = "cargo test --workspace --locked";

fn run(command: &str) -> String {
    if command == NOT_RUN {
        return String::new();
    }
    let as_fits = command
        .strip_prefix("cargo run --release --locked --")
        .map_or_else(|| command.to_owned(), |rest| format!("fits{rest}"));
    assert!(as_fits.starts_with("fits "), "README: `{command}` is not checked");
    let path = format!(
        "{}:{}",
        program().parent().expect("a folder").display(),
        std::env::var("PATH").unwrap_or_default()
    );
    let mut shell = Command::new("sh");
    isolate(&mut shell, &nobody());
    let output = shell.args(["-c", &as_fits]).env("PATH", path).output().expect("a shell");
    let stderr = String::from_utf8_lossy(&output.stderr);
    assert_eq!(stderr, "", "README: `{command}`");
    String::from_utf8(output.stdout).expect("text")
}

/// A block of commands, each with its output.
fn console(block: &[&str]) -> String {
    let mut out = String::new();
    for command in block.iter().filter_map(|line| line.strip_prefix("$ ")) {
        out.extend(["$ ", command, "\n", &run(command)]);
    }
    out
}

/// A block typed at the prompt.
fn prompt(block: &[&str]) -> String {
    let mut session = Session::new();
    let mut out = String::new();
    for line in block.iter().filter_map(|line| line.strip_prefix("fits ")) {
        let (units, query) = line.split_once("> ").expect("a prompt");
        let wanted = if session.units == Units::Inches { "in" } else { "mm" };
        assert_eq!(units, wanted, "README: the prompt before `{query}`");
        out.extend(["fits ", units, "> ", query, "\n"]);
        let answer = session.evaluate(query);
        let text = Text { settings: session.shown(), colour: Colour::Off };
        out += &answer.map_or_else(
            |problem| text.problem(query, &problem),
            |answer| text.read_as(session.read_as(), session.slips()) + &text.answer(&answer),
        );
    }
    out
}

/// Runs every command of a page, and holds the page to what they print.
#[track_caller]
fn prints_what_it_shows(page: &str, blocks: usize) {
    let text = std::fs::read_to_string(project_file(page)).expect(page);
    let mut wanted = String::new();
    let mut lines = text.lines();
    let mut checked = 0;
    while let Some(line) = lines.next() {
        wanted += line;
        wanted.push('\n');
        let fill: fn(&[&str]) -> String = match line {
            "```console" => console,
            "```text" => prompt,
            _ => continue,
        };
        let block: Vec<&str> = lines.by_ref().take_while(|line| *line != "```").collect();
        wanted += &fill(&block);
        wanted += "```\n";
        checked += 1;
    }
    assert!(checked >= blocks, "{page}: only {checked} blocks");
    hold_generated(page, &wanted);
}

#[test]
fn every_command_prints_what_the_readme_shows() {
    prints_what_it_shows("README.md", 7);
}

#[test]
fn every_command_prints_what_the_walk_through_shows() {
    prints_what_it_shows("fits-repl/guide.md", 25);
}

#[test]
fn the_readme_is_short_and_its_examples_are_answered() {
    let text = std::fs::read_to_string(project_file("README.md")).expect("README.md");
    assert!(text.lines().count() <= 300, "{} lines", text.lines().count());
    let table = text.split("## What can be asked").nth(1).expect("a table of questions");
    let mut session = Session::new();
    let mut asked = 0;
    for row in table.lines().skip(1).take_while(|line| !line.starts_with("## ")) {
        for example in row.split('`').skip(1).step_by(2) {
            let answer = session.evaluate(example);
            assert!(answer.is_ok(), "{example}: {answer:?}");
            asked += 1;
        }
    }
    assert!(asked > 30, "only {asked} examples");
}

#[test]
fn the_two_commands_stand_first_and_alone() {
    let text = std::fs::read_to_string(project_file("README.md")).expect("README.md");
    let commands: Vec<&str> = text.lines().filter_map(|line| line.strip_prefix("$ ")).collect();
    assert_eq!(commands[..2], ["cargo run --release --locked -- 20 H7/g6", NOT_RUN]);
    let ci = std::fs::read_to_string(project_file(".ci/run")).expect(".ci/run");
    assert!(ci.contains(NOT_RUN), "CI runs the README's test command");
}
