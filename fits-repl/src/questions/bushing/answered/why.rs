//! Why a bushing's figures are what they are.

use fits_core::{
    shop::swelling_reason,
    source::{Known, Reason},
    speech::{Figure, Speech},
    standards::materials::Property,
};

use crate::{
    answer::{BushingAnswer, BushingInPlaceAnswer, Ends},
    query::Units,
    questions::why::answered::{said, said_range},
};

/// Why a shaft for a bore in place is of its size.
pub(crate) fn in_place(answer: &BushingInPlaceAnswer) -> Reason {
    let running = answer.running;
    Reason {
        figure: "shaft".into(),
        value: answer.shaft.aim_mm.0.into(),
        rule: Speech::of(
            "the bore as it measures, less the play wanted, {} to {}, {}",
            [
                Figure::from(running.min_mm.0),
                running.max_mm.0.into(),
                answer.running_by.as_str().into(),
            ],
        ),
        source: "ISO 286-1:2010, clause 3".into(),
        known: answer.known,
    }
}

/// Why a bushing in its housing comes to these figures: the formulas, then why
/// it runs with that play, its own limits and the figures of its materials.
pub(crate) fn of_fit(units: Units, answer: &BushingAnswer) -> Vec<Reason> {
    let mut figures = Vec::new();
    let ends =
        |ends: Ends| format!("{} to {}", said(units, ends.min_mm.0), said(units, ends.max_mm.0));
    let mut by_formula = |figure: &str, value: String, rule: String, source: &str| {
        figures.push(Reason {
            figure: figure.into(),
            value: value.into(),
            rule: rule.into(),
            source: source.into(),
            known: Known::Formula,
        });
    };
    let (Some(interference), Some(closes_in), Some(found)) =
        (answer.interference, answer.closes_in, &answer.found)
    else {
        return answer.reasons.clone();
    };
    by_formula(
        "interference",
        ends(interference),
        format!(
            "outside {} less housing {}",
            said_range(units, found.outside.limits),
            said_range(units, found.housing.limits)
        ),
        "ISO 286-1:2010, clause 3",
    );
    let moduli =
        [&found.material, &found.hub].map(|it| it.modulus().get::<uom::si::pressure::gigapascal>());
    by_formula(
        "the bore closes in",
        ends(closes_in),
        format!(
            "Lame: rings of {} to {} (E {:.1} GPa, nu {}) and {} (E {:.1} GPa, nu {}), one in the other{}",
            said(units, found.bore.limits.middle()),
            said(units, found.housing.limits.middle()),
            moduli[0],
            found.material.poisson(),
            said(units, found.hub_outside),
            moduli[1],
            found.hub.poisson(),
            if answer.yielded_share > 0.0 {
                "; the most by von Mises in plane stress and Hencky's strains, as a wall yields"
            } else {
                ""
            },
        ),
        "Shigley, Mechanical Engineering Design, 8th ed., 3-14 and 3-16",
    );
    by_formula(
        "bore in place",
        ends(answer.bore_in_place),
        format!("{} as made, less what it closes in", said_range(units, found.bore.limits)),
        "sum of the two",
    );
    by_formula(
        if answer.shaft.given { "clearance" } else { "shaft to turn" },
        if answer.shaft.given {
            ends(answer.clearance)
        } else {
            said(units, answer.shaft.aim_mm.0)
        },
        format!(
            "bore in place less {}",
            if answer.shaft.given {
                "the shaft".to_owned()
            } else {
                format!("{} wanted, middle less middle", ends(answer.running))
            }
        ),
        "sum of the two",
    );
    figures.extend(answer.reasons.iter().cloned());
    figures.extend(found.reasons.iter().cloned());
    for one in [&found.material, &found.hub] {
        figures.extend(one.reason(Property::Modulus));
        if found.is_warm {
            figures.extend(one.reason(Property::Expansion));
        }
    }
    figures.extend(swelling_reason(&found.material));
    figures.extend(answer.speed_m_per_s.and_then(|_| found.kind.reason("greatest_m_per_s")));
    figures.extend(found.kind.reason("longest"));
    figures
}
