//! Joints solved, as answers.

use super::known::{heat_rests_on, how_known};
use fits_core::{
    Length,
    shop::{
        FitClasses, Hazard,
        assemble::{
            Assembly, GROUND, Heat, Joint, MOST_PLASTIC, Surface, Wishes, Yielding, galls, grips,
            lead_in,
        },
    },
    standards::materials::Family,
};
use uom::si::{
    f64::{Pressure, ThermodynamicTemperature, Time},
    force::newton,
    pressure::megapascal,
    thermodynamic_temperature::degree_celsius,
    time::second,
    torque::newton_meter,
};

use super::refused::place;
use crate::{
    answer::{
        Answer, AssemblyAnswer, BodyFigures, BothFigures, LeadInFigures, LighterFigures, MinMax,
        Mm, PlasticFigures, WallPoint,
    },
    problem::Problem,
    query::{JointText, Units},
    questions::{
        joint::{figures::Solved, resolved::Asked},
        part::resolve::from_core,
    },
    session::Session,
};

/// Places through a wall.
const STATIONS: i128 = 8;
/// What is said where no class will do.
const NONE_KEEPS: &str = "no standard class keeps and still grips at its loosest: a thicker hub, a stronger metal, or a retaining compound";

impl Session {
    pub(crate) fn assemble(&self, text: &JointText) -> Result<Answer, Problem> {
        let asked = self.joint(text, false)?;
        let solved = asked.joint.solve().map_err(|error| place(text, &error))?;
        let heat = self.heat(text, &asked.joint)?;
        self.assembled(text, asked, solved, heat).map(|answer| Answer::Assembly(Box::new(answer)))
    }

    /// How the joint goes together by heat; none with sleeves.
    fn heat(&self, text: &JointText, joint: &Joint) -> Result<Option<Heat>, Problem> {
        let at = text
            .within
            .as_ref()
            .map(|amount| &amount.at)
            .or(text.clearance.as_ref().map(|size| &size.at))
            .unwrap_or(&text.head.size.at);
        let clearance = text.clearance.as_ref().map(|size| self.length(size)).transpose()?;
        let within = text.within.as_ref().map(|amount| self.amount(amount)).transpose()?;
        if !joint.sleeves.is_empty() {
            if text.within.is_none() && clearance.is_none() {
                return Ok(None);
            }
            return Err(Problem::new("heat is worked out for one joint at a time", at.clone())
                .advise("ask for each joint by itself"));
        }
        Heat::plan(joint, clearance, within.map(Time::new::<second>))
            .map(Some)
            .map_err(|error| from_core(&error, at.clone()))
    }

