//! A torque and what holds it, in words.

use std::fmt::Write as _;

use fits_core::shop::Hazard;

use crate::{
    questions::share::ShareAnswer,
    render::text::{Style, Text, lines::wrapped},
};

impl Text {
    pub(crate) fn share(&self, out: &mut String, answer: &ShareAnswer) {
        let asked = self.torque(answer.torque_n_m);
        let verdict = if answer.holds {
            self.style(Style::Good, "HOLDS")
        } else {
            self.style(Style::Bad, "DOES NOT HOLD")
        };
        let _ = writeln!(out, "{verdict}  {asked}");
        for part in &answer.parts {
            let _ = writeln!(
                out,
                "  {:<10} takes {:<28} may carry {}",
                part.part,
                self.torque(part.takes_n_m),
                self.torque(part.carries_n_m)
            );
        }
        if !answer.holds {
            let left = self.torque(answer.left_n_m);
            wrapped(
                out,
                "  ",
                &format!(
                    "{left} is held by nothing: a thicker pin or key, a longer joint, or a tighter press"
                ),
            );
        }
        if let Some(metal) = &answer.metal {
            let taken = if answer.metal_taken { " (taken: say of NAME)" } else { "" };
            let factor = if answer.shock { 4 } else { 2 };
            wrapped(out, "  ", &format!("shear and crush of {metal}{taken}, {factor} below yield"));
        }
        let order = if answer.shock {
            "the load turns round: what holds by shear is loaded with all of it, as a press that works loose gives it"
        } else {
            "a press and a bond are loaded first, together; pin, key and screw take what they leave, once it slips"
        };
        wrapped(out, "  ", order);
        wrapped(
            out,
            "  ",
            "a cross hole or keyway weakens the shaft: a pin of a quarter to a third of it, no more",
        );
        Self::cautions(out, &[Hazard::People.caution()]);
    }
}
