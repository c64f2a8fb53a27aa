//! A bushing pressed into its housing: how far its bore closes in, what
//! clearance is left for the shaft, and the sizes that give a wanted one.
//!
//! The bore closes in by Lamé's equations for the two rings
//! ([`Compound`]), or as the bushing yields; what heat and damp add acts as more interference on the
//! outside and as growth of the bore. `running` knows what clearance a service
//! asks for, `kinds` what bushings come as.

mod in_place;
mod kinds;
mod running;
mod suited;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod table;

pub use in_place::{BushRemedy, InPlace, RunningPlay, burnishes_at_most, in_place};
pub use kinds::{Bush, Made};
pub use running::{Running, Service};
pub use suited::{Suited, bore_for, shaft_for};

use uom::si::{
    f64::{Force, Pressure, ThermodynamicTemperature},
    temperature_coefficient::per_kelvin,
    thermodynamic_temperature::degree_celsius,
};

use super::{
    Damp,
    assemble::{
        Compound, Friction, Joining, Joint, Lubricant, Pair, Ring, Surface, Yielding, millimetres,
        no_wall,
    },
    cooling::REFERENCE_C,
};
use crate::{
    error::{Error, Subject},
    size::{Length, Limits},
    source::Known,
    speech::say,
    standards::materials::Material,
};

/// A wall under this share of the bore is foil, not a bushing.
const THINNEST: i64 = 50;

/// A bushing and its housing before they are pressed together.
///
/// ```
/// use fits_core::{Limits, shop::bushing::Bushing, standards::materials::Material};
/// let limits = |lower: &str, upper: &str| Limits::new(lower.parse()?, upper.parse()?);
/// let bushing = Bushing {
///     bore: limits("20.04mm", "20.053mm")?,
///     outside: limits("26.035mm", "26.048mm")?,
///     material: Material::find("bronze")?,
///     housing: limits("26mm", "26.021mm")?,
///     housing_outside: "60mm".parse()?,
///     hub: Material::find("steel")?,
///     length: "20mm".parse()?,
/// };
/// let pressed = bushing.press()?;
/// assert_eq!(pressed.interference.lower().to_string(), "0.014 mm");
/// // Six parts in seven of the interference, more where the bronze yields.
/// let [least, most] = [pressed.closes_in.lower(), pressed.closes_in.upper()];
/// assert!((least.millimetres() / 0.014 - 0.856).abs() < 0.001);
/// assert!(pressed.yields && most.millimetres() > 0.856 * 0.048);
/// // A shaft that runs with 0.03 to 0.09 mm.
/// let shaft = pressed.shaft_for(limits("0.03mm", "0.09mm")?)?;
/// assert!(shaft.limits.is_some());
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is built whole: what is new must be said by whoever builds one"
)]
pub struct Bushing<'a> {
    /// Its bore as made.
    pub bore: Limits,
    /// Its outside as made.
    pub outside: Limits,
    /// What it is made of.
    pub material: &'a Material,
    /// The bore of the housing.
    pub housing: Limits,
    /// The outside of the housing; half the distance to its nearest edge,
    /// twice, where it is not a ring.
    pub housing_outside: Length,
    /// What the housing is made of.
    pub hub: &'a Material,
    /// How long it is in the housing.
    pub length: Length,
}

