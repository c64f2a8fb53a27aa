//! Threads asked in the words and the order that people use, and hints whose
//! every query works.

use fits_core::{
    Length, Limits,
    shop::wires::WireThread,
    standards::thread::{Form, Side, Thread},
};
use fits_repl::{
    answer::Answer,
    problem::Problem,
    render::{Colour, json, text::Text},
    session::Session,
};
use proptest::prelude::*;

/// The answer's JSON without the line it answers.
#[track_caller]
fn answered(line: &str) -> String {
    let answer = Session::new()
        .evaluate(line)
        .unwrap_or_else(|problem| panic!("{line}: {}: {}", problem.message, problem.hint(line)));
    let mut out = Vec::new();
    json::object(&mut out, None, "", &Ok(answer));
    String::from_utf8(out).expect("text")
}

fn text(line: &str) -> String {
    let mut session = Session::new();
    let answer = session.evaluate(line).unwrap_or_else(|problem| panic!("{line}: {problem:?}"));
    Text { settings: session.shown(), colour: Colour::Off }.answer(&answer)
}

fn problem(line: &str) -> Problem {
    match Session::new().evaluate(line) {
        Ok(answer) => panic!("`{line}` was answered: {answer:?}"),
        Err(problem) => problem,
    }
}

/// What stands between backquotes in a hint and is not answered.
fn broken_offers(line: &str, problem: &Problem) -> Vec<String> {
    let hint = problem.hint(line);
    hint.split('`')
        .skip(1)
        .step_by(2)
        .filter(|offer| match Session::new().evaluate(offer) {
            // An entry of a pass log wants a log.
            Err(again) => again.message != "no pass log is open",
            Ok(_) => false,
        })
        .map(str::to_owned)
        .collect()
}

#[test]
fn one_question_in_many_words() {
    for (said, meant) in [
        ("tap M10", "M10 tap"),
        ("M10 tap drill", "M10 tap"),
        ("M10 tap hole", "M10 tap"),
        ("M10 drill", "M10 tap"),
        ("drill M10", "M10 tap"),
        ("drill for M10", "M10 tap"),
        ("tap drill for M10", "M10 tap"),
        ("tap 3/8-16", "3/8-16 tap"),
        ("tap 3/8-24 70%", "3/8-24 tap 70%"),
        ("M10 drill 8.6", "M10 tap 8.6"),
        ("M10 tap aluminium", "M10 tap, hub aluminium"),
        ("M10 tap in cast iron by hand", "M10 tap, hub cast iron, hand"),
        ("3/8-24 tap Q", "3/8-24 tap letter Q"),
        ("cut M10x1.25", "M10x1.25 cut"),
        ("cut 3/8-24 straight", "3/8-24 cut straight"),
        ("wires 3/8-24", "3/8-24 wires"),
        ("wires 3/8-24 0.03in", "3/8-24 wires 0.03in"),
        ("over 10.2 M10", "M10 over 10.2"),
        ("over 0.38in 3/8-24 2A", "3/8-24 2A over 0.38in"),
        ("clearance M10", "M10 clearance"),
        ("M10 clearance hole", "M10 clearance"),
        ("M10 clearance fine", "M10 clearance close"),
        ("M10 clearance hole medium", "M10 clearance normal"),
        ("clearance M10 coarse", "M10 clearance loose"),
        ("M10 thread", "M10"),
        ("M10 nut", "M10 6H"),
        ("M10 bolt", "M10 screw"),
        ("nut 3/8-24", "3/8-24 internal"),
        ("M10 outside", "M10 external"),
        ("M10 nut tap", "M10 tap"),
        ("3/8 clearance", "thread 3/8 clearance"),
        ("1/4 clearance", "thread 1/4 clearance"),
        ("3/8-16 over 0.39in", "thread 3/8-16 over 0.39in"),
        ("3/8 screw", "thread 3/8 screw"),
    ] {
        // What is taken for granted is said of either.
        let left = |text: String| match text.split_once("\"assumed\"") {
            Some((before, after)) => {
                format!("{before}{}", after.split_once(']').expect("a list").1)
            }
            None => text,
        };
        assert_eq!(left(answered(said)), left(answered(meant)), "{said}");
    }
}

