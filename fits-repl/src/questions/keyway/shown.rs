//! The key and keyways of a shaft, in words.

use std::fmt::Write as _;

use fits_core::Limits;

use crate::{
    answer::{KeywayAnswer, KeywayCut, Mm},
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
        if let Some(cut) = &answer.cut {
            self.keyway_cut(out, cut);
        }
        if answer.fit != "usual" {
            let _ = writeln!(out, "  {} fit", answer.fit);
        }
        // Beside the ways out there is room for the key that was cut for alone.
        let other = answer.rectangular.as_ref().filter(|_| answer.cut.is_none());
        for key in [Some(&answer.key), other].into_iter().flatten() {
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
            line("key's width", key.key_min_mm, key.key_max_mm);
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

    /// A keyway as it was measured, and the ways out.
    fn keyway_cut(&self, out: &mut String, cut: &KeywayCut) {
        let [unit, _] = self.units();
        let size = |size: Mm| Self::size(size.0, unit);
        let off = self.one_difference(cut.off_mm.0);
        let reading = size(cut.reading_mm);
        let (part, of) = (cut.part, cut.of);
        let verdict = match cut.verdict {
            "over" => format!("OVER by {off}: {of} in the {part} {reading}"),
            "good" => format!("GOOD: {of} in the {part} {reading}"),
            _ => format!("CUT {off} MORE: {of} in the {part} {reading}"),
        };
        wrapped(out, "", &verdict);
        let make = cut.make_min_mm.zip(cut.make_max_mm);
        match (of, make) {
            ("width", Some((least, most))) => {
                let other = if part == "shaft" { "hub" } else { "shaft" };
                wrapped(
                    out,
                    "  1 ",
                    &format!(
                        "make a stepped key: {} to {} wide in the {part}, as below in the {other}",
                        size(least),
                        size(most)
                    ),
                );
                match cut.next_width_mm {
                    Some(next) => wrapped(
                        out,
                        "  2 ",
                        &format!(
                            "open both keyways to the next key, {} wide: the shaft is weaker by it",
                            size(next)
                        ),
                    ),
                    None => wrapped(out, "  2 ", "no wider key of the standard covers it"),
                }
                wrapped(
                    out,
                    "  3 ",
                    "cut a new keyway a third of a turn on, where the shaft can spare it; a shim at \
                     the key's side works loose",
                );
            }
            (_, Some((high, _))) => {
                wrapped(
                    out,
                    "  1 ",
                    &format!("make the key {} high, so that it stands as far out", size(high)),
                );
                wrapped(
                    out,
                    "  2 ",
                    &format!("or lay a full-length shim of {off} under the key: it cannot get out"),
                );
                wrapped(
                    out,
                    "  3 ",
                    "left as it is, the key holds by less of its side: work it lighter",
                );
            }
            _ => {}
        }
    }
}
