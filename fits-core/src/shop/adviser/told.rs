//! The chance that is told with the advice: two cuts ahead are not the end of
//! a cut that stops short, so the advice is followed to where it ends.

use super::{Action, Adviser, Next};
use crate::{shop::chance::STANDARD, size::Length};

/// Cuts that stop short, looked through.
const MOST_AHEAD: u32 = 60;
/// With a coarse dial, where the last cut lands hangs on what was read before
/// it: so many ways are followed, spread evenly over what may be read.
const WAYS: u32 = 13;

/// The reading of a way, as a chance between 0 and 1: points of a lattice
/// (N. M. Korobov's, with generator 2, a primitive root of 13), moved along at
/// every reading, so that no way has all its luck on one side.
fn luck(way: u32, reading: u32) -> f64 {
    let power = (0..reading % (WAYS - 1)).fold(1, |power, _| power * 2 % WAYS);
    let at = (way * power + 5 * reading * reading) % WAYS;
    (f64::from(at) + 0.5) / f64::from(WAYS)
}

impl Adviser {
    /// What to do next.
    pub fn next(&self) -> Next {
        let next = self.decide();
        if matches!(next.action, Action::Stop | Action::Scrap) {
            return next;
        }
        let good = if self.settings.step.in_micrometres() > self.half() {
            (0..WAYS).map(|way| self.followed(next, Some(way))).sum::<f64>() / f64::from(WAYS)
        } else if next.measuring || next.action == Action::ReadAgain {
            self.followed(next, None)
        } else {
            next.good
        };
        // A part with too much off already never ends inside.
        Next { good: good.min(1.0 - next.over), ..next }
    }

    /// The chance of a good part where the advice is followed: with every
    /// reading as expected, or as the luck of a way has it.
    fn followed(&self, mut step: Next, way: Option<u32>) -> f64 {
        let scatter = self.prior.scatter.in_micrometres();
        let mut ahead = self.clone();
        ahead.surprise = None;
        for reading in 0..MOST_AHEAD {
            let state = match (step.action, step.dial) {
                (Action::Stop | Action::Scrap, _) => break,
                // The last cut is weighed as it is, where no dial is coarse.
                (Action::Cut, _) if !step.measuring && way.is_none() => break,
                (Action::Cut, Some(dial)) if dial.is_positive() => {
                    ahead.last = dial.in_micrometres();
                    ahead.state.cut(ahead.last, scatter)
                }
                (Action::Cut, _) => ahead.state.spring(ahead.last, scatter),
                (Action::ReadAgain, _) => ahead.state,
            };
            let count = f64::from(step.readings.max(1));
            let repeat = self.instrument.repeat.in_micrometres() / libm::sqrt(count);
            let sd = state.reading(repeat).sd;
            let (weight, after) = state.about_to_read(repeat);
            ahead.unread = false;
            if step.dial.is_some_and(Length::is_positive) {
                ahead.agree();
            }
            ahead.state = match way {
                Some(way) => {
                    after.moved(weight, STANDARD.above_with(1.0 - luck(way, reading)) * sd)
                }
                None => after,
            };
            step = ahead.decide();
        }
        step.good
    }
}
