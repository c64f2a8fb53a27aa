//! What bare numbers are: as remembered, as the command line says, as asked;
//! and what each answer names.

use std::{path::Path, process::Stdio};

use fits_repl::session::Session;
use serde_json::Value;

/// The program with a home of its own: what it writes, on both streams.
#[track_caller]
fn says(home: &Path, arguments: &[&str]) -> String {
    let output = fits_checks::fits()
        .args(arguments)
        .env("HOME", home)
        .env("XDG_CONFIG_HOME", home.join("config"))
        .env("XDG_DATA_HOME", home.join("data"))
        .stdin(Stdio::null())
        .output()
        .expect("it runs");
    String::from_utf8_lossy(&output.stdout).into_owned() + &String::from_utf8_lossy(&output.stderr)
}

fn json(home: &Path, arguments: &[&str]) -> Value {
    let text = says(home, arguments);
    serde_json::from_str(&text).unwrap_or_else(|error| panic!("{arguments:?}: {error}: {text}"))
}

fn choices(answer: &Value) -> Vec<String> {
    let list = answer.pointer("/error/choices").and_then(Value::as_array);
    list.into_iter().flatten().filter_map(|choice| choice.as_str().map(str::to_owned)).collect()
}

/// One session's answers as JSON.
fn ask(session: &mut Session, line: &str) -> Value {
    let answer = session.evaluate(line);
    let mut out = Vec::new();
    fits_repl::render::json::object_with(&mut out, None, line, session.beside(&[]), &answer);
    serde_json::from_slice(&out).expect("one object")
}

#[test]
fn the_setting_serves_the_prompt_and_the_one_shot_command_alone() {
    for (line, inches) in
        [("units in", true), ("inches", true), ("work in inches", true), ("metric", false)]
    {
        let home = tempfile::tempdir().expect("a folder");
        assert!(says(home.path(), &[line]).contains("remembered"), "{line}");
        let remembered = says(home.path(), &["2 H7"]);
        assert_eq!(remembered.contains("2.0005 in"), inches, "{line}: {remembered}");
        // Flags override, for once.
        assert!(says(home.path(), &["--mm", "2 H7"]).starts_with("CUT     hole    2.005 mm"));
        assert!(says(home.path(), &["--in", "2 H7"]).starts_with("CUT     hole    2.0005 in"));
        assert_eq!(says(home.path(), &["2 H7"]), remembered, "{line}: a flag is not remembered");
        // A program is answered alike whatever a person set.
        let plain = json(home.path(), &["--json", "2 H7"]);
        assert_eq!((&plain["nominal_mm"], &plain["units"]), (&2.0.into(), &"mm".into()), "{line}");
        let told = json(home.path(), &["--in", "--json", "2 H7"]);
        assert_eq!((&told["nominal_mm"], &told["units"]), (&50.8.into(), &"in".into()), "{line}");
        let unset = json(home.path(), &["--json", ".750 H7"]);
        assert_eq!(choices(&unset), [".750in H7", ".750mm H7"], "{line}");
    }
}

#[test]
fn a_dial_that_reads_the_radius_is_not_forgotten_by_the_one_shot_command() {
    let home = tempfile::tempdir().expect("a folder");
    let plan = "turn 20mm g6 from 22mm";
    let on_diameter = says(home.path(), &[plan]);
    says(home.path(), &["dial radius"]);
    assert_ne!(says(home.path(), &[plan]), on_diameter);
}

#[test]
fn batch_takes_what_its_lines_and_flags_say() {
    let home = tempfile::tempdir().expect("a folder");
    says(home.path(), &["inches"]);
    let file = home.path().join("lines");
    std::fs::write(&file, "2 H7\nunits mm\n2 H7\n").expect("written");
    let file = file.to_str().expect("a name");
    for (arguments, first) in [
        (&["batch", file][..], "mm"),
        (&["batch", "--in", file], "in"),
        (&["--in", "batch", file], "in"),
        (&["batch", "--mm", file], "mm"),
    ] {
        let text = says(home.path(), arguments);
        let units: Vec<Value> = text
            .lines()
            .map(|line| serde_json::from_str::<Value>(line).expect("an object")["units"].clone())
            .collect();
        assert_eq!(units, [first, "mm", "mm"], "{arguments:?}");
    }
}

