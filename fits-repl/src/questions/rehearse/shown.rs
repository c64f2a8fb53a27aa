//! What is known of readings, the tailstock and a rehearsal, in words.

use std::fmt::Write as _;

use crate::{
    answer::{Mm, RehearsalAnswer, StrategyFigures},
    render::text::{Style, Text, lines::wrapped},
};

impl Text {
    pub(crate) fn strong(&self, size: Mm) -> String {
        self.style(Style::Strong, &self.difference(size.0))
    }

    pub(crate) fn rehearsal(&self, out: &mut String, answer: &RehearsalAnswer) {
        let [first, _] = self.units();
        let feature = &answer.feature;
        let name = feature.kind.map_or("size", fits_core::standards::iso286::Feature::word);
        let _ = writeln!(
            out,
            "{name} {} from {}: {} runs, seed {}",
            feature.class,
            Self::size(answer.from_mm.0, first),
            answer.runs,
            answer.seed
        );
        if let (Some(fault), Some(says)) = (answer.fault, answer.fault_says) {
            wrapped(out, "", &format!("with fault {fault}: {says}; the owner does not know"));
        }
        let _ = writeln!(
            out,
            "{}",
            self.style(
                Style::Faint,
                &format!(
                    "  {:<20}{:>8}{:>10}{:>12}{:>9}{:>10}",
                    "", "good", "overcut", "unfinished", "passes", "readings"
                )
            )
        );
        for (at, odds) in answer.strategies.iter().enumerate() {
            let StrategyFigures { strategy, good, over, under, passes, readings } = *odds;
            let line = format!(
                "  {strategy:<20}{:>8}{:>10}{:>12}{passes:>9.1}{readings:>10.1}",
                share(good),
                share(over),
                share(under)
            );
            let _ =
                writeln!(out, "{}", if at == 0 { self.style(Style::Strong, &line) } else { line });
        }
        wrapped(
            out,
            "  ",
            &format!(
                "{}: {} from reading to reading, {} the same in each",
                answer.instrument,
                self.one_difference(answer.repeat_mm.0),
                self.one_difference(answer.bias_mm.0)
            ),
        );
        wrapped(
            out,
            "  ",
            &format!(
                "a cut takes {} +/- {} of what is dialled, +/- {}, and scatters {}; dial steps {}",
                answer.cut_factor,
                answer.cut_factor_sd,
                self.one_difference(answer.offset_sd_mm.0),
                self.one_difference(answer.scatter_mm.0),
                self.one_difference(answer.step_mm.0)
            ),
        );
        if !answer.assumed.is_empty() {
            wrapped(out, "  ", &answer.assumed.join("; "));
        }
        let _ =
            writeln!(out, "  a simulated machine by common practice: yours may do better or worse");
        Self::cautions(out, &answer.cautions);
    }
}

/// A probability, never rounded to certainty.
pub(crate) fn chance(probability: f64) -> String {
    match probability * 100.0 {
        percent if percent < 0.1 => "<0.1 %".to_owned(),
        percent if percent > 99.9 => ">99.9 %".to_owned(),
        percent => share(percent / 100.0),
    }
}

/// A share of what was counted.
pub(crate) fn share(of_all: f64) -> String {
    let percent = of_all * 100.0;
    let places = usize::from(!(1.0..99.0).contains(&percent));
    format!("{percent:.places$} %")
}

pub(crate) fn waiting(minutes: f64) -> String {
    if minutes < 90.0 { format!("{minutes:.0} min") } else { format!("{:.1} h", minutes / 60.0) }
}
