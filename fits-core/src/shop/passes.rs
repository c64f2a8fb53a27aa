//! Boring and turning to size, pass by pass.
//!
//! The way is common practice: rough to a little under, two equal finish cuts
//! with a reading after the first, then a spring pass without infeed. The
//! figures stand in `data/holemaking/passes.csv`.

use crate::{
    error::Error,
    shop::{adviser::Settings, stock_for, stock_table},
    size::{Length, Limits},
    source::Reason,
    speech::say,
    standards::iso286::Feature,
};

/// What a pass is for.
///
/// ```
/// use fits_core::shop::Stage;
/// assert_eq!(Stage::SemiFinish.name(), "semi-finish");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[expect(
    clippy::exhaustive_enums,
    reason = "each is told, or acted on, in its own way: a new one must not pass unseen"
)]
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
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Pass {
    /// What it is for.
    pub stage: Stage,
    /// The size to have after it.
    pub to: Length,
    /// The change of diameter it makes; nothing where the size before it is
    /// not known (a drill, the first cut after it or on bar of unknown size).
    pub takes: Option<Length>,
}

/// Where the work is before the first pass.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Start {
    /// Not said: it is roughed from whatever is there.
    Open,
    /// The size it has now.
    From(Length),
    /// A hole is drilled first, with a drill of this size.
    Drilled(Length),
}

/// A plan of passes to a part's aim.
#[derive(Clone, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Passes {
    /// Hole: boring. Shaft: turning.
    pub feature: Feature,
    /// The limits to end in.
    pub limits: Limits,
    /// The size at the start of the cutting, if known: after the drill, or as
    /// given.
    pub start: Option<Length>,
    /// The size to end at: the middle of the limits, or what the dial reaches
    /// near it from a measured start.
    pub aim: Length,
    /// The passes, in order; at most forty.
    pub list: Vec<Pass>,
}

/// More passes than this are not worth listing: saw it or drill it nearer.
const MOST_PASSES: usize = 40;

/// Where the best drill would leave more roughing than this, a plan does not
/// begin with a drill.
const MOST_ROUGHS_AFTER_DRILL: i64 = 12;

/// A cut finer than this is not planned as two.
const ONE_CUT: Length = Length::from_tenth_nanometres(1_000_000);

/// What the cuts of a plan keep to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct CutRules {
    /// A division of the dial, as a change of diameter.
    pub step: Length,
    /// The least cut that does not rub, on the diameter.
    pub least_chip: Length,
    /// The smallest bore that a boring tool goes into.
    pub smallest_bore: Length,
}

impl CutRules {
    /// No boring bar of a small shop goes into less (common practice, no
    /// source); 5/16 in is less.
    pub const SMALLEST_BORE: Length = Length::from_tenth_nanometres(80_000_000);

    /// A dial of such divisions (as a change of diameter), the adviser's usual
    /// least chip, and the usual smallest bore.
    ///
    /// ```
    /// use fits_core::shop::CutRules;
    /// let rules = CutRules::stepping("0.01mm".parse()?);
    /// assert_eq!((rules.step, rules.smallest_bore), ("0.01mm".parse()?, "8mm".parse()?));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn stepping(step: Length) -> Self {
        Self { step, least_chip: Settings::default().least_cut, smallest_bore: Self::SMALLEST_BORE }
    }

    /// With another least cut that does not rub, on the diameter.
    ///
    /// ```
    /// use fits_core::shop::CutRules;
    /// let rules = CutRules::stepping("0.01mm".parse()?).with_least_chip("0.06mm".parse()?);
    /// assert_eq!(rules.least_chip, "0.06mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    #[must_use]
    pub const fn with_least_chip(self, least_chip: Length) -> Self {
        Self { least_chip, ..self }
    }

    /// The least cut in whole divisions.
    fn least(&self) -> i64 {
        let step = self.division();
        step.saturating_mul(parts_of(self.least_chip.tenth_nanometres().max(1), step))
    }

    fn division(&self) -> i64 {
        self.step.tenth_nanometres().max(1)
    }

    /// What roughing leaves at an aim: two equal cuts of whole divisions, none
    /// under the least chip.
    fn pair(&self, aim: Length) -> i64 {
        let usual = stock_for(&stock_table::PASSES, aim).first.tenth_nanometres();
        let two_steps = self.division().saturating_mul(2);
        let pairs = usual.saturating_add(two_steps / 2) / two_steps;
        two_steps.saturating_mul(pairs.max(1)).max(self.least().saturating_mul(2))
    }

    /// The deepest roughing cut at an aim, on the diameter: by practice, but
    /// never under two least chips: every cut can then be shared out in cuts
    /// that are not rubbing.
    ///
    /// ```
    /// use fits_core::shop::CutRules;
    /// let rules = CutRules::stepping("0.01mm".parse()?);
    /// assert!(rules.deepest("50mm".parse()?) > rules.deepest("10mm".parse()?));
    /// // Never so little that two cuts of it would rub.
    /// let dull = rules.with_least_chip("3mm".parse()?);
    /// assert_eq!(dull.deepest("10mm".parse()?), "6mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn deepest(&self, aim: Length) -> Length {
        let usual = stock_for(&stock_table::PASSES, aim).second.tenth_nanometres();
        Length::from_tenth_nanometres(usual.max(self.least().saturating_mul(2)))
    }
}

