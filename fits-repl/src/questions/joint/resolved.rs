//! Joints to be pressed or shrunk: what is typed to what the core solves.

use fits_core::{
    Length, Limits,
    shop::{
        assemble::{Friction, Joining, Joint, Lubricant, REAMED_AND_TURNED, Sleeve},
        words::Word,
    },
    size::{Decimals, Rounding, Unit},
    speech::Figure,
    standards::{
        iso286::Feature,
        materials::{Family, Figures, Material},
    },
};
use uom::si::{
    f64::{Pressure, TemperatureCoefficient},
    length::millimeter,
    pressure::pascal,
    temperature_coefficient::per_kelvin,
};

use crate::{
    answer::FeatureAnswer,
    problem::Problem,
    query::{Body, ClassText, Ends, Expression, JointText, Part, Size, Spot, Tolerance, Units},
    questions::{
        part::{
            mates::Resolved,
            resolve::{Pair, from_core, inch_class, pair},
        },
        why::answered::said_range,
    },
    session::{Session, materials::nearest},
};

/// What a joint comes to, with what the answer says of how it was given.
pub(crate) struct Asked {
    pub(crate) joint: Joint,
    /// How the interference was given.
    pub(crate) class: String,
    /// `dry`, `oil`, `degreased` or `as given`.
    pub(crate) lubricant: &'static str,
    pub(crate) notes: Vec<String>,
    /// The bore at its least, for a pilot.
    pub(crate) bore: Length,
    /// The hole and the shaft that are still to be cut.
    pub(crate) to_cut: [Option<Box<FeatureAnswer>>; 2],
}

/// How tight the parts are, and by what.
struct Tightness {
    range: Limits,
    class: String,
    bore: Length,
    to_cut: [Option<Box<FeatureAnswer>>; 2],
}

impl Tightness {
    const fn given(range: Limits, class: String, bore: Length) -> Self {
        Self { range, class, bore, to_cut: [None, None] }
    }
}

impl Session {
    /// The joint of a query, not yet solved. Without an interference, where
    /// the class is what is sought, it is given none.
    pub(crate) fn joint(&self, text: &JointText, is_sought: bool) -> Result<Asked, Problem> {
        let diameter = self.nominal(&text.head.size)?;
        let mut notes = Vec::new();
        // Nobody's joint is a fraction of a millimetre.
        if let Expression::Number(number, None) = text.head.size.value
            && self.units == Units::Millimetres
            && number.is_fraction()
        {
            let at = text.head.size.at.clone();
            return Err(Problem::new("this fraction has no unit", at.clone())
                .advise("a fraction is of an inch")
                .fix(at.end..at.end, "in"));
        }
        said_once(text)?;
        said_in_place(text)?;
        let shaft = self.material(&text.shaft, "shaft", &mut notes)?;
        let hub = self.material(&text.hub, "hub", &mut notes)?;
        if !is_sought && says_nothing(text) {
            let at = text.head.size.at.end..text.head.size.at.end;
            return Err(Problem::new("nothing says how the parts fit", at.clone())
                .advise("give classes, a word, an interference or readings")
                .fix(at, " H7/s6"));
        }
        let (inside, mut outer) = (self.inside(text, diameter)?, diameter);
        let mut sleeves = Vec::new();
        for sleeve in &text.sleeves {
            let material = self.material(&sleeve.body, "sleeve", &mut notes)?;
            let outside = self.outside(&sleeve.body, outer, "sleeve", &sleeve.at)?;
            let interference = self.outer_joint(sleeve, outside)?;
            sleeves.push(Sleeve { material, outside, interference });
            outer = outside;
        }
        let end = head_end(&text.head);
        let after = end..end;
        let outside = self.outside(&text.hub, outer, "hub", &after)?;
        let Tightness { range: interference, class, bore, to_cut } = if is_sought {
            let none = Limits::new(Length::ZERO, Length::ZERO).map_err(|e| from_core(&e, after))?;
            Tightness::given(none, String::new(), diameter)
        } else {
            self.interference(text, diameter, &hub, outside, &mut notes)?
        };
        let joining = if text.shrink.is_some() { Joining::Shrink } else { Joining::Press };
        let lubricant = text.lubricant.as_ref().map_or(Ok(Lubricant::Dry), |spot| {
            Lubricant::named(&spot.value).map_err(|error| nearest(&error, spot))
        })?;
        // Friction is between the shaft and what it sits in.
        let mate = sleeves.first().map_or(&hub, |sleeve| &sleeve.material);
        let (friction, said) = match &text.friction {
            Some(spot) => (Friction::given(spot.value.0, spot.value.1), "as given"),
            None => (Friction::between(mate, &shaft, joining, lubricant), lubricant.word()),
        };
        let friction_at =
            text.friction.as_ref().map_or_else(|| text.head.size.at.clone(), |it| it.at.clone());
        let friction = friction.map_err(|error| from_core(&error, friction_at))?;
        let length = text.head.long.as_ref().map(|size| self.nominal(size)).transpose()?;
        let roughness = match &text.roughness {
            None => REAMED_AND_TURNED,
            Some(ends) => self.roughness(ends)?,
        };
        let joint = Joint {
            diameter,
            interference,
            outside,
            inside,
            hub,
            shaft,
            sleeves,
            length,
            roughness,
            finish_is_assumed: text.roughness.is_none(),
            friction,
        };
        Ok(Asked { joint, class, lubricant: said, notes, bore, to_cut })
    }

