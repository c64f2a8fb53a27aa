//! Spring pins and taper pins.

use super::{is_called, limits, not_listed, table};
use crate::{
    error::Error,
    size::{Length, Limits, Unit},
    source::{Known, Provenance},
    speech::say,
    standards::drills::{Drill, Series},
};

/// A kind of spring pin.
///
/// ```
/// use fits_core::{size::Unit, standards::hardware::SpringPinKind};
/// assert_eq!(SpringPinKind::Slotted.unit(), Unit::Inch);
/// assert_eq!(SpringPinKind::Slotted.name(), "slotted spring pin");
/// assert_eq!(SpringPinKind::Slotted.standard(), "ASME B18.8.2");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum SpringPinKind {
    /// ASME B18.8.2, slotted.
    Slotted,
    /// ASME B18.8.2, coiled, standard duty.
    Coiled,
    /// ISO 8752, slotted, metric.
    Iso8752,
}

impl SpringPinKind {
    /// What it is called.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Slotted => "slotted spring pin",
            Self::Coiled => "coiled spring pin",
            Self::Iso8752 => "ISO 8752 spring pin",
        }
    }

    /// The standard.
    pub const fn standard(self) -> &'static str {
        match self {
            Self::Slotted | Self::Coiled => "ASME B18.8.2",
            Self::Iso8752 => "ISO 8752",
        }
    }

    /// The unit that its sizes are listed in.
    pub const fn unit(self) -> Unit {
        match self {
            Self::Slotted | Self::Coiled => Unit::Inch,
            Self::Iso8752 => Unit::Millimetre,
        }
    }
}

#[derive(Debug)]
pub(super) struct SpringRow {
    pub(super) kind: SpringPinKind,
    pub(super) size: Length,
    pub(super) pin: [Length; 2],
    pub(super) hole: [Length; 2],
    pub(super) from: Provenance,
}

/// A spring pin of one size: the hole decides how tight it is.
///
/// ```
/// use fits_core::standards::hardware::{SpringPin, SpringPinKind};
/// let pin = SpringPin::find(SpringPinKind::Slotted, "1/4in".parse()?)?;
/// assert_eq!(pin.hole()?.lower(), "0.250in".parse()?);
/// assert_eq!(pin.hole()?.upper(), "0.256in".parse()?);
/// assert_eq!(pin.free()?.lower(), "0.258in".parse()?);
/// let squeeze = pin.squeeze()?;
/// assert_eq!((squeeze.lower(), squeeze.upper()), ("2 thou".parse()?, "14 thou".parse()?));
/// assert_eq!(pin.kind(), SpringPinKind::Slotted);
/// assert!(!pin.source().is_empty());
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct SpringPin(&'static SpringRow);

impl SpringPin {
    /// The pin of a kind and a nominal size.
    ///
    /// # Errors
    /// The size is not listed; the advice offers its neighbours.
    ///
    /// ```
    /// use fits_core::standards::hardware::{SpringPin, SpringPinKind};
    /// assert!(SpringPin::find(SpringPinKind::Iso8752, "5mm".parse()?).is_ok());
    /// assert!(SpringPin::find(SpringPinKind::Iso8752, "5.2mm".parse()?).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn find(kind: SpringPinKind, size: Length) -> Result<Self, Error> {
        let rows = || table::SPRING_PINS.iter().filter(move |row| row.kind == kind);
        rows()
            .find(|row| match kind.unit() {
                Unit::Millimetre => row.size == size,
                _ => is_called(row.size, size),
            })
            .map(Self)
            .ok_or_else(|| {
                let why = say!("no {} of {} is listed", kind.name(), size);
                not_listed(why, rows().map(|row| row.size), size, kind.unit())
            })
    }

    /// Its kind.
    pub const fn kind(self) -> SpringPinKind {
        self.0.kind
    }

    /// Its diameter before it is driven in.
    ///
    /// # Errors
    /// Out of range.
    pub fn free(self) -> Result<Limits, Error> {
        limits(self.0.pin, self.0.from.known)
    }

    /// The hole that its standard gives it.
    ///
    /// # Errors
    /// Out of range.
    pub fn hole(self) -> Result<Limits, Error> {
        limits(self.0.hole, self.0.from.known)
    }

    /// By how much the hole squeezes it.
    ///
    /// # Errors
    /// Out of range.
    pub fn squeeze(self) -> Result<Limits, Error> {
        let ([thin, thick], [small, large]) = (self.0.pin, self.0.hole);
        limits([thin.checked_sub(large)?, thick.checked_sub(small)?], self.0.from.known)
    }

    /// Where its figures are written.
    pub const fn source(self) -> &'static str {
        self.0.from.text
    }
}

