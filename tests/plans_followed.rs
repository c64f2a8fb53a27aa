//! Plans that a small shop can follow, as they are shown.
//!
//! The checks are an independent reading of the text: every size and every cut
//! is taken from the printed rows and added up here. What a shop owns and the
//! smallest bore are common practice, no source.

use std::fmt::Write as _;

use fits_checks::ask;
use fits_repl::{
    render::{Colour, text::Text},
    session::{Logs, Session},
};
use proptest::prelude::*;
use serde_json::Value;

fn after(lines: &[&str]) -> Session {
    // A log's first order would stand in the table's place.
    let mut session = Session::new();
    session.keep_logs(Logs::Off).unwrap();
    for line in lines {
        assert!(session.evaluate(line).is_ok(), "{line}");
    }
    session
}

fn text(session: &mut Session, query: &str) -> String {
    match session.evaluate(query) {
        Ok(answer) => Text { settings: session.shown(), colour: Colour::Off }.answer(&answer),
        Err(problem) => problem.message,
    }
}

/// A printed decimal in millionths, to be added up exactly.
fn millionths(text: &str) -> i64 {
    let (whole, part) = text.split_once('.').unwrap_or((text, ""));
    let part = format!("{part:0<6}");
    whole.parse::<i64>().unwrap() * 1_000_000 + part.parse::<i64>().unwrap()
}

/// The rows of a plan as printed: how many passes, name, size after, each cut
/// on the diameter; in the first unit.
fn printed(text: &str) -> Vec<(i64, String, i64, Option<i64>)> {
    let radius = if text.contains("dial (reads radius)") { 2 } else { 1 };
    let mut found = Vec::new();
    for line in text.lines() {
        let mut words = line.split_whitespace().peekable();
        let Some(count) = words.peek() else { continue };
        let counted = count.parse::<i64>();
        if counted.is_ok() {
            let _ = words.next();
        }
        let count = counted.unwrap_or(1);
        let Some(name) = words.next() else { continue };
        if !["rough", "semi-finish", "finish", "drill"].contains(&name) || !line.starts_with("  ") {
            continue;
        }
        let words: Vec<&str> = words.collect();
        // size unit size unit cut unit; a dial of the other system has no round cut.
        assert!(["in", "mm"].contains(&words[1]) && ["in", "mm"].contains(&words[3]), "{line}");
        let cut = (name != "drill" && !["from", "about"].contains(&words[4])).then(|| {
            let scale = match words[5] {
                "thou" => 1000,
                "mm" | "in" => 1,
                unit => panic!("{unit} in {line}"),
            };
            millionths(words[4]) / scale * radius
        });
        found.push((count, name.to_owned(), millionths(words[0]), cut));
    }
    found
}

fn start(text: &str) -> Option<i64> {
    let line = text.lines().find(|line| line.starts_with("  start "))?;
    line.split_whitespace().nth(1).map(millionths)
}

#[test]
fn equal_roughing_passes_stand_in_one_row() {
    let shown = text(&mut after(&["units in"]), "turn 1 g6 from 3");
    let roughs: Vec<&str> = shown.lines().filter(|line| line.contains(" rough ")).collect();
    assert!(roughs.len() <= 2, "{shown}");
    assert!(roughs.iter().all(|line| line.ends_with(" thou each")), "{shown}");
    let passes = ask(&mut after(&["units in"]), "turn 1 g6 from 3")["passes"].clone();
    let each = passes.as_array().unwrap().iter().filter(|pass| pass["name"] == "rough").count();
    let shown: i64 = printed(&shown).iter().filter(|row| row.1 == "rough").map(|row| row.0).sum();
    assert_eq!(usize::try_from(shown).unwrap(), each);
    // In short, too.
    let short = text(&mut after(&["units in"]), "1 H7");
    let short = short.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(short.contains("rough of at most ") && short.contains("thou, to 0.97"), "{short}");
}

#[test]
fn a_hole_that_no_owned_drill_comes_near_is_bored_before_it_is_reamed() {
    let inch = text(&mut after(&["units in"]), "ream 3/4 H7");
    assert!(inch.contains("drill 1/2 in, bore to 0.740 in (18.80 mm), then ream"), "{inch}");
    let metric = text(&mut after(&[]), "ream 20 H7");
    assert!(metric.contains("drill 12.5 mm, bore to 19.75 mm (0.778 in), then ream"), "{metric}");
    // The crib's own larger drill is used.
    let own = text(&mut after(&["crib add drill 19.7"]), "ream 20 H7");
    assert!(own.contains("drill 19.7 mm") && !own.contains("bore to"), "{own}");
    // A bar that wants more leaves it to a drill.
    let stout = text(&mut after(&["crib add bar 25"]), "ream 20 H7");
    assert!(stout.contains("it needs a drill of about 19.75 mm"), "{stout}");
}

