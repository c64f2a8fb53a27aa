//! Stacks: the play left by parts that add and take away, end to end.
//!
//! Worst case and root sum square here, the simulation in `simulate`, how a
//! size may lie inside its limits in `spread`. Worst case: every part at the
//! limit that hurts. Root sum square: every part centred, independent, its
//! limits as many standard deviations out as the result's.

mod simulate;
mod spread;

pub use simulate::{Runs, Simulated};
pub use spread::Spread;

use crate::{
    error::Error,
    size::{Length, Limits},
    speech::say,
};

/// The most parts a stack may have, repeated ones counted each.
pub const MOST_PARTS: u32 = 1000;

/// Which way a link counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Direction {
    /// It adds to the play: the shoulder of a screw.
    Adds,
    /// It takes from it: a washer on that shoulder.
    TakesAway,
}

/// One link of a stack: so many parts of one size.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Link {
    /// Which way it counts.
    pub direction: Direction,
    /// How many such parts there are, each on its own inside the limits.
    pub count: u32,
    /// The limits of one of them; equal for a part that was measured.
    pub limits: Limits,
    /// How its size may lie inside them.
    pub spread: Spread,
}

impl Link {
    /// One part, its size anywhere inside the limits.
    ///
    /// ```
    /// use fits_core::{Limits, shop::stack::{Direction, Link, Spread}};
    /// let limits = Limits::new("1.35mm".parse()?, "1.45mm".parse()?)?;
    /// let washers = Link::new(Direction::TakesAway, limits).times(2).spread(Spread::Triangular);
    /// assert_eq!((washers.count, washers.spread), (2, Spread::Triangular));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub const fn new(direction: Direction, limits: Limits) -> Self {
        Self { direction, count: 1, limits, spread: Spread::Uniform }
    }

    /// So many such parts, each on its own inside the limits.
    ///
    /// ```
    /// use fits_core::{Limits, shop::stack::{Direction, Link}};
    /// let limits = Limits::new("1.35mm".parse()?, "1.45mm".parse()?)?;
    /// let washers = Link::new(Direction::Adds, limits).times(3);
    /// assert_eq!(washers.count, 3);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    #[must_use]
    pub const fn times(self, count: u32) -> Self {
        Self { count, ..self }
    }

    /// With sizes that lie so inside the limits.
    ///
    /// ```
    /// use fits_core::{Limits, shop::stack::{Direction, Link, Spread}};
    /// let limits = Limits::new("1.35mm".parse()?, "1.45mm".parse()?)?;
    /// let washer = Link::new(Direction::Adds, limits).spread(Spread::Normal);
    /// assert_eq!(washer.spread, Spread::Normal);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    #[must_use]
    pub const fn spread(self, spread: Spread) -> Self {
        Self { spread, ..self }
    }

    /// What all its parts together put into the play, least and greatest.
    fn puts_in(&self) -> Result<Limits, Error> {
        let times = i64::from(self.count);
        let (lower, upper) =
            (self.limits.lower().checked_mul(times)?, self.limits.upper().checked_mul(times)?);
        match self.direction {
            Direction::Adds => Limits::new(lower, upper),
            Direction::TakesAway => Limits::new(upper.checked_neg()?, lower.checked_neg()?),
        }
    }

    /// The variance of all its parts, in square counts of 0.1 nm.
    fn variance(&self) -> f64 {
        let zone = counts(self.limits.tolerance());
        f64::from(self.count) * zone * zone * self.spread.variance()
    }
}

/// A link's part in the whole.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Share {
    /// Of the worst case's width, 0 to 1.
    pub worst: f64,
    /// Of the variance, 0 to 1.
    pub variance: f64,
}

