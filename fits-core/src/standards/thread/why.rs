//! Why a thread's figures are what they are: rule, numbers put in, source.

use super::{
    Class, DiameterLimits, Form, Side, Sizes, Thread, why_metric, why_systems, why_unified,
};
use crate::{
    error::Error,
    size::{Decimals, Length, Unit, inches},
    source::{Known, Reason},
};

impl Thread {
    /// A length in the unit of the thread's standard.
    pub(super) fn written(&self, length: Length) -> String {
        if self.form.last_place().unit == Unit::Inch {
            format!("{} in", inches(length))
        } else {
            length.to_string()
        }
    }

    /// Why the thread is what it is: its series, basic diameters, lead and
    /// stress area.
    ///
    /// ```
    /// use fits_core::standards::thread::Thread;
    /// let reasons = "M10".parse::<Thread>()?.reasons();
    /// assert_eq!(reasons[1].figure, "basic pitch diameter");
    /// assert_eq!(reasons[1].rule, "10 mm - 0.649519 x 1.5 mm, to 0.001 mm");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn reasons(&self) -> Vec<Reason> {
        let mut reasons = vec![self.series_reason()];
        let place = match self.form.last_place() {
            Decimals { unit: Unit::Inch, places: 4 } => "0.0001 in",
            Decimals { unit: Unit::Inch, .. } => "0.00001 in",
            _ => "0.001 mm",
        };
        let listed = why_systems::basic(self);
        let (major, pitch) = (self.written(self.major), self.pitch.in_words());
        let basic = |figure: &str, value: Length, trillionths: i64| Reason {
            figure: figure.into(),
            value: self.written(value).into(),
            rule: match listed {
                Some(_) => "tabulated".into(),
                None => format!("{major} - {} x {pitch}, to {place}", factor(trillionths)).into(),
            },
            source: match listed {
                Some(from) => from.text.into(),
                None => format!("{}, basic profile", self.form.source()),
            },
            known: listed.map_or(Known::Formula, |from| from.known),
        };
        let (line, root) = (self.form.to_pitch_line(), self.form.to_minor());
        reasons.push(basic("basic pitch diameter", self.basic_pitch_diameter(), line));
        reasons.push(basic("basic minor diameter", self.basic_minor_diameter(), root));
        reasons.push(Reason {
            figure: "lead angle".into(),
            value: format!("{:.2} degrees", self.lead_angle_degrees()).into(),
            rule: format!("arctan(lead {} / (pi x basic pitch diameter))", self.lead().in_words())
                .into(),
            source: "geometry".into(),
            known: Known::Formula,
        });
        if let Some(area) = self.stress_area_mm2() {
            let (value, rule, source) = if self.form.is_inch() {
                let area = area / (25.4 * 25.4);
                (format!("{area:.4} in²"), "pi/4 (D - 0.9743 P)²", "ASME B1.1, tensile stress area")
            } else {
                (format!("{area:.1} mm²"), "pi/4 (d - 0.9382 P)²", "ISO 898-1, nominal stress area")
            };
            reasons.push(Reason {
                figure: "stress area".into(),
                value: value.into(),
                rule: rule.into(),
                source: source.into(),
                known: Known::Formula,
            });
        }
        reasons
    }

    /// Why the limits of one side are what they are: class, deviation,
    /// tolerances, and how each diameter follows from them.
    ///
    /// ```
    /// use fits_core::standards::thread::{Side, Thread};
    /// let why = "M10x1.25".parse::<Thread>()?.why(Side::External, None, None)?;
    /// let pitch = why.iter().find(|reason| reason.figure == "pitch diameter tolerance");
    /// let pitch = pitch.expect("explained");
    /// assert!(pitch.value == "0.118 mm" && pitch.rule == "Td2, grade 6");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    ///
    /// # Errors
    /// As [`Thread::sizes`].
    pub fn why(
        &self,
        side: Side,
        class: Option<Class>,
        engaged: Option<Length>,
    ) -> Result<Vec<Reason>, Error> {
        let sizes = self.sizes(side, class, engaged)?;
        let mut reasons = Vec::new();
        if class.is_none() && sizes.class != Class::Sole {
            reasons.push(Reason {
                figure: format!("class {}", sizes.class),
                value: format!(
                    "of {} thread",
                    match side {
                        Side::External => "an external",
                        Side::Internal => "an internal",
                    }
                )
                .into(),
                rule: "none was given: the usual class".into(),
                source: match self.form {
                    Form::Metric => "ISO 965-1, recommended classes, medium quality".into(),
                    Form::Trapezoidal => "ISO 2903, recommended classes, medium quality".into(),
                    form => format!("{}, classes for general use", form.source()),
                },
                known: if self.form == Form::PipeParallel { Known::Practice } else { Known::Seen },
            });
        }
        match self.form {
            Form::Metric => why_metric::reasons(self, &sizes, &mut reasons),
            Form::Unified | Form::UnifiedRounded => {
                why_unified::reasons(self, &sizes, engaged, &mut reasons);
            }
            _ => why_systems::reasons(self, &sizes, engaged, &mut reasons),
        }
        if matches!(self.form, Form::Metric | Form::Unified | Form::UnifiedRounded) {
            self.limits_reasons(&sizes, &mut reasons);
        }
        if let Some(outside) = sizes.outside {
            reasons.push(Reason {
                figure: "outside the tables".into(),
                value: self.to_string().into(),
                rule: outside.into(),
                source: self.form.source().into(),
                known: Known::Formula,
            });
        }
        Ok(reasons)
    }

    /// Each limit of size from the basic size.
    fn limits_reasons(&self, sizes: &Sizes, reasons: &mut Vec<Reason>) {
        let (crest, deviation) = match sizes.side {
            Side::External => ("major", "less the deviation"),
            Side::Internal => ("minor", "plus the deviation"),
        };
        for (name, spread, basic) in [
            ("major", sizes.major, self.major),
            ("pitch", sizes.pitch, self.basic_pitch_diameter()),
            ("minor", sizes.minor, self.basic_minor_diameter()),
        ] {
            let tolerance = if name == "pitch" {
                "; its width is the tolerance"
            } else if name == crest {
                "; its width is the crest tolerance"
            } else {
                ""
            };
            let root = if sizes.side == Side::External && name == "minor" {
                match self.form {
                    Form::Metric => {
                        "; the least is of a root of radius 0.125 P: least pitch diameter - 0.616025 P"
                    }
                    _ => {
                        "; the greatest here is of the rounded root, as the tables print it: greatest major diameter - 1.190785 P"
                    }
                }
            } else {
                ""
            };
            reasons.push(Reason {
                figure: format!("{name} diameter"),
                value: self.spread(spread).into(),
                rule: format!(
                    "basic {} {deviation} of {}{tolerance}{root}",
                    self.written(basic),
                    self.written(sizes.deviation.checked_abs().unwrap_or_default()),
                )
                .into(),
                source: self.form.source().into(),
                known: Known::Formula,
            });
        }
    }

    pub(super) fn spread(&self, spread: DiameterLimits) -> String {
        match (spread.min, spread.max) {
            (Some(min), Some(max)) => format!("{} to {}", self.written(min), self.written(max)),
            (Some(min), None) => format!("{} or more", self.written(min)),
            (None, Some(max)) => format!("{} or less", self.written(max)),
            (None, None) => "not given".into(),
        }
    }

    fn series_reason(&self) -> Reason {
        let (rule, from) = match self.form {
            Form::Metric => why_metric::series(self),
            Form::Unified | Form::UnifiedRounded => why_unified::series(self),
            _ => why_systems::series(self),
        };
        let rule = if self.is_pitch_assumed {
            format!("no pitch was given: the coarse one; {rule}")
        } else {
            rule
        };
        let (source, known) = from.map_or_else(
            || (self.form.source().to_owned(), Known::Formula),
            |from| (from.text.to_owned(), from.known),
        );
        Reason {
            figure: "thread".into(),
            value: self.to_string().into(),
            rule: rule.into(),
            source,
            known,
        }
    }
}

/// A factor of the pitch to six places.
#[allow(clippy::cast_precision_loss, reason = "for the eye")]
fn factor(trillionths: i64) -> String {
    format!("{:.6}", trillionths as f64 / 1e12)
}
