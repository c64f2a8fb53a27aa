//! The key and keyways of a shaft, in words.

use std::fmt::Write as _;

use fits_core::Limits;

use crate::{
    answer::{KeywayAnswer, Mm},
    render::text::{Text, lines::wrapped},
};

impl Text {
    pub(crate) fn keyway(&self, out: &mut String, answer: &KeywayAnswer) {
        let [first, second] = self.units();
        let size = |size: Mm, unit| Self::size(size.0, unit);
        let shaft = answer.shaft_mm;
        let _ = writeln!(
            out,
            "{} key for a shaft of {}   {}",
            answer.standard,
            size(shaft, first),
            size(shaft, second)
        );
        for key in [Some(&answer.key), answer.rectangular.as_ref()].into_iter().flatten() {
            let sides =
                |unit| format!("{} x {}", size(key.width_mm, unit), size(key.height_mm, unit));
            let _ = writeln!(out, "  {:<13} {:<28}{}", "key", sides(first), sides(second));
            let mut line = |name: &str, least: Mm, most: Mm| {
                if let Ok(limits) = Limits::new(least.0, most.0) {
                    self.limits_line(out, name, limits);
                }
            };
            // What is measured comes first.
            line("mic, shaft", key.across_shaft_min_mm, key.across_shaft_max_mm);
            line("mic, hub", key.across_hub_min_mm, key.across_hub_max_mm);
            line("depth, shaft", key.shaft_depth_min_mm, key.shaft_depth_max_mm);
            line("depth, hub", key.hub_depth_min_mm, key.hub_depth_max_mm);
            line("width, shaft", key.shaft_width_min_mm, key.shaft_width_max_mm);
            line("width, hub", key.hub_width_min_mm, key.hub_width_max_mm);
            if !key.note.is_empty() {
                wrapped(out, "  ", key.note);
            }
        }
        wrapped(
            out,
            "  ",
            "mic: bottom of the keyway to the far side (S and T); a shaft or bore off its nominal size moves it as much",
        );
        let from = match answer.depth_from {
            "side" => "depths at the side of the keyway",
            _ => "depths from the top of the shaft or bore",
        };
        let _ = writeln!(out, "  {from}");
    }
}
