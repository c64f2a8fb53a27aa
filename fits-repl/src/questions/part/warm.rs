//! A pair away from 20 °C, as its parts' materials grow.

use std::borrow::Cow;

use fits_core::{
    Length, Limits,
    shop::{
        Damp, Hazard, swelling_reason,
        warm::{FitAt, Pairing, Warm, stands},
    },
    source::{Known, Reason},
    standards::{
        iso286::Feature,
        materials::{Material, Property},
    },
};
use uom::si::{
    f64::ThermodynamicTemperature, temperature_coefficient::per_kelvin,
    thermodynamic_temperature::degree_celsius,
};

pub(crate) use fits_core::shop::cooling::REFERENCE_C as REFERENCE;

use crate::{
    answer::{Answer, AtFigures, DampFigures, Mm, WarmAnswer, WarmPart},
    problem::Problem,
    query::{Part, Size, Temperatures, Units},
    questions::{
        part::{
            answered::measured,
            mates::Resolved,
            resolve::{Label, One, Pair, from_core},
        },
        why::answered::{range, said},
    },
    session::Session,
};

const EXAMPLE: &str = "as in `20 H7/g6 warm 60C, hole nylon, shaft steel`";

/// A pair, its materials and its range in °C, resolved.
#[derive(Clone, Debug)]
pub(crate) struct Found {
    pair: Pair,
    hole: Cow<'static, Material>,
    shaft: Cow<'static, Material>,
    /// What was taken for granted.
    assumed: Vec<String>,
    warm: Warm,
    cold_end: f64,
    warm_end: f64,
}

pub(crate) fn celsius(value: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(value)
}

impl Session {
    pub(crate) fn warm(&self, part: &Part, warm: &Temperatures) -> Result<Answer, Problem> {
        let found = self.warm_pair(part, warm)?;
        let failed = |error: fits_core::Error| from_core(&error, part.size.at.clone());
        let between =
            found.warm.between(celsius(found.cold_end), celsius(found.warm_end)).map_err(failed)?;
        let at = |at_c: f64, fit: FitAt| AtFigures {
            at_c: to_a_tenth(at_c),
            min_mm: Mm(fit.clearance.lower()),
            max_mm: Mm(fit.clearance.upper()),
            kind: fit.kind,
        };
        let [cold, hot] = between.ends;
        let meets = |pairing| {
            let found = found.warm.no_clearance_at(pairing)?;
            Some(to_a_tenth(found.get::<degree_celsius>()))
        };
        let (known, unconfirmed) = how_known(&found);
        Ok(Answer::FitWarm(Box::new(WarmAnswer {
            nominal_mm: Mm(found.pair.fit.nominal()),
            hole: figures(&found.pair.hole, &found.hole),
            shaft: figures(&found.pair.shaft, &found.shaft),
            binds: between.binds,
            lets_go: between.lets_go,
            tightest_pair_meets_c: meets(Pairing::Tightest),
            loosest_pair_meets_c: meets(Pairing::Loosest),
            change_per_c_mm: (slope(&found) * 1e7).round() / 1e7,
            shaft_to_keep: between.shaft_to_keep.map(Into::into),
            damp: in_damp(&found).map_err(failed)?,
            notes: notes(&found),
            cautions: between.lets_go.then(|| Hazard::LetsGo.caution()).into_iter().collect(),
            reference: at(REFERENCE, between.reference),
            cold: at(found.cold_end, cold),
            warm: at(found.warm_end, hot),
            known,
            unconfirmed,
            found,
        })))
    }

