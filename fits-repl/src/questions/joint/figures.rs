//! Answers about parts pressed or shrunk together. Pressures and stresses are
//! in megapascals, forces in newtons, torques in newton metres, temperatures
//! in degrees Celsius.

use fits_core::{
    shop::assemble::{Assembly, Heat, Joint, LeadIn},
    source::Known,
};
use schemars::JsonSchema;
use serde::Serialize;

use crate::answer::{FeatureAnswer, Mm};

/// The least and the most of a figure.
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct MinMax {
    /// Least.
    pub min: f64,
    /// Most.
    pub max: f64,
}

/// A joint as the core solved it.
#[derive(Clone, Debug)]
pub(crate) struct Solved {
    pub(crate) assembly: Assembly,
    pub(crate) heat: Option<Heat>,
    pub(crate) entry: LeadIn,
}

/// Parts pressed or shrunk together.
#[expect(clippy::struct_excessive_bools, reason = "each is a question of its own, as JSON has it")]
#[derive(Clone, Debug, JsonSchema, Serialize)]
pub struct AssemblyAnswer {
    /// What was solved, for `why`.
    #[serde(skip)]
    pub(crate) solved: Solved,
    /// Nominal size of the joint.
    pub nominal_mm: Mm,
    /// How the interference was given: classes, `measured` or `as given`.
    pub class: String,
    /// The hole, where it is still to be cut.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub hole: Option<Box<FeatureAnswer>>,
    /// The shaft, where it is.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shaft: Option<Box<FeatureAnswer>>,
    /// `press`, or `shrink`.
    pub joining: &'static str,
    /// How the joint is known: the worst of its interference and materials.
    pub known: Known,
    /// What of that comes from memory.
    #[serde(skip)]
    pub unconfirmed: Vec<String>,
    /// Least interference on the diameter; below 0 it is clearance.
    pub interference_min_mm: Mm,
    /// Most.
    pub interference_max_mm: Mm,
    /// Least that works, 0.8 of the summed roughness taken off.
    pub working_min_mm: Mm,
    /// Most that works, 0.4 of it taken off.
    pub working_max_mm: Mm,
    /// Contact pressure: least to hold by, most to load by.
    pub pressure_mpa: MinMax,
    /// The same with the other share of the roughness at each end.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub other_smoothing_pressure_mpa: Option<MinMax>,
    /// The pressures of the joints further out, where there are sleeves.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub outer_pressures_mpa: Vec<MinMax>,
    /// Friction to hold by and to press by.
    pub friction: MinMax,
    /// `dry`, `oil`, `degreased` or `as given`.
    pub lubricant: &'static str,
    /// What the press gives at the end of the stroke; `null` without a length.
    pub press_force_n: Option<f64>,
    /// The same with metal as soft as its least yield: an estimate, less than
    /// the press may have to give. Only where a part yields.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub soft_press_force_n: Option<f64>,
    /// What it holds along the axis at its loosest.
    pub axial_hold_n: Option<f64>,
    /// The torque it holds at its loosest; `null` without a length, and where
    /// nothing is to be counted on.
    pub torque_n_m: Option<f64>,
    /// What it must hold, where that was said, and whether it does.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub must_hold: Option<HeldFigures>,
    /// No finish was given: the hold counts a reamed bore and a fine-turned
    /// shaft, Rz 6.3 um each.
    pub finish_is_assumed: bool,
    /// The torque that a ground pair (Rz 1.6 um each) would hold, where no
    /// finish was given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub ground_torque_n_m: Option<f64>,
    /// Von Mises stress at the hub's worst place; of a brittle hub its pull.
    pub hub_stress_mpa: f64,
    /// The same of the shaft.
    pub shaft_stress_mpa: f64,
    /// Every part from the inside out.
    pub parts: Vec<BodyFigures>,
    /// How much the innermost bore closes at its tightest; `null` of a solid
    /// shaft.
    pub bore_close_in_mm: Option<Mm>,
    /// How much the hub's outside grows at its tightest.
    pub hub_growth_mm: Mm,
    /// The most interference with which nothing yields; `null` where no
    /// strength is known, and with sleeves.
    pub elastic_up_to_mm: Option<Mm>,
    /// The hub yields about its bore: how far out and how much of it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub partly_plastic: Option<PlasticFigures>,
    /// The same of a hollow shaft or bush.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shaft_partly_plastic: Option<PlasticFigures>,
    /// Does a part yield, or break?
    pub yields: bool,
    /// Does every part stay elastic, and a brittle one with its margin?
    pub keeps: bool,
    /// Is it a joint to count on? Not where more than 0.3 of a part yields, any
    /// of more than two, or a brittle part lacks its margin.
    pub valid: bool,
    /// The heaviest standard class with which nothing yields, where this one
    /// does.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lighter: Option<LighterFigures>,
    /// Play wanted as the parts meet.
    pub clearance_mm: Option<Mm>,
    /// Heat the hub alone to this; `null` where its expansion is not known.
    pub heat_to_c: Option<f64>,
    /// The most heat that both parts stand; `null` where it is known of
    /// neither.
    pub heat_limit_c: Option<f64>,
    /// The part that stands no more: `hub` or `shaft`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub heat_limit_of: Option<&'static str>,
    /// Do both parts stand the heat that the hub needs alone?
    #[serde(skip_serializing_if = "Option::is_none")]
    pub heat_alone: Option<bool>,
    /// The most cold that both parts stand; `null` where it is known of
    /// neither.
    pub cold_limit_c: Option<f64>,
    /// The part that stands no more.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cold_limit_of: Option<&'static str>,
    /// Chill the shaft alone to this; `null` where no coolant is that cold.
    pub cool_to_c: Option<f64>,
    /// Both together, where heat alone is too much.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub heat_and_cold: Option<BothFigures>,
    /// The grip where it works warm or cold, each end of the range.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub at_work: Vec<AtWorkFigures>,
    /// What lets the shaft enter straight.
    pub lead_in: LeadInFigures,
    /// What else to know.
    pub notes: Vec<String>,
    /// What to be careful of.
    pub cautions: Vec<&'static str>,
}

