//! ISO 2768-1:1989: general tolerances, for dimensions that carry none.
//!
//! Lengths (Table 1), broken edges (Table 2) and angles (Table 3) in the
//! classes f, m, c and v. Form and position are not part of this. The tables
//! live in `data/iso2768/`, whose rows say how each is known.
//!
//! ```
//! use fits_core::{Length, standards::iso2768::Class};
//! let medium: Class = "m".parse()?;
//! assert_eq!(medium.linear("25mm".parse()?)?, "0.2mm".parse()?);
//! assert_eq!(medium.edge("2mm".parse()?)?, "0.2mm".parse()?);
//! assert_eq!(medium.angle("75mm".parse()?)?, 20);
//! # Ok::<(), fits_core::Error>(())
//! ```

#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod table;

use core::{fmt, str::FromStr};

#[cfg(feature = "serde")]
use serde::{Deserialize, Serialize};

use crate::{
    error::{Error, Kind},
    size::{Deviations, Length, Limits},
    source::{Provenance, Reason},
};

/// The least size with a general tolerance, itself included; below it the
/// deviations stand at the dimension (ISO 2768-1, footnotes of Tables 1 and 2).
pub const LEAST: Length = Length::from_tenth_nanometres(5_000_000);

/// A tolerance class.
///
/// ```
/// use fits_core::standards::iso2768::Class;
/// assert_eq!((Class::Medium.letter(), Class::Medium.word()), ("m", "medium"));
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(Serialize, Deserialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub enum Class {
    /// f, fine.
    #[cfg_attr(feature = "serde", serde(rename = "f"))]
    Fine,
    /// m, medium.
    #[cfg_attr(feature = "serde", serde(rename = "m"))]
    Medium,
    /// c, coarse.
    #[cfg_attr(feature = "serde", serde(rename = "c"))]
    Coarse,
    /// v, very coarse.
    #[cfg_attr(feature = "serde", serde(rename = "v"))]
    VeryCoarse,
}

/// What is toleranced: each has its own table.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[expect(clippy::exhaustive_enums, reason = "the standard has three tables")]
pub enum Quantity {
    /// A length other than a broken edge (Table 1).
    Linear,
    /// An external radius or a chamfer height (Table 2).
    Edge,
    /// An angle, by the length of its shorter side (Table 3).
    Angular,
}

impl Quantity {
    const fn table(self) -> &'static [Row] {
        match self {
            Self::Linear => &table::LINEAR,
            Self::Edge => &table::EDGE,
            Self::Angular => &table::ANGULAR,
        }
    }

    const fn what(self) -> &'static str {
        match self {
            Self::Linear => "lengths",
            Self::Edge => "radii and chamfers",
            Self::Angular => "angles",
        }
    }
}

/// What one range of sizes gives each class.
#[derive(Debug)]
struct Row {
    /// [`Length::MAX`] where there is no end.
    up_to: Length,
    /// Counts of 0.1 nm, of an angle minutes of arc; 0 where there is none.
    values: [i64; 4],
    sources: [u8; 4],
    /// Index into the doubts, of which the first is none.
    doubts: [u8; 4],
}

#[derive(Clone, Copy)]
struct Cell {
    value: i64,
    from: Provenance,
    doubt: &'static str,
}

impl Class {
    /// The four, from the finest.
    pub const ALL: [Self; 4] = [Self::Fine, Self::Medium, Self::Coarse, Self::VeryCoarse];

