//! Forces, pressures, torques, temperatures, expansions and times as typed.

use crate::query::Spot;

/// What is measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Dimension {
    /// A force.
    Force,
    /// A pressure, a stress or a modulus.
    Pressure,
    /// A torque.
    Torque,
    /// A temperature, not a difference of two.
    Temperature,
    /// Linear thermal expansion.
    Expansion,
    /// A time.
    Time,
}

impl Dimension {
    /// Every one of them.
    pub const ALL: [Self; 6] =
        [Self::Force, Self::Pressure, Self::Torque, Self::Temperature, Self::Expansion, Self::Time];

    /// In words, as `a force`.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Force => "a force",
            Self::Pressure => "a pressure",
            Self::Torque => "a torque",
            Self::Temperature => "a temperature",
            Self::Expansion => "an expansion",
            Self::Time => "a time",
        }
    }

    /// The units it is typed in, for a message.
    pub const fn units(self) -> &'static str {
        match self {
            Self::Force => "N, kN, lbf, tons (of 2000 lbf) or tonnes",
            Self::Pressure => "MPa, GPa, bar, psi, ksi or Mpsi",
            Self::Torque => "Nm, lbf-ft or lbf-in",
            Self::Temperature => "C, F or K",
            Self::Expansion => "/C or /F, in millionths",
            Self::Time => "s, min or h",
        }
    }
}

/// A unit: its value is `scale` times the number plus `offset`, in newtons,
/// pascals, newton metres, degrees Celsius, millionths per kelvin or seconds.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct QuantityUnit {
    /// What it measures.
    pub dimension: Dimension,
    /// How it is written in a mended line.
    pub symbol: &'static str,
    /// What one of it is.
    pub scale: f64,
    /// Where its nought lies.
    pub offset: f64,
}

/// A number and its unit, if one was typed.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct Quantity {
    /// The number.
    pub number: f64,
    /// Its unit.
    pub unit: Option<QuantityUnit>,
    /// What was asked for.
    pub dimension: Dimension,
}

/// A quantity and its place.
pub type Amount = Spot<Quantity>;

/// One temperature, or the two ends of a range.
pub type Temperatures = Spot<(Amount, Option<Amount>)>;
