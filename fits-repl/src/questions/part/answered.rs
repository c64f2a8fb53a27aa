//! A feature or a pair, its tools and passes, and readings of it.

use std::ops::Range;

use fits_core::{
    Fit, Kind, Length,
    shop::{Hazard, Reading},
    standards::iso286::Feature,
};

use crate::{
    answer::{
        Answer, ChanceFigures, ClearanceFigures, FitAnswer, MeasuredFigures, Mm, PairReadingAnswer,
        Processes, ReadingAnswer, ReadingFigures,
    },
    problem::Problem,
    query::{Part, Size, Spot, Work},
    questions::part::{
        mates::Resolved,
        readings::likely,
        resolve::{One, Pair, from_core},
    },
    session::Session,
};

impl Session {
    pub(crate) fn part(&self, part: &Part) -> Result<Answer, Problem> {
        if let Some(measuring) = &part.measuring {
            Self::measuring_fits(part, measuring)?;
        }
        if let Some(warm) = &part.warm {
            return self.warm(part, warm);
        }
        let resolved = self.resolve(part)?;
        let mut answer = match &resolved {
            Resolved::One(one) => self.feature(part, one),
            Resolved::Pair(pair) => self.pair(part, pair),
            Resolved::Suit { pair, in_hand, mate } => self.suited(part, pair, in_hand, mate),
        }?;
        let first = match &mut answer {
            Answer::Feature(it) => &mut **it,
            Answer::Reading(it) => &mut it.feature,
            Answer::Fit(it) => &mut it.hole,
            Answer::PairReading(it) => &mut it.hole.feature,
            Answer::Ream(it) => &mut it.hole,
            Answer::Passes(it) => &mut it.feature,
            _ => return Ok(answer),
        };
        first.rests_on = Some(Box::new(resolved));
        Ok(answer)
    }

    fn feature(&self, part: &Part, feature: &One) -> Result<Answer, Problem> {
        if let Some(work) = &part.work {
            return self.work(part, work, feature);
        }
        if let Some(from) = &part.from {
            let value = match feature.kind {
                Some(Feature::Hole) => Work::Bore,
                Some(Feature::Shaft) => Work::Turn,
                None => return Err(unsaid_kind(part, "`from` plans passes, and")),
            };
            return self.work(part, &Spot { value, at: from.at.clone() }, feature);
        }
        if let Some(size) = &part.reading {
            if part.bought.is_some() {
                return Err(not_cut(size));
            }
            return self.reading(part, size, feature);
        }
        let mut answer = self.featured(feature);
        if part.bought.is_some() {
            // Bought, not made: no tools and no passes.
            answer.processes = Processes::default();
            answer.processes_known = None;
            answer.grade = None;
            let (mic_yours, notes) = self.what_to_know(part);
            answer.mic_yours = Some(mic_yours);
            answer.notes = notes;
            return Ok(Answer::Feature(Box::new(answer)));
        }
        match feature.kind {
            Some(Feature::Hole) => {
                (answer.ream, answer.not_reamed) = self.reamed(feature.limits);
                answer.bore = self.planned(part, Feature::Hole, feature.limits);
            }
            Some(Feature::Shaft) => {
                answer.turn = self.planned(part, Feature::Shaft, feature.limits);
            }
            None => {}
        }
        Ok(Answer::Feature(Box::new(answer)))
    }

    fn reading(&self, part: &Part, size: &Size, feature: &One) -> Result<Answer, Problem> {
        if part.measuring.as_ref().is_some_and(|it| it.is_of_readings())
            || part.second_reading.is_some()
            || self.has_usual_gauge(feature)
        {
            if feature.kind.is_none() {
                return Err(unsaid_kind(part, "the readings are judged, and"));
            }
            let places = places(part, part.reading.as_ref(), part.second_reading.as_ref());
            return self
                .judged_places(part, feature, &places)
                .map(|answer| Answer::Reading(Box::new(answer)));
        }
        let read = self.nominal(size)?;
        likely(feature, read, size)?;
        if feature.kind.is_none() && !feature.limits.contains(read) {
            return Err(unsaid_kind(part, "the reading is outside the limits, and"));
        }
        judged(feature, read, &size.at).map(|answer| Answer::Reading(Box::new(answer)))
    }

