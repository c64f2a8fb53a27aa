//! A long overhang is cautioned where the plan says one, once, and nowhere else.
//! About four diameters is common practice, no source.

use fits_repl::{
    render::{Colour, text::Text},
    session::Session,
};

fn told(session: &mut Session, line: &str) -> usize {
    let answer =
        session.evaluate(line).unwrap_or_else(|problem| panic!("{line}: {}", problem.message));
    let text = Text { settings: session.shown(), colour: Colour::Off }.answer(&answer);
    text.matches("overhung boring").count()
}

#[test]
fn long_overhang_is_cautioned_in_the_plan_and_once() {
    for (overhang, times) in [
        ("", 0),
        (", overhang 3", 0),
        (", overhang 4", 0),
        (", overhang 4.5", 1),
        (", overhang 8", 1),
    ] {
        let mut session = Session::new();
        let line = format!("bore 20 H7 from 19.6 with bore gauge{overhang}");
        assert_eq!(told(&mut session, &line), times, "{line}");
        for entry in ["cut 0.2 = 19.79", "read 19.792"] {
            assert_eq!(told(&mut session, entry), 0, "{line}: {entry}");
        }
    }
    for line in [
        "bore 20 H7",
        "bore 3/4in H7",
        "20 H7",
        "turn 20 g6 from 22, overhang 6",
        "20 H7 = 19.99",
        "20 H7/g6",
    ] {
        assert_eq!(told(&mut Session::new(), line), 0, "{line}");
    }
    // Turning's own caution stands with every plan to turn.
    let mut session = Session::new();
    let answer = session.evaluate("turn 20 g6 from 22").expect("a plan");
    let text = Text { settings: session.shown(), colour: Colour::Off }.answer(&answer);
    assert_eq!(text.matches("! turning").count(), 1, "{text}");
}
