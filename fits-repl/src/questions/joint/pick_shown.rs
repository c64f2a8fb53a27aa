//! Classes by what a joint must do, in words.

use crate::{
    answer::{GripFigures, PickGripAnswer},
    render::text::{Text, lines::wrapped, quantities::figures},
};
use std::fmt::Write as _;

impl Text {
    pub(crate) fn pick_grip(&self, out: &mut String, answer: &PickGripAnswer) {
        let mut wanted = Vec::new();
        wanted.extend(match (answer.holds_n, answer.holds_n_m) {
            (Some(force), _) => Some(format!("holds {} along", self.force(force))),
            (None, torque) => torque.map(|torque| format!("holds {}", self.torque(torque))),
        });
        wanted.extend(
            answer.press_under_n.map(|force| format!("goes in under {}", self.force(force))),
        );
        if answer.hub_safe {
            wanted.push("nothing yields".into());
        }
        wrapped(out, "wanted: ", &wanted.join("; "));
        let yield_all = answer.candidates.iter().all(|grip| grip.safety.is_some_and(|it| it < 1.0));
        let yields = if answer.found > 0 && yield_all { ", all by yielding" } else { "" };
        let _ = writeln!(
            out,
            "{}",
            match answer.found {
                0 => "no standard class does it all; the nearest:".to_owned(),
                1 => format!("one standard class does{yields}:"),
                count => {
                    let first = if answer.holds_n_m.is_some() { "lightest" } else { "heaviest" };
                    format!("{count} standard classes do{yields}, the {first} first:")
                }
            }
        );
        for grip in &answer.candidates {
            self.grip(out, grip, answer.holds_n.is_some());
        }
        if answer.found > answer.candidates.len() && answer.holds_n_m.is_some() {
            let _ = writeln!(out, "  (the last is the heaviest)");
        }
        if answer.found > 0 && answer.holds_n_m.is_some() {
            wrapped(
                out,
                "  ",
                "for a steady load; with shock or reversal want it held 2 to 3 times",
            );
        }
        if answer.found == 0 && answer.holds_n_m.is_some() {
            wrapped(
                out,
                "  ",
                "longer, a thicker or stiffer hub, or a key or a pin beside a lighter press",
            );
        }
        Self::cautions(out, &answer.cautions);
    }

    fn grip(&self, out: &mut String, grip: &GripFigures, along: bool) {
        let ends = [grip.interference_min_mm.0, grip.interference_max_mm.0].map(|end| {
            let clearance = end.checked_neg().unwrap_or(end);
            self.one_play(clearance)
        });
        let torque = if along {
            grip.axial_hold_n.map_or(String::new(), |force| self.one_force(force))
        } else {
            grip.torque_n_m.map_or(String::new(), |torque| self.one_torque(torque))
        };
        let force = grip.press_force_n.map_or(String::new(), |force| self.one_force(force));
        let safety = grip.safety.map_or(String::new(), |safety| {
            if grip.brittle {
                "cracks".into()
            } else if safety < 1.0 {
                "yields".into()
            } else if grip.keeps {
                format!("{} x", figures(safety))
            } else {
                "may crack".into()
            }
        });
        let times = grip.times.map_or(String::new(), |times| format!(" ({}x)", figures(times)));
        let torque = format!("{torque}{times}");
        let range = format!("{} to {}", ends[0], ends[1]);
        let _ = writeln!(out, "  {:<7}{range:<31} {torque:>19} {force:>9} {safety}", grip.class);
    }
}
