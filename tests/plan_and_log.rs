//! A plan beside the log it opens, a log taken up again, and the files named
//! after `batch`.

use std::{io::Write as _, process::Stdio};

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

/// A number of dial divisions, as far as a float tells.
fn is_whole(dial: f64, division: f64) -> bool {
    ((dial / division).round() - dial / division).abs() < 1e-6
}

#[test]
fn what_a_plan_dials_are_whole_divisions_or_a_split_last_one_that_end_inside() {
    for (settings, query, division) in [
        (&[][..], "bore 20 H7 from 19.6", 0.01),
        (&[][..], "turn 20 g6 from 22", 0.01),
        (&["dial radius"][..], "bore 20 H7 from 19.6", 0.01),
        (&["dial graduation 0.02mm"][..], "bore 20 H7 from 19.6", 0.02),
        (&["dial graduation 0.02mm"][..], "turn 20 g6 from 20.5", 0.02),
        (&["dial graduation 0.0005in"][..], "bore 3/4in H7 from 0.735in", 0.0127),
    ] {
        let mut session = Session::new();
        for setting in settings {
            assert!(session.evaluate(setting).is_ok(), "{setting}");
        }
        let plan = ask(&mut session, query);
        let ratio = if plan["dial"] == "radius" { 2.0 } else { 1.0 };
        let mut at = plan["start_mm"].as_f64().expect("a start");
        let limits = ["lower_mm", "upper_mm"].map(|key| plan["feature"][key].as_f64().unwrap());
        // Does any whole division end inside the limits, with a quarter of them
        // to spare on the side of scrap?
        let first = plan["passes"][0]["dial_mm"].as_f64().expect("a dial figure");
        let begun = if plan["work"] == "bore" { at + ratio * first } else { at - ratio * first };
        let whole_ends_inside = (-100_i32..=100).any(|count| {
            let size = begun + f64::from(count) * ratio * division;
            let spare = (limits[1] - limits[0]) / 4.0;
            let (low, high) = if plan["work"] == "bore" { (0.0, spare) } else { (spare, 0.0) };
            limits[0] + low + 1e-9 < size && size < limits[1] - high - 1e-9
        });
        for pass in plan["passes"].as_array().expect("passes") {
            let dial = pass["dial_mm"].as_f64().expect("a dial figure");
            let is_split = pass["name"] == "finish" && !whole_ends_inside;
            let part = if is_split { division / 4.0 } else { division };
            assert!(is_whole(dial, part), "{query}: {pass}");
            let change = ratio * dial;
            at += if plan["work"] == "bore" { change } else { -change };
            // The size beside a cut is what the cut leads to.
            assert!((at - pass["to_mm"].as_f64().expect("a size")).abs() < 1e-9, "{query}: {pass}");
        }
        let limit = |name: &str| plan["feature"][name].as_f64().expect("a limit");
        // A division is the most a plan may miss its aim by, and it ends never
        // past the last limit.
        let off = (at - plan["aim_mm"].as_f64().expect("an aim")).abs();
        assert!(off <= ratio * division + 1e-9, "{query}: ends {off} off");
        let is_inside = limit("lower_mm") + 1e-9 < at && at < limit("upper_mm") - 1e-9;
        assert!(is_inside, "{query}: ends at {at}");
    }
}

#[test]
fn a_log_opens_with_what_to_dial_and_no_other_figure_for_it() {
    let mut session = Session::new();
    let plan = ask(&mut session.trial(), "bore 20 H7 from 19.6");
    // The plan by rule and the log differ here; programs get both.
    assert_ne!(plan["next"]["dial_mm"], plan["passes"][0]["dial_mm"], "{plan}");
    let by_rule = plan["passes"][0]["dial_mm"].as_f64().expect("a dial figure");
    let said = text(&mut session, "bore 20 H7 from 19.6");
    let first = said.lines().find(|line| line.starts_with("DIAL")).expect("an order");
    assert_eq!(said.matches("DIAL").count(), 1, "{said}");
    // Repeated by the log itself, word for word.
    assert!(text(&mut session, "log").starts_with(first), "{said}");
    assert!(!said.contains(&format!("{by_rule:.3} mm")), "{said}");
    assert!(said.contains("  plan: semi-finish, finish, spring, to 20.010 mm\n"), "{said}");
    // Without a log the plan is all there is.
    let said = text(&mut Session::new(), "bore 20 H7");
    assert!(!said.contains("DIAL") && said.contains("semi-finish"), "{said}");
}

