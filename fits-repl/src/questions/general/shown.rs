//! General tolerances of untoleranced sizes, in words.

use std::fmt::Write as _;

use fits_core::Limits;

use crate::{answer::GeneralAnswer, render::text::Text};

impl Text {
    pub(crate) fn general(&self, out: &mut String, answer: &GeneralAnswer) {
        let [first, second] = self.units();
        let size = |unit| Self::size(answer.nominal_mm.0, unit);
        let class = format!("ISO 2768-{} ({})", answer.class, answer.word);
        if let Some(minutes) = answer.plus_minus_arcmin {
            let (degrees, rest) = (minutes / 60, minutes % 60);
            let _ = writeln!(
                out,
                "+/- {degrees} deg {rest:02} min   {class}, shorter side {}",
                size(first)
            );
            return;
        }
        if let Some(either) = answer.plus_minus_mm {
            let _ = writeln!(
                out,
                "+/- {}   {class}, {} of {}",
                self.difference(either.0),
                answer.kind,
                size(first)
            );
        }
        if let (Some(lower), Some(upper)) = (answer.lower_mm, answer.upper_mm)
            && let Ok(limits) = Limits::new(lower.0, upper.0)
        {
            let _ = writeln!(
                out,
                "  {:<28}{}",
                Self::range(limits, first),
                Self::range(limits, second)
            );
        }
        let _ = writeln!(out, "  for sizes that no other tolerance is given to");
    }
}