    fn warm_pair(&self, part: &Part, warm: &Temperatures) -> Result<Found, Problem> {
        if let Some(work) = &part.work {
            return Err(Problem::new(
                "a plan has no temperature: sizes hold at 20 °C",
                work.at.clone(),
            )
            .advise("leave it out")
            .fix(work.at.clone(), ""));
        }
        if let Some(from) = &part.from {
            return Err(Problem::new(
                "a plan has no temperature: sizes hold at 20 °C",
                from.at.clone(),
            )
            .advise(EXAMPLE));
        }
        let pair = self.pair_to_warm(part)?;
        let mut assumed = Vec::new();
        let made_of = |feature, assumed: &mut Vec<String>| {
            let named = match feature {
                Feature::Hole => part.hub.as_ref(),
                Feature::Shaft => part.shaft_material.as_ref(),
            };
            self.made_of(named, feature.word(), assumed)?.ok_or_else(|| not_said(part, feature))
        };
        let hole = made_of(Feature::Hole, &mut assumed)?;
        let shaft = made_of(Feature::Shaft, &mut assumed)?;
        let (first, second) = &warm.value;
        let start = self.amount(first)?;
        let end = match second {
            Some(second) => self.amount(second)?,
            None => REFERENCE,
        };
        for (amount, value) in [(Some(first), start), (second.as_ref(), end)] {
            for material in [&hole, &shaft] {
                stands(material, celsius(value))
                    .map_err(|error| from_core(&error, amount.unwrap_or(first).at.clone()))?;
            }
        }
        let materials = [(part.hub.as_ref(), &hole), (part.shaft_material.as_ref(), &shaft)];
        if let Some((spot, unknown)) =
            materials.into_iter().find(|(_, material)| material.expansion().is_none())
        {
            return Err(Problem::new(
                format!("the expansion of {unknown} is not known"),
                spot.map_or(&first.at, |spot| &spot.at).clone(),
            )
            .advise(EXAMPLE));
        }
        let warm = Warm::of(pair.fit, &hole, &shaft)
            .map_err(|error| from_core(&error, part.size.at.clone()))?;
        let (cold_end, warm_end) = (start.min(end), start.max(end));
        Ok(Found { pair, hole, shaft, assumed, warm, cold_end, warm_end })
    }

    /// The pair as its limits or as it measures.
    fn pair_to_warm(&self, part: &Part) -> Result<Pair, Problem> {
        let pair = match self.resolve(part)? {
            Resolved::Pair(pair) => pair,
            Resolved::Suit { in_hand, mate, .. } => {
                let (hole, shaft) = match in_hand.kind {
                    Some(Feature::Hole) => (*in_hand, mate),
                    _ => (mate, *in_hand),
                };
                Pair::unlike(hole, shaft)
                    .map_err(|error| from_core(&error, part.size.at.clone()))?
            }
            Resolved::One(_) => {
                return Err(Problem::new(
                    "one part alone neither binds nor lets go: give the pair",
                    part.size.at.clone(),
                )
                .advise(EXAMPLE));
            }
        };
        let read = |feature, reading: Option<&Size>| -> Result<One, Problem> {
            let one = pair.part(feature);
            let Some(size) = reading else { return Ok(one) };
            let read = self.nominal(size)?;
            let limits =
                Limits::new(read, read).map_err(|error| from_core(&error, size.at.clone()))?;
            Ok(One {
                limits,
                have: true,
                label: Label::Named("measured"),
                source: "as measured",
                ..one
            })
        };
        let (hole, shaft) = match (&part.reading, &part.second_reading) {
            (Some(hole), Some(shaft)) => (Some(hole), Some(shaft)),
            (Some(one), None) => {
                return Err(Problem::new(
                    "one reading for two parts: which was measured?",
                    one.at.clone(),
                )
                .advise(
                    "give both, as `20 H7/g6 = 20.013/19.985 warm 60C, hole nylon, shaft steel`",
                ));
            }
            (None, _) => match (measured(part, Feature::Hole), measured(part, Feature::Shaft)) {
                (Some(hole), Some(shaft)) => (Some(hole), Some(shaft)),
                // One reading alone is resolved as the part in hand.
                _ => (None, None),
            },
        };
        if hole.is_none() {
            return Ok(pair);
        }
        Pair::unlike(read(Feature::Hole, hole)?, read(Feature::Shaft, shaft)?)
            .map_err(|error| from_core(&error, part.size.at.clone()))
    }
}

