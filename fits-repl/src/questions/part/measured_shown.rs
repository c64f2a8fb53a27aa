//! What is known of readings, in words.

use std::fmt::Write as _;

use fits_core::{
    Length,
    shop::Verdict,
    size::{Decimals, Rounding, Unit},
};

use crate::{
    answer::{MeasuredReading, ReadingAnswer},
    questions::rehearse::shown::{chance, waiting},
    render::text::{Text, lines::wrapped},
};

/// Readings of one place seldom differ by more: 2 tenths (common practice, no source).
pub(crate) const ONE_GAUGE: Length = Length::from_tenth_nanometres(50_800);

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
            if spread.0 > ONE_GAUGE {
                let told = "of several places? Part them with a slash, and each must be within";
                let _ = writeln!(out, "  {told}");
            }
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

    pub(crate) fn warm(&self, out: &mut String, measured: &MeasuredReading) {
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

    pub(crate) fn form(&self, out: &mut String, measured: &MeasuredReading) {
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
    pub(crate) fn fine(&self, length: Length) -> String {
        let [unit, _] = self.units();
        let decimals = match unit {
            Unit::Inch => Decimals { unit: Unit::Tenth, places: 1 },
            _ => Decimals { unit, places: 4 },
        };
        format!("{} {}", length.shown(decimals, Rounding::Nearest), decimals.unit.symbol())
    }
}
