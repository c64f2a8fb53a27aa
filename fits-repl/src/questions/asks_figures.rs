//! Answers about no pair: general and standard tolerances, keyways, picked
//! classes, drills, seats, settings, reasons and help.

use fits_core::{
    source::{Known, Reason},
    standards::iso286::Feature,
};
use serde::{Serialize, Serializer};

use crate::{
    answer::{Mm, OwnDrillFigures},
    query::{Dial, Units},
};

/// The general tolerance of a size, an edge or an angle (ISO 2768-1).
#[derive(Clone, Debug, Serialize)]
pub struct GeneralAnswer {
    /// `linear`, `edge` or `angle`.
    pub kind: &'static str,
    /// The size; of an angle, its shorter side.
    pub nominal_mm: Mm,
    /// `f`, `m`, `c` or `v`.
    pub class: &'static str,
    /// The class in a word.
    pub word: &'static str,
    /// The deviation either way, of a size or an edge.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub plus_minus_mm: Option<Mm>,
    /// The deviation either way, of an angle, in minutes of arc.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub plus_minus_arcmin: Option<u16>,
    /// Least good size.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lower_mm: Option<Mm>,
    /// Greatest good size.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub upper_mm: Option<Mm>,
    /// Where that is written.
    pub source: String,
    /// How it is known.
    pub known: Known,
}

/// A standard tolerance: an IT grade, or a grade of ASME B4.1 for a size in
/// inches.
#[derive(Clone, Debug, Serialize)]
pub struct GradeAnswer {
    /// The nominal size.
    pub nominal_mm: Mm,
    /// The grade: `IT7`, or `7` of ASME B4.1.
    pub grade: String,
    /// The tolerance.
    pub tolerance_mm: Mm,
    /// The standard and its table.
    pub source: String,
    /// How it is known.
    pub known: Known,
}

/// The key and keyways of a shaft.
#[derive(Clone, Debug, Serialize)]
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
#[derive(Clone, Debug, Serialize)]
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

/// Standard classes that give a wanted clearance, the easiest to make first.
#[derive(Clone, Debug, Serialize)]
pub struct PickAnswer {
    /// The nominal size.
    pub nominal_mm: Mm,
    /// The least clearance wanted; interference is below nought.
    pub wanted_min_mm: Mm,
    /// The greatest.
    pub wanted_max_mm: Mm,
    /// How many classes lie inside; none where only near misses are named.
    pub found: usize,
    /// The first of them, or the near misses.
    pub candidates: Vec<CandidateFigures>,
    /// How they are known: the worst of those named.
    pub known: Known,
}

/// One of them.
#[derive(Clone, Debug, Serialize)]
pub struct CandidateFigures {
    /// The class or classes.
    pub class: String,
    /// Least clearance.
    pub min_mm: Mm,
    /// Greatest clearance.
    pub max_mm: Mm,
    /// A preferred fit of ANSI B4.2, or a class of ASME B4.1.
    pub preferred: bool,
    /// How far it reaches outside what is wanted; nought inside.
    pub outside_mm: Mm,
    /// How its limits are known.
    pub known: Known,
}

/// The nearest standard drills to a size, one of each series.
#[derive(Clone, Debug, Serialize)]
pub struct DrillAnswer {
    /// The size asked about.
    pub size_mm: Mm,
    /// The drills of that very size.
    pub exact: Vec<NamedDrill>,
    /// The nearest under it in each series, the nearest of all first.
    pub under: Vec<NamedDrill>,
    /// The nearest over it.
    pub over: Vec<NamedDrill>,
    /// The nearest under and over it in the crib, where there is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub crib: Option<Vec<OwnDrillFigures>>,
}

/// A drill and how far its size is off.
#[derive(Clone, Copy, Debug, Serialize)]
pub struct NamedDrill {
    /// Its name.
    pub name: &'static str,
    /// Its diameter.
    pub mm: Mm,
    /// Its diameter less the size asked about.
    pub off_mm: Mm,
    /// The list its size comes from.
    pub source: &'static str,
    /// How it is known.
    pub known: Known,
}

/// The usual classes for a rolling bearing's seat.
#[derive(Clone, Debug, Serialize)]
pub struct SeatAnswer {
    /// Shaft, or hole for a housing.
    pub kind: Feature,
    /// The seat's nominal size.
    pub nominal_mm: Mm,
    /// How the bearing is loaded, in the table's words.
    pub load: &'static str,
    /// The usual classes, ball bearings first.
    pub seats: Vec<SeatFigures>,
}

/// One usual class.
#[derive(Clone, Debug, Serialize)]
pub struct SeatFigures {
    /// The bearings it is for.
    pub bearing: &'static str,
    /// The class.
    pub class: String,
    /// Least good size.
    pub lower_mm: Mm,
    /// Greatest good size.
    pub upper_mm: Mm,
    /// The class for quiet or accurate running, where one is given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub finer: Option<String>,
    /// The case it is for.
    pub reason: &'static str,
    /// Where it is written.
    pub source: &'static str,
    /// How it is known.
    pub known: Known,
}

/// The settings in force.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct SettingsAnswer {
    /// What bare numbers are.
    pub units: Units,
    /// How the dials read.
    pub dial: Dial,
}

/// Where the figures of an answer come from.
#[derive(Clone, Debug, Serialize)]
pub struct WhyAnswer {
    /// The query they belong to.
    pub of: String,
    /// One entry a figure.
    pub figures: Vec<Reason>,
}

/// Help on a topic.
#[derive(Clone, Copy, Debug, Serialize)]
pub struct HelpAnswer {
    /// The topic.
    pub topic: &'static str,
    /// The text, line by line.
    pub lines: &'static [&'static str],
    /// Queries to try, each with what it gives.
    #[serde(serialize_with = "examples_as_objects")]
    pub examples: &'static [(&'static str, &'static str)],
}

fn examples_as_objects<S: Serializer>(
    examples: &&'static [(&'static str, &'static str)],
    serializer: S,
) -> Result<S::Ok, S::Error> {
    #[derive(Serialize)]
    struct Example {
        query: &'static str,
        gives: &'static str,
    }
    serializer.collect_seq(examples.iter().map(|&(query, gives)| Example { query, gives }))
}