#[test]
fn a_bore_that_no_instrument_reads_says_why_no_log_is_opened() {
    let mut session = Session::new();
    let plan = ask(&mut session, "bore 600 H7 from 598");
    assert_eq!(plan.get("log"), None);
    let note = plan["notes"][0].as_str().unwrap_or_default();
    assert!(note.starts_with("no log is opened: "), "{plan}");
}

#[test]
fn too_close_to_call_is_not_outside() {
    let mut session = Session::new();
    let query = "20 H7/g6 = 20.003/19.985 with bore gauge and micrometer";
    let said = text(&mut session, query);
    assert!(said.contains("TOO CLOSE TO CALL"), "{said}");
    assert!(!said.contains("outside"), "{said}");
    // What is outside is still said so.
    let said = text(&mut session, "20 H7/g6 = 19.998/19.985 with bore gauge and micrometer");
    assert!(!said.contains("GOOD: stop   hole"), "{said}");
}

#[test]
fn an_overcut_mark_stands_outside_the_bracket() {
    let mut session = Session::new();
    for line in ["bore 20 H7 from 19.6", "cut 0.2 = 19.79", "cut 0.2 = 19.99"] {
        assert!(session.evaluate(line).is_ok(), "{line}");
    }
    for (read, outside) in [("20.022", true), ("20.030", true), ("20.010", false)] {
        let mut trial = session.trial();
        let said = text(&mut trial, &format!("cut 0.02 = {read} sure"));
        let row = said.lines().find(|line| line.contains("  3 cut")).expect("the entry");
        let (mark, bracket) = (row.rfind('o'), row.rfind(']'));
        assert!(mark.is_some() && bracket.is_some(), "{said}");
        assert_eq!(mark > bracket, outside, "{read}: {said}");
    }
}

#[test]
fn files_may_be_named_after_batch_and_a_log_taken_up_explains_itself() {
    let folder = tempfile::tempdir().expect("a folder");
    let log = folder.path().join("log.jsonl");
    let mut child = fits()
        .args(["batch", "--log"])
        .arg(&log)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .expect("it runs");
    let mut stdin = child.stdin.take().expect("a pipe");
    stdin
        .write_all(b"material aluminium\nbore 20 H7 from 19.6 overhang 8\ncut 0.2 = 19.79\nwhy\n")
        .expect("it is read");
    drop(stdin);
    let output = child.wait_with_output().expect("it ends");
    assert_eq!(output.status.code(), Some(0));
    let lines = String::from_utf8(output.stdout).expect("text");
    let before: Value =
        serde_json::from_str(lines.lines().last().expect("a line")).expect("an object");
    let once = fits().args(["--json", "--log"]).arg(&log).arg("why").output().expect("it runs");
    assert_eq!(once.status.code(), Some(0));
    let after: Value = serde_json::from_slice(&once.stdout).expect("an object");
    assert_eq!(after["of"], "log");
    // Overhang and material are in the opening line: the figures are the same.
    assert_eq!(after["figures"], before["figures"]);
    let figures = after["figures"].to_string();
    assert!(figures.contains("overhang to 8"), "{figures}");
}

/// The entries of the open log.
fn entries(session: &mut Session) -> usize {
    ask(session, "log")["entries"].as_array().map_or(0, Vec::len)
}

