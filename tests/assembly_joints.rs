//! Joints and what becomes of them: roughness, ranges that are partly loose,
//! brittle hubs, sleeves, heat and cold, lead-in, and the class that holds.

use fits_checks::{exactly, inches, mm, near};
use fits_core::{
    Length, Limits,
    shop::{
        Hazard,
        assemble::{
            Compound, Friction, Heat, Joint, Sleeve, Surface, Wishes, Yielding, grips, lead_in,
        },
    },
    standards::materials::{Figures, Material},
};
use uom::si::{
    f64::{Force, Pressure, TemperatureCoefficient, Time, Torque},
    force::newton,
    pressure::megapascal,
    temperature_coefficient::per_kelvin,
    thermodynamic_temperature::{degree_celsius, degree_fahrenheit},
    time::second,
    torque::newton_meter,
};

/// The steps of DIN 7190: loss of interference by roughness, least pressure to
/// hold by, most to load by.
#[test]
fn roughness_takes_from_grip_and_spares_no_stress() {
    let mut figures = Figures::elastic(Pressure::new::<megapascal>(210_000.0), 0.3);
    figures.yield_strength = Some(Pressure::new::<megapascal>(900.0));
    let steel = Material::custom("test", figures).unwrap();
    let range = Limits::new(mm(0.022), mm(0.048)).unwrap();
    let mut joint = Joint::new(mm(30.0), range, mm(60.0), &steel, &steel).unwrap();
    joint.roughness = mm(0.0126);
    let rough = joint.solve().unwrap();
    let per_mm = 210_000.0 / 30.0 * 0.375;
    let (least, most) = rough.pressure(0);
    near(least.get::<megapascal>(), per_mm * (0.022 - 0.8 * 0.0126), 1e-9);
    near(most.get::<megapascal>(), per_mm * (0.048 - 0.4 * 0.0126), 1e-9);
    let (other_least, other_most) = rough.other_pressure();
    near(other_least.get::<megapascal>(), per_mm * (0.022 - 0.4 * 0.0126), 1e-9);
    near(other_most.get::<megapascal>(), per_mm * (0.048 - 0.8 * 0.0126), 1e-9);
    // More roughness than interference: no grip, and no clearance either.
    joint.roughness = mm(0.1);
    near(joint.solve().unwrap().pressure(0).0.get::<megapascal>(), 0.0, 0.0);
}

#[test]
fn a_range_that_is_partly_clearance_holds_nothing_at_its_loosest() {
    let steel = Material::find("steel 4140 prehard").unwrap();
    let range = Limits::new(mm(-0.019), mm(0.015)).unwrap();
    let mut joint = Joint::new(mm(20.0), range, mm(40.0), steel, steel).unwrap();
    joint.length = Some(mm(25.0));
    let found = joint.solve().unwrap();
    near(found.torque().unwrap().get::<newton_meter>(), 0.0, 0.0);
    assert!(found.press_force().unwrap().get::<newton>() > 1000.0);
}

#[test]
fn force_and_torque_by_hand() {
    let steel = Material::find("steel 4140 prehard").unwrap();
    let range = Limits::new(mm(0.014), mm(0.048)).unwrap();
    let mut joint = Joint::new(mm(20.0), range, mm(40.0), steel, steel).unwrap();
    joint.length = Some(mm(25.0));
    joint.friction = Friction::given(0.1, 0.2).unwrap();
    let found = joint.solve().unwrap();
    let area = std::f64::consts::PI * 20.0 * 25.0;
    let (least, most) = found.pressure(0);
    near(found.axial_hold().unwrap().get::<newton>(), 0.1 * least.get::<megapascal>() * area, 1e-9);
    near(found.press_force().unwrap().get::<newton>(), 0.2 * most.get::<megapascal>() * area, 1e-9);
    near(
        found.torque().unwrap().get::<newton_meter>(),
        0.1 * least.get::<megapascal>() * area * 10.0 / 1000.0,
        1e-9,
    );
}

#[test]
fn a_brittle_hub_is_held_against_its_tensile_strength() {
    let (iron, steel) = (Material::find("class 30").unwrap(), Material::find("steel").unwrap());
    let joint = Joint::new(mm(20.0), exactly(mm(0.03)), mm(40.0), iron, steel).unwrap();
    let found = joint.solve().unwrap();
    let hub = found.worst()[1];
    assert!(hub.brittle);
    let hoop = found.tightest().stress(1, Surface::Bore).unwrap().hoop.get::<megapascal>();
    // ASTM A48 class 30: 30 ksi least.
    near(hub.safety().unwrap(), 207.0 / hoop, 1e-9);
    assert_eq!(found.yielding(1), Yielding::Elastic);
}

