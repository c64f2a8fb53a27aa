//! Rings, pins, Woodruff keys, O-rings and tube against rows read elsewhere, against
//! the standards' own rules, and against pages that are known to be wrong.

use fits_checks::{Row, rows};
use fits_core::{
    Length,
    size::Unit,
    standards::{
        hardware::{
            CotterPin, Gland, GlandUse, RetainingRing, RingKind, SpringPin, SpringPinKind,
            TaperPin, Woodruff,
        },
        iso286::{Class, Grade, standard_tolerance},
    },
};

fn mm(value: f64) -> Length {
    fits_checks::mm(value)
}

fn inches(value: f64) -> Length {
    fits_checks::inches(value)
}

fn of(row: &Row, column: &str) -> f64 {
    let unit = if row.text("unit") == "mm" { Unit::Millimetre } else { Unit::Inch };
    row.length(row.text(column), unit).millimetres()
}

fn of_kind(kind: &str) -> Vec<Row> {
    rows("data/hardware/rings.csv").into_iter().filter(|row| row.text("kind") == kind).collect()
}

/// A groove's class, where the tables keep to one.
fn class(kind: &str, groove: f64) -> &'static str {
    match (kind, groove) {
        ("din471", groove) if groove < 9.5 => "h10",
        ("din471", groove) if groove < 21.5 => "h11",
        ("din471", _) => "h12",
        (_, groove) if groove < 23.5 => "H11",
        _ => "H12",
    }
}

/// Grooves whose tolerance is not the class's, and why.
const OFF_THE_CLASS: [(&str, &str, &str); 1] =
    [("din471", "10", "the tighter of two sheets, 0.06, is kept; h11 gives 0.09")];

// The classes of DIN 471 and 472 (h10, h11, h12; H11, H12), their tolerances after
// ISO 286-2; the width is H13.
#[test]
fn din_grooves_are_toleranced_by_class() {
    for kind in ["din471", "din472"] {
        let mut compared = 0;
        for row in of_kind(kind) {
            let (low, high) = (of(&row, "groove_low"), of(&row, "groove_high"));
            let nominal = if kind == "din471" { high } else { low };
            let ledger =
                OFF_THE_CLASS.iter().find(|(k, on, _)| *k == kind && *on == row.text("on"));
            let class: Class = class(kind, nominal).parse().unwrap();
            let limits = class.limits(mm(nominal)).unwrap();
            let agrees = (limits.lower(), limits.upper()) == (mm(low), mm(high));
            // A list may keep to a hundredth where the class has thousandths.
            let near = (limits.tolerance().millimetres() - (high - low)).abs() < 0.0101;
            assert_eq!(agrees || near, ledger.is_none(), "{row}: {low} to {high}, {class}");
            let width = Grade::it(13).unwrap();
            let wanted = of(&row, "width_high") - of(&row, "width_low");
            let least = mm(of(&row, "width_low"));
            let it13 = standard_tolerance(width, least).unwrap().millimetres();
            assert!((it13 - wanted).abs() < 1e-9, "{row}: width {wanted}, IT13 {it13}");
            compared += 1;
        }
        assert!(compared >= 50, "{kind}: {compared}");
    }
}

// DIN 471 and 472: the land n is three times the groove's depth, rounded up to a
// tenth, from 18 mm on; below that no less.
#[test]
fn the_land_is_three_depths() {
    for kind in ["din471", "din472"] {
        for row in of_kind(kind) {
            if row.text("edge").is_empty() {
                continue;
            }
            let nominal =
                if kind == "din471" { of(&row, "groove_high") } else { of(&row, "groove_low") };
            let depth = (of(&row, "on") - nominal).abs() / 2.0;
            let edge = of(&row, "edge");
            assert!(
                edge >= 3.0 * depth - 1e-9 && edge < 3.0 * depth + 0.16,
                "{row}: {edge} for {depth}"
            );
        }
    }
}

