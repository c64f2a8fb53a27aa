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

use super::{
    assemble::{Assembly, Compound, Stress, Wishes, Worst},
    bushing::Pressed,
};
use crate::standards::materials::{Figures, Material};

/// A temperature in degrees Celsius.
///
/// ```
/// use fits_core::{shop::celsius, uom::si::thermodynamic_temperature::kelvin};
/// assert!((celsius(20.0).get::<kelvin>() - 293.15).abs() < 1e-9);
/// ```
pub fn celsius(degrees: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(degrees)
}

/// Degrees Celsius of a temperature.
///
/// ```
/// use fits_core::{shop::{celsius, in_celsius}, standards::materials::Material};
/// assert!((in_celsius(celsius(60.0)) - 60.0).abs() < 1e-9);
/// let limit = Material::find("6061-T6")?.heat_limit().expect("known");
/// assert_eq!(in_celsius(limit).round(), 150.0);
/// # Ok::<(), fits_core::Error>(())
/// ```
pub fn in_celsius(temperature: ThermodynamicTemperature) -> f64 {
    temperature.get::<degree_celsius>()
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

    /// [`Assembly::other_pressure`] in megapascals: at the loosest and the tightest.
    pub fn other_pressure_mpa(&self) -> (f64, f64) {
        megapascals(self.other_pressure())
    }

    /// [`Assembly::press_force`] in newtons.
    pub fn press_force_n(&self) -> Option<f64> {
        self.press_force().map(|force: Force| force.get::<newton>())
    }

    /// [`Assembly::soft_press_force`] in newtons.
    pub fn soft_press_force_n(&self) -> Option<f64> {
        self.soft_press_force().map(|force: Force| force.get::<newton>())
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

impl Compound {
    /// [`Compound::pressure`] in megapascals.
    ///
    /// ```
    /// use fits_core::{Limits, shop::assemble::Joint, standards::materials::Material};
    /// let steel = Material::find("steel 4140")?;
    /// let interference = Limits::new("0.035mm".parse()?, "0.076mm".parse()?)?;
    /// let joint = Joint::new("40mm".parse()?, interference, "80mm".parse()?, steel, steel)?;
    /// let assembly = joint.solve()?;
    /// assert!((assembly.tightest().pressure_mpa(0) - 147.5).abs() < 0.05);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn pressure_mpa(&self, joint: usize) -> f64 {
        self.pressure(joint).get::<megapascal>()
    }
}

impl Stress {
    /// Across the wall and around the ring, in megapascals.
    ///
    /// ```
    /// use fits_core::{Limits, shop::assemble::Joint, standards::materials::Material};
    /// let steel = Material::find("steel 4140")?;
    /// let interference = Limits::new("0.035mm".parse()?, "0.076mm".parse()?)?;
    /// let joint = Joint::new("40mm".parse()?, interference, "80mm".parse()?, steel, steel)?;
    /// let assembly = joint.solve()?;
    /// // The hub's bore bears the pressure, and p (80² + 40²) / (80² - 40²) about it.
    /// let stress = assembly.stress_at(1, "40mm".parse()?)?;
    /// let (radial, hoop) = stress.radial_and_hoop_mpa();
    /// assert_eq!((radial.round(), hoop.round(), stress.von_mises_mpa().round()), (-147.0, 246.0, 344.0));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn radial_and_hoop_mpa(self) -> (f64, f64) {
        megapascals((self.radial, self.hoop))
    }

    /// [`Stress::von_mises`] in megapascals.
    ///
    /// ```
    /// use fits_core::{Limits, shop::assemble::Joint, standards::materials::Material};
    /// let steel = Material::find("steel 4140")?;
    /// let interference = Limits::new("0.035mm".parse()?, "0.076mm".parse()?)?;
    /// let joint = Joint::new("40mm".parse()?, interference, "80mm".parse()?, steel, steel)?;
    /// let assembly = joint.solve()?;
    /// let stress = assembly.stress_at(1, "40mm".parse()?)?;
    /// assert_eq!(stress.von_mises_mpa().round(), 344.0);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn von_mises_mpa(self) -> f64 {
        self.von_mises().get::<megapascal>()
    }
}

