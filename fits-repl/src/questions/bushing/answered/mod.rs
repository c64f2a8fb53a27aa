//! A bushing pressed into its housing, and the shaft or the bore that gives
//! the clearance wanted.

pub(crate) mod found;
pub(crate) mod in_place;
pub(crate) mod lined;
pub(crate) mod play;
pub(crate) mod why;

pub(crate) use self::found::Found;
use std::borrow::Cow;

use fits_core::{
    Length, Limits, Subject,
    shop::{
        Damp,
        bushing::{Bush, InService, Pressed, Suited, bore_for},
        swelling_reason,
        warm::stands,
    },
    size::{Decimals, Rounding, Unit},
    source::Known,
    standards::{
        iso286::{Class, Feature},
        materials::{Material, Property},
    },
};
use uom::si::{force::newton, pressure::megapascal};

use crate::{
    answer::{
        Answer, BushingAnswer, BushingPart, InServiceFigures, Mm, PressureFigures, ShaftFigures,
        SuitedFigures,
    },
    problem::Problem,
    query::{BushingText, Size, Spot, Tolerance},
    questions::{
        bushing::answered::play::{Wanted, cautions, length_over_bore, remarks, speed},
        part::{
            mates::is_inch,
            resolve::{One, from_core},
            warm::{REFERENCE, celsius, known_of, to_a_tenth},
        },
        recalled_names,
    },
    session::Session,
};

const EXAMPLE: &str = "as in `bushing 20 od 26 long 20, hub steel od 60, bronze`";
/// Words for a lined bushing beside its material's name.
const LINED: [&str; 6] = ["lined", "ptfe-lined", "ptfe lined", "pom-lined", "wrapped", "du"];

fn part(one: &One) -> BushingPart {
    BushingPart {
        class: one.label.name().to_owned(),
        lower_mm: Mm(one.limits.lower()),
        upper_mm: Mm(one.limits.upper()),
    }
}

impl From<Suited> for SuitedFigures {
    fn from(suited: Suited) -> Self {
        Self {
            aim_mm: Mm(suited.aim),
            lower_mm: suited.limits.map(|limits| Mm(limits.lower())),
            upper_mm: suited.limits.map(|limits| Mm(limits.upper())),
        }
    }
}

impl Session {
    fn bore_of(&self, text: &BushingText) -> Result<Length, Problem> {
        let nominal = self.nominal(&text.bore.0)?;
        if nominal.is_positive() {
            return Ok(nominal);
        }
        let message = format!("a bore cannot be {nominal}");
        Err(Problem::new(message, text.bore.0.at.clone()).advise(EXAMPLE))
    }

