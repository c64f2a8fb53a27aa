//! The normal distribution, in micrometres: all that readings and passes need.

/// A normal quantity: its mean and its standard deviation.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Normal {
    pub(super) mean: f64,
    pub(super) sd: f64,
}

impl Normal {
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
