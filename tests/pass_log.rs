//! The pass log in answers: the contract, doubtful entries, both systems and
//! both dials, and that a note fits the screen.

use fits_checks::{ask, takes};
use fits_repl::{
    render::{Colour, text::Text},
    session::{Logs, Session},
};
use serde_json::Value;

#[track_caller]
fn has(value: &Value, pointer: &str, wanted: impl Into<Value>) {
    assert_eq!(value.pointer(pointer), Some(&wanted.into()), "{pointer} of {value}");
}

/// A session with these lines taken.
#[track_caller]
fn after(lines: &[&str]) -> Session {
    let mut session = Session::new();
    for line in lines {
        takes(&mut session, line);
    }
    session
}

const BORE: &str = "bore 20 H7 from 19.6 with bore gauge";

#[test]
fn the_contract_of_a_log() {
    let mut session = Session::new();
    let plan = takes(&mut session, BORE);
    has(&plan, "/answer", "passes");
    has(&plan, "/start_mm", 19.6);
    has(&plan, "/next/action", "cut");
    has(&plan, "/log/name", Value::Null);
    has(&plan, "/log/learned_from", 0);
    takes(&mut session, "cut 0.2 = 19.79");
    takes(&mut session, "read 19.792");
    takes(&mut session, "read 19.793");
    let log = takes(&mut session, "undo");
    has(&log, "/answer", "pass_log");
    has(&log, "/state", "open");
    has(&log, "/kind", "hole");
    has(&log, "/class", "H7");
    has(&log, "/nominal_mm", 20.0);
    has(&log, "/lower_mm", 20.0);
    has(&log, "/upper_mm", 20.021);
    has(&log, "/start_mm", 19.6);
    has(&log, "/step_mm", 0.01);
    has(&log, "/instrument", "bore gauge");
    let entries = serde_json::json!([
        { "entry": "cut", "dial_mm": 0.2, "reading_mm": 19.79 },
        { "entry": "read", "reading_mm": 19.792 },
        { "entry": "read", "reading_mm": 19.793, "undone": true },
        { "entry": "undo" },
    ]);
    has(&log, "/entries", entries);
    let size = log["size_mm"].as_f64().expect("a size");
    assert!((19.789..19.793).contains(&size), "{size}");
    has(&log, "/next/action", "cut");
    has(&log, "/next/measuring", true);
    let dial = log["next"]["dial_mm"].as_f64().expect("a dial");
    assert!((0.05..0.22).contains(&dial) && ((dial * 100.0).round() / 100.0 - dial).abs() < 1e-12);
    for chance in ["probability_good", "probability_over"] {
        let chance = log["next"][chance].as_f64().expect("a chance");
        assert!((0.0..=1.0).contains(&chance), "{chance}");
    }
    // Said once, with the plan that opens the log.
    assert!(log["cautions"].is_null(), "{log}");
    // Boring is cautioned where the bar hangs out far, and only there.
    assert_eq!(takes(&mut after(&[]), BORE)["cautions"].as_array().map(Vec::len), Some(0));
    let mut far = after(&[]);
    let opened = takes(&mut far, &format!("{BORE}, overhang 5"));
    assert!(opened["cautions"][0].as_str().is_some_and(|line| line.contains("overhung boring")));
    assert!(takes(&mut far, "cut 0.2 = 19.79")["cautions"].is_null());
    // Replaying all but the undone one gives the same.
    let mut plain = after(&[BORE, "cut 0.2 = 19.79"]);
    let again = takes(&mut plain, "read 19.792");
    has(&log, "/size_mm", again["size_mm"].clone());
    has(&log, "/next", again["next"].clone());
    let why = takes(&mut session, "why");
    assert!(why["figures"].to_string().contains("Kalman"), "{why}");
}

#[test]
fn an_end_is_an_end() {
    let mut session =
        after(&[BORE, "cut 0.2 = 19.79", "cut 0.17 = 19.955", "cut 0.05 = 20.003", "read 20.004"]);
    assert!(takes(&mut session, "log")["probability_good"].as_f64() > Some(0.8));
    let done = session.evaluate("done").expect("done");
    assert!(!done.is_out_of_limits());
    let refused = ask(&mut session, "cut 0.01");
    has(&refused, "/error/message", "the pass log is closed: done");
    has(&takes(&mut session, "log"), "/next", serde_json::Value::Null);
    has(&takes(&mut session, "undo"), "/state", "open");
    let scrapped = session.evaluate("scrap").expect("scrap");
    assert!(scrapped.is_out_of_limits());
    // The next part opens a log of its own; an open one with entries stays.
    takes(&mut session, BORE);
    takes(&mut session, "cut 0.2 = 19.79");
    let plan = takes(&mut session, "turn 20 g6 from 20.6");
    assert_eq!(plan.get("log"), None);
    assert!(plan["notes"].to_string().contains("the pass log goes on"), "{plan}");
    has(&takes(&mut session, "log"), "/kind", "hole");
}

