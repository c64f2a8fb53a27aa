//! How a size may lie inside its limits.

use core::f64::consts::{FRAC_1_SQRT_2, PI};

/// Where a part's size falls inside its limits, given nothing else.
///
/// ```
/// use fits_core::shop::stack::Spread;
/// assert_eq!(Spread::Triangular.word(), "triangular");
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[expect(
    clippy::exhaustive_enums,
    reason = "each is told, or acted on, in its own way: a new one must not pass unseen"
)]
pub enum Spread {
    /// Anywhere between the limits alike: nothing is known of the work.
    #[default]
    Uniform,
    /// Most often near the middle, never at the limits: one-off work aimed
    /// for the middle.
    Triangular,
    /// Normal about the middle with the limits at three standard deviations
    /// and nothing beyond them: a part outside is not used.
    Normal,
}

/// Where the limits cut the normal curve, in standard deviations.
const CUT: f64 = 3.0;

/// Cells of the quantile table; a power of two that eleven bits count.
pub(super) const CELLS: usize = 2048;

/// Sizes below which so many parts of [`CELLS`] lie, the limits at 0 and 1:
/// one more than there are cells.
pub(super) type Quantiles = Vec<f64>;

impl Spread {
    /// Every spread.
    pub const ALL: [Self; 3] = [Self::Uniform, Self::Triangular, Self::Normal];

    /// Its word.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Uniform => "uniform",
            Self::Triangular => "triangular",
            Self::Normal => "normal",
        }
    }

    /// The variance where the limits are one apart.
    ///
    /// Uniform 1/12, triangular 1/24; normal 1/36 less what the cut takes
    /// (the moments of a doubly truncated normal; Johnson, Kotz and
    /// Balakrishnan, Continuous Univariate Distributions 1, 13.10.1).
    ///
    /// ```
    /// use fits_core::shop::stack::Spread;
    /// assert_eq!(Spread::Uniform.variance(), 1.0 / 12.0);
    /// assert!((Spread::Normal.variance() * 36.0 - 0.9733).abs() < 1e-4);
    /// ```
    pub fn variance(self) -> f64 {
        match self {
            Self::Uniform => 1.0 / 12.0,
            Self::Triangular => 1.0 / 24.0,
            Self::Normal => {
                let kept = 1.0 - 2.0 * below(-CUT);
                (1.0 - 2.0 * CUT * density(CUT) / kept) / (4.0 * CUT * CUT)
            }
        }
    }

    /// Equally likely steps from limit to limit.
    #[allow(clippy::cast_precision_loss, reason = "small whole numbers")]
    pub(super) fn quantiles(self) -> Quantiles {
        let mut table = vec![0.0; CELLS + 1];
        let share = |at: usize| at as f64 / CELLS as f64;
        // From below up; each root of the normal starts at the one before.
        let mut root = -CUT;
        for (at, value) in table.iter_mut().enumerate() {
            let share = share(at);
            *value = match self {
                Self::Uniform => share,
                Self::Triangular if share <= 0.5 => libm::sqrt(share / 2.0),
                Self::Triangular => 1.0 - libm::sqrt((1.0 - share) / 2.0),
                Self::Normal => {
                    let wanted = below(-CUT) + share * (1.0 - 2.0 * below(-CUT));
                    root = quantile_from(root, wanted).clamp(-CUT, CUT);
                    f64::midpoint(1.0, root / CUT)
                }
            };
        }
        table
    }
}

fn density(x: f64) -> f64 {
    libm::exp(-x * x / 2.0) / libm::sqrt(2.0 * PI)
}

/// The share of a normal population below `x`.
fn below(x: f64) -> f64 {
    0.5 * libm::erfc(-x * FRAC_1_SQRT_2)
}

/// Newton's steps to where the normal population has this share below it.
fn quantile_from(start: f64, share: f64) -> f64 {
    let mut x = start;
    for _ in 0..8 {
        let step = (share - below(x)) / density(x);
        x += step.clamp(-0.5, 0.5);
        if step.abs() < 1e-14 {
            break;
        }
    }
    x
}
