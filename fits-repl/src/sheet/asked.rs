//! What a job asks, as single queries: what the sheet shows is what each of them
//! is answered.

use std::fmt::Write as _;

use fits_core::{
    Length, Limits,
    job::whole::{Feature, Job, Mate, Nominal},
    shop::words::Hub,
    size::{Decimals, Rounding, Unit},
    standards::iso286::Feature as Surface,
};

use crate::{
    answer::{Answer, FitAnswer, PairReadingAnswer},
    render::text::figures::is_exact,
    session::Session,
};

/// What is known of a pair.
pub(super) enum Pair {
    Fit(Box<FitAnswer>),
    Read(Box<PairReadingAnswer>),
}

/// A size as it is typed, exactly, in the unit of the note where that can be.
pub(super) fn typed(size: Length, unit: Unit) -> String {
    if unit == Unit::Inch
        && let Some(decimals) =
            (3..=7).map(|places| Decimals { unit, places }).find(|one| is_exact(size, *one))
    {
        return format!("{}in", size.shown(decimals, Rounding::Nearest));
    }
    size.to_string().replace(' ', "")
}

/// The size that a pair shares; the hole's where both have one.
pub(super) fn nominal(job: &Job, mate: &Mate) -> Option<(Length, Unit)> {
    [mate.hole, mate.shaft].into_iter().find_map(|at| {
        let feature = job.features.get(at)?;
        Some((feature.nominal.as_ref()?.size()?, feature.unit))
    })
}

/// The queries that may be asked of a pair, the fullest first.
pub(super) fn of_pair(job: &Job, mate: &Mate) -> Vec<String> {
    let Some((size, unit)) = nominal(job, mate) else { return Vec::new() };
    let (Some(hole), Some(shaft)) = (job.features.get(mate.hole), job.features.get(mate.shaft))
    else {
        return Vec::new();
    };
    if let Some(wanted) = mate.fit.clearance {
        return by_clearance(hole, shaft, wanted).into_iter().collect();
    }
    if differ(hole, shaft).is_some() && (hole.deviations.is_none() || shaft.deviations.is_none()) {
        return Vec::new();
    }
    let read = |feature: &Feature| feature.reading().map(|read| typed(read.size, feature.unit));
    let readings = match (read(hole), read(shaft)) {
        (Some(hole), Some(shaft)) => format!(" = {hole}/{shaft}"),
        (Some(hole), None) => format!(", hole = {hole}"),
        (None, Some(shaft)) => format!(", shaft = {shaft}"),
        (None, None) => String::new(),
    };
    let base = typed(size, unit);
    if let (Some(upper), Some(lower)) = (&hole.class, &shaft.class) {
        return vec![format!("{base} {upper}/{lower}{readings}")];
    }
    let own = |feature: &Feature, kind: Surface| {
        let deviations = feature.deviations?;
        let limits = deviations.about(feature.nominal.as_ref()?.size()?).ok()?;
        let [low, high] = [limits.lower(), limits.upper()].map(|end| typed(end, feature.unit));
        Some(format!("{} {low}..{high}", kind.word()))
    };
    if let (Some(hole), Some(shaft)) = (own(hole, Surface::Hole), own(shaft, Surface::Shaft)) {
        return vec![format!("{hole}, {shaft}")];
    }
    let Some(word) = mate.fit.word else { return Vec::new() };
    let part =
        |feature: &Feature| job.parts.get(feature.part).map_or(Hub::Steel, |part| part.hub());
    let (outer, inner) = (part(hole), part(shaft));
    let is_bush = |hub| matches!(hub, Hub::PlasticBushing | Hub::BronzeBushing);
    let hub = match if is_bush(inner) { inner } else { outer } {
        Hub::PlasticBushing => ", hub plastic bushing",
        Hub::BronzeBushing => ", hub bronze bushing",
        Hub::Aluminium => ", hub aluminium",
        Hub::CastIron => ", hub cast iron",
        Hub::Steel => "",
    };
    let word = word.name();
    let mut queries = vec![format!("{base} {word}{hub}{readings}")];
    if !hub.is_empty() {
        queries.push(format!("{base} {word}{readings}"));
    }
    queries
}

/// The sizes of two features that go together, where they are not one.
pub(super) fn differ(hole: &Feature, shaft: &Feature) -> Option<(Length, Length)> {
    let size = |feature: &Feature| feature.nominal.as_ref()?.size();
    Some((size(hole)?, size(shaft)?)).filter(|(hole, shaft)| hole != shaft)
}

/// A pair by the clearance that the note wants, which no class gives: one part is
/// read, and the other one's limits are so far from it.
fn by_clearance(hole: &Feature, shaft: &Feature, wanted: Limits) -> Option<String> {
    let read = |feature: &Feature| feature.reading().map(|read| read.size);
    let (least, most) = (wanted.lower(), wanted.upper());
    let shown = |feature: &Feature, size: Length| typed(size, feature.unit);
    Some(match (read(hole), read(shaft)) {
        (Some(size), None) => {
            let (low, high) = (size.checked_sub(most).ok()?, size.checked_sub(least).ok()?);
            let [low, high] = [low, high].map(|end| shown(hole, end));
            format!("hole {}, shaft {low}..{high}", shown(hole, size))
        }
        (None, Some(size)) => {
            let (low, high) = (size.checked_add(least).ok()?, size.checked_add(most).ok()?);
            let [low, high] = [low, high].map(|end| shown(shaft, end));
            format!("hole {low}..{high}, shaft {}", shown(shaft, size))
        }
        (Some(inner), Some(outer)) => {
            format!("hole {}, shaft {}", shown(hole, inner), shown(shaft, outer))
        }
        (None, None) => return None,
    })
}

/// The queries of a feature by itself, with its reading or for its passes.
pub(super) fn of_feature(feature: &Feature, with_reading: bool) -> Option<String> {
    let kind = feature.side.surface()?;
    let base = typed(feature.nominal.as_ref()?.size()?, feature.unit);
    let mut query = match (&feature.class, feature.deviations) {
        (Some(class), _) => format!("{base} {class}"),
        (None, Some(by)) => {
            let limits = by.about(feature.nominal.as_ref()?.size()?).ok()?;
            let [low, high] = [limits.lower(), limits.upper()].map(|end| typed(end, feature.unit));
            format!("{} {low}..{high}", kind.word())
        }
        (None, None) => return None,
    };
    if let Some(read) = feature.reading().filter(|_| with_reading) {
        let _ = write!(query, " = {}", typed(read.size, feature.unit));
    }
    Some(query)
}

/// A thread's designation as a query.
pub(super) fn of_thread(feature: &Feature) -> Option<&str> {
    match &feature.nominal {
        Some(Nominal::Thread(name)) => Some(name),
        _ => None,
    }
}

/// The first of some queries that is answered as a pair, and in which nothing said
/// is without effect.
pub(super) fn pair(session: &mut Session, queries: &[String]) -> Option<(String, Pair)> {
    queries.iter().find_map(|query| {
        let pair = match session.evaluate(query).ok()? {
            Answer::Fit(fit) => {
                let is_changed = fit.choice.as_ref().is_some_and(|it| it.changed_by.is_some());
                if query.contains(", hub ") && !is_changed {
                    return None;
                }
                Pair::Fit(fit)
            }
            Answer::PairReading(read) => Pair::Read(read),
            _ => return None,
        };
        Some((query.clone(), pair))
    })
}
