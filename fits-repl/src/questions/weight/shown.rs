//! What a bar or a tube weighs, in words.

use std::fmt::Write as _;

use crate::{
    questions::weight::WeightAnswer,
    render::text::{Text, lines::wrapped, quantities::Said},
};

const MASS: Said = [("kg", 1.0, 0.0), ("lb", 0.453_592_37, 0.0)];

impl Text {
    pub(crate) fn weight(&self, out: &mut String, answer: &WeightAnswer) {
        let _ = writeln!(out, "WEIGHS  {}", self.said(answer.weight_kg, MASS));
        for unit in self.units() {
            let sizes = answer.sizes_mm.iter().map(|size| Self::size(size.0, unit));
            let between = if answer.section == "tube" { ", wall " } else { " x " };
            let sizes = sizes.collect::<Vec<_>>().join(between);
            let long = Self::size(answer.long_mm.0, unit);
            wrapped(out, "  ", &format!("{} {sizes}, {long} long", answer.section));
        }
        wrapped(out, "  ", &format!("{}, {:.0} kg/m3", answer.material, answer.density_kg_m3));
    }
}
