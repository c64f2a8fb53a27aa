//! The normal distribution, in micrometres: all that readings and passes need.

/// A normal quantity: its mean and its standard deviation.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Normal {
    pub(super) mean: f64,
    pub(super) sd: f64,
}

/// Mean 0, standard deviation 1.
pub(super) const STANDARD: Normal = Normal { mean: 0.0, sd: 1.0 };

impl Normal {
    /// The value that is exceeded with a chance, by halving: to a part in a
    /// million between eight standard deviations.
    pub(super) fn above_with(self, chance: f64) -> f64 {
        let (mut low, mut high) = (-8.0, 8.0);
        for _ in 0..24 {
            let middle = f64::midpoint(low, high);
            if STANDARD.above(middle) > chance {
                low = middle;
            } else {
                high = middle;
            }
        }
        self.mean + self.sd * f64::midpoint(low, high)
    }

    /// The chance of being at or below a value.
    pub(super) fn below(self, value: f64) -> f64 {
        if self.sd > 0.0 {
            0.5 * libm::erfc((self.mean - value) / self.sd / core::f64::consts::SQRT_2)
        } else {
            f64::from(u8::from(self.mean <= value))
        }
    }

    /// The chance of being at or above a value.
    pub(super) fn above(self, value: f64) -> f64 {
        Self { mean: -self.mean, sd: self.sd }.below(-value)
    }

    /// The chance of lying between two values, both included.
    pub(super) fn between(self, low: f64, high: f64) -> f64 {
        // Where both lie on one side, the small tails are taken from one
        // another: neither is then lost against one.
        let chance = if low > self.mean {
            self.above(low) - self.above(high)
        } else if self.sd > 0.0 {
            self.below(high) - self.below(low)
        } else {
            self.below(high)
        };
        chance.clamp(0.0, 1.0)
    }
}

/// The chance that squares of so many free standard normal quantities sum to
/// more (the upper tail of chi-square), by the recurrence of the incomplete
/// gamma function in steps of one (Abramowitz and Stegun, 6.5.22).
#[cfg(feature = "uom")]
pub(super) fn scatter_tail(free: u32, sum: f64) -> f64 {
    let half = sum / 2.0;
    let (mut tail, mut term, mut shape) = if free % 2 == 0 {
        // Of two: exp(−x); the next term is x exp(−x).
        (libm::exp(-half), half * libm::exp(-half), 1.0)
    } else {
        let root = libm::sqrt(half);
        let first = 2.0 * root * libm::exp(-half) / libm::sqrt(core::f64::consts::PI);
        (libm::erfc(root), first, 0.5)
    };
    while 2.0 * shape + 0.5 < f64::from(free) {
        tail += term;
        shape += 1.0;
        term *= half / shape;
    }
    tail.clamp(0.0, 1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_certain_size_is_inside_or_not() {
        let at = |mean| Normal { mean, sd: 0.0 };
        assert!((at(0.0).between(0.0, 1.0) - 1.0).abs() < 1e-15);
        assert!((at(1.0).between(0.0, 1.0) - 1.0).abs() < 1e-15);
        assert!(at(-0.1).between(0.0, 1.0).abs() < 1e-15);
        assert!(at(1.1).between(0.0, 1.0).abs() < 1e-15);
    }
}