#[test]
fn designations_as_people_write_them() {
    for (said, meant) in [
        ("Tr20x4LH", "Tr20x4 LH"),
        ("M10x1.25LH", "M10x1.25 LH"),
        ("Tr20x8 (P4) LH", "Tr20x8P4 LH"),
        ("M10x1.5 - 6g", "M10x1.5-6g"),
        ("3/8-24 2a", "3/8-24 2A"),
        ("3/8-24 2b/2a", "3/8-24 2B/2A"),
        ("1/2-10 Acme 2g", "1/2-10 Acme 2G"),
        ("G1/2A", "G1/2 A"),
        ("G1/2B", "G1/2 B"),
        ("g1/2", "G1/2"),
        ("rc1/2", "Rc1/2"),
        ("R 1/2", "R1/2"),
        ("BA2", "2 BA"),
        ("BA 2", "2 BA"),
        ("NPT 1/2", "1/2 NPT"),
        ("BSP 1/2", "G1/2"),
        ("BSW 1/2", "1/2 BSW"),
        ("UNF 3/8", "3/8 UNF"),
        ("UNF 3/8-24 2A", "3/8-24 UNF 2A"),
        ("Acme 1/2-10", "1/2-10 Acme"),
        ("stub acme 1/2-10", "1/2-10 stub acme"),
        ("thread 3/8in", "thread 3/8"),
    ] {
        assert_eq!(answered(said), answered(meant), "{said}");
    }
}

#[test]
fn refusals_name_the_thread_that_is_meant() {
    for (line, message, hint) in [
        ("M10 2A", "2A is a class of the Unified screw", "the usual metric one is 6g: `M10 6g`"),
        (
            "1-14 UNF",
            "1-14 is in no series",
            "listed: `1-8` UNC, `1-12` UNF, `1-20` UNEF, or of its own: `1-14 UNS`",
        ),
        (
            "1/2 BSPT",
            "BSPT is written R outside and Rc inside (ISO 7-1)",
            "ask as `R1/2`, `Rc1/2`, or the parallel nut `Rp1/2`",
        ),
        (
            "1/2-14 NPTF",
            "the dry-seal thread NPTF (ASME B1.20.3) is not held here",
            "the thread that seals with tape or paste is asked as `1/2 NPT`",
        ),
        (
            "M-10",
            "a metric thread has its size right after the M",
            "as in `M10` or `M10x1.25`: `M10`",
        ),
        ("M", "a metric thread has its size right after the M", "as in `M10` or `M10x1.25`"),
        (
            "M7.3x1 clearance",
            "ISO 273 lists no clearance hole for M7.3 screws",
            "the nearest listed: M7, M8",
        ),
        ("#10-7", "a pitch of 7 tpi leaves no core in #10", "listed: `10-24` UNC, `10-32` UNF"),
        (
            "M10x0",
            "a pitch of 0 mm is not a thread's",
            "M10 is listed with pitch 1.5 (coarse), 1.25, 1, 0.75",
        ),
        (
            "1/4-20 tap 7",
            "this number has no unit: the question is in inches, bare numbers are millimetres",
            "a number drill has its sign: `1/4-20 tap #7`",
        ),
        (
            "M10 over 20",
            "20 mm over wires is not a size of this thread",
            "about 10.229 mm is expected",
        ),
        (
            "M10 wires 0.1",
            "a wire of 0.1 mm sinks below the crests",
            "wires from 0.8017 mm to 1.5593 mm can be used; the best of them: `M10 wires 0.866 mm`",
        ),
        ("tap 8.5", "no thread is named after `tap`", "as in `M10 tap` or `3/8-24 tap`"),
        (
            "M10 hole",
            "tapped, or passed by a screw, is not said",
            "say which: `M10 tap` or `M10 clearance`",
        ),
        (
            "M10 6g nut",
            "6g is a class of the screw, and the nut is asked for",
            "leave the class out, or say screw: `M10 6g screw`",
        ),
        (
            "Rc1/2 cut",
            "a taper thread is not cut by a parallel infeed",
            "set the taper over first; its limits are `Rc1/2`",
        ),
        (
            "1/29 Acme",
            "1/29 in is not a listed Acme size",
            "sizes are written in inches, as `1/2 Acme`",
        ),
        ("3/824 UN", "3/824 UN has no pitch", "sizes are written in inches, as `3/8-16`"),
    ] {
        let problem = problem(line);
        assert_eq!(
            (problem.message.as_str(), problem.hint(line).as_str()),
            (message, hint),
            "{line}"
        );
        assert!(broken_offers(line, &problem).is_empty(), "{line}");
    }
}

