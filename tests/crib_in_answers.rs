//! What the crib and the settings change in answers: tap drills, gauge pins,
//! instruments and materials of one's own, and why each was chosen.

use fits_checks::{ask, takes};
use fits_repl::{
    render::{Colour, text::Text},
    session::{Logs, Session},
};
use serde_json::Value;

fn shop(tools: &[&str]) -> Session {
    let mut session = Session::new();
    for tool in tools {
        takes(&mut session, &format!("crib add {tool}"));
    }
    session
}

/// The words of an answer; they fit the screen.
#[track_caller]
fn words(session: &mut Session, query: &str) -> String {
    let answer = session.evaluate(query).unwrap_or_else(|problem| panic!("{query}: {problem:?}"));
    let shown = Text { settings: session.shown(), colour: Colour::Off }.answer(&answer);
    for line in shown.lines() {
        assert!(line.chars().count() <= 80, "{query}: {line}");
    }
    if !query.starts_with("why") {
        assert!(shown.lines().count() <= 23, "{query}: {shown}");
    }
    shown
}

/// One line for all: as a screen wraps it is no matter.
fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[track_caller]
fn says(session: &mut Session, query: &str, wanted: &[&str]) {
    let shown = flat(&words(session, query));
    for wanted in wanted {
        assert!(shown.contains(wanted), "{query}: no `{wanted}` in {shown}");
    }
}

/// A drawer as many have it.
fn drawer() -> Session {
    shop(&["drill set metric 1..13 step 0.5", "tap M10x1.5", "tap 1/4-20"])
}

#[test]
fn a_tap_drill_comes_from_the_crib_where_it_keeps_the_limits() {
    let mut own = drawer();
    // 8.5 mm keeps M10x1.5-6H, and is what the table of all drills gives.
    let tap = takes(&mut own, "M10 tap");
    assert_eq!((&tap["drill"]["name"], &tap["drill_in_crib"]), (&"8.5 mm".into(), &true.into()));
    assert_eq!(tap.get("best_drill"), None);
    assert_eq!(tap["tap_in_crib"], true);
    says(&mut own, "M10 tap", &["from the crib", "tap M10x1.5 is in the crib"]);
    // 10.2 mm is the usual one for M12; 10.5 is outside 6H (10.106 to 10.441).
    let tap = takes(&mut own, "M12 tap");
    assert_ne!(tap["drill"]["name"], "10.5 mm");
    assert_eq!(
        (&tap["drill_in_crib"], &tap["nearest_in_crib"]),
        (&false.into(), &"10.5 mm".into())
    );
    assert_eq!(tap["tap_in_crib"], false);
    says(
        &mut own,
        "M12 tap",
        &["not in the crib, whose nearest, 10.5 mm, is not as good", "no tap M12x1.75 in the crib"],
    );
    // Another drill than the table's that keeps the limits goes first.
    let mut odd = shop(&["drill 8.6"]);
    let standard = takes(&mut Session::new(), "M10 tap")["drill"]["name"].clone();
    let tap = takes(&mut odd, "M10 tap");
    assert_eq!(tap["drill"]["name"], "8.6 mm");
    assert_eq!(tap["best_drill"], standard);
    assert_eq!(tap["alternatives"][0]["drill"]["name"], standard);
    assert_eq!(tap.get("tap_in_crib"), None);
    says(&mut odd, "why M10 tap", &["tap drill 8.6 mm", "the best of the crib; of all, "]);
    // A percent asked for: near it or not.
    assert_eq!(takes(&mut own, "M10 tap 75%")["drill_in_crib"], true);
    let mut far = shop(&["drill 9.1"]);
    let tap = takes(&mut far, "M10 tap 75%");
    assert_eq!((&tap["drill_in_crib"], &tap["nearest_in_crib"]), (&false.into(), &"9.1 mm".into()));
    says(&mut far, "why M10 tap 75%", &["drill 9.1 mm of the crib, not taken"]);
    // None that leaves a thread at all.
    assert_eq!(takes(&mut shop(&["drill 5"]), "M10 tap").get("nearest_in_crib"), None);
    // A drill in hand is what was asked about; an empty crib says nothing.
    assert_eq!(takes(&mut own, "M10 tap 8.6").get("drill_in_crib"), None);
    assert_eq!(takes(&mut Session::new(), "M10 tap").get("drill_in_crib"), None);
}

#[test]
fn a_thread_names_the_drill_and_the_tap_of_the_crib() {
    let mut own = drawer();
    let thread = takes(&mut own, "M10");
    assert_eq!(thread["tap"]["drill_in_crib"], true, "{thread}");
    assert!(thread["notes"].to_string().contains("tap M10x1.5 is in the crib"), "{thread}");
    assert!(takes(&mut own, "1/4-20")["notes"].to_string().contains("is in the crib"));
    // A screw alone is not tapped.
    assert_eq!(takes(&mut own, "M10-6g").get("notes"), None);
    words(&mut own, "M10");
}