    /// The standard's letter.
    pub const fn letter(self) -> &'static str {
        match self {
            Self::Fine => "f",
            Self::Medium => "m",
            Self::Coarse => "c",
            Self::VeryCoarse => "v",
        }
    }

    /// The standard's word.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Fine => "fine",
            Self::Medium => "medium",
            Self::Coarse => "coarse",
            Self::VeryCoarse => "very coarse",
        }
    }

    /// Position among the four.
    const fn index(self) -> usize {
        match self {
            Self::Fine => 0,
            Self::Medium => 1,
            Self::Coarse => 2,
            Self::VeryCoarse => 3,
        }
    }

    /// The deviation either way for a length (Table 1).
    ///
    /// # Errors
    /// Below 0.5 mm, above 4000 mm, or the class gives none there (v up to
    /// 3 mm, f above 2000 mm); the text and its advice name the nearest class.
    ///
    /// ```
    /// use fits_core::{Length, standards::iso2768::Class};
    /// assert_eq!(Class::Fine.linear("6mm".parse()?)?, "0.05mm".parse()?);
    /// let error = Class::VeryCoarse.linear("2mm".parse()?).unwrap_err();
    /// assert_eq!(error.to_string(), "ISO 2768-1 gives class v no tolerance for lengths at 2 mm");
    /// assert_eq!(error.advice(), "the nearest class that has one there is c");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn linear(self, nominal: Length) -> Result<Length, Error> {
        self.cell(Quantity::Linear, nominal).map(|cell| Length::from_tenth_nanometres(cell.value))
    }

    /// The limits that a length without a tolerance of its own keeps.
    ///
    /// # Errors
    /// As [`Class::linear`].
    ///
    /// ```
    /// use fits_core::{Length, standards::iso2768::Class};
    /// let limits = Class::Medium.limits("25mm".parse()?)?;
    /// assert_eq!(limits.lower().to_string(), "24.8 mm");
    /// assert_eq!(limits.upper().to_string(), "25.2 mm");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn limits(self, nominal: Length) -> Result<Limits, Error> {
        let cell = self.cell(Quantity::Linear, nominal)?;
        let deviation = Length::from_tenth_nanometres(cell.value);
        let deviations = Deviations::new(deviation.checked_neg()?, deviation)?;
        deviations.known_as(cell.from.known).about(nominal)
    }

    /// The deviation either way for an external radius or a chamfer height
    /// (Table 2).
    ///
    /// # Errors
    /// Below 0.5 mm.
    ///
    /// ```
    /// use fits_core::{Length, standards::iso2768::Class};
    /// assert_eq!(Class::Coarse.edge("10mm".parse()?)?, "2mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn edge(self, size: Length) -> Result<Length, Error> {
        self.cell(Quantity::Edge, size).map(|cell| Length::from_tenth_nanometres(cell.value))
    }

    /// The deviation either way of an angle, in minutes of arc, by the length
    /// of its shorter side (Table 3).
    ///
    /// # Errors
    /// A side that is not a length.
    ///
    /// ```
    /// use fits_core::{Length, standards::iso2768::Class};
    /// assert_eq!(Class::Medium.angle("10mm".parse()?)?, 60);
    /// assert_eq!(Class::VeryCoarse.angle("500mm".parse()?)?, 20);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn angle(self, shorter_side: Length) -> Result<u16, Error> {
        let cell = self.cell(Quantity::Angular, shorter_side)?;
        // Minutes, at most 180.
        Ok(u16::try_from(cell.value).unwrap_or(u16::MAX))
    }

    /// The class nearest to this one that gives a tolerance there, itself
    /// where it does; the finer of two equally near. Nothing where none does.
    ///
    /// ```
    /// use fits_core::{Length, standards::iso2768::{Class, Quantity}};
    /// let nearest = |class: Class, text: &str| Ok::<_, fits_core::Error>(class.nearest(Quantity::Linear, text.parse()?));
    /// assert_eq!(nearest(Class::VeryCoarse, "3mm")?, Some(Class::Coarse));
    /// assert_eq!(nearest(Class::Fine, "3000mm")?, Some(Class::Medium));
    /// assert_eq!(nearest(Class::Fine, "5000mm")?, None);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    #[must_use]
    pub fn nearest(self, quantity: Quantity, size: Length) -> Option<Self> {
        let row = row(quantity, size).ok()?;
        Self::ALL
            .into_iter()
            // An index of the four.
            .filter(|class| row.values[class.index()] != 0)
            .min_by_key(|class| (class.index().abs_diff(self.index()), class.index()))
    }

    /// Why the tolerance is what it is, and what another reprint prints where
    /// one is known to differ.
    ///
    /// # Errors
    /// As [`Class::linear`], [`Class::edge`] and [`Class::angle`].
    ///
    /// ```
    /// use fits_core::{Length, standards::iso2768::{Class, Quantity}};
    /// let reasons = Class::Medium.reasons(Quantity::Linear, "25mm".parse()?)?;
    /// assert_eq!(reasons[0].figure, "ISO 2768-m of lengths");
    /// assert_eq!(reasons[0].value, "0.2 mm either way");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn reasons(self, quantity: Quantity, size: Length) -> Result<Vec<Reason>, Error> {
        let cell = self.cell(quantity, size)?;
        let reason = |figure: String, value: String, rule: &str| Reason {
            figure,
            value: value.into(),
            rule: rule.to_owned().into(),
            source: cell.from.text.to_owned(),
            known: cell.from.known,
        };
        let value = match quantity {
            Quantity::Angular => format!("{} minutes of arc either way", cell.value),
            _ => format!("{} either way", Length::from_tenth_nanometres(cell.value)),
        };
        let mut reasons =
            vec![reason(format!("ISO 2768-{self} of {}", quantity.what()), value, "")];
        if !cell.doubt.is_empty() {
            reasons.push(reason(format!("doubt about ISO 2768-{self}"), String::new(), cell.doubt));
        }
        Ok(reasons)
    }

    fn cell(self, quantity: Quantity, size: Length) -> Result<Cell, Error> {
        let row = row(quantity, size)?;
        // One of the four.
        let at = self.index();
        let value = row.values[at];
        if value == 0 {
            let advice = self
                .nearest(quantity, size)
                .map(|class| format!("the nearest class that has one there is {class}"));
            return Err(Error::not_given(
                format!(
                    "ISO 2768-1 gives class {self} no tolerance for {} at {size}",
                    quantity.what()
                ),
                advice.unwrap_or_default(),
            ));
        }
        // Every index is one of the generated lists'.
        Ok(Cell {
            value,
            from: table::SOURCES[usize::from(row.sources[at])],
            doubt: table::DOUBTS[usize::from(row.doubts[at])],
        })
    }
}

