//! Retaining compounds: which kind stands a gap, and what a joint of it holds.
//!
//! Push-out is π d L τ, torque half of that by the diameter; τ is the kind's
//! static shear less what the gap, the metals, heat and oil take, over a factor
//! of safety. Figures stand in `data/rescue/`, most of them recalled.

use super::{compound_table::KINDS, factor_table::FACTORS};
use crate::{
    error::{Error, Kind},
    size::{Length, Limits},
    source::{Known, Provenance, Reason},
    speech::{Figure, say},
    standards::materials::{Family, Material},
};

#[derive(Debug)]
pub(super) struct Row {
    pub(super) name: &'static str,
    pub(super) shear_mpa: f64,
    pub(super) gap_most: Length,
    pub(super) hot_c: f64,
    pub(super) note: &'static str,
    pub(super) from: Provenance,
}

#[derive(Debug)]
pub(super) struct Factor {
    pub(super) group: &'static str,
    pub(super) name: &'static str,
    pub(super) at: f64,
    pub(super) times: f64,
    pub(super) from: Provenance,
}

/// A kind of retaining compound.
///
/// ```
/// use fits_core::shop::rescue::RetainingCompound;
/// let kind = RetainingCompound::all().find(|kind| kind.name() == "high strength thick").expect("listed");
/// assert!(kind.gap_most() <= RetainingCompound::widest());
/// assert!(kind.reason().known.is_unconfirmed());
/// ```
#[derive(Clone, Copy, Debug)]
pub struct RetainingCompound(&'static Row);

/// What a compound is asked to do.
#[derive(Clone, Copy, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Bonded<'a> {
    /// The joint's diameter.
    pub diameter: Length,
    /// Hole less shaft, least and greatest.
    pub gap: Limits,
    /// What the parts are made of, where it is known; steel where not.
    pub metals: [Option<&'a Material>; 2],
    /// The hottest service in degrees Celsius, where it is above a room's.
    pub celsius: Option<f64>,
    /// Is the load shock, or does it turn round?
    pub shock: bool,
    /// Is oil left on the parts?
    pub oily: bool,
}

impl Bonded<'_> {
    /// Clean steel parts that stand still in a room.
    ///
    /// ```
    /// use fits_core::{Limits, shop::rescue::{Bonded, RetainingCompound}};
    /// let gap = Limits::new("0.02mm".parse()?, "0.08mm".parse()?)?;
    /// let joint = Bonded::new("20mm".parse()?, gap);
    /// assert_eq!((joint.metals, joint.celsius, joint.shock, joint.oily), ([None, None], None, false, false));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub const fn new(diameter: Length, gap: Limits) -> Self {
        Self { diameter, gap, metals: [None, None], celsius: None, shock: false, oily: false }
    }
}

/// What a bond may be loaded with.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is built whole: what is new must be said by whoever builds one"
)]
pub struct Bond {
    /// The kind's static shear on steel in a close gap, in megapascals.
    pub shear_mpa: f64,
    /// What gap, metals, heat and oil leave of it.
    pub kept: f64,
    /// The factor of safety.
    pub safety: f64,
    /// The shear to load it with, in megapascals.
    pub allowed_mpa: f64,
    /// How it is known.
    pub known: Known,
}

impl Bond {
    /// The bonded area in square millimetres.
    ///
    /// ```
    /// use fits_core::shop::rescue::Bond;
    /// // pi x 20 x 30.
    /// assert_eq!(Bond::area_mm2("20mm".parse()?, "30mm".parse()?).round(), 1885.0);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    #[must_use]
    pub fn area_mm2(diameter: Length, long: Length) -> f64 {
        core::f64::consts::PI * diameter.millimetres() * long.millimetres()
    }

    /// The push that a length may take, in newtons.
    ///
    /// ```
    /// use fits_core::{source::Known, shop::rescue::Bond};
    /// // A test machine's maker on ISO 10123: a collar of 20 mm bore, 18 mm high, has
    /// // 1131 mm² to shear, and the strongest compounds stand about 25.5 MPa.
    /// let bond = Bond { shear_mpa: 25.5, kept: 1.0, safety: 1.0, allowed_mpa: 25.5, known: Known::Seen };
    /// let push = bond.push_n("20mm".parse()?, "18mm".parse()?);
    /// assert!((push / (1131.0 * 25.5) - 1.0).abs() < 1e-4);
    /// assert!((Bond::area_mm2("20mm".parse()?, "18mm".parse()?) - 1131.0).abs() < 0.1);
    /// // On a radius of 10 mm.
    /// let torque = bond.torque_n_m("20mm".parse()?, "18mm".parse()?);
    /// assert!((torque - push * 0.010).abs() < 1e-9);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    #[must_use]
    pub fn push_n(&self, diameter: Length, long: Length) -> f64 {
        Self::area_mm2(diameter, long) * self.allowed_mpa
    }