#[derive(Debug)]
pub(super) struct TaperRow {
    pub(super) name: &'static str,
    pub(super) is_inch: bool,
    pub(super) size: Length,
    pub(super) limits: [Length; 2],
    pub(super) limits_known: Known,
    pub(super) from: Provenance,
}

#[derive(Debug)]
pub(super) struct TaperDrillRow {
    pub(super) pin: &'static str,
    pub(super) length: Length,
    pub(super) drill: &'static str,
    pub(super) size: Length,
    pub(super) from: Provenance,
}

/// A taper pin: inch pins go by a number and their large end, 1:48; metric ones
/// by their small end, 1:50.
///
/// ```
/// use fits_core::standards::hardware::TaperPin;
/// let pin = TaperPin::inch("4")?;
/// let [small, large] = pin.ends("2in".parse()?)?;
/// assert_eq!(large, "0.2500in".parse()?);
/// assert!(small > "0.2083in".parse()? && small < "0.2084in".parse()?);
/// // The table's number 4 drill is over the small end: a smaller one is taken.
/// let length = "2in".parse()?;
/// assert_eq!(pin.drill(length)?.0.diameter(), "0.2055in".parse()?);
///
/// let metric = TaperPin::metric("6mm".parse()?)?;
/// assert_eq!(metric.end_limits()?.lower(), "5.952mm".parse()?);
/// assert_eq!((pin.name(), pin.size(), pin.is_inch()), ("4", "0.25in".parse()?, true));
/// // 1/4 in a foot, and 1 in 50 of a metric one.
/// assert_eq!((pin.taper(), metric.taper()), (48, 50));
/// assert!(!pin.known().is_unconfirmed() && !pin.source().is_empty());
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct TaperPin(&'static TaperRow);

impl TaperPin {
    /// An inch pin by its number: `7/0` to `14`.
    ///
    /// # Errors
    /// No such number.
    ///
    /// ```
    /// use fits_core::standards::hardware::TaperPin;
    /// assert_eq!(TaperPin::inch("0")?.size(), "0.156in".parse()?);
    /// assert!(TaperPin::inch("99").is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn inch(number: &str) -> Result<Self, Error> {
        let found = table::TAPER_PINS.iter().find(|row| row.is_inch && row.name == number);
        found.map(Self).ok_or_else(|| {
            Error::not_listed(
                say!("no taper pin number {} is listed", number),
                "numbers run from 7/0 to 0 and from 1 to 14",
            )
        })
    }

    /// A metric pin by the size of its small end.
    ///
    /// # Errors
    /// The size is not listed; the advice offers its neighbours.
    ///
    /// ```
    /// use fits_core::standards::hardware::TaperPin;
    /// // It goes by its small end: 6 mm, and 1 mm more in 50 mm.
    /// let [small, large] = TaperPin::metric("6mm".parse()?)?.ends("50mm".parse()?)?;
    /// assert_eq!((small, large), ("6mm".parse()?, "7mm".parse()?));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn metric(size: Length) -> Result<Self, Error> {
        let rows = || table::TAPER_PINS.iter().filter(|row| !row.is_inch);
        rows().find(|row| row.size == size).map(Self).ok_or_else(|| {
            let why = say!("no metric taper pin of {} is listed", size);
            not_listed(why, rows().map(|row| row.size), size, Unit::Millimetre)
        })
    }

    /// Every pin, by its system and then its size.
    ///
    /// ```
    /// use fits_core::standards::hardware::TaperPin;
    /// assert!(TaperPin::all().any(|pin| pin.is_inch()) && TaperPin::all().any(|pin| !pin.is_inch()));
    /// ```
    pub fn all() -> impl Iterator<Item = Self> {
        table::TAPER_PINS.iter().map(Self)
    }

    /// Its number, or its size in millimetres.
    pub const fn name(self) -> &'static str {
        self.0.name
    }

    /// Is it an inch pin?
    pub const fn is_inch(self) -> bool {
        self.0.is_inch
    }

    /// The size that it goes by: its large end in inches, its small end in millimetres.
    pub const fn size(self) -> Length {
        self.0.size
    }

    /// Over how much length it grows by one on the diameter.
    pub const fn taper(self) -> i64 {
        if self.0.is_inch { 48 } else { 50 }
    }

    /// The limits of the end that it goes by.
    ///
    /// # Errors
    /// Out of range.
    pub fn end_limits(self) -> Result<Limits, Error> {
        limits(self.0.limits, self.0.limits_known)
    }

    /// The diameters of its small and its large end at a length.
    ///
    /// # Errors
    /// The taper runs out before the length does.
    ///
    /// ```
    /// use fits_core::standards::hardware::TaperPin;
    /// let [small, large] = TaperPin::inch("4")?.ends("2in".parse()?)?;
    /// // 2/48 in less at the small end.
    /// assert_eq!(large, "0.25in".parse()?);
    /// assert!(small > "0.2083in".parse()? && small < "0.2084in".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn ends(self, length: Length) -> Result<[Length; 2], Error> {
        let grows = length.checked_scale(1, self.taper().into())?;
        if !self.is_inch() {
            return Ok([self.size(), self.size().checked_add(grows)?]);
        }
        let small = self.size().checked_sub(grows)?;
        // Half of it left is more than any pin that is made.
        if small < self.size().half() {
            return Err(Error::out_of_reach(
                say!("a number {} pin {} long would end at {}", self.name(), length, small),
                "a shorter pin, or a larger number",
            ));
        }
        Ok([small, self.size()])
    }

    /// The drill before the reamer: as listed for this pin and length, or the
    /// largest that is not over the small end.
    ///
    /// # Errors
    /// As [`TaperPin::ends`], or no drill is as small.
    ///
    /// ```
    /// use fits_core::standards::hardware::TaperPin;
    /// let pin = TaperPin::inch("4")?;
    /// let length = "1in".parse()?;
    /// let (drill, ..) = pin.drill(length)?;
    /// assert!(drill.diameter() <= pin.ends(length)?[0]);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn drill(self, length: Length) -> Result<(Drill, &'static str, Known), Error> {
        let listed = table::TAPER_DRILLS
            .iter()
            .find(|row| self.is_inch() && row.pin == self.name() && is_called(row.length, length));
        let [small, _] = self.ends(length)?;
        if let Some(row) = listed {
            let found = Drill::all().find(|drill| {
                drill.name().trim_start_matches('#').trim_end_matches(" in") == row.drill
            });
            let by_size = || Drill::under(row.size, ALL_SERIES);
            // The table lets a few stand over the small end: those would rattle there.
            if let Some(drill) = found.or_else(by_size).filter(|drill| drill.diameter() <= small) {
                return Ok((drill, row.from.text, row.from.known));
            }
        }
        let series: &[Series] = if self.is_inch() { INCH_SERIES } else { &[Series::Metric] };
        Drill::under(small, series)
            .map(|drill| (drill, "the largest drill not over the small end", Known::Formula))
            .ok_or_else(|| {
                Error::out_of_reach(
                    say!("no drill is as small as {}", small),
                    "a shorter pin, or a larger one",
                )
            })
    }

    /// How the size is known.
    pub const fn known(self) -> Known {
        self.0.from.known
    }

    /// Where its figures are written.
    pub const fn source(self) -> &'static str {
        self.0.from.text
    }
}

const INCH_SERIES: &[Series] = &[Series::Number, Series::Letter, Series::Fraction];
const ALL_SERIES: &[Series] = &[Series::Number, Series::Letter, Series::Fraction, Series::Metric];

#[derive(Debug)]
pub(super) struct ClevisRow {
    pub(super) size: Length,
    pub(super) shank: [Length; 2],
    pub(super) cotter: Length,
    pub(super) cotter_hole: [Length; 2],
    pub(super) length: Length,
    pub(super) centre: [Length; 2],
    pub(super) from: Provenance,
}

#[derive(Debug)]
pub(super) struct CotterRow {
    pub(super) size: Length,
    pub(super) shank: [Length; 2],
    pub(super) hole: Length,
    pub(super) from: Provenance,
}
