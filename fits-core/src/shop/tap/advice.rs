//! Percent of thread by work, and what a drill cuts over its size.

use super::table;
use crate::{
    error::Error,
    size::Length,
    source::{Known, Provenance, Reason},
};

/// What is tapped.
///
/// ```
/// use fits_core::shop::tap::Work;
/// assert_eq!(Work::ToughSteel.name(), "tough steel");
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Work {
    /// Not said.
    #[default]
    General,
    /// Low-carbon and free-cutting steel.
    Steel,
    /// Stainless, tool and heat-treated steel.
    ToughSteel,
    /// Grey iron.
    CastIron,
    /// Aluminium and its alloys.
    Aluminium,
    /// Brass and bronze.
    Brass,
    /// Plastics.
    Plastic,
}

impl Work {
    /// All, in the order of the tables.
    pub const ALL: [Self; 7] = [
        Self::General,
        Self::Steel,
        Self::ToughSteel,
        Self::CastIron,
        Self::Aluminium,
        Self::Brass,
        Self::Plastic,
    ];

    /// Its word.
    pub const fn name(self) -> &'static str {
        match self {
            Self::General => "general",
            Self::Steel => "steel",
            Self::ToughSteel => "tough steel",
            Self::CastIron => "cast iron",
            Self::Aluminium => "aluminium",
            Self::Brass => "brass",
            Self::Plastic => "plastic",
        }
    }
}

/// What turns the tap.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[expect(clippy::exhaustive_enums, reason = "a tap is driven by hand or by power")]
pub enum Drive {
    /// A wrench.
    Hand,
    /// A machine.
    Power,
}

/// The percent of thread advised for some work.
///
/// ```
/// use fits_core::shop::tap::{Advice, Drive, Work};
/// // 70 to 80 % by power.
/// assert_eq!(Advice::of(Work::General, Drive::Power).middle(), 75.0);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Advice {
    /// The work.
    pub work: Work,
    /// What turns the tap.
    pub drive: Drive,
    /// Least percent advised.
    pub low: u8,
    /// Most percent advised.
    pub high: u8,
    /// How that is known.
    pub known: Known,
    /// Where it is written.
    pub source: &'static str,
}

#[derive(Clone, Copy, Debug)]
pub(super) struct AdviceRow {
    pub(super) work: Work,
    pub(super) drive: Drive,
    pub(super) low: u8,
    pub(super) high: u8,
    pub(super) from: Provenance,
}

impl Advice {
    /// For some work.
    ///
    /// ```
    /// use fits_core::shop::tap::{Advice, Drive, Work};
    /// let advice = Advice::of(Work::General, Drive::Power);
    /// assert_eq!((advice.low, advice.high), (70, 80));
    /// ```
    pub fn of(work: Work, drive: Drive) -> Self {
        let row = table::ADVICE.iter().find(|row| row.work == work && row.drive == drive);
        // Every pair has its row: `tests/tapping_tables.rs` holds the table to that.
        row.map_or(
            Self { work, drive, low: 75, high: 75, known: Known::Practice, source: "" },
            |row| Self {
                work,
                drive,
                low: row.low,
                high: row.high,
                known: row.from.known,
                source: row.from.text,
            },
        )
    }

    /// The middle of the two.
    pub fn middle(self) -> f64 {
        f64::midpoint(f64::from(self.low), f64::from(self.high))
    }
}

/// What a twist drill of a diameter cuts over its size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Oversize {
    /// Commonly: the mean of tests, in proportion between the tested sizes.
    pub commonly: Length,
    /// At most, with a jig.
    pub most: Length,
    known: Known,
    source: &'static str,
}

#[derive(Clone, Copy, Debug)]
pub(super) struct OversizeRow {
    pub(super) diameter: Length,
    pub(super) oversize: Length,
    pub(super) from: Provenance,
}

impl Oversize {
    /// Of a drill.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::shop::tap::Oversize;
    /// let oversize = Oversize::of("3/16in".parse()?)?;
    /// assert_eq!(oversize.commonly, "0.0035in".parse()?);
    /// assert_eq!(oversize.most, "0.005in".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn of(diameter: Length) -> Result<Self, Error> {
        let (mut below, mut low) = (Length::ZERO, Length::ZERO);
        let mut commonly = Length::ZERO;
        let mut from = Provenance { known: Known::Practice, text: "" };
        for row in &table::COMMONLY {
            from = row.from;
            commonly = row.oversize;
            if diameter <= row.diameter {
                let run = row.diameter.checked_sub(below)?.tenth_nanometres();
                let rise = row.oversize.checked_sub(low)?;
                let along = diameter.checked_sub(below)?.tenth_nanometres();
                commonly = low.checked_add(rise.checked_scale(along.into(), run.into())?)?;
                break;
            }
            (below, low) = (row.diameter, row.oversize);
        }
        let most = table::MOST
            .iter()
            .find(|row| diameter <= row.diameter)
            .or(table::MOST.last())
            .map_or(Length::ZERO, |row| row.oversize);
        Ok(Self { commonly, most, known: from.known, source: from.text })
    }

    /// Why.
    pub(super) fn reason(&self) -> Reason {
        Reason {
            figure: "drill cuts over its size".into(),
            value: self.commonly.to_string().into(),
            rule: format!("commonly; up to {} with a jig (AND10387)", self.most).into(),
            source: self.source.into(),
            known: self.known,
        }
    }
}