    /// Where a refusal of the core belongs.
    pub(crate) fn place(&self, text: &JointText, error: &fits_core::Error) -> Problem {
        let head = &text.head;
        let whole = head.size.at.start..head_end(head);
        let message = error.to_string();
        if message.starts_with("a joint of") {
            return from_core(error, head.size.at.clone());
        }
        let long = head.long.as_ref().filter(|_| message.contains(" long "));
        let sizes = [&text.hub.od, &text.hub.wall, &text.shaft.id, &text.shaft.wall];
        let sizes = sizes.into_iter().flatten().chain(
            text.sleeves.iter().flat_map(|sleeve| [&sleeve.body.od, &sleeve.body.wall]).flatten(),
        );
        // The wall that is too thin is the first whose size is named in it.
        let wall = sizes.clone().find(|size| {
            message.contains("wall")
                && self.length(size).is_ok_and(|length| message.contains(&length.to_string()))
        });
        // The shaft's wall has no size of its own where its bore is given.
        let bore = text.shaft.id.as_ref().filter(|id| {
            let wall = self.length(&head.size).ok().zip(self.length(id).ok());
            let wall = wall.and_then(|(out, bore)| out.checked_sub(bore).ok());
            wall.is_some_and(|walls| message.starts_with(&format!("a wall of {} ", walls.half())))
        });
        let wall = bore.or(wall);
        let is_bore =
            wall.is_some_and(|wall| text.shaft.id.as_ref().is_some_and(|id| id.at == wall.at));
        let wall = wall.or_else(|| sizes.clone().next().filter(|_| message.contains("wall")));
        let given = text
            .interference
            .as_ref()
            .map(|ends| ends.from.at.start..ends.to.as_ref().unwrap_or(&ends.from).at.end);
        let read = head.reading.as_ref().or(head.hole.as_ref()).map(|first| {
            let second = head.second_reading.as_ref().or(head.shaft.as_ref()).unwrap_or(first);
            first.at.start.min(second.at.start)..first.at.end.max(second.at.end)
        });
        let at = long.or(wall).map(|size| size.at.clone()).or(read).or(given).unwrap_or(whole);
        let problem = from_core(error, at);
        if is_bore {
            problem.advise("a smaller id")
        } else if message.starts_with("nothing presses") && self.shown == Units::Inches {
            problem.advise("take a tighter class, as FN1; a slip fit is held by a retaining compound, a key or a pin")
        } else {
            problem
        }
    }

