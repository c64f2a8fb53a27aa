//! Machines of several kinds, believed side by side: a usual one, rougher ones
//! and one whose tool is far from its usual way. Each has its own filter; what
//! is read tells how likely each is. So scatter and a light tool are learned
//! inside the log.
//!
//! Source: D. T. Magill, Optimal Adaptive Estimation of Sampled Stochastic
//! Processes, IEEE Trans. Autom. Control 10 (1965).

use super::{Prior, state::State};
use crate::standards::instruments::Uncertainty;

/// A kind of machine, by what differs from the usual one.
struct Kind {
    /// Its passes scatter by so many times as much.
    scatter: f64,
    /// Its cut factor is known so many times as badly.
    gain: f64,
    /// The share of machines that are of this kind, as a chance; common practice, no source.
    share: f64,
}

const KINDS: [Kind; 4] = [
    Kind { scatter: 1.0, gain: 1.0, share: 0.798 },
    Kind { scatter: 2.0, gain: 1.0, share: 0.115 },
    Kind { scatter: 4.0, gain: 1.0, share: 0.042 },
    Kind { scatter: 1.0, gain: 3.0, share: 0.045 },
];

/// What is believed if the machine is of each kind, and how likely that is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Kinds {
    each: [(State, f64); 4],
}

impl Kinds {
    /// Before any pass, from one reading of the start.
    pub(super) fn new(start: f64, prior: &Prior, instrument: Uncertainty) -> Self {
        let each = KINDS.map(|kind| {
            let prior = Prior { gain_sd: prior.gain_sd * kind.gain, ..*prior };
            (State::new(start, &prior, instrument), kind.share)
        });
        Self { each }
    }

    /// After a pass, which does this to a state where passes scatter so much.
    pub(super) fn passed(mut self, pass: &dyn Fn(State, f64) -> State, scatter: f64) -> Self {
        for ((state, _), kind) in self.each.iter_mut().zip(&KINDS) {
            *state = pass(*state, scatter * kind.scatter);
        }
        self
    }

    /// After a reading that tells of size and machine.
    pub(super) fn read(mut self, reading: f64, repeat: f64) -> Self {
        let mut sum = 0.0;
        for (state, share) in &mut self.each {
            let expected = state.reading(repeat);
            if expected.sd > 0.0 {
                let off = (reading - expected.mean) / expected.sd;
                // No kind is ever ruled out: the next part may be of it.
                *share = (*share * libm::exp(-off * off / 2.0) / expected.sd).max(1e-12);
            }
            *state = state.read(reading, repeat);
            sum += *share;
        }
        for (_, share) in &mut self.each {
            *share /= sum;
        }
        self
    }

    /// After a reading that tells of the size alone.
    pub(super) fn read_anew(self, reading: f64, repeat: f64) -> Self {
        self.changed(&|state| state.read_anew(reading, repeat))
    }

    /// One state for every kind: what a slip taught.
    pub(super) fn taught(self, taught: State) -> Self {
        self.changed(&|_| taught)
    }

    /// The same change for every kind.
    pub(super) fn changed(mut self, change: &dyn Fn(State) -> State) -> Self {
        for (state, _) in &mut self.each {
            *state = change(*state);
        }
        self
    }

    /// All kinds as one: its mean and spread are theirs.
    pub(super) fn together(&self) -> State {
        let mut sum = State::default();
        for (state, share) in &self.each {
            for (value, of) in sum.mean.iter_mut().zip(state.mean) {
                *value += share * of;
            }
        }
        for (state, share) in &self.each {
            let off: Vec<f64> =
                state.mean.iter().zip(sum.mean).map(|(of, mean)| of - mean).collect();
            for ((row, of), off_row) in sum.spread.iter_mut().zip(state.spread).zip(&off) {
                for ((value, of), off) in row.iter_mut().zip(of).zip(&off) {
                    *value += share * (of + off_row * off);
                }
            }
        }
        sum
    }

    /// The chance that a cut takes too much, over all kinds.
    pub(super) fn over_after(&self, dialled: f64, usual: f64, half: f64) -> f64 {
        let each = self.each.iter().zip(&KINDS).map(|((state, share), kind)| {
            share * state.size_after(dialled, usual * kind.scatter).above(half)
        });
        each.sum()
    }

    /// What passes scatter, if by this with a usual machine.
    pub(super) fn scatter(&self, usual: f64) -> f64 {
        let mean: f64 = self
            .each
            .iter()
            .zip(&KINDS)
            .map(|((_, share), kind)| share * kind.scatter * kind.scatter)
            .sum();
        usual * libm::sqrt(mean)
    }
}
