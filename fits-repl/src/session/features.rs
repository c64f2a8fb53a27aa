//! A feature or a pair, its tools and passes, and readings of it.

use std::ops::Range;

use fits_core::{
    Deviations, Fit, Kind, Length, Limits,
    shop::{Hazard, Reading, Start},
    standards::iso286::Feature,
};

use super::{
    Session,
    resolve::{Given, One, Pair, class, from_core, pair, undefined},
};
use crate::{
    answer::{
        Answer, ChanceFigures, ClearanceFigures, FitAnswer, MeasuredFigures, Mm, PairReadingAnswer,
        ReadingAnswer, ReadingFigures,
    },
    problem::Problem,
    query::{Part, Size, Spot, Tolerance, Work},
};

impl Session {
    pub(super) fn part(&self, part: &Part) -> Result<Answer, Problem> {
        let nominal = self.nominal(&part.size)?;
        if let Tolerance::Pair(hole, shaft) = &part.tolerance {
            let pair = pair(nominal, &part.size, hole, shaft)?;
            return self.pair(part, &pair);
        }
        let feature = self.one(part, nominal)?;
        for (slot, word) in [(&part.hole, "hole"), (&part.shaft, "shaft")] {
            if let Some(size) = slot {
                return Err(Problem::new(
                    format!("`{word} =` belongs to a pair, and one feature was given"),
                    size.at.clone(),
                )
                .advise("as in `20 H7 = 20.013` or `20 H7/g6, hole = 20.013`"));
            }
        }
        if let Some(second) = &part.second_reading {
            return Err(Problem::new(
                "a second reading needs a pair, and one feature was given",
                second.at.clone(),
            )
            .advise("as in `20 H7 = 20.013` or `20 H7/g6 = 20.013/19.985`"));
        }
        if let Some(work) = &part.work {
            return self.work(part, work, &feature);
        }
        if let Some(from) = &part.from {
            return match feature.kind {
                Some(Feature::Hole) => self.work(
                    part,
                    &Spot {
                        value: Work::Bore,
                        at: from.at.clone(),
                    },
                    &feature,
                ),
                Some(Feature::Shaft) => self.work(
                    part,
                    &Spot {
                        value: Work::Turn,
                        at: from.at.clone(),
                    },
                    &feature,
                ),
                None => Err(unsaid_kind(part, "`from` plans passes, and")),
            };
        }
        if let Some(size) = &part.reading {
            return self.reading(part, size, &feature);
        }
        let mut answer = feature.answer();
        match feature.kind {
            Some(Feature::Hole) => {
                (answer.ream, answer.not_reamed) = self.reamed(feature.limits);
                answer.bore = self.passes(Feature::Hole, feature.limits, Start::Open).ok();
                if answer.bore.is_some() {
                    answer.cautions.push(Hazard::OverhungBoring.caution());
                }
            }
            Some(Feature::Shaft) => {
                answer.turn = self
                    .passes(Feature::Shaft, feature.limits, Start::Open)
                    .ok();
                answer.cautions.push(Hazard::Turning.caution());
            }
            None => {}
        }
        Ok(Answer::Feature(Box::new(answer)))
    }