    fn inside(&self, text: &JointText, diameter: Length) -> Result<Length, Problem> {
        let body = &text.shaft;
        if let Some(od) = &body.od {
            return Err(Problem::new(
                "the shaft's outside is the size of the joint",
                od.at.clone(),
            )
            .advise("a bored shaft is given by its bore, as `assemble 20 H7/s6, hub steel od 40, shaft steel id 10`"));
        }
        match (&body.id, &body.wall) {
            (Some(id), _) => self.nominal(id),
            (None, Some(wall)) => {
                let thick = self.nominal(wall)?;
                thick
                    .checked_mul(2)
                    .and_then(|walls| diameter.checked_sub(walls))
                    .map_err(|error| from_core(&error, wall.at.clone()))
                    .and_then(|bore| {
                        if bore.is_negative() {
                            Err(Problem::new(
                                format!("two walls of {thick} are more than {diameter}"),
                                wall.at.clone(),
                            )
                            .advise("a solid shaft needs neither wall nor id"))
                        } else {
                            Ok(bore)
                        }
                    })
            }
            (None, None) => Ok(Length::ZERO),
        }
    }

    fn outside(
        &self,
        body: &Body,
        bore: Length,
        part: &str,
        at: &std::ops::Range<usize>,
    ) -> Result<Length, Problem> {
        match (&body.od, &body.wall) {
            (Some(od), Some(wall)) => self.outside_of_tube(od, wall, bore, part),
            (Some(od), None) => self.nominal(od),
            (None, Some(wall)) => self
                .nominal(wall)?
                .checked_mul(2)
                .and_then(|walls| bore.checked_add(walls))
                .map_err(|error| from_core(&error, wall.at.clone())),
            (None, None) => {
                let at = body.material.as_ref().map_or(at.clone(), |name| name.at.end..name.at.end);
                let unit = self.shown.unit();
                let twice = bore.checked_mul(2).unwrap_or(bore);
                let shown =
                    twice.shown(Decimals { unit, places: 3 }, Rounding::Nearest).to_string();
                let shown = shown.trim_end_matches('0').trim_end_matches('.');
                let word = if body.material.is_some() || part != "hub" { "" } else { ", hub" };
                let problem = Problem::new(
                    format!("the {part}'s outside diameter or wall is missing"),
                    at.clone(),
                )
                .advise("give od or wall");
                Err(problem.fix(at, format!("{word} od {shown}{}", unit.symbol())))
            }
        }
    }

    /// A tube by its outside and its wall: the thinner of the two walls counts,
    /// and they agree with the bore to a hundredth of it.
    fn outside_of_tube(
        &self,
        od: &Size,
        wall: &Size,
        bore: Length,
        part: &str,
    ) -> Result<Length, Problem> {
        let (outside, thick) = (self.nominal(od)?, self.nominal(wall)?);
        let by_wall = thick
            .checked_mul(2)
            .and_then(|walls| bore.checked_add(walls))
            .map_err(|error| from_core(&error, wall.at.clone()))?;
        let apart = (by_wall.tenth_nanometres() - outside.tenth_nanometres()).abs();
        if apart > bore.tenth_nanometres() / 100 {
            let unit = self.shown.unit();
            let shown = |length: Length| Figure::from(length).said_in(unit);
            return Err(Problem::new(
                format!(
                    "the {part}'s wall is said in two ways: by its wall the outside is {}, not {}",
                    shown(by_wall),
                    shown(outside)
                ),
                wall.at.clone(),
            )
            .advise("keep one of them"));
        }
        Ok(outside.min(by_wall))
    }

    /// Rz of both surfaces, summed.
    fn roughness(&self, ends: &Ends) -> Result<Length, Problem> {
        let one = |size: &Size| {
            // Nobody's roughness is a millimetre: micrometres are meant, or
            // microinches, and only whoever typed it knows.
            if let Expression::Number(_, None) = size.value {
                return Err(Problem::new("a roughness needs its unit", size.at.clone())
                    .advise("um or uin")
                    .fix(size.at.end..size.at.end, "um"));
            }
            let length = self.nominal(size)?;
            if length > Length::MILLIMETRE.half() {
                return Err(Problem::new(
                    format!("a roughness of {length} is none that a joint has"),
                    size.at.clone(),
                )
                .advise("turned and reamed surfaces have Rz from 3 to 25 um, as rz 6.3um"));
            }
            Ok(length)
        };
        let first = one(&ends.from)?;
        let second = ends.to.as_ref().map_or(Ok(first), one)?;
        first.checked_add(second).map_err(|error| from_core(&error, ends.from.at.clone()))
    }