/// A joint at one temperature, both parts alike; all by expansion alone.
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct AtWorkFigures {
    /// The temperature.
    pub at_c: f64,
    /// Least interference there; below 0 it is clearance.
    pub interference_min_mm: Mm,
    /// Most.
    pub interference_max_mm: Mm,
    /// Pressure at the loosest and the tightest; `null` where nothing presses.
    pub pressure_mpa: Option<MinMax>,
    /// The torque held at the loosest.
    pub torque_n_m: Option<f64>,
    /// The force held along the axis.
    pub axial_hold_n: Option<f64>,
    /// Does a part yield at the tightest?
    pub yields: bool,
}

/// What a joint must hold, and whether it does.
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct HeldFigures {
    /// The torque wanted.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub holds_n_m: Option<f64>,
    /// The force wanted along the axis.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub holds_n: Option<f64>,
    /// Is it held at the loosest, cold and wherever it works?
    pub is_held: bool,
    /// How many times over it is held there; `null` where nothing is to be counted on.
    pub times: Option<f64>,
}

/// One of the parts.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct BodyFigures {
    /// `shaft`, `sleeve` or `hub`.
    pub part: &'static str,
    /// What it is made of.
    pub material: String,
    /// Bore; zero of a solid shaft.
    pub bore_mm: Mm,
    /// Outside diameter.
    pub outside_mm: Mm,
    /// Hoop stress at its worst place.
    pub hoop_mpa: f64,
    /// Radial stress there.
    pub radial_mpa: f64,
    /// Von Mises stress there.
    pub von_mises_mpa: f64,
    /// The strength it is held against; `null` where none is known.
    pub strength_mpa: Option<f64>,
    /// That strength is its tensile one: it breaks before it yields.
    pub brittle: bool,
    /// Strength over the elastic stress: under one it yields or breaks.
    pub safety: Option<f64>,
    /// How many times over the strength must hold: more than once where it is
    /// brittle.
    pub margin: f64,
    /// Is it enough?
    pub keeps: bool,
    /// Growth of the bore's diameter at the tightest; closing in is below
    /// zero.
    pub bore_growth_mm: Option<Mm>,
    /// Growth of the outside at the tightest.
    pub outside_growth_mm: Mm,
    /// Stresses through its wall at the tightest; where it yields, by the
    /// elastic-plastic case.
    pub wall: Vec<WallPoint>,
}