    /// The one feature that a query gives, by class, deviations or limits.
    pub(super) fn one(&self, part: &Part, nominal: Length) -> Result<One, Problem> {
        let said = part.feature.as_ref().map(|spot| spot.value).or(
            match part.work.as_ref().map(|spot| spot.value) {
                Some(Work::Ream | Work::Bore) => Some(Feature::Hole),
                Some(Work::Turn) => Some(Feature::Shaft),
                None => None,
            },
        );
        let whole = part.size.at.clone();
        match &part.tolerance {
            Tolerance::Class(text) => {
                let class = class(text)?;
                if let Some(said) = part
                    .feature
                    .as_ref()
                    .filter(|said| said.value != class.feature)
                {
                    return Err(Problem::new(
                        format!(
                            "{class} is a {}'s class, and {} was said",
                            class.feature, said.value
                        ),
                        text.at(),
                    )
                    .advise(match said.value {
                        Feature::Hole => "the hole takes the capital",
                        Feature::Shaft => "the shaft takes the small letter",
                    })
                    .fix(text.at(), class.mirrored().to_string()));
                }
                let limits = class
                    .limits(nominal)
                    .map_err(|error| undefined(&error, &part.size, text))?;
                Ok(One {
                    kind: Some(class.feature),
                    nominal,
                    limits,
                    class: Some(class),
                    how: Given::Class,
                })
            }
            Tolerance::Deviations(first, second) => {
                let (a, b) = (self.length(first)?, self.length(second)?);
                // Both orders are written in shops: `+0.02/-0.01`, `-0.01/+0.02`.
                let deviations = Deviations::new(a.min(b), a.max(b))
                    .map_err(|error| from_core(&error, first.at.clone()))?;
                let limits = deviations
                    .about(nominal)
                    .map_err(|error| from_core(&error, whole))?;
                Self::positive(limits, part)?;
                Ok(One {
                    kind: said,
                    nominal,
                    limits,
                    class: None,
                    how: Given::Deviations,
                })
            }
            Tolerance::Either(size) => {
                let by = self.length(size)?;
                if by.is_negative() {
                    return Err(Problem::new(
                        "a tolerance either way has no sign of its own",
                        size.at.clone(),
                    )
                    .advise("as in `hole 20 ±0.02`"));
                }
                let limits = by
                    .checked_neg()
                    .and_then(|lower| Deviations::new(lower, by))
                    .and_then(|deviations| deviations.about(nominal));
                let limits = limits.map_err(|error| from_core(&error, size.at.clone()))?;
                Self::positive(limits, part)?;
                Ok(One {
                    kind: said,
                    nominal,
                    limits,
                    class: None,
                    how: Given::Deviations,
                })
            }
            Tolerance::UpTo(upper) => {
                let upper_size = self.length(upper)?;
                let limits = Limits::new(nominal, upper_size).map_err(|error| {
                    from_core(&error, part.size.at.start..upper.at.end)
                        .advise("the smaller limit comes first, as in `hole 20.00..20.02`")
                })?;
                Self::positive(limits, part)?;
                Ok(One {
                    kind: said,
                    nominal: limits.middle(),
                    limits,
                    class: None,
                    how: Given::Limits,
                })
            }
            // A pair is answered by its own branch.
            Tolerance::Pair(hole, _) => Err(Problem::new("one feature was expected", hole.at())),
        }
    }

    fn positive(limits: Limits, part: &Part) -> Result<(), Problem> {
        if limits.lower().is_positive() {
            return Ok(());
        }
        Err(Problem::new(
            format!(
                "the lower limit is {}: nothing is left of the part",
                limits.lower()
            ),
            part.size.at.clone(),
        )
        .advise("as in `hole 20 +0.02/-0.01`"))
    }

    fn reading(&self, part: &Part, size: &Size, feature: &One) -> Result<Answer, Problem> {
        let read = self.nominal(size)?;
        let Some(kind) = feature
            .kind
            .or(feature.limits.contains(read).then_some(Feature::Hole))
        else {
            return Err(unsaid_kind(part, "the reading is outside the limits, and"));
        };
        let judged = Reading::judge(kind, feature.limits, read)
            .map_err(|error| from_core(&error, size.at.clone()))?;
        Ok(Answer::Reading(Box::new(ReadingAnswer {
            feature: feature.answer(),
            reading: ReadingFigures::new(read, judged),
        })))
    }

    fn pair(&self, part: &Part, pair: &Pair) -> Result<Answer, Problem> {
        if let Some(feature) = &part.feature {
            return Err(Problem::new(
                format!("`{}` stands before a pair of classes", feature.value),
                feature.at.clone(),
            )
            .advise("leave it out")
            .fix(feature.at.clone(), ""));
        }
        if let Some(work) = &part.work {
            // `ream 20 H7/g6` asks for the hole, `turn 20 H7/g6` for the shaft.
            let one = if work.value == Work::Turn {
                pair.shaft()
            } else {
                pair.hole()
            };
            return self.work(part, work, &one);
        }
        if let Some(from) = &part.from {
            return Err(Problem::new(
                "a pair has two starts, and `from` names one",
                from.at.clone(),
            )
            .advise("plan one part, as `bore 20 H7 from 19.6`"));
        }
        let (hole, shaft) = match (&part.reading, &part.second_reading) {
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
            (Some(hole), Some(shaft)) => self.measured_pair(pair, hole, shaft),
            (Some(size), None) => self.suited(pair, Feature::Hole, size),
            (None, Some(size)) => self.suited(pair, Feature::Shaft, size),
            (None, None) => Ok(Answer::Fit(Box::new(self.fit(pair)))),
        }
    }