    /// The torque that a length may take, in newton metres.
    ///
    /// ```
    /// use fits_core::{Limits, shop::rescue::{Bonded, RetainingCompound}};
    /// let gap = Limits::new("0.02mm".parse()?, "0.08mm".parse()?)?;
    /// let (diameter, long) = ("20mm".parse()?, "30mm".parse()?);
    /// let (_, bond) = RetainingCompound::best(&Bonded::new(diameter, gap))?;
    /// // The stress allowed on 1885 mm², at 10 mm.
    /// assert!((bond.torque_n_m(diameter, long) - bond.allowed_mpa * 18.85).abs() < 0.01 * bond.allowed_mpa);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    #[must_use]
    pub fn torque_n_m(&self, diameter: Length, long: Length) -> f64 {
        self.push_n(diameter, long) * diameter.millimetres() / 2000.0
    }
}

impl RetainingCompound {
    /// Every kind.
    ///
    /// ```
    /// use fits_core::shop::rescue::RetainingCompound;
    /// assert!(RetainingCompound::all().all(|kind| kind.gap_most() <= RetainingCompound::widest()));
    /// ```
    pub fn all() -> impl Iterator<Item = Self> {
        KINDS.iter().map(Self)
    }

    /// Its name: `high strength thick`.
    #[must_use]
    pub const fn name(self) -> &'static str {
        self.0.name
    }

    /// The largest gap on the diameter that it closes.
    #[must_use]
    pub const fn gap_most(self) -> Length {
        self.0.gap_most
    }

    /// The widest gap of any kind.
    ///
    /// ```
    /// use fits_core::shop::rescue::RetainingCompound;
    /// assert_eq!(Some(RetainingCompound::widest()), RetainingCompound::all().map(RetainingCompound::gap_most).max());
    /// ```
    #[must_use]
    pub fn widest() -> Length {
        Self::all().map(Self::gap_most).max().unwrap_or_default()
    }

    /// The kind that may be loaded the most in a joint.
    ///
    /// # Errors
    /// No kind stands it: what the kind of the widest gap says.
    ///
    /// ```
    /// use fits_core::{Limits, shop::rescue::{Bonded, RetainingCompound}};
    /// let gap = Limits::new("0.02mm".parse()?, "0.08mm".parse()?)?;
    /// let (kind, bond) = RetainingCompound::best(&Bonded::new("20mm".parse()?, gap))?;
    /// assert!(kind.gap_most() >= gap.upper() && bond.allowed_mpa < bond.shear_mpa);
    /// // None closes a gap of 2 mm.
    /// let wide = Limits::new("1.9mm".parse()?, "2mm".parse()?)?;
    /// assert!(RetainingCompound::best(&Bonded::new("20mm".parse()?, wide)).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn best(joint: &Bonded) -> Result<(Self, Bond), Error> {
        let mut best: Option<(Self, Bond)> = None;
        let mut refused = None;
        for kind in Self::all() {
            match kind.bond(joint) {
                Ok(bond) if best.is_none_or(|(_, other)| bond.allowed_mpa > other.allowed_mpa) => {
                    best = Some((kind, bond));
                }
                Ok(_) => {}
                Err(error) => {
                    if refused.is_none() || kind.gap_most() == Self::widest() {
                        refused = Some(error);
                    }
                }
            }
        }
        best.ok_or_else(|| refused.unwrap_or_else(|| Error::new(Kind::OutOfRange)))
    }

    /// Where its figures come from.
    #[must_use]
    pub fn reason(self) -> Reason {
        Reason {
            figure: format!("retaining compound, {}", self.name()),
            value: format!(
                "{} MPa, gap to {}, to {:.0} °C",
                self.0.shear_mpa,
                self.gap_most(),
                self.0.hot_c
            )
            .into(),
            rule: self.0.note.into(),
            source: self.0.from.text.into(),
            known: self.0.from.known,
        }
    }

    /// What a joint of it may be loaded with.
    ///
    /// # Errors
    /// No gap, a gap beyond the kind's, a plastic part, or too hot.
    ///
    /// ```
    /// use fits_core::{Limits, shop::rescue::{Bonded, RetainingCompound}};
    /// let gap = Limits::new("0.03mm".parse()?, "0.05mm".parse()?)?;
    /// let mut joint = Bonded::new("25mm".parse()?, gap);
    /// let thick = RetainingCompound::all().find(|kind| kind.name() == "high strength thick").unwrap();
    /// // 17 MPa over a factor of 3.
    /// assert!((thick.bond(&joint)?.allowed_mpa - 17.0 / 3.0).abs() < 1e-9);
    /// joint.gap = Limits::new("0.2mm".parse()?, "0.3mm".parse()?)?;
    /// assert!(thick.bond(&joint).is_err());
    /// assert_eq!(RetainingCompound::widest(), "0.25mm".parse()?);
    /// // In so wide a gap it keeps four tenths.
    /// joint.gap = Limits::new("0.2mm".parse()?, "0.25mm".parse()?)?;
    /// let (best, bond) = RetainingCompound::best(&joint)?;
    /// assert_eq!((best.name(), bond.kept), ("high strength thick", 0.4));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn bond(self, joint: &Bonded) -> Result<Bond, Error> {
        let refuse = |why, advice: &str| Err(Error::out_of_reach(why, advice));
        let gap = joint.gap.upper();
        if !gap.is_positive() {
            return refuse(
                say!("there is no gap for a compound: the parts grip by {}", gap.checked_neg()?),
                "press them",
            );
        }
        if gap > self.0.gap_most {
            return refuse(
                say!(
                    "a gap of {} is beyond {}'s {}",
                    Figure::About(gap),
                    self.name(),
                    Figure::About(self.0.gap_most)
                ),
                "close it with a sleeve or bush first",
            );
        }
        let celsius = joint.celsius.unwrap_or(23.0);
        if celsius > self.0.hot_c {
            return refuse(
                say!(
                    "{} is above the {} that {} stands",
                    Figure::Celsius(celsius),
                    Figure::Celsius(self.0.hot_c),
                    self.name()
                ),
                "pin or key it",
            );
        }
        let [one, other] = joint.metals.map(metal);
        let (one, other) = (one?, other?);
        let weaker = if one.times <= other.times { one } else { other };
        let (by_gap, gap_from) = along("gap", gap.millimetres());
        let (by_heat, _) = along("heat", celsius);
        let oil = if joint.oily { named("oil", "") } else { None };
        let safety = named("safety", if joint.shock { "shock" } else { "steady" });
        let safety = safety.map_or(10.0, |row| row.times);
        let kept = by_gap * by_heat * weaker.times * oil.map_or(1.0, |row| row.times);
        Ok(Bond {
            shear_mpa: self.0.shear_mpa,
            kept,
            safety,
            allowed_mpa: self.0.shear_mpa * kept / safety,
            known: self.0.from.known.worst(gap_from).worst(weaker.from.known),
        })
    }
}