/// A bushing in its housing.
///
/// ```
/// use fits_core::{Limits, shop::bushing::Bushing, standards::materials::Material};
/// let limits = |lower: &str, upper: &str| Limits::new(lower.parse()?, upper.parse()?);
/// let bushing = Bushing {
///     bore: limits("20.04mm", "20.053mm")?,
///     outside: limits("26.035mm", "26.048mm")?,
///     material: Material::find("bronze")?,
///     housing: limits("26mm", "26.021mm")?,
///     housing_outside: "60mm".parse()?,
///     hub: Material::find("steel")?,
///     length: "20mm".parse()?,
/// };
/// let pressed = bushing.press()?;
/// let (least, most) = pressed.pressure_mpa();
/// assert!(0.0 < least && least < most);
/// assert!(pressed.press_force_n().is_some_and(|force| force > 1000.0));
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Pressed {
    /// Interference on the outside, least and most; below 0 it is loose.
    pub interference: Limits,
    /// How much the bore closes in, least and most.
    pub closes_in: Limits,
    /// The bore in place.
    pub bore: Limits,
    /// The pressure between the two, at the least and at the most.
    pub pressure: (Pressure, Pressure),
    /// What the press must give, oiled; none where the parts are loose.
    pub press_force: Option<Force>,
    /// How the friction against the press is known.
    pub friction: Known,
    /// Does a part yield or break at the most interference? Then the bore
    /// closes in by the elastic-plastic figure.
    pub yields: bool,
    /// The most of a part's section that yields, from zero to one.
    pub yielded_share: f64,
    /// Where the bushing yields right through, the most that its bore can close
    /// in whatever the metal does: its section can't grow, so the bore moves
    /// by no more than the interference times outside over bore.
    pub closes_in_bound: Option<Length>,
}

/// A bushing at its work.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct InService {
    /// Clearance between bore and shaft, least and greatest.
    pub clearance: Limits,
    /// Interference in the housing, least and most.
    pub interference: Limits,
}

