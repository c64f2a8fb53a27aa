//! The JSON contract: the fields that other programs rely on, exact numbers.

use fits_repl::{render::json, session::Session};
use serde_json::Value;

fn ask(session: &mut Session, query: &str) -> Value {
    let mut out = Vec::new();
    json::object(&mut out, None, query, &session.evaluate(query));
    let text = String::from_utf8(out).expect("text");
    assert!(!text.contains('\n'), "{query}: one line");
    serde_json::from_str(&text).unwrap_or_else(|error| panic!("{query}: {error}: {text}"))
}

fn answer(query: &str) -> Value {
    ask(&mut Session::new(), query)
}

#[track_caller]
fn has(value: &Value, pointer: &str, wanted: impl Into<Value>) {
    assert_eq!(value.pointer(pointer), Some(&wanted.into()), "{pointer} of {value}");
}

#[test]
fn a_fit() {
    let fit = answer("20 H7/g6");
    has(&fit, "/query", "20 H7/g6");
    has(&fit, "/answer", "fit");
    has(&fit, "/nominal_mm", 20.0);
    has(&fit, "/kind", "clearance");
    has(&fit, "/basis", "hole");
    for (part, kind, class, lower, upper, aim) in [
        ("hole", "hole", "H7", 20.0, 20.021, 20.0105),
        ("shaft", "shaft", "g6", 19.98, 19.993, 19.9865),
    ] {
        let at = |field: &str| format!("/{part}/{field}");
        has(&fit, &at("kind"), kind);
        has(&fit, &at("nominal_mm"), 20.0);
        has(&fit, &at("class"), class);
        has(&fit, &at("lower_mm"), lower);
        has(&fit, &at("upper_mm"), upper);
        has(&fit, &at("aim_mm"), aim);
        has(&fit, &at("source"), "ISO 286-1:2010 and ISO 286-2:2010");
    }
    has(&fit, "/clearance/min_mm", 0.007);
    has(&fit, "/clearance/max_mm", 0.041);
    has(&fit, "/clearance/aim_mm", 0.024);
    has(&fit, "/ream/reamer_min_mm", 20.009);
    has(&fit, "/ream/reamer_max_mm", 20.017);
    // No drill of so much is common: 12.5 mm, bored, then reamed.
    has(&fit, "/ream/drill", Value::Null);
    has(&fit, "/ream/bore_first", true);
    has(&fit, "/ream/first_drill_name", "12.5 mm");
    has(&fit, "/ream/before_mm", 19.75);
    let small = answer("10 H7/g6");
    has(&small, "/ream/drill/name", "9.7 mm");
    has(&small, "/ream/drill/mm", 9.7);
    has(&small, "/bore/least_chip_mm", 0.01);
    has(&fit, "/bore/aim_mm", 20.0105);
    assert!(fit["bore"]["passes"].as_array().is_some_and(|passes| passes.len() >= 4));
    assert!(fit["cautions"].is_array());
    assert_eq!(fit.get("chance_of_clearance"), None);
}

#[test]
fn fits_by_kind_and_basis() {
    for (query, kind, basis) in [
        ("20 H7/k6", "transition", "hole"),
        ("20 H7/p6", "interference", "hole"),
        ("20 K7/h6", "transition", "shaft"),
        ("20 H7/h6", "clearance", "both"),
        ("20 F8/f7", "clearance", "neither"),
    ] {
        let fit = answer(query);
        has(&fit, "/kind", kind);
        has(&fit, "/basis", basis);
        assert_eq!(fit["chance_of_clearance"].is_object(), kind == "transition", "{query}");
    }
}

#[test]
fn the_mate_of_a_measured_part() {
    // From the fit's own range, 0.007 to 0.041.
    let fit = answer("20 H7/g6, hole = 20.013");
    has(&fit, "/shaft/lower_mm", 19.972);
    has(&fit, "/shaft/upper_mm", 20.006);
    has(&fit, "/shaft/aim_mm", 19.989);
    has(&fit, "/measured/part", "hole");
    has(&fit, "/measured/size_mm", 20.013);
    has(&fit, "/measured/verdict", "good");
    has(&fit, "/ream", Value::Null);
    let fit = answer("20 H7/g6, shaft = 19.97");
    has(&fit, "/hole/lower_mm", 19.977);
    has(&fit, "/hole/upper_mm", 20.011);
    has(&fit, "/measured/verdict", "over");
}

#[test]
fn a_feature() {
    let hole = answer("3/4in H7");
    has(&hole, "/answer", "feature");
    has(&hole, "/kind", "hole");
    has(&hole, "/nominal_mm", 19.05);
    has(&hole, "/lower_mm", 19.05);
    has(&hole, "/upper_mm", 19.071);
    has(&hole, "/grade", "IT7");
    let shaft = answer("shaft 0.7490in..0.7495in");
    has(&shaft, "/kind", "shaft");
    has(&shaft, "/lower_mm", 19.0246);
    has(&shaft, "/upper_mm", 19.0373);
    has(&shaft, "/class", "limits");
    has(&answer("20 ±0.05"), "/kind", Value::Null);
    has(&answer("hole 20 +0.02/-0.01"), "/lower_mm", 19.99);
    has(&answer("hole 20 -0.01/+0.02"), "/upper_mm", 20.02);
}

