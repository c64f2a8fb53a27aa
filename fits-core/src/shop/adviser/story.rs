//! What probably happened, where a pass or a reading missed by more than the
//! model allows: the stories of the trade, each with its figures.
//!
//! Only figures are compared here; what is believed after it stands in
//! [`Adviser`](super::Adviser). The stories and their tolerances are common
//! practice, no source.

use crate::{error::Error, size::Length, standards::iso286::Feature};

/// A pass, or a reading without one, that was not to be expected.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is built whole: what is new must be said by whoever builds one"
)]
pub struct Missed {
    /// Hole or shaft: which way the size moves.
    pub feature: Feature,
    /// The size believed before it.
    pub before: Length,
    /// The change of diameter dialled; nothing for a spring pass or a reading
    /// alone.
    pub dialled: Option<Length>,
    /// What was expected to be read.
    pub expected: Length,
    /// Standard deviation of that reading, by what is believed.
    pub expected_sd: Length,
    /// What was read.
    pub read: Length,
    /// What one turn of the dial changes the diameter by, where it is known.
    pub dial_turn: Option<Length>,
}

/// What explains it.
///
/// ```
/// use fits_core::shop::adviser::Story;
/// let lost = Story::Backlash { short: "0.1mm".parse()? };
/// assert_eq!(lost.word(), "backlash");
/// assert_eq!(lost.check(), "back the slide off, come up to the figure from one side, then measure again");
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[expect(
    clippy::exhaustive_enums,
    reason = "each is told, or acted on, in its own way: a new one must not pass unseen"
)]
pub enum Story {
    /// The reading was typed in the other system of units.
    OtherUnit {
        /// What was meant.
        meant: Length,
        /// Typed in inches, where millimetres were in force.
        is_inch: bool,
    },
    /// The reading's decimal point is missing, or stands elsewhere.
    Point {
        /// What was meant.
        meant: Length,
    },
    /// The dial stood whole turns from where it was meant to stand.
    WholeTurn {
        /// How many turns; less than 0 for short.
        turns: i32,
        /// What one turn changes the diameter by.
        turn: Length,
    },
    /// The dial shows the radius: twice as much came off as was dialled.
    ReadsRadius {
        /// What came off over what was expected to.
        ratio: f64,
    },
    /// The dial shows the diameter, and was taken to show the radius: half
    /// came off.
    ReadsDiameter {
        /// What came off over what was expected to.
        ratio: f64,
    },
    /// Next to nothing came off: the slide did not move, or the tool did not
    /// reach the work.
    HardlyMoved {
        /// What came off.
        took: Length,
    },
    /// The slide took up its backlash before it moved the tool.
    Backlash {
        /// How much less came off than was to be expected.
        short: Length,
    },
    /// Metal does not come back, and none goes without a pass: it was the
    /// gauge, or how it was held.
    Gauge {
        /// What was read, less what was expected.
        by: Length,
    },
}

/// A reading is in the other unit, or its point stands elsewhere, where it
/// comes so near to what was expected: a twentieth.
const NEAR: i64 = 20;
/// A pass that takes less than this share of what was expected took nothing.
const NOTHING: f64 = 0.1;
/// Dial for radius and diameter mixed up: so far from 2, or from a half of 1,
/// as a share.
const RATIO: f64 = 0.1;
/// More than this, on the diameter, is not a backlash of a screw in use.
const MOST_BACKLASH: f64 = 1000.0;

