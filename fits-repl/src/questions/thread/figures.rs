//! Answers about screw threads.

use super::pass_figures::FeedFigures;
use fits_core::{
    shop::Verdict,
    source::{Known, Reason},
};
use schemars::JsonSchema;
use serde::Serialize;

use crate::answer::Mm;

/// What names a thread.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct ThreadName {
    /// In the standard's style, with its classes.
    pub designation: String,
    /// The form and its standard.
    pub form: &'static str,
    /// The list it stands in, or that it stands in none.
    pub series: String,
    /// What the answer took for granted: a series, a class.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub assumed: Vec<String>,
    /// The basic major diameter.
    pub nominal_mm: Mm,
    /// From one thread to the next, to 0.1 nm.
    pub pitch_mm: Mm,
    /// Turns per inch, of a thread named so.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tpi: Option<f64>,
    /// How many starts.
    pub starts: u8,
    /// How far one turn goes.
    pub lead_mm: Mm,
    /// `right` or `left`.
    pub hand: &'static str,
    /// At the pitch diameter.
    pub lead_angle_deg: f64,
    /// How the answer is known: the worst of what went into it.
    pub known: Known,
}

impl ThreadName {
    /// Notes how the figures of an answer are known.
    pub(crate) fn known_by(&mut self, reasons: &[Reason]) {
        self.known = reasons.iter().fold(Known::Given, |worst, reason| worst.worst(reason.known));
    }
}

/// A thread: its limits and what to make it from.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct ThreadAnswer {
    /// Which it is.
    #[serde(flatten)]
    pub name: ThreadName,
    /// The screw, unless only the nut was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub external: Option<SideFigures>,
    /// The nut, unless only the screw was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub internal: Option<SideFigures>,
    /// Between the two, where both were asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub play: Option<PlayFigures>,
    /// What to turn the screw's blank to.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub blank: Option<BlankFigures>,
    /// The usual tap drill.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tap: Option<TapFigures>,
    /// What to bore the nut's hole to, where no drill is named.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bore: Option<BoreFigures>,
    /// What a taper thread has besides its diameters.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub taper: Option<TaperFigures>,
    /// The depth of the cut, radially, of the screw and of the nut.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub external_depth_mm: Option<Mm>,
    /// Of the nut.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub internal_depth_mm: Option<Mm>,
    /// The area that carries tension.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stress_area_mm2: Option<f64>,
    /// What else to know.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub notes: Vec<String>,
    /// What to be careful of.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub cautions: Vec<&'static str>,
    /// Where it is written.
    pub source: String,
    /// Every figure's reason, for `why`.
    #[serde(skip)]
    pub reasons: Vec<Reason>,
}

/// The limits of a screw or a nut; what the standard does not give is absent.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct SideFigures {
    /// The class.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub class: String,
    /// Greatest major diameter.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub major_max_mm: Option<Mm>,
    /// Least major diameter.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub major_min_mm: Option<Mm>,
    /// Greatest pitch diameter.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pitch_max_mm: Option<Mm>,
    /// Least pitch diameter.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pitch_min_mm: Option<Mm>,
    /// Greatest minor diameter.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub minor_max_mm: Option<Mm>,
    /// Least minor diameter.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub minor_min_mm: Option<Mm>,
}

/// The taper of a pipe thread.
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct TaperFigures {
    /// Of the diameter to the length.
    pub per_length: &'static str,
    /// From the small end of the screw to the gauge plane.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub gauge_length_mm: Option<Mm>,
    /// Useful thread of the screw.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub useful_length_mm: Option<Mm>,
    /// How far the plane may lie either way; of a thread that has both sides,
    /// the screw's.
    pub plane_tolerance_mm: Mm,
}

/// Room between screw and nut; below 0 they can meet.
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct PlayFigures {
    /// Least, at the pitch diameter.
    pub pitch_min_mm: Option<Mm>,
    /// Greatest, at the pitch diameter.
    pub pitch_max_mm: Option<Mm>,
    /// Least, at the major diameter.
    pub major_min_mm: Option<Mm>,
    /// Least, at the minor diameter.
    pub minor_min_mm: Option<Mm>,
}

/// What to turn a blank to.
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct BlankFigures {
    /// Greatest.
    pub max_mm: Mm,
    /// Least.
    pub min_mm: Mm,
    /// What to aim for.
    pub aim_mm: Mm,
}

/// One drill for a tap.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct TapFigures {
    /// The drill.
    pub drill: DrillName,
    /// The share of a full thread that it leaves.
    pub percent: f64,
    /// What it commonly cuts.
    pub cuts_mm: Mm,
    /// The share of a full thread then.
    pub cut_percent: f64,
    /// Is a hole as large as the drill inside the limits of the minor diameter?
    /// `null` where the class gives none.
    pub drill_within_limits: Option<bool>,
    /// Is the hole it commonly cuts inside them?
    pub within_limits: Option<bool>,
    /// Is it a drill of the crib? Absent where the crib has no drills.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub drill_in_crib: Option<bool>,
    /// The drill that would be chosen of all, where the crib has another.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub best_drill: Option<String>,
    /// The best drill of the crib, where it is not good enough.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub nearest_in_crib: Option<String>,
    /// Does a published table give this drill for the thread?
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub published: bool,
}

/// A hole that is bored or reamed before the tap.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct BoreFigures {
    /// What to aim for; the limits are those of the minor diameter.
    pub aim_mm: Mm,
    /// The share of a full thread that it leaves.
    pub percent: f64,
    /// The drill to go before.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub first_drill: Option<DrillName>,
}

