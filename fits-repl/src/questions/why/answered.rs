//! Where each figure of an answer comes from.

use fits_core::{
    Fit, Kind, Length, Limits,
    shop::{InchReamer, Passes, Ream},
    source::{Known, Reason},
    speech::{Figure, Speech},
    standards::{
        iso286::{Class, Feature},
        processes::Process,
    },
};
use schemars::JsonSchema;
use serde::Serialize;

use crate::{
    answer::{Answer, FeatureAnswer},
    problem::Problem,
    query::{Part, Query, Units},
    questions::part::resolve::{Label, One, Pair},
    session::Session,
};

impl Session {
    pub(crate) fn why(&self, query: &Query, of: &str) -> Result<Answer, Problem> {
        let answer = query.question().answer(self)?;
        let mut figures = query.question().reasons(self, &answer)?;
        why_answer(&mut figures, &answer);
        self.why_crib(&mut figures, &answer);
        let figures = figures.into_iter().map(|it| it.said_in(self.shown.unit())).collect();
        Ok(Answer::Why(WhyAnswer { of: of.to_owned(), figures }))
    }
}

impl Session {
    pub(crate) fn why_one(&self, figures: &mut Vec<Reason>, part: &Part, one: &One) {
        match one.label {
            Label::Iso(class) => return why_class(figures, class, one.nominal),
            // One class gives both parts: once is enough.
            Label::Inch(_) if one.kind == Some(Feature::Shaft) => return,
            Label::Inch(class) => {
                return figures.extend(class.reasons(one.nominal).unwrap_or_default());
            }
            Label::Named(_) => {}
        }
        let bought =
            part.bought.as_ref().and_then(|name| self.bought(name, &part.size, one.nominal).ok());
        if let Some(found) = bought {
            figures.push(found.reason());
            return;
        }
        figures.push(Reason {
            figure: format!("limits {}", one.label),
            value: range(one.limits),
            rule: "".into(),
            source: one.source.into(),
            known: Known::Formula,
        });
    }

    pub(crate) fn why_both(&self, figures: &mut Vec<Reason>, part: &Part, pair: &Pair) {
        if let Some(chosen) = &pair.chosen {
            figures.push(chosen.choice.explained());
        }
        self.why_one(figures, part, &pair.hole);
        self.why_one(figures, part, &pair.shaft);
        why_pair(figures, &pair.fit);
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
    Speech::of("{} to {}", [limits.lower(), limits.upper()])
}

pub(crate) fn by_rule(figure: impl Into<String>, value: Speech, rule: impl Into<Speech>) -> Reason {
    Reason {
        figure: figure.into(),
        value,
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
            format!("limits of {class}"),
            range(limits),
            "nominal size + deviations",
        ));
    }
}

fn why_pair(figures: &mut Vec<Reason>, fit: &Fit) {
    let clearance = fit.clearance();
    figures.push(by_rule(
        "least clearance",
        clearance.lower().into(),
        "hole's lower limit - shaft's upper limit",
    ));
    figures.push(by_rule(
        "greatest clearance",
        clearance.upper().into(),
        "hole's upper limit - shaft's lower limit",
    ));
    if fit.kind() == Kind::Transition {
        let chance = fit.chance_of_clearance();
        figures.push(Reason {
            figure: "chance of clearance".into(),
            value: format!("{:.0} % even, {:.0} % normal", chance.even * 100.0, chance.normal * 100.0).into(),
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
            figure: match feature.kind {
                Some(kind) => format!("aim of {kind} {}", feature.class),
                None => format!("aim of {}", feature.class),
            },
            value: feature.aim_mm.0.into(),
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
            figures.extend(reading.reading.measured.iter().flat_map(|it| it.reasons.clone()));
            None
        }
        Answer::PairReading(pair) => {
            aim(&pair.hole.feature);
            aim(&pair.shaft.feature);
            for part in [&pair.hole, &pair.shaft] {
                figures.extend(part.reading.measured.iter().flat_map(|it| it.reasons.clone()));
            }
            None
        }
        Answer::Rehearsal(odds) => {
            aim(&odds.feature);
            figures.extend(odds.reasons.iter().cloned());
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
        figures.extend(ream.reasons(&pre_drills(answer)));
        figures.extend(InchReamer::for_hole(&ream).into_iter().map(|reamer| Reason {
            figure: format!("new reamer {}", reamer.name),
            value: range(reamer.limits),
            rule: "nominal size and what a new reamer measures above it".into(),
            source: reamer.source.into(),
            known: reamer.known,
        }));
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
            value: feature.processes.join(", ").into(),
            rule: format!("their grades hold {}", feature.grade.unwrap_or_default()).into(),
            source: process.source().into(),
            known: process.known(),
        });
    }
}

/// The drills that an answer names before a reamer.
fn pre_drills(answer: &Answer) -> Vec<&'static str> {
    let ream = match answer {
        Answer::Feature(found) => found.ream.as_deref(),
        Answer::Fit(fit) => fit.ream.as_deref(),
        Answer::Ream(found) => Some(&found.ream),
        _ => None,
    };
    let drills = ream.into_iter().flat_map(|ream| [ream.drill, ream.other_drill]);
    drills.flatten().map(|drill| drill.name).collect()
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
