//! Bushings by bore, outside and length: what inch sintered ones are sold as, and
//! that what holds them is asked for.
//!
//! No table of ASTM B438 was read. As handbooks are recalled it gives limits 1 thou
//! wide to 1 in, 1.5 to 1-1/2 and 2 to 2 in, and presses of 1 to 3 thou to 0.760 in
//! of outside in a rigid housing, 1.5 to 4 to 1.510: the one listed size of 841
//! bronze (3/8 by 9/16: outside 2 to 3 thou over, bore 0.5 to 1.5) agrees with both.

use fits_checks::{ask, takes};
use fits_repl::session::Session;
use serde_json::Value;

fn thou(value: &Value) -> f64 {
    value.as_f64().unwrap_or_else(|| panic!("{value}")) / 0.0254
}

#[test]
fn inch_sintered_bushes_press_into_a_reamed_hole() {
    for (bore, outside, press, width) in [
        ("3/8in", "9/16in", (1.0, 3.0), 1.0),
        ("1/2in", "5/8in", (1.0, 3.0), 1.0),
        ("1/4in", "3/8in", (1.0, 3.0), 1.0),
        ("3/4in", "1in", (1.0, 4.0), 1.0),
        ("1in", "1-1/4in", (1.0, 4.0), 1.5),
    ] {
        let query = format!("bushing {bore} od {outside} long {bore}, hub steel, sintered bronze");
        let answer = takes(&mut Session::new(), &query);
        let found = &answer["outside"];
        let wide = thou(&found["upper_mm"]) - thou(&found["lower_mm"]);
        assert!((wide - width).abs() < 0.01, "{query}: {found}");
        let tight = &answer["interference"];
        let (least, most) = (thou(&tight["min_mm"]), thou(&tight["max_mm"]));
        assert!(least >= press.0 && most <= press.1 + 0.01, "{query}: {tight}");
        assert_eq!(answer["known"], "memory", "{query}");
        assert_eq!(answer["sized_by"], "burnish", "{query}: porous bronze is never reamed");
        assert!(answer["notes"].to_string().contains("mic yours"), "{query}: {answer}");
    }
    // The listed size itself.
    let listed = takes(
        &mut Session::new(),
        "bushing 3/8in od 9/16in long 1/2in, hub steel, sintered bronze",
    );
    assert!((thou(&listed["outside"]["lower_mm"]) - 564.5).abs() < 0.01, "{listed}");
    assert!((thou(&listed["bore"]["upper_mm"]) - 376.5).abs() < 0.01, "{listed}");
}

/// ISO 2795 stays what metric ones are sold to: r7 and s7 outside, F7 and G7 inside.
#[test]
fn metric_ones_go_by_their_standard() {
    let answer =
        takes(&mut Session::new(), "bushing 10mm od 16mm long 16mm, hub steel, sintered bronze");
    assert_eq!(answer["outside"]["lower_mm"], 16.023, "{answer}");
    assert_eq!(answer["outside"]["upper_mm"], 16.046, "{answer}");
}

#[test]
fn by_three_sizes_the_housing_is_asked() {
    for phrase in ["1/2 x 5/8 x 3/4 oilite bushing", "flanged oilite bushing 1/2 x 5/8 x 3/4"] {
        let mut session = Session::new();
        let asked = ask(&mut session, phrase);
        let choices = asked["error"]["choices"].as_array().unwrap_or_else(|| panic!("{asked}"));
        assert!(choices.len() >= 2, "{asked}");
        for choice in choices {
            let answer = takes(&mut session, choice.as_str().unwrap());
            assert_eq!(answer["kind"], "sintered bronze", "{choice}");
        }
    }
    let told = takes(&mut Session::new(), "1/2 x 5/8 x 3/4 oilite bushing in a steel housing");
    assert_eq!(told["answer"], "bushing_fit", "{told}");
}
