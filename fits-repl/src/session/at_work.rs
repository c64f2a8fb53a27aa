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

use super::{
    Session,
    assembled::{min_max, tidy},
    resolve::from_core,
    warm::{REFERENCE, celsius, to_a_tenth},
};
use crate::{
    answer::{AtWorkFigures, Mm},
    problem::Problem,
    query::JointText,
};

impl Session {
    /// At each end of the range told; nothing where none is.
    pub(super) fn at_work(
        &self,
        text: &JointText,
        joint: &Joint,
    ) -> Result<Vec<AtWorkFigures>, Problem> {
        let Some(warm) = &text.head.warm else { return Ok(Vec::new()) };
        if !joint.sleeves.is_empty() {
            return Err(Problem::new(
                "warmth is reckoned for one joint at a time",
                warm.at.clone(),
            )
            .advise("ask for each joint by itself"));
        }
        let failed = |error: fits_core::Error| from_core(&error, warm.at.clone());
        let expansion = |material: &Material| {
            let found = material.expansion().map(|it| it.get::<per_kelvin>());
            found.ok_or_else(|| {
                Problem::new(format!("the expansion of {material} is not known"), warm.at.clone())
                    .advise("give the part's alpha, in millionths per degree")
            })
        };
        let shrinks = expansion(&joint.shaft)? - expansion(&joint.hub)?;
        let (first, second) = &warm.value;
        let mut found = Vec::new();
        for amount in [Some(first), second.as_ref()].into_iter().flatten() {
            let at = self.amount(amount)?;
            for material in [&joint.hub, &joint.shaft] {
                stands(material, celsius(at))
                    .map_err(|error| from_core(&error, amount.at.clone()))?;
            }
            let gained = joint.diameter.millimetres() * shrinks * (at - REFERENCE);
            let gained = uom::si::f64::Length::new::<millimeter>(gained);
            let gained = Length::nearest(gained).map_err(failed)?;
            let [least, most] = [joint.interference.lower(), joint.interference.upper()]
                .map(|end| end.checked_add(gained).map_err(failed));
            let interference = Limits::new(least?, most?).map_err(failed)?;
            let presses = interference.upper().is_positive();
            let warm = Joint { interference, ..joint.clone() };
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
