//! An untoleranced inch size, answered.

use fits_core::{
    Deviations, Length,
    source::{Known, Reason},
    standards::{iso2768::Class, title_block::Written},
};
use serde::Serialize;

use crate::{
    answer::Mm,
    problem::Problem,
    questions::{block::BlockOf, part::resolve::from_core},
    session::Session,
};

/// What is commonly taken for a size without a tolerance.
#[derive(Clone, Debug, Serialize, schemars::JsonSchema)]
#[non_exhaustive]
pub struct TitleBlockAnswer {
    /// Its size.
    pub nominal_mm: Mm,
    /// `3 decimals`, `a fraction over 8`.
    pub written: String,
    /// What is taken: title blocks first, then ISO 2768-1.
    pub sets: Vec<BlockSet>,
    /// How the least known of it is known.
    pub known: Known,
}

/// One set of tolerances.
#[derive(Clone, Debug, Serialize, schemars::JsonSchema)]
#[non_exhaustive]
pub struct BlockSet {
    /// `machined parts`, `no block`, `ISO 2768-m`.
    pub practice: &'static str,
    /// So much either way.
    pub plus_minus_mm: Mm,
    /// Least good size.
    pub lower_mm: Mm,
    /// Greatest.
    pub upper_mm: Mm,
    /// What else to know.
    #[serde(skip_serializing_if = "str::is_empty")]
    pub note: &'static str,
    /// Where it is written.
    pub source: &'static str,
    /// How it is known.
    pub known: Known,
}

impl Session {
    /// What is commonly taken for an inch size without a tolerance.
    pub(crate) fn title_block(&self, of: &BlockOf) -> Result<TitleBlockAnswer, Problem> {
        let failed = |error: fits_core::Error| from_core(&error, of.size.at.clone());
        let size = match &of.size.value {
            crate::query::Expression::Number(number, None) => {
                number.of(fits_core::size::Unit::Inch).map_err(failed)?
            }
            _ => self.nominal(&of.size)?,
        };
        if !size.is_positive() {
            return Err(Problem::new("a size is above 0", of.size.at.clone())
                .advise("as in `title block 0.750in`"));
        }
        let (written, _) = &of.written.value;
        let mut sets = Vec::new();
        let mut add = |by, plus_minus: Length, note, source, known| -> Result<(), Problem> {
            let limits = plus_minus
                .checked_neg()
                .and_then(|less| Deviations::new(less, plus_minus))
                .and_then(|deviations| deviations.about(size))
                .map_err(failed)?;
            sets.push(BlockSet {
                practice: by,
                plus_minus_mm: Mm(plus_minus),
                lower_mm: Mm(limits.lower()),
                upper_mm: Mm(limits.upper()),
                note,
                source,
                known,
            });
            Ok(())
        };
        for found in written.practices() {
            add(found.trade, found.plus_minus, found.note, found.source, found.known)?;
        }
        if let Some(plus_minus) = written.without_a_block().map_err(failed)? {
            add(
                "no block",
                plus_minus,
                "the old rule: half of the last place or least fraction written",
                "common practice, no source",
                Known::Practice,
            )?;
        }
        for (class, by) in [("f", "ISO 2768-f"), ("m", "ISO 2768-m"), ("c", "ISO 2768-c")] {
            let class: Class = class.parse().map_err(failed)?;
            if let Ok(plus_minus) = class.linear(size) {
                add(by, plus_minus, "", "ISO 2768-1, table 1", Known::Seen)?;
            }
        }
        let known = sets.iter().map(|set| set.known).fold(Known::Given, Known::worst);
        let written = match written {
            Written::Decimals(1) => "1 decimal".to_owned(),
            Written::Decimals(count) => format!("{count} decimals"),
            Written::Fraction(under) => format!("a fraction over {under}"),
        };
        Ok(TitleBlockAnswer { nominal_mm: Mm(size), written, sets, known })
    }
}

impl TitleBlockAnswer {
    /// Where each comes from.
    pub(crate) fn reasons(&self) -> Vec<Reason> {
        let reason = |set: &BlockSet| Reason {
            figure: set.practice.into(),
            value: format!("+/- {}", set.plus_minus_mm.0).into(),
            rule: set.note.into(),
            source: set.source.into(),
            known: set.known,
        };
        self.sets.iter().map(reason).collect()
    }
}
