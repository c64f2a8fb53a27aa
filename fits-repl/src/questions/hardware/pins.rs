//! Spring pins, taper pins, clevis and cotter pins, and a pin across a shaft.

use fits_core::{
    Length, Limits,
    source::Known,
    standards::{
        bought::Family,
        drills::{Drill, Series},
        hardware::{ClevisPin, CotterPin, CrossPin, SpringPin, SpringPinKind, TaperPin},
    },
};
use uom::si::pressure::pascal;

use super::{
    HardwareAnswer, HardwareText, at,
    figures::{CrossPinFigures, Made, said, small},
    missing,
};
use crate::{
    problem::Problem,
    query::{Spot, Units},
    questions::part::{mates::thought_in, resolve::from_core},
    session::Session,
};

const INCH_SERIES: &[Series] = &[Series::Number, Series::Letter, Series::Fraction];

/// Shear yields at this share of the tensile yield (von Mises): 1/sqrt(3).
const SHEAR_SHARE: f64 = 0.577_350_269;

impl Session {
    pub(super) fn spring_pin(&self, text: &HardwareText) -> Result<HardwareAnswer, Problem> {
        let size = self.only_size(text)?;
        let is_coiled = text.choice("kind") == Some("coiled") || text.lead.starts_with("coiled");
        if is_coiled && text.choice("kind") == Some("slotted") {
            return Err(missing(text, "it is coiled or slotted, not both"));
        }
        let kind = match (self.shown, is_coiled) {
            (Units::Inches, true) => SpringPinKind::Coiled,
            (Units::Inches, false) => SpringPinKind::Slotted,
            (Units::Millimetres, false) => SpringPinKind::Iso8752,
            (Units::Millimetres, true) => {
                return Err(Problem::new(
                    "no metric coiled pin is listed here (ISO 8750)",
                    size.at.clone(),
                )
                .advise("in inches, as `coiled pin 1/4in`"));
            }
        };
        let nominal = self.nominal(size)?;
        let pin = SpringPin::find(kind, nominal).map_err(at(size))?;
        spring_pin(pin, nominal).map_err(at(size))
    }

    pub(super) fn taper_pin(&self, text: &HardwareText) -> Result<HardwareAnswer, Problem> {
        let long = text.role("long").map(|size| Ok((size, self.nominal(size)?))).transpose()?;
        let out = text.role("out").map(|size| self.nominal(size)).transpose()?;
        let (pin, spot) = self.which_taper_pin(text)?;
        let place = long.map_or(spot, |(size, _)| size.at.clone());
        let long = long.map(|(_, long)| long);
        taper_pin(pin, long, out).map_err(|error| from_core(&error, place))
    }

