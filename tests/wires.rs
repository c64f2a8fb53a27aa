//! Three wires against published tables, a worked example and a search that
//! shares no formula with the solver.

use fits_checks::{Row, rows};
use fits_core::{
    Length, Limits,
    shop::wires::{Method, WireThread},
};
use proptest::prelude::*;

fn mm(value: f64) -> Length {
    #[allow(clippy::cast_possible_truncation, reason = "a test's own small numbers")]
    Length::from_tenth_nanometres((value * 1e7).round() as i64)
}

fn inch(value: f64) -> Length {
    mm(value * 25.4)
}

fn inches(length: Length) -> f64 {
    length.millimetres() / 25.4
}

/// A basic 60-degree thread: the depth of thread a share of the triangle.
fn vee(major: f64, pitch: f64, share: f64) -> WireThread {
    let height = 3.0_f64.sqrt() / 2.0 * pitch;
    let pitch_diameter = inch(major - share * height);
    WireThread::new(inch(pitch), inch(pitch), 30.0, pitch_diameter, inch(major)).unwrap()
}

/// Rows of `published/wires.csv` that disagree.
const LEDGER: [(&str, &str, &str); 6] = [
    ("acme_Cc_lead", "10.1/3", "taken with the misprinted wire of the row below"),
    (
        "acme_w1_lead",
        "10.1/3",
        "0.50381 printed for 0.50831: its neighbours are 0.50847 and 0.50815",
    ),
    ("acme_w1_lead", "10.5/2", "0.40786 printed for 0.50786"),
    ("acme_Cc_lead", "10.5/2", "taken with the misprinted wire"),
    ("acme_w1_lead", "6.3/2", "0.41327 printed for 0.51327"),
    ("acme_Cc_lead", "6.3/2", "taken with the misprinted wire"),
];

/// How far one row is from what is printed, and how far it may be.
fn compare(row: &Row) -> (f64, f64) {
    let printed: f64 = row.get("value");
    let argument = row.text("argument");
    let turns = || argument.parse::<f64>().unwrap_or_else(|_| panic!("{row}"));
    let wire = || -> f64 { row.get("wire") };
    let major = || {
        let size = row.text("thread").replace(" sharp V", "");
        let size = size.rsplit_once('-').unwrap_or_else(|| panic!("{row}")).0.to_owned();
        inches(format!("{size}in").parse().unwrap_or_else(|_| panic!("{row}: {size}")))
    };
    // A unit in the last place: some were cut short instead of rounded.
    let places = row.text("value").split_once('.').map_or(0, |(_, places)| places.len());
    let last_place = 10_f64.powi(-i32::try_from(places).unwrap());
    // These tables ignore the lead: the plain figure.
    let over = |share: f64| {
        let thread = vee(major(), 1.0 / turns(), share);
        inches(thread.over(inch(wire())).map_or_else(|e| panic!("{row}: {e}"), |found| found.plain))
    };
    match row.text("quantity") {
        "M_over_wires" => (over(0.75) - printed, last_place),
        "M_over_wires_V" => (over(1.0) - printed, last_place),
        "const_60" | "const_55" => {
            let half: f64 = row.get::<f64>("angle") / 2.0;
            let pitch = 1.0 / turns();
            // A long thin lead, so that nothing but the constant is in it.
            let (diameter, wire) = (40.0 * pitch, 0.6 * pitch);
            let thread = WireThread::new(
                inch(pitch),
                inch(pitch),
                half,
                inch(diameter),
                inch(diameter + 0.64 * pitch),
            );
            let plain = thread.unwrap().over(inch(wire)).unwrap().plain;
            let rest = diameter + wire * (1.0 + 1.0 / half.to_radians().sin());
            // 0.9605 is printed for 0.960491.
            (rest - inches(plain) - printed, 0.000_006 + 0.000_01 * pitch)
        }
        "acme_w1_lead" => {
            let thread = acme_at(argument);
            (inches(thread.best_wire().unwrap()) - printed, 0.000_016)
        }
        "acme_Cc_lead" => {
            let thread = acme_at(argument);
            let found = thread.over(inch(wire()));
            let found = found.unwrap_or_else(|error| panic!("{row}: {error}: {}", error.advice()));
            assert_eq!(found.method, Method::Exact, "{row}");
            (inches(found.over) - pitch_diameter_at(argument) - printed, 0.000_07)
        }
        other => panic!("{row}: unknown quantity {other}"),
    }
}

