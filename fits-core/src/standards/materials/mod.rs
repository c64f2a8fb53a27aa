//! What common shop materials are: stiffness, expansion, strength, density and
//! the heat they stand.
//!
//! From `data/materials.csv` and `data/material_names.csv`, whose rows say how
//! each figure is known. A material may also be given by its own figures
//! ([`Material::custom`]). Friction between two of them is
//! [`crate::shop::assemble`]'s business.

mod names;
mod own;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod table;

use core::fmt;
use std::borrow::Cow;

#[cfg(feature = "serde")]
use serde::{Deserialize, Serialize};
use uom::si::{
    f64::{
        MassDensity, Pressure, SpecificHeatCapacity, TemperatureCoefficient,
        ThermodynamicTemperature,
    },
    mass_density::kilogram_per_cubic_meter,
    pressure::{gigapascal, megapascal},
    specific_heat_capacity::joule_per_kilogram_kelvin,
    temperature_coefficient::per_kelvin,
    thermodynamic_temperature::degree_celsius,
};

pub use self::own::Figures;
use crate::{
    error::Error,
    source::{Known, Provenance, Reason},
    speech::{Figure as Said, Speech, say},
};

/// A material and its figures, from the table or given by its owner.
///
/// ```
/// use fits_core::standards::materials::{Family, Material};
/// use uom::si::pressure::gigapascal;
/// let tube = Material::find("6061-T6")?;
/// assert_eq!(tube, Material::find("aluminum")?);
/// assert_eq!((tube.name(), tube.family()), ("aluminium 6061-T6", Family::Aluminium));
/// assert!((tube.modulus().get::<gigapascal>() - 68.9).abs() < 1e-9);
///
/// let error = Material::find("aluminim").unwrap_err();
/// assert_eq!(error.to_string(), "no material is called aluminim");
/// assert_eq!(error.advice(), "nearest: aluminium");
/// // In plain figures, and typed.
/// assert_eq!((tube.modulus_gpa(), tube.expansion_e6()), (68.9, Some(24.0)));
/// assert_eq!(tube.expansion().map(|it| (it.value * 1e7).round()), Some(240.0));
/// use uom::si::{mass_density::kilogram_per_cubic_meter, pressure::megapascal};
/// assert_eq!(tube.yield_strength().map(|it| it.get::<megapascal>().round()), Some(241.0));
/// assert_eq!(tube.yield_mpa(), Some(241.0));
/// assert_eq!(tube.density().map(|it| it.get::<kilogram_per_cubic_meter>()), Some(2700.0));
/// assert_eq!((tube.poisson(), tube.tensile_strength()), (0.35, None));
/// assert!(tube.heat_limit().is_some() && tube.cold_limit().is_some());
/// assert!(tube.specific_heat().is_some() && !tube.aliases().is_empty());
/// assert_eq!((tube.care(), tube.fume()), (Some(fits_core::standards::materials::Care::Temper), None));
/// assert!(!tube.known().is_unconfirmed());
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Debug)]
pub struct Material {
    name: Cow<'static, str>,
    family: Family,
    aliases: &'static [&'static str],
    silent: &'static [&'static str],
    care: Option<Care>,
    fume: Option<Fume>,
    modulus: Figure,
    poisson: Figure,
    expansion: Option<Figure>,
    yield_strength: Option<Figure>,
    tensile: Option<Figure>,
    density: Option<Figure>,
    heat_limit: Option<Figure>,
    cold_limit: Option<Figure>,
    specific_heat: Option<Figure>,
}

/// A value in the unit that its field's data name: `GPa`, `MPa`, millionths per
/// kelvin, kg/m³, °C.
#[derive(Clone, Copy, Debug)]
struct Figure {
    value: f64,
    from: Provenance,
    note: &'static str,
    /// Of a strength: least or typical, and the temper; else empty.
    of: &'static str,
}

/// What a material belongs to.
///
/// ```
/// use fits_core::standards::materials::Family;
/// assert_eq!(Family::CastIron.words(), "cast iron");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(Serialize, Deserialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "serde", serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Family {
    /// Plain, alloyed, hardened or coated steel.
    Steel,
    /// Stainless steel.
    Stainless,
    /// Grey, ductile or malleable iron.
    CastIron,
    /// Aluminium and its alloys.
    Aluminium,
    /// Copper with zinc.
    Brass,
    /// Copper with tin, aluminium or manganese; sintered bronze too.
    Bronze,
    /// Copper as such.
    Copper,
    /// Titanium and its alloys.
    Titanium,
    /// Magnesium and its alloys.
    Magnesium,
    /// Plastics, laminates among them.
    Plastic,
    /// Given by its figures.
    Other,
}

