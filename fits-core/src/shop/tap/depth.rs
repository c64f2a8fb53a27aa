//! How deep to drill and tap.

use super::{Work, table};
use crate::{
    error::Error,
    shop::infeed::Overrun,
    size::Length,
    source::{Known, Provenance, Reason},
};

/// A hand tap by its lead.
///
/// ```
/// use fits_core::shop::tap::HandTap;
/// assert_eq!(HandTap::Bottoming.lead_threads(), 2);
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum HandTap {
    /// To start with.
    Taper,
    /// Second; most holes need no other.
    Plug,
    /// For the last threads of a blind hole.
    Bottoming,
}

impl HandTap {
    /// The most threads that its lead takes.
    pub fn lead_threads(self) -> u8 {
        table::TAP_LEADS.iter().find(|row| row.0 == self).map_or(0, |row| row.2)
    }
}

#[derive(Clone, Copy, Debug)]
pub(super) struct EngagementRow {
    pub(super) work: Work,
    pub(super) tenths: i64,
    pub(super) from: Provenance,
}

/// How deep a hole is tapped and drilled.
///
/// ```
/// use fits_core::shop::tap::{TapDepth, Work};
/// let depth = TapDepth::of("10mm".parse()?, "1.5mm".parse()?, Work::Steel)?;
/// assert!(!depth.reasons().is_empty());
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct TapDepth {
    /// Length of full thread to engage: advice, by the material.
    pub engage: Length,
    /// How that is known.
    pub known: Known,
    /// Where it is written.
    pub source: &'static str,
    /// What a blind hole is drilled deeper than its full thread; nothing where
    /// no table reaches the pitch.
    pub overrun: Option<Overrun>,
    /// Full diameter to drill in a blind hole for that engagement.
    pub drill: Option<Length>,
}

impl TapDepth {
    /// For a thread of a major diameter and pitch in some material. The
    /// overrun is DIN 76-1's (e1, normal), of the next coarser pitch where the
    /// pitch is not listed.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::shop::tap::{TapDepth, Work};
    /// let depth = TapDepth::of("10mm".parse()?, "1.5mm".parse()?, Work::Steel)?;
    /// assert_eq!(depth.engage, "10mm".parse()?);
    /// assert_eq!(depth.drill, Some("17.3mm".parse()?));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn of(major: Length, pitch: Length, work: Work) -> Result<Self, Error> {
        // Every work has its row: `tests/tapping_tables.rs` holds the table to that.
        let row = table::ENGAGEMENT.iter().find(|row| row.work == work);
        let (tenths, known, source) = row
            .map_or((15, Known::Practice, ""), |row| (row.tenths, row.from.known, row.from.text));
        let engage = major.checked_scale(tenths.into(), 10)?;
        let overrun = Overrun::of(pitch);
        let drill = overrun.map(|overrun| engage.checked_add(overrun.length())).transpose()?;
        Ok(Self { engage, known, source, overrun, drill })
    }

    /// Why.
    pub fn reasons(&self) -> Vec<Reason> {
        let engaged = Reason {
            figure: "thread engaged".into(),
            value: self.engage.to_string().into(),
            rule: "so that the screw breaks before the thread strips; full-strength steel screws"
                .into(),
            source: self.source.into(),
            known: self.known,
        };
        let deeper = self.overrun.map(|overrun| Reason {
            figure: "blind hole deeper by".into(),
            value: overrun.length().to_string().into(),
            rule: format!("e1 of pitch {}, to the hole's full diameter", overrun.pitch()).into(),
            source: overrun.source().into(),
            known: overrun.known(),
        });
        [engaged].into_iter().chain(deeper).collect()
    }
}
