//! Heat and cold go by what both parts stand.

use fits_core::{
    Length, Limits,
    shop::{
        Hazard,
        assemble::{Heat, Joint},
    },
    standards::materials::Material,
};
use uom::si::thermodynamic_temperature::degree_celsius;

fn mm(value: f64) -> Length {
    format!("{value:.6}mm").parse().unwrap()
}

fn plan(hub: &str, shaft: &str, interference: f64) -> Heat {
    let [hub, shaft] = [hub, shaft].map(|name| Material::find(name).unwrap());
    let size = Limits::new(mm(interference), mm(interference)).unwrap();
    let joint = Joint::new(mm(20.0), size, mm(40.0), hub, shaft).unwrap();
    Heat::plan(&joint, None, None).unwrap()
}

/// The limits of materials, each from a source of its own: acetal 100 C
/// (stock maker's processing guidelines), a sealed bearing 93 C (bearing
/// maker's guidelines, 200 F), zinc plate 200, hardened steel 150, oiled
/// sintered bronze 80 (recalled).
#[test]
fn the_lower_heat_limit_of_both_rules() {
    for (one, limit, hazard) in [
        ("acetal", 100.0, Some(Hazard::Softening)),
        ("sealed bearing", 93.0, Some(Hazard::Seals)),
        ("sintered bronze", 80.0, Some(Hazard::OilSmoke)),
        ("zinc plated steel", 200.0, Some(Hazard::Zinc)),
        ("hardened steel", 150.0, None),
        ("6061-T6", 150.0, Some(Hazard::Temper)),
        ("12L14", 200.0, Some(Hazard::Lead)),
    ] {
        for (hub, shaft, part) in [("steel", one, "shaft"), (one, "steel", "hub")] {
            let heat = plan(hub, shaft, 0.12);
            let bound = heat.heat_limit.unwrap();
            assert_eq!(bound.part, part, "{one}");
            assert!((bound.at.get::<degree_celsius>() - limit).abs() < 1e-9, "{one}");
            if let Some(hazard) = hazard {
                assert!(heat.hazards.contains(&hazard), "{one} as the {part}");
            }
            let alone = heat.hub_to.is_some_and(|to| to.get::<degree_celsius>() <= limit);
            assert_eq!(heat.hub_stands_it(), alone, "{one} as the {part}");
            if let Some(both) = heat.both {
                assert!(both.hub_to.get::<degree_celsius>() <= limit, "{one} as the {part}");
            }
        }
    }
    // 0.073 mm on 20, with the least play that parts go together by: it is the
    // acetal that says no.
    let heat = plan("steel", "acetal", 0.048);
    assert!(
        (heat.hub_to.unwrap().get::<degree_celsius>() - (20.0 + 0.073 / 20.0 / 11.7e-6)).abs()
            < 0.1
    );
    assert!(!heat.hub_stands_it());
}

/// A bearing ring and hardened steel are chilled to -54 C and no colder
/// (bearing maker's guidelines, -65 F for an hour): more shrinks no further.
#[test]
fn the_higher_cold_limit_of_both_rules() {
    for (hub, shaft) in [
        ("steel", "hardened steel"),
        ("hardened steel", "steel"),
        ("steel", "rolling bearing"),
        ("rolling bearing", "steel"),
        ("acetal", "steel"),
        ("steel", "nylon"),
    ] {
        let least = [hub, shaft]
            .into_iter()
            .filter_map(|name| Material::find(name).unwrap().cold_limit())
            .map(|limit| limit.get::<degree_celsius>())
            .fold(f64::MIN, f64::max);
        let (mut chilled, mut refused) = (0, 0);
        for step in 1..=60 {
            let heat = plan(hub, shaft, f64::from(step) * 0.002);
            assert!((heat.cold_limit.unwrap().at.get::<degree_celsius>() - least).abs() < 1e-9);
            let both = heat.both.map(|both| both.shaft_to);
            for to in heat.shaft_to.into_iter().chain(both) {
                chilled += 1;
                assert!(to.get::<degree_celsius>() >= least - 1e-6, "{hub} on {shaft}: {to:?}");
            }
            refused += usize::from(heat.shaft_to.is_none());
        }
        // A steel shaft at -40 C shrinks less than the play wanted.
        assert!(refused > 0 && (chilled > 0 || hub == "acetal"), "{hub} on {shaft}");
    }
}

/// Lead fumes and plastics break down where they are overheated, not before.
#[test]
fn fume_is_told_above_the_limit_alone() {
    let hot = plan("PTFE", "steel", 1.0);
    assert!(hot.hazards.contains(&Hazard::PlasticFume));
    let cool = plan("PTFE", "steel", 0.05);
    assert!(!cool.hazards.contains(&Hazard::PlasticFume));
    assert!(plan("brass 360", "steel", 0.12).hazards.contains(&Hazard::Lead));
    assert!(!plan("brass 360", "steel", 0.01).hazards.contains(&Hazard::Lead));
}

#[test]
fn every_material_has_both_limits() {
    for material in Material::all() {
        let heat = material.heat_limit().unwrap().get::<degree_celsius>();
        let cold = material.cold_limit().unwrap().get::<degree_celsius>();
        assert!(cold < 0.0 && heat >= 50.0, "{material}: {cold} to {heat}");
    }
}
