//! Parts that yield as they are pressed together, against finite differences
//! written here: rings of many elements in plane stress, von Mises by the
//! incremental flow rule (Prandtl and Reuss), the interference put on step by
//! step. Nothing of the closed form is in it.

use fits_checks::{exactly, mm};
use fits_core::{
    shop::{
        assemble::{Assembly, Joint, Surface, Yielding},
        bushing::Bushing,
    },
    standards::materials::{Figures, Material},
};
use proptest::prelude::*;
use uom::si::{f64::Pressure, pressure::megapascal};

fn metal(modulus: f64, poisson: f64, strength: f64) -> Material {
    let mut figures = Figures::elastic(Pressure::new::<megapascal>(modulus), poisson);
    let strength = Some(Pressure::new::<megapascal>(strength));
    figures.yield_strength = strength;
    Material::custom("test", figures).unwrap()
}

/// A ring: inner and outer radius, modulus, Poisson's ratio, strength.
#[derive(Clone, Copy)]
struct Ring(f64, f64, f64, f64, f64);

/// Sum and difference of the hoop and radial stress once a strain's sum and
/// difference have come on top, brought back to von Mises' ellipse.
fn flow(ring: Ring, stress: (f64, f64), strain: (f64, f64)) -> (f64, f64) {
    let Ring(_, _, modulus, poisson, strength) = ring;
    let (even, shear) = (modulus / (1.0 - poisson), modulus / (1.0 + poisson));
    let (sum, gap) = (stress.0 + even * strain.0, stress.1 + shear * strain.1);
    let back = |rate: f64| (sum / (1.0 + even * rate), gap / (1.0 + 3.0 * shear * rate));
    let over = |(sum, gap): (f64, f64)| sum * sum / 4.0 + 0.75 * gap * gap - strength * strength;
    if over(back(0.0)) <= 0.0 {
        return back(0.0);
    }
    let (mut low, mut high) = (0.0, 1.0 / modulus);
    while over(back(high)) > 0.0 {
        high *= 2.0;
    }
    for _ in 0..60 {
        let middle = f64::midpoint(low, high);
        if over(back(middle)) > 0.0 {
            low = middle;
        } else {
            high = middle;
        }
    }
    back(high)
}

/// How far the bush's bore moves inwards and the hub's outside outwards, both
/// on the diameter, and the pressure between them.
#[allow(clippy::cast_precision_loss, reason = "counts of parts and steps below a hundred")]
fn finite_differences(bush: Ring, hub: Ring, interference: f64) -> (f64, f64, f64) {
    const PARTS: usize = 60;
    const STEPS: usize = 60;
    let elements: Vec<(Ring, f64, f64)> = [bush, hub]
        .into_iter()
        .flat_map(|ring| {
            let wide = (ring.1 - ring.0) / PARTS as f64;
            (0..PARTS).map(move |at| (ring, ring.0 + wide * (at as f64 + 0.5), wide))
        })
        .collect();
    let nodes = elements.len() + 1;
    let (mut moved, mut stresses) = (vec![0.0; nodes], vec![(0.0, 0.0); elements.len()]);
    let jump = interference / 2.0 / STEPS as f64;
    // To begin with, the bush takes it all.
    let mut step: Vec<f64> = (0..nodes).map(|at| if at <= PARTS { -jump } else { 0.0 }).collect();
    for _ in 0..STEPS {
        for _ in 0..300 {
            // Row by row: below, own, above, and what is out of balance.
            let mut rows = vec![[0.0_f64; 4]; nodes];
            for (at, ((ring, radius, wide), stress)) in elements.iter().zip(&stresses).enumerate() {
                // The hub's face stands off by the interference.
                let left = step[at] + if at == PARTS { jump } else { 0.0 };
                let (radial, hoop) =
                    ((step[at + 1] - left) / wide, f64::midpoint(left, step[at + 1]) / radius);
                let of = |radial: f64, hoop: f64| {
                    let (sum, gap) = flow(*ring, *stress, (hoop + radial, hoop - radial));
                    (f64::midpoint(sum, -gap), f64::midpoint(sum, gap))
                };
                let (now, tiny) = (of(radial, hoop), 1e-9);
                let (by_radial, by_hoop) = (of(radial + tiny, hoop), of(radial, hoop + tiny));
                let slope = |a: (f64, f64)| ((a.0 - now.0) / tiny, (a.1 - now.1) / tiny);
                let (by_radial, by_hoop) = (slope(by_radial), slope(by_hoop));
                let ends = [(-1.0 / wide, 0.5 / radius), (1.0 / wide, 0.5 / radius)];
                for (i, (r, h)) in ends.iter().enumerate() {
                    let row = &mut rows[at + i];
                    row[3] -= (r * now.0 + h * now.1) * radius * wide;
                    for (j, (s, k)) in ends.iter().enumerate() {
                        // A shade stiffer than it is where all flows: it still
                        // ends where all is in balance.
                        let stiff = r * (by_radial.0 * s + by_hoop.0 * k)
                            + h * (by_radial.1 * s + by_hoop.1 * k)
                            + 2e-3 * ring.2 * (r * s + h * k);
                        row[1 + j - i] += stiff * radius * wide;
                    }
                }
            }
            let change = tridiagonal(rows);
            let most = change.iter().fold(0.0_f64, |most, one| most.max(one.abs()));
            step.iter_mut().zip(&change).for_each(|(one, more)| *one += more);
            if most < 1e-10 {
                break;
            }
        }
        for (at, (ring, radius, wide)) in elements.iter().enumerate() {
            let left = step[at] + if at == PARTS { jump } else { 0.0 };
            let (radial, hoop) =
                ((step[at + 1] - left) / wide, f64::midpoint(left, step[at + 1]) / radius);
            stresses[at] = flow(*ring, stresses[at], (hoop + radial, hoop - radial));
        }
        moved.iter_mut().zip(&step).for_each(|(one, more)| *one += more);
    }
    let radial = |at: usize| (stresses[at].0 - stresses[at].1) / 2.0;
    // On to the face from the middles of the last two parts.
    let pressure = (radial(PARTS - 2) - 3.0 * radial(PARTS - 1)) / 2.0;
    (-2.0 * moved[0], 2.0 * moved[nodes - 1], pressure)
}