#[test]
fn gauge_pins_that_judge_a_hole() {
    // 20 H7 is 20.000 to 20.021 mm: pins to 0.021 mm off its limits serve.
    let mut own =
        shop(&["pin 19.97", "pin 19.99", "pin 20", "pin 20.01", "pin 20.03", "pin 20.04"]);
    for query in ["20 H7", "ream 20 H7", "bore 20 H7 from 19.6", "20 H7/g6"] {
        let answer = takes(&mut own, query);
        let places = ["/pins", "/hole/pins", "/feature/pins"];
        let pins = places.into_iter().find_map(|place| answer.pointer(place));
        let pins = pins.unwrap_or_else(|| panic!("{query}: {answer}"));
        assert_eq!(pins["goes_in"]["mm"], 20.0, "{query}: {answer}");
        assert_eq!(pins["goes_in"]["off_mm"], 0.0);
        assert_eq!(pins["stays_out"]["mm"], 20.03, "{query}: {answer}");
        assert_eq!(pins["stays_out"]["off_mm"], 0.009);
        says(&mut own, query, &["pins 20.000 mm must go in; 20.030 mm must not"]);
    }
    says(
        &mut own,
        "why 20 H7",
        &["gauge pin that must go in = 20 mm (the largest from 20 mm down to 0.021 mm under it)"],
    );
    // Only one near enough; none at all; a shaft.
    let one = takes(&mut own, "20.03 H7");
    assert_eq!(
        (&one["pins"]["goes_in"]["mm"], &one["pins"]["stays_out"]),
        (&20.03.into(), &Value::Null)
    );
    assert_eq!(takes(&mut own, "25 H7").get("pins"), None);
    assert_eq!(takes(&mut own, "20 g6").get("pins"), None);
    // A tight hole: 5 µm at the least.
    let tight = takes(&mut shop(&["pin 19.996"]), "20 H4");
    assert_eq!(tight["pins"]["goes_in"]["mm"], 19.996);
}

#[test]
fn an_instrument_of_the_crib_reads_parts() {
    let mut own = shop(&["instrument my gauge repeat 0.003 bias 0.004"]);
    let reading = takes(&mut own, "20 H7 = 20.013 with my gauge");
    assert_eq!(reading["instrument"], "my gauge");
    // 3 and 4 make 5; twice that is told.
    assert_eq!(reading["standard_uncertainty_mm"], 0.005);
    assert_eq!(reading["uncertainty_mm"], 0.01);
    assert_eq!(reading.get("assumed"), None);
    says(
        &mut own,
        "why 20 H7 = 20.013 with my gauge",
        &["my gauge = repeat 0.003 mm, bias 0.004 mm"],
    );
    let odds = takes(&mut own, "rehearse 20 H7 from 19.6 with my gauge, runs 20");
    assert_eq!((&odds["repeat_mm"], &odds["bias_mm"]), (&0.003.into(), &0.004.into()));
    // A slip in its name.
    let slip = ask(&mut own, "20 H7 = 20.013 with my guage");
    assert_eq!(
        slip["error"]["hint"], "nearest in the crib: `20 H7 = 20.013 with my gauge`",
        "{slip}"
    );
}

#[test]
fn the_setting_is_the_gauge_where_none_is_named() {
    let mut session = Session::new();
    let plain = takes(&mut session, "20 H7 = 20.013");
    assert_eq!(plain["uncertainty_mm"], Value::Null);
    takes(&mut session, "instrument bore gauge");
    let assumed = takes(&mut session, "20 H7 = 20.013");
    let named = takes(&mut session, "20 H7 = 20.013 with bore gauge");
    assert_eq!(assumed["uncertainty_mm"], named["uncertainty_mm"]);
    assert!(assumed["uncertainty_mm"].is_number(), "{assumed}");
    assert_eq!(assumed["assumed"][0], "no instrument named: bore gauge, the setting");
    says(&mut session, "20 H7 = 20.013", &["no instrument named: bore gauge, the setting"]);
    says(&mut session, "why", &["bore gauge, the same in each reading"]);
    // It measures no shaft, and of a size of no kind nothing is known.
    assert_eq!(takes(&mut session, "20 g6 = 19.985")["uncertainty_mm"], Value::Null);
    assert_eq!(takes(&mut session, "20 ±0.05 = 20.01")["uncertainty_mm"], Value::Null);
    let pair = takes(&mut session, "20 H7/g6 = 20.013/19.985");
    assert!(pair["hole"]["uncertainty_mm"].is_number(), "{pair}");
    assert_eq!(pair["shaft"]["uncertainty_mm"], Value::Null);
    words(&mut session, "20 H7/g6 = 20.013/19.985");
    // A rehearsal and a log.
    let odds = takes(&mut session, "rehearse 20 H7 from 19.6, runs 20");
    assert_eq!(odds["instrument"], "bore gauge");
    assert_eq!(odds["assumed"][0], "no instrument named: bore gauge, the setting");
    assert!(ask(&mut session, "rehearse 20 g6 from 20.5")["error"].is_object());
    let plan = takes(&mut session, "bore 20 H7 from 19.6");
    assert_eq!(plan["notes"][0], "no instrument named: bore gauge, the setting");
}

