//! The crib: the tools and instruments one owns, and what of them suits a job.

use crate::{
    error::Error,
    job::drill_set::{DrillSet, OwnDrill},
    shop::Ream,
    size::{Length, Limits},
};

#[cfg(feature = "serde")]
use serde::{Deserialize, Serialize};
/// The tools one owns. Every list may be empty.
///
/// ```
/// use fits_core::job::{Crib, DrillSeries, DrillSet};
/// let mut crib = Crib::default();
/// crib.drills.push(DrillSet {
///     series: DrillSeries::Metric,
///     from: Some("1 mm".parse()?),
///     to: Some("13 mm".parse()?),
///     step: Some("0.5 mm".parse()?),
/// });
/// let drills = crib.drills();
/// assert_eq!(drills.len(), 25);
/// assert_eq!(drills[15].name(), "8.5 mm");
/// assert!(!crib.is_empty());
/// # Ok::<(), fits_core::Error>(())
/// ```
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(Serialize, Deserialize))]
#[cfg_attr(feature = "serde", serde(default))]
#[non_exhaustive]
pub struct Crib {
    /// Drills, one by one.
    pub drill: Vec<OwnDrill>,
    /// Sets of drills.
    pub drills: Vec<DrillSet>,
    /// Reamers.
    pub reamer: Vec<Reamer>,
    /// Taps.
    pub tap: Vec<Tap>,
    /// Gauge pins.
    pub pin: Vec<GaugePin>,
    /// Boring bars.
    pub bar: Vec<Bar>,
    /// Measuring instruments.
    pub instrument: Vec<OwnInstrument>,
    /// Materials by their figures.
    pub material: Vec<OwnMaterial>,
}

/// A reamer.
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(Serialize, Deserialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is a row of a file, which its owner writes whole"
)]
pub struct Reamer {
    /// Its marked size.
    pub size: Length,
    /// What it really cuts, tried on scrap.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub cuts: Option<Length>,
}

/// A tap, by its thread's name.
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(Serialize, Deserialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is a row of a file, which its owner writes whole"
)]
pub struct Tap {
    /// The thread: `M10x1.25`.
    pub thread: String,
}

/// A gauge pin.
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(Serialize, Deserialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is a row of a file, which its owner writes whole"
)]
pub struct GaugePin {
    /// Its size.
    pub size: Length,
}

/// A boring bar.
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(Serialize, Deserialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is a row of a file, which its owner writes whole"
)]
pub struct Bar {
    /// The smallest bore it goes into.
    pub bore: Length,
    /// How deep it reaches.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub reach: Option<Length>,
}

/// A measuring instrument and how far it can be trusted.
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(Serialize, Deserialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is a row of a file, which its owner writes whole"
)]
pub struct OwnInstrument {
    /// What its owner calls it.
    pub name: String,
    /// How readings of one size scatter, as a standard deviation.
    pub repeat: Length,
    /// What they may all be off by, as a standard deviation.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub bias: Option<Length>,
}

/// A material by its figures.
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(Serialize, Deserialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is a row of a file, which its owner writes whole"
)]
pub struct OwnMaterial {
    /// What its owner calls it.
    pub name: String,
    /// Modulus of elasticity, in gigapascals.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub modulus_gpa: Option<f64>,
    /// Poisson's ratio.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub poisson: Option<f64>,
    /// Thermal expansion, µm in a metre for each kelvin.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub expansion_um_per_m_k: Option<f64>,
    /// Yield strength, in megapascals.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub yield_mpa: Option<f64>,
}

/// A reamer that lands inside a hole's limits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct LandedReamer {
    /// The reamer.
    pub reamer: Reamer,
    /// What it cuts has been tried; otherwise its marked size is all there is.
    pub tried: bool,
}

/// The gauge pins of a crib that judge a hole.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Pins {
    /// It must go in.
    pub goes: Option<GaugePin>,
    /// It must not.
    pub stays_out: Option<GaugePin>,
}