#[test]
fn classes_and_sizes_that_only_look_like_threads_are_left_alone() {
    for line in ["g6", "r6", "RC4", "UN", "B 2", "N9", "a", "20 clearance", "over 20", "cut 0.2"] {
        let problem = problem(line);
        assert!(!problem.message.contains("thread"), "{line}: {}", problem.message);
    }
    for line in ["drill 0.7031in", "drill #7", "screw 3/8in", "ream 20 H7", "bore 3/4in H7"] {
        let answer = Session::new().evaluate(line);
        assert!(!matches!(answer, Ok(Answer::Thread(_) | Answer::Tap(_))), "{line}");
    }
}

#[test]
fn a_reading_past_the_limit_says_so_and_is_out_of_limits() {
    let cases = [
        ("3/8-24 2A over 0.3700in", "OVERCUT", true),
        ("3/8-24 2A over 0.3810in", "GOOD: stop", false),
        ("3/8-24 2A over 0.3900in", "CUT MORE", true),
    ];
    for (line, word, is_out) in cases {
        assert!(text(line).starts_with(word), "{}", text(line));
        assert_eq!(Session::new().evaluate(line).expect(line).is_out_of_limits(), is_out, "{line}");
    }
    // 0.3430 in is the least pitch diameter of class 2A (ASME B1.1, 3/8-24), the
    // reading means 0.33392 in.
    assert!(text(cases[0].0).contains("9.1 thou  0.231 mm past the limit"), "{}", text(cases[0].0));
    assert!(text(cases[0].0).contains("or\n  scrap it"));
    assert!(text("3/8-24 2A wires").contains("\nMIC   over wires  "));
}

#[test]
fn what_is_taken_for_granted_is_said() {
    assert!(text("M10 over 10.2").contains("no wire given: best,\n  0.866 mm"));
    assert!(!text("M10 over 10.2 wire 0.9").contains("no wire given"));
    let long = text("M10 long 20").replace("\n  ", " ");
    let note = "ISO 965-1 length group L: 20 mm is outside 5 mm to 15 mm (N), so 7H in place of 6H and 7g6g in place of 6g";
    assert!(long.contains(note), "{long}");
    for line in ["M10 long 5", "M10 6g long 20", "3/8-24 long 1in"] {
        assert!(!text(line).contains("length group"), "{line}");
    }
    assert!(text("G1/2").contains("least       none\n"));
    for line in ["M10 clearance", "M10 clearance close", "3/8 clearance"] {
        assert!(text(line).lines().all(|line| line.trim_end() == line), "{}", text(line));
    }
    assert!(text("M10 clearance close").contains("\nHOLE  fine "));
}

