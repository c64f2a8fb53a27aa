//! A ring, a pin, a Woodruff key, a plug or an O-ring, in words.

use std::fmt::Write as _;

use fits_core::{Limits, size::Unit};

use super::{
    HardwareAnswer,
    figures::{Note, SizeFigures},
};
use crate::render::text::{Style, Text, lines::wrapped};

impl Text {
    pub(crate) fn hardware(&self, out: &mut String, answer: &HardwareAnswer) {
        let [first, second] = self.units();
        let _ =
            writeln!(out, "{}", self.style(Style::Strong, &Self::capital(&answer.title, first)));
        for size in &answer.sizes {
            self.one_size(out, size, [first, second]);
        }
        if let Some(carries) = answer.carries {
            wrapped(out, "  yields at     ", &self.torque(carries.yields_n_m));
            wrapped(out, "  at            ", &self.torque(carries.torque_n_m));
            for (name, stress) in [
                ("  shear         ", Some(carries.shear_mpa)),
                ("  in the shaft  ", Some(carries.shaft_mpa)),
                ("  in the collar ", carries.collar_mpa),
            ] {
                if let Some(stress) = stress {
                    wrapped(out, name, &self.pressure(stress * 1e6));
                }
            }
        }
        if let Some(squeeze) = answer.squeeze {
            let _ = writeln!(
                out,
                "  squeeze       {:.0} to {:.0} % of the section; fills {:.0} % of the groove at most",
                squeeze.min_percent, squeeze.max_percent, squeeze.filled_percent
            );
        }
        for note in &answer.notes {
            let said = note.0.said_in(first);
            match said.strip_prefix("! ") {
                Some(caution) => wrapped(out, "! ", caution),
                None => wrapped(out, "  ", &said),
            }
        }
    }

    /// A title begins with a capital.
    fn capital(title: &Note, unit: Unit) -> String {
        let said = title.0.said_in(unit);
        let mut letters = said.chars();
        letters.next().map_or(String::new(), |first| first.to_uppercase().chain(letters).collect())
    }

    fn one_size(&self, out: &mut String, size: &SizeFigures, units: [Unit; 2]) {
        if size.min_mm == size.max_mm {
            let [one, other] = units.map(|unit| Self::size(size.min_mm.0, unit));
            let _ = writeln!(out, "  {:<13} {one:<28}{other}", size.name);
        } else if let Ok(limits) = Limits::new(size.min_mm.0, size.max_mm.0) {
            self.limits_line(out, size.name, limits);
        }
    }
}