    pub(crate) fn bushing(&self, text: &BushingText) -> Result<Answer, Problem> {
        let nominal = self.bore_of(text)?;
        if text.in_place {
            return self.bushing_in_place(text, nominal);
        }
        if text.material.as_ref().is_some_and(|spot| LINED.contains(&spot.value.as_str())) {
            return self.lined(text, nominal);
        }
        let found = self.found(text, nominal)?;
        let failed = |error: fits_core::Error| at_fault(&error, text);
        let pressed = found.bushing().press().map_err(failed)?;
        let Wanted { running, by: running_by, reason, mut notes } =
            self.wanted(text, found.kind, nominal)?;
        notes.splice(0..0, found.notes.iter().cloned());
        let given = self.given_shaft(text, nominal)?;
        let suited = pressed.shaft_for(running).map_err(failed)?;
        let shaft = match &given {
            Some(one) => Suited { aim: one.limits.middle(), limits: Some(one.limits) },
            None => suited,
        };
        if !shaft.aim.is_positive() {
            return Err(Problem::new(
                format!("a clearance of {} leaves no shaft", running.middle()),
                running_place(text),
            )
            .advise(EXAMPLE));
        }
        let turned = shaft.limits.map_or_else(|| Limits::new(shaft.aim, shaft.aim), Ok);
        let turned = turned.map_err(failed)?;
        let (ream, before) = finished_in_place(given.as_ref(), &suited, &pressed, running, nominal)
            .map_err(failed)?;
        // A bore finished in place is of that size; else as it was pressed.
        let finished = ream.filter(|_| given.is_some()).and_then(|ream| match ream {
            SuitedFigures { lower_mm: Some(lower), upper_mm: Some(upper), .. } => {
                Limits::new(lower.0, upper.0).ok()
            }
            SuitedFigures { aim_mm, .. } => Limits::new(aim_mm.0, aim_mm.0).ok(),
        });
        if finished.is_some_and(|finished| finished.upper() < pressed.bore.upper()) {
            notes.push(
                "some of these bores come out larger than that already: make them smaller"
                    .to_owned(),
            );
        }
        let in_place = finished.unwrap_or(pressed.bore);
        let in_service = self.in_service(text, &found, in_place, turned)?;
        notes.extend(too_tight(&in_service, self.shown.unit()));
        remarks(text, self.shown, &found, &pressed, &mut notes);
        let clearance = Limits::new(
            pressed.bore.lower().checked_sub(turned.upper()).map_err(failed)?,
            pressed.bore.upper().checked_sub(turned.lower()).map_err(failed)?,
        )
        .map_err(failed)?;
        let went_in = (&*in_service, text.warm.is_some());
        let (known, unconfirmed) = how_known(running, &found, &pressed, went_in);
        Ok(Answer::BushingFit(Box::new(BushingAnswer {
            nominal_mm: Mm(nominal),
            kind: found.kind.words(),
            material: found.material.name().to_owned(),
            housing_material: found.hub.name().to_owned(),
            housing: Some(part(&found.housing)),
            outside: Some(part(&found.outside)),
            bore: Some(part(&found.bore)),
            interference: Some(pressed.interference.into()),
            closes_in: Some(pressed.closes_in.into()),
            pressure_mpa: Some(PressureFigures {
                min: three_figures(pressed.pressure.0.get::<megapascal>()),
                max: three_figures(pressed.pressure.1.get::<megapascal>()),
            }),
            press_force_n: pressed.press_force.map(|force| three_figures(force.get::<newton>())),
            yields: pressed.yields,
            yielded_share: three_figures(pressed.yielded_share),
            bore_in_place: pressed.bore.into(),
            running: running.into(),
            running_by,
            known,
            unconfirmed,
            shaft: ShaftFigures {
                given: given.is_some(),
                aim_mm: Mm(shaft.aim),
                lower_mm: shaft.limits.map(|limits| Mm(limits.lower())),
                upper_mm: shaft.limits.map(|limits| Mm(limits.upper())),
            },
            clearance: clearance.into(),
            sized_by: ream
                .as_ref()
                .map(|_| if found.kind == Bush::Sintered { "burnish" } else { "ream" }),
            ream_in_place: ream,
            bore_before: before,
            in_service,
            length_over_bore: Some(length_over_bore(&found)),
            speed_m_per_s: speed(text, nominal).map(three_figures),
            notes,
            cautions: cautions(&found),
            reasons: reason.into_iter().collect(),
            found: Some(Box::new(found)),
        })))
    }

    fn given_shaft(&self, text: &BushingText, nominal: Length) -> Result<Option<One>, Problem> {
        let Some((size, tolerance)) = &text.shaft else { return Ok(None) };
        one_class(tolerance)?;
        let size = size.as_ref().unwrap_or(&text.bore.0);
        let said = Spot { value: Feature::Shaft, at: size.at.clone() };
        let own = if matches!(tolerance, Tolerance::Class(_)) && size.at == text.bore.0.at {
            nominal
        } else {
            self.nominal(size)?
        };
        let one = self.one(size, own, tolerance, Some(&said))?;
        // A slip of the finger, not a fit.
        let off = one.limits.middle().checked_sub(nominal).and_then(Length::checked_abs);
        if off.and_then(|off| off.checked_mul(25)).is_ok_and(|off| off > nominal) {
            return Err(Problem::new(
                format!("a shaft of {} does not run in a bore of {nominal}", one.limits.middle()),
                size.at.clone(),
            )
            .advise("as in `bushing 20 od 26 long 20, hub steel, bronze, shaft h6`"));
        }
        Ok(Some(one))
    }

