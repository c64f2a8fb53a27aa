//! Sizes are read exactly, and doubtful ones refused with their place.

use fits_core::Length;

#[track_caller]
fn reads(text: &str, count: i64) {
    assert_eq!(text.parse::<Length>().map(Length::tenth_nanometres), Ok(count), "{text}");
}

#[track_caller]
fn refused(text: &str) -> (String, Option<core::ops::Range<usize>>) {
    let error = text.parse::<Length>().expect_err(text);
    (error.to_string(), error.span())
}

#[test]
fn sizes_are_read_exactly() {
    reads("20mm", 200_000_000);
    reads(" 20 mm ", 200_000_000);
    reads("0.75in", 190_500_000);
    reads(".7503 in", 190_576_200);
    reads("3/4in", 190_500_000);
    reads("1-1/2in", 381_000_000);
    reads("3/4\"", 190_500_000);
    reads("3/4\u{201d}", 190_500_000);
    reads("15 thou", 3_810_000);
    reads("15thou", 3_810_000);
    reads("2 tenths", 50_800);
    reads("0.4um", 4_000);
    reads("0.4 \u{b5}m", 4_000);
    reads("0.4 \u{3bc}m", 4_000);
    reads("1/64 in", 3_968_750);
    reads("1/128 in", 1_984_375);
    reads("0.0078125in", 1_984_375);
    reads("-5 um", -50_000);
    reads("\u{2212}5 um", -50_000);
    // 1/256 in is 992 187.5 counts: halves go to even.
    reads("1/256 in", 992_188);
    reads("3/256 in", 2_976_562);
}

#[test]
fn doubtful_sizes_are_refused_with_the_place() {
    assert_eq!(refused("20").0, "the size has no unit");
    assert_eq!(
        refused("20,5mm"),
        ("a comma inside a number can mean a decimal point or thousands".into(), Some(2..3))
    );
    assert_eq!(refused("1e9mm"), ("sizes are not written with an exponent".into(), Some(0..3)));
    assert_eq!(refused("20.mm"), ("a digit is missing after the point".into(), Some(3..3)));
    assert_eq!(refused("1/0in"), ("a fraction over zero is not a size".into(), Some(2..3)));
    assert_eq!(
        refused("0.1234567in"),
        ("the size is finer than 0.1 nm, the smallest step kept".into(), Some(0..11))
    );
    assert_eq!(
        refused("99999999999999999mm").0,
        "the size is out of range: lengths end near 900 000 km"
    );
    assert_eq!(refused("mm").0, "a size begins with a number");
    assert_eq!(refused("20 mm H7"), ("something follows the size".into(), Some(5..8)));
    assert_eq!(refused(""), ("a size begins with a number".into(), Some(0..0)));
}