/// `lead angle in degrees / starts`, at a pitch of 1 in.
fn pitch_diameter_at(argument: &str) -> f64 {
    let (angle, starts) = argument.split_once('/').unwrap();
    let (angle, starts): (f64, f64) = (angle.parse().unwrap(), starts.parse().unwrap());
    starts / (std::f64::consts::PI * angle.to_radians().tan())
}

fn acme_at(argument: &str) -> WireThread {
    let starts: f64 = argument.split_once('/').unwrap().1.parse().unwrap();
    let diameter = pitch_diameter_at(argument);
    // The crest left high enough that the misprinted wires touch something.
    WireThread::new(inch(1.0), inch(starts), 14.5, inch(diameter), inch(diameter + 0.1)).unwrap()
}

#[test]
fn published_figures_come_out() {
    let list = rows("tests/published/wires.csv");
    assert_eq!(list.len(), 157);
    let mut departed = Vec::new();
    let (mut worst_wire, mut worst_over) = (0.0_f64, 0.0_f64);
    for row in &list {
        let (off, allowed) = compare(row);
        let (quantity, argument) = (row.text("quantity"), row.text("argument"));
        if off.abs() > allowed {
            departed.push((quantity, argument, format!("{row}: off by {off:.5}")));
        } else if quantity == "acme_w1_lead" {
            worst_wire = worst_wire.max(off.abs());
        } else if quantity == "acme_Cc_lead" {
            worst_over = worst_over.max(off.abs());
        }
    }
    println!(
        "worst best wire {worst_wire:.6}, worst over wires {worst_over:.6}, per inch of pitch"
    );
    let mut wanted: Vec<_> = LEDGER.iter().map(|(q, a, _)| (*q, *a)).collect();
    wanted.sort_unstable();
    let mut found: Vec<_> = departed.iter().map(|(q, a, _)| (*q, *a)).collect();
    found.sort_unstable();
    assert_eq!(found, wanted, "left the ledger, or is not in it: {departed:#?}");
}

#[test]
fn the_handbook_acme_example_comes_out() {
    // Machinery's Handbook, 31st ed., p. 2135: Acme 2G, 5 in, pitch 0.5, lead
    // 1 in, wire 0.258, thickness 0.2454 at the basic pitch line: M = 5.056.
    let cot = 1.0 / 14.5_f64.to_radians().tan();
    let pitch_diameter = 4.75 - (0.25 - 0.2454) * cot;
    let thread =
        WireThread::new(inch(0.5), inch(1.0), 14.5, inch(pitch_diameter), inch(5.0)).unwrap();
    let found = thread.over("0.258in".parse().unwrap()).unwrap();
    assert_eq!(found.method, Method::Exact);
    assert!((inches(found.over) - 5.056).abs() < 0.000_5, "{}", inches(found.over));
    // The book's formula has the lead term.
    let with_term = inches(found.plain) + inches(found.lead_term);
    assert!((with_term - 5.056).abs() < 0.000_5, "{with_term}");
}

