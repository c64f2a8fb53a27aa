//! The twenty preferred metric fits of ANSI B4.2-1978.
//!
//! Their limits and clearances against the rows of
//! `tests/published/preferred_fit_limits.csv` (two reprinted tables of the standard)
//! and against pairs of rows of `tests/published/iso286_limits.csv`; their
//! kinds and bases against the standard's own sorting (Table 11 of the reprint
//! in Machinery's Handbook): five clearance, two transition, three
//! interference, with H7/p6 a transition fit up to 3 mm (its footnote).

use std::collections::HashMap;

use fits_checks::rows;
use fits_core::{Basis, Fit, Kind, Length};

/// Hole basis, shaft basis, kind.
const PREFERRED: [(&str, &str, Kind); 10] = [
    ("H11/c11", "C11/h11", Kind::Clearance),
    ("H9/d9", "D9/h9", Kind::Clearance),
    ("H8/f7", "F8/h7", Kind::Clearance),
    ("H7/g6", "G7/h6", Kind::Clearance),
    ("H7/h6", "H7/h6", Kind::Clearance),
    ("H7/k6", "K7/h6", Kind::Transition),
    ("H7/n6", "N7/h6", Kind::Transition),
    ("H7/p6", "P7/h6", Kind::Interference),
    ("H7/s6", "S7/h6", Kind::Interference),
    ("H7/u6", "U7/h6", Kind::Interference),
];

/// A printed figure that cannot be right: nominal, fit, column, printed, ours.
const MISPRINTS: [(&str, &str, &str, &str, &str); 1] = [
    // Its own least and greatest clearance, 0.020 and 0.070, need 0.955.
    ("1", "H9/d9", "shaft_lower", "0.995", "0.955"),
];

fn millimetres(text: &str) -> Length {
    format!("{text}mm").parse().unwrap_or_else(|error| panic!("{text}: {error}"))
}

fn fit(nominal: Length, name: &str) -> Fit {
    let (hole, shaft) = name.split_once('/').expect(name);
    Fit::of_classes(nominal, hole.parse().expect(hole), shaft.parse().expect(shaft))
        .unwrap_or_else(|error| panic!("{name} at {nominal}: {error}"))
}

#[test]
fn limits_and_clearances_are_as_printed() {
    let mut misprints = 0;
    let mut met = HashMap::new();
    for row in &rows("tests/published/preferred_fit_limits.csv") {
        let (nominal, name) = (row.text("nominal_mm"), row.text("fit"));
        let fit = fit(millimetres(nominal), name);
        for (column, ours) in [
            ("hole_upper", fit.hole().upper()),
            ("hole_lower", fit.hole().lower()),
            ("shaft_upper", fit.shaft().upper()),
            ("shaft_lower", fit.shaft().lower()),
            ("clearance_upper", fit.clearance().upper()),
            ("clearance_lower", fit.clearance().lower()),
        ] {
            let printed = row.text(column);
            let entry = MISPRINTS.iter().find(|entry| {
                (entry.0, entry.1, entry.2, entry.3) == (nominal, name, column, printed)
            });
            if let Some(entry) = entry {
                assert_ne!(ours, millimetres(printed), "{row}: agrees, delete the entry");
                assert_eq!(ours, millimetres(entry.4), "{row}: {column}");
                misprints += 1;
            } else {
                assert_eq!(ours, millimetres(printed), "{row}: {column} of {name}");
            }
        }
        *met.entry(name.to_owned()).or_insert(0) += i32::from(!row.is_unconfirmed());
    }
    assert_eq!(misprints, MISPRINTS.len(), "an entry names no figure");
    for name in ["H11/c11", "H9/d9", "H8/f7", "H7/g6", "H7/h6"] {
        assert_eq!(met[name], 8, "rows of {name}");
    }
}

#[test]
fn pairs_of_published_limits_give_the_clearance() {
    let list = rows("tests/published/iso286_limits.csv");
    let micrometres = |text: &str| -> Length { format!("{text}um").parse().expect(text) };
    let mut pairs: HashMap<&str, usize> = HashMap::new();
    for name in PREFERRED.iter().flat_map(|(hole, shaft, _)| [*hole, *shaft]) {
        let (hole_class, shaft_class) = name.split_once('/').unwrap();
        for hole in list.iter().filter(|row| row.text("class") == hole_class) {
            for shaft in list.iter().filter(|row| {
                row.text("class") == shaft_class
                    && row.text("nominal_mm") == hole.text("nominal_mm")
            }) {
                let fit = fit(millimetres(hole.text("nominal_mm")), name);
                let less = |one: &str, other: &str| {
                    micrometres(hole.text(one)).checked_sub(micrometres(shaft.text(other))).unwrap()
                };
                assert_eq!(
                    (fit.clearance().lower(), fit.clearance().upper()),
                    (less("lower_um", "upper_um"), less("upper_um", "lower_um")),
                    "{name}: {hole} with {shaft}"
                );
                *pairs.entry(name).or_default() += 1;
            }
        }
    }
    let total: usize = pairs.values().sum();
    assert!(total >= 130, "only {total} pairs: {pairs:?}");
    for (hole, shaft, _) in PREFERRED {
        for name in [hole, shaft] {
            assert!(pairs.contains_key(name), "no pair of rows for {name}: {pairs:?}");
        }
    }
}

/// Every border of a range to 500 mm and a size just over it.
fn sizes() -> Vec<Length> {
    let mut sizes = vec![millimetres("1")];
    for row in rows("data/iso286/shaft_deviations.csv")
        .iter()
        .filter(|row| row.text("letter") == "u" && row.get::<u32>("upto_mm") <= 500)
    {
        let up_to = millimetres(row.text("upto_mm"));
        sizes.push(up_to);
        if up_to < millimetres("500") {
            sizes.push(up_to.checked_add(Length::from_tenth_nanometres(1)).unwrap());
        }
    }
    assert!(sizes.len() > 45);
    sizes
}

#[test]
fn each_is_of_the_kind_and_the_basis_that_the_standard_says() {
    for nominal in sizes() {
        for (hole, shaft, kind) in PREFERRED {
            let wanted = if hole == "H7/p6" && nominal <= millimetres("3") {
                Kind::Transition
            } else {
                kind
            };
            assert_eq!(fit(nominal, hole).kind(), wanted, "{hole} at {nominal}");
            assert_eq!(fit(nominal, shaft).kind(), kind, "{shaft} at {nominal}");
            let bases = if hole == shaft {
                [Basis::Both, Basis::Both]
            } else {
                [Basis::Hole, Basis::Shaft]
            };
            assert_eq!([fit(nominal, hole).basis(), fit(nominal, shaft).basis()], bases);
        }
    }
}

#[test]
fn twins_have_the_same_clearances_over_3_mm() {
    // The purpose of delta: the same clearances on either basis. Up to 3 mm
    // there is no delta, and the twins of the other letters differ.
    for nominal in sizes() {
        for (hole, shaft, kind) in PREFERRED {
            let (one, other) = (fit(nominal, hole), fit(nominal, shaft));
            if nominal > millimetres("3") || kind == Kind::Clearance {
                assert_eq!(one.clearance(), other.clearance(), "{hole} at {nominal}");
            } else {
                assert_ne!(one.clearance(), other.clearance(), "{hole} at {nominal}");
            }
        }
    }
}
