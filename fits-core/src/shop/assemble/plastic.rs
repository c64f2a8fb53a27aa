//! Two parts pressed together, of which either may yield.
//!
//! Plane stress, von Mises' condition, no hardening, and Hencky's deformation
//! theory: the radial stress in a yielded zone is −s times the yield strength
//! with s = 2/√3 sin θ, and r² sin(θ + π/3) e^{√3 θ} is the same throughout it
//! (after Nadai, Theory of Flow and Fracture of Solids, from memory; derived
//! again, and checked by finite differences). A bush is a hub with all its
//! stresses turned about. Where one part yields right through, the other
//! decides how far its face moves.

use core::f64::consts::{FRAC_PI_2, FRAC_PI_3};

use uom::si::{f64::Pressure, pressure::megapascal};

use super::{Compound, Ring, Stress, Surface, cylinder, millimetres};
use crate::{error::Error, size::Length};

/// A part that yields from its bore outwards.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Yielded {
    /// How far out it yields: a diameter.
    pub reaches: Length,
    /// The share of its section that yields.
    pub share: f64,
}

/// What a part does under an interference.
///
/// ```
/// use fits_core::shop::assemble::Yielding;
/// assert_eq!((Yielding::Elastic.share(), Yielding::Through.share()), (0.0, 1.0));
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[expect(clippy::exhaustive_enums, reason = "nothing, a part or all of a wall yields")]
pub enum Yielding {
    /// It springs back.
    Elastic,
    /// It yields about its bore; the rest stays elastic.
    Partly(Yielded),
    /// It yields right through.
    Through,
}

impl Yielding {
    /// The share of the section that yields.
    pub const fn share(self) -> f64 {
        match self {
            Self::Elastic => 0.0,
            Self::Partly(zone) => zone.share,
            Self::Through => 1.0,
        }
    }
}

const ROOT_3: f64 = 1.732_050_807_568_877_2;

/// What is the same throughout a yielded zone, but for r².
fn course(theta: f64) -> f64 {
    libm::sin(theta + FRAC_PI_3) * libm::exp(ROOT_3 * theta)
}

/// θ by its course, which grows from −π/3 to π/2.
fn theta_of(wanted: f64) -> f64 {
    halved(-FRAC_PI_3, FRAC_PI_2, |theta| course(theta) < wanted)
}

