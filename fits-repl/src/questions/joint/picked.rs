//! Classes by what a joint must do: which meet it, in which order.

use super::answered::tidy;
use super::known::grip_known;
use super::refused::place;
use crate::{
    answer::{Answer, GripFigures, Mm, PickGripAnswer},
    problem::Problem,
    query::{Dimension, JointText, WishText},
    session::Session,
};
use fits_core::{
    Subject,
    shop::{
        Hazard,
        assemble::{Grip, Wishes, Worst, grips},
    },
    size::Unit,
    source::Known,
};
use uom::si::{
    f64::{Force, Torque},
    force::newton,
    torque::newton_meter,
};

/// How many classes an answer names.
const CANDIDATES: usize = 8;

/// Refuses what `pick` would pass over: it finds the interference, and tells
/// nothing of heat.
fn not_picked(text: &JointText) -> Result<(), Problem> {
    if let Some(ends) = &text.interference {
        return Err(Problem::new("the interference is what `pick` finds", ends.from.at.clone())
            .advise(
                "for a given one ask `assemble 20 interference 0.03, hub steel od 40 long 25`",
            ));
    }
    let heat = [
        text.clearance.as_ref().map(|size| &size.at),
        text.within.as_ref().map(|amount| &amount.at),
        text.head.warm.as_ref().map(|warm| &warm.at),
    ];
    match heat.into_iter().flatten().next() {
        Some(at) => Err(Problem::new("`pick` does not take heat", at.clone()).advise(
            "ask it of the class picked, as `assemble 20 H7/s6, hub steel od 40 long 25, clearance 0.03`",
        )),
        None => Ok(()),
    }
}

pub(super) fn figures(grip: &Grip, wishes: &Wishes) -> GripFigures {
    let range = grip.assembly.joint().interference;
    let worst = grip.assembly.worst().iter().filter_map(Worst::safety);
    GripFigures {
        class: grip.classes.to_string(),
        interference_min_mm: Mm(range.lower()),
        interference_max_mm: Mm(range.upper()),
        axial_hold_n: grip.assembly.axial_hold().map(|force| tidy(force.get::<newton>())),
        torque_n_m: grip.assembly.torque().map(|torque| tidy(torque.get::<newton_meter>())),
        press_force_n: grip.assembly.press_force().map(|force| tidy(force.get::<newton>())),
        safety: worst.min_by(f64::total_cmp).map(tidy),
        brittle: grip.assembly.breaks(),
        keeps: grip.assembly.keeps(),
        times: wishes.holds.and_then(|wanted| {
            grip.assembly
                .torque()
                .map(|held| tidy(held.get::<newton_meter>() / wanted.get::<newton_meter>()))
        }),
        valid: grip.valid(),
        meets: grip.meets(wishes),
        known: grip_known(grip).0,
    }
}

impl Session {
    /// Classes by what the joint must do.
    pub(crate) fn pick_grip(&self, text: &JointText, wishes: &WishText) -> Result<Answer, Problem> {
        not_picked(text)?;
        let asked = self.joint(text, true).map_err(|mut problem| {
            // What is pressed needs its length too.
            if let Some((_, fix)) = &mut problem.fix
                && text.head.long.is_none()
                && fix.contains(" od ")
            {
                let unit = self.shown.unit();
                fix.push_str(if unit == Unit::Inch { " long 1in" } else { " long 25mm" });
            }
            problem
        })?;
        let held = wishes.holds.as_ref().map(|amount| self.positive(amount)).transpose()?;
        let along = wishes.holds.as_ref().is_some_and(|it| it.value.dimension == Dimension::Force);
        // A force along the axis is held by the same friction at the radius.
        let arm = if along { asked.joint.diameter.millimetres() / 2e3 } else { 1.0 };
        let mut wanted = Wishes::default();
        wanted.holds = held.map(|held| Torque::new::<newton_meter>(held * arm));
        let under = wishes.press_under.as_ref().map(|amount| self.positive(amount)).transpose()?;
        wanted.press_under = under.map(Force::new::<newton>);
        wanted.hub_safe = wishes.hub_safe.is_some();
        if wanted == Wishes::default() {
            return Err(Problem::new(
                "nothing is wanted of the joint",
                text.head.size.at.end..text.head.size.at.end,
            )
            .advise("as `pick 20 holds 30 Nm, hub steel od 40 long 25`"));
        }
        let found = grips(&asked.joint, &wanted).map_err(|error| {
            let problem = place(text, &error);
            if error.subject() == Some(Subject::Length) {
                problem.advise("give it, as `pick 20 holds 30 Nm, hub steel od 40 long 25`")
            } else {
                problem
            }
        })?;
        let found: Vec<Grip> = found.into_iter().filter(|grip| self.speaks(grip.classes)).collect();
        let met: Vec<&Grip> = found.iter().filter(|grip| grip.meets(&wanted)).collect();
        let count = met.len();
        let shown: Vec<&Grip> = if count == 0 {
            // The heaviest that keep and go in, and the lightest that hold.
            let keeps = found.iter().rev().find(|grip| grip.safe && grip.goes_in);
            let holds = found.iter().find(|grip| grip.holds);
            let torque = |grip: &&Grip| {
                grip.assembly.torque().map_or(0.0, |torque| torque.get::<newton_meter>())
            };
            let most = found
                .iter()
                .filter(|grip| grip.valid() && wanted.holds.is_some() && holds.is_none())
                .max_by(|a, b| torque(a).total_cmp(&torque(b)))
                .filter(|most| keeps.is_none_or(|keeps| keeps.classes != most.classes));
            keeps.into_iter().chain(holds).chain(most).collect()
        } else if wanted.holds.is_some() {
            // The lightest few and the heaviest.
            let last = if count > CANDIDATES { met.last().copied() } else { None };
            let few = CANDIDATES - usize::from(last.is_some());
            met.into_iter().take(few).chain(last).collect()
        } else {
            met.into_iter().rev().take(CANDIDATES).collect()
        };
        let mut known = Known::Given;
        let mut unconfirmed = Vec::new();
        for grip in &shown {
            let (one, of) = grip_known(grip);
            known = known.worst(one);
            unconfirmed.extend(of);
        }
        unconfirmed.sort();
        unconfirmed.dedup();
        let brittle = asked.joint.hub.tensile_strength().map(|_| Hazard::Brittle);
        Ok(Answer::PickGrip(Box::new(PickGripAnswer {
            known,
            unconfirmed,
            nominal_mm: Mm(asked.joint.diameter),
            joint: asked.joint,
            holds_n_m: wanted.holds.map(|torque| tidy(torque.get::<newton_meter>())),
            holds_n: held.filter(|_| along).map(tidy),
            press_under_n: wanted.press_under.map(|force| tidy(force.get::<newton>())),
            hub_safe: wanted.hub_safe,
            found: count,
            candidates: shown.into_iter().map(|grip| figures(grip, &wanted)).collect(),
            cautions: [Some(Hazard::Pressing), text.blind.as_ref().map(|_| Hazard::Blind)]
                .into_iter()
                .flatten()
                .chain(brittle)
                .chain([Hazard::People])
                .map(Hazard::caution)
                .collect(),
        })))
    }

    pub(super) fn positive(&self, amount: &crate::query::Amount) -> Result<f64, Problem> {
        let value = self.amount(amount)?;
        if value > 0.0 {
            return Ok(value);
        }
        Err(Problem::new(
            "what it holds and what presses it must be more than 0",
            amount.at.clone(),
        )
        .advise("as `pick 20 holds 30 Nm, hub steel od 40 long 25`"))
    }
}
