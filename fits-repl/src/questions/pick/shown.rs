//! Standard classes for a wanted clearance, in words.

use std::fmt::Write as _;

use fits_core::size::Unit;

use crate::{
    answer::PickAnswer,
    questions::pick::answered::CandidateFigures,
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
                "{} standard fits lie inside, preferred classes and the easiest to make first:",
                answer.found
            );
        }
        for found in &answer.candidates {
            let mark = if found.preferred { "preferred" } else { "" };
            self.candidate(out, found, mark);
        }
        // A shop in inches looks for a class of B4.1 first.
        if let Some(inch) = answer.nearest_b41.as_ref().filter(|_| self.units()[0] == Unit::Inch) {
            let _ = writeln!(out, "none of ASME B4.1 lies inside; its nearest:");
            self.candidate(out, inch, "");
        }
    }

    fn candidate(&self, out: &mut String, found: &CandidateFigures, mark: &str) {
        let outside = found.outside_mm.0;
        let mark = if outside.is_positive() {
            format!("outside by {}", self.one_difference(outside))
        } else {
            mark.to_owned()
        };
        let [least, most] = [found.min_mm, found.max_mm].map(|end| self.one_play(end.0));
        let line = format!("  {:<9} {least:>21} to {most:<21} {mark}", found.class);
        let _ = writeln!(out, "{}", line.trim_end());
    }
}
