//! One line of caution where work can hurt someone, from `data/cautions.csv`.

use super::caution_table;

/// Work that can hurt someone.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
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
        }
    }
}