impl Worst {
    /// [`Worst::counts`] in megapascals.
    ///
    /// ```
    /// use fits_core::{Limits, shop::assemble::Joint, standards::materials::Material};
    /// let steel = Material::find("steel 4140")?;
    /// let interference = Limits::new("0.035mm".parse()?, "0.076mm".parse()?)?;
    /// let joint = Joint::new("40mm".parse()?, interference, "80mm".parse()?, steel, steel)?;
    /// let assembly = joint.solve()?;
    /// let hub = assembly.worst()[1];
    /// let (bears, counts) = (hub.strength_mpa().expect("known"), hub.counts_mpa());
    /// assert_eq!(counts.round(), 344.0);
    /// assert!((hub.safety().expect("known") - bears / counts).abs() < 1e-9);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn counts_mpa(&self) -> f64 {
        self.counts().get::<megapascal>()
    }

    /// What it bears, in megapascals.
    ///
    /// ```
    /// use fits_core::{Limits, shop::assemble::Joint, standards::materials::Material};
    /// let steel = Material::find("steel 4140")?;
    /// let interference = Limits::new("0.035mm".parse()?, "0.076mm".parse()?)?;
    /// let joint = Joint::new("40mm".parse()?, interference, "80mm".parse()?, steel, steel)?;
    /// let assembly = joint.solve()?;
    /// assert_eq!(assembly.worst()[1].strength_mpa(), steel.yield_mpa());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn strength_mpa(&self) -> Option<f64> {
        self.strength.map(|strength| strength.get::<megapascal>())
    }
}

impl Wishes {
    /// That it holds so many newton metres at its loosest.
    ///
    /// ```
    /// use fits_core::shop::assemble::Wishes;
    /// let wishes = Wishes::default().holding_nm(30.0).pressed_under_n(20_000.0);
    /// assert!(wishes.holds.is_some() && wishes.press_under.is_some());
    /// ```
    #[must_use]
    pub fn holding_nm(mut self, torque: f64) -> Self {
        self.holds = Some(Torque::new::<newton_meter>(torque));
        self
    }

    /// That it goes in under so many newtons at its tightest.
    ///
    /// ```
    /// use fits_core::{shop::assemble::Wishes, uom::si::force::newton};
    /// let most = Wishes::default().pressed_under_n(20_000.0).press_under.expect("set");
    /// assert_eq!(most.get::<newton>(), 20_000.0);
    /// ```
    #[must_use]
    pub fn pressed_under_n(mut self, force: f64) -> Self {
        self.press_under = Some(Force::new::<newton>(force));
        self
    }
}

impl Figures {
    /// Stiffness alone, in gigapascals; the other figures not known.
    ///
    /// ```
    /// use fits_core::standards::materials::{Figures, Material};
    /// let own = Material::custom("my bronze", Figures::of_gpa(110.0, 0.34).yielding_at_mpa(200.0))?;
    /// assert_eq!((own.modulus_gpa(), own.yield_mpa()), (110.0, Some(200.0)));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn of_gpa(modulus: f64, poisson: f64) -> Self {
        Self::elastic(Pressure::new::<gigapascal>(modulus), poisson)
    }

    /// With a yield strength, in megapascals.
    ///
    /// ```
    /// use fits_core::standards::materials::Figures;
    /// assert!(Figures::of_gpa(110.0, 0.34).yielding_at_mpa(200.0).yield_strength.is_some());
    /// ```
    #[must_use]
    pub fn yielding_at_mpa(mut self, strength: f64) -> Self {
        self.yield_strength = Some(Pressure::new::<megapascal>(strength));
        self
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

    /// Tensile strength in megapascals, of what breaks before it yields.
    ///
    /// ```
    /// use fits_core::standards::materials::Material;
    /// let iron = Material::find("cast iron")?;
    /// assert!(iron.tensile_mpa().is_some() && iron.yield_mpa().is_none());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn tensile_mpa(&self) -> Option<f64> {
        self.tensile_strength().map(|strength| strength.get::<megapascal>())
    }

    /// Thermal expansion, millionths per kelvin.
    pub fn expansion_e6(&self) -> Option<f64> {
        self.expansion().map(|expansion| expansion.get::<per_kelvin>() * 1e6)
    }
}
