//! Why a joint's figures are what they are: formulas with the numbers put in,
//! friction, heat, lead-in and materials, each with its source.

use fits_core::{
    Length,
    shop::assemble::{Assembly, HubState, Joint, SMOOTHING_LEAST, SMOOTHING_MOST, lead_in},
    source::{Known, Reason},
    standards::materials::{Material, Property},
};
use uom::si::{force::newton, pressure::megapascal, torque::newton_meter};

use super::{Session, assembly::Asked};
use crate::{problem::Problem, query::JointText};

impl Session {
    /// Why a joint's figures are what they are.
    pub(super) fn why_assembly(&self, text: &JointText) -> Result<Vec<Reason>, Problem> {
        let Asked { joint, bore, .. } = self.joint(text, false)?;
        let solved = joint.solve().map_err(|error| self.place(text, &error))?;
        let mut found = reasons(&joint, &solved);
        found.extend(joint.friction.reasons().iter().cloned());
        if let Some(heat) = self.heat(text, &joint)? {
            found.extend(heat.reasons().iter().cloned());
        }
        if let Ok(entry) = lead_in(joint.diameter, bore) {
            found.extend(entry.reasons());
        }
        found.extend(of_materials(&joint));
        Ok(found)
    }

    /// Why the classes of a sought joint are what they are.
    pub(super) fn why_grip(&self, text: &JointText) -> Result<Vec<Reason>, Problem> {
        let Asked { joint, .. } = self.joint(text, true)?;
        let mut found = vec![Reason {
            figure: "order".into(),
            value: "lightest first".into(),
            rule: "H7 with shafts of grade 6, H8 with grade 7, and ASME B4.1: torque at the loosest, force and yield at the tightest".into(),
            source: Known::Practice.words().into(),
            known: Known::Practice,
        }];
        found.extend(joint.friction.reasons().iter().cloned());
        found.extend(of_materials(&joint));
        Ok(found)
    }
}

/// The mechanics, with the numbers put in.
fn reasons(joint: &Joint, solved: &Assembly) -> Vec<Reason> {
    const LAME: &str = "Lamé; Shigley, Mechanical Engineering Design, 8th ed., 3-14 and 3-16";
    let known = Known::Formula;
    let (least, most) = solved.pressure(0);
    let mut found = Vec::new();
    if joint.roughness.is_positive() {
        for (share, source, known) in [
            (SMOOTHING_MOST, "DIN 7190:2001 and textbooks: on the safe side for grip", Known::Seen),
            (
                SMOOTHING_LEAST,
                "DIN 7190-1:2017 as reported: on the safe side for stress",
                Known::Seen,
            ),
        ] {
            found.push(Reason {
                figure: "roughness loss".into(),
                value: format!("{:.1} um", share * joint.roughness.millimetres() * 1e3),
                rule: format!("{share} x {} (Rz of both, summed)", joint.roughness),
                source: source.into(),
                known,
            });
        }
    }
    let (working_least, working_most) = solved.working().unwrap_or((Length::ZERO, Length::ZERO));
    for (figure, pressure, interference) in
        [("least pressure", least, working_least), ("greatest pressure", most, working_most)]
    {
        let partly =
            figure.starts_with("greatest") && matches!(solved.hub_state(), HubState::Partly(_));
        found.push(Reason {
            figure: figure.into(),
            value: format!("{:.1} MPa", pressure.get::<megapascal>()),
            rule: if partly {
                "Tresca by 2/root 3: p = Re/root 3 (1 + 2 ln z - z²Q²), z and p found with the interference".into()
            } else if joint.sleeves.is_empty() {
                lame(joint, interference)
            } else {
                "each joint: outer bore's opening less inner outside's is the interference".into()
            },
            source: if partly { "DIN 7190-1, elastic-plastic, from memory" } else { LAME }.into(),
            known: if partly { Known::Memory } else { known },
        });
    }
    if let Some(length) = joint.length {
        let size = format!("pi x {} x {length}", joint.diameter);
        let by = |figure: &str, value: String, rule: String| Reason {
            figure: figure.into(),
            value,
            rule,
            source: "Shigley, Mechanical Engineering Design, 9th ed., Eq. 7-48 and 7-49".into(),
            known,
        };
        if let (Some(force), Some(torque)) = (solved.press_force(), solved.torque()) {
            found.push(by(
                "press force at the end",
                format!("{:.0} N", force.get::<newton>()),
                format!(
                    "{} x {:.1} MPa x {size}; from nothing at the start, evenly",
                    joint.friction.to_press(),
                    most.get::<megapascal>()
                ),
            ));
            found.push(by(
                "torque held",
                format!("{:.1} N·m", torque.get::<newton_meter>()),
                format!(
                    "{} x {:.1} MPa x {size} x {}/2",
                    joint.friction.holds(),
                    least.get::<megapascal>(),
                    joint.diameter
                ),
            ));
        }
    }
    for (name, worst) in [("hub", solved.worst().last()), ("shaft", solved.worst().first())] {
        let Some(worst) = worst else { continue };
        found.push(Reason {
            figure: format!("{name} stress"),
            value: format!("{:.1} MPa", worst.counts().get::<megapascal>()),
            rule: if worst.brittle {
                format!("hoop {:.1} MPa, a pull", worst.stress.hoop.get::<megapascal>())
            } else {
                format!(
                    "von Mises of hoop {:.1} and radial {:.1} MPa",
                    worst.stress.hoop.get::<megapascal>(),
                    worst.stress.radial.get::<megapascal>()
                )
            },
            source: LAME.into(),
            known,
        });
    }
    found
}

/// The pressure of a joint of two, the numbers put in.
fn lame(joint: &Joint, interference: Length) -> String {
    let gpa = |material: &Material| material.modulus().get::<megapascal>() / 1e3;
    let round = |value: Length| value.to_string();
    let hub = format!(
        "(({D}² + {d}²)/({D}² - {d}²) + {})/{:.1} GPa",
        joint.hub.poisson(),
        gpa(&joint.hub),
        D = joint.outside.millimetres(),
        d = joint.diameter.millimetres(),
    );
    let shaft = if joint.inside.is_positive() {
        format!(
            "(({d}² + {i}²)/({d}² - {i}²) - {})/{:.1} GPa",
            joint.shaft.poisson(),
            gpa(&joint.shaft),
            d = joint.diameter.millimetres(),
            i = joint.inside.millimetres(),
        )
    } else {
        format!("(1 - {})/{:.1} GPa", joint.shaft.poisson(), gpa(&joint.shaft))
    };
    format!("{} / {} / ({hub} + {shaft})", round(interference), round(joint.diameter))
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
