//! What the log says where a pass or a reading misses by far: what probably
//! happened, what to look at, and no order that a slip could turn into scrap.

use fits_checks::{ask, fits};
use fits_repl::{
    render::{Colour, text::Text},
    session::Session,
};
use serde_json::Value;

fn text(session: &mut Session, query: &str) -> String {
    let answer = session.evaluate(query).unwrap_or_else(|error| panic!("{query}: {error:?}"));
    Text { settings: session.shown(), colour: Colour::Off }.answer(&answer)
}

fn opened(first: &str) -> Session {
    let mut session = Session::new();
    assert!(session.evaluate(first).is_ok(), "{first}");
    session
}

#[track_caller]
fn asked(session: &mut Session, line: &str) -> String {
    match session.evaluate(line) {
        Err(problem) => format!("{}; {}", problem.message, problem.hint(line)),
        Ok(answer) => panic!("{line}: {answer:?}"),
    }
}

const BORE: &str = "bore 20 H7 from 19.6 with bore gauge";

#[test]
fn a_miss_is_told_as_what_probably_happened() {
    for (line, story, words) in [
        ("cut 0.25 = 19.605", "hardly moved", "the slide hardly moved"),
        ("cut 0.15 = 19.891", "dial reads radius", "the dial counts the radius: 2.0 times"),
        ("cut 0.25 = 19.721", "dial reads diameter", "the dial counts the diameter: 50 %"),
        ("cut 0.25 = 19.772", "backlash", "backlash: 0.070 mm less came off"),
        ("cut 0.25 = 198.42", "decimal point", "the decimal point is off: 19.842 mm was meant"),
        ("cut 0.25 = 19.5", "gauge", "0.342 mm from what was expected"),
    ] {
        let mut session = opened(BORE);
        // Asked about first, and nothing is entered.
        let said = asked(&mut session, line);
        assert!(said.contains("nothing is entered"), "{said}");
        assert!(said.contains(&format!("`{line} sure`")), "{said}");
        // A size that goes the wrong way says so itself.
        assert!(story == "gauge" || said.contains(&format!("probably {words}")), "{said}");
        assert_eq!(ask(&mut session, "log")["entries"].as_array().map(Vec::len), Some(0));
        if story == "decimal point" {
            continue;
        }
        // The story comes first, then the reading to take, then the advice.
        let sure = format!("{line} sure");
        let told = ask(&mut session.trial(), &sure);
        assert_eq!(told["story"]["name"], story, "{told}");
        let said = text(&mut session, &sure);
        let check = told["story"]["check"].as_str().expect("what to look at");
        let start: String = check.chars().take(20).collect();
        let at = |what: &str| said.find(what).unwrap_or_else(|| panic!("{what}: {said}"));
        assert!(said.starts_with("probably "), "{said}");
        let order = ["\nDIAL", "\nREAD", "\nSTOP", "\nOVER"].into_iter().find_map(|o| said.find(o));
        assert!(at(words) < at(&start) && Some(at(&start)) < order, "{said}");
    }
}

#[test]
fn what_no_story_explains_is_asked_about_and_not_entered() {
    let mut session = opened(BORE);
    // One and a half times what was dialled: no radius, no backlash.
    let said = asked(&mut session, "cut 0.2 = 19.9");
    assert!(said.contains("no slip of dial or gauge explains it; measure again"), "{said}");
    assert_eq!(ask(&mut session, "log")["entries"].as_array().map(Vec::len), Some(0));
}

#[test]
fn a_pass_as_expected_tells_no_story() {
    let mut session = opened(BORE);
    let log = ask(&mut session, "cut 0.25 = 19.842");
    assert_eq!(log.get("story"), None, "{log}");
    assert!(!text(&mut session, "log").contains("probably"), "{log}");
}

/// A slide that does not move twice is not a tool that takes a fiftieth: an
/// order by that factor bores 1.5 mm too far once the slide moves.
#[test]
fn two_slips_alike_give_no_order_past_the_limit() {
    let mut session = opened(BORE);
    for (line, size) in [
        ("cut 0.25 = 19.605 sure", 19.605),
        ("cut 0.25 = 19.61 sure", 19.61),
        ("cut 0.25 = 19.615 sure", 19.615),
    ] {
        let log = ask(&mut session, line);
        let dial = log["next"]["dial_mm"].as_f64().unwrap_or(0.0);
        assert!(size + dial <= 20.021, "{line}: {}", log["next"]);
    }
    let said = text(&mut session, "log");
    assert!(said.contains("STOP  do not cut it as things are"), "{said}");
    assert!(said.contains("three passes in a row missed: check the machine"), "{said}");
    // A light cut that the freed slide takes goes on.
    let log = ask(&mut session, "cut 0.05 = 19.663 sure");
    assert_ne!(log["next"]["action"], "stop", "{log}");
}

#[test]
fn three_slips_in_a_row_stop_the_work() {
    let mut session = opened("bore 40 H7 from 36 with bore gauge");
    // Short by unlike amounts: no tool, no one story.
    for line in ["cut 0.5 = 36.15 sure", "cut 0.5 = 36.95 sure", "cut 0.5 = 37.11 sure"] {
        let log = ask(&mut session, line);
        assert_eq!(log.get("error"), None, "{line}: {log}");
    }
    let said = text(&mut session, "log");
    assert!(said.contains("STOP  do not cut it as things are"), "{said}");
    assert!(said.contains("three passes in a row missed: check the machine"), "{said}");
}

#[test]
fn the_program_says_it_as_the_library_does() {
    let mut command = fits();
    command.args(["batch", "/dev/stdin"]);
    command.stdin(std::process::Stdio::piped()).stdout(std::process::Stdio::piped());
    let mut child = command.spawn().expect("it runs");
    let lines = format!("{BORE}\ncut 0.25 = 19.605 sure\n");
    std::io::Write::write_all(&mut child.stdin.take().expect("piped"), lines.as_bytes())
        .expect("it takes lines");
    let out = child.wait_with_output().expect("it ends");
    let out = String::from_utf8_lossy(&out.stdout);
    let last: Value = serde_json::from_str(out.lines().last().unwrap_or_default()).expect("JSON");
    assert_eq!(last["story"]["name"], "hardly moved", "{last}");
}
