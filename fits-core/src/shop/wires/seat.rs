//! Where a straight wire seats in a screw thread's groove, solved exactly.
//!
//! The thread's axis is z. Its flanks are the helicoids
//! `z = h θ ± (P/4 + (r − E/2) tan α)` with `h` the lead over a full turn. The
//! wire's axis lies at x = c, tilted by β from the y axis. A half turn about x
//! takes one flank to the other and the wire to itself, so one flank will do:
//! a point on it is `c = r cos θ + √(ρ² − q²)` from where the wire would touch
//! it, `q = −r sin θ sin β + z cos β`. The wire touches where that is greatest,
//! and under the anvils it tilts until it lies deepest: there the contact
//! stands square under the wire's middle (t = 0 below).

use core::f64::consts::PI;

/// A thread's figures; lengths in one unit, the half angle in radians.
#[derive(Clone, Copy, Debug)]
pub(super) struct Groove {
    pub(super) pitch: f64,
    pub(super) lead: f64,
    pub(super) half_angle: f64,
    pub(super) pitch_diameter: f64,
}

/// A wire in its place.
#[derive(Clone, Copy, Debug)]
pub(super) struct Seat {
    /// Over a wire on each side.
    pub(super) over: f64,
    /// The diameter at which the wire touches the flanks.
    pub(super) contact: f64,
}

impl Groove {
    /// The lead angle at the pitch line, radians.
    pub(super) fn lead_angle(&self) -> f64 {
        libm::atan2(self.lead, PI * self.pitch_diameter)
    }

    /// A groove without lead: `M = E + W (1 + cosec α) − (P/2) cot α`.
    pub(super) fn plain(&self, wire: f64) -> Seat {
        let (sine, cosine) = libm::sincos(self.half_angle);
        let over =
            self.pitch_diameter + wire * (1.0 + 1.0 / sine) - 0.5 * self.pitch * cosine / sine;
        // Half the groove's width where the wire touches is (W/2) cos α.
        let up = (0.5 * wire * cosine - 0.25 * self.pitch) * cosine / sine;
        Seat { over, contact: self.pitch_diameter + 2.0 * up }
    }

    /// What the lead adds, to the first order: `(W/2) tan² B cos α cot α`.
    pub(super) fn lead_term(&self, wire: f64) -> f64 {
        let (sine, cosine) = libm::sincos(self.half_angle);
        let tangent = self.lead / (PI * self.pitch_diameter);
        0.5 * wire * tangent * tangent * cosine * cosine / sine
    }

    /// The wire in the groove with its lead; nothing where it has no seat on
    /// one point of each flank.
    pub(super) fn seat(&self, wire: f64) -> Option<Seat> {
        let lead_angle = self.lead_angle();
        let tilt = widening_root(
            |tilt| self.touch(wire, tilt).map_or(f64::NAN, |touch| touch.along),
            lead_angle,
            0.02 * lead_angle + 1e-4,
            0.5 * lead_angle + 1e-3,
        )?;
        let touch = self.touch(wire, tilt)?;
        Some(Seat { over: 2.0 * touch.axis + wire, contact: 2.0 * touch.radius })
    }

    /// Where a wire of a given tilt first touches the flank.
    fn touch(&self, wire: f64, tilt: f64) -> Option<Touch> {
        let advance = self.lead / (2.0 * PI);
        let slope = libm::tan(self.half_angle);
        let (tilt_sine, tilt_cosine) = libm::sincos(tilt);
        let rho = 0.5 * wire;
        let foot = 0.25 * self.pitch - 0.5 * self.pitch_diameter * slope;
        // Along the flank q = base + slant r, and over r the distance is greatest
        // at q = ρ m / √(1 + m²) with m = cos θ / slant: what is left is a
        // function of θ alone, `ρ √(1 + m²) − m base`, of which this is the rise.
        let ray = |theta: f64| {
            let (sine, cosine) = libm::sincos(theta);
            let base = (advance * theta + foot) * tilt_cosine;
            let slant = slope * tilt_cosine - sine * tilt_sine;
            Ray { sine, cosine, base, slant, m: cosine / slant }
        };
        let rise = |theta: f64| {
            let Ray { sine, cosine, base, slant, m } = ray(theta);
            let turned = (cosine * cosine * tilt_sine - sine * slant) / (slant * slant);
            rho * m * turned / libm::sqrt(1.0 + m * m) - turned * base - m * advance * tilt_cosine
        };
        let theta = widening_root(rise, 0.0, 0.05, 0.8)?;
        let Ray { sine, base, slant, m, .. } = ray(theta);
        let root = libm::sqrt(1.0 + m * m);
        let radius = (rho * m / root - base) / slant;
        let z = advance * theta + foot + radius * slope;
        Some(Touch {
            axis: rho * root - m * base,
            radius,
            along: radius * sine * tilt_cosine + z * tilt_sine,
        })
    }
}

/// The flank along one ray from the thread's axis.
struct Ray {
    sine: f64,
    cosine: f64,
    base: f64,
    slant: f64,
    m: f64,
}

/// First contact of a wire held at a tilt.
struct Touch {
    /// Of the wire's axis from the thread's.
    axis: f64,
    /// Of the contact from the thread's axis.
    radius: f64,
    /// Of the contact from the wire's middle, along the wire.
    along: f64,
}

/// The root nearest to a place, looked for in a window that widens to `most`.
pub(super) fn widening_root(f: impl Fn(f64) -> f64, at: f64, step: f64, most: f64) -> Option<f64> {
    let mut half = step;
    while half <= most {
        if let Some(found) = root(&f, at - half, at + half) {
            return Some(found);
        }
        half *= 1.5;
    }
    None
}

/// The root between two places of unlike sign, by Ridders' rule; it halves the
/// window each round, so it ends.
pub(super) fn root(f: impl Fn(f64) -> f64, low: f64, high: f64) -> Option<f64> {
    let (mut low, mut high) = (low, high);
    let (mut at_low, mut at_high) = (f(low), f(high));
    if at_low == 0.0 {
        return Some(low);
    }
    if at_high == 0.0 {
        return Some(high);
    }
    // Also false where either is not a number.
    let opposite = |a: f64, b: f64| (a < 0.0 && b > 0.0) || (a > 0.0 && b < 0.0);
    if !opposite(at_low, at_high) {
        return None;
    }
    let mut best = 0.5 * (low + high);
    for _ in 0..100 {
        let middle = 0.5 * (low + high);
        let at_middle = f(middle);
        let spread = libm::sqrt(at_middle * at_middle - at_low * at_high);
        let sign = if at_low > at_high { 1.0 } else { -1.0 };
        best = middle + (middle - low) * sign * at_middle / spread;
        let at_best = f(best);
        if at_best == 0.0 {
            return Some(best);
        }
        // Keep the narrowest window that still holds the root.
        if opposite(at_middle, at_best) {
            (low, at_low, high, at_high) = if middle < best {
                (middle, at_middle, best, at_best)
            } else {
                (best, at_best, middle, at_middle)
            };
        } else if opposite(at_low, at_best) {
            (high, at_high) = (best, at_best);
        } else if opposite(at_best, at_high) {
            (low, at_low) = (best, at_best);
        } else {
            return None;
        }
        if high - low <= 1e-13 * (1.0 + high.abs()) {
            break;
        }
    }
    Some(best)
}
