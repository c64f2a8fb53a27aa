//! The log as it is spoken at the machine: cuts, readings at one place or
//! several, spring passes, what was wrong; and what is refused, and then taken
//! back by nobody.

use fits_repl::{problem::Code, render::json, session::Session};
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

/// The aim in one line, where the work is in the next: the log that both together open.
#[test]
fn a_log_is_opened_in_two_lines() {
    for (units, lines, opens) in [
        ("metric", ["turning to 12 h7", "its 12.8"], "turn 12mm h7 from 12.8mm"),
        ("metric", ["boring to 26 H7", "now 25.4"], "bore 26mm H7 from 25.4mm"),
        ("metric", ["turning to 38 h6", "mics 39.20 now"], "turn 38mm h6 from 39.20mm"),
        (
            "inches",
            ["boring to 2.000 +.001 -0", "bore is 1.940"],
            "bore hole 2.000in +0.001in/-0in from 1.940in",
        ),
        (
            "inches",
            ["going for 1.000 shaft plus 0 minus 1 thou", "reads 1.030"],
            "turn shaft 1.000in +0 thou/-1 thou from 1.030in",
        ),
        ("inches", ["turning 3/4 h6", "starting at .812"], "turn 3/4in h6 from 0.812in"),
        ("inches", ["turn 3/4 sliding", "from .812"], "turn 3/4 sliding from .812"),
    ] {
        let (mut said, mut typed) = (Session::new(), Session::new());
        for session in [&mut said, &mut typed] {
            ask(session, units);
        }
        ask(&mut said, lines[0]);
        let got = ask(&mut said, lines[1]);
        assert_eq!(got["read_as"], opens, "{lines:?}: {got}");
        let want = ask(&mut typed, opens);
        assert_eq!(got["steps"], want["steps"], "{lines:?}");
        assert_eq!(ask(&mut said, "log")["start_mm"], ask(&mut typed, "log")["start_mm"]);
    }
    // What is cut already is judged; what can be neither is refused.
    for (lines, is) in [
        (["bore 26mm H7", "measures 26.01mm"], "26mm H7 = 26.01mm"),
        (["turn 12mm h7", "mics 11.99mm"], "12mm h7 = 11.99mm"),
    ] {
        let mut session = Session::new();
        ask(&mut session, lines[0]);
        assert_eq!(ask(&mut session, lines[1])["read_as"], is, "{lines:?}");
        assert!(ask(&mut session, "measures 2.2mm").get("error").is_some());
    }
    // A part of which no work was said may be judged, and a log that is open may go on.
    for (before, reading, choices) in [
        (vec!["26 H7"], "now 25.4", ["bore 26 H7 from 25.4mm", "26 H7 = 25.4mm"]),
        (
            vec!["turn 20 h6 from 20.5", "cut 0.1", "turning to 20 h7"],
            "now 20.4",
            ["turn 20mm h7 from 20.4mm", "read 20.4mm"],
        ),
    ] {
        let mut session = Session::new();
        for line in std::iter::once("metric").chain(before) {
            assert!(ask(&mut session, line).get("error").is_none(), "{line}");
        }
        let got = ask(&mut session, reading);
        assert_eq!(got["error"]["choices"], serde_json::json!(choices), "{got}");
    }
    // A line that stands alone knows of no other.
    let mut session = Session::new();
    session.alone = true;
    ask(&mut session, "turning to 12mm h7");
    assert!(ask(&mut session, "its 12.8mm now").get("start_mm").is_none());
}

