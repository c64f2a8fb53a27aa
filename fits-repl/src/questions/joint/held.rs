//! Does a joint hold what it must?

use std::fmt::Write as _;

use fits_core::shop::assemble::Assembly;
use uom::si::{force::newton, torque::newton_meter};

use crate::{
    answer::AtWorkFigures,
    problem::Problem,
    query::{Dimension, JointText},
    questions::joint::{answered::tidy, figures::HeldFigures},
    render::text::{Style, Text},
    session::Session,
};

impl Session {
    /// What it must hold against what it holds at its loosest, cold and at work.
    pub(super) fn must_hold(
        &self,
        text: &JointText,
        solved: &Assembly,
        at_work: &[AtWorkFigures],
    ) -> Result<Option<HeldFigures>, Problem> {
        let Some(wanted) = &text.holds else { return Ok(None) };
        let amount = self.positive(wanted)?;
        if text.head.long.is_none() {
            let message = "what a joint holds goes by its length";
            return Err(Problem::new(message, wanted.at.clone())
                .advise("give it, as `assemble 20 H7/s6, hub steel od 40 long 25, holds 30 Nm`"));
        }
        let along = wanted.value.dimension == Dimension::Force;
        let cold = if along {
            solved.axial_hold().map(|force| force.get::<newton>())
        } else {
            solved.torque().map(|torque| torque.get::<newton_meter>())
        };
        let warm = at_work.iter().map(|at| if along { at.axial_hold_n } else { at.torque_n_m });
        // The least of them all; where one is not to be counted on, nothing is.
        let least = std::iter::once(cold)
            .chain(warm)
            .try_fold(f64::INFINITY, |least, held| Some(least.min(held?)));
        Ok(Some(HeldFigures {
            holds_n_m: (!along).then(|| tidy(amount)),
            holds_n: along.then(|| tidy(amount)),
            is_held: least.is_some_and(|least| least >= amount),
            times: least.map(|least| tidy(least / amount)),
        }))
    }
}

impl Text {
    /// Whether it holds what it must.
    pub(super) fn must_hold(&self, out: &mut String, wanted: &HeldFigures) {
        let what = match (wanted.holds_n, wanted.holds_n_m) {
            (Some(force), _) => format!("{} along", self.one_force(force)),
            (None, torque) => self.one_torque(torque.unwrap_or_default()),
        };
        let verdict = match (wanted.is_held, wanted.times) {
            (true, Some(times)) => format!("{what} is held, {times:.1} times over"),
            (_, Some(times)) if times > 0.0 => {
                format!("{what} is NOT held: it holds {times:.2} of that")
            }
            _ => format!("{what} is NOT held"),
        };
        let _ = writeln!(out, "      {}", self.style(Style::Strong, &verdict));
    }
}