impl Bushing<'_> {
    /// Refuses what is not a bushing in a housing.
    fn check(&self) -> Result<(), Error> {
        let (bore, outside) = (self.bore.middle(), self.outside.middle());
        if !bore.is_positive() {
            return Err(Error::no_joint(say!("a bore cannot be {}", bore), "give the bore, as 20"));
        }
        let wall = outside.checked_sub(bore)?.half();
        if !wall.is_positive() {
            return Err(no_wall(0, bore, outside));
        }
        if wall.checked_mul(THINNEST)? < bore {
            return Err(Error::no_joint(
                say!("a wall of {} about a bore of {} is too thin to press in", wall, bore),
                "a wall of a twentieth of the bore and more is usual",
            )
            .about(Subject::Wall(0)));
        }
        if !self.length.is_positive() {
            return Err(Error::no_joint(
                say!("a bushing {} long holds nothing", self.length),
                "give its length, as long 20",
            )
            .about(Subject::Length));
        }
        if self.housing_outside <= self.housing.upper() {
            return Err(Error::no_joint(
                say!(
                    "a housing of {} leaves no wall about a bushing of {}",
                    self.housing_outside,
                    outside
                ),
                "give the housing's outside, as hub steel od 60",
            )
            .about(Subject::Wall(1)));
        }
        Ok(())
    }

    fn rings(&self) -> [Ring<'_>; 2] {
        let joint = self.housing.middle();
        [
            Ring { bore: self.bore.middle(), outside: joint, material: self.material },
            Ring { bore: joint, outside: self.housing_outside, material: self.hub },
        ]
    }

    /// How much the bore closes in under an interference, if all springs and
    /// if what is no stronger than its least yield gives; zero where that
    /// is clearance.
    fn closes_in(&self, interference: Length) -> Result<(Length, Length), Error> {
        if !interference.is_positive() {
            return Ok((Length::ZERO, Length::ZERO));
        }
        let [bush, hub] = self.rings();
        let springs = Compound::solve(&[bush, hub], &[interference])?;
        let gives = Pair::solve(&bush, &hub, interference)?;
        Ok((
            springs.growth(0, Surface::Bore)?.checked_neg()?,
            gives.growth(0, Surface::Bore)?.checked_neg()?,
        ))
    }

    /// Outside less housing.
    fn interference(&self) -> Result<Limits, Error> {
        Limits::new(
            self.outside.lower().checked_sub(self.housing.upper())?,
            self.outside.upper().checked_sub(self.housing.lower())?,
        )
    }

    /// Pressed in.
    ///
    /// # Errors
    /// No wall, or one too thin to press, no length, or a bushing that is
    /// loose in every housing.
    pub fn press(&self) -> Result<Pressed, Error> {
        self.check()?;
        let interference = self.interference()?;
        if !interference.upper().is_positive() {
            return Err(Error::no_joint(
                say!(
                    "an outside of {} is loose in a housing of {}",
                    self.outside.upper(),
                    self.housing.lower()
                ),
                "a bushing is larger than its housing, as H7 with s6",
            ));
        }
        let closes_in = Limits::new(
            self.closes_in(interference.lower())?.0,
            self.closes_in(interference.upper())?.1,
        )?;
        let bore = Limits::new(
            self.bore.lower().checked_sub(closes_in.upper())?,
            self.bore.upper().checked_sub(closes_in.lower())?,
        )?;
        let tight = Limits::new(interference.lower().max(Length::ZERO), interference.upper())?;
        let joint = Joint {
            inside: self.bore.middle(),
            length: Some(self.length),
            friction: Friction::between(self.hub, self.material, Joining::Press, Lubricant::Oil)
                .or_else(|_| {
                    Friction::between(self.hub, self.material, Joining::Press, Lubricant::Dry)
                })?,
            ..Joint::new(
                self.housing.middle(),
                tight,
                self.housing_outside,
                self.hub,
                self.material,
            )?
        };
        let solved = joint.solve()?;
        let bound = if solved.yielding(0) == Yielding::Through {
            let ratio = self.housing.middle().millimetres() / self.bore.middle().millimetres();
            Some(millimetres(interference.upper().millimetres() * ratio)?)
        } else {
            None
        };
        Ok(Pressed {
            interference,
            closes_in,
            bore,
            pressure: solved.pressure(0),
            press_force: solved.press_force(),
            friction: joint.friction.known_to_press(),
            yields: solved.yields(),
            yielded_share: solved.yielded_share(),
            closes_in_bound: bound,
        })
    }

    /// At a temperature and in damp: a bore that is of these limits in place
    /// at 20 °C, whether as pressed or finished there, and a shaft.
    ///
    /// Bushing and housing hold each other: what the bushing grows more than
    /// the housing adds to the interference and closes the bore, while the
    /// bore grows with its own material.
    ///
    /// # Errors
    /// A part's expansion is not known, or out of range.
    ///
    /// ```
    /// use fits_core::{Limits, shop::{Damp, bushing::Bushing, celsius}, standards::materials::Material};
    /// let limits = |lower: &str, upper: &str| Limits::new(lower.parse()?, upper.parse()?);
    /// let bushing = Bushing {
    ///     bore: limits("20.04mm", "20.053mm")?,
    ///     outside: limits("26.035mm", "26.048mm")?,
    ///     material: Material::find("bronze")?,
    ///     housing: limits("26mm", "26.021mm")?,
    ///     housing_outside: "60mm".parse()?,
    ///     hub: Material::find("steel")?,
    ///     length: "20mm".parse()?,
    /// };
    /// let bore = bushing.press()?.bore;
    /// let shaft = limits("19.96mm", "19.973mm")?;
    /// let at = |degrees| {
    ///     let steel = Material::find("steel")?;
    ///     bushing.in_service(bore, shaft, steel, celsius(degrees), Damp::Dry)
    /// };
    /// // At 20 °C it is the bore less the shaft.
    /// assert_eq!(at(20.0)?.clearance.lower(), bore.lower().checked_sub(shaft.upper())?);
    /// // Held by steel, the warm bronze closes in.
    /// assert!(at(80.0)?.clearance.lower() < at(20.0)?.clearance.lower());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn in_service(
        &self,
        in_place: Limits,
        shaft: Limits,
        shaft_material: &Material,
        temperature: ThermodynamicTemperature,
        damp: Damp,
    ) -> Result<InService, Error> {
        let off = temperature.get::<degree_celsius>() - REFERENCE_C;
        let growth = |material: &Material| -> Result<f64, Error> {
            let heat = material.expansion().ok_or_else(|| {
                Error::no_plan(say!("the expansion of {} is not known", material.name()))
            })?;
            Ok(heat.get::<per_kelvin>() * off + damp.growth(material))
        };
        let (bush, hub, turns) =
            (growth(self.material)?, growth(self.hub)?, growth(shaft_material)?);
        let grown = |size: Length, by: f64| millimetres(size.millimetres() * (1.0 + by));
        let opens = millimetres(self.bore.middle().millimetres() * bush)?;
        let more = millimetres(self.housing.middle().millimetres() * (bush - hub))?;
        let pressed = self.interference()?;
        let interference =
            Limits::new(pressed.lower().checked_add(more)?, pressed.upper().checked_add(more)?)?;
        // What it closes in more than it has already.
        let closes = |now: Length, before: Length| -> Result<Length, Error> {
            let (now, before) = (self.closes_in(now)?, self.closes_in(before)?);
            // What lets go springs back; only what presses more can give.
            if now.0 < before.0 { now.0.checked_sub(before.0) } else { now.1.checked_sub(before.1) }
        };
        let lower = in_place
            .lower()
            .checked_add(opens)?
            .checked_sub(closes(interference.upper(), pressed.upper())?)?
            .checked_sub(grown(shaft.upper(), turns)?)?;
        let upper = in_place
            .upper()
            .checked_add(opens)?
            .checked_sub(closes(interference.lower(), pressed.lower())?)?
            .checked_sub(grown(shaft.lower(), turns)?)?;
        Ok(InService { clearance: Limits::new(lower, upper)?, interference })
    }
}