#[test]
fn undo_after_a_refused_entry_takes_nothing_away() {
    for refused in ["cut 0.1 = 20.4", "cut 0.1 19.9", "read 25.4", "done", "cut 19.9"] {
        let mut session = Session::new();
        for line in ["bore 20 H7 from 19.6", "cut 0.2 = 19.79"] {
            assert!(session.evaluate(line).is_ok(), "{line}");
        }
        assert!(session.evaluate(refused).is_err(), "{refused}");
        let problem = session.evaluate("undo").expect_err(refused);
        assert!(problem.message.ends_with("nothing was entered"), "{problem:?}");
        // The second one is meant; and so is one after anything else.
        let mut looked = session.trial();
        assert!(session.evaluate("undo").is_ok(), "{refused}");
        assert_eq!(entries(&mut session), 2, "{refused}");
        assert_eq!(entries(&mut looked), 1, "{refused}");
    }
    let mut session = Session::new();
    for line in ["bore 20 H7 from 19.6", "cut 0.2 = 19.79"] {
        assert!(session.evaluate(line).is_ok(), "{line}");
    }
    assert!(session.evaluate("cut 0.1 = 20.4").is_err());
    assert!(session.evaluate("log").is_ok());
    assert!(session.evaluate("undo").is_ok());
}

#[test]
fn a_size_typed_for_the_dial_is_offered_as_the_cut_that_leads_to_it() {
    for (settings, plan, line, mended) in [
        ("units in", "turn 1 h6 from 1.118", "cut 1.059", "cut 0.059 = 1.0590"),
        ("units in", "turn 1 h6 from 1.118", "cut 1.059in", "cut 0.059in = 1.0590in"),
        ("units mm", "bore 20 H7 from 19.6", "cut 19.79", "cut 0.19 = 19.790"),
        ("units mm", "bore 20 H7 from 19.6", "cut 19.79 = 19.79", "cut 0.19 = 19.79"),
    ] {
        let mut session = Session::new();
        for line in [settings, plan] {
            assert!(session.evaluate(line).is_ok(), "{line}");
        }
        let problem = session.evaluate(line).expect_err(line);
        assert!(problem.message.contains("is a size"), "{problem:?}");
        assert_eq!(problem.mended(line).as_deref(), Some(mended));
        assert_eq!(entries(&mut session), 0);
        assert!(session.evaluate(mended).is_ok(), "{mended}");
    }
}

#[test]
fn a_bare_reading_is_offered_as_an_entry() {
    let mut session = Session::new();
    assert_eq!(ask(&mut session, "1.1180in").get("log_entry"), None);
    assert!(session.evaluate("units in").is_ok());
    assert!(session.evaluate("turn 1 h6 from 1.180").is_ok());
    assert!(session.evaluate("cut 0.06").is_ok());
    assert_eq!(ask(&mut session, "1.1180")["log_entry"], "read 1.1180");
    assert!(text(&mut session, "1.1180").contains("`read 1.1180` enters it"));
    assert_eq!(entries(&mut session), 1);
    assert_eq!(ask(&mut session, "0.25").get("log_entry"), None);
    assert!(session.evaluate("read 1.1180").is_ok());
}

#[test]
fn the_same_plan_again_asks_whether_to_go_on() {
    let mut session = Session::new();
    let plan = "turn 20 g6 from 20.6";
    assert!(session.evaluate(plan).is_ok());
    // Nothing was entered: the same screen again.
    assert!(session.evaluate(plan).is_ok());
    assert!(session.evaluate("cut 0.2 = 20.41").is_ok());
    for again in [plan, "turn 20 g6 from 20.41"] {
        let problem = session.evaluate(again).expect_err(again);
        assert_eq!(
            problem.message, "a pass log of this is open: 1 entry, last read 20.410 mm",
            "{again}"
        );
    }
    assert_eq!(entries(&mut session), 1);
    assert!(session.evaluate("log leave").is_ok());
    assert!(session.evaluate(plan).is_ok());
}

#[test]
fn a_dial_turned_short_is_not_said_to_be_the_tool() {
    let mut session = Session::new();
    assert!(session.evaluate("bore 20 H7 from 19.6 with bore gauge").is_ok());
    assert!(session.evaluate("cut 0.25 = 19.605 sure").is_ok());
    // No tool takes a fiftieth: a second such pass is asked about like the first.
    let asked = session.evaluate("cut 0.25 = 19.61").expect_err("it is asked about");
    assert!(asked.advice.contains("probably the slide hardly moved"), "{asked:?}");
    let said = text(&mut session, "cut 0.25 = 19.61 sure");
    assert!(!said.contains("your tool is cutting"), "{said}");
}