#[test]
fn doubtful_entries_are_asked_about_and_not_entered() {
    for (line, message, hint) in [
        (
            "read 19.83",
            "19.830 mm after 19.790 mm with no cut between",
            "nothing is entered; clean the work and the gauge, and measure again; if it stands \
             say so: `read 19.83 sure`",
        ),
        (
            "read 19.7",
            "19.700 mm after 19.790 mm: the wrong way, metal does not grow",
            "nothing is entered; clean the work and the gauge, and measure again; if it stands \
             say so: `read 19.7 sure`",
        ),
        (
            "read 0.7793",
            "0.779 mm was read, and about 19.790 mm is expected",
            "nothing is entered; if inches were meant, say so: `read 0.7793in`",
        ),
        (
            "read 502.7",
            "502.700 mm was read, and about 19.790 mm is expected",
            "nothing is entered; if millimetres were meant, say so",
        ),
        (
            "cut 0.1 = 20.01",
            "20.010 mm was read, and about 19.885 mm is expected",
            "nothing is entered; no slip of dial or gauge explains it; measure again; if it stands \
             say so: `cut 0.1 = 20.01 sure`",
        ),
        (
            "cut 0.5",
            "that cut goes 0.269 mm past the last limit",
            "nothing is entered; check it, and if it stands say so: `cut 0.5 sure`",
        ),
        (
            "done",
            "it is not inside its limits: about 19.790 mm",
            "nothing is entered; check it, and if it stands say so: `done sure`",
        ),
        ("cut 0", "a cut of 0 mm takes nothing off", "a pass without infeed is a spring pass"),
        (
            "cut",
            "what was dialled is missing after `cut`",
            "give what was dialled and read, as `cut 0.2 = 19.79`",
        ),
        (
            "cut 0.1 =",
            "the reading is missing after =",
            "give what was dialled and read, as `cut 0.2 = 19.79`",
        ),
        ("read", "the reading is missing after `read`", "as in `read 19.792`"),
        ("cut 0.1 19.885", "what was read comes after =", "try `cut 0.1 = 19.885`"),
        (
            "read 19.79 at 31C",
            "what a warm part is of decides how much it grows",
            "name it, for instance: `read 19.79 at 31C steel`",
        ),
        (
            "cut 0.1in = 19.79",
            "this number has no unit: the question is in inches, bare numbers are millimetres",
            "give its unit",
        ),
        (
            "log close",
            "this is not asked of a log",
            "`log`, `log list`, `log leave`, or log open and a name of the list",
        ),
        ("log open x", "there is no pass log x", "none is kept; `bore 20 H7 from 19.6` opens one"),
    ] {
        let mut session = after(&[BORE, "cut 0.2 = 19.79"]);
        let problem = session.evaluate(line).expect_err(line);
        assert_eq!(problem.message, message, "{line}");
        assert_eq!(problem.hint(line), hint, "{line}");
        assert!(line.get(problem.at.clone()).is_some(), "{line}: {:?}", problem.at);
        let log = takes(&mut session, "log");
        assert_eq!(log["entries"].as_array().map(Vec::len), Some(1), "{line} was entered");
        // The mended line is taken.
        if let Some(mended) = problem.mended(line) {
            takes(&mut session, &mended);
        }
    }
    let mut none = Session::new();
    for line in ["cut 0.1", "read 19.8", "spring", "undo", "done", "scrap", "log leave"] {
        let problem = none.evaluate(line).expect_err(line);
        assert_eq!(problem.message, "no pass log is open", "{line}");
    }
    let mut empty = after(&[BORE]);
    has(&ask(&mut empty, "undo"), "/error/message", "there is nothing to take back");
    let mut unread = after(&[BORE, "cut 0.2"]);
    has(&ask(&mut unread, "done"), "/error/message", "it was not measured after the last pass");
    // Past the limit and read: entered, and said.
    let mut bold = after(&[BORE]);
    let note = takes(&mut bold, "cut 0.43 = 20.012")["notes"][0].clone();
    assert!(note.as_str().is_some_and(|note| note.contains("past the last limit")), "{note}");
}

