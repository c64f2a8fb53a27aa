//! The log as it is spoken at the machine: cuts, readings at one place or
//! several, spring passes, what was wrong; and what is refused, and then taken
//! back by nobody.

use fits_repl::{render::json, session::Session};
use serde_json::Value;

fn ask(session: &mut Session, line: &str) -> Value {
    let answer = session.evaluate(line);
    let mut out = Vec::new();
    json::object_with(&mut out, None, line, session.beside(&[]), &answer);
    serde_json::from_slice(&out).expect("one object")
}

fn opened() -> Session {
    let mut session = Session::new();
    for line in ["inches", "bore 3/4 H7 from .735"] {
        assert!(ask(&mut session, line).get("error").is_none(), "{line}");
    }
    session
}

/// What stands in the log: dialled, read, and the places, without the clock.
fn entries(session: &mut Session) -> Vec<Value> {
    let log = ask(session, "log");
    let list = log["entries"].as_array().cloned().unwrap_or_default();
    list.into_iter()
        .map(|mut entry| {
            if let Some(fields) = entry.as_object_mut() {
                fields.remove("time");
                fields.remove("at");
            }
            entry
        })
        .collect()
}

#[test]
fn what_is_spoken_is_the_entry_that_is_typed() {
    for (spoken, plain) in [
        ("dialled 10 thou reads .7452", "cut 10 thou = 0.7452in"),
        ("took 10 got .7452", "cut 10 thou = 0.7452in"),
        ("dialed 10 thou, mics .7452", "cut 10 thou = 0.7452in"),
        ("i took 10 thou and it reads .7452", "cut 10 thou = 0.7452in"),
        ("took 10 thou", "cut 10 thou"),
        ("spring pass reads .7352", "spring = 0.7352in"),
        ("spring pass", "spring"),
        ("took 10, got .7452 front and .7454 back", "cut 10 thou = 0.7452in front 0.7454in back"),
        ("took 10, front .7452 back .7454", "cut 10 thou = 0.7452in front 0.7454in back"),
        (
            "dialled 10 thou, mics .7452 at the mouth and .7450 at the bottom",
            "cut 10 thou = 0.7452in mouth 0.7450in bottom",
        ),
        ("took 10 got .7452 / .7454", "cut 10 thou = 0.7452in / 0.7454in"),
        ("took 10 got .7452/.7454", "cut 10 thou = 0.7452in / 0.7454in"),
        ("took 10 got .7452 one way .7454 the other way", "cut 10 thou = 0.7452in / 0.7454in"),
        ("it mics .7350 front .7352 back", "read 0.7350in front 0.7352in back"),
        ("took 20 got .7842 sure", "cut 20 thou = 0.7842in sure"),
    ] {
        let (mut said, mut typed) = (opened(), opened());
        let got = ask(&mut said, spoken);
        assert_eq!(got["read_as"], plain, "{spoken}: {got}");
        let want = ask(&mut typed, plain);
        assert!(want.get("error").is_none(), "{plain}: {want}");
        assert_eq!(entries(&mut said), entries(&mut typed), "{spoken}");
        assert_eq!(got["next"], want["next"], "{spoken}");
        let takes_back = if spoken.len() % 2 == 0 { "scratch that" } else { "oops" };
        for (question, shown) in [("what next", "log"), (takes_back, "undo")] {
            assert_eq!(ask(&mut said, question)["read_as"], shown, "{spoken}; {question}");
            ask(&mut typed, shown);
            assert_eq!(entries(&mut said), entries(&mut typed), "{spoken}; {question}");
        }
    }
}

#[test]
fn a_spoken_entry_that_is_doubted_says_why_and_how_it_stands() {
    let mut session = opened();
    ask(&mut session, "took 10 got .7452");
    let before = entries(&mut session);
    let got = ask(&mut session, "dialled 30 thou reads .7835");
    let error = &got["error"];
    let message = error["message"].as_str().expect("a message");
    assert!(message.ends_with("read as `cut 30 thou = 0.7835in`"), "{got}");
    assert!(message.contains("0.7754 in is expected"), "{got}");
    let hint = error["hint"].as_str().expect("a hint");
    assert!(hint.contains("`cut 30 thou = 0.7835in sure`"), "{got}");
    assert_eq!(entries(&mut session), before);
}

/// Whoever takes back an entry that was refused means that one, however it was
/// said; the one before it stays.
#[test]
fn oops_after_a_refused_entry_takes_nothing_back() {
    for takes_back in ["oops", "scratch that", "undo"] {
        let mut session = opened();
        ask(&mut session, "took 10 got .7452");
        let before = entries(&mut session);
        let refused = ask(&mut session, "dialled 30 thou reads .7835");
        assert!(refused.get("error").is_some(), "{refused}");
        let got = ask(&mut session, takes_back);
        assert!(got["error"]["message"].to_string().contains("nothing was entered"), "{got}");
        assert_eq!(entries(&mut session), before, "{takes_back}");
        // The second time it is the last that stands.
        let again = ask(&mut session, takes_back);
        assert!(again.get("error").is_none(), "{again}");
        assert_eq!(again["standing"].as_u64().unwrap_or(0), 0, "{again}");
    }
}

#[test]
fn places_that_do_not_add_up_are_not_entered() {
    let mut session = opened();
    for line in [
        "took 10 got .7452 front .7454",
        "took 10 got .7452 front / .7454 back",
        "took 10 front",
        "took 10 got .7452 front .6 back",
    ] {
        let got = ask(&mut session, line);
        assert!(got.get("error").is_some(), "{line}: {got}");
        assert!(entries(&mut session).is_empty(), "{line}");
    }
}
