//! What a joint must have to be counted on, swept over walls and interferences
//! with explicit figures of the material.

use fits_checks::{exactly, mm, near};
use fits_core::{
    shop::assemble::{GROUND, Joint, MOST_PLASTIC, REAMED_AND_TURNED, Yielding},
    standards::materials::{Figures, Material},
};
use uom::si::{f64::Pressure, force::newton, pressure::megapascal};

fn steel(strength: f64) -> Material {
    let mut figures = Figures::elastic(Pressure::new::<megapascal>(207_000.0), 0.3);
    let strength = Some(Pressure::new::<megapascal>(strength));
    figures.yield_strength = strength;
    Material::custom("test", figures).unwrap()
}

#[test]
fn the_press_is_chosen_by_the_elastic_force_and_a_deep_yield_is_no_joint() {
    let (hub, shaft) = (steel(250.0), steel(1500.0));
    for od in [30.0, 40.0, 60.0] {
        for thousandths in 10..140 {
            let tight = f64::from(thousandths) / 1e3;
            let mut joint = Joint::new(mm(20.0), exactly(mm(tight)), mm(od), &hub, &shaft).unwrap();
            joint.length = Some(mm(25.0));
            let found = joint.solve().unwrap();
            let elastic = 207_000.0 * tight / 20.0 * (1.0 - 400.0 / (od * od)) / 2.0;
            let area = std::f64::consts::PI * 20.0 * 25.0;
            let force = found.press_force().unwrap().get::<newton>();
            near(force, joint.friction.to_press() * elastic * area, 1e-4);
            assert!(found.soft_press_force().unwrap().get::<newton>() <= force * 1.000_001);
            if let Yielding::Partly(hub) = found.yielding(1) {
                assert_eq!(found.figures_hold(), hub.share <= MOST_PLASTIC, "{od} {tight}");
            }
            assert_eq!(found.torque().is_none(), found.is_yielded_through(), "{od} {tight}");
        }
    }
}

#[test]
fn an_assumed_finish_takes_from_the_hold_and_spares_no_stress() {
    let metal = steel(900.0);
    let mut joint = Joint::new(mm(20.0), exactly(mm(0.03)), mm(40.0), &metal, &metal).unwrap();
    joint.finish_is_assumed = true;
    for (roughness, lost) in [(REAMED_AND_TURNED, 0.8 * 0.0126), (GROUND, 0.8 * 0.0032)] {
        joint.roughness = roughness;
        let (least, most) = joint.solve().unwrap().pressure(0);
        let per_mm = 207_000.0 / 20.0 * 0.375;
        near(least.get::<megapascal>(), per_mm * (0.03 - lost), 1e-9);
        near(most.get::<megapascal>(), per_mm * 0.03, 1e-9);
    }
}