#[test]
fn a_sleeve_is_worst_off_with_one_joint_tight_and_the_other_loose() {
    let steel = Material::find("steel 4140 prehard").unwrap();
    let range = Limits::new(mm(0.01), mm(0.04)).unwrap();
    let mut joint = Joint::new(mm(20.0), range, mm(50.0), steel, steel).unwrap();
    joint.sleeves.push(Sleeve { material: steel.clone(), outside: mm(40.0), interference: range });
    let found = joint.solve().unwrap();
    let all = joint.clone();
    let bore = |inner: f64, outer: f64| {
        let solved = Compound::solve(&all.rings(), &[mm(inner), mm(outer)]).unwrap();
        solved.stress(1, Surface::Bore).unwrap().von_mises().get::<megapascal>()
    };
    let mixed = bore(0.04, 0.01);
    assert!(mixed > bore(0.04, 0.04) && mixed > bore(0.01, 0.04) && mixed > bore(0.01, 0.01));
    // Before the outer hub squeezes it a little, it is worse off still.
    let rings = joint.rings();
    let alone = Compound::solve(&rings[..2], &[mm(0.04)]).unwrap();
    let alone = alone.stress(1, Surface::Bore).unwrap().von_mises().get::<megapascal>();
    assert!(alone > mixed);
    near(found.worst()[1].counts().get::<megapascal>(), alone, 1e-12);
    // Loose on its shaft and tight outside, its bore is squeezed: a mix rules.
    joint.interference = exactly(mm(0.005));
    joint.sleeves[0].interference = Limits::new(mm(0.01), mm(0.05)).unwrap();
    let found = joint.solve().unwrap();
    let mixed = bore(0.005, 0.05).max(bore(0.005, 0.01));
    near(found.worst()[1].counts().get::<megapascal>(), mixed, 1e-12);
}

#[test]
fn bad_joints_are_refused_in_words() {
    let steel = Material::find("steel").unwrap();
    let range = exactly(mm(0.03));
    let good = Joint::new(mm(20.0), range, mm(40.0), steel, steel).unwrap();
    let with = |change: &dyn Fn(&mut Joint)| {
        let mut joint = good.clone();
        change(&mut joint);
        joint.solve().unwrap_err().to_string()
    };
    for (message, found) in [
        (
            "an outside diameter of 18 mm leaves no wall about a bore of 20 mm",
            with(&|joint| joint.outside = mm(18.0)),
        ),
        (
            "an outside diameter of 20 mm leaves no wall about a bore of 20 mm",
            with(&|joint| joint.inside = mm(20.0)),
        ),
        (
            "nothing presses: the parts are loose by 0.007 mm to 0.041 mm",
            with(&|joint| joint.interference = Limits::new(mm(-0.041), mm(-0.007)).unwrap()),
        ),
        (
            "nothing presses: the parts are loose by 0.01 mm",
            with(&|joint| joint.interference = exactly(mm(-0.01))),
        ),
        ("a joint 0 mm long holds nothing", with(&|joint| joint.length = Some(Length::ZERO))),
        (
            "an interference of 0.5 mm on 20 mm is not a press or shrink fit",
            with(&|joint| joint.interference = exactly(mm(0.5))),
        ),
        (
            "a wall of 0.05 mm is too thin for an interference of 0.03 mm",
            with(&|joint| joint.outside = mm(20.1)),
        ),
        ("a joint of 0 mm cannot be pressed", with(&|joint| joint.diameter = Length::ZERO)),
    ] {
        assert_eq!(found, message);
    }
    for (low, high) in [(0.0, 0.1), (-0.1, 0.1), (0.1, 1.5), (0.2, 0.1), (f64::NAN, 0.1)] {
        assert!(Friction::given(low, high).is_err(), "{low}..{high}");
    }
}

#[test]
fn heat_by_the_handbook() {
    let steel = Material::find("steel").unwrap();
    // Applied Science for Metal Workers, sec. 453: a 68 in tyre bored 0.068 in
    // small. A thousandth of growth is 1000 / 6.5 = 154 F; twice it with as
    // much clearance.
    let tyre =
        Joint::new(inches(68.0), exactly(inches(0.068)), inches(74.0), steel, steel).unwrap();
    let heat = Heat::plan(&tyre, Some(Length::ZERO), None).unwrap();
    near(heat.hub_to.unwrap().get::<degree_fahrenheit>() - 68.0, 1000.0 / 6.5, 1e-3);
    let heat = Heat::plan(&tyre, None, None).unwrap();
    near(heat.hub_to.unwrap().get::<degree_fahrenheit>() - 68.0, 2000.0 / 6.5, 1e-3);
    assert!(heat.hub_stands_it() && heat.both.is_none());
    // Groover, Fundamentals of Modern Manufacturing, a bearing of 4.000 in to
    // be heated from 70 F for 0.005 in of clearance on 4.004 in, at 6.7
    // millionths: 406 F (statement read, answer recalled). We start at 68.
    let mut figures = Figures::elastic(Pressure::new::<megapascal>(206_843.0), 0.3);
    figures.expansion = Some(TemperatureCoefficient::new::<per_kelvin>(6.7e-6 * 1.8));
    let ring = Material::custom("bearing", figures).unwrap();
    let joint = Joint::new(inches(4.0), exactly(inches(0.004)), inches(7.0), &ring, steel).unwrap();
    let heat = Heat::plan(&joint, Some(inches(0.005)), None).unwrap();
    near(heat.hub_to.unwrap().get::<degree_fahrenheit>() + 2.0, 405.8, 1e-3);
}

