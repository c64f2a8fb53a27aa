//! Why a tool of the crib was chosen.

use fits_core::{
    job::Crib,
    shop::{Passes, Ream},
    source::{Known, Reason},
};

use crate::{
    answer::{Answer, FeatureAnswer, OwnReamer, PassFigures, PinFigures, ReamFigures},
    questions::why::answered::{said, said_range},
    session::Session,
};

impl Session {
    /// Why the crib's reamer, drills and pins, where an answer names them.
    pub(crate) fn why_crib(&self, figures: &mut Vec<Reason>, answer: &Answer) {
        if self.shop.crib().is_empty() {
            return;
        }
        let (hole, ream, bore) = match answer {
            Answer::Feature(found) => (&**found, found.ream.as_deref(), found.bore.as_deref()),
            Answer::Fit(fit) => (&fit.hole, fit.ream.as_deref(), fit.bore.as_deref()),
            Answer::Ream(found) => (&found.hole, Some(&found.ream), None),
            Answer::Passes(passes) => (&passes.feature, None, Some(&passes.plan)),
            _ => return,
        };
        if let Some(ream) = ream {
            self.why_reamed(figures, hole, ream);
        }
        if let Some(plan) = bore {
            figures.extend(self.why_drilled(hole, plan));
        }
        self.why_pins(figures, hole);
    }

    fn of_crib(&self, figure: String, value: String, rule: String) -> Reason {
        Reason {
            figure,
            value: value.into(),
            rule: rule.into(),
            source: self.crib_source(),
            known: Known::Given,
        }
    }

    fn why_reamed(&self, figures: &mut Vec<Reason>, hole: &FeatureAnswer, ream: &ReamFigures) {
        let Some(crib) = &ream.crib else { return };
        let value = |reamer: &OwnReamer| {
            let size = said(self.shown, reamer.size_mm.0);
            match reamer.cuts_mm {
                Some(cuts) => format!("{size}, cuts {}", said(self.shown, cuts.0)),
                None => format!("{size}, not tried"),
            }
        };
        let limits = said_range(self.shown, hole.limits);
        if let Some(best) = crib.reamers.first() {
            let rule = if best.cuts_mm.is_some() {
                format!("what it cuts lies in {limits}, the nearest its middle")
            } else {
                format!(
                    "its marked size lies from {} to {}; one tried goes first",
                    said(self.shown, hole.limits.lower()),
                    said(self.shown, ream.reamer_max_mm.0)
                )
            };
            figures.push(self.of_crib("reamer of the crib".into(), value(best), rule));
        }
        if let Some(near) = &crib.nearest {
            let rule = format!("none lands in {limits}");
            figures.push(self.of_crib("nearest reamer of the crib".into(), value(near), rule));
        }
        let range = Ream::of(hole.limits).and_then(|ream| ream.pre_drill_range());
        if let (Some(drill), Ok(range)) = (&crib.drill, range) {
            figures.push(self.of_crib(
                "drill of the crib before the reamer".into(),
                format!("{}, {}", drill.name, said(self.shown, drill.mm.0)),
                format!(
                    "its largest that leaves fitting stock, in {}",
                    said_range(self.shown, range)
                ),
            ));
        }
    }

    fn why_drilled(&self, hole: &FeatureAnswer, plan: &PassFigures) -> Option<Reason> {
        let drill = plan.passes.first()?;
        let rules = self.cut_rules(None).with_least_chip(plan.least_chip_mm.0);
        let range = Passes::drill_range(hole.limits, &rules).ok()?;
        let range = said_range(self.shown, range);
        let value = format!("{}, {}", drill.drill.as_ref()?, said(self.shown, drill.to_mm.0));
        let rule = if plan.drill_in_crib? {
            format!("the largest of the crib in {range}, which leaves the cuts")
        } else {
            format!("the crib has none in {range}: the standard one")
        };
        Some(self.of_crib("drill before boring".into(), value, rule))
    }

    fn why_pins(&self, figures: &mut Vec<Reason>, hole: &FeatureAnswer) {
        let Some(pins) = &hole.pins else { return };
        let reach = said(self.shown, Crib::pin_reach(hole.limits));
        let mut put = |name: &str, pin: Option<PinFigures>, rule: String| {
            let Some(pin) = pin else { return };
            figures.push(Reason {
                known: Known::Practice,
                ..self.of_crib(format!("gauge pin that {name}"), said(self.shown, pin.mm.0), rule)
            });
        };
        let (lower, upper) =
            (said(self.shown, hole.limits.lower()), said(self.shown, hole.limits.upper()));
        put(
            "must go in",
            pins.goes_in,
            format!("the largest from {lower} down to {reach} under it"),
        );
        put("must not", pins.stays_out, format!("the smallest from {upper} up to {reach} over it"));
    }
}
