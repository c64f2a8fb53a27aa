//! Retaining rings and their grooves.

use super::{is_called, limits, not_listed, table};
use crate::{
    error::Error,
    size::{Length, Limits, Unit},
    source::{Known, Provenance, Reason},
    speech::say,
    standards::iso286::Feature,
};

/// A kind of retaining ring.
///
/// ```
/// use fits_core::{size::Unit, standards::{hardware::RingKind, iso286::Feature}};
/// assert_eq!((RingKind::Din471.feature(), RingKind::Din472.feature()), (Feature::Shaft, Feature::Hole));
/// assert_eq!(RingKind::ERing.unit(), Unit::Inch);
/// assert_eq!(RingKind::Din471.name(), "DIN 471 ring");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum RingKind {
    /// DIN 471, normal type, on shafts.
    Din471,
    /// DIN 472, normal type, in bores.
    Din472,
    /// Inch basic external (N5100).
    External,
    /// Inch basic internal (N5000).
    Internal,
    /// Inch external, heavy duty.
    Heavy,
    /// Inch external, put on from the side.
    Crescent,
    /// Inch external, put on from the side, with three prongs.
    ERing,
}

impl RingKind {
    /// What it is called.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Din471 => "DIN 471 ring",
            Self::Din472 => "DIN 472 ring",
            Self::External => "inch basic external ring",
            Self::Internal => "inch basic internal ring",
            Self::Heavy => "inch heavy-duty external ring",
            Self::Crescent => "inch crescent ring",
            Self::ERing => "inch E-ring",
        }
    }

    /// What its groove is cut in: a shaft, or a bore.
    pub const fn feature(self) -> Feature {
        match self {
            Self::Din472 | Self::Internal => Feature::Hole,
            _ => Feature::Shaft,
        }
    }

    /// The unit that its sizes are listed in.
    pub const fn unit(self) -> Unit {
        match self {
            Self::Din471 | Self::Din472 => Unit::Millimetre,
            _ => Unit::Inch,
        }
    }
}

/// A retaining ring of one size, and its groove.
///
/// ```
/// use fits_core::standards::hardware::{RetainingRing, RingKind};
/// let ring = RetainingRing::find(RingKind::Din471, "20mm".parse()?)?[0];
/// assert_eq!(ring.groove()?.upper(), "19mm".parse()?);
/// assert_eq!(ring.width()?.lower(), "1.3mm".parse()?);
/// assert_eq!(ring.depth()?.upper(), "0.565mm".parse()?);
/// assert_eq!(ring.edge()?.0, "1.5mm".parse()?);
/// assert_eq!(ring.thickness()?.upper(), "1.2mm".parse()?);
/// assert_eq!(ring.reasons()?[0].figure, "groove");
/// let error = RetainingRing::find(RingKind::Din471, "23mm".parse()?).unwrap_err();
/// assert_eq!(error.advice(), "listed near it: 22 mm, 24 mm");
/// assert_eq!((ring.kind(), ring.note()), (RingKind::Din471, ""));
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct RetainingRing {
    row: &'static RingRow,
    on: Length,
}

#[derive(Debug)]
pub(super) struct RingRow {
    pub(super) kind: RingKind,
    pub(super) on: Length,
    pub(super) groove: [Length; 2],
    pub(super) width: [Length; 2],
    pub(super) edge: Option<Length>,
    pub(super) thick: [Length; 2],
    pub(super) thick_known: Known,
    pub(super) from: Provenance,
    pub(super) note: &'static str,
}

