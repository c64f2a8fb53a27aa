//! Why a joint's figures are what they are: formulas with the numbers put in,
//! friction, heat, lead-in and materials, each with its source.

use fits_core::{
    Length,
    shop::assemble::{Assembly, Joint, SMOOTHING_LEAST, SMOOTHING_MOST},
    source::{Known, Reason},
    speech::{Figure, Speech},
    standards::materials::{Material, Property},
};
use uom::si::{
    f64::Pressure,
    force::{newton, pound_force},
    pressure::{gigapascal, megapascal, psi},
    torque::{newton_meter, pound_force_foot},
};

use crate::{
    query::Units,
    questions::{
        joint::figures::{AssemblyAnswer, PickGripAnswer, Solved},
        why::answered::said,
    },
};

const LAME: &str = "Lamé; Shigley, Mechanical Engineering Design, 8th ed., 3-14 and 3-16";

/// Why a joint's figures are what they are.
pub(crate) fn of_assembly(units: Units, answer: &AssemblyAnswer) -> Vec<Reason> {
    let Solved { assembly, heat, entry } = &answer.solved;
    let joint = assembly.joint();
    let mut found = reasons(units, joint, assembly);
    found.extend(joint.friction.reasons().iter().cloned());
    found.extend(heat.iter().flat_map(|heat| heat.reasons().iter().cloned()));
    found.extend(entry.reasons());
    found.extend(of_materials(joint));
    found
}

/// Why the classes of a sought joint are what they are.
pub(crate) fn of_grip(answer: &PickGripAnswer) -> Vec<Reason> {
    let mut found = vec![Reason {
        figure: "order".into(),
        value: "lightest first".into(),
        rule: "H7 with shafts of grade 6, H8 with grade 7, and ASME B4.1: torque at the loosest, force and yield at the tightest".into(),
        source: Known::Practice.words().into(),
        known: Known::Practice,
    }];
    found.extend(answer.joint.friction.reasons().iter().cloned());
    found.extend(of_materials(&answer.joint));
    found
}

/// A pressure in the units of the answer.
fn pressed(units: Units, pressure: Pressure) -> String {
    match units {
        Units::Millimetres => format!("{:.1} MPa", pressure.get::<megapascal>()),
        Units::Inches => format!("{:.0} psi", pressure.get::<psi>()),
    }
}

/// The mechanics, with the numbers put in.
fn reasons(units: Units, joint: &Joint, solved: &Assembly) -> Vec<Reason> {
    let mut found = Vec::new();
    if joint.roughness.is_positive() {
        for (share, source) in [
            (SMOOTHING_MOST, "DIN 7190:2001 and textbooks: on the safe side for grip"),
            (SMOOTHING_LEAST, "DIN 7190-1:2017 as reported: on the safe side for stress"),
        ] {
            let lost = joint.roughness.checked_scale(whole_tenths(share), 10);
            found.push(Reason {
                figure: "roughness loss".into(),
                value: lost.map_or_else(|_| "".into(), Into::into),
                rule: Speech::of(
                    "{} x {} (Rz of both, summed)",
                    [Figure::from(share), joint.roughness.into()],
                ),
                source: source.into(),
                known: Known::Seen,
            });
        }
    }
    pressures(&mut found, units, joint, solved);
    forces(&mut found, units, joint, solved);
    for (name, worst) in [("hub", solved.worst().last()), ("shaft", solved.worst().first())] {
        let Some(worst) = worst else { continue };
        let hoop = pressed(units, worst.stress.hoop);
        found.push(Reason {
            figure: format!("{name} stress"),
            value: pressed(units, worst.counts()).into(),
            rule: if worst.brittle {
                format!("hoop {hoop}, a pull").into()
            } else {
                let radial = pressed(units, worst.stress.radial);
                format!("von Mises of hoop {hoop} and radial {radial}").into()
            },
            source: LAME.into(),
            known: Known::Formula,
        });
    }
    found
}

#[allow(clippy::cast_possible_truncation, reason = "0.4 or 0.8")]
fn whole_tenths(share: f64) -> i128 {
    (share * 10.0).round() as i128
}