    fn given_running(&self, text: &BushingText) -> Result<Option<Limits>, Problem> {
        let Some((from, to)) = &text.running else { return Ok(None) };
        let place = from.at.start..to.at.end;
        if let Some(service) = &text.service {
            return Err(Problem::new("the clearance is said twice", service.at.clone())
                .advise("keep one of them"));
        }
        let (least, most) = (self.length(from)?, self.length(to)?);
        let found = Limits::new(least, most).map_err(|error| {
            from_core(&error, place.clone()).advise(
                "the smaller comes first, as in `bushing 20 od 26 long 20, hub steel, bronze, running 0.03..0.06`",
            )
        })?;
        if found.lower().is_negative() {
            return Err(Problem::new("a running shaft has no interference", place).advise(EXAMPLE));
        }
        Ok(Some(found))
    }

    fn in_service(
        &self,
        text: &BushingText,
        found: &Found,
        in_place: Limits,
        shaft: Limits,
    ) -> Result<Vec<InServiceFigures>, Problem> {
        let shaft_material = match &text.shaft_material {
            Some(spot) => self.material_named(spot)?,
            None => Material::find("steel")
                .map(Cow::Borrowed)
                .map_err(|error| from_core(&error, text.bore.0.at.clone()))?,
        };
        let mut ends = Vec::new();
        if let Some(warm) = &text.warm {
            let (first, second) = &warm.value;
            for amount in [Some(first), second.as_ref()].into_iter().flatten() {
                let value = self.amount(amount)?;
                for part in [&found.material, &found.hub, &shaft_material] {
                    stands(part, celsius(value))
                        .map_err(|error| from_core(&error, amount.at.clone()))?;
                }
                ends.push((value, Damp::Dry));
            }
            ends.sort_by(|(a, _), (b, _)| a.total_cmp(b));
        }
        if Damp::RoomAir.growth(&found.material) > 0.0 {
            ends.push((REFERENCE, Damp::RoomAir));
            // Warm and damp together is what a nylon bushing sees at work.
            if let Some((warmest, _)) = ends.iter().rev().nth(1).copied() {
                ends.push((warmest, Damp::RoomAir));
            }
        }
        if Damp::Soaked.growth(&found.material) > 0.0 {
            ends.push((REFERENCE, Damp::Soaked));
        }
        ends.into_iter()
            .map(|(value, damp)| {
                let at: InService = found
                    .bushing()
                    .in_service(in_place, shaft, &shaft_material, celsius(value), damp)
                    .map_err(|error| at_fault(&error, text))?;
                Ok(InServiceFigures {
                    at_c: to_a_tenth(value),
                    damp: damp.words(),
                    min_mm: Mm(at.clearance.lower()),
                    max_mm: Mm(at.clearance.upper()),
                    interference_min_mm: Mm(at.interference.lower()),
                })
            })
            .collect()
    }
}

/// For a shaft in hand the bore is finished to suit it, in place or before
/// pressing; where no shaft is right in every such bore, in place for an h6.
fn finished_in_place(
    given: Option<&One>,
    suited: &Suited,
    pressed: &Pressed,
    running: Limits,
    nominal: Length,
) -> Result<(Option<SuitedFigures>, Option<SuitedFigures>), fits_core::Error> {
    if let Some(one) = given {
        let bore = bore_for(one.limits, running)?;
        let wanted = bore.limits.map_or_else(|| Limits::new(bore.aim, bore.aim), Ok)?;
        let before = pressed.bore_before(wanted)?;
        return Ok((Some(bore.into()), Some(before.into())));
    }
    if suited.limits.is_some() {
        return Ok((None, None));
    }
    let h6 = "h6".parse::<Class>().and_then(|class| class.limits(nominal));
    let bore = h6.and_then(|limits| bore_for(limits, running)).ok();
    Ok((bore.filter(|bore| bore.limits.is_some()).map(SuitedFigures::from), None))
}

