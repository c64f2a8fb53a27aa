//! Which standard class holds a load, goes in under a press, and spares the
//! hub.

use core::cmp::Reverse;

use uom::si::{
    f64::{Force, Torque},
    force::newton,
    torque::newton_meter,
};

use super::{Assembly, Joint};
use crate::{
    error::{Error, Subject},
    fit::Fit,
    shop::FitClasses,
    size::{Length, Limits},
    standards::{
        b41,
        iso286::{Class, Feature, Grade, Letter},
    },
};

/// What is wanted of a joint; what is not said is not asked for.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Wishes {
    /// It holds this torque at its loosest.
    pub holds: Option<Torque>,
    /// It goes in under this force at its tightest.
    pub press_under: Option<Force>,
    /// No part yields or breaks at its tightest.
    pub hub_safe: bool,
}

/// A standard fit and what it comes to in the joint.
///
/// ```
/// use fits_core::{Limits, shop::assemble::{Joint, Wishes, grips}, standards::materials::Material};
/// let steel = Material::find("steel 1045")?;
/// let none = Limits::new("0mm".parse()?, "0mm".parse()?)?;
/// let joint = Joint::new("20mm".parse()?, none, "40mm".parse()?, steel, steel)?;
/// let found = grips(&joint, &Wishes::default())?;
/// // Nothing was wished for, so all of them hold.
/// assert!(found.iter().all(|grip| grip.holds));
/// assert!(found.iter().any(|grip| grip.valid()));
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Grip {
    /// Its classes.
    pub classes: FitClasses,
    /// Its limits.
    pub fit: Fit,
    /// What comes of it.
    pub assembly: Assembly,
    /// It holds what is wanted; true where nothing was.
    pub holds: bool,
    /// It goes in under the force wanted; true where none was.
    pub goes_in: bool,
    /// No part yields, and a brittle one has its margin.
    pub safe: bool,
}

impl Grip {
    /// Is it a joint to count on, as [`Assembly::figures_hold`]?
    pub fn valid(&self) -> bool {
        self.assembly.figures_hold()
    }

    /// Does it meet every wish?
    ///
    /// ```
    /// use fits_core::{Limits, shop::assemble::{Joint, Wishes, grips}, standards::materials::Material};
    /// let steel = Material::find("steel 1045")?;
    /// let none = Limits::new("0mm".parse()?, "0mm".parse()?)?;
    /// let joint = Joint::new("20mm".parse()?, none, "40mm".parse()?, steel, steel)?;
    /// let mut wishes = Wishes::default();
    /// wishes.hub_safe = true;
    /// let found = grips(&joint, &wishes)?;
    /// assert!(found.iter().all(|grip| grip.meets(&wishes) == grip.safe));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn meets(&self, wishes: &Wishes) -> bool {
        self.valid() && self.holds && self.goes_in && (self.safe || !wishes.hub_safe)
    }
}

/// Standard fits with interference in a joint, lightest first: H7 of ISO 286
/// with every shaft of grade 6, H8 with every one of grade 7, and the classes
/// of ASME B4.1. The joint's own interference is not regarded.
///
/// # Errors
/// The joint cannot be solved, needs a length that it has not, or is outside
/// the tables of ISO 286.
///
/// ```
/// use fits_core::{Limits, shop::assemble::{Joint, Wishes, grips}, standards::materials::Material};
/// use uom::si::{f64::Torque, torque::newton_meter};
/// let steel = Material::find("steel 1045")?;
/// let none = Limits::new("0mm".parse()?, "0mm".parse()?)?;
/// let mut joint = Joint::new("20mm".parse()?, none, "40mm".parse()?, steel, steel)?;
/// joint.length = Some("25mm".parse()?);
/// let mut wishes = Wishes::default();
/// wishes.holds = Some(Torque::new::<newton_meter>(30.0));
/// let found = grips(&joint, &wishes)?;
/// let lightest = found.iter().find(|grip| grip.meets(&wishes)).expect("one holds");
/// assert_eq!(lightest.classes.to_string(), "H7/r6");
/// # Ok::<(), fits_core::Error>(())
/// ```
pub fn grips(joint: &Joint, wishes: &Wishes) -> Result<Vec<Grip>, Error> {
    if joint.length.is_none() && (wishes.holds.is_some() || wishes.press_under.is_some()) {
        return Err(Error::no_joint(
            "force and torque go by the length in contact, and none is given",
            "give it, as long 25",
        )
        .about(Subject::Length));
    }
    // No interference yet: all the rest is checked once.
    let trial = super::millimetres(joint.diameter.millimetres() / 1e4)?;
    Joint { interference: Limits::new(trial, trial)?, ..joint.clone() }.solve()?;
    let mut found = Vec::new();
    for (classes, fit) in candidates(joint.diameter)? {
        let interference = fit.interference();
        if !interference.upper().is_positive() {
            continue;
        }
        // A class with more interference than the wall can take is not a choice.
        let Ok(assembly) = (Joint { interference, ..joint.clone() }).solve() else { continue };
        // Where the figures do not hold, neither does the joint.
        let valid = assembly.figures_hold();
        let holds = wishes.holds.is_none_or(|wanted| {
            valid
                && assembly.torque().is_some_and(|torque| {
                    torque.get::<newton_meter>() >= wanted.get::<newton_meter>()
                })
        });
        let goes_in = wishes.press_under.is_none_or(|most| {
            assembly
                .press_force()
                .is_some_and(|force| force.get::<newton>() <= most.get::<newton>())
        });
        let safe = assembly.keeps();
        found.push(Grip { classes, fit, assembly, holds, goes_in, safe });
    }
    // Lightest first by the most it can press; of equals the coarser, which is
    // the easier to make.
    found.sort_by_key(|grip| {
        let range = grip.assembly.joint().interference;
        (range.upper(), Reverse(range.lower()))
    });
    Ok(found)
}

fn candidates(nominal: Length) -> Result<Vec<(FitClasses, Fit)>, Error> {
    // Every size in the tables has this one: beyond them the search says so.
    Fit::of_classes(nominal, "H7".parse()?, "h6".parse()?)?;
    let mut all = Vec::new();
    // What a small shop holds: a reamed hole, a turned shaft a grade finer.
    for (hole, shaft) in [(7, 6), (8, 7)] {
        let (Some(hole), Some(shaft)) = (Grade::it(hole), Grade::it(shaft)) else {
            continue;
        };
        let hole = Class { feature: Feature::Hole, letter: Letter::H, grade: hole };
        for letter in Letter::all() {
            let shaft = Class { feature: Feature::Shaft, letter, grade: shaft };
            if let Ok(fit) = Fit::of_classes(nominal, hole, shaft) {
                all.push((FitClasses::Iso286 { hole, shaft }, fit));
            }
        }
    }
    all.extend(
        b41::Class::all()
            .filter_map(|class| class.fit(nominal).ok().map(|fit| (FitClasses::B41(class), fit))),
    );
    Ok(all)
}