fn pressures(found: &mut Vec<Reason>, units: Units, joint: &Joint, solved: &Assembly) {
    let (least, most) = solved.pressure(0);
    let (working_least, working_most) = solved.working().unwrap_or((Length::ZERO, Length::ZERO));
    let partly = solved.yielded_share() > 0.0;
    for (figure, pressure, interference, partly) in [
        ("least pressure", least, working_least, false),
        ("greatest pressure", most, working_most, partly),
    ] {
        let (rule, source, known) = if partly {
            (
                "von Mises in plane stress, no hardening: p and how far each part yields, found with the interference".to_owned(),
                "Nadai's plane stress solution and Hencky's strains, from memory; derived again",
                Known::Formula,
            )
        } else if joint.sleeves.is_empty() {
            (lame(units, joint, interference), LAME, Known::Formula)
        } else {
            (
                "each joint: outer bore's opening less inner outside's is the interference".into(),
                LAME,
                Known::Formula,
            )
        };
        found.push(Reason {
            figure: figure.into(),
            value: pressed(units, pressure).into(),
            rule: rule.into(),
            source: source.into(),
            known,
        });
    }
}

fn forces(found: &mut Vec<Reason>, units: Units, joint: &Joint, solved: &Assembly) {
    let (Some(length), Some(force), Some(torque)) =
        (joint.length, solved.press_force(), solved.torque())
    else {
        return;
    };
    let (least, most) = solved.pressure(0);
    let diameter = said(units, joint.diameter);
    let size = format!("pi x {diameter} x {}", said(units, length));
    let (force, torque) = match units {
        Units::Millimetres => (
            format!("{:.0} N", force.get::<newton>()),
            format!("{:.1} N·m", torque.get::<newton_meter>()),
        ),
        Units::Inches => (
            format!("{:.0} lbf", force.get::<pound_force>()),
            format!("{:.1} lbf·ft", torque.get::<pound_force_foot>()),
        ),
    };
    let mut by = |figure: &str, value: String, rule: String| {
        found.push(Reason {
            figure: figure.into(),
            value: value.into(),
            rule: rule.into(),
            source: "Shigley, Mechanical Engineering Design, 9th ed., Eq. 7-48 and 7-49".into(),
            known: Known::Formula,
        });
    };
    let (high, low) = (joint.friction.to_press(), joint.friction.holds());
    by(
        "press force at the end",
        force,
        format!("{high} x {} x {size}; from nothing at the start, evenly", pressed(units, most)),
    );
    by("torque held", torque, format!("{low} x {} x {size} x {diameter}/2", pressed(units, least)));
}

/// The pressure of a joint of two, the numbers put in.
fn lame(units: Units, joint: &Joint, interference: Length) -> String {
    let modulus = |material: &Material| match units {
        Units::Millimetres => format!("{:.1} GPa", material.modulus().get::<gigapascal>()),
        Units::Inches => format!("{:.1} Mpsi", material.modulus().get::<psi>() / 1e6),
    };
    let number = |length: Length| {
        let text = said(units, length);
        text.split(' ').next().unwrap_or_default().to_owned()
    };
    let (out, at) = (number(joint.outside), number(joint.diameter));
    let hub = format!(
        "(({out}² + {at}²)/({out}² - {at}²) + {})/{}",
        joint.hub.poisson(),
        modulus(&joint.hub)
    );
    let shaft = if joint.inside.is_positive() {
        let inner = number(joint.inside);
        format!(
            "(({at}² + {inner}²)/({at}² - {inner}²) - {})/{}",
            joint.shaft.poisson(),
            modulus(&joint.shaft)
        )
    } else {
        format!("(1 - {})/{}", joint.shaft.poisson(), modulus(&joint.shaft))
    };
    format!("{} / {} / ({hub} + {shaft})", said(units, interference), said(units, joint.diameter))
}

fn of_materials(joint: &Joint) -> Vec<Reason> {
    let mut materials: Vec<&Material> = vec![&joint.hub, &joint.shaft];
    materials.extend(joint.sleeves.iter().map(|sleeve| &sleeve.material));
    let mut found: Vec<Reason> = Vec::new();
    for material in materials {
        for property in [
            Property::Modulus,
            Property::Poisson,
            Property::Yield,
            Property::Tensile,
            Property::Expansion,
            Property::HeatLimit,
        ] {
            found.extend(material.reason(property).filter(|reason| !found.contains(reason)));
        }
    }
    found
}
