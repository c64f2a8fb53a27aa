//! The size over three wires, and what a reading means.

use fits_core::{
    Length, Limits,
    shop::{
        Reading, Verdict,
        infeed::Infeed,
        wires::{Method, WireThread},
    },
    standards::{iso286::Feature, thread::Side},
};

use super::{
    Found,
    figures::{class_text, degrees, name},
};
use crate::{
    answer::{Answer, FeedFigures, Mm, OverWiresAnswer, WiresAnswer},
    problem::Problem,
    query::Size,
    session::{
        Session,
        resolve::from_core,
        why::{said, said_range},
    },
};

impl Session {
    /// Three wires over a screw.
    pub(super) fn wires(&self, found: &Found) -> Result<WiresAnswer, Problem> {
        let query = found.query;
        let thread = &found.thread;
        if !thread.form().has_side(Side::External) {
            return Err(Problem::new(
                "wires measure an external thread, and this is an internal one",
                query.ask.at.clone(),
            )
            .advise("try it with a gauge or its mate"));
        }
        if let Some(class) = query.thread.value.class(Side::Internal)
            && !found.has_class(Side::External)
        {
            let start = query.thread.at.start;
            return Err(Problem::new(
                format!("{} is a class of the nut, and wires go over the screw", class.value),
                start + class.at.0..start + class.at.1,
            )
            .advise("name the screw's class, as `3/8-24 2A wires`"));
        }
        let screw = found.sizes(Side::External, self.engaged(query)?)?;
        let (Some(max), Some(min)) = (screw.pitch.max, screw.pitch.min) else {
            return Err(Problem::new(
                format!("no limits of the pitch diameter are known for {thread}"),
                found.at(),
            )
            .advise("give a class, as `3/8-24 2A wires`"));
        };
        let failed = |error: fits_core::Error| from_core(&error, found.at());
        let limits = Limits::new(min, max).map_err(failed)?;
        let wired = WireThread::of_thread(thread, &screw).map_err(failed)?;
        let best = wired.best_wire().map_err(failed)?;
        let wire = match &query.wire {
            Some(size) => self.usable_wire(size, &wired, best)?,
            None => best,
        };
        let over = wired.over(wire).map_err(failed)?;
        let sizes = wired.over_limits(wire, limits).map_err(failed)?;
        let mut notes = Vec::new();
        if over.method == Method::Exact {
            notes.push(format!(
                "lead angle {:.1} degrees: the wire's seat on the helix is solved",
                over.lead_angle_degrees
            ));
        }
        let mut reasons = found.why(&screw, self.engaged(query)?);
        reasons.extend(wired.reasons(&over));
        Ok(WiresAnswer {
            name: name(found, Some(&screw), None),
            class: class_text(&screw),
            best_wire_mm: Mm(best),
            wire_mm: Mm(wire),
            wire_min_mm: Mm(over.usable.lower()),
            wire_max_mm: Mm(over.usable.upper()),
            over_max_mm: Mm(sizes.upper()),
            over_min_mm: Mm(sizes.lower()),
            pitch_max_mm: Mm(max),
            pitch_min_mm: Mm(min),
            method: if over.method == Method::Exact { "exact" } else { "plain" },
            lead_angle_deg: over.lead_angle_degrees,
            plain_over_mm: Mm(over.plain),
            exact_over_mm: Mm(over.exact),
            notes,
            reasons,
        })
    }

    /// A wire that was named, if it touches the flanks and stands out.
    fn usable_wire(
        &self,
        size: &Size,
        wired: &WireThread,
        best: Length,
    ) -> Result<Length, Problem> {
        let wire = self.nominal(size)?;
        let usable = wired.usable_wires().map_err(|error| from_core(&error, size.at.clone()))?;
        if usable.contains(wire) {
            return Ok(wire);
        }
        let what = if wire < usable.lower() {
            "sinks below the crests"
        } else {
            "is too big to touch both flanks below the crests"
        };
        Err(Problem::new(format!("a wire of {} {what}", said(self.shown, wire)), size.at.clone())
            .advise(format!("wires from {} can be used; the best", said_range(self.shown, usable)))
            .fix(size.at.clone(), said(self.shown, best)))
    }

    /// What a size read over wires means, and how much is left to feed.
    pub(super) fn over_wires(&self, found: &Found) -> Result<Answer, Problem> {
        let query = found.query;
        let Some(size) = &query.over else {
            return Err(Problem::new("the size over the wires is missing", query.ask.at.clone())
                .advise("as in `3/8-24 2A over 0.4012in`"));
        };
        let wires = self.wires(found)?;
        let over = self.nominal(size)?;
        let failed = |error: fits_core::Error| from_core(&error, size.at.clone());
        let limits = Limits::new(wires.pitch_min_mm.0, wires.pitch_max_mm.0).map_err(failed)?;
        let screw = found.sizes(Side::External, self.engaged(query)?)?;
        let pitch = WireThread::of_thread(&found.thread, &screw)
            .and_then(|wired| wired.pitch_diameter_of(wires.wire_mm.0, over))
            .map_err(|_| {
                Problem::new(
                    format!("{} over wires is no size of this thread", said(self.shown, over)),
                    size.at.clone(),
                )
                .advise(format!("about {} is expected", said(self.shown, wires.exact_over_mm.0)))
            })?;
        let reading = Reading::judge(Feature::Shaft, limits, pitch).map_err(failed)?;
        let how = self.how(found)?;
        let feed = match reading.verdict {
            Verdict::CutMore => {
                let left = Infeed::to_go(Feature::Shaft, pitch, limits, how).map_err(failed)?;
                Some(FeedFigures {
                    radial_mm: Mm(left.radial),
                    compound_mm: left.compound.map(Mm),
                    compound_deg: degrees(how.slide),
                    dial_mm: Mm(left.dial),
                })
            }
            _ => None,
        };
        Ok(Answer::OverWires(Box::new(OverWiresAnswer {
            wires,
            over_mm: Mm(over),
            pitch_diameter_mm: Mm(pitch),
            verdict: reading.verdict,
            to_go_mm: Mm(reading.to_aim),
            feed,
        })))
    }
}
