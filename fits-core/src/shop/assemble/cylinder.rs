//! Thick cylinders one inside the other, elastic (Lamé): contact pressures,
//! stresses through the walls, and how every surface moves.
//!
//! Plane stress: free ends and joints as long as the parts. Sources: Lamé's
//! equations as in Shigley, Mechanical Engineering Design, 8th ed., 3-14 and
//! 3-16, and Timoshenko, Strength of Materials, part II.

use uom::si::{
    f64::Pressure,
    pressure::{gigapascal, megapascal},
};

use crate::{
    error::{Error, Subject},
    size::Length,
    speech::say,
    standards::materials::Material,
};

/// More joints than this are not an assembly of a small shop.
const MOST_JOINTS: usize = 6;

/// One of the parts: a ring, or a solid shaft where its bore is zero.
#[derive(Clone, Copy, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is built whole: what is new must be said by whoever builds one"
)]
pub struct Ring<'a> {
    /// Bore; zero of a solid shaft.
    pub bore: Length,
    /// Outside diameter.
    pub outside: Length,
    /// What it is made of.
    pub material: &'a Material,
}

/// One of a ring's surfaces.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Surface {
    /// The bore; the centre of a solid shaft.
    Bore,
    /// The outside.
    Outside,
}

/// Stresses at one place; tension is above 0.
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
/// // The hub's bore: the root of h² - h r + r² of 245.8 and -147.5 MPa.
/// let stress = assembly.stress_at(1, "40mm".parse()?)?;
/// assert_eq!(stress.von_mises().get::<megapascal>().round(), 344.0);
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Stress {
    /// Across the wall.
    pub radial: Pressure,
    /// Around the ring.
    pub hoop: Pressure,
}

impl Stress {
    /// The equivalent stress after von Mises, with nothing along the axis.
    pub fn von_mises(self) -> Pressure {
        let (radial, hoop) = (self.radial.get::<megapascal>(), self.hoop.get::<megapascal>());
        Pressure::new::<megapascal>(libm::sqrt(hoop * hoop - hoop * radial + radial * radial))
    }
}

/// Rings pressed together, solved.
///
/// ```
/// use fits_core::{Length, shop::assemble::{Compound, Ring, Surface}, standards::materials::Material};
/// use uom::si::pressure::megapascal;
/// // A bronze bush of 16 mm bore, 0.03 mm oversize, in a steel housing.
/// let mm = |text: &str| text.parse::<Length>();
/// let bush = Ring { bore: mm("16mm")?, outside: mm("20mm")?, material: Material::find("bronze")? };
/// let housing = Ring { bore: mm("20mm")?, outside: mm("40mm")?, material: Material::find("steel")? };
/// let joint = Compound::solve(&[bush, housing], &[mm("0.03mm")?])?;
/// assert!((joint.pressure(0).get::<megapascal>() - 29.06).abs() < 0.01);
/// // The bore closes by nearly the whole interference.
/// let closes = joint.growth(0, Surface::Bore)?;
/// assert_eq!(closes.checked_neg()?.to_string(), "0.0258309 mm");
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Debug)]
pub struct Compound {
    rings: Vec<Solved>,
}

/// A ring in millimetres and megapascals, with what presses on it.
#[derive(Clone, Copy, Debug)]
struct Solved {
    inner: f64,
    outer: f64,
    modulus: f64,
    poisson: f64,
    inside: f64,
    outside: f64,
}

impl Solved {
    fn of(ring: &Ring<'_>) -> Self {
        Self {
            inner: ring.bore.millimetres() / 2.0,
            outer: ring.outside.millimetres() / 2.0,
            modulus: ring.material.modulus().get::<gigapascal>() * 1e3,
            poisson: ring.material.poisson(),
            inside: 0.0,
            outside: 0.0,
        }
    }