#[test]
fn drills_are_of_the_askers_own_system() {
    for size in ["1/8", "3/16", "1/4", "5/16", "3/8", "7/16", "1/2", "5/8", "3/4", "1"] {
        for query in [format!("{size} slip"), format!("ream {size} H7"), format!("bore {size} H7")]
        {
            let shown = text(&mut after(&["units in"]), &query);
            for line in shown.lines().filter(|line| line.contains("drill ")) {
                let drills = line.replace('(', "( ");
                let metric = drills.split("; ").any(|part| {
                    let after = part.split("drill ").nth(1).or_else(|| part.strip_prefix("or "));
                    after.is_some_and(|drill| drill.split_whitespace().nth(1) == Some("mm"))
                });
                assert!(!metric, "{query}: {line}");
            }
        }
    }
    assert!(!text(&mut after(&[]), "ream 10 H7").contains("; or"), "no inch drill asked for");
}

#[test]
fn the_crib_s_bar_says_how_small_a_bore_may_be() {
    let refused = text(&mut after(&["units in"]), "bore 1/4 H7");
    assert!(
        refused.starts_with("a bore of 0.25") && refused.contains(" in is too small"),
        "{refused}"
    );
    assert!(!refused.contains("mm"), "{refused}");
    let own = ["units in", "crib add bar 3/16"];
    let plan = text(&mut after(&own), "bore 1/4 H7 from 0.220");
    assert!(plan.contains("finish      0.250"), "{plan}");
    let entry = text(&mut after(&own), "bore 1/4 H7 from 0.180");
    assert!(entry.contains("no boring tool goes into 0.18 in: drill it to 0.1875 in"), "{entry}");
    let none = text(&mut after(&["units in"]), "bore 1/2 H7 from 1/4");
    assert!(none.contains("no boring tool goes into 0.25 in"), "{none}");
    // A pair's own plan bores no less either.
    assert_eq!(ask(&mut after(&["crib add bar 25"]), "20 H7/g6")["bore"], Value::Null);
}

#[test]
fn the_least_chip_is_the_owners_or_the_materials() {
    let least =
        |lines: &[&str], query: &str| ask(&mut after(lines), query)["least_chip_mm"].clone();
    assert_eq!(least(&[], "bore 20 H7 from 19"), 0.01);
    assert_eq!(least(&[], "bore 20 H7 from 19, hub stainless"), 0.02);
    assert_eq!(least(&["material stainless"], "bore 20 H7 from 19"), 0.02);
    assert_eq!(least(&["least chip 0.05mm"], "bore 20 H7 from 19, hub stainless"), 0.05);
    let rubs = text(&mut after(&["least chip 0.05mm"]), "turn 20 g6 from 20");
    assert!(rubs.contains("a tool rubs under 0.05 mm: polish or hone it to size"), "{rubs}");
}

/// New reamers of the usual fractions come inside the hole of a slip fit, so
/// that one off the shelf makes it.
#[test]
fn a_slip_fit_is_reamed_off_the_shelf() {
    for size in ["1/4", "5/16", "3/8", "7/16", "1/2", "9/16", "5/8", "3/4", "7/8", "1"] {
        let shown = text(&mut after(&["units in"]), &format!("{size} slip"));
        assert!(shown.contains(&format!("off the shelf: {size} in, new ")), "{size}: {shown}");
    }
}

/// A band of 8 tenths is turned, not diamond turned.
#[test]
fn a_free_running_shaft_is_turned() {
    for size in ["1/2", "3/4", "1", "1-1/4", "1-1/2"] {
        for class in ["RC4", "RC5", "RC6"] {
            let fit = ask(&mut after(&["units in"]), &format!("{size} {class}"));
            assert_eq!(fit["shaft"]["processes"][0], "turning", "{size} {class}");
        }
    }
}

