//! The next step: every cut that can be dialled is weighed by where it leads,
//! with one reading after it and the best end from there.
//!
//! Weighed is the chance of ending inside the limits, less one and a half
//! times the chance of having taken too much, less a little for each pass and
//! reading.

use super::{Adviser, state::State};
use crate::{
    shop::chance::{Normal, STANDARD},
    size::Length,
};

/// What to do next.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
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
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
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
}

impl Because {
    /// In words, as JSON has it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::NotMeasured => "it was not measured after the last pass",
            Self::Surprised => "the last reading is far from what was expected",
            Self::CoarseDial => {
                "no cut that the dial allows is safe: the dial is too coarse here; split a \
                 division, or set the top slide over so that the dial counts less"
            }
            Self::Uncertain => {
                "no cut is safe: tool and instrument are too uncertain for this tolerance"
            }
            Self::TooClose => "it is too close to call with this instrument",
        }
    }
}

/// The advice.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Next {
    /// What to do.
    pub action: Action,
    /// For a cut, the change of diameter to dial, a whole number of steps;
    /// nought is a spring pass.
    pub dial: Option<Length>,
    /// How often to read after it; nought for no reading.
    pub readings: u32,
    /// A cut that stops short on purpose: measure after it, then cut again.
    pub measuring: bool,
    /// The chance of ending inside the limits by this way.
    pub good: f64,
    /// The chance that this step oversteps the limit that must not be passed;
    /// for no cut, that it is overstepped already.
    pub over: f64,
    /// Why it is no cut, where that is not plain.
    pub because: Option<Because>,
}

/// How much worse a part with too much off is than one with metal left.
const SCRAP: f64 = 1.5;
/// What a pass costs, as a chance of a good part.
const PASS: f64 = 0.015;
/// What another reading costs.
const READING: f64 = 0.008;
/// As sure as a verdict has to be.
const SURE: f64 = 0.95;
/// What a cut may leave, in half tolerances.
const LEAVES: [f64; 16] =
    [-0.25, 0.0, 0.25, 0.5, 0.75, 1.0, 1.5, 2.0, 3.0, 4.0, 6.0, 8.0, 12.0, 16.0, 24.0, 32.0];
/// A cut that stops short takes so much of what is left to the middle at
/// least: less wastes a pass, and what it teaches of the tool holds for a chip
/// as thin (common practice, no source).
const SHARE: f64 = 0.3;
/// How often to read, beside once.
const MORE_READINGS: [u32; 2] = [3, 5];
/// Cuts are compared as if read so often after each.
const COMPARED: u32 = 2;
/// Readings are weighed at every half of a standard deviation up to three.
const NODES: i32 = 6;

/// What a way is worth, and the chance of a good part in it.
#[derive(Clone, Copy, Debug)]
struct Worth {
    value: f64,
    good: f64,
    over: f64,
}

impl Worth {
    /// Metal does not come back: a pass never makes it less likely that too
    /// much is off.
    fn no_less_over(self, before: f64) -> Self {
        let more = (before - self.over).max(0.0).min(self.good);
        Self {
            value: self.value - more * (1.0 + SCRAP),
            good: self.good - more,
            over: self.over + more,
        }
    }

    fn better(self, other: Self) -> Self {
        if other.value > self.value { other } else { self }
    }

    fn less(self, cost: f64) -> Self {
        Self { value: self.value - cost, ..self }
    }
}

/// How many whole steps come nearest to a length.
pub(super) fn on_step(length: f64, step: f64) -> Option<i64> {
    let steps = libm::round(length / step);
    #[allow(clippy::cast_possible_truncation, reason = "whole, and its size is checked")]
    (steps.abs() < 1e15).then_some(steps as i64)
}

/// The figures that every weighing needs, in micrometres.
struct Scales {
    half: f64,
    scatter: f64,
    repeat: f64,
    step: f64,
    /// The least and the most that is dialled, in steps.
    least: f64,
    most: f64,
    /// The most that is dialled now, in steps; less than the least where no
    /// cut is safe.
    most_now: f64,
    risk: f64,
    /// So many standard deviations off the limit, the risk is what it may be.
    cautious: f64,
}

impl Scales {
    fn good(&self, size: Normal) -> f64 {
        size.between(-self.half, self.half)
    }

