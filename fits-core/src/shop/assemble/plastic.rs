//! A hub that yields about its bore while the rest of it stays elastic.
//!
//! Tresca's condition with the yield strength raised by 2/√3, no hardening,
//! after DIN 7190-1 (formulas recalled, and derived again: in the yielded zone
//! the hoop less the radial stress is that raised strength, and the bore's
//! opening follows from it and the pressure alone). The shaft stays elastic.

use uom::si::{f64::Pressure, pressure::megapascal};

use super::{Compound, Ring, Surface, millimetres};
use crate::{error::Error, size::Length};

/// A hub that yields about its bore.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PartlyPlastic {
    /// The pressure at the joint.
    pub pressure: Pressure,
    /// How far out the hub yields: a diameter.
    pub reaches: Length,
    /// The share of the hub's section that yields.
    pub share: f64,
    /// How much the hub's outside grows.
    pub growth: Length,
    /// How much the shaft's bore moves; closing in is below nought.
    pub shaft_growth: Length,
}

/// What a hub does under an interference.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum HubState {
    /// It springs back: the elastic figures hold.
    Elastic,
    /// It yields about the bore.
    Partly(PartlyPlastic),
    /// It yields right through, or the shaft yields too: no figure holds.
    Beyond,
}

/// What the hub does, of a joint of two.
///
/// `interference` is the one that works, on the diameter, roughness taken off.
pub(super) fn hub_state(
    shaft: &Ring<'_>,
    hub: &Ring<'_>,
    interference: Length,
) -> Result<HubState, Error> {
    let Some(strength) = hub.material.yield_strength().map(|it| it.get::<megapascal>()) else {
        return Ok(HubState::Elastic);
    };
    let elastic = Compound::solve(&[*shaft, *hub], &[interference])?;
    let ratio = hub.bore.millimetres() / hub.outside.millimetres();
    let root = libm::sqrt(3.0);
    if elastic.pressure(0).get::<megapascal>() <= strength / root * (1.0 - ratio * ratio) {
        return Ok(HubState::Elastic);
    }
    let raised = 2.0 / root * strength;
    let (modulus, poisson) = (hub.material.modulus().get::<megapascal>(), hub.material.poisson());
    // The shaft's closing in, as a share of the diameter, under one MPa.
    let inner = shaft.bore.millimetres() / shaft.outside.millimetres();
    let hollow = (1.0 + inner * inner) / (1.0 - inner * inner);
    let closes = (hollow - shaft.material.poisson()) / shaft.material.modulus().get::<megapascal>();
    let pressure =
        |zone: f64| strength / root * (1.0 + 2.0 * libm::log(zone) - zone * zone * ratio * ratio);
    // The interference, as a share of the diameter, that a yielded zone takes up.
    let takes = |zone: f64| {
        raised / modulus * zone * zone + pressure(zone) * (closes - (1.0 - poisson) / modulus)
    };
    let wanted = interference.millimetres() / hub.bore.millimetres();
    let (mut low, mut high) = (1.0, 1.0 / ratio);
    if takes(high) < wanted {
        return Ok(HubState::Beyond);
    }
    // It grows with the zone: halving finds it to the last place.
    for _ in 0..60 {
        let middle = f64::midpoint(low, high);
        if takes(middle) < wanted {
            low = middle;
        } else {
            high = middle;
        }
    }
    let found = pressure(high);
    // Beyond this the hoop stress at the bore turns to compression.
    if found > raised {
        return Ok(HubState::Beyond);
    }
    let pressed = Pressure::new::<megapascal>(found);
    let shaft_yields = shaft.material.yield_strength().is_some_and(|strength| {
        let worst = if inner > 0.0 { hollow + 1.0 } else { 1.0 };
        pressed.get::<megapascal>() * worst >= strength.get::<megapascal>()
    });
    if shaft_yields {
        return Ok(HubState::Beyond);
    }
    // The shaft goes by the pressure alone, so by the elastic answer in ratio.
    let part = found / elastic.pressure(0).get::<megapascal>();
    let bore = elastic.growth(0, Surface::Bore)?.millimetres();
    Ok(HubState::Partly(PartlyPlastic {
        pressure: pressed,
        reaches: millimetres(high * hub.bore.millimetres())?,
        share: (high * high - 1.0) * ratio * ratio / (1.0 - ratio * ratio),
        growth: millimetres(
            raised * high * high * ratio * ratio * hub.outside.millimetres() / modulus,
        )?,
        shaft_growth: millimetres(bore * part)?,
    }))
}