    fn assembled(
        &self,
        text: &JointText,
        asked: Asked,
        assembly: Assembly,
        heating: Option<Heat>,
    ) -> Result<AssemblyAnswer, Problem> {
        let (solved, heat) = (&assembly, heating.as_ref());
        let failed = |error: fits_core::Error| place(text, &error);
        let Asked { joint, class, lubricant, mut notes, bore, to_cut } = asked;
        let [hole, shaft] = to_cut;
        let parts = parts(&joint, solved).map_err(failed)?;
        let (least, most) = solved.working().map_err(failed)?;
        let entry = lead_in(joint.diameter, bore).map_err(failed)?;
        let last = parts.len().saturating_sub(1);
        let keeps = solved.keeps();
        let is_by_class = !matches!(class.as_str(), "measured" | "as given");
        let is_told = !keeps && is_by_class && !self.only_whether;
        let lighter = if is_told { self.lighter(&joint) } else { None };
        if is_told && lighter.is_none() {
            notes.push(NONE_KEEPS.into());
        }
        Self::notes(&mut notes, &joint, solved);
        if text.head.warm.is_none() {
            notes.extend(self.unlike(&joint, solved));
        }
        let ground = joint.finish_is_assumed.then(|| joint.clone()).and_then(as_ground);
        let range = joint.interference;
        let outer = (1..=joint.sleeves.len()).map(|at| min_max(solved.pressure(at)));
        let by_heat = heat.map_or_else(Vec::new, |heat| heat_rests_on(text, &joint, heat));
        let (known, unconfirmed) = how_known(&joint, joint.interference.known(), &class, by_heat);
        let at_work = self.at_work(text, &joint)?;
        Ok(AssemblyAnswer {
            nominal_mm: Mm(joint.diameter),
            known,
            unconfirmed,
            class,
            hole,
            shaft,
            joining: if text.shrink.is_some() { "shrink" } else { "press" },
            interference_min_mm: Mm(range.lower()),
            interference_max_mm: Mm(range.upper()),
            working_min_mm: Mm(least),
            working_max_mm: Mm(most),
            pressure_mpa: min_max(solved.pressure(0)),
            other_smoothing_pressure_mpa: joint
                .roughness
                .is_positive()
                .then_some(())
                .filter(|()| !joint.finish_is_assumed)
                .map(|()| min_max(solved.other_pressure())),
            outer_pressures_mpa: outer.collect(),
            friction: MinMax { min: joint.friction.holds(), max: joint.friction.to_press() },
            lubricant,
            press_force_n: solved.press_force().map(|force| tidy(force.get::<newton>())),
            soft_press_force_n: solved
                .soft_press_force()
                .filter(|soft| solved.press_force().is_some_and(|most| *soft < most))
                .map(|force| tidy(force.get::<newton>())),
            axial_hold_n: solved.axial_hold().map(|force| tidy(force.get::<newton>())),
            torque_n_m: solved.torque().map(|torque| tidy(torque.get::<newton_meter>())),
            must_hold: self.must_hold(text, solved, &at_work)?,
            finish_is_assumed: joint.finish_is_assumed,
            ground_torque_n_m: ground
                .and_then(|it| it.torque())
                .map(|it| tidy(it.get::<newton_meter>())),
            hub_stress_mpa: counted_stress(parts.last()),
            shaft_stress_mpa: counted_stress(parts.first()),
            bore_close_in_mm: parts.first().and_then(|shaft| {
                shaft.bore_growth_mm.and_then(|growth| growth.0.checked_neg().ok()).map(Mm)
            }),
            hub_growth_mm: parts.get(last).map_or(Mm(Length::ZERO), |hub| hub.outside_growth_mm),
            parts,
            elastic_up_to_mm: solved.elastic_up_to().map(Mm),
            partly_plastic: zone(solved, 1),
            shaft_partly_plastic: zone(solved, 0),
            yields: solved.yields(),
            keeps,
            valid: solved.figures_hold(),
            lighter,
            clearance_mm: heat.map(|heat| Mm(heat.clearance)),
            heat_to_c: heat.and_then(|heat| heat.hub_to).map(celsius),
            heat_limit_c: heat.and_then(|heat| heat.heat_limit).map(|limit| celsius(limit.at)),
            heat_limit_of: heat.and_then(|heat| heat.heat_limit).map(|limit| limit.part),
            heat_alone: heat.map(Heat::hub_stands_it),
            cold_limit_c: heat.and_then(|heat| heat.cold_limit).map(|limit| celsius(limit.at)),
            cold_limit_of: heat.and_then(|heat| heat.cold_limit).map(|limit| limit.part),
            cool_to_c: heat.and_then(|heat| heat.shaft_to).map(celsius),
            heat_and_cold: heat.and_then(|heat| heat.both).map(|both| BothFigures {
                coolant: both.coolant,
                cool_to_c: celsius(both.shaft_to),
                heat_to_c: celsius(both.hub_to),
            }),
            at_work,
            lead_in: LeadInFigures {
                angle_deg: entry.angle,
                length_mm: Mm(entry.length),
                allowance_mm: Mm(entry.allowance),
                pilot_min_mm: Mm(entry.pilot.0),
                pilot_max_mm: Mm(entry.pilot.1),
                pilot_length_mm: Mm(entry.pilot_length),
            },
            notes,
            cautions: cautions(text, &joint, solved, heat),
            solved: Solved { assembly, heat: heating, entry },
        })
    }

