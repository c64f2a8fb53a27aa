//! What holds for readings of any part, with any instrument, at any
//! temperature, as asked and answered.

use fits_core::{shop::Verdict, standards::instruments::Instrument};
use fits_repl::{
    answer::{Answer, ReadingAnswer},
    render::{Colour, json, text::Text},
    session::Session,
};
use proptest::prelude::*;

fn reading(query: &str) -> Option<Box<ReadingAnswer>> {
    match Session::new().evaluate(query) {
        Ok(Answer::Reading(answer)) => Some(answer),
        Ok(other) => panic!("{query}: {other:?}"),
        Err(_) => None,
    }
}

fn instrument() -> impl Strategy<Value = String> {
    let names: Vec<String> = Instrument::all()
        .flat_map(|one| std::iter::once(one.name()).chain(one.aliases()))
        .map(str::to_owned)
        .collect();
    prop::sample::select(names)
}

fn read_at(places: &[Vec<u32>]) -> String {
    let place = |place: &Vec<u32>| {
        place
            .iter()
            .map(|off| format!("{:.3}", 19.95 + f64::from(*off) / 1000.0))
            .collect::<Vec<_>>()
            .join(" ")
    };
    places.iter().map(place).collect::<Vec<_>>().join("/")
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn any_reading_is_judged_or_refused(
        class in prop::sample::select(vec!["H7", "H11", "g6", "h9", "JS5"]),
        places in prop::collection::vec(prop::collection::vec(0_u32..120, 1..5), 1..4),
        instrument in instrument(),
        celsius in prop::option::of(-80_i32..320),
    ) {
        let warm = celsius.map_or(String::new(), |celsius| {
            let part = if class.starts_with(|c: char| c.is_uppercase()) { "hole" } else { "shaft" };
            format!(" at {celsius}C, {part} aluminium")
        });
        let query = format!("20 {class} = {} with {instrument}{warm}", read_at(&places));
        let Some(answer) = reading(&query) else { return Ok(()) };
        let figures = &answer.reading;
        let measured = figures.measured.as_deref().expect("an instrument was named");
        let count: usize = places.iter().map(Vec::len).sum();
        prop_assert_eq!(measured.readings as usize, count);
        let good = figures.probability_good.expect("an instrument was named");
        let over = measured.probability_over.expect("an instrument was named");
        let under = measured.probability_under.expect("an instrument was named");
        for chance in [good, over, under] {
            prop_assert!((0.0..=1.0).contains(&chance), "{query}: {chance}");
        }
        // Something is so of every part.
        prop_assert!(good + over + under >= 1.0 - 1e-9, "{query}");
        match figures.verdict {
            Verdict::Good => prop_assert!(good >= 0.95, "{query}"),
            Verdict::Over => prop_assert!(over >= 0.95, "{query}"),
            Verdict::CutMore => prop_assert!(under >= 0.95, "{query}"),
            Verdict::TooClose => {}
        }
        let twice = measured.standard_uncertainty_mm.expect("named").0.checked_mul(2).unwrap();
        prop_assert_eq!(figures.uncertainty_mm.expect("named").0, twice);
        prop_assert_eq!(measured.warm.is_some(), celsius.is_some());
        // It can be shown and read back.
        let mut session = Session::new();
        let answer = session.evaluate(&query);
        let mut out = Vec::new();
        json::object(&mut out, None, &query, &answer);
        let value: serde_json::Value = serde_json::from_slice(&out).expect("JSON");
        prop_assert_eq!(value["answer"].as_str(), Some("reading"));
        let text = Text { settings: session.shown(), colour: Colour::Off };
        let text = text.answer(&answer.expect("answered"));
        prop_assert!(text.lines().count() <= 23, "{text}");
        prop_assert!(text.lines().all(|line| line.chars().count() <= 80), "{text}");
    }

    /// More of the same readings: the mean stays, the uncertainty does not grow.
    #[test]
    fn more_readings_are_no_worse(off in 0_u32..60, count in 1_usize..6) {
        let query = |count| {
            format!("20 H7 = {} with bore gauge", read_at(&[vec![off; count]]))
        };
        let (few, many) = (reading(&query(count)).unwrap(), reading(&query(count + 3)).unwrap());
        prop_assert_eq!(few.reading.reading_mm, many.reading.reading_mm);
        prop_assert!(many.reading.uncertainty_mm.unwrap().0 < few.reading.uncertainty_mm.unwrap().0);
    }

    /// In inches or millimetres, in Celsius or Fahrenheit, it is the same part.
    #[test]
    fn units_change_nothing(off in 0_i32..100, celsius in -18_i32..95) {
        let tenths = 7_490 + off;
        let fahrenheit = f64::from(celsius * 18 + 320) / 10.0;
        let inches = format!(
            "3/4in H8 = 0.{tenths}in with bore gauge at {fahrenheit}F, hole brass"
        );
        let metric = format!(
            "19.05mm H8 = {}mm with bore gauge at {celsius}C, hole brass",
            f64::from(tenths * 254) / 100_000.0
        );
        let (inches, metric) = (reading(&inches).unwrap(), reading(&metric).unwrap());
        prop_assert_eq!(inches.reading.verdict, metric.reading.verdict);
        let off = inches.reading.at_20().checked_sub(metric.reading.at_20()).unwrap();
        // Degrees are not exact: 0.1 nm either way.
        prop_assert!(off.tenth_nanometres().abs() <= 1);
    }
}
