//! Pressure, force, torque and temperature as plain numbers, for callers that
//! keep no typed figures: each name ends in its unit.

use uom::si::{
    f64::{Force, Pressure, ThermodynamicTemperature, Torque},
    force::newton,
    pressure::{gigapascal, megapascal},
    temperature_coefficient::per_kelvin,
    thermodynamic_temperature::degree_celsius,
    torque::newton_meter,
};

use super::{assemble::Assembly, bushing::Pressed};
use crate::standards::materials::Material;

/// A temperature in degrees Celsius.
///
/// ```
/// use fits_core::{shop::celsius, uom::si::thermodynamic_temperature::kelvin};
/// assert!((celsius(20.0).get::<kelvin>() - 293.15).abs() < 1e-9);
/// ```
pub fn celsius(degrees: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(degrees)
}

fn megapascals((least, most): (Pressure, Pressure)) -> (f64, f64) {
    (least.get::<megapascal>(), most.get::<megapascal>())
}

/// ```
/// use fits_core::{Limits, shop::assemble::Joint, standards::materials::Material};
/// let steel = Material::find("steel 4140")?;
/// let interference = Limits::new("0.035mm".parse()?, "0.076mm".parse()?)?;
/// let mut joint = Joint::new("40mm".parse()?, interference, "80mm".parse()?, steel, steel)?;
/// joint.length = Some("30mm".parse()?);
/// let assembly = joint.solve()?;
/// let (least, most) = assembly.pressure_mpa(0);
/// assert!((least - 67.9).abs() < 0.05 && (most - 147.5).abs() < 0.05);
/// let torque = assembly.torque_nm().expect("a length is known");
/// let hold = assembly.axial_hold_n().expect("a length is known");
/// // A force at the radius of 20 mm.
/// assert!((torque - hold * 0.02).abs() < 1e-6);
/// assert!(assembly.press_force_n().is_some_and(|force| force > hold));
/// # Ok::<(), fits_core::Error>(())
/// ```
impl Assembly {
    /// [`Assembly::pressure`] in megapascals: at the loosest and the tightest.
    ///
    /// ```
    /// use fits_core::{Limits, shop::assemble::Joint, standards::materials::Material};
    /// // 40H7/u6 in a hub of 80 mm (Shigley, 8th ed., Problem 3-66), 30 mm long.
    /// let steel = Material::find("steel 4140")?;
    /// let interference = Limits::new("0.035mm".parse()?, "0.076mm".parse()?)?;
    /// let mut joint = Joint::new("40mm".parse()?, interference, "80mm".parse()?, steel, steel)?;
    /// joint.length = Some("30mm".parse()?);
    /// let assembly = joint.solve()?;
    /// let (least, most) = assembly.pressure_mpa(0);
    /// assert!((least - 67.9).abs() < 0.05 && (most - 147.5).abs() < 0.05);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn pressure_mpa(&self, joint: usize) -> (f64, f64) {
        megapascals(self.pressure(joint))
    }

    /// [`Assembly::press_force`] in newtons.
    pub fn press_force_n(&self) -> Option<f64> {
        self.press_force().map(|force: Force| force.get::<newton>())
    }

    /// [`Assembly::axial_hold`] in newtons.
    pub fn axial_hold_n(&self) -> Option<f64> {
        self.axial_hold().map(|force: Force| force.get::<newton>())
    }

    /// [`Assembly::torque`] in newton metres.
    pub fn torque_nm(&self) -> Option<f64> {
        self.torque().map(|torque: Torque| torque.get::<newton_meter>())
    }
}

impl Pressed {
    /// The pressure in megapascals: at the least interference and at the most.
    pub fn pressure_mpa(&self) -> (f64, f64) {
        megapascals(self.pressure)
    }

    /// What the press must give, in newtons.
    pub fn press_force_n(&self) -> Option<f64> {
        self.press_force.map(|force| force.get::<newton>())
    }
}

/// ```
/// use fits_core::standards::materials::Material;
/// let brass = Material::find("brass")?;
/// assert!(brass.modulus_gpa() < Material::find("steel")?.modulus_gpa());
/// assert!(brass.expansion_e6().is_some_and(|it| (17.0..22.0).contains(&it)));
/// assert!(brass.yield_mpa().is_some());
/// # Ok::<(), fits_core::Error>(())
/// ```
impl Material {
    /// Young's modulus in gigapascals.
    pub fn modulus_gpa(&self) -> f64 {
        self.modulus().get::<gigapascal>()
    }

    /// Yield strength in megapascals.
    pub fn yield_mpa(&self) -> Option<f64> {
        self.yield_strength().map(|strength| strength.get::<megapascal>())
    }

    /// Thermal expansion, millionths per kelvin.
    pub fn expansion_e6(&self) -> Option<f64> {
        self.expansion().map(|expansion| expansion.get::<per_kelvin>() * 1e6)
    }
}