/// The deepest roughing cut of `data/holemaking/passes.csv`.
fn deepest(mm: f64) -> f64 {
    match mm {
        mm if mm <= 10.0 => 0.5,
        mm if mm <= 18.0 => 1.0,
        mm if mm <= 80.0 => 1.5,
        _ => 2.0,
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn any_plan_can_be_followed_as_it_is_shown(
        inches in any::<bool>(),
        hole in any::<bool>(),
        size in 500_i32..6000,
        class in 6..10_u8,
        letter in 0..3_usize,
        off in prop_oneof![Just(None), (1_i32..300).prop_map(Some), (1_i32..20_000).prop_map(Some)],
        radius in any::<bool>(),
        graduation in prop_oneof![Just(None), Just(Some("0.0005in")), Just(Some("0.02mm")), Just(Some("0.001in"))],
        least in prop_oneof![Just(None), Just(Some("0.02mm")), Just(Some("0.002in")), Just(Some("0.1mm"))],
        material in prop_oneof![Just(None), Just(Some("stainless")), Just(Some("nylon"))],
        crib in prop_oneof![Just(None), Just(Some("bar 5")), Just(Some("drill 20")), Just(Some("drill set metric 1mm..10mm step 0.5mm"))],
    ) {
        let mut lines = vec![if inches { "units in" } else { "units mm" }.to_owned()];
        lines.extend(radius.then(|| "dial radius".to_owned()));
        lines.extend(graduation.map(|it| format!("dial graduation {it}")));
        lines.extend(least.map(|it| format!("least chip {it}")));
        lines.extend(material.map(|it| format!("material {it}")));
        lines.extend(crib.map(|it| format!("crib add {it}{}", if it.contains("set") { "" } else { "mm" })));
        let lines: Vec<&str> = lines.iter().map(String::as_str).collect();
        // Sizes to 0.01 mm or a thou, starts to 0.001 mm or a tenth.
        let unit = if inches { 25.4 } else { 1.0 };
        let scale = if inches { 1000.0 } else { 100.0 };
        let nominal = f64::from(size) / scale;
        let (work, letters) = if hole { ("bore", ["H", "F", "G"]) } else { ("turn", ["g", "h", "f"]) };
        let mut query = format!("{work} {nominal} {}{class}", letters[letter]);
        if let Some(off) = off {
            let off = f64::from(off) / scale / 10.0;
            prop_assume!(off < nominal);
            let _ = write!(query, " from {:.4}", if hole { nominal - off } else { nominal + off });
        }
        let what = format!("{lines:?} {query}");
        let plan = ask(&mut after(&lines), &query);
        let Some(passes) = plan["passes"].as_array() else {
            // A refusal says what is wrong in the asker's own unit.
            let message = text(&mut after(&lines), &query);
            let other = if inches { " mm" } else { " in " };
            prop_assert!(!message.contains(other), "{what}: {message}");
            return Ok(());
        };
        let number = |value: &Value| value.as_f64().expect("a number");
        let limits = ["lower_mm", "upper_mm"].map(|key| number(&plan["feature"][key]));
        let chip = number(&plan["least_chip_mm"]);
        let step = ask(&mut after(&lines), "settings")["graduation_mm"].as_f64()
            .unwrap_or(if inches { 0.0254 } else { 0.01 }) * if radius { 2.0 } else { 1.0 };
        let most = deepest(number(&plan["aim_mm"])).max(2.0 * (chip / step).ceil() * step);
        let bar = if crib == Some("bar 5") { 5.0 } else { 8.0 };
        let mut at: Option<f64> = plan["start_mm"].as_f64().filter(|_| off.is_some());
        for pass in passes {
            let to = number(&pass["to_mm"]);
            if pass["drill_name"].is_string() {
                let owned = if crib == Some("drill 20") { 20.0 } else { 12.7 };
                prop_assert!(to <= owned, "{what}: {pass}");
                prop_assert_eq!(pass["drill_name"].as_str().unwrap().contains("in"), inches && plan["drill_in_crib"] != true);
            } else if pass["name"] != "spring" {
                if let Some(at) = at {
                    prop_assert!(if hole { to > at } else { to < at }, "{what}: {pass}");
                    prop_assert!(!hole || at >= bar, "{what}: {pass}");
                }
                if let Some(dial) = pass["dial_mm"].as_f64() {
                    let takes = dial * if radius { 2.0 } else { 1.0 };
                    prop_assert!(chip - 1e-6 <= takes && takes <= most + 1e-6, "{what}: {pass}");
                    prop_assert!((takes - (to - at.unwrap()).abs()).abs() < 1e-6, "{what}: {pass}");
                }
            }
            at = Some(to);
        }
        let last = at.expect("a size");
        prop_assert!(limits[0] < last && last < limits[1], "{what}: {last}");

        // As shown: each printed cut is the difference of the printed sizes.
        let shown = text(&mut after(&lines), &query);
        let rows = printed(&shown);
        let mut before = start(&shown);
        for (count, name, to, cut) in &rows {
            if let (Some(before), Some(cut)) = (before, cut) {
                prop_assert!(count * cut == (to - before).abs(), "{what}: {name}\n{shown}");
            }
            before = Some(*to);
        }
        let last = before.expect("a row");
        let limit = |mm: f64| mm / unit * 1e6;
        #[allow(clippy::cast_precision_loss, reason = "small")]
        let last = last as f64;
        prop_assert!(limit(limits[0]) <= last && last <= limit(limits[1]), "{what}\n{shown}");
    }
}