#[test]
fn the_range_of_wires_is_the_published_one() {
    // A thread so large that the lead does not matter.
    let range = |half: f64, height: f64, radius: f64| {
        let thread =
            WireThread::new(mm(1.0), mm(1.0), half, mm(200.0 - height), mm(200.0)).unwrap();
        let thread = thread.with_crest_radius(mm(radius)).unwrap();
        assert_eq!(thread.method(), Method::Plain);
        let usable = thread.usable_wires().unwrap();
        let best = thread.best_wire().unwrap();
        (usable.lower().millimetres(), best.millimetres(), usable.upper().millimetres())
    };
    for (half, height, radius, wanted, source) in [
        // Machinery's Handbook, 31st ed., p. 2135.
        (14.5, 0.5, 0.0, (0.487_263, 0.516_450, 0.650_013), "Acme"),
        // Recalled from the same book: 0.505 and 1.010; 0.506 and 0.853.
        (30.0, 0.649_519, 0.0, (0.505, 0.577_350, 1.010), "60 degrees"),
        (27.5, 0.640_327, 0.137_329, (0.506, 0.563_691, 0.853), "Whitworth"),
    ] {
        let found = range(half, height, radius);
        for (found, wanted) in [(found.0, wanted.0), (found.1, wanted.1), (found.2, wanted.2)] {
            assert!((found - wanted).abs() < 0.000_5, "{source}: {found} for {wanted}");
        }
    }
    // The published range for 60 degrees, 0.56/n to 0.90/n, is usable.
    let thread = vee(1.0, 1.0 / 8.0, 0.75);
    for wire in [0.56 / 8.0, 0.90 / 8.0] {
        assert!(thread.over(inch(wire)).is_ok());
    }
}

#[test]
fn a_wire_that_does_not_fit_is_refused_with_the_range() {
    let thread = vee(0.5, 1.0 / 13.0, 0.75);
    let usable = thread.usable_wires().unwrap();
    let error = thread.over("0.030in".parse().unwrap()).unwrap_err();
    assert_eq!(error.to_string(), "a wire of 0.762 mm sinks below the crests");
    assert!(error.advice().starts_with(&format!("wires from {} to ", usable.lower())));
    let error = thread.over("0.1in".parse().unwrap()).unwrap_err();
    assert_eq!(
        error.to_string(),
        "a wire of 2.54 mm is too big to touch both flanks below the crests"
    );
    for end in [usable.lower(), usable.upper()] {
        assert!(thread.over(end).is_ok(), "{end}");
    }
    let wire = "0.045in".parse().unwrap();
    assert!(thread.pitch_diameter_of(wire, "3in".parse().unwrap()).is_err());
    assert!(thread.pitch_diameter_of(wire, Length::ZERO).is_err());
    assert!(thread.pitch_diameter_of("0.5in".parse().unwrap(), "0.5in".parse().unwrap()).is_err());
    let (p, e, d) = (mm(2.0), mm(18.7), mm(20.0));
    for broken in [
        WireThread::new(Length::ZERO, p, 30.0, e, d),
        WireThread::new(p, mm(1.0), 30.0, e, d),
        WireThread::new(p, p, 0.0, e, d),
        WireThread::new(p, p, f64::NAN, e, d),
        WireThread::new(p, p, 30.0, d, e),
        WireThread::new(p, p, 30.0, mm(1.0), d),
        WireThread::new(p, mm(40.0), 30.0, e, d),
    ] {
        assert!(broken.is_err(), "{broken:?}");
    }
    assert!(WireThread::new(p, p, 30.0, e, d).unwrap().with_crest_radius(mm(2.0)).is_err());
}

type Vector = [f64; 3];

fn dot(a: Vector, b: Vector) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

