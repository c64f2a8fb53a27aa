//! What to do next at the bench: setup, tool, size, passes, reading.

use std::fmt::Write as _;

use fits_core::{
    Length,
    job::whole::{Job, Side},
    size::Unit,
    standards::iso286::Feature as Surface,
};

use super::page::{exact, range, size, units};
use crate::render::text::lines::wrapped;

/// What to do next: setup, tool, size, reading.
pub(crate) fn next(out: &mut String, job: &Job) {
    let Some(at) = job.next() else {
        let _ = writeln!(out, "  nothing is left to cut to a fit");
        return;
    };
    let feature = &job.features[at];
    let [own, other] = units(feature.unit);
    let name = job.full_name(at);
    let (how, tool) = match feature.side {
        Side::Hole => ("bore or ream", "a bore gauge or a telescoping gauge and a micrometer"),
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
            let surface = if feature.side == Side::Hole { Surface::Hole } else { Surface::Shaft };
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
    if !also.is_empty() {
        let name = job.parts.get(part).map_or("", |part| part.name.as_str());
        let words = format!("setup: of the {name} there is also to cut: {}", also.join(", "));
        wrapped(out, "  ", &words);
    }
}