impl RetainingRing {
    /// The rings of a kind for a shaft or a bore, never none: some shafts have
    /// two E-rings.
    ///
    /// # Errors
    /// The size is not listed; the advice offers its neighbours.
    ///
    /// ```
    /// use fits_core::standards::hardware::{RetainingRing, RingKind};
    /// let ring = RetainingRing::find(RingKind::Din472, "20mm".parse()?)?[0];
    /// // The groove of a 20 mm bore is 21 mm, H11.
    /// assert_eq!(ring.groove()?.lower(), "21mm".parse()?);
    /// assert!(RetainingRing::find(RingKind::Din472, "20.3mm".parse()?).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn find(kind: RingKind, on: Length) -> Result<Vec<Self>, Error> {
        let rows = || table::RINGS.iter().filter(move |row| row.kind == kind);
        let found: Vec<Self> = rows()
            .filter(|row| match kind.unit() {
                Unit::Millimetre => row.on == on,
                _ => is_called(row.on, on),
            })
            .map(|row| Self { row, on })
            .collect();
        if found.is_empty() {
            let what = match kind.feature() {
                Feature::Shaft => "a shaft",
                Feature::Hole => "a bore",
            };
            let why = say!("no {} is listed for {} of {}", kind.name(), what, on);
            return Err(not_listed(why, rows().map(|row| row.on), on, kind.unit()));
        }
        Ok(found)
    }

    /// Its kind.
    pub const fn kind(self) -> RingKind {
        self.row.kind
    }

    /// The limits of the groove's diameter.
    ///
    /// # Errors
    /// Out of range.
    pub fn groove(self) -> Result<Limits, Error> {
        limits(self.row.groove, self.row.from.known)
    }

    /// The limits of the groove's width.
    ///
    /// # Errors
    /// Out of range.
    pub fn width(self) -> Result<Limits, Error> {
        limits(self.row.width, self.row.from.known)
    }

    /// How deep the groove is on a side, in a shaft or a bore of nominal size.
    ///
    /// # Errors
    /// Out of range.
    pub fn depth(self) -> Result<Limits, Error> {
        let [low, high] = self.row.groove;
        let (least, most) = match self.kind().feature() {
            Feature::Shaft => (self.on.checked_sub(high)?, self.on.checked_sub(low)?),
            Feature::Hole => (low.checked_sub(self.on)?, high.checked_sub(self.on)?),
        };
        limits([least.half(), most.half()], self.row.from.known)
    }

    /// The least land between the groove and the end: as listed, or three times
    /// the depth of the groove, which the listed ones keep to.
    ///
    /// # Errors
    /// Out of range.
    pub fn edge(self) -> Result<(Length, Known), Error> {
        match self.row.edge {
            Some(edge) => Ok((edge, self.row.from.known)),
            None => Ok((self.depth()?.upper().checked_mul(3)?, Known::Practice)),
        }
    }

    /// The limits of the ring's own thickness.
    ///
    /// # Errors
    /// Out of range.
    pub fn thickness(self) -> Result<Limits, Error> {
        limits(self.row.thick, self.row.thick_known)
    }

    /// How far the ring may move along in its groove.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::standards::hardware::{RetainingRing, RingKind};
    /// let play = RetainingRing::find(RingKind::Din471, "20mm".parse()?)?[0].play()?;
    /// assert_eq!((play.lower(), play.upper()), ("0.1mm".parse()?, "0.3mm".parse()?));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn play(self) -> Result<Limits, Error> {
        let ([thin, thick], [narrow, wide]) = (self.row.thick, self.row.width);
        limits(
            [narrow.checked_sub(thick)?, wide.checked_sub(thin)?],
            self.row.thick_known.worst(self.row.from.known),
        )
    }

    /// What else to know; empty where there is nothing.
    pub const fn note(self) -> &'static str {
        self.row.note
    }

    /// Why the groove is what it is.
    ///
    /// # Errors
    /// Out of range.
    pub fn reasons(self) -> Result<Vec<Reason>, Error> {
        let said = |limits: Limits| format!("{} to {}", limits.lower(), limits.upper());
        let reason = |figure, value, rule, known| self.row.from.reason(figure, value, rule, known);
        let (edge, edge_known) = self.edge()?;
        let edge_rule =
            if self.row.edge.is_some() { "as listed" } else { "3 x the groove's depth" };
        Ok(vec![
            reason("groove", said(self.groove()?), self.kind().name(), self.row.from.known),
            reason("width", said(self.width()?), self.kind().name(), self.row.from.known),
            reason("end land", edge.to_string(), edge_rule, edge_known),
            reason(
                "play of the ring",
                said(self.play()?),
                "groove width - ring thickness",
                self.row.thick_known,
            ),
        ])
    }
}