    /// An inch pin by its number, a metric one by its size, or the one for a shaft.
    fn which_taper_pin(
        &self,
        text: &HardwareText,
    ) -> Result<(TaperPin, std::ops::Range<usize>), Problem> {
        let given = [
            text.name.as_ref().map(|name| name.at.clone()),
            text.role("shaft").map(|size| size.at.clone()),
            text.free().next().map(|size| size.at.clone()),
        ];
        let mut given = given.into_iter().flatten();
        let spot = given.next().ok_or_else(|| missing(text, "the pin's number is missing"))?;
        if let Some(second) = given.next() {
            return Err(Problem::new("the pin is said twice", second).advise(text.example()));
        }
        if let Some(size) = text.role("shaft") {
            let shaft = self.nominal(size)?;
            let is_inch = self.shown == Units::Inches;
            let most = shaft.checked_scale(1, 3).map_err(at(size))?;
            let own = |pin: &TaperPin| pin.is_inch() == is_inch && pin.size() <= most;
            let least = shaft.checked_scale(1, 4).map_err(at(size))?;
            let found = TaperPin::all().filter(own).last();
            return found
                .filter(|pin| pin.size() >= least)
                .map(|pin| (pin, spot.clone()))
                .ok_or_else(|| {
                    Problem::new(
                        "no listed taper pin is a quarter to a third of this shaft",
                        spot.clone(),
                    )
                    .advise(text.example())
                });
        }
        if let Some(size) = text.free().next() {
            let nominal = self.nominal(size)?;
            if thought_in(size, self.units) == Units::Inches {
                let found = TaperPin::all().find(|pin| pin.is_inch() && pin.size() == nominal);
                return found.map(|pin| (pin, spot.clone())).ok_or_else(|| {
                    Problem::new("inch taper pins go by their number", spot.clone())
                        .advise(text.example())
                });
            }
            return TaperPin::metric(nominal).map(|pin| (pin, spot)).map_err(at(size));
        }
        let Some(Spot { value, at }) = &text.name else {
            return Err(missing(text, "the pin's number is missing"));
        };
        let is_number = value.contains(['/', '#'])
            || text.sizes.iter().any(|(_, size)| thought_in(size, self.units) == Units::Inches)
            || self.units == Units::Inches && text.sizes.is_empty();
        let value = value.trim_start_matches('#');
        let by_size = || TaperPin::metric(Length::from_millimetres(value.parse().ok()?).ok()?).ok();
        let number = TaperPin::inch(value);
        match (number, by_size()) {
            (Ok(_), Some(_)) if !is_number => {
                let rest = |pin: &str| match text.role("long").and(text.sizes.first()) {
                    Some(_) => format!("taper pin {pin} long "),
                    None => format!("taper pin {pin}"),
                };
                let lines = if text.sizes.is_empty() {
                    vec![rest(&format!("{value} long 2in")), rest(&format!("{value}mm long 50mm"))]
                } else {
                    Vec::new()
                };
                Err(Problem::new(
                    format!("number {value} of the inch pins, or the metric pin of {value} mm?"),
                    at.clone(),
                )
                .advise(format!(
                    "with mm for the metric pin, with a length in inches for the number, as \
                     `taper pin {value}mm long 50mm` or `taper pin {value} long 2in`"
                ))
                .choose(lines))
            }
            (Ok(pin), _) => Ok((pin, at.clone())),
            (Err(_), Some(pin)) if !is_number => Ok((pin, at.clone())),
            (Err(error), _) => Err(from_core(&error, at.clone())),
        }
    }

    pub(super) fn clevis_pin(&self, text: &HardwareText) -> Result<HardwareAnswer, Problem> {
        let size = self.only_size(text)?;
        let nominal = self.nominal(size)?;
        clevis_pin(nominal).map_err(at(size))
    }

    pub(super) fn cotter_pin(&self, text: &HardwareText) -> Result<HardwareAnswer, Problem> {
        let size = self.only_size(text)?;
        let nominal = self.nominal(size)?;
        cotter_pin(nominal).map_err(at(size))
    }

    pub(super) fn cross_pin(&self, text: &HardwareText) -> Result<HardwareAnswer, Problem> {
        let shaft_size = text.role("shaft").ok_or_else(|| missing(text, "the shaft is missing"))?;
        let shaft = self.nominal(shaft_size)?;
        let usual = CrossPin::usual(shaft).map_err(at(shaft_size))?;
        let pin_size = text.role("pin");
        let pin = match pin_size {
            Some(size) => self.nominal(size)?,
            None => usual.lower(),
        };
        let place = pin_size.unwrap_or(shaft_size);
        if !pin.is_positive() || pin.checked_mul(2).map_err(at(place))? > shaft {
            let why = said!("a pin of {} takes more than half of a shaft of {}", pin, shaft);
            return Err(Problem::new(why.to_string(), place.at.clone())
                .or_in_inches(why.said_in(fits_core::size::Unit::Inch))
                .advise("a quarter to a third of the shaft is usual"));
        }
        let named = text.material.clone();
        let steel = Spot { value: "steel".to_owned(), at: text.part.at.clone() };
        let metal = self.material_named(named.as_ref().unwrap_or(&steel))?;
        let yields = metal.yield_strength().ok_or_else(|| {
            let at = named.as_ref().map_or(text.part.at.clone(), |name| name.at.clone());
            Problem::new(format!("the yield of {} is not known here", metal.name()), at)
                .advise("a metal of the tables has one, as `cross pin shaft 1in pin 1/4in steel`")
        })?;
        let torque = text.torque.as_ref().map(|torque| self.amount(torque)).transpose()?;
        let collar = text.role("collar").map(|size| Ok((size, self.nominal(size)?))).transpose()?;
        let cross = CrossPin { shaft, pin };
        let shear_yield = yields.get::<pascal>() * SHEAR_SHARE;
        let yields_n_m = shear_yield / cross.shear(1.0);
        let mut answer = HardwareAnswer::new(
            "cross pin",
            said!("a solid pin of {} across a shaft of {}", pin, shaft),
        );
        answer.limits("usual pin", usual).size("pin", pin, Known::Given);
        let loaded = torque.unwrap_or(yields_n_m / 2.0);
        let collar_mpa = match collar {
            Some((size, outside)) => {
                Some(cross.collar_pressure(loaded, outside).map_err(at(size))? / 1e6)
            }
            None => None,
        };
        let shaft_mpa = cross.shaft_pressure(loaded) / 1e6;
        answer.carries = Some(CrossPinFigures {
            yields_n_m,
            torque_n_m: loaded,
            shear_mpa: cross.shear(loaded) / 1e6,
            shaft_mpa,
            collar_mpa,
        });
        if torque.is_none() {
            answer.note("no torque is said: the pressures are at half of that");
        }
        if shaft_mpa.max(collar_mpa.unwrap_or_default()) > yields.get::<pascal>() / 1e6 {
            answer.note("! the pin crushes the hole before it shears: a thicker pin or collar");
        }
        if named.is_none() {
            answer.note(said!("pin taken as {}: a harder one carries more", metal.name()));
        }
        cross_pin_notes(&mut answer, cross, usual, torque.map(|torque| yields_n_m / torque));
        answer.why(
            "torque at which the pin yields",
            format!("{yields_n_m:.1} N·m"),
            "pi x pin² x shaft x shear yield / 4: two sections, each half the shaft out; shear \
             yield = 0.577 x yield of the pin",
            "geometry; von Mises",
            Known::Formula.worst(metal.known()),
        );
        answer.known = answer.known.worst(metal.known());
        Ok(answer)
    }
}

