//! Inch sizes that carry no tolerance, by how they are written: what title blocks
//! and shops commonly take. No standard sets these; the drawing's own block does.
//!
//! From `data/title_block/title_block.csv`.

#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod table;

use crate::{
    error::Error,
    size::Length,
    source::{Known, Provenance},
};

/// How a size is written on the drawing.
///
/// ```
/// use fits_core::standards::title_block::Written;
/// // Half of the last place: 0.005 in of two decimals.
/// assert_eq!(Written::Decimals(2).without_a_block()?, Some("0.005in".parse()?));
/// assert_eq!(Written::Fraction(4).without_a_block()?, None);
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[expect(clippy::exhaustive_enums, reason = "a size is written in decimals or as a fraction")]
pub enum Written {
    /// With so many decimals, one at least: `.750` has three.
    Decimals(u32),
    /// As a fraction of an inch over this: 32 for `5/32`.
    Fraction(u32),
}

/// What is commonly taken.
#[derive(Clone, Copy, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Practice {
    /// Where: `machined parts`, `looser shops`, `a tight block`.
    pub trade: &'static str,
    /// So much either way.
    pub plus_minus: Length,
    /// How it is known.
    pub known: Known,
    /// Where it was read.
    pub source: &'static str,
    /// What else to know, empty where there is nothing.
    pub note: &'static str,
}

#[derive(Debug)]
struct Row {
    trade: &'static str,
    /// None for a fraction.
    decimals: Option<u32>,
    plus_minus: Length,
    from: Provenance,
    note: &'static str,
}

impl Written {
    /// What is commonly taken for a size that is written so, the most usual first;
    /// empty for more decimals than blocks list.
    ///
    /// ```
    /// use fits_core::standards::title_block::Written;
    /// let found: Vec<_> = Written::Decimals(3).practices().collect();
    /// assert_eq!(found[0].plus_minus, "0.005in".parse()?);
    /// assert_eq!(Written::Fraction(32).without_a_block()?, Some("1/64in".parse()?));
    /// assert_eq!(Written::Fraction(2).without_a_block()?, None);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn practices(self) -> impl Iterator<Item = Practice> {
        let decimals = match self {
            Self::Decimals(count) => Some(count),
            Self::Fraction(_) => None,
        };
        table::ROWS.iter().filter(move |row| row.decimals == decimals).map(|row| Practice {
            trade: row.trade,
            plus_minus: row.plus_minus,
            known: row.from.known,
            source: row.from.text,
            note: row.note,
        })
    }

    /// The old rule of drawings without a block: half of the last place, or of the
    /// least fraction, that is written. Common practice. None for halves and quarters:
    /// sources give it for eighths and finer, and it would allow 1/4 in about 1/2.
    ///
    /// # Errors
    /// More decimals or a finer fraction than a length holds.
    pub fn without_a_block(self) -> Result<Option<Length>, Error> {
        let parts = match self {
            Self::Fraction(under) if under < 8 => return Ok(None),
            Self::Decimals(count) => 10_i128.checked_pow(count).and_then(|it| it.checked_mul(2)),
            Self::Fraction(under) => Some(i128::from(under) * 2),
        };
        Length::INCH.checked_scale(1, parts.unwrap_or(i128::MAX)).map(Some)
    }
}
