//! What a drill commonly cuts, against the probable holes that a maker prints:
//! YG-1 catalogue, tap drill chart, p. 390, read. The farthest are 3/64 and 59/64
//! in, 0.000375 in off; `data/drills/oversize.csv` says 0.0004.

use fits_checks::rows;
use fits_core::{Length, shop::tap::Oversize};

/// Drill and probable hole, in ten-thousandths of an inch.
const PRINTED: [(i64, i64); 38] = [
    (469, 484),
    (595, 610),
    (700, 717),
    (785, 804),
    (820, 839),
    (890, 910),
    (935, 955),
    (1015, 1038),
    (1040, 1063),
    (1065, 1088),
    (1130, 1156),
    (1360, 1389),
    (1495, 1527),
    (1590, 1622),
    (1770, 1805),
    (1820, 1855),
    (2010, 2048),
    (2130, 2168),
    (2570, 2608),
    (2720, 2761),
    (3125, 3169),
    (3320, 3364),
    (3680, 3726),
    (3906, 3952),
    (4219, 4266),
    (4531, 4578),
    (4844, 4892),
    (5156, 5204),
    (5312, 5362),
    (5781, 5831),
    (6562, 6613),
    (6875, 6925),
    (7656, 7708),
    (8125, 8177),
    (8750, 8809),
    (9219, 9279),
    (9844, 9911),
    (10469, 10541),
];

#[test]
fn the_probable_holes_of_a_catalogue() {
    let tenth = Length::THOU.half().checked_scale(1, 5).unwrap();
    let mut farthest = 0.0_f64;
    for (drill, hole) in PRINTED {
        let drill = tenth.checked_mul(drill).unwrap();
        let found = drill.checked_add(Oversize::of(drill).unwrap().commonly).unwrap();
        let gap =
            (found.millimetres() / 25.4 - f64::from(i32::try_from(hole).unwrap()) / 1e4).abs();
        assert!(gap <= 0.0004, "{drill}: {gap}");
        farthest = farthest.max(gap);
    }
    // What the rows say of themselves is what was found.
    assert!(farthest > 0.0003, "{farthest}");
    for row in rows("data/drills/oversize.csv") {
        let says = row.text("source").contains("agree to 0.0004 in");
        assert_eq!(says, row.text("kind") == "commonly", "{row}");
    }
}
