//! A material given by its own figures.

use super::{Family, Figure, Material};
use crate::{
    error::{Error, Subject},
    source::{Known, Provenance},
};
use std::borrow::Cow;
use uom::si::{
    f64::{MassDensity, Pressure, TemperatureCoefficient, ThermodynamicTemperature},
    mass_density::kilogram_per_cubic_meter,
    pressure::{gigapascal, megapascal},
    temperature_coefficient::per_kelvin,
    thermodynamic_temperature::degree_celsius,
};

/// The figures of a material that its owner gives.
///
/// ```
/// use fits_core::standards::materials::{Figures, Material};
/// use uom::si::{f64::Pressure, pressure::gigapascal};
/// let figures = Figures::elastic(Pressure::new::<gigapascal>(110.0), 0.28);
/// let iron = Material::custom("my iron", figures)?;
/// assert!(iron.yield_strength().is_none());
/// let odd = Figures::elastic(Pressure::new::<gigapascal>(110.0), 0.6);
/// let error = Material::custom("", odd).unwrap_err();
/// assert_eq!(error.to_string(), "Poisson's ratio 0.6 is not one a material has");
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Figures {
    /// Young's modulus.
    pub modulus: Pressure,
    /// Poisson's ratio, from 0 to under 0.5.
    pub poisson: f64,
    /// Linear thermal expansion.
    pub expansion: Option<TemperatureCoefficient>,
    /// Yield strength.
    pub yield_strength: Option<Pressure>,
    /// Density.
    pub density: Option<MassDensity>,
    /// The highest temperature to heat a part to.
    pub heat_limit: Option<ThermodynamicTemperature>,
}

impl Figures {
    /// Stiffness alone; the other figures not known.
    ///
    /// ```
    /// use fits_core::{standards::materials::{Figures, Material}, uom::si::{f64::Pressure, pressure::gigapascal}};
    /// let figures = Figures::elastic(Pressure::new::<gigapascal>(110.0), 0.34);
    /// assert_eq!(Material::custom("my bronze", figures)?.yield_mpa(), None);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub const fn elastic(modulus: Pressure, poisson: f64) -> Self {
        Self {
            modulus,
            poisson,
            expansion: None,
            yield_strength: None,
            density: None,
            heat_limit: None,
        }
    }
}

fn refused(what: &str) -> Error {
    Error::no_plan(format!("{what} is not one a material has"))
}

fn is_positive(value: f64) -> bool {
    value.is_finite() && value > 0.0
}

impl Material {
    /// A material by its own figures.
    ///
    /// # Errors
    /// A modulus or a strength that is not above 0, or a Poisson's ratio
    /// outside 0 to 0.5.
    ///
    /// ```
    /// use fits_core::{standards::materials::{Figures, Material}, uom::si::{f64::Pressure, pressure::gigapascal}};
    /// let figures = Figures::elastic(Pressure::new::<gigapascal>(110.0), 0.34);
    /// let own = Material::custom("my bronze", figures)?;
    /// assert_eq!((own.name(), own.modulus_gpa()), ("my bronze", 110.0));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn custom(name: &str, figures: Figures) -> Result<Self, Error> {
        let given = |value| Figure {
            value,
            from: Provenance { known: Known::Given, text: "as given" },
            note: "",
            of: "",
        };
        let modulus = figures.modulus.get::<gigapascal>();
        if !is_positive(modulus) {
            return Err(refused(&format!("a modulus of {modulus} GPa")));
        }
        if !(0.0..0.5).contains(&figures.poisson) {
            let poisson = format!("Poisson's ratio {}", figures.poisson);
            return Err(refused(&poisson).about(Subject::Poisson));
        }
        let yield_strength = figures.yield_strength.map(|figure| figure.get::<megapascal>());
        if let Some(strength) = yield_strength.filter(|strength| !is_positive(*strength)) {
            return Err(refused(&format!("a strength of {strength} MPa")));
        }
        let expansion = figures.expansion.map(|figure| figure.get::<per_kelvin>() * 1e6);
        if let Some(expansion) = expansion.filter(|value| !value.is_finite()) {
            return Err(refused(&format!("an expansion of {expansion}")));
        }
        Ok(Self {
            name: Cow::Owned(if name.is_empty() { "as given" } else { name }.to_owned()),
            family: Family::Other,
            aliases: &[],
            silent: &[],
            care: None,
            fume: None,
            modulus: given(modulus),
            poisson: given(figures.poisson),
            expansion: expansion.map(given),
            yield_strength: yield_strength.map(given),
            tensile: None,
            density: figures.density.map(|it| given(it.get::<kilogram_per_cubic_meter>())),
            heat_limit: figures.heat_limit.map(|it| given(it.get::<degree_celsius>())),
            cold_limit: None,
            specific_heat: None,
        })
    }

    /// The same material with another yield strength: the bar in hand has its
    /// own certificate.
    ///
    /// # Errors
    /// Not above 0.
    ///
    /// ```
    /// use fits_core::standards::materials::Material;
    /// use fits_core::uom::si::{f64::Pressure, pressure::megapascal};
    /// let hard = Material::find("4140")?.with_yield(Pressure::new::<megapascal>(900.0))?;
    /// assert!((hard.yield_mpa().expect("given") - 900.0).abs() < 1e-9);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn with_yield(&self, strength: Pressure) -> Result<Self, Error> {
        let value = strength.get::<megapascal>();
        if !is_positive(value) {
            return Err(refused(&format!("a strength of {value} MPa")));
        }
        let from = Provenance { known: Known::Given, text: "as given" };
        let given = Figure { value, from, note: "", of: "" };
        Ok(Self { yield_strength: Some(given), ..self.clone() })
    }
}
