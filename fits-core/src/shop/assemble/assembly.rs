//! A joint solved: pressures, stresses, what it holds and what the press gives.

use uom::si::{
    f64::{Force, Pressure, Torque},
    force::newton,
    pressure::pascal,
    torque::newton_meter,
};

use super::{Compound, Joint, Pair, SMOOTHING_MOST, Stress, Surface, Worst, Yielding};
use crate::{error::Error, size::Length};

/// The most of a ductile part's section that may yield for the joint to be
/// counted on: DIN 7190-1 for hubs, from memory; taken for bushes too.
pub const MOST_PLASTIC: f64 = 0.3;

/// A joint solved at its loosest and its tightest.
///
/// ```
/// use fits_core::{Limits, shop::assemble::Joint, standards::materials::Material};
/// // 40H7/u6 in a hub of 80 mm (Shigley, 8th ed., Problem 3-66), 30 mm long.
/// let steel = Material::find("steel 4140")?;
/// let interference = Limits::new("0.035mm".parse()?, "0.076mm".parse()?)?;
/// let mut joint = Joint::new("40mm".parse()?, interference, "80mm".parse()?, steel, steel)?;
/// joint.length = Some("30mm".parse()?);
/// let assembly = joint.solve()?;
/// use fits_core::uom::si::{force::newton, pressure::megapascal, torque::newton_meter};
/// // What holds is counted at the loosest, what strains at the tightest.
/// let (least, most) = assembly.pressure_mpa(0);
/// assert!((least - 67.9).abs() < 0.05 && (most - 147.5).abs() < 0.05);
/// assert_eq!(assembly.loosest().pressure(0).get::<megapascal>(), least);
/// assert_eq!(assembly.tightest().pressure(0).get::<megapascal>(), most);
/// assert_eq!(assembly.other_pressure(), assembly.pressure(0));
/// assert_eq!(assembly.other_pressure_mpa(), (least, most));
/// // 0.08 x 67.9 MPa on 40 x 30 mm, at 20 mm.
/// let hold = assembly.axial_hold().expect("a length").get::<newton>();
/// let torque = assembly.torque().expect("a length").get::<newton_meter>();
/// assert!((torque - hold * 0.020).abs() < 0.001);
/// assert_eq!((assembly.axial_hold_n(), assembly.torque_nm()), (Some(hold), Some(torque)));
/// let press = assembly.press_force().expect("a length").get::<newton>();
/// assert_eq!(assembly.press_force_n(), Some(press));
/// assert_eq!(assembly.soft_press_force(), assembly.press_force());
/// assert_eq!(assembly.soft_press_force_n(), assembly.press_force_n());
/// // Both parts stay elastic.
/// assert!(assembly.keeps() && assembly.figures_hold());
/// assert!(!(assembly.yields() || assembly.breaks() || assembly.is_yielded_through()));
/// assert!(!assembly.is_not_to_be_counted_on());
/// assert_eq!((assembly.yielded_share(), assembly.worst().len()), (0.0, 2));
/// assert!(assembly.elastic_up_to().is_some_and(|most| most > "0.076mm".parse().unwrap()));
/// assert_eq!(assembly.joint().outside, "80mm".parse()?);
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Debug)]
pub struct Assembly {
    pub(super) joint: Joint,
    pub(super) loosest: Compound,
    pub(super) tightest: Compound,
    /// Two parts, of which either may yield, at the loosest and the tightest;
    /// none where there are more.
    pub(super) pairs: (Option<Pair>, Option<Pair>),
    pub(super) worst: Vec<Worst>,
    pub(super) other: (Pressure, Pressure),
}

impl Assembly {
    /// The joint as asked about.
    pub const fn joint(&self) -> &Joint {
        &self.joint
    }

    /// The parts at their loosest, elastic, the more of the roughness lost.
    pub const fn loosest(&self) -> &Compound {
        &self.loosest
    }

    /// The parts at their tightest, as if all stayed elastic, the less of the
    /// roughness lost.
    pub const fn tightest(&self) -> &Compound {
        &self.tightest
    }

