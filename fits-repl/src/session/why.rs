//! Where each figure of an answer comes from.

use fits_core::{
    Fit, Kind, Length,
    shop::{Passes, Ream},
    source::{Known, Reason},
    standards::{
        iso286::{Class, Feature},
        processes::Process,
    },
};

use super::{
    Session,
    resolve::{class, pair},
};
use crate::{
    answer::{Answer, FeatureAnswer, WhyAnswer},
    problem::Problem,
    query::{Query, Tolerance},
};

impl Session {
    pub(super) fn why(&self, query: &Query, of: &str) -> Result<Answer, Problem> {
        let answer = self.answer(query)?;
        let mut figures = Vec::new();
        match query {
            Query::Size(size) => figures.push(Reason {
                figure: "size".into(),
                value: self.length(size)?.to_string(),
                rule: "1 in = 25.4 mm; kept as a whole count of 0.1 nm".into(),
                source: "international yard and pound agreement, 1959".into(),
                known: Known::Formula,
            }),
            Query::Part(part) => {
                let nominal = self.nominal(&part.size)?;
                match &part.tolerance {
                    Tolerance::Pair(hole, shaft) => {
                        let pair = pair(nominal, &part.size, hole, shaft)?;
                        why_class(&mut figures, pair.hole_class, nominal);
                        why_class(&mut figures, pair.shaft_class, nominal);
                        why_pair(&mut figures, &pair.fit);
                        if let Answer::Fit(fit) = &answer
                            && let Some(measured) = &fit.measured
                        {
                            let mate = if measured.part == Feature::Hole {
                                &fit.shaft
                            } else {
                                &fit.hole
                            };
                            figures.push(by_rule(
                                &format!("{} to suit", measured.part.mate()),
                                &format!("{} to {}", mate.limits.lower(), mate.limits.upper()),
                                &format!("measured {} {} with the fit's own least and greatest clearance", measured.part, measured.size_mm.0),
                            ));
                        }
                    }
                    Tolerance::Class(text) => why_class(&mut figures, class(text)?, nominal),
                    Tolerance::Deviations(..) | Tolerance::Either(_) | Tolerance::UpTo(_) => {
                        let one = self.one(part, nominal)?;
                        figures.push(by_rule(
                            "limits",
                            &format!("{} to {}", one.limits.lower(), one.limits.upper()),
                            "as given in the query",
                        ));
                    }
                }
            }
            _ => {}
        }
        why_answer(&mut figures, &answer);
        Ok(Answer::Why(WhyAnswer {
            of: of.to_owned(),
            figures,
        }))
    }
}

fn by_rule(figure: &str, value: &str, rule: &str) -> Reason {
    Reason {
        figure: figure.into(),
        value: value.into(),
        rule: rule.into(),
        source: "ISO 286-1:2010, clause 3".into(),
        known: Known::Formula,
    }
}

fn why_class(figures: &mut Vec<Reason>, class: Class, nominal: Length) {
    // The answer stands, so the class is defined.
    let Ok(mut reasons) = class.reasons(nominal) else {
        return;
    };
    figures.append(&mut reasons);
    if let Ok(limits) = class.limits(nominal) {
        figures.push(by_rule(
            &format!("limits of {class}"),
            &format!("{} to {}", limits.lower(), limits.upper()),
            "nominal size + deviations",
        ));
    }
}

fn why_pair(figures: &mut Vec<Reason>, fit: &Fit) {
    let range = fit.clearance();
    figures.push(by_rule(
        "least clearance",
        &range.lower().to_string(),
        "hole's lower limit - shaft's upper limit",
    ));
    figures.push(by_rule(
        "greatest clearance",
        &range.upper().to_string(),
        "hole's upper limit - shaft's lower limit",
    ));
    if fit.kind() == Kind::Transition {
        let chance = fit.chance_of_clearance();
        figures.push(Reason {
            figure: "chance of clearance".into(),
            value: format!("{:.0} % even, {:.0} % normal", chance.even * 100.0, chance.normal * 100.0),
            rule: "even: area over both tolerances; normal: centred, limits at three standard deviations".into(),
            source: "probability of a difference of two sizes".into(),
            known: Known::Formula,
        });
    }
}

/// What every answer adds: aims, tools and passes.
fn why_answer(figures: &mut Vec<Reason>, answer: &Answer) {
    let mut aim = |feature: &FeatureAnswer| {
        figures.push(Reason {
            figure: format!("aim of {}", feature.class),
            value: feature.aim_mm.0.to_string(),
            rule: "middle of the limits".into(),
            source: "our choice; `20 H7 = 20.013` judges any other size".into(),
            known: Known::Practice,
        });
    };
    let hole = match answer {
        Answer::Fit(fit) => {
            aim(&fit.hole);
            aim(&fit.shaft);
            (fit.ream.is_some() || fit.bore.is_some()).then_some(&fit.hole)
        }
        Answer::Feature(feature) => {
            aim(feature);
            Some(&**feature)
        }
        Answer::Reading(reading) => {
            aim(&reading.feature);
            None
        }
        Answer::PairReading(pair) => {
            aim(&pair.hole.feature);
            aim(&pair.shaft.feature);
            None
        }
        Answer::Ream(ream) => {
            aim(&ream.hole);
            Some(&ream.hole)
        }
        Answer::Passes(passes) => {
            aim(&passes.feature);
            Some(&passes.feature)
        }
        _ => None,
    };
    let Some(feature) = hole else { return };
    if feature.kind == Some(Feature::Hole)
        && !matches!(answer, Answer::Passes(_))
        && let Ok(ream) = Ream::of(feature.limits)
    {
        figures.extend(ream.reasons());
    }
    if feature.kind.is_some() && !matches!(answer, Answer::Ream(_)) {
        figures.extend(Passes::reasons(feature.aim_mm.0));
    }
    if let Some(process) = feature
        .processes
        .first()
        .and_then(|name| Process::all().find(|process| process.name() == *name))
    {
        figures.push(Reason {
            figure: "processes".into(),
            value: feature.processes.join(", "),
            rule: format!(
                "their grades hold {}",
                feature.grade.as_deref().unwrap_or_default()
            ),
            source: process.source().into(),
            known: process.known(),
        });
    }
}
