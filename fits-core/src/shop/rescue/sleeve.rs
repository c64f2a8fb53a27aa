//! A repair sleeve on a shaft or a bush in a bore: its wall, the size of the joint
//! and the fit there, by the shop's own word `press`.

use super::{
    clean_up::{next_size, size_under},
    wall_table::WALLS,
};
use crate::{
    error::{Error, Kind},
    fit::Fit,
    shop::words::{Choice, Circumstance, Word},
    size::{Length, Unit},
    source::{Known, Provenance},
    speech::{Figure, say},
    standards::{
        b41,
        iso286::Feature,
        materials::{Family, Material},
    },
};

#[derive(Debug)]
pub(super) struct Wall {
    pub(super) kind: &'static str,
    pub(super) share: f64,
    pub(super) plus: Length,
    pub(super) is_sum: bool,
    pub(super) from: Provenance,
}

/// A sleeve or bush that makes a part good.
#[derive(Clone, Copy, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct RepairSleeve {
    /// The size of the joint: bore the hole to it, or turn the shaft to it.
    pub joint: Length,
    /// The wall that is left when all is cut.
    pub wall: Length,
    /// The least wall.
    pub wall_least: Length,
    /// The press at the joint.
    pub fit: Fit,
    /// How its class was chosen.
    pub choice: Choice,
    /// Is the wall so thin that the class is the one for thin tubes?
    pub is_thin: bool,
    /// Of a hole: what is left about the bush, where the outside is known. Of a
    /// shaft: what is left of its strength against twisting, from zero to one.
    pub left: Left,
    /// How the least wall is known.
    pub known: Known,
}

/// What a sleeve leaves of the part.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Left {
    /// Nothing is known of it.
    Unknown,
    /// The wall about a bush.
    Wall(Length),
    /// The share of the torque that the shaft below the sleeve stands.
    Torque(f64),
}

/// The fit that a word means at a size: by ANSI B4.1 in inches where its table
/// reaches, else by ISO 286.
///
/// # Errors
/// As [`Word::choose`].
pub(super) fn fit_of(word: Word, case: &Circumstance, unit: Unit) -> Result<(Choice, Fit), Error> {
    let choice = word.choose(case)?;
    let inch = || choice.inch.parse::<b41::Class>().and_then(|class| class.fit(case.nominal)).ok();
    let fit = match unit {
        Unit::Inch => inch(),
        _ => None,
    };
    let fit = match fit {
        Some(fit) => fit,
        None => Fit::of_classes(case.nominal, choice.iso.0, choice.iso.1)?,
    };
    Ok((choice, fit))
}

fn least_wall(kind: &str, size: Length) -> Result<(Length, Known), Error> {
    let row =
        WALLS.iter().find(|row| row.kind == kind).ok_or_else(|| Error::new(Kind::OutOfRange))?;
    let share = Length::nearest_millimetres(size.millimetres() * row.share)?;
    let wall = if row.is_sum { share.checked_add(row.plus)? } else { share.max(row.plus) };
    Ok((wall, row.from.known))
}

impl RepairSleeve {
    /// For a part that should be of a size and is cleaned up at another: a bush of
    /// a material in a hole, or a steel sleeve on a shaft. A wall of one's own
    /// stands in place of the usual.
    ///
    /// # Errors
    /// A wall under the least, or nothing left of the part.
    ///
    /// ```
    /// use fits_core::{shop::rescue::RepairSleeve, size::Unit, standards::iso286::Feature};
    /// // A bore that should be 20 mm, cleaned up at 26: walls of 3 mm would be thin.
    /// let (bore, cleaned) = ("20mm".parse()?, "26mm".parse()?);
    /// let bush = RepairSleeve::plan(Feature::Hole, bore, cleaned, None, None, None, Unit::Millimetre)?;
    /// assert_eq!((bush.joint, bush.wall), ("27mm".parse()?, "3.5mm".parse()?));
    /// assert!(bush.fit.interference().upper().is_positive());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn plan(
        part: Feature,
        should_be: Length,
        cleaned: Length,
        material: Option<&Material>,
        wall: Option<Length>,
        around: Option<Length>,
        unit: Unit,
    ) -> Result<Self, Error> {
        let refuse = |why, advice: String| Err(Error::out_of_reach(why, advice));
        let is_soft =
            material.is_some_and(|it| matches!(it.family(), Family::Bronze | Family::Brass));
        let kind = match part {
            Feature::Shaft => "sleeve on a shaft",
            Feature::Hole if is_soft => "bronze bush",
            Feature::Hole => "steel or iron bush",
        };
        let (least, known) = least_wall(kind, should_be)?;
        if let Some(wall) = wall.filter(|wall| *wall < least) {
            return refuse(
                say!(
                    "a wall of {} is under the {} that a {} wants",
                    wall,
                    Figure::About(least),
                    kind
                ),
                "leave the wall out for the usual one, or bond in a thin ready-made sleeve"
                    .to_owned(),
            );
        }
        let twice = wall.unwrap_or(least).checked_mul(2)?;
        let (joint, left) = match part {
            Feature::Hole => {
                let joint = next_size(should_be.checked_add(twice)?.max(cleaned), unit)?;
                let left = match around {
                    None => Left::Unknown,
                    Some(outside) => {
                        let left = outside.checked_sub(joint)?.half();
                        let (wanted, _) = least_wall("wall left about a bush", joint)?;
                        if left < wanted {
                            return refuse(
                                say!(
                                    "a bush wants a bore of {}: that leaves a wall of {} in {}, and {} is the least",
                                    Figure::About(joint),
                                    Figure::About(left),
                                    outside,
                                    Figure::About(wanted)
                                ),
                                "a thinner bonded sleeve, another way, or a new part".to_owned(),
                            );
                        }
                        Left::Wall(left)
                    }
                };
                (joint, left)
            }
            Feature::Shaft => {
                let room = should_be.checked_sub(twice)?.min(cleaned);
                // A quarter of the torque is not a shaft any more.
                if room.millimetres() < 0.6 * should_be.millimetres() {
                    return refuse(
                        say!(
                            "a sleeve's wall of {} leaves {} of a shaft of {}: less than a fifth of its strength against twisting",
                            Figure::About(twice.half()),
                            Figure::About(room.max(Length::ZERO)),
                            should_be
                        ),
                        "another way, or a new shaft".to_owned(),
                    );
                }
                let joint = size_under(room, unit)?;
                let share = joint.millimetres() / should_be.millimetres();
                (joint, Left::Torque(share * share * share))
            }
        };
        let wall = joint.checked_sub(should_be)?.checked_abs()?.half();
        let is_thin = wall.checked_mul(10)? < joint;
        let case = Circumstance { thin_wall: is_thin, ..Circumstance::plain(joint) };
        let (choice, fit) = fit_of(Word::find("press")?, &case, unit)?;
        Ok(Self { joint, wall, wall_least: least, fit, choice, is_thin, left, known })
    }
}
