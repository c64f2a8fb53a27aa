//! ASME B4.1 (ANSI B4.1-1967, reaffirmed 2009): preferred limits and fits for
//! cylindrical parts, in inches.
//!
//! The tables (limits of the 34 classes of fits, the standard tolerances, the
//! classes' names) live in `data/b41/`, whose rows say how each is known, and
//! are generated into `table.rs`. Where reprints disagree or a cell could not
//! be read, [`Class::reasons`] says so.
//!
//! ```
//! use fits_core::{Length, standards::b41::Class};
//! let close_running: Class = "RC4".parse()?;
//! let fit = close_running.fit("1in".parse()?)?;
//! assert_eq!(fit.hole().upper(), "1.0012in".parse::<Length>()?);
//! assert_eq!(fit.shaft().upper(), "0.9992in".parse::<Length>()?);
//! assert_eq!(fit.clearance().upper(), "0.0028in".parse::<Length>()?);
//! # Ok::<(), fits_core::Error>(())
//! ```

mod class;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod table;

pub use class::{Class, DESCRIPTION_SOURCE, Family};

use crate::{
    error::{Error, Kind},
    size::{Deviations, Length, Limits, inches},
    source::{Known, Provenance, Reason},
};

/// A hundredth of a thousandth of an inch: the unit of the tables.
const STEP: i64 = Length::THOU.tenth_nanometres() / 100;

const fn length(hundredths: i16) -> Length {
    // Widening, and below 2^15 · 2540.
    Length::from_tenth_nanometres(hundredths as i64 * STEP)
}

/// What the table of a class says of one range of sizes.
#[derive(Debug)]
struct Row {
    up_to: Length,
    /// Lower and upper deviation in hundredths of a thousandth of an inch.
    hole: [i16; 2],
    shaft: [i16; 2],
    /// Index into the sources.
    source: u8,
    /// Index into the doubts, of which the first is none.
    doubt: u8,
}

/// A class of fits and its table.
#[derive(Debug)]
struct Entry {
    description: &'static str,
    /// Symbols over the columns; empty where the standard has none.
    symbols: [&'static str; 2],
    grades: [u8; 2],
    over: Length,
    rows: &'static [Row],
}

impl Entry {
    fn up_to(&self) -> Length {
        self.rows.last().map_or(self.over, |row| row.up_to)
    }
}

impl Class {
    fn row(self, nominal: Length) -> Result<&'static Row, Error> {
        let entry = self.entry();
        let at = entry.rows.partition_point(|row| row.up_to < nominal);
        match entry.rows.get(at) {
            Some(row) if nominal > entry.over => Ok(row),
            _ => Err(Error::new(Kind::OutOfInchTable {
                nominal,
                table: format!("the table of {self} in ASME B4.1"),
                over: entry.over,
                up_to: entry.up_to(),
            })),
        }
    }

    /// The sizes that the class's table covers: over the first, up to and
    /// including the second.
    ///
    /// ```
    /// use fits_core::{Length, standards::b41::Class};
    /// let (over, up_to) = "FN3".parse::<Class>()?.sizes();
    /// assert_eq!(over, "0.95in".parse()?);
    /// assert_eq!(up_to, "19.69in".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn sizes(self) -> (Length, Length) {
        let entry = self.entry();
        (entry.over, entry.up_to())
    }

    /// The limits of the hole at a nominal size.
    ///
    /// # Errors
    /// The size is outside the class's table.
    ///
    /// ```
    /// use fits_core::{Length, standards::b41::Class};
    /// let hole = "RC5".parse::<Class>()?.hole("2in".parse()?)?;
    /// assert_eq!(hole.upper(), "2.0018in".parse::<Length>()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn hole(self, nominal: Length) -> Result<Limits, Error> {
        let row = self.row(nominal)?;
        limits(row.hole, row, nominal)
    }

    /// The limits of the shaft at a nominal size.
    ///
    /// # Errors
    /// The size is outside the class's table.
    ///
    /// ```
    /// use fits_core::{Length, standards::b41::Class};
    /// let shaft = "RC5".parse::<Class>()?.shaft("2in".parse()?)?;
    /// assert_eq!(shaft.lower(), "1.9963in".parse::<Length>()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn shaft(self, nominal: Length) -> Result<Limits, Error> {
        let row = self.row(nominal)?;
        limits(row.shaft, row, nominal)
    }

    /// Where the limits at a nominal size are written: the reprint that was
    /// read, or how else the row came about.
    ///
    /// # Errors
    /// The size is outside the class's table.
    ///
    /// ```
    /// use fits_core::{Length, standards::b41::Class};
    /// let class: Class = "FN2".parse()?;
    /// assert!(class.source(Length::INCH)?.starts_with("Machinery's Handbook"));
    /// assert!(class.source("4in".parse()?)?.contains("unconfirmed"));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn source(self, nominal: Length) -> Result<&'static str, Error> {
        Ok(source(self.row(nominal)?.source).text)
    }

    /// The fit at a nominal size, in exact lengths.
    ///
    /// # Errors
    /// The size is outside the class's table.
    ///
    /// ```
    /// use fits_core::{Basis, Kind, Length, standards::b41::Class};
    /// let fit = "FN2".parse::<Class>()?.fit("1in".parse()?)?;
    /// assert_eq!((fit.kind(), fit.basis()), (Kind::Interference, Basis::Hole));
    /// assert_eq!(fit.clearance().lower(), "-0.0019in".parse::<Length>()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn fit(self, nominal: Length) -> Result<crate::Fit, Error> {
        crate::Fit::of_limits_about(nominal, self.hole(nominal)?, self.shaft(nominal)?)
    }

    /// Why the limits are what they are: one reason for the hole, one for the
    /// shaft, and one more where sources disagree or a cell needs care.
    ///
    /// # Errors
    /// The size is outside the class's table.
    ///
    /// ```
    /// use fits_core::{source::Known, standards::b41::Class};
    /// let class: Class = "RC4".parse()?;
    /// assert_eq!(class.reasons("1in".parse()?)?.len(), 2);
    /// let reasons = class.reasons("10in".parse()?)?;
    /// assert!(reasons[2].rule.to_string().contains("course handout"));
    /// let recalled: Class = "LC11".parse()?;
    /// assert_eq!(recalled.reasons("10in".parse()?)?[1].known, Known::Memory);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn reasons(self, nominal: Length) -> Result<Vec<Reason>, Error> {
        let row = self.row(nominal)?;
        let entry = self.entry();
        let from = source(row.source);
        let parts = [("hole", entry.symbols[0], row.hole), ("shaft", entry.symbols[1], row.shaft)];
        let mut reasons: Vec<Reason> = parts
            .into_iter()
            .map(|(part, symbol, [lower, upper])| Reason {
                figure: format!("{part} of {self}"),
                value: format!("{} to {} in", signed(length(lower)), signed(length(upper))).into(),
                rule: if symbol.is_empty() {
                    "the standard has no symbol for it".into()
                } else {
                    format!("column {symbol}").into()
                },
                source: from.text.to_owned(),
                known: from.known,
            })
            .collect();
        // Index 0 is no doubt.
        let doubt = table::DOUBTS.get(usize::from(row.doubt)).copied().unwrap_or_default();
        if !doubt.is_empty() {
            reasons.push(Reason {
                figure: format!("doubt about {self}"),
                value: format!("sizes up to {} in", inches(row.up_to)).into(),
                rule: doubt.to_owned().into(),
                source: from.text.to_owned(),
                known: from.known,
            });
        }
        Ok(reasons)
    }
}