#[test]
fn the_division_of_the_dial_is_that_of_plans_logs_and_rehearsals() {
    let mut session = Session::new();
    takes(&mut session, "dial graduation 0.05mm");
    let odds = takes(&mut session, "rehearse 20 H7 from 19.6 with bore gauge, runs 20");
    assert_eq!(odds["step_mm"], 0.05);
    let plan = takes(&mut session, "bore 20 H7 from 19.6");
    assert_eq!(plan["log"]["step_mm"], 0.05);
    says(
        &mut session,
        "rehearse 20 H7 from 19.6 with bore gauge, runs 20",
        &["dial steps 0.050 mm"],
    );
}

#[test]
fn materials_of_the_crib_grow_as_their_figures_say() {
    let mut own = shop(&["material odd bronze modulus 105GPa poisson 0.34 expansion 20"]);
    let mut told = Session::new();
    // 20.013 mm, 11 K warm: 20 less the gauge's own is what it is large by.
    let reading = takes(&mut own, "20 H7 = 20.013 at 30C, hole odd bronze");
    assert_eq!(reading["material"], "odd bronze");
    // 20.013 × 20e-6 × 10 = 0.0040026 mm, less 0.8 µm in a thousand.
    let growth = reading["growth_mm"].as_f64().expect("a growth");
    assert!((growth - 0.004).abs() < 0.000_05, "{growth}");
    let warm = takes(&mut own, "20 H7/g6 warm 60C, hole odd bronze, shaft steel");
    assert_eq!(warm["hole"]["expansion_per_c_e6"], 20.0);
    let bushing = takes(&mut own, "bushing 20 od 26 long 20, hub steel, odd bronze");
    let bronze = takes(&mut told, "bushing 20 od 26 long 20, hub steel, bronze");
    assert_eq!(bushing["material"], "odd bronze");
    assert_ne!(bushing["pressure_mpa"], bronze["pressure_mpa"]);
    assert_eq!(takes(&mut own, "M10 tap, hub odd bronze")["answer"], "tap");
    let slip = ask(&mut own, "20 H7/g6 warm 60C, hole odd bronce, shaft steel");
    assert!(slip["error"]["hint"].to_string().contains("nearest in the crib"), "{slip}");
}

#[test]
fn the_setting_is_the_material_where_none_is_named() {
    let mut session = Session::new();
    takes(&mut session, "material aluminium");
    let named = "aluminium 6061-T6";
    let reading = takes(&mut session, "20 H7 = 20.013 at 31C");
    assert_eq!(reading["material"], named);
    assert_eq!(reading["assumed"][0], format!("hole taken as {named}, the setting"));
    let warm = takes(&mut session, "20 H7/g6 warm 60C, shaft steel");
    assert_eq!(warm["hole"]["material"], named);
    assert_eq!(warm["notes"][0], format!("hole taken as {named}, the setting"));
    assert_eq!(warm["shaft"]["material"], "steel");
    let bushing = takes(&mut session, "bushing 20 od 26 long 20, bronze");
    assert_eq!(bushing["housing_material"], named);
    assert_eq!(bushing["notes"][0], format!("housing taken as {named}, the setting"));
    let joint = takes(&mut session, "assemble 20 H7/s6, hub od 40, shaft steel");
    assert!(joint["notes"].to_string().contains(&format!("hub taken as {named}")), "{joint}");
    let tap = takes(&mut session, "M10 tap");
    assert!(tap["advised"]["of"].to_string().contains("aluminium"), "{tap}");
    assert!(tap["assumed"].to_string().contains(&format!("{named}, the setting")), "{tap}");
    let odds = takes(&mut session, "rehearse 20 H7 from 19.6 with bore gauge, runs 20");
    assert_eq!(odds["assumed"][0], format!("hole taken as {named}, the setting"));
    // The settings of the answer explain it, whatever they are by now.
    takes(&mut session, "20 H7 = 20.013 at 31C");
    takes(&mut session, "material brass");
    says(&mut session, "why", &["aluminium 6061-T6"]);
}