    fn pair(&self, part: &Part, pair: &Pair) -> Result<Answer, Problem> {
        if let Some(work) = &part.work {
            // `ream 20 H7/g6` asks for the hole, `turn 20 H7/g6` for the shaft.
            let wants = if work.value == Work::Turn { Feature::Shaft } else { Feature::Hole };
            return self.work(part, work, &pair.part(wants));
        }
        one_start(part)?;
        let (hole, shaft) = match (&part.reading, &part.second_reading) {
            // One part measured is resolved before.
            (None, _) => (part.hole.as_ref(), part.shaft.as_ref()),
            (Some(hole), Some(shaft)) if part.hole.is_none() && part.shaft.is_none() => {
                (Some(hole), Some(shaft))
            }
            (Some(size), None) if part.hole.is_none() && part.shaft.is_none() => {
                return Err(Problem::new("one reading for two parts: which was measured?", size.at.clone())
                    .advise("name it, as `20 H7/g6, hole = 20.013`, or give both, as `20 H7/g6 = 20.013/19.985`"));
            }
            (Some(size), _) => {
                return Err(Problem::new("a part is read twice", size.at.clone())
                    .advise("keep one reading for each part"));
            }
        };
        match (hole, shaft) {
            (Some(hole), Some(shaft)) => self.measured_pair(part, pair, hole, shaft),
            _ => Ok(Answer::Fit(Box::new(self.fit(part, pair)))),
        }
    }

    fn fit(&self, part: &Part, pair: &Pair) -> FitAnswer {
        let fit = &pair.fit;
        let kind = fit.kind();
        // A hole that is there already wants no tools.
        let hole = pair.hole.limits;
        let ((ream, not_reamed), bore) = if pair.hole.have {
            ((None, None), None)
        } else {
            (self.reamed(hole), self.planned(part, Feature::Hole, hole))
        };
        let mut cautions = Vec::new();
        // What is shrunk together is not pressed.
        if pair.chosen.is_some_and(|chosen| chosen.choice.word.name() == "shrink") {
            cautions.extend([Hazard::Heating, Hazard::People].map(Hazard::caution));
        } else if kind == Kind::Interference || fit.clearance_aim().is_negative() {
            cautions.extend([Hazard::Pressing, Hazard::People].map(Hazard::caution));
        }
        let in_hand = [pair.hole, pair.shaft].into_iter().find(|part| part.have);
        FitAnswer {
            nominal_mm: Mm(fit.nominal()),
            kind,
            basis: fit.basis(),
            hole: self.featured(&pair.hole),
            shaft: pair.shaft.answer(),
            clearance: clearance(fit),
            known: fit.known(),
            chance_of_clearance: (kind == Kind::Transition).then(|| {
                let chance = fit.chance_of_clearance();
                ChanceFigures { spread_evenly: chance.even, centred: chance.normal }
            }),
            measured: None,
            in_hand: in_hand.and_then(|part| part.kind),
            choice: pair.chosen.as_ref().map(|chosen| Box::new(Self::choice_figures(chosen))),
            held_to: pair.held_to,
            fit_words: self.words_of(pair),
            fit_classes: Self::classes_of(pair),
            notes: Self::no_effect(part, pair.chosen.as_ref()),
            ream,
            not_reamed,
            bore,
            cautions,
        }
    }

    /// One part is measured or in hand: the other one's limits follow it, from
    /// the fit's own clearance range.
    fn suited(
        &self,
        part: &Part,
        pair: &Pair,
        in_hand: &One,
        mate: &One,
    ) -> Result<Answer, Problem> {
        if let Some(work) = &part.work {
            return self.work(part, work, mate);
        }
        one_start(part)?;
        let have = mate_of(mate);
        if let Some(second) = &part.second_reading {
            return Err(Problem::new(
                "one part is in hand: its mate has one reading",
                second.at.clone(),
            )
            .advise("give the mate's alone, as `shaft 0.749in, slip = 0.7496in`"));
        }
        if let Some(size) = part.reading.as_ref().or(measured(part, have.mate())) {
            if part.bought.is_some() && part.reading.is_some() {
                return Err(not_cut(size));
            }
            return self.reading(part, size, mate);
        }
        // The pair as it stands: one part there, the other one to suit.
        let reading = measured(part, have);
        let there = if reading.is_some() { pair.part(have) } else { *in_hand };
        let there = One { have: true, ..there };
        let (hole, shaft) = match have {
            Feature::Hole => (there, *mate),
            Feature::Shaft => (*mate, there),
        };
        let mut answer = self.fit(part, &Pair { hole, shaft, ..*pair });
        if let Some(size) = reading {
            // Its own limits still stand beside what it measures.
            let read = in_hand.limits.lower();
            let judged = Reading::judge(have, there.limits, read)
                .map_err(|error| from_core(&error, size.at.clone()))?;
            answer.in_hand = None;
            answer.measured =
                Some(MeasuredFigures { part: have, size_mm: Mm(read), verdict: judged.verdict });
        } else {
            let own = match have {
                Feature::Hole => &mut answer.hole,
                Feature::Shaft => &mut answer.shaft,
            };
            own.processes = Processes::default();
            own.processes_known = None;
            answer.notes.extend(self.spread_of(part, pair, in_hand)?);
            answer.notes.extend(self.what_to_know(part).1);
        }
        Ok(Answer::Fit(Box::new(answer)))
    }

