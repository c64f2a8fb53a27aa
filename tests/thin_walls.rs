//! From a sound joint to one that yields through, wall by wall and micron by
//! micron: the state goes one way, no figure jumps, and no pressure is over what
//! von Mises' condition lets the wall bear. That limit is integrated here from
//! equilibrium, dσr/dr = (σθ − σr)/r, at every radius as far as the condition
//! lets σθ go; nothing of the closed form is in it.

use fits_checks::{exactly, mm};
use fits_core::{
    Limits,
    shop::{
        assemble::{Assembly, Joint, MOST_PLASTIC, Sleeve, Yielding},
        bushing::{Bushing, Pressed},
    },
    standards::materials::{Figures, Material},
};
use uom::si::{f64::Pressure, pressure::megapascal};

fn metal(modulus: f64, strength: f64) -> Material {
    let mut figures = Figures::elastic(Pressure::new::<megapascal>(modulus), 0.3);
    let strength = Some(Pressure::new::<megapascal>(strength));
    figures.yield_strength = strength;
    Material::custom("test", figures).unwrap()
}

/// The most pressure on a bore that a ring with a free outside bears in plane
/// stress.
fn bears(ratio: f64, strength: f64) -> f64 {
    const STEPS: u32 = 5_000;
    // The most hoop stress beside a pressure; over 2/√3 of the strength no radial stress is borne.
    let most = 2.0 / 3.0_f64.sqrt() * strength;
    let hoop = |pressure: f64| {
        let rest = strength.powi(2) - 0.75 * pressure.powi(2);
        rest.max(0.0).sqrt() - pressure / 2.0
    };
    let step = ratio.ln() / f64::from(STEPS);
    let mut pressure = 0.0;
    for _ in 0..STEPS {
        let half = pressure + (hoop(pressure) + pressure) * step / 2.0;
        pressure += (hoop(half) + half) * step;
        if pressure >= most {
            return most;
        }
    }
    pressure
}

fn joint(outside: f64, tight: f64, strength: f64) -> Assembly {
    let (hub, shaft) = (metal(207_000.0, strength), metal(207_000.0, 5000.0));
    let mut joint = Joint::new(mm(25.0), exactly(mm(tight)), mm(outside), &hub, &shaft).unwrap();
    joint.length = Some(mm(25.0));
    joint.solve().unwrap()
}

const fn state(found: Yielding) -> u8 {
    match found {
        Yielding::Elastic => 0,
        Yielding::Partly(_) => 1,
        Yielding::Through => 2,
    }
}

fn most(found: &Assembly) -> f64 {
    found.pressure(0).1.get::<megapascal>()
}

#[test]
fn no_hub_bears_more_than_von_mises_allows_and_its_state_goes_one_way() {
    for strength in [83.0, 250.0, 600.0] {
        // 0.3 mm to 75 mm of wall on 25, each an eighth more than the last.
        let mut wall = 0.3;
        while wall < 75.0 {
            let outside = (25.0_f64 + 2.0 * wall) * 1e4;
            let outside = outside.round() / 1e4;
            let limit = bears(outside / 25.0, strength);
            let mut before = (0, 0.0, true);
            for tight in
                (1..120).map(|tight| f64::from(tight) / 1e3).take_while(|it| it * 2.0 < wall)
            {
                let case = format!("{strength}, wall {wall}, {tight}");
                let found = joint(outside, tight, strength);
                let now = (state(found.yielding(1)), most(&found), found.figures_hold());
                assert!(now.1 <= limit * 1.000_1, "{case}: {} over {limit}", now.1);
                assert!(
                    now.0 >= before.0 && now.1 >= before.1 * (1.0 - 1e-9),
                    "{case}: {now:?} after {before:?}"
                );
                // Once refused, refused; and refused exactly past the share.
                assert!(before.2 || !now.2, "{case}");
                assert_eq!(now.2, found.yielded_share() <= MOST_PLASTIC, "{case}");
                assert_eq!(now.2, found.torque().is_some(), "{case}");
                // Yielded through it bears all that it can, unless thick.
                if now.0 == 2 {
                    assert!((now.1 / limit - 1.0).abs() < 1e-3, "{case}: {} {limit}", now.1);
                }
                before = now;
            }
            wall *= 1.12;
        }
    }
}

