//! General tolerances of untoleranced sizes, answered.

use fits_core::{
    source::{Known, Reason},
    standards::iso2768::{Class as General, Quantity},
};
use schemars::JsonSchema;
use serde::Serialize;

use crate::{
    answer::{Answer, Mm},
    problem::Problem,
    query::{GeneralKind, Size, Spot},
    questions::part::resolve::from_core,
    session::Session,
};

/// The core's name and ours for what a general tolerance is asked of.
const fn quantity(kind: GeneralKind) -> (Quantity, &'static str) {
    match kind {
        GeneralKind::Linear => (Quantity::Linear, "linear"),
        GeneralKind::BrokenEdge => (Quantity::Edge, "edge"),
        GeneralKind::Angle => (Quantity::Angular, "angle"),
    }
}

impl Session {
    /// The general tolerance of an untoleranced size.
    pub(crate) fn general(
        &self,
        asked: &Size,
        text: &Spot<String>,
        kind: GeneralKind,
    ) -> Result<Answer, Problem> {
        let nominal = self.nominal(asked)?;
        let class: General = text.value.parse().map_err(|error: fits_core::Error| {
            from_core(&error, text.at.clone()).fix(text.at.clone(), "m")
        })?;
        let (quantity, kind) = quantity(kind);
        let refused = |error: fits_core::Error| {
            let problem = from_core(&error, asked.at.clone());
            match class.nearest(quantity, nominal) {
                Some(nearest) => problem.fix(text.at.clone(), nearest.letter()),
                None => problem,
            }
        };
        let reasons = class.reasons(quantity, nominal).map_err(refused)?;
        let [reason, ..] = &*reasons else {
            return Err(Problem::new("the class gives no tolerance there", text.at.clone()));
        };
        let mut answer = GeneralAnswer {
            kind,
            nominal_mm: Mm(nominal),
            class: class.letter(),
            word: class.word(),
            plus_minus_mm: None,
            plus_minus_arcmin: None,
            lower_mm: None,
            upper_mm: None,
            source: reason.source.clone(),
            known: reason.known,
            reasons,
        };
        let either = match quantity {
            Quantity::Angular => {
                answer.plus_minus_arcmin = Some(class.angle(nominal).map_err(refused)?);
                return Ok(Answer::General(answer));
            }
            Quantity::Linear => class.linear(nominal).map_err(refused)?,
            Quantity::Edge => class.edge(nominal).map_err(refused)?,
        };
        answer.plus_minus_mm = Some(Mm(either));
        answer.lower_mm = nominal.checked_sub(either).ok().map(Mm);
        answer.upper_mm = nominal.checked_add(either).ok().map(Mm);
        Ok(Answer::General(answer))
    }
}

/// The general tolerance of a size, an edge or an angle (ISO 2768-1).
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct GeneralAnswer {
    /// `linear`, `edge` or `angle`.
    pub kind: &'static str,
    /// The size; of an angle, its shorter side.
    pub nominal_mm: Mm,
    /// `f`, `m`, `c` or `v`.
    pub class: &'static str,
    /// The class in a word.
    pub word: &'static str,
    /// The deviation either way, of a size or an edge.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub plus_minus_mm: Option<Mm>,
    /// The deviation either way, of an angle, in minutes of arc.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub plus_minus_arcmin: Option<u16>,
    /// Least good size.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lower_mm: Option<Mm>,
    /// Greatest good size.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub upper_mm: Option<Mm>,
    /// Where that is written.
    pub source: String,
    /// How it is known.
    pub known: Known,
    /// Why it is what it is.
    #[serde(skip)]
    pub reasons: Vec<Reason>,
}