impl Story {
    /// Its name, as JSON has it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::OtherUnit { .. } => "other unit",
            Self::Point { .. } => "decimal point",
            Self::WholeTurn { .. } => "whole turn",
            Self::ReadsRadius { .. } => "dial reads radius",
            Self::ReadsDiameter { .. } => "dial reads diameter",
            Self::HardlyMoved { .. } => "hardly moved",
            Self::Backlash { .. } => "backlash",
            Self::Gauge { .. } => "gauge",
        }
    }

    /// What to look at before the next order, in plain words.
    pub const fn check(self) -> &'static str {
        match self {
            Self::OtherUnit { .. } => "type the reading again with its unit",
            Self::Point { .. } => "type the reading again with its point",
            Self::WholeTurn { .. } => {
                "look which turn the dial stands on, then measure again before the next cut"
            }
            Self::ReadsRadius { .. } => {
                "look whether the dial counts the radius: if so say `dial radius`"
            }
            Self::ReadsDiameter { .. } => {
                "look whether the dial counts the diameter: if so say `dial diameter`"
            }
            Self::HardlyMoved { .. } => {
                "look whether the slide moved and the lock is off, then measure again"
            }
            Self::Backlash { .. } => {
                "back the slide off, come up to the figure from one side, then measure again"
            }
            Self::Gauge { .. } => "clean the work and the gauge, and measure again",
        }
    }

    /// The story that explains a miss, or nothing where none does: then ask.
    ///
    /// # Errors
    /// A size out of range.
    ///
    /// ```
    /// use fits_core::{shop::adviser::story::{Missed, Story}, standards::iso286::Feature};
    /// let missed = Missed {
    ///     feature: Feature::Hole,
    ///     before: "19.6mm".parse()?,
    ///     dialled: Some("0.25mm".parse()?),
    ///     expected: "19.842mm".parse()?,
    ///     expected_sd: "0.01mm".parse()?,
    ///     read: "19.742mm".parse()?,
    ///     dial_turn: Some("0.1mm".parse()?),
    /// };
    /// let turn = "0.1mm".parse()?;
    /// assert_eq!(Story::of(&missed)?, Some(Story::WholeTurn { turns: -1, turn }));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn of(missed: &Missed) -> Result<Option<Self>, Error> {
        if let Some(typed) = mistyped(missed.read, missed.expected) {
            return Ok(Some(typed));
        }
        let way = |from: Length, to: Length| match missed.feature {
            Feature::Hole => to.checked_sub(from),
            Feature::Shaft => from.checked_sub(to),
        };
        let by = missed.read.checked_sub(missed.expected)?;
        let took = way(missed.before, missed.read)?;
        let (taken, wanted) =
            (took.in_micrometres(), way(missed.before, missed.expected)?.in_micrometres());
        let sure = 4.0 * missed.expected_sd.in_micrometres();
        let Some(_) = missed.dialled.filter(|_| wanted > 0.0) else {
            return Ok(Some(Self::Gauge { by }));
        };
        if taken < -sure {
            return Ok(Some(Self::Gauge { by }));
        }
        if let Some(turn) = missed.dial_turn.filter(|turn| turn.is_positive()) {
            let one = turn.in_micrometres();
            let turns = libm::round((taken - wanted) / one);
            // Told from its neighbours, and from no turn at all.
            let off = (taken - wanted - turns * one).abs();
            if turns != 0.0 && turns.abs() <= 10.0 && off <= sure.min(one / 4.0) {
                #[allow(clippy::cast_possible_truncation, reason = "ten at most")]
                let turns = turns as i32;
                return Ok(Some(Self::WholeTurn { turns, turn }));
            }
        }
        let ratio = taken / wanted;
        let near = |whole: f64| (ratio / whole - 1.0).abs() <= RATIO;
        let short = wanted - taken;
        Ok(if near(2.0) {
            Some(Self::ReadsRadius { ratio })
        } else if ratio <= NOTHING {
            Some(Self::HardlyMoved { took })
        } else if near(0.5) {
            Some(Self::ReadsDiameter { ratio })
        } else if short > 0.0 && short <= MOST_BACKLASH {
            Some(Self::Backlash { short: Length::nearest_micrometres(short)? })
        } else {
            None
        })
    }
}

/// The other unit, or the point elsewhere.
fn mistyped(read: Length, expected: Length) -> Option<Story> {
    let meant = |times: i128, over: i128| {
        let meant = read.checked_scale(times, over).ok()?;
        let off = meant.checked_sub(expected).and_then(Length::checked_abs).ok()?;
        // What fits as it stands is not mistyped.
        (off.tenth_nanometres() <= expected.tenth_nanometres() / NEAR).then_some(meant)
    };
    if meant(1, 1).is_some() {
        return None;
    }
    if let Some(meant) = meant(254, 10) {
        return Some(Story::OtherUnit { meant, is_inch: true });
    }
    if let Some(meant) = meant(10, 254) {
        return Some(Story::OtherUnit { meant, is_inch: false });
    }
    [10, 100, 1000, 10_000]
        .into_iter()
        .find_map(|power| meant(power, 1).or_else(|| meant(1, power)))
        .map(|meant| Story::Point { meant })
}
