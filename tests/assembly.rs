//! Press and shrink joints against worked examples of textbooks, against the
//! equations solved another way, and at their limits.

use std::collections::HashSet;

use fits_checks::{Row, exactly, inches, mm, near, rows};
use fits_core::shop::assemble::{Assembly, Compound, Friction, Joint, Ring, Surface, Yielding};
use fits_core::standards::materials::{Figures, Material};
use proptest::prelude::*;
use uom::si::{
    f64::Pressure,
    force::pound_force,
    pressure::{megapascal, psi},
    torque::newton_meter,
};

fn material(modulus: f64, poisson: f64, strength: Option<f64>) -> Material {
    let strength = strength.map(Pressure::new::<megapascal>);
    let mut figures = Figures::elastic(Pressure::new::<megapascal>(modulus), poisson);
    figures.yield_strength = strength;
    Material::custom("test", figures).unwrap()
}

/// The joint of a published row; every quantity of it comes from this alone.
fn published(row: &Row) -> (Joint, bool) {
    let is_inch = row.text("units") == "in";
    let size = |column: &str| {
        let value: f64 = row.get(column);
        if is_inch { inches(value) } else { mm(value) }
    };
    let stuff = |modulus: &str, poisson: &str| {
        let modulus: f64 = row.get(modulus);
        let modulus = if is_inch {
            Pressure::new::<psi>(modulus)
        } else {
            Pressure::new::<megapascal>(modulus)
        };
        let strength = row.text("quantity").strip_prefix("safety shaft ");
        let strength = strength.map(|text| Pressure::new::<psi>(text.parse().unwrap()));
        let mut figures = Figures::elastic(modulus, row.get(poisson));
        figures.yield_strength = strength;
        Material::custom("published", figures).unwrap()
    };
    let interference = match row.text("given") {
        "diametral" => size("interference"),
        "radial" => size("interference").checked_mul(2).unwrap(),
        other => panic!("{row}: {other}"),
    };
    let (hub, shaft) = (stuff("hub_e", "hub_nu"), stuff("shaft_e", "shaft_nu"));
    let mut joint =
        Joint::new(size("joint"), exactly(interference), size("hub_outside"), &hub, &shaft)
            .unwrap();
    joint.inside = size("shaft_bore");
    if !row.text("length").is_empty() {
        joint.length = Some(size("length"));
    }
    if !row.text("friction").is_empty() {
        let friction: f64 = row.get("friction");
        joint.friction = Friction::given(friction, friction).unwrap();
    }
    (joint, is_inch)
}

#[test]
fn textbook_examples_come_out() {
    let list = rows("tests/published/press_fits.csv");
    let examples: HashSet<&str> =
        list.iter().filter(|row| !row.is_unconfirmed()).map(|row| row.text("problem")).collect();
    assert!(examples.len() >= 12, "only {} examples that name their source", examples.len());
    for row in &list {
        let (joint, is_inch) = published(row);
        let assembly = joint.solve().unwrap_or_else(|error| panic!("{row}: {error}"));
        let said = |pressure: Pressure| {
            if is_inch { pressure.get::<psi>() } else { pressure.get::<megapascal>() }
        };
        let at = |ring, surface| assembly.tightest().stress(ring, surface).unwrap();
        let ours = match row.text("quantity") {
            "p" => said(assembly.pressure(0).1),
            "sigma_t hub bore" => said(at(1, Surface::Bore).hoop),
            "sigma_t hub outside" => said(at(1, Surface::Outside).hoop),
            "sigma_t shaft joint" => said(at(0, Surface::Outside).hoop),
            "sigma_t shaft bore" => said(at(0, Surface::Bore).hoop),
            "vm hub bore" => said(at(1, Surface::Bore).von_mises()),
            "vm shaft joint" => said(at(0, Surface::Outside).von_mises()),
            "torque" => {
                let torque = assembly.torque().unwrap();
                torque.get::<newton_meter>() / (4.448_221_615_260_5 * 0.0254)
            }
            text if text.starts_with("safety shaft") => assembly.worst()[0].safety().unwrap(),
            other => panic!("{row}: unknown quantity {other}"),
        };
        let (wanted, within): (f64, f64) = (row.get("published"), row.get("within"));
        assert!((ours - wanted).abs() <= within, "{row}: {wanted} published, ours is {ours}");
        // The bore of a solid shaft has no other stress than its outside.
        if !joint.inside.is_positive() {
            assert_eq!(at(0, Surface::Bore), at(0, Surface::Outside));
        }
    }
}

