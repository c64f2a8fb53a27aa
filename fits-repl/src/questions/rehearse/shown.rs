//! What is known of readings, the tailstock and a rehearsal, in words.

use std::fmt::Write as _;

use fits_core::{
    Length,
    shop::{Verdict, align::Toward},
    size::{Decimals, Rounding, Unit},
};

use crate::{
    answer::{AlignAnswer, MeasuredReading, Mm, ReadingAnswer, RehearsalAnswer, StrategyFigures},
    render::text::{Style, Text, lines::wrapped},
};

impl Text {
    /// The uncertainty, the temperature and the places of readings.
    pub(crate) fn measured(&self, out: &mut String, answer: &ReadingAnswer) {
        let reading = &answer.reading;
        let Some(measured) = reading.measured.as_deref() else { return };
        if let (Some(uncertainty), Some(good)) = (reading.uncertainty_mm, reading.probability_good)
        {
            let count = match (measured.readings, &measured.form) {
                (1, _) => String::new(),
                (count, Some(_)) => format!(", {count} readings"),
                (count, None) => format!(", mean of {count}"),
            };
            let by = measured.instrument.as_ref().map_or(String::new(), |name| format!(", {name}"));
            let over = chance(measured.probability_over.unwrap_or_default());
            let under = chance(measured.probability_under.unwrap_or_default());
            wrapped(
                out,
                "  ",
                &format!(
                    "{} good, {over} over, {under} to cut; U = {} (k = 2){by}{count}",
                    chance(good),
                    self.difference(uncertainty.0)
                ),
            );
        }
        if let (None, None, Some(spread)) =
            (&measured.instrument, &measured.form, measured.spread_mm)
        {
            let _ = writeln!(
                out,
                "  the mean of {} readings, {} apart at most",
                measured.readings,
                self.difference(spread.0)
            );
        }
        self.warm(out, measured);
        if measured.scatters == Some(true)
            && let Some(spread) = measured.spread_mm
        {
            wrapped(
                out,
                "  ",
                &format!(
                    "readings lie {} apart, more than the instrument scatters: clean, and measure again",
                    self.one_difference(spread.0)
                ),
            );
        }
        self.form(out, measured);
        let scatters = measured.scatters == Some(true);
        if reading.verdict == Verdict::TooClose && measured.instrument.is_some() && !scatters {
            let what = if measured.bias_rules {
                "only a finer instrument, or one set against a master, decides it"
            } else {
                "read it again, several times: what scatters averages out"
            };
            let _ = writeln!(out, "  {what}");
        }
        if !measured.assumed.is_empty() {
            wrapped(out, "  ", &measured.assumed.join("; "));
        }
    }

    fn warm(&self, out: &mut String, measured: &MeasuredReading) {
        let Some(warm) = &measured.warm else { return };
        let [first, second] = self.units();
        let size = measured.size_at_20_mm.0;
        let large = if warm.growth_mm.0.is_negative() { "small" } else { "large" };
        let growth = warm.growth_mm.0.checked_abs().unwrap_or(Length::ZERO);
        let _ = writeln!(
            out,
            "  at {} {}   {}: now it is {} {large}",
            self.one_temperature(20.0),
            Self::size(size, first),
            Self::size(size, second),
            self.difference(growth)
        );
        let wait = if warm.wait_min < 0.5 {
            "it is within".to_owned()
        } else {
            format!("about {} until it is within", waiting(warm.wait_min))
        };
        wrapped(
            out,
            "  ",
            &format!(
                "{} at {}, room {}: {wait} {} of its size there (a bare bar in still air, an estimate)",
                warm.material,
                self.one_temperature(warm.temperature_c),
                self.one_temperature(warm.room_c),
                self.one_difference(warm.wait_within_mm.0),
            ),
        );
    }

    fn form(&self, out: &mut String, measured: &MeasuredReading) {
        let Some(form) = &measured.form else { return };
        let difference = self.fine(form.difference_mm.0);
        let words = match (form.real, form.explained_mm) {
            (true, Some(explained)) => format!(
                "places differ by {difference}, more than the instrument's {}: out of round or taper, and every place has to be inside",
                self.fine(explained.0)
            ),
            (false, Some(explained)) => format!(
                "places differ by {difference}: the instrument alone may do that, up to {}; the mean is judged",
                self.fine(explained.0)
            ),
            (true, None) => format!(
                "places differ by {difference}: out of round or taper, if the instrument is finer; every place has to be inside"
            ),
            (false, None) => "the places read alike".to_owned(),
        };
        wrapped(out, "  ", &words);
    }

    /// A difference to a place more than usual, in the unit in force.
    fn fine(&self, length: Length) -> String {
        let [unit, _] = self.units();
        let decimals = match unit {
            Unit::Inch => Decimals { unit: Unit::Tenth, places: 1 },
            _ => Decimals { unit, places: 4 },
        };
        format!("{} {}", length.shown(decimals, Rounding::Nearest), decimals.unit.symbol())
    }

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

    fn strong(&self, size: Mm) -> String {
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
            wrapped(out, "", &format!("with fault {fault}: {says}; nobody is told"));
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
fn chance(probability: f64) -> String {
    match probability * 100.0 {
        percent if percent < 0.1 => "<0.1 %".to_owned(),
        percent if percent > 99.9 => ">99.9 %".to_owned(),
        percent => share(percent / 100.0),
    }
}

/// A share of what was counted.
fn share(of_all: f64) -> String {
    let percent = of_all * 100.0;
    let places = usize::from(!(1.0..99.0).contains(&percent));
    format!("{percent:.places$} %")
}

fn waiting(minutes: f64) -> String {
    if minutes < 90.0 { format!("{minutes:.0} min") } else { format!("{:.1} h", minutes / 60.0) }
}