    /// What it is worth to leave the part as it is.
    fn stop(&self, size: Normal) -> Worth {
        let (good, over) = (self.good(size), size.above(self.half));
        Worth { value: good - SCRAP * over, good, over }
    }

    /// The dial setting that brings the size to so much short of the middle,
    /// in steps that can be dialled.
    fn steps_to(&self, state: &State, short: f64) -> f64 {
        let [size, gain, offset, _] = state.mean;
        let wanted = (-short - size - offset) / gain.max(0.05);
        libm::round(wanted / self.step).clamp(self.least, self.most)
    }

    /// The best that one more cut does, with nothing after it; nothing where
    /// it risks too much.
    fn finish(&self, state: &State) -> Option<Worth> {
        let plain = self.steps_to(state, 0.0) * self.step;
        let sd = state.size_after(plain, self.scatter).sd;
        // Where the two tails weigh alike: a little short of the middle.
        let short = if self.half > 0.0 {
            (sd * sd * libm::log(1.0 + SCRAP) / (2.0 * self.half)).min(self.half)
        } else {
            0.0
        };
        let mut set = self.steps_to(state, short.max(self.cautious * sd - self.half));
        let now = state.size().above(self.half);
        let mut after = state.size_after(set * self.step, self.scatter);
        if after.above(self.half) > self.risk && set > self.least {
            set -= 1.0;
            after = state.size_after(set * self.step, self.scatter);
        }
        let allowed = now.max(after.above(self.half)) <= self.risk;
        allowed.then(|| self.stop(after).no_less_over(now).less(PASS))
    }

    /// Stop or cut once more, whichever is worth more.
    fn end(&self, state: &State) -> Worth {
        let stop = self.stop(state.size());
        self.finish(state).map_or(stop, |finish| stop.better(finish))
    }

    /// What it is worth to measure this state so many times and go on from
    /// there.
    fn after_reading(&self, state: &State, readings: u32) -> Worth {
        let repeat = self.repeat / libm::sqrt(f64::from(readings));
        let (weight, after) = state.about_to_read(repeat);
        let sd = state.reading(repeat).sd;
        let (mut sum, mut value, mut good, mut over) = (0.0, 0.0, 0.0, 0.0);
        for node in -NODES..=NODES {
            let z = f64::from(node) * 0.5;
            let density = libm::exp(-z * z / 2.0);
            let end = self.end(&after.moved(weight, z * sd));
            sum += density;
            value += density * end.value;
            good += density * end.good;
            over += density * end.over;
        }
        Worth { value: value / sum, good: good / sum, over: over / sum }
            .less(READING * f64::from(readings))
    }

    /// How many readings are best of a state, and what they are worth.
    fn best_reading(&self, state: &State) -> (u32, Worth) {
        let mut best = (1, self.after_reading(state, 1));
        for readings in MORE_READINGS {
            let worth = self.after_reading(state, readings);
            // Where one does not pay, more may.
            if worth.value > best.1.value {
                best = (readings, worth);
            }
        }
        best
    }
}

impl Adviser {
    fn scales(&self) -> Scales {
        let step = self.settings.step.in_micrometres();
        let in_steps = |length: Length| length.in_micrometres() / step;
        let least = libm::ceil(in_steps(self.settings.least_cut)).max(1.0);
        let most = libm::floor(in_steps(self.settings.most_cut)).max(least);
        let safe = self.most_dialled().map_or(most, |safe| libm::floor(safe / step));
        Scales {
            half: self.half(),
            scatter: self.prior.scatter.in_micrometres(),
            repeat: self.instrument.repeat.in_micrometres(),
            step,
            least,
            most,
            most_now: most.min(safe),
            risk: self.settings.risk,
            cautious: STANDARD.above_with(self.settings.risk),
        }
    }

