//! A part that came out wrong or is worn: the ways out, ranked.
//!
//! [`Trouble::ways`] judges every way of `data/rescue/ways.csv`: whether it can be
//! done, what it takes and holds, and what forbids it. First come those that can
//! be done, the strongest for the least effort before the others. A retaining
//! compound ([`RetainingCompound`]), a sleeve or bush ([`RepairSleeve`]) and the least bore that
//! cleans up ([`CleanUp`]) can be asked by themselves.

mod clean_up;
mod compound;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod compound_table;
#[rustfmt::skip]
mod factor_table;
mod judge;
mod sleeve;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod wall_table;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod way_table;

pub use clean_up::{CleanUp, next_size};
pub use compound::{Bond, Bonded, RetainingCompound};
pub use sleeve::{Left, RepairSleeve};

use self::{sleeve::fit_of, way_table::WAYS};
use crate::{
    error::Error,
    shop::{
        Hazard,
        words::{Circumstance, Word},
    },
    size::{Length, Limits, Unit},
    source::{Known, Provenance, Reason},
    speech::{Speech, say},
    standards::{iso286::Feature, materials::Material},
};

#[derive(Debug)]
struct WayRow {
    name: &'static str,
    part: &'static str,
    strength: u32,
    effort: u32,
    least: Option<Length>,
    most: Option<Length>,
    people: bool,
    bearing: bool,
    who: &'static str,
    note: &'static str,
    from: Provenance,
}

/// The part that goes with the one that came out wrong.
#[derive(Clone, Copy, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is built whole: what is new must be said by whoever builds one"
)]
pub struct Counterpart {
    /// Its size.
    pub limits: Limits,
    /// It is bought: it is not cut to suit.
    pub is_bought: bool,
}

/// What the joint must stand.
#[derive(Clone, Copy, Debug, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[allow(clippy::struct_excessive_bools, reason = "each is a thing that is said of a joint")]
#[non_exhaustive]
pub struct Demands {
    /// It is a rolling bearing's seat.
    pub bearing: bool,
    /// The load goes round relative to the seat.
    pub turns: bool,
    /// It carries people, or hangs over them.
    pub people: bool,
    /// Shock, or a load that turns round.
    pub shock: bool,
    /// Oil cannot be cleaned off.
    pub oily: bool,
    /// The torque that it must hold, in newton metres.
    pub torque_n_m: Option<f64>,
    /// The hottest service in degrees Celsius.
    pub celsius: Option<f64>,
}

/// A part that is not as it should be.
#[derive(Clone, Copy, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Trouble<'a> {
    /// Which part is wrong.
    pub part: Feature,
    /// What it measures: the least and the greatest reading.
    pub is: Limits,
    /// What it should be.
    pub wanted: Limits,
    /// The fit that was meant, where one was said.
    pub word: Option<Word>,
    /// The mate, where it is known.
    pub mate: Option<Counterpart>,
    /// What hub and shaft are made of, where it is known.
    pub metals: [Option<&'a Material>; 2],
    /// What a bush would be made of; steel where nothing is said.
    pub bush: Option<&'a Material>,
    /// The wall of a sleeve or bush, where one is wanted.
    pub wall: Option<Length>,
    /// The outside of the part about the hole, where it is known.
    pub around: Option<Length>,
    /// How long the joint is.
    pub long: Option<Length>,
    /// What the joint must stand.
    pub duty: Demands,
    /// The system that it is thought in: its steps of sizes, and which classes.
    pub unit: Unit,
}

/// Whether a way can be gone.
///
/// ```
/// use fits_core::shop::rescue::Prospect;
/// assert_eq!(Prospect::Care.word(), "with care");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "Verdict"))]
#[cfg_attr(feature = "serde", serde(rename_all = "lowercase"))]
#[non_exhaustive]
pub enum Prospect {
    /// It does what is asked.
    Good,
    /// It can be done, with what is said of it in mind.
    Care,
    /// It cannot, and why is said.
    No,
}

