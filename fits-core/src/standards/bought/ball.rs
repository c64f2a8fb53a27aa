//! Ball bearings by number, and the seats of both their rings.
//!
//! Boundary sizes come from `data/bought/ball_bearings.csv`, the rings' limits
//! from the families `bearing bore` and `bearing outside`, the classes of the
//! seats from [`seat`].

#[cfg(feature = "serde")]
use serde::Serialize;

use super::{Family, Load, ball_table, seat};
use crate::{
    error::Error,
    fit::Fit,
    nearest::keystrokes,
    size::{Length, Limits, Unit},
    source::{Known, Provenance},
    speech::say,
    standards::{
        iso286::{Class, Feature, Letter},
        processes::Process,
    },
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
    pub fn all() -> impl DoubleEndedIterator<Item = Self> {
        ball_table::BALLS.iter().map(Self)
    }

    /// The bearing of a number, with or without a maker's suffix, and whether
    /// the suffix says that it is closed by shields or seals: `ZZ`, `2Z`,
    /// `2RS`, `DDU`.
    ///
    /// # Errors
    /// No such number is listed; the advice names its neighbours.
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
    pub fn ring(self, seat: Feature) -> Result<Limits, Error> {
        let (family, size) = match seat {
            Feature::Shaft => ("bearing bore", self.bore()),
            Feature::Hole => ("bearing outside", self.outside()),
        };
        Ok(Family::named(family)?.part(size)?.limits)
    }

    /// The nominal diameter of a seat.
    pub const fn seat_size(self, seat: Feature) -> Length {
        match seat {
            Feature::Shaft => self.bore(),
            Feature::Hole => self.outside(),
        }
    }
}

/// Which part turns under a load that stands still in space.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "serde", serde(rename_all = "lowercase"))]
#[expect(clippy::exhaustive_enums, reason = "one of two rings turns")]
pub enum Turning {
    /// The shaft: a spindle, a motor, a crank.
    Shaft,
    /// The housing: a wheel, an idler, a loose pulley.
    Housing,
}

/// How hard a bearing is loaded.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "serde", serde(rename_all = "lowercase"))]
#[non_exhaustive]
pub enum Duty {
    /// Light or variable.
    Light,
    /// Normal.
    Normal,
    /// Heavy.
    Heavy,
}

/// One seat of a bearing, with the fit that its limits make on the ring.
#[derive(Clone, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct BallSeat {
    /// A shaft under the inner ring, or a housing about the outer one.
    pub feature: Feature,
    /// Which part turns.
    pub turning: Turning,
    /// The case it is for, in a few words.
    pub case: &'static str,
    /// The class.
    pub class: Class,
    /// The seat on the ring, over the limits of both.
    pub fit: Fit,
    /// The case it is for, as the table states it.
    pub reason: &'static str,
    /// Where it is written.
    pub source: &'static str,
    /// How it is known.
    pub known: Known,
}

impl BallSeat {
    /// The limits of the seat.
    pub const fn limits(&self) -> Limits {
        self.fit.part(self.feature)
    }

    /// What a lathe commonly holds the seat by; none where it is finer than
    /// that.
    pub fn lathe(&self) -> Option<Process> {
        const ON_A_LATHE: [&str; 4] =
            ["turning", "boring", "careful single-point boring", "turning and polishing"];
        Process::holding(self.class.grade, self.feature)
            .find(|process| ON_A_LATHE.contains(&process.name()))
    }
}

/// Small shops push the rings on by hand: line to line.
const BY_HAND: &str =
    "pushed on by hand, line to line: light duty and slow; the ring may creep, so clamp or bond it";

