//! A hole that a reamer cut over or under: what it is good for and what is
//! usually wrong.

#[cfg(feature = "serde")]
use serde::Serialize;

use super::{InchReamer, Ream};
use crate::{
    error::Error,
    size::{Length, Limits},
    source::Known,
    speech::say,
    standards::iso286::{Class, Feature, Grade, Letter},
};

/// How a reamed hole stands to its reamer's nominal size.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "serde", serde(rename_all = "lowercase"))]
#[expect(
    clippy::exhaustive_enums,
    reason = "each is told, or acted on, in its own way: a new one must not pass unseen"
)]
pub enum Cuts {
    /// Below the nominal size: the reamer is worn, or the hole has closed.
    Under,
    /// In H7, which reamers off the shelf are made for.
    Usual,
    /// Above H7, and still in H9.
    Over,
    /// Above H9: no reamer that runs true does so.
    Wild,
}

/// What to do, most usual first. Common practice, no source.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "serde", serde(rename_all = "kebab-case"))]
#[expect(
    clippy::exhaustive_enums,
    reason = "each is told, or acted on, in its own way: a new one must not pass unseen"
)]
pub enum Remedy {
    /// Let the reamer follow the hole: a floating holder, the tailstock on
    /// centre, no run-out at the lead.
    RunTrue,
    /// Half the drill's speed or less, and a steady feed.
    Slower,
    /// Flood it, and clear the chips: what builds up on the edge cuts over.
    Fluid,
    /// Hone the lead lightly, all flutes alike.
    HoneLead,
    /// Leave the stock that the table gives: too much is a drill's work.
    Stock,
    /// Mic the reamer over its lands: it is of another size than it says.
    MicReamer,
    /// Let the part cool, or run the reamer through a thin or soft wall again.
    Again,
    /// A worn one: use it for under-size holes.
    Worn,
}

/// A reamed hole, judged.
#[derive(Clone, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct ReamerCut {
    /// How much it is above the nominal size; below 0 it is under.
    pub over: Length,
    /// How that is.
    pub cuts: Cuts,
    /// The finest hole class on the nominal size that it is in.
    pub class: Option<Class>,
    /// What a new reamer of this size measures, and how that is known.
    pub new: Option<(Limits, Known, &'static str)>,
    /// How much the hole is above what the reamer measures, where that is given.
    pub above_reamer: Option<Length>,
    /// What to do.
    pub remedies: Vec<Remedy>,
}

fn h(grade: u8) -> Result<Class, Error> {
    format!("H{grade}").parse()
}

/// Judges a hole that a reamer of a nominal size cut, and the reamer by what it
/// measures itself where that is given.
///
/// ```
/// use fits_core::shop::{Cuts, Remedy, reamer_cut};
/// let found = reamer_cut("1/4in".parse()?, "0.2508in".parse()?, None)?;
/// assert_eq!(found.over, "8 tenths".parse()?);
/// assert_eq!(found.cuts, Cuts::Over);
/// assert_eq!(found.class.expect("H8").to_string(), "H8");
/// assert_eq!(found.remedies.first(), Some(&Remedy::RunTrue));
/// # Ok::<(), fits_core::Error>(())
/// ```
///
/// # Errors
/// A hole that no reamer of this size cuts, or out of the tables.
pub fn reamer_cut(
    nominal: Length,
    hole: Length,
    measures: Option<Length>,
) -> Result<ReamerCut, Error> {
    let over = hole.checked_sub(nominal)?;
    // Past a thirtieth of the size it is another reamer, or another unit.
    if !nominal.is_positive() || over.checked_abs()?.checked_mul(30)? > nominal {
        return Err(Error::no_plan(say!(
            "a reamer of {} does not cut a hole of {}",
            nominal,
            hole
        )));
    }
    let (seven, nine) = (h(7)?.limits(nominal)?, h(9)?.limits(nominal)?);
    let cuts = if over.is_negative() {
        Cuts::Under
    } else if hole <= seven.upper() {
        Cuts::Usual
    } else if hole <= nine.upper() {
        Cuts::Over
    } else {
        Cuts::Wild
    };
    let letter = Letter::named("H", Feature::Hole)?;
    let class = (5..=11)
        .filter_map(Grade::it)
        .map(|grade| Class { feature: Feature::Hole, letter, grade })
        .find(|class| class.limits(nominal).is_ok_and(|limits| limits.contains(hole)));
    let new = match InchReamer::of(nominal) {
        Some(reamer) => Some((reamer.limits, reamer.known, reamer.source)),
        None => Ream::of(seven).ok().map(|ream| (ream.reamer, Known::Seen, "DIN 1420")),
    };
    let above_reamer = measures.map(|size| hole.checked_sub(size)).transpose()?;
    // A reamer that is itself over cuts so however it runs.
    let is_reamer = measures.is_some_and(|size| size > seven.upper());
    let is_worn = measures.is_some_and(|size| size < nominal);
    let remedies = match cuts {
        // Worn under its size and still in H7: it cuts over itself, and tells on it.
        Cuts::Usual if is_worn => vec![Remedy::RunTrue, Remedy::HoneLead, Remedy::Worn],
        Cuts::Usual => Vec::new(),
        Cuts::Under => vec![Remedy::Again, Remedy::MicReamer, Remedy::Worn],
        Cuts::Over | Cuts::Wild if is_reamer => vec![Remedy::MicReamer],
        Cuts::Over | Cuts::Wild => {
            let mut all = vec![
                Remedy::RunTrue,
                Remedy::Slower,
                Remedy::Fluid,
                Remedy::HoneLead,
                Remedy::Stock,
            ];
            all.extend(measures.is_none().then_some(Remedy::MicReamer));
            all
        }
    };
    Ok(ReamerCut { over, cuts, class, new, above_reamer, remedies })
}
