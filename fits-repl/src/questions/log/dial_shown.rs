//! What a dial is set to, in the units that it is divided in.

use fits_core::{
    Length,
    size::{Decimals, Rounding},
};

use crate::{query::Dial, render::text::Text};

impl Text {
    /// A change of diameter as the dial shows it.
    pub(crate) fn on_dial(&self, change: Length, step: Length) -> String {
        let dialled = match self.settings.dial {
            Dial::Diameter => Self::dialled(change, step),
            Dial::Radius => format!("{} (radius)", Self::dialled(change.half(), step)),
        };
        Self::split(change, step)
            .map_or_else(|| dialled.clone(), |part| format!("{dialled} ({part})"))
    }

    /// A dial figure, in the units that the dial is divided in.
    pub(crate) fn dialled(length: Length, step: Length) -> String {
        let decimals = if step.tenth_nanometres() % Length::TENTH.tenth_nanometres() == 0 {
            Decimals::INCHES
        } else {
            Decimals::MILLIMETRES
        };
        let last = Decimals { places: decimals.places + 1, ..decimals };
        let usual = length.shown(decimals, Rounding::Nearest).to_string();
        let closer = length.shown(last, Rounding::Nearest).to_string();
        // A split division has one figure more.
        let shown = if closer.ends_with('0') { usual } else { closer };
        format!("{shown} {}", decimals.unit.symbol())
    }

    /// Which part of a division a setting lies past a whole one; nothing where
    /// it lies on one.
    fn split(change: Length, step: Length) -> Option<String> {
        let (set, division) = (change.tenth_nanometres(), step.tenth_nanometres());
        let past = set.checked_rem(division)?;
        let part = match 4 * past / division {
            0 => return None,
            1 => "a quarter",
            2 => "half",
            _ => "three quarters",
        };
        Some(match set / division {
            0 => format!("{part} of a division"),
            1 => format!("one division and {part}"),
            whole => format!("{whole} divisions and {part}"),
        })
    }
}
