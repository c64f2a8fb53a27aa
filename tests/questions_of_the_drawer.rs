//! Questions of the kind that people ask in public about parts out of the drawer,
//! each with the main figure of its answer and where that comes from.

use fits_checks::takes;
use fits_repl::session::Session;
use serde_json::Value;

/// A question as it is asked, where its figure stands, the figure in millimetres,
/// and its source.
const ASKED: &[(&str, &str, f64, &str)] = &[
    (
        // "What do I turn the spindle to for a 6205?"
        "bearing 6205, shaft turns, normal",
        "/seats/0/upper_mm",
        25.011,
        "k5 at 18 to 30 mm is +2 to +11 um (ISO 286-2), the class by ABMA 7",
    ),
    (
        // "6203 idler: bore of the pulley?"
        "6203 bearing, housing turns",
        "/seats/3/lower_mm",
        39.967,
        "N7 at 30 to 50 mm is -33 to -8 um (ISO 286-2), the class by ABMA 7",
    ),
    (
        // "How big a radius may I leave at the shoulder of a 6204?"
        "bearing 6204",
        "/fillet_under_mm",
        1.0,
        "least corner of 6204: 1 mm (ISO 15, a bearing maker's list)",
    ),
    (
        // "R8 with shields, how wide is the pocket?"
        "bearing R8 shielded",
        "/width_mm",
        7.9375,
        "5/16 in, two lists of R bearings",
    ),
    (
        // "Aluminium housing for a 6204: the table says H7?"
        "6204 in aluminium housing, shaft turns",
        "/seats/4/lower_mm",
        46.989,
        "J7 at 30 to 50 mm is -11 to +14 um (ISO 286-2): one step tighter than H7, common practice",
    ),
    (
        // "Shoulder bolt as a pivot in a reamed 3/8 hole: how sloppy is that?"
        "shoulder screw 3/8, running",
        "/clearance/max_mm",
        0.0049 * 25.4,
        "hole 0.3750 to 0.3759 (RC4, ASME B4.1), screw 0.371 to 0.373 (ASME B18.3)",
    ),
    (
        // "Hole for 1018 cold rolled 3/4 to spin in"
        "low-carbon cold drawn bar 3/4in, running",
        "/hole/lower_mm",
        0.7508 * 25.4,
        "bar at most 0.750, RC4's least clearance at 0.71 to 1.19 in: 0.8 thou (ASME B4.1)",
    ),
    (
        // "Bronze bush mics under after I pressed it, what do I turn the pin to?"
        "bushing in place 0.7485in, bronze, running 0.001in..0.002in",
        "/shaft/aim_mm",
        0.7470 * 25.4,
        "the bore less the middle of the play: a sum",
    ),
    (
        // "What hole does a 1/2 x 5/8 oil-bronze bush go in?"
        "bushing 1/2in od 5/8in long 3/4in, hub steel, sintered bronze",
        "/housing/upper_mm",
        15.893,
        "H7 at 10 to 18 mm is 0 to 18 um (ISO 286-2)",
    ),
    (
        // "My 1/4 reamer leaves .2508, will a dowel stay in?"
        "reamer 1/4in cut 0.2508in",
        "/pins/1/clearance/min_mm",
        0.0005 * 25.4,
        "dowel 1/4: 0.2501 to 0.2503 in (ASME B18.8.2): it drops in",
    ),
    (
        // "Drawing says .750 and nothing else"
        "title block 0.750in",
        "/sets/0/plus_minus_mm",
        0.005 * 25.4,
        "three decimals, machined parts: common practice, no source",
    ),
];

#[test]
fn each_has_its_figure() {
    for (question, at, figure, source) in ASKED {
        let answer: Value = takes(&mut Session::new(), question);
        let found = answer.pointer(at).and_then(Value::as_f64);
        let found = found.unwrap_or_else(|| panic!("{question}: no {at}: {answer}"));
        assert!((found - figure).abs() < 2e-4, "{question}: {found}, not {figure} ({source})");
    }
}
