//! A retaining ring and its groove.

use fits_core::standards::{
    hardware::{RetainingRing, RingKind},
    iso286::Feature,
};

use super::{HardwareAnswer, HardwareText, at, missing, said};
use crate::{
    problem::Problem,
    query::{Size, Units},
    session::Session,
};

/// What a ring holds, in general words: no figure of a maker is held here.
const THRUST: &str = "thrust: the wall of the groove gives way before the ring, so a shallow \
     groove, a soft shaft, a chamfer or radius on the part against it and knocks take the most \
     off; the ring's maker has the figure. Not for what carries people.";

impl Session {
    pub(super) fn ring(&self, text: &HardwareText) -> Result<HardwareAnswer, Problem> {
        let is_e = text.lead.starts_with(['e', 'E']);
        let (size, feature) = ring_place(text, is_e)?;
        let on = self.nominal(size)?;
        let kind = match (text.choice("kind"), feature, self.shown) {
            (Some("heavy"), Feature::Shaft, _) => RingKind::Heavy,
            (Some("crescent"), Feature::Shaft, _) => RingKind::Crescent,
            (None, Feature::Shaft, _) if is_e => RingKind::ERing,
            (None | Some("basic"), Feature::Shaft, Units::Inches) if !is_e => RingKind::External,
            (None | Some("basic"), Feature::Hole, Units::Inches) if !is_e => RingKind::Internal,
            (None, Feature::Shaft, Units::Millimetres) => RingKind::Din471,
            (None, Feature::Hole, Units::Millimetres) if !is_e => RingKind::Din472,
            _ => {
                let at = text.chosen.first().map_or(text.part.at.clone(), |it| it.at.clone());
                return Err(Problem::new("no such ring is listed here", at).advise(
                    "heavy, crescent and e-rings go on shafts: `retaining ring 3/4in shaft heavy`",
                ));
            }
        };
        let found = RetainingRing::find(kind, on).map_err(at(size))?;
        let Some((ring, others)) = found.split_first() else {
            return Err(missing(text, "no such ring is listed here"));
        };
        ring_answer(*ring, others, on).map_err(at(size))
    }
}

/// Its size, and what its groove is cut in.
fn ring_place(text: &HardwareText, is_e: bool) -> Result<(&Size, Feature), Problem> {
    let place = text.choice("place").map(|place| match place {
        "bore" => Feature::Hole,
        _ => Feature::Shaft,
    });
    let by_role = match (text.role("shaft"), text.role("bore")) {
        (Some(_), Some(two)) => {
            return Err(Problem::new("a ring sits on a shaft or in a bore", two.at.clone())
                .advise("leave one out"));
        }
        (Some(size), None) => Some((size, Feature::Shaft)),
        (None, Some(size)) => Some((size, Feature::Hole)),
        (None, None) => None,
    };
    let free = text.free().next();
    match (by_role, free, place) {
        (Some(_), Some(extra), _) => {
            Err(Problem::new("a word is missing that says what this size is", extra.at.clone())
                .advise(text.example()))
        }
        (Some((size, feature)), None, place) if place.is_none_or(|place| place == feature) => {
            Ok((size, feature))
        }
        (Some((size, _)), None, _) => Err(Problem::new(
            "external rings go on shafts, internal ones in bores",
            size.at.clone(),
        )
        .advise(text.example())),
        (None, Some(size), Some(feature)) => Ok((size, feature)),
        (None, Some(size), None) if is_e => Ok((size, Feature::Shaft)),
        (None, Some(size), None) => {
            Err(Problem::new("a shaft or a bore is not said: their rings differ", size.at.clone())
                .advise("`shaft` or `bore` after the size")
                .fix(size.at.end..size.at.end, " shaft"))
        }
        (None, None, _) => Err(missing(text, "the shaft or the bore is missing")),
    }
}

fn ring_answer(
    ring: RetainingRing,
    others: &[RetainingRing],
    on: fits_core::Length,
) -> Result<HardwareAnswer, fits_core::Error> {
    let kind = ring.kind();
    let title = match kind.feature() {
        Feature::Shaft => said!("{} on a shaft of {}", kind.name(), on),
        Feature::Hole => said!("{} in a bore of {}", kind.name(), on),
    };
    let mut answer = HardwareAnswer::new("retaining ring", title);
    let (edge, edge_known) = ring.edge()?;
    answer
        .limits("groove", ring.groove()?)
        .limits("width", ring.width()?)
        .limits("depth a side", ring.depth()?)
        .size("land to end", edge, edge_known)
        .limits("ring thick", ring.thickness()?)
        .limits("ring's play", ring.play()?);
    answer.note("depth a side: for a shaft or bore of nominal size; the groove's diameter decides");
    answer.note(said!(
        "the tool: no wider than {}; corners of the groove sharp, land to the end at least {}",
        ring.width()?.upper(),
        edge
    ));
    for other in others {
        answer.note(said!(
            "another ring of this shaft has a groove of {} to {}: match the ring in hand",
            other.groove()?.lower(),
            other.groove()?.upper()
        ));
    }
    answer.note(THRUST);
    if !ring.note().is_empty() {
        answer.note(ring.note());
    }
    answer.reasons = ring.reasons()?;
    Ok(answer)
}
