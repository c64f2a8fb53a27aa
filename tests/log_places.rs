//! A part measured at several places, several times, or warm: what is kept,
//! which place decides, what is told of the form, and what is refused.

use std::{fs, path::PathBuf};

use fits_checks::{ask, takes};
use fits_repl::{
    render::{Colour, text::Text},
    session::{Logs, Session},
};
use serde_json::Value;

fn text(session: &mut Session, query: &str) -> String {
    let answer = session.evaluate(query).unwrap_or_else(|error| panic!("{query}: {error:?}"));
    Text { settings: session.shown(), colour: Colour::Off }.answer(&answer)
}

/// The message, the spot and the hint of a refusal; nothing is entered.
#[track_caller]
fn refused<'a>(session: &mut Session, line: &'a str) -> (String, &'a str, String) {
    let before = ask(session, "log")["entries"].clone();
    let problem = session.evaluate(line).expect_err(line);
    assert_eq!(ask(session, "log")["entries"], before, "{line}");
    (problem.message.clone(), &line[problem.at.clone()], problem.hint(line))
}

#[track_caller]
fn opened(first: &str) -> Session {
    let mut session = Session::new();
    takes(&mut session, first);
    session
}

const BORE: &str = "bore 20 H7 from 19.6 with bore gauge";
const TURN: &str = "turn 20 g6 from 20.5 with micrometer";

#[test]
fn a_bore_goes_by_the_larger_place_and_a_shaft_by_the_smaller() {
    for (first, line, decides, place) in [
        (BORE, "cut 0.25 = 19.842 / 19.850", 19.85, "the second place"),
        (BORE, "cut 0.25 = 19.850 front 19.842 back", 19.85, "front"),
        (BORE, "cut 0.25 = mouth 19.842, bottom 19.850", 19.85, "bottom"),
        (TURN, "cut 0.25 = 20.257 / 20.245", 20.245, "the second place"),
        (TURN, "cut 0.25 = 20.257 headstock 20.245 tailstock", 20.245, "tailstock"),
        (TURN, "cut 0.25 = 20.245 across 20.257 along", 20.245, "across"),
    ] {
        let mut session = opened(first);
        let log = takes(&mut session, line);
        assert_eq!(log["entries"][0]["reading_mm"], decides, "{line}");
        assert_eq!(log["form_error"]["decides"], place, "{line}");
        assert_eq!(log["form_error"]["real"], true, "{line}");
        assert_eq!(log["entries"][0]["places"].as_array().map(Vec::len), Some(2), "{line}");
        // The size that is believed is the deciding place's.
        let size = log["size_mm"].as_f64().expect("a size");
        assert!((size - decides).abs() < 0.003, "{line}: {size}");
    }
}

#[test]
fn several_readings_of_a_place_are_its_mean() {
    let mut session = opened(BORE);
    let log = takes(&mut session, "cut 0.25 = 19.841 19.843 front 19.850 19.852 19.851 back");
    assert_eq!(log["entries"][0]["reading_mm"], 19.851);
    assert_eq!(log["entries"][0]["places"][1]["readings_mm"].as_array().map(Vec::len), Some(3));
    // Four readings know the size better than one.
    let sd = |line: &str| {
        let mut session = opened("bore 20 H7 from 19.6 with telescoping gauge");
        takes(&mut session, line)["size_sd_mm"].as_f64().expect("a deviation")
    };
    let (one, four) = (sd("cut 0.25 = 19.845"), sd("cut 0.25 = 19.846 19.844 19.846 19.844"));
    assert!(four < 0.85 * one, "{four} against {one}");
    // What no gauge scatters is asked about.
    let (message, spot, hint) = refused(&mut session, "read 19.841 19.891");
    assert_eq!(message, "readings of one place differ by 0.050 mm: no gauge does that");
    assert_eq!(spot, "19.841 19.891");
    assert!(hint.contains("slash between the readings of two places"), "{hint}");
}

