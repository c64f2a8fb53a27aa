//! Rings, pins, Woodruff keys, tube plugs and O-rings as people ask for them, and
//! what cannot be answered.

use fits_checks::{ask, near, takes};
use fits_repl::session::Session;
use serde_json::Value;

/// A session in inches, as set.
fn inches() -> Session {
    let mut session = Session::new();
    takes(&mut session, "units in");
    session
}

/// A size of the answer: its least and its most, in millimetres.
#[track_caller]
fn size(answer: &Value, name: &str) -> (f64, f64) {
    let sizes = answer["sizes"].as_array().unwrap_or_else(|| panic!("{answer}"));
    let found = sizes.iter().find(|size| size["name"] == name);
    let found = found.unwrap_or_else(|| panic!("no {name}: {answer}"));
    (found["min_mm"].as_f64().unwrap(), found["max_mm"].as_f64().unwrap())
}

#[track_caller]
fn holds(query: &str, name: &str, least: f64, most: f64) {
    let answer = takes(&mut inches(), query);
    let (low, high) = size(&answer, name);
    assert!(
        (low - least).abs() < 6e-5 && (high - most).abs() < 6e-5,
        "{query}: {name} {low} {high}"
    );
}

const IN: f64 = 25.4;

// What people ask in public, in words of our own; each with the figure that decides
// and where it is read.
#[test]
fn questions_that_people_ask() {
    // DIN 471: 19 h11 x 1.3 H13 (capitalbolts.in/din-471 and two makers' sheets).
    holds("retaining ring 20 shaft", "groove", 18.87, 19.0);
    holds("what groove for a circlip on a 20mm shaft", "width", 1.3, 1.44);
    // DIN 472: 49.5 H12 x 1.85 H13 (one list; class and land by rule).
    holds("circlip for 47 bore", "groove", 49.5, 49.75);
    holds("groove for a snap ring in a 47 mm bore", "width", 1.85, 1.99);
    // N5100-75: 0.704 +-0.003 (from memory; tolerance Machinery's Handbook 31 p. 1915).
    holds("snap ring groove 3/4 shaft", "groove", 0.701 * IN, 0.707 * IN);
    // Machinery's Handbook 31 p. 1916, Table 12: N5000-125, 1.197.
    holds("internal retaining ring for a 1-1/8 bore", "groove", 1.193 * IN, 1.201 * IN);
    // Machinery's Handbook 31 p. 1895, Table 10.
    holds("what size hole for a 1/4 roll pin", "hole", 0.25 * IN, 0.256 * IN);
    // ISO 8752: H12.
    holds("drill for a 6mm roll pin", "hole", 6.0, 6.12);
    // TM 9-254, Table 3-1 prints drill 4 (0.209) for a small end of 0.2083: the next
    // smaller drill does not stand over the pin.
    holds("drill for taper pin #4 2in long", "drill", 0.2055 * IN, 0.2055 * IN);
    holds("taper pin 5mm long 40mm", "large end", 5.8, 5.8);
    // ASME B18.8.1.
    holds("clevis pin 1/2", "shank", 0.491 * IN, 0.496 * IN);
    holds("hole for a 1/8 cotter pin", "hole", 0.141 * IN, 0.141 * IN);
    // A quarter to a third of the shaft: shop practice.
    holds("cross pin for a 1in shaft", "usual pin", 6.35, 8.466_666_7);
    // Shigley, Table 7-7: key 606, 0.2143 in the shaft, 0.0997 in the hub.
    holds("keyseat for a 606 woodruff in 3/4 shaft", "depth, shaft", 0.2143 * IN, 0.2193 * IN);
    holds("what woodruff key for a 3/4 shaft", "depth, hub", 0.0997 * IN, 0.1047 * IN);
    // ASTM A513: 1.000 +-0.005, flat +-0.010, wall +-10 %.
    holds("snug square plug in 1in tube wall .065", "inside", 0.842 * IN, 0.898 * IN);
    holds("plug for 2x1 tube wall .083", "inside, other", 0.8024 * IN, 0.8656 * IN);
    holds("square plug 1in wall .065 inside .868 nylon", "inside, yours", 0.868 * IN, 0.868 * IN);
    holds("nylon plug for 1in square tube .065 wall", "inside", 0.842 * IN, 0.898 * IN);
    // Columbia Engineered Rubber prints a 0.875 groove in a 0.988 bore for -020; Apple
    // Rubber's limits of the gland are 0.055 to 0.057.
    holds("o ring 020 piston moving bore .988", "groove", 0.874 * IN, 0.878 * IN);
    // Apple Rubber, table B: static, 0.139 section.
    holds("o-ring groove 1/8 section static rod 3/4", "gland depth", 0.11 * IN, 0.116 * IN);
}

