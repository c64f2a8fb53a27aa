//! Readings with an instrument and a temperature.

use std::borrow::Cow;

use fits_core::{
    Length,
    shop::{
        Reading,
        cooling::{self, Air, Body},
        verdict::{Measured, Rule, Thermal},
    },
    source::{Known, Reason},
    standards::{
        iso286::Feature,
        materials::{Material, Property},
    },
};
use uom::si::{
    f64::{TemperatureInterval, ThermodynamicTemperature},
    temperature_interval::kelvin,
    thermodynamic_temperature::degree_celsius,
    time::minute,
};

use crate::{
    answer::{FormFigures, MeasuredReading, Mm, ReadingAnswer, ReadingFigures, WarmFigures},
    problem::Problem,
    query::{Measuring, Part, Size, Units, Warmth, Work},
    questions::part::resolve::{One, from_core},
    session::Session,
};

/// How near to its size a warm part is waited for, unless given.
const NEAR: Length = Length::TENTH;

/// How warm a part was, and all that follows from it.
struct Warm {
    thermal: Thermal,
    material: Cow<'static, Material>,
    part_c: f64,
    room_c: f64,
}

impl Session {
    /// What is said of measuring belongs to a reading, and what is said of a
    /// rehearsal to one.
    pub(crate) fn measuring_fits(part: &Part, measuring: &Measuring) -> Result<(), Problem> {
        let is_logged =
            part.from.is_some() && part.work.as_ref().is_none_or(|work| work.value != Work::Ream);
        let rehearsed = [
            measuring.runs.as_ref().map(|spot| &spot.at),
            measuring.seed.as_ref().map(|spot| &spot.at),
            measuring.fault.as_ref().map(|spot| &spot.at),
            measuring.overhang.as_ref().filter(|_| !is_logged).map(|spot| &spot.at),
        ];
        if let Some(at) = rehearsed.into_iter().flatten().next() {
            return Err(Problem::new("this belongs to a rehearsal", at.clone())
                .advise("as in `rehearse 20 H7 from 19.6 with bore gauge, runs 1000, seed 7`"));
        }
        let warmth = |warmth: &Option<Warmth>| warmth.as_ref().map(|it| it.temperature.at.clone());
        let said = [
            measuring.instruments.first().filter(|_| !is_logged).map(|spot| spot.at.clone()),
            warmth(&measuring.at),
            warmth(&measuring.room),
            measuring.within.as_ref().map(|size| size.at.clone()),
        ];
        let both = part.hole.is_some() && part.shaft.is_some();
        if let Some(at) = said.into_iter().flatten().next()
            && part.reading.is_none()
            && !both
        {
            return Err(if part.hole.is_some() || part.shaft.is_some() {
                Problem::new("the mate follows a size at 20 °C", at).advise(
                    "judge the reading by itself first, as `20 H7 = 20.013 with bore gauge`",
                )
            } else {
                let problem = Problem::new("this goes with a reading, and none is given", at);
                // Where the parts' materials are given, the pair is to work there.
                match &measuring.at {
                    Some(place) if part.shaft_material.is_some() || part.hub.is_some() => {
                        let temperature = &place.temperature.at;
                        let word = temperature.start.saturating_sub(3)..temperature.start;
                        problem.advise("a pair at work is asked by warm").fix(word, "warm ")
                    }
                    _ => problem
                        .advise("as in `20 H7 = 20.013 with bore gauge at 31C, hole aluminium`"),
                }
            });
        }
        if let Some(warm) = part.warm.as_ref().filter(|_| measuring.is_of_readings()) {
            return Err(Problem::new(
                "a pair in the warm goes by single sizes at 20 °C",
                warm.at.clone(),
            )
            .advise("as in `20 H7/g6 = 20.013/19.985 warm 60C, hole nylon 66, shaft steel`"));
        }
        let lone = warmth(&measuring.room)
            .or_else(|| measuring.within.as_ref().map(|size| size.at.clone()));
        match (lone, &measuring.at) {
            (Some(at), None) => Err(Problem::new("the part's own temperature is missing", at)
                .advise("as in `20 H7 = 20.013 at 31C, room 24C, hole aluminium`")),
            _ => Ok(()),
        }
    }