/// Every screw that is listed or asked about in a shop: at its least good size
/// over the wires that are taken, the wires stand above the highest crests.
#[test]
fn the_micrometer_reaches_the_wires_at_every_good_size() {
    let names = [
        "5/16-14 Acme",
        "3/8-12 Acme",
        "7/16-12 Acme",
        "1/2-10 Acme",
        "5/8-8 Acme",
        "3/4-6 Acme",
        "7/8-6 Acme",
        "1-1/4-5 Acme",
        "1/4-16 Acme",
        "Tr8x1.5",
        "Tr9x1.5",
        "Tr10x1.5",
        "M1x0.2",
        "M1.2x0.2",
        "M1.4x0.2",
        "M1.6x0.2",
        "M1.8x0.2",
        "9 BA",
        "10 BA",
        "11 BA",
        "12 BA",
        "13 BA",
        "14 BA",
        "15 BA",
        "16 BA",
    ];
    let plain = ["M10", "M3", "3/8-24", "1/2-13", "1/4-20", "1/2 BSW", "2 BA", "G1/2", "Tr20x4"];
    for (name, is_moved) in
        names.map(|name| (name, true)).into_iter().chain(plain.map(|name| (name, false)))
    {
        let Ok(Answer::Wires(wires)) = Session::new().evaluate(&format!("{name} wires")) else {
            panic!("{name} has no wires: {}", problem(&format!("{name} wires")).message)
        };
        let thread: Thread = name.parse().expect(name);
        let crest = thread.external(None).expect(name).major.max.expect("a limit");
        assert!(wires.over_min_mm.0 >= crest, "{name}: {} under {crest}", wires.over_min_mm.0);
        assert!(wires.wire_min_mm.0 <= wires.wire_mm.0 && wires.wire_mm.0 <= wires.wire_max_mm.0);
        assert_eq!(wires.wire_mm.0 != wires.best_wire_mm.0, is_moved, "{name}");
        assert_eq!(wires.notes.iter().any(|note| note.contains("crests")), is_moved, "{name}");
        // What is shown of the range can be typed.
        let shown = text(&format!("{name} wires"));
        let usable = shown.lines().find_map(|line| line.strip_prefix("  usable ")).expect("a line");
        for wire in usable.split(" to ") {
            answered(&format!("{name} wires {}", wire.trim()));
        }
    }
}

#[test]
fn a_thread_that_no_wire_fits_is_measured_otherwise() {
    // A pitch diameter that may be so small that every wire sinks.
    let size = |text: &str| text.parse::<Length>().expect(text);
    let thread = WireThread::new(size("1mm"), size("1mm"), 30.0, size("5.35mm"), size("6mm"))
        .expect("a thread")
        .down_to(size("3.5mm"));
    let error = thread.best_wire().and_then(|best| thread.nearest_usable(best)).unwrap_err();
    assert_eq!(error.to_string(), "no wire both touches the flanks and stands out of the crests");
    assert!(error.advice().contains("thread micrometer"));
}

/// Every listed metric, Unified and Acme size that a designation reaches.
#[test]
fn listed_threads_have_usable_wires_in_their_usual_class() {
    for tenths in 10..400 {
        let name = format!("M{}.{}", tenths / 10, tenths % 10);
        let Ok(thread) = name.parse::<Thread>() else { continue };
        assert_eq!(thread.form(), Form::Metric);
        let screw = thread.external(None).expect("limits");
        let wired = WireThread::of_thread(&thread, &screw).expect("wires");
        let wire = wired.best_wire().and_then(|best| wired.nearest_usable(best)).expect("a wire");
        let pitch =
            Limits::new(screw.pitch.min.expect("a limit"), screw.pitch.max.expect("a limit"));
        let over = wired.over_limits(wire, pitch.expect("limits")).expect("sizes");
        assert!(over.lower() >= screw.major.max.expect("a limit"), "{name}");
        assert_eq!(screw.side, Side::External);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(1500))]

    /// Whatever a hint offers about a line that is nearly a thread is answered.
    #[test]
    fn every_offer_works(line in "(tap |wires |clearance |over 10\\.2 |cut |nut |drill for |)(M-?[0-9.]{1,4}(x[0-9.P]{0,4})?(LH)?|[0-9#/-]{1,6}-[0-9]{1,3}|Tr[0-9]{1,3}x[0-9]{1,2}|[0-9/]{1,4}(-[0-9]{1,2})? (Acme|UNF|UNR|UNS|BSPT|NPTF|BSW)|[GgRr]c?[0-9/]{1,4}[AB]?|(BA|NPT|UNF|Acme) ?[0-9/]{1,3}|[0-9]{1,2}BA)( LH| 6H/6g| 2A| 2a| 5g| 3B| 7e| medium| 6d)?( tap| drill| wires| cut| over| clearance| nut| screw)?( close| hole| Q| tin| [0-9.]{1,4}(in|mm|%)?)?") {
        if let Err(problem) = Session::new().evaluate(&line) {
            let broken = broken_offers(&line, &problem);
            prop_assert!(broken.is_empty(), "{line}: {}: {broken:?}", problem.message);
        }
    }
}
