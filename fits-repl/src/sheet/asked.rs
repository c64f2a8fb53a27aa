//! Single queries about a job's features: their tools, passes and joints are what
//! these are answered.

use fits_core::{
    Length, Limits,
    job::whole::{NominalSize, PartFeature},
    size::{Decimals, Rounding, Unit},
    standards::iso286::Feature as Surface,
};

use crate::{
    answer::{Answer, FeatureAnswer},
    render::text::figures::is_exact,
    session::Session,
};

/// The places in which a size is exact in inches, where it is.
fn places(size: Length) -> Option<Decimals> {
    (3..=7).map(|places| Decimals { unit: Unit::Inch, places }).find(|one| is_exact(size, *one))
}

/// A size as it is typed, exactly, in the unit of the note where that can be.
pub(super) fn typed(size: Length, unit: Unit) -> String {
    match places(size).filter(|_| unit == Unit::Inch) {
        Some(decimals) => format!("{}in", size.shown(decimals, Rounding::Nearest)),
        None => size.to_string().replace(' ', ""),
    }
}

/// A feature by its limits, asked for by itself.
pub(crate) fn feature(
    session: &mut Session,
    side: Surface,
    limits: Limits,
    unit: Unit,
) -> Option<Box<FeatureAnswer>> {
    let ends = [limits.lower(), limits.upper()];
    // Both in one unit.
    let unit = if ends.iter().all(|end| places(*end).is_some()) { unit } else { Unit::Millimetre };
    let [low, high] = ends.map(|end| typed(end, unit));
    match session.evaluate(&format!("{} {low}..{high}", side.word())).ok()? {
        Answer::Feature(figures) => Some(figures),
        _ => None,
    }
}

/// A thread's designation as a query.
pub(super) fn of_thread(feature: &PartFeature) -> Option<&str> {
    match &feature.nominal {
        Some(NominalSize::Thread(name)) => Some(name),
        _ => None,
    }
}
