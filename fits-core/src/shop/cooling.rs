//! Work that is not at 20 °C: what a reading means, how much a part has
//! grown, and how long to wait.
//!
//! Sizes hold at 20 °C (ISO 1). A gauge reads its own scale: the part's size
//! there is what is read × (1 + αg (Tg − 20)) / (1 + αp (Tp − 20)).

use uom::si::{
    f64::{TemperatureCoefficient, ThermodynamicTemperature, Time},
    temperature_coefficient::per_kelvin,
    thermodynamic_temperature::degree_celsius,
    time::second,
};

use super::machining;
use crate::{
    error::Error,
    size::Length,
    source::{Known, Reason},
    standards::materials::Family,
};

/// The reference temperature (ISO 1), in degrees Celsius.
pub const REFERENCE_C: f64 = 20.0;

/// What a body is of and how warm it is.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is built whole: what is new must be said by whoever builds one"
)]
pub struct Body {
    /// Linear expansion.
    pub expansion: TemperatureCoefficient,
    /// Its temperature.
    pub temperature: ThermodynamicTemperature,
}

impl Body {
    /// Something at 20 °C, whatever it is of.
    ///
    /// ```
    /// use fits_core::shop::{celsius, cooling::{Body, growth}};
    /// let gauge = Body::at_reference();
    /// assert_eq!(gauge.temperature, celsius(20.0));
    /// assert_eq!(growth("20mm".parse()?, gauge)?, "0mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn at_reference() -> Self {
        Self {
            expansion: TemperatureCoefficient::new::<per_kelvin>(0.0),
            temperature: ThermodynamicTemperature::new::<degree_celsius>(REFERENCE_C),
        }
    }

    /// Degrees above 20 °C.
    pub(super) fn above(self) -> f64 {
        self.temperature.get::<degree_celsius>() - REFERENCE_C
    }

    pub(super) fn per_degree(self) -> f64 {
        self.expansion.get::<per_kelvin>()
    }

    /// How many times its size at 20 °C it is.
    pub(super) fn factor(self) -> Result<f64, Error> {
        let (above, per_degree) = (self.above(), self.per_degree());
        let sensible = SENSIBLE_C.contains(&(above + REFERENCE_C)) && per_degree.abs() < 1e-3;
        if sensible { Ok(1.0 + per_degree * above) } else { Err(senseless(above + REFERENCE_C)) }
    }
}

/// Nobody measures a part that is colder or hotter, in degrees Celsius.
const SENSIBLE_C: core::ops::RangeInclusive<f64> = -60.0..=300.0;

fn senseless(celsius: f64) -> Error {
    Error::not_listed(
        format!("{} °C is not a temperature to measure at", libm::rint(celsius * 10.0) / 10.0),
        format!("parts are measured from {} to {} °C", SENSIBLE_C.start(), SENSIBLE_C.end()),
    )
}

/// The part's size at 20 °C from what a gauge reads.
///
/// # Errors
/// A temperature or an expansion that has no sense, or out of range.
///
/// ```
/// use fits_core::{Length, shop::cooling::{Body, size_at_20}, standards::materials::Material};
/// use uom::si::{f64::ThermodynamicTemperature, thermodynamic_temperature::degree_celsius};
/// let aluminium = Material::find("6061")?.expansion().expect("known");
/// let part = Body {
///     expansion: aluminium,
///     temperature: ThermodynamicTemperature::new::<degree_celsius>(31.0),
/// };
/// let size = size_at_20("20.013mm".parse()?, part, Body::at_reference())?;
/// assert_eq!(format!("{:.3}", size.millimetres()), "20.008");
/// # Ok::<(), fits_core::Error>(())
/// ```
pub fn size_at_20(read: Length, part: Body, gauge: Body) -> Result<Length, Error> {
    // The small change is worked out, not the size: it alone is rounded.
    let (part, gauge) = (part.factor()?, gauge.factor()?);
    let change = read.in_micrometres() * ((gauge - part) / part);
    read.checked_add(Length::nearest_micrometres(change)?)
}

