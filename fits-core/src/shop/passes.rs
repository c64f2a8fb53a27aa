//! Boring and turning to size, pass by pass.
//!
//! The way is common practice: rough to a little under, two equal finish cuts
//! with a reading after the first, then a spring pass without infeed. The
//! figures stand in `data/holemaking/passes.csv`.

use crate::{
    error::{Error, Kind},
    shop::{stock_for, stock_table},
    size::{Length, Limits},
    source::Reason,
    standards::{
        drills::{Drill, Series},
        iso286::Feature,
    },
};

/// What a pass is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Stage {
    /// A drill through, before boring.
    Drill,
    /// Takes the bulk off.
    Rough,
    /// The first of two equal finish cuts; read after it.
    SemiFinish,
    /// To the aim.
    Finish,
    /// Again at the same setting: takes what the tool sprang away from.
    Spring,
}

impl Stage {
    /// Its name in the trade.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Drill => "drill",
            Self::Rough => "rough",
            Self::SemiFinish => "semi-finish",
            Self::Finish => "finish",
            Self::Spring => "spring",
        }
    }
}

/// One pass of a plan.
#[derive(Clone, Copy, Debug)]
pub struct Pass {
    /// What it is for.
    pub stage: Stage,
    /// The size to have after it.
    pub to: Length,
    /// The change of diameter it makes; nothing where the size before it is
    /// not known (a drill, the first cut on bar of unknown size).
    pub takes: Option<Length>,
    /// The drill, for that stage.
    pub drill: Option<Drill>,
}

/// Where the work is before the first pass.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Start {
    /// Not said: a hole is drilled first, a shaft is roughed from the bar.
    Open,
    /// The size it has now.
    From(Length),
    /// A hole is drilled first, with a drill of this size.
    Drilled(Length),
}

/// A plan of passes to a part's aim.
#[derive(Clone, Debug)]
pub struct Passes {
    /// Hole: boring. Shaft: turning.
    pub feature: Feature,
    /// The limits to end in.
    pub limits: Limits,
    /// The size at the start of the cutting, if known: after the drill, or as
    /// given.
    pub start: Option<Length>,
    /// The size to end at.
    pub aim: Length,
    /// The passes, in order; at most forty.
    pub list: Vec<Pass>,
}

/// More passes than this are not worth listing: saw it or drill it nearer.
const MOST_PASSES: usize = 40;

/// Where the best drill would leave more roughing than this, a plan does not
/// begin with a drill.
const MOST_ROUGHS_AFTER_DRILL: i64 = 12;

/// No larger drill is looked for: few small shops own one (common practice, no
/// source).
const LARGEST_DRILL: Length = Length::from_tenth_nanometres(127_000_000);

/// No boring bar of a small shop goes into less (common practice, no source);
/// 5/16 in is less.
const SMALLEST_BORE: Length = Length::from_tenth_nanometres(80_000_000);

/// A cut finer than this is not planned as two.
const ONE_CUT: Length = Length::from_tenth_nanometres(1_000_000);