/// The units of an answer are those that the question was put in; no field
/// stands twice.
#[test]
fn every_answer_names_its_units() {
    for (line, units) in [
        ("20 H7/g6", "mm"),
        ("3/4in press", "in"),
        ("3/4 press", "in"),
        ("RC3 .750", "in"),
        ("M8", "mm"),
        ("10-32 tap drill", "in"),
        ("drill #7", "in"),
        ("help", "mm"),
        ("why 3/4in H7", "in"),
        ("units in", "in"),
        ("crib", "in"),
        ("0.75 H7", "in"),
        ("stack 1 -0.75", "in"),
        ("20mm H7 = 20.013mm", "mm"),
        ("settings", "in"),
    ] {
        thread_local!(static SESSION: std::cell::RefCell<Session> = Session::new().into());
        SESSION.with_borrow_mut(|session| {
            assert_eq!(ask(session, line)["units"], units, "{line}");
            let answer = session.evaluate(line);
            let mut out = Vec::new();
            fits_repl::render::json::object_with(
                &mut out,
                None,
                line,
                session.beside(&[]),
                &answer,
            );
            let text = String::from_utf8(out).expect("text");
            let top = text.split("\"answer\"").next().unwrap_or_default();
            let named = top.matches("\"units\"").count();
            let is_settings = text.contains("\"answer\":\"settings\"");
            assert_eq!(named, usize::from(!is_settings), "{text}");
        });
    }
}

/// Where nothing was ever chosen, a bare number that looks like inches is asked
/// about, in whatever plain query; both choices name every unit.
#[test]
fn a_bare_number_that_looks_like_inches_is_asked_about() {
    for line in [
        ".7505",
        ".750 H7",
        ".750 press",
        "1.2505 H7",
        ".7500 H7 = .7505",
        "shaft .749, slip",
        "pick .75 clearance .001..0.002",
        ".75 grade 7",
        "why .750 H7",
    ] {
        let mut session = Session::new();
        let asked = choices(&ask(&mut session, line));
        assert_eq!(asked.len(), 2, "{line}: {asked:?}");
        for (choice, units) in asked.iter().zip(["in", "mm"]) {
            for setting in ["", "units in", "units mm"] {
                let mut session = Session::new();
                if !setting.is_empty() {
                    ask(&mut session, setting);
                }
                let answer = ask(&mut session, choice);
                assert_eq!(answer["units"], units, "{line}: {setting}: `{choice}`: {answer}");
            }
        }
        let mut chosen = Session::new();
        ask(&mut chosen, "inches");
        assert_eq!(ask(&mut chosen, line)["units"], "in", "{line}");
    }
    for line in ["20.0005 H7", "0.5 H7", "12.013"] {
        assert_eq!(ask(&mut Session::new(), line)["units"], "mm", "{line}");
    }
}

/// At an inch prompt a size of twelve and more is asked about, in whatever plain
/// query; where one of the two units has no answer, the other is offered.
#[test]
fn a_large_bare_number_at_an_inch_prompt_is_asked_about() {
    let mut session = Session::new();
    ask(&mut session, "inches");
    for line in [
        "20 H7/g6",
        "20 H7/g6, hole = 20.013",
        "bore 20 H7 from 19.6",
        "assemble 20 H7/s6, hub aluminium od 40 long 25, shaft steel",
        "20 H7 = 20.012/20.018",
        "pick 20 clearance 0.01..0.06",
        "why 20 H7/g6",
        "seat shaft 25 turns normal",
    ] {
        let asked = choices(&ask(&mut session, line));
        let [inches, metric] = &asked[..] else { panic!("{line}: {asked:?}") };
        assert_eq!(ask(&mut session, inches)["units"], "in", "{line}");
        assert_eq!(ask(&mut session, metric)["units"], "mm", "{line}");
    }
    for (line, other) in [
        ("bearing od 52", "bearing od 52mm"),
        ("bushing 20 lined", "bushing 20mm lined"),
        ("ream 20 H7", "ream 20mm H7"),
    ] {
        let hint = ask(&mut session, line)["error"]["hint"].to_string();
        assert!(hint.contains(&format!("in the other unit: `{other}`")), "{line}: {hint}");
        assert_eq!(ask(&mut session, other)["units"], "mm", "{line}");
    }
}