    /// Radial and hoop stress at a radius within the wall.
    fn stress(&self, radius: f64) -> (f64, f64) {
        let (a2, b2) = (self.inner * self.inner, self.outer * self.outer);
        let even = (a2 * self.inside - b2 * self.outside) / (b2 - a2);
        if a2 == 0.0 {
            return (even, even);
        }
        let falls = (self.inside - self.outside) * a2 * b2 / ((b2 - a2) * radius * radius);
        (even - falls, even + falls)
    }

    /// Outward movement of a radius.
    fn moves(&self, radius: f64) -> f64 {
        let (radial, hoop) = self.stress(radius);
        radius * (hoop - self.poisson * radial) / self.modulus
    }

    /// Movement of a radius for one unit of pressure inside or outside.
    fn yields_to(&self, radius: f64, inside: f64, outside: f64) -> f64 {
        Self { inside, outside, ..*self }.moves(radius)
    }
}

impl Compound {
    /// Rings from the inside out, and the interference on the diameter at each
    /// joint between two of them. Interference below 0 is clearance: such
    /// a joint touches only if its neighbours close it.
    ///
    /// # Errors
    /// A ring without a wall, rings that do not follow each other, or another
    /// number of joints than there are between the rings.
    ///
    /// ```
    /// use fits_core::{Length, shop::assemble::{Compound, Ring, Surface}, standards::materials::Material};
    /// let mm = |text: &str| text.parse::<Length>();
    /// let bush = Ring { bore: mm("16mm")?, outside: mm("20mm")?, material: Material::find("bronze")? };
    /// let housing = Ring { bore: mm("20mm")?, outside: mm("40mm")?, material: Material::find("steel")? };
    /// let joint = Compound::solve(&[bush, housing], &[mm("0.03mm")?])?;
    /// assert!(joint.growth(1, Surface::Outside)?.is_positive());
    /// // One joint between two rings.
    /// assert!(Compound::solve(&[bush, housing], &[]).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn solve(rings: &[Ring<'_>], interferences: &[Length]) -> Result<Self, Error> {
        let joints = interferences.len();
        if joints == 0 || joints > MOST_JOINTS || rings.len() != joints + 1 {
            return Err(Error::no_joint(
                say!("{} parts and {} joints are not an assembly", rings.len(), joints),
                "two parts share one joint, three share two",
            ));
        }
        for (at, ring) in rings.iter().enumerate() {
            if ring.bore.is_negative() || ring.outside <= ring.bore {
                return Err(no_wall(at, ring.bore, ring.outside));
            }
        }
        for pair in rings.windows(2) {
            let [inner, outer] = pair else { continue };
            if inner.outside != outer.bore {
                return Err(Error::no_joint(
                    say!("a bore of {} does not sit on {}", outer.bore, inner.outside),
                    "give both at the nominal size of their joint",
                ));
            }
        }
        let free: Vec<Solved> = rings.iter().map(Solved::of).collect();
        let wanted: Vec<f64> = interferences.iter().map(|it| it.millimetres() / 2.0).collect();
        // Which joints touch is not known beforehand: the one choice that
        // neither pulls nor overlaps is right.
        for choice in (0..1_u32 << joints).rev() {
            let touches: Vec<bool> = (0..joints).map(|joint| choice >> joint & 1 == 1).collect();
            let solved = loaded(&free, &pressures(&free, &wanted, &touches));
            let right =
                solved.windows(2).zip(&wanted).zip(&touches).all(|((pair, want), touch)| {
                    let [inner, outer] = pair else { return false };
                    if *touch {
                        inner.outside >= 0.0
                    } else {
                        let (opens, closes) = (outer.moves(outer.inner), inner.moves(inner.outer));
                        *want - (opens - closes) <= 0.0
                    }
                });
            if right {
                return Ok(Self { rings: solved });
            }
        }
        Err(Error::no_joint("the parts have no one way to touch", "check the interferences"))
    }

    /// The pressure at a joint, counted from the innermost; zero where it
    /// does not touch or there is no such joint.
    ///
    /// ```
    /// use fits_core::{Length, shop::assemble::{Compound, Ring, Surface}, standards::materials::Material};
    /// let mm = |text: &str| text.parse::<Length>();
    /// let bush = Ring { bore: mm("16mm")?, outside: mm("20mm")?, material: Material::find("bronze")? };
    /// let housing = Ring { bore: mm("20mm")?, outside: mm("40mm")?, material: Material::find("steel")? };
    /// let joint = Compound::solve(&[bush, housing], &[mm("0.03mm")?])?;
    /// use fits_core::uom::si::pressure::megapascal;
    /// assert!((joint.pressure(0).get::<megapascal>() - 29.06).abs() < 0.01);
    /// assert_eq!(joint.pressure(1).get::<megapascal>(), 0.0);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn pressure(&self, joint: usize) -> Pressure {
        // The last ring's outside is free: no joint.
        let inside = self.rings.len().saturating_sub(1);
        let found = self.rings.get(joint).filter(|_| joint < inside);
        Pressure::new::<megapascal>(found.map_or(0.0, |ring| ring.outside))
    }

    /// The stress at a surface of a ring, counted from the innermost.
    ///
    /// # Errors
    /// There is no such ring.
    ///
    /// ```
    /// use fits_core::shop::assemble::{Compound, Ring, Surface};
    /// use fits_core::standards::materials::Material;
    /// let steel = Material::find("steel")?;
    /// let rings = [
    ///     Ring { bore: "0mm".parse()?, outside: "40mm".parse()?, material: steel },
    ///     Ring { bore: "40mm".parse()?, outside: "80mm".parse()?, material: steel },
    /// ];
    /// let solved = Compound::solve(&rings, &["0.03mm".parse()?])?;
    /// // A solid shaft bears the pressure alike in all directions.
    /// let shaft = solved.stress(0, Surface::Outside)?;
    /// assert!(((shaft.radial - shaft.hoop) / shaft.radial).value.abs() < 1e-9);
    /// let hub = solved.stress_at(1, "40mm".parse()?)?;
    /// assert!(((hub.radial + solved.pressure(0)) / hub.radial).value.abs() < 1e-9);
    /// assert!(solved.growth(1, Surface::Outside)?.is_positive());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn stress(&self, ring: usize, surface: Surface) -> Result<Stress, Error> {
        let solved = self.ring(ring)?;
        let radius = match surface {
            Surface::Bore => solved.inner,
            Surface::Outside => solved.outer,
        };
        Ok(said(solved.stress(radius)))
    }

    /// The stress at a diameter within a ring's wall.
    ///
    /// # Errors
    /// There is no such ring, or the diameter is outside its wall.
    ///
    /// ```
    /// use fits_core::{Length, shop::assemble::{Compound, Ring, Surface}, standards::materials::Material};
    /// let mm = |text: &str| text.parse::<Length>();
    /// let bush = Ring { bore: mm("16mm")?, outside: mm("20mm")?, material: Material::find("bronze")? };
    /// let housing = Ring { bore: mm("20mm")?, outside: mm("40mm")?, material: Material::find("steel")? };
    /// let joint = Compound::solve(&[bush, housing], &[mm("0.03mm")?])?;
    /// use fits_core::uom::si::pressure::megapascal;
    /// // Across the wall at the joint it is the pressure.
    /// let stress = joint.stress_at(1, mm("20mm")?)?;
    /// assert!((stress.radial.get::<megapascal>() + 29.06).abs() < 0.01);
    /// assert!(stress.hoop.get::<megapascal>() > 0.0);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn stress_at(&self, ring: usize, diameter: Length) -> Result<Stress, Error> {
        let solved = self.ring(ring)?;
        let radius = diameter.millimetres() / 2.0;
        if radius < solved.inner || radius > solved.outer {
            return Err(Error::no_joint(
                say!("{} is not in the wall", diameter),
                "give one inside it",
            ));
        }
        Ok(said(solved.stress(radius)))
    }

    /// How much the diameter of a surface grows by the pressing; closing in is
    /// below 0.
    ///
    /// # Errors
    /// There is no such ring, or the growth is out of range.
    ///
    /// ```
    /// use fits_core::{Length, shop::assemble::{Compound, Ring, Surface}, standards::materials::Material};
    /// let mm = |text: &str| text.parse::<Length>();
    /// let bush = Ring { bore: mm("16mm")?, outside: mm("20mm")?, material: Material::find("bronze")? };
    /// let housing = Ring { bore: mm("20mm")?, outside: mm("40mm")?, material: Material::find("steel")? };
    /// let joint = Compound::solve(&[bush, housing], &[mm("0.03mm")?])?;
    /// assert!(joint.growth(0, Surface::Bore)?.is_negative());
    /// assert!(joint.growth(1, Surface::Bore)?.is_positive());
    /// // What the one closes in and the other opens is the interference.
    /// let closes = joint.growth(0, Surface::Outside)?;
    /// let opens = joint.growth(1, Surface::Bore)?;
    /// assert!((opens.millimetres() - closes.millimetres() - 0.03).abs() < 1e-6);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn growth(&self, ring: usize, surface: Surface) -> Result<Length, Error> {
        let solved = self.ring(ring)?;
        let radius = match surface {
            Surface::Bore => solved.inner,
            Surface::Outside => solved.outer,
        };
        super::millimetres(2.0 * solved.moves(radius))
    }

    fn ring(&self, ring: usize) -> Result<&Solved, Error> {
        self.rings
            .get(ring)
            .ok_or_else(|| Error::no_joint(say!("there is no ring {}", ring), "rings count from 0"))
    }
}

