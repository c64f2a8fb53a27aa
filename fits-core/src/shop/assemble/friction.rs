//! Friction between the parts of a joint, from `data/friction.csv`: the low
//! figure to work out what a joint holds, the high one to choose a press.

#[cfg(feature = "serde")]
use serde::{Deserialize, Serialize};

use super::friction_table as table;
use crate::{
    error::Error,
    nearest::{nearest, plain},
    source::{Known, Provenance, Reason},
    speech::say,
    standards::materials::{Family, Material},
};

/// How the parts come together.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(Serialize, Deserialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "serde", serde(rename_all = "lowercase"))]
#[non_exhaustive]
pub enum Joining {
    /// Pressed cold.
    #[default]
    Press,
    /// The hub heated or the shaft chilled.
    Shrink,
}

/// What is between the parts.
///
/// ```
/// use fits_core::shop::assemble::Lubricant;
/// assert_eq!(Lubricant::Degreased.word(), "degreased");
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(Serialize, Deserialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "serde", serde(rename_all = "lowercase"))]
#[non_exhaustive]
pub enum Lubricant {
    /// Nothing but what a shop's rag leaves.
    #[default]
    Dry,
    /// Oil, grease or paste.
    Oil,
    /// Washed clean.
    Degreased,
}

impl Lubricant {
    /// What a shop says for each.
    pub const WORDS: [(&'static str, Self); 10] = [
        ("dry", Self::Dry),
        ("oil", Self::Oil),
        ("oiled", Self::Oil),
        ("lubricated", Self::Oil),
        ("grease", Self::Oil),
        ("greased", Self::Oil),
        ("moly", Self::Oil),
        ("wax", Self::Oil),
        ("degreased", Self::Degreased),
        ("clean", Self::Degreased),
    ];

    /// The lubricant that a word means.
    ///
    /// # Errors
    /// No such word; the advice offers the nearest.
    ///
    /// ```
    /// use fits_core::shop::assemble::Lubricant;
    /// assert_eq!(Lubricant::named("Greased")?, Lubricant::Oil);
    /// assert_eq!(Lubricant::named("oill").unwrap_err().advice(), "nearest: oil");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn named(text: &str) -> Result<Self, Error> {
        let wanted = plain(text);
        let found = Self::WORDS.iter().find(|(word, _)| *word == wanted);
        found.map(|(_, lubricant)| *lubricant).ok_or_else(|| {
            let words = Self::WORDS.iter().map(|(word, _)| *word);
            Error::not_listed(
                say!("no lubricant is called {}", text.trim()),
                nearest(&wanted, words).map_or_else(
                    || "those known: dry, oil, grease, moly, degreased".into(),
                    |word| format!("nearest: {word}"),
                ),
            )
        })
    }

    /// In a word.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Dry => "dry",
            Self::Oil => "oil",
            Self::Degreased => "degreased",
        }
    }
}

/// What a material is, as far as friction goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Group {
    Steel,
    CastIron,
    Aluminium,
    CopperAlloy,
    Plastic,
    /// A pair that galls: only what a press is chosen by.
    Galling,
}

impl Group {
    const fn of(family: Family) -> Self {
        match family {
            Family::Steel | Family::Stainless | Family::Titanium | Family::Other => Self::Steel,
            Family::CastIron => Self::CastIron,
            Family::Aluminium | Family::Magnesium => Self::Aluminium,
            Family::Brass | Family::Bronze | Family::Copper => Self::CopperAlloy,
            Family::Plastic => Self::Plastic,
        }
    }
}

/// Does a pair gall: stainless on stainless, titanium on a metal, aluminium on
/// aluminium? Stainless: British Stainless Steel Association, galling; the rest
/// from memory.
///
/// ```
/// use fits_core::{shop::assemble::galls, standards::materials::Material};
/// let (stainless, bronze) = (Material::find("304")?, Material::find("bronze")?);
/// assert!(galls(stainless, stainless) && !galls(stainless, bronze));
/// # Ok::<(), fits_core::Error>(())
/// ```
pub fn galls(hub: &Material, shaft: &Material) -> bool {
    let pair = [hub.family(), shaft.family()];
    let soft = [Family::Plastic, Family::Brass, Family::Bronze, Family::Copper, Family::CastIron];
    pair == [Family::Stainless; 2]
        || pair == [Family::Aluminium; 2]
        || pair.contains(&Family::Titanium) && !pair.iter().any(|it| soft.contains(it))
}

/// A row of the table.
#[derive(Debug)]
pub(super) struct Entry {
    pub(super) group: Group,
    pub(super) joining: Joining,
    pub(super) lubricant: Lubricant,
    pub(super) to_press: bool,
    pub(super) value: f64,
    pub(super) from: Provenance,
    pub(super) note: &'static str,
}