/// Why the figures of a pair away from 20 °C are what they are.
pub(crate) fn reasons(units: Units, answer: &WarmAnswer) -> Vec<Reason> {
    let mut figures = Vec::new();
    let found = &answer.found;
    for (one, name) in [(&found.pair.hole, "hole"), (&found.pair.shaft, "shaft")] {
        figures.push(Reason {
            figure: format!("{name} {}", one.label.name()),
            value: range(one.limits),
            rule: "at 20 °C".into(),
            source: one.source.into(),
            known: Known::Formula,
        });
    }
    let (hole, shaft) = (found.pair.hole.limits, found.pair.shaft.limits);
    let spreads = found.warm.spreads();
    for end in [answer.cold, answer.warm] {
        if end.at_c.to_bits() == REFERENCE.to_bits() {
            continue;
        }
        let warmer = end.at_c > REFERENCE;
        let worst = |spread: f64, expansion: f64, is_less: bool| {
            let off = if is_less { -spread } else { spread };
            (expansion * (1.0 + off) * 1e3).round() / 1e3
        };
        let term = |size: Length, expansion: f64| {
            let (expansion, by) = match units {
                Units::Millimetres => (expansion, end.at_c - REFERENCE),
                Units::Inches => (per_fahrenheit(expansion), (end.at_c - REFERENCE) * 1.8),
            };
            format!("{} x (1 + {expansion} x {by:.1}/1000000)", said(units, size))
        };
        figures.push(Reason {
            figure: format!("least clearance at {}", degrees(units, end.at_c, 0)),
            value: said(units, end.min_mm.0).into(),
            rule: format!(
                "{} - {}",
                term(hole.lower(), worst(spreads.0, answer.hole.expansion_per_c_e6, warmer)),
                term(shaft.upper(), worst(spreads.1, answer.shaft.expansion_per_c_e6, !warmer))
            )
            .into(),
            source: "linear expansion about 20 °C, ISO 1".into(),
            known: Known::Formula,
        });
    }
    if let Some(meets) = answer.tightest_pair_meets_c {
        let warmer = meets > REFERENCE;
        let each = |spread: f64, expansion: f64, is_less: bool| {
            let off = if is_less { -spread } else { spread };
            match units {
                Units::Millimetres => (expansion * (1.0 + off) * 1e3).round() / 1e3,
                Units::Inches => per_fahrenheit(expansion * (1.0 + off)),
            }
        };
        figures.push(Reason {
            figure: "the tightest pair meets".into(),
            value: degrees(units, meets, 1).into(),
            rule: format!(
                "{} + ({} - {}) / ({} x {} - {} x {}) x 1000000",
                if units == Units::Inches { 68 } else { 20 },
                said(units, shaft.upper()),
                said(units, hole.lower()),
                said(units, hole.lower()),
                each(spreads.0, answer.hole.expansion_per_c_e6, warmer),
                said(units, shaft.upper()),
                each(spreads.1, answer.shaft.expansion_per_c_e6, !warmer)
            )
            .into(),
            source: "linear expansion about 20 °C, ISO 1".into(),
            known: Known::Formula,
        });
    }
    let mut materials = vec![&found.hole];
    if found.shaft != found.hole {
        materials.push(&found.shaft);
    }
    for material in materials {
        for property in [Property::Expansion, Property::HeatLimit] {
            figures.extend(material.reason(property));
        }
        figures.extend(swelling_reason(material));
    }
    figures
}

/// Millionths per degree Fahrenheit.
fn per_fahrenheit(per_celsius: f64) -> f64 {
    (per_celsius / 1.8 * 1e3).round() / 1e3
}

/// A temperature in the units of the answer.
fn degrees(units: Units, celsius: f64, places: usize) -> String {
    match units {
        Units::Millimetres => format!("{celsius:.places$} °C"),
        Units::Inches => format!("{:.places$} °F", celsius * 1.8 + 32.0),
    }
}

/// A tenth of a degree: no thermometer of a shop tells more.
pub(crate) fn to_a_tenth(celsius: f64) -> f64 {
    (celsius * 10.0).round() / 10.0
}

/// What the tightest pair's clearance gains with each degree.
fn slope(found: &Found) -> f64 {
    let grows = |size: Length, material: &Material| {
        size.millimetres() * material.expansion().map_or(0.0, |it| it.get::<per_kelvin>())
    };
    let (hole, shaft) = (found.pair.hole.limits, found.pair.shaft.limits);
    grows(hole.lower(), &found.hole) - grows(shaft.upper(), &found.shaft)
}

