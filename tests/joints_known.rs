//! How a joint and a bushing are known: the worst of all that went in, told once.

use fits_core::source::Known;
use fits_repl::{
    answer::Answer,
    render::{Colour, text::Text},
    session::Session,
};

fn said(line: &str) -> (Answer, String) {
    let mut session = Session::new();
    let answer =
        session.evaluate(line).unwrap_or_else(|problem| panic!("{line}: {}", problem.message));
    let text = Text { settings: session.shown(), colour: Colour::Off }.answer(&answer);
    (answer, text.split_whitespace().collect::<Vec<_>>().join(" "))
}

fn known(answer: &Answer) -> (Known, String) {
    match answer {
        Answer::Assembly(joint) => (joint.known, joint.unconfirmed.join(", ")),
        Answer::BushingFit(bushing) => (bushing.known, bushing.unconfirmed.clone()),
        other => panic!("{other:?}"),
    }
}

// data/friction.csv: what holds is DIN 7190-1's from memory, what is pressed against
// is common practice without source.
#[test]
fn friction_from_memory_is_told_where_a_force_goes_by_it() {
    for (line, worst, of_friction) in [
        ("assemble 20 H7/s6, hub steel od 40 long 25, shaft steel", Known::Memory, true),
        ("assemble 20 H7/s6, hub steel od 40 long 25, shaft steel, shrink", Known::Memory, true),
        ("assemble 20 H7/s6, hub 304 od 40 long 25, shaft 304, oil", Known::Memory, true),
        // No force without a length; the finish is assumed.
        ("assemble 20 H7/s6, hub steel od 40, shaft steel", Known::Practice, false),
        (
            "assemble 20 H7/s6, hub steel od 40 long 25, shaft steel, friction 0.1",
            Known::Practice,
            false,
        ),
        (
            "assemble 20 H7/s6, hub steel od 40 long 25, shaft steel, friction 0.1, rz 6um",
            Known::Formula,
            false,
        ),
        // ISO 4379's classes are recalled (data/bought/bushings.csv).
        ("bushing 20 od 26 long 20, hub steel od 60, bronze", Known::Memory, false),
        ("bushing 20 od 26 long 20, hub steel od 60, bronze, for rough", Known::Memory, false),
    ] {
        let (answer, text) = said(line);
        let (found, unconfirmed) = known(&answer);
        assert_eq!(found, worst, "{line}");
        assert_eq!(unconfirmed.contains("friction"), of_friction, "{line}: {unconfirmed}");
        let told = text.matches("! unconfirmed").count();
        assert_eq!(told, usize::from(worst == Known::Memory), "{line}: {text}");
        assert_eq!(!unconfirmed.is_empty(), worst == Known::Memory, "{line}");
    }
}

#[test]
fn no_caution_is_printed_twice_and_nothing_is_known_better_than_its_reasons() {
    for line in [
        "assemble 20 H7/s6, hub steel od 40 long 25, shaft steel",
        "assemble 3/4in FN2, hub 303 od 1.5in long 1in, shaft 303, oil",
        "assemble 20 H7/s6, hub steel od 40 long 25, shaft peek",
        "assemble 4in FN2, hub cast iron od 8in long 4in, shaft steel",
        "bushing 20 od 26 long 20, hub steel od 60, bronze",
        "bushing 20 od 26 long 20, hub peek od 60, bronze, for spindle",
        "bushing 3/4in od 1in long 1in, hub cast iron, nylon, warm 120F",
    ] {
        let (answer, text) = said(line);
        let mut cautions: Vec<&str> = text.split("! ").skip(1).collect();
        let count = cautions.len();
        cautions.sort_unstable();
        cautions.dedup();
        assert_eq!(cautions.len(), count, "{line}: {text}");
        let worst = known(&answer).0;
        let mut session = Session::new();
        let Ok(Answer::Why(why)) = session.evaluate(&format!("why {line}")) else {
            panic!("{line}")
        };
        for reason in why.figures.iter().filter(|it| it.figure.contains("friction")) {
            assert_eq!(worst.worst(reason.known), worst, "{line}: {}", reason.figure);
        }
    }
}