    /// The interference, how it was given, the bore at its least, and what to cut.
    fn interference(
        &self,
        text: &JointText,
        diameter: Length,
        hub: &Material,
        outside: Length,
        notes: &mut Vec<String>,
    ) -> Result<Tightness, Problem> {
        let head = &text.head;
        let at = head.size.at.clone();
        let failed = |error: fits_core::Error| from_core(&error, at.clone());
        if let Some(ends) = &text.interference {
            let range = self.ends(ends)?;
            if text.on_radius.as_ref().is_some_and(|it| it.value) {
                notes.push(
                    "the interference was given on the radius: twice that on the diameter".into(),
                );
                let twice = |end: Length| end.checked_mul(2).map_err(failed);
                let twice = Limits::new(twice(range.lower())?, twice(range.upper())?);
                let twice = twice.map_err(failed)?;
                return Ok(Tightness::given(twice, "as given".into(), diameter));
            }
            return Ok(Tightness::given(range, "as given".into(), diameter));
        }
        let hole = head.reading.as_ref().or(head.hole.as_ref());
        let shaft = head.second_reading.as_ref().or(head.shaft.as_ref());
        if let (Some(hole), Some(shaft)) = (hole, shaft) {
            if let Some(word) = head.word.as_ref().filter(|_| text.shrink.is_none()) {
                // Both readings say how tight it is: a word is known, and told as not used.
                Word::find(&word.value).map_err(|error| from_core(&error, word.at.clone()))?;
                notes.push(format!("both parts were read: `{}` is not counted", word.value));
            }
            let (hole, shaft) = (self.nominal(hole)?, self.nominal(shaft)?);
            let tight = shaft.checked_sub(hole).map_err(failed)?;
            let off = self.readings_off(text, diameter, notes)?;
            let range = Limits::new(
                tight.checked_sub(off).map_err(failed)?,
                tight.checked_add(off).map_err(failed)?,
            );
            return Ok(Tightness::given(range.map_err(failed)?, "measured".into(), hole));
        }
        let by_class = head.word.is_some() || !matches!(head.tolerance, Tolerance::Bare);
        if let Some(reading) = hole.or(shaft).filter(|_| head.reading.is_some() || !by_class) {
            return Err(Problem::new("the other part's reading is missing", reading.at.clone())
                .advise(
                    "both are wanted, as `assemble 20 H7/s6 = 20.010/20.040, hub steel od 40`",
                ));
        }
        // A word's class goes by material and wall.
        let thin = outside
            .checked_sub(diameter)
            .is_ok_and(|walls| walls.checked_mul(4).is_ok_and(|walls| walls < diameter));
        let hub = match hub.family() {
            Family::Aluminium => Some("aluminium"),
            Family::CastIron => Some("cast iron"),
            _ => None,
        };
        let spot = |value: String| Spot { value, at: at.clone() };
        let part = Part {
            hub: hub.filter(|_| head.word.is_some()).map(|name| spot(name.to_owned())),
            thin: (thin && head.word.is_some()).then(|| Spot { value: (), at: at.clone() }),
            long: head.long.clone().filter(|_| head.word.is_some()),
            ..head.clone()
        };
        let found = self.resolve(&part)?;
        let pair = match found {
            Resolved::Pair(pair) => pair,
            Resolved::Suit { pair: told, in_hand, mate } => {
                let kind = in_hand.kind;
                let limits = said_range(self.shown, mate.limits);
                let (hole, shaft) = match kind {
                    Some(Feature::Hole) => (in_hand, mate),
                    _ => (mate, in_hand),
                };
                let made = kind.map_or("mate", |kind| kind.mate().word());
                notes.push(format!("the {made} to suit: {limits}"));
                Pair { chosen: told.chosen, ..Pair::unlike(hole, shaft).map_err(failed)? }
            }
            Resolved::One(_) => {
                return Err(Problem::new(
                    "one part alone is not assembled",
                    head.size.at.end..head.size.at.end,
                )
                .advise("give both classes, as `assemble 20 H7/s6, hub steel od 40`"));
            }
        };
        let label = match &pair.chosen {
            Some(chosen) => {
                let figures = Self::choice_figures(chosen);
                format!("{} {}", figures.word, figures.class)
            }
            None if pair.hole.label.to_string() == pair.shaft.label.to_string() => {
                pair.hole.label.to_string()
            }
            None => format!("{}/{}", pair.hole.label, pair.shaft.label),
        };
        let to_cut =
            [&pair.hole, &pair.shaft].map(|one| (!one.have).then(|| Box::new(one.answer())));
        let range = interference_of(&pair).map_err(failed)?;
        Ok(Tightness { range, class: label, bore: pair.fit.hole().lower(), to_cut })
    }