pub(super) fn said((radial, hoop): (f64, f64)) -> Stress {
    Stress { radial: Pressure::new::<megapascal>(radial), hoop: Pressure::new::<megapascal>(hoop) }
}

/// A part, counted from the innermost, has no wall.
pub(in crate::shop) fn no_wall(at: usize, bore: Length, outside: Length) -> Error {
    Error::no_joint(
        say!("an outside diameter of {} leaves no wall about a bore of {}", outside, bore),
        "give an outside diameter larger than the bore",
    )
    .about(Subject::Wall(at))
}

fn loaded(free: &[Solved], pressures: &[f64]) -> Vec<Solved> {
    let inside = core::iter::once(0.0).chain(pressures.iter().copied());
    let outside = pressures.iter().copied().chain(core::iter::once(0.0));
    free.iter()
        .zip(inside.zip(outside))
        .map(|(ring, (inside, outside))| Solved { inside, outside, ..*ring })
        .collect()
}

/// The pressures at the joints that touch, zero at the others: at each, the
/// outer bore's opening less the inner outside's is the interference. Each
/// joint knows its neighbours alone, so one sweep each way solves it.
fn pressures(free: &[Solved], wanted: &[f64], touches: &[bool]) -> Vec<f64> {
    // (below, own, above, wanted) of each joint.
    let rows: Vec<[f64; 4]> = free
        .windows(2)
        .zip(wanted)
        .zip(touches)
        .map(|((pair, want), touch)| {
            let ([inner, outer], true) = (pair, *touch) else { return [0.0, 1.0, 0.0, 0.0] };
            let radius = inner.outer;
            [
                -inner.yields_to(radius, 1.0, 0.0),
                outer.yields_to(radius, 1.0, 0.0) - inner.yields_to(radius, 0.0, 1.0),
                outer.yields_to(radius, 0.0, 1.0),
                *want,
            ]
        })
        .collect();
    let mut swept: Vec<(f64, f64)> = Vec::with_capacity(rows.len());
    for [below, own, above, want] in rows {
        let (ratio, carried) = swept.last().copied().unwrap_or((0.0, 0.0));
        let pivot = own - below * ratio;
        swept.push((above / pivot, (want - below * carried) / pivot));
    }
    let mut found = Vec::with_capacity(swept.len());
    let mut next = 0.0;
    for (ratio, carried) in swept.iter().rev() {
        next = carried - ratio * next;
        found.push(next);
    }
    found.reverse();
    found
}
