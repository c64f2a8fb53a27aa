//! Holes that are bored before the tap: power threads, and those that no drill
//! keeps to their limits.

use super::{Bit, Oversize, TapHole};
use crate::{
    error::Error,
    size::{Length, Limits},
    source::{Known, Reason},
};

/// What a drill leaves on the diameter for a boring bar: a fiftieth of the
/// hole, this at most (common practice, no source).
const STOCK: Length = Length::from_tenth_nanometres(3_000_000);

/// A hole that is bored (or reamed) before the tap.
///
/// ```
/// use fits_core::shop::tap::TapHole;
/// let hole = TapHole::of_thread(&"Tr20x4".parse()?, None)?;
/// assert!(!hole.bore(&[], None)?.reasons().is_empty());
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Bore {
    /// What to bore to.
    pub aim: Length,
    /// The limits of the minor diameter, where the class gives them.
    pub limits: Option<Limits>,
    /// The largest drill that leaves something to bore.
    pub first: Option<Bit>,
}

impl TapHole {
    /// A hole to bore, and the drill to go before. Without a size it is the
    /// middle of the limits; without limits, half the full height.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::{Length, Limits, shop::tap::{Bit, TapHole, full_height}};
    /// // Tr20x4 7H.
    /// let pitch: Length = "4mm".parse()?;
    /// let minor = Limits::new("16mm".parse()?, "16.375mm".parse()?)?;
    /// let hole = TapHole::new("20mm".parse()?, pitch, full_height(pitch, 15.0)?, Some(minor))?;
    /// let drills = [Bit::sized("15.5mm".parse()?), Bit::sized("16mm".parse()?)];
    /// let bore = hole.bore(&drills, None)?;
    /// assert_eq!(bore.aim, "16.1875mm".parse()?);
    /// assert_eq!(bore.first.map(|bit| bit.diameter), Some("15.5mm".parse()?));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn bore(&self, drills: &[Bit], to: Option<Length>) -> Result<Bore, Error> {
        let limits = self.minor;
        let aim = match (to, limits) {
            (Some(to), _) => to,
            (None, Some(limits)) => limits.middle(),
            (None, None) => self.major.checked_sub(self.full.half())?,
        };
        let least = limits.map(Limits::lower).filter(|lower| *lower < aim).unwrap_or(aim);
        let stock = least.checked_scale(1, 50)?.min(STOCK);
        let leaves = |bit: &&Bit| {
            let oversize = Oversize::of(bit.diameter).map(|oversize| oversize.commonly);
            let drilled = oversize.and_then(|oversize| bit.diameter.checked_add(oversize));
            let left = drilled.and_then(|drilled| least.checked_sub(drilled));
            left.is_ok_and(|left| left >= stock)
        };
        let first = drills.iter().filter(leaves).max_by_key(|bit| bit.diameter).cloned();
        Ok(Bore { aim, limits, first })
    }
}

impl Bore {
    /// Why.
    pub fn reasons(&self) -> Vec<Reason> {
        let practice = |figure: &str, value: String, rule: &'static str| Reason {
            figure: figure.into(),
            value: value.into(),
            rule: rule.into(),
            source: "common practice, no source".into(),
            known: Known::Practice,
        };
        let rule = match self.limits {
            Some(limits) if limits.middle() == self.aim => {
                "the middle of the minor diameter's limits"
            }
            _ => "the hole for the percent wanted",
        };
        let mut reasons = vec![practice("bore", self.aim.to_string(), rule)];
        reasons.extend(self.first.as_ref().map(|bit| {
            let rule =
                "the largest whose hole leaves a fiftieth of itself, 0.3 mm at most, to bore";
            practice("first drill", bit.name.to_string(), rule)
        }));
        reasons
    }
}
