//! What readings are taken with, of the crib or of the tables; and what the
//! crib's gauge pins say of a hole.

use fits_core::{
    Length,
    job::OwnInstrument,
    source::{Known, Reason},
    standards::{
        instruments::{Instrument, Uncertainty},
        iso286::Feature,
    },
};

use crate::{
    answer::{FeatureAnswer, PinFigures, PinsFigures},
    problem::Problem,
    query::Spot,
    questions::{
        part::resolve::{One, from_core},
        why::answered::said,
    },
    session::{Session, materials::nearest},
    words::near_miss,
};

/// An instrument, how far its readings of a feature are off, and why.
pub(crate) struct Gauge {
    pub(crate) name: String,
    pub(crate) off: Uncertainty,
    pub(crate) reasons: Vec<Reason>,
}

impl Session {
    fn own_instrument(&self, name: &str) -> Option<&OwnInstrument> {
        let mut own = self.shop.crib().instrument.iter();
        own.find(|own| own.name.eq_ignore_ascii_case(name))
    }

    /// An instrument of the tables; the nearest name of them or of the crib is
    /// offered.
    fn listed_instrument(&self, name: &Spot<String>) -> Result<Instrument, Problem> {
        Instrument::find(&name.value).map_err(|error| {
            let mut own = self.shop.crib().instrument.iter().map(|own| own.name.as_str());
            match own.find(|own| near_miss(&name.value.to_lowercase(), &own.to_lowercase())) {
                Some(own) => from_core(&error, name.at.clone())
                    .advise("nearest in the crib")
                    .fix(name.at.clone(), own),
                None => nearest(&error, name),
            }
        })
    }

    /// The name of an instrument of the crib or of the tables.
    pub(crate) fn instrument_named(&self, name: &Spot<String>) -> Result<String, Problem> {
        match self.own_instrument(&name.value) {
            Some(own) => Ok(own.name.clone()),
            None => self.listed_instrument(name).map(|found| found.name().to_owned()),
        }
    }

    /// An instrument by its name, for such a feature.
    pub(crate) fn gauge_called(
        &self,
        name: &str,
        kind: Feature,
        size: Length,
    ) -> Result<Gauge, fits_core::Error> {
        if let Some(own) = self.own_instrument(name) {
            let off = Uncertainty { repeat: own.repeat, bias: own.bias.unwrap_or(Length::ZERO) };
            let reason = Reason {
                figure: own.name.clone(),
                value: format!(
                    "repeat {}, bias {}",
                    said(self.shown, off.repeat),
                    said(self.shown, off.bias)
                )
                .into(),
                rule: "standard deviations".into(),
                source: self.crib_source(),
                known: Known::Given,
            };
            return Ok(Gauge { name: own.name.clone(), off, reasons: vec![reason] });
        }
        let found = Instrument::find(name)?;
        Ok(Gauge {
            name: found.name().to_owned(),
            off: found.uncertainty(kind, size)?,
            reasons: found.reasons(kind, size)?.into(),
        })
    }

    /// Is such a feature what this instrument is for? One's own measures anything.
    pub(crate) fn can_measure(&self, name: &Spot<String>, kind: Feature) -> Result<bool, Problem> {
        Ok(self.own_instrument(&name.value).is_some()
            || self.listed_instrument(name)?.measures(kind))
    }

    /// The one of the instruments named that measures such a feature; where
    /// none is named the setting's, if it does, which is then said.
    pub(crate) fn gauge(
        &self,
        named: &[Spot<String>],
        kind: Feature,
        size: Length,
        assumed: &mut Vec<String>,
    ) -> Result<Option<Gauge>, Problem> {
        let mut chosen: Option<(bool, &Spot<String>)> = None;
        for name in named {
            let measures = self.can_measure(name, kind)?;
            if chosen.is_none_or(|(before, _)| !before && measures) {
                chosen = Some((measures, name));
            }
        }
        if let Some((_, name)) = chosen {
            return self
                .gauge_called(&name.value, kind, size)
                .map(Some)
                .map_err(|error| from_core(&error, name.at.clone()));
        }
        // The setting may be for the other kind of feature, or too small.
        let usual = self.usual_gauge(kind);
        let found = usual.and_then(|name| self.gauge_called(name, kind, size).ok());
        assumed.extend(
            found.as_ref().map(|gauge| format!("no instrument named: {}, the setting", gauge.name)),
        );
        Ok(found)
    }

    /// Is there a setting that measures such a feature?
    pub(crate) fn has_usual_gauge(&self, one: &One) -> bool {
        one.kind.is_some_and(|kind| {
            let usual = self.usual_gauge(kind);
            usual.is_some_and(|name| self.gauge_called(name, kind, one.nominal).is_ok())
        })
    }

    /// The setting's instrument for such features.
    fn usual_gauge(&self, kind: Feature) -> Option<&str> {
        let [bores, shafts] = &self.kept.instrument;
        match kind {
            Feature::Hole => bores.as_deref(),
            Feature::Shaft => shafts.as_deref(),
        }
    }

    /// An instrument of the tables by its full name; nothing for one of the crib.
    pub(crate) fn listed_kinds(&self, name: &str) -> Option<Instrument> {
        if self.own_instrument(name).is_some() { None } else { Instrument::find(name).ok() }
    }

    /// Where the crib's figures stand.
    pub(crate) fn crib_source(&self) -> String {
        match self.shop.crib.path() {
            Some(file) => format!("the crib, {file}"),
            None => "the crib, kept in memory only".to_owned(),
        }
    }

    /// A feature, and the gauge pins of the crib that serve where it is a hole.
    pub(crate) fn featured(&self, one: &One) -> FeatureAnswer {
        let mut answer = one.answer();
        let crib = self.shop.crib();
        if !crib.pin.is_empty() && one.kind == Some(Feature::Hole) && !one.have {
            let pins = crib.pins_for(one.limits);
            let figure = |pin: fits_core::job::GaugePin, limit: Length| PinFigures {
                mm: pin.size.into(),
                off_mm: pin.size.checked_sub(limit).unwrap_or(Length::ZERO).into(),
            };
            let go = pins.goes.map(|pin| figure(pin, one.limits.lower()));
            let no_go = pins.stays_out.map(|pin| figure(pin, one.limits.upper()));
            answer.pins = (go.is_some() || no_go.is_some())
                .then(|| Box::new(PinsFigures { goes_in: go, stays_out: no_go }));
        }
        answer
    }
}