/// The coefficients of friction of a joint.
///
/// ```
/// use fits_core::{shop::assemble::{Friction, Joining, Lubricant}, standards::materials::Material};
/// let (hub, shaft) = (Material::find("aluminium")?, Material::find("steel")?);
/// let friction = Friction::between(hub, shaft, Joining::Press, Lubricant::Oil)?;
/// assert_eq!((friction.holds(), friction.to_press()), (0.04, 0.15));
/// assert!(!friction.reasons().is_empty());
/// // The friction of DIN 7190-1 is from memory.
/// assert_eq!(friction.known(), fits_core::source::Known::Memory);
/// assert_ne!(friction.known_to_press(), friction.known());
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Friction {
    holds: f64,
    to_press: f64,
    reasons: Vec<Reason>,
}

impl Friction {
    /// Between two materials; where neither is steel, the more cautious of
    /// what each has with steel.
    ///
    /// # Errors
    /// The table has no such row.
    ///
    /// ```
    /// use fits_core::{shop::assemble::{Friction, Joining, Lubricant}, standards::materials::Material};
    /// let steel = Material::find("steel")?;
    /// let dry = Friction::between(steel, steel, Joining::Shrink, Lubricant::Degreased)?;
    /// let oiled = Friction::between(steel, steel, Joining::Shrink, Lubricant::Oil)?;
    /// assert!(dry.holds() > oiled.holds());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn between(
        hub: &Material,
        shaft: &Material,
        joining: Joining,
        lubricant: Lubricant,
    ) -> Result<Self, Error> {
        let (one, other) = (Group::of(hub.family()), Group::of(shaft.family()));
        let mut groups = match (one, other) {
            (Group::Steel, group) | (group, Group::Steel) => vec![group],
            (one, other) if one == other => vec![one],
            (one, other) => vec![one, other],
        };
        let is_one_row = groups.len() == 1 && (one == Group::Steel || other == Group::Steel);
        groups.extend(galls(hub, shaft).then_some(Group::Galling));
        let find = |joining, to_press| {
            table::FRICTION.iter().filter(|entry| groups.contains(&entry.group)).filter(
                move |entry| {
                    entry.joining == joining
                        && entry.lubricant == lubricant
                        && entry.to_press == to_press
                },
            )
        };
        let holds = find(joining, false).min_by(|a, b| a.value.total_cmp(&b.value));
        // A press is wanted for the cold joint, and to part either.
        let to_press = find(Joining::Press, true).max_by(|a, b| a.value.total_cmp(&b.value));
        let (Some(holds), Some(to_press)) = (holds, to_press) else {
            return Err(Error::no_joint(
                say!("no friction is known of {} on {}", hub.name(), shaft.name()),
                "give it, as friction 0.12",
            ));
        };
        let reason = |figure: &str, entry: &Entry| Reason {
            figure: figure.into(),
            value: entry.value.to_string().into(),
            rule: if is_one_row || entry.group == Group::Galling {
                entry.note.into()
            } else {
                "the more cautious of what each has with steel".into()
            },
            source: entry.from.text.into(),
            known: entry.from.known,
        };
        Ok(Self {
            holds: holds.value,
            to_press: to_press.value,
            reasons: vec![
                reason("friction that holds", holds),
                reason("friction against the press", to_press),
            ],
        })
    }

    /// By its own figures: the low one and the high one.
    ///
    /// # Errors
    /// A figure that is not above 0 and at most 1, or the low one above
    /// the high one.
    ///
    /// ```
    /// use fits_core::shop::assemble::Friction;
    /// let given = Friction::given(0.1, 0.15)?;
    /// assert!(given.holds() <= given.to_press());
    /// assert!(Friction::given(-0.1, 0.1).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn given(low: f64, high: f64) -> Result<Self, Error> {
        for value in [low, high] {
            if !(value > 0.0 && value <= 1.0) {
                return Err(Error::no_joint(
                    say!("a coefficient of friction of {} is not one that parts have", value),
                    "it lies between 0.02 and 0.4, as friction 0.12",
                ));
            }
        }
        if low > high {
            return Err(Error::no_joint(
                say!("the low friction {} is above the high one {}", low, high),
                "the smaller comes first, as friction 0.08..0.15",
            ));
        }
        let reason = |figure: &str, value: f64| Reason {
            figure: figure.into(),
            value: value.to_string().into(),
            rule: "".into(),
            source: Known::Given.words().into(),
            known: Known::Given,
        };
        let reasons =
            vec![reason("friction that holds", low), reason("friction against the press", high)];
        Ok(Self { holds: low, to_press: high, reasons })
    }

    /// Coefficient used for holding force.
    pub const fn holds(&self) -> f64 {
        self.holds
    }

    /// Coefficient used to choose a press.
    pub const fn to_press(&self) -> f64 {
        self.to_press
    }

    /// How both are known: the worse of the two.
    pub fn known(&self) -> Known {
        self.reasons.iter().fold(Known::Given, |worst, reason| worst.worst(reason.known))
    }

    /// How the one that a press is chosen with is known.
    pub fn known_to_press(&self) -> Known {
        self.reasons.last().map_or(Known::Given, |reason| reason.known)
    }

    /// Where both come from.
    pub fn reasons(&self) -> &[Reason] {
        &self.reasons
    }
}
