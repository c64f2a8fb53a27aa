//! Ball bearings by number.
//!
//! Boundary sizes come from `data/bought/ball_bearings.csv`, the rings' limits
//! from the families `bearing bore` and `bearing outside`.

use super::{Family, ball_table};
use crate::{
    error::Error,
    nearest::keystrokes,
    size::{Length, Limits, Unit},
    source::{Known, Provenance},
    speech::say,
    standards::iso286::Feature,
};

/// A ball bearing of a number.
///
/// ```
/// use fits_core::standards::{bought::Ball, iso286::Feature};
/// let (bearing, is_closed) = Ball::named("6203-2RS")?;
/// assert_eq!(bearing.bore(), "17mm".parse()?);
/// assert_eq!(bearing.outside(), "40mm".parse()?);
/// assert!(is_closed);
/// assert_eq!(bearing.width(is_closed), "12mm".parse()?);
/// assert_eq!(bearing.seat_size(Feature::Hole), "40mm".parse()?);
/// // ISO 492: 8 micrometres under the nominal bore at the most.
/// assert_eq!(bearing.ring(Feature::Shaft)?.lower(), "16.992mm".parse()?);
///
/// let error = Ball::named("6213").unwrap_err();
/// assert_eq!(error.to_string(), "no ball bearing 6213 is listed");
/// assert_eq!(error.advice(), "near it: 6212, 6211");
/// assert_eq!(Ball::near("6213")[0].number(), "6212");
/// use fits_core::size::Unit;
/// assert_eq!(bearing.unit(), Unit::Millimetre);
/// // The least corner of ISO 582, 0.6 mm: the fillet stays under it.
/// let least = "0.6mm".parse()?;
/// assert_eq!((bearing.corner(), bearing.fillet_under()), (Some((least, true)), Some(least)));
/// assert!(!bearing.known().is_unconfirmed() && !bearing.corner_known().is_unconfirmed());
/// assert!(bearing.note().is_empty() && !bearing.source().is_empty());
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Ball(&'static BallRow);

#[derive(Debug)]
pub(super) struct BallRow {
    pub(super) number: &'static str,
    pub(super) unit: Unit,
    pub(super) bore: Length,
    pub(super) outside: Length,
    pub(super) width: Length,
    pub(super) shielded: Option<Length>,
    pub(super) corner: Option<Length>,
    /// The corner is printed as nominal: the least is smaller.
    pub(super) is_nominal: bool,
    pub(super) corner_known: Known,
    pub(super) from: Provenance,
    pub(super) note: &'static str,
}

impl PartialEq for Ball {
    /// Numbers are unique.
    fn eq(&self, other: &Self) -> bool {
        self.0.number == other.0.number
    }
}

impl Eq for Ball {}

/// The letters and the figures that a number begins with.
fn series(number: &str) -> (&str, u32) {
    let letters = number.len() - number.trim_start_matches(|c: char| c.is_ascii_alphabetic()).len();
    // 62 of 6203; the 62 of 623.
    let lead = if letters > 0 { letters } else { 2.min(number.len()) };
    let (lead, rest) = number.split_at_checked(lead).unwrap_or((number, ""));
    (lead, rest.parse().unwrap_or(0))
}

/// A number as the table writes it.
fn of_number(text: &str) -> String {
    text.chars().filter(char::is_ascii_alphanumeric).collect::<String>().to_uppercase()
}

impl Ball {
    /// Every bearing listed, by series.
    ///
    /// ```
    /// use fits_core::standards::bought::Ball;
    /// assert!(Ball::all().any(|bearing| bearing.number() == "608"));
    /// ```
    pub fn all() -> impl DoubleEndedIterator<Item = Self> {
        ball_table::BALLS.iter().map(Self)
    }

    /// The bearing of a number, with or without a maker's suffix, and whether
    /// the suffix says that it is closed by shields or seals: `ZZ`, `2Z`,
    /// `2RS`, `DDU`.
    ///
    /// # Errors
    /// No such number is listed; the advice names its neighbours.
    ///
    /// ```
    /// use fits_core::standards::bought::Ball;
    /// let (bearing, is_closed) = Ball::named("608ZZ")?;
    /// assert_eq!((bearing.bore(), is_closed), ("8mm".parse()?, true));
    /// assert!(!Ball::named("608")?.1);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn named(text: &str) -> Result<(Self, bool), Error> {
        Self::listed(text).ok_or_else(|| {
            let near = Self::near(&of_number(text));
            let near: Vec<_> = near.iter().map(|ball| ball.number()).collect();
            Error::not_listed(
                say!("no ball bearing {} is listed", text.trim()),
                format!("near it: {}", near.join(", ")),
            )
        })
    }

    /// The same; none where no such number is listed, and no neighbours are looked for.
    ///
    /// ```
    /// use fits_core::standards::bought::Ball;
    ///
    /// assert!(Ball::listed("6203").is_some() && Ball::listed("6213").is_none());
    /// ```
    pub fn listed(text: &str) -> Option<(Self, bool)> {
        let typed = of_number(text);
        let suffix = |ball: &Self| {
            let rest = typed.strip_prefix(ball.number())?;
            let is_suffix = rest.chars().all(|c| "ZRS2DUC3LH".contains(c))
                && (rest.starts_with("2R") || rest.starts_with("2Z") || !rest.starts_with('2'))
                && !rest.starts_with('3');
            is_suffix.then_some(rest)
        };
        let found = Self::all()
            .filter_map(|ball| Some((ball, suffix(&ball)?)))
            .min_by_key(|(_, rest)| rest.len());
        found.map(|(ball, rest)| (ball, rest.contains(['Z', 'R', 'D', 'L'])))
    }

    /// The two listed numbers nearest to one that is not listed: of its series
    /// where there is one, else by the keys that were missed.
    ///
    /// ```
    /// use fits_core::standards::bought::Ball;
    /// let near: Vec<_> = Ball::near("6213").into_iter().map(Ball::number).collect();
    /// assert_eq!(near, ["6212", "6211"]);
    /// ```
    pub fn near(text: &str) -> Vec<Self> {
        let typed = text.to_uppercase();
        let (lead, count) = series(&typed);
        let mut found: Vec<Self> = Self::all().collect();
        found.sort_by_key(|ball| {
            let (own, at) = series(ball.number());
            let is_metric = own.starts_with('6');
            let is_other = own != lead || is_metric && ball.number().len() != typed.len();
            let off = if is_other { keystrokes(&typed, ball.number()) } else { 0 };
            (is_other, off, at.abs_diff(count))
        });
        found.truncate(2);
        found
    }

    /// Its number, as `6203`.
    pub const fn number(self) -> &'static str {
        self.0.number
    }

    /// The unit that its sizes are listed in.
    pub const fn unit(self) -> Unit {
        self.0.unit
    }

    /// Nominal bore.
    pub const fn bore(self) -> Length {
        self.0.bore
    }

    /// Nominal outside diameter.
    pub const fn outside(self) -> Length {
        self.0.outside
    }

    /// Its width open, or closed by shields or seals.
    ///
    /// ```
    /// use fits_core::standards::bought::Ball;
    /// let (bearing, _) = Ball::named("6203")?;
    /// assert_eq!(bearing.width(false), "12mm".parse()?);
    /// // An inch bearing is wider with shields.
    /// let (inch, _) = Ball::named("R8")?;
    /// assert!(inch.width(true) > inch.width(false));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn width(self, is_closed: bool) -> Length {
        self.0.shielded.filter(|_| is_closed).unwrap_or(self.0.width)
    }

    /// The corner of its rings, where it is known, and whether that is the
    /// least corner rather than the nominal one.
    pub const fn corner(self) -> Option<(Length, bool)> {
        match self.0.corner {
            Some(corner) => Some((corner, !self.0.is_nominal)),
            None => None,
        }
    }

    /// The radius that a fillet at its shoulder must stay under: the least
    /// corner; half of one that is printed as nominal (common practice, no
    /// source: least corners of ISO 582 are 0.5 to 0.7 of the old nominal ones).
    pub fn fillet_under(self) -> Option<Length> {
        self.corner().map(|(corner, is_least)| if is_least { corner } else { corner.half() })
    }

    /// How the corner is known.
    pub fn corner_known(self) -> Known {
        if self.0.is_nominal {
            self.0.corner_known.worst(Known::Practice)
        } else {
            self.0.corner_known
        }
    }

    /// How its sizes are known.
    pub const fn known(self) -> Known {
        self.0.from.known
    }

    /// Where they are written.
    pub const fn source(self) -> &'static str {
        self.0.from.text
    }

    /// What else to know, empty where there is nothing.
    pub const fn note(self) -> &'static str {
        self.0.note
    }

    /// The limits that a ring comes with: the bore ([`Feature::Shaft`], for the
    /// shaft under it) or the outside. Inch bearings of ABEC 1 have the metric
    /// ones.
    ///
    /// # Errors
    /// Out of the table's sizes.
    ///
    /// ```
    /// use fits_core::standards::{bought::Ball, iso286::Feature};
    /// let (bearing, _) = Ball::named("6203")?;
    /// // ISO 492: bore 0 to -8, outside 0 to -11 micrometres.
    /// assert_eq!(bearing.ring(Feature::Shaft)?.to_string(), "16.992 to 17.000 mm");
    /// assert_eq!(bearing.ring(Feature::Hole)?.to_string(), "39.989 to 40.000 mm");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn ring(self, seat: Feature) -> Result<Limits, Error> {
        let (family, size) = match seat {
            Feature::Shaft => ("bearing bore", self.bore()),
            Feature::Hole => ("bearing outside", self.outside()),
        };
        Ok(Family::named(family)?.part(size)?.limits)
    }

    /// The nominal diameter of a seat.
    ///
    /// ```
    /// use fits_core::standards::{bought::Ball, iso286::Feature};
    /// let (bearing, _) = Ball::named("6203")?;
    /// assert_eq!(bearing.seat_size(Feature::Shaft), "17mm".parse()?);
    /// assert_eq!(bearing.seat_size(Feature::Hole), "40mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub const fn seat_size(self, seat: Feature) -> Length {
        match seat {
            Feature::Shaft => self.bore(),
            Feature::Hole => self.outside(),
        }
    }
}
