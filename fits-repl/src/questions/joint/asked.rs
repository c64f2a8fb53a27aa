//! Parts to be pressed or shrunk together, as typed.

use crate::query::{Amount, Part, Size, Spot};

/// One of the parts: its material by name or by figures, and its sizes.
#[derive(Clone, Debug, Default)]
#[non_exhaustive]
pub struct Body {
    /// What it is made of: `aluminium 6061-T6`.
    pub material: Option<Spot<String>>,
    /// `e PRESSURE`: Young's modulus.
    pub modulus: Option<Amount>,
    /// `nu N`: Poisson's ratio.
    pub poisson: Option<Spot<f64>>,
    /// `alpha N/C`: expansion.
    pub expansion: Option<Amount>,
    /// `yield PRESSURE`.
    pub strength: Option<Amount>,
    /// `od SIZE`.
    pub od: Option<Size>,
    /// `id SIZE`.
    pub id: Option<Size>,
    /// `wall SIZE`.
    pub wall: Option<Size>,
}

/// A part between the shaft and the hub, and the joint on its outside.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct SleeveText {
    /// The part.
    pub body: Body,
    /// Where the word stood.
    pub at: std::ops::Range<usize>,
    /// Its outer joint by classes or by a word: `od 26 H7/p6`.
    pub classes: Option<crate::query::Tolerance>,
    /// The same by an interference.
    pub interference: Option<Ends>,
}

/// One figure or the two ends of a range.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct Ends {
    /// The first.
    pub from: Size,
    /// The second.
    pub to: Option<Size>,
}

/// A joint with all that is said of it.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub struct JointText {
    /// The size, its classes or word, and readings.
    pub head: Part,
    /// `interference A..B`.
    pub interference: Option<Ends>,
    /// `on radius` or `on diameter` after it: is it on the radius?
    pub on_radius: Option<Spot<bool>>,
    /// `±SIZE` after a reading: how far off the hole's and the shaft's may be.
    pub either: [Option<Size>; 2],
    /// `with INSTRUMENT`, once for each.
    pub instruments: Vec<Spot<String>>,
    /// The outer part.
    pub hub: Body,
    /// The inner part.
    pub shaft: Body,
    /// Parts between them.
    pub sleeves: Vec<SleeveText>,
    /// `friction N` or `friction N..N`.
    pub friction: Option<Spot<(f64, f64)>>,
    /// `dry`, `oil`.
    pub lubricant: Option<Spot<String>>,
    /// `shrink`: joined by heat or cold, not pressed.
    pub shrink: Option<Spot<()>>,
    /// `blind`: the hole has a floor.
    pub blind: Option<Spot<()>>,
    /// `rz SIZE` or `rz SIZE/SIZE`.
    pub roughness: Option<Ends>,
    /// `clearance SIZE`: play wanted as the parts meet.
    pub clearance: Option<Size>,
    /// `within TIME`: out of the oven before they do.
    pub within: Option<Amount>,
    /// `holds TORQUE` or `holds FORCE`: what it must hold.
    pub holds: Option<Amount>,
}

/// What is wanted of a joint whose class is sought.
#[derive(Clone, Debug, Default)]
#[non_exhaustive]
pub struct WishText {
    /// `holds TORQUE`.
    pub holds: Option<Amount>,
    /// `press under FORCE`.
    pub press_under: Option<Amount>,
    /// `hub safe`.
    pub hub_safe: Option<Spot<()>>,
}

/// `pick SIZE holds TORQUE`: a joint, and what it must do.
#[derive(Clone, Debug)]
pub struct GripText {
    /// The joint.
    pub joint: JointText,
    /// What is wanted of it.
    pub wishes: WishText,
}