fn spring_pin(pin: SpringPin, nominal: Length) -> Made {
    let kind = pin.kind();
    let title = said!("{} {}, {}", kind.name(), nominal, kind.standard());
    let mut answer = HardwareAnswer::new("spring pin", title);
    let hole = pin.hole()?;
    answer.limits("hole", hole).limits("pin, free", pin.free()?).limits("squeeze", pin.squeeze()?);
    let series: &[Series] = match kind.unit() {
        fits_core::size::Unit::Millimetre => &[Series::Metric],
        _ => INCH_SERIES,
    };
    let drill = Drill::over(hole.lower(), series).filter(|drill| hole.contains(drill.diameter()));
    if let Some(drill) = drill {
        answer.drill_name = Some(drill.name());
        answer.note(said!(
            "drill {}: it may cut over its size, so try one hole first: up to {} is allowed",
            drill.name(),
            hole.upper()
        ));
    }
    answer.note(
        "the same hole through both parts, drilled together; a slot across the load; hardened \
         parts take the hole before hardening (common practice)",
    );
    answer.why_all("by the pin's nominal size", pin.source());
    Ok(answer)
}

fn taper_pin(pin: TaperPin, long: Option<Length>, out: Option<Length>) -> Made {
    let (name, taper) = (pin.name(), pin.taper());
    let mut answer = HardwareAnswer::new(
        "taper pin",
        match (pin.is_inch(), long) {
            (true, Some(long)) => said!("taper pin number {}, {} long, 1:48", name, long),
            (true, None) => said!("taper pin number {}, 1:48", name),
            (false, Some(long)) => said!("taper pin of {}, {} long, 1:50", pin.size(), long),
            (false, None) => said!("taper pin of {}, 1:50", pin.size()),
        },
    );
    let limits = pin.end_limits()?;
    if let Some(long) = long {
        let [small_end, large_end] = pin.ends(long)?;
        let (drill, source, known) = pin.drill(long)?;
        answer
            .size("drill", drill.diameter(), known)
            .size("small end", small_end, Known::Formula.worst(pin.known()))
            .size("large end", large_end, Known::Formula.worst(pin.known()));
        answer.drill_name = Some(drill.name());
        let half = small_end.checked_add(large_end)?.half();
        let series: &[Series] = if pin.is_inch() { INCH_SERIES } else { &[Series::Metric] };
        answer.note(said!("drill {} right through, then the reamer", drill.name()));
        if let Some(step) =
            Drill::under(half, series).filter(|step| step.diameter() > drill.diameter())
        {
            answer.note(said!(
                "a long hole may be opened from the large side to half its depth with {}",
                step.name()
            ));
        }
        answer.why("drill", drill.name(), "for this pin and length", source, known);
    } else {
        let example = if pin.is_inch() {
            "with a length it has a drill and a small end: long 2in"
        } else {
            "with a length it has a large end: long 40mm"
        };
        answer.note(example);
    }
    answer.limits(if pin.is_inch() { "mic, large" } else { "mic, small" }, limits);
    let one =
        if pin.is_inch() { Length::THOU } else { Length::MILLIMETRE.checked_scale(1, 100)? };
    answer.note(said!(
        "{} on the hole's diameter lets it in by {}",
        small(one),
        one.checked_mul(taper)?
    ));
    if let Some(out) = out {
        answer.note(said!(
            "it stands out by {}: ream {} larger, which is {} deeper with the reamer",
            out,
            small(out.checked_scale(1, taper.into())?),
            out
        ));
    }
    answer.note(
        "ream both parts together, try the pin by hand: it should stand out a little and go \
         home with a hammer (common practice)",
    );
    answer.why_all(
        if pin.is_inch() { "large end - length / 48" } else { "small end + length / 50" },
        pin.source(),
    );
    Ok(answer)
}