#[test]
fn what_comes_off_each_side_is_counted_as_the_dial_counts() {
    for (dial, spoken, plain) in [
        ("dial diameter", "took 10 on radius got .7552", "cut 20 thou = 0.7552in"),
        ("dial diameter", "took 10 thou on dia got .7452", "cut 10 thou = 0.7452in"),
        ("dial radius", "took 10 on dia got .7452", "cut 5 thou = 0.7452in"),
        ("dial radius", "took 5 a side got .7452", "cut 5 thou = 0.7452in"),
    ] {
        let mut session = opened();
        ask(&mut session, dial);
        assert_eq!(ask(&mut session, spoken)["read_as"], plain, "{dial}; {spoken}");
    }
    // The two that are asked about are the same two cuts, however the dial counts; one that
    // goes past the limit may have been made all the same.
    for (took, by_diameter, by_radius) in [
        ("took 6 off", ["cut 6 thou", "cut 12 thou"], ["cut 3 thou", "cut 6 thou"]),
        ("took 10 off", ["cut 10 thou", "cut 20 thou sure"], ["cut 5 thou", "cut 10 thou sure"]),
    ] {
        let mut session = opened();
        let asked = |session: &mut Session| ask(session, took)["error"]["choices"].clone();
        assert_eq!(asked(&mut session), serde_json::json!(by_diameter));
        ask(&mut session, "dial radius");
        assert_eq!(asked(&mut session), serde_json::json!(by_radius));
    }
}

#[test]
fn a_dial_that_counts_the_other_way_is_told_of_after_a_cut_in_a_line_of_its_own() {
    let mut session = opened();
    ask(&mut session, "cut 5 thou");
    let hint = |got: &Value| got["error"]["hint"].as_str().unwrap_or_default().to_owned();
    let got = ask(&mut session, "read .7448");
    assert!(hint(&got).contains("the dial counts the radius"), "{got}");
    for line in ["dial radius", "undo", "cut 5 thou"] {
        assert!(ask(&mut session, line).get("error").is_none(), "{line}");
    }
    let read = ask(&mut session, "read .7448");
    assert!(read.get("error").is_none(), "{read}");
}

/// What is offered after the last of these lines, at an inch prompt.
fn offered(lines: &[&str]) -> Vec<String> {
    let mut session = Session::new();
    ask(&mut session, "inches");
    let answers: Vec<Value> = lines.iter().map(|line| ask(&mut session, line)).collect();
    let last = &answers[answers.len() - 1];
    let choices = last["error"]["choices"].as_array().cloned().unwrap_or_default();
    choices.iter().filter_map(|choice| choice.as_str().map(str::to_owned)).collect()
}

#[test]
fn work_without_limits_is_asked_with_all_that_was_told_of_it() {
    let told = ["target .750", "now .812", "cut 20", "reads .792"];
    assert_eq!(offered(&told[..1]).len(), 4);
    assert_eq!(
        offered(&told[..2]),
        ["turn 0.750in h7 from 0.812in", "turn 0.750in h9 from 0.812in"]
    );
    assert_eq!(
        offered(&told),
        ["h7", "h9"]
            .map(|class| format!("turn 0.750in {class} from 0.812in ; cut 20 thou ; read 0.792in"))
    );
    // A line that is not understood takes nothing back, and another question does.
    let mut more = told.to_vec();
    more.insert(2, "frobnicate");
    assert_eq!(offered(&more), offered(&told));
    more[2] = "3/4 slip";
    assert_eq!(offered(&more), Vec::<String>::new());
    // The first cut, and what it left: the work began before it.
    assert_eq!(
        offered(&["bore to .750", "took 10 got .730"])[0],
        "bore 0.750in H7 from 0.72in ; cut 10 thou = 0.730in"
    );
}

#[test]
fn what_is_offered_can_be_typed() {
    let mut session = Session::new();
    ask(&mut session, "inches");
    for line in ["target .750", "now .812", "cut 20"] {
        ask(&mut session, line);
    }
    let log = ask(&mut session, "turn 0.750in h7 from 0.812in ; cut 20 thou ; read 0.792in");
    assert_eq!(log["answer"], "pass_log");
    assert_eq!(entries(&mut session).len(), 1);
    // All of the lines or none of them.
    let refused = ask(&mut session, "undo ; read .5in");
    assert_eq!(refused["error"]["at"].as_array().map(Vec::len), Some(2));
    assert_eq!(entries(&mut session).len(), 1);
}

