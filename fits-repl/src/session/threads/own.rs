//! Tap drills and taps out of the crib.

use fits_core::{
    Length,
    job::OwnDrill,
    shop::tap::{Bit, Minor, TapDrill, TapHole, Wanted, Work},
    source::{Known, Reason},
    standards::thread::{Thread, scan_expected},
};

use super::figures::tapped;
use crate::{
    answer::TapFigures,
    problem::Problem,
    query::Spot,
    session::{Session, why::said},
};

/// How far, in percent of thread, a drill of the crib may be off what is
/// wanted where no limits decide (common practice, no source).
const NEAR: f64 = 10.0;

/// What the crib has for a tap drill.
pub(super) struct Own {
    /// Its best drill, where that is as good as any.
    pub(super) drill: Option<TapDrill>,
    /// Its best one, where it is not.
    pub(super) nearest: Option<TapDrill>,
}

/// The best of one's own drills: taken where it keeps the nut's limits as well
/// as the standard's best does, or, where a percent is asked for or no limits
/// are known, where it comes near.
fn best_of(
    hole: &TapHole,
    own: &[Bit],
    wanted: Wanted,
    (standard, percent): (&TapDrill, f64),
) -> Own {
    let Ok(found) = hole.choose(own, wanted) else { return Own { drill: None, nearest: None } };
    let best = found.best;
    let keeps = |drill: &TapDrill| (drill.minor, drill.minor_drilled);
    let kept = Some(Minor::Kept);
    let is_good = match (wanted, keeps(&best)) {
        (Wanted::Percent(_), _) | (_, (None, _)) => (best.percent - percent).abs() <= NEAR,
        (_, (minor, drilled)) => minor == kept && (drilled == kept || keeps(standard).1 != kept),
    };
    if is_good {
        Own { drill: Some(best), nearest: None }
    } else {
        Own { drill: None, nearest: Some(best) }
    }
}

impl Session {
    /// Puts the crib's drill first, where it has one that does, and says what
    /// it would rather have; `drills` hold the standard choice first.
    pub(super) fn own_tap_drill(
        &self,
        hole: &TapHole,
        (wanted, percent): (Wanted, f64),
        drills: &mut Vec<TapDrill>,
        reasons: &mut Vec<Reason>,
    ) -> Option<OwnTapDrill> {
        let crib = self.shop.crib();
        if crib.drill.is_empty() && crib.drills.is_empty() {
            return None;
        }
        let bit = |drill: OwnDrill| Bit { name: drill.name().into(), diameter: drill.size };
        let own: Vec<Bit> = crib.drills().into_iter().map(bit).collect();
        let standard = drills.first()?.clone();
        let found = best_of(hole, &own, wanted, (&standard, percent));
        let Some(best) = found.drill else {
            let nearest = found.nearest.map(|drill| drill.bit.name.to_string());
            return Some(OwnTapDrill { in_crib: false, rather: None, nearest });
        };
        let rather =
            (standard.bit.diameter != best.bit.diameter).then(|| standard.bit.name.to_string());
        let beside = rather.as_ref().map_or(String::new(), |rather| format!("; of all, {rather}"));
        reasons.push(Reason {
            figure: format!("tap drill {}", best.bit.name),
            value: said(self.shown, best.bit.diameter),
            rule: format!("the drill of the crib nearest to what is wanted{beside}"),
            source: self.crib_source(),
            known: Known::Given,
        });
        let size: Length = best.bit.diameter;
        drills.retain(|drill| drill.bit.diameter != size);
        drills.insert(0, best);
        Some(OwnTapDrill { in_crib: true, rather, nearest: None })
    }

    /// What is tapped, by the row of advice that it belongs to: as the query
    /// says, or the setting, which is then said.
    pub(super) fn tapped(
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
    pub(super) fn own_tap(&self, thread: &Thread) -> Option<bool> {
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
    pub(super) fn own_tap_note(&self, thread: &Thread) -> Option<String> {
        self.own_tap(thread).map(|has| {
            if has {
                format!("tap {thread} is in the crib")
            } else {
                format!("no tap {thread} in the crib")
            }
        })
    }
}

/// What is said of the crib's drills beside the choice.
pub(super) struct OwnTapDrill {
    in_crib: bool,
    rather: Option<String>,
    nearest: Option<String>,
}

impl OwnTapDrill {
    /// The same among the figures of the drill chosen.
    pub(super) fn put(self, figures: TapFigures) -> TapFigures {
        TapFigures {
            drill_in_crib: Some(self.in_crib),
            rather_drill: self.rather,
            nearest_in_crib: self.nearest,
            ..figures
        }
    }
}
