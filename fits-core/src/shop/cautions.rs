//! One line of caution where work can hurt someone, from `data/cautions.csv`.

use super::caution_table;

/// Work that can hurt someone.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Hazard {
    /// Pressing one part into another.
    Pressing,
    /// Boring with a bar that stands out.
    OverhungBoring,
    /// Turning on a lathe.
    Turning,
    /// Heating or chilling a part.
    Heating,
    /// Cutting a thread with a tap.
    Tapping,
    /// Cutting a thread with the lathe's lead screw.
    Threading,
    /// A zinc-coated part near heat.
    Zinc,
    /// A part whose strength heat takes away.
    Temper,
    /// Oil in a part's pores near heat.
    OilSmoke,
    /// A plastic part near heat.
    Softening,
    /// A plastic that gives off poison above its limit.
    PlasticFume,
    /// Lead in a metal above the metal's limit.
    Lead,
    /// A magnesium part near heat.
    Magnesium,
    /// A part with seals or balls.
    Seals,
    /// Chilling a part far below frost.
    Cold,
    /// Pressing into a hole with a floor.
    Blind,
    /// Pressing into what cracks.
    Brittle,
    /// A joint that may carry people, overhead loads or pressure.
    People,
    /// A thread that seals against pressure.
    PressureThread,
    /// A pair that loses its grip in the warm or the cold.
    LetsGo,
    /// A load worked out from a bolt's area.
    Load,
}

impl Hazard {
    /// The caution, one line.
    ///
    /// ```
    /// use fits_core::shop::Hazard;
    /// assert!(Hazard::Pressing.caution().contains("eye protection"));
    /// ```
    pub const fn caution(self) -> &'static str {
        match self {
            Self::Pressing => caution_table::PRESSING,
            Self::OverhungBoring => caution_table::OVERHUNG_BORING,
            Self::Turning => caution_table::TURNING,
            Self::Heating => caution_table::HEATING,
            Self::Tapping => caution_table::TAPPING,
            Self::Threading => caution_table::THREADING,
            Self::Zinc => caution_table::ZINC,
            Self::Temper => caution_table::TEMPER,
            Self::OilSmoke => caution_table::OIL_SMOKE,
            Self::Softening => caution_table::SOFTENING,
            Self::PlasticFume => caution_table::PLASTIC_FUME,
            Self::Lead => caution_table::LEAD,
            Self::Magnesium => caution_table::MAGNESIUM,
            Self::Seals => caution_table::SEALS,
            Self::Cold => caution_table::COLD,
            Self::Blind => caution_table::BLIND,
            Self::Brittle => caution_table::BRITTLE,
            Self::People => caution_table::PEOPLE,
            Self::PressureThread => caution_table::PRESSURE_THREAD,
            Self::LetsGo => caution_table::LETS_GO,
            Self::Load => caution_table::LOAD,
        }
    }
}
