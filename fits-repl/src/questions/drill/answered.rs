//! The nearest drills, answered.

use fits_core::{
    Length,
    source::Known,
    standards::drills::{Drill, Series},
};
use schemars::JsonSchema;
use serde::Serialize;

use crate::{
    answer::{Answer, Mm, OwnDrillFigures},
    problem::Problem,
    query::Size,
    session::Session,
};

pub(crate) const SERIES: [Series; 4] =
    [Series::Fraction, Series::Letter, Series::Number, Series::Metric];

/// The coarsest step of the common series; with a twentieth of the size, as far as
/// a drill is called near (common practice, no source).
const SIXTY_FOURTH: Length = Length::from_tenth_nanometres(3_968_750);

impl Session {
    /// The nearest drills under and over a size, one of each series.
    pub(crate) fn drills(&self, asked: &Size) -> Result<Answer, Problem> {
        let size = self.nominal(asked)?;
        let named = |drill: Drill| {
            // Both are sizes of drills or less: the difference is in range.
            let off = drill.diameter().checked_sub(size).unwrap_or(Length::ZERO);
            NamedDrill {
                name: drill.name(),
                mm: Mm(drill.diameter()),
                off_mm: Mm(off),
                source: drill.source(),
                known: drill.known(),
            }
        };
        let is_exact = |drill: &NamedDrill| drill.off_mm.0 == Length::ZERO;
        let sorted = |find: &dyn Fn(Series) -> Option<Drill>| {
            let mut found: Vec<NamedDrill> =
                SERIES.into_iter().filter_map(|series| find(series).map(named)).collect();
            found.retain(|drill| !is_exact(drill));
            found.sort_by_key(|drill| drill.off_mm.0.tenth_nanometres().unsigned_abs());
            // The end of a series that does not reach so far is near nothing.
            let far = size.checked_scale(1, 20).unwrap_or(size).max(SIXTY_FOURTH);
            let mut is_first = true;
            found.retain(|drill| {
                std::mem::take(&mut is_first)
                    || drill.off_mm.0.checked_abs().is_ok_and(|off| off <= far)
            });
            found
        };
        let exact: Vec<NamedDrill> =
            Drill::all().filter(|drill| drill.diameter() == size).map(named).collect();
        // Strictly under and over: the exact ones stand by themselves.
        let step = Length::from_tenth_nanometres(1);
        let below = size.checked_sub(step).unwrap_or(size);
        let above = size.checked_add(step).unwrap_or(size);
        let under = sorted(&|series| Drill::under(below, &[series]));
        let over = sorted(&|series| Drill::over(above, &[series]));
        if exact.is_empty() && (under.is_empty() || over.is_empty()) {
            let (first, last) = (Drill::all().next(), Drill::all().next_back());
            let range = first.zip(last).map_or(String::new(), |(first, last)| {
                format!(
                    "listed drills run from {} to {}, as `drill {}`",
                    first.name(),
                    last.name(),
                    last.name()
                )
            });
            return Err(Problem::new(
                format!("no standard drill is near {size}"),
                asked.at.clone(),
            )
            .advise(range));
        }
        let crib = self.own_drills_about(size);
        Ok(Answer::Drill(DrillAnswer { size_mm: Mm(size), exact, under, over, crib }))
    }
}

/// The nearest standard drills to a size, one of each series.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct DrillAnswer {
    /// The size asked about.
    pub size_mm: Mm,
    /// The drills of that very size.
    pub exact: Vec<NamedDrill>,
    /// The nearest under it in each series, the nearest of all first.
    pub under: Vec<NamedDrill>,
    /// The nearest over it.
    pub over: Vec<NamedDrill>,
    /// The nearest under and over it in the crib, where there is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[serde(rename = "crib_drills")]
    pub crib: Option<Vec<OwnDrillFigures>>,
}

/// A drill and how far its size is off.
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct NamedDrill {
    /// Its name.
    pub name: &'static str,
    /// Its diameter.
    pub mm: Mm,
    /// Its diameter less the size asked about.
    pub off_mm: Mm,
    /// The list its size comes from.
    pub source: &'static str,
    /// How it is known.
    pub known: Known,
}
