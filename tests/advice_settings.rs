//! Settings that the advice of a log keeps to: a turn of the dial, the least
//! chip, the owner's risk; as typed, as remembered, as refused.

use std::fs;

use fits_checks::ask;
use fits_repl::{Home, session::Session};

fn after(lines: &[&str]) -> Session {
    let mut session = Session::new();
    for line in lines {
        assert!(session.evaluate(line).is_ok(), "{line}");
    }
    session
}

const BORE: &str = "bore 20 H7 from 19.6 with bore gauge";

#[test]
fn a_turn_short_is_told_once_the_dial_s_turn_is_known() {
    // A tenth less than the 0.242 that a cut of 0.25 takes.
    const SHORT: &str = "cut 0.25 = 19.742 sure";
    let told = |session: &mut Session| ask(session, SHORT)["story"]["name"].clone();
    assert_eq!(told(&mut after(&[BORE])), "backlash");
    assert_eq!(told(&mut after(&["dial turn 0.100", BORE])), "whole turn");
    // It is the dial's own figure: half of the change where it reads radius.
    assert_eq!(told(&mut after(&["dial turn 0.05", "dial radius", BORE])), "backlash");
    // Set after the log was opened it serves, too.
    let mut session = after(&[BORE, "dial turn 0.100"]);
    let log = ask(&mut session, SHORT);
    assert_eq!(
        log["story"]["says"],
        "the dial stood one whole turn short (a turn is 0.100 mm on \
                                      the diameter)"
    );
    // A log whose dial is divided coarser than that turn goes on without it.
    let mut session = after(&["dial graduation 0.2mm", BORE, "dial graduation 0.01mm"]);
    assert!(session.evaluate("dial turn 0.1").is_ok());
    assert_eq!(ask(&mut session, "log").get("error"), None);
}

/// Whoever dares more finishes more: the odds of ending inside go up with the
/// chance of overshooting that a cut may have.
#[test]
fn the_risk_that_is_set_changes_the_odds() {
    let good = |setting: &str| {
        let mut session = after(&[setting, "bore 20 H6 from 19.98 with telescoping gauge"]);
        let log = ask(&mut session, "log");
        log["next"]["probability_good"].as_f64().expect("a chance")
    };
    let [careful, usual, bold] = ["risk careful", "risk usual", "risk 20%"].map(good);
    assert!(careful + 0.01 < usual && usual + 0.01 < bold, "{careful} {usual} {bold}");
    // What is set while a log is open serves at once.
    let mut session = after(&["bore 20 H6 from 19.98 with telescoping gauge", "risk 20%"]);
    let set = ask(&mut session, "log")["next"]["probability_good"].as_f64();
    assert!(set.is_some_and(|set| (set - bold).abs() < 1e-9), "{set:?} {bold}");
}

#[test]
fn no_order_is_smaller_than_the_least_chip() {
    let dial = |least: &str| {
        let mut session = after(&[least, "bore 20 H7 from 19.99 with bore gauge"]);
        let next = ask(&mut session, "log")["next"].clone();
        next["dial_mm"].as_f64().filter(|dial| *dial > 0.0)
    };
    assert!(dial("least chip 0.01mm").is_some_and(|dial| dial < 0.03));
    assert!(dial("least chip 0.03mm").is_none_or(|dial| dial >= 0.03 - 1e-9));
    // Where no such chip ends inside, there is no plan to open a log for.
    let mut session = Session::new();
    session.evaluate("least chip 0.04mm").unwrap();
    let refused = session.evaluate("bore 20 H7 from 19.99 with bore gauge").unwrap_err();
    assert!(refused.message.contains("a tool rubs under 0.04 mm"), "{}", refused.message);
}

