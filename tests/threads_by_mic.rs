//! Threads by a micrometer and a pitch gauge: every listed thread is found by the
//! middle of its own crest; two are held to printed limits; wire inserts to a
//! forming-tap maker's minor diameters (Yamawa, wire insert forming taps, expected
//! minor diameter).

use fits_checks::{ask, listed_threads, near, rows, takes};
use fits_core::standards::thread::{Form, Side, Thread, by_mic};
use fits_repl::session::Session;
use serde_json::Value;

fn answer(query: &str) -> Value {
    takes(&mut Session::new(), query)
}

fn names(answer: &Value) -> Vec<String> {
    let threads = answer["threads"].as_array().expect("threads");
    threads.iter().map(|thread| thread["name"].as_str().unwrap().to_owned()).collect()
}

#[test]
fn every_listed_thread_is_found_by_its_own_crest() {
    let mut count = 0;
    // One in three: the search walks every table.
    for name in listed_threads().iter().step_by(3) {
        let thread: Thread = name.parse().unwrap();
        if matches!(thread.form(), Form::StubAcme | Form::PipeRp) {
            continue;
        }
        let Ok(sizes) = thread.external(None) else { continue };
        let (Some(least), Some(most)) = (sizes.major.min, sizes.major.max) else { continue };
        let middle = least.checked_add(most.checked_sub(least).unwrap().half()).unwrap();
        let found = by_mic(middle, thread.pitch(), Side::External)
            .unwrap_or_else(|error| panic!("{name}: {error}"));
        let own = found.iter().find(|one| one.name == thread.to_string());
        let own = own.unwrap_or_else(|| panic!("{name}: {:?}", found.iter().map(|it| &it.name)));
        assert_eq!(own.outside, fits_core::Length::ZERO, "{name}");
        assert_eq!((own.crest.lower(), own.crest.upper()), (least, most), "{name}");
        count += 1;
    }
    assert!(count > 300, "{count}");
}

#[test]
fn the_likeliest_comes_first_with_what_a_new_one_measures() {
    let worn = answer("thread 0.308in 18 tpi");
    assert_eq!(names(&worn)[..2], ["5/16-18 UNC", "5/16-18 BSW"]);
    // ASME B1.1, 5/16-18 UNC-2A: major diameter 0.3113 to 0.3026 in.
    near(worn["threads"][0]["crest_min_mm"].as_f64().unwrap(), 0.3026 * 25.4, 1e-9);
    near(worn["threads"][0]["crest_max_mm"].as_f64().unwrap(), 0.3113 * 25.4, 1e-9);
    let metric = answer("thread 7.85mm pitch 1.25mm");
    assert_eq!(names(&metric)[0], "M8x1.25");
    // ISO 965-2, M8 6g: major diameter 7.972 to 7.760 mm.
    assert_eq!(metric["threads"][0]["crest_max_mm"], 7.972);
    assert_eq!(metric["threads"][0]["crest_min_mm"], 7.76);
    // 20 turns an inch lie in 1.25 mm nearly as well: named after it, and said.
    let other = &metric["threads"][1];
    assert_eq!(other["name"], "5/16-20 UN");
    near(other["pitch_off_percent"].as_f64().unwrap(), 1.6, 1e-9);
    // Turned down, it is still found, and by how much is said.
    let turned = answer("thread 0.300in 18 tpi");
    assert_eq!(names(&turned)[0], "5/16-18 UNC");
    near(turned["threads"][0]["outside_mm"].as_f64().unwrap(), -0.0026 * 25.4, 1e-9);
}

#[test]
fn pipe_threads_and_model_engineers_are_among_them() {
    for (query, name) in [
        ("thread 13.1mm 19 tpi", "G1/4"),
        ("thread 13.1mm 19 tpi", "R1/4"),
        ("thread 0.54in 18 tpi", "1/4 NPT"),
        ("thread 0.248in 40 tpi", "1/4 x 40 ME"),
        ("thread 0.374in 32 tpi", "3/8 x 32 ME"),
        ("thread 4.65mm pitch 0.81mm", "2 BA"),
        ("thread 19.8mm pitch 4mm", "Tr20x4"),
        ("thread 0.498in 10 tpi", "1/2-10 Acme"),
        ("thread nut 0.26in 18 tpi", "5/16-18 UNC"),
    ] {
        let found = names(&answer(query));
        assert!(found.iter().any(|it| it == name), "{query}: {found:?}");
    }
    // Both sources of each model engineers' row: the drills keep their order.
    for row in rows("data/threads/model_engineer.csv") {
        let (first, second): (f64, f64) = (row.get("tap_mm"), row.get("second_tap_in"));
        assert!(second * 25.4 < first + 0.1, "{row}");
    }
}

#[test]
fn an_insert_s_bore_takes_in_the_minor_diameters_of_a_maker() {
    for (thread, minor) in [
        ("M3", 3.18),
        ("M4", 4.24),
        ("M5", 5.27),
        ("M6", 6.33),
        ("M8", 8.40),
        ("M10", 10.47),
        ("M12", 12.54),
    ] {
        let hole = answer(&format!("insert {thread}"));
        let at = |name: &str| hole[name].as_f64().unwrap();
        assert!((at("bore_min_mm")..=at("bore_max_mm")).contains(&minor), "{thread}: {hole}");
        let drill = hole["drill_mm"].as_f64().expect("a drill");
        assert!((at("bore_min_mm")..=at("bore_max_mm")).contains(&drill), "{thread}: {hole}");
        assert_eq!(hole["known"], "memory");
    }
}

#[test]
fn a_square_thread_is_half_its_pitch_deep_and_no_standard_limits_it() {
    let old = answer("thread square 1in 5 tpi");
    assert_eq!((&old["half_pitch_mm"], &old["minor_mm"]), (&2.54.into(), &20.32.into()));
    assert_eq!(old["has_limits"], false);
    assert_eq!(answer("square thread 1in 5 tpi")["minor_mm"], 20.32);
}

#[test]
fn phrases_and_what_is_wrong() {
    for (phrase, plain) in [
        ("thread .308 18 tpi", "thread 0.308in 18 tpi"),
        ("18 tpi thread .308", "thread 0.308in 18 tpi"),
        ("which thread is .308 18 tpi", "thread 0.308in 18 tpi"),
        ("7.85 1.25", "thread 7.85mm pitch 1.25mm"),
    ] {
        assert_eq!(answer(plain)["threads"], answer(phrase)["threads"], "{phrase}");
    }
    for (query, at) in [
        ("thread nut 0.308in", [18, 18]),
        ("thread 10mm 18 tpi pitch 1mm", [28, 28]),
        ("thread 10mm pitch 9mm", [6, 21]),
        ("thread square 1in 1 tpi", [6, 23]),
        ("insert", [6, 6]),
        ("insert Tr20x4", [7, 13]),
    ] {
        let error = ask(&mut Session::new(), query)["error"].clone();
        assert_eq!(error["at"], serde_json::json!(at), "{query}: {error}");
        for hint in error["hint"].as_str().unwrap().split('`').skip(1).step_by(2) {
            takes(&mut Session::new(), hint);
        }
    }
}
