//! What a worn bore needs, in words.

use std::fmt::Write as _;

use fits_core::size::Unit;

use crate::{
    questions::clean_up::CleanUpAnswer,
    render::text::{Style, Text, lines::wrapped},
};

impl Text {
    pub(crate) fn clean_up(&self, out: &mut String, answer: &CleanUpAnswer) {
        let [first, other] = self.units();
        let both = |size: crate::answer::Mm| {
            format!("{:<16}{}", Self::size(size.0, first), Self::size(size.0, other))
        };
        let least = both(answer.cleans_up_mm);
        let _ = writeln!(out, "CLEANS UP AT  {}", self.style(Style::Strong, &least));
        let _ = writeln!(out, "  set to its middle as it is; the next size is");
        let _ = writeln!(out, "                {}", both(answer.next_mm));
        if answer.cleans_up_on_old_middle_mm.0 != answer.cleans_up_mm.0 {
            let _ = writeln!(out, "  set to the old middle, worn to one side");
            let _ = writeln!(out, "                {}", both(answer.cleans_up_on_old_middle_mm));
            let _ = writeln!(out, "  then next       {}", both(answer.next_on_old_middle_mm));
        }
        wrapped(
            out,
            "  ",
            &format!(
                "readings from {} to {}: {} of taper, wear or egg",
                Self::size(answer.reading_min_mm.0, first),
                Self::size(answer.reading_max_mm.0, first),
                self.difference(answer.spread_mm.0)
            ),
        );
        if let Some(bush) = &answer.bush {
            for limits in &bush.limits {
                self.limits_or_size(out, limits.of, limits.limits);
            }
            let left = bush.left_wall_mm.map_or(String::new(), |left| {
                format!("; {} is left about it", Self::size(left.0, first))
            });
            wrapped(
                out,
                "  ",
                &format!(
                    "bush with a wall of {} ({} at the least){left}; pinned or bonded where the load turns, bored in place last",
                    Self::size(bush.wall_mm.0, first),
                    Self::size(bush.wall_min_mm.0, first)
                ),
            );
        }
        let why = if first == Unit::Inch { &answer.no_bush_in } else { &answer.no_bush };
        if let Some(why) = why {
            wrapped(out, "  not a bush: ", why);
        }
        wrapped(
            out,
            "  ",
            "indicate the bore before it is cut: what cleans up goes by where the bar is set",
        );
    }
}
