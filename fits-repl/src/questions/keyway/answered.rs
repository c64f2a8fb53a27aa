//! The key and keyways of a shaft, answered.

use fits_core::{
    source::{Known, Reason},
    standards::bought::{KeyStandard, Keyway},
};
use schemars::JsonSchema;
use serde::Serialize;

use crate::{
    answer::{Answer, Mm},
    problem::Problem,
    query::{Size, Units},
    questions::part::resolve::from_core,
    session::Session,
};

pub(crate) fn keyway_figures(found: Keyway) -> Result<KeywayFigures, fits_core::Error> {
    let [shaft, hub] = found.widths()?;
    let (shaft_depth, hub_depth) = (found.shaft_depth()?, found.hub_depth()?);
    let (across_shaft, across_hub) = (found.across_shaft()?, found.across_hub()?);
    Ok(KeywayFigures {
        width_mm: Mm(found.width()),
        height_mm: Mm(found.height()),
        shaft_width_min_mm: Mm(shaft.limits.lower()),
        shaft_width_max_mm: Mm(shaft.limits.upper()),
        hub_width_min_mm: Mm(hub.limits.lower()),
        hub_width_max_mm: Mm(hub.limits.upper()),
        shaft_depth_min_mm: Mm(shaft_depth.lower()),
        shaft_depth_max_mm: Mm(shaft_depth.upper()),
        hub_depth_min_mm: Mm(hub_depth.lower()),
        hub_depth_max_mm: Mm(hub_depth.upper()),
        across_shaft_min_mm: Mm(across_shaft.lower()),
        across_shaft_max_mm: Mm(across_shaft.upper()),
        across_hub_min_mm: Mm(across_hub.lower()),
        across_hub_max_mm: Mm(across_hub.upper()),
        source: found.source(),
        known: found.known().worst(shaft.known).worst(hub.known),
        note: found.note(),
    })
}

impl Session {
    /// The key and keyways of a shaft: DIN 6885 in millimetres, ANSI B17.1 in
    /// inches.
    pub(crate) fn keyway(&self, size: &Size) -> Result<Answer, Problem> {
        let shaft = self.nominal(size)?;
        let (standard, other) = match self.shown {
            Units::Millimetres => (KeyStandard::Din6885, None),
            Units::Inches => (KeyStandard::AnsiB171, Some(KeyStandard::AnsiB171Rectangular)),
        };
        let failed = |error: fits_core::Error| from_core(&error, size.at.clone());
        let found = Keyway::for_shaft(standard, shaft).map_err(failed)?;
        // The smallest shafts have no rectangular key.
        let rectangular = other.and_then(|other| Keyway::for_shaft(other, shaft).ok());
        Ok(Answer::Keyway(Box::new(KeywayAnswer {
            shaft_mm: Mm(shaft),
            standard: standard.name(),
            depth_from: if standard.is_from_side() { "side" } else { "top" },
            key: keyway_figures(found).map_err(failed)?,
            rectangular: rectangular.map(keyway_figures).transpose().map_err(failed)?,
            reasons: found.reasons().map_err(failed)?,
        })))
    }
}

/// The key and keyways of a shaft.
#[derive(Clone, Debug, JsonSchema, Serialize)]
pub struct KeywayAnswer {
    /// The shaft's diameter.
    pub shaft_mm: Mm,
    /// The standard.
    pub standard: &'static str,
    /// From where depths are given: the `side` of the keyway, or the `top` of
    /// the shaft or bore.
    pub depth_from: &'static str,
    /// The key, square in inches.
    #[serde(flatten)]
    pub key: KeywayFigures,
    /// The rectangular key of an inch shaft, where the standard gives one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rectangular: Option<KeywayFigures>,
    /// Why.
    #[serde(skip)]
    pub reasons: Vec<Reason>,
}

/// A key and its keyways.
#[derive(Clone, Debug, JsonSchema, Serialize)]
pub struct KeywayFigures {
    /// The key's width.
    pub width_mm: Mm,
    /// The key's height.
    pub height_mm: Mm,
    /// Least width in the shaft.
    pub shaft_width_min_mm: Mm,
    /// Greatest.
    pub shaft_width_max_mm: Mm,
    /// Least width in the hub.
    pub hub_width_min_mm: Mm,
    /// Greatest.
    pub hub_width_max_mm: Mm,
    /// Least depth in the shaft.
    pub shaft_depth_min_mm: Mm,
    /// Greatest.
    pub shaft_depth_max_mm: Mm,
    /// Least depth in the hub.
    pub hub_depth_min_mm: Mm,
    /// Greatest.
    pub hub_depth_max_mm: Mm,
    /// Least size from the bottom of the shaft's keyway to its far side.
    pub across_shaft_min_mm: Mm,
    /// Greatest.
    pub across_shaft_max_mm: Mm,
    /// Least size from the bottom of the hub's keyway to the bore's far side.
    pub across_hub_min_mm: Mm,
    /// Greatest.
    pub across_hub_max_mm: Mm,
    /// Where that is written.
    pub source: &'static str,
    /// How it is known: the worst of the key's row and the widths'.
    pub known: Known,
    /// What else to know.
    #[serde(skip_serializing_if = "str::is_empty")]
    pub note: &'static str,
}