/// One surface has one class.
fn one_class(tolerance: &Tolerance) -> Result<(), Problem> {
    let Tolerance::Pair(_, second) = tolerance else { return Ok(()) };
    Err(Problem::new("a pair of classes where one surface was meant", second.at()).advise(
        "give each its own, as in `bushing 20 od 26 s6 long 20, hub steel, bronze, housing H7`",
    ))
}

/// The core's refusal at the part of the query it is about.
fn at_fault(error: &fits_core::Error, text: &BushingText) -> Problem {
    let size = match error.subject() {
        Some(Subject::Length) => text.long.as_ref(),
        // The bushing is the first part, its housing the second.
        Some(Subject::Wall(1)) => text.hub_od.as_ref(),
        _ => text.od.as_ref().map(|(size, _)| size),
    };
    from_core(error, size.unwrap_or(&text.bore.0).at.clone()).advise(EXAMPLE)
}

/// How much more play it wants to run warm and in damp, too.
fn too_tight(in_service: &[InServiceFigures], unit: Unit) -> Option<String> {
    let least = in_service.iter().map(|at| at.min_mm.0).min()?;
    let short = least.checked_neg().ok().filter(|_| least.is_negative())?;
    // Up to what a shop measures.
    let places = if unit == Unit::Inch { 4 } else { 3 };
    let more = short.shown(Decimals { unit, places }, Rounding::Up);
    Some(format!("to run there too, it wants {more} {} more play", unit.symbol()))
}

fn running_place(text: &BushingText) -> std::ops::Range<usize> {
    text.running.as_ref().map_or(text.bore.0.at.clone(), |(from, to)| from.at.start..to.at.end)
}

/// The size as it was typed, for a hint.
fn nominal_text(size: &Size) -> &'static str {
    if is_inch(&size.value) == Some(true) { "1in" } else { "20" }
}

/// No more figures than friction and stiffness are known to.
fn three_figures(value: f64) -> f64 {
    if value == 0.0 || !value.is_finite() {
        return 0.0;
    }
    let step = 10_f64.powf(value.abs().log10().floor() - 2.0);
    let rounded = (value / step).round() * step;
    // Without the noise of the multiplication.
    format!("{rounded:.6}").parse().unwrap_or(rounded)
}

/// The least certain of what a bushing's answer rests on, and what of it no text
/// confirms.
fn how_known(
    running: Limits,
    found: &Found,
    pressed: &Pressed,
    (in_service, is_warm): (&[InServiceFigures], bool),
) -> (Known, String) {
    let friction = pressed.press_force.map_or(Known::Given, |_| pressed.friction);
    let mut went_in = vec![
        (running.known(), "the running clearance".to_owned()),
        (found.bore.limits.known(), "the bushing's bore".to_owned()),
        (found.outside.limits.known(), "its outside".to_owned()),
        (found.housing.limits.known(), "the housing's limits".to_owned()),
        (friction, "the friction".to_owned()),
        (found.material.known(), "figures of the bushing's material".to_owned()),
        (found.hub.known(), "figures of the housing's material".to_owned()),
    ];
    for part in [&found.material, &found.hub].into_iter().filter(|_| is_warm) {
        let known = known_of(part, Property::Expansion);
        went_in.push((known, format!("growth of {}", part.name())));
    }
    let swells = swelling_reason(&found.material).filter(|_| !in_service.is_empty());
    let swells = swells.map(|it| (it.known, format!("growth of {}", found.material.name())));
    went_in.extend(swells);
    let known = went_in.iter().map(|(known, _)| *known).fold(Known::Given, Known::worst);
    let named = went_in.into_iter().map(|(known, what)| (what, known));
    (known, recalled_names(named).join(", "))
}