    /// How far off a measured interference may be: both parts' `±` summed, and
    /// twice the standard uncertainty of the instruments on each other's top.
    fn readings_off(
        &self,
        text: &JointText,
        diameter: Length,
        notes: &mut Vec<String>,
    ) -> Result<Length, Problem> {
        let at = text.head.size.at.clone();
        let [hole, shaft] = &text.either;
        let mut off = Length::ZERO;
        // One `±` is for both: a reading is never better than its fellow.
        for one in [hole.as_ref().or(shaft.as_ref()), shaft.as_ref().or(hole.as_ref())] {
            let Some(size) = one else { continue };
            let either = self.nominal(size)?;
            if either.is_negative() {
                return Err(Problem::new("an uncertainty has no sign", size.at.clone()).advise(
                    "as `assemble 20 = 20.010 \u{b1}0.005/20.040 \u{b1}0.005, hub steel od 40`",
                ));
            }
            off = off.checked_add(either).map_err(|error| from_core(&error, at.clone()))?;
        }
        if let [Some(_), None] | [None, Some(_)] = text.either {
            notes.push("one \u{b1} was given: taken for both readings".into());
        }
        let mut squares = 0.0;
        let mut names = Vec::new();
        for kind in [Feature::Hole, Feature::Shaft] {
            if let Some(gauge) = self
                .gauge(&text.instruments, kind, diameter, &mut Vec::new())
                .map_err(|problem| {
                    if problem.message.contains("does not measure") {
                        problem.advise("name one for each, as `assemble 20 H7/s6 = 20.010/20.040, hub steel od 40 long 25, with bore gauge and mic`")
                    } else {
                        problem
                    }
                })?
            {
                let (repeat, bias) = (gauge.off.repeat.millimetres(), gauge.off.bias.millimetres());
                squares += repeat * repeat + bias * bias;
                names.push(gauge.name);
            }
        }
        if !names.is_empty() {
            names.dedup();
            let unit = self.shown.unit();
            let places = if unit == Unit::Inch { 5 } else { 4 };
            let twice = uom::si::f64::Length::new::<millimeter>(2.0 * squares.sqrt());
            let twice = Length::nearest(twice).map_err(|error| from_core(&error, at.clone()))?;
            notes.push(format!(
                "read with {}: the interference is good to \u{b1}{} {} (95 %)",
                names.join(" and "),
                twice.shown(Decimals { unit, places }, Rounding::Up),
                unit.symbol()
            ));
            off = off.checked_add(twice).map_err(|error| from_core(&error, at))?;
        }
        Ok(off)
    }

    /// The joint on a sleeve's outside.
    fn outer_joint(
        &self,
        sleeve: &crate::query::SleeveText,
        outside: Length,
    ) -> Result<Limits, Problem> {
        if let Some(ends) = &sleeve.interference {
            return self.ends(ends);
        }
        let size = sleeve.body.od.as_ref();
        let missing = || {
            Problem::new("nothing says how the sleeve sits outside", sleeve.at.clone()).advise(
                "as `assemble 20 H7/s6, shaft steel, sleeve bronze od 26 H7/p6, hub steel od 50`",
            )
        };
        let (Some(tolerance), Some(size)) = (&sleeve.classes, size) else { return Err(missing()) };
        let found = match tolerance {
            Tolerance::Pair(hole, shaft) => pair(outside, size, hole, shaft)?,
            Tolerance::Class(text) => inch_pair(text, outside, size).ok_or_else(missing)??,
            _ => return Err(missing()),
        };
        interference_of(&found).map_err(|error| from_core(&error, size.at.clone()))
    }