#[test]
fn a_cross_pin_shears_where_the_geometry_says() {
    let answer = takes(&mut inches(), "cross pin shaft 1in pin 1/4in collar 1.5in torque 20 Nm");
    let carries = &answer["carries"];
    let (shaft, pin, collar) = (0.0254_f64, 0.00635_f64, 0.0381_f64);
    // Two sections of the pin, half a shaft from the middle.
    let area = std::f64::consts::PI * pin * pin / 4.0;
    let shear = 20.0 / (2.0 * area * shaft / 2.0);
    near(carries["shear_mpa"].as_f64().unwrap(), shear / 1e6, 1e-9);
    // A pressure that grows from nothing in the middle turns the shaft: summed by slices.
    let peak = carries["shaft_mpa"].as_f64().unwrap() * 1e6;
    let slices = 20_000;
    let step = shaft / f64::from(slices);
    let torque: f64 = (0..slices)
        .map(|slice| {
            let at = -shaft / 2.0 + (f64::from(slice) + 0.5) * step;
            let pressure = peak * at / (shaft / 2.0);
            pressure * pin * step * at
        })
        .sum();
    near(torque, 20.0, 1e-6);
    // In the collar it is even over both walls.
    let even = carries["collar_mpa"].as_f64().unwrap() * 1e6;
    let (wall, middle) = ((collar - shaft) / 2.0, (collar + shaft) / 4.0);
    near(2.0 * even * pin * wall * middle, 20.0, 1e-9);
    // A36: 250 MPa; shear yields at 1/sqrt(3) of it (von Mises).
    let yields = 250e6 / 3.0_f64.sqrt() * area * shaft;
    near(carries["yields_n_m"].as_f64().unwrap(), yields, 1e-6);
}

#[test]
fn a_pin_that_does_not_hold_is_said() {
    let answer = takes(&mut inches(), "cross pin shaft 1in pin 1/4in torque 200 Nm");
    assert!(answer["notes"].to_string().contains("! it does not hold"), "{answer}");
    let answer = takes(&mut inches(), "cross pin shaft 1in pin 0.4in");
    assert!(answer["notes"].to_string().contains("over a third"), "{answer}");
}

#[test]
fn a_plug_suits_the_tube_in_hand() {
    let mut session = inches();
    let snug = takes(&mut session, "square plug 1in wall 0.065in inside 0.868in");
    assert_eq!(size(&snug, "plug, flats"), (0.865 * IN, 0.867 * IN));
    let nylon = takes(&mut session, "square plug 1in wall 0.065in inside 0.868in nylon");
    let ((low, _), (dry, _)) = (size(&nylon, "plug, flats"), size(&nylon, "plug if dry"));
    // 0.6 percent in room air (data/swelling.csv).
    near(low - dry, 0.006 * 0.868 * IN, 1e-4);
    // The walls as strips: 250 MPa over 200 GPa of the inside.
    let drive = takes(&mut session, "square plug 1in wall 0.065in inside 0.868in drive");
    let small = takes(&mut session, "square plug 0.5in wall 0.049in inside 0.400in drive");
    let ((_, plug), (over, _)) = (size(&small, "plug, flats"), size(&small, "drive, most"));
    near(plug - 0.4 * IN, over, 1e-3);
    let (most, _) = size(&drive, "drive, most");
    assert!((0.9..1.3).contains(&(most / 0.0254)), "{most}");
    // The outside corner is 1/16 to 7/64 by ASTM A513, less the wall.
    let (_, corner) = size(&drive, "inside corner");
    near(corner, (7.0 / 64.0 - 0.065) * IN, 1e-6);
}

/// The message, and what stands under the caret.
#[track_caller]
fn refused(query: &str) -> (String, String) {
    let answer = ask(&mut inches(), query);
    let error = &answer["error"];
    assert!(!error.is_null(), "{query}: {answer}");
    let at = |end: usize| usize::try_from(error["at"][end].as_u64().unwrap()).unwrap();
    (
        format!("{} {}", error["message"].as_str().unwrap(), error["hint"].as_str().unwrap_or("")),
        query[at(0)..at(1)].to_owned(),
    )
}

#[test]
fn what_cannot_be_is_refused_at_its_place() {
    for (query, says, under) in [
        ("circlip 23mm shaft", "22 mm, 24 mm", "23mm"),
        ("retaining ring 2.9in shaft", "2 in", "2.9in"),
        ("circlip 20mm", "a shaft or a bore is not said", "circlip 20mm"),
        ("spring pin 0.3in", "1/4 in, 5/16 in", "0.3in"),
        ("taper pin 15 long 2in", "from 7/0 to 0", "15"),
        ("taper pin 4 long 8in", "0.0833", "8in"),
        ("woodruff 600", "605, 606, 607", "600"),
        ("woodruff 1212 shaft 1/2in", "goes through", "1/2in"),
        ("square plug 1in wall 0.065in inside 0.935in", "a wall of 0.0325 in", "0.935in"),
        ("square plug 1in wall 0.6in", "leaves no bore", "0.6in"),
        ("square plug 9in wall 0.2in", "lists no tube", "9in"),
        ("o-ring 999 face", "004 to 028", "999"),
        ("o-ring 3mm piston static bore 40mm", "0.103 in, 0.139 in", "3mm"),
        ("cross pin shaft 20mm pin 11mm", "more than half", "11mm"),
        ("cross pin shaft 1in collar 0.9in", "no wall", "0.9in"),
        ("retaining ring 20mm shaft wobbly", "`wobbly` is not understood", "wobbly"),
        ("clevis pin 12mm", "7/16 in, 1/2 in", "12mm"),
        ("roll pin 1/4in 5/16in", "a word is missing", "5/16in"),
    ] {
        let (message, place) = refused(query);
        assert!(message.contains(says), "{query}: {message}");
        assert_eq!(place, under, "{query}: {message}");
    }
}