/// What a material wants looking after.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Care {
    /// It breaks before it yields.
    Brittle,
    /// Its strength is a temper, and heat takes it away.
    Temper,
    /// A zinc coat: it peels, and it fumes.
    Zinc,
    /// Oil in its pores: it smokes, and it runs out.
    Oil,
    /// It burns.
    Magnesium,
    /// It creeps, softens and swells.
    Plastic,
    /// Seals that heat ruins.
    Seals,
}

/// What a material gives off above its heat limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Fume {
    /// Lead, alloyed in to cut freely or to bear.
    Lead,
    /// The poisonous gases of a plastic that breaks down.
    Plastic,
}

/// One figure of a material.
///
/// ```
/// use fits_core::standards::materials::Property;
/// assert_eq!(Property::Modulus.words(), "Young's modulus");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Property {
    /// Young's modulus.
    Modulus,
    /// Poisson's ratio.
    Poisson,
    /// Linear thermal expansion near room temperature.
    Expansion,
    /// Yield, or 0.2 % proof strength.
    Yield,
    /// Tensile strength, of what breaks before it yields.
    Tensile,
    /// Density.
    Density,
    /// The highest temperature to heat a part to, or to run it at.
    HeatLimit,
    /// The lowest temperature to chill a part to.
    ColdLimit,
    /// Heat to warm a kilogram by a kelvin.
    SpecificHeat,
}

impl PartialEq for Material {
    fn eq(&self, other: &Self) -> bool {
        let same = |a: Option<Figure>, b: Option<Figure>| {
            a.map(|figure| figure.value) == b.map(|figure| figure.value)
        };
        self.name == other.name
            && Property::ALL.iter().all(|which| same(self.figure(*which), other.figure(*which)))
    }
}

impl fmt::Display for Material {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&self.name)
    }
}

impl Family {
    /// In words, as `cast iron`.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Steel => "steel",
            Self::Stainless => "stainless steel",
            Self::CastIron => "cast iron",
            Self::Aluminium => "aluminium",
            Self::Brass => "brass",
            Self::Bronze => "bronze",
            Self::Copper => "copper",
            Self::Titanium => "titanium",
            Self::Magnesium => "magnesium",
            Self::Plastic => "plastic",
            Self::Other => "as given",
        }
    }
}

impl Property {
    /// Every one of them.
    pub const ALL: [Self; 9] = [
        Self::Modulus,
        Self::Poisson,
        Self::Expansion,
        Self::Yield,
        Self::Tensile,
        Self::Density,
        Self::HeatLimit,
        Self::ColdLimit,
        Self::SpecificHeat,
    ];

    /// In words, as `Young's modulus`.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Modulus => "Young's modulus",
            Self::Poisson => "Poisson's ratio",
            Self::Expansion => "expansion",
            Self::Yield => "yield strength",
            Self::Tensile => "tensile strength",
            Self::Density => "density",
            Self::HeatLimit => "heat limit",
            Self::ColdLimit => "cold limit",
            Self::SpecificHeat => "specific heat",
        }
    }

    /// The unit of [`Material::reason`]'s value; empty for a ratio.
    /// A value of it with its unit.
    fn said(self, value: f64) -> Speech {
        match self {
            Self::Modulus => say!("{} GPa", value),
            Self::Poisson => say!("{}", value),
            Self::Expansion => {
                let degree = ["\u{b0}C", "\u{b0}F"].map(str::to_owned);
                say!("{} per {}", Said::Millionths(value), Said::Either(degree))
            }
            Self::Yield | Self::Tensile => say!("{} MPa", value),
            Self::Density => say!("{} kg/m³", value),
            Self::HeatLimit | Self::ColdLimit => say!("{}", Said::Celsius(value)),
            Self::SpecificHeat => say!("{} J/(kg·K)", value),
        }
    }
}