    fn ends(&self, ends: &Ends) -> Result<Limits, Problem> {
        let from = self.length(&ends.from)?;
        let to = ends.to.as_ref().map_or(Ok(from), |to| self.length(to))?;
        Limits::new(from, to).map_err(|error| {
            let at = ends.from.at.start..ends.to.as_ref().unwrap_or(&ends.from).at.end;
            from_core(&error, at).advise("the smaller comes first, as interference 0.02..0.04")
        })
    }

    /// A part's material: by name, by name with a figure of its own, or by
    /// figures alone.
    fn material(
        &self,
        body: &Body,
        part: &str,
        notes: &mut Vec<String>,
    ) -> Result<Material, Problem> {
        let strength = body.strength.as_ref().map(|amount| self.amount(amount)).transpose()?;
        let strength = strength.map(Pressure::new::<pascal>);
        if let Some(name) = &body.material {
            if let Some(extra) =
                body.modulus.as_ref().map(|it| &it.at).or(body.poisson.as_ref().map(|it| &it.at))
            {
                return Err(own_figures(part, extra.clone()));
            }
            let found = self.material_named(name)?.into_owned();
            return match (strength, &body.strength) {
                (Some(strength), Some(at)) => found
                    .with_yield(strength)
                    .map_err(|error| from_core(&error, at.at.clone()).advise("as yield 276MPa")),
                _ => Ok(found),
            };
        }
        let Some(modulus) = &body.modulus else {
            if let Some(poisson) = &body.poisson {
                return Err(Problem::new(
                    format!("the {part}'s modulus is missing"),
                    poisson.at.clone(),
                )
                .advise("both are wanted, as `assemble 30 interference 0.035, hub e 110GPa nu 0.28 od 62, shaft steel`"));
            }
            let usual = if let Some(usual) = self.made_of(None, part, notes)? {
                usual.into_owned()
            } else {
                notes.push(format!("{part} taken as steel: none was named"));
                Material::find("steel").map_err(|error| from_core(&error, 0..0))?.clone()
            };
            return Ok(match strength {
                Some(strength) => {
                    usual.with_yield(strength).map_err(|error| from_core(&error, 0..0))?
                }
                None => usual,
            });
        };
        let poisson = body.poisson.as_ref().map_or_else(
            || {
                notes.push(format!("{part}: Poisson's ratio taken as 0.3"));
                0.3
            },
            |spot| spot.value,
        );
        // A bare modulus would be taken for MPa, and nobody means that.
        if modulus.value.unit.is_none() {
            let unit = if self.shown == Units::Inches { "Mpsi" } else { "GPa" };
            return Err(Problem::new("a modulus needs its unit", modulus.at.clone())
                .advise("GPa or Mpsi")
                .fix(modulus.at.end..modulus.at.end, unit));
        }
        let expansion = body.expansion.as_ref().map(|amount| self.amount(amount)).transpose()?;
        let figures = Figures {
            expansion: expansion.map(|it| TemperatureCoefficient::new::<per_kelvin>(it * 1e-6)),
            yield_strength: strength,
            ..Figures::elastic(Pressure::new::<pascal>(self.amount(modulus)?), poisson)
        };
        Material::custom("", figures).map_err(|error| {
            let at = match &body.poisson {
                Some(spot) if error.to_string().contains("Poisson") => spot.at.clone(),
                _ => modulus.at.clone(),
            };
            from_core(&error, at).advise("as e 110GPa nu 0.28")
        })
    }
}

/// Is neither a class, a word, an interference nor a reading given?
fn says_nothing(text: &JointText) -> bool {
    let head = &text.head;
    head.word.is_none()
        && head.reading.is_none()
        && head.hole.is_none()
        && head.shaft.is_none()
        && head.mate.is_none()
        && text.interference.is_none()
        && matches!(head.tolerance, Tolerance::Bare)
}