    /// What to do next, looking two cuts ahead.
    pub(crate) fn decide(&self) -> Next {
        let scales = self.scales();
        let state = &self.state;
        let now = state.size();
        let over_now = now.above(scales.half);
        let mut best = scales.stop(now);
        let mut next = Next {
            action: Action::Stop,
            dial: None,
            readings: 0,
            measuring: false,
            good: best.good,
            over: over_now,
            because: None,
        };
        let read = |because| Next {
            action: Action::ReadAgain,
            readings: 1,
            good: scales.best_reading(state).1.good.min(1.0 - over_now),
            because: Some(because),
            ..next
        };
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
        let cut = |steps: f64| state.cut(steps * scales.step, scales.scatter);
        let mut tried = 0.0;
        let mut steps: Vec<f64> = Vec::with_capacity(LEAVES.len() + 1);
        let most_left = -now.mean * (1.0 - SHARE);
        for leave in LEAVES {
            if leave > 0.0 && leave * scales.half > most_left.max(scales.half) {
                break;
            }
            let found = scales.steps_to(state, leave * scales.half).min(scales.most_now);
            if found >= scales.least && (found - tried).abs() > 0.5 {
                tried = found;
                steps.push(found);
            }
        }
        let safe = |after: &State| over_now.max(after.size().above(scales.half)) <= scales.risk;
        let mut best_cut: Option<(f64, Option<f64>, State)> = None;
        let mut weigh = |steps: Option<f64>, after: State| {
            if safe(&after) {
                let value = scales.after_reading(&after, COMPARED).no_less_over(over_now).value;
                if best_cut.is_none_or(|(best, ..)| value > best) {
                    best_cut = Some((value, steps, after));
                }
            }
        };
        for steps in steps {
            weigh(Some(steps), cut(steps));
        }
        let sprung = state.spring(self.last, scales.scatter);
        if sprung.mean[0] >= -scales.half && self.last > 0.0 {
            weigh(None, sprung);
        }
        let best_cut = best_cut.map(|(_, steps, after)| self.weighed(&scales, steps, &after));
        let short = now.below(-scales.half) > 0.5;
        let stuck = short && best_cut.is_none();
        match best_cut {
            Some((worth, cut)) if short || worth.value > best.value => (best, next) = (worth, cut),
            _ => {}
        }
        // A cut that stops short is read after anyway.
        if next.measuring {
            return next;
        }
        // Reading again pays where it makes the end better, seen as far ahead
        // with it as without.
        let (readings, read) = scales.best_reading(state);
        if read.value > scales.end(state).value {
            let gain = read.good - scales.end(state).good;
            next = Next {
                action: Action::ReadAgain,
                dial: None,
                readings,
                measuring: false,
                good: (best.good + gain).clamp(0.0, 1.0 - over_now),
                over: over_now,
                because: None,
            };
        }
        if next.action == Action::Stop {
            if over_now > SURE {
                next.action = Action::Scrap;
            } else if stuck {
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
        let room = scales.half - scales.cautious * fine.sd - fine.mean;
        if room > 0.0 && scales.most_now > 0.0 { Because::CoarseDial } else { Because::Uncertain }
    }

    /// What a cut of so many steps is worth, or a spring pass for none.
    fn weighed(&self, scales: &Scales, steps: Option<f64>, after: &State) -> (Worth, Next) {
        let size = after.size();
        let over_now = self.state.size().above(scales.half);
        let (readings, worth) = scales.best_reading(after);
        let worth = worth.no_less_over(over_now).less(PASS);
        let dialled = steps.and_then(|steps| on_step(steps, 1.0)).unwrap_or(0);
        let next = Next {
            action: Action::Cut,
            // A whole number of steps within what a pass takes.
            dial: Some(self.settings.step.checked_mul(dialled).unwrap_or(Length::ZERO)),
            readings,
            measuring: size.mean < -scales.half,
            good: worth.good,
            over: size.above(scales.half).max(over_now),
            because: None,
        };
        (worth, next)
    }

    /// Far from size, two cuts ahead show nothing yet: the most that a pass
    /// takes, where that leaves as much again.
    fn rough(&self, scales: &Scales) -> Option<Next> {
        if scales.most_now < scales.least {
            return None;
        }
        let most = scales.most_now * scales.step;
        let far = |state: &State| state.size_after(2.0 * most, scales.scatter).mean < -scales.half;
        if !far(&self.state) {
            return None;
        }
        let first = self.state.cut(most, scales.scatter);
        let (_, next) = self.weighed(scales, Some(scales.most_now), &first);
        Some(Next { readings: 1, ..next })
    }
}