/// Size over wires by search alone: for each tilt of the wire, points of both
/// flanks push its axis out along x; the tilt that lets it lie deepest wins.
/// No derivative, no symmetry, windows narrowed about the best cell.
fn searched(pitch: f64, lead: f64, half: f64, diameter: f64, wire: f64) -> f64 {
    let turn = 2.0 * std::f64::consts::PI;
    let slope = half.tan();
    let rho = wire / 2.0;
    // How far out a point holds the axis of a wire with direction u.
    let out = |point: Vector, u: Vector| {
        let along = dot(point, u);
        let across = [point[0] - along * u[0], point[1] - along * u[1], point[2] - along * u[2]];
        let side = [0.0, -u[2], u[1]];
        let off = dot(across, side);
        if off.abs() >= rho {
            f64::NEG_INFINITY
        } else {
            across[0] + (rho * rho - off * off).sqrt()
        }
    };
    let flank = |sign: f64, r: f64, theta: f64| -> Vector {
        let wide = pitch / 4.0 + (r - diameter / 2.0) * slope;
        [r * theta.cos(), r * theta.sin(), lead * theta / turn + sign * wide]
    };
    let held = |tilt: f64| {
        let u = [0.0, tilt.cos(), tilt.sin()];
        let mut most = f64::NEG_INFINITY;
        for sign in [1.0, -1.0] {
            let (mut r, mut r_half) = (diameter / 2.0, pitch / 2.0);
            let (mut theta, mut theta_half) = (0.0, 0.3);
            for _ in 0..9 {
                let mut best = (f64::NEG_INFINITY, r, theta);
                for i in -10..=10 {
                    for j in -10..=10 {
                        let at = (
                            r + r_half * f64::from(i) / 10.0,
                            theta + theta_half * f64::from(j) / 10.0,
                        );
                        let value = out(flank(sign, at.0, at.1), u);
                        if value > best.0 {
                            best = (value, at.0, at.1);
                        }
                    }
                }
                (most, r, theta) = (best.0.max(most), best.1, best.2);
                r_half *= 0.3;
                theta_half *= 0.3;
            }
        }
        most
    };
    let lead_angle = (lead / (std::f64::consts::PI * diameter)).atan();
    let (mut tilt, mut tilt_half) = (lead_angle, 0.3 * lead_angle);
    let mut least = f64::INFINITY;
    for _ in 0..6 {
        let mut best = (f64::INFINITY, tilt);
        for i in -8..=8 {
            let at = tilt + tilt_half * f64::from(i) / 8.0;
            let value = held(at);
            if value < best.0 {
                best = (value, at);
            }
        }
        least = least.min(best.0);
        tilt = best.1;
        tilt_half *= 0.3;
    }
    2.0 * least + wire
}

