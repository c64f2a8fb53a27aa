//! Every word for a bought part with every size that its families list, as typed
//! at a prompt of either unit: the part is of the prompt's system where one is
//! listed there, and what is asked offers lines that are answered. A bushing as
//! measured is never taken for a nominal size.

use fits_core::{Length, size::Unit, standards::bought::Family};
use fits_repl::{
    answer::{Answer, FitAnswer},
    problem::Problem,
    query::Units,
    session::Session,
};

fn asked(units: Units, line: &str) -> Result<Answer, Problem> {
    let mut session = Session::new();
    if units == Units::Inches {
        session.evaluate("units in").expect("a setting");
    }
    session.evaluate(line)
}

/// What stands between backquotes.
fn offered(text: &str) -> impl Iterator<Item = &str> {
    text.split('`').skip(1).step_by(2)
}

fn inches(size: Length) -> String {
    let trimmed = format!("{:.6}", size.millimetres() / 25.4);
    trimmed.trim_end_matches('0').trim_end_matches('.').to_owned()
}

#[test]
fn a_word_and_a_size_give_a_part_of_the_prompts_system_or_ask_among_such() {
    let mut words: Vec<&str> = Family::all().flat_map(Family::words).copied().collect();
    words.sort_unstable();
    words.dedup();
    let (mut answered, mut asks) = (0, 0);
    for word in words {
        let families = Family::called(word).expect(word);
        let mut sizes: Vec<Length> = families.iter().flat_map(|it| it.sizes()).collect();
        sizes.extend(
            ["0.1875in", "0.25in", "0.375in", "1in"].map(|it| it.parse::<Length>().unwrap()),
        );
        sizes.extend(["6mm", "20mm", "25mm"].map(|it| it.parse::<Length>().unwrap()));
        sizes.sort_unstable();
        sizes.dedup();
        for size in sizes {
            for units in [Units::Inches, Units::Millimetres] {
                let (text, unit) = match units {
                    Units::Inches => (inches(size), Unit::Inch),
                    Units::Millimetres => (format!("{}", size.millimetres()), Unit::Millimetre),
                };
                let line = format!("{word} {text}");
                let own: Vec<Family> = families
                    .iter()
                    .filter(|it| it.unit() == unit && it.part(size).is_ok())
                    .copied()
                    .collect();
                match asked(units, &line) {
                    Ok(Answer::Feature(found)) => {
                        answered += 1;
                        let is_own =
                            own.iter().any(|it| it.part(size).unwrap().limits == found.limits);
                        assert!(own.is_empty() || is_own, "{line} at {units:?}: {}", found.class);
                    }
                    Ok(_) => {}
                    Err(problem) => {
                        asks += 1;
                        let hint = problem.hint(&line);
                        let mut all = offered(&hint);
                        assert!(
                            all.all(|one| asked(units, one).is_ok()),
                            "{line} at {units:?}: {hint}"
                        );
                        // Each kind that it names is answered with this size.
                        if let Some((_, kinds)) = problem.message.split_once(" can mean: ") {
                            for kind in kinds.split("; ") {
                                let name = kind.split(" (").next().unwrap_or(kind);
                                let family = Family::named(name).expect(name);
                                assert!(own.is_empty() || own.contains(&family), "{line}: {kind}");
                                let line = format!("{name} {text}");
                                assert!(asked(units, &line).is_ok(), "{line} at {units:?}");
                            }
                        }
                    }
                }
            }
        }
    }
    assert!(answered > 300 && asks > 100, "{answered} {asks}");
}

fn in_hand(answer: &FitAnswer, read: Length) -> bool {
    answer.in_hand.is_some()
        && [&answer.hole, &answer.shaft]
            .iter()
            .any(|part| part.limits.lower() == read && part.limits.upper() == read)
}

