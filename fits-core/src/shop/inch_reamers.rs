//! Inch reamers off the shelf that suit a hole: by 64ths, and the over and
//! under sizes sold for pins.
//!
//! Both tables are recalled and the sources disagree (see the heads of
//! `data/holemaking/inch_reamers.csv` and `over_under_reamers.csv`): measure
//! the reamer in hand, and let its measured size decide.

use super::{Ream, inch_reamer_table};
use crate::{
    size::{Decimals, Length, Limits, Rounding, Unit},
    source::{Known, Provenance},
    standards::drills::{Drill, Series},
};

/// Largest size that inch reamers are commonly stocked in (common practice,
/// no source).
const LARGEST: Length = Length::from_tenth_nanometres(381_000_000);

/// What a new reamer measures above its nominal size, for nominal sizes up to
/// and including `up_to`.
#[derive(Clone, Copy, Debug)]
pub(super) struct NewReamer {
    pub(super) up_to: Length,
    pub(super) low: Length,
    pub(super) high: Length,
    pub(super) from: Provenance,
}

/// A reamer off the shelf.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct InchReamer {
    /// What it is sold as: `3/4 in`, `0.2490 in`.
    pub name: String,
    /// What a new one measures.
    pub limits: Limits,
    /// How that is known.
    pub known: Known,
    /// Where it is written, and that sources disagree.
    pub source: &'static str,
}

impl InchReamer {
    /// What a new reamer of a nominal size measures: one by 64ths of an inch, or
    /// an over or under one. None where no such one is stocked.
    ///
    /// ```
    /// use fits_core::shop::InchReamer;
    /// let half = InchReamer::of("1/2in".parse()?).expect("stocked");
    /// assert!(half.limits.lower() > "1/2in".parse()?, "a new reamer cuts over its name");
    /// assert_eq!(InchReamer::of("0.49in".parse()?), None);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn of(nominal: Length) -> Option<Self> {
        let is_fraction = nominal.tenth_nanometres() % (Length::INCH.tenth_nanometres() / 64) == 0
            && nominal <= LARGEST;
        if !is_fraction && !inch_reamer_table::PIN_SIZES.contains(&nominal) {
            return None;
        }
        let row = inch_reamer_table::NEW.iter().find(|row| nominal <= row.up_to)?;
        Some(Self {
            name: format!(
                "{} in",
                nominal.shown(Decimals { unit: Unit::Inch, places: 4 }, Rounding::Nearest)
            ),
            limits: Limits::new(
                nominal.checked_add(row.low).ok()?,
                nominal.checked_add(row.high).ok()?,
            )
            .ok()?,
            known: row.from.known,
            source: row.from.text,
        })
    }

    /// The reamers off the shelf that, new, lie inside the hole with the rule's
    /// 15 % of its tolerance to spare at the top (not rounded up to whole
    /// micrometres: these are inch reamers); the one nearest the middle first.
    ///
    /// ```
    /// use fits_core::{Limits, shop::{InchReamer, Ream}};
    /// // A quarter-inch dowel pressed: the under reamer.
    /// let hole = Limits::new("0.2489in".parse()?, "0.2497in".parse()?)?;
    /// let found = InchReamer::for_hole(&Ream::of(hole)?);
    /// assert_eq!(found[0].name, "0.2490 in");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn for_hole(ream: &Ream) -> Vec<Self> {
        let fits = |nominal: Length, name: &dyn Fn() -> String| {
            let row = inch_reamer_table::NEW.iter().find(|row| nominal <= row.up_to)?;
            let limits = Limits::new(
                nominal.checked_add(row.low).ok()?,
                nominal.checked_add(row.high).ok()?,
            )
            .ok()?;
            let spare = ream.hole.tolerance().checked_scale(15, 100).ok()?;
            let largest = ream.hole.upper().checked_sub(spare).ok()?;
            let inside = ream.hole.lower() <= limits.lower() && limits.upper() <= largest;
            inside.then(|| Self {
                name: name(),
                limits,
                known: row.from.known,
                source: row.from.text,
            })
        };
        let near = |size: Length| {
            let slack = Length::THOU.tenth_nanometres();
            let (low, high) =
                (ream.hole.lower().tenth_nanometres(), ream.hole.upper().tenth_nanometres());
            low - slack <= size.tenth_nanometres() && size.tenth_nanometres() <= high + slack
        };
        let fractions = Drill::over(
            ream.hole.lower().checked_sub(Length::THOU).unwrap_or(Length::ZERO),
            &[Series::Fraction],
        )
        .filter(|drill| drill.diameter() <= LARGEST && near(drill.diameter()))
        .and_then(|drill| fits(drill.diameter(), &|| drill.name().to_owned()));
        let pins =
            inch_reamer_table::PIN_SIZES.iter().filter(|size| near(**size)).filter_map(|&size| {
                fits(size, &|| {
                    format!(
                        "{} in",
                        size.shown(Decimals { unit: Unit::Inch, places: 4 }, Rounding::Nearest)
                    )
                })
            });
        let mut found: Vec<Self> = fractions.into_iter().chain(pins).collect();
        let middle = ream.reamer.middle().tenth_nanometres();
        found.sort_by_key(|reamer| reamer.limits.middle().tenth_nanometres().abs_diff(middle));
        found
    }
}