fn tridiagonal(mut rows: Vec<[f64; 4]>) -> Vec<f64> {
    for at in 1..rows.len() {
        let before = rows[at - 1];
        let share = rows[at][0] / before[1];
        rows[at][1] -= share * before[2];
        rows[at][3] -= share * before[3];
    }
    let mut found = vec![0.0; rows.len()];
    for at in (0..rows.len()).rev() {
        let above = found.get(at + 1).copied().unwrap_or(0.0);
        found[at] = (rows[at][3] - rows[at][2] * above) / rows[at][1];
    }
    found
}

fn joint(bush: Ring, hub: Ring, tight: f64) -> Assembly {
    let of = |ring: Ring| metal(ring.2, ring.3, ring.4);
    let (joint, outside) = (mm(2.0 * hub.0), mm(2.0 * hub.1));
    let mut found = Joint::new(joint, exactly(mm(tight)), outside, &of(hub), &of(bush)).unwrap();
    found.inside = mm(2.0 * bush.0);
    found.solve().unwrap()
}

fn bronze(inner: f64, strength: f64) -> Ring {
    Ring(inner, 10.0, 103_000.0, 0.34, strength)
}

fn steel(outer: f64, strength: f64) -> Ring {
    Ring(10.0, outer, 207_000.0, 0.3, strength)
}

#[test]
fn parts_that_yield_agree_with_finite_differences() {
    let cases = [
        // Springs back.
        (bronze(7.0, 400.0), steel(20.0, 900.0), 0.048),
        // The bush yields a little, more, and right through.
        (bronze(7.0, 170.0), steel(20.0, 900.0), 0.048),
        (bronze(7.0, 150.0), steel(20.0, 900.0), 0.048),
        (bronze(7.0, 125.0), steel(20.0, 900.0), 0.048),
        (bronze(8.5, 125.0), steel(20.0, 900.0), 0.048),
        (bronze(5.0, 125.0), steel(20.0, 900.0), 0.040),
        // The hub yields, about a bush that does not.
        (bronze(5.0, 900.0), steel(15.0, 150.0), 0.040),
        (bronze(5.0, 900.0), steel(20.0, 150.0), 0.050),
        (bronze(5.0, 900.0), steel(11.0, 150.0), 0.020),
        // Both.
        (bronze(5.0, 150.0), steel(15.0, 150.0), 0.040),
    ];
    for (bush, hub, tight) in cases {
        let found = joint(bush, hub, tight);
        let (closes, grows, pressure) = finite_differences(bush, hub, tight);
        let of = |ring, surface| found.growth(ring, surface).unwrap().1.millimetres();
        let said = (-of(0, Surface::Bore), of(1, Surface::Outside));
        let case = format!(
            "{} {} {tight}: {said:?} {:?}, {closes} {grows} {pressure}",
            bush.4,
            hub.4,
            found.pressure(0).1
        );
        assert!((said.0 / closes - 1.0).abs() < 0.01, "{case}");
        assert!((said.1 / grows - 1.0).abs() < 0.01, "{case}");
        let ours = found.pressure(0).1.get::<megapascal>();
        assert!((ours / pressure - 1.0).abs() < 0.01, "{case}");
        // Its section can't grow.
        assert!(said.0 <= tight * bush.1 / bush.0, "{case}");
    }
}

