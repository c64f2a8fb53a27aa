//! Why the figures of a feature or a pair are what they are.

use fits_core::{
    Fit, Kind, Length,
    shop::{InchReamer, Passes, Ream},
    source::{Known, Reason},
    speech::Speech,
    standards::iso286::{Class, Feature},
};

use crate::{
    answer::{
        FeatureAnswer, FitAnswer, PairReadingAnswer, PassesAnswer, ReadingAnswer, ReadingFigures,
        ReamAnswer, ReamFigures,
    },
    questions::{
        part::{
            mates::Resolved,
            resolve::{Label, One, Pair},
        },
        why::answered::range,
    },
};

pub(super) fn of_feature(found: &FeatureAnswer) -> Vec<Reason> {
    let mut figures = sizes([found]);
    reaming(&mut figures, found, found.ream.as_deref());
    making(&mut figures, found);
    figures
}

pub(super) fn of_fit(fit: &FitAnswer) -> Vec<Reason> {
    let mut figures = sizes([&fit.hole, &fit.shaft]);
    if fit.ream.is_some() || fit.bore.is_some() {
        reaming(&mut figures, &fit.hole, fit.ream.as_deref());
        making(&mut figures, &fit.hole);
    }
    figures
}

pub(super) fn of_reading(found: &ReadingAnswer) -> Vec<Reason> {
    let mut figures = sizes([&found.feature]);
    figures.extend(measuring(&found.reading));
    figures
}

pub(super) fn of_pair_reading(pair: &PairReadingAnswer) -> Vec<Reason> {
    let mut figures = sizes([&pair.hole.feature, &pair.shaft.feature]);
    figures.extend([&pair.hole, &pair.shaft].into_iter().flat_map(|it| measuring(&it.reading)));
    figures
}

pub(super) fn of_ream(found: &ReamAnswer) -> Vec<Reason> {
    let mut figures = sizes([&found.hole]);
    reaming(&mut figures, &found.hole, Some(&found.ream));
    processes(&mut figures, &found.hole);
    figures
}

pub(super) fn of_passes(plan: &PassesAnswer) -> Vec<Reason> {
    let mut figures = sizes([&plan.feature]);
    making(&mut figures, &plan.feature);
    figures
}

/// Why the limits and the sizes to cut for are what they are; the first part has what
/// the limits rest on.
fn sizes<const N: usize>(parts: [&FeatureAnswer; N]) -> Vec<Reason> {
    let mut figures = limits(parts.first().and_then(|part| part.rests_on.as_deref()));
    figures.extend(parts.map(FeatureAnswer::why_aim));
    figures
}

impl FeatureAnswer {
    /// Why the one size to cut for is what it is.
    pub(crate) fn why_aim(&self) -> Reason {
        Reason {
            figure: match self.kind {
                Some(kind) => format!("aim of {kind} {}", self.class),
                None => format!("aim of {}", self.class),
            },
            value: self.aim_mm.0.into(),
            rule: "middle of the limits".into(),
            source: "our choice; `20 H7 = 20.013` judges any other size".into(),
            known: Known::Practice,
        }
    }
}

/// Why the limits are what they are.
fn limits(resolved: Option<&Resolved>) -> Vec<Reason> {
    let mut figures = Vec::new();
    match resolved {
        None => {}
        Some(Resolved::One(one)) => why_one(&mut figures, one),
        Some(Resolved::Pair(pair)) => why_both(&mut figures, pair),
        Some(Resolved::Suit { pair, in_hand, mate }) => {
            why_both(&mut figures, pair);
            figures.push(by_rule(
                format!("{} to suit", mate.kind.map_or("mate".to_owned(), |kind| kind.to_string())),
                range(mate.limits),
                Speech::of(
                    "{} to {} in hand, with the fit's own least and greatest clearance",
                    [in_hand.limits.lower(), in_hand.limits.upper()],
                ),
            ));
        }
    }
    figures
}

fn why_one(figures: &mut Vec<Reason>, one: &One) {
    match one.label {
        Label::Iso(class) => why_class(figures, class, one.nominal),
        // One class gives both parts: once is enough.
        Label::Inch(_) if one.kind == Some(Feature::Shaft) => {}
        Label::Inch(class) => figures.extend(class.reasons(one.nominal).unwrap_or_default()),
        Label::Bought(part) => figures.push(part.reason()),
        Label::Named(_) => figures.push(Reason {
            figure: format!("limits {}", one.label.name()),
            value: range(one.limits),
            rule: "".into(),
            source: one.source.into(),
            known: Known::Formula,
        }),
    }
}

fn why_both(figures: &mut Vec<Reason>, pair: &Pair) {
    if let Some(chosen) = &pair.chosen {
        figures.push(chosen.choice.explained());
    }
    why_one(figures, &pair.hole);
    why_one(figures, &pair.shaft);
    why_pair(figures, &pair.fit);
}

fn by_rule(figure: impl Into<String>, value: Speech, rule: impl Into<Speech>) -> Reason {
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

/// Why a reading is judged as it is.
fn measuring(reading: &ReadingFigures) -> impl Iterator<Item = Reason> {
    reading.measured.iter().flat_map(|it| it.reasons.clone())
}

/// Why the reamer of a hole and the drill before it.
fn reaming(figures: &mut Vec<Reason>, hole: &FeatureAnswer, found: Option<&ReamFigures>) {
    let Some(ream) = Ream::of(hole.limits).ok().filter(|_| hole.kind == Some(Feature::Hole)) else {
        return;
    };
    let drills = found.into_iter().flat_map(|found| [found.drill, found.other_drill]);
    let drills: Vec<&str> = drills.flatten().map(|drill| drill.name).collect();
    figures.extend(ream.reasons(&drills));
    figures.extend(InchReamer::for_hole(&ream).into_iter().map(|reamer| Reason {
        figure: format!("new reamer {}", reamer.name),
        value: range(reamer.limits),
        rule: "nominal size and what a new reamer measures above it".into(),
        source: reamer.source.into(),
        known: reamer.known,
    }));
}

/// Why the passes, and the processes that hold the grade.
fn making(figures: &mut Vec<Reason>, feature: &FeatureAnswer) {
    if feature.kind.is_some() {
        figures.extend(Passes::reasons(feature.aim_mm.0));
    }
    processes(figures, feature);
}

fn processes(figures: &mut Vec<Reason>, feature: &FeatureAnswer) {
    let Some(process) = feature.processes.all().next() else { return };
    figures.push(Reason {
        figure: "processes".into(),
        value: feature.processes.names().collect::<Vec<_>>().join(", ").into(),
        rule: format!("their grades hold {}", feature.grade.unwrap_or_default()).into(),
        source: process.source().into(),
        known: process.known(),
    });
}
