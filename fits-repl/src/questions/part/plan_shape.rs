//! The sizes and cuts of a plan as they are shown: what the sizes shown subtract
//! to is what the cut shown says.

use fits_core::{
    Length,
    size::{Decimals, Rounding, Unit},
};

use crate::{
    answer::{FeatureAnswer, PassFigures},
    query::Dial,
    render::text::{Text, figures::is_exact},
};

/// How a plan's sizes are written in one unit.
#[derive(Clone, Copy)]
pub(crate) struct PlanShape {
    decimals: Decimals,
    toward: Rounding,
}

impl PlanShape {
    /// The usual places; more where that shows a measured start and every
    /// size as it is, or where the last size would be shown outside of its limits.
    pub(crate) fn of(plan: &PassFigures, unit: Unit, feature: &FeatureAnswer) -> Self {
        let usual = Text::usual(unit);
        let more = Decimals { places: usual.places + 1, ..usual };
        let toward = Text::metal_side(feature.kind);
        // What a drill cuts is not known: its size is nobody's difference.
        let measured = plan.passes.first().and_then(|pass| pass.dial_mm).and(plan.start_mm);
        let cuts = plan.passes.iter().filter(|pass| pass.drill.is_none());
        let sizes: Vec<Length> =
            measured.into_iter().chain(cuts.map(|pass| pass.to_mm)).map(|size| size.0).collect();
        let shows = |decimals| sizes.iter().all(|size| is_exact(*size, decimals));
        let ends = |decimals: Decimals| {
            let last = sizes.last();
            last.is_none_or(|last| feature.limits.contains(decimals.round(*last, toward)))
        };
        let as_is = measured.is_some() && !shows(usual) && shows(more);
        let decimals = match (ends(usual) && !as_is, ends(more)) {
            (true, _) => usual,
            (false, true) => more,
            // It ends so near to a limit that a place more still rounds past it.
            (false, false) => Decimals { places: usual.places + 2, ..usual },
        };
        Self { decimals, toward }
    }

    fn rounded(self, size: Length) -> Length {
        self.decimals.round(size, self.toward)
    }

    /// A size to reach.
    pub(crate) fn size(self, size: Length) -> String {
        format!("{} {}", size.shown(self.decimals, self.toward), self.decimals.unit.symbol())
    }

    /// A change of diameter or its half, in the places it needs, and whether
    /// that is all of it.
    fn exact(self, cut: Length) -> (String, bool) {
        let unit = if self.decimals.unit == Unit::Inch { Unit::Thou } else { self.decimals.unit };
        let least = if unit == Unit::Thou { 1 } else { 3 };
        let decimals = (least..least + 3)
            .map(|places| Decimals { unit, places })
            .find(|decimals| is_exact(cut, *decimals));
        let shown =
            cut.shown(decimals.unwrap_or(Decimals { unit, places: least }), Rounding::Nearest);
        (format!("{shown} {}", unit.symbol()), decimals.is_some())
    }

    /// A cut about as it is.
    pub(crate) fn cut(self, cut: Length) -> String {
        self.exact(cut).0
    }

    /// What to dial for each of some equal cuts from one size to another, as
    /// the two are shown; nothing where so many do not add up to that.
    pub(crate) fn each(self, from: Length, to: Length, count: usize, dial: Dial) -> Option<String> {
        let off = self.rounded(to).checked_sub(self.rounded(from)).ok()?.checked_abs().ok()?;
        let parts = i64::try_from(count).ok()? * if dial == Dial::Radius { 2 } else { 1 };
        if off.tenth_nanometres() % parts != 0 {
            return None;
        }
        let each = Length::from_tenth_nanometres(off.tenth_nanometres() / parts);
        let (shown, is_exact) = self.exact(each);
        is_exact.then_some(shown)
    }
}