#[test]
fn the_form_is_told_with_what_to_do() {
    for (first, line, shape, words) in [
        (BORE, "cut 0.25 = 19.850 front 19.842 back", "bell mouth", "a spring pass or two"),
        (BORE, "cut 0.25 = 19.842 front 19.850 back", "taper", "the headstock or the slide"),
        (BORE, "cut 0.25 = 19.842 across 19.850 along", "out of round", "ease the jaws"),
        (BORE, "cut 0.25 = 19.842 / 19.850", "unlike", "it tapers or has a bell mouth"),
        (TURN, "cut 0.25 = 20.245 / 20.257", "unlike", "If they lie about it"),
        (
            TURN,
            "cut 0.25 = 20.250 front 20.260 middle 20.251 back",
            "barrel",
            "the work springs in the middle",
        ),
        // Half the difference of the ends (`align` names its source).
        (TURN, "cut 0.25 = 20.245 headstock 20.257 tailstock", "taper", "by half of it, 0.006 mm"),
    ] {
        let mut session = opened(first);
        let log = takes(&mut session, line);
        assert_eq!(log["form_error"]["shape"], shape, "{line}");
        let to_do = log["form_error"]["to_do"].as_str().expect("words");
        assert!(to_do.contains(words), "{line}: {to_do}");
        // A hint between backquotes is answered, and agrees.
        for hint in to_do.split('`').skip(1).step_by(2) {
            let aligned = takes(&mut session, hint);
            assert_eq!(aligned["set_over_mm"], 0.006, "{hint}: {aligned}");
        }
        let said = text(&mut session, "log");
        assert!(said.lines().count() <= 23, "{said}");
    }
    // Less than the gauge scatters is not a form.
    let mut session = opened(BORE);
    let log = takes(&mut session, "cut 0.25 = 19.843 / 19.845");
    assert_eq!(log["form_error"]["real"], false);
    assert!(
        log["form_error"]["says"]
            .as_str()
            .is_some_and(|it| it.contains("no more than a bore gauge"))
    );
}

#[test]
fn a_part_is_not_done_before_all_of_it_is_inside() {
    let mut session = opened(BORE);
    takes(&mut session, "cut 0.25 = 19.850 / 19.844");
    // The front has room, the back has metal left.
    let log = takes(&mut session, "cut 0.15 = 20.012 front 19.996 back sure");
    assert_ne!(log["next"]["reason"], Value::Null, "{log}");
    assert!(log["next"]["probability_good"].as_f64().is_none_or(|it| it < 0.5), "{log}");
    let says = log["form_error"]["says"].as_str().expect("words");
    assert!(says.ends_with("back is 0.004 mm short of the limits"), "{says}");
    let (message, ..) = refused(&mut session, "done");
    assert!(message.contains("not inside"), "{message}");
    // More than the tolerance: no cut mends it.
    let log = takes(&mut session, "read 20.012 front 19.986 back sure");
    let says = log["form_error"]["says"].as_str().expect("words");
    assert!(says.contains("no cut brings all of it inside"), "{says}");
    // One reading alone leaves the form told before.
    let log = takes(&mut session, "read 20.012 sure");
    assert!(log["notes"][0].as_str().is_some_and(|it| it.contains("read them all again")), "{log}");
}

/// The deciding place is aimed so far in that the other comes inside too.
#[test]
fn the_other_place_comes_inside_with_it() {
    let mut session = opened("bore 20 H8 from 19.6 with bore gauge");
    let plain = takes(&mut session.trial(), "cut 0.25 = 19.850");
    let tapered = takes(&mut session, "cut 0.25 = 19.838 front 19.850 back");
    let good = |log: &Value| log["next"]["probability_good"].as_f64().expect("odds");
    assert!(good(&tapered) < good(&plain));
    // Played by a tool that takes what it is set to.
    let (mut front, mut back) = (19.838, 19.850);
    let mut log = tapered;
    for _ in 0..8 {
        if log["next"]["action"] == "stop" {
            break;
        }
        if log["next"]["action"] == "cut" {
            let dial = log["next"]["dial_mm"].as_f64().expect("a dial");
            (front, back) = (front + dial, back + dial);
            log = takes(&mut session, &format!("cut {dial} = {front:.3} front {back:.3} back"));
        } else {
            log = takes(&mut session, &format!("read {front:.3} front {back:.3} back"));
        }
    }
    assert!(front >= 20.0 && back <= 20.033, "{front} {back} {}", log["next"]);
}

