//! A bushing pressed into its housing, and the shaft or the bore that gives
//! the clearance wanted.

use fits_core::{
    Length, Limits,
    shop::{
        Damp, Hazard,
        bushing::{
            Bush, Bushing, InService, Pressed, Running, Service, Suited, bore_for, shaft_for,
        },
        swelling_reason,
        warm::stands,
    },
    source::{Known, Reason},
    standards::{
        iso286::{Class, Feature},
        materials::{Care, Material, Property},
    },
};
use uom::si::{
    f64::ThermodynamicTemperature, force::newton, pressure::megapascal,
    thermodynamic_temperature::degree_celsius,
};

use super::{
    Session,
    resolve::{One, from_core},
    warm::material,
    why::{said, said_range},
};
use crate::{
    answer::{
        Answer, BushingAnswer, BushingPart, Ends, InServiceFigures, Mm, PressureFigures,
        ShaftFigures, SuitedFigures,
    },
    problem::Problem,
    query::{BushingText, Size, Spot, Tolerance},
};

const EXAMPLE: &str = "as in `bushing 20 od 26 long 20, hub steel od 60, bronze`";
const REFERENCE: f64 = 20.0;
/// Words for a lined bushing beside its material's name.
const LINED: [&str; 6] = ["lined", "ptfe-lined", "ptfe lined", "pom-lined", "wrapped", "du"];

/// What is pressed where, resolved.
struct Found {
    kind: Bush,
    bore: One,
    outside: One,
    housing: One,
    hub_outside: Length,
    material: &'static Material,
    hub: &'static Material,
    length: Length,
    reasons: Vec<Reason>,
    notes: Vec<String>,
}

impl Found {
    fn bushing(&self) -> Bushing<'_> {
        Bushing {
            bore: self.bore.limits,
            outside: self.outside.limits,
            material: self.material,
            housing: self.housing.limits,
            housing_outside: self.hub_outside,
            hub: self.hub,
            length: self.length,
        }
    }
}

fn celsius(value: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(value)
}