    fn fit(&self, pair: &Pair) -> FitAnswer {
        let fit = &pair.fit;
        let kind = fit.kind();
        let bore = self.passes(Feature::Hole, fit.hole(), Start::Open).ok();
        let mut cautions = Vec::new();
        if kind == Kind::Interference {
            cautions.push(Hazard::Pressing.caution());
        }
        if bore.is_some() {
            cautions.push(Hazard::OverhungBoring.caution());
        }
        let (ream, not_reamed) = self.reamed(fit.hole());
        FitAnswer {
            nominal_mm: Mm(fit.nominal()),
            kind,
            basis: fit.basis(),
            hole: pair.hole().answer(),
            shaft: pair.shaft().answer(),
            clearance: clearance(fit),
            chance_of_clearance: (kind == Kind::Transition).then(|| {
                let chance = fit.chance_of_clearance();
                ChanceFigures {
                    even: chance.even,
                    normal: chance.normal,
                }
            }),
            measured: None,
            ream,
            not_reamed,
            bore,
            cautions,
        }
    }

    /// One part is measured: the other one's limits follow it, from the fit's
    /// own clearance range.
    fn suited(&self, pair: &Pair, measured: Feature, size: &Size) -> Result<Answer, Problem> {
        let read = self.nominal(size)?;
        let failed = |error: fits_core::Error| from_core(&error, size.at.clone());
        let judged = Reading::judge(measured, pair.fit.part(measured), read).map_err(failed)?;
        let limits = pair.fit.suit(measured, read).map_err(failed)?;
        if !limits.lower().is_positive() {
            return Err(Problem::new(
                format!("a {measured} of {read} leaves no {}", measured.mate()),
                size.at.clone(),
            )
            .advise("read it again, as `20 H7/g6, hole = 20.013`"));
        }
        let mut answer = self.fit(pair);
        let mate = One {
            kind: Some(measured.mate()),
            nominal: pair.fit.nominal(),
            limits,
            class: None,
            how: Given::Suited,
        };
        match measured {
            Feature::Hole => {
                answer.shaft = mate.answer();
                (answer.ream, answer.not_reamed, answer.bore) = (None, None, None);
            }
            Feature::Shaft => {
                answer.hole = mate.answer();
                (answer.ream, answer.not_reamed) = self.reamed(limits);
                answer.bore = self.passes(Feature::Hole, limits, Start::Open).ok();
            }
        }
        answer.cautions.retain(|caution| {
            measured == Feature::Shaft || *caution != Hazard::OverhungBoring.caution()
        });
        answer.measured = Some(MeasuredFigures {
            part: measured,
            size_mm: Mm(read),
            verdict: judged.verdict,
        });
        Ok(Answer::Fit(Box::new(answer)))
    }

    fn measured_pair(&self, pair: &Pair, hole: &Size, shaft: &Size) -> Result<Answer, Problem> {
        let (hole_size, shaft_size) = (self.nominal(hole)?, self.nominal(shaft)?);
        let read = |one: One, size: Length, at: &Range<usize>| {
            let kind = one.kind.unwrap_or(Feature::Hole);
            let judged = Reading::judge(kind, one.limits, size)
                .map_err(|error| from_core(&error, at.clone()))?;
            Ok::<_, Problem>(ReadingAnswer {
                feature: one.answer(),
                reading: ReadingFigures::new(size, judged),
            })
        };
        let actual = hole_size
            .checked_sub(shaft_size)
            .map_err(|error| from_core(&error, hole.at.clone()))?;
        Ok(Answer::PairReading(Box::new(PairReadingAnswer {
            nominal_mm: Mm(pair.fit.nominal()),
            hole: read(pair.hole(), hole_size, &hole.at)?,
            shaft: read(pair.shaft(), shaft_size, &shaft.at)?,
            clearance: clearance(&pair.fit),
            actual_clearance_mm: Mm(actual),
            within: pair.fit.clearance().contains(actual),
            cautions: if actual.is_negative() {
                vec![Hazard::Pressing.caution()]
            } else {
                Vec::new()
            },
        })))
    }
}

fn unsaid_kind(part: &Part, because: &str) -> Problem {
    let at = part.size.at.clone();
    Problem::new(
        format!("{because} it was not said whether this is a hole or a shaft"),
        at.clone(),
    )
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