    fn notes(notes: &mut Vec<String>, joint: &Joint, solved: &Assembly) {
        let range = joint.interference;
        if !range.lower().is_positive() {
            notes.push(
                "at the loosest nothing presses: a retaining compound, a key or a pin must hold"
                    .into(),
            );
        }
        if !joint.sleeves.is_empty() {
            notes.push(
                "the press is that of the innermost joint; it holds as the joint that holds least, all taken to rub alike"
                    .into(),
            );
            if joint.sleeves.iter().any(|sleeve| !sleeve.interference.lower().is_positive()) {
                notes.push("an outer joint is loose at its loosest: it holds nothing".into());
            }
        }
        if solved.breaks() {
            notes.push("a brittle part cracks at the tightest: nothing to count on".into());
        }
        let inner = joint.sleeves.first().map_or(&joint.hub, |sleeve| &sleeve.material);
        if galls(inner, &joint.shaft) {
            notes.push(
                "this pair galls: never dry, with molybdenum paste or by heat; it may seize half way"
                    .into(),
            );
        }
        if joint.length.is_none() {
            notes.push("give `long` for press force and torque".into());
        }
        if !joint.sleeves.is_empty() && solved.yields() {
            notes.push(
                "beyond yield the elastic figures no longer hold: take a lighter class".into(),
            );
        }
        notes.extend(yielded(joint, solved));
        if [&joint.hub, &joint.shaft].iter().any(|material| material.family() == Family::Plastic) {
            notes.push("a plastic part relaxes: do not count on its grip; pin or key it".into());
        }
    }

    /// The heaviest standard class of the question's own system with which
    /// nothing yields.
    fn lighter(&self, joint: &Joint) -> Option<LighterFigures> {
        let mut wishes = Wishes::default();
        wishes.hub_safe = true;
        let found = grips(joint, &wishes).ok()?;
        let safe = found.iter().rev().find(|grip| {
            let grips = grip.assembly.working().is_ok_and(|(least, _)| least.is_positive());
            grip.safe && grips && self.speaks(grip.classes)
        });
        safe.map(|grip| LighterFigures {
            class: grip.classes.to_string(),
            interference_min_mm: Mm(grip.assembly.joint().interference.lower()),
        })
    }

    /// Is a class of the system that the question is put in?
    pub(super) fn speaks(&self, classes: FitClasses) -> bool {
        matches!(classes, FitClasses::B41(_)) == (self.shown == Units::Inches)
    }
}

/// The joint with ground surfaces.
fn as_ground(mut joint: Joint) -> Option<Assembly> {
    joint.roughness = GROUND;
    joint.solve().ok()
}

/// How far a part yields that does not yield right through.
fn zone(solved: &Assembly, ring: usize) -> Option<PlasticFigures> {
    let Yielding::Partly(zone) = solved.yielding(ring) else { return None };
    Some(PlasticFigures {
        reaches_mm: Mm(zone.reaches),
        share: tidy(zone.share),
        elastic_pressure_mpa: mpa(solved.tightest().pressure(0)),
    })
}

/// What yields of two parts, and what that means.
fn yielded(joint: &Joint, solved: &Assembly) -> Vec<String> {
    let mut notes = Vec::new();
    for (ring, part) in [(0, "shaft"), (1, "hub")] {
        match solved.yielding(ring) {
            Yielding::Elastic => {}
            Yielding::Partly(zone) => notes.push(format!(
                "{part} yields about its bore, {} of its section: figures by the elastic-plastic case{}",
                if zone.share < 0.01 {
                    "under 1 %".to_owned()
                } else {
                    format!("{:.0} %", zone.share * 100.0)
                },
                if zone.share > MOST_PLASTIC {
                    "; over 30 % (DIN 7190-1) it is not a joint to count on"
                } else {
                    ", which is accepted practice in ductile metal"
                }
            )),
            Yielding::Through => {
                let bound = if ring == 0 && joint.inside.is_positive() {
                    "; its bore closes in by no more than interference x outside / bore"
                } else {
                    ""
                };
                notes.push(format!(
                    "{part} yields right through and bears no more{bound}"
                ));
            }
        }
    }
    notes
}

/// Six figures, and nothing under a pascal: the rest is noise of the
/// arithmetic.
pub(crate) fn tidy(value: f64) -> f64 {
    if value.abs() < 1e-6 {
        return 0.0;
    }
    if !value.is_finite() {
        return value;
    }
    let step = 10_f64.powi(5 - whole(value.abs().log10().floor()));
    (value * step).round() / step
}

