//! What to do next at the bench: setup, tool, size, passes, reading.

use std::fmt::Write as _;

use fits_core::{
    Length, Limits,
    job::whole::{Job, SizeKind},
    size::Unit,
    standards::iso286::Feature as Surface,
};

use super::page::{exact, range, size, units};
use crate::{answer::FeatureAnswer, render::text::lines::wrapped, session::Session, sheet::asked};

/// What to do next: setup, tool, size, reading.
pub(crate) fn next(out: &mut String, job: &Job, session: &mut Session) {
    let Some(at) = job.next() else {
        let _ = writeln!(out, "  nothing is left to cut to a fit");
        return;
    };
    let feature = &job.features[at];
    let [own, other] = units(feature.unit);
    let name = job.full_name(at);
    let (how, tool) = match feature.side {
        SizeKind::Hole => ("bore or ream", "a bore gauge or a telescoping gauge and a micrometer"),
        _ => ("turn", "a micrometer"),
    };
    match job.limits(at) {
        Some(Ok((limits, _))) => {
            let words = format!(
                "{how} the {name} to {} ({}), aim {}; read it with {tool}",
                range(limits, own),
                range(limits, other),
                size(limits.middle(), own)
            );
            wrapped(out, "  ", &words);
            setup(out, job, at);
            if let Some(side) = feature.side.surface()
                && let Some(figures) = asked::feature(session, side, limits, feature.unit)
            {
                wrapped(out, "  ", &cutters(&figures, own));
            }
            let surface =
                if feature.side == SizeKind::Hole { Surface::Hole } else { Surface::Shaft };
            // As much as is left after roughing; whoever types it has a size of his own.
            let left = Length::from_millimetres(1).unwrap_or(Length::ZERO);
            let now = if surface == Surface::Hole {
                limits.lower().checked_sub(left)
            } else {
                limits.upper().checked_add(left)
            };
            if let Ok(now) = now {
                let ends = [limits.lower(), limits.upper()];
                // All of them in one unit.
                let is_inch = ends.iter().chain([&now]).all(|end| exact(*end, own).ends_with("in"));
                let unit = if is_inch { own } else { Unit::Millimetre };
                let [low, high, now] = [ends[0], ends[1], now].map(|end| exact(end, unit));
                let query = format!("{} {low}..{high} from {now}", surface.word());
                let words = format!(
                    "passes: `{query}` opens a pass log, with the size it has now behind `from`; at `done` its end is written here"
                );
                wrapped(out, "  ", &words);
            }
        }
        _ => wrapped(
            out,
            "  ",
            &format!(
                "the {name}: its fit is not settled; say it in the note, as `press in ...` or `running on ...`"
            ),
        ),
    }
    wrapped(out, "  ", &format!("then type `{name} = ` and the reading"));
}

/// What it is cut with: the drill to begin with, the reamer or the boring bar, or
/// a turning tool; those of the crib where it has them.
fn cutters(figures: &FeatureAnswer, own: Unit) -> String {
    let Some(ream) = &figures.ream else {
        let plan = figures.bore.as_ref().or(figures.turn.as_ref());
        let drill = plan
            .and_then(|plan| plan.passes.iter().find_map(|pass| pass.drill.as_ref()))
            .map_or_else(String::new, |drill| format!("drill {drill}, then "));
        let bar = if figures.turn.is_some() { "a turning tool" } else { "a boring bar" };
        return format!("tool: {drill}{bar}, last passes of one cut each");
    };
    let crib = ream.crib.as_deref();
    let drill = crib
        .and_then(|crib| crib.drill.as_ref())
        .map(|drill| format!("drill {} of the crib, then ", drill.name))
        .or_else(|| ream.drill.map(|drill| format!("drill {}, then ", drill.name)))
        .or_else(|| {
            let first = ream.first_drill.as_ref()?;
            Some(format!("drill {first}, bore to {}, then ", size(ream.before_mm.0, own)))
        });
    let reamer = crib
        .and_then(|crib| crib.reamers.first())
        .map(|reamer| format!("the {} reamer of the crib", size(reamer.size_mm.0, own)))
        .or_else(|| {
            let shelf = ream.inch_reamers.first()?;
            Some(format!("a {} reamer (mic it)", shelf.name))
        })
        .unwrap_or_else(|| {
            let most = Limits::new(ream.reamer_min_mm.0, ream.reamer_max_mm.0);
            let ends = most.map_or_else(|_| size(ream.before_mm.0, own), |ends| range(ends, own));
            format!("a reamer of {ends}")
        });
    format!("tool: {}{reamer}, or a boring bar in passes", drill.unwrap_or_default())
}

/// What else of the part waits to be cut, so that it is done in one setup.
fn setup(out: &mut String, job: &Job, at: usize) {
    let part = job.features[at].part;
    let also: Vec<&str> = job
        .features_of(part)
        .filter(|(other, feature)| {
            *other != at
                && feature.side.surface().is_some()
                && feature.reading().is_none()
                && !(feature.done || feature.implied || job.is_split(*other))
        })
        .map(|(_, feature)| feature.name.as_str())
        .collect();
    let name = job.parts.get(part).map_or("", |part| part.name.as_str());
    let hold = if job.features[at].side == SizeKind::Hole {
        "in the chuck or on the faceplate, the bore clocked true"
    } else {
        "in the chuck or between centres"
    };
    let also = if also.is_empty() {
        String::new()
    } else {
        format!("; also to cut in it: {}", also.join(", "))
    };
    wrapped(out, "  ", &format!("setup: the {name} {hold}{also}"));
}