#[test]
fn readings() {
    for (query, verdict, to_go) in [
        ("20 H7 = 19.982", "cut more", 0.0285),
        ("20 H7 = 20.013", "good", -0.0025),
        ("20 H7 = 20.021", "good", -0.0105),
        ("20 H7 = 20.0211", "over", -0.0106),
        ("20 g6 = 20.01", "cut more", 0.0235),
        ("20 g6 = 19.98", "good", -0.0065),
        ("20 g6 = 19.9799", "over", -0.0066),
    ] {
        let reading = answer(query);
        has(&reading, "/answer", "reading");
        has(&reading, "/verdict", verdict);
        has(&reading, "/to_go_mm", to_go);
        has(&reading, "/uncertainty_mm", Value::Null);
        has(&reading, "/probability_good", Value::Null);
        assert!(
            reading["reading_mm"].is_number()
                && reading["lower_mm"].is_number()
                && reading["kind"].is_string()
        );
    }
    let pair = answer("20 H7/g6 = 20.013/19.985");
    has(&pair, "/answer", "pair_reading");
    has(&pair, "/actual_clearance_mm", 0.028);
    has(&pair, "/within", true);
    has(&pair, "/hole/verdict", "good");
    has(&answer("20 H7/g6 = 20/20"), "/within", false);
    has(&answer("20 H7/g6 = 20.013 / 19.985"), "/actual_clearance_mm", 0.028);
    has(&answer("3/4in H7/g6 = 0.7503in/0.7495in"), "/actual_clearance_mm", 0.02032);
}

#[test]
fn passes_obey_the_dial() {
    let mut session = Session::new();
    let diameter = ask(&mut session, "bore 20 H7 from 19.6");
    has(&diameter, "/answer", "passes");
    has(&diameter, "/start_mm", 19.6);
    has(&diameter, "/aim_mm", 20.0105);
    has(&diameter, "/passes/0/name", "semi-finish");
    has(&diameter, "/passes/0/to_mm", 19.8);
    has(&diameter, "/passes/0/dial_mm", 0.2);
    has(&diameter, "/passes/1/dial_mm", 0.21);
    has(&diameter, "/passes/2/name", "spring");
    has(&diameter, "/passes/2/dial_mm", 0.0);
    ask(&mut session, "dial radius");
    has(&ask(&mut session, "bore 20 H7 from 19.6"), "/passes/1/dial_mm", 0.105);
    has(&ask(&mut session, "turn 20 g6 from 22"), "/dial", "radius");
}

#[test]
fn numbers_carry_no_noise() {
    for (query, digits) in [
        ("0.0127mm", "0.0127"),
        ("0.0005in", "0.0127"),
        ("1/64in", "0.396875"),
        ("1uin", "0.0000254"),
        ("3/4in - 15 thou", "18.669"),
        ("0.1um + 0.2um", "0.0003"),
        ("1/128in", "0.1984375"),
        ("1/256in", "0.0992188"),
    ] {
        let mut out = Vec::new();
        json::object(&mut out, None, query, &Session::new().evaluate(query));
        let text = String::from_utf8(out).unwrap();
        let number = text
            .split("\"size_mm\":")
            .nth(1)
            .and_then(|rest| rest.strip_suffix('}'))
            .unwrap_or_else(|| panic!("{text}"));
        assert_eq!(number.parse::<f64>(), digits.parse::<f64>(), "{query}: {number}");
        assert!(number.len() <= digits.len() + 4, "{query}: {number}");
    }
}

#[test]
fn sums_of_sizes() {
    for (query, mm) in [
        ("0.7503in + 2 * 0.0045in", 19.28622),
        ("(25.4 + 0.02)/2", 12.71),
        ("3/4in - 15 thou", 18.669),
        ("1-1/2in", 38.1),
        ("20 - 0.013", 19.987),
        ("#7 + 1mm", 6.1054),
        ("letter F", 6.5278),
        ("\u{2300} 20\u{a0}mm", 20.0),
        ("3/4\u{201d}", 19.05),
        ("2 * (1in + 1mm)", 52.8),
        ("20 \u{2212} 0.5", 19.5),
        ("1/3 + 1/6", 0.5),
        ("15 \u{b5}m", 0.015),
    ] {
        has(&answer(query), "/size_mm", mm);
    }
    let mut inches = Session::new();
    ask(&mut inches, "units in");
    has(&ask(&mut inches, "0.75"), "/size_mm", 19.05);
    has(&ask(&mut inches, "0.75 H7"), "/nominal_mm", 19.05);
    has(&ask(&mut inches, "20mm H7"), "/nominal_mm", 20.0);
}

#[test]
fn errors_have_message_place_and_hint() {
    let error = answer("20 h7/G6");
    has(&error, "/query", "20 h7/G6");
    has(&error, "/error/message", "h7 is a shaft's class, and the hole's comes first");
    has(&error, "/error/at/0", 3);
    has(&error, "/error/at/1", 5);
    has(&error, "/error/hint", "say which: `20 H7/g6` or `20 G6/h7`");
    has(&error, "/error/instead", "20 H7/g6");
    has(&error, "/error/choices/1", "20 G6/h7");
    assert_eq!(error.get("answer"), None);
}

