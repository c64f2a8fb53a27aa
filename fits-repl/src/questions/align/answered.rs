//! The tailstock, answered.

use fits_core::shop::align::{Taper, Toward};
use schemars::JsonSchema;
use serde::{Serialize, Serializer};

use crate::{
    answer::{Answer, FeatureAnswer, Mm},
    problem::Problem,
    query::{Align, Collars, Size, Units},
    questions::part::{mates::is_inch, resolve::from_core},
    session::Session,
};

impl Session {
    /// The units that the two collars and their distance are typed in.
    pub(crate) fn align_in(&self, align: &Align) -> Units {
        let (first, second) = align.collars.sizes();
        let typed = [first, second, &align.over].into_iter().find_map(|size| is_inch(&size.value));
        match typed {
            Some(true) => Units::Inches,
            Some(false) => Units::Millimetres,
            None => self.units,
        }
    }

    /// Where to move the tailstock.
    pub(crate) fn align(&self, align: &Align) -> Result<Answer, Problem> {
        let (first, second) = align.collars.sizes();
        let is_bare = |size: &Size| is_inch(&size.value).is_none();
        if let Collars::Two(one, two) = &align.collars
            && self.shown != self.units
            && is_bare(one)
            && is_bare(two)
        {
            // Both at once: one alone would be refused for the other.
            let unit = if self.shown == Units::Inches { "in" } else { "mm" };
            let at = one.at.start..two.at.end;
            return Err(Problem::new("these numbers have no unit, and the distance has one", at)
                .advise(format!(
                    "give theirs, as `align {}`",
                    if unit == "in" {
                        "0.7503in 0.7511in over 6in"
                    } else {
                        "19.98mm 20.01mm over 150mm"
                    }
                )));
        }
        let over = self.length(&align.over)?;
        let at = || first.at.start..align.over.at.end;
        let failed = |error: fits_core::Error| from_core(&error, at());
        let (taper, wanted) = match &align.collars {
            Collars::Two(one, two) => {
                (Taper::between(self.length(one)?, self.length(two)?, over).map_err(failed)?, false)
            }
            Collars::Ratio(spot) => {
                let (change, length) = (self.length(first)?, self.length(second)?);
                let taper = Taper::new(change, length)
                    .map_err(|error| from_core(&error, spot.at.clone()))?;
                if !over.is_positive() {
                    return Err(Problem::new(
                        "the length between centres is more than nothing",
                        align.over.at.clone(),
                    )
                    .advise("as in `align taper 1:50 over 200`"));
                }
                (taper, true)
            }
        };
        let between = match &align.between {
            Some(size) => {
                let between = self.length(size)?;
                if between < over {
                    return Err(Problem::new(
                        "the centres are further apart than what was measured between them",
                        size.at.clone(),
                    )
                    .advise("as in `align 19.98 20.01 over 150 between 400`"));
                }
                between
            }
            None => over,
        };
        let set_over = taper.set_over(between).map_err(failed)?;
        let part = match &align.part {
            Some(part) => Some(self.tapered(part, taper)?),
            None => None,
        };
        Ok(Answer::Align(Box::new(AlignAnswer {
            wanted,
            set_over_mm: Mm(set_over),
            toward: taper.toward(),
            taper_mm: Mm(taper.over(over).map_err(failed)?),
            over_mm: Mm(over),
            between_mm: Mm(between),
            between_told: wanted || align.between.is_some(),
            per_100_mm_mm: Mm(taper.per_100_mm().map_err(failed)?),
            per_foot_mm: Mm(taper.per_foot().map_err(failed)?),
            part,
        })))
    }
}

/// The tailstock.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct AlignAnswer {
    /// Were two collars measured, or is a taper wanted?
    #[serde(rename = "is_wanted")]
    pub wanted: bool,
    /// How far to move the tailstock.
    pub set_over_mm: Mm,
    /// Which way.
    #[serde(serialize_with = "toward")]
    #[schemars(with = "String")]
    pub toward: Toward,
    /// Change of diameter over the length given; more by the tailstock is
    /// positive.
    pub taper_mm: Mm,
    /// Over which length.
    pub over_mm: Mm,
    /// Between centres.
    pub between_mm: Mm,
    /// Was the distance given in the query?
    #[serde(skip)]
    pub between_told: bool,
    /// Change of diameter over 100 mm.
    pub per_100_mm_mm: Mm,
    /// Change of diameter over a foot.
    pub per_foot_mm: Mm,
    /// The part to be turned, where one was named.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[serde(rename = "turned")]
    pub part: Option<TaperedFigures>,
}

/// A part and what a taper does to it.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct TaperedFigures {
    /// The part.
    pub feature: FeatureAnswer,
    /// How long it is.
    pub long_mm: Mm,
    /// Change of diameter over that.
    pub taper_mm: Mm,
    /// What of the tolerance is left; below 0 where the taper is more.
    pub leaves_mm: Mm,
    /// Is anything left?
    pub survives: bool,
}

pub(crate) fn toward<S: Serializer>(toward: &Toward, serializer: S) -> Result<S::Ok, S::Error> {
    serializer.serialize_str(toward.word())
}