impl Crib {
    /// Is there nothing in it?
    pub fn is_empty(&self) -> bool {
        let Self { drill, drills, reamer, tap, pin, bar, instrument, material } = self;
        drill.is_empty()
            && drills.is_empty()
            && reamer.is_empty()
            && tap.is_empty()
            && pin.is_empty()
            && bar.is_empty()
            && instrument.is_empty()
            && material.is_empty()
    }

    /// Every drill, smallest first, each size of a name once.
    ///
    /// This is the list to choose tap drills and pre-drills from.
    pub fn drills(&self) -> Vec<OwnDrill> {
        let mut all: Vec<OwnDrill> = self.each_drill().collect();
        all.sort_by(OwnDrill::by_size);
        all.dedup();
        all
    }

    /// Every drill as it stands in the crib, some twice.
    pub(crate) fn each_drill(&self) -> impl Iterator<Item = OwnDrill> {
        self.drill.iter().cloned().chain(self.drills.iter().flat_map(DrillSet::drills))
    }

    /// The reamers that land inside a hole's limits, those nearest its middle
    /// first: by what they cut where that was tried, otherwise by whether the
    /// marked size lies in the limits that the reaming rule gives.
    ///
    /// ```
    /// use fits_core::{job::{Crib, DrillSeries, DrillSet, Reamer}, shop::Ream, standards::iso286::Class};
    /// let set = DrillSet {
    ///     series: DrillSeries::Metric,
    ///     from: Some("1mm".parse()?),
    ///     to: Some("13mm".parse()?),
    ///     step: Some("0.1mm".parse()?),
    /// };
    /// let eight = Reamer { size: "8mm".parse()?, cuts: Some("8.02mm".parse()?) };
    /// let ten = Reamer { size: "10mm".parse()?, cuts: Some("10.008mm".parse()?) };
    /// let mut crib = Crib::default();
    /// crib.drills = vec![set];
    /// crib.reamer = vec![eight, ten];
    /// let ream = Ream::of("H7".parse::<Class>()?.limits("10mm".parse()?)?)?;
    /// assert_eq!(crib.reamers_for(&ream)[0].reamer, ten);
    /// assert_eq!(crib.nearest_reamer("H7".parse::<Class>()?.limits("8mm".parse()?)?), Some(eight));
    /// let (drill, leaves) = crib.pre_drill(&ream)?.expect("one of the set");
    /// assert_eq!((drill.size, leaves), ("9.7mm".parse()?, "0.3mm".parse()?));
    /// let between = crib.drill_between("6.45mm".parse()?, "6.55mm".parse()?);
    /// assert_eq!(between.map(|drill| drill.size), Some("6.5mm".parse()?));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn reamers_for(&self, ream: &Ream) -> Vec<LandedReamer> {
        let lands = |reamer: &Reamer| match reamer.cuts {
            Some(cuts) => ream.hole.contains(cuts),
            None => ream.hole.lower() <= reamer.size && reamer.size <= ream.reamer.upper(),
        };
        let mut landed: Vec<LandedReamer> = self
            .reamer
            .iter()
            .filter(|reamer| lands(reamer))
            .map(|reamer| LandedReamer { reamer: *reamer, tried: reamer.cuts.is_some() })
            .collect();
        landed.sort_by_key(|found| {
            let cuts = found.reamer.cuts.unwrap_or(found.reamer.size);
            (!found.tried, off(ream.hole, cuts))
        });
        landed
    }

    /// The reamer that comes nearest to a hole's limits without landing inside,
    /// where there is one within a millimetre.
    ///
    /// ```
    /// use fits_core::{job::{Crib, Reamer}, standards::iso286::Class};
    /// let hole = "H7".parse::<Class>()?.limits("10mm".parse()?)?;
    /// let mut crib = Crib::default();
    /// for size in ["9.9mm", "10.5mm"] {
    ///     crib.reamer.push(Reamer { size: size.parse()?, cuts: None });
    /// }
    /// let nearest = crib.nearest_reamer(hole).expect("a tenth under");
    /// assert_eq!(nearest.size, "9.9mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn nearest_reamer(&self, hole: Limits) -> Option<Reamer> {
        self.reamer
            .iter()
            .copied()
            .map(|reamer| (off(hole, reamer.cuts.unwrap_or(reamer.size)), reamer))
            .filter(|(off, _)| *off <= Length::MILLIMETRE)
            .min_by_key(|(off, _)| *off)
            .map(|(_, reamer)| reamer)
    }

    /// How far off its limit a gauge pin may be and still say something of a
    /// hole: the hole's tolerance, or 5 µm where that is less (common practice,
    /// no source).
    ///
    /// ```
    /// use fits_core::{job::Crib, standards::iso286::Class};
    /// let hole = "H7".parse::<Class>()?.limits("20mm".parse()?)?;
    /// assert_eq!(Crib::pin_reach(hole), hole.tolerance());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn pin_reach(hole: Limits) -> Length {
        hole.tolerance().max(Length::from_tenth_nanometres(50_000))
    }

    /// The gauge pins that judge a hole: the largest at or under its lower
    /// limit and the smallest at or over its upper one, each within
    /// [`Crib::pin_reach`] of it.
    ///
    /// ```
    /// use fits_core::{Limits, job::{Crib, GaugePin}};
    /// let pin = |text: &str| Ok::<_, fits_core::Error>(GaugePin { size: text.parse()? });
    /// let mut crib = Crib::default();
    /// crib.pin = vec![pin("19.99mm")?, pin("20mm")?, pin("20.03mm")?];
    /// let pins = crib.pins_for(Limits::new("20mm".parse()?, "20.021mm".parse()?)?);
    /// assert_eq!(pins.goes, Some(crib.pin[1]));
    /// assert_eq!(pins.stays_out, Some(crib.pin[2]));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn pins_for(&self, hole: Limits) -> Pins {
        let reach = Self::pin_reach(hole);
        let near = |large: Length, small: Length| {
            large.checked_sub(small).is_ok_and(|off| !off.is_negative() && off <= reach)
        };
        let pins = || self.pin.iter().copied();
        Pins {
            goes: pins().filter(|pin| near(hole.lower(), pin.size)).max_by_key(|pin| pin.size),
            stays_out: pins().filter(|pin| near(pin.size, hole.upper())).min_by_key(|pin| pin.size),
        }
    }

    /// The largest drill of the crib between two sizes.
    ///
    /// ```
    /// use fits_core::job::{Crib, OwnDrill};
    /// let mut crib = Crib::default();
    /// for size in ["8mm", "8.5mm", "9mm"] {
    ///     crib.drill.push(OwnDrill { size: size.parse()?, called: None });
    /// }
    /// let drill = crib.drill_between("7.8mm".parse()?, "8.8mm".parse()?).expect("one of them");
    /// assert_eq!(drill.name(), "8.5 mm");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn drill_between(&self, smallest: Length, largest: Length) -> Option<OwnDrill> {
        self.each_drill()
            .filter(|drill| drill.size <= largest && drill.size >= smallest)
            .max_by(OwnDrill::by_size)
    }

    /// The drill of the crib that leaves the right stock for a reamer, and
    /// what it leaves.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::{job::{Crib, OwnDrill}, shop::Ream, standards::iso286::Class};
    /// let ream = Ream::of("H7".parse::<Class>()?.limits("10mm".parse()?)?)?;
    /// let mut crib = Crib::default();
    /// assert_eq!(crib.pre_drill(&ream)?, None);
    /// crib.drill.push(OwnDrill { size: "9.7mm".parse()?, called: None });
    /// let (drill, leaves) = crib.pre_drill(&ream)?.expect("it leaves 0.3 mm to the nominal size");
    /// assert_eq!(drill.size.checked_add(leaves)?, "10mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn pre_drill(&self, ream: &Ream) -> Result<Option<(OwnDrill, Length)>, Error> {
        let range = ream.pre_drill_range()?;
        self.drill_between(range.lower(), range.upper())
            .map(|drill| Ok((drill.clone(), ream.hole.lower().checked_sub(drill.size)?)))
            .transpose()
    }
}

/// How far a size is from the middle of the limits.
fn off(hole: Limits, size: Length) -> Length {
    hole.middle().checked_sub(size).and_then(Length::checked_abs).unwrap_or(Length::MAX)
}
