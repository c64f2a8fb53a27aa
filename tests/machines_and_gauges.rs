//! Each machine has dials of its own, and bores and shafts an instrument each:
//! as set, as shown, as remembered, as a log keeps them, as refused.

use std::fs;

use fits_checks::ask;
use fits_repl::{
    Home,
    render::{Colour, text::Text},
    session::{Logs, Session},
};
use serde_json::Value;

#[track_caller]
fn after(lines: &[&str]) -> Session {
    let mut session = Session::new();
    for line in lines {
        assert!(session.evaluate(line).is_ok(), "{line}");
    }
    session
}

fn text(session: &mut Session, query: &str) -> String {
    let answer = session.evaluate(query).unwrap_or_else(|error| panic!("{query}: {error:?}"));
    Text { settings: session.shown(), colour: Colour::Off }.answer(&answer)
}

const BOTH: [&str; 6] = [
    "dial turn 2mm",
    "dial graduation 0.02mm",
    "machine boring head",
    "dial radius",
    "dial graduation 0.01mm",
    "dial turn 1mm",
];

#[test]
fn each_machine_has_dials_of_its_own() {
    let mut session = after(&BOTH);
    let head = ask(&mut session, "settings");
    assert_eq!(head["machine"], "boring head");
    assert_eq!((&head["dial"], &head["graduation_mm"]), (&"radius".into(), &0.01.into()));
    assert_eq!(head["dial_turn_mm"], 1.0);
    assert_eq!(head["other_machine"]["machine"], "lathe");
    assert_eq!(head["other_machine"]["graduation_mm"], 0.02);
    // The same step on the diameter, dialled as each dial reads.
    let on_head = ask(&mut session, "bore 20 H7 from 19.6 with bore gauge");
    assert_eq!(on_head["log"]["step_mm"], 0.02);
    let lathe = ask(&mut session, "machine lathe");
    assert_eq!((&lathe["dial"], &lathe["dial_turn_mm"]), (&"diameter".into(), &2.0.into()));
    assert_eq!(lathe["other_machine"]["dial"], "radius");
    let shown = text(&mut session, "settings");
    assert!(shown.contains("lathe: dial diameter, graduation 0.020 mm"), "{shown}");
    assert!(shown.contains("boring head: dial radius, graduation 0.010 mm"), "{shown}");
}

/// A turn short on the head is told by the head's own turn.
#[test]
fn a_turn_short_is_the_machine_s_own() {
    const SHORT: &str = "cut 0.25 = 19.742 sure";
    let bore = "bore 20 H7 from 19.6 with bore gauge";
    let told = |lines: &[&str]| ask(&mut after(lines), SHORT)["story"]["name"].clone();
    assert_eq!(told(&["dial turn 0.1", bore]), "whole turn");
    assert_eq!(told(&["dial turn 0.1", "machine boring head", bore]), "backlash");
    assert_eq!(told(&["machine boring head", "dial turn 0.1", bore]), "whole turn");
}