/// A drill by its name and size.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct DrillName {
    /// Its name.
    pub name: String,
    /// Its diameter.
    pub mm: Mm,
}

/// Drills for a tap, or what a drill in hand gives.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct TapAnswer {
    /// Which thread.
    #[serde(flatten)]
    pub name: ThreadName,
    /// The class of the nut.
    pub class: String,
    /// The first choice, or the drill in hand; absent where the hole is bored.
    #[serde(flatten)]
    pub first: Option<TapFigures>,
    /// What to bore to, where it is a power thread or no drill keeps the
    /// limits.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub bore: Option<BoreFigures>,
    /// Was the drill named?
    #[serde(rename = "tap_in_hand")]
    pub in_hand: bool,
    /// Is the tap one that forms?
    pub forms: bool,
    /// The share of a full thread aimed at.
    pub wanted_percent: f64,
    /// The share advised, least and greatest, and for what.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub advised: Option<AdvisedFigures>,
    /// Least minor diameter of the class.
    pub minor_min_mm: Option<Mm>,
    /// Greatest minor diameter of the class.
    pub minor_max_mm: Option<Mm>,
    /// The share of a full thread that those limits keep.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub limits_keep: Option<KeptFigures>,
    /// Other drills: those that keep the limits first where no percent was
    /// asked for, then by how near they are to what is wanted.
    pub alternatives: Vec<TapFigures>,
    /// Hole and drill for a tap that forms.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub form_tap: Option<FormTapFigures>,
    /// Length of thread to engage in that material.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub engage_mm: Option<Mm>,
    /// How deep to drill a blind hole for that.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub blind_drill_mm: Option<Mm>,
    /// Is there such a tap in the crib? Absent where the crib has no taps.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tap_in_crib: Option<bool>,
    /// What else to know.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub notes: Vec<String>,
    /// What to be careful of.
    pub cautions: Vec<&'static str>,
    /// Every figure's reason, for `why`.
    #[serde(skip)]
    pub reasons: Vec<Reason>,
}

/// The share of a full thread that limits keep.
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct KeptFigures {
    /// Least.
    pub min_percent: f64,
    /// Greatest.
    pub max_percent: f64,
}

/// The share of a full thread advised.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct AdvisedFigures {
    /// Least.
    pub min_percent: f64,
    /// Greatest.
    pub max_percent: f64,
    /// For what material and driven how.
    pub of: String,
    /// How it is known.
    pub known: Known,
}

/// The hole for a tap that forms.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct FormTapFigures {
    /// The size of the hole.
    pub hole_mm: Mm,
    /// The nearest drill.
    pub drill: DrillName,
    /// The share of a full thread that it forms.
    pub percent: f64,
}

/// Holes that a screw passes.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct ClearanceHoleAnswer {
    /// Which thread.
    #[serde(flatten)]
    pub name: ThreadName,
    /// The series that was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub asked: Option<&'static str>,
    /// The series, the closest first; the one that was asked for before them.
    pub holes: Vec<ClearanceHoleFigures>,
    /// Where it is written.
    pub source: &'static str,
    /// Every figure's reason, for `why`.
    #[serde(skip)]
    pub reasons: Vec<Reason>,
}

/// One of them.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct ClearanceHoleFigures {
    /// `fine`, `medium`, `coarse`; `close`, `normal`, `loose`.
    pub series: &'static str,
    /// The drill's name, where one is listed.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[serde(rename = "drill_name")]
    pub drill: Option<String>,
    /// Least size of the hole.
    pub min_mm: Mm,
    /// Greatest.
    pub max_mm: Mm,
}

/// The size over three wires.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct WiresAnswer {
    /// Which thread.
    #[serde(flatten)]
    pub name: ThreadName,
    /// The class of the screw.
    pub class: String,
    /// The wire that touches at the pitch line.
    pub best_wire_mm: Mm,
    /// The wire that the sizes are for.
    pub wire_mm: Mm,
    /// The least wire that can be used.
    pub wire_min_mm: Mm,
    /// The greatest.
    pub wire_max_mm: Mm,
    /// Greatest good size over the wires.
    pub over_max_mm: Mm,
    /// Least good size over the wires.
    pub over_min_mm: Mm,
    /// Limits of the pitch diameter.
    pub pitch_max_mm: Mm,
    /// Least.
    pub pitch_min_mm: Mm,
    /// `plain`: by the usual formula; `exact`: the wire on the helix.
    pub method: &'static str,
    /// At the pitch diameter.
    #[serde(skip)]
    pub lead_angle_deg: f64,
    /// At the middle of the limits, by the usual formula.
    pub plain_over_mm: Mm,
    /// The same, the wire's seat on the helix solved.
    pub exact_over_mm: Mm,
    /// What else to know.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub notes: Vec<String>,
    /// Every figure's reason, for `why`.
    #[serde(skip)]
    pub reasons: Vec<Reason>,
}

/// A reading over wires.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct OverWiresAnswer {
    /// The sizes that are good.
    #[serde(flatten)]
    pub wires: WiresAnswer,
    /// What was read.
    pub over_mm: Mm,
    /// The pitch diameter that it means.
    pub pitch_diameter_mm: Mm,
    /// Cut more, good or over.
    pub verdict: Verdict,
    /// What the pitch diameter has to lose to the middle of its limits.
    pub to_go_mm: Mm,
    /// How far to feed for that; `null` where there is nothing to cut.
    pub feed: Option<FeedFigures>,
}
