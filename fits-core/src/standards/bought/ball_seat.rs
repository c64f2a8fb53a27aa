//! The seats of both rings of a ball bearing, their classes from [`seat`].

use super::{Ball, Load, seat};
use crate::{
    error::Error,
    fit::Fit,
    size::Limits,
    source::Known,
    standards::{
        iso286::{Class, Feature, Letter},
        processes::Process,
    },
};
#[cfg(feature = "serde")]
use serde::Serialize;

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
///
/// ```
/// use fits_core::standards::bought::{Ball, Duty, Turning, ball_seats};
/// let (bearing, _) = Ball::named("6204")?;
/// let seats = ball_seats(bearing, Some(Turning::Shaft), Some(Duty::Normal), true)?;
/// // h6 on 20 mm, which turning alone does not hold.
/// assert_eq!(seats[1].limits().to_string(), "19.987 to 20.000 mm");
/// assert_eq!(seats[1].lathe().map(|how| how.name()), Some("turning and polishing"));
/// # Ok::<(), fits_core::Error>(())
/// ```
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