#[test]
fn figures_go_smoothly_from_wall_to_wall() {
    for tight in [0.010, 0.020, 0.031, 0.035, 0.048] {
        let mut before: Option<(f64, f64, f64)> = None;
        for outside in (2_580..3_500).step_by(2).map(|outside| f64::from(outside) / 1e2) {
            let found = joint(outside, tight, 250.0);
            let now = (most(&found), found.yielded_share(), outside);
            if let Some(old) = before {
                // Two hundredths on the outside: at most its share of the wall, and a bit.
                let wall = 0.02 / (outside - 25.0);
                assert!(
                    (0.0..2.0 * wall).contains(&(now.0 / old.0 - 1.0)),
                    "{tight} {old:?} {now:?}"
                );
                assert!((now.1 - old.1).abs() < 0.05, "{tight} {old:?} {now:?}");
            }
            before = Some(now);
        }
    }
}

fn pressed(wall: f64, interference: f64) -> Pressed {
    let (bush, hub) = (metal(103_000.0, 125.0), metal(207_000.0, 250.0));
    Bushing {
        bore: exactly(mm(25.0 - 2.0 * wall)),
        outside: Limits::new(mm(25.0), mm(25.0 + interference)).unwrap(),
        material: &bush,
        housing: exactly(mm(25.0)),
        housing_outside: mm(40.0),
        hub: &hub,
        length: mm(20.0),
    }
    .press()
    .unwrap()
}

#[test]
fn a_bushing_closes_in_without_a_jump_and_by_no_more_than_its_section_lets_it() {
    for wall in [0.6, 1.0, 1.25, 1.5, 2.5, 5.0, 9.0] {
        // A ring pressed from without and free within yields at its bore first, and
        // bears no more than the even squeeze does: its strength.
        let thick = ((25.0 - 2.0 * wall) / 25.0_f64).recip().ln() * 125.0 * 2.0 / 3.0_f64.sqrt();
        let mut before = (0.0, 0.0, 0.0);
        for tight in (1..100).map(|tight| f64::from(tight) / 1e3) {
            let found = pressed(wall, tight);
            let now = (
                found.closes_in.upper().millimetres(),
                found.pressure.1.get::<megapascal>(),
                found.yielded_share,
            );
            let case = format!("wall {wall}, {tight}: {now:?} after {before:?}");
            assert!(now.1 <= thick * 1.000_1, "{case}, bears {thick}");
            assert!(now.1 >= before.1 * (1.0 - 1e-9) && now.2 >= before.2, "{case}");
            let most = 25.0 / (25.0 - 2.0 * wall);
            assert!(now.0 > before.0 && now.0 - before.0 < 0.001 * most * 1.5, "{case}");
            assert!(now.0 <= tight * most, "{case}");
            before = now;
        }
    }
}

#[test]
fn with_a_sleeve_nothing_is_counted_on_once_a_part_yields() {
    let (steel, bronze) = (metal(207_000.0, 250.0), metal(103_000.0, 125.0));
    let mut counted = true;
    let mut before = (0.0, 0.0);
    for tight in (2..100).map(|tight| f64::from(tight) / 1e3) {
        let loose = Limits::new(mm(0.001), mm(tight)).unwrap();
        let mut joint = Joint::new(mm(25.0), loose, mm(40.0), &steel, &steel).unwrap();
        joint.length = Some(mm(25.0));
        joint.sleeves =
            vec![Sleeve { material: bronze.clone(), outside: mm(27.5), interference: loose }];
        let found = joint.solve().unwrap();
        assert_eq!(found.torque().is_some(), !found.yields(), "{tight}");
        assert!(counted || found.torque().is_none(), "{tight}");
        counted = found.torque().is_some();
        // Plane strain bears the most: 2/√3 of the yield times ln(outside over bore).
        let borne = |strength: f64, ratio: f64| strength * 2.0 / 3.0_f64.sqrt() * ratio.ln();
        let outer = borne(250.0, 40.0 / 27.5);
        let inner = outer + borne(125.0, 27.5 / 25.0);
        let now = [0, 1].map(|joint| found.pressure(joint).1.get::<megapascal>());
        assert!(now[0] <= inner * 1.000_001 && now[1] <= outer * 1.000_001, "{tight}: {now:?}");
        assert!(now[0] >= before.0 && now[1] >= before.1, "{tight}");
        before = (now[0], now[1]);
    }
    assert!(!counted && before.1 > 100.0);
}