#[test]
fn a_setting_is_said_in_any_form() {
    for (line, risk) in [
        ("risk 0.05", 0.05),
        ("risk 5%", 0.05),
        ("risk 5 %", 0.05),
        ("risk 5 percent", 0.05),
        ("risk Careful", 0.01),
        ("risk bold", 0.1),
    ] {
        let set = ask(&mut Session::new(), line)["risk"].as_f64().expect(line);
        assert!((set - risk).abs() < 1e-12, "{line}: {set}");
    }
    let mut session = after(&["risk bold", "risk usual"]);
    assert_eq!(ask(&mut session, "units").get("risk"), None);
}

#[test]
fn settings_without_sense_are_refused() {
    for (line, message, hint) in [
        ("risk 5", "a risk lies between 0 and 1", "if a percentage was meant: `risk 5%`"),
        (
            "risk 0",
            "a risk lies between 0 and 1",
            "how many of a hundred cuts may overshoot, as `risk 5%`",
        ),
        (
            "risk -1%",
            "a risk lies between 0 and 1",
            "how many of a hundred cuts may overshoot, as `risk 5%`",
        ),
        (
            "risk 100%",
            "a risk lies between 0 and 1",
            "how many of a hundred cuts may overshoot, as `risk 5%`",
        ),
        (
            "risk nan",
            "a risk lies between 0 and 1",
            "how many of a hundred cuts may overshoot, as `risk 5%`",
        ),
        (
            "risk some",
            "this is not a chance of overshooting",
            "`risk careful`, `risk usual`, `risk bold`, or as `risk 5%`",
        ),
        (
            "dial turn 0.005",
            "a turn of the dial is at least one division, 0.01 mm",
            "as the dial shows it, `dial turn 2mm` or `dial turn 0.1in`",
        ),
        (
            "dial turn 30",
            "no dial turns so far",
            "as the dial shows it, `dial turn 2mm` or `dial turn 0.1in`",
        ),
        ("dial turn", "what a turn reads is missing", "as in `dial turn 2mm`"),
        ("least chip", "the least cut is missing", "as in `least chip 0.02mm`"),
        (
            "least chip 0",
            "no tool rubs at such a cut",
            "on the diameter, as `least chip 0.02mm` or `least chip 0.001in`",
        ),
    ] {
        let mut session = Session::new();
        let problem = session.evaluate(line).expect_err(line);
        assert_eq!(
            (problem.message.as_str(), problem.hint(line).as_str()),
            (message, hint),
            "{line}"
        );
        assert!(line.get(problem.at.clone()).is_some(), "{line}");
    }
    let mut session = after(&["dial turn 0.1"]);
    let problem = session.evaluate("dial graduation 0.2mm").expect_err("a turn is smaller");
    assert_eq!(problem.message, "a turn of the dial is 0.1 mm, which is smaller");
}

#[test]
fn settings_are_remembered_and_a_damaged_one_is_said() {
    let home = tempfile::tempdir().expect("a folder");
    let open = || {
        let mut session = Session::new();
        let folder = || Some(home.path().to_owned());
        let notes = session.use_own_settings(&Home { config: folder(), data: folder() });
        (session, notes)
    };
    let (mut session, _) = open();
    for line in ["dial turn 0.1in", "least chip 1 thou", "risk 5%"] {
        assert_eq!(ask(&mut session, line)["note"], "remembered", "{line}");
    }
    let in_force = |session: &mut Session| {
        let told = ask(session, "units");
        ["dial_turn_mm", "least_chip_mm", "risk"].map(|key| told[key].as_f64())
    };
    assert_eq!(in_force(&mut open().0), [Some(2.54), Some(0.0254), Some(0.05)]);
    assert_eq!(ask(&mut session, "risk usual")["note"], "remembered");
    assert_eq!(in_force(&mut open().0), [Some(2.54), Some(0.0254), None]);
    let file = home.path().join("settings.toml");
    let text = "version = 1\nrisk = \"2\"\nleast_chip = \"-1 mm\"\ndial_turn = \"2 mm\"\n";
    fs::write(&file, text).expect("written");
    let (mut session, notes) = open();
    assert_eq!(notes.len(), 2, "{notes:?}");
    assert_eq!(in_force(&mut session), [Some(2.0), None, None]);
}