/// How much larger than at 20 °C a body of a size is.
///
/// # Errors
/// A temperature or an expansion that has no sense, or out of range.
///
/// ```
/// use fits_core::shop::{celsius, cooling::{Body, growth}};
/// use fits_core::standards::materials::Material;
/// let steel = Material::find("steel")?;
/// let part = Body { expansion: steel.expansion().expect("known"), temperature: celsius(30.0) };
/// // 10 K of the expansion on 100 mm.
/// let per_kelvin = steel.expansion_e6().expect("known") * 0.000_1;
/// assert!((growth("100mm".parse()?, part)?.millimetres() - 10.0 * per_kelvin).abs() < 1e-6);
/// # Ok::<(), fits_core::Error>(())
/// ```
pub fn growth(size: Length, body: Body) -> Result<Length, Error> {
    Length::nearest_micrometres(size.in_micrometres() * (body.factor()? - 1.0))
}

/// How a part cools.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Air {
    /// On the bench, in still air.
    Still,
    /// Under a fan.
    Fan,
}

impl Air {
    /// Heat given off, in watts for each square metre and kelvin (common
    /// practice, no source).
    const fn carries(self) -> f64 {
        match self {
            Self::Still => 10.0,
            Self::Fan => 30.0,
        }
    }
}

/// How long to wait until a part's size is within so much of what it will be
/// in a room: an estimate, for a solid bar of the diameter whose inside is as
/// warm as its outside; a bigger lump takes longer. Nought where it is within
/// already.
///
/// Time = diameter × heat capacity / 4 h × ln(change of size / within).
///
/// # Errors
/// Nothing allowed, or a temperature that has no sense.
///
/// ```
/// use fits_core::shop::{celsius, cooling::{Air, Body, growth, reasons, wait}};
/// use fits_core::{standards::materials::Material, uom::si::time::minute};
/// let steel = Material::find("steel")?;
/// let part = Body { expansion: steel.expansion().expect("known"), temperature: celsius(60.0) };
/// let (size, tenth) = ("50mm".parse()?, "0.0001in".parse()?);
/// assert!(growth(size, part)? > tenth);
/// let time = |air| wait(size, steel.family(), part, celsius(20.0), tenth, air);
/// assert!(time(Air::Fan)? < time(Air::Still)? && time(Air::Still)?.get::<minute>() > 10.0);
/// assert_eq!(reasons(steel.family(), Air::Fan)[1].value, "30 W/m²K");
/// # Ok::<(), fits_core::Error>(())
/// ```
pub fn wait(
    diameter: Length,
    family: Family,
    part: Body,
    room: ThermodynamicTemperature,
    within: Length,
    air: Air,
) -> Result<Time, Error> {
    let cooled = Body { temperature: room, ..part };
    let change = diameter.in_micrometres() * (part.factor()? - cooled.factor()?).abs();
    if !within.is_positive() {
        return Err(Error::not_listed(
            "how near to come is above 0",
            "allow a tenth, or a few micrometres",
        ));
    }
    let ratio = change / within.in_micrometres();
    let seconds = if ratio > 1.0 {
        let (heat, metres) =
            (machining::cuts(Some(family)).heat * 1e6, diameter.millimetres() / 1e3);
        metres.abs() * heat / (4.0 * air.carries()) * libm::log(ratio)
    } else {
        0.0
    };
    Ok(Time::new::<second>(seconds))
}

/// Why a wait is as long as it is.
///
/// ```
/// use fits_core::{shop::cooling::{Air, reasons}, standards::materials::Family};
/// assert_eq!(reasons(Family::Steel, Air::Fan)[1].value, "30 W/m²K");
/// ```
pub fn reasons(family: Family, air: Air) -> [Reason; 2] {
    let row = machining::cuts(Some(family));
    [
        Reason {
            figure: "heat capacity".into(),
            value: format!("{} MJ/m³K, {}", row.heat, row.family.words()).into(),
            rule: "wait = diameter × heat capacity / 4 h × ln(change of size / within)".into(),
            source: row.from.text.into(),
            known: row.from.known,
        },
        Reason {
            figure: "heat given off, h".into(),
            value: format!("{} W/m²K", air.carries()).into(),
            rule: "a solid bar as warm inside as outside".into(),
            source: Known::Practice.words().into(),
            known: Known::Practice,
        },
    ]
}
