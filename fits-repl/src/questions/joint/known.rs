//! How a joint's figures are known.

use super::answered::is_hot;
use crate::{query::JointText, questions::part::warm::known_of};
use fits_core::{
    shop::assemble::{Grip, Heat, Joint},
    source::Known,
    standards::materials::Property,
};

pub(super) fn grip_known(grip: &Grip) -> (Known, Vec<String>) {
    how_known(grip.assembly.joint(), grip.fit.known(), &grip.classes.to_string(), Vec::new())
}

/// What the temperatures rest on: the expansion of both parts, and, where heat
/// is asked for, what they stand.
pub(super) fn heat_rests_on(text: &JointText, joint: &Joint, heat: &Heat) -> Vec<(Known, String)> {
    let parts = [&joint.hub, &joint.shaft];
    let mut found: Vec<_> = parts
        .into_iter()
        .map(|it| (known_of(it, Property::Expansion), format!("the expansion of {}", it.name())))
        .collect();
    let limits = [
        (heat.heat_limit, Property::HeatLimit, "heat"),
        (heat.cold_limit, Property::ColdLimit, "cold"),
    ];
    for (limit, property, what) in limits {
        let of = limit.map(|limit| if limit.part == "hub" { parts[0] } else { parts[1] });
        if let Some(material) = of.filter(|_| is_hot(text)) {
            let known = known_of(material, property);
            found.push((known, format!("the {what} limit of {}", material.name())));
        }
    }
    found
}

/// The least certain of what a joint's answer rests on, and what of it no text
/// confirms; `more` is what else went in.
pub(super) fn how_known(
    joint: &Joint,
    limits: Known,
    class: &str,
    more: Vec<(Known, String)>,
) -> (Known, Vec<String>) {
    let materials = [&joint.hub, &joint.shaft]
        .into_iter()
        .chain(joint.sleeves.iter().map(|sleeve| &sleeve.material))
        .map(|it| (it.known(), format!("figures of {}", it.name())));
    // Force and torque go by friction; without a length there are none.
    let friction = joint.length.map_or(Known::Given, |_| joint.friction.known());
    let finish = if joint.finish_is_assumed { Known::Practice } else { Known::Given };
    let mut known = limits.worst(finish);
    let mut unconfirmed = Vec::new();
    for (one, what) in [(limits, format!("the limits of {class}"))]
        .into_iter()
        .chain(materials)
        .chain([(friction, "the friction".to_owned())])
        .chain(more)
    {
        known = known.worst(one);
        // Its expansion is one of its figures.
        let is_said = what
            .rsplit_once(" of ")
            .is_some_and(|(_, name)| unconfirmed.contains(&format!("figures of {name}")));
        if one.is_unconfirmed() && !is_said && !unconfirmed.contains(&what) {
            unconfirmed.push(what);
        }
    }
    (known, unconfirmed)
}