#[allow(clippy::cast_possible_truncation, reason = "the logarithm of a double is below 400")]
const fn whole(value: f64) -> i32 {
    value as i32
}

fn mpa(pressure: Pressure) -> f64 {
    tidy(pressure.get::<megapascal>())
}

fn celsius(temperature: ThermodynamicTemperature) -> f64 {
    // A degree is more than an oven holds; a tenth is shown to compare by.
    (temperature.get::<degree_celsius>() * 10.0).round() / 10.0
}

pub(crate) fn min_max((least, most): (Pressure, Pressure)) -> MinMax {
    MinMax { min: mpa(least), max: mpa(most) }
}

pub(super) fn parts(
    joint: &Joint,
    solved: &Assembly,
) -> Result<Vec<BodyFigures>, fits_core::Error> {
    let rings = joint.rings();
    let last = rings.len().saturating_sub(1);
    rings
        .iter()
        .enumerate()
        .zip(solved.worst())
        .map(|((at, ring), worst)| {
            let is_solid = !ring.bore.is_positive();
            let borne = solved.borne(at).unwrap_or(worst.stress);
            let span = ring.outside.checked_sub(ring.bore)?;
            let stations = if is_solid { 0..=0 } else { 0..=STATIONS };
            let wall = stations.map(|station| {
                let diameter = ring.bore.checked_add(span.checked_scale(station, STATIONS)?)?;
                let stress = solved.stress_at(at, diameter)?;
                Ok(WallPoint {
                    at_mm: Mm(diameter),
                    hoop_mpa: mpa(stress.hoop),
                    radial_mpa: mpa(stress.radial),
                    von_mises_mpa: mpa(stress.von_mises()),
                })
            });
            let bore = solved.growth(at, Surface::Bore)?.1;
            Ok(BodyFigures {
                part: match at {
                    0 => "shaft",
                    at if at == last => "hub",
                    _ => "sleeve",
                },
                material: ring.material.name().to_owned(),
                bore_mm: Mm(ring.bore),
                outside_mm: Mm(ring.outside),
                hoop_mpa: mpa(borne.hoop),
                radial_mpa: mpa(borne.radial),
                von_mises_mpa: mpa(borne.von_mises()),
                strength_mpa: worst.strength.map(mpa),
                brittle: worst.brittle,
                safety: worst.safety().map(tidy),
                margin: worst.margin(),
                keeps: worst.keeps(),
                bore_growth_mm: (!is_solid).then_some(Mm(bore)),
                outside_growth_mm: Mm(solved.growth(at, Surface::Outside)?.1),
                wall: wall.collect::<Result<_, fits_core::Error>>()?,
            })
        })
        .collect()
}

/// A press beyond a home shop's: ten tons, in newtons. Common practice.
const BIG_PRESS: f64 = 90e3;

pub(super) fn cautions(
    text: &JointText,
    joint: &Joint,
    solved: &Assembly,
    heat: Option<&Heat>,
) -> Vec<&'static str> {
    let mut hazards = vec![Hazard::Pressing];
    if text.blind.is_some() {
        hazards.push(Hazard::Blind);
    }
    if joint.hub.tensile_strength().is_some() {
        hazards.push(Hazard::Brittle);
    }
    // Heat where it is asked for; what a material suffers by it always.
    let is_hot = is_hot(text);
    hazards.extend(
        heat.into_iter()
            .flat_map(|heat| heat.hazards.iter().copied())
            .filter(|it| is_hot || !matches!(it, Hazard::Heating | Hazard::Cold)),
    );
    if solved.press_force().is_some_and(|force| force.get::<newton>() > BIG_PRESS) {
        hazards.push(Hazard::People);
    }
    hazards.into_iter().map(Hazard::caution).collect()
}

/// Is the joint to be made by heat or cold?
pub(super) const fn is_hot(text: &JointText) -> bool {
    text.shrink.is_some() || text.clearance.is_some() || text.within.is_some()
}

/// What is held against a part's strength.
fn counted_stress(part: Option<&BodyFigures>) -> f64 {
    part.map_or(0.0, |part| if part.brittle { part.hoop_mpa.max(0.0) } else { part.von_mises_mpa })
}
