//! A bushing that is pressed in and measured: the shaft for it, or the ways to
//! open its bore for a shaft.

use fits_core::{
    Length, Limits,
    shop::{
        Ream,
        bushing::{Bush, BushRemedy, RunningPlay, burnishes_at_most, in_place},
    },
};

use crate::{
    answer::{Answer, Ends, Mm},
    problem::Problem,
    query::{BushingText, Tolerance},
    questions::{
        bushing::{
            answered::{
                LINED,
                play::{Wanted, speed},
                three_figures,
            },
            figures::BushingInPlaceAnswer,
        },
        part::resolve::from_core,
    },
    session::Session,
};

const EXAMPLE: &str = "as in `bushing in place 0.7485in, bronze, shaft 0.7495in`";

impl Session {
    /// A bushing whose bore in place was measured.
    pub(crate) fn bushing_in_place(
        &self,
        text: &BushingText,
        bore: Length,
    ) -> Result<Answer, Problem> {
        only_of_the_bore(text)?;
        let failed = |error: fits_core::Error| from_core(&error, text.bore.0.at.clone());
        let Some(spot) = &text.material else {
            return Err(Problem::new(
                "what the bushing is made of is not said",
                text.bore.0.at.clone(),
            )
            .advise("bronze is reamed, sintered bronze never")
            .fix(text.bore.0.at.end..text.bore.0.at.end, ", bronze"));
        };
        let is_lined = LINED.contains(&spot.value.as_str());
        let (kind, material) = if is_lined {
            (Bush::Lined, "lined".to_owned())
        } else {
            let material = self.material_named(spot)?;
            (Bush::of(&material), material.name().to_owned())
        };
        let Wanted { running, by: running_by, mut notes, .. } = self.wanted(text, kind, bore)?;
        let given = self.given_shaft(text, bore)?;
        let shaft = given.as_ref().map(|one| one.limits);
        let found = in_place(kind, bore, shaft, running).map_err(failed)?;
        let wanted_bore = found.bore.and_then(|bore| bore.limits);
        if found.play == Some(RunningPlay::Tight) {
            match kind {
                Bush::Sintered => {
                    let most = burnishes_at_most(bore);
                    notes.push(
                        "do not ream porous bronze: a cutting edge closes its pores".to_owned(),
                    );
                    if !found.ways.contains(&BushRemedy::Burnish) {
                        notes.push(format!(
                            "a burnishing pin opens it by {} at most (common practice): this is more",
                            crate::questions::why::answered::said(self.shown, most)
                        ));
                    }
                }
                Bush::Lined => notes.push("never ream a lining: it is thin".to_owned()),
                Bush::Bronze | Bush::Plastic => {}
            }
        }
        let reams =
            found.ways.contains(&BushRemedy::Ream) || found.ways.contains(&BushRemedy::Bore);
        let ream = wanted_bore.filter(|_| reams).and_then(|hole| Ream::of(hole).ok());
        let known = shaft.map_or(running.known(), |shaft| running.known().worst(shaft.known()));
        Ok(Answer::BushingInPlace(Box::new(BushingInPlaceAnswer {
            bore_mm: Mm(bore),
            kind: kind.words(),
            material,
            running: running.into(),
            running_by,
            shaft: found.shaft.into(),
            given_shaft: shaft.map(Ends::from),
            clearance: found.clearance.map(Ends::from),
            play_verdict: found.play,
            bore_for_it: found
                .bore
                .filter(|_| found.play != Some(RunningPlay::Good))
                .map(Into::into),
            open_by_mm: found.open_by.map(Mm),
            remedies: found.ways,
            speed_m_per_s: speed(text, bore).map(three_figures),
            reamer: ream.map(|ream| ream.reamer.into()),
            notes,
            known,
        })))
    }
}

/// Refuses what changes nothing once the bore is measured in place.
fn only_of_the_bore(text: &BushingText) -> Result<(), Problem> {
    if !matches!(text.bore.1, Tolerance::Bare) {
        return Err(Problem::new(
            "a bore in place is what it measures, without limits",
            text.bore.0.at.clone(),
        )
        .advise(EXAMPLE));
    }
    let idle = [
        text.od.as_ref().map(|(size, _)| size.at.clone()),
        text.long.as_ref().map(|size| size.at.clone()),
        text.hub.as_ref().map(|hub| hub.at.clone()),
        text.hub_od.as_ref().map(|size| size.at.clone()),
        text.housing
            .as_ref()
            .map(|(size, _)| size.as_ref().map_or(text.bore.0.at.clone(), |size| size.at.clone())),
        text.shaft_material.as_ref().map(|spot| spot.at.clone()),
        text.warm.as_ref().map(|warm| warm.at.clone()),
    ];
    match idle.into_iter().flatten().next() {
        None => Ok(()),
        Some(at) => {
            Err(Problem::new("this changes nothing once the bore is measured in place", at)
                .advise(EXAMPLE))
        }
    }
}

impl BushingInPlaceAnswer {
    /// The limits of the bore that the shaft wants, where there are any.
    pub(crate) fn wanted_bore(&self) -> Option<Limits> {
        let bore = self.bore_for_it?;
        Limits::new(bore.lower_mm?.0, bore.upper_mm?.0).ok()
    }
}
