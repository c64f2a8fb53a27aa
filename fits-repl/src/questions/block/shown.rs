//! An untoleranced inch size, in words.

use std::fmt::Write as _;

use fits_core::Limits;

use crate::{
    questions::block::TitleBlockAnswer,
    render::text::{Text, lines::wrapped},
};

impl Text {
    pub(crate) fn title_block(&self, out: &mut String, answer: &TitleBlockAnswer) {
        let [first, second] = self.units();
        let _ = writeln!(
            out,
            "NO TOLERANCE GIVEN  {}, written with {}",
            Self::size(answer.nominal_mm.0, first),
            answer.written
        );
        for set in &answer.sets {
            let Ok(limits) = Limits::new(set.lower_mm.0, set.upper_mm.0) else { continue };
            let _ = writeln!(
                out,
                "  {:<16}+/- {:<11}{:<22}{}",
                set.practice,
                self.one_difference(set.plus_minus_mm.0),
                Self::range(limits, first),
                Self::range(limits, second)
            );
            if !set.note.is_empty() {
                wrapped(out, "                  ", set.note);
            }
        }
        if !answer.sets.iter().any(|set| set.practice == "no block") {
            wrapped(
                out,
                "  ",
                "no block at all: the old rule is half of the least fraction written, for eighths and finer; ask about halves and quarters",
            );
        }
        wrapped(
            out,
            "  ",
            "common practice, no standard: the drawing's own title block rules; ask whoever drew it",
        );
    }
}
