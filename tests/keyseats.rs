//! Inch keyseats: what is measured across them, against the handbook's table and
//! the standard's fits.

use fits_checks::{Row, rows};
use fits_core::{
    Length, Limits,
    size::Unit,
    standards::bought::{Family, KeyStandard, Keyway},
};

fn inches(row: &Row, column: &str) -> f64 {
    row.length(row.text(column), Unit::Inch).millimetres() / 25.4
}

fn keyway(standard: KeyStandard, shaft: &str) -> Keyway {
    Keyway::for_shaft(standard, shaft.parse().unwrap()).unwrap()
}

// ANSI/ASME B17.1-1967 (R2013), Table 2, Machinery's Handbook 31st ed. p. 2552.
// The print is rounded to a thou; two values of 1-7/16 and on are cut short.
#[test]
fn s_and_t_are_what_the_handbook_prints() {
    let list = rows("tests/published/keyseat_depth.csv");
    let mut compared = 0;
    for row in &list {
        let (shaft, width) = (inches(row, "shaft"), inches(row, "width"));
        for (standard, height, s, t) in [
            (KeyStandard::AnsiB171, width, "s_square", "t_square"),
            (KeyStandard::AnsiB171Rectangular, inches(row, "rect_height"), "s_rect", "t_rect"),
        ] {
            let found = keyway(standard, &format!("{}in", row.text("shaft")));
            let own = |length: Length| length.millimetres() / 25.4;
            assert!((own(found.width()) - width).abs() < 1e-6, "{row}");
            assert!((own(found.height()) - height).abs() < 1e-6, "{row}");
            // The standard's rule, worked out here on its own.
            let chord = (shaft - (shaft * shaft - width * width).sqrt()) / 2.0;
            let (s_rule, t_rule) =
                (shaft - chord - height / 2.0, shaft - chord + height / 2.0 + 0.005);
            let (across, hub) = (found.across_shaft().unwrap(), found.across_hub().unwrap());
            for (ours, rule) in [
                (across.upper(), s_rule),
                (across.lower(), s_rule - 0.015),
                (hub.lower(), t_rule),
                (hub.upper(), t_rule + 0.010),
            ] {
                assert!((own(ours) - rule).abs() < 1e-7, "{row}: {ours} for {rule}");
            }
            for (ours, column) in [(across.upper(), s), (hub.lower(), t)] {
                if row.text(column).is_empty() {
                    continue;
                }
                let printed = inches(row, column);
                assert!((own(ours) - printed).abs() < 6e-4, "{row}: {column} {}", own(ours));
                compared += 1;
            }
        }
    }
    assert_eq!((list.len(), compared), (33, 129));
}

// ANSI B17.1, fits of parallel keys, class 1, as reprinted by Engineers Edge: a
// key in its keyseats has from 0.005 in of room at the top to 0.032, 0.033, 0.034
// or 0.036 by its size.
#[test]
fn the_room_over_a_key_is_what_the_standard_prints() {
    let keys = Family::named("inch key of bar stock").unwrap();
    for (shaft, most) in [("1in", "32"), ("3in", "32"), ("4in", "33"), ("5in", "33"), ("8in", "34")]
    {
        let found = keyway(KeyStandard::AnsiB171, shaft);
        let key = keys.part(found.height()).unwrap().limits;
        let (own, hub) = (found.shaft_depth().unwrap(), found.hub_depth().unwrap());
        let least = own.lower().checked_add(hub.lower()).unwrap().checked_sub(key.upper());
        let greatest = own.upper().checked_add(hub.upper()).unwrap().checked_sub(key.lower());
        assert_eq!(
            Limits::new(least.unwrap(), greatest.unwrap()),
            Limits::new("5 thou".parse().unwrap(), format!("{most} thou").parse().unwrap()),
            "{shaft}"
        );
    }
}

// DIN 6885-1 as Siemens Flender MD 10 prints it: 25 mm shaft, 8 x 7 key, 4 +0.2 in
// the shaft and 3.3 +0.2 in the hub, both from the top.
#[test]
fn metric_keyways_are_measured_from_the_top() {
    let found = keyway(KeyStandard::Din6885, "25mm");
    let limits = |low: &str, high: &str| Limits::new(low.parse().unwrap(), high.parse().unwrap());
    assert_eq!(found.across_shaft(), limits("20.8mm", "21mm"));
    assert_eq!(found.across_hub(), limits("28.3mm", "28.5mm"));
    let [shaft, hub] = found.widths().unwrap();
    assert_eq!(Ok(shaft.limits), limits("7.964mm", "8mm"));
    assert_eq!(Ok(hub.limits), limits("7.982mm", "8.018mm"));
}
