//! Readings of a bore, answered.

use fits_core::{
    shop::rescue::{CleanUp, Left, RepairSleeve as Sleeve},
    source::Known,
    standards::iso286::Feature,
};
use serde::Serialize;

use crate::{
    answer::Mm,
    problem::Problem,
    questions::{clean_up::asked::EXAMPLE, part::resolve::from_core, rescue::NamedLimits},
    session::Session,
    words::said::{Said, Value},
};

/// What a worn bore needs.
#[derive(Clone, Debug, Serialize, schemars::JsonSchema)]
pub struct CleanUpAnswer {
    /// The readings.
    pub readings_mm: Vec<Mm>,
    /// The least and the greatest.
    pub reading_min_mm: Mm,
    /// The greatest.
    pub reading_max_mm: Mm,
    /// Greatest less least: taper, wear or egg.
    pub spread_mm: Mm,
    /// The least bore about the bore's own middle.
    pub cleans_up_mm: Mm,
    /// The least bore about the old middle, worn to one side.
    pub cleans_up_on_old_middle_mm: Mm,
    /// The next size about its own middle.
    pub next_mm: Mm,
    /// And about the old middle.
    pub next_on_old_middle_mm: Mm,
    /// A bush that brings it back to what it should be.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bush: Option<BushFigures>,
    /// Why there is none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub no_bush: Option<String>,
    /// The same in inches.
    #[serde(skip)]
    pub no_bush_in: Option<String>,
}

/// A repair bush.
#[derive(Clone, Debug, Serialize, schemars::JsonSchema)]
pub struct BushFigures {
    /// Its joint: bore to, bush outside.
    pub limits: Vec<NamedLimits>,
    /// Its wall when all is cut.
    pub wall_mm: Mm,
    /// The least.
    pub wall_min_mm: Mm,
    /// What is left about it, where the outside was given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub left_wall_mm: Option<Mm>,
    /// How its wall is known.
    pub known: Known,
}

impl Session {
    /// What a worn bore needs.
    pub(crate) fn clean_up(&self, said: &Said) -> Result<CleanUpAnswer, Problem> {
        let unit = self.shown.unit();
        if let Some(word) = said.words.first() {
            let message = format!("`{}` does not go with readings of a bore", word.value);
            return Err(Problem::new(message, word.at.clone()).advise(EXAMPLE));
        }
        let mut readings = Vec::new();
        for size in &said.sizes {
            readings.push(self.nominal(size)?);
        }
        let size = |name: &str| said.size(name).map(|size| self.nominal(size)).transpose();
        let place = |name: &str| {
            let first = || said.sizes.first().map_or(0..said.end, |size| size.at.clone());
            said.all(name).next().map_or_else(first, |clause| match &clause.value {
                Value::Size(size, _) => size.at.clone(),
                _ => clause.at.clone(),
            })
        };
        let (before, out) = (size("was")?, size("out of line")?);
        let bore = CleanUp::of(&readings, before, out)
            .map_err(|error| from_core(&error, place("was")).advise(EXAMPLE))?;
        let failed = |error: fits_core::Error| from_core(&error, place(""));
        let material = said.name("bush").map(|name| self.material_named(name)).transpose()?;
        let mut bush = None;
        let mut refused = None;
        if let Some(wanted) = size("should be")? {
            let cleaned = bore.on_its_middle;
            match Sleeve::plan(
                Feature::Hole,
                wanted,
                cleaned,
                material.as_deref(),
                size("wall")?,
                size("od")?,
                unit,
            ) {
                Ok(sleeve) => {
                    bush = Some(BushFigures {
                        limits: vec![
                            NamedLimits::of("bore to", sleeve.fit.hole()),
                            NamedLimits::of("bush outside", sleeve.fit.shaft()),
                        ],
                        wall_mm: Mm(sleeve.wall),
                        wall_min_mm: Mm(sleeve.wall_least),
                        left_wall_mm: match sleeve.left {
                            Left::Wall(left) => Some(Mm(left)),
                            _ => None,
                        },
                        known: sleeve.known.worst(sleeve.fit.known()),
                    });
                }
                Err(error) => refused = Some(error),
            }
        } else if let Some(lost) = ["od", "wall", "bush"].into_iter().find(|name| said.has(name)) {
            return Err(Problem::new(
                format!("`{lost}` goes with a bush: what the bore should be is not said"),
                place(lost),
            )
            .advise(EXAMPLE));
        }
        Ok(CleanUpAnswer {
            readings_mm: readings.iter().copied().map(Mm).collect(),
            reading_min_mm: Mm(bore.least),
            reading_max_mm: Mm(bore.greatest),
            spread_mm: Mm(bore.greatest.checked_sub(bore.least).map_err(failed)?),
            cleans_up_mm: Mm(bore.on_its_middle),
            cleans_up_on_old_middle_mm: Mm(bore.on_the_old_middle),
            next_mm: Mm(bore.next(unit).map_err(failed)?),
            next_on_old_middle_mm: Mm(bore.next_on_old(unit).map_err(failed)?),
            bush,
            no_bush: refused.as_ref().map(ToString::to_string),
            no_bush_in: refused.map(|error| error.said_in(fits_core::size::Unit::Inch)),
        })
    }
}
