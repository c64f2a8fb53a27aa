//! Joints to be pressed or shrunk: what is typed to what the core solves.

use super::refused::{own_figures, said_in_place, said_once, says_nothing};
use super::tightness::Tightness;
use fits_core::{
    Length, Limits, Subject,
    shop::assemble::{Friction, Joining, Joint, Lubricant, REAMED_AND_TURNED, Sleeve},
    size::{Decimals, Rounding},
    speech::Figure,
    standards::materials::{Figures, Material},
};
use uom::si::{
    f64::{Pressure, TemperatureCoefficient},
    pressure::pascal,
    temperature_coefficient::per_kelvin,
};

use crate::{
    answer::FeatureAnswer,
    problem::Problem,
    query::{Body, Ends, Expression, JointText, Part, Size, Tolerance, Units},
    questions::part::resolve::from_core,
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
        let failed = |error: fits_core::Error| from_core(&error, text.head.size.at.clone());
        let mut joint =
            Joint::new(diameter, interference, outside, &hub, &shaft).map_err(failed)?;
        (joint.inside, joint.sleeves, joint.length) = (inside, sleeves, length);
        (joint.roughness, joint.finish_is_assumed) = (roughness, text.roughness.is_none());
        joint.friction = friction;
        Ok(Asked { joint, class, lubricant: said, notes, bore, to_cut })
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
                    format!("a roughness of {length} is too coarse for a joint"),
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
        let modulus_si = Pressure::new::<pascal>(self.amount(modulus)?);
        let mut figures = Figures::elastic(modulus_si, poisson);
        figures.expansion =
            expansion.map(|it| TemperatureCoefficient::new::<per_kelvin>(it * 1e-6));
        figures.yield_strength = strength;
        Material::custom("", figures).map_err(|error| {
            let at = match &body.poisson {
                Some(spot) if error.subject() == Some(Subject::Poisson) => spot.at.clone(),
                _ => modulus.at.clone(),
            };
            from_core(&error, at).advise("as e 110GPa nu 0.28")
        })
    }
}

/// Where the size and its classes or word end.
pub(super) fn head_end(head: &Part) -> usize {
    match &head.tolerance {
        Tolerance::Pair(_, shaft) => shaft.at().end,
        Tolerance::Class(class) => class.at().end,
        _ => head.word.as_ref().map_or(head.size.at.end, |word| word.at.end),
    }
}