#[test]
fn why_names_standard_table_rule_and_doubt() {
    let mut session = Session::new();
    ask(&mut session, "20 H7/g6");
    let why = ask(&mut session, "why");
    has(&why, "/answer", "why");
    has(&why, "/of", "20 H7/g6");
    let figures: Vec<&str> = why["figures"]
        .as_array()
        .unwrap()
        .iter()
        .filter_map(|figure| figure["figure"].as_str())
        .collect();
    for wanted in [
        "IT7",
        "EI of H7",
        "IT6",
        "es of g6",
        "least clearance",
        "greatest clearance",
        "aim of hole H7",
        "largest reamer",
        "reaming stock",
        "processes",
    ] {
        assert!(figures.contains(&wanted), "{wanted} is not among {figures:?}");
    }
    // The cells that are only recalled say so.
    for (query, figure) in [
        ("why 1100 h5", "IT5"),
        ("why 1100 grade 5", "IT5"),
        ("why 20 cd8", "es of cd8"),
        ("why 2 K9", "ES of K9"),
    ] {
        let why = answer(query);
        let found = why["figures"]
            .as_array()
            .unwrap()
            .iter()
            .find(|entry| entry["figure"] == figure)
            .unwrap_or_else(|| panic!("{query}: {why}"));
        assert_eq!(found["known"], "memory", "{query}");
    }
}

#[test]
fn inch_classes() {
    // Machinery's Handbook, 31st edition, ANSI B4.1 tables: 0.71 to 1.19 in,
    // RC4: hole +1.2/0, shaft -0.8/-1.6; FN2: hole +0.8/0, shaft +1.9/+1.4.
    let fit = answer("3/4in RC4");
    has(&fit, "/answer", "fit");
    has(&fit, "/basis", "hole");
    has(&fit, "/hole/class", "RC4");
    has(&fit, "/hole/upper_mm", 19.08048);
    has(&fit, "/shaft/upper_mm", 19.02968);
    has(&fit, "/shaft/lower_mm", 19.00936);
    has(&fit, "/clearance/min_mm", 0.02032);
    has(&fit, "/clearance/max_mm", 0.07112);
    has(&answer("3/4in fn2"), "/kind", "interference");
    has(&answer("3/4in RC4, hole = 0.7506in"), "/shaft/class", "to suit");
    has(&answer("3/4in RC4 = 0.7506in/0.7490in"), "/within", true);
    has(&answer("3/4in RC10"), "/error/message", "there is no RC10: RC runs from RC1 to RC9");
    has(&answer("1in FN6"), "/error/hint", "write FN1 to FN5: `1in FN5`");
}

#[test]
fn shop_words() {
    let fit = answer("3/4in press");
    has(&fit, "/choice/word", "press");
    has(&fit, "/choice/class", "FN2");
    has(&fit, "/hole/class", "FN2");
    assert!(
        fit["choice"]["looser"]["word"].is_string() && fit["choice"]["tighter"]["word"].is_string()
    );
    assert!(fit["choice"]["reason"].is_string() && fit["choice"]["source"].is_string());
    // FN3 begins above 0.95 in.
    has(&fit, "/choice/looser/class", "LN3");
    assert_ne!(fit["choice"]["tighter"]["class"], "FN2", "{}", fit["choice"]);
    has(&answer("1in press"), "/choice/tighter/class", "FN3");
    let fit = answer("20 slip");
    has(&fit, "/choice/class", "H7/g6");
    has(&fit, "/choice/looser/class", "H7/f6");
    has(&fit, "/choice/tighter/class", "H7/h6");
    has(&fit, "/hole/class", "H7");
    // A thin tube, a soft hub and plastic change the choice and say so.
    for (query, why) in [
        ("3/4in press, thin tube", "thin wall"),
        ("1.5in press, hub aluminium", "aluminium"),
        ("3/4in running, hub nylon", "plastic"),
    ] {
        let fit = answer(query);
        assert_eq!(fit["choice"]["changed_by"], why, "{query}: {}", fit["choice"]);
    }
    has(&answer("3/4in press, thin tube"), "/choice/work_it_out", true);
}

