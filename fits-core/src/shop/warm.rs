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
    error::Error,
    fit::{Fit, Kind},
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
#[expect(clippy::exhaustive_enums, reason = "a pair has two ends")]
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
/// assert_eq!(warm.spreads(), (0.0, 0.0));
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Debug)]
pub struct Warm {
    fit: Fit,
    hole: Growth,
    shaft: Growth,
}

/// A fit at one temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct FitAt {
    /// The temperature of both parts.
    pub temperature: ThermodynamicTemperature,
    /// Least and greatest clearance; interference is below 0.
    pub clearance: Limits,
    /// Clearance, transition or interference.
    pub kind: Kind,
}

/// What becomes of a fit between two temperatures.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Between {
    /// At 20 °C.
    pub reference: FitAt,
    /// At the colder end and at the warmer one.
    pub ends: [FitAt; 2],
    /// A clearance fit loses its clearance at one of the ends.
    pub binds: bool,
    /// An interference fit is loose at one of the ends.
    pub lets_go: bool,
    /// The shaft's limits at 20 °C that keep the least clearance at the worse
    /// end; nothing where less than half a micrometre is lost.
    pub shaft_to_keep: Option<Limits>,
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
            Error::no_plan(say!("the expansion of {} is not known", material.name()))
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
///
/// ```
/// use fits_core::{shop::{celsius, warm::stands}, standards::materials::Material};
/// let steel = Material::find("steel")?;
/// assert!(stands(steel, celsius(60.0)).is_ok());
/// assert!(stands(steel, celsius(-150.0)).is_err());
/// # Ok::<(), fits_core::Error>(())
/// ```
pub fn stands(material: &Material, temperature: ThermodynamicTemperature) -> Result<(), Error> {
    let celsius = temperature.get::<degree_celsius>();
    let limit = material.heat_limit().map(|limit| limit.get::<degree_celsius>());
    if let Some(limit) = limit.filter(|limit| celsius > *limit) {
        return Err(Error::no_joint(
            say!(
                "{} is not run at {}: its limit is {}",
                material.name(),
                Figure::Celsius(celsius),
                Figure::Celsius(limit)
            ),
            format!("{limit:.0} °C is {:.0} °F", limit * 1.8 + 32.0),
        ));
    }
    if celsius.is_nan() || celsius < COLDEST {
        return Err(Error::no_joint(
            say!(
                "the expansion of {} is not known at {}",
                material.name(),
                Figure::Celsius(celsius)
            ),
            "the figures hold from -100 °C up",
        ));
    }
    Ok(())
}

impl Warm {
    /// A pair of these materials, dry.
    ///
    /// # Errors
    /// The expansion of one is not known.
    ///
    /// ```
    /// use fits_core::{Fit, shop::{celsius, warm::Warm}, standards::materials::Material};
    /// let fit = Fit::of_classes("20mm".parse()?, "H7".parse()?, "g6".parse()?)?;
    /// let warm = Warm::of(fit, Material::find("aluminium")?, Material::find("steel")?)?;
    /// assert_eq!(warm.clearance_at(celsius(20.0))?, fit.clearance());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
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
    ///
    /// ```
    /// use fits_core::shop::{Damp, Spec, celsius, warm::{Warm, stands}};
    /// use fits_core::standards::materials::Material;
    /// let (nylon, steel) = (Material::find("nylon")?, Material::find("steel")?);
    /// assert!(stands(nylon, celsius(300.0)).is_err());
    /// let fit = "H7/g6".parse::<Spec>()?.fit("20mm".parse()?)?;
    /// let dry = Warm::of(fit, nylon, steel)?;
    /// let soaked = dry.damp(Damp::Soaked, nylon, steel);
    /// // A free nylon part grows its hole, and steel does not swell.
    /// assert!(soaked.hole_at(celsius(20.0))?.lower() > dry.hole_at(celsius(20.0))?.lower());
    /// assert_eq!(soaked.shaft_at(celsius(20.0))?, fit.shaft());
    /// let keeps = dry.shaft_to_keep(celsius(-10.0))?;
    /// assert!(keeps.upper() < fit.shaft().upper());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    #[must_use]
    pub fn damp(&self, damp: Damp, hole: &Material, shaft: &Material) -> Self {
        let grown = |part: Growth, material| Growth { damp: damp.growth(material), ..part };
        Self { fit: self.fit, hole: grown(self.hole, hole), shaft: grown(self.shaft, shaft) }
    }

