//! A feature or a pair: its limits, tools and passes, and readings of it.

pub(crate) mod answered;
pub(crate) mod asked;
pub(crate) mod bought;
pub(crate) mod circumstance;
pub(crate) mod clauses;
pub(crate) mod figures;
pub(crate) mod help;
pub(crate) mod limits;
pub(crate) mod mates;
pub(crate) mod measured;
pub(crate) mod measured_figures;
pub(crate) mod measured_shown;
pub(crate) mod measuring;
pub(crate) mod plan_shape;
pub(crate) mod plans;
pub(crate) mod reader;
pub(crate) mod readings;
pub(crate) mod readings_shown;
pub(crate) mod reasons;
pub(crate) mod resolve;
pub(crate) mod shown;
pub(crate) mod tool_figures;
pub(crate) mod warm;
pub(crate) mod warm_figures;
pub(crate) mod warm_shown;

use fits_core::shop::Verdict;

use self::{
    asked::Part,
    figures::{FeatureAnswer, FitAnswer, PairReadingAnswer, ReadingAnswer},
    tool_figures::{PassesAnswer, ReamAnswer},
    warm_figures::WarmAnswer,
};
use crate::questions::prelude::*;

pub(crate) use self::help::HELP;

/// Its clauses.
pub(crate) const CLAUSES: &[Clause] = &[
    Clause::new("at", "TEMP", "how warm the part is that was read").inside(),
    Clause::new("bore", "SIZE", "bored, pass by pass"),
    Clause::new("from", "SIZE", "where the work is now").inside(),
    Clause::new("hole", "SIZE, class, reading or material", "the hole"),
    Clause::new("long", "SIZE", "how long the parts are engaged, or the part is").inside(),
    Clause::new("measures", "SIZE", "a reading of the part").inside(),
    Clause::new("mics", "SIZE", "a reading of the part").inside(),
    Clause::new("reads", "SIZE", "a reading of the part").inside(),
    Clause::new("ream", "SIZE", "reamed"),
    Clause::new("room", "TEMP", "where the part is read and cools").inside(),
    Clause::new("shaft", "SIZE, class, reading or material", "the shaft"),
    Clause::new("thin", "tube or wall", "the outer part is thin").inside(),
    Clause::new("turn", "SIZE", "turned, pass by pass"),
    Clause::new("turns", "", "one part turns in the other").inside(),
    Clause::new("warm", "TEMP or A..B", "where the pair works").inside(),
    Clause::new("with", "an instrument", "what it was read with").inside(),
    Clause::new("within", "SIZE", "how near a warm part is to come to its size").inside(),
];

impl Question for Part {
    fn size(&self) -> Option<&Size> {
        Some(&self.size)
    }

    fn answer(&self, session: &Session) -> Result<Answer, Problem> {
        session.part(self)
    }

    fn carry_out(&self, session: &mut Session, line: &str) -> Result<Answer, Problem> {
        let mut answer = self.answer(session)?;
        if let Answer::Passes(plan) = &mut answer {
            session.begin_log(self, plan)?;
        }
        session.remember(line);
        Ok(answer)
    }
}

/// What in features comes from memory alone.
pub(crate) fn unconfirmed_of(features: &[&FeatureAnswer]) -> Option<String> {
    let doubtful = features.iter().filter(|part| part.known.is_unconfirmed());
    let mut names: Vec<&str> = doubtful.map(|part| part.class).collect();
    names.dedup();
    (!names.is_empty()).then(|| format!("the limits of {}", names.join(" and ")))
}

impl Answered for FeatureAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.feature(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        reasons::of_feature(self)
    }

    fn unconfirmed(&self) -> Option<String> {
        unconfirmed_of(&[self])
    }
}

impl Answered for FitAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.fit(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        reasons::of_fit(self)
    }

    fn unconfirmed(&self) -> Option<String> {
        // What suits a part in hand goes by the fit that the word named.
        unconfirmed_of(&[&self.hole, &self.shaft])
            .or_else(|| self.known.is_unconfirmed().then(|| "this fit".to_owned()))
    }

    fn is_out_of_limits(&self) -> bool {
        self.measured.as_ref().is_some_and(|measured| measured.verdict != Verdict::Good)
            || self.held_to.is_some_and(|held| !held.agrees)
    }
}

impl Answered for ReadingAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.reading(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        reasons::of_reading(self)
    }

    fn unconfirmed(&self) -> Option<String> {
        unconfirmed_of(&[&self.feature])
    }

    fn is_out_of_limits(&self) -> bool {
        self.reading.verdict != Verdict::Good
    }
}

impl Answered for PairReadingAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.pair_reading(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        reasons::of_pair_reading(self)
    }

    fn unconfirmed(&self) -> Option<String> {
        unconfirmed_of(&[&self.hole.feature, &self.shaft.feature])
    }

    fn is_out_of_limits(&self) -> bool {
        !self.within || self.hole.is_out_of_limits() || self.shaft.is_out_of_limits()
    }
}

impl Answered for ReamAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.headline(out, &self.hole);
        text.ream(out, Some(&self.ream), None);
        text.pins(out, &self.hole);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        reasons::of_ream(self)
    }

    fn unconfirmed(&self) -> Option<String> {
        unconfirmed_of(&[&self.hole])
    }
}

impl Answered for PassesAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.passes(out, self);
    }

    fn reasons(&self, _: Units) -> Vec<Reason> {
        reasons::of_passes(self)
    }

    fn unconfirmed(&self) -> Option<String> {
        unconfirmed_of(&[&self.feature])
    }
}

impl Answered for WarmAnswer {
    fn show(&self, text: &Text, out: &mut String) {
        text.fit_warm(out, self);
    }

    fn reasons(&self, units: Units) -> Vec<Reason> {
        warm::reasons(units, self)
    }

    fn unconfirmed(&self) -> Option<String> {
        (!self.unconfirmed.is_empty()).then(|| self.unconfirmed.join(", "))
    }
}