#[test]
fn parts_in_hand() {
    // The bore that suits a shaft of 0.7490 in by a sliding fit, RC2 at that
    // size in Machinery's Handbook: clearance 0.3 to 1.2 thou.
    let fit = answer("shaft 0.7490in, slip");
    has(&fit, "/in_hand", "shaft");
    has(&fit, "/shaft/lower_mm", 19.0246);
    let range = |pointer: &str| fit.pointer(pointer).and_then(Value::as_f64).unwrap();
    for (hole, clearance) in
        [("/hole/lower_mm", "/clearance/min_mm"), ("/hole/upper_mm", "/clearance/max_mm")]
    {
        approx::assert_abs_diff_eq!(range(hole) - 19.0246, range(clearance), epsilon = 1e-9);
    }
    // ASME B18.8.2: a 1/4 in hardened ground dowel is 0.2501 to 0.2503 in.
    let pin = answer("dowel 1/4in");
    has(&pin, "/kind", "shaft");
    has(&pin, "/lower_mm", 6.35254);
    has(&pin, "/upper_mm", 6.35762);
    has(&pin, "/mic_yours", false);
    let fit = answer("dowel 1/4in, press");
    has(&fit, "/in_hand", "shaft");
    has(&fit, "/hole/class", "to suit");
    has(&fit, "/ream/inch_reamers/0/name", "0.2490 in");
    let fit = answer("dowel 0.2502in..0.2503in, press");
    has(&fit, "/shaft/lower_mm", 6.35508);
    // The mate of a part in hand, read.
    for query in ["shaft 0.7490in, slip = 0.7496in", "shaft 0.7490in, slip, hole = 0.7496in"] {
        let reading = answer(query);
        has(&reading, "/answer", "reading");
        has(&reading, "/kind", "hole");
        has(&reading, "/verdict", "good");
    }
    has(&answer("dowel 1/4in, press, hole = 0.2480in"), "/verdict", "cut more");
    let pinned = answer("dowel 1/4in, hole H7");
    has(&pinned, "/kind", "transition");
    has(&pinned, "/in_hand", "shaft");
    // What is there already wants no tools.
    for query in ["shaft 20 g6, hole = 20.01", "bearing bore 25, shaft k5"] {
        let fit = answer(query);
        has(&fit, "/in_hand", "hole");
        has(&fit, "/ream", Value::Null);
        has(&fit, "/bore", Value::Null);
    }
    let shrunk = answer("20 shrink");
    let cautions = shrunk["cautions"].as_array().unwrap();
    assert!(cautions.iter().any(|caution| caution.as_str().unwrap().contains("burns")));
    has(&answer("20 heavy press, hub aluminium"), "/choice/work_it_out", true);
    let fit = answer("hole 20 H7, shaft 19.98..19.99");
    has(&fit, "/clearance/min_mm", 0.01);
    has(&fit, "/clearance/max_mm", 0.041);
    let fit = answer("shaft 19.98..19.99, hole 20 H7");
    has(&fit, "/clearance/max_mm", 0.041);
    let fit = answer("hole 20 H7, shaft = 19.985");
    has(&fit, "/clearance/min_mm", 0.015);
    has(&fit, "/clearance/max_mm", 0.036);
    has(&answer("shaft 20 g6, hole H7"), "/clearance/max_mm", 0.041);
}

#[test]
fn general_tolerances_drills_seats_and_picks() {
    let general = answer("12.5 general m");
    has(&general, "/answer", "general");
    has(&general, "/plus_minus_mm", 0.2);
    has(&general, "/lower_mm", 12.3);
    has(&answer("2 general c radius"), "/plus_minus_mm", 0.4);
    has(&answer("40 general m angle"), "/plus_minus_arcmin", 30);
    has(
        &answer("2 general v"),
        "/error/hint",
        "the nearest class that has one there is c: `2 general c`",
    );
    let drill = answer("drill 0.7031in");
    has(&drill, "/over/0/name", "45/64 in");
    has(&drill, "/under/0/name", "17.75 mm");
    has(&answer("drill #7"), "/exact/0/name", "#7");
    // ABMA 7 style table as reprinted: a ball bearing, rotating inner ring,
    // normal load, 18 to 100 mm, takes k5.
    has(&answer("seat shaft 25 turns normal"), "/seats/0/class", "k5");
    // ANSI B4.1, table of standard tolerances: 0.71 to 1.19 in, grade 8, 1.2 thou.
    has(&answer("3/4in grade 8"), "/tolerance_mm", 0.03048);
    has(&answer("20 grade 7"), "/tolerance_mm", 0.021);
    has(&answer("3/4in grade IT7"), "/tolerance_mm", 0.021);
    // DIN 6885-1: shafts over 22 up to 30 mm take the 8 x 7 key.
    has(&answer("keyway for 25"), "/width_mm", 8.0);
    has(&answer("keyway for 25"), "/height_mm", 7.0);
    has(&answer("keyway for 1in"), "/standard", "ANSI B17.1");
    has(&answer("drill rod 3/8in"), "/class", "inch drill rod");
    has(&answer("bearing bore 25"), "/lower_mm", 24.99);
    has(&answer("bearing od 52"), "/lower_mm", 51.987);
    let pick = answer("pick 20 clearance 0.007..0.041");
    has(&pick, "/candidates/0/class", "H7/g6");
    has(&pick, "/candidates/0/outside_mm", 0.0);
    let none = answer("pick 20 clearance 0.010..0.012");
    has(&none, "/found", 0);
    assert!(none["candidates"].as_array().is_some_and(|found| !found.is_empty()));
    let press = answer("pick 1in interference 0.5 thou..2 thou");
    has(&press, "/candidates/0/class", "FN2");
    has(&press, "/wanted_max_mm", -0.0127);
}

#[test]
fn a_reading_with_its_instrument() {
    let reading = answer("20 H7 = 20.019 with bore gauge");
    has(&reading, "/answer", "reading");
    has(&reading, "/verdict", "too close to call");
    has(&reading, "/reading_mm", 20.019);
    // sqrt(1.5² + 2²) µm, twice.
    has(&reading, "/uncertainty_mm", 0.005);
    has(&reading, "/standard_uncertainty_mm", 0.0025);
    has(&reading, "/instrument", "bore gauge");
    has(&reading, "/readings", 1);
    has(&reading, "/size_at_20_mm", 20.019);
    let share = |field: &str| reading[field].as_f64().unwrap_or_else(|| panic!("{field}"));
    let sum = share("probability_good") + share("probability_over") + share("probability_under");
    assert!((sum - 1.0).abs() < 1e-12 && (0.78..0.80).contains(&share("probability_good")));
    assert_eq!(reading.get("temperature_c"), None);
    for (query, verdict) in [
        ("20 H7 = 20.0105 with bore gauge", "good"),
        ("20 H7 = 20.03 with bore gauge", "over"),
        ("20 H7 = 19.99 with bore gauge", "cut more"),
        ("20 g6 = 19.999 with mic", "cut more"),
    ] {
        has(&answer(query), "/verdict", verdict);
    }
}

