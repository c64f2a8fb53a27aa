//! A thread by the letters of its series: ASME B1.1 gives one size and pitch
//! one set of limits, whatever it is called.

use fits_checks::{listed_threads, rows};
use fits_core::standards::thread::{Class, Form, Series, Side, Thread};
use fits_repl::session::Session;

/// Every figure of an answer, without what names the thread.
fn figures(query: &str) -> Option<serde_json::Value> {
    fn strip(value: &mut serde_json::Value) {
        match value {
            serde_json::Value::Object(map) => {
                for name in ["query", "designation", "series", "assumed", "known", "notes"] {
                    map.remove(name);
                }
                map.values_mut().for_each(strip);
            }
            serde_json::Value::Array(list) => list.iter_mut().for_each(strip),
            _ => {}
        }
    }
    let answer = Session::new().evaluate(query).ok()?;
    let mut value = serde_json::to_value(&answer).unwrap();
    strip(&mut value);
    Some(value)
}

#[test]
fn every_letters_that_a_unified_size_takes_give_the_same_figures() {
    let names: Vec<String> = listed_threads()
        .into_iter()
        .filter(|name| name.parse::<Thread>().is_ok_and(|it| it.form() == Form::Unified))
        .collect();
    assert!(names.len() > 300, "{}", names.len());
    let mut graded = 0;
    for name in &names {
        let plain: Thread = name.parse().unwrap();
        for letters in ["UN", "UNC", "UNF", "UNEF", "UNS"] {
            let Ok(said) = format!("{name} {letters}").parse::<Thread>() else {
                // Other letters than its own are refused, UN never.
                assert_ne!(letters, "UN", "{name}");
                continue;
            };
            for class in ["1A", "2A", "3A", "1B", "2B", "3B"] {
                let class = Class::read(class).unwrap();
                let side =
                    if class.to_string().ends_with('A') { Side::External } else { Side::Internal };
                let limits = |thread: &Thread| thread.sizes(side, Some(class), None).unwrap();
                assert_eq!(limits(&said), limits(&plain), "{name} {letters} {class}");
            }
            assert_eq!(said.stress_area(), plain.stress_area(), "{name} {letters}");
            graded += usize::from(letters == "UN" && plain.series() != Series::Constant);
        }
    }
    assert!(graded > 80, "{graded}");
    // The answers too, of every fifth size: limits, drills, wires, passes.
    for name in names.iter().step_by(5) {
        for ask in ["", " tap", " wires", " cut", " clearance"] {
            let plain = figures(&format!("{name}{ask}"));
            assert_eq!(figures(&format!("{name} UN{ask}")), plain, "{name}{ask}");
            assert!(plain.is_some() || ask == " clearance", "{name}{ask}");
        }
    }
}

/// The tables read print a size, pitch and class once: no row is there by two names.
#[test]
fn published_tables_print_a_size_and_pitch_once() {
    let mut seen = std::collections::BTreeMap::new();
    for row in rows("tests/published/unified_limits.csv") {
        let Some((name, letters)) = row.text("designation").rsplit_once(' ') else { continue };
        let letters = letters.replace("UNR", "UN");
        let first = seen.entry(name.to_owned()).or_insert_with(|| letters.clone());
        assert_eq!(*first, letters, "{row}: by two names");
    }
    assert!(seen.len() >= 70, "{}", seen.len());
}

#[test]
fn un_of_a_graded_pitch_says_so_in_the_answer_and_in_why() {
    let mut session = Session::new();
    let answer = session.evaluate("1-12 UN").unwrap();
    let (name, reasons) = answer.thread_reasons().unwrap();
    assert!(name.assumed.iter().any(|it| it.contains("UNF: one set of limits")), "{name:?}");
    assert!(reasons.iter().any(|it| it.value == "those of 1-12 UNF"), "{reasons:?}");
    let plain = session.evaluate("1-12 UNF").unwrap();
    let (name, _) = plain.thread_reasons().unwrap();
    assert!(!name.assumed.iter().any(|it| it.contains("one set")), "{name:?}");
}

#[test]
fn another_graded_series_than_the_threads_own_is_still_refused() {
    for wrong in ["1/2-13 UNF", "1/2-20 UNC"] {
        assert!(wrong.parse::<Thread>().is_err(), "{wrong}");
    }
}
