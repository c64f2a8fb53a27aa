//! Clearance holes for screws: ISO 273 and ASME B18.2.8, from
//! `data/threads/clearance_holes.csv`.

use super::{chart_hole_table, clearance_table};
use crate::{
    error::Error,
    size::{Length, Limits},
    source::{Known, Provenance},
    standards::{
        drills::Drill,
        iso286::Class,
        thread::{Form, Thread},
    },
};

/// Which table a screw belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[expect(clippy::exhaustive_enums, reason = "a screw is metric or inch")]
pub enum Screws {
    /// ISO 273, metric: fine, medium, coarse.
    Metric,
    /// ASME B18.2.8, inch: close, normal, loose.
    Inch,
}

/// One clearance hole.
///
/// ```
/// use fits_core::shop::tap::{Clearances, Screws};
/// // ISO 273: 11 mm for an M10 of the medium series, H13.
/// let hole = Clearances::of(Screws::Metric, "10mm".parse()?)?.normal;
/// assert_eq!((hole.screw(), hole.major(), hole.fit()), ("M10", "10mm".parse()?, "medium"));
/// assert_eq!((hole.hole(), hole.drill()), ("11mm".parse()?, None));
/// assert_eq!(hole.limits()?.to_string(), "11.000 to 11.270 mm");
/// assert!(!hole.known().is_unconfirmed() && hole.source().contains("273"));
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct ClearanceHole(&'static Row);

/// The one hole that a chart gives a screw of a British form, from
/// `data/threads/clearance_british.csv`.
///
/// ```
/// use fits_core::shop::tap::ChartHole;
/// let hole = ChartHole::of(&"1/4 BSW".parse()?).expect("listed");
/// assert_eq!((hole.hole(), hole.drill()), ("6.5mm".parse()?, "G"));
/// assert_eq!(hole.limits()?.lower(), hole.hole());
/// assert!(!hole.known().is_unconfirmed() && !hole.source().is_empty());
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct ChartHole(&'static ChartRow);

#[derive(Debug)]
pub(super) struct ChartRow {
    pub(super) form: Form,
    pub(super) major: Length,
    pub(super) hole: Length,
    pub(super) drill: &'static str,
    pub(super) from: Provenance,
}

impl ChartHole {
    /// For a screw of Whitworth form (BSW, BSF) or BA, by its diameter.
    ///
    /// ```
    /// use fits_core::shop::tap::ChartHole;
    /// let found = ChartHole::of(&"1/4 BSW".parse()?).expect("listed");
    /// assert_eq!((found.hole(), found.drill()), ("6.5mm".parse()?, "G"));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn of(thread: &Thread) -> Option<Self> {
        let is_it = |row: &&ChartRow| row.form == thread.form() && row.major == thread.major();
        chart_hole_table::ROWS.iter().find(is_it).map(Self)
    }

    /// The least hole.
    pub const fn hole(self) -> Length {
        self.0.hole
    }

    /// The number, letter or fraction drill.
    pub const fn drill(self) -> &'static str {
        self.0.drill
    }

    /// The hole's limits: H13, as ISO 273 asks of a medium hole, and the drill
    /// that the chart names where that is larger (common practice, no source).
    ///
    /// # Errors
    /// Out of range.
    pub fn limits(self) -> Result<Limits, Error> {
        let class = "H13".parse::<Class>()?.limits(self.0.hole)?;
        let drill = Drill::named(self.0.drill).map_or(class.upper(), Drill::diameter);
        Limits::new(class.lower(), class.upper().max(drill))
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

/// The three holes of one screw.
#[derive(Clone, Copy, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
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
        if let Some(found) = Self::three(screws, major) {
            return Ok(found);
        }
        let below = rows().rfind(|row| row.major < major);
        let above = rows().find(|row| row.major > major);
        let names: Vec<&str> = [below, above].into_iter().flatten().map(|row| row.size).collect();
        let table = match screws {
            Screws::Metric => "ISO 273",
            Screws::Inch => "ASME B18.2.8",
        };
        Err(Error::not_listed(
            format!("{table} lists no clearance hole for a screw of {major}"),
            format!("the nearest listed: {}", names.join(", ")),
        ))
    }
}

impl Clearances {
    /// Three rows a screw, close to loose: `tests/tapping_tables.rs` holds the table to that.
    fn three(screws: Screws, major: Length) -> Option<Self> {
        let rows = clearance_table::ROWS.iter().filter(|row| row.screws == screws);
        let mut found = rows.filter(|row| row.major == major).map(ClearanceHole);
        Some(Self { close: found.next()?, normal: found.next()?, loose: found.next()? })
    }

    /// The holes of the screw of that diameter, or of the next larger one
    /// listed, whose room ([`ClearanceHole::around`]) does for a screw of any
    /// thread; of the metric table where the inch table ends. `None` beyond both.
    ///
    /// ```
    /// use fits_core::shop::tap::{Clearances, Screws};
    /// let (table, holes) = Clearances::from(Screws::Metric, "4.7mm".parse()?).expect("M5");
    /// assert_eq!((table, holes.normal.screw()), (Screws::Metric, "M5"));
    /// assert_eq!(holes.normal.around("4.7mm".parse()?)?.lower(), "5.2mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn from(screws: Screws, major: Length) -> Option<(Screws, Self)> {
        [screws, Screws::Metric].into_iter().find_map(|table| {
            let rows = clearance_table::ROWS.iter().filter(|row| row.screws == table);
            let next = rows.map(|row| row.major).filter(|size| *size >= major).min()?;
            Some((table, Self::three(table, next)?))
        })
    }
}

impl ClearanceHole {
    /// The limits of the hole with the same room around another screw.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::shop::tap::{Clearances, Screws};
    /// let hole = Clearances::of(Screws::Metric, "5mm".parse()?)?.normal;
    /// // 5.5 mm about an M5: half a millimetre of room.
    /// assert_eq!(hole.around("4.7mm".parse()?)?.lower(), "5.2mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn around(self, major: Length) -> Result<Limits, Error> {
        let (limits, less) = (self.limits()?, self.0.major.checked_sub(major)?);
        Limits::new(limits.lower().checked_sub(less)?, limits.upper().checked_sub(less)?)
    }

    /// The diameter of its screw.
    pub const fn major(self) -> Length {
        self.0.major
    }

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