impl Passes {
    /// Plans the passes to the middle of the limits, or as near to it as the
    /// dial comes.
    ///
    /// From a size that was measured, each cut is a whole number of divisions;
    /// the last one is split where no whole one ends inside the limits. What a
    /// drill really cuts is not known: the first cut after it brings the bore
    /// to a size from which whole divisions end at the middle.
    ///
    /// # Errors
    /// The work is inside the limits or past them already, or too far from
    /// them; less is left than a least chip; no boring tool goes in.
    ///
    /// ```
    /// use fits_core::{Length, shop::{CutRules, Passes, Start}, standards::iso286::{Class, Feature}};
    /// let class: Class = "H7".parse()?;
    /// let hole = class.limits(Length::from_millimetres(20)?)?;
    /// let rules = CutRules::stepping("0.01mm".parse()?);
    /// let plan = Passes::plan(Feature::Hole, hole, Start::From("19.6mm".parse()?), &rules)?;
    /// let names: Vec<_> = plan.list.iter().map(|pass| pass.stage.name()).collect();
    /// assert_eq!(names, ["semi-finish", "finish", "spring"]);
    /// // 41 divisions; the middle of the limits is half a division farther.
    /// assert_eq!(plan.list[1].to, "20.01mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn plan(
        feature: Feature,
        limits: Limits,
        start: Start,
        rules: &CutRules,
    ) -> Result<Self, Error> {
        let middle = limits.middle();
        let is_hole = feature == Feature::Hole;
        if is_hole && middle < rules.smallest_bore {
            return Err(Error::no_plan(say!(
                "a bore of {} is too small for a boring tool: drill and ream it",
                middle
            )));
        }
        let mut list = Vec::with_capacity(8);
        let (began, is_measured) = match start {
            Start::From(size) => (Some(size), true),
            Start::Drilled(size) => (Some(size), false),
            Start::Open => (None, false),
        };
        if let Some(size) = began.filter(|size| is_hole && *size < rules.smallest_bore) {
            // What is not a size, or past the limits, says so first.
            metal_left(feature, limits, size)?;
            return Err(Error::no_plan(say!(
                "no boring tool goes into {}: drill it to {} or more first",
                size,
                rules.smallest_bore
            )));
        }
        if let Start::Drilled(size) = start {
            list.push(Pass { stage: Stage::Drill, to: size, takes: None });
        }
        let pair = rules.pair(middle);
        let total = match began {
            Some(size) => {
                let left = metal_left(feature, limits, size)?;
                rules.total(left, limits, is_measured)?
            }
            None => pair,
        };
        let total = Length::from_tenth_nanometres(total);
        let aim = match began.filter(|_| is_measured) {
            Some(size) if is_hole => size.checked_add(total)?,
            Some(size) => size.checked_sub(total)?,
            None => middle,
        };
        let short_by = |metal: Length| {
            if is_hole { aim.checked_sub(metal) } else { aim.checked_add(metal) }
        };
        let mut left = total;
        let mut is_known = is_measured;
        if began.is_none() {
            list.push(Pass { stage: Stage::Rough, to: short_by(total)?, takes: None });
            is_known = true;
        }
        for (stage, takes) in rules.shared(total, middle)? {
            left = left.checked_sub(takes)?;
            list.push(Pass { stage, to: short_by(left)?, takes: is_known.then_some(takes) });
            is_known = true;
        }
        list.push(Pass { stage: Stage::Spring, to: aim, takes: Some(Length::ZERO) });
        Ok(Self { feature, limits, start: began, aim, list })
    }

    /// The least and the greatest drill to begin a bore with: the greatest
    /// leaves the finish cuts and a light roughing cut.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::{shop::{CutRules, Passes}, standards::iso286::Class};
    /// let hole = "H7".parse::<Class>()?.limits("20mm".parse()?)?;
    /// let rules = CutRules::stepping("0.01mm".parse()?);
    /// let range = Passes::drill_range(hole, &rules)?;
    /// assert!(range.lower() >= rules.smallest_bore && range.upper() < hole.lower());
    /// assert!(rules.deepest(hole.middle()) > rules.least_chip);
    /// assert_eq!(Passes::reasons(hole.middle())[0].figure, "left by roughing");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn drill_range(limits: Limits, rules: &CutRules) -> Result<Limits, Error> {
        let aim = limits.middle();
        let pair = Length::from_tenth_nanometres(rules.pair(aim));
        let largest = aim.checked_sub(pair)?.checked_sub(pair)?;
        let roughed = rules.deepest(aim).checked_mul(MOST_ROUGHS_AFTER_DRILL)?;
        let least = largest.checked_sub(roughed)?.max(rules.smallest_bore);
        Limits::new(least.min(largest), largest)
    }

    /// Why a plan to such a size is as it is.
    ///
    /// ```
    /// use fits_core::shop::Passes;
    /// let reasons = Passes::reasons("20mm".parse()?);
    /// assert!(reasons.iter().all(|reason| !reason.source.is_empty()));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
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
            value: value.to_string().into(),
            rule: rule.into(),
            source: row.from.text.into(),
            known: row.from.known,
        })
        .into()
    }
}

