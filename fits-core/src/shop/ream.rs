//! The reamer for a hole, and the drill before it.

use crate::{
    error::Error,
    shop::{stock_for, stock_table},
    size::{Length, Limits},
    source::{Known, Reason},
    standards::{
        drills::{Drill, Series},
        iso286::{Grade, grade_within},
    },
};

/// Reamers are made to about this size (hand reamers of ISO 236 end at 71 mm,
/// the published DIN 1420 rows at 80 mm).
const LARGEST: Length = Length::from_tenth_nanometres(800_000_000);
/// The published DIN 1420 rows start here or above.
const SMALLEST: Length = Length::MILLIMETRE;
/// The oversize that a drill is taken to cut when one is chosen for reaming.
const DRILL_OVERSIZE: Length = Length::from_tenth_nanometres(500_000);

/// The reamer that makes a hole to its limits.
///
/// The largest reamer is the hole's upper limit less 15 % of the tolerance,
/// its own tolerance 35 % of the hole's less that; each share is rounded up
/// to the next whole micrometre.
///
/// Source: the rule of DIN 1420; worked example of 10 D8 and the rows of H7
/// reamers in two makers' catalogues (Dormer, p. 568; Gühring 2010, p. 71).
///
/// ```
/// use fits_core::{Length, shop::Ream, standards::iso286::Class};
/// let class: Class = "D8".parse()?;
/// let hole = class.limits(Length::from_millimetres(10)?)?;
/// let ream = Ream::of(hole)?;
/// assert_eq!(ream.reamer.lower().to_string(), "10.05 mm");
/// assert_eq!(ream.reamer.upper().to_string(), "10.058 mm");
/// assert_eq!(ream.before(), ream.hole.lower().checked_sub(ream.stock.middle())?);
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Ream {
    /// The hole it is for.
    pub hole: Limits,
    /// Limits of the reamer's diameter.
    pub reamer: Limits,
    /// Least and most stock to leave on the diameter.
    pub stock: Limits,
    /// The standard metric drill that leaves it.
    pub metric: Option<PreDrill>,
    /// The standard fractional-inch drill that leaves it.
    pub fraction: Option<PreDrill>,
    /// The number or letter drill that leaves it.
    pub number: Option<PreDrill>,
}

/// A drill before the reamer.
#[derive(Clone, Copy, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct PreDrill {
    /// The drill.
    pub drill: Drill,
    /// What the drill's own size leaves below the hole's lower limit.
    pub leaves: Length,
}