#[test]
fn a_log_keeps_its_machine() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("log.jsonl");
    let mut session = after(&BOTH);
    session.keep_logs(Logs::File(path.clone())).expect("a file");
    ask(&mut session, "bore 20 H7 from 19.6 with bore gauge");
    ask(&mut session, "cut 0.1 = 19.792");
    assert!(fs::read_to_string(&path).expect("a log").contains(r#""machine":"boring head""#));
    drop(session);
    // The lathe is in force: its dials are not the ones that were turned.
    let mut session = Session::new();
    session.keep_logs(Logs::File(path)).expect("a file");
    let log = ask(&mut session, "log");
    let note = log["notes"][0].as_str().expect("a note");
    assert!(note.contains("this log is on the boring head: `machine boring head`"), "{note}");
    let line = "cut 0.05 = 19.889";
    let problem = session.evaluate(line).expect_err(line);
    assert_eq!(
        (problem.message.as_str(), problem.hint(line).as_str(), &line[problem.at.clone()]),
        (
            "this log is on the boring head, and the dials in force are the lathe's",
            "set the machine first, as `machine boring head`",
            "0.05"
        )
    );
    ask(&mut session, "machine boring head");
    assert!(ask(&mut session, "cut 0.1 = 19.890")["error"].is_null());
}

#[test]
fn bores_and_shafts_have_an_instrument_each() {
    let mut session = after(&["instrument telescoping gauge", "instrument micrometer"]);
    let set = ask(&mut session, "settings");
    assert_eq!(set["instrument_bores"], "telescoping gauge");
    assert_eq!(set["instrument_shafts"], "micrometer");
    ask(&mut session, "bore 20 H7 from 19.6");
    assert_eq!(ask(&mut session, "log")["instrument"], "telescoping gauge");
    ask(&mut session, "log leave");
    ask(&mut session, "turn 20 g6 from 20.5");
    assert_eq!(ask(&mut session, "log")["instrument"], "micrometer");
    // What measures both serves both; for one alone it is said.
    let both = ask(&mut Session::new(), "instrument calliper");
    assert_eq!(
        (&both["instrument_bores"], &both["instrument_shafts"]),
        (&"calliper".into(), &"calliper".into())
    );
    let one = ask(&mut Session::new(), "instrument for shafts calliper");
    assert_eq!(one["instrument_shafts"], "calliper");
    assert!(one["instrument_bores"].is_null());
    for name in [
        "telescoping gauge",
        "bore gauge",
        "inside mic",
        "ring-set bore gauge",
        "plug gauge",
        "mic",
        "caliper",
    ] {
        let set = ask(&mut Session::new(), &format!("instrument {name}"));
        assert!(set["error"].is_null(), "{name}: {set}");
    }
}

/// Nobody named one: it is said which is taken, and asked for once.
#[test]
fn the_instrument_is_asked_for_once() {
    let asked = |lines: &[&str], query: &str| {
        let answer = ask(&mut after(lines), query);
        let notes = answer["notes"].as_array().cloned().unwrap_or_default();
        notes.iter().filter_map(Value::as_str).any(|it| it.contains("no instrument was named: a "))
    };
    assert!(asked(&[], "bore 20 H7 from 19.6"));
    assert!(asked(&["instrument micrometer"], "bore 20 H7 from 19.6"));
    assert!(!asked(&["instrument bore gauge"], "bore 20 H7 from 19.6"));
    assert!(!asked(&[], "bore 20 H7 from 19.6 with bore gauge"));
    assert!(asked(&["instrument bore gauge"], "turn 20 g6 from 22"));
}

#[test]
fn what_has_no_sense_is_refused() {
    for (lines, line, message, hint) in [
        (
            &[][..],
            "machine planer",
            "no machine is called planer",
            "`machine lathe` or `machine boring head`",
        ),
        (
            &["machine boring head"],
            "turn 20 g6 from 22",
            "a boring head turns no shaft",
            "set the machine first, as `machine lathe`",
        ),
        (
            &[],
            "instrument for bores micrometer",
            "a micrometer measures no hole",
            "as in `instrument for bores telescoping gauge`",
        ),
        (
            &[],
            "top slide 3mm",
            "no top slide is divided so",
            "its travel, as `top slide 0.02mm` or `top slide 0.001in`",
        ),
        (
            &[],
            "top slide",
            "what its dial is divided in is missing",
            "as in `top slide 0.02mm`, or `top slide none`",
        ),
        // A turn of the head is held against the head's division.
        (
            &["dial graduation 0.2mm", "machine boring head", "dial graduation 0.05mm"],
            "dial turn 0.04",
            "a turn of the dial is at least one division, 0.05 mm",
            "as the dial shows it, `dial turn 2mm` or `dial turn 0.1in`",
        ),
    ] {
        let mut session = after(lines);
        let problem = session.evaluate(line).expect_err(line);
        assert_eq!((problem.message.as_str(), problem.hint(line).as_str()), (message, hint));
    }
}

#[test]
fn machines_and_instruments_are_remembered() {
    let home = tempfile::tempdir().expect("a folder");
    let open = || {
        let mut session = Session::new();
        let folder = || Some(home.path().to_owned());
        let notes = session.use_own_settings(&Home { config: folder(), data: folder() });
        (session, notes)
    };
    let (mut session, _) = open();
    let more = ["instrument telescoping gauge", "instrument micrometer", "top slide 0.02mm"];
    for line in BOTH.iter().chain(&more) {
        assert_eq!(ask(&mut session, line)["note"], "remembered", "{line}");
    }
    let mut before = ask(&mut session, "settings");
    let mut after = ask(&mut open().0, "settings");
    for told in [&mut before, &mut after] {
        told.as_object_mut().expect("settings").remove("note");
    }
    assert_eq!(after, before);
    assert_eq!(ask(&mut session, "top slide none")["note"], "remembered");
    assert!(ask(&mut open().0, "settings")["top_slide_mm"].is_null());
    // The one instrument of a file written before serves what it measures.
    let file = home.path().join("settings.toml");
    fs::write(&file, "instrument = \"calliper\"\nmachine = \"planer\"\n").expect("written");
    let (mut session, notes) = open();
    assert_eq!(notes.len(), 1, "{notes:?}");
    let told = ask(&mut session, "settings");
    assert_eq!(told["instrument_bores"], "calliper");
    assert_eq!(told["instrument_shafts"], "calliper");
    assert_eq!(told["machine"], "lathe");
}