/// Stresses at one diameter.
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct WallPoint {
    /// The diameter.
    pub at_mm: Mm,
    /// Around.
    pub hoop_mpa: f64,
    /// Across the wall.
    pub radial_mpa: f64,
    /// Von Mises.
    pub von_mises_mpa: f64,
}

/// A part that yields about its bore.
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct PlasticFigures {
    /// It yields out to this diameter.
    pub reaches_mm: Mm,
    /// The share of its section that yields.
    pub share: f64,
    /// The pressure if it stayed elastic.
    pub elastic_pressure_mpa: f64,
}

/// A class with which nothing yields.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct LighterFigures {
    /// The class or classes.
    pub class: String,
    /// Its least interference; below 0 the parts may come out loose.
    pub interference_min_mm: Mm,
}

/// The shaft chilled and the hub heated.
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct BothFigures {
    /// The coolant.
    pub coolant: &'static str,
    /// Its temperature.
    pub cool_to_c: f64,
    /// What the hub is heated to.
    pub heat_to_c: f64,
}

/// Chamfer and pilot.
#[derive(Clone, Copy, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct LeadInFigures {
    /// The chamfer's angle to the axis.
    pub angle_deg: u8,
    /// Its length along the axis.
    pub length_mm: Mm,
    /// What it takes off the diameter at the end.
    pub allowance_mm: Mm,
    /// Least diameter of a pilot in its place.
    pub pilot_min_mm: Mm,
    /// Greatest.
    pub pilot_max_mm: Mm,
    /// The pilot's length.
    pub pilot_length_mm: Mm,
}

/// Standard classes by what a joint must do.
#[derive(Clone, Debug, JsonSchema, Serialize)]
pub struct PickGripAnswer {
    /// The joint without a class, for `why`.
    #[serde(skip)]
    pub(crate) joint: Joint,
    /// Nominal size.
    pub nominal_mm: Mm,
    /// The torque wanted.
    pub holds_n_m: Option<f64>,
    /// The force along the axis, where that is what was wanted.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub holds_n: Option<f64>,
    /// The press to hand.
    pub press_under_n: Option<f64>,
    /// Nothing may yield.
    pub hub_safe: bool,
    /// How many classes meet it all.
    pub found: usize,
    /// Those that meet it: lightest first where a torque is to be held,
    /// heaviest first else; the nearest that do not, where none does.
    pub candidates: Vec<GripFigures>,
    /// How they are known: the worst of those named.
    pub known: Known,
    /// What of that comes from memory.
    #[serde(skip)]
    pub unconfirmed: Vec<String>,
    /// What to be careful of.
    pub cautions: Vec<&'static str>,
}

/// A class and what it comes to.
#[expect(clippy::struct_excessive_bools, reason = "each is a question of its own, as JSON has it")]
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct GripFigures {
    /// The class or classes.
    pub class: String,
    /// Least interference; below 0 it is clearance.
    pub interference_min_mm: Mm,
    /// Most.
    pub interference_max_mm: Mm,
    /// What it holds along the axis at its loosest.
    pub axial_hold_n: Option<f64>,
    /// The torque it holds at its loosest.
    pub torque_n_m: Option<f64>,
    /// What the press gives at its tightest.
    pub press_force_n: Option<f64>,
    /// Strength over stress of the worst part.
    pub safety: Option<f64>,
    /// Does a brittle part crack?
    pub brittle: bool,
    /// Does every part stay elastic, and a brittle one with its margin?
    pub keeps: bool,
    /// The torque held over the torque wanted.
    pub times: Option<f64>,
    /// Do the figures hold?
    pub valid: bool,
    /// Does it meet every wish?
    pub meets: bool,
    /// How it is known: the worst of its limits and materials.
    pub known: Known,
}