#[test]
fn a_measured_bushing_is_answered_as_measured_or_asked_about() {
    let (mut answered, mut asks) = (0, 0);
    for units in [Units::Inches, Units::Millimetres] {
        // Off a nominal size by a tenth to a thou and a half, both ways.
        for (nominal, step) in match units {
            Units::Inches => [(1.125, 1e-4), (0.75, 1e-4), (0.5, 1e-4)],
            Units::Millimetres => [(26.0, 1e-3), (20.0, 1e-3), (12.0, 1e-3)],
        } {
            for off in [-15, -13, -3, 1, 2, 7, 13, 18] {
                let size = format!("{:.4}", nominal + f64::from(off) * step);
                let read: Length = match units {
                    Units::Inches => format!("{size}in"),
                    Units::Millimetres => format!("{size}mm"),
                }
                .parse()
                .unwrap();
                for form in [
                    "bushing SIZE press",
                    "bushing SIZE, press",
                    "bushing od SIZE press",
                    "bushing SIZE od, press",
                    "bushing id SIZE slip",
                    "bushing bore SIZE slip",
                    "housing SIZE press",
                    "housing bore SIZE press",
                    "bronze bushing SIZE press",
                    "cast bronze bushing SIZE, press",
                    "oilite SIZE press",
                    "sintered bushing SIZE, press",
                    "bushing SIZE H7",
                    "bushing od SIZE s6",
                    "bushing SIZE",
                    "press a SIZE bushing",
                ] {
                    let line = form.replace("SIZE", &size);
                    match asked(units, &line) {
                        Ok(Answer::Fit(fit)) => {
                            answered += 1;
                            assert!(in_hand(&fit, read), "{line}: {fit:?}");
                        }
                        Ok(answer) => panic!("{line}: {answer:?}"),
                        Err(problem) => {
                            asks += 1;
                            let hint = problem.hint(&line);
                            for one in offered(&hint) {
                                assert!(asked(units, one).is_ok(), "{line}: `{one}` of {hint}");
                            }
                        }
                    }
                }
            }
        }
    }
    assert!(answered > 100 && asks > 50, "{answered} {asks}");
}

#[test]
fn what_is_asked_offers_lines_that_work() {
    for (units, line) in [
        (Units::Millimetres, "bushing 20, press"),
        (Units::Millimetres, "bushing 20 press"),
        (Units::Millimetres, "bushing 20 od press"),
        (Units::Millimetres, "bushing 20 id press"),
        (Units::Millimetres, "bushing 3/4, press"),
        (Units::Inches, "bushing 3/4, press"),
        (Units::Inches, "bushing 3/4 press"),
        (Units::Inches, "bushing od 3/4 press"),
        (Units::Inches, "bushing id 3/4 press"),
        (Units::Inches, "bushing 20mm, press"),
        (Units::Millimetres, "cold drawn 20"),
        (Units::Millimetres, "cold drawn 20, slip"),
        (Units::Millimetres, "shaft keyway 6"),
        (Units::Millimetres, "hub keyway 6"),
    ] {
        if let Err(problem) = asked(units, line) {
            let hint = problem.hint(line);
            let lines: Vec<&str> = offered(&hint).collect();
            // Each drawn bar varies by more than a slip fit allows: none is offered.
            assert!(!lines.is_empty() || line.contains("slip"), "{line}: {hint}");
            assert!(!hint.ends_with(" as"), "{line}: {hint}");
            for one in lines {
                assert!(asked(units, one).is_ok(), "{line}: `{one}`");
            }
        }
    }
}

/// A bearing's own clearance is small: a word's press would take it up.
#[test]
fn a_bearing_is_never_pressed_by_a_word() {
    for line in [
        "bearing od 52.003, press",
        "bearing 52.003 press",
        "bearing outside 51.99..52.00, press",
        "bearing bore 24.995 press",
        "bearing od 52 press",
    ] {
        let problem = asked(Units::Millimetres, line).expect_err(line);
        assert!(problem.hint(line).contains("`seat "), "{line}: {}", problem.hint(line));
    }
}