impl CutRules {
    /// What the cuts take off together, where so much is left to the middle.
    fn total(&self, left: Length, limits: Limits, is_measured: bool) -> Result<i64, Error> {
        let step = self.division();
        let (middle, least) = (left.tenth_nanometres(), self.least_chip.tenth_nanometres());
        let tolerance = limits.tolerance().tenth_nanometres();
        let room = middle.saturating_add(tolerance / 2);
        if least >= room {
            return Err(Error::no_plan(say!(
                "{} is left, and a tool rubs under {}: polish or hone it to size",
                left,
                self.least_chip
            )));
        }
        let wanted = middle.max(least);
        if !is_measured {
            return Ok(step.saturating_mul(parts_of(wanted, step)));
        }
        // Whole divisions, halves or quarters, the first that ends inside the
        // limits, with a quarter of the tolerance to spare at the last one.
        let near = [1, 2, 4].into_iter().filter(|parts| step % parts == 0).find_map(|parts| {
            let part = step / parts;
            let below = wanted - wanted.rem_euclid(part);
            let nearest =
                if wanted - below > part / 2 { below.saturating_add(part) } else { below };
            let off = nearest.abs_diff(middle).saturating_mul(2);
            let is_inside = off < tolerance.unsigned_abs();
            let spares = nearest <= middle.saturating_add(tolerance / 4);
            (nearest >= least && is_inside && spares).then_some(nearest)
        });
        Ok(near.unwrap_or(wanted))
    }

    /// The cuts that take off a total: roughing in whole divisions, as equal as
    /// they come, the deeper first; then two equal ones, or one where two would
    /// rub.
    fn shared(&self, total: Length, aim: Length) -> Result<Vec<(Stage, Length)>, Error> {
        let (total, step, least) = (total.tenth_nanometres(), self.division(), self.least());
        let pair = self.pair(aim);
        let bulk = total - pair;
        let bulk = if bulk >= least.max(pair / 4) { bulk / step } else { 0 };
        let most = self.deepest(aim).tenth_nanometres() / step;
        let count = parts_of(bulk, most.max(1));
        // A few passes finish what is roughed.
        if usize::try_from(count).is_ok_and(|count| count + 5 > MOST_PASSES) {
            return Err(Error::no_plan(say!(
                "that is {} roughing passes: start nearer to size",
                count
            )));
        }
        let mut cuts = Vec::with_capacity(8);
        for number in 0..count {
            let deeper = i64::from(number < bulk.rem_euclid(count));
            cuts.push((Stage::Rough, (bulk / count + deeper) * step));
        }
        let last = total - bulk * step;
        if last > ONE_CUT.tenth_nanometres() && last / 2 >= least {
            let half = last / 2;
            let over = half.rem_euclid(step);
            let first = if 2 * over <= step { half - over } else { half - over + step };
            let first = first.max(least);
            cuts.push((Stage::SemiFinish, first));
            cuts.push((Stage::Finish, last - first));
        } else {
            cuts.push((Stage::Finish, last));
        }
        Ok(cuts
            .into_iter()
            .map(|(stage, takes)| (stage, Length::from_tenth_nanometres(takes)))
            .collect())
    }
}

/// How many parts of such a size cover a whole.
const fn parts_of(whole: i64, part: i64) -> i64 {
    whole.div_euclid(part) + if whole.rem_euclid(part) > 0 { 1 } else { 0 }
}

/// The metal from a start to the middle of the limits, where there is any to
/// take off.
///
/// # Errors
/// The start is not a size, or is inside the limits or past them already.
pub(super) fn metal_left(feature: Feature, limits: Limits, start: Length) -> Result<Length, Error> {
    if !start.is_positive() {
        return Err(Error::no_plan(say!("the work cannot start at {}", start)));
    }
    let aim = limits.middle();
    let left = match feature {
        Feature::Hole => aim.checked_sub(start)?,
        Feature::Shaft => start.checked_sub(aim)?,
    };
    if left.is_positive() && !limits.contains(start) {
        return Ok(left);
    }
    Err(Error::no_plan(if limits.contains(start) {
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