fn clevis_pin(nominal: Length) -> Made {
    let pin = ClevisPin::find(nominal)?;
    let mut answer =
        HardwareAnswer::new("clevis pin", said!("clevis pin {}, ASME B18.8.1", nominal));
    let (shank, hole, centre) = (pin.shank()?, pin.cotter_hole()?, pin.centre()?);
    let grip = centre.lower().checked_sub(hole.upper().half())?;
    let play =
        Limits::new(nominal.checked_sub(shank.upper())?, nominal.checked_sub(shank.lower())?)?;
    answer
        .limits("shank", shank)
        .limits("cotter hole", hole)
        .size("cotter pin", pin.cotter(), Known::Seen)
        .limits("head to hole", centre)
        .size("length", pin.length(), Known::Seen)
        .size("parts, most", grip, Known::Formula);
    answer.note(said!(
        "a hole drilled or reamed to the nominal size has {} to {} of play; the standard gives \
         the clevis no hole",
        small(play.lower()),
        small(play.upper())
    ));
    answer.note("parts, most: what may stand between the head and the cotter pin; add a washer");
    answer.why_all("by the pin's nominal size", pin.source());
    Ok(answer)
}

fn cotter_pin(nominal: Length) -> Made {
    let pin = CotterPin::find(nominal)?;
    let mut answer =
        HardwareAnswer::new("cotter pin", said!("cotter pin {}, ASME B18.8.1", nominal));
    answer.size("hole", pin.hole(), Known::Seen).limits("shank", pin.shank()?);
    if let Some(drill) = Drill::over(pin.hole().checked_sub(Length::THOU)?, INCH_SERIES) {
        answer.drill_name = Some(drill.name());
        answer.note(said!("drill {}", drill.name()));
    }
    answer.note("a new pin each time; both legs bent, the head in the slot");
    answer.why_all("by the pin's nominal size", pin.source());
    Ok(answer)
}

fn cross_pin_notes(
    answer: &mut HardwareAnswer,
    cross: CrossPin,
    usual: Limits,
    margin: Option<f64>,
) {
    if let Some(margin) = margin {
        answer.note(said!(
            "the pin would yield at {} times that torque{}",
            format!("{margin:.2}"),
            if margin < 1.0 {
                ": ! it does not hold"
            } else if margin < 2.0 {
                ": ! less than the 2 to keep where the load is steady"
            } else {
                ""
            }
        ));
    }
    answer.note("keep to a half of the torque where it is steady, a quarter where it knocks or reverses (common practice)");
    let share = cross.pin.millimetres() / cross.shaft.millimetres();
    // A narrow hole takes the width of the pin by the shaft's diameter out of the section.
    let taken = 100.0 * share * 4.0 / std::f64::consts::PI;
    answer.note(said!(
        "the hole takes about {} percent of the shaft's section",
        format!("{taken:.0}")
    ));
    if !usual.contains(cross.pin) {
        answer.note(if cross.pin > usual.upper() {
            "! over a third of the shaft: the shaft becomes the weak part"
        } else {
            "! under a quarter of the shaft: the pin shears first"
        });
    }
    for (family, what) in [("inch dowel pin", "dowels"), ("m6 dowel pin", "m6 dowels")] {
        let Ok(family) = Family::named(family) else { continue };
        let names: Vec<String> = family
            .sizes()
            .filter(|size| usual.contains(*size))
            .map(|size| fits_core::standards::bought::spoken(size, family.unit()))
            .collect();
        if !names.is_empty() {
            answer.note(said!("{} of a usual size: {}", what, names.join(", ")));
        }
    }
}