fn named(group: &str, name: &str) -> Option<&'static Factor> {
    FACTORS.iter().find(|row| row.group == group && row.name == name)
}

/// The metal's row; steel where nothing is said of it.
fn metal(material: Option<&Material>) -> Result<&'static Factor, Error> {
    let name = match material.map(Material::family) {
        None | Some(Family::Steel) => "steel",
        Some(Family::Plastic) => {
            return Err(Error::out_of_reach(
                "a retaining compound is for metal: it crazes plastics and cures badly on them",
                "press it, or screw or pin it",
            ));
        }
        Some(Family::Stainless) => "stainless steel",
        Some(Family::Aluminium) => "aluminium",
        Some(Family::CastIron) => "cast iron",
        Some(_) => "other",
    };
    let is_plated = material.is_some_and(|it| it.name().contains("zinc"));
    let row = named("metal", if is_plated { "zinc plate" } else { name });
    row.or(FACTORS.first()).ok_or_else(|| Error::new(Kind::OutOfRange))
}

/// A factor that goes by a figure: straight between rows, level beyond their ends.
fn along(group: &str, at: f64) -> (f64, Known) {
    let rows = || FACTORS.iter().filter(|row| row.group == group);
    let below = rows().rfind(|row| row.at <= at);
    let above = rows().find(|row| row.at > at);
    match (below, above) {
        (Some(low), Some(high)) => {
            let share = (at - low.at) / (high.at - low.at);
            (low.times + share * (high.times - low.times), low.from.known)
        }
        (Some(only), None) | (None, Some(only)) => (only.times, only.from.known),
        (None, None) => (0.0, Known::Memory),
    }
}