/// Refuses what is said of an interference or of readings where there are none.
fn said_in_place(text: &JointText) -> Result<(), Problem> {
    if let Some(on) = text.on_radius.as_ref().filter(|_| text.interference.is_none()) {
        return Err(Problem::new("no interference is given here", on.at.clone())
            .advise("as `assemble 20 interference 0.015 on radius, hub steel od 40 long 25`"));
    }
    let head = &text.head;
    let is_read = [&head.reading, &head.second_reading, &head.hole, &head.shaft];
    let both = is_read.iter().filter(|it| it.is_some()).count() == 2;
    let at = text.instruments.first().map(|it| &it.at);
    let at = at.or(text.either.iter().flatten().next().map(|it| &it.at));
    match at.filter(|_| !both || text.interference.is_some()) {
        Some(at) => Err(Problem::new("both parts' readings are wanted for this", at.clone())
            .advise("as `assemble 20 H7/s6 = 20.010/20.040, hub steel od 40 long 25, with bore gauge and mic`")),
        None => Ok(()),
    }
}

/// Refuses what is given in two ways: one of them would be passed over.
fn said_once(text: &JointText) -> Result<(), Problem> {
    let bodies = [("hub", &text.hub), ("shaft", &text.shaft)].into_iter();
    let sleeves = text.sleeves.iter().map(|sleeve| ("sleeve", &sleeve.body));
    for (part, body) in bodies.chain(sleeves) {
        if let (Some(_), Some(wall), "shaft") = (&body.id, &body.wall, part) {
            return Err(Problem::new("the shaft's wall is said in two ways", wall.at.clone())
                .advise("keep one of them"));
        }
        if let Some(id) = body.id.as_ref().filter(|_| part != "shaft") {
            return Err(Problem::new(
                format!("the {part}'s bore is the size of the joint"),
                id.at.clone(),
            )
            .advise("a bored shaft is a shaft and its id"));
        }
        if let (Some(_), Some(figure)) = (&body.material, &body.expansion) {
            return Err(own_figures(part, figure.at.clone()));
        }
    }
    let head = &text.head;
    let by_class = head.word.is_some() || !matches!(head.tolerance, Tolerance::Bare);
    let is_read = head.reading.is_some() || head.hole.is_some() || head.shaft.is_some();
    if let Some(ends) = text.interference.as_ref().filter(|_| by_class || is_read) {
        return Err(Problem::new("the interference is said in two ways", ends.from.at.clone())
            .advise("keep one, as `assemble 20 interference 0.03, hub steel od 40`"));
    }
    for sleeve in &text.sleeves {
        if let (Some(_), Some(ends)) = (&sleeve.classes, &sleeve.interference) {
            return Err(Problem::new(
                "the sleeve's interference is said in two ways",
                ends.from.at.clone(),
            )
            .advise("keep one of them"));
        }
    }
    Ok(())
}

fn own_figures(part: &str, at: std::ops::Range<usize>) -> Problem {
    Problem::new(format!("the {part} has a material and figures of its own"), at)
        .advise("keep the name or the figures; a yield of its own goes with either")
}

/// Where the size and its classes or word end.
fn head_end(head: &Part) -> usize {
    match &head.tolerance {
        Tolerance::Pair(_, shaft) => shaft.at().end,
        Tolerance::Class(class) => class.at().end,
        _ => head.word.as_ref().map_or(head.size.at.end, |word| word.at.end),
    }
}

fn interference_of(pair: &Pair) -> Result<Limits, fits_core::Error> {
    let range = pair.fit.clearance();
    let interference = Limits::new(range.upper().checked_neg()?, range.lower().checked_neg()?)?;
    Ok(interference.known_as(range.known()))
}

fn inch_pair(text: &ClassText, outside: Length, size: &Size) -> Option<Result<Pair, Problem>> {
    inch_class(text).map(|class| {
        Pair::of_inch(outside, class?).map_err(|error| from_core(&error, size.at.clone()))
    })
}