/// The seats that a bearing is given: of both rings, by which part turns and how
/// hard it is loaded; where that is not said, of every case. A shaft that turns
/// also has the seat of a ring pushed on by hand, unless the load is heavy; in
/// light alloy the housing is one step tighter (both common practice).
///
/// # Errors
/// Out of the tables' sizes.
///
/// ```
/// use fits_core::standards::{bought::{Ball, Duty, Turning, ball_seats}, iso286::Feature};
/// let (bearing, _) = Ball::named("6204")?;
/// let seats = ball_seats(bearing, Some(Turning::Shaft), Some(Duty::Normal), true)?;
/// let classes: Vec<_> = seats.iter().map(|seat| seat.class.to_string()).collect();
/// assert_eq!(classes, ["k5", "h6", "J7"]);
/// assert_eq!(seats[1].case, "by hand");
/// # Ok::<(), fits_core::Error>(())
/// ```
pub fn ball_seats(
    ball: Ball,
    turning: Option<Turning>,
    duty: Option<Duty>,
    in_light_alloy: bool,
) -> Result<Vec<BallSeat>, Error> {
    let mut seats = Vec::new();
    for which in [Turning::Shaft, Turning::Housing] {
        if turning.is_some_and(|said| said != which) {
            continue;
        }
        for feature in [Feature::Shaft, Feature::Hole] {
            let turns = (which == Turning::Shaft) == (feature == Feature::Shaft);
            for (case, load) in cases(feature, turns, duty) {
                seats.extend(one_seat(ball, feature, which, (case, *load), in_light_alloy)?);
            }
            if turns && feature == Feature::Shaft && duty != Some(Duty::Heavy) {
                let class: Class = "h6".parse()?;
                seats.push(BallSeat {
                    feature,
                    turning: which,
                    case: "by hand",
                    class,
                    fit: on_ring(ball, feature, class)?,
                    reason: BY_HAND,
                    source: "common practice, no source",
                    known: Known::Practice,
                });
            }
        }
    }
    Ok(seats)
}

type Case = (&'static str, Load);

/// The loads of a ring: one that turns under the load by how hard that is, one
/// that stands slides on its seat.
fn cases(feature: Feature, turns: bool, duty: Option<Duty>) -> &'static [Case] {
    const TURNS: [Case; 3] =
        [("light", Load::TurnsLight), ("normal", Load::TurnsNormal), ("heavy", Load::TurnsHeavy)];
    let [light, normal, heavy] = &TURNS;
    match (turns, duty, feature) {
        (true, None, _) => &TURNS,
        (true, Some(Duty::Light), _) => core::slice::from_ref(light),
        (true, Some(Duty::Normal), _) => core::slice::from_ref(normal),
        (true, Some(Duty::Heavy), _) => core::slice::from_ref(heavy),
        (false, _, Feature::Hole) => &[("slides", Load::StandsSlides)],
        (false, _, Feature::Shaft) => {
            &[("slides", Load::StandsSlides), ("fixed", Load::StandsFixed)]
        }
    }
}

/// The class of one case for a ball bearing; none where no table has a row, as
/// for a heavy load on a small shaft.
fn one_seat(
    ball: Ball,
    feature: Feature,
    turning: Turning,
    (case, load): Case,
    in_light_alloy: bool,
) -> Result<Option<BallSeat>, Error> {
    let size = ball.seat_size(feature);
    let found = match seat(feature, load, size) {
        Ok(found) => found,
        Err(error) if error.is_not_listed() => return Ok(None),
        Err(error) => return Err(error),
    };
    let Some(found) = found.iter().find(|seat| matches!(seat.bearing, "ball" | "any radial"))
    else {
        return Ok(None);
    };
    let tighter = Some(found.class).filter(|_| in_light_alloy && feature == Feature::Hole);
    let (class, known) = match tighter.and_then(one_step_tighter) {
        Some(class) => (class, found.known.worst(Known::Practice)),
        None => (found.class, found.known),
    };
    Ok(Some(BallSeat {
        feature,
        turning,
        case,
        class,
        fit: on_ring(ball, feature, class)?,
        reason: found.reason,
        source: found.source,
        known,
    }))
}

/// A seat's class on the ring it takes.
fn on_ring(ball: Ball, feature: Feature, class: Class) -> Result<Fit, Error> {
    let nominal = ball.seat_size(feature);
    let (seat, ring) = (class.limits(nominal)?, ball.ring(feature)?);
    match feature {
        Feature::Shaft => Fit::of_limits(nominal, ring, seat),
        Feature::Hole => Fit::of_limits(nominal, seat, ring),
    }
}

/// The next tighter letter that housings of bearings are bored to.
fn one_step_tighter(class: Class) -> Option<Class> {
    const LETTERS: [&str; 8] = ["G", "H", "J", "K", "M", "N", "P", "R"];
    let name = class.letter.name(class.feature);
    let at = LETTERS.iter().position(|letter| *letter == name)?;
    let letter = Letter::named(LETTERS.get(at + 1)?, class.feature).ok()?;
    Some(Class { letter, ..class })
}
