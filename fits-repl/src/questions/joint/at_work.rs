//! A joint where it works warm or cold: the interference that expansion leaves.

use fits_core::{
    Length, Limits,
    shop::{
        assemble::{Assembly, Joint},
        warm::stands,
    },
    standards::materials::Material,
};
use uom::si::{
    force::newton, length::millimeter, temperature_coefficient::per_kelvin, torque::newton_meter,
};

use crate::{
    answer::{AtWorkFigures, Mm},
    problem::Problem,
    query::{JointText, Units},
    questions::{
        joint::answered::{min_max, tidy},
        part::{
            resolve::from_core,
            warm::{REFERENCE, celsius, to_a_tenth},
        },
    },
    session::Session,
};

impl Session {
    /// At each end of the range given; empty where none is.
    pub(crate) fn at_work(
        &self,
        text: &JointText,
        joint: &Joint,
    ) -> Result<Vec<AtWorkFigures>, Problem> {
        let Some(warm) = &text.head.warm else { return Ok(Vec::new()) };
        if !joint.sleeves.is_empty() {
            return Err(Problem::new(
                "warmth is worked out for one joint at a time",
                warm.at.clone(),
            )
            .advise("ask for each joint by itself"));
        }
        let failed = |error: fits_core::Error| from_core(&error, warm.at.clone());
        for material in [&joint.hub, &joint.shaft] {
            if material.expansion().is_none() {
                return Err(Problem::new(
                    format!("the expansion of {material} is not known"),
                    warm.at.clone(),
                )
                .advise("give the part's alpha, in millionths per degree"));
            }
        }
        let (first, second) = &warm.value;
        let mut found = Vec::new();
        for amount in [Some(first), second.as_ref()].into_iter().flatten() {
            let at = self.amount(amount)?;
            for material in [&joint.hub, &joint.shaft] {
                stands(material, celsius(at))
                    .map_err(|error| from_core(&error, amount.at.clone()))?;
            }
            let warm = warmed(joint, at).map_err(failed)?;
            let interference = warm.interference;
            let presses = interference.upper().is_positive();
            let solved = presses.then(|| warm.solve().map_err(failed)).transpose()?;
            let solved = solved.as_ref();
            found.push(AtWorkFigures {
                at_c: to_a_tenth(at),
                interference_min_mm: Mm(interference.lower()),
                interference_max_mm: Mm(interference.upper()),
                pressure_mpa: solved.map(|solved| min_max(solved.pressure(0))),
                torque_n_m: solved
                    .and_then(Assembly::torque)
                    .map(|torque| tidy(torque.get::<newton_meter>())),
                axial_hold_n: solved
                    .and_then(Assembly::axial_hold)
                    .map(|force| tidy(force.get::<newton>())),
                yields: solved.is_some_and(Assembly::yields),
            });
        }
        Ok(found)
    }
}

/// How much more the shaft grows than the hub, per degree and unit of size;
/// zero where either's expansion is not known.
fn outgrows(joint: &Joint) -> f64 {
    let expansion = |material: &Material| material.expansion().map(|it| it.get::<per_kelvin>());
    expansion(&joint.shaft).zip(expansion(&joint.hub)).map_or(0.0, |(shaft, hub)| shaft - hub)
}

/// The joint at a temperature.
fn warmed(joint: &Joint, celsius: f64) -> Result<Joint, fits_core::Error> {
    let gained = joint.diameter.millimetres() * outgrows(joint) * (celsius - REFERENCE);
    let gained = Length::nearest(uom::si::f64::Length::new::<millimeter>(gained))?;
    let range = joint.interference;
    let mut warmed = joint.clone();
    warmed.interference =
        Limits::new(range.lower().checked_add(gained)?, range.upper().checked_add(gained)?)?;
    Ok(warmed)
}

impl Session {
    /// What is left of the grip of two that expand unlike, where nobody asked:
    /// at 60 °C where the hub grows more, at -20 °C where the shaft does.
    pub(crate) fn unlike(&self, joint: &Joint, solved: &Assembly) -> Option<String> {
        let held = solved.torque()?.get::<newton_meter>();
        let outgrows = outgrows(joint);
        let at = if outgrows < 0.0 { 60.0 } else { -20.0 };
        let parts = [&joint.hub, &joint.shaft];
        if !joint.sleeves.is_empty() || parts.iter().any(|it| stands(it, celsius(at)).is_err()) {
            return None;
        }
        let warm = warmed(joint, at).ok()?;
        let left = if warm.interference.upper().is_positive() {
            warm.solve().ok()?.torque()?.get::<newton_meter>()
        } else {
            0.0
        };
        // A tenth is less than friction is known by, and nothing cannot be lost.
        if left >= 0.9 * held {
            return None;
        }
        let inches = self.shown == Units::Inches;
        let (scale, unit) = if inches { (0.737_562, "lbf\u{b7}ft") } else { (1.0, "N\u{b7}m") };
        let there = if inches {
            format!("{:.0} \u{b0}F", at * 1.8 + 32.0)
        } else {
            format!("{at:.0} \u{b0}C")
        };
        let says = if left > 0.0 {
            format!("it holds {:.1} {unit} for {:.1}", left * scale, held * scale)
        } else {
            "it may hold nothing".to_owned()
        };
        Some(format!("the parts expand unlike: at {there} {says}; see `warm`"))
    }
}