#[test]
fn a_number_that_may_be_two_pins_is_asked() {
    let answer = ask(&mut Session::new(), "taper pin 4");
    let choices = answer["error"]["choices"].as_array().unwrap_or_else(|| panic!("{answer}"));
    assert_eq!(choices.len(), 2);
    for choice in choices {
        takes(&mut Session::new(), choice.as_str().unwrap());
    }
    // With its sign it is a number.
    takes(&mut Session::new(), "taper pin #4");
}

#[test]
fn a_groove_that_is_still_or_moves_is_asked() {
    let answer = ask(&mut Session::new(), "o-ring 210 piston bore 1in");
    let choices = answer["error"]["choices"].as_array().unwrap_or_else(|| panic!("{answer}"));
    let said: Vec<_> = choices.iter().filter_map(|choice| choice.as_str()).collect();
    assert_eq!(said, ["o-ring 210 bore 1in piston static", "o-ring 210 bore 1in piston moving"]);
    for choice in said {
        takes(&mut Session::new(), choice);
    }
}

#[test]
fn recalled_figures_say_so() {
    let known = |query: &str| takes(&mut inches(), query)["known"].clone();
    assert_eq!(known("retaining ring 3/4in shaft"), "memory");
    assert_eq!(known("retaining ring 0.125in shaft"), "memory", "the ring's thickness");
    assert_eq!(known("retaining ring 20mm shaft"), "seen");
    assert_eq!(known("spring pin 3/4in"), "memory");
    assert_eq!(known("spring pin 1/4in"), "seen");
}

#[test]
fn a_keyway_cut_wrong_has_ways_out() {
    let mut session = inches();
    let wide = takes(&mut session, "keyway for 1in wide 0.255in");
    let cut = &wide["cut"];
    assert_eq!(cut["verdict"], "over");
    // 1/4 key: keyseat 0.250 +0.002; the key cut from bar +0 -0.002 (ANSI B17.1, class 1).
    near(cut["off_mm"].as_f64().unwrap(), 0.003 * IN, 1e-9);
    near(cut["make_min_mm"].as_f64().unwrap(), 0.251 * IN, 1e-9);
    near(cut["make_max_mm"].as_f64().unwrap(), 0.253 * IN, 1e-9);
    near(cut["next_width_mm"].as_f64().unwrap(), 0.3125 * IN, 1e-9);
    let deep = takes(&mut session, "keyway for 1in across 0.830in");
    // S = 0.859 +0 -0.015: 0.8442 is its least (Machinery's Handbook 31 p. 2552).
    near(deep["cut"]["off_mm"].as_f64().unwrap(), 0.0141 * IN, 4e-3);
    let good = takes(&mut session, "keyway for 1in hub deep 0.135in");
    assert_eq!(good["cut"]["verdict"], "good");
    let more = takes(&mut session, "keyway for 1in hub across 1.110in");
    assert_eq!(more["cut"]["verdict"], "cut more");
    let said = takes(&mut session, "keyway cut too wide, .255 in a 1in shaft");
    assert_eq!(said["cut"]["of"], "width");
}

#[test]
fn a_key_sits_as_the_standard_says() {
    let mut session = Session::new();
    let limits = |answer: &Value, name: &str| {
        let of = |end: &str| answer[format!("{name}_{end}_mm")].as_f64().unwrap();
        (of("min"), of("max"))
    };
    // DIN 6885-1: 8 P9 and 8 H9, 8 D10 (ISO 286-2).
    let tight = takes(&mut session, "keyway for 25mm tight");
    assert_eq!(limits(&tight, "hub_width"), (7.949, 7.985));
    let sliding = takes(&mut session, "keyway for 25mm sliding");
    assert_eq!(limits(&sliding, "shaft_width"), (8.0, 8.036));
    assert_eq!(limits(&sliding, "hub_width"), (8.04, 8.098));
    // ANSI B17.1, class 2: key stock over nominal; the widths from memory.
    let inch = takes(&mut session, "keyway for 1in tight");
    assert_eq!(inch["known"], "memory");
    assert_eq!(limits(&inch, "key"), (6.35, 6.3754));
}