#[test]
fn a_cut_settles_that_the_work_begins_where_the_part_was_read() {
    let mut session = Session::new();
    ask(&mut session, "mm");
    ask(&mut session, "20 k6");
    let asked = ask(&mut session, "at 21.4");
    assert_eq!(asked["error"]["code"], "which_is_meant");
    let log = ask(&mut session, "cut 0.5");
    assert_eq!(log["read_as"], "turn 20 k6 from 21.4mm ; cut 0.5mm");
    assert_eq!(log["answer"], "pass_log");
    // A second reading settles nothing.
    ask(&mut session, "done sure");
    ask(&mut session, "20 k6");
    ask(&mut session, "at 21.4");
    assert_eq!(ask(&mut session, "now 21.3")["error"]["code"], "which_is_meant");
}

/// Advice that leaves out a pass which was not understood spoils the part: it waits, once.
#[test]
fn advice_waits_after_what_was_not_understood() {
    let mut session = opened();
    let before = entries(&mut session).len();
    let problem = session.evaluate("flooped it 10, .7452").expect_err("no such word");
    assert_ne!(problem.code(), Code::WhichIsMeant, "{problem:?}");
    let waits = |session: &mut Session, line: &str| {
        let problem = session.evaluate(line).expect_err(line);
        assert!(problem.message.starts_with("the line before was not entered"), "{problem:?}");
    };
    waits(&mut session, "what next");
    assert!(session.evaluate("what next").is_ok(), "asked once more");
    // A second one does not make up for the first.
    assert!(session.evaluate("flooped it 10, .7452").is_err());
    assert!(session.evaluate("flooped it again .7455").is_err());
    waits(&mut session, "next");
    assert_eq!(entries(&mut session).len(), before, "nothing was entered");
    // An entry that is taken settles it, and one that is doubted was understood.
    assert!(session.evaluate("flooped it 10, .7452").is_err());
    assert!(session.evaluate("cut 10 thou = .7452").is_ok());
    assert!(session.evaluate("next").is_ok());
    assert!(session.evaluate("cut 2 thou = .9").is_err());
    assert!(session.evaluate("next").is_ok(), "what is wrong with it was told");
}

/// Lines without figures, in whatever words; what turns them round is none of them.
#[test]
fn lines_without_figures_are_told_in_any_words() {
    let after = |line: &str| {
        let mut session = opened();
        ask(&mut session, "cut 10 thou = 0.7452in");
        let got = ask(&mut session, line);
        (got["read_as"].as_str().map(str::to_owned), got)
    };
    for (line, plain) in [
        ("what do I crank in, please?", "log"),
        ("and then?", "log"),
        ("how far still to go mate", "log"),
        ("is it done?", "log"),
        ("sorry, that was wrong, please take it back", "undo"),
        ("took the last off again, misread it", "undo"),
        ("ran it through again without touching the dial and it's .7453", "spring = .7453"),
    ] {
        let (read_as, got) = after(line);
        assert_eq!(read_as.as_deref().or(got["query"].as_str()), Some(plain), "{line}: {got}");
    }
    for line in ["don't undo that", "not done yet", "was that wrong?", "went over it again with 2"]
    {
        let (_, got) = after(line);
        assert!(got.get("error").is_some(), "{line}: {got}");
    }
}

/// Bare figures beside a log whose units were never chosen: those of its work.
#[test]
fn a_log_tells_the_units_of_its_readings() {
    for (plan, entry, plain) in [
        ("bore 1.000in H7 from .970in", "took .015 got .9848", "cut 0.015in = 0.9848in"),
        ("bore 30mm H7 from 29mm", "took .2 got 29.19", "cut 0.2mm = 29.19mm"),
    ] {
        let mut session = Session::new();
        assert!(ask(&mut session, plan).get("error").is_none(), "{plan}");
        let got = ask(&mut session, entry);
        assert_eq!(got["read_as"], plain, "{got}");
    }
}