/// Kaw, Numerical Methods with Applications, trunnion of 12.363 in: cooled
/// from 80 F in dry ice and alcohol at -108 F it shrinks 0.01369 in, not the
/// 0.0150 in that the expansion at room temperature gives (answer recalled).
#[test]
fn steel_shrinks_less_the_colder_it_gets() {
    let mut figures = Figures::elastic(Pressure::new::<megapascal>(207_000.0), 0.3);
    figures.expansion = Some(TemperatureCoefficient::new::<per_kelvin>(6.40e-6 * 1.8));
    let steel = Material::custom("trunnion", figures).unwrap();
    // From 68 F, twelve degrees later.
    let shrinks = 0.013_69 - 12.363 * 6.43e-6 * 12.0;
    let joint =
        Joint::new(inches(12.363), exactly(inches(shrinks)), inches(20.0), &steel, &steel).unwrap();
    let heat = Heat::plan(&joint, Some(Length::ZERO), None).unwrap();
    let to = heat.shaft_to.unwrap().get::<degree_fahrenheit>();
    assert!((to + 108.0).abs() < 2.0, "{to}");
}

#[test]
fn cold_and_heat_share_what_one_cannot_do() {
    let (alloy, steel) = (Material::find("7075").unwrap(), Material::find("steel").unwrap());
    // 0.07 mm on 30 mm and 0.03 of clearance: 142 C of rise, and 7075 stands 120.
    let joint = Joint::new(mm(30.0), exactly(mm(0.07)), mm(60.0), alloy, steel).unwrap();
    let heat = Heat::plan(&joint, None, None).unwrap();
    assert!(!heat.hub_stands_it());
    let both = heat.both.expect("both together do it");
    assert_eq!(both.coolant, "dry ice in alcohol");
    let hub_to = both.hub_to.get::<degree_celsius>();
    assert!(hub_to <= 120.0, "{hub_to}");
    // What each does sums to what is wanted.
    let cold = Joint::new(
        mm(30.0),
        exactly(mm(0.10 - 30.0 * 23.4e-6 * (hub_to - 20.0))),
        mm(60.0),
        alloy,
        steel,
    )
    .unwrap();
    let alone = Heat::plan(&cold, Some(Length::ZERO), None).unwrap().shaft_to.unwrap();
    near(alone.get::<degree_celsius>(), -78.0, 0.01);
    assert!(heat.hazards.contains(&Hazard::Temper) && heat.hazards.contains(&Hazard::Cold));
}

#[test]
fn what_heat_may_not_do() {
    let steel = Material::find("steel").unwrap();
    for (hub, hazard) in [
        ("nylon", Hazard::Softening),
        ("galvanised tube", Hazard::Zinc),
        ("sintered bronze", Hazard::OilSmoke),
        ("sealed bearing", Hazard::Seals),
        ("magnesium", Hazard::Magnesium),
    ] {
        let hub = Material::find(hub).unwrap();
        let joint = Joint::new(mm(20.0), exactly(mm(0.04)), mm(40.0), hub, steel).unwrap();
        let heat = Heat::plan(&joint, None, None).unwrap();
        assert!(heat.hazards.contains(&hazard), "{hub}");
    }
    // Steel that is chilled a little is not a cold to burn at.
    let light = Joint::new(mm(20.0), exactly(mm(0.0)), mm(40.0), steel, steel).unwrap();
    assert!(light.solve().is_err());
    let light = Joint::new(mm(20.0), exactly(mm(0.001)), mm(40.0), steel, steel).unwrap();
    let heat = Heat::plan(&light, Some(mm(0.001)), None).unwrap();
    assert!(!heat.hazards.contains(&Hazard::Cold));
}

