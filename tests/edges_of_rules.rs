//! Rules whose border is a size that may be typed: on it and just beside it.

use fits_repl::session::Session;

fn is_answered(query: &str) -> bool {
    Session::new().evaluate(query).is_ok()
}

/// ISO 286-1:2010, tables 2 and 4: deviations A and B are not for sizes up to
/// and including 1 mm, and neither are grades above IT13.
#[test]
fn one_millimetre_belongs_to_the_sizes_below() {
    for class in ["A11", "B9", "a11", "b9", "H14", "h14"] {
        for (size, wanted) in [("0.9999", false), ("1", false), ("1.0001", true)] {
            let query = format!("{size}mm {class}");
            assert_eq!(is_answered(&query), wanted, "{query}");
        }
    }
    for class in ["C11", "c11", "H13", "h13"] {
        assert!(is_answered(&format!("1 {class}")), "1 {class}");
    }
}