/// The bushing of the crank: 14 by 20 in a steel hub of 40 at H7/s6, tightest.
#[test]
fn a_bushing_closes_in_by_the_same_figure_in_both_answers() {
    let (bush, hub) = (bronze(7.0, 125.0), steel(20.0, 250.0));
    let (material, house) = (metal(bush.2, bush.3, bush.4), metal(hub.2, hub.3, hub.4));
    let pressed = Bushing {
        bore: exactly(mm(14.0)),
        outside: exactly(mm(20.048)),
        material: &material,
        housing: exactly(mm(20.0)),
        housing_outside: mm(40.0),
        hub: &house,
        length: mm(20.0),
    }
    .press()
    .unwrap();
    let most = pressed.closes_in.upper().millimetres();
    let found = joint(bush, hub, 0.048);
    let joint = -found.growth(0, Surface::Bore).unwrap().1.millimetres();
    assert!((most - joint).abs() < 1e-6, "{most} {joint}");
    let (closes, ..) = finite_differences(bush, hub, 0.048);
    assert!((most / closes - 1.0).abs() < 0.01, "{most} {closes}");
    // If it is stronger than its least, it springs: the least of what it may close in.
    let strong = |ring: Ring| Ring(ring.0, ring.1, ring.2, ring.3, 1e5);
    let (springs, ..) = finite_differences(strong(bush), strong(hub), 0.048);
    let least = pressed.closes_in.lower().millimetres();
    assert!((least / springs - 1.0).abs() < 0.001 && least < 0.9 * most, "{least} {springs}");
    assert_eq!(pressed.closes_in_bound.is_some(), found.yielding(0) == Yielding::Through);
}

fn most_von_mises(found: &Assembly, ring: usize, inner: f64, outer: f64) -> f64 {
    (0..=40)
        .map(|at| {
            let diameter = 2.0 * (inner + (outer - inner) * f64::from(at) / 40.0);
            found.stress_at(ring, mm(diameter)).unwrap().von_mises().get::<megapascal>()
        })
        .fold(0.0, f64::max)
}

#[test]
fn a_thin_wall_goes_from_sound_to_refused_without_a_jump() {
    // Wall 1.25 on 25 and its neighbours, micron by micron.
    for wall in [0.5, 1.0, 1.25, 1.5, 2.0, 4.0, 10.0, 40.0] {
        let hub = Ring(12.5, 12.5 + wall, 207_000.0, 0.3, 250.0);
        let shaft = Ring(0.0, 12.5, 207_000.0, 0.3, 900.0);
        let mut before: Option<(f64, f64, f64, f64)> = None;
        for tight in 1..220 {
            let tight = f64::from(tight) / 1e3;
            if tight * 2.0 > wall {
                break;
            }
            let found = joint(shaft, hub, tight);
            let grows = found.growth(1, Surface::Outside).unwrap().1.millimetres();
            let pressure = found.pressure(0).1.get::<megapascal>();
            let share = found.yielded_share();
            if let Some((old, grew, was, old_share)) = before {
                let elastic = old / (tight - 0.001) * 0.001;
                assert!(pressure >= old * (1.0 - 1e-9), "{wall} {tight}");
                assert!(
                    pressure <= old + elastic.max(was) * 1.01,
                    "{wall} {tight}: {old} {pressure}"
                );
                assert!((0.0..0.0025).contains(&(grows - grew)), "{wall} {tight}: {grew} {grows}");
                assert!(share >= old_share, "{wall} {tight}");
                before = Some((pressure, grows, elastic, share));
            } else {
                before = Some((pressure, grows, pressure, share));
            }
            let most = most_von_mises(&found, 1, hub.0, hub.1);
            assert!(most <= 250.0 * (1.0 + 1e-6), "{wall} {tight}: {most}");
            assert_eq!(found.figures_hold(), share <= 0.3, "{wall} {tight}");
        }
    }
}

proptest! {
    /// Any walls, strengths and interferences: no part bears more than von
    /// Mises allows, the faces meet, and more interference never presses less.
    #[test]
    fn no_stress_is_over_what_the_metal_bears(
        bore in 0.0_f64..9.8,
        wall in 0.3_f64..40.0,
        strengths in (60.0_f64..900.0, 60.0_f64..900.0),
        tight in 0.001_f64..0.1,
    ) {
        let tight = (tight * 1e4).round() / 1e4;
        let bore = (bore * 1e3).round() / 1e3;
        let wall = (wall * 1e3).round() / 1e3;
        prop_assume!((10.0 - bore).min(wall) > 2.0 * tight + 0.002);
        let (bush, hub) = (bronze(bore, strengths.0), steel(10.0 + wall, strengths.1));
        let found = joint(bush, hub, tight);
        for (ring, part) in [(0, bush), (1, hub)] {
            let most = most_von_mises(&found, ring, part.0, part.1);
            prop_assert!(most <= part.4 * (1.0 + 1e-6), "{ring}: {most}");
        }
        let opens = found.growth(1, Surface::Bore).unwrap().1.millimetres();
        let closes = found.growth(0, Surface::Outside).unwrap().1.millimetres();
        prop_assert!((opens - closes - tight).abs() < 1e-6, "{opens} {closes}");
        let radial = |ring| {
            found.stress_at(ring, mm(20.0)).unwrap().radial.get::<megapascal>()
        };
        prop_assert!((radial(0) - radial(1)).abs() < 1e-4 * radial(1).abs(), "{} {}", radial(0), radial(1));
        let less = joint(bush, hub, tight / 2.0).pressure(0).1;
        prop_assert!(found.pressure(0).1 * 1.000_001 >= less);
    }
}
