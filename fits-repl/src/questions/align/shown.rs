//! The tailstock, in words.

use std::fmt::Write as _;

use fits_core::{Length, shop::align::Toward};

use crate::{
    answer::{AlignAnswer, Mm},
    render::text::{Style, Text, lines::wrapped},
};

impl Text {
    pub(crate) fn align(&self, out: &mut String, answer: &AlignAnswer) {
        let which = match (answer.toward, answer.wanted) {
            (Toward::Stay, _) => "the tailstock stands right: leave it".to_owned(),
            (_, true) => format!("set the tailstock over by {}", self.strong(answer.set_over_mm)),
            (toward, false) => {
                format!("move the tailstock {} {}", self.strong(answer.set_over_mm), toward.word())
            }
        };
        let _ = writeln!(out, "{which}");
        if answer.toward == Toward::Stay {
            return;
        }
        let [first, second] = self.units();
        let length =
            |size: Mm| format!("{}   {}", Self::size(size.0, first), Self::size(size.0, second));
        let taper = answer.taper_mm.0.checked_abs().unwrap_or(Length::ZERO);
        if answer.wanted {
            let _ = writeln!(
                out,
                "  {} on the diameter over {}",
                self.difference(taper),
                length(answer.over_mm)
            );
            let _ = writeln!(out, "  toward the tool makes the tailstock end small, away large");
        } else {
            let end = if answer.toward == Toward::Tool { "large" } else { "small" };
            let _ = writeln!(
                out,
                "  tailstock end {end} by {} over {}",
                self.difference(taper),
                length(answer.over_mm)
            );
        }
        let per = |size: Mm| self.difference(size.0.checked_abs().unwrap_or(Length::ZERO));
        let _ = writeln!(out, "  {:<14}{}", "per 100 mm", per(answer.per_100_mm_mm));
        let _ = writeln!(out, "  {:<14}{}", "per foot", per(answer.per_foot_mm));
        if !answer.between_told {
            let _ = writeln!(
                out,
                "  the centres stand further apart than the collars? say `between` and how far"
            );
        }
        if let Some(part) = &answer.part {
            let feature = &part.feature;
            let name = feature.kind.map_or("size", fits_core::standards::iso286::Feature::word);
            let tapers = self.one_difference(part.taper_mm.0.checked_abs().unwrap_or(Length::ZERO));
            let (style, verdict) = if part.survives {
                (
                    Style::Good,
                    format!(
                        "leaves {} of its {}",
                        self.one_difference(part.leaves_mm.0),
                        self.one_difference(feature.limits.tolerance())
                    ),
                )
            } else {
                (
                    Style::Bad,
                    format!(
                        "is all of its {} or more: mend it first",
                        self.one_difference(feature.limits.tolerance())
                    ),
                )
            };
            wrapped(
                out,
                "",
                &format!(
                    "{name} {} {} long tapers {tapers}: that {}",
                    feature.class,
                    Self::size(part.long_mm.0, first),
                    self.style(style, &verdict)
                ),
            );
        }
    }
}
