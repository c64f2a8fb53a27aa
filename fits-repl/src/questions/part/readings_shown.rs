//! Readings and measured pairs in words.

use std::fmt::Write as _;

use fits_core::{Length, shop::Verdict, standards::iso286::Feature};

use crate::{
    answer::{PairReadingAnswer, ReadingAnswer},
    query::Dial,
    questions::part::shown::zone_name,
    render::text::{Style, Text, lines::wrapped},
};

/// What to do, at a glance.
pub(crate) const fn verdict_word(verdict: Verdict) -> (Style, &'static str) {
    match verdict {
        Verdict::Good => (Style::Good, "GOOD: stop"),
        Verdict::CutMore => (Style::Strong, "CUT MORE"),
        Verdict::Over => (Style::Bad, "OVERCUT"),
        Verdict::TooClose => (Style::Strong, "TOO CLOSE TO CALL"),
    }
}

impl Text {
    pub(crate) fn reading(&self, out: &mut String, answer: &ReadingAnswer) {
        self.verdict(out, answer);
        self.measured(out, answer);
        let feature = &answer.feature;
        self.limits_line(out, feature.class, feature.limits);
        let zone = (zone_name(feature), feature.limits, Some(answer.reading.at_20()));
        Self::zones(out, feature.nominal_mm.0, &[zone]);
    }

    /// The verdict and what is left, as changes of diameter.
    fn verdict(&self, out: &mut String, answer: &ReadingAnswer) {
        let (feature, reading) = (&answer.feature, &answer.reading);
        let (style, word) = verdict_word(reading.verdict);
        let name = feature.kind.map_or("size", Feature::word);
        let [first, second] = self.units();
        let _ = writeln!(
            out,
            "{}   {name} {} reads {}   {}",
            self.style(style, word),
            feature.class,
            Self::size(reading.reading_mm.0, first),
            Self::size(reading.reading_mm.0, second)
        );
        self.what_is_left(out, answer);
    }

    fn what_is_left(&self, out: &mut String, answer: &ReadingAnswer) {
        let (feature, reading) = (&answer.feature, &answer.reading);
        let dial = |length: Length| match self.settings.dial {
            Dial::Diameter => String::new(),
            Dial::Radius => format!(", dial {}", self.one_difference(length.half())),
        };
        match reading.verdict {
            Verdict::CutMore => {
                let limit = if feature.kind == Some(Feature::Shaft) {
                    ["upper", "lower"]
                } else {
                    ["lower", "upper"]
                };
                for (name, length) in [
                    ("to the aim".to_owned(), reading.to_go_mm.0),
                    (format!("to the {} limit", limit[0]), reading.to_first_limit_mm.0),
                    (format!("to the {} limit", limit[1]), reading.to_last_limit_mm.0),
                ] {
                    let _ = writeln!(
                        out,
                        "  {name:<20}{:<24}on the diameter{}",
                        self.difference(length),
                        dial(length)
                    );
                }
            }
            Verdict::Good | Verdict::TooClose => {
                let past = reading.to_go_mm.0.is_negative();
                let off = reading.to_go_mm.0.checked_abs().unwrap_or(reading.to_go_mm.0);
                let side = match (off == Length::ZERO, past) {
                    (true, _) => "at the target".to_owned(),
                    (false, true) => format!("{} past the target", self.difference(off)),
                    (false, false) => format!("{} short of the target", self.difference(off)),
                };
                let left = self.difference(reading.to_last_limit_mm.0);
                wrapped(out, "  ", &format!("{side}; {left} left to the last limit"));
            }
            Verdict::Over => {
                let past = reading.to_last_limit_mm.0.checked_neg().unwrap_or(Length::ZERO);
                self.past_the_limit(out, past);
            }
        }
    }

    /// Too much is gone.
    pub(crate) fn past_the_limit(&self, out: &mut String, past: Length) {
        wrapped(
            out,
            "  ",
            &format!(
                "{} past the limit: measure again, then suit the mate to it, or scrap it",
                self.difference(past)
            ),
        );
    }

    pub(crate) fn pair_reading(&self, out: &mut String, answer: &PairReadingAnswer) {
        let style = if answer.within { Style::Good } else { Style::Bad };
        let word = if answer.within { "inside" } else { "OUTSIDE" };
        let _ = writeln!(
            out,
            "{}  {word} the fit's range",
            self.style(style, &self.play(answer.actual_clearance_mm.0))
        );
        let clearance = &answer.clearance;
        let _ = writeln!(
            out,
            "  from {} to {}",
            self.play(clearance.min_mm.0),
            self.play(clearance.max_mm.0)
        );
        for part in [&answer.hole, &answer.shaft] {
            if answer.within && matches!(part.reading.verdict, Verdict::CutMore | Verdict::Over) {
                let name = part.feature.kind.map_or("", Feature::word);
                let [first, second] = self.units();
                let size = part.reading.reading_mm.0;
                let lies = if part.reading.verdict == Verdict::TooClose {
                    "too close to call against"
                } else {
                    "outside"
                };
                let (one, other) = (Self::size(size, first), Self::size(size, second));
                let class = part.feature.class;
                wrapped(
                    out,
                    "",
                    &format!("{name} reads {one}   {other}, {lies} {class} but right for its mate"),
                );
            } else {
                self.verdict(out, part);
            }
            self.measured(out, part);
        }
        Self::cautions(out, &answer.cautions);
        let zone = |part: &ReadingAnswer| {
            (zone_name(&part.feature), part.feature.limits, Some(part.reading.at_20()))
        };
        Self::zones(out, answer.nominal_mm.0, &[zone(&answer.hole), zone(&answer.shaft)]);
    }
}
