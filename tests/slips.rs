//! A slip of typing is told in its own words wherever it is read, and a word
//! that could be two is not read.

use fits_repl::{
    render::{Colour, json, text::Text},
    session::Session,
};
use serde_json::Value;

fn ask(line: &str) -> (Value, Session) {
    let mut session = Session::new();
    session.evaluate("units in").expect("units");
    let answer = session.evaluate(line);
    let mut out = Vec::new();
    json::object_with(&mut out, None, line, session.beside(&[]), &answer);
    (serde_json::from_slice(&out).expect("one object"), session)
}

/// The figures of an answer, without what says how it was asked.
fn figures(mut answer: Value) -> Value {
    let fields = answer.as_object_mut().expect("an object");
    for field in ["query", "of", "read_as", "slips"] {
        fields.remove(field);
    }
    answer
}

#[test]
fn a_slip_is_told_and_the_answer_is_that_of_the_word() {
    for (line, typed, read) in [
        ("asemble 3/4 press, hub steel od 1.5in long 1in", "asemble", "assemble"),
        ("3/4 prees fit", "prees", "press"),
        ("3/4in slidng", "slidng", "sliding"),
        ("shaft mesures .749 make hole for slip", "mesures", "measures"),
        ("boree 3/4 H7 from .735", "boree", "bore"),
        ("20mm loose runing", "runing", "running"),
        ("why 3/4 prees", "prees", "press"),
        ("bushng 3/4 od 1 long 1 in cast iron, bronze", "bushng", "bushing"),
        ("3/4 press in alumnium", "alumnium", "aluminum"),
        ("helpp", "helpp", "help"),
    ] {
        let (got, session) = ask(line);
        let said = &got["slips"][0];
        assert_eq!((&said["typed"], &said["read"]), (&typed.into(), &read.into()), "{got}");
        let (straight, _) = ask(&line.replace(typed, read));
        assert!(straight.get("slips").is_none(), "{straight}");
        assert!(straight.get("answer").is_some(), "{line}: {straight}");
        assert_eq!(figures(got), figures(straight), "{line}");
        let text = Text { settings: session.shown(), colour: Colour::Off };
        let lines = text.read_as(session.read_as(), session.slips());
        assert!(lines.starts_with(&format!("read `{typed}` as `{read}`\n")), "{lines}");
    }
}

#[test]
fn a_question_back_tells_the_slip_too() {
    let (got, _) = ask("bushng 3/4 press");
    let message = got["error"]["message"].as_str().expect("a message");
    assert!(message.ends_with("(read `bushng` as `bushing`)"), "{message}");
    assert!(got["error"]["choices"].as_array().is_some_and(|list| list.len() >= 2), "{got}");
}

#[test]
fn what_could_be_two_words_a_short_word_and_a_name_of_ones_own_are_not_mended() {
    for line in ["3/4 slag fit", "3/4 fti press", "drel 7", "3/4in slidng fit zorgle"] {
        let (got, _) = ask(line);
        assert!(got.get("error").is_some(), "{line}: {got}");
        assert!(got.get("slips").is_none(), "{line}: {got}");
    }
    let (got, _) = ask("crib add material brase modulus 100GPa poisson 0.34");
    assert!(got.get("slips").is_none(), "{got}");
}
