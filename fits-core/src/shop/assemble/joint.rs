//! A joint as asked about, and what comes of it at its loosest and tightest.

use uom::si::{f64::Pressure, pressure::megapascal};

use super::{
    Assembly, Compound, Friction, Joining, Lubricant, Pair, Ring, Stress, Surface,
    cylinder::no_wall,
};
use crate::{
    error::{Error, Subject},
    size::{Length, Limits},
    speech::{Figure, say},
    standards::materials::Material,
};

/// How much of the summed roughness Rz a joint loses on the diameter: the
/// textbooks' figure and DIN 7190:2001's, on the safe side for grip.
pub const SMOOTHING_MOST: f64 = 0.8;
/// The same as DIN 7190-1:2017 is reported to take it, on the safe side for
/// stress.
pub const SMOOTHING_LEAST: f64 = 0.4;

/// The roughness Rz of a reamed bore and a fine-turned shaft, summed, in 0.1 nm:
/// 6.3 µm each. Common practice, no source.
pub const REAMED_AND_TURNED: Length = Length::from_tenth_nanometres(126_000);
/// The same of a ground pair: 1.6 µm each. Common practice, no source.
pub const GROUND: Length = Length::from_tenth_nanometres(32_000);

/// How many times its pull a brittle part's tensile strength must be: the edge
/// of the hub concentrates stress, and nothing yields to even it out. Common
/// practice (3 to 4), no source.
pub const BRITTLE_MARGIN: f64 = 3.0;

/// Joints that a shop can press or shrink, with room to spare.
const SMALLEST: Length = Length::from_tenth_nanometres(1_000_000);
const LARGEST: Length = Length::from_tenth_nanometres(200_000_000_000);

/// A part between the shaft and the hub, with the joint on its outside.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is built whole: what is new must be said by whoever builds one"
)]
pub struct Sleeve {
    /// What it is made of.
    pub material: Material,
    /// Its outside diameter.
    pub outside: Length,
    /// The interference on its outside, on the diameter; below 0 it is
    /// clearance.
    pub interference: Limits,
}

/// Two parts, or more, to be pressed or shrunk together.
///
/// ```
/// use fits_core::{Length, Limits, shop::assemble::Joint, standards::materials::Material};
/// use uom::si::{pressure::megapascal, torque::newton_meter};
/// // 40H7/u6 in a hub of 80 mm (Shigley, 8th ed., Problem 3-66), 30 mm long.
/// let steel = Material::find("steel 4140")?;
/// let interference = Limits::new("0.035mm".parse()?, "0.076mm".parse()?)?;
/// let mut joint = Joint::new("40mm".parse()?, interference, "80mm".parse()?, steel, steel)?;
/// joint.length = Some("30mm".parse()?);
/// let assembly = joint.solve()?;
/// let (least, most) = assembly.pressure(0);
/// assert!((most.get::<megapascal>() - 147.5).abs() < 0.05);
/// assert!((least.get::<megapascal>() - 67.9).abs() < 0.05);
/// // 0.08 x 67.9 MPa on 40 x 30 mm.
/// assert!((assembly.torque().expect("a length").get::<newton_meter>() - 409.7).abs() < 0.5);
/// assert_eq!(joint.rings().len(), 2);
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Joint {
    /// Nominal diameter of the joint.
    pub diameter: Length,
    /// Interference on the diameter, the least and the most; below 0 it
    /// is clearance.
    pub interference: Limits,
    /// Outside diameter of the hub.
    pub outside: Length,
    /// Bore of the shaft; zero of a solid one.
    pub inside: Length,
    /// What the hub is made of.
    pub hub: Material,
    /// What the shaft is made of.
    pub shaft: Material,
    /// Parts between the shaft and the hub, from the inside out.
    pub sleeves: Vec<Sleeve>,
    /// How long the parts are engaged.
    pub length: Option<Length>,
    /// The roughness Rz of both surfaces, summed; zero where it is not
    /// regarded.
    pub roughness: Length,
    /// The roughness is assumed, not given: it takes from the grip, and spares
    /// no stress.
    pub finish_is_assumed: bool,
    /// Friction between the two surfaces.
    pub friction: Friction,
}