/// Parts end to end and the play they leave.
///
/// ```
/// use fits_core::{Limits, shop::stack::{Direction, Link, Stack}};
/// let link = |direction, count, lower: &str, upper: &str| {
///     let limits = Limits::new(lower.parse()?, upper.parse()?)?;
///     Ok::<_, fits_core::Error>(Link::new(direction, limits).times(count))
/// };
/// // A shoulder of 20 +0.05/0 through a tube and two washers.
/// let stack = Stack::new(vec![
///     link(Direction::Adds, 1, "20mm", "20.05mm")?,
///     link(Direction::TakesAway, 1, "16.95mm", "17.05mm")?,
///     link(Direction::TakesAway, 2, "1.35mm", "1.45mm")?,
/// ])?;
/// assert_eq!(stack.worst().lower().to_string(), "0.05 mm");
/// assert_eq!(stack.worst().upper().to_string(), "0.4 mm");
/// assert_eq!(stack.aim().to_string(), "0.225 mm");
/// // What is likely lies well inside what is possible.
/// assert!(stack.worst().contains(stack.root_sum_square()?.lower()));
/// // The washers make half and more of it.
/// assert!(stack.shares()[2].worst > 0.5);
/// assert_eq!(stack.links().len(), 3);
/// // Uniform spreads: the root of (0.05² + 0.1² + 2 x 0.1²) / 12.
/// assert!((stack.deviation().millimetres() - 0.052_0).abs() < 0.000_1);
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Stack {
    links: Vec<Link>,
    worst: Limits,
}

impl Stack {
    /// A stack of these links.
    ///
    /// # Errors
    /// Fewer than two parts, more than [`MOST_PARTS`], or out of range.
    ///
    /// ```
    /// use fits_core::{Limits, shop::stack::{Direction, Link, Stack}};
    /// let limits = Limits::new("1.35mm".parse()?, "1.45mm".parse()?)?;
    /// let washer = Link::new(Direction::Adds, limits);
    /// assert_eq!(Stack::new(vec![washer.times(2)])?.worst().to_string(), "2.700 to 2.900 mm");
    /// // One part leaves no play.
    /// assert!(Stack::new(vec![washer]).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn new(links: Vec<Link>) -> Result<Self, Error> {
        let parts = links.iter().fold(0_u32, |sum, link| sum.saturating_add(link.count));
        let refused = |why: crate::speech::Speech| Err(Error::no_plan(why));
        if parts < 2 {
            return refused("one part alone is not a stack".to_owned().into());
        }
        if parts > MOST_PARTS {
            return refused(say!("a stack has at most {} parts, this one {}", MOST_PARTS, parts));
        }
        let worst = sum(&links)?;
        Ok(Self { links, worst })
    }

    /// The links, as given.
    pub fn links(&self) -> &[Link] {
        &self.links
    }

    /// The play with every part at the limit that hurts, least and greatest.
    pub const fn worst(&self) -> Limits {
        self.worst
    }

    /// The play with every part at the middle of its limits.
    pub fn aim(&self) -> Length {
        self.worst.middle()
    }

    /// The play within the root sum square of the parts' half tolerances
    /// about the aim.
    ///
    /// # Errors
    /// Out of range.
    pub fn root_sum_square(&self) -> Result<Limits, Error> {
        root_sum_square(&self.links)
    }

    /// The standard deviation of the play, from the links' spreads.
    pub fn deviation(&self) -> Length {
        nearest(libm::sqrt(self.links.iter().map(Link::variance).sum()))
    }

    /// Each link's part in the worst case and in the variance; zero all
    /// round where nothing varies.
    pub fn shares(&self) -> Vec<Share> {
        let of = |part: f64, whole: f64| if whole > 0.0 { part / whole } else { 0.0 };
        let width = |link: &Link| f64::from(link.count) * counts(link.limits.tolerance());
        let all_width: f64 = self.links.iter().map(width).sum();
        let all_variance: f64 = self.links.iter().map(Link::variance).sum();
        self.links
            .iter()
            .map(|link| Share {
                worst: of(width(link), all_width),
                variance: of(link.variance(), all_variance),
            })
            .collect()
    }
}

/// The limits for the part that is made last, to suit a wanted play.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct LastPart {
    /// The size that puts the play in the middle of what is wanted, the other
    /// parts at theirs.
    pub aim: Length,
    /// Limits that give the wanted play whatever the other parts measure;
    /// `None` where these vary by more than the play may.
    pub always: Option<Limits>,
    /// Limits that give it while the others stay within their root sum square.
    pub usually: Option<Limits>,
}