impl Ream {
    /// The reamer and the pre-drills for a hole's limits.
    ///
    /// # Errors
    /// The hole is too small, too large or too tight to be reamed.
    ///
    /// ```
    /// use fits_core::{shop::Ream, standards::iso286::Class};
    /// // Largest: 10.015 less 15 % of 15 micrometres; its own tolerance 35 %.
    /// let ream = Ream::of("H7".parse::<Class>()?.limits("10mm".parse()?)?)?;
    /// assert_eq!(ream.reamer.to_string(), "10.006 to 10.012 mm");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn of(hole: Limits) -> Result<Self, Error> {
        let refuse = |why: &'static str| Err(Error::no_plan(why));
        if hole.lower() > LARGEST {
            return refuse("reamers are not usual above 80 mm: bore it");
        }
        if hole.lower() < SMALLEST {
            return refuse("reamers are not usual below 1 mm: drill it");
        }
        // Reaming commonly holds IT6; a careful hand one grade finer.
        if grade_within(hole.tolerance(), hole.lower()).is_none_or(|grade| grade < Grade::IT5) {
            return refuse("the tolerance is finer than reaming holds: bore and hone it");
        }
        let (oversize, width) = (share(hole, 15)?, share(hole, 35)?);
        let upper = hole.upper().checked_sub(oversize)?;
        let lower = upper.checked_sub(width)?;
        let row = stock_for(&stock_table::REAMING, hole.lower());
        let stock = Limits::new(row.first, row.second)?;
        let drill = |series: &[Series]| pre_drill(hole.lower(), stock, series);
        Ok(Self {
            hole,
            reamer: Limits::new(lower, upper)?,
            stock,
            metric: drill(&[Series::Metric]),
            fraction: drill(&[Series::Fraction]),
            number: drill(&[Series::Number, Series::Letter]),
        })
    }

    /// The diameter to bring the hole to before reaming: the stock's middle
    /// below the hole's lower limit.
    pub fn before(&self) -> Length {
        // Stock is a few tenths of a millimetre; the hole is 1 mm or more.
        Length::from_tenth_nanometres(
            self.hole.lower().tenth_nanometres() - self.stock.middle().tenth_nanometres(),
        )
    }

    /// The least and the greatest drill that leaves fitting stock.
    ///
    /// # Errors
    /// None does.
    ///
    /// ```
    /// use fits_core::{shop::Ream, standards::iso286::Class};
    /// let ream = Ream::of("H7".parse::<Class>()?.limits("10mm".parse()?)?)?;
    /// let range = ream.pre_drill_range()?;
    /// let drill = ream.metric.expect("9.7 mm").drill;
    /// assert!(range.contains(drill.diameter()));
    /// assert_eq!(ream.reasons(&[drill.name()]).last().map(|it| it.figure.as_str()), Some("drill 9.7 mm"));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn pre_drill_range(&self) -> Result<Limits, Error> {
        pre_drill_range(self.hole.lower(), self.stock)
    }

    /// Why the figures are what they are, those of the drills among them that
    /// are named.
    ///
    /// ```
    /// use fits_core::{shop::Ream, standards::iso286::Class};
    /// let ream = Ream::of("H7".parse::<Class>()?.limits("10mm".parse()?)?)?;
    /// let reasons = ream.reasons(&[]);
    /// assert!(reasons.iter().any(|reason| reason.figure.contains("reamer")));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn reasons(&self, drills: &[&str]) -> Vec<Reason> {
        let row = stock_for(&stock_table::REAMING, self.hole.lower());
        let dimension = |length: Length| length.to_string();
        let shares =
            [15, 35].map(|percent| share(self.hole, percent).map(dimension).unwrap_or_default());
        let mut reasons = vec![
            Reason {
                figure: "largest reamer".into(),
                value: dimension(self.reamer.upper()).into(),
                rule: format!(
                    "hole's upper limit - 15 % of the tolerance, rounded up to {}",
                    shares[0]
                )
                .into(),
                source: "DIN 1420".into(),
                known: Known::Seen,
            },
            Reason {
                figure: "smallest reamer".into(),
                value: dimension(self.reamer.lower()).into(),
                rule: format!(
                    "largest reamer - 35 % of the tolerance, rounded up to {}",
                    shares[1]
                )
                .into(),
                source: "DIN 1420".into(),
                known: Known::Seen,
            },
            Reason {
                figure: "reaming stock".into(),
                value: format!(
                    "{} to {}",
                    dimension(self.stock.lower()),
                    dimension(self.stock.upper())
                )
                .into(),
                rule: "by diameter".into(),
                source: row.from.text.into(),
                known: row.from.known,
            },
        ];
        let all = [self.metric, self.fraction, self.number].into_iter().flatten();
        let shown = all.filter(|found| drills.contains(&found.drill.name()));
        reasons.extend(shown.map(|found| {
            Reason {
                figure: format!("drill {}", found.drill.name()),
                value: dimension(found.drill.diameter()).into(),
                rule: format!(
                    "cuts 0.05 mm over and still leaves the least stock; leaves {}",
                    dimension(found.leaves)
                )
                .into(),
                source: match found.drill.source() {
                    "" => "standard drill sizes".into(),
                    list => format!("standard drill sizes; {list}"),
                },
                known: found.drill.known(),
            }
        }));
        reasons
    }
}

/// A percentage of the hole's tolerance, up to the next whole micrometre.
fn share(hole: Limits, percent: i64) -> Result<Length, Error> {
    let micrometre = Length::MICROMETRE.tenth_nanometres();
    let hundredfold = hole.tolerance().checked_mul(percent)?.tenth_nanometres();
    Length::from_micrometres(
        hundredfold.div_euclid(100 * micrometre)
            + i64::from(hundredfold.rem_euclid(100 * micrometre) > 0),
    )
}

/// The largest drill that leaves fitting stock.
fn pre_drill(hole: Length, stock: Limits, series: &[Series]) -> Option<PreDrill> {
    let range = pre_drill_range(hole, stock).ok()?;
    let drill = Drill::largest(range.lower(), range.upper(), series)?;
    Some(PreDrill { drill, leaves: hole.checked_sub(drill.diameter()).ok()? })
}

/// From the drill that leaves half as much again as the most stock to the one
/// that, cutting its usual oversize, still leaves the least.
fn pre_drill_range(hole: Length, stock: Limits) -> Result<Limits, Error> {
    let largest = hole.checked_sub(stock.lower())?.checked_sub(DRILL_OVERSIZE)?;
    Limits::new(hole.checked_sub(stock.upper().checked_scale(3, 2)?)?, largest)
}