/// A lump that loses h A (T - room) a second; stepped here, closed there.
#[test]
fn a_hub_cools_on_the_way() {
    let steel = Material::find("steel").unwrap();
    let mut joint = Joint::new(mm(20.0), exactly(mm(0.03)), mm(40.0), steel, steel).unwrap();
    joint.length = Some(mm(25.0));
    let at_once = Heat::plan(&joint, None, None).unwrap().hub_to.unwrap().get::<degree_celsius>();
    let after = Heat::plan(&joint, None, Some(Time::new::<second>(60.0))).unwrap();
    let mut warm = after.hub_to.unwrap().get::<degree_celsius>() - 20.0;
    let section = std::f64::consts::FRAC_PI_4 * (0.04_f64.powi(2) - 0.02_f64.powi(2));
    let surface = std::f64::consts::PI * 0.06 * 0.025 + 2.0 * section;
    let capacity = 7850.0 * 480.0 * section * 0.025;
    for _ in 0..60_000 {
        warm -= 20.0 * surface * warm / capacity * 0.001;
    }
    near(warm + 20.0, at_once, 1e-4);
    // Too long on the way: nothing is hot enough.
    let cold = Heat::plan(&joint, None, Some(Time::new::<second>(36_000.0))).unwrap();
    assert!(cold.hub_to.is_none() && !cold.hub_stands_it());
    assert!(Heat::plan(&joint, None, Some(Time::new::<second>(-1.0))).is_err());
    assert!(Heat::plan(&joint, Some(mm(-0.01)), None).is_err());
}

#[test]
fn lead_in_by_the_cube_root() {
    let entry = lead_in(mm(64.0), mm(64.0)).unwrap();
    near(entry.length.millimetres(), 4.0, 1e-6);
    near(entry.allowance.millimetres(), 2.0 * 4.0 * 5.0_f64.to_radians().tan(), 1e-6);
}

#[test]
fn the_lightest_that_holds_and_the_heaviest_that_keeps() {
    let steel = Material::find("steel 4140 prehard").unwrap();
    let mut joint = Joint::new(mm(20.0), exactly(mm(0.01)), mm(40.0), steel, steel).unwrap();
    joint.length = Some(mm(25.0));
    let mut wishes = Wishes::default();
    wishes.holds = Some(Torque::new::<newton_meter>(40.0));
    wishes.press_under = Some(Force::new::<newton>(70_000.0));
    wishes.hub_safe = true;
    let found = grips(&joint, &wishes).unwrap();
    let met: Vec<_> = found.iter().filter(|grip| grip.meets(&wishes)).collect();
    assert!(!met.is_empty());
    // By hand, for one stiffness and a hub of twice the shaft: p = 3/8 E I / d.
    let steel = |interference: Length| 0.375 * 207_000.0 / 20.0 * interference.millimetres();
    let area = std::f64::consts::PI * 20.0 * 25.0;
    for grip in &found {
        let range = grip.assembly.joint().interference;
        let torque = 0.08 * steel(range.lower()).max(0.0) * area * 0.01;
        // A hub that yields through most of its wall holds nothing to count on.
        assert_eq!(grip.holds, torque >= 40.0 && grip.valid(), "{}: {torque}", grip.classes);
        let most = steel(range.upper());
        let hoop = most * 5.0 / 3.0;
        let counts = (hoop * hoop + hoop * most + most * most).sqrt();
        assert_eq!(grip.safe, counts <= 655.0, "{}: {counts}", grip.classes);
        // The press meets the hub as it yields, so no more than this.
        assert!(grip.goes_in || 0.2 * most * area > 70_000.0, "{}", grip.classes);
    }
    // Heavier all the way, so all lighter than the first that meets lack grip
    // or are partly clearance, and all heavier than the last yield or stick.
    for pair in found.windows(2) {
        let most = |at: usize| pair[at].assembly.joint().interference.upper();
        assert!(most(0) <= most(1));
    }
    joint.length = None;
    assert!(grips(&joint, &wishes).is_err());
}

/// A thin sleeve on its shaft stretches as a hub of its own until the outer hub
/// goes on: Lame's hoop stress, by hand.
#[test]
fn a_sleeve_is_judged_before_the_outer_hub_goes_on() {
    let steel = Material::find("steel 4140 prehard").unwrap();
    let range = exactly(mm(0.03));
    let mut joint = Joint::new(mm(20.0), range, mm(60.0), steel, steel).unwrap();
    joint.sleeves.push(Sleeve { material: steel.clone(), outside: mm(26.0), interference: range });
    let found = joint.solve().unwrap();
    // One metal: p = E d / 2 D (1 - Q2), Q = 20/26; hoop p (1 + Q2) / (1 - Q2).
    let modulus = steel.modulus().get::<megapascal>();
    let q2 = (20.0_f64 / 26.0).powi(2);
    let pressure = modulus * 0.03 / 40.0 * (1.0 - q2);
    let worst = found.worst()[1];
    near(worst.stress.hoop.get::<megapascal>(), pressure * (1.0 + q2) / (1.0 - q2), 1e-4);
    near(worst.stress.radial.get::<megapascal>(), -pressure, 1e-4);
}
