//! The chances that a part is good, over or under, from what its places measure
//! and how uncertain each is.

use crate::shop::chance::Normal;

pub(super) struct Chances {
    pub(super) good: f64,
    pub(super) over: f64,
    pub(super) under: f64,
}

impl Chances {
    /// Sizes from the middle of the limits, each uncertain by itself, and all
    /// of them together by what is the same in each: summed over that.
    pub(super) fn of(sizes: &[f64], own: &[f64], fixed: f64, half: f64) -> Self {
        if let ([mean], [own]) = (sizes, own) {
            let size = Normal { mean: *mean, sd: libm::hypot(*own, fixed) };
            return Self {
                good: size.between(-half, half),
                over: certain_or(size, size.above(half), *mean > half),
                under: certain_or(size, size.below(-half), *mean < -half),
            };
        }
        let (mut sum, mut good, mut not_over, mut not_under) = (0.0, 0.0, 0.0, 0.0);
        for node in -120..=120 {
            let z = f64::from(node) * 0.05;
            let density = libm::exp(-z * z / 2.0);
            let (mut all_good, mut none_over, mut none_under) = (1.0, 1.0, 1.0);
            for (mean, own) in sizes.iter().zip(own) {
                let size = Normal { mean: mean + z * fixed, sd: *own };
                all_good *= size.between(-half, half);
                none_over *= size.below(half);
                none_under *= size.above(-half);
            }
            sum += density;
            good += density * all_good;
            not_over += density * none_over;
            not_under += density * none_under;
        }
        Self { good: good / sum, over: 1.0 - not_over / sum, under: 1.0 - not_under / sum }
    }
}

/// At a limit to the digit, and certain, a size is inside.
fn certain_or(size: Normal, chance: f64, is: bool) -> f64 {
    if size.sd > 0.0 { chance } else { f64::from(u8::from(is)) }
}
