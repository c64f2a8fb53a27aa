//! Standard tolerances, in words.

use std::fmt::Write as _;

use crate::{
    answer::GradeAnswer,
    render::text::{Text, lines::wrapped},
};

impl Text {
    pub(crate) fn grade(&self, out: &mut String, answer: &GradeAnswer) {
        let [first, _] = self.units();
        let (size, tolerance) =
            (Self::size(answer.nominal_mm.0, first), self.difference(answer.tolerance_mm.0));
        let _ = writeln!(out, "{tolerance}   grade {} at {size}", answer.grade);
        wrapped(out, "  ", &answer.source);
    }
}