impl Material {
    /// Every material listed, by family.
    ///
    /// ```
    /// use fits_core::standards::materials::Material;
    /// assert!(Material::all().any(|material| material.name() == "aluminium 6061-T6"));
    /// ```
    pub fn all() -> impl DoubleEndedIterator<Item = &'static Self> {
        table::MATERIALS.iter()
    }

    /// The material that a name means: its own, one of its other names, or
    /// either of them with its family's word, in any order. Letter case and
    /// hyphens are not regarded, nor how aluminium, grey and galvanised are
    /// spelled. A plain name is that of the softest temper usually sold.
    ///
    /// # Errors
    /// No such name; the advice offers the nearest one, never of another
    /// family than the one said.
    ///
    /// ```
    /// use fits_core::standards::materials::Material;
    /// assert_eq!(Material::find("6061-t6")?.name(), "aluminium 6061-T6");
    /// // A plain name is its softest common temper.
    /// assert_eq!(Material::find("Aluminum")?, Material::find("6061-t6")?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn find(name: &str) -> Result<&'static Self, Error> {
        names::find(name)
    }

    /// The same; none where there is no such name, and no other is looked for.
    ///
    /// ```
    /// use fits_core::standards::materials::Material;
    ///
    /// assert!(Material::named("660 bronze").is_some() && Material::named("oak").is_none());
    /// ```
    pub fn named(name: &str) -> Option<&'static Self> {
        names::named(name)
    }

    /// Its name, as `aluminium 6061-T6`: unique in the table.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Other names for it, in small letters.
    pub const fn aliases(&self) -> &'static [&'static str] {
        self.aliases
    }

    /// What it belongs to.
    pub const fn family(&self) -> Family {
        self.family
    }

    /// What it wants looking after, where it does.
    pub const fn care(&self) -> Option<Care> {
        self.care
    }

    /// What it gives off above its heat limit, where that harms.
    pub const fn fume(&self) -> Option<Fume> {
        self.fume
    }

    /// Young's modulus.
    pub fn modulus(&self) -> Pressure {
        Pressure::new::<gigapascal>(self.modulus.value)
    }

    /// Poisson's ratio.
    pub const fn poisson(&self) -> f64 {
        self.poisson.value
    }

    /// Linear thermal expansion near room temperature.
    pub fn expansion(&self) -> Option<TemperatureCoefficient> {
        self.expansion.map(|it| TemperatureCoefficient::new::<per_kelvin>(it.value * 1e-6))
    }

    /// Yield strength; none for what breaks before it yields, and where it is
    /// not known.
    pub fn yield_strength(&self) -> Option<Pressure> {
        self.yield_strength.map(|it| Pressure::new::<megapascal>(it.value))
    }

    /// Tensile strength, of what breaks before it yields.
    pub fn tensile_strength(&self) -> Option<Pressure> {
        self.tensile.map(|it| Pressure::new::<megapascal>(it.value))
    }

    /// Density.
    pub fn density(&self) -> Option<MassDensity> {
        self.density.map(|it| MassDensity::new::<kilogram_per_cubic_meter>(it.value))
    }

    /// The highest temperature to heat a part to for assembly, or to run it
    /// at; [`Material::reason`] says what gives way above it.
    pub fn heat_limit(&self) -> Option<ThermodynamicTemperature> {
        self.heat_limit.map(|it| ThermodynamicTemperature::new::<degree_celsius>(it.value))
    }

    /// The lowest temperature to chill a part to, where there is one to mind.
    pub fn cold_limit(&self) -> Option<ThermodynamicTemperature> {
        self.cold_limit.map(|it| ThermodynamicTemperature::new::<degree_celsius>(it.value))
    }

    /// Heat to warm a kilogram by a kelvin.
    pub fn specific_heat(&self) -> Option<SpecificHeatCapacity> {
        self.specific_heat
            .map(|it| SpecificHeatCapacity::new::<joule_per_kilogram_kelvin>(it.value))
    }

    /// Where a figure comes from, where the material has it; the rule is what
    /// else to know, empty where there is nothing.
    ///
    /// ```
    /// use fits_core::{source::Known, standards::materials::{Material, Property}};
    /// let reason = Material::find("bronze")?.reason(Property::Expansion).expect("known");
    /// assert_eq!(reason.value, "18 millionths per °C");
    /// assert_eq!(reason.known, Known::Seen);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn reason(&self, property: Property) -> Option<Reason> {
        self.figure(property).map(|figure| Reason {
            figure: format!("{}, {}", property.words(), self.name),
            value: property.said(figure.value),
            rule: [figure.of, figure.note]
                .into_iter()
                .filter(|part| !part.is_empty())
                .collect::<Vec<_>>()
                .join("; ")
                .into(),
            source: figure.from.text.to_owned(),
            known: figure.from.known,
        })
    }

    /// How what a joint counts of it is known: the worst of its stiffness,
    /// Poisson's ratio and strength.
    pub fn known(&self) -> Known {
        [Property::Modulus, Property::Poisson, Property::Yield, Property::Tensile]
            .into_iter()
            .filter_map(|property| self.figure(property))
            .fold(Known::Given, |worst, figure| worst.worst(figure.from.known))
    }

    const fn figure(&self, property: Property) -> Option<Figure> {
        match property {
            Property::Modulus => Some(self.modulus),
            Property::Poisson => Some(self.poisson),
            Property::Expansion => self.expansion,
            Property::Yield => self.yield_strength,
            Property::Tensile => self.tensile,
            Property::Density => self.density,
            Property::HeatLimit => self.heat_limit,
            Property::ColdLimit => self.cold_limit,
            Property::SpecificHeat => self.specific_heat,
        }
    }
}
