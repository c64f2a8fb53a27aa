//! A torque and what holds it, answered.

use fits_core::{
    Limits,
    shop::{
        rescue::{Bonded, RetainingCompound},
        share::{Beside, PRESSED_COLD, Shared},
    },
    source::{Known, Reason},
    standards::materials::{Material, Property},
};
use serde::Serialize;
use uom::si::pressure::megapascal;

use crate::{
    problem::Problem,
    questions::{
        part::resolve::from_core,
        share::asked::{EXAMPLE, ShareOf},
    },
    session::Session,
};

/// A torque shared.
#[derive(Clone, Debug, Serialize, schemars::JsonSchema)]
pub struct ShareAnswer {
    /// The torque to hold.
    pub torque_n_m: f64,
    /// Do they hold it?
    pub holds: bool,
    /// What none of them takes.
    pub left_n_m: f64,
    /// Those that hold, in the order in which they are loaded.
    pub parts: Vec<ShareFigures>,
    /// The metal of pin, key or screw.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub metal: Option<String>,
    /// Its metal was not said.
    pub metal_taken: bool,
    /// Does the load turn round?
    pub shock: bool,
    /// How it is known.
    pub known: Known,
    /// Why.
    #[serde(skip)]
    pub reasons: Vec<Reason>,
}

/// One holder and its share.
#[derive(Clone, Debug, Serialize, schemars::JsonSchema)]
pub struct ShareFigures {
    /// What holds.
    pub part: &'static str,
    /// What it may carry.
    pub carries_n_m: f64,
    /// What it takes.
    pub takes_n_m: f64,
}

impl Session {
    /// A torque shared among what holds it.
    #[allow(clippy::too_many_lines, reason = "one holder after another, each short")]
    pub(crate) fn share(&self, of: &ShareOf) -> Result<ShareAnswer, Problem> {
        let said = &of.said;
        let size = |name: &str| said.size(name).map(|size| self.nominal(size)).transpose();
        let missing = |what: String| Problem::new(what, said.end..said.end).advise(EXAMPLE);
        let torque = self.amount(&of.torque)?;
        let shock = said.has("shock");
        let Some(shaft) = size("shaft")? else {
            return Err(missing("the shaft's size is not said".into()));
        };
        let long = size("long")?;
        let need_long = |what: &str| {
            long.ok_or_else(|| {
                missing(format!("how long the {what} is, is not said: `long` and a size"))
            })
        };
        let at = |name: &str| said.all(name).next().map_or(0..said.end, |clause| clause.at.clone());
        // Nothing that is said is ignored.
        let bonded = said.has("compound");
        let sheared = ["cross pin", "pin", "key", "screw"].iter().any(|word| said.has(word));
        let is_long = bonded || said.has("key") || said.has("screw");
        let idle = [
            ("gap", !bonded, "a compound's"),
            ("oily", !bonded, "a compound's"),
            ("at", !bonded, "a compound's"),
            ("long", !is_long, "a compound's, a key's or a screw's"),
            ("of", !sheared, "a pin's, a key's or a screw's"),
            ("pin", said.has("cross pin"), "said already"),
        ];
        if let Some((word, _, whose)) =
            idle.iter().find(|(word, is_idle, _)| *is_idle && said.has(word))
        {
            return Err(Problem::new(format!("`{word}` is {whose}"), at(word)).advise(EXAMPLE));
        }
        let (mut known, mut reasons) = (Known::Formula, Vec::new());
        let mut grip = Vec::new();
        if let Some(press) = said.amount("press") {
            grip.push(("press", self.amount(press)?));
        }
        if said.has("compound") {
            let gap = size("gap")?;
            let pressed = !grip.is_empty();
            let gap = match gap {
                Some(gap) => gap,
                // Pressed together there is a film and no gap.
                None if pressed => fits_core::Length::MICROMETRE,
                None => {
                    return Err(missing("the compound's gap is not said: `gap` and a size".into()));
                }
            };
            let gap = Limits::new(gap, gap).map_err(|error| from_core(&error, at("gap")))?;
            let mut joint = Bonded::new(shaft, gap);
            joint.celsius = said.amount("at").map(|heat| self.amount(heat)).transpose()?;
            (joint.shock, joint.oily) = (shock, said.has("oily"));
            let long = need_long("compound")?.min(shaft.checked_scale(3, 2).unwrap_or(shaft));
            let place = if said.has("gap") { at("gap") } else { at("compound") };
            let (kind, bond) = RetainingCompound::best(&joint)
                .map_err(|error| from_core(&error, place).advise(EXAMPLE))?;
            let holds = bond.torque_n_m(shaft, long) * if pressed { PRESSED_COLD } else { 1.0 };
            known = known.worst(bond.known);
            reasons.push(kind.reason());
            grip.push(("compound", holds));
        }
        let metal = said.name("of").map(|name| self.material_named(name)).transpose()?;
        let metal_taken = metal.is_none();
        let plain = Material::find("steel").map_err(|error| from_core(&error, 0..said.end))?;
        let metal: &Material = metal.as_deref().unwrap_or(plain);
        let mut beside = Vec::new();
        let cross = if said.has("cross pin") { "cross pin" } else { "pin" };
        if let Some(diameter) = size(cross)? {
            beside.push((cross, Beside::CrossPin { diameter }));
        }
        if let Some(width) = size("key")? {
            let long = need_long("key")?;
            beside.push(("key", Beside::Key { width, height: width, long }));
        }
        if let Some(diameter) = size("screw")? {
            let long = need_long("screw")?;
            beside.push(("screw", Beside::Screw { diameter, long }));
        }
        if grip.is_empty() && beside.is_empty() {
            return Err(missing(
                "what holds it is not said: press, compound, cross pin, key or screw".into(),
            ));
        }
        let mut shear = Vec::new();
        for (word, holder) in &beside {
            let Some(strength) = metal.yield_strength() else {
                return Err(Problem::new(
                    format!("the yield of {} is not known here", metal.name()),
                    at("of"),
                )
                .advise("name a metal of the tables, as `of steel`"));
            };
            let holds = holder
                .carries(shaft, strength.get::<megapascal>(), shock)
                .map_err(|error| from_core(&error, at(word)).advise(EXAMPLE))?;
            shear.push((holder.name(), holds));
        }
        if !beside.is_empty()
            && let Some(reason) = metal.reason(Property::Yield)
        {
            known = known.worst(reason.known);
            reasons.push(reason);
        }
        let shared = Shared::of(torque, &grip, &shear, shock)
            .map_err(|error| from_core(&error, of.torque.at.clone()).advise(EXAMPLE))?;
        Ok(ShareAnswer {
            torque_n_m: torque,
            holds: shared.left_n_m <= 0.0,
            left_n_m: shared.left_n_m,
            parts: shared
                .parts
                .into_iter()
                .map(|part| ShareFigures {
                    part: part.name,
                    carries_n_m: part.carries_n_m,
                    takes_n_m: part.takes_n_m,
                })
                .collect(),
            metal: (!beside.is_empty()).then(|| metal.name().to_owned()),
            metal_taken: metal_taken && !beside.is_empty(),
            shock,
            known,
            reasons,
        })
    }
}