#[test]
fn what_is_cut_changes_what_a_plan_expects() {
    let scatter =
        |query: &str| takes(&mut Session::new(), query)["scatter_mm"].as_f64().expect("a scatter");
    let iron = scatter("rehearse 52 N7 from 51.6 with bore gauge, hole cast iron, runs 20");
    let plain = scatter("rehearse 52 N7 from 51.6 with bore gauge, runs 20");
    assert!(iron > plain, "{iron} {plain}");
    let odds = |query: &str| takes(&mut Session::new(), query)["next"].clone();
    let named = odds("bore 52 N7 from 51.6 with bore gauge, hole cast iron");
    assert_ne!(named, odds("bore 52 N7 from 51.6 with bore gauge"));
    assert_ne!(
        odds("turn 20 g6 from 20.5 with micrometer, shaft stainless"),
        odds("turn 20 g6 from 20.5 with micrometer")
    );
    // As the setting does.
    let mut set = Session::new();
    takes(&mut set, "material cast iron");
    assert_eq!(takes(&mut set, "bore 52 N7 from 51.6 with bore gauge")["next"], named);
    // A material of the crib without a modulus is cut all the same.
    let mut own = shop(&["material mystery yield 100MPa"]);
    takes(&mut own, "bore 20 H7 from 19.6, hole mystery");
    for (query, message) in [
        ("turn 20 g6 from 21, hole brass", "a shaft is cut, and what the hole is of was said"),
        ("bore 20 H7 from 19.6, shaft brass", "a hole is cut, and what the shaft is of was said"),
        ("bore 20 H7, hole brass", "what it is made of counts where a plan says where the work is"),
        ("ream 20 H7, hole brass", "what it is made of counts where a plan says where the work is"),
        ("bore 20 H7 from 19.6, hole bras", "no material is called bras"),
    ] {
        assert_eq!(ask(&mut Session::new(), query)["error"]["message"], message, "{query}");
    }
}

#[test]
fn why_says_which_tool_of_which_file() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("crib.toml");
    let mut session = Session::new();
    assert!(session.use_crib(file.clone()).is_empty());
    for tool in ["reamer 20 cuts 20.012", "drill 19.6", "drill 18.5", "pin 20"] {
        takes(&mut session, &format!("crib add {tool}"));
    }
    let why = takes(&mut session, "why 20 H7");
    let figures = why["figures"].as_array().expect("figures");
    let of = |name: &str| {
        let found = figures.iter().find(|figure| figure["figure"] == name);
        found.unwrap_or_else(|| panic!("no {name}: {why}"))
    };
    for (name, value, rule) in [
        ("reamer of the crib", "20 mm, cuts 20.012 mm", "lies in 20 mm to 20.021 mm"),
        ("drill of the crib before the reamer", "19.6 mm, 19.6 mm", "fitting stock"),
        ("drill before boring", "18.5 mm, 18.5 mm", "the largest of the crib in "),
        ("gauge pin that must go in", "20 mm", "down to 0.021 mm under it"),
    ] {
        let figure = of(name);
        assert_eq!(figure["value"], value, "{figure}");
        assert!(figure["rule"].to_string().contains(rule), "{figure}");
        let source = figure["source"].as_str().expect("a source");
        assert!(source.starts_with("the crib, ") && source.ends_with("crib.toml"), "{figure}");
    }
    // Where none lands.
    let mut other = shop(&["reamer 20 cuts 20.03"]);
    says(
        &mut other,
        "why ream 20 H7",
        &["nearest reamer of the crib", "none lands in 20 mm to 20.021 mm"],
    );
    assert!(!words(&mut Session::new(), "why 20 H7").contains("crib"));
}

#[test]
fn long_names_of_logs_fit_the_screen() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut session = Session::new();
    session.keep_logs(Logs::Folder(folder.path().to_owned())).expect("a folder");
    takes(&mut session, "bore 123.4567891mm +0.0123/-0.0123 from 123");
    takes(&mut session, "cut 0.1 = 123.1 sure");
    takes(&mut session, "done sure");
    takes(&mut session, "bore 3-47/64in H7 from 3.7in");
    let list = words(&mut session, "log list");
    assert!(list.contains("1 entry") || list.contains("2 entries"), "{list}");
    // A file that a person named.
    let first = std::fs::read_dir(folder.path()).expect("the folder").next().expect("a log");
    let long = folder.path().join(format!("{}.jsonl", "a-long-name-".repeat(5)));
    std::fs::copy(first.expect("a log").path(), long).expect("copied");
    words(&mut session, "log list");
}
