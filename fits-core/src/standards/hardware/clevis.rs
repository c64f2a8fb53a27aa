//! Clevis pins and the cotter pins that keep them.

use super::{
    is_called, limits, not_listed,
    pins::{ClevisRow, CotterRow},
    table,
};
use crate::{
    error::Error,
    size::{Length, Limits, Unit},
    speech::say,
};

/// A clevis pin, ASME B18.8.1.
///
/// ```
/// use fits_core::standards::hardware::{ClevisPin, CotterPin};
/// let pin = ClevisPin::find("1/4in".parse()?)?;
/// assert_eq!(pin.shank()?.upper(), "0.248in".parse()?);
/// assert_eq!(pin.cotter_hole()?.lower(), "0.073in".parse()?);
/// assert_eq!(pin.centre()?.lower(), "0.672in".parse()?);
/// let cotter = CotterPin::find(pin.cotter())?;
/// assert_eq!(cotter.shank()?.upper(), "0.060in".parse()?);
/// assert_eq!(pin.length(), "0.77in".parse()?);
/// assert!(!pin.source().is_empty());
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct ClevisPin(&'static ClevisRow);

impl ClevisPin {
    /// The pin of a nominal size.
    ///
    /// # Errors
    /// The size is not listed; the advice offers its neighbours.
    ///
    /// ```
    /// use fits_core::standards::hardware::ClevisPin;
    /// assert_eq!(ClevisPin::find("1/4in".parse()?)?.shank()?.upper(), "0.248in".parse()?);
    /// assert!(ClevisPin::find("0.26in".parse()?).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn find(size: Length) -> Result<Self, Error> {
        table::CLEVIS_PINS.iter().find(|row| is_called(row.size, size)).map(Self).ok_or_else(|| {
            let why = say!("no clevis pin of {} is listed", size);
            not_listed(why, table::CLEVIS_PINS.iter().map(|row| row.size), size, Unit::Inch)
        })
    }

    /// Its shank as bought.
    ///
    /// # Errors
    /// Out of range.
    pub fn shank(self) -> Result<Limits, Error> {
        limits(self.0.shank, self.0.from.known)
    }

    /// The cotter pin that goes through it.
    pub const fn cotter(self) -> Length {
        self.0.cotter
    }

    /// The hole for that cotter pin.
    ///
    /// # Errors
    /// Out of range.
    pub fn cotter_hole(self) -> Result<Limits, Error> {
        limits(self.0.cotter_hole, self.0.from.known)
    }

    /// The length that is tabulated.
    pub const fn length(self) -> Length {
        self.0.length
    }

    /// From under the head to the centre of the cotter hole, at that length.
    ///
    /// # Errors
    /// Out of range.
    pub fn centre(self) -> Result<Limits, Error> {
        limits(self.0.centre, self.0.from.known)
    }

    /// Where its figures are written.
    pub const fn source(self) -> &'static str {
        self.0.from.text
    }
}

/// A cotter pin (split pin), ASME B18.8.1.
///
/// ```
/// use fits_core::standards::hardware::CotterPin;
/// let pin = CotterPin::find("1/16in".parse()?)?;
/// assert_eq!((pin.shank()?.upper(), pin.hole()), ("0.060in".parse()?, "0.078in".parse()?));
/// assert!(!pin.source().is_empty());
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct CotterPin(&'static CotterRow);

impl CotterPin {
    /// The pin of a nominal size.
    ///
    /// # Errors
    /// The size is not listed; the advice offers its neighbours.
    ///
    /// ```
    /// use fits_core::standards::hardware::CotterPin;
    /// assert!(CotterPin::find("1/8in".parse()?).is_ok());
    /// assert!(CotterPin::find("0.13in".parse()?).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn find(size: Length) -> Result<Self, Error> {
        table::COTTER_PINS.iter().find(|row| is_called(row.size, size)).map(Self).ok_or_else(|| {
            let why = say!("no cotter pin of {} is listed", size);
            not_listed(why, table::COTTER_PINS.iter().map(|row| row.size), size, Unit::Inch)
        })
    }

    /// Its shank as bought.
    ///
    /// # Errors
    /// Out of range.
    pub fn shank(self) -> Result<Limits, Error> {
        limits(self.0.shank, self.0.from.known)
    }

    /// The hole that gauges it.
    pub const fn hole(self) -> Length {
        self.0.hole
    }

    /// Where its figures are written.
    pub const fn source(self) -> &'static str {
        self.0.from.text
    }
}