    fn measured_pair(
        &self,
        part: &Part,
        pair: &Pair,
        hole: &Size,
        shaft: &Size,
    ) -> Result<Answer, Problem> {
        let (hole_answer, shaft_answer, hole_size, shaft_size);
        if part.measuring.as_ref().is_some_and(|it| it.is_of_readings())
            || [&pair.hole, &pair.shaft].into_iter().any(|one| self.has_usual_gauge(one))
        {
            let both = places(part, Some(hole), Some(shaft));
            if let Some(third) = both.get(2).and_then(|place| place.first()) {
                return Err(Problem::new("a pair has two parts, and three were read", third.at.clone())
                    .advise("the hole's readings, a slash, the shaft's, as `20 H7/g6 = 20.013 20.014/19.985`"));
            }
            let of = |one: &One, at: usize| {
                self.judged_places(part, one, both.get(at..=at).unwrap_or_default())
            };
            (hole_answer, shaft_answer) = (of(&pair.hole, 0)?, of(&pair.shaft, 1)?);
            (hole_size, shaft_size) = (hole_answer.reading.at_20(), shaft_answer.reading.at_20());
        } else {
            (hole_size, shaft_size) = (self.nominal(hole)?, self.nominal(shaft)?);
            likely(&pair.hole, hole_size, hole)?;
            likely(&pair.shaft, shaft_size, shaft)?;
            hole_answer = judged(&pair.hole, hole_size, &hole.at)?;
            shaft_answer = judged(&pair.shaft, shaft_size, &shaft.at)?;
        }
        let actual = hole_size
            .checked_sub(shaft_size)
            .map_err(|error| from_core(&error, hole.at.clone()))?;
        Ok(Answer::PairReading(Box::new(PairReadingAnswer {
            nominal_mm: Mm(pair.fit.nominal()),
            hole: hole_answer,
            shaft: shaft_answer,
            clearance: clearance(&pair.fit),
            actual_clearance_mm: Mm(actual),
            within: pair.fit.clearance().contains(actual),
            cautions: if actual.is_negative() {
                [Hazard::Pressing, Hazard::People].map(Hazard::caution).to_vec()
            } else {
                Vec::new()
            },
        })))
    }
}

/// A size read on a feature, judged. A feature that may be either is judged as
/// a hole: only a reading inside its limits comes here.
fn judged(one: &One, size: Length, at: &Range<usize>) -> Result<ReadingAnswer, Problem> {
    let kind = one.kind.unwrap_or(Feature::Hole);
    let reading =
        Reading::judge(kind, one.limits, size).map_err(|error| from_core(&error, at.clone()))?;
    Ok(ReadingAnswer { feature: one.answer(), reading: ReadingFigures::new(size, reading) })
}

/// Every place with its readings: the list, or the one or two given plainly.
fn places<'a>(
    part: &'a Part,
    first: Option<&'a Size>,
    second: Option<&'a Size>,
) -> Vec<Vec<&'a Size>> {
    match part.measuring.as_deref() {
        Some(measuring) if !measuring.places.is_empty() => {
            measuring.places.iter().map(|place| place.iter().collect()).collect()
        }
        _ => [first, second].into_iter().flatten().map(|size| vec![size]).collect(),
    }
}

/// `from` says where one part is, and a pair has two.
fn one_start(part: &Part) -> Result<(), Problem> {
    let Some(from) = &part.from else { return Ok(()) };
    Err(Problem::new("a pair has two starts, and `from` names one", from.at.clone())
        .advise("plan one part, as `bore 20 H7 from 19.6`"))
}

/// The reading that one part of a pair was given alone.
pub(crate) fn measured(part: &Part, feature: Feature) -> Option<&Size> {
    match feature {
        Feature::Hole => part.hole.as_ref(),
        Feature::Shaft => part.shaft.as_ref(),
    }
}

fn not_cut(size: &Size) -> Problem {
    Problem::new("a bought-in part is not cut to size", size.at.clone())
        .advise("put what it measures in its place, as `shaft 0.2502in, press`")
}

/// The feature that a resolved mate goes with; a mate always knows its kind.
fn mate_of(mate: &One) -> Feature {
    mate.kind.unwrap_or(Feature::Hole).mate()
}

fn unsaid_kind(part: &Part, because: &str) -> Problem {
    let at = part.size.at.clone();
    Problem::new(format!("{because} it was not said whether this is a hole or a shaft"), at.clone())
        .advise("say which")
        .fix(at.start..at.start, "hole ")
}

fn clearance(fit: &Fit) -> ClearanceFigures {
    ClearanceFigures {
        min_mm: Mm(fit.clearance().lower()),
        max_mm: Mm(fit.clearance().upper()),
        aim_mm: Mm(fit.clearance_aim()),
    }
}