fn row(quantity: Quantity, size: Length) -> Result<&'static Row, Error> {
    if quantity != Quantity::Angular && size < LEAST {
        return Err(Error::not_given(
            format!("ISO 2768-1 gives no tolerance below 0.5 mm, so none at {size}"),
            "write the deviations at the dimension",
        ));
    }
    if !size.is_positive() {
        return Err(Error::not_given(
            format!("a side of {size} makes no angle"),
            "give the length of the shorter side",
        ));
    }
    let rows = quantity.table();
    rows.get(rows.partition_point(|row| row.up_to < size)).ok_or_else(|| {
        Error::new(Kind::OutOfTable {
            nominal: size,
            table: "the general tolerances of ISO 2768-1",
            over: LEAST,
            up_to: rows.last().map_or(LEAST, |row| row.up_to),
        })
    })
}

impl fmt::Display for Class {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.letter())
    }
}

impl FromStr for Class {
    type Err = Error;

    /// Reads `f`, `m`, `c`, `v`, or the word in full.
    ///
    /// # Errors
    /// No such class.
    fn from_str(text: &str) -> Result<Self, Error> {
        Self::ALL
            .into_iter()
            .find(|class| text == class.letter() || text == class.word())
            .ok_or_else(|| {
                Error::not_a_class(
                    format!("there is no general tolerance class {text:?}"),
                    "the classes are f, m, c and v",
                )
                .at(0, text.len())
            })
    }
}
