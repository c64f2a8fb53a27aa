//! Tap drills and taps out of the crib.

use fits_core::{
    job::OwnDrill,
    shop::tap::{Bit, TapDrill, TapHole, Wanted, Work},
    source::{Known, Reason},
    standards::thread::{Thread, scan_expected},
};

use crate::{
    problem::Problem,
    query::Spot,
    questions::{
        thread::answered::{
            figures::{Choice, tapped, with_neighbours},
            taper::is_taper_nut,
        },
        why::answered::said,
    },
    session::Session,
};

/// How far, in percent of thread, a drill of the crib may be off what is
/// wanted where no limits decide (common practice, no source).
const NEAR: f64 = 10.0;

/// The crib's word on a tap drill.
pub(crate) struct OwnTapDrill {
    /// Is the choice a drill of the crib?
    pub(crate) in_crib: bool,
    /// The drill that would be chosen of all, where the crib has another.
    pub(crate) rather: Option<String>,
    /// The best drill of the crib, where it is not good enough.
    pub(crate) nearest: Option<String>,
    /// Why it was chosen.
    pub(crate) reason: Option<Reason>,
}

/// A drill of one's own is taken where it keeps the nut's limits; where a
/// percent is asked for, or no limits are known, where it comes near.
fn is_good(best: &TapDrill, wanted: Wanted, percent: f64) -> bool {
    match (wanted, best.minor) {
        (Wanted::Percent(_), _) | (_, None) => (best.percent - percent).abs() <= NEAR,
        _ => best.keeps(),
    }
}

/// The drill nearest to the choice, inside the limits where there is one; of
/// two as near the smaller, which can be opened up.
fn nearest(own: &[Bit], hole: &TapHole, choice: &Choice) -> Option<TapDrill> {
    let first = choice.drills.first().map(|drill| drill.bit.diameter);
    let aim = first.or(choice.bore.as_ref().map(|bore| bore.aim))?;
    let off = |drill: &TapDrill| {
        let size = drill.bit.diameter;
        (!drill.keeps(), size.tenth_nanometres().abs_diff(aim.tenth_nanometres()), size)
    };
    own.iter().filter_map(|bit| hole.with(bit).ok()).min_by_key(off)
}

impl Session {
    /// Puts the crib's drill first, where it has one that does, and says what
    /// it would rather have: the drill of the chart, else the nearest to it
    /// inside the limits. A power thread is bored in any case.
    pub(crate) fn own_tap_drill(
        &self,
        thread: &Thread,
        hole: &TapHole,
        wanted: Wanted,
        choice: &mut Choice,
    ) -> Option<OwnTapDrill> {
        let crib = self.shop.crib();
        if crib.drill.is_empty() && crib.drills.is_empty() || matches!(wanted, Wanted::Middle) {
            return None;
        }
        let bit = |drill: OwnDrill| Bit { name: drill.name().into(), diameter: drill.size };
        let own: Vec<Bit> = crib.drills().into_iter().map(bit).collect();
        let best = match wanted {
            Wanted::Percent(_) => hole.choose(&own, wanted).ok().map(|found| found.best),
            _ => nearest(&own, hole, choice),
        };
        // A straight hole for a taper goes by the charts' drills, as far as they are apart.
        let is_beside = |best: &TapDrill| {
            choice.drills.iter().any(|drill| drill.bit.diameter == best.bit.diameter)
        };
        let is_taken = |best: &&TapDrill| {
            if is_taper_nut(thread) {
                is_beside(best)
            } else {
                is_good(best, wanted, choice.wanted_percent)
            }
        };
        let found = best.as_ref().filter(is_taken);
        let Some(best) = found else {
            let reason = best.as_ref().map(|best| Reason {
                figure: format!("drill {} of the crib, not taken", best.bit.name),
                value: format!("{:.0} % of thread", best.percent).into(),
                rule: if best.keeps() {
                    format!("over {NEAR:.0} % of thread off what is wanted").into()
                } else {
                    "its best, and outside the limits of the minor diameter".into()
                },
                source: self.crib_source(),
                known: Known::Given,
            });
            let nearest = best.map(|best| best.bit.name.to_string());
            return Some(OwnTapDrill { in_crib: false, rather: None, nearest, reason });
        };
        let rather = choice.drills.first().filter(|first| first.bit.diameter != best.bit.diameter);
        let rather = rather.map(|first| first.bit.name.to_string());
        let beside = rather.as_ref().map_or(String::new(), |rather| format!("; of all, {rather}"));
        let reason = Reason {
            figure: format!("tap drill {}", best.bit.name),
            value: said(self.shown, best.bit.diameter).into(),
            rule: format!("the best of the crib{beside}").into(),
            source: self.crib_source(),
            known: Known::Given,
        };
        choice.bore = None;
        let known = std::mem::take(&mut choice.drills);
        choice.drills = with_neighbours(best.clone(), known, thread, hole);
        // What it would rather have stands next.
        let is_it = |drill: &TapDrill| Some(&*drill.bit.name) == rather.as_deref();
        if let Some(at) = choice.drills.iter().position(is_it)
            && let Some(between) = choice.drills.get_mut(1..=at)
        {
            between.rotate_right(1);
        }
        Some(OwnTapDrill { in_crib: true, rather, nearest: None, reason: Some(reason) })
    }

    /// What is tapped, by the row of advice that it belongs to: as the query
    /// says, or the setting, which is then said.
    pub(crate) fn tapped(
        &self,
        named: Option<&Spot<String>>,
        assumed: &mut Vec<String>,
    ) -> Result<Work, Problem> {
        if let Some(name) = named {
            let (_, family) = self.material_kind(name)?;
            return Ok(tapped(&name.value, family));
        }
        let usual = self.usual_material();
        let Some((name, family)) = usual.and_then(|name| self.material_kind(&name).ok()) else {
            return Ok(Work::General);
        };
        assumed.push(format!("no material given: {name}, the setting"));
        Ok(tapped(&name, family))
    }

    /// Is there a tap for a thread in the crib? Nothing where it has no taps.
    pub(crate) fn own_tap(&self, thread: &Thread) -> Option<bool> {
        let taps = &self.shop.crib().tap;
        let same = |name: &str| {
            let Some(Ok((designation, _))) = scan_expected(name) else { return false };
            designation.resolve().is_ok_and(|own| {
                let of = |thread: &Thread| {
                    (
                        thread.form(),
                        thread.major(),
                        thread.pitch(),
                        thread.starts(),
                        thread.is_left_hand(),
                    )
                };
                of(&own) == of(thread)
            })
        };
        (!taps.is_empty()).then(|| taps.iter().any(|tap| same(&tap.thread)))
    }

    /// The same in words.
    pub(crate) fn own_tap_note(&self, thread: &Thread) -> Option<String> {
        self.own_tap(thread).map(|has| {
            if has {
                format!("tap {thread} is in the crib")
            } else {
                format!("no tap {thread} in the crib")
            }
        })
    }
}
