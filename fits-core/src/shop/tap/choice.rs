//! Which of the drills that are there suits a tap.

use super::{ABOUT, ASKED, Advice, Bit, MOST_CUT, SAME, TapDrill, TapHole, Work, no_drill};
use crate::{
    error::Error,
    size::{Length, Limits},
};

/// What to look for.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[expect(
    clippy::exhaustive_enums,
    reason = "each is told, or acted on, in its own way: a new one must not pass unseen"
)]
pub enum Wanted {
    /// So many percent of thread.
    Percent(f64),
    /// The middle of what is advised for the work.
    Advised(Advice),
    /// The middle of the minor diameter's limits: for power threads, whose
    /// full height is cut.
    Middle,
}

/// A drill and those near it.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct TapDrills {
    /// The percent looked for.
    pub wanted_percent: f64,
    /// The hole that gives exactly that.
    pub hole: Length,
    /// The drill to take.
    pub best: TapDrill,
    /// Up to three smaller and three larger: the nearest percent first, but
    /// where no percent is asked for, those that keep the limits before that.
    pub others: Vec<TapDrill>,
}

impl TapHole {
    /// The best drill of a list; see [`TapHole::choose_from`].
    ///
    /// # Errors
    /// As [`TapHole::choose_from`].
    ///
    /// ```
    /// use fits_core::{Length, Limits, shop::tap::{Advice, Bit, Drive, TapHole, Wanted, Work, full_height}};
    /// use fits_core::standards::drills::Series;
    /// let pitch = Length::INCH.checked_scale(1, 20)?;
    /// // 1/4-20 UNC 2B.
    /// let minor = Limits::new("0.196in".parse()?, "0.207in".parse()?)?;
    /// let hole = TapHole::new("1/4in".parse()?, pitch, full_height(pitch, 30.0)?, Some(minor))?;
    /// let drills = Bit::standard(&[Series::Number, Series::Letter, Series::Fraction]);
    /// let found = hole.choose(&drills, Wanted::Advised(Advice::of(Work::General, Drive::Power)))?;
    /// assert_eq!(found.best.bit.name, "#7");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn choose(&self, drills: &[Bit], wanted: Wanted) -> Result<TapDrills, Error> {
        self.choose_from(drills, &[], wanted)
    }

    /// The best drill of two lists. First those whose hole keeps the class as
    /// it is commonly drilled, then those that keep it as large as the drill;
    /// among them the nearest to the percent wanted, the first list's where
    /// the other's is not nearer by much. Where a percent is asked for, only
    /// drills about as near to it as the nearest are looked at.
    ///
    /// # Errors
    /// A percent that cannot be tapped; no limits where their middle is
    /// wanted; no drill of the lists leaves a thread.
    ///
    /// ```
    /// use fits_core::{shop::tap::{Bit, TapHole, Wanted}, standards::drills::Series};
    /// let hole = TapHole::of_thread(&"M8".parse()?, None)?;
    /// let all = Bit::standard(&[Series::Metric]);
    /// // The owner's own drill is taken before one that would have to be bought.
    /// let own = [Bit::sized("6.8mm".parse()?)];
    /// let found = hole.choose_from(&own, &all, Wanted::Percent(75.0))?;
    /// assert_eq!(found.best.bit, own[0]);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn choose_from(
        &self,
        own: &[Bit],
        other: &[Bit],
        wanted: Wanted,
    ) -> Result<TapDrills, Error> {
        let (hole, wanted_percent, equal) = match wanted {
            Wanted::Percent(percent) => (self.hole(percent)?, percent, SAME),
            // As near as half of what is advised is wide.
            Wanted::Advised(advice) => {
                let width = f64::from(advice.high.saturating_sub(advice.low));
                (self.hole(advice.middle())?, advice.middle(), width / 2.0)
            }
            Wanted::Middle => {
                let middle = self.minor.map(Limits::middle).ok_or_else(|| {
                    Error::out_of_reach(
                        "no limits of the minor diameter are known".to_owned(),
                        "ask for a percent of thread",
                    )
                })?;
                (middle, self.percent(middle), SAME)
            }
        };
        let with = |bits: &[Bit], is_own: bool| -> Vec<(bool, TapDrill)> {
            let leaving = bits.iter().filter(|bit| self.leaves_thread(bit.diameter));
            leaving.filter_map(|bit| Some((is_own, self.with(bit).ok()?))).collect()
        };
        let mut list = with(own, true);
        list.extend(with(other, false));
        let off = |drill: &TapDrill| (drill.percent - wanted_percent).abs();
        list.sort_by(|(_, a), (_, b)| off(a).total_cmp(&off(b)));
        let nearest = list.first().map(|(_, drill)| off(drill)).ok_or_else(|| no_drill(hole))?;
        let farthest =
            if matches!(wanted, Wanted::Percent(_)) { nearest + ABOUT } else { f64::INFINITY };
        let reach = || list.iter().filter(|(_, drill)| off(drill) <= farthest);
        let most = match wanted {
            // Tough metal breaks taps: as little thread as the class allows.
            Wanted::Advised(advice) if advice.work == Work::ToughSteel => f64::from(advice.high),
            Wanted::Advised(_) => MOST_CUT,
            Wanted::Percent(_) | Wanted::Middle => f64::INFINITY,
        };
        let rank = reach().map(|(_, drill)| drill.rank(most)).min();
        // The list is in order: the first of a kind is its nearest.
        let find = |wants_own: Option<bool>| {
            list.iter().position(|(is_own, drill)| {
                off(drill) <= farthest
                    && Some(drill.rank(most)) == rank
                    && wants_own.is_none_or(|wanted| wanted == *is_own)
            })
        };
        let at = match (find(None), find(Some(true))) {
            (Some(any), Some(own)) => {
                let gap = |at: usize| list.get(at).map_or(0.0, |(_, drill)| off(drill));
                if gap(own) <= gap(any) + equal { own } else { any }
            }
            (any, own) => any.or(own).unwrap_or(0),
        };
        // `at` is a place of the list, which is not empty.
        let (_, best) = list.remove(at);
        let (mut smaller, mut larger) = (0, 0);
        let mut others: Vec<TapDrill> = list.into_iter().map(|(_, drill)| drill).collect();
        if !matches!(wanted, Wanted::Percent(_)) {
            // Stable: the nearest first among equals.
            others.sort_by_key(|drill| drill.rank(most));
        }
        others.retain(|drill| {
            let side =
                if drill.bit.diameter < best.bit.diameter { &mut smaller } else { &mut larger };
            *side += 1;
            *side <= 3 && ASKED.contains(&drill.percent)
        });
        Ok(TapDrills { wanted_percent, hole, best, others })
    }
}
