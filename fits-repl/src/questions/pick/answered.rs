//! Standard classes for a wanted clearance, answered.

use fits_core::{
    Limits,
    shop::{Candidate, FitClasses, nearest_b41, pick},
    source::Known,
};
use schemars::JsonSchema;
use serde::Serialize;

use crate::{
    answer::{Answer, Mm},
    problem::Problem,
    query::{Size, Wanted},
    questions::part::resolve::from_core,
    session::Session,
};

/// How many candidates an answer names.
pub(crate) const CANDIDATES: usize = 10;

impl Session {
    /// Standard classes that give a wanted clearance or interference.
    pub(crate) fn pick(
        &self,
        size: &Size,
        wanted: Wanted,
        from: &Size,
        to: &Size,
    ) -> Result<Answer, Problem> {
        let nominal = self.nominal(size)?;
        let failed = |error: fits_core::Error| from_core(&error, from.at.start..to.at.end);
        let ends = [self.length(from)?, self.length(to)?];
        let [first, second] = match wanted {
            Wanted::Clearance => ends,
            Wanted::Interference => {
                [ends[1].checked_neg().map_err(failed)?, ends[0].checked_neg().map_err(failed)?]
            }
        };
        let range = Limits::new(first, second).map_err(|error| {
            failed(error).advise("the smaller comes first, as `pick 20 clearance 0.01..0.04`")
        })?;
        let mut found = pick(nominal, range).map_err(|error| from_core(&error, size.at.clone()))?;
        let count = found.iter().filter(|candidate| !candidate.is_miss()).count();
        found.truncate(CANDIDATES);
        let is_inch = |candidate: &Candidate| matches!(candidate.classes, FitClasses::B41(_));
        let nearest_b41 = if found.iter().any(is_inch) {
            None
        } else {
            nearest_b41(nominal, range).map_err(|error| from_core(&error, size.at.clone()))?
        };
        let known = found.iter().map(|it| it.fit.known()).fold(Known::Given, Known::worst);
        Ok(Answer::Pick(PickAnswer {
            nominal_mm: Mm(nominal),
            wanted_min_mm: Mm(range.lower()),
            wanted_max_mm: Mm(range.upper()),
            found: count,
            candidates: found.iter().map(CandidateFigures::of).collect(),
            nearest_b41: nearest_b41.as_ref().map(CandidateFigures::of),
            known,
        }))
    }
}

/// Standard classes that give a wanted clearance, the preferred first, then the easiest to make.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct PickAnswer {
    /// The nominal size.
    pub nominal_mm: Mm,
    /// The least clearance wanted; interference is below 0.
    pub wanted_min_mm: Mm,
    /// The greatest.
    pub wanted_max_mm: Mm,
    /// How many classes lie inside; none where only near misses are named.
    pub found: usize,
    /// The first of them, or the near misses.
    pub candidates: Vec<CandidateFigures>,
    /// The class of ASME B4.1 that comes nearest, where none is named above.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub nearest_b41: Option<CandidateFigures>,
    /// How they are known: the worst of those named.
    pub known: Known,
}

/// One of them.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct CandidateFigures {
    /// The class or classes.
    pub class: String,
    /// Least clearance.
    pub min_mm: Mm,
    /// Greatest clearance.
    pub max_mm: Mm,
    /// A preferred fit of ANSI B4.2, or a class of ASME B4.1.
    pub preferred: bool,
    /// How far it reaches outside what is wanted; 0 inside.
    pub outside_mm: Mm,
    /// How its limits are known.
    pub known: Known,
}

impl CandidateFigures {
    fn of(candidate: &Candidate) -> Self {
        Self {
            class: candidate.classes.to_string(),
            min_mm: Mm(candidate.fit.clearance().lower()),
            max_mm: Mm(candidate.fit.clearance().upper()),
            preferred: candidate.preferred,
            outside_mm: Mm(candidate.outside),
            known: candidate.fit.known(),
        }
    }
}