/// ISO 1: sizes hold at 20 °C. Steel 11.7e-6 or aluminium 23.6e-6 per kelvin
/// (NIST, common tables); the gauge is taken to be at 20 °C.
#[test]
fn a_warm_reading_is_corrected_and_said() {
    for (line, expansion) in [
        ("cut 0.25 = 19.850 at 35C steel", 11.7e-6),
        ("cut 0.25 = 19.850 at 95F steel", 11.7e-6),
        ("cut 0.25 = 19.850 at 35C, aluminium", 23.6e-6),
        ("cut 0.25 = 19.850 at 35C hole aluminium", 23.6e-6),
    ] {
        let mut session = opened(BORE);
        let log = takes(&mut session, line);
        let at_20 = log["entries"][0]["reading_mm"].as_f64().expect("a size");
        let wanted = 19.850 / (1.0 + expansion * 15.0);
        assert!((at_20 - wanted).abs() < 2e-4, "{line}: {at_20} against {wanted}");
        assert!((log["entries"][0]["at_c"].as_f64().expect("degrees") - 35.0).abs() < 1e-9);
        assert_eq!(log["entries"][0]["places"][0]["shown_mm"][0], 19.85, "{log}");
        assert!(log["notes"][0].as_str().is_some_and(|it| it.contains("than at 20 °C")), "{log}");
        let said = text(&mut session, "log");
        assert!(said.contains("it read 19.850 mm"), "{said}");
    }
    // The material of the log, then the setting; else it is asked.
    let mut session = opened("bore 20 H7 from 19.6 with bore gauge, hole aluminium");
    let log = takes(&mut session, "cut 0.25 = 19.850 at 35C");
    assert!(log["entries"][0]["material"].as_str().is_some_and(|it| it.contains("6061")), "{log}");
    let mut session = opened(BORE);
    let (message, spot, hint) = refused(&mut session, "cut 0.25 = 19.850 at 35C");
    assert_eq!(message, "what a warm part is of decides how much it grows");
    assert_eq!(spot, "35C");
    assert!(hint.ends_with("`cut 0.25 = 19.850 at 35C steel`"), "{hint}");
    takes(&mut session, "material steel");
    takes(&mut session, "cut 0.25 = 19.850 at 35C");
}

#[test]
fn what_has_no_sense_is_refused_at_its_spot() {
    let mut session = opened(BORE);
    takes(&mut session, "cut 0.25 = 19.845");
    for (line, message, at) in [
        (
            "read 19.845mm / 0.7813in",
            "this reading is in inches, and those before are in millimetres",
            "0.7813in",
        ),
        (
            "cut 0.1mm = 0.7852in front 19.945mm back",
            "this reading is in millimetres, and those before are in inches",
            "19.945mm",
        ),
        ("read 19.845 / 0.781", "this is not a size of the same part", "0.781"),
        ("read 19.845 / 198.45", "this is not a size of the same part", "198.45"),
        ("read 19.845 front 19.846", "which place is this? the others are named", "19.846"),
        ("read 19.845 front 19.846 front", "this place is named twice", "front"),
        ("read front back 19.845", "the reading of the place before is missing", "back"),
        ("read 19.845 /", "the second place's reading is missing after /", ""),
        ("read 19.845 / 0", "nothing is not a size of a part", "0"),
        ("cut 0.1 at 30C", "a temperature belongs to a reading, and there is none", "at 30C"),
        (
            "read 19.845 at 35±1C steel",
            "a log does not weigh how well a temperature is known",
            "1C",
        ),
        ("read 19.845 at", "the temperature is missing after `at`", ""),
        ("read 19.845 at 35C unobtainium", "no material is called unobtainium", "unobtainium"),
    ] {
        let (said, spot, hint) = refused(&mut session, line);
        assert_eq!((said.as_str(), spot), (message, at), "{line}");
        for query in hint.split('`').skip(1).step_by(2).filter(|it| !it.is_empty()) {
            let answer = session.trial().evaluate(query);
            let is_asked = answer.as_ref().is_err_and(|it| it.hint(query).contains("sure"));
            assert!(answer.is_ok() || is_asked, "{line}: {query}");
        }
    }
}

#[test]
fn file_replay_and_undo_keep_every_place() {
    let folder: PathBuf =
        std::env::temp_dir().join(format!("fits-log-places-{}", std::process::id()));
    fs::create_dir_all(&folder).expect("a folder");
    let path = folder.join("log.jsonl");
    let mut session = Session::new();
    session.keep_logs(Logs::File(path.clone())).expect("a file");
    takes(&mut session, "bore 20 H7 from 19.6 with bore gauge, hole steel");
    takes(&mut session, "cut 0.25 = 19.841 19.842 front 19.850 back at 35C");
    takes(&mut session, "cut 0.05 = 19.890 / 19.899");
    let before = takes(&mut session, "undo");
    drop(session);
    let lines = fs::read_to_string(&path).expect("a log");
    assert!(lines.contains(r#""place":"front","read":["19.8375"#), "{lines}");
    assert!(lines.contains(r#""shown":["19.841 mm","19.842 mm"]"#), "{lines}");
    assert!(lines.contains(r#""at_c":35.0,"material":"steel""#), "{lines}");
    let mut again = Session::new();
    again.keep_logs(Logs::File(path)).expect("a file");
    let after = takes(&mut again, "log");
    for key in ["entries", "form_error", "next", "size_mm", "cut_factor"] {
        assert_eq!(after[key], before[key], "{key}");
    }
    fs::remove_dir_all(&folder).expect("removed");
}
