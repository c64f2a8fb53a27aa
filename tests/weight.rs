//! What stock weighs, against a published rule of the trade: pounds a foot of
//! steel are 2.670 times the diameter squared for a round bar, 3.4 times the
//! side squared for a square one, 2.9445 times the flats squared for a hexagon,
//! and 3.4 times both sides for a flat; brass weighs 1.08 times as much.
//! ("Craftsman's Cribsheet 106: Weights of Bars", Production Machining.)

use fits_repl::{render::json, session::Session};
use serde_json::Value;

const POUND: f64 = 0.453_592_37;

fn ask(query: &str) -> Value {
    let mut out = Vec::new();
    json::object(&mut out, None, query, &Session::new().evaluate(query));
    serde_json::from_slice(&out).unwrap_or_else(|error| panic!("{query}: {error}"))
}

#[track_caller]
fn pounds(query: &str, wanted: f64, within: f64) {
    let answer = ask(query);
    let weight = answer["weight_kg"].as_f64().unwrap_or_else(|| panic!("{answer}")) / POUND;
    assert!((weight / wanted - 1.0).abs() < within, "{query}: {weight} lb, not {wanted}");
}

#[test]
fn a_foot_of_steel_bar() {
    for (size, inches) in [("1/4in", 0.25), ("1in", 1.0), ("1-1/2in", 1.5), ("25.4mm", 1.0)] {
        let square = inches * inches;
        for (section, times) in [("", 2.670), ("square ", 3.4), ("hex ", 2.9445)] {
            // 0.2833 lb a cubic inch against 7850 kg a cubic metre: a thousandth.
            pounds(&format!("weight {section}{size} steel long 12in"), times * square, 0.002);
        }
    }
    pounds("weight flat 2in x 1/2in steel long 12in", 3.4, 0.002);
    // 1.08 is rounded, and brasses differ.
    pounds("weight 1in brass long 12in", 2.670 * 1.08, 0.01);
}

#[test]
fn a_tube_is_a_bar_less_its_bore() {
    let weight = |query: &str| ask(query)["weight_kg"].as_f64().expect("a weight");
    let tube = weight("weight tube 1in wall 0.065in steel long 10in");
    let bar = weight("weight 1in steel long 10in");
    let bore = weight("weight 0.87in steel long 10in");
    assert!((tube - (bar - bore)).abs() < 1e-9, "{tube} against {bar} less {bore}");
}

#[test]
fn what_is_recalled_says_so_and_what_is_wrong_is_pointed_at() {
    assert_eq!(ask("weight 1in steel long 12in")["known"], "seen");
    assert_eq!(ask("weight 1in nylon long 12in")["known"], "memory");
    for (query, says) in [
        ("weight 1in", "its metal and its length are not said"),
        ("weight 1in steel", "its length is not said"),
    ] {
        let asked = ask(query)["error"].clone();
        assert_eq!(asked["message"], says);
        assert!(asked["choices"].as_array().is_some_and(|choices| choices.len() >= 2), "{asked}");
    }
    for (query, at, hint) in [
        ("weight steel", [7, 12], "square, hex, flat, tube"),
        ("weight tube 1in steel long 2in", [16, 16], "wall 0.05in"),
        ("weight tube 1in wall 0.6in steel long 2in", [21, 26], "outside first"),
        ("weight flat 1in steel long 2in", [16, 16], "x 5mm"),
        ("weight 1in unobtainium long 2in", [11, 22], "steel, stainless"),
        ("weight 1in steel long 2in twice", [26, 31], ""),
    ] {
        let error = &ask(query)["error"];
        assert_eq!(error["at"], serde_json::json!(at), "{query}: {error}");
        assert!(error["hint"].as_str().is_some_and(|it| it.contains(hint)), "{query}: {error}");
    }
}
