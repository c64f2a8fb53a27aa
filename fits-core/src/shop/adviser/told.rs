//! The chance that is told with the advice: two cuts ahead are not the end of
//! a cut that stops short, so the advice is followed to where it ends.

use super::{Action, Adviser, Next};
use crate::shop::chance::STANDARD;

/// Cuts that stop short, looked through.
const MOST_AHEAD: usize = 60;
/// With a coarse dial, where the last cut lands hangs on what was read before
/// it: so many ways are followed, spread evenly over what may be read.
const WAYS: u32 = 12;
/// What spreads the next reading of each way: it keeps the ways apart.
const SHIFT: (f64, f64) = (7.0, 0.618_034);

impl Adviser {
    /// What to do next.
    pub fn next(&self) -> Next {
        let next = self.decide();
        if next.action == Action::Stop || next.action == Action::Scrap || next.dial.is_none() {
            return next;
        }
        let good = if self.settings.step.in_micrometres() > self.half() {
            let ways = (0..WAYS).map(|way| {
                let start = (f64::from(way) + 0.5) / f64::from(WAYS);
                self.followed(next, Some(start))
            });
            ways.sum::<f64>() / f64::from(WAYS)
        } else if next.measuring {
            self.followed(next, None)
        } else {
            next.good
        };
        Next { good, ..next }
    }

    /// The chance of a good part where the advice is followed: with every
    /// reading as expected, or as a number between 0 and 1 has it.
    fn followed(&self, mut step: Next, mut luck: Option<f64>) -> f64 {
        let scatter = self.prior.scatter.in_micrometres();
        let mut ahead = self.clone();
        ahead.surprise = None;
        for _ in 0..MOST_AHEAD {
            let state = match (step.action, step.dial) {
                (Action::Stop | Action::Scrap, _) => break,
                // The last cut is weighed as it is, where no dial is coarse.
                (Action::Cut, _) if !step.measuring && luck.is_none() => break,
                (Action::Cut, Some(dial)) if dial.is_positive() => {
                    ahead.last = dial.in_micrometres();
                    ahead.state.cut(ahead.last, scatter)
                }
                (Action::Cut, _) => ahead.state.spring(ahead.last, scatter),
                (Action::ReadAgain, _) if luck.is_none() => break,
                (Action::ReadAgain, _) => ahead.state,
            };
            let count = f64::from(step.readings.max(1));
            let repeat = self.instrument.repeat.in_micrometres() / libm::sqrt(count);
            let sd = state.reading(repeat).sd;
            let (weight, after) = state.about_to_read(repeat);
            ahead.unread = false;
            ahead.state = match luck {
                Some(chance) => after.moved(weight, STANDARD.above_with(1.0 - chance) * sd),
                None => after,
            };
            luck = luck.map(|chance| (chance * SHIFT.0 + SHIFT.1) % 1.0);
            step = ahead.decide();
        }
        step.good
    }
}