    /// The interference that works: least with the more of the roughness
    /// lost, most with the less.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::{Limits, shop::assemble::{Joint, Surface, Yielding}, standards::materials::Material};
    /// let steel = Material::find("steel 4140")?;
    /// let interference = Limits::new("0.035mm".parse()?, "0.076mm".parse()?)?;
    /// let assembly =
    ///     Joint::new("40mm".parse()?, interference, "80mm".parse()?, steel, steel)?.solve()?;
    /// // Nothing is lost to roughness, since none was given.
    /// assert_eq!(assembly.working()?, (interference.lower(), interference.upper()));
    /// let (least, most) = assembly.pressure(0);
    /// assert!(least < most && assembly.yielding(1) == Yielding::Elastic);
    /// // Ring 1 is the hub: it grows outside, and bears most at its bore.
    /// let (_, grows) = assembly.growth(1, Surface::Outside)?;
    /// assert!(grows.is_positive() && grows < interference.upper());
    /// let (bore, outside) = ("40mm".parse()?, "80mm".parse()?);
    /// let bears = |at| assembly.stress_at(1, at).map(|stress| stress.von_mises());
    /// assert!(bears(bore)? > bears(outside)?);
    /// assert!(assembly.borne(1).is_some());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn working(&self) -> Result<(Length, Length), Error> {
        let range = self.joint.interference;
        Ok((
            self.joint.working(range.lower(), SMOOTHING_MOST)?,
            self.joint.working(range.upper(), self.joint.lost_for_stress())?,
        ))
    }

    /// The least and the most pressure at a joint, counted from the innermost:
    /// least for what it holds, most for stress and press. Nought where it
    /// does not touch; of two parts, as they bear it where one yields; of more,
    /// elastic up to the most that the rings about it bear.
    ///
    /// ```
    /// use fits_core::{Limits, shop::assemble::Joint, standards::materials::Material};
    /// // 40H7/u6 in a hub of 80 mm (Shigley, 8th ed., Problem 3-66), 30 mm long.
    /// let steel = Material::find("steel 4140")?;
    /// let interference = Limits::new("0.035mm".parse()?, "0.076mm".parse()?)?;
    /// let mut joint = Joint::new("40mm".parse()?, interference, "80mm".parse()?, steel, steel)?;
    /// joint.length = Some("30mm".parse()?);
    /// let assembly = joint.solve()?;
    /// use fits_core::uom::si::pressure::megapascal;
    /// let (least, most) = assembly.pressure(0);
    /// assert!((least.get::<megapascal>() - 67.9).abs() < 0.05);
    /// assert!((most.get::<megapascal>() - 147.5).abs() < 0.05);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn pressure(&self, joint: usize) -> (Pressure, Pressure) {
        let at = |pair: Option<Pair>, solved: &Compound| {
            pair.filter(|_| joint == 0).map_or_else(
                || solved.pressure(joint).min(self.most_borne(joint)),
                |it| it.pressure(),
            )
        };
        (at(self.pairs.0, &self.loosest), at(self.pairs.1, &self.tightest))
    }

    /// The most pressure that the parts outside a joint bear by von Mises'
    /// condition, however they yield: across a wall it falls by 2/√3 of the yield
    /// strength times the logarithm of outside over bore at most, since hoop and
    /// radial stress never differ by more (Hill, The Mathematical Theory of
    /// Plasticity, chapter V). Infinite where one's yield is not known.
    fn most_borne(&self, joint: usize) -> Pressure {
        let rings = self.joint.rings();
        rings.iter().skip(joint + 1).fold(Pressure::new::<pascal>(0.0), |sum, ring| {
            let strength =
                ring.material.yield_strength().map_or(f64::INFINITY, |it| it.get::<pascal>());
            let ratio = ring.outside.millimetres() / ring.bore.millimetres();
            sum + Pressure::new::<pascal>(2.0 / libm::sqrt(3.0) * strength * libm::log(ratio))
        })
    }

    /// The stress at a diameter within a part's wall at the tightest; of two
    /// parts, as they bear it where one yields.
    ///
    /// # Errors
    /// There is no such part, or the diameter is outside its wall.
    ///
    /// ```
    /// use fits_core::{Limits, shop::assemble::Joint, standards::materials::Material};
    /// // 40H7/u6 in a hub of 80 mm (Shigley, 8th ed., Problem 3-66), 30 mm long.
    /// let steel = Material::find("steel 4140")?;
    /// let interference = Limits::new("0.035mm".parse()?, "0.076mm".parse()?)?;
    /// let mut joint = Joint::new("40mm".parse()?, interference, "80mm".parse()?, steel, steel)?;
    /// joint.length = Some("30mm".parse()?);
    /// let assembly = joint.solve()?;
    /// use fits_core::uom::si::pressure::megapascal;
    /// // At the hub's bore p (80² + 40²) / (80² - 40²) along the hoop, less p across it.
    /// let stress = assembly.stress_at(1, "40mm".parse()?)?;
    /// assert!((stress.hoop.get::<megapascal>() - 147.5 * 8.0 / 4.8).abs() < 0.1);
    /// assert!((stress.radial.get::<megapascal>() + 147.5).abs() < 0.05);
    /// assert!(assembly.stress_at(1, "90mm".parse()?).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn stress_at(&self, ring: usize, diameter: Length) -> Result<Stress, Error> {
        let elastic = self.tightest.stress_at(ring, diameter)?;
        Ok(self.pairs.1.map_or(elastic, |pair| pair.stress(ring, diameter)))
    }

    /// The stress where a part is worst off, at the surface that
    /// [`Self::worst`] names, but as it is borne where a part yields.
    ///
    /// ```
    /// use fits_core::{Limits, shop::assemble::Joint, standards::materials::Material};
    /// // 40H7/u6 in a hub of 80 mm (Shigley, 8th ed., Problem 3-66), 30 mm long.
    /// let steel = Material::find("steel 4140")?;
    /// let interference = Limits::new("0.035mm".parse()?, "0.076mm".parse()?)?;
    /// let mut joint = Joint::new("40mm".parse()?, interference, "80mm".parse()?, steel, steel)?;
    /// joint.length = Some("30mm".parse()?);
    /// let assembly = joint.solve()?;
    /// // Elastic: what is borne is what was worked out.
    /// assert_eq!(assembly.borne(1), Some(assembly.worst()[1].stress));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn borne(&self, ring: usize) -> Option<Stress> {
        let worst = self.worst.get(ring)?;
        let part = self.joint.rings().get(ring).copied()?;
        let diameter = match worst.surface {
            Surface::Bore => part.bore,
            Surface::Outside => part.outside,
        };
        Some(self.pairs.1.map_or(worst.stress, |pair| pair.stress(ring, diameter)))
    }

    /// The same at the innermost joint by the other smoothing at each end; the
    /// same figures where no roughness is given.
    pub const fn other_pressure(&self) -> (Pressure, Pressure) {
        self.other
    }

    /// What a part does at its tightest, the shaft's 0; elastic of more than
    /// two parts, where [`Self::yields`] tells.
    ///
    /// ```
    /// use fits_core::{Limits, shop::assemble::Joint, standards::materials::Material};
    /// // 40H7/u6 in a hub of 80 mm (Shigley, 8th ed., Problem 3-66), 30 mm long.
    /// let steel = Material::find("steel 4140")?;
    /// let interference = Limits::new("0.035mm".parse()?, "0.076mm".parse()?)?;
    /// let mut joint = Joint::new("40mm".parse()?, interference, "80mm".parse()?, steel, steel)?;
    /// joint.length = Some("30mm".parse()?);
    /// let assembly = joint.solve()?;
    /// use fits_core::shop::assemble::Yielding;
    /// assert_eq!(assembly.yielding(1), Yielding::Elastic);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn yielding(&self, ring: usize) -> Yielding {
        self.pairs.1.map_or(Yielding::Elastic, |pair| pair.yielding(ring))
    }

    /// The most of a part's section that yields at the tightest, of two parts.
    pub fn yielded_share(&self) -> f64 {
        self.yielding(0).share().max(self.yielding(1).share())
    }

    /// Where each part is worst off, elastic, from the inside out.
    pub fn worst(&self) -> &[Worst] {
        &self.worst
    }

    /// Does any part yield, or break?
    pub fn yields(&self) -> bool {
        self.worst.iter().any(Worst::gives)
    }

    /// Does a part break?
    pub fn breaks(&self) -> bool {
        self.worst.iter().any(|worst| worst.brittle && worst.gives())
    }

    /// Does every part stay elastic, and a brittle one with its margin?
    pub fn keeps(&self) -> bool {
        self.worst.iter().all(Worst::keeps)
    }

    /// Is it a joint to count on: does every part keep, be it that one of two
    /// yields a little about its bore, up to [`MOST_PLASTIC`] of its section?
    pub fn figures_hold(&self) -> bool {
        let brittle_keeps = self.worst.iter().all(|worst| !worst.brittle || worst.keeps());
        let bears =
            if self.pairs.1.is_some() { !self.is_yielded_through() } else { !self.yields() };
        brittle_keeps && bears
    }

    /// What the press must be able to give at the end of the stroke, as if all
    /// stayed elastic: metal is often stronger than its least yield, so no
    /// part that gives may be counted on to ease it. It grows evenly from
    /// nothing. None where no length is known.
    pub fn press_force(&self) -> Option<Force> {
        self.force_of(self.tightest.pressure(0))
    }

    /// What the press gives where the metal is as soft as its least yield: an
    /// estimate, no bound.
    pub fn soft_press_force(&self) -> Option<Force> {
        self.force_of(self.pressure(0).1)
    }

    fn force_of(&self, pressure: Pressure) -> Option<Force> {
        self.area().map(|area| {
            Force::new::<newton>(self.joint.friction.to_press() * pressure.get::<pascal>() * area)
        })
    }

    /// What it holds along the axis at its loosest, at the joint that holds
    /// least. None where no length is known, where a part breaks or yields past
    /// [`MOST_PLASTIC`], and where of more than two parts one yields at the
    /// tightest: nothing is to be counted on.
    pub fn axial_hold(&self) -> Option<Force> {
        self.holds().map(|(force, _)| Force::new::<newton>(force))
    }

    /// The torque it holds at its loosest, as [`Self::axial_hold`].
    pub fn torque(&self) -> Option<Torque> {
        self.holds().map(|(_, torque)| Torque::new::<newton_meter>(torque))
    }

    /// Is there nothing to count on, whatever its length?
    pub fn is_not_to_be_counted_on(&self) -> bool {
        self.breaks()
            || self.is_yielded_through()
            || (!self.joint.sleeves.is_empty() && self.yields())
    }

    /// Does one of two parts yield past [`MOST_PLASTIC`], or right through?
    pub fn is_yielded_through(&self) -> bool {
        self.yielded_share() > MOST_PLASTIC
    }

    /// Newtons and newton metres held, each by the joint that holds least. All
    /// are taken to rub alike.
    fn holds(&self) -> Option<(f64, f64)> {
        if self.is_not_to_be_counted_on() {
            return None;
        }
        let length = self.joint.length?.millimetres();
        let outer = self.joint.sleeves.iter().map(|sleeve| sleeve.outside);
        let mut least = (f64::INFINITY, f64::INFINITY);
        for (at, diameter) in core::iter::once(self.joint.diameter).chain(outer).enumerate() {
            let diameter = diameter.millimetres();
            let area = core::f64::consts::PI * diameter * length / 1e6;
            let pressure = self.pressure(at).0.get::<pascal>();
            let force = self.joint.friction.holds() * pressure * area;
            least = (least.0.min(force), least.1.min(force * diameter / 2e3));
        }
        Some(least)
    }

    /// The most interference with which every part keeps, on the diameter; none for more than two parts, and where no strength is known.
    pub fn elastic_up_to(&self) -> Option<Length> {
        if !self.joint.sleeves.is_empty() || self.worst.iter().all(|it| it.strength.is_none()) {
            return None;
        }
        let judged = self.worst.iter().filter(|it| it.strength.is_some());
        let used = judged.map(|it| it.used * it.margin());
        let most = used.fold(0.0, f64::max);
        if most <= 0.0 {
            return None;
        }
        let (_, working) = self.working().ok()?;
        let lost = self.joint.roughness.millimetres() * self.joint.lost_for_stress();
        super::millimetres(working.millimetres() / most + lost).ok()
    }

    /// How much the diameter of a part's surface grows, at its loosest and at
    /// its tightest; closing in is below 0.
    ///
    /// # Errors
    /// There is no such part.
    ///
    /// ```
    /// use fits_core::{Limits, shop::assemble::Joint, standards::materials::Material};
    /// // 40H7/u6 in a hub of 80 mm (Shigley, 8th ed., Problem 3-66), 30 mm long.
    /// let steel = Material::find("steel 4140")?;
    /// let interference = Limits::new("0.035mm".parse()?, "0.076mm".parse()?)?;
    /// let mut joint = Joint::new("40mm".parse()?, interference, "80mm".parse()?, steel, steel)?;
    /// joint.length = Some("30mm".parse()?);
    /// let assembly = joint.solve()?;
    /// use fits_core::shop::assemble::Surface;
    /// // The hub's outside grows by p / E x 80 x 2 / (4 - 1).
    /// let (least, most) = assembly.growth(1, Surface::Outside)?;
    /// assert!(least.is_positive() && least < most);
    /// let modulus = steel.modulus_gpa() * 1000.0;
    /// assert!((most.millimetres() - 147.5 / modulus * 80.0 * 2.0 / 3.0).abs() < 0.0001);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn growth(&self, ring: usize, surface: Surface) -> Result<(Length, Length), Error> {
        let at = |pair: Option<Pair>, solved: &Compound| match pair {
            Some(pair) if ring < 2 => pair.growth(ring, surface),
            _ => solved.growth(ring, surface),
        };
        Ok((at(self.pairs.0, &self.loosest)?, at(self.pairs.1, &self.tightest)?))
    }

    /// The area in contact in square metres.
    fn area(&self) -> Option<f64> {
        let length = self.joint.length?.millimetres();
        Some(core::f64::consts::PI * self.joint.diameter.millimetres() * length / 1e6)
    }
}