impl Prospect {
    /// In words.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Good => "good",
            Self::Care => "with care",
            Self::No => "no",
        }
    }
}

/// One way out.
///
/// ```
/// use fits_core::{Limits, shop::rescue::Trouble, size::Unit, standards::iso286::Feature};
/// let only = |text: &str| Limits::new(text.parse()?, text.parse()?);
/// let shaft = Trouble::new(Feature::Shaft, only("19.9mm")?, only("20mm")?, Unit::Millimetre);
/// let rescue = shaft.ways()?;
/// let way = &rescue.ways[0];
/// assert_eq!(way.reason().source, way.source);
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Way {
    /// Its name.
    pub name: &'static str,
    /// Can it be gone?
    pub verdict: Prospect,
    /// How strong it is, from 0 to 5: judged.
    pub strength: u32,
    /// What it costs in time, from 0 to 5: judged.
    pub effort: u32,
    /// Who does it.
    pub who: &'static str,
    /// Sizes to cut, by name.
    pub limits: Vec<(&'static str, Limits)>,
    /// Other figures by name: lengths in millimetres under names ending `_mm`.
    pub figures: Vec<(&'static str, f64)>,
    /// What is to be known of it, the most telling first.
    pub says: Vec<Speech>,
    /// A query that gives the same figures, with more.
    pub ask: Option<Speech>,
    /// How its figures are known: the worst of what went in.
    pub known: Known,
    /// Where that is written.
    pub source: &'static str,
}

/// What can be done about it.
#[derive(Clone, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Rescue {
    /// Metal missing on the diameter at the worst place, to the nearest good size;
    /// below zero there is metal to spare.
    pub missing: Length,
    /// The mate, as given or as taken.
    pub mate: Limits,
    /// The mate was not given: it is what goes with the part as it should be.
    pub is_mate_taken: bool,
    /// Hole less shaft as they are; below zero they grip.
    pub gap: Limits,
    /// The ways, the best first.
    pub ways: Vec<Way>,
    /// What to be careful of.
    pub cautions: Vec<Hazard>,
}

impl Trouble<'_> {
    /// A part that measures one thing and should be another; all else not known.
    ///
    /// ```
    /// use fits_core::{Limits, shop::rescue::Trouble, size::Unit, standards::iso286::Feature};
    /// let only = |text: &str| Limits::new(text.parse()?, text.parse()?);
    /// let shaft = Trouble::new(Feature::Shaft, only("19.9mm")?, only("20mm")?, Unit::Millimetre);
    /// assert_eq!(shaft.ways()?.missing, "0.1mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn new(part: Feature, is: Limits, wanted: Limits, unit: Unit) -> Self {
        Self {
            part,
            is,
            wanted,
            word: None,
            mate: None,
            metals: [None, None],
            bush: None,
            wall: None,
            around: None,
            long: None,
            duty: Demands::default(),
            unit,
        }
    }

    /// The ways out, the best first.
    ///
    /// # Errors
    /// The part is as it should be, a size is none, or beyond the tables.
    ///
    /// ```
    /// use fits_core::{Length, Limits, shop::{rescue::Trouble, words::Word}, size::Unit};
    /// use fits_core::standards::iso286::Feature;
    /// let only = |text: &str| -> Result<Limits, fits_core::Error> {
    ///     let size: Length = text.parse()?;
    ///     Limits::new(size, size)
    /// };
    /// let (is, wanted) = (only("0.7478in")?, only("0.7495in")?);
    /// let mut shaft = Trouble::new(Feature::Shaft, is, wanted, Unit::Inch);
    /// shaft.word = Some(Word::find("press")?);
    /// let rescue = shaft.ways()?;
    /// assert_eq!(rescue.missing, "0.0017in".parse()?);
    /// let first = &rescue.ways[0];
    /// assert_eq!(first.name, "suit the mate");
    /// assert_eq!(first.limits[0].1.lower(), "0.7459in".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn ways(&self) -> Result<Rescue, Error> {
        let missing = self.missing()?;
        let (mate, is_mate_taken) = self.mate()?;
        let gap = match self.part {
            Feature::Hole => Limits::new(
                self.is.lower().checked_sub(mate.upper())?,
                self.is.upper().checked_sub(mate.lower())?,
            )?,
            Feature::Shaft => Limits::new(
                mate.lower().checked_sub(self.is.upper())?,
                mate.upper().checked_sub(self.is.lower())?,
            )?,
        };
        let case = judge::Case { trouble: self, missing, gap };
        let mut ways = Vec::new();
        for row in WAYS.iter().filter(|row| self.goes(row, missing)) {
            ways.push(case.judged(row)?);
        }
        ways.sort_by_key(|way| {
            // Strength for effort, and one less where care is wanted; the quicker of equals.
            let care = i64::from(way.verdict == Prospect::Care);
            let worth = i64::from(way.strength) - i64::from(way.effort) - care;
            (way.verdict == Prospect::No, -worth, way.effort)
        });
        let cautions = vec![Hazard::Pressing, Hazard::People];
        Ok(Rescue { missing, mate, is_mate_taken, gap, ways, cautions })
    }

    /// Is it a way for this part, and for metal that is missing or to spare?
    fn goes(&self, row: &WayRow, missing: Length) -> bool {
        let of_part = match self.part {
            Feature::Hole => row.part != "shaft",
            Feature::Shaft => row.part != "hole",
        };
        let spare = ["cut to size", "suit the mate", "another fit", "new part"];
        of_part
            && if missing.is_positive() {
                row.name != "cut to size"
            } else {
                spare.contains(&row.name)
            }
    }

    /// Metal missing to the nearest good size.
    fn missing(&self) -> Result<Length, Error> {
        if !self.is.lower().is_positive() || !self.wanted.lower().is_positive() {
            return Err(Error::out_of_reach(
                say!(
                    "a {} cannot be {}",
                    self.part.word(),
                    self.is.lower().min(self.wanted.lower())
                ),
                "read it again",
            ));
        }
        let (lost, spare) = match self.part {
            Feature::Hole => (
                self.is.upper().checked_sub(self.wanted.upper())?,
                self.wanted.lower().checked_sub(self.is.lower())?,
            ),
            Feature::Shaft => (
                self.wanted.lower().checked_sub(self.is.lower())?,
                self.is.upper().checked_sub(self.wanted.upper())?,
            ),
        };
        if lost.is_positive() {
            return Ok(lost);
        }
        if spare.is_positive() {
            return spare.checked_neg();
        }
        Err(Error::out_of_reach(
            say!("the {} is as it should be: {}", self.part.word(), self.is.lower()),
            "there is nothing to rescue",
        ))
    }

    /// The mate as given; else what goes with the part as it should be.
    fn mate(&self) -> Result<(Limits, bool), Error> {
        if let Some(mate) = self.mate {
            return Ok((mate.limits, false));
        }
        let middle = self.wanted.middle();
        let Some(word) = self.word else {
            return Ok((Limits::new(middle, middle)?, true));
        };
        let (_, fit) = fit_of(word, &Circumstance::plain(middle), self.unit)?;
        let fit = fit.suited(self.part, self.wanted, word.suit_percent())?;
        Ok((fit.part(self.part.mate()), true))
    }
}

impl Way {
    /// Where it comes from.
    #[must_use]
    pub fn reason(&self) -> Reason {
        Reason {
            figure: self.name.to_owned(),
            value: format!("strength {} of 5, effort {} of 5, judged", self.strength, self.effort)
                .into(),
            rule: self.says.first().map_or_else(String::new, ToString::to_string).into(),
            source: self.source.into(),
            known: self.known,
        }
    }
}
