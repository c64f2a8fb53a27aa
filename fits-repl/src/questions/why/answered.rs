//! Where each figure of an answer comes from.

use fits_core::{
    Length, Limits,
    source::Reason,
    speech::{Figure, Speech},
};
use schemars::JsonSchema;
use serde::Serialize;

use crate::{
    answer::Answer,
    problem::Problem,
    query::{Query, Units},
    session::Session,
};

impl Session {
    pub(crate) fn why(&self, query: &Query, of: &str) -> Result<Answer, Problem> {
        let answer = query.question().answer(self)?;
        let mut figures = answer.reasons(self.shown);
        self.why_crib(&mut figures, &answer);
        let figures = figures.into_iter().map(|it| it.said_in(self.shown.unit())).collect();
        Ok(Answer::Why(WhyAnswer { of: of.to_owned(), figures }))
    }
}

/// A size in full, in the units of the answer: exact in millimetres, to a
/// millionth in inches.
pub(crate) fn said(units: Units, length: Length) -> String {
    Figure::from(length).said_in(units.unit())
}

pub(crate) fn said_range(units: Units, limits: Limits) -> String {
    format!("{} to {}", said(units, limits.lower()), said(units, limits.upper()))
}

/// The limits of a figure, said in the reader's units.
pub(crate) fn range(limits: Limits) -> Speech {
    between(limits.lower(), limits.upper())
}

/// Two sizes, said in the reader's units.
pub(crate) fn between(lower: Length, upper: Length) -> Speech {
    Speech::of("{} to {}", [lower, upper])
}

/// Where the figures of an answer come from.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct WhyAnswer {
    /// The query they belong to.
    pub of: String,
    /// One entry a figure.
    pub figures: Vec<Reason>,
}
