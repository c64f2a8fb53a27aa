//! The usual classes for bearing seats, by how the ring on the seat is loaded.

#[cfg(feature = "serde")]
use serde::{Deserialize, Serialize};

use super::table;
use crate::{
    error::Error,
    size::Length,
    source::{Known, Provenance},
    speech::say,
    standards::iso286::{Class, Feature},
};

/// How the ring on the seat is loaded.
///
/// The load `turns` when it goes round relative to the ring: the inner ring on
/// a turning shaft under a belt's pull, the outer ring of a wheel hub. It
/// `stands` when it stays at one point of the ring.
///
/// ```
/// use fits_core::standards::bought::Load;
/// assert_eq!(Load::TurnsNormal.words(), "turns normal");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(Serialize, Deserialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "serde", serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Load {
    /// Turns, light or variable.
    TurnsLight,
    /// Turns, normal.
    TurnsNormal,
    /// Turns, heavy.
    TurnsHeavy,
    /// Turns, with heavy shock or in a thin-walled housing.
    TurnsShock,
    /// Direction uncertain, light.
    UncertainLight,
    /// Direction uncertain, normal.
    UncertainNormal,
    /// Direction uncertain, heavy.
    UncertainHeavy,
    /// Direction uncertain, heavy shock.
    UncertainShock,
    /// Stands; the ring must slide along its seat.
    StandsSlides,
    /// Stands; the ring need not slide.
    StandsFixed,
    /// Along the shaft only.
    Axial,
}

impl Load {
    /// Every way of loading.
    pub const ALL: [Self; 11] = [
        Self::TurnsLight,
        Self::TurnsNormal,
        Self::TurnsHeavy,
        Self::TurnsShock,
        Self::UncertainLight,
        Self::UncertainNormal,
        Self::UncertainHeavy,
        Self::UncertainShock,
        Self::StandsSlides,
        Self::StandsFixed,
        Self::Axial,
    ];

    /// In words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::TurnsLight => "turns light",
            Self::TurnsNormal => "turns normal",
            Self::TurnsHeavy => "turns heavy",
            Self::TurnsShock => "turns shock",
            Self::UncertainLight => "uncertain light",
            Self::UncertainNormal => "uncertain normal",
            Self::UncertainHeavy => "uncertain heavy",
            Self::UncertainShock => "uncertain shock",
            Self::StandsSlides => "stands slides",
            Self::StandsFixed => "stands fixed",
            Self::Axial => "axial",
        }
    }

    /// The row of a shaft's table: a turning load and one of uncertain
    /// direction share one there.
    const fn on_shaft(self) -> Self {
        match self {
            Self::UncertainLight => Self::TurnsLight,
            Self::UncertainNormal => Self::TurnsNormal,
            Self::UncertainHeavy => Self::TurnsHeavy,
            other => other,
        }
    }
}

/// One usual class for a bearing seat.
#[derive(Clone, Copy, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Seat {
    /// The class of the shaft or the housing.
    pub class: Class,
    /// The class for quiet or accurate running, where the table gives one.
    pub finer: Option<Class>,
    /// The bearings it is for: `ball`, `cylindrical roller`, `any radial` ...
    pub bearing: &'static str,
    /// The case it is for, as the table states it.
    pub reason: &'static str,
    /// How it is known.
    pub known: Known,
    /// Where it is written.
    pub source: &'static str,
}

/// Holds for seats over `over` up to and including `up_to`.
#[derive(Debug)]
pub(super) struct SeatRow {
    pub(super) feature: Feature,
    pub(super) bearing: &'static str,
    pub(super) load: Load,
    pub(super) over: Length,
    pub(super) up_to: Length,
    pub(super) class: &'static str,
    pub(super) finer: &'static str,
    pub(super) from: Provenance,
    pub(super) reason: &'static str,
}

/// The usual classes for a bearing seat: a shaft ([`Feature::Shaft`]) under an
/// inner ring or a housing ([`Feature::Hole`]) about an outer one. Several
/// where the kind of bearing or the table decides; ball bearings come first.
///
/// For metric bearings of class Normal with ordinary clearance. Inch tapered
/// rollers have plus tolerances and need their own tables.
///
/// # Errors
/// No table read has such a case; the advice lists the loads that have one.
///
/// ```
/// use fits_core::standards::{bought::{Load, seat}, iso286::Feature};
/// let shaft = seat(Feature::Shaft, Load::TurnsNormal, "25mm".parse()?)?;
/// assert_eq!(shaft[0].class.to_string(), "k5");
/// assert_eq!(shaft[0].bearing, "ball");
/// let housing = seat(Feature::Hole, Load::StandsSlides, "52mm".parse()?)?;
/// assert_eq!(housing[0].class.to_string(), "H7");
/// # Ok::<(), fits_core::Error>(())
/// ```
pub fn seat(feature: Feature, load: Load, diameter: Length) -> Result<Vec<Seat>, Error> {
    let load = match feature {
        Feature::Shaft => load.on_shaft(),
        Feature::Hole => load,
    };
    let of_side = || table::SEATS.iter().filter(move |row| row.feature == feature);
    let seats = of_side()
        .filter(|row| row.load == load && row.over < diameter && diameter <= row.up_to)
        .map(|row| {
            Ok(Seat {
                class: row.class.parse()?,
                finer: match row.finer {
                    "" => None,
                    class => Some(class.parse()?),
                },
                bearing: row.bearing,
                reason: row.reason,
                known: row.from.known,
                source: row.from.text,
            })
        })
        .collect::<Result<Vec<_>, Error>>()?;
    if seats.is_empty() {
        let side = match feature {
            Feature::Shaft => "shaft",
            Feature::Hole => "housing",
        };
        let listed: Vec<_> = Load::ALL
            .into_iter()
            .filter(|load| of_side().any(|row| row.load == *load))
            .map(Load::words)
            .collect();
        return Err(Error::not_listed(
            say!("no {} seat is listed for `{}` at {}", side, load.words(), diameter),
            format!("listed for the {side}: {}", listed.join(", ")),
        ));
    }
    Ok(seats)
}