/// A widely used formula takes the interference for radial without saying so:
/// twice the pressure. Ours is on the diameter, whatever the source's was.
#[test]
fn radial_and_diametral_are_not_confused() {
    let aluminium = material(69_000.0, 0.33, None);
    let joint = Joint::new(mm(30.0), exactly(mm(0.1)), mm(55.0), &aluminium, &aluminium).unwrap();
    let pressure = joint.solve().unwrap().pressure(0).1.get::<megapascal>();
    near(pressure, 80.785, 1e-4);
    near(
        69_000.0 * 0.1 * (55.0_f64.powi(2) - 900.0) / (30.0 * 55.0_f64.powi(2)),
        2.0 * pressure,
        1e-3,
    );
}

#[test]
fn the_handbooks_force_factors_lie_by_a_low_oiled_friction() {
    let steel = material(206_843.0, 0.292, None);
    for row in rows("tests/published/press_factors.csv") {
        let (shaft, factor): (f64, f64) = (row.get("shaft_in"), row.get("factor"));
        let allowance = 0.001 * shaft;
        let mut joint = Joint::new(
            inches(shaft),
            exactly(inches(allowance)),
            inches(2.0 * shaft),
            &steel,
            &steel,
        )
        .unwrap();
        joint.length = Some(inches(shaft));
        let area = std::f64::consts::PI * shaft * shaft;
        let pounds = area * allowance * factor / 2.0 * 2000.0;
        for (friction, is_under) in [(0.038, true), (0.045, false)] {
            joint.friction = Friction::given(friction, friction).unwrap();
            let force = joint.solve().unwrap().press_force().unwrap().get::<pound_force>();
            assert_eq!(
                force < pounds,
                is_under,
                "{row}: {force} at {friction}, {pounds} by the rule"
            );
        }
    }
}

/// The thick-wall equation u'' + u'/r - u/r2 = 0 by finite differences on one
/// ring, pressures at both faces; returns the movement and the stresses there.
fn by_differences(ring: &Ring<'_>, inside: f64, outside: f64) -> [(f64, f64, f64); 2] {
    const STEPS: u16 = 2000;
    let modulus = ring.material.modulus().get::<megapascal>();
    let poisson = ring.material.poisson();
    let (a, b) = (ring.bore.millimetres() / 2.0, ring.outside.millimetres() / 2.0);
    let step = (b - a) / f64::from(STEPS);
    let last = usize::from(STEPS);
    let stiff = modulus / (1.0 - poisson * poisson);
    // Rows (below, own, above, right); the faces by one-sided differences of
    // the second order, folded into three columns with the next row.
    let mut rows: Vec<[f64; 4]> = (0..=STEPS)
        .map(|at| {
            let r = a + step * f64::from(at);
            [
                1.0 / (step * step) - 0.5 / (r * step),
                -2.0 / (step * step) - 1.0 / (r * r),
                1.0 / (step * step) + 0.5 / (r * step),
                0.0,
            ]
        })
        .collect();
    // sigma_r = stiff (u' + nu u / r) = -p; u' by a point beyond the face that
    // the equation at the face takes away again.
    for (at, r, pressure, side) in [(0, a, inside, -1.0), (last, b, outside, 1.0)] {
        let [below, own, above, _] = rows[at];
        let (beyond, within) = if side < 0.0 { (below, above) } else { (above, below) };
        // u beyond = u within + side 2 step u'.
        let slope = [-pressure / stiff, -poisson / r];
        let own = own + beyond * side * 2.0 * step * slope[1];
        let right = -beyond * side * 2.0 * step * slope[0];
        rows[at] = if side < 0.0 {
            [0.0, own, within + beyond, right]
        } else {
            [within + beyond, own, 0.0, right]
        };
    }
    let mut swept: Vec<(f64, f64)> = Vec::new();
    for [below, own, above, right] in rows {
        let (ratio, carried) = swept.last().copied().unwrap_or((0.0, 0.0));
        let pivot = own - below * ratio;
        swept.push((above / pivot, (right - below * carried) / pivot));
    }
    let mut u = vec![0.0; last + 1];
    let mut next = 0.0;
    for at in (0..=last).rev() {
        next = swept[at].1 - swept[at].0 * next;
        u[at] = next;
    }
    let face = |at: usize, r: f64, pressure: f64| {
        let hoop = modulus * u[at] / r - poisson * pressure;
        (u[at], -pressure, hoop)
    };
    [face(0, a, inside), face(last, b, outside)]
}