#[test]
fn a_search_finds_the_same_seat() {
    // Pitch, starts, half angle, pitch diameter, wire as a share of the best.
    for (pitch, starts, half, diameter, share) in [
        (1.5, 1.0, 30.0, 9.026, 1.0),
        (1.25, 1.0, 30.0, 4.0, 1.0),
        (3.0, 3.0, 30.0, 14.0, 1.2),
        (2.0, 1.0, 27.5, 6.0, 1.05),
        (1.0, 1.0, 23.75, 5.4, 1.0),
        (4.0, 1.0, 15.0, 18.0, 1.0),
        (4.0, 4.0, 15.0, 26.0, 1.0),
        (5.08, 1.0, 14.5, 16.5, 1.0),
        (5.08, 2.0, 14.5, 16.5, 1.02),
        (5.08, 4.0, 14.5, 28.0, 1.0),
    ] {
        let best = pitch / 2.0 / f64::to_radians(half).cos();
        let wire = share * best;
        let thread = WireThread::new(
            mm(pitch),
            mm(starts * pitch),
            half,
            mm(diameter),
            mm(diameter + 0.45 * pitch),
        )
        .unwrap();
        let found = thread.over(mm(wire)).unwrap_or_else(|e| panic!("{pitch} {half}: {e}"));
        let wanted = searched(pitch, starts * pitch, half.to_radians(), diameter, wire);
        let off = found.exact.millimetres() - wanted;
        // The search comes from below on one window and from above on the other.
        assert!(
            off.abs() < 2e-6 * pitch,
            "pitch {pitch}, {starts} starts, half angle {half}: {} but searched {wanted}",
            found.exact
        );
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn there_and_back_is_the_same_size(
        pitch in 0.3_f64..12.0,
        starts in 1_u8..=4,
        times in 3.5_f64..60.0,
        off in -0.02_f64..0.02,
        place in 0.05_f64..0.95,
        half in prop::sample::select(vec![30.0, 27.5, 23.75, 15.0, 14.5]),
    ) {
        let lead = pitch * f64::from(starts);
        let height = if half < 20.0 { 0.5 } else { 0.6 };
        let diameter = times * pitch;
        let made = WireThread::new(mm(pitch), mm(lead), half, mm(diameter), mm(diameter + height * pitch));
        // Steeper than wires are good for.
        prop_assume!(made.is_ok());
        let thread = made.unwrap();
        let Ok(usable) = thread.usable_wires() else {
            // Of several starts the helix may be too steep for any wire.
            prop_assert!(starts > 1);
            return Ok(());
        };
        let wire = mm(usable.lower().millimetres() + place * usable.tolerance().millimetres());
        let Ok(found) = thread.over(wire) else {
            prop_assert!(starts > 1);
            return Ok(());
        };
        prop_assert!(usable.contains(found.best_wire));
        prop_assert!(found.over > mm(diameter));
        // The term is a first order: the exact figure lies between none of it
        // and a little more than all of it.
        let term = found.exact.millimetres() - found.plain.millimetres();
        prop_assert!(term > -1e-6 && term < 1.05 * found.lead_term.millimetres() + 1e-6, "{found:?}");
        if found.method == Method::Plain {
            prop_assert!(found.lead_term.millimetres() < 0.0082, "{found:?}");
        }
        // Back, at the nominal size and near it.
        prop_assert!(thread.pitch_diameter_of(wire, found.over).unwrap().tenth_nanometres()
            .abs_diff(mm(diameter).tenth_nanometres()) <= 2);
        let near = mm(diameter + off * pitch);
        let both = thread.over_limits(wire, Limits::new(near.min(mm(diameter)), near.max(mm(diameter))).unwrap()).unwrap();
        let over = if near < mm(diameter) { both.lower() } else { both.upper() };
        prop_assert!(thread.pitch_diameter_of(wire, over).unwrap().tenth_nanometres()
            .abs_diff(near.tenth_nanometres()) <= 2);
    }

    #[test]
    fn nothing_panics(
        lengths in prop::array::uniform6(any::<i64>()),
        half in prop_oneof![any::<f64>(), 5.0_f64..=60.0],
        shift in 0_u32..50,
    ) {
        let [pitch, lead, diameter, major, wire, over] =
            lengths.map(|count| Length::from_tenth_nanometres(count >> shift));
        let made = WireThread::new(pitch, lead, half, diameter, major)
            .or_else(|_| WireThread::new(mm(1.0), mm(2.0), half, diameter, major))
            .or_else(|_| WireThread::new(mm(1.0), mm(2.0), 30.0, mm(9.0), major));
        if let Ok(thread) = made.and_then(|thread| thread.with_crest_radius(Length::ZERO)) {
            let wires = [wire, thread.best_wire().unwrap_or(wire)];
            for wire in wires {
                let _ = (thread.over(wire), thread.pitch_diameter_of(wire, over));
            }
        }
    }

    #[test]
    fn a_bigger_wire_stands_higher(
        pitch in 0.5_f64..10.0,
        starts in 1_u8..=3,
        half in prop::sample::select(vec![30.0, 14.5]),
    ) {
        let diameter = 8.0 * pitch;
        let thread = WireThread::new(mm(pitch), mm(pitch * f64::from(starts)), half, mm(diameter), mm(diameter + 0.5 * pitch)).unwrap();
        let usable = thread.usable_wires().unwrap();
        let mut last = (Length::ZERO, Length::ZERO);
        for step in 0..=4 {
            let wire = mm(usable.lower().millimetres() + f64::from(step) / 4.0 * usable.tolerance().millimetres());
            let found = thread.over(wire.min(usable.upper())).unwrap();
            prop_assert!(found.over > last.0 && found.contact_diameter > last.1);
            last = (found.over, found.contact_diameter);
        }
    }
}

#[test]
fn thousandths_print_the_same_in_both_units() {
    // The metric and inch typings of one thread give one answer.
    let pitch = Length::INCH.checked_scale(1, 8).unwrap();
    let wire: Length = "0.0722in".parse().unwrap();
    let typed = vee(1.0, 0.125, 0.75).over(wire).unwrap();
    let again = WireThread::new(pitch, pitch, 30.0, inch(1.0 - 0.649_519_052_838 / 8.0), mm(25.4));
    assert_eq!(typed.over, again.unwrap().over(wire).unwrap().over);
}
