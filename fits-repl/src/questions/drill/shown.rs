//! The nearest drills, in words.

use std::fmt::Write as _;

use fits_core::Length;

use crate::{
    answer::{DrillAnswer, Mm},
    render::text::Text,
};

impl Text {
    pub(crate) fn drills(&self, out: &mut String, answer: &DrillAnswer) {
        let [first, second] = self.units();
        let mut line = |lead: &str, name: &str, size: Mm, off: Mm| {
            let (one, other) = (Self::size(size.0, first), Self::size(size.0, second));
            let off = match off.0.checked_abs().unwrap_or(off.0) {
                Length::ZERO => String::new(),
                off => self.one_difference(off),
            };
            let line = format!("  {lead:<7}{name:<12}{one:<14}{other:<14}{off}");
            let _ = writeln!(out, "{}", line.trim_end());
        };
        // Those of the crib first: they are there.
        for own in answer.crib.iter().flatten() {
            line("crib", &own.name, own.mm, own.leaves_mm);
        }
        for (lead, drills) in
            [("exact", &answer.exact), ("under", &answer.under), ("over", &answer.over)]
        {
            for drill in drills {
                line(lead, drill.name, drill.mm, drill.off_mm);
            }
        }
        let _ =
            writeln!(out, "  a drill commonly cuts a little over its own size: try it on scrap");
    }
}