#[test]
fn readings_together() {
    let reading = answer("20 H7 = 20.012 20.014 20.013");
    has(&reading, "/reading_mm", 20.013);
    has(&reading, "/readings", 3);
    has(&reading, "/spread_mm", 0.002);
    has(&reading, "/uncertainty_mm", Value::Null);
    has(&reading, "/probability_good", Value::Null);
    has(&reading, "/verdict", "good");
    let reading = answer("20 H7 = 20.012/20.022");
    has(&reading, "/verdict", "over");
    has(&reading, "/form_error/places_mm/1", 20.022);
    has(&reading, "/form_error/difference_mm", 0.01);
    has(&reading, "/form_error/real", true);
    has(&reading, "/to_first_limit_mm", -0.012);
    has(&reading, "/to_last_limit_mm", -0.001);
    let reading = answer("20 H7 = 20.012 20.012/20.014 20.014 with telescoping gauge");
    has(&reading, "/form_error/real", false);
    has(&reading, "/readings", 4);
    has(&reading, "/reading_mm", 20.013);
    // The slash still parts hole and shaft of a pair.
    let pair = answer("20 H7/g6 = 20.013 20.015/19.985 with bore gauge and mic");
    has(&pair, "/answer", "pair_reading");
    has(&pair, "/hole/reading_mm", 20.014);
    has(&pair, "/hole/instrument", "bore gauge");
    has(&pair, "/shaft/instrument", "micrometer");
    has(&pair, "/actual_clearance_mm", 0.029);
    let plain = answer("20 H7/g6 = 20.013/19.985");
    assert_eq!(plain["hole"].get("readings"), None);
}

#[test]
fn a_warm_reading() {
    let reading = answer("20 H7 = 20.013 at 31C, hole aluminium");
    has(&reading, "/temperature_c", 31.0);
    has(&reading, "/room_c", 20.0);
    has(&reading, "/material", "aluminium 6061-T6");
    let size = reading["size_at_20_mm"].as_f64().expect("a size");
    assert!((20.0075..20.0085).contains(&size), "{size}");
    assert!(reading["growth_mm"].as_f64().is_some_and(|growth| (0.004..0.006).contains(&growth)));
    assert!(reading["wait_min"].as_f64().is_some_and(|wait| (5.0..90.0).contains(&wait)));
    // A steel gauge as warm as the steel part reads true.
    let alike = answer("20 g6 = 19.99 at 35C, room 35C, shaft steel");
    has(&alike, "/size_at_20_mm", 19.99);
    has(&alike, "/wait_min", 0.0);
    // 31 °C is 87.8 °F.
    let other = answer("20 H7 = 20.013 at 87.8F, hole aluminium");
    has(&other, "/size_at_20_mm", size);
}

#[test]
fn the_tailstock() {
    let align = answer("align 19.98 20.01 over 150, 20 g6 long 40");
    has(&align, "/answer", "align");
    has(&align, "/set_over_mm", 0.015);
    has(&align, "/toward", "toward the tool");
    has(&align, "/taper_mm", 0.03);
    has(&align, "/per_100_mm_mm", 0.02);
    has(&align, "/turned/leaves_mm", 0.005);
    has(&align, "/turned/survives", true);
    has(&answer("align 20.01 19.98 over 150"), "/toward", "away from the tool");
}

#[test]
fn a_rehearsal() {
    let odds = answer("rehearse 20 H7 from 19.6 with bore gauge, runs 20, seed 7");
    has(&odds, "/answer", "rehearsal");
    has(&odds, "/runs", 20);
    has(&odds, "/seed", 7);
    let strategies = odds["strategies"].as_array().expect("a list");
    let names: Vec<&str> = strategies.iter().filter_map(|odds| odds["strategy"].as_str()).collect();
    assert_eq!(names, ["adviser", "half, then the rest", "dial it all"]);
    for strategy in strategies {
        let share = |field: &str| strategy[field].as_f64().unwrap_or_else(|| panic!("{field}"));
        assert!(
            (share("share_good") + share("share_over") + share("share_under") - 1.0).abs() < 1e-12
        );
        assert!(share("mean_passes") >= 1.0 && share("mean_readings") >= 1.0);
    }
    assert_eq!(
        odds["strategies"],
        answer("rehearse 20 H7 from 19.6 with bore gauge, runs 20, seed 7")["strategies"]
    );
}

