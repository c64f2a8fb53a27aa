//! What a user is told to drill, bore and cut, over every listed thread.

use fits_checks::listed_threads;
use fits_core::{
    Length,
    shop::tap::{ChartDrill, Oversize},
    standards::{
        drills::{Drill, Series},
        thread::{Form, Side, Thread},
    },
};
use fits_repl::{
    answer::{Answer, TapAnswer, ThreadPassesAnswer},
    render::{Colour, text::Text},
    session::Session,
};

/// The most thread that a tap is made to cut (Army Ordnance OD 1621, task 2: at
/// most 83; a sharp thread of 60 degrees has 83.3 at its basic minor diameter).
const MOST_CUT: f64 = 83.4;

fn evaluate(session: &mut Session, query: &str) -> Answer {
    session.evaluate(query).unwrap_or_else(|problem| panic!("{query}: {problem:?}"))
}

fn tap(query: &str) -> TapAnswer {
    match evaluate(&mut Session::new(), query) {
        Answer::Tap(tap) => *tap,
        other => panic!("{query}: {other:?}"),
    }
}

/// The answer in words; it must fit the screen.
fn words(query: &str) -> String {
    let mut session = Session::new();
    let answer = evaluate(&mut session, query);
    let text = Text { settings: session.shown(), colour: Colour::Off }.answer(&answer);
    assert!(text.lines().count() <= 23, "{query}: {} lines\n{text}", text.lines().count());
    for line in text.lines() {
        assert!(line.chars().count() <= 80, "{query}: {line}");
    }
    text
}

/// The hole that a drill commonly cuts.
fn cut(drill: Length) -> Length {
    drill.checked_add(Oversize::of(drill).unwrap().commonly).unwrap()
}

#[test]
fn no_drill_is_named_that_is_outside_while_another_is_inside() {
    let (mut drilled, mut bored) = (0, 0);
    for name in listed_threads() {
        let thread: Thread = name.parse().unwrap_or_else(|error| panic!("{name}: {error}"));
        let minor = thread.internal(None).unwrap_or_else(|error| panic!("{name}: {error}")).minor;
        let keeps = |hole| minor.contains(hole);
        let listed = || Drill::all().map(Drill::diameter).filter(|drill| keeps(*drill));
        let answer = tap(&format!("{name} tap"));
        let is_power = matches!(thread.form(), Form::Trapezoidal | Form::Acme | Form::StubAcme);
        assert_eq!(answer.advised.is_none(), is_power, "{name}");
        match (&answer.first, &answer.bore) {
            (Some(first), None) => {
                drilled += 1;
                let drill = first.drill.mm.0;
                assert!(!is_power && keeps(drill), "{name}: {first:?}");
                assert_eq!(first.drill_within_limits, Some(true), "{name}");
                assert_eq!(first.within_limits, Some(keeps(cut(drill))), "{name}");
                if first.published {
                    let chart = || ChartDrill::of(&thread)?.drill().map(Drill::diameter);
                    let table = thread.pipe_tap_drill().or_else(chart);
                    assert_eq!(table, Some(drill), "{name}");
                } else {
                    // Inch drills for inch threads, unless none does.
                    let is_inch = |size: Length| {
                        let mut drills = Drill::all().filter(|drill| drill.diameter() == size);
                        drills.any(|drill| drill.series() != Series::Metric)
                    };
                    let open = |other: Length| {
                        !thread.form().is_inch() || !is_inch(drill) || is_inch(other)
                    };
                    // More thread than a tap stands is not a gain, whatever the drill cuts.
                    let left = |size: Length| thread.major().millimetres() - size.millimetres();
                    let stands =
                        |other: Length| first.percent * left(other) / left(drill) <= MOST_CUT;
                    let better =
                        listed().find(|other| open(*other) && stands(*other) && keeps(cut(*other)));
                    assert!(keeps(cut(drill)) || better.is_none(), "{name}: {better:?}");
                }
            }
            (None, Some(bore)) => {
                bored += 1;
                assert!(is_power || listed().next().is_none(), "{name}");
                assert!(keeps(bore.aim_mm.0), "{name}: {bore:?}");
                assert!(answer.alternatives.is_empty(), "{name}");
                if let Some(first) = &bore.first_drill {
                    assert!(cut(first.mm.0) < minor.min.unwrap(), "{name}: {first:?}");
                }
                // A bore is for a boring bar.
                assert!(bore.aim_mm.0 > "2mm".parse().unwrap(), "{name}: {bore:?}");
            }
            other => panic!("{name}: {other:?}"),
        }
        words(&format!("{name} tap"));
    }
    assert!(drilled > 400 && bored > 200, "{drilled} drilled, {bored} bored");
}