fn limits([lower, upper]: [i16; 2], row: &Row, nominal: Length) -> Result<Limits, Error> {
    let deviations = Deviations::new(length(lower), length(upper))?;
    deviations.known_as(source(row.source).known).about(nominal)
}

fn source(index: u8) -> Provenance {
    const NOTHING: Provenance = Provenance { known: Known::Memory, text: "" };
    table::SOURCES.get(usize::from(index)).copied().unwrap_or(NOTHING)
}

fn signed(length: Length) -> String {
    let sign = if length.is_positive() { "+" } else { "" };
    format!("{sign}{}", inches(length))
}

/// The standard tolerance of a grade, 4 to 13, at a nominal size.
///
/// # Errors
/// No such grade, or the size is outside the table (over 0, up to 200 in).
///
/// ```
/// use fits_core::{Length, standards::b41::grade_tolerance};
/// assert_eq!(grade_tolerance(7, "1in".parse()?)?, "0.0008in".parse::<Length>()?);
/// assert_eq!(
///     grade_tolerance(3, Length::INCH).unwrap_err().to_string(),
///     "there is no grade 3 in ASME B4.1: its grades run from 4 to 13",
/// );
/// # Ok::<(), fits_core::Error>(())
/// ```
pub fn grade_tolerance(grade: u8, nominal: Length) -> Result<Length, Error> {
    grade_cell(grade, nominal).map(|(value, _)| value)
}

/// Why [`grade_tolerance`] gives what it gives.
///
/// # Errors
/// As [`grade_tolerance`].
///
/// ```
/// use fits_core::{Length, standards::b41::grade_reason};
/// let reason = grade_reason(7, Length::INCH)?;
/// assert!(reason.figure == "grade 7" && reason.value == "0.0008 in");
/// # Ok::<(), fits_core::Error>(())
/// ```
pub fn grade_reason(grade: u8, nominal: Length) -> Result<Reason, Error> {
    let (value, from) = grade_cell(grade, nominal)?;
    Ok(Reason {
        figure: format!("grade {grade}"),
        value: format!("{} in", inches(value)).into(),
        rule: "".into(),
        source: format!("ASME B4.1, table of standard tolerances; {}", from.text),
        known: from.known,
    })
}

fn grade_cell(grade: u8, nominal: Length) -> Result<(Length, Provenance), Error> {
    let column = grade.checked_sub(4).map(usize::from).filter(|&column| column < 10);
    let Some(column) = column else {
        return Err(Error::not_defined(format!(
            "there is no grade {grade} in ASME B4.1: its grades run from 4 to 13"
        )));
    };
    let at = table::GRADES.partition_point(|row| row.up_to < nominal);
    match table::GRADES.get(at) {
        // The column is below ten.
        Some(row) if nominal.is_positive() => {
            Ok((length(row.tolerances[column]), source(row.sources[column])))
        }
        _ => Err(Error::new(Kind::OutOfInchTable {
            nominal,
            table: "the table of standard tolerances in ASME B4.1".into(),
            over: Length::ZERO,
            up_to: table::GRADES.last().map_or(Length::ZERO, |row| row.up_to),
        })),
    }
}

/// Standard tolerances of one range of sizes, grades 4 to 13.
#[derive(Debug)]
struct GradeRow {
    up_to: Length,
    tolerances: [i16; 10],
    sources: [u8; 10],
}