#[test]
fn threads() {
    // ISO 965-2, M10-6H/6g, and ASME B1.1, 3/8-24 UNF: `tests/thread_published.rs` names the tables.
    let thread = answer("M10 6H/6g");
    has(&thread, "/answer", "thread");
    has(&thread, "/designation", "M10x1.5-6H/6g");
    has(&thread, "/pitch_mm", 1.5);
    has(&thread, "/assumed/0", "no pitch given: coarse");
    for (field, wanted) in [
        ("external/class", Value::from("6g")),
        ("external/major_max_mm", 9.968.into()),
        ("external/major_min_mm", 9.732.into()),
        ("external/pitch_max_mm", 8.994.into()),
        ("external/pitch_min_mm", 8.862.into()),
        ("internal/class", "6H".into()),
        ("internal/pitch_max_mm", 9.206.into()),
        ("internal/pitch_min_mm", 9.026.into()),
        ("internal/minor_max_mm", 8.676.into()),
        ("internal/minor_min_mm", 8.376.into()),
        ("play/pitch_min_mm", 0.032.into()),
        ("play/pitch_max_mm", 0.344.into()),
        ("tap/drill/name", "8.5 mm".into()),
    ] {
        has(&thread, &format!("/{field}"), wanted);
    }
    // A nut's major diameter has no upper limit.
    assert!(thread["internal"].get("major_max_mm").is_none());
    let screw = answer("3/8-24 UNF 2A");
    has(&screw, "/external/pitch_max_mm", 8.80872);
    has(&screw, "/tpi", 24.0);
    assert!(screw.get("internal").is_none() && screw.get("play").is_none());
    has(&answer("Tr40x14P7 LH"), "/lead_mm", 14.0);
    has(&answer("Tr40x14P7 LH"), "/hand", "left");
    has(&answer("3/8"), "/thread", "3/8-16 UNC");
    assert!(answer("3/8in").get("thread").is_none());
}

#[test]
fn tap_drills_wires_and_passes() {
    let tap = answer("M10 tap 70%");
    has(&tap, "/answer", "tap");
    has(&tap, "/drill/name", "8.6 mm");
    has(&tap, "/drill/mm", 8.6);
    has(&tap, "/percent", 71.85);
    assert!(tap["alternatives"].as_array().is_some_and(|others| others.len() >= 3));
    let tap = answer("#2-56 tap #50");
    has(&tap, "/drill/name", "#50");
    has(&tap, "/tap_in_hand", true);
    // (0.086 - 0.070) x 56 / 1.299038.
    has(&tap, "/percent", 68.97);
    // ISO 273:1979, table: M10, fine 10.5, medium 11, coarse 12.
    let holes = answer("M10 clearance");
    has(&holes, "/answer", "clearance_hole");
    has(&holes, "/holes/1/min_mm", 11.0);
    let wires = answer("3/8-24 3A wires 0.024in");
    has(&wires, "/answer", "wires");
    has(&wires, "/wire_mm", 0.6096);
    has(&wires, "/best_wire_mm", 0.611_029);
    let over = answer("3/8-24 2A over 0.3830in");
    has(&over, "/answer", "over_wires");
    has(&over, "/verdict", "cut more");
    has(&over, "/feed/compound_deg", 29.5);
    has(&answer("3/8-24 2A over 0.3810in"), "/verdict", "good");
    has(&answer("3/8-24 2A over 0.3810in"), "/feed", Value::Null);
    has(&answer("3/8-24 2A over 0.3780in"), "/verdict", "over");
    has(&tap, "/drill_within_limits", true);
    // Tr20x4 7H: 16 to 16.375 mm (ISO 2903), bored to the middle.
    let bored = answer("Tr20x4 tap");
    has(&bored, "/bore/aim_mm", 16.1875);
    has(&bored, "/bore/first_drill/name", "15.5 mm");
    assert!(bored.get("drill").is_none() && bored.get("advised").is_none());
    has(&answer("Tr20x4"), "/bore/aim_mm", 16.1875);
    has(&answer("G1/2 tap"), "/published", true);
    // 10 - 8.676 and 10 - 8.376 of 1.948557 mm.
    has(&answer("M10 tap"), "/limits_keep/min_percent", 67.95);
    has(&answer("M10 tap"), "/limits_keep/max_percent", 83.34);
    // ISO 7-1, 1/2: gauge length 8.2 mm, the plane within a turn, in the nut 1.25 turns.
    let taper = answer("R1/2");
    has(&taper, "/taper/per_length", "1:16");
    has(&taper, "/taper/gauge_length_mm", 8.2);
    has(&taper, "/taper/useful_length_mm", 13.2);
    has(&taper, "/taper/plane_tolerance_mm", 1.8);
    has(&answer("Rc1/2"), "/taper/plane_tolerance_mm", 2.3);
    assert!(answer("Rc1/2")["taper"].get("gauge_length_mm").is_none());
    assert!(answer("Rp1/2").get("taper").is_none() && answer("Rp1/2").get("notes").is_none());
    for (query, reads) in
        [("M10x1.25 cut", "compound travel"), ("M10x1.25 cut straight", "diameter")]
    {
        has(&answer(query), "/dial_reads", reads);
        has(&answer(query), "/dial", "diameter");
    }
    let passes = answer("M10x1.25 cut straight");
    has(&passes, "/answer", "thread_passes");
    has(&passes, "/feed_by", "straight");
    has(&passes, "/side", "external");
    let list = passes["passes"].as_array().expect("passes");
    assert_eq!(list.last().expect("a pass")["name"], "spring");
    let depths: Vec<f64> = list.iter().map(|pass| pass["depth_mm"].as_f64().unwrap()).collect();
    assert!(depths.windows(2).all(|pair| pair[0] <= pair[1]), "{depths:?}");
    // The dial of a slide read by diameter stands at twice the depth.
    assert!((list[0]["dial_mm"].as_f64().unwrap() - 2.0 * depths[0]).abs() < 1e-9);
    let mut session = Session::new();
    ask(&mut session, "dial radius");
    let passes = ask(&mut session, "M10x1.25 cut straight");
    has(&passes, "/passes/0/dial_mm", passes["passes"][0]["depth_mm"].clone());
    has(&answer("M10x1.25 6H cut"), "/side", "internal");
    has(&answer("why 3/8-24 3A wires"), "/answer", "why");
}