impl Passes {
    /// Plans the passes to the middle of the limits.
    ///
    /// `step` is what the dial can be set to, as a change of diameter: the
    /// last cut is a whole number of steps where that is possible.
    ///
    /// # Errors
    /// The work is inside the limits or past them already, or too far from
    /// them.
    ///
    /// ```
    /// use fits_core::{Length, shop::{Passes, Start}, standards::iso286::{Class, Feature}};
    /// let class: Class = "H7".parse()?;
    /// let hole = class.limits(Length::from_millimetres(20)?)?;
    /// let step: Length = "0.01mm".parse()?;
    /// let plan = Passes::plan(Feature::Hole, hole, Start::From("19.6mm".parse()?), step)?;
    /// let names: Vec<_> = plan.list.iter().map(|pass| pass.stage.name()).collect();
    /// assert_eq!(names, ["semi-finish", "finish", "spring"]);
    /// assert_eq!(plan.list[1].to, hole.middle());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn plan(
        feature: Feature,
        limits: Limits,
        start: Start,
        step: Length,
    ) -> Result<Self, Error> {
        let aim = limits.middle();
        if feature == Feature::Hole && aim < SMALLEST_BORE {
            return Err(no_plan(format!(
                "a bore of {aim} is too small for a boring tool: drill and ream it"
            )));
        }
        let finish = finish_stock(aim, step)?;
        let most_rough = stock_for(&stock_table::PASSES, aim).second;
        let off = |size: Length, by: Length| match feature {
            Feature::Hole => size.checked_sub(by),
            Feature::Shaft => size.checked_add(by),
        };
        let mut list = Vec::with_capacity(8);
        let mut at = match start {
            Start::From(size) => Some(size),
            Start::Drilled(size) => {
                list.push(Pass { stage: Stage::Drill, to: size, takes: None, drill: None });
                Some(size)
            }
            Start::Open if feature == Feature::Shaft => None,
            Start::Open => {
                // A bore that no drill comes near is begun from whatever is
                // there.
                let range = Self::drill_range(limits, step)?;
                let drill = Drill::under(
                    range.upper().min(LARGEST_DRILL),
                    &[Series::Metric, Series::Fraction],
                )
                .filter(|drill| drill.diameter() >= range.lower());
                if let Some(drill) = drill {
                    list.push(Pass {
                        stage: Stage::Drill,
                        to: drill.diameter(),
                        takes: None,
                        drill: Some(drill),
                    });
                }
                drill.map(Drill::diameter)
            }
        };
        let began = at;
        if let Some(size) = at {
            let left = metal_left(feature, limits, size)?;
            let bulk = left.checked_sub(finish)?;
            if bulk.is_positive() && bulk > finish.half().half() {
                let roughs = cuts(bulk, most_rough)?;
                for number in 1..=roughs {
                    let to = off(
                        aim,
                        finish.checked_add(
                            bulk.checked_scale(i128::from(roughs - number), i128::from(roughs))?,
                        )?,
                    )?;
                    list.push(pass(Stage::Rough, to, at)?);
                    at = Some(to);
                }
            }
        } else {
            let to = off(aim, finish)?;
            list.push(pass(Stage::Rough, to, None)?);
            at = Some(to);
        }
        let left = at.map_or(Ok(finish), |size| aim.checked_sub(size)?.checked_abs())?;
        if left > ONE_CUT {
            let last = on_step(left.half(), step);
            let to = off(aim, last)?;
            list.push(pass(Stage::SemiFinish, to, at)?);
            at = Some(to);
        }
        list.push(pass(Stage::Finish, aim, at)?);
        list.push(Pass { stage: Stage::Spring, to: aim, takes: Some(Length::ZERO), drill: None });
        Ok(Self { feature, limits, start: began, aim, list })
    }

    /// The least and the greatest drill to begin a bore with: the greatest
    /// leaves the finish cuts and a light roughing cut.
    ///
    /// # Errors
    /// Out of range.
    pub fn drill_range(limits: Limits, step: Length) -> Result<Limits, Error> {
        let aim = limits.middle();
        let finish = finish_stock(aim, step)?;
        let largest = aim.checked_sub(finish)?.checked_sub(finish)?;
        let roughed =
            stock_for(&stock_table::PASSES, aim).second.checked_mul(MOST_ROUGHS_AFTER_DRILL)?;
        // No boring bar goes into less.
        let least = largest.checked_sub(roughed)?.max(SMALLEST_BORE.min(largest));
        Limits::new(least, largest)
    }

    /// Why a plan to such a size is as it is.
    pub fn reasons(aim: Length) -> Vec<Reason> {
        let row = stock_for(&stock_table::PASSES, aim);
        [
            (
                "left by roughing",
                row.first,
                "two equal finish cuts, reading after the first, then spring passes",
            ),
            (
                "most a roughing pass takes",
                row.second,
                "by diameter; less for a slender bar or tool",
            ),
        ]
        .map(|(figure, value, rule)| Reason {
            figure: figure.into(),
            value: value.to_string(),
            rule: rule.into(),
            source: row.from.text.into(),
            known: row.from.known,
        })
        .into()
    }
}

/// What roughing leaves: two equal cuts of whole dial steps.
fn finish_stock(aim: Length, step: Length) -> Result<Length, Error> {
    let left = stock_for(&stock_table::PASSES, aim).first.tenth_nanometres();
    let two_steps = step.tenth_nanometres().max(1).saturating_mul(2);
    let pairs = left.saturating_add(two_steps / 2) / two_steps;
    Length::from_tenth_nanometres(two_steps).checked_mul(pairs.max(1))
}

/// The metal from a start to the middle of the limits, where there is any to
/// take off.
///
/// # Errors
/// The start is no size, or is inside the limits or past them already.
pub(super) fn metal_left(feature: Feature, limits: Limits, start: Length) -> Result<Length, Error> {
    if !start.is_positive() {
        return Err(no_plan(format!("a size of {start} is no start")));
    }
    let aim = limits.middle();
    let left = match feature {
        Feature::Hole => aim.checked_sub(start)?,
        Feature::Shaft => start.checked_sub(aim)?,
    };
    if left.is_positive() && !limits.contains(start) {
        return Ok(left);
    }
    Err(no_plan(if limits.contains(start) {
        format!("{start} is good already: no cut is left")
    } else {
        match feature {
            Feature::Hole => {
                format!("a bore of {start} is over the upper limit {} already", limits.upper())
            }
            Feature::Shaft => {
                format!("a shaft of {start} is under the lower limit {} already", limits.lower())
            }
        }
    }))
}

fn pass(stage: Stage, to: Length, from: Option<Length>) -> Result<Pass, Error> {
    let takes = from.map(|from| to.checked_sub(from)?.checked_abs()).transpose()?;
    Ok(Pass { stage, to, takes, drill: None })
}

/// How many equal cuts of at most `most` take off `bulk`.
fn cuts(bulk: Length, most: Length) -> Result<i64, Error> {
    let (bulk, most) = (bulk.tenth_nanometres(), most.tenth_nanometres().max(1));
    let count = bulk.div_euclid(most) + i64::from(bulk.rem_euclid(most) > 0);
    // A few passes finish what is roughed.
    if usize::try_from(count).is_ok_and(|count| count + 5 <= MOST_PASSES) {
        Ok(count)
    } else {
        Err(no_plan(format!("that is {count} roughing passes: start nearer to size")))
    }
}

/// The multiple of a step nearest to a length, the lower of two, or the length
/// itself where it is less than a step: two cuts of about this length then
/// differ by no more than a step.
fn on_step(length: Length, step: Length) -> Length {
    let (length, step) = (length.tenth_nanometres(), step.tenth_nanometres().max(1));
    let over = length.rem_euclid(step);
    Length::from_tenth_nanometres(if length < step {
        length
    } else if over <= step - over {
        length - over
    } else {
        // Less than half a step up, from a length of at least one.
        length - over + step
    })
}

fn no_plan(why: String) -> Error {
    Error::new(Kind::NoPlan { why })
}
