//! A pair away from 20 °C: the clearance at a temperature, and where it binds
//! or lets go.
//!
//! Sizes hold at 20 °C (ISO 1). A hole grows as the part about it would if it
//! were solid, so both diameters go by D · (1 + α · (T − 20 °C) + damp). The
//! coefficients hold near room temperature; both parts are at one temperature
//! and free: what a housing forces on a bushing is the business of `bushing`.

use uom::si::{
    f64::ThermodynamicTemperature, temperature_coefficient::per_kelvin,
    thermodynamic_temperature::degree_celsius,
};

use super::{Damp, assemble::millimetres, cooling::REFERENCE_C};
use crate::{
    error::{Error, Kind},
    fit::Fit,
    size::{Length, Limits},
    speech::{Figure, say},
    standards::materials::{Family, Material},
};

/// Colder than this the coefficients no longer hold, in °C.
const COLDEST: f64 = -100.0;

/// How far off a plastic's expansion may be, as a share of it: makers, fillers
/// and how it was drawn. Common practice, no source.
pub const PLASTIC_SPREAD: f64 = 1.0 / 3.0;

fn spread(material: &Material) -> f64 {
    if material.family() == Family::Plastic { PLASTIC_SPREAD } else { 0.0 }
}

/// Which pair of the parts made inside the limits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
pub enum Pairing {
    /// The smallest hole with the largest shaft.
    Tightest,
    /// The largest hole with the smallest shaft.
    Loosest,
}

/// A pair and what its parts are made of.
///
/// ```
/// use fits_core::{Fit, Length, shop::warm::{Pairing, Warm}, standards::materials::Material};
/// use uom::si::{f64::ThermodynamicTemperature, thermodynamic_temperature::degree_celsius};
/// let fit = Fit::of_classes(Length::from_millimetres(20)?, "H7".parse()?, "g6".parse()?)?;
/// // A steel shaft in an aluminium hole loses its clearance in the cold.
/// let warm = Warm::of(fit, Material::find("aluminium")?, Material::find("steel")?)?;
/// let cold = ThermodynamicTemperature::new::<degree_celsius>(-20.0);
/// assert_eq!(warm.clearance_at(cold)?.lower().to_string(), "-0.0028433 mm");
/// let binds = warm.no_clearance_at(Pairing::Tightest).expect("unlike materials");
/// assert!((binds.get::<degree_celsius>() - -8.4).abs() < 0.1);
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Debug)]
pub struct Warm {
    fit: Fit,
    hole: Growth,
    shaft: Growth,
}

#[derive(Clone, Copy, Debug)]
struct Growth {
    /// Per kelvin.
    heat: f64,
    /// How far off that may be, as a share of it.
    spread: f64,
    /// From dry, as a share.
    damp: f64,
}

impl Growth {
    fn of(material: &Material) -> Result<Self, Error> {
        let heat = material.expansion().ok_or_else(|| {
            Error::new(Kind::NoPlan {
                why: say!("the expansion of {} is not known", material.name()),
            })
        })?;
        Ok(Self { heat: heat.get::<per_kelvin>(), spread: spread(material), damp: 0.0 })
    }

    /// The least and the most that a size goes by.
    fn factors(self, celsius: f64) -> (f64, f64) {
        let by_heat = self.heat * (celsius - REFERENCE_C);
        let off = (by_heat * self.spread).abs();
        (1.0 + by_heat - off + self.damp, 1.0 + by_heat + off + self.damp)
    }

    fn limits(self, limits: Limits, celsius: f64) -> Result<Limits, Error> {
        let (least, most) = self.factors(celsius);
        let grown = |size: Length, factor: f64| millimetres(size.millimetres() * factor);
        Limits::new(grown(limits.lower(), least)?, grown(limits.upper(), most)?)
    }
}

/// Refuses a temperature that a part of this material does not stand or at
/// which its coefficient no longer holds.
///
/// # Errors
/// Above the material's limit, or colder than −100 °C.
pub fn stands(material: &Material, temperature: ThermodynamicTemperature) -> Result<(), Error> {
    let celsius = temperature.get::<degree_celsius>();
    let limit = material.heat_limit().map(|limit| limit.get::<degree_celsius>());
    if let Some(limit) = limit.filter(|limit| celsius > *limit) {
        return Err(Error::new(Kind::NoJoint {
            why: say!(
                "{} is not run at {}: its limit is {}",
                material.name(),
                Figure::Celsius(celsius),
                Figure::Celsius(limit)
            ),
            advice: format!("{limit:.0} °C is {:.0} °F", limit * 1.8 + 32.0),
        }));
    }
    if celsius.is_nan() || celsius < COLDEST {
        return Err(Error::new(Kind::NoJoint {
            why: say!(
                "the expansion of {} is not known at {}",
                material.name(),
                Figure::Celsius(celsius)
            ),
            advice: "the figures hold from -100 °C up".to_owned(),
        }));
    }
    Ok(())
}