fn figures(one: &One, material: &Material) -> WarmPart {
    let expansion = material.expansion().map_or(0.0, |it| it.get::<per_kelvin>() * 1e6);
    WarmPart {
        class: one.label.name().to_owned(),
        material: material.name().to_owned(),
        lower_mm: Mm(one.limits.lower()),
        upper_mm: Mm(one.limits.upper()),
        expansion_per_c_e6: (expansion * 1e3).round() / 1e3,
        known: one.limits.known().worst(known_of(material, Property::Expansion)),
    }
}

/// How a figure of a material is known.
pub(crate) fn known_of(material: &Material, property: Property) -> Known {
    material.reason(property).map_or(Known::Given, |reason| reason.known)
}

/// The least certain of what the answer rests on, and what of it no text confirms.
fn how_known(found: &Found) -> (Known, Vec<String>) {
    let mut went_in = Vec::new();
    for (one, material) in [(&found.pair.hole, &found.hole), (&found.pair.shaft, &found.shaft)] {
        went_in.push((one.limits.known(), format!("the limits of {}", one.label.name())));
        went_in.push((
            known_of(material, Property::Expansion),
            format!("the expansion of {}", material.name()),
        ));
        let swells = swelling_reason(material).map(|it| it.known);
        went_in.extend(swells.map(|known| (known, format!("swelling of {}", material.name()))));
    }
    // What suits a part in hand goes by the fit that the word named.
    went_in.push((found.pair.fit.known(), "this fit".to_owned()));
    let known = went_in.iter().map(|(known, _)| *known).fold(Known::Given, Known::worst);
    let mut unconfirmed: Vec<String> = Vec::new();
    for (known, what) in went_in {
        let is_said = unconfirmed.contains(&what) || what == "this fit" && !unconfirmed.is_empty();
        if known.is_unconfirmed() && !is_said {
            unconfirmed.push(what);
        }
    }
    (known, unconfirmed)
}

/// What a part is made of was not said, and there is no setting.
fn not_said(part: &Part, feature: Feature) -> Problem {
    let end = [
        part.warm.as_ref().map(|spot| spot.at.end),
        part.hub.as_ref().map(|spot| spot.at.end),
        part.shaft_material.as_ref().map(|spot| spot.at.end),
    ];
    let end = end.into_iter().flatten().max().unwrap_or(part.size.at.end);
    let both = feature == Feature::Hole && part.shaft_material.is_none();
    let shaft = if both { ", shaft steel" } else { "" };
    Problem::new(format!("what is the {feature} made of?"), end..end)
        .advise("say it")
        .fix(end..end, format!(", {feature} steel{shaft}"))
}

/// What swells, in room air and soaked, at 20 °C.
fn in_damp(found: &Found) -> Result<Vec<DampFigures>, fits_core::Error> {
    let mut out = Vec::new();
    for damp in [Damp::RoomAir, Damp::Soaked] {
        let growth = damp.growth(&found.hole).max(damp.growth(&found.shaft));
        if growth <= 0.0 {
            continue;
        }
        let swollen = found.warm.damp(damp, &found.hole, &found.shaft);
        let clearance = swollen.clearance_at(celsius(REFERENCE))?;
        out.push(DampFigures {
            state: damp.words(),
            growth_percent: (growth * 1e4).round() / 1e2,
            min_mm: Mm(clearance.lower()),
            max_mm: Mm(clearance.upper()),
        });
    }
    Ok(out)
}

fn notes(found: &Found) -> Vec<String> {
    let mut notes = found.assumed.clone();
    let swells = |material: &Material| Damp::RoomAir.growth(material) > 0.0;
    if swells(&found.hole) {
        notes.push(
            "a free plastic part grows its hole; held in a housing it closes instead: see `help bushings`"
                .to_owned(),
        );
    }
    if found.warm.spreads() != (0.0, 0.0) {
        notes.push("plastic's expansion is counted a third more or less, whichever is worse: try the very stock".to_owned());
    }
    if found.cold_end < -40.0 {
        notes.push("below -40 °C metals shrink less than these figures say".to_owned());
    }
    notes
}
