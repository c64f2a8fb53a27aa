//! Questions of the kind that people ask in public about parts out of the drawer,
//! each with the main figure of its answer and where that comes from. With those of
//! `rescue_asked_in_public.rs` there are more than fifty.

use fits_checks::takes;
use fits_repl::session::Session;
use serde_json::Value;

/// A question as it is asked, where its figure stands, the figure in millimetres (or
/// kilograms), and its source.
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
        "/pin_fits/1/clearance/min_mm",
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
    (
        // "How deep do I groove a 20 shaft for a circlip?"
        "circlip 20mm shaft",
        "/sizes/0/min_mm",
        18.87,
        "groove 19 h11 (DIN 471): h11 at 18 to 30 mm is -130 um (ISO 286-2)",
    ),
    (
        // "How wide may that groove be?"
        "circlip 20mm shaft",
        "/sizes/1/max_mm",
        1.44,
        "width 1.3 H13 (DIN 471): IT13 up to 3 mm is 140 um (ISO 286-1)",
    ),
    (
        // "Groove to keep a 6005 in its housing?"
        "circlip 47mm bore",
        "/sizes/0/max_mm",
        49.75,
        "groove 49.5 H12 (DIN 472): IT12 at 30 to 50 mm is 250 um (ISO 286-1)",
    ),
    (
        // "Circlip in a 30 bore, groove size?"
        "circlip 30mm bore",
        "/sizes/0/min_mm",
        31.4,
        "DIN 472, the row of 30 mm",
    ),
    (
        // "How sloppy may the hole for a 6 mm roll pin be?"
        "spring pin 6mm",
        "/sizes/0/max_mm",
        6.12,
        "the hole is H12 (ISO 8752): IT12 at 3 to 6 mm is 120 um (ISO 286-1)",
    ),
    (
        // "And for an 8?"
        "spring pin 8mm",
        "/sizes/0/max_mm",
        8.15,
        "the hole is H12 (ISO 8752): IT12 at 6 to 10 mm is 150 um (ISO 286-1)",
    ),
    (
        // "How big is the fat end of a 6 x 50 taper pin?"
        "taper pin 6mm long 50mm",
        "/sizes/2/max_mm",
        7.0,
        "1 in 50 over 50 mm is 1 mm: geometry (ISO 2339)",
    ),
    (
        // "Small end of a No. 3 taper pin 2 in long?"
        "taper pin 3 long 2in",
        "/sizes/1/min_mm",
        (0.219 - 2.0 / 48.0) * 25.4,
        "No. 3 is 0.2190 in at its large end, 1 in 48 (ASME B18.8.2): geometry",
    ),
    (
        // "Keyway depth in a 20 shaft?"
        "keyway for 20mm",
        "/shaft_depth_min_mm",
        3.5,
        "DIN 6885-1, 17 to 22 mm: key 6 x 6, t1 3.5",
    ),
    (
        // "What key goes in a 25 shaft?"
        "keyway for 25mm",
        "/width_mm",
        8.0,
        "DIN 6885-1, 22 to 30 mm: key 8 x 7",
    ),
    (
        // "Key for a 3/4 shaft?"
        "keyway for 3/4in",
        "/width_mm",
        0.1875 * 25.4,
        "ANSI B17.1, Table 1: over 9/16 to 7/8 in",
    ),
    (
        // "What should I mic from the keyway's bottom to the far side?"
        "keyway for 3/4in",
        "/across_shaft_max_mm",
        (0.75 - 0.023_816 / 2.0 - 0.09375) * 25.4,
        "S by the formula of ANSI B17.1",
    ),
    (
        // "Key for an inch shaft?"
        "keyway for 1in",
        "/width_mm",
        6.35,
        "ANSI B17.1, Table 1: over 7/8 to 1-1/4 in",
    ),
    (
        // "Key for inch and a half?"
        "keyway for 1-1/2in",
        "/width_mm",
        9.525,
        "ANSI B17.1, Table 1: over 1-3/8 to 1-3/4 in",
    ),
    (
        // "What cutter for a 404 Woodruff?"
        "woodruff 404",
        "/sizes/6/min_mm",
        12.7,
        "the last two figures are eighths of an inch of diameter (ANSI B17.2)",
    ),
    (
        // "How wide is that key?"
        "woodruff 404",
        "/sizes/5/min_mm",
        3.175,
        "the figures before them are 32nds of an inch of width (ANSI B17.2)",
    ),
    (
        // "What bore takes a 608?"
        "bearing 608",
        "/outside_mm",
        22.0,
        "ISO 15, dimension series 10 of bore 8",
    ),
    (
        // "How thick is a 6203?"
        "bearing 6203",
        "/width_mm",
        12.0,
        "ISO 15, dimension series 02 of bore 17",
    ),
    (
        // "Outside of a 6310?"
        "bearing 6310",
        "/outside_mm",
        110.0,
        "ISO 15, dimension series 03 of bore 50",
    ),
    (
        // "How small can a 3/8 shoulder bolt be?"
        "shoulder screw 3/8in",
        "/lower_mm",
        0.371 * 25.4,
        "ASME B18.3: 0.373 to 0.371 in",
    ),
    (
        // "And a 1/2?"
        "shoulder screw 1/2in",
        "/lower_mm",
        0.496 * 25.4,
        "ASME B18.3: 0.498 to 0.496 in",
    ),
    (
        // "What does a 1/2 dowel really mic?"
        "dowel 1/2in",
        "/lower_mm",
        0.5001 * 25.4,
        "ASME B18.8.2: 0.5001 to 0.5003 in",
    ),
    (
        // "What is a screw of .308 and 18 threads?"
        "thread 0.308in 18 tpi",
        "/threads/0/crest_max_mm",
        0.3113 * 25.4,
        "5/16-18 UNC 2A: 0.3113 in at most (ASME B1.1)",
    ),
    (
        // "And one of .372 and 24?"
        "thread 0.372in 24 tpi",
        "/threads/0/crest_max_mm",
        0.3739 * 25.4,
        "3/8-24 UNF 2A: 0.3739 in at most (ASME B1.1)",
    ),
    (
        // "7.85 over the crests, pitch 1.25?"
        "thread 7.85 pitch 1.25",
        "/threads/0/crest_max_mm",
        7.972,
        "M8 6g: 28 um under 8 mm (ISO 965-1)",
    ),
    (
        // "How far to bore an egged hole .768 by .771?"
        "clean up 0.768in 0.771in should be 3/4in",
        "/cleans_up_on_old_middle_mm",
        0.774 * 25.4,
        "geometry: 3 thou of wear to one side is 6 on the diameter about the old middle",
    ),
    (
        // "My 3/4 shaft won't go into the bush I pressed, .7485"
        "bushing in place 0.7485in, bronze, shaft 3/4in",
        "/clearance/min_mm",
        -0.0015 * 25.4,
        "a difference",
    ),
    (
        // "How much for an inch iron piston?"
        "piston 1in cast iron in cast iron",
        "/clearance_min_mm",
        0.0254,
        "0.001 of the bore (a handbook's rule, named in the answer's data)",
    ),
    (
        // "What does a foot of inch bar weigh?"
        "weight 1in steel long 12in",
        "/weight_kg",
        1.212_39,
        "the section by the length by 7850 kg/m3",
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