impl Warm {
    /// A pair of these materials, dry.
    ///
    /// # Errors
    /// The expansion of one is not known.
    pub fn of(fit: Fit, hole: &Material, shaft: &Material) -> Result<Self, Error> {
        let (mut one, mut other) = (Growth::of(hole)?, Growth::of(shaft)?);
        if hole == shaft {
            // Of one stock both are off alike.
            (one.spread, other.spread) = (0.0, 0.0);
        }
        Ok(Self { fit, hole: one, shaft: other })
    }

    /// How far off the hole's and the shaft's expansion may be, as shares of
    /// it: [`PLASTIC_SPREAD`] of a plastic in or about another material.
    pub const fn spreads(&self) -> (f64, f64) {
        (self.hole.spread, self.shaft.spread)
    }

    /// The same pair in damp.
    #[must_use]
    pub fn damp(&self, damp: Damp, hole: &Material, shaft: &Material) -> Self {
        let grown = |part: Growth, material| Growth { damp: damp.growth(material), ..part };
        Self { fit: self.fit, hole: grown(self.hole, hole), shaft: grown(self.shaft, shaft) }
    }

    /// The hole's limits of size at a temperature.
    ///
    /// # Errors
    /// Out of range.
    pub fn hole_at(&self, temperature: ThermodynamicTemperature) -> Result<Limits, Error> {
        self.hole.limits(self.fit.hole(), temperature.get::<degree_celsius>())
    }

    /// The shaft's limits of size at a temperature.
    ///
    /// # Errors
    /// Out of range.
    pub fn shaft_at(&self, temperature: ThermodynamicTemperature) -> Result<Limits, Error> {
        self.shaft.limits(self.fit.shaft(), temperature.get::<degree_celsius>())
    }

    /// Least and greatest clearance at a temperature; interference is below
    /// nought.
    ///
    /// # Errors
    /// Out of range.
    pub fn clearance_at(&self, temperature: ThermodynamicTemperature) -> Result<Limits, Error> {
        let (hole, shaft) = (self.hole_at(temperature)?, self.shaft_at(temperature)?);
        Limits::new(
            hole.lower().checked_sub(shaft.upper())?,
            hole.upper().checked_sub(shaft.lower())?,
        )
    }

    /// Where a pair of the parts has neither clearance nor interference: on
    /// one side of it the parts bind, on the other they are loose. Of a plastic
    /// that is where the worst of its spread first brings it, going away from
    /// 20 °C. `None` where both grow alike, or only beyond what any shop meets.
    pub fn no_clearance_at(&self, pairing: Pairing) -> Option<ThermodynamicTemperature> {
        let (hole, shaft) = self.sizes(pairing);
        let short = shaft * (1.0 + self.shaft.damp) - hole * (1.0 + self.hole.damp);
        // hole · (1 + damp + α · t) = shaft · (1 + damp + α · t), t from 20 °C.
        let away = |warmer: bool| {
            // The tightest hole grows least where it is warm, and shrinks most
            // where it is cold; the loosest the other way about.
            let less = (pairing == Pairing::Tightest) == warmer;
            let heat = |part: Growth, less: bool| {
                part.heat * if less { 1.0 - part.spread } else { 1.0 + part.spread }
            };
            let gains = hole * heat(self.hole, less) - shaft * heat(self.shaft, !less);
            let away = short / gains;
            let celsius = REFERENCE_C + away;
            let is_met = celsius.abs() <= 1000.0 && celsius > -273.15;
            (gains != 0.0 && is_met && (away >= 0.0) == warmer).then_some(celsius)
        };
        let nearest = [away(true), away(false)].into_iter().flatten();
        nearest
            .min_by(|a, b| (a - REFERENCE_C).abs().total_cmp(&(b - REFERENCE_C).abs()))
            .map(ThermodynamicTemperature::new::<degree_celsius>)
    }

    fn sizes(&self, pairing: Pairing) -> (f64, f64) {
        let (hole, shaft) = (self.fit.hole(), self.fit.shaft());
        match pairing {
            Pairing::Tightest => (hole.lower().millimetres(), shaft.upper().millimetres()),
            Pairing::Loosest => (hole.upper().millimetres(), shaft.lower().millimetres()),
        }
    }

    /// The shaft's limits at 20 °C that keep the fit's own clearance range, or
    /// as much of it as there is, at a temperature: the least clearance is
    /// kept, and the tolerance.
    ///
    /// # Errors
    /// Out of range.
    pub fn shaft_to_keep(&self, temperature: ThermodynamicTemperature) -> Result<Limits, Error> {
        let celsius = temperature.get::<degree_celsius>();
        let hole = self.fit.hole().lower().millimetres() * self.hole.factors(celsius).0;
        let wanted = hole - self.fit.clearance().lower().millimetres();
        let upper = millimetres(wanted / self.shaft.factors(celsius).1)?;
        Limits::new(upper.checked_sub(self.fit.shaft().tolerance())?, upper)
    }
}
