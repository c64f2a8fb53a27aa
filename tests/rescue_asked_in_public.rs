//! Questions of the kind that people put to a shop in public, in our own words, with
//! the answer's main figure and where it comes from.

use fits_checks::{near, takes};
use fits_repl::session::Session;
use serde_json::Value;

/// A question, the figure that answers it, what it is, and where that comes from.
const ASKED: [(&str, &str, f64, &str); 14] = [
    (
        "my shaft came out .7478, supposed to be .7495, press fit",
        "/ways/0/limits/0/max_mm",
        0.7472 * 25.4,
        "FN2 at 3/4 in: 6 tenths to 1.9 thou of interference (ANSI B4.1): bore 0.7459 to 0.7472 in",
    ),
    (
        "bearing spins in its bore 1.852 for 47 mm",
        "/gap_max_mm",
        1.852 * 25.4 - 46.989,
        "outside 47 -0.011 mm (ISO 492, class Normal)",
    ),
    (
        "egged hole .753 by .761 for a 3/4 pin",
        "/ways/0/amounts/cleans_up_on_old_middle_mm",
        0.769 * 25.4,
        "geometry: the worn side lies 8 thou further from the old middle, so 16 on the diameter",
    ),
    (
        "rescue hole 3 thou over 3/4in, long 1in",
        "/gap_max_mm",
        0.0762,
        "three thou; a thin high-strength compound closes 0.15 mm",
    ),
    (
        "clean up 0.753in 0.757in 0.761in, should be 3/4in",
        "/next_mm",
        49.0 / 64.0 * 25.4,
        "the next 64th over 0.761 in",
    ),
    (
        "clean up 60.02 60.35 60.21, was 60, out of line 0.15",
        "/cleans_up_mm",
        60.65,
        "geometry: the greatest reading and twice what a place lies off the bar",
    ),
    (
        "thread .308 18 tpi",
        "/threads/0/crest_max_mm",
        0.3113 * 25.4,
        "ASME B1.1, 5/16-18 UNC-2A, greatest major diameter",
    ),
    ("7.85 1.25", "/threads/0/crest_min_mm", 7.76, "ISO 965-2, M8 6g, least major diameter"),
    ("thread 20.9mm 14 tpi", "/threads/0/crest_max_mm", 20.955, "ISO 228-1, G1/2, major diameter"),
    (
        "insert 1/4-20",
        "/tap_pitch_diameter_mm",
        0.2825 * 25.4,
        "D + 0.6495 P, recalled; a forming-tap maker's minor diameters fit the form",
    ),
    (
        "thread square 1in 5 tpi",
        "/half_pitch_mm",
        2.54,
        "half the pitch deep and wide, by the form",
    ),
    (
        "aluminium piston 1in in a cast iron cylinder at 150C",
        "/rule_min_mm",
        0.0762,
        "three thou an inch at the skirt of an air-cooled engine, recalled",
    ),
    (
        "piston 1.5in ringed cast iron in cast iron",
        "/clearance_min_mm",
        0.254,
        "ten thou for a ringed steam piston of 1-1/2 in (steam builders' discussion, chaski.org)",
    ),
    (
        "share 60Nm, shaft 25mm, press 35Nm, cross pin 6mm",
        "/parts/1/takes_n_m",
        25.0,
        "what the press leaves of 60 N m",
    ),
];

#[test]
fn each_is_answered_with_its_main_figure() {
    for (question, pointer, wanted, from) in ASKED {
        let answer: Value = takes(&mut Session::new(), question);
        let found = answer.pointer(pointer).and_then(Value::as_f64);
        let found = found.unwrap_or_else(|| panic!("{question}: no {pointer} in {answer}"));
        assert!(!from.is_empty());
        // Four figures are what the sources print.
        near(found, wanted, 2e-4);
    }
}