/// Where a thing that grows stops being too low.
fn halved(mut low: f64, mut high: f64, is_low: impl Fn(f64) -> bool) -> f64 {
    for _ in 0..50 {
        let middle = f64::midpoint(low, high);
        if is_low(middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
    high
}

/// A ring in millimetres and megapascals; its strength is infinite where none
/// is known.
#[derive(Clone, Copy, Debug)]
struct Body {
    inner: f64,
    outer: f64,
    modulus: f64,
    poisson: f64,
    strength: f64,
    /// Pressed from within, as a hub is, or from without.
    is_hub: bool,
}

impl Body {
    fn of(ring: &Ring<'_>, is_hub: bool) -> Self {
        let strength = ring.material.yield_strength();
        Self {
            inner: ring.bore.millimetres() / 2.0,
            outer: ring.outside.millimetres() / 2.0,
            modulus: ring.material.modulus().get::<megapascal>(),
            poisson: ring.material.poisson(),
            strength: strength.map_or(f64::INFINITY, |it| it.get::<megapascal>()),
            is_hub,
        }
    }

    const fn face(&self) -> f64 {
        if self.is_hub { self.inner } else { self.outer }
    }

    /// The pressure at which it yields right through, or, of a thick hub, at
    /// which no plane stress bears more at the bore.
    fn most(&self) -> f64 {
        let theta = theta_of(self.course_at_face());
        self.strength * 2.0 / ROOT_3 * libm::sin(theta).abs()
    }

    /// The course of θ at the face of a ring that yields right through: at the
    /// other surface nothing presses, and θ is zero.
    fn course_at_face(&self) -> f64 {
        let ratio = self.outer / self.inner;
        course(0.0) * if self.is_hub { ratio * ratio } else { 1.0 / (ratio * ratio) }
    }

    /// θ at a radius where a hub just yields that is elastic outside it.
    fn theta_at_edge(&self, radius: f64) -> f64 {
        let k2 = (radius / self.outer) * (radius / self.outer);
        libm::asin(ROOT_3 / 2.0 * (1.0 - k2) / libm::sqrt(3.0 + k2 * k2))
    }

    /// Under a pressure that it bears.
    fn under(self, pressure: f64) -> Loaded {
        let elastic = Loaded { body: self, pressure, reach: self.inner, theta: 0.0, flow: 1.0 };
        let counts =
            |(radial, hoop): (f64, f64)| libm::sqrt(radial * radial - radial * hoop + hoop * hoop);
        if counts(elastic.stress(self.inner)) <= self.strength {
            return elastic;
        }
        let (reach, theta) = if self.is_hub {
            let inside = libm::asin((ROOT_3 / 2.0 * pressure / self.strength).min(1.0));
            let wanted = self.inner * self.inner * course(inside);
            let reach = halved(self.inner, self.outer, |reach| {
                reach * reach * course(self.theta_at_edge(reach)) < wanted
            });
            (reach, self.theta_at_edge(reach))
        } else {
            let reach_of = |theta: f64| self.inner * libm::sqrt(course(0.0) / course(theta));
            let theta = -halved(0.0, FRAC_PI_3, |turned| {
                let reach = reach_of(-turned);
                let zone = Loaded { reach, theta: -turned, ..elastic };
                reach < self.outer && -zone.stress(self.outer).0 < pressure
            });
            (reach_of(theta).min(self.outer), theta)
        };
        Loaded { reach, theta, flow: libm::cos(theta), ..elastic }
    }
}

/// A ring under the pressure at its face.
#[derive(Clone, Copy, Debug)]
struct Loaded {
    body: Body,
    pressure: f64,
    /// The radius out to which it yields; its bore where it does not.
    reach: f64,
    /// θ at that radius.
    theta: f64,
    /// What the strains of flow go by: cos θ at that radius, more where it
    /// yields right through.
    flow: f64,
}

impl Loaded {
    fn sign(&self) -> f64 {
        if self.body.is_hub { 1.0 } else { -1.0 }
    }

    /// θ at a radius in the yielded zone.
    fn theta(&self, radius: f64) -> f64 {
        if self.body.inner == 0.0 {
            return self.theta;
        }
        theta_of(course(self.theta) * (self.reach / radius) * (self.reach / radius))
    }

    /// Radial and hoop stress where it just yields, by θ.
    fn yielded(&self, theta: f64) -> (f64, f64) {
        let s = 2.0 / ROOT_3 * libm::sin(theta);
        let strength = self.sign() * self.body.strength;
        (-s * strength, (libm::cos(theta) - s / 2.0) * strength)
    }

    /// Radial and hoop stress at a radius.
    fn stress(&self, radius: f64) -> (f64, f64) {
        let Body { inner, outer, is_hub, .. } = self.body;
        if self.reach > inner {
            if radius < self.reach {
                return self.yielded(self.theta(radius));
            }
            let (radial, hoop) = self.yielded(self.theta);
            let falls = (hoop - radial) / 2.0 * (self.reach / radius) * (self.reach / radius);
            let even = f64::midpoint(hoop, radial);
            return (even - falls, even + falls);
        }
        let (a2, b2) = (inner * inner, outer * outer);
        let per = self.pressure / (b2 - a2);
        let (even, falls) = if is_hub { (per * a2, per * b2) } else { (-per * b2, -per * b2) };
        let falls = if inner > 0.0 { falls * a2 / (radius * radius) } else { 0.0 };
        (even - falls, even + falls)
    }

    /// The stretch around the ring at a radius.
    fn strain(&self, radius: f64) -> f64 {
        let Body { modulus, poisson, strength, inner, .. } = self.body;
        if self.reach > inner && radius < self.reach {
            let theta = self.theta(radius);
            let flows = self.flow * libm::exp(ROOT_3 * (theta - self.theta));
            let evenly = (0.5 - poisson) * 2.0 / ROOT_3 * libm::sin(theta);
            return self.sign() * strength / modulus * (flows - evenly);
        }
        let (radial, hoop) = self.stress(radius);
        (hoop - poisson * radial) / modulus
    }

    /// It bears no more, and its face moves by the strain that the other part
    /// leaves it.
    fn flowing(self, at_face: f64) -> Self {
        let Body { modulus, poisson, strength, outer, is_hub, .. } = self.body;
        let course_at_face = self.body.course_at_face();
        let edge = if course_at_face > course(FRAC_PI_2) {
            // Of a thick hub the zone ends where the bore bears no more.
            self
        } else {
            // Right through: the edge is a shade outside the ring.
            let theta = if is_hub { 0.0 } else { theta_of(course_at_face) };
            Self { reach: outer * (1.0 + 1e-12), theta, ..self }
        };
        let theta = edge.theta(self.body.face());
        let evenly = (0.5 - poisson) * 2.0 / ROOT_3 * libm::sin(theta);
        let flows = self.sign() * at_face * modulus / strength + evenly;
        Self { flow: flows / libm::exp(ROOT_3 * (theta - edge.theta)), ..edge }
    }

    fn share(&self) -> f64 {
        let Body { inner, outer, .. } = self.body;
        (self.reach * self.reach - inner * inner) / (outer * outer - inner * inner)
    }
}

/// A shaft and a hub pressed together.
#[derive(Clone, Copy, Debug)]
pub(in crate::shop) struct Pair {
    rings: [Loaded; 2],
    /// One of them is at the end of what it bears.
    flows: [bool; 2],
}

impl Pair {
    /// Solved for the interference that works, on the diameter.
    pub(in crate::shop) fn solve(
        shaft: &Ring<'_>,
        hub: &Ring<'_>,
        interference: Length,
    ) -> Result<Self, Error> {
        let elastic = Compound::solve(&[*shaft, *hub], &[interference])?;
        let elastic = elastic.pressure(0).get::<megapascal>();
        let wanted = interference.millimetres() / hub.bore.millimetres();
        let (shaft, hub) = (Body::of(shaft, false), Body::of(hub, true));
        let takes = |[shaft, hub]: [Loaded; 2]| {
            hub.strain(hub.body.face()) - shaft.strain(shaft.body.face())
        };
        let both = |pressure: f64| [shaft.under(pressure), hub.under(pressure)];
        let limits = [shaft.most(), hub.most()];
        let high = elastic.min(limits[0]).min(limits[1]);
        let flows = limits.map(|limit| limit <= high);
        let mut rings = both(high);
        if takes(rings) < wanted && flows != [false, false] {
            let [shaft, hub] = &mut rings;
            if flows[1] {
                *hub = hub.flowing(wanted + shaft.strain(shaft.body.face()));
            } else {
                *shaft = shaft.flowing(hub.strain(hub.body.face()) - wanted);
            }
            return Ok(Self { rings, flows: [!flows[1], flows[1]] });
        }
        let is_elastic = rings.iter().all(|ring| ring.reach <= ring.body.inner);
        if !is_elastic {
            rings = both(halved(0.0, high, |pressure| takes(both(pressure)) < wanted));
        }
        Ok(Self { rings, flows: [false, false] })
    }

    /// The pressure between them.
    pub(super) fn pressure(&self) -> Pressure {
        Pressure::new::<megapascal>(self.rings[1].pressure)
    }

    fn ring(&self, ring: usize) -> &Loaded {
        &self.rings[usize::from(ring > 0)]
    }

    /// What a part does, the shaft's 0 and the hub's 1.
    pub(super) fn yielding(&self, ring: usize) -> Yielding {
        let found = self.ring(ring);
        if self.flows[usize::from(ring > 0)] {
            return Yielding::Through;
        }
        let diameter = millimetres(2.0 * found.reach);
        match diameter {
            Ok(reaches) if found.reach > found.body.inner => {
                Yielding::Partly(Yielded { reaches, share: found.share().min(1.0) })
            }
            _ => Yielding::Elastic,
        }
    }

    /// The stress of a part at a diameter in its wall.
    pub(super) fn stress(&self, ring: usize, diameter: Length) -> Stress {
        let found = self.ring(ring);
        let least = found.body.inner;
        cylinder::said(found.stress((diameter.millimetres() / 2.0).max(least)))
    }

    /// How much a diameter of a part grows.
    pub(in crate::shop) fn growth(&self, ring: usize, surface: Surface) -> Result<Length, Error> {
        let found = self.ring(ring);
        let radius = match surface {
            Surface::Bore => found.body.inner,
            Surface::Outside => found.body.outer,
        };
        millimetres(2.0 * radius * found.strain(radius))
    }
}