impl LastPart {
    /// The part, or the `count` equal parts, to make beside the others.
    ///
    /// ```
    /// use fits_core::{Limits, shop::stack::{Direction, LastPart, Link}};
    /// // A shoulder that measures 20.03, and a play of 0.1 to 0.2 wanted.
    /// let limits = Limits::new("20.03mm".parse()?, "20.03mm".parse()?)?;
    /// let screw = Link::new(Direction::Adds, limits);
    /// let wanted = Limits::new("0.1mm".parse()?, "0.2mm".parse()?)?;
    /// let tube = LastPart::of(&[screw], Direction::TakesAway, 1, wanted)?;
    /// assert_eq!(tube.aim.to_string(), "19.88 mm");
    /// assert_eq!(tube.always.map(|limits| limits.upper().to_string()).as_deref(), Some("19.93 mm"));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    ///
    /// # Errors
    /// The part would be nothing or less, there are no parts to make, or out
    /// of range.
    pub fn of(
        others: &[Link],
        direction: Direction,
        count: u32,
        wanted: Limits,
    ) -> Result<Self, Error> {
        let each = |limits: Option<Limits>| match limits {
            Some(limits) if limits.lower().is_positive() => inside_each(limits, count),
            _ => Ok(None),
        };
        let rest = sum(others)?;
        let middle = exactly(rest.middle())?;
        let aim = needed(middle, direction, exactly(wanted.middle())?)?
            .map_or(Length::ZERO, Limits::lower);
        let aim = aim.checked_scale(1, i128::from(count))?;
        if !aim.is_positive() {
            return Err(Error::no_plan(say!("the last part would be {} long", aim)));
        }
        Ok(Self {
            aim,
            always: each(needed(rest, direction, wanted)?)?,
            usually: each(needed(root_sum_square(others)?, direction, wanted)?)?,
        })
    }
}

/// What the last parts must put in all together; `None` where nothing does.
fn needed(rest: Limits, direction: Direction, wanted: Limits) -> Result<Option<Limits>, Error> {
    let (lower, upper) = match direction {
        Direction::Adds => {
            (wanted.lower().checked_sub(rest.lower())?, wanted.upper().checked_sub(rest.upper())?)
        }
        Direction::TakesAway => {
            (rest.upper().checked_sub(wanted.upper())?, rest.lower().checked_sub(wanted.lower())?)
        }
    };
    Ok(Limits::new(lower, upper).ok())
}

/// The limits of each of some parts whose sum has limits, rounded inward.
fn inside_each(total: Limits, count: u32) -> Result<Option<Limits>, Error> {
    let count = i64::from(count);
    let lower = total.lower().tenth_nanometres();
    // Upward for the lower limit: a limit is never moved outward.
    let lower = lower.checked_neg().and_then(|lower| lower.checked_div_euclid(count));
    let lower = lower.and_then(i64::checked_neg);
    let upper = total.upper().tenth_nanometres().checked_div_euclid(count);
    let (Some(lower), Some(upper)) = (lower, upper) else {
        return Err(Error::no_plan("there is no part to make".to_owned()));
    };
    let [lower, upper] = [lower, upper].map(Length::from_tenth_nanometres);
    Ok(Limits::new(lower, upper).ok())
}

fn exactly(size: Length) -> Result<Limits, Error> {
    Limits::new(size, size)
}

/// The least and the greatest sum.
fn sum(links: &[Link]) -> Result<Limits, Error> {
    links.iter().try_fold(Limits::new(Length::ZERO, Length::ZERO)?, |sum, link| {
        let part = link.puts_in()?;
        Limits::new(sum.lower().checked_add(part.lower())?, sum.upper().checked_add(part.upper())?)
    })
}

fn root_sum_square(links: &[Link]) -> Result<Limits, Error> {
    let squares: f64 = links
        .iter()
        .map(|link| {
            let half = counts(link.limits.tolerance()) / 2.0;
            f64::from(link.count) * half * half
        })
        .sum();
    let (middle, half) = (sum(links)?.middle(), nearest(libm::sqrt(squares)));
    Limits::new(middle.checked_sub(half)?, middle.checked_add(half)?)
}

/// Counts of 0.1 nm: exact for any part a shop holds.
#[allow(clippy::cast_precision_loss, reason = "for statistics; exact below 2^53")]
fn counts(length: Length) -> f64 {
    length.tenth_nanometres() as f64
}

/// The nearest length; a cast of a number too great ends at the greatest.
#[allow(clippy::cast_possible_truncation, reason = "rounded first, and a cast saturates")]
fn nearest(counts: f64) -> Length {
    Length::from_tenth_nanometres(libm::rint(counts) as i64)
}