#[test]
fn whatever_is_typed_into_a_log_has_an_answer() {
    const WORDS: [&str; 24] = [
        "cut",
        "spring",
        "read",
        "undo",
        "done",
        "scrap",
        "log",
        "list",
        "open",
        "leave",
        "=",
        "0.1",
        "19.8",
        "0.01in",
        "-1",
        "1e9",
        "sure",
        "crib",
        "add",
        "drill",
        "set",
        "metric",
        "remove",
        "99999999999mm",
    ];
    let mut seed = 7_u64;
    let mut pick = |of: u64| {
        seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        usize::try_from((seed >> 33) % of).expect("small")
    };
    for _ in 0..60 {
        let mut session = after(&[BORE]);
        for _ in 0..40 {
            let count = 1 + pick(5);
            let words: Vec<&str> = (0..count).map(|_| WORDS[pick(24)]).collect();
            let line = words.join(" ");
            match session.evaluate(&line) {
                Ok(answer) => {
                    let text = Text { settings: session.shown(), colour: Colour::Off };
                    let shown = text.answer(&answer);
                    assert!(shown.lines().all(|line| line.chars().count() <= 80), "{shown}");
                }
                Err(problem) => {
                    assert!(line.get(problem.at.clone()).is_some(), "{line}: {:?}", problem.at);
                    assert!(!problem.message.is_empty() && !problem.hint(&line).is_empty());
                    if let Some(mended) = problem.mended(&line) {
                        let again = session.trial().evaluate(&mended);
                        assert!(again.is_ok(), "{line}: `{mended}`: {again:?}");
                    }
                }
            }
        }
    }
}

#[test]
fn a_line_tried_out_enters_nothing() {
    let mut session = after(&[BORE, "cut 0.2 = 19.79"]);
    let mut trial = session.trial();
    takes(&mut trial, "cut 0.1 = 19.887");
    takes(&mut trial, "crib add pin 20");
    assert_eq!(takes(&mut session, "log")["entries"].as_array().map(Vec::len), Some(1));
    assert_eq!(takes(&mut session, "crib")["list"], serde_json::json!([]));
}

#[test]
fn a_dial_that_reads_the_radius_takes_twice_as_much() {
    let mut diameter = after(&[BORE, "cut 0.2 = 19.79"]);
    let mut radius = after(&["dial radius", BORE, "cut 0.1 = 19.79"]);
    let (one, other) = (takes(&mut diameter, "log"), takes(&mut radius, "log"));
    has(&one, "/entries", other["entries"].clone());
    has(&other, "/step_mm", 0.02);
    let text = |session: &mut Session| {
        let answer = session.evaluate("log").expect("a log");
        Text { settings: session.shown(), colour: Colour::Off }.answer(&answer)
    };
    takes(&mut radius, "read 19.791");
    let shown = text(&mut radius);
    assert!(shown.contains("(radius)") && shown.contains("1 cut      0.100 mm"), "{shown}");
    assert!(text(&mut diameter).contains("1 cut      0.200 mm"));
}

#[test]
fn a_shaft_in_inches_with_a_dial_of_half_thou() {
    let mut session = after(&["units in", "dial graduation 0.0005", "turn 1 g6 from 1.020"]);
    takes(&mut session, "cut 0.010 = 1.0102");
    let log = takes(&mut session, "read 1.0102");
    has(&log, "/kind", "shaft");
    has(&log, "/instrument", "micrometer");
    has(&log, "/step_mm", 0.0127);
    let dial = log["next"]["dial_mm"].as_f64().expect("a dial");
    let steps = dial / 0.0127;
    assert!(steps >= 1.0 && (steps - steps.round()).abs() < 1e-9, "{dial}");
    let answer = session.evaluate("log").expect("a log");
    let shown = Text { settings: session.shown(), colour: Colour::Off }.answer(&answer);
    assert!(shown.starts_with("DIAL  0.0"), "{shown}");
    assert!(shown.contains("1 cut      0.0100 in   1.0102 in"), "{shown}");
    has(
        &ask(&mut session, "read 1.0302"),
        "/error/message",
        "1.0302 in after 1.0102 in: the wrong way, metal does not grow",
    );
}

