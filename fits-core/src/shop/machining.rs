//! What to expect of a small lathe before the first pass, and how materials
//! cut and cool.
//!
//! From `data/machining_priors.csv` and `data/machining_materials.csv`:
//! common practice and recalled figures throughout, so a finished log of
//! one's own machine is worth more ([`learn`](super::adviser::learn)).

use super::{adviser::Prior, machining_table};
use crate::{
    size::Length,
    source::{Known, Provenance, Reason},
    standards::{iso286::Feature, materials::Family},
};

/// A tool or a piece of work that hangs out so far.
#[derive(Debug)]
pub(super) struct Tool {
    pub(super) feature: Feature,
    pub(super) overhang_up_to: f64,
    pub(super) usual: bool,
    pub(super) gain: f64,
    pub(super) gain_sd: f64,
    pub(super) offset: Length,
    pub(super) offset_sd: Length,
    pub(super) from: Provenance,
}

/// How a family of materials cuts and cools.
#[derive(Debug)]
pub(super) struct Cuts {
    pub(super) family: Family,
    pub(super) scatter: Length,
    /// The least chip of a sharp edge, on the diameter.
    pub(super) least_chip: Length,
    /// The same of a rounded edge.
    pub(super) least_chip_rounded: Length,
    /// Density times specific heat, MJ/m³K.
    pub(super) heat: f64,
    pub(super) from: Provenance,
}

/// A material given by its figures, or not named, cuts like steel.
pub(super) fn cuts(family: Option<Family>) -> &'static Cuts {
    const STEEL: &Cuts = &Cuts {
        family: Family::Steel,
        scatter: Length::from_tenth_nanometres(25_000),
        least_chip: Length::from_tenth_nanometres(100_000),
        least_chip_rounded: Length::from_tenth_nanometres(500_000),
        heat: 3.8,
        from: Provenance { known: Known::Practice, text: "" },
    };
    let find = |wanted| machining_table::FAMILIES.iter().find(|row| row.family == wanted);
    family.and_then(find).or_else(|| find(Family::Steel)).unwrap_or(STEEL)
}

/// The cutting edge, for the least that it cuts rather than rubs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Edge {
    /// High-speed steel or ground carbide, stoned sharp.
    Sharp,
    /// A moulded carbide insert with a rounded edge.
    Rounded,
}

/// The least that such an edge cuts rather than rubs, on the diameter. Common
/// practice, no source.
///
/// ```
/// use fits_core::shop::machining::{Edge, least_chip};
/// assert!(least_chip(None, Edge::Rounded) > least_chip(None, Edge::Sharp));
/// ```
pub fn least_chip(family: Option<Family>, edge: Edge) -> Length {
    let row = cuts(family);
    match edge {
        Edge::Sharp => row.least_chip,
        Edge::Rounded => row.least_chip_rounded,
    }
}

impl Prior {
    /// What to expect of such work: boring for a hole, turning for a shaft.
    /// `overhang` is the tool's free length over its thickness in boring, the
    /// work's free length over its diameter in turning. Common practice, no
    /// source.
    ///
    /// ```
    /// use fits_core::{shop::adviser::Prior, standards::iso286::Feature};
    /// let near = Prior::usual(Feature::Hole, None, Some(3.0));
    /// let far = Prior::usual(Feature::Hole, None, Some(7.0));
    /// assert!(far.gain < near.gain && far.gain_sd > near.gain_sd);
    /// ```
    pub fn usual(feature: Feature, family: Option<Family>, overhang: Option<f64>) -> Self {
        let tool = tool(feature, overhang);
        let scatter = cuts(family).scatter;
        tool.map_or(
            Self {
                gain: 1.0,
                gain_sd: 0.05,
                offset: Length::ZERO,
                offset_sd: Length::ZERO,
                scatter,
            },
            |tool| Self {
                gain: tool.gain,
                gain_sd: tool.gain_sd,
                offset: tool.offset,
                offset_sd: tool.offset_sd,
                scatter,
            },
        )
    }

    /// Why the usual figures are what they are.
    ///
    /// ```
    /// use fits_core::{shop::adviser::Prior, source::Known, standards::iso286::Feature};
    /// let reasons = Prior::reasons(Feature::Hole, None, Some(5.0));
    /// assert!(reasons.iter().all(|reason| reason.known != Known::Seen));
    /// ```
    pub fn reasons(feature: Feature, family: Option<Family>, overhang: Option<f64>) -> Vec<Reason> {
        let mut reasons = Vec::new();
        if let Some(tool) = tool(feature, overhang) {
            reasons.push(Reason {
                figure: "cut factor".into(),
                value: format!("{} ± {}", tool.gain, tool.gain_sd).into(),
                rule: format!(
                    "change of diameter = cut factor × dialled + offset; overhang to {}",
                    tool.overhang_up_to
                )
                .into(),
                source: tool.from.text.into(),
                known: tool.from.known,
            });
            reasons.push(Reason {
                figure: "offset of a pass".into(),
                value: format!("{} ± {}", tool.offset, tool.offset_sd).into(),
                rule: "on the diameter, the same in each pass".into(),
                source: tool.from.text.into(),
                known: tool.from.known,
            });
        }
        let row = cuts(family);
        reasons.push(Reason {
            figure: "scatter of a pass".into(),
            value: row.scatter.to_string().into(),
            rule: format!("one standard deviation, {}", row.family.words()).into(),
            source: Known::Practice.words().into(),
            known: Known::Practice,
        });
        reasons
    }
}

/// The row for an overhang; the last one holds beyond its end.
fn tool(feature: Feature, overhang: Option<f64>) -> Option<&'static Tool> {
    let rows = || machining_table::TOOLS.iter().filter(|tool| tool.feature == feature);
    match overhang {
        None => rows().find(|tool| tool.usual),
        Some(ratio) => {
            rows().find(|tool| ratio <= tool.overhang_up_to).or_else(|| rows().next_back())
        }
    }
}
