//! Clearance holes for screws: ISO 273 and ASME B18.2.8, from
//! `data/threads/clearance_holes.csv`.

use super::clearance_table;
use crate::{
    error::{Error, Kind},
    size::{Length, Limits},
    source::{Known, Provenance},
    standards::iso286::Class,
};

/// Which table a screw belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Screws {
    /// ISO 273, metric: fine, medium, coarse.
    Metric,
    /// ASME B18.2.8, inch: close, normal, loose.
    Inch,
}

/// One clearance hole.
#[derive(Clone, Copy, Debug)]
pub struct ClearanceHole(&'static Row);

/// The three holes of one screw.
#[derive(Clone, Copy, Debug)]
pub struct Clearances {
    /// Fine or close.
    pub close: ClearanceHole,
    /// Medium or normal: take this unless something speaks against it.
    pub normal: ClearanceHole,
    /// Coarse or loose.
    pub loose: ClearanceHole,
}

#[derive(Debug)]
pub(super) struct Row {
    pub(super) screws: Screws,
    pub(super) major: Length,
    pub(super) size: &'static str,
    pub(super) fit: &'static str,
    pub(super) class: &'static str,
    pub(super) drill: Option<&'static str>,
    pub(super) hole: Length,
    pub(super) most: Option<Length>,
    pub(super) from: Provenance,
}

impl Clearances {
    /// The holes for a screw of a major diameter.
    ///
    /// # Errors
    /// A screw that the table does not list: the advice names its neighbours.
    ///
    /// ```
    /// use fits_core::shop::tap::{Clearances, Screws};
    /// let holes = Clearances::of(Screws::Metric, "10mm".parse()?)?;
    /// assert_eq!(holes.normal.hole(), "11mm".parse()?);
    /// let holes = Clearances::of(Screws::Inch, "3/8in".parse()?)?;
    /// assert_eq!(holes.close.drill(), Some("25/64 in"));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn of(screws: Screws, major: Length) -> Result<Self, Error> {
        let rows = || clearance_table::ROWS.iter().filter(|row| row.screws == screws);
        let mut found = rows().filter(|row| row.major == major).map(ClearanceHole);
        // Three rows a screw, close to loose: `tests/tapping_tables.rs` holds the table to that.
        if let (Some(close), Some(normal), Some(loose)) = (found.next(), found.next(), found.next())
        {
            return Ok(Self { close, normal, loose });
        }
        let below = rows().rfind(|row| row.major < major);
        let above = rows().find(|row| row.major > major);
        let names: Vec<&str> = [below, above].into_iter().flatten().map(|row| row.size).collect();
        let table = match screws {
            Screws::Metric => "ISO 273",
            Screws::Inch => "ASME B18.2.8",
        };
        Err(Error::new(Kind::NotListed {
            why: format!("{table} lists no clearance hole for a screw of {major}"),
            advice: format!("the nearest listed: {}", names.join(", ")),
        }))
    }
}

impl ClearanceHole {
    /// The screw: `M10`, `No. 8`, `3/8`.
    pub const fn screw(self) -> &'static str {
        self.0.size
    }

    /// The standard's word: fine, medium, coarse or close, normal, loose.
    pub const fn fit(self) -> &'static str {
        self.0.fit
    }

    /// The hole's nominal (least) diameter.
    pub const fn hole(self) -> Length {
        self.0.hole
    }

    /// The drill that the inch table names.
    pub const fn drill(self) -> Option<&'static str> {
        self.0.drill
    }

    /// The hole's limits: as printed where that was read, else by the ISO 286
    /// class that the standard asks for.
    ///
    /// # Errors
    /// Out of range.
    pub fn limits(self) -> Result<Limits, Error> {
        match self.0.most {
            Some(most) => Limits::new(self.0.hole, most),
            None => self.0.class.parse::<Class>()?.limits(self.0.hole),
        }
    }

    /// How the row is known.
    pub const fn known(self) -> Known {
        self.0.from.known
    }

    /// Where it is written.
    pub const fn source(self) -> &'static str {
        self.0.from.text
    }
}
