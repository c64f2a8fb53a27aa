//! The next step: every cut that can be dialled is weighed by where it leads,
//! for each reading that may follow, and from there by the best play
//! ([`ahead`](super::ahead)).
//!
//! Weighed is the chance of ending inside the limits, less the chance of
//! having taken too much times what that costs, less a little for each pass
//! and reading.

use super::{
    Adviser,
    ahead::Terms,
    scales::{Scales, Weighed},
    state::State,
};
use crate::{
    shop::chance::{Normal, STANDARD},
    size::Length,
};

/// What to do next.
///
/// ```
/// use fits_core::shop::adviser::Action;
/// assert_eq!(Action::ReadAgain.word(), "read again");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[expect(
    clippy::exhaustive_enums,
    reason = "each is told, or acted on, in its own way: a new one must not pass unseen"
)]
pub enum Action {
    /// Make a pass.
    Cut,
    /// Measure again before anything else.
    ReadAgain,
    /// The part is as good as it gets.
    Stop,
    /// Too much is off: suit the mate to it, or begin again.
    Scrap,
}

impl Action {
    /// In words, as JSON has it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Cut => "cut",
            Self::ReadAgain => "read again",
            Self::Stop => "stop",
            Self::Scrap => "scrap",
        }
    }
}

/// Why nothing is cut now, where that is not plain.
///
/// ```
/// use fits_core::shop::adviser::Because;
/// assert_eq!(Because::NotMeasured.word(), "it was not measured after the last pass");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Because {
    /// The last pass was not measured.
    NotMeasured,
    /// The last reading is far from what was expected.
    Surprised,
    /// Metal is left, and the least cut of the dial may take too much.
    CoarseDial,
    /// Metal is left, and no cut is safe, however fine the dial.
    Uncertain,
    /// No reading of this instrument tells good from not.
    TooClose,
    /// Three passes in a row missed: the machine is at fault, not a hand.
    Slips,
}

impl Because {
    /// In words, as JSON has it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::NotMeasured => "it was not measured after the last pass",
            Self::Surprised => "the last reading is far from what was expected",
            Self::CoarseDial => "the least cut that the dial and the tool allow takes too much",
            Self::Uncertain => {
                "no cut is safe: tool and instrument are too uncertain for this tolerance"
            }
            Self::TooClose => "it is too close to call with this instrument",
            Self::Slips => {
                "three passes in a row missed: check the machine (dial, locks, gibs, tool, how \
                 the work is held) and the gauge; then take a light cut, and measure it"
            }
        }
    }
}

/// The advice.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Next {
    /// What to do.
    pub action: Action,
    /// For a cut, the change of diameter to dial, a whole number of steps;
    /// zero is a spring pass.
    pub dial: Option<Length>,
    /// How often to read after it; zero for no reading.
    pub readings: u32,
    /// A cut that stops short on purpose: measure after it, then cut again.
    pub measuring: bool,
    /// The chance of ending inside the limits by this way.
    pub good: f64,
    /// The chance that this step oversteps the limit that must not be passed;
    /// for no cut, that it is overstepped already.
    pub over: f64,
    /// Why it is not a cut, where that is not plain.
    pub because: Option<Because>,
}

/// So many passes in a row that missed stop the work. Common practice, no source.
const MOST_SLIPS: u32 = 3;
/// As sure as a verdict has to be.
const SURE: f64 = 0.95;
/// Reading again is weighed nearer than this to the middle: further off, the
/// next cut leaves enough whatever is read.
const AGAIN: f64 = 5.0;
/// It has to gain so much beside what it costs.
const WORTH_IT: f64 = 1e-3;
/// What splitting a division costs, as a chance of a good part.
const SPLITTING: f64 = 0.002;
/// How many whole steps come nearest to a length.
pub(super) fn on_step(length: f64, step: f64) -> Option<i64> {
    let steps = libm::round(length / step);
    #[allow(clippy::cast_possible_truncation, reason = "whole, and its size is checked")]
    (steps.abs() < 1e15).then_some(steps as i64)
}

impl Adviser {
    /// A division is split near size where it is coarse.
    fn parts(&self) -> i64 {
        self.settings.parts(self.limits.tolerance())
    }