impl Joint {
    /// A shaft in a hub, pressed dry, its length and roughness not known.
    ///
    /// # Errors
    /// Friction is known for every pair of families, so none as yet.
    ///
    /// ```
    /// use fits_core::{Fit, shop::assemble::Joint, standards::materials::Material};
    /// let fit = Fit::of_classes("40mm".parse()?, "H7".parse()?, "s6".parse()?)?;
    /// let (iron, steel) = (Material::find("cast iron")?, Material::find("steel")?);
    /// let joint = Joint::new(fit.nominal(), fit.interference(), "80mm".parse()?, iron, steel)?;
    /// assert_eq!((joint.inside, joint.length), ("0mm".parse()?, None));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn new(
        diameter: Length,
        interference: Limits,
        outside: Length,
        hub: &Material,
        shaft: &Material,
    ) -> Result<Self, Error> {
        Ok(Self {
            diameter,
            interference,
            outside,
            inside: Length::ZERO,
            hub: hub.clone(),
            shaft: shaft.clone(),
            sleeves: Vec::new(),
            length: None,
            roughness: Length::ZERO,
            finish_is_assumed: false,
            friction: Friction::between(hub, shaft, Joining::Press, Lubricant::Dry)?,
        })
    }

    /// Every part as a ring, from the inside out.
    pub fn rings(&self) -> Vec<Ring<'_>> {
        let shaft = Ring { bore: self.inside, outside: self.diameter, material: &self.shaft };
        let mut rings = vec![shaft];
        let mut bore = self.diameter;
        for sleeve in &self.sleeves {
            rings.push(Ring { bore, outside: sleeve.outside, material: &sleeve.material });
            bore = sleeve.outside;
        }
        rings.push(Ring { bore, outside: self.outside, material: &self.hub });
        rings
    }

    fn interferences(&self) -> impl Iterator<Item = Limits> {
        core::iter::once(self.interference)
            .chain(self.sleeves.iter().map(|sleeve| sleeve.interference))
    }

    /// The share of the roughness that is counted as lost for stress.
    pub(super) const fn lost_for_stress(&self) -> f64 {
        if self.finish_is_assumed { 0.0 } else { SMOOTHING_LEAST }
    }

    /// An interference less a share of the roughness.
    pub(super) fn working(&self, interference: Length, share: f64) -> Result<Length, Error> {
        let lost = super::millimetres(self.roughness.millimetres() * share)?;
        let rest = interference.checked_sub(lost)?;
        // Roughness takes away an interference, it makes no clearance.
        Ok(if interference.is_positive() { rest.max(Length::ZERO) } else { interference })
    }

    /// What comes of it.
    ///
    /// # Errors
    /// Sizes that leave no wall, a length that is none, no interference at
    /// all, or one that no press or shrink fit has.
    pub fn solve(&self) -> Result<Assembly, Error> {
        self.check()?;
        let rings = self.rings();
        let ends = |loose: f64, tight: f64| -> Result<Vec<(Length, Length)>, Error> {
            self.interferences()
                .map(|it| Ok((self.working(it.lower(), loose)?, self.working(it.upper(), tight)?)))
                .collect()
        };
        let safe = ends(SMOOTHING_MOST, self.lost_for_stress())?;
        let pick = |ends: &[(Length, Length)], tight: &dyn Fn(usize) -> bool| -> Vec<Length> {
            ends.iter()
                .enumerate()
                .map(|(at, (least, most))| if tight(at) { *most } else { *least })
                .collect()
        };
        let loosest = Compound::solve(&rings, &pick(&safe, &|_| false))?;
        let tightest = Compound::solve(&rings, &pick(&safe, &|_| true))?;
        let pair = |wanted: &[Length]| match (rings.as_slice(), wanted) {
            ([shaft, hub], [one]) => Pair::solve(shaft, hub, *one).map(Some),
            _ => Ok(None),
        };
        let pairs = (pair(&pick(&safe, &|_| false))?, pair(&pick(&safe, &|_| true))?);
        // A sleeve is worst off with one joint tight and the other loose, or on
        // its shaft before the next part goes on: all are tried. There are at
        // most six joints.
        let mut worst: Vec<Option<Worst>> = vec![None; rings.len()];
        for joints in 1..=safe.len() {
            let Some(parts) = rings.get(..=joints) else { continue };
            for choice in 0..1_u32 << joints {
                let mut wanted = pick(&safe, &|at| choice >> at & 1 == 1);
                wanted.truncate(joints);
                let solved = Compound::solve(parts, &wanted)?;
                for (at, (ring, slot)) in parts.iter().zip(&mut worst).enumerate() {
                    for surface in [Surface::Bore, Surface::Outside] {
                        let found = Worst::of(ring, surface, solved.stress(at, surface)?);
                        if slot.is_none_or(|before| before.used < found.used) {
                            *slot = Some(found);
                        }
                    }
                }
            }
        }
        // Both smoothings at both ends, to show where it matters.
        let other = ends(SMOOTHING_LEAST, SMOOTHING_MOST)?;
        let by_other = |tight: bool| -> Result<Pressure, Error> {
            let wanted = pick(&other, &|_| tight);
            match pair(&wanted)? {
                Some(pair) => Ok(pair.pressure()),
                None => Ok(Compound::solve(&rings, &wanted)?.pressure(0)),
            }
        };
        Ok(Assembly {
            other: (by_other(false)?, by_other(true)?),
            joint: self.clone(),
            loosest,
            tightest,
            pairs,
            worst: worst.into_iter().flatten().collect(),
        })
    }

    fn check(&self) -> Result<(), Error> {
        if self.diameter < SMALLEST || self.diameter > LARGEST {
            return Err(Error::no_joint(
                say!("a joint of {} cannot be pressed", self.diameter),
                "joints run from 0.1 mm to 20 m across",
            )
            .about(Subject::Diameter));
        }
        if let Some(length) = self.length.filter(|length| !length.is_positive()) {
            return Err(Error::no_joint(
                say!("a joint {} long holds nothing", length),
                "give the length in contact, as long 25",
            )
            .about(Subject::Length));
        }
        for (at, ring) in self.rings().iter().enumerate() {
            if ring.outside <= ring.bore {
                return Err(no_wall(at, ring.bore, ring.outside));
            }
        }
        let most = self.interferences().map(Limits::upper).max().unwrap_or(Length::ZERO);
        if !most.is_positive() {
            let loose = self.interference.upper().checked_neg()?;
            let least = self.interference.lower().checked_neg()?;
            return Err(Error::no_joint(
                if least == Length::ZERO && loose == least {
                    say!("nothing presses: there is no interference")
                } else if least == loose {
                    say!("nothing presses: the parts are loose by {}", Figure::Small(loose))
                } else {
                    say!(
                        "nothing presses: the parts are loose by {} to {}",
                        Figure::Small(loose),
                        Figure::Small(least)
                    )
                },
                "take a tighter class, as FN1 or s6; a slip fit is held by a retaining compound, a key or a pin",
            ));
        }
        // Beyond any press or shrink fit: a radius taken for a diameter, a slip
        // of the point, or a wall no thicker than what it should take up.
        let parts = core::iter::once((self.diameter, self.interference))
            .chain(self.sleeves.iter().map(|sleeve| (sleeve.outside, sleeve.interference)));
        for (diameter, interference) in parts {
            if interference.upper().checked_mul(50)? > diameter {
                return Err(Error::no_joint(
                    say!(
                        "an interference of {} on {} is not a press or shrink fit",
                        interference.upper(),
                        diameter
                    ),
                    "those have a thousandth of the diameter or two: check the point and the unit",
                ));
            }
        }
        for (at, ring) in self.rings().iter().enumerate() {
            let wall = ring.outside.checked_sub(ring.bore)?.half();
            if wall < most.checked_mul(2)? {
                return Err(Error::no_joint(
                    say!("a wall of {} is too thin for an interference of {}", wall, most),
                    "a wall several times as thick, or a slip fit and a retaining compound",
                )
                .about(Subject::Wall(at)));
            }
        }
        Ok(())
    }
}

