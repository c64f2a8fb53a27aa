//! What is believed of a part and its machine, and how a pass or a reading
//! changes it: a Kalman filter.
//!
//! Five quantities: the size, counted from the middle of the limits in the
//! way the tool moves it; the cut factor; the offset; what the instrument in
//! hand reads too much, the same in each of its readings; and what the one
//! put down reads too much. All lengths in micrometres. Every step is linear, so the filter is exact.
//!
//! Source: R. E. Kalman, A New Approach to Linear Filtering and Prediction
//! Problems, Journal of Basic Engineering 82 (1960), equations as in any
//! text on estimation.

use super::Prior;
use crate::shop::chance::Normal;
use crate::standards::instruments::Uncertainty;

/// Size, cut factor, offset, bias, and the other instrument's bias.
type Vector = [f64; 5];
/// Where the biases stand.
const IN_HAND: usize = 3;
const PUT_DOWN: usize = 4;

#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct State {
    pub(super) mean: Vector,
    pub(super) spread: [Vector; 5],
}

impl State {
    /// Before any pass, from one reading of the start.
    pub(super) fn new(start: f64, prior: &Prior, instrument: Uncertainty) -> Self {
        let square = |x: f64| x * x;
        let bias = square(instrument.bias.in_micrometres());
        let repeat = square(instrument.repeat.in_micrometres());
        let mut spread = [Vector::default(); 5];
        // The size is the reading less the bias and less what scattered.
        spread[0][0] = bias + repeat;
        spread[0][3] = -bias;
        spread[3][0] = -bias;
        spread[3][3] = bias;
        spread[1][1] = square(prior.gain_sd);
        spread[2][2] = square(prior.offset_sd.in_micrometres());
        Self { mean: [start, prior.gain, prior.offset.in_micrometres(), 0.0, 0.0], spread }
    }

    /// The size.
    pub(super) fn size(&self) -> Normal {
        Normal { mean: self.mean[0], sd: libm::sqrt(self.spread[0][0].max(0.0)) }
    }

    /// The size after a pass, without working out the rest.
    pub(super) fn size_after(&self, dialled: f64, scatter: f64) -> Normal {
        let Self { mean, spread } = self;
        let variance = spread[0][0]
            + dialled * dialled * spread[1][1]
            + spread[2][2]
            + 2.0 * (dialled * spread[0][1] + spread[0][2] + dialled * spread[1][2])
            + scatter * scatter;
        Normal { mean: mean[0] + mean[1] * dialled + mean[2], sd: libm::sqrt(variance.max(0.0)) }
    }

    /// A pass: the size changes by cut factor × dialled + offset, and by what
    /// passes scatter.
    #[must_use]
    pub(super) fn cut(mut self, dialled: f64, scatter: f64) -> Self {
        self.mean[0] += self.mean[1] * dialled + self.mean[2];
        let moved = |row: Vector| row[0] + dialled * row[1] + row[2];
        // First the rows, then the columns of the first quantity.
        for row in &mut self.spread {
            row[0] = moved(*row);
        }
        let [first, gain, offset, ..] = self.spread;
        for (at, value) in self.spread[0].iter_mut().enumerate() {
            // `at` counts five.
            *value = first[at] + dialled * gain[at] + offset[at];
        }
        self.spread[0][0] += scatter * scatter;
        self
    }

    /// A pass without infeed: between nothing and all of what the last cut
    /// left standing comes off, each as likely (common practice, no source).
    #[must_use]
    pub(super) fn spring(mut self, last: f64, scatter: f64) -> Self {
        let left = self.left_standing(last);
        self.mean[0] += left / 2.0;
        self.spread[0][0] += scatter * scatter + left * left / 12.0;
        self
    }

    /// What the last cut left of what it was set to take.
    fn left_standing(&self, last: f64) -> f64 {
        (last - self.mean[1] * last - self.mean[2]).max(0.0)
    }

    /// What a reading is expected to show, before it is taken.
    pub(super) fn reading(&self, repeat: f64) -> Normal {
        let spread = &self.spread;
        let variance = spread[0][0] + 2.0 * spread[0][3] + spread[3][3] + repeat * repeat;
        Normal { mean: self.mean[0] + self.mean[3], sd: libm::sqrt(variance.max(0.0)) }
    }

    /// How much each quantity moves for each micrometre that a reading is off
    /// what was expected, and the state that every such reading leads to but
    /// for those moves.
    pub(super) fn about_to_read(&self, repeat: f64) -> (Vector, Self) {
        let sd = self.reading(repeat).sd;
        let variance = sd * sd;
        let mut after = *self;
        if variance <= 0.0 {
            return (Vector::default(), after);
        }
        let shared: Vector = self.spread.map(|row| row[0] + row[3]);
        let weight = shared.map(|value| value / variance);
        for (row, shared_of_row) in after.spread.iter_mut().zip(shared) {
            for (value, weight) in row.iter_mut().zip(weight) {
                *value -= shared_of_row * weight;
            }
        }
        (weight, after)
    }

    /// After a reading; `repeat` is that of the mean where several were taken.
    #[must_use]
    pub(super) fn read(&self, reading: f64, repeat: f64) -> Self {
        let off = reading - self.reading(repeat).mean;
        let (weight, after) = self.about_to_read(repeat);
        after.moved(weight, off)
    }

    /// After a cut, had less been known of the cut factor before it: by this
    /// standard deviation.
    #[must_use]
    pub(super) fn widened(mut self, dialled: f64, gain_sd: f64) -> Self {
        let variance = gain_sd * gain_sd;
        self.spread[1][1] += variance;
        self.spread[0][1] += dialled * variance;
        self.spread[1][0] += dialled * variance;
        self.spread[0][0] += dialled * dialled * variance;
        self
    }

    /// After a reading that alone tells the size: what was believed of the
    /// size is forgotten, and nothing is learned of the tool. The size is the
    /// reading less the bias and less what scatters.
    #[must_use]
    pub(super) fn read_anew(mut self, reading: f64, repeat: f64) -> Self {
        let bias = self.spread[3];
        self.mean[0] = reading - self.mean[3];
        for (at, value) in bias.into_iter().enumerate().skip(1) {
            // `at` counts from one to four.
            self.spread[0][at] = -value;
            self.spread[at][0] = -value;
        }
        self.spread[0][0] = bias[3] + repeat * repeat;
        self
    }

    /// The instrument put down is in hand again, and the other put down.
    #[must_use]
    pub(super) fn exchanged(mut self) -> Self {
        self.mean.swap(IN_HAND, PUT_DOWN);
        self.spread.swap(IN_HAND, PUT_DOWN);
        for row in &mut self.spread {
            row.swap(IN_HAND, PUT_DOWN);
        }
        self
    }

    /// The instrument put down is one that has read nothing yet.
    #[must_use]
    pub(super) fn beside(mut self, other: Uncertainty) -> Self {
        let bias = other.bias.in_micrometres();
        self.mean[PUT_DOWN] = 0.0;
        for row in &mut self.spread {
            row[PUT_DOWN] = 0.0;
        }
        self.spread[PUT_DOWN] = Vector::default();
        self.spread[PUT_DOWN][PUT_DOWN] = bias * bias;
        self
    }

    #[must_use]
    pub(super) fn moved(mut self, weight: Vector, off: f64) -> Self {
        for (value, weight) in self.mean.iter_mut().zip(weight) {
            *value += weight * off;
        }
        self
    }
}