#[test]
fn stacks() {
    // Shigley's Mechanical Engineering Design, 9th ed., Example 1-3.
    let stack = answer(
        "stack screw 1.750in ±0.003in, -0.750in ±0.001in, -0.120in ±0.005in, last -0.875in ±0.001in, play 0.003in..0.023in",
    );
    has(&stack, "/answer", "stack");
    has(&stack, "/worst/min_mm", -0.127);
    has(&stack, "/worst/max_mm", 0.381);
    has(&stack, "/aim_mm", 0.127);
    has(&stack, "/rss/min_mm", -0.0254);
    has(&stack, "/rss/max_mm", 0.2794);
    has(&stack, "/links/0/name", "screw");
    has(&stack, "/links/1/name", Value::Null);
    has(&stack, "/links/1/sign", "-");
    has(&stack, "/links/1/spread", "uniform");
    has(&stack, "/matters_most", 2);
    has(&stack, "/last_part/link", 3);
    has(&stack, "/last_part/aim_mm", 22.0218);
    has(&stack, "/last_part/always/min_mm", 21.9964);
    has(&stack, "/last_part/as_given_will_do", false);
    has(&stack, "/simulated/runs", 200_000);
    has(&stack, "/simulated/seed", 1);
    for field in ["mean_mm", "sd_mm", "probability_below_zero", "probability_inside"] {
        assert!(stack["simulated"][field].is_number(), "{field}: {stack}");
    }
    has(&stack, "/simulated/quantiles/3/share", 0.5);
    let again = answer("stack 12±0.1 -5±0.05 -6.8 +0/-0.1, seed 9");
    assert_eq!(again, answer("stack 12±0.1 -5±0.05 -6.8 +0/-0.1, seed 9"));
    has(&again, "/simulated/probability_inside", Value::Null);
    has(&again, "/simulated/probability_below_zero", 0.0);
    has(&again, "/worst/max_mm", 0.45);
    let classes = answer("stack 12 h9 - 2x 1.5±0.05 -8.9±0.05 normal, all triangular");
    has(&classes, "/links/0/class", "h9");
    has(&classes, "/links/1/count", 2);
    has(&classes, "/links/1/spread", "triangular");
    has(&classes, "/links/2/spread", "normal");
    has(&classes, "/worst/min_mm", -0.093);
    let open = answer("stack 20.03, -2x 1.4 ±0.02, tube -?, play 0.1..0.3");
    has(&open, "/links/2/class", "to make");
    has(&open, "/last_part/aim_mm", 17.03);
    has(&open, "/worst/min_mm", 0.1);
    has(&open, "/worst/max_mm", 0.3);
}

#[test]
fn pairs_away_from_twenty_degrees() {
    let warm = answer("20 H7/g6 warm -20C..60C, hole aluminium, shaft steel");
    has(&warm, "/answer", "fit_warm");
    has(&warm, "/nominal_mm", 20.0);
    has(&warm, "/hole/class", "H7");
    has(&warm, "/hole/material", "aluminium 6061-T6");
    has(&warm, "/hole/expansion_per_c_e6", 24.0);
    has(&warm, "/shaft/material", "steel");
    has(&warm, "/reference/at_c", 20.0);
    has(&warm, "/reference/min_mm", 0.007);
    has(&warm, "/cold/at_c", -20.0);
    // 20 x (1 - 40 x 24e-6) - 19.993 x (1 - 40 x 11.7e-6).
    has(&warm, "/cold/min_mm", -0.002_843_3);
    has(&warm, "/cold/kind", "transition");
    has(&warm, "/warm/at_c", 60.0);
    has(&warm, "/binds", true);
    has(&warm, "/lets_go", false);
    has(&warm, "/tightest_pair_meets_c", -8.4);
    assert!(warm["shaft_to_keep"]["max_mm"].is_number());
    assert!(warm["damp"].as_array().is_some_and(Vec::is_empty));
    let press = answer("20 H7/s6 warm 120C, hole aluminium, shaft steel");
    has(&press, "/lets_go", true);
    has(&press, "/binds", false);
    // The same in degrees Fahrenheit, and by what the parts measure.
    let fahrenheit = answer("20 H7/g6 warm -4F..140F, hole aluminium, shaft steel");
    has(&fahrenheit, "/cold/min_mm", -0.002_843_3);
    let read = answer("20 H7/g6 = 20.013/19.985 warm 60C, hole nylon 66, shaft steel");
    has(&read, "/hole/class", "measured");
    has(&read, "/reference/min_mm", 0.028);
    has(&read, "/damp/0/state", "in room air");
    has(&read, "/damp/1/growth_percent", 2.5);
    for (query, class) in [
        ("20 running, hole nylon, shaft steel warm 60C", "H9"),
        ("20 press warm 60C, hole bronze, shaft steel", "H7"),
        ("shaft 19.985, slip warm 60C, hole acetal, shaft steel", "to suit"),
        ("hole 20 H7, shaft 19.98..19.99, warm 60C, hole brass, shaft stainless 304", "H7"),
    ] {
        has(&answer(query), "/hole/class", class);
    }
}

