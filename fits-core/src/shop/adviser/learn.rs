//! What finished jobs teach of a machine, for the next one.

use super::{Error, Prior};
use crate::size::Length;

/// One pass of a finished job: what was dialled and what it took, both as
/// changes of diameter.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is built whole: what is new must be said by whoever builds one"
)]
pub struct FinishedPass {
    /// Dialled; zero for a spring pass, which teaches nothing here.
    pub dialled: Length,
    /// The change from the reading before to the reading after.
    pub took: Length,
    /// Standard deviation of that change by the instrument alone: two
    /// readings' scatter, √2 times one reading's.
    pub took_sd: Length,
}

/// How many jobs the prior is worth beside what was logged.
const WORTH: f64 = 3.0;
/// Rounds of the estimate; it settles in far fewer.
const ROUNDS: usize = 60;

/// Learns from finished jobs what to expect of the next one: each slice holds
/// one job's passes. Jobs differ (another tool, another overhang), so what is
/// learned is the middle of the jobs and how far they lie apart, and `before`
/// counts as three jobs.
///
/// Source: expectation and maximisation for a linear model whose coefficients
/// vary by group (Dempster, Laird and Rubin, J. R. Stat. Soc. B 39, 1977).
///
/// # Errors
/// A pass that dials less than 0, or a figure out of range.
///
/// ```
/// use fits_core::{Length, shop::adviser::{FinishedPass, Prior, learn}};
/// let um = Length::from_micrometres;
/// let before = Prior {
///     gain: 1.0, gain_sd: 0.05, offset: Length::ZERO, offset_sd: um(6)?, scatter: um(3)?,
/// };
/// let pass = |dialled, took| Ok::<_, fits_core::Error>(FinishedPass {
///     dialled: um(dialled)?, took: um(took)?, took_sd: um(3)?,
/// });
/// let light = [pass(300, 270)?, pass(200, 180)?, pass(100, 90)?];
/// let learned = learn(&before, &[&light, &light, &light, &light])?;
/// assert!(learned.gain < 0.96 && learned.gain > 0.90);
/// assert_eq!(learn(&before, &[])?, before);
/// # Ok::<(), fits_core::Error>(())
/// ```
pub fn learn(before: &Prior, jobs: &[&[FinishedPass]]) -> Result<Prior, Error> {
    let mut logged: Vec<Vec<(f64, f64, f64)>> = Vec::with_capacity(jobs.len());
    for job in jobs {
        let mut passes = Vec::with_capacity(job.len());
        for pass in *job {
            if pass.dialled.is_negative() || pass.took_sd.is_negative() {
                return Err(Error::not_listed(
                    "a finished pass dials less than 0",
                    "give what was dialled without a sign",
                ));
            }
            if pass.dialled.is_positive() {
                let sd = pass.took_sd.in_micrometres();
                passes.push((pass.dialled.in_micrometres(), pass.took.in_micrometres(), sd * sd));
            }
        }
        if !passes.is_empty() {
            logged.push(passes);
        }
    }
    if logged.is_empty() {
        return Ok(*before);
    }
    let square = |x: f64| x * x;
    let from = (before.gain, before.offset.in_micrometres());
    let spread = (square(before.gain_sd), square(before.offset_sd.in_micrometres()));
    let noise = square(before.scatter.in_micrometres());
    #[allow(clippy::cast_precision_loss, reason = "a count of jobs is small")]
    let count = logged.len() as f64;
    let (mut middle, mut apart, mut scatter) = (from, spread, noise);
    for _ in 0..ROUNDS {
        let fits: Vec<Fitted> =
            logged.iter().map(|passes| Fitted::of(passes, middle, apart, scatter)).collect();
        let sum = |of: &dyn Fn(&Fitted) -> f64| fits.iter().map(of).sum::<f64>();
        middle = (
            (WORTH * from.0 + sum(&|fit| fit.gain)) / (WORTH + count),
            (WORTH * from.1 + sum(&|fit| fit.offset)) / (WORTH + count),
        );
        apart = (
            (WORTH * (spread.0 + square(from.0 - middle.0))
                + sum(&|fit| fit.gain_variance + square(fit.gain - middle.0)))
                / (WORTH + count),
            (WORTH * (spread.1 + square(from.1 - middle.1))
                + sum(&|fit| fit.offset_variance + square(fit.offset - middle.1)))
                / (WORTH + count),
        );
        scatter = (WORTH * noise + sum(&|fit| fit.left)) / (WORTH + sum(&|fit| fit.passes));
    }
    Ok(Prior {
        gain: middle.0,
        gain_sd: libm::sqrt(apart.0),
        offset: Length::nearest_micrometres(middle.1)?,
        offset_sd: Length::nearest_micrometres(libm::sqrt(apart.1))?,
        scatter: Length::nearest_micrometres(libm::sqrt(scatter))?,
    })
}

/// One job's cut factor and offset, given the middle of all jobs.
struct Fitted {
    gain: f64,
    gain_variance: f64,
    offset: f64,
    offset_variance: f64,
    /// Expected sum of squares of what the passes scattered.
    left: f64,
    passes: f64,
}

impl Fitted {
    fn of(passes: &[(f64, f64, f64)], middle: (f64, f64), apart: (f64, f64), scatter: f64) -> Self {
        // Each pass in turn, as the filter's own step for two quantities.
        let (mut gain, mut offset) = middle;
        let (mut gg, mut bb, mut gb) = (apart.0, apart.1, 0.0);
        for &(dialled, took, instrument) in passes {
            let (shared_g, shared_b) = (dialled * gg + gb, dialled * gb + bb);
            let variance = dialled * shared_g + shared_b + scatter + instrument;
            if variance <= 0.0 {
                continue;
            }
            let off = took - gain * dialled - offset;
            gain += shared_g / variance * off;
            offset += shared_b / variance * off;
            gg -= shared_g * shared_g / variance;
            gb -= shared_g * shared_b / variance;
            bb -= shared_b * shared_b / variance;
        }
        let mut left = 0.0;
        for &(dialled, took, instrument) in passes {
            // The share of what is left that the passes themselves scattered.
            let share = if scatter > 0.0 { scatter / (scatter + instrument) } else { 0.0 };
            let off = took - gain * dialled - offset;
            let of_fit = dialled * dialled * gg + bb + 2.0 * dialled * gb;
            left += share * share * (off * off + of_fit) + (1.0 - share) * scatter;
        }
        #[allow(clippy::cast_precision_loss, reason = "a count of passes is small")]
        let passes = passes.len() as f64;
        Self { gain, gain_variance: gg, offset, offset_variance: bb, left, passes }
    }
}
