//! What a reamer cut, answered.

use fits_core::{
    Length, Limits,
    shop::{Cuts, Remedy, reamer_cut},
    source::Known,
    standards::bought::Family,
};
use serde::Serialize;

use crate::{
    answer::{Ends, Mm},
    problem::Problem,
    query::Size,
    questions::{part::resolve::from_core, reamer::ReamerCutOf},
    session::Session,
};

/// A reamed hole, judged.
#[derive(Clone, Debug, Serialize, schemars::JsonSchema)]
#[non_exhaustive]
pub struct ReamerCutAnswer {
    /// The reamer's nominal size.
    pub nominal_mm: Mm,
    /// What the hole measures.
    pub hole_mm: Mm,
    /// How much that is above the nominal size; below 0 it is under.
    pub over_mm: Mm,
    /// `under`, `usual` (in H7), `over` (in H9) or `wild`.
    pub cuts: Cuts,
    /// The finest hole class that it is in; absent below the nominal size.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub class: Option<String>,
    /// What a new reamer of this size measures.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub new_reamer: Option<Ends>,
    /// How much the hole is above what the reamer measures.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub above_reamer_mm: Option<Mm>,
    /// What the pins for it have: the one in hand, or a shaft of the nominal size
    /// and a dowel.
    pub pin_fits: Vec<PinPlay>,
    /// What to do, most usual first (common practice).
    pub remedies: Vec<Remedy>,
    /// A query that remembers it.
    pub remember: String,
    /// How the least known figure is known.
    pub known: Known,
}

/// A pin in the hole.
#[derive(Clone, Debug, Serialize, schemars::JsonSchema)]
#[non_exhaustive]
pub struct PinPlay {
    /// Which.
    pub pin_name: String,
    /// Its limits.
    pub pin_limits: Ends,
    /// The clearance it has; interference is below 0.
    pub clearance: Ends,
}

impl Session {
    /// What a reamer cut, and what to do about it.
    pub(crate) fn reamer_cut(&self, of: &ReamerCutOf) -> Result<ReamerCutAnswer, Problem> {
        let (nominal, hole) = (self.nominal(&of.size)?, self.nominal(&of.hole)?);
        let measures = of.measures.as_ref().map(|size| self.near(size, nominal)).transpose()?;
        let found = reamer_cut(nominal, hole, measures).map_err(|error| {
            let at = if error.is_out_of_table() { &of.size.at } else { &of.hole.at };
            from_core(&error, at.clone())
                .advise("both have their unit, as `reamer 1/4in cut 0.2508in`")
        })?;
        let failed = |error: fits_core::Error| from_core(&error, of.hole.at.clone());
        let play = |pin_name: String, size: Limits| -> Result<PinPlay, Problem> {
            let clearance = Limits::new(
                hole.checked_sub(size.upper()).map_err(failed)?,
                hole.checked_sub(size.lower()).map_err(failed)?,
            )
            .map_err(failed)?;
            Ok(PinPlay { pin_name, pin_limits: size.into(), clearance: clearance.into() })
        };
        let one = |size: Length| Limits::new(size, size).map_err(failed);
        let mut pin_fits = Vec::new();
        if let Some(size) = &of.pin {
            pin_fits.push(play("pin in hand".to_owned(), one(self.near(size, nominal)?)?)?);
        } else {
            pin_fits.push(play("shaft of nominal size".to_owned(), one(nominal)?)?);
            for family in ["inch dowel pin", "m6 dowel pin"] {
                let family = Family::named(family).map_err(failed)?;
                if family.sizes().any(|size| size == nominal)
                    && let Ok(dowel) = family.part(nominal)
                {
                    pin_fits.push(play(family.name().to_owned(), dowel.limits)?);
                }
            }
        }
        let said =
            |size: Length| crate::questions::why::answered::said(self.shown, size).replace(' ', "");
        Ok(ReamerCutAnswer {
            nominal_mm: Mm(nominal),
            hole_mm: Mm(hole),
            over_mm: Mm(found.over),
            cuts: found.cuts,
            class: found.class.map(|class| class.to_string()),
            new_reamer: found.new.map(|(limits, ..)| limits.into()),
            above_reamer_mm: found.above_reamer.map(Mm),
            pin_fits,
            remedies: found.remedies,
            remember: format!("crib add reamer {} cuts {}", said(nominal), said(hole)),
            known: found.new.map_or(Known::Formula, |(_, known, _)| known),
        })
    }

    /// A size beside the reamer's own: one far off it is a slip of the unit.
    fn near(&self, size: &Size, nominal: Length) -> Result<Length, Problem> {
        let read = self.nominal(size)?;
        let off = read.checked_sub(nominal).and_then(Length::checked_abs);
        if off.and_then(|off| off.checked_mul(30)).is_ok_and(|off| off <= nominal) {
            return Ok(read);
        }
        Err(Problem::new(format!("{read} is far off a reamer of {nominal}"), size.at.clone())
            .advise("with its unit, as in `reamer 1/4in cut 0.2508in, pin 0.2502in`"))
    }
}