/// Rows of other sheets: shaft or bore, what they print for the groove, and why that
/// is not followed; none where it is.
const OTHER_SHEETS: [(RingKind, f64, f64, &str, &str); 8] = [
    // capitalbolts.in/din-471.
    (RingKind::Din471, 12.0, 11.5, "capitalbolts.in/din-471", ""),
    (RingKind::Din471, 18.0, 17.0, "capitalbolts.in/din-471", ""),
    // vdocuments.mx, standard internal circlips DIN 472; KS B 1336.
    (RingKind::Din472, 12.0, 12.5, "maker's sheet, vdocuments.mx; KS B 1336", ""),
    (RingKind::Din472, 13.0, 13.6, "KS B 1336, gubong33.tistory.com", ""),
    // Slips.
    (RingKind::Din471, 25.0, 24.9, "maker's sheet IS 3075", "its own depth 0.55 gives 23.9"),
    (RingKind::Din471, 34.0, 31.3, "maker's sheet IS 3075", "its own depth 0.85 gives 32.3"),
    (RingKind::Din471, 52.0, 49.5, "maker's sheet SNAPRING", "its own depth 1.5 gives 49"),
    (
        RingKind::Din471,
        20.0,
        18.7,
        "engineeringhardware.com",
        "it prints sizes of the ring, and not DIN's, under groove diameter",
    ),
];

#[test]
fn other_sheets_agree_or_are_known_to_slip() {
    for (kind, on, groove, sheet, why) in OTHER_SHEETS {
        let ring = RetainingRing::find(kind, mm(on)).unwrap()[0];
        let limits = ring.groove().unwrap();
        let nominal = if kind == RingKind::Din471 { limits.upper() } else { limits.lower() };
        assert_eq!(nominal == mm(groove), why.is_empty(), "{sheet} at {on}: {why}");
    }
}

// MS3215C (fasteningdevices.emilspec.com/MS3215/page02.html), reinforced E-rings:
// the same grooves as MS16633's, with tolerances.
#[test]
fn e_ring_grooves_are_those_of_a_second_sheet() {
    for (shaft, groove) in [
        (0.125, 0.095),
        (0.156, 0.116),
        (0.188, 0.147),
        (0.25, 0.21),
        (0.312, 0.25),
        (0.375, 0.303),
    ] {
        let ring = RetainingRing::find(RingKind::ERing, inches(shaft)).unwrap()[0];
        assert!(ring.groove().unwrap().contains(inches(groove)), "{shaft}");
    }
}

// A ring is never thicker than its groove is wide, and its groove is a groove.
#[test]
fn every_ring_goes_into_its_groove() {
    for row in rows("data/hardware/rings.csv") {
        assert!(of(&row, "thick_high") < of(&row, "width_low"), "{row}: the ring binds");
        let is_bore = matches!(row.text("kind"), "din472" | "internal");
        let on = of(&row, "on");
        if is_bore {
            assert!(of(&row, "groove_low") > on, "{row}");
        } else {
            assert!(of(&row, "groove_high") < on, "{row}");
        }
    }
}

// ISO 8752: the hole is H12 (ISO 286-2), and the pin is larger.
#[test]
fn metric_spring_pin_holes_are_h12() {
    let class: Class = "H12".parse().unwrap();
    let mut count = 0;
    for row in rows("data/hardware/spring_pins.csv") {
        assert!(of(&row, "pin_low") > of(&row, "hole_high"), "{row}: the pin is loose");
        if row.text("kind") != "iso8752" {
            continue;
        }
        let size = mm(of(&row, "size"));
        let pin = SpringPin::find(SpringPinKind::Iso8752, size).unwrap();
        assert_eq!(pin.hole().unwrap(), class.limits(size).unwrap(), "{row}");
        count += 1;
    }
    assert_eq!(count, 16);
}

