//! Bought parts and words whose size is thought in inches, as they are typed:
//! the inch part's family comes first, a size that no list has is asked about.

use fits_core::{
    size::Unit,
    standards::bought::{BoughtPart, Family},
};
use fits_repl::{answer::Answer, problem::Problem, session::Session};

fn asked(lines: &[&str]) -> Result<Answer, Problem> {
    let mut session = Session::new();
    let (last, before) = lines.split_last().expect("a line");
    for line in before {
        session.evaluate(line).unwrap_or_else(|problem| panic!("{line}: {}", problem.message));
    }
    session.evaluate(last)
}

/// Every family's own name, its standard sizes and one of them at a prompt.
#[test]
fn every_familys_own_name_is_typed_with_every_size_it_lists() {
    let mut typed = 0;
    for family in Family::all().filter(|family| !family.name().contains(',')) {
        for size in family.sizes() {
            let text = match family.unit() {
                Unit::Inch => format!("{}/1270000000in", size.tenth_nanometres() * 5),
                _ => size.to_string(),
            };
            let Ok(part) = family.part(size) else { continue };
            let line = format!("{} {text}", family.name());
            let answer = asked(&[&line]).unwrap_or_else(|problem| {
                panic!("{line}: {}", problem.message);
            });
            let Answer::Feature(feature) = answer else { panic!("{line}: {answer:?}") };
            assert_eq!(feature.limits, part.limits, "{line}");
            typed += 1;
        }
    }
    assert!(typed > 100, "{typed}");
}

#[test]
fn an_inch_size_asks_among_inch_parts_alone() {
    for (word, size) in [("key", "3/16in"), ("tube", "1in"), ("drill rod", "3/8in")] {
        let nominal = size.parse().expect(size);
        match BoughtPart::find_in(word, nominal, Unit::Inch) {
            Ok(part) => assert_eq!(part.family.unit(), Unit::Inch, "{word}"),
            Err(error) => {
                assert!(!error.choices().is_empty(), "{word}: {error}");
                for choice in error.choices() {
                    let family = Family::named(choice).expect("a family");
                    assert_eq!(family.unit(), Unit::Inch, "{word}: {choice}");
                }
            }
        }
        // What the prompt offers is answered there, with and without the unit.
        let bare = size.trim_end_matches("in");
        let line = format!("{word} {bare}");
        if let Err(problem) = asked(&["units in", &line]) {
            let hint = problem.hint(&line);
            let offered = hint.split('`').nth(1).unwrap_or_else(|| panic!("{line}: {hint}"));
            assert!(asked(&["units in", offered]).is_ok(), "{offered}");
        }
    }
}

#[test]
fn a_name_or_size_that_no_list_has_is_asked_about_before_its_class() {
    for (line, at) in [
        ("bushing od 26.013 H7", "26.013"),
        ("housing 26.013 H7", "housing"),
        ("bushing od 1.1268in H7", "1.1268in"),
    ] {
        let problem = asked(&[line]).expect_err(line);
        assert_eq!(line.get(problem.at.clone()), Some(at), "{line}: {}", problem.message);
    }
}

/// The angle of a compound counted from the bed is the other part of a right
/// angle: 29.5 from the cross slide is 60.5 (geometry).
#[test]
fn a_compound_counted_from_the_bed_is_told_the_other_angle() {
    let line = "3/8-16 UNC cut compound at 60.5 deg";
    let problem = asked(&[line]).expect_err(line);
    assert!(
        problem.hint(line).contains("60.5 from the bed is 29.5 here"),
        "{}",
        problem.hint(line)
    );
    assert!(asked(&["3/8-16 UNC cut compound at 29.5 deg"]).is_ok());
    // 45 is 45 from either: nothing is said of the bed.
    let line = "3/8-16 UNC cut compound at 45";
    let problem = asked(&[line]).expect_err(line);
    assert!(!problem.hint(line).contains("from the bed"), "{}", problem.hint(line));
}

/// Common practice, no source: a tool is held within about four diameters.
#[test]
fn a_rehearsal_with_a_long_overhang_is_cautioned() {
    for (times, told) in [("4", 0), ("5", 1)] {
        for line in ["20 H7 from 19.6 with bore gauge", "shaft 20 g6 from 20.4 with micrometer"] {
            let line = format!("rehearse {line}, overhang {times}, runs 1");
            let Ok(Answer::Rehearsal(answer)) = asked(&[&line]) else { panic!("{line}") };
            assert_eq!(answer.cautions.len(), told, "{line}");
        }
    }
}