    /// The hole's limits of size at a temperature.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::{Fit, shop::{celsius, warm::Warm}, standards::materials::Material};
    /// let fit = Fit::of_classes("20mm".parse()?, "H7".parse()?, "g6".parse()?)?;
    /// let warm = Warm::of(fit, Material::find("aluminium")?, Material::find("steel")?)?;
    /// let grown = warm.hole_at(celsius(60.0))?.lower();
    /// // 40 K of 24 millionths on 20 mm: about 0.019 mm.
    /// assert!((grown.millimetres() - 20.019).abs() < 0.001);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn hole_at(&self, temperature: ThermodynamicTemperature) -> Result<Limits, Error> {
        self.hole.limits(self.fit.hole(), temperature.get::<degree_celsius>())
    }

    /// The shaft's limits of size at a temperature.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::{Fit, shop::{celsius, warm::Warm}, standards::materials::Material};
    /// let fit = Fit::of_classes("20mm".parse()?, "H7".parse()?, "g6".parse()?)?;
    /// let warm = Warm::of(fit, Material::find("aluminium")?, Material::find("steel")?)?;
    /// assert_eq!(warm.shaft_at(celsius(20.0))?, fit.shaft());
    /// assert!(warm.shaft_at(celsius(0.0))?.upper() < fit.shaft().upper());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn shaft_at(&self, temperature: ThermodynamicTemperature) -> Result<Limits, Error> {
        self.shaft.limits(self.fit.shaft(), temperature.get::<degree_celsius>())
    }

    /// Least and greatest clearance at a temperature; interference is below
    /// zero.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::{Fit, shop::{celsius, warm::Warm}, standards::materials::Material};
    /// let fit = Fit::of_classes("20mm".parse()?, "H7".parse()?, "g6".parse()?)?;
    /// let warm = Warm::of(fit, Material::find("aluminium")?, Material::find("steel")?)?;
    /// // Aluminium shrinks more: the least clearance of 0.007 mm is gone.
    /// assert!(warm.clearance_at(celsius(-20.0))?.lower().is_negative());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn clearance_at(&self, temperature: ThermodynamicTemperature) -> Result<Limits, Error> {
        let (hole, shaft) = (self.hole_at(temperature)?, self.shaft_at(temperature)?);
        Limits::new(
            hole.lower().checked_sub(shaft.upper())?,
            hole.upper().checked_sub(shaft.lower())?,
        )
    }

    /// What becomes of the fit between two temperatures, 20 °C beside them.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::{Fit, Kind, Length, shop::warm::Warm, standards::materials::Material};
    /// use fits_core::uom::si::{
    ///     f64::ThermodynamicTemperature, thermodynamic_temperature::degree_celsius,
    /// };
    /// let fit = Fit::of_classes(Length::from_millimetres(20)?, "H7".parse()?, "g6".parse()?)?;
    /// let warm = Warm::of(fit, Material::find("aluminium")?, Material::find("steel")?)?;
    /// let at = ThermodynamicTemperature::new::<degree_celsius>;
    /// let between = warm.between(at(-20.0), at(40.0))?;
    /// assert_eq!((between.reference.kind, between.ends[0].kind), (Kind::Clearance, Kind::Transition));
    /// assert!(between.binds && !between.lets_go);
    /// // A shaft that keeps 7 um in the cold.
    /// assert!(between.shaft_to_keep.is_some_and(|shaft| shaft.upper() < fit.shaft().upper()));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn between(
        &self,
        one: ThermodynamicTemperature,
        other: ThermodynamicTemperature,
    ) -> Result<Between, Error> {
        // Less than this no lathe follows.
        const FELT: Length = Length::from_tenth_nanometres(5_000);
        let at = |temperature| -> Result<FitAt, Error> {
            let clearance = self.clearance_at(temperature)?;
            Ok(FitAt { temperature, clearance, kind: Kind::of_clearance(clearance) })
        };
        let (cold, hot) = if other < one { (other, one) } else { (one, other) };
        let reference = at(ThermodynamicTemperature::new::<degree_celsius>(REFERENCE_C))?;
        let ends = [at(cold)?, at(hot)?];
        let [cold, hot] = ends;
        let least = cold.clearance.lower().min(hot.clearance.lower());
        let most = cold.clearance.upper().max(hot.clearance.upper());
        let worse = if cold.clearance.lower() < hot.clearance.lower() { cold } else { hot };
        let loses = reference.clearance.lower().checked_sub(least).is_ok_and(|it| it > FELT);
        Ok(Between {
            reference,
            ends,
            binds: reference.kind == Kind::Clearance && least.is_negative(),
            lets_go: reference.kind == Kind::Interference && most.is_positive(),
            shaft_to_keep: loses.then(|| self.shaft_to_keep(worse.temperature)).transpose()?,
        })
    }

    /// Where a pair of the parts has neither clearance nor interference: on
    /// one side of it the parts bind, on the other they are loose. Of a plastic
    /// that is where the worst of its spread first brings it, going away from
    /// 20 °C. `None` where both grow alike, or only beyond what any shop meets.
    ///
    /// ```
    /// use fits_core::{Fit, shop::{celsius, warm::Warm}, standards::materials::Material};
    /// let fit = Fit::of_classes("20mm".parse()?, "H7".parse()?, "g6".parse()?)?;
    /// let warm = Warm::of(fit, Material::find("aluminium")?, Material::find("steel")?)?;
    /// use fits_core::{shop::warm::Pairing, uom::si::thermodynamic_temperature::degree_celsius};
    /// let binds = warm.no_clearance_at(Pairing::Tightest).expect("unlike materials");
    /// assert!((binds.get::<degree_celsius>() - -8.4).abs() < 0.1);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
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
    ///
    /// ```
    /// use fits_core::{Fit, shop::{celsius, warm::Warm}, standards::materials::Material};
    /// let fit = Fit::of_classes("20mm".parse()?, "H7".parse()?, "g6".parse()?)?;
    /// let warm = Warm::of(fit, Material::find("aluminium")?, Material::find("steel")?)?;
    /// // Smaller than g6, to keep 0.007 mm at -20 °C.
    /// let shaft = warm.shaft_to_keep(celsius(-20.0))?;
    /// assert!(shaft.upper() < fit.shaft().upper());
    /// assert_eq!(shaft.tolerance(), fit.shaft().tolerance());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn shaft_to_keep(&self, temperature: ThermodynamicTemperature) -> Result<Limits, Error> {
        let celsius = temperature.get::<degree_celsius>();
        let hole = self.fit.hole().lower().millimetres() * self.hole.factors(celsius).0;
        let wanted = hole - self.fit.clearance().lower().millimetres();
        let upper = millimetres(wanted / self.shaft.factors(celsius).1)?;
        Limits::new(upper.checked_sub(self.fit.shaft().tolerance())?, upper)
    }
}
