//! What a step is worth: a reading, a cut, and every cut that is weighed.

use super::{
    ahead::{Ahead, Between, NODES, PASS, READING, READINGS, Worth},
    state::State,
};

/// What a cut may leave, in half tolerances.
const LEAVES: [f64; 13] = [3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 14.0, 16.0, 20.0, 24.0, 32.0, 48.0];
/// Nearer than this to the middle, every cut that can be dialled is weighed.
const NEAR: f64 = 3.0;
/// A cut that stops short takes so much of what is left to the middle at
/// least: less wastes a pass, and what it teaches of the tool holds for a chip
/// as thin (common practice, no source).
const SHARE: f64 = 0.3;

/// The figures that every weighing needs, in micrometres.
pub(super) struct Scales<'a> {
    pub(super) ahead: &'a Ahead,
    pub(super) half: f64,
    /// What passes scatter, by this log and with a usual machine.
    pub(super) scatter: f64,
    pub(super) usual: f64,
    pub(super) repeat: f64,
    /// Parts of a division that can be set near size, and how long one is.
    pub(super) parts: f64,
    pub(super) part: f64,
    /// What the setting of such a part is off by.
    pub(super) setting: f64,
    /// The least that is dialled, in parts.
    pub(super) least: f64,
    /// The most that is dialled now, in parts; less than the least where no
    /// cut is safe.
    pub(super) most_now: f64,
    pub(super) risk: f64,
    pub(super) scrap: f64,
}

/// A step, weighed.
#[derive(Clone, Copy)]
pub(super) struct Weighed {
    pub(super) worth: Worth,
    pub(super) readings: u32,
}

impl Scales<'_> {
    /// A cut of so many parts scatters by what passes do, and by how well a
    /// split division is set.
    pub(super) fn scatter(&self, parts: f64) -> f64 {
        if self.is_split(parts) { libm::hypot(self.scatter, self.setting) } else { self.scatter }
    }

    pub(super) fn is_split(&self, parts: f64) -> bool {
        libm::fmod(parts, self.parts) != 0.0
    }

    /// Where a state lies in the table.
    pub(super) fn place(&self, state: &State) -> Between {
        // How well the cut is known that is left to make.
        let left = ((-state.mean[0] - state.mean[2]) / state.mean[1].max(0.05))
            .max(self.least * self.part);
        let next = state.size_after(left, 0.0).sd;
        let more = (self.scatter * self.scatter - self.usual * self.usual).max(0.0);
        let tool = libm::sqrt((next * next - state.spread[0][0]).max(0.0) + more);
        self.ahead.place(state.reading(0.0).sd, tool)
    }

    /// What it is worth to read this state so often and play on from there.
    pub(super) fn read(&self, state: &State, readings: u32) -> Worth {
        let repeat = self.repeat / libm::sqrt(f64::from(readings));
        let (weight, after) = state.about_to_read(repeat);
        let sd = state.reading(repeat).sd;
        let place = self.place(&after);
        let mut sum = Worth { value: -READING * f64::from(readings), good: 0.0 };
        for (z, share) in NODES {
            sum.add(share, self.ahead.at(&place, after.mean[0] + z * sd * weight[0]));
        }
        sum
    }

    pub(super) fn best_reading(&self, state: &State) -> Weighed {
        READINGS
            .map(|readings| Weighed { worth: self.read(state, readings), readings })
            .into_iter()
            .reduce(|best, next| if next.worth.value > best.worth.value { next } else { best })
            .unwrap_or(Weighed { worth: Worth::default(), readings: 1 })
    }

    /// A pass that leads to a state; nothing where it risks too much.
    pub(super) fn pass(&self, now: f64, after: &State, over: f64) -> Option<Weighed> {
        let as_one = after.size().above(self.half);
        if now.max(over).max(as_one) > self.risk {
            return None;
        }
        let mut found = self.best_reading(after);
        // Metal does not come back: a pass never makes it less likely that
        // too much is off.
        let more = (now - over).max(0.0).min(found.worth.good);
        found.worth.good -= more;
        found.worth.value -= more * (1.0 + self.scrap) + PASS;
        // A few kinds of machine overshoot more often than all as one.
        let tail = (over - as_one).max(0.0).min(found.worth.good);
        found.worth.good -= tail;
        found.worth.value -= tail * (1.0 + self.scrap);
        Some(found)
    }

    /// Every cut that is weighed, in parts of a division.
    pub(super) fn cuts(&self, state: &State) -> Vec<f64> {
        let [size, gain, offset, ..] = state.mean;
        let to = |short: f64| (-short - size - offset) / gain.max(0.05) / self.part;
        let mut cuts = Vec::with_capacity(32);
        let most_left = -size * (1.0 - SHARE);
        let whole = libm::floor(self.most_now / self.parts) * self.parts;
        for leave in LEAVES.into_iter().rev() {
            // Whole divisions, further off.
            let parts = libm::round(to(leave * self.half) / self.parts) * self.parts;
            if leave * self.half <= most_left.max(self.half) {
                cuts.push(parts.min(whole));
            }
        }
        let (from, end) = (libm::floor(to(NEAR * self.half)), libm::ceil(to(-self.half)));
        let stride = libm::ceil((end - from) / 40.0).max(1.0);
        let mut parts = from.max(self.least);
        while parts <= end.min(self.most_now) {
            cuts.push(parts);
            parts += stride;
        }
        cuts.push(if self.most_now < from { whole } else { self.most_now.min(end) });
        cuts.retain(|parts| (self.least..=self.most_now).contains(parts));
        cuts.sort_by(f64::total_cmp);
        cuts.dedup();
        cuts
    }
}