/// Where a part is worst off, at any mix of sizes.
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
/// // The hub, at its bore: hoop 245.8 and radial -147.5 MPa come to 344.
/// let hub = assembly.worst()[1];
/// assert_eq!(hub.counts().get::<megapascal>().round(), 344.0);
/// assert!(hub.keeps() && !hub.gives() && hub.safety().is_some_and(|times| times > 1.0));
/// assert_eq!(hub.margin(), 1.0);
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Worst {
    /// At which surface.
    pub surface: Surface,
    /// The stresses there.
    pub stress: Stress,
    /// The strength it is held against: yield, or tensile of what breaks
    /// first; none where it is not known.
    pub strength: Option<Pressure>,
    /// It breaks before it yields.
    pub brittle: bool,
    /// The stress as a share of the strength; of the stress alone, in
    /// megapascals, where no strength is known.
    pub(super) used: f64,
}

impl Worst {
    pub(super) fn of(ring: &Ring<'_>, surface: Surface, stress: Stress) -> Self {
        let tensile = ring.material.tensile_strength();
        let strength = tensile.or(ring.material.yield_strength());
        let mut found = Self { surface, stress, strength, brittle: tensile.is_some(), used: 0.0 };
        found.used = found.counts().get::<megapascal>()
            / strength.map_or(1.0, |strength| strength.get::<megapascal>());
        found
    }

    /// The stress that counts: von Mises, or the pull of what is brittle.
    pub fn counts(&self) -> Pressure {
        if self.brittle {
            Pressure::new::<megapascal>(self.stress.hoop.get::<megapascal>().max(0.0))
        } else {
            self.stress.von_mises()
        }
    }

    /// How many times the strength holds; none where it is not known, or
    /// nothing pulls.
    pub fn safety(&self) -> Option<f64> {
        self.strength.filter(|_| self.used > 0.0).map(|_| 1.0 / self.used)
    }

    /// How many times over its strength must hold: a brittle part's tensile
    /// strength by [`BRITTLE_MARGIN`], a ductile part's yield once.
    pub const fn margin(&self) -> f64 {
        if self.brittle { BRITTLE_MARGIN } else { 1.0 }
    }

    /// Is its strength enough, by its margin?
    pub fn keeps(&self) -> bool {
        self.safety().is_none_or(|safety| safety >= self.margin())
    }

    /// Does it yield, or break?
    pub fn gives(&self) -> bool {
        self.safety().is_some_and(|safety| safety < 1.0)
    }
}