fn part(one: &One) -> BushingPart {
    BushingPart {
        class: one.label.to_string(),
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
    pub(super) fn bushing(&self, text: &BushingText) -> Result<Answer, Problem> {
        let nominal = self.nominal(&text.bore.0)?;
        if !nominal.is_positive() {
            return Err(Problem::new(
                format!("a bore of {nominal} is none"),
                text.bore.0.at.clone(),
            )
            .advise(EXAMPLE));
        }
        if text.material.as_ref().is_some_and(|spot| LINED.contains(&spot.value.as_str())) {
            return self.lined(text, nominal);
        }
        let found = self.found(text, nominal)?;
        let failed = |error: fits_core::Error| at_fault(&error, text);
        let pressed = found.bushing().press().map_err(failed)?;
        let (running, running_by, mut notes) = self.wanted(text, found.kind, nominal)?;
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
        // For a shaft in hand the bore is finished to suit; else the shaft.
        let (ream, before) = match &given {
            Some(one) => {
                let bore = bore_for(one.limits, running).map_err(failed)?;
                let wanted = bore.limits.map_or_else(|| Limits::new(bore.aim, bore.aim), Ok);
                let before = pressed.bore_before(wanted.map_err(failed)?).map_err(failed)?;
                (Some(bore.into()), Some(before.into()))
            }
            None if suited.limits.is_none() => {
                // No shaft is right in every such bore: ream in place for an h6.
                let h6 = "h6".parse::<Class>().and_then(|class| class.limits(nominal));
                let bore = h6.and_then(|limits| bore_for(limits, running)).ok();
                (bore.filter(|bore| bore.limits.is_some()).map(SuitedFigures::from), None)
            }
            None => (None, None),
        };
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
        let short =
            in_service.iter().map(|at| at.min_mm.0).min().filter(|least| least.is_negative());
        if let Some(short) = short.and_then(|least| least.checked_neg().ok()) {
            notes.push(format!("to run there too, it wants {} more play", said(self.shown, short)));
        }
        remarks(text, &found, &pressed, &mut notes);
        let clearance = Limits::new(
            pressed.bore.lower().checked_sub(turned.upper()).map_err(failed)?,
            pressed.bore.upper().checked_sub(turned.lower()).map_err(failed)?,
        )
        .map_err(failed)?;
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
            bore_in_place: pressed.bore.into(),
            running: running.into(),
            running_by,
            shaft: ShaftFigures {
                given: given.is_some(),
                aim_mm: Mm(shaft.aim),
                lower_mm: shaft.limits.map(|limits| Mm(limits.lower())),
                upper_mm: shaft.limits.map(|limits| Mm(limits.upper())),
            },
            clearance: clearance.into(),
            ream_in_place: ream,
            bore_before: before,
            in_service,
            length_over_bore: Some(length_over_bore(&found)),
            speed_m_per_s: speed(text, nominal).map(three_figures),
            notes,
            cautions: cautions(&found),
        })))
    }

    /// A lined bushing by its maker's table.
    fn lined(&self, text: &BushingText, nominal: Length) -> Result<Answer, Problem> {
        let found =
            Bush::lined(nominal).map_err(|error| from_core(&error, text.bore.0.at.clone()))?;
        let failed = |error: fits_core::Error| from_core(&error, text.bore.0.at.clone());
        if let Some(at) = [
            text.od.as_ref().map(|(size, _)| size.at.clone()),
            text.housing.as_ref().and_then(|(size, _)| size.as_ref()).map(|size| size.at.clone()),
            text.warm.as_ref().map(|warm| warm.at.clone()),
        ]
        .into_iter()
        .flatten()
        .next()
        {
            return Err(Problem::new(
                "a lined bushing's bore goes by the housing its maker gives",
                at,
            )
            .advise("as in `bushing 20 lined`"));
        }
        let mate = found.mate.map_or_else(|| Limits::new(nominal, nominal), Ok).map_err(failed)?;
        let maker = Limits::new(
            found.limits.lower().checked_sub(mate.upper()).map_err(failed)?,
            found.limits.upper().checked_sub(mate.lower()).map_err(failed)?,
        )
        .map_err(failed)?;
        let asked = self.given_running(text)?;
        let running = asked.unwrap_or(maker);
        let given = self.given_shaft(text, nominal)?;
        let shaft = match (&given, asked) {
            (Some(one), _) => Suited { aim: one.limits.middle(), limits: Some(one.limits) },
            (None, Some(running)) => shaft_for(found.limits, running).map_err(failed)?,
            (None, None) => Suited { aim: mate.middle(), limits: Some(mate) },
        };
        let turned = shaft.limits.map_or_else(|| Limits::new(shaft.aim, shaft.aim), Ok);
        let turned = turned.map_err(failed)?;
        let clearance = Limits::new(
            found.limits.lower().checked_sub(turned.upper()).map_err(failed)?,
            found.limits.upper().checked_sub(turned.lower()).map_err(failed)?,
        )
        .map_err(failed)?;
        let mut notes = vec![
            "the bore is the maker's housing less two walls; never ream it: the lining is thin"
                .to_owned(),
        ];
        fast(text, Bush::Lined, nominal, &mut notes);
        Ok(Answer::BushingFit(Box::new(BushingAnswer {
            nominal_mm: Mm(nominal),
            kind: Bush::Lined.words(),
            material: found.family.name().to_owned(),
            housing_material: String::new(),
            housing: None,
            outside: None,
            bore: None,
            interference: None,
            closes_in: None,
            pressure_mpa: None,
            press_force_n: None,
            yields: false,
            bore_in_place: found.limits.into(),
            running: running.into(),
            running_by: if asked.is_some() { "as given" } else { "by its maker's table" }
                .to_owned(),
            shaft: ShaftFigures {
                given: given.is_some(),
                aim_mm: Mm(shaft.aim),
                lower_mm: shaft.limits.map(|limits| Mm(limits.lower())),
                upper_mm: shaft.limits.map(|limits| Mm(limits.upper())),
            },
            clearance: clearance.into(),
            ream_in_place: None,
            bore_before: None,
            in_service: Vec::new(),
            length_over_bore: None,
            speed_m_per_s: speed(text, nominal).map(three_figures),
            notes,
            cautions: vec![Hazard::Pressing.caution()],
        })))
    }

    fn found(&self, text: &BushingText, nominal: Length) -> Result<Found, Problem> {
        let end = text.bore.0.at.end..text.bore.0.at.end;
        let Some((od, od_tolerance)) = &text.od else {
            return Err(Problem::new("the bushing's outside is missing", end).advise(EXAMPLE));
        };
        let outside = self.nominal(od)?;
        let last = [
            text.hub.as_ref().map(|spot| spot.at.end),
            text.hub_od.as_ref().map(|size| size.at.end),
            text.long.as_ref().map(|size| size.at.end),
            Some(od.at.end),
        ];
        let last = last.into_iter().flatten().max().unwrap_or(end.end);
        let missing = |what: &str, fix: &str| {
            Problem::new(what, last..last).advise("say it").fix(last..last, fix)
        };
        let Some(named) = &text.material else {
            return Err(missing("what is the bushing made of?", ", bronze"));
        };
        let made_of = material(named)?;
        let Some(hub) = &text.hub else {
            return Err(missing("what is the housing made of?", ", hub steel"));
        };
        let hub = material(hub)?;
        let Some(long) = &text.long else {
            return Err(missing(
                "how long is the bushing?",
                &format!(" long {}", nominal_text(od)),
            ));
        };
        let length = self.nominal(long)?;
        let kind = Bush::of(made_of);
        let mut notes = Vec::new();
        let hub_outside = match &text.hub_od {
            Some(size) => self.nominal(size)?,
            None => {
                notes.push("the housing is taken as twice as large as the bushing".to_owned());
                outside.checked_mul(2).map_err(|error| from_core(&error, od.at.clone()))?
            }
        };
        let made = kind.made(nominal, outside).map_err(|error| {
            let at = if error.is_out_of_table() { text.bore.0.at.clone() } else { od.at.clone() };
            from_core(&error, at).advise(EXAMPLE)
        })?;
        let surface = |size: &Size, tolerance: &Tolerance, kind, limits, name| {
            if matches!(tolerance, Tolerance::Bare) {
                let nominal = self.nominal(size)?;
                return Ok(One::given(Some(kind), nominal, limits, name));
            }
            one_class(tolerance)?;
            let said = Spot { value: kind, at: size.at.clone() };
            self.one(size, self.nominal(size)?, tolerance, Some(&said))
        };
        let as_bought = if kind == Bush::Plastic { "as turned" } else { "as bought" };
        let bore = surface(&text.bore.0, &text.bore.1, Feature::Hole, made.bore, as_bought)?;
        let outside_one = surface(od, od_tolerance, Feature::Shaft, made.outside, as_bought)?;
        let housing = self.housing(text, od, outside)?;
        Ok(Found {
            kind,
            bore,
            outside: outside_one,
            housing,
            hub_outside,
            material: made_of,
            hub,
            length,
            reasons: made.reasons,
            notes,
        })
    }

    /// The bore of the housing: H7 where nothing is said.
    fn housing(&self, text: &BushingText, od: &Size, outside: Length) -> Result<One, Problem> {
        let (size, tolerance) = match &text.housing {
            Some((size, tolerance)) => (size.as_ref().unwrap_or(od), tolerance),
            None => {
                let class: Class = "H7"
                    .parse()
                    .map_err(|error: fits_core::Error| from_core(&error, od.at.clone()))?;
                let limits =
                    class.limits(outside).map_err(|error| from_core(&error, od.at.clone()))?;
                return Ok(One::of_class(class, outside, limits));
            }
        };
        one_class(tolerance)?;
        let said = Spot { value: Feature::Hole, at: size.at.clone() };
        self.one(size, self.nominal(size)?, tolerance, Some(&said))
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
        self.one(size, own, tolerance, Some(&said)).map(Some)
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
            return Err(
                Problem::new("a shaft that is to run has no interference", place).advise(EXAMPLE)
            );
        }
        Ok(Some(found))
    }

    /// The clearance wanted, by what, and what to say of it.
    fn wanted(
        &self,
        text: &BushingText,
        kind: Bush,
        nominal: Length,
    ) -> Result<(Limits, String, Vec<String>), Problem> {
        let mut notes = Vec::new();
        if let Some(found) = self.given_running(text)? {
            fast(text, kind, nominal, &mut notes);
            return Ok((found, "as given".to_owned(), notes));
        }
        let service = service(text, nominal)?;
        if let (Bush::Plastic, Some(_)) = (kind, service) {
            notes.push("plastic's play goes by its bore, whatever the service".to_owned());
        }
        let found = Running::wanted(kind, service, nominal).map_err(|error| {
            let at = text.service.as_ref().map_or(text.bore.0.at.clone(), |spot| spot.at.clone());
            from_core(&error, at).advise(
                "give the clearance wanted, as in `bushing 20 od 26 long 20, hub steel, bronze, running 0.03..0.06`",
            )
        })?;
        fast(text, kind, nominal, &mut notes);
        let by = match (kind, service) {
            (Bush::Bronze, service) => {
                format!("for {} service", service.unwrap_or_default().words())
            }
            (Bush::Sintered, Some(service)) => format!("for {} service", service.words()),
            _ => format!("by the rule for {}", kind.words()),
        };
        let by = match found.reason.known {
            Known::Memory => format!("{by}, as recalled"),
            Known::Practice => format!("{by}, common practice"),
            _ => by,
        };
        Ok((found.clearance, by, notes))
    }

    fn in_service(
        &self,
        text: &BushingText,
        found: &Found,
        in_place: Limits,
        shaft: Limits,
    ) -> Result<Vec<InServiceFigures>, Problem> {
        let shaft_material = match &text.shaft_material {
            Some(spot) => material(spot)?,
            None => Material::find("steel")
                .map_err(|error| from_core(&error, text.bore.0.at.clone()))?,
        };
        let mut ends = Vec::new();
        if let Some(warm) = &text.warm {
            let (first, second) = &warm.value;
            for amount in [Some(first), second.as_ref()].into_iter().flatten() {
                let value = self.amount(amount)?;
                for part in [found.material, found.hub, shaft_material] {
                    stands(part, celsius(value))
                        .map_err(|error| from_core(&error, amount.at.clone()))?;
                }
                ends.push((value, Damp::Dry));
            }
            ends.sort_by(|(a, _), (b, _)| a.total_cmp(b));
        }
        if Damp::RoomAir.growth(found.material) > 0.0 {
            ends.push((REFERENCE, Damp::RoomAir));
            // Warm and damp together is what a nylon bushing sees at work.
            if let Some((warmest, _)) = ends.iter().rev().nth(1).copied() {
                ends.push((warmest, Damp::RoomAir));
            }
        }
        ends.into_iter()
            .map(|(value, damp)| {
                let at: InService = found
                    .bushing()
                    .in_service(in_place, shaft, shaft_material, celsius(value), damp)
                    .map_err(|error| at_fault(&error, text))?;
                Ok(InServiceFigures {
                    at_c: value,
                    damp: damp.words(),
                    min_mm: Mm(at.clearance.lower()),
                    max_mm: Mm(at.clearance.upper()),
                    interference_min_mm: Mm(at.interference.lower()),
                })
            })
            .collect()
    }

    pub(super) fn why_bushing(
        &self,
        figures: &mut Vec<Reason>,
        text: &BushingText,
        answer: &Answer,
    ) -> Result<(), Problem> {
        let Answer::BushingFit(answer) = answer else { return Ok(()) };
        let units = self.shown;
        let nominal = self.nominal(&text.bore.0)?;
        let ends = |ends: Ends| {
            format!("{} to {}", said(units, ends.min_mm.0), said(units, ends.max_mm.0))
        };
        let mut by_formula = |figure: &str, value: String, rule: String, source: &str| {
            figures.push(Reason {
                figure: figure.into(),
                value,
                rule,
                source: source.into(),
                known: Known::Formula,
            });
        };
        let (Some(interference), Some(closes_in)) = (answer.interference, answer.closes_in) else {
            let found =
                Bush::lined(nominal).map_err(|error| from_core(&error, text.bore.0.at.clone()))?;
            figures.push(found.reason());
            return Ok(());
        };
        let found = self.found(text, nominal)?;
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
        let moduli = [found.material, found.hub]
            .map(|it| it.modulus().get::<uom::si::pressure::gigapascal>());
        by_formula(
            "the bore closes in",
            ends(closes_in),
            format!(
                "Lame: rings of {} to {} (E {:.1} GPa, nu {}) and {} (E {:.1} GPa, nu {}), one in the other",
                said(units, found.bore.limits.middle()),
                said(units, found.housing.limits.middle()),
                moduli[0],
                found.material.poisson(),
                said(units, found.hub_outside),
                moduli[1],
                found.hub.poisson(),
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
        if text.running.is_none() {
            let by_table = Running::wanted(found.kind, service(text, nominal)?, nominal);
            figures.extend(by_table.ok().map(|running| running.reason));
        }
        figures.extend(found.reasons.iter().cloned());
        for one in [found.material, found.hub] {
            figures.extend(one.reason(Property::Modulus));
            if text.warm.is_some() {
                figures.extend(one.reason(Property::Expansion));
            }
        }
        figures.extend(swelling_reason(found.material));
        for figure in ["greatest_m_per_s", "longest"] {
            if figure == "longest" || text.rpm.is_some() {
                figures.extend(found.kind.reason(figure));
            }
        }
        Ok(())
    }
}

/// What to know of these sizes.
fn remarks(text: &BushingText, found: &Found, pressed: &Pressed, notes: &mut Vec<String>) {
    if pressed.interference.lower().is_negative() {
        notes.push("the loosest of these do not hold in the housing: pin or glue them".to_owned());
    }
    if pressed.yields {
        notes.push(
            "at the tightest the bushing or the housing yields: the bore closes more than told"
                .to_owned(),
        );
    }
    let ratio = length_over_bore(found);
    let (shortest, longest) = found.kind.usual_length();
    if ratio < shortest || ratio > longest {
        notes.push(format!(
            "{ratio:.1} times as long as its bore: {shortest} to {longest} is usual"
        ));
    }
    match found.kind {
        Bush::Sintered => notes.push(
            "do not ream porous bronze, burnish it: some say reaming closes the pores".to_owned(),
        ),
        Bush::Plastic => {
            notes.push("plastic creeps: pin or flange it where heat comes and goes".to_owned())
        }
        Bush::Bronze | Bush::Lined => {}
    }
    if found.kind == Bush::Sintered && is_inch(text) {
        notes.push(
            "inch sintered ones differ by maker: mic yours, and give what it measures".to_owned(),
        );
    }
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
    let message = error.to_string();
    let place = if message.contains("long holds") {
        text.long.as_ref().map(|size| size.at.clone())
    } else if message.starts_with("a housing") {
        text.hub_od.as_ref().map(|size| size.at.clone())
    } else {
        text.od.as_ref().map(|(size, _)| size.at.clone())
    };
    from_core(error, place.unwrap_or(text.bore.0.at.clone())).advise(EXAMPLE)
}

fn running_place(text: &BushingText) -> std::ops::Range<usize> {
    text.running.as_ref().map_or(text.bore.0.at.clone(), |(from, to)| from.at.start..to.at.end)
}

fn is_inch(text: &BushingText) -> bool {
    super::mates::is_inch(&text.bore.0.value) == Some(true)
}

/// The size as it was typed, for a hint.
fn nominal_text(size: &Size) -> &'static str {
    if super::mates::is_inch(&size.value) == Some(true) { "1in" } else { "20" }
}