#[test]
fn lame_agrees_with_finite_differences() {
    let (bronze, steel) = (Material::find("bronze").unwrap(), Material::find("steel").unwrap());
    let iron = Material::find("cast iron").unwrap();
    for (bore, joint, outside, inner, outer, interference) in [
        (16.0, 20.0, 40.0, bronze, steel, 0.03),
        (5.0, 20.0, 24.0, steel, iron, 0.02),
        (30.0, 60.0, 61.0, steel, steel, 0.05),
    ] {
        let rings = [
            Ring { bore: mm(bore), outside: mm(joint), material: inner },
            Ring { bore: mm(joint), outside: mm(outside), material: outer },
        ];
        let solved = Compound::solve(&rings, &[mm(interference)]).unwrap();
        let pressure = solved.pressure(0).get::<megapascal>();
        let shaft = by_differences(&rings[0], 0.0, pressure);
        let hub = by_differences(&rings[1], pressure, 0.0);
        // The faces that were apart by half the interference meet.
        near(hub[0].0 - shaft[1].0, interference / 2.0, 1e-4);
        for (ring, found) in [(0, shaft), (1, hub)] {
            for (surface, (moves, radial, hoop)) in
                [Surface::Bore, Surface::Outside].into_iter().zip(found)
            {
                let ours = solved.stress(ring, surface).unwrap();
                near(ours.hoop.get::<megapascal>(), hoop, 2e-4);
                assert!((ours.radial.get::<megapascal>() - radial).abs() < 1e-6);
                near(solved.growth(ring, surface).unwrap().millimetres(), 2.0 * moves, 2e-4);
            }
        }
    }
}

#[test]
fn limits_that_every_text_gives() {
    let steel = material(207_000.0, 0.3, None);
    let pressed = |bore: f64, joint: f64, outside: f64, interference: f64| {
        let rings = [
            Ring { bore: mm(bore), outside: mm(joint), material: &steel },
            Ring { bore: mm(joint), outside: mm(outside), material: &steel },
        ];
        Compound::solve(&rings, &[mm(interference)]).unwrap()
    };
    // Thin wall: p D / 2 t.
    let thin = pressed(0.0, 1000.0, 1002.0, 0.1);
    let pressure = thin.pressure(0).get::<megapascal>();
    near(
        thin.stress(1, Surface::Bore).unwrap().hoop.get::<megapascal>(),
        pressure * 1001.0 / 2.0,
        2e-3,
    );
    // Endless hub on a solid shaft: E delta / 2 d.
    let endless = pressed(0.0, 10.0, 10_000.0, 0.01);
    near(endless.pressure(0).get::<megapascal>(), 207_000.0 * 0.01 / 20.0, 1e-5);
    // A solid shaft has one stress everywhere, a bored one twice it at a tiny bore.
    let solid = pressed(0.0, 20.0, 40.0, 0.02);
    let inside = solid.stress_at(0, mm(3.0)).unwrap();
    assert_eq!(inside.hoop, solid.stress(0, Surface::Outside).unwrap().hoop);
    let bored = pressed(0.01, 20.0, 40.0, 0.02);
    near(
        bored.stress(0, Surface::Bore).unwrap().hoop.get::<megapascal>(),
        2.0 * inside.hoop.get::<megapascal>(),
        1e-4,
    );
    // The pressure goes with the interference.
    near(
        pressed(0.0, 20.0, 40.0, 0.04).pressure(0).get::<megapascal>(),
        2.0 * solid.pressure(0).get::<megapascal>(),
        1e-6,
    );
}

/// Three parts, by two equations written out in full here.
#[test]
fn a_bush_in_a_sleeve_in_a_housing() {
    let (bronze, steel) = (material(100_000.0, 0.34, None), material(207_000.0, 0.292, None));
    let alloy = material(68_900.0, 0.33, None);
    let rings = [
        Ring { bore: mm(16.0), outside: mm(20.0), material: &bronze },
        Ring { bore: mm(20.0), outside: mm(26.0), material: &steel },
        Ring { bore: mm(26.0), outside: mm(50.0), material: &alloy },
    ];
    let solved = Compound::solve(&rings, &[mm(0.03), mm(0.05)]).unwrap();
    // Movement of radius r of a ring a..b under p inside, q outside.
    let moves = |a: f64, b: f64, e: f64, nu: f64, p: f64, q: f64, r: f64| {
        ((1.0 - nu) * (a * a * p - b * b * q) * r + (1.0 + nu) * a * a * b * b * (p - q) / r)
            / (e * (b * b - a * a))
    };
    let (p, q) = (solved.pressure(0).get::<megapascal>(), solved.pressure(1).get::<megapascal>());
    let bush = moves(8.0, 10.0, 100_000.0, 0.34, 0.0, p, 10.0);
    let sleeve = |r| moves(10.0, 13.0, 207_000.0, 0.292, p, q, r);
    let housing = moves(13.0, 25.0, 68_900.0, 0.33, q, 0.0, 13.0);
    near(sleeve(10.0) - bush, 0.015, 1e-9);
    near(housing - sleeve(13.0), 0.025, 1e-9);
    // One joint open: the other one alone, until the sleeve has closed it.
    let open = Compound::solve(&rings, &[mm(-0.5), mm(0.05)]).unwrap();
    near(open.pressure(0).get::<megapascal>(), 0.0, 0.0);
    let alone = Compound::solve(&rings[1..], &[mm(0.05)]).unwrap();
    near(open.pressure(1).get::<megapascal>(), alone.pressure(0).get::<megapascal>(), 1e-12);
    let closes = alone.growth(0, Surface::Bore).unwrap().millimetres();
    assert!(closes < 0.0);
    for (clearance, touches) in [(-closes - 0.001, true), (-closes + 0.001, false)] {
        let found = Compound::solve(&rings, &[mm(-clearance), mm(0.05)]).unwrap();
        assert_eq!(found.pressure(0).get::<megapascal>() > 0.0, touches);
    }
}

