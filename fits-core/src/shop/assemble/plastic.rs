//! A hub that yields about its bore while the rest of it stays elastic.
//!
//! Tresca's condition with the yield strength raised by 2/√3, no hardening,
//! after DIN 7190-1 (formulas recalled, and derived again: in the yielded zone
//! the hoop less the radial stress is that raised strength, and the bore's
//! opening follows from it and the pressure alone). The shaft stays elastic.

use uom::si::{f64::Pressure, pressure::megapascal};

use super::{Compound, Ring, millimetres};
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
    /// How much the hub's bore opens.
    pub bore_growth: Length,
}

/// What a hub does under an interference.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum HubState {
    /// It springs back: the elastic figures hold.
    Elastic,
    /// It yields about the bore.
    Partly(PartlyPlastic),
    /// It yields right through, or the shaft yields too: no figure holds but
    /// the most that the parts can press with.
    Beyond,
}

/// Twice the shear that a metal yields at, after von Mises, in megapascals.
fn raised(ring: &Ring<'_>) -> Option<f64> {
    ring.material.yield_strength().map(|it| 2.0 / libm::sqrt(3.0) * it.get::<megapascal>())
}

/// The most pressure that two parts can bear, in megapascals: sure to be
/// reached before they give, and never passed. Infinite where no strength is
/// known.
///
/// A ring that yields right through bears its raised strength by the logarithm
/// of its diameters, and never more than that strength itself; a solid shaft
/// bears its strength.
pub(super) fn most_pressure(shaft: &Ring<'_>, hub: &Ring<'_>) -> (f64, f64) {
    let through = |ring: &Ring<'_>| {
        let ratio = ring.outside.millimetres() / ring.bore.millimetres();
        raised(ring).map_or(f64::INFINITY, |raised| raised * libm::log(ratio).min(1.0))
    };
    let hub = through(hub);
    let strength =
        shaft.material.yield_strength().map_or(f64::INFINITY, |it| it.get::<megapascal>());
    if !shaft.bore.is_positive() {
        return (hub.min(strength), hub.min(strength));
    }
    let inner = shaft.bore.millimetres() / shaft.outside.millimetres();
    (hub.min(strength * (1.0 - inner * inner) / 2.0), hub.min(through(shaft)))
}

/// The pressure at which the yielded zone of a hub reaches out to `zone` times
/// its bore, for a raised strength and the ratio of its bore to its outside.
fn pressure_of(raised: f64, ratio: f64, zone: f64) -> f64 {
    raised / 2.0 * (1.0 + 2.0 * libm::log(zone) - zone * zone * ratio * ratio)
}

/// The radial and the hoop stress, in megapascals, of a hub that yields about
/// its bore under a pressure, at a radius in millimetres; none where that
/// pressure leaves it elastic.
pub(super) fn stress(hub: &Ring<'_>, pressure: f64, radius: f64) -> Option<(f64, f64)> {
    let raised = raised(hub)?;
    let (inner, outer) = (hub.bore.millimetres() / 2.0, hub.outside.millimetres() / 2.0);
    let ratio = inner / outer;
    if pressure <= pressure_of(raised, ratio, 1.0) {
        return None;
    }
    let edge = inner * halved(1.0, 1.0 / ratio, |zone| pressure_of(raised, ratio, zone) < pressure);
    if radius < edge {
        let radial = raised * libm::log(radius / inner) - pressure;
        return Some((radial, radial + raised));
    }
    // Elastic outside it: half the raised strength by c²/b² evenly, and by
    // c²/r² from place to place.
    let even = raised / 2.0 * (edge / outer) * (edge / outer);
    let falls = raised / 2.0 * (edge / radius) * (edge / radius);
    Some((even - falls, even + falls))
}

/// Where a thing that grows stops being too low.
fn halved(mut low: f64, mut high: f64, is_low: impl Fn(f64) -> bool) -> f64 {
    for _ in 0..60 {
        let middle = f64::midpoint(low, high);
        if is_low(middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
    high
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
    let pressure = |zone: f64| pressure_of(raised, ratio, zone);
    // The interference, as a share of the diameter, that a yielded zone takes up.
    let takes = |zone: f64| {
        raised / modulus * zone * zone + pressure(zone) * (closes - (1.0 - poisson) / modulus)
    };
    let wanted = interference.millimetres() / hub.bore.millimetres();
    if takes(1.0 / ratio) < wanted {
        return Ok(HubState::Beyond);
    }
    let high = halved(1.0, 1.0 / ratio, |zone| takes(zone) < wanted);
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
    Ok(HubState::Partly(PartlyPlastic {
        pressure: pressed,
        reaches: millimetres(high * hub.bore.millimetres())?,
        share: (high * high - 1.0) * ratio * ratio / (1.0 - ratio * ratio),
        growth: millimetres(
            raised * high * high * ratio * ratio * hub.outside.millimetres() / modulus,
        )?,
        bore_growth: millimetres(
            (raised * high * high - found * (1.0 - poisson)) * hub.bore.millimetres() / modulus,
        )?,
    }))
}