fn service(text: &BushingText, nominal: Length) -> Result<Option<Service>, Problem> {
    let Some(spot) = &text.service else { return Ok(None) };
    let found = Service::named(&spot.value).map_err(|error| {
        let problem = from_core(&error, spot.at.clone());
        match error.advice().strip_prefix("nearest: ") {
            Some(nearest) => problem.advise("").fix(spot.at.clone(), nearest),
            None => problem,
        }
    })?;
    // 500 ft/min parts the two.
    let is_fast = speed(text, nominal).is_some_and(|speed| speed > 2.54);
    let is_spindle = found == Service::Spindle;
    Ok(Some(if is_spindle && is_fast { Service::FastSpindle } else { found }))
}

/// Sliding speed in m/s.
fn speed(text: &BushingText, nominal: Length) -> Option<f64> {
    let rpm = text.rpm.as_ref()?;
    Some(std::f64::consts::PI * nominal.millimetres() / 1000.0 * rpm.value / 60.0)
}

fn fast(text: &BushingText, kind: Bush, nominal: Length, notes: &mut Vec<String>) {
    let (Some(speed), Some(most)) = (speed(text, nominal), kind.greatest_speed()) else { return };
    if speed > most {
        notes.push(format!(
            "it slides at {speed:.1} m/s, and {} stands about {most} m/s",
            kind.words()
        ));
    }
}

fn length_over_bore(found: &Found) -> f64 {
    let ratio = found.length.millimetres() / found.bore.limits.middle().millimetres();
    (ratio * 100.0).round() / 100.0
}

fn cautions(found: &Found) -> Vec<&'static str> {
    let mut cautions = vec![Hazard::Pressing.caution()];
    if found.hub.care() == Some(Care::Brittle) {
        cautions.push(Hazard::Brittle.caution());
    }
    match found.kind {
        Bush::Sintered => cautions.push(Hazard::OilSmoke.caution()),
        Bush::Plastic => cautions.push(Hazard::Softening.caution()),
        Bush::Bronze | Bush::Lined => {}
    }
    cautions
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