// Slotted and coiled pins of one size go into holes that overlap (ASME B18.8.2, two
// tables of different reprints), so a drill that suits one may suit the other.
#[test]
fn two_reprints_of_inch_spring_pin_holes_agree() {
    for size in ["1/16in", "5/64in", "3/32in", "1/8in", "5/32in", "3/16in", "7/32in", "1/4in"] {
        let size: Length = size.parse().unwrap();
        let hole = |kind| SpringPin::find(kind, size).unwrap().hole().unwrap();
        let (slotted, coiled) = (hole(SpringPinKind::Slotted), hole(SpringPinKind::Coiled));
        assert_eq!(slotted.upper(), coiled.upper(), "{size}");
    }
}

/// Drills of TM 9-254 that stand over the pin's small end by more than half a thou: the
/// next smaller one is given.
const STANDS_OVER: usize = 16;

// US Army TM 9-254, Table 3-1, against large end - length / 48.
#[test]
fn taper_pin_drills_are_near_the_small_end_and_never_over() {
    let mut over = 0;
    for row in rows("data/hardware/taper_pin_drills.csv") {
        let pin = TaperPin::inch(row.text("pin")).unwrap();
        let length = row.length(row.text("length"), Unit::Inch);
        let [small, _] = pin.ends(length).unwrap();
        let rule = pin.size().millimetres() - length.millimetres() / 48.0;
        assert!((small.millimetres() - rule).abs() < 1e-6, "{row}");
        let listed = of(&row, "size");
        assert!((-0.0056..0.0029).contains(&((listed - rule) / 25.4)), "{row}: {listed}");
        let (drill, _, _) = pin.drill(length).unwrap();
        assert!(drill.diameter() <= small, "{row}: {} is over the small end", drill.name());
        if (listed - rule) / 25.4 > 0.0005 {
            over += 1;
        }
        // A drill of that name has that size (tests/published of the drills).
        if drill.name().trim_start_matches('#').trim_end_matches(" in") == row.text("drill") {
            assert!((drill.diameter().millimetres() - listed).abs() < 0.002, "{row}");
        }
    }
    assert_eq!(over, STANDS_OVER);
}

// acamthai.com: the hole is 1/64 over the size below 5/16, the size itself from there.
#[test]
fn cotter_holes_keep_to_their_rule() {
    for row in rows("data/hardware/cotter_pins.csv") {
        let size = of(&row, "size") / 25.4;
        let rule = if size < 0.31 { size + 1.0 / 64.0 } else { size };
        let hole = CotterPin::find(inches(size)).unwrap().hole().millimetres() / 25.4;
        assert!((hole - rule).abs() < 6e-4, "{row}: {hole} for {rule}");
        assert!(of(&row, "high") / 25.4 < hole, "{row}");
    }
}

// B17.2: the number is the width in 32nds before the diameter in eighths; depths in the
// shaft are the greatest height less half the width less 0.005, in the hub half the
// width and 0.006: Shigley's Table 7-7 prints 22 keys to that.
#[test]
fn woodruff_keys_keep_to_their_formulas() {
    let mut printed = 0;
    for row in rows("data/hardware/woodruff.csv") {
        let number: f64 = row.get("number");
        let (width, diameter) = (of(&row, "width") / 25.4, of(&row, "diameter") / 25.4);
        let eighths = diameter * 8.0;
        let wanted = (width * 32.0).round() * 100.0 + eighths;
        assert!((number - wanted).abs() < 1e-6, "{row}: {wanted}");
        let high = of(&row, "height_high") / 25.4;
        assert!(
            ((of(&row, "shaft_low") / 25.4) - (high - width / 2.0 - 0.005)).abs() < 1.1e-4,
            "{row}"
        );
        assert!(((of(&row, "hub_low") / 25.4) - (width / 2.0 + 0.006)).abs() < 1.1e-4, "{row}");
        // The key never bottoms: both depths together are over its height.
        assert!(of(&row, "shaft_low") + of(&row, "hub_low") > of(&row, "height_high"), "{row}");
        printed += usize::from(row.text("status") == "SEEN");
    }
    assert_eq!(printed, 22);
}