#[test]
fn bushings() {
    let given = answer("bushing 20 od 26 long 20, hub steel od 60, bronze, running 0.03..0.1");
    has(&given, "/answer", "bushing_fit");
    has(&given, "/nominal_mm", 20.0);
    has(&given, "/kind", "solid bronze");
    has(&given, "/material", "bearing bronze C93200");
    has(&given, "/housing/class", "H7");
    has(&given, "/housing/upper_mm", 26.021);
    // ISO 4379, recalled: s6 outside, E6 inside.
    has(&given, "/outside/lower_mm", 26.035);
    has(&given, "/bore/lower_mm", 20.04);
    has(&given, "/interference/min_mm", 0.014);
    has(&given, "/interference/max_mm", 0.048);
    has(&given, "/running/min_mm", 0.03);
    has(&given, "/running_by", "as given");
    has(&given, "/clearance/min_mm", 0.03);
    has(&given, "/clearance/max_mm", 0.1);
    has(&given, "/shaft/given", false);
    has(&given, "/length_over_bore", 1.0);
    for field in ["closes_in", "pressure_mpa", "bore_in_place"] {
        assert!(given[field].is_object(), "{field}: {given}");
    }
    assert!(given["press_force_n"].as_f64().is_some_and(|force| force > 1000.0));
    assert!(given["shaft"]["lower_mm"].is_number());
    assert!(given["cautions"].as_array().is_some_and(|cautions| !cautions.is_empty()));
    // Narrower than the bores vary: the bore is reamed in place, for an h6.
    let narrow = answer("bushing 20 od 26 long 20, hub steel od 60, bronze, running 0.03..0.06");
    has(&narrow, "/shaft/lower_mm", Value::Null);
    has(&narrow, "/ream_in_place/lower_mm", 20.03);
    has(&narrow, "/ream_in_place/upper_mm", 20.047);
    // A shaft that is there: the bore for it, in place and before pressing.
    let shaft = answer(
        "bushing 20 od 26 long 20, hub steel, bronze, shaft 19.98..19.99, running 0.03..0.1",
    );
    has(&shaft, "/shaft/given", true);
    has(&shaft, "/ream_in_place/lower_mm", 20.02);
    has(&shaft, "/ream_in_place/upper_mm", 20.08);
    assert!(shaft["bore_before"]["aim_mm"].as_f64() > shaft["ream_in_place"]["aim_mm"].as_f64());
    // Nylon closes with heat and damp.
    let nylon = answer("bushing 20 od 26 long 20, hub steel, nylon, warm 60C");
    has(&nylon, "/running_by", "by the rule for plastic, common practice");
    has(&nylon, "/in_service/0/at_c", 60.0);
    has(&nylon, "/in_service/0/damp_state", "dry");
    has(&nylon, "/in_service/1/damp_state", "in room air");
    assert!(
        nylon["in_service"][1]["min_mm"].as_f64() < nylon["clearance"]["min_mm"].as_f64(),
        "{nylon}"
    );
    let fast = answer("bushing 20 od 26 long 20, hub steel, nylon, rpm 2500");
    has(&fast, "/speed_m_per_s", 2.62);
    assert!(fast["notes"].to_string().contains("2.5 m/s"), "{fast}");
    // By service, and sizes of one's own.
    let pivot = answer("bushing 2in od 2.5in long 2in, hub steel, bronze, running pivot");
    has(&pivot, "/running_by", "for pivot service, unconfirmed");
    has(&pivot, "/running/max_mm", 0.1524);
    let own = answer(
        "bushing 20 H8 od 26.04..26.05 long 20, hub cast iron od 50, oil bronze, housing 26.01..26.02",
    );
    has(&own, "/bore/class", "H8");
    has(&own, "/outside/class", "limits");
    has(&own, "/interference/min_mm", 0.02);
    has(&own, "/interference/max_mm", 0.04);
    // A maker's table of lined ones, published web page.
    let lined = answer("bushing 20 lined");
    has(&lined, "/kind", "lined");
    has(&lined, "/bore_in_place/max_mm", 20.071);
    has(&lined, "/shaft/upper_mm", 19.98);
    has(&lined, "/interference", Value::Null);
    // Bought-in parts are asked for as before.
    has(&answer("bushing 20, press"), "/answer", "fit");
    has(&answer("bushing od 26"), "/answer", "feature");
}

#[test]
fn what_is_bought_is_not_made() {
    for query in ["dowel 1/4in", "metric key 6mm", "inch shoulder screw 3/8in", "ground bar 1in"] {
        let part = answer(query);
        has(&part, "/answer", "feature");
        assert_eq!(part.get("processes"), None, "{part}");
        assert_eq!(part.get("processes_known"), None, "{part}");
        assert_eq!(part.get("turn"), None, "{part}");
    }
    let made = answer("6mm h9");
    assert!(made.get("processes").is_some() && made.get("processes_known").is_some(), "{made}");
}
