//! The size over three wires, and what a reading means.

use fits_core::{
    Length, Limits,
    shop::{
        Reading, Verdict,
        infeed::Infeed,
        wires::{Method, WireThread},
    },
    size::{Decimals, Rounding},
    standards::{iso286::Feature, thread::Side},
};

use crate::{
    answer::{Answer, FeedFigures, Mm, OverWiresAnswer, WiresAnswer},
    problem::Problem,
    query::{Size, Units},
    questions::{
        part::resolve::from_core,
        thread::answered::{
            Found,
            figures::{class_text, degrees, name},
        },
        why::answered::said,
    },
    session::Session,
};

impl Session {
    /// Three wires over a screw.
    pub(crate) fn wires(&self, found: &Found) -> Result<WiresAnswer, Problem> {
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
        let nearest = self.nearest_usable(&wired, best).map_err(failed)?;
        let wire = match &query.wire {
            Some(size) => self.usable_wire(size, &wired, nearest)?,
            None => nearest,
        };
        let over = wired.over(wire).map_err(failed)?;
        let sizes = wired.over_limits(wire, limits).map_err(failed)?;
        let mut notes = Vec::new();
        if best != nearest && wire == nearest {
            notes.push(
                "the best wire does not stand above the crests at every good size: the nearest that does is taken"
                    .to_owned(),
            );
        }
        let mut name = name(found, Some(&screw), None);
        if query.wire.is_none() {
            let which = if wire == best { "best" } else { "nearest to the best" };
            let size = wire_said(self.shown, wire, Rounding::Nearest);
            name.assumed.push(format!("no wire given: {which}, {size}"));
        }
        if over.method == Method::Exact {
            notes.push(format!(
                "lead angle {:.1} degrees: the wire's seat on the helix is solved",
                over.lead_angle_degrees
            ));
        }
        let mut reasons = found.why(&screw, self.engaged(query)?);
        reasons.extend(wired.reasons(&over));
        Ok(WiresAnswer {
            name,
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

    /// The wire itself, or the nearest that can be used, in a round figure.
    fn nearest_usable(&self, wired: &WireThread, wire: Length) -> Result<Length, fits_core::Error> {
        let usable = wired.usable_wires()?;
        let round = |toward| wire_decimals(self.shown).round(wire, toward);
        Ok(if wire < usable.lower() {
            let least = wire_decimals(self.shown).round(usable.lower(), Rounding::Up);
            if usable.contains(least) { least } else { usable.lower() }
        } else if usable.contains(round(Rounding::Nearest)) {
            wire
        } else {
            wired.nearest_usable(wire)?
        })
    }

    /// A wire that was named, if it touches the flanks and stands out.
    fn usable_wire(
        &self,
        size: &Size,
        wired: &WireThread,
        nearest: Length,
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
        let least = wire_said(self.shown, usable.lower(), Rounding::Up);
        let most = wire_said(self.shown, usable.upper(), Rounding::Down);
        Err(Problem::new(format!("a wire of {} {what}", said(self.shown, wire)), size.at.clone())
            .advise(format!("wires from {least} to {most} can be used; the best of them"))
            .fix(size.at.clone(), wire_said(self.shown, nearest, Rounding::Nearest)))
    }

    /// What a size read over wires means, and how much is left to feed.
    pub(crate) fn over_wires(&self, found: &Found) -> Result<Answer, Problem> {
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
                    format!("{} over wires is not a size of this thread", said(self.shown, over)),
                    size.at.clone(),
                )
                .advise(format!("about {} is expected", near(self.shown, wires.exact_over_mm.0)))
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

/// The last place of a size: 0.001 mm, 0.0001 in.
const fn decimals(units: Units) -> Decimals {
    match units {
        Units::Millimetres => Decimals::MILLIMETRES,
        Units::Inches => Decimals::INCHES,
    }
}

/// The last place of a wire: a tenth of a size's.
const fn wire_decimals(units: Units) -> Decimals {
    let usual = decimals(units);
    Decimals { places: usual.places + 1, ..usual }
}

/// A size to so many places, without the zeros at the end.
fn figure(size: Length, decimals: Decimals, toward: Rounding) -> String {
    let text = size.shown(decimals, toward).to_string();
    format!("{} {}", text.trim_end_matches('0').trim_end_matches('.'), decimals.unit.symbol())
}

/// About this size.
pub(crate) fn near(units: Units, size: Length) -> String {
    figure(size, decimals(units), Rounding::Nearest)
}

fn wire_said(units: Units, wire: Length, toward: Rounding) -> String {
    figure(wire, wire_decimals(units), toward)
}