impl Pressed {
    /// The shaft that runs in the bore as it is in place.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::{Limits, shop::bushing::Bushing, standards::materials::Material};
    /// let limits = |lower: &str, upper: &str| Limits::new(lower.parse()?, upper.parse()?);
    /// let bushing = Bushing {
    ///     bore: limits("20.04mm", "20.053mm")?,
    ///     outside: limits("26.035mm", "26.048mm")?,
    ///     material: Material::find("bronze")?,
    ///     housing: limits("26mm", "26.021mm")?,
    ///     housing_outside: "60mm".parse()?,
    ///     hub: Material::find("steel")?,
    ///     length: "20mm".parse()?,
    /// };
    /// let pressed = bushing.press()?;
    /// let shaft = pressed.shaft_for(limits("0.03mm", "0.09mm")?)?;
    /// let shaft = shaft.limits.expect("there is room for one");
    /// assert_eq!(shaft.upper(), pressed.bore.lower().checked_sub("0.03mm".parse()?)?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn shaft_for(&self, running: Limits) -> Result<Suited, Error> {
        shaft_for(self.bore, running)
    }

    /// The bore to make before pressing, for a bore wanted in place.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::{Limits, shop::{Damp, bushing::Bushing, celsius}, standards::materials::Material};
    /// let limits = |lower: &str, upper: &str| Limits::new(lower.parse()?, upper.parse()?);
    /// let steel = Material::find("steel")?;
    /// let bushing = Bushing {
    ///     bore: limits("20.04mm", "20.053mm")?,
    ///     outside: limits("26.035mm", "26.048mm")?,
    ///     material: Material::find("bronze")?,
    ///     housing: limits("26mm", "26.021mm")?,
    ///     housing_outside: "60mm".parse()?,
    ///     hub: steel,
    ///     length: "20mm".parse()?,
    /// };
    /// let pressed = bushing.press()?;
    /// let shaft = limits("19.98mm", "19.99mm")?;
    /// let warm = bushing.in_service(pressed.bore, shaft, steel, celsius(60.0), Damp::Dry)?;
    /// // Bronze grows more than the steel about it.
    /// assert!(warm.interference.lower() > pressed.interference.lower());
    /// // Made so much larger, it comes right in place.
    /// let before = pressed.bore_before(limits("20mm", "20.052mm")?)?;
    /// assert!(before.aim > "20.026mm".parse()?);
    /// assert!(pressed.pressure_mpa().1 > pressed.pressure_mpa().0 && pressed.press_force_n().is_some());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn bore_before(&self, in_place: Limits) -> Result<Suited, Error> {
        let aim = in_place.middle().checked_add(self.closes_in.middle())?;
        let limits = Limits::new(
            in_place.lower().checked_add(self.closes_in.upper())?,
            in_place.upper().checked_add(self.closes_in.lower())?,
        );
        Ok(Suited { aim, limits: limits.ok() })
    }
}