#[test]
fn a_tool_that_cuts_light_is_said_in_plain_words() {
    let mut session =
        after(&[BORE, "cut 0.1 = 19.69", "read 19.69", "cut 0.1 = 19.78", "read 19.78"]);
    takes(&mut session, "read 19.78");
    let answer = session.evaluate("cut 0.1 = 19.87").expect("a log");
    let shown = Text { settings: session.shown(), colour: Colour::Off }.answer(&answer);
    let log = takes(&mut session, "read 19.87");
    if log["remark"].is_object() {
        assert!(log["remark"]["share_over_dial"].as_f64() < Some(0.0), "{log}");
    }
    let again = session.evaluate("log").expect("a log");
    let shown = shown + &Text { settings: session.shown(), colour: Colour::Off }.answer(&again);
    assert!(
        shown.contains("your tool is cutting") && shown.contains("% light: dial 0."),
        "{shown}"
    );
}

#[test]
fn a_long_note_fits_the_screen() {
    for setting in ["units mm", "units in", "dial radius"] {
        let mut session = after(&[setting, "bore 20mm H7 from 15mm"]);
        for step in 1..=40_u32 {
            let size = f64::from(step).mul_add(0.1, 15.0);
            let entry = if setting == "dial radius" { 0.05 } else { 0.1 };
            let line = format!("cut {entry}mm = {size:.3}mm sure");
            let answer = session
                .evaluate(&line)
                .unwrap_or_else(|problem| panic!("{line}: {}", problem.message));
            let shown = Text { settings: session.shown(), colour: Colour::Off }.answer(&answer);
            assert!(shown.lines().count() <= 23, "{shown}");
            for line in shown.lines() {
                assert!(line.chars().count() <= 80, "{line}");
            }
        }
    }
}

#[test]
fn finished_logs_teach_what_to_expect() {
    let folder = tempfile::tempdir().expect("a folder");
    let keeping = || {
        let mut session = Session::new();
        let notes = session.keep_logs(Logs::Folder(folder.path().to_owned())).expect("kept");
        (session, notes)
    };
    let (mut session, _) = keeping();
    takes(&mut session, "material brass");
    let usual = takes(&mut session, BORE);
    has(&usual, "/log/learned_from", 0);
    let before = takes(&mut session, "log")["cut_factor"].as_f64().expect("a factor");
    // A lathe that takes nine tenths of what it is set to.
    for part in 0..6 {
        if part > 0 {
            takes(&mut session, BORE);
        }
        for line in ["cut 0.2 = 19.78", "cut 0.15 = 19.915", "cut 0.1 = 20.005", "done"] {
            takes(&mut session, line);
        }
    }
    let plan = takes(&mut session, BORE);
    has(&plan, "/log/learned_from", 6);
    has(&plan, "/log/name", "bore-20-H7-7");
    let log = takes(&mut session, "log");
    let after = log["cut_factor"].as_f64().expect("a factor");
    assert!(before > 0.96 && after < 0.94, "{before} {after}");
    let why = takes(&mut session, "why")["figures"].to_string();
    assert!(why.contains("from 6 finished logs"), "{why}");
    // What brass taught says nothing of another material, or of turning.
    takes(&mut session, "material steel");
    has(&takes(&mut session, BORE), "/log/learned_from", 0);
    takes(&mut session, "material brass");
    has(&takes(&mut session, "turn 20 g6 from 20.5"), "/log/learned_from", 0);
    drop(session);
    // The next time, the one that is open goes on as it was taught.
    let (mut again, notes) = keeping();
    assert!(notes.iter().any(|note| note.contains("is open")), "{notes:?}");
    has(&takes(&mut again, "log"), "/learned_from", 0);
    takes(&mut again, "log leave");
    takes(&mut again, "bore 20 H7 from 19.6 with bore gauge, overhang 7");
    let far = takes(&mut again, "cut 0.1 = 19.69")["cut_factor"].as_f64().expect("a factor");
    takes(&mut again, "log leave");
    let far_again = takes(&mut again, "log open bore-20-H7-9")["cut_factor"].as_f64();
    assert_eq!(far_again, Some(far));
    let reopened = takes(&mut again, "log open bore-20-H7-7");
    has(&reopened, "/learned_from", 6);
    has(&reopened, "/cut_factor", after);
    assert_eq!(takes(&mut again, "log list")["logs"].as_array().map(Vec::len), Some(10));
}