    /// Readings of one feature, judged. `places` hold all of them.
    pub(crate) fn judged_places(
        &self,
        part: &Part,
        one: &One,
        places: &[Vec<&Size>],
    ) -> Result<ReadingAnswer, Problem> {
        let nothing = Measuring::default();
        let measuring = part.measuring.as_deref().unwrap_or(&nothing);
        let first = places.first().and_then(|place| place.first());
        let at = first.map_or(part.size.at.clone(), |size| size.at.clone());
        let failed = |error: fits_core::Error| from_core(&error, at.clone());
        let kind = one.kind.unwrap_or(Feature::Hole);
        let mut read: Vec<Vec<Length>> = Vec::with_capacity(places.len());
        for place in places {
            let mut sizes = Vec::with_capacity(place.len());
            for size in place {
                let length = self.nominal(size)?;
                likely(one, length, size)?;
                sizes.push(length);
            }
            read.push(sizes);
        }
        let slices: Vec<&[Length]> = read.iter().map(Vec::as_slice).collect();
        let mut assumed = Vec::new();
        let gauge = self.gauge(&measuring.instruments, kind, one.nominal, &mut assumed)?;
        let warm = self.how_warm(part, measuring, (kind, gauge.is_some()), &mut assumed)?;
        let measured = Measured::of(
            &slices,
            gauge.as_ref().map(|it| it.off),
            warm.as_ref().map(|it| &it.thermal),
        )
        .map_err(failed)?;
        let judged = measured.judge(kind, one.limits, Rule::Edition2017).map_err(failed)?;
        // Whichever place is furthest from a limit has most to go to it.
        let form = measured.form();
        let apart = form.is_some_and(fits_core::shop::verdict::FormDeviation::is_real);
        let sizes = || measured.places().iter().map(|place| place.size);
        let (least, most) = match (apart, sizes().min(), sizes().max()) {
            (true, Some(least), Some(most)) => (least, most),
            _ => (measured.size(), measured.size()),
        };
        let (behind, ahead) = if kind == Feature::Hole { (least, most) } else { (most, least) };
        let of = |size| Reading::judge(kind, one.limits, size).map_err(failed);
        let mut reading = of(measured.size())?;
        reading.to_first_limit = of(behind)?.to_first_limit;
        reading.to_last_limit = of(ahead)?.to_last_limit;
        reading.verdict = judged.verdict;
        let standard = measured.uncertainty();
        let mut reasons = Vec::new();
        reasons.extend(gauge.iter().flat_map(|gauge| gauge.reasons.iter().cloned()));
        if let Some(standard) = standard {
            reasons.push(Reason {
                figure: "verdict".into(),
                value: judged.verdict.word().into(),
                rule: format!(
                    "good, over or under is said at a probability of 95 %; standard uncertainty {standard}, guard band 1.645 of it"
                ).into(),
                source: "ISO 14253-1:2017, as secondary texts give it".into(),
                known: Known::Memory,
            });
        }
        let warm = match &warm {
            Some(warm) => Some(self.warm_figures(measuring, warm, &measured, &mut reasons)?),
            None => None,
        };
        let bias_rules = gauge.as_ref().is_some_and(|gauge| {
            standard.is_some_and(|standard| {
                let (bias, all) = (gauge.off.bias.millimetres(), standard.millimetres());
                // Or no number of readings could prove the part good.
                2.0 * bias * bias > all * all || 3.29 * bias > one.limits.tolerance().millimetres()
            })
        });
        let mut figures = ReadingFigures::new(measured.read(), reading);
        figures.uncertainty_mm = standard.and_then(|it| it.checked_mul(2).ok()).map(Mm);
        figures.probability_good = standard.map(|_| judged.good);
        figures.measured = Some(Box::new(MeasuredReading {
            readings: measured.count(),
            size_at_20_mm: Mm(measured.size()),
            instrument: gauge.as_ref().map(|gauge| gauge.name.clone()),
            assumed,
            standard_uncertainty_mm: standard.map(Mm),
            bias_rules,
            guard_mm: standard.map(|_| Mm(judged.guard)),
            probability_over: standard.map(|_| judged.over),
            probability_under: standard.map(|_| judged.under),
            spread_mm: measured.spread().map(Mm),
            scatters: gauge.and(measured.spread()).map(|_| measured.scatters()),
            form: form.map(|form| FormFigures {
                places_mm: sizes().map(Mm).collect(),
                difference_mm: Mm(form.difference),
                explained_mm: form.explained.map(Mm),
                real: form.is_real(),
            }),
            warm,
            reasons,
        }));
        Ok(ReadingAnswer { feature: one.answer(), reading: figures })
    }