    fn scales(&self) -> Scales<'_> {
        #[allow(clippy::cast_precision_loss, reason = "twenty at most")]
        let parts = self.parts() as f64;
        let division = self.settings.step.in_micrometres();
        let part = division / parts;
        let in_parts = |length: Length| length.in_micrometres() / part;
        let least = libm::ceil(in_parts(self.settings.least_cut) - 1e-9).max(1.0);
        let most = libm::floor(in_parts(self.settings.most_cut) + 1e-9).max(least);
        let safe = self.most_dialled().map_or(most, |safe| libm::floor(safe / part));
        let usual = self.prior.scatter.in_micrometres();
        let scatter = self.kinds.scatter(usual);
        let repeat = self.instrument.repeat.in_micrometres();
        let setting = self.settings.setting(self.limits.tolerance());
        let (risk, scrap, half) = (self.settings.risk, self.settings.scrap(), self.half());
        let ahead = self.ahead.of(|| Terms {
            half,
            scatter: usual,
            repeat,
            bias: self.instrument.bias.in_micrometres(),
            part,
            least: least * part,
            setting,
            tool: libm::hypot(
                self.prior.offset_sd.in_micrometres(),
                self.prior.gain_sd * (6.0 * half).max(division),
            ),
            risk,
            scrap,
        });
        let most_now = most.min(safe);
        Scales {
            ahead,
            half,
            scatter,
            usual,
            repeat,
            parts,
            part,
            setting,
            least,
            most_now,
            risk,
            scrap,
        }
    }

    /// What to do next.
    pub fn next(&self) -> Next {
        let scales = self.scales();
        let state = &self.state;
        let now = state.size();
        let over_now = now.above(scales.half);
        let stop = scales.ahead.stop(now);
        let mut next = Next {
            action: Action::Stop,
            dial: None,
            readings: 0,
            measuring: false,
            good: stop.good,
            over: over_now,
            because: None,
        };
        let read = |because| {
            let found = scales.best_reading(state);
            Next {
                action: Action::ReadAgain,
                readings: 1,
                good: found.worth.good.min(1.0 - over_now),
                because: Some(because),
                ..next
            }
        };
        if self.slips >= MOST_SLIPS {
            return Next { because: Some(Because::Slips), ..next };
        }
        // A reading that was not to be expected is taken again first.
        if self.surprise.is_some() {
            return read(Because::Surprised);
        }
        if let Some(rough) = self.rough(&scales) {
            return rough;
        }
        if self.unread {
            return read(Because::NotMeasured);
        }
        let mut best_cut: Option<(Weighed, f64, State)> = None;
        let mut weigh = |parts: f64, after: State| {
            let over = self.kinds.over_after(parts * scales.part, scales.usual, scales.half);
            if let Some(mut found) = scales.pass(over_now, &after, over) {
                if scales.is_split(parts) {
                    found.worth.value -= SPLITTING;
                }
                if best_cut.is_none_or(|(best, ..)| found.worth.value > best.worth.value) {
                    best_cut = Some((found, parts, after));
                }
            }
        };
        for parts in scales.cuts(state) {
            weigh(parts, state.cut(parts * scales.part, scales.scatter(parts)));
        }
        let sprung = state.spring(self.last, scales.scatter);
        if sprung.mean[0] >= -scales.half && self.last > 0.0 {
            weigh(0.0, sprung);
        }
        let mut best = stop.value;
        let better = best_cut.filter(|(found, ..)| found.worth.value > best);
        if let Some((found, parts, after)) = better {
            best = found.worth.value;
            next = self.ordered(&scales, found, parts, &after);
        }
        // Compared within the table, where both see as far.
        let again = scales.best_reading(state);
        let as_is = scales.ahead.at(&scales.place(state), now.mean);
        let is_near = now.mean > -AGAIN * scales.half;
        if is_near
            && again.worth.value > as_is.value.max(stop.value) + WORTH_IT
            && again.worth.value > best
        {
            next = Next {
                action: Action::ReadAgain,
                dial: None,
                readings: again.readings,
                measuring: false,
                good: again.worth.good.clamp(0.0, 1.0 - over_now),
                over: over_now,
                because: None,
            };
        }
        if next.action == Action::Stop {
            let is_short = now.below(-scales.half) > 0.5;
            if over_now > SURE {
                next.action = Action::Scrap;
            } else if is_short {
                next.because = Some(self.stuck(&scales));
            } else if next.good < SURE {
                next.because = Some(Because::TooClose);
            }
        }
        next
    }

    /// Would a finer dial let a cut be made that is safe, and takes something?
    fn stuck(&self, scales: &Scales) -> Because {
        let fine = self.state.size_after(0.0, scales.scatter);
        let cautious = STANDARD.above_with(scales.risk);
        let room = scales.half - cautious * fine.sd - fine.mean;
        if room > 0.0 && scales.most_now > 0.0 { Because::CoarseDial } else { Because::Uncertain }
    }

    /// The order of a cut of so many parts, or of a spring pass for none.
    fn ordered(&self, scales: &Scales, found: Weighed, parts: f64, after: &State) -> Next {
        let size: Normal = after.size();
        let over = size.above(scales.half).max(self.state.size().above(scales.half));
        let step = self.settings.step;
        let counted = on_step(parts, 1.0)
            .and_then(|parts| step.checked_scale(i128::from(parts), i128::from(self.parts())).ok());
        Next {
            action: Action::Cut,
            dial: Some(counted.unwrap_or(Length::ZERO)),
            readings: found.readings,
            measuring: size.mean < -scales.half,
            good: found.worth.good.min(1.0 - over),
            over,
            because: None,
        }
    }

    /// Far from size, the table shows nothing yet: the most that a pass
    /// takes, where that leaves as much again.
    fn rough(&self, scales: &Scales) -> Option<Next> {
        let whole = libm::floor(scales.most_now / scales.parts) * scales.parts;
        if whole < scales.least {
            return None;
        }
        let most = whole * scales.part;
        if self.state.size_after(2.0 * most, scales.scatter).mean >= -scales.half {
            return None;
        }
        let first = self.state.cut(most, scales.scatter);
        let found = scales.best_reading(&first);
        let next = self.ordered(scales, found, whole, &first);
        Some(Next { readings: 1, ..next })
    }
}

#[cfg(test)]
mod tests {
    use super::on_step;

    /// As `f64::round` has it: a tie goes away from zero.
    #[test]
    fn a_length_comes_to_the_nearest_step() {
        for (length, steps) in [(24.9, 2), (25.0, 3), (25.1, 3), (-25.0, -3), (0.0, 0), (4.9, 0)] {
            assert_eq!(on_step(length, 10.0), Some(steps), "{length}");
        }
        assert_eq!(on_step(1e30, 10.0), None);
    }
}
