//! Where each figure of an answer comes from.

use fits_core::{
    Fit, Kind, Length,
    shop::{Passes, Ream},
    source::{Known, Reason},
    standards::{
        b41,
        drills::Drill,
        iso286::{Class, Feature},
        iso2768::Class as General,
        processes::Process,
    },
};

use super::{
    Session,
    asks::quantity,
    mates::Resolved,
    resolve::{Label, One, Pair},
};
use crate::{
    answer::{Answer, FeatureAnswer, WhyAnswer},
    problem::Problem,
    query::{Part, Query},
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
            Query::Part(part) => match self.resolve(part)? {
                Resolved::One(one) => Self::why_one(&mut figures, part, &one),
                Resolved::Pair(pair) => Self::why_both(&mut figures, part, &pair),
                Resolved::Suit { pair, in_hand, mate } => {
                    Self::why_both(&mut figures, part, &pair);
                    figures.push(by_rule(
                        &format!(
                            "{} to suit",
                            mate.kind.map_or("mate".to_owned(), |kind| kind.to_string())
                        ),
                        &format!("{} to {}", mate.limits.lower(), mate.limits.upper()),
                        &format!(
                            "{} to {} in hand, with the fit's own least and greatest clearance",
                            in_hand.limits.lower(),
                            in_hand.limits.upper()
                        ),
                    ));
                }
            },
            Query::General { size, class, kind } => {
                let nominal = self.nominal(size)?;
                if let Ok(class) = class.value.parse::<General>() {
                    figures.extend(class.reasons(quantity(*kind).0, nominal).unwrap_or_default());
                }
            }
            Query::Grade { .. }
            | Query::Keyway(_)
            | Query::Drill(_)
            | Query::Pick { .. }
            | Query::Seat { .. } => {
                why_asked(&mut figures, &answer);
            }
            Query::Units(_) | Query::Dial(_) | Query::Why(_) | Query::Help(_) => {}
        }
        why_answer(&mut figures, &answer);
        Ok(Answer::Why(WhyAnswer { of: of.to_owned(), figures }))
    }
}

impl Session {
    fn why_one(figures: &mut Vec<Reason>, part: &Part, one: &One) {
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
            part.bought.as_ref().and_then(|name| Self::bought(name, &part.size, one.nominal).ok());
        if let Some(found) = bought {
            figures.push(found.reason());
            return;
        }
        figures.push(Reason {
            figure: format!("limits {}", one.label),
            value: format!("{} to {}", one.limits.lower(), one.limits.upper()),
            rule: String::new(),
            source: one.source.into(),
            known: Known::Formula,
        });
    }

    fn why_both(figures: &mut Vec<Reason>, part: &Part, pair: &Pair) {
        if let Some((choice, _)) = &pair.choice {
            figures.push(choice.explained());
        }
        Self::why_one(figures, part, &pair.hole);
        Self::why_one(figures, part, &pair.shaft);
        why_pair(figures, &pair.fit);
    }
}

/// Why of questions that name no pair.
fn why_asked(figures: &mut Vec<Reason>, answer: &Answer) {
    match answer {
        Answer::Drill(drills) => {
            for found in drills.exact.iter().chain(&drills.under).chain(&drills.over) {
                let Some(drill) = Drill::named(found.name) else { continue };
                figures.push(Reason {
                    figure: format!("drill {}", found.name),
                    value: found.mm.0.to_string(),
                    rule: String::new(),
                    source: format!("standard drill sizes; {}", drill.source()),
                    known: drill.known(),
                });
            }
        }
        Answer::Grade(found) => {
            // The number alone names a grade of ASME B4.1.
            let inch = found.grade.parse().ok().and_then(|grade| b41::grade_reason(grade, found.nominal_mm.0).ok());
            figures.push(inch.unwrap_or_else(|| Reason {
                figure: found.grade.clone(),
                value: found.tolerance_mm.0.to_string(),
                rule: String::new(),
                source: found.source.into(),
                known: Known::Seen,
            }));
        }
        Answer::Keyway(found) => figures.push(Reason {
            figure: format!("key and keyways by {}", found.standard),
            value: format!("{} wide, {} high", found.width_mm.0, found.height_mm.0),
            rule: "by the shaft's diameter".into(),
            source: found.source.into(),
            known: found.known,
        }),
        Answer::Pick(picked) => figures.push(Reason {
            figure: "order".into(),
            value: format!("{} found", picked.found),
            rule: "coarser grades first, a preferred fit as if one grade coarser, then the middle of what is wanted".into(),
            source: Known::Practice.words().into(),
            known: Known::Practice,
        }),
        Answer::Seat(seat) => figures.extend(seat.seats.iter().map(|seat| Reason {
            figure: format!("{} for a {} bearing", seat.class, seat.bearing),
            value: format!("{} to {}", seat.lower_mm.0, seat.upper_mm.0),
            rule: seat.reason.into(),
            source: seat.source.into(),
            known: seat.known,
        })),
        _ => {}
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
            figure: match feature.kind {
                Some(kind) => format!("aim of {kind} {}", feature.class),
                None => format!("aim of {}", feature.class),
            },
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
            rule: format!("their grades hold {}", feature.grade.as_deref().unwrap_or_default()),
            source: process.source().into(),
            known: process.known(),
        });
    }
}
