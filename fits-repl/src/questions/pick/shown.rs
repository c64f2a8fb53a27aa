//! Standard classes for a wanted clearance, in words.

use std::fmt::Write as _;

use crate::{
    answer::PickAnswer,
    render::text::{Text, lines::wrapped},
};

impl Text {
    pub(crate) fn pick(&self, out: &mut String, answer: &PickAnswer) {
        let wanted = [answer.wanted_min_mm, answer.wanted_max_mm].map(|end| self.play(end.0));
        wrapped(out, "wanted: ", &format!("{} to {}", wanted[0], wanted[1]));
        if answer.found == 0 {
            let _ = writeln!(out, "no standard fit lies inside; the nearest:");
        } else {
            let _ = writeln!(
                out,
                "{} standard fits lie inside, the easiest to make first:",
                answer.found
            );
        }
        for found in &answer.candidates {
            let mark = match (found.preferred, found.outside_mm.0.is_positive()) {
                (_, true) => format!("outside by {}", self.one_difference(found.outside_mm.0)),
                (true, false) => "preferred".to_owned(),
                (false, false) => String::new(),
            };
            let ends = [found.min_mm, found.max_mm].map(|end| self.one_play(end.0));
            // How far outside may be long to say.
            let room = if found.outside_mm.0.is_positive() { 20 } else { 22 };
            let _ =
                writeln!(out, "  {:<10}{:>22} to {:<room$}{mark}", found.class, ends[0], ends[1]);
        }
    }
}