    /// How warm the part was, where that was said.
    fn how_warm(
        &self,
        part: &Part,
        measuring: &Measuring,
        (kind, is_gauged): (Feature, bool),
        assumed: &mut Vec<String>,
    ) -> Result<Option<Warm>, Problem> {
        let Some(at) = &measuring.at else { return Ok(None) };
        let either =
            at.either.as_ref().or(measuring.room.as_ref().and_then(|it| it.either.as_ref()));
        if let Some(either) = either
            && !is_gauged
        {
            let message =
                "how well a temperature is known counts beside the instrument's own uncertainty";
            return Err(Problem::new(message, either.at.clone()).advise(
                "name it, as `20 H7 = 20.013 with bore gauge at 31\u{b1}1C, hole aluminium`",
            ));
        }
        let (part_c, part_sd) = self.warmth(at)?;
        let (room_c, gauge_sd) = match &measuring.room {
            Some(room) => self.warmth(room)?,
            None => (cooling::REFERENCE_C, 0.0),
        };
        let said = if kind == Feature::Hole { &part.hub } else { &part.shaft_material };
        let Some(material) = self.made_of(said.as_ref(), kind.word(), assumed)? else {
            let example = if kind == Feature::Hole {
                "as in `20 H7 = 20.013 at 31C, hole aluminium`"
            } else {
                "as in `20 g6 = 19.99 at 31C, shaft steel`"
            };
            let at = at.temperature.at.clone();
            return Err(Problem::new("what a warm part is of decides how much it grows", at)
                .advise(example));
        };
        let Some(expansion) = material.expansion() else {
            return Err(Problem::new(
                format!("how much {material} grows is not known"),
                said.as_ref().map_or(&at.temperature.at, |name| &name.at).clone(),
            )
            .advise("let it cool to 20 °C, or name its like"));
        };
        // Gauges are of steel; the table holds it.
        let gauge = Material::find("steel").ok().and_then(Material::expansion).unwrap_or(expansion);
        let body = |expansion, celsius| Body {
            expansion,
            temperature: ThermodynamicTemperature::new::<degree_celsius>(celsius),
        };
        let thermal = Thermal {
            part_sd: TemperatureInterval::new::<kelvin>(part_sd),
            gauge_sd: TemperatureInterval::new::<kelvin>(gauge_sd),
            ..Thermal::exact(body(expansion, part_c), body(gauge, room_c))
        };
        // Nonsense is refused where it was typed.
        for (body, warmth) in [(thermal.part, Some(at)), (thermal.gauge, measuring.room.as_ref())] {
            if let (Err(error), Some(warmth)) = (cooling::growth(Length::ZERO, body), warmth) {
                return Err(from_core(&error, warmth.temperature.at.clone()));
            }
        }
        Ok(Some(Warm { thermal, material, part_c, room_c }))
    }

    /// Degrees Celsius, and their standard uncertainty.
    fn warmth(&self, warmth: &Warmth) -> Result<(f64, f64), Problem> {
        let celsius = self.amount(&warmth.temperature)?;
        let Some(either) = &warmth.either else { return Ok((celsius, 0.0)) };
        // A difference of temperatures has no zero point to shift.
        let unit = either.value.unit.or(warmth.temperature.value.unit);
        let scale = match unit {
            Some(unit) => unit.scale,
            None if self.units == Units::Inches => 1.0 / 1.8,
            None => 1.0,
        };
        Ok((celsius, either.value.number * scale))
    }

    fn warm_figures(
        &self,
        measuring: &Measuring,
        warm: &Warm,
        measured: &Measured,
        reasons: &mut Vec<Reason>,
    ) -> Result<WarmFigures, Problem> {
        let within = match &measuring.within {
            Some(size) => self.length(size)?,
            None => NEAR,
        };
        let at = match (&measuring.within, &measuring.at) {
            (Some(size), _) => size.at.clone(),
            (None, Some(warmth)) => warmth.temperature.at.clone(),
            (None, None) => 0..0,
        };
        let failed = |error: fits_core::Error| from_core(&error, at.clone());
        let Warm { thermal, material, part_c, room_c } = warm;
        let growth = cooling::growth(measured.size(), thermal.part).map_err(failed)?;
        let room = thermal.gauge.temperature;
        let family = material.family();
        let wait = cooling::wait(measured.size(), family, thermal.part, room, within, Air::Still)
            .map_err(failed)?;
        reasons.push(Reason {
            figure: "size at 20 °C".into(),
            value: measured.size().to_string().into(),
            rule: format!(
                "{} × (1 + αg ({room_c} − 20)) / (1 + αp ({part_c} − 20)), αp of {material}, αg of a steel gauge",
                measured.read()
            ).into(),
            source: "ISO 1: sizes hold at 20 °C".into(),
            known: Known::Formula,
        });
        reasons.extend(material.reason(Property::Expansion));
        reasons.extend(cooling::reasons(family, Air::Still));
        Ok(WarmFigures {
            temperature_c: *part_c,
            material: material.name().to_owned(),
            room_c: *room_c,
            growth_mm: Mm(growth),
            wait_min: wait.get::<minute>(),
            wait_within_mm: Mm(within),
        })
    }
}

/// Refuses a reading that would be likely in the other unit: 0.787 for a hole
/// of 20 mm is the inch size, typed without its unit.
pub(crate) fn likely(one: &One, read: Length, size: &Size) -> Result<(), Problem> {
    let (nominal, read) = (one.nominal.millimetres(), read.millimetres());
    let near = |ratio: f64| (0.95..1.05).contains(&ratio);
    let unit = if near(nominal / (read * 25.4)) {
        "in"
    } else if near(nominal * 25.4 / read) {
        "mm"
    } else {
        return Ok(());
    };
    Err(Problem::new("that is the size in the other unit", size.at.clone())
        .advise("give its unit")
        .fix(size.at.end..size.at.end, unit))
}