fn two(joint: f64, outside: f64, interference: f64, strength: f64) -> Assembly {
    let hub = material(207_000.0, 0.3, Some(strength));
    let shaft = material(207_000.0, 0.3, Some(1500.0));
    Joint::new(mm(joint), exactly(mm(interference)), mm(outside), &hub, &shaft)
        .unwrap()
        .solve()
        .unwrap()
}

/// Where yield begins, and where an endless plate's zone ends: von Mises in
/// plane stress (Nadai: the zone about a hole can't pass 1.75 times its size).
#[test]
fn the_elastic_answer_ends_where_it_says() {
    // A hub of half the bore to the outside: Re (1 - Q2) / root (3 + Q4).
    let limit = 300.0 * 0.75 / (3.0_f64 + 0.0625).sqrt();
    let interference = limit / (207_000.0 / 20.0 * 0.375);
    assert_eq!(two(20.0, 40.0, interference * 0.999, 300.0).yielding(1), Yielding::Elastic);
    let just = two(20.0, 40.0, interference * 1.001, 300.0);
    let Yielding::Partly(hub) = just.yielding(1) else { panic!("it yields") };
    near(just.pressure(0).1.get::<megapascal>(), limit, 2e-3);
    near(hub.reaches.millimetres(), 20.0, 1e-3);
    let endless = two(20.0, 4000.0, 0.39, 300.0);
    near(endless.pressure(0).1.get::<megapascal>(), 2.0 / 3.0_f64.sqrt() * 300.0, 1e-6);
    assert_eq!(endless.yielding(1), Yielding::Through);
    let nearly = two(20.0, 4000.0, 0.12, 300.0);
    let Yielding::Partly(hub) = nearly.yielding(1) else { panic!("{:?}", nearly.yielding(1)) };
    assert!(hub.reaches.millimetres() < 35.1, "{hub:?}");
    assert!(!endless.figures_hold());
}

#[test]
fn the_elastic_interference_is_where_yield_begins() {
    let most = two(20.0, 40.0, 0.03, 300.0).elastic_up_to().unwrap().millimetres();
    assert!(!two(20.0, 40.0, most * 0.9999, 300.0).yields());
    assert!(two(20.0, 40.0, most * 1.0001, 300.0).yields());
}

proptest! {
    /// Any rings: where two touch, what the outer opens and the inner closes is
    /// the interference; where they do not, they stay apart.
    #[test]
    fn joints_close_by_their_interference(
        bore in 0_u32..30,
        walls in proptest::collection::vec(1_u32..40, 2..5),
        loose in proptest::collection::vec(-40_i32..60, 4),
        kinds in proptest::collection::vec(0_usize..6, 5),
    ) {
        let names = ["steel", "bronze", "cast iron", "6061", "acetal", "titanium"];
        let materials: Vec<&Material> =
            kinds.iter().map(|kind| Material::find(names[*kind]).unwrap()).collect();
        let mut rings = Vec::new();
        let mut inner = f64::from(bore);
        for (wall, material) in walls.iter().zip(&materials) {
            let outer = inner + 2.0 * f64::from(*wall);
            rings.push(Ring { bore: mm(inner), outside: mm(outer), material });
            inner = outer;
        }
        let interferences: Vec<_> =
            loose.iter().take(rings.len() - 1).map(|um| mm(f64::from(*um) / 1e3)).collect();
        let solved = Compound::solve(&rings, &interferences).unwrap();
        for (joint, wanted) in interferences.iter().enumerate() {
            let opens = solved.growth(joint + 1, Surface::Bore).unwrap().millimetres();
            let closes = solved.growth(joint, Surface::Outside).unwrap().millimetres();
            let gap = opens - closes - wanted.millimetres();
            let pressure = solved.pressure(joint).get::<megapascal>();
            // Growths come rounded to 0.1 nm.
            if pressure > 0.0 {
                prop_assert!(gap.abs() < 5e-7, "joint {joint}: {gap}");
            } else {
                prop_assert!(gap > -5e-7, "joint {joint} overlaps: {gap}");
            }
        }
    }
}