#[test]
fn headlines_that_a_machinist_would_take() {
    // G and Rp: the tap drills of a published web table, `data/threads/pipe_g.csv`.
    for (query, drill, percent) in [
        ("G1/2 tap", "19 mm", 84.1),
        ("Rp1 tap", "30.4 mm", 96.3),
        ("11/16-24 tap", "16.5 mm", 70.0),
        ("M30 tap", "1-3/64 in", 75.0),
        ("#8-32 tap", "#29", 69.0),
        ("#8-32 tap 75%", "#29", 69.0),
        ("M30 tap 1-3/64in", "1-3/64 in", 75.0),
        ("1/4-20 tap power", "#7", 75.4),
    ] {
        let first = tap(query).first.unwrap_or_else(|| panic!("{query}: bored"));
        assert_eq!(first.drill.name, drill, "{query}");
        assert!((first.percent - percent).abs() < 0.1, "{query}: {}", first.percent);
    }
    let text = words("Rp1 tap");
    assert!(text.contains("published"), "{text}");
    assert!(text.contains("as commonly cut, 1.2039 in, it is outside"), "{text}");
    assert!(text.contains("the class     asks for more: its limits keep 94 to 106 %"), "{text}");
    // In hand: 8.8 mm is over 8.676 mm itself.
    assert!(words("M10 tap 8.8").contains("the drill itself is outside the nut's limits"));
    let text = words("Tr20x4 tap");
    assert!(text.contains("BORE  tap     16.188 mm"), "{text}");
    assert!(!text.contains('%') && text.contains("15.5 mm"), "{text}");
    assert!(words("M10 tap hub steel").contains("forming tap"));
    assert!(!words("M10 tap hub cast iron").contains("forming"));
    for query in ["why M30 tap", "why Tr20x4 tap"] {
        assert!(matches!(evaluate(&mut Session::new(), query), Answer::Why(_)), "{query}");
    }
}

#[test]
fn every_pass_is_shown() {
    for name in listed_threads() {
        let thread: Thread = name.parse().unwrap();
        for side in [Side::External, Side::Internal] {
            if !thread.form().has_side(side) {
                continue;
            }
            let place = if side == Side::External { "outside" } else { "inside" };
            let query = format!("{name} cut {place}");
            let Answer::ThreadPasses(passes) = evaluate(&mut Session::new(), &query) else {
                panic!("{query}")
            };
            let text = words(&query);
            shown(&query, &passes, &text);
        }
    }
    assert!(words("M64 cut").contains("leave it, twice"));
    let left = words("M10 LH cut");
    assert!(left.contains("the thread starts in it") && !left.contains("run-out"), "{left}");
    let right = words("M10 cut").replace("\n ", "");
    assert!(
        right.contains("relief groove to 7.700 mm diameter, at least 2.500 mm wide"),
        "{right}"
    );
}

/// Each pass stands in the text with its name before its dial.
fn shown(query: &str, passes: &ThreadPassesAnswer, text: &str) {
    let cells: Vec<&str> = text.split_whitespace().collect();
    for pass in passes.passes.iter().filter(|pass| pass.name != "spring") {
        assert!(cells.contains(&pass.name.as_str()), "{query}: no pass {}\n{text}", pass.name);
    }
    assert!(!text.contains("more: see"), "{query}");
}
