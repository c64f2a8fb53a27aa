//! Why the deviations of a class are what they are.

use super::super::{Class, Feature, Letter, tables};
use super::{Place, cell, um};
use crate::{
    error::Error,
    size::Length,
    source::{Known, Provenance, Reason},
};

pub(super) fn reason(
    figure: String,
    value: Length,
    rule: String,
    table: &str,
    from: Provenance,
) -> Reason {
    let micrometres = value.millimetres() * 1000.0;
    Reason {
        figure,
        value: format!("{micrometres} um").into(),
        rule: rule.into(),
        source: if from.text.is_empty() {
            table.to_owned()
        } else {
            format!("{table}; {}", from.text)
        },
        known: from.known,
    }
}

impl Class {
    /// Why the deviations are what they are: one reason for the standard
    /// tolerance, one for the fundamental deviation, one for the delta where
    /// it takes part.
    ///
    /// # Errors
    /// As [`Class::deviations`].
    ///
    /// ```
    /// use fits_core::standards::iso286::Class;
    /// let reasons = "g6".parse::<Class>()?.reasons("20mm".parse()?)?;
    /// let figures: Vec<_> = reasons.iter().map(|reason| reason.figure.as_str()).collect();
    /// assert_eq!(figures, ["IT6", "es of g6"]);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn reasons(self, nominal: Length) -> Result<Vec<Reason>, Error> {
        let deviations = self.deviations(nominal)?;
        let place = Place::of(nominal)?;
        let mut reasons = vec![self.grade.reason(nominal)?];
        let (end, value) = match (self.feature, self.letter <= Letter::H) {
            (Feature::Shaft, true) => ("es", deviations.upper()),
            (Feature::Shaft, false) => ("ei", deviations.lower()),
            (Feature::Hole, true) => ("EI", deviations.lower()),
            (Feature::Hole, false) => ("ES", deviations.upper()),
        };
        let figure = format!("{end} of {self}");
        let by_rule = Provenance { known: Known::Formula, text: "" };
        if self.letter == Letter::JS {
            reasons.push(reason(
                figure,
                value,
                format!("half of IT{}, either way", self.grade),
                "ISO 286-1:2010, Tables 2 and 4",
                by_rule,
            ));
            return Ok(reasons);
        }
        match self.feature {
            Feature::Shaft => {
                let cell = self.shaft_cell(place)?;
                reasons.push(reason(
                    figure,
                    value,
                    String::new(),
                    "ISO 286-1:2010, Tables 4 and 5",
                    tables::SOURCES[usize::from(cell.source)],
                ));
            }
            Feature::Hole => {
                if let Some(cell) = self.hole_exception(place) {
                    reasons.push(reason(
                        figure,
                        value,
                        "tabulated, no rule gives it".into(),
                        "ISO 286-1:2010, Tables 2 and 3",
                        tables::SOURCES[usize::from(cell.source)],
                    ));
                    return Ok(reasons);
                }
                let mirrored = cell(&tables::SHAFTS, self.letter.index(), place.step);
                let shaft = self.letter.name(Feature::Shaft);
                let opposite = if self.letter <= Letter::H { "es" } else { "ei" };
                let delta = if self.takes_delta(place) { self.delta(place) } else { None };
                let rule = match delta {
                    Some(_) => format!("-{opposite} of {shaft} + delta"),
                    None => format!("-{opposite} of {shaft}"),
                };
                reasons.push(reason(
                    figure,
                    value,
                    rule,
                    "ISO 286-1:2010, Tables 2 and 3",
                    by_rule,
                ));
                reasons.push(reason(
                    format!("{opposite} of {shaft}"),
                    um(mirrored.value),
                    String::new(),
                    "ISO 286-1:2010, Tables 4 and 5",
                    tables::SOURCES[usize::from(mirrored.source)],
                ));
                if let Some((delta, source)) = delta {
                    reasons.push(reason(
                        format!("delta of IT{}", self.grade),
                        delta,
                        String::new(),
                        "ISO 286-1:2010, Tables 2 and 3",
                        tables::SOURCES[usize::from(source)],
                    ));
                }
            }
        }
        Ok(reasons)
    }
}
