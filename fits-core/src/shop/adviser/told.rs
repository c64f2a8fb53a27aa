//! The chance told with the advice: the advice is followed to its end, once
//! for each of several sequences of readings.

use super::{Action, Adviser, Next};
use crate::{error::Error, shop::chance::STANDARD, size::Length, standards::iso286::Feature};

/// Sequences of readings.
const WAYS: u32 = 64;
/// Steps of each; a way that is not done by then ends where it is.
const MOST_AHEAD: u32 = 24;

/// The part after the point of count × an irrational number: spread evenly
/// (H. Weyl, Math. Ann. 77, 1916). One root for each reading's kind and size,
/// so that no way has all its luck on one side.
fn even(way: u32, draw: u32) -> f64 {
    const PRIMES: [f64; 12] = [2.0, 3.0, 5.0, 7.0, 11.0, 13.0, 17.0, 19.0, 23.0, 29.0, 31.0, 37.0];
    // The remainder is less than twelve.
    let root = libm::sqrt(PRIMES[draw as usize % PRIMES.len()]);
    let at = (f64::from(way) + 0.5) * root + f64::from(draw) * 0.137;
    (at - libm::floor(at)).clamp(1e-6, 1.0 - 1e-6)
}

impl Adviser {
    /// What to do next.
    pub fn next(&self) -> Next {
        let next = self.decide();
        if matches!(next.action, Action::Stop | Action::Scrap) {
            return next;
        }
        let sum: f64 = (0..WAYS).map(|way| self.followed(next, way).unwrap_or(next.good)).sum();
        // A part with too much off already never ends inside.
        Next { good: (sum / f64::from(WAYS)).min(1.0 - next.over), ..next }
    }

    /// The chance of a good part where the advice is followed on one way.
    fn followed(&self, mut step: Next, way: u32) -> Result<f64, Error> {
        let mut ahead = self.clone();
        ahead.confirm();
        let scatter = self.prior.scatter.in_micrometres();
        for draw in 0..MOST_AHEAD {
            let (set, last) = (step.dial.map(Length::in_micrometres), ahead.last);
            let after = match (step.action, set) {
                (Action::Stop | Action::Scrap, _) => break,
                (Action::Cut, Some(set)) if set > 0.0 => {
                    ahead.kinds.passed(&|state, scatter| state.cut(set, scatter), scatter)
                }
                (Action::Cut, _) => {
                    ahead.kinds.passed(&|state, scatter| state.spring(last, scatter), scatter)
                }
                (Action::ReadAgain, _) => ahead.kinds,
            };
            let count = step.readings.max(1);
            let repeat = self.instrument.repeat.in_micrometres() / libm::sqrt(f64::from(count));
            let expected = after.reading(even(way, 2 * draw), repeat);
            let chance = even(way, 2 * draw + 1);
            let read = expected.mean + STANDARD.above_with(1.0 - chance) * expected.sd;
            let off = Length::nearest_micrometres(read)?;
            let reading = match self.feature {
                Feature::Hole => self.limits.middle().checked_add(off)?,
                Feature::Shaft => self.limits.middle().checked_sub(off)?,
            };
            let readings = [reading; 8];
            // Eight at most.
            let readings = &readings[..(count as usize).min(readings.len())];
            match (step.action, step.dial) {
                (Action::Cut, Some(dial)) if dial.is_positive() => ahead.cut(dial, readings)?,
                (Action::Cut, _) => ahead.spring(readings)?,
                _ => ahead.read(readings)?,
            }
            step = ahead.decide();
        }
        Ok(step.good)
    }
}