// What a mic reads over a Woodruff keyseat, by coordinates: the corner of a slot half a
// width off the middle of a circle.
#[test]
fn over_a_woodruff_keyseat_by_coordinates() {
    for (number, shaft) in [("606", 0.75_f64), ("404", 0.5), ("808", 1.0), ("1210", 1.5)] {
        let key = Woodruff::numbered(number).unwrap();
        let (top, across) = key.in_shaft(inches(shaft)).unwrap();
        let half = key.width().millimetres() / 25.4 / 2.0;
        let corner = ((shaft / 2.0).powi(2) - half * half).sqrt();
        let depth = key.shaft_depth().unwrap().lower().millimetres() / 25.4;
        let wanted = shaft / 2.0 + corner - depth;
        assert!((across.upper().millimetres() / 25.4 - wanted).abs() < 1e-6, "{number}");
        assert!((top.millimetres() / 25.4 - (shaft / 2.0 - corner)).abs() < 1e-6, "{number}");
    }
}

// A list of glands in millimetres beside Apple Rubber's in inches: the same depths to a
// hundredth.
#[test]
fn gland_depths_agree_with_a_second_table() {
    for (used, section, least, most) in [
        (GlandUse::Moving, 0.070, 1.40, 1.45),
        (GlandUse::Moving, 0.103, 2.21, 2.29),
        (GlandUse::Moving, 0.139, 3.02, 3.12),
        (GlandUse::Moving, 0.210, 4.65, 4.78),
        (GlandUse::Moving, 0.275, 5.94, 6.10),
        (GlandUse::Static, 0.070, 1.27, 1.40),
        (GlandUse::Static, 0.103, 2.03, 2.18),
        (GlandUse::Static, 0.139, 2.79, 2.95),
        (GlandUse::Static, 0.210, 4.32, 4.47),
        (GlandUse::Static, 0.275, 5.72, 5.97),
        (GlandUse::Face, 0.070, 1.24, 1.37),
        (GlandUse::Face, 0.139, 2.54, 2.74),
        (GlandUse::Face, 0.210, 3.94, 4.19),
    ] {
        let gland = Gland::find(used, inches(section)).unwrap();
        let depth = gland.depth().unwrap();
        assert!((depth.lower().millimetres() - least).abs() < 0.011, "{used:?} {section}");
        assert!((depth.upper().millimetres() - most).abs() < 0.011, "{used:?} {section}");
        let [low, high] = gland.squeeze();
        assert!(low > 7.0 && high < 36.0, "{used:?} {section}: {low} to {high}");
        assert!(gland.filled() < 96.0, "{used:?} {section}: {}", gland.filled());
    }
}

// Columbia Engineered Rubber prints bore and groove of moving seals by dash number:
// half their difference is the gland's depth.
#[test]
fn moving_glands_agree_with_diameters_of_a_third_maker() {
    let gland = Gland::find(GlandUse::Moving, inches(0.070)).unwrap();
    for (bore, groove) in
        [(0.230, 0.120), (0.421, 0.307), (0.609, 0.495), (0.798, 0.686), (0.988, 0.875)]
    {
        let limits = gland.in_piston(inches(bore)).unwrap();
        assert!(
            inches(groove) >= limits.lower() && inches(groove) <= limits.upper(),
            "{bore}: {groove} in {limits:?}"
        );
    }
}

// unitcheatsheet.com's chart of AS568 beside the diameters from memory.
#[test]
fn o_rings_from_memory_agree_with_a_chart() {
    use fits_core::standards::hardware::ORing;
    for (dash, inside) in [
        ("004", 0.070),
        ("008", 0.176),
        ("010", 0.239),
        ("012", 0.364),
        ("014", 0.489),
        ("016", 0.614),
        ("020", 0.864),
        ("024", 1.114),
        ("110", 0.362),
        ("120", 0.987),
        ("214", 0.984),
        ("218", 1.234),
        ("222", 1.484),
    ] {
        assert_eq!(ORing::dash(dash).unwrap().inside(), inches(inside), "{dash}");
    }
}
