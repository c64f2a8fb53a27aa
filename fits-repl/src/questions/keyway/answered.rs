//! The key and keyways of a shaft, answered.

use fits_core::{
    Length, Limits,
    source::{Known, Reason},
    standards::bought::{KeyFit, KeyStandard, Keyway},
};
use schemars::JsonSchema;
use serde::Serialize;

use crate::{
    answer::{Answer, Mm},
    problem::Problem,
    query::Units,
    questions::{
        keyway::asked::{CutOf, KeywayFor},
        part::resolve::from_core,
    },
    session::Session,
};

fn keyway_figures(found: Keyway, fit: KeyFit) -> Result<KeywayFigures, fits_core::Error> {
    let [shaft, hub] = found.widths_for(fit)?;
    let key = found.key_for(fit)?;
    let (shaft_depth, hub_depth) = (found.shaft_depth()?, found.hub_depth()?);
    let (across_shaft, across_hub) = (found.across_shaft()?, found.across_hub()?);
    Ok(KeywayFigures {
        width_mm: Mm(found.width()),
        key_min_mm: Mm(key.limits.lower()),
        key_max_mm: Mm(key.limits.upper()),
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
        known: found.known().worst(shaft.known).worst(hub.known).worst(key.known),
        note: found.note(),
    })
}

impl Session {
    /// The key and keyways of a shaft: DIN 6885 in millimetres, ANSI B17.1 in
    /// inches.
    pub(crate) fn keyway(&self, asked: &KeywayFor) -> Result<Answer, Problem> {
        let (size, fit) = (&asked.size, asked.fit.unwrap_or_default());
        let shaft = self.nominal(size)?;
        let (standard, other) = match self.shown {
            Units::Millimetres => (KeyStandard::Din6885, None),
            Units::Inches => (KeyStandard::AnsiB171, Some(KeyStandard::AnsiB171Rectangular)),
        };
        let failed = |error: fits_core::Error| from_core(&error, size.at.clone());
        let found = Keyway::for_shaft(standard, shaft).map_err(failed)?;
        // The smallest shafts have no rectangular key.
        let rectangular = other.and_then(|other| Keyway::for_shaft(other, shaft).ok());
        let cut = match &asked.cut {
            Some((of, measured)) => {
                let reading = self.nominal(measured)?;
                Some(
                    cut_wrong(found, fit, *of, asked.of_hub, reading)
                        .map_err(|error| from_core(&error, measured.at.clone()))?,
                )
            }
            None => None,
        };
        Ok(Answer::Keyway(Box::new(KeywayAnswer {
            shaft_mm: Mm(shaft),
            standard: standard.name(),
            depth_from: if standard.is_from_side() { "side" } else { "top" },
            fit: fit.name(),
            key: keyway_figures(found, fit).map_err(failed)?,
            rectangular: rectangular
                .map(|it| keyway_figures(it, fit))
                .transpose()
                .map_err(failed)?,
            cut,
            reasons: found.reasons_for(fit).map_err(failed)?,
        })))
    }
}

/// The key and keyways of a shaft.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct KeywayAnswer {
    /// The shaft's diameter.
    pub shaft_mm: Mm,
    /// The standard.
    pub standard: &'static str,
    /// From where depths are given: the `side` of the keyway, or the `top` of
    /// the shaft or bore.
    pub depth_from: &'static str,
    /// How the key sits: `sliding`, `usual` or `tight`.
    pub fit: &'static str,
    /// The key, square in inches.
    #[serde(flatten)]
    pub key: KeywayFigures,
    /// The rectangular key of an inch shaft, where the standard gives one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rectangular: Option<KeywayFigures>,
    /// What was measured, and the ways out.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cut: Option<KeywayCut>,
    /// Why.
    #[serde(skip)]
    pub reasons: Vec<Reason>,
}

/// A keyway as it was measured.
#[derive(Clone, Debug, Serialize, schemars::JsonSchema)]
#[non_exhaustive]
pub struct KeywayCut {
    /// `shaft` or `hub`.
    pub part: &'static str,
    /// `width`, `depth` or `across`.
    pub of: &'static str,
    /// The reading.
    pub reading_mm: Mm,
    /// `good`, `cut more` or `over`.
    pub verdict: &'static str,
    /// How far beyond its limits it was cut, or how far it is yet from them.
    pub off_mm: Mm,
    /// The key to make: its width in this keyway where that was cut too wide, its
    /// height where it was cut too deep.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub make_min_mm: Option<Mm>,
    /// The most of it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub make_max_mm: Option<Mm>,
    /// The next key of the standard, where a keyway too wide can be opened to it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub next_width_mm: Option<Mm>,
}

/// A key and its keyways.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct KeywayFigures {
    /// The key's width.
    pub width_mm: Mm,
    /// The least width of the key that goes with this fit.
    pub key_min_mm: Mm,
    /// The greatest.
    pub key_max_mm: Mm,
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

/// What a keyway that was measured comes to.
fn cut_wrong(
    found: Keyway,
    fit: KeyFit,
    of: CutOf,
    of_hub: bool,
    reading: Length,
) -> Result<KeywayCut, fits_core::Error> {
    let [shaft, hub] = found.widths_for(fit)?;
    let (limits, name) = match (of, of_hub) {
        (CutOf::Width, false) => (shaft.limits, "width"),
        (CutOf::Width, true) => (hub.limits, "width"),
        (CutOf::Depth, false) => (found.shaft_depth()?, "depth"),
        (CutOf::Depth, true) => (found.hub_depth()?, "depth"),
        (CutOf::Across, false) => (found.across_shaft()?, "across"),
        (CutOf::Across, true) => (found.across_hub()?, "across"),
    };
    // Over the shaft less is left as more is cut.
    let shrinks = of == CutOf::Across && !of_hub;
    let above = reading.checked_sub(limits.upper())?;
    let below = limits.lower().checked_sub(reading)?;
    let (over, short) = if shrinks { (below, above) } else { (above, below) };
    let (verdict, off) = if over.is_positive() {
        ("over", over)
    } else if short.is_positive() {
        ("cut more", short)
    } else {
        ("good", Length::ZERO)
    };
    let make = match (verdict, of) {
        ("over", CutOf::Width) => {
            let key = found.key_for(fit)?.limits;
            // As tight in this keyway as the standard key would have been in its own.
            let more = reading.checked_sub(limits.upper())?;
            Some(Limits::new(key.lower().checked_add(more)?, key.upper().checked_add(more)?)?)
        }
        ("over", _) => {
            let high = found.height().checked_add(off)?;
            Some(Limits::new(high, high)?)
        }
        _ => None,
    };
    let next = found
        .next_width()
        .filter(|next| verdict == "over" && of == CutOf::Width && *next >= reading);
    Ok(KeywayCut {
        part: if of_hub { "hub" } else { "shaft" },
        of: name,
        reading_mm: Mm(reading),
        verdict,
        off_mm: Mm(off),
        make_min_mm: make.map(|make| Mm(make.lower())),
        make_max_mm: make.map(|make| Mm(make.upper())),
        next_width_mm: next.map(Mm),
    })
}
