//! How plastics grow with damp, from `data/swelling.csv`.

use crate::{
    source::{Provenance, Reason},
    standards::materials::Material,
};

use super::swelling_table::SWELLING;

#[derive(Debug)]
pub(super) struct Entry {
    pub(super) material: &'static str,
    pub(super) room_air: f64,
    pub(super) soaked: f64,
    pub(super) from: Provenance,
    pub(super) note: &'static str,
}

/// How damp a part is.
///
/// ```
/// use fits_core::shop::Damp;
/// assert_eq!(Damp::RoomAir.words(), "in room air");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Damp {
    /// Dry as made.
    Dry,
    /// Settled at 50 percent relative humidity.
    RoomAir,
    /// Lying in water.
    Soaked,
}

impl Damp {
    /// In words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Dry => "dry",
            Self::RoomAir => "in room air",
            Self::Soaked => "soaked",
        }
    }

    /// How much a part of this material grows from dry, as a share of its
    /// length; zero for what does not swell.
    ///
    /// ```
    /// use fits_core::{shop::Damp, standards::materials::Material};
    /// assert_eq!(Damp::RoomAir.growth(Material::find("nylon")?), 0.006);
    /// assert_eq!(Damp::Soaked.growth(Material::find("steel")?), 0.0);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn growth(self, material: &Material) -> f64 {
        entry(material).map_or(0.0, |entry| match self {
            Self::Dry => 0.0,
            Self::RoomAir => entry.room_air / 100.0,
            Self::Soaked => entry.soaked / 100.0,
        })
    }
}

/// Where a material's growth with damp comes from; `None` where it has none.
///
/// ```
/// use fits_core::{shop::{Damp, swelling_reason}, standards::materials::Material};
/// let nylon = Material::find("nylon")?;
/// assert!(Damp::Soaked.growth(nylon) > Damp::RoomAir.growth(nylon));
/// assert!(swelling_reason(nylon).is_some() && swelling_reason(Material::find("steel")?).is_none());
/// # Ok::<(), fits_core::Error>(())
/// ```
pub fn swelling_reason(material: &Material) -> Option<Reason> {
    entry(material).map(|entry| Reason {
        figure: format!("growth with damp, {}", entry.material),
        value: format!("{} % in room air, {} % soaked", entry.room_air, entry.soaked).into(),
        rule: entry.note.to_owned().into(),
        source: entry.from.text.to_owned(),
        known: entry.from.known,
    })
}

fn entry(material: &Material) -> Option<&'static Entry> {
    SWELLING.iter().find(|entry| entry.material == material.name())
}
