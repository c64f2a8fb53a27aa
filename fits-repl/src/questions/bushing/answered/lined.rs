//! A lined bushing: its maker's table gives the bore in place and the shaft.

use fits_core::{
    Length, Limits,
    shop::{
        Hazard,
        bushing::{Bush, Suited, shaft_for},
    },
};

use crate::{
    answer::{Answer, BushingAnswer, Mm, ShaftFigures},
    problem::Problem,
    query::BushingText,
    questions::{
        bushing::answered::{
            play::{fast, speed},
            three_figures,
        },
        part::resolve::from_core,
    },
    session::Session,
};

impl Session {
    /// A lined bushing by its maker's table.
    pub(crate) fn lined(&self, text: &BushingText, nominal: Length) -> Result<Answer, Problem> {
        let found =
            Bush::lined(nominal).map_err(|error| from_core(&error, text.bore.0.at.clone()))?;
        let failed = |error: fits_core::Error| from_core(&error, text.bore.0.at.clone());
        if let Some(at) = [
            text.od.as_ref().map(|(size, _)| size.at.clone()),
            text.housing.as_ref().and_then(|(size, _)| size.as_ref()).map(|size| size.at.clone()),
            text.warm.as_ref().map(|warm| warm.at.clone()),
            text.hub.as_ref().map(|hub| hub.at.clone()),
            text.hub_od.as_ref().map(|size| size.at.clone()),
            text.long.as_ref().map(|size| size.at.clone()),
        ]
        .into_iter()
        .flatten()
        .next()
        {
            return Err(Problem::new(
                "a lined bushing's bore goes by the housing its maker gives",
                at,
            )
            .advise("as in `bushing 20 lined`"));
        }
        let service = text.service.as_ref().map(|service| service.at.clone());
        if let Some(at) = service.or_else(|| text.rpm.as_ref().map(|rpm| rpm.at.clone())) {
            return Err(Problem::new("a lined bushing runs by its maker's table", at)
                .advise("as in `bushing 20 lined`, or with `running 0.02mm..0.06mm`"));
        }
        let mate = found.mate.map_or_else(|| Limits::new(nominal, nominal), Ok).map_err(failed)?;
        let maker = Limits::new(
            found.limits.lower().checked_sub(mate.upper()).map_err(failed)?,
            found.limits.upper().checked_sub(mate.lower()).map_err(failed)?,
        )
        .map_err(failed)?;
        let asked = self.given_running(text)?;
        let running = asked.unwrap_or(maker);
        let given = self.given_shaft(text, nominal)?;
        let shaft = match (&given, asked) {
            (Some(one), _) => Suited { aim: one.limits.middle(), limits: Some(one.limits) },
            (None, Some(running)) => shaft_for(found.limits, running).map_err(failed)?,
            (None, None) => Suited { aim: mate.middle(), limits: Some(mate) },
        };
        let turned = shaft.limits.map_or_else(|| Limits::new(shaft.aim, shaft.aim), Ok);
        let turned = turned.map_err(failed)?;
        let clearance = Limits::new(
            found.limits.lower().checked_sub(turned.upper()).map_err(failed)?,
            found.limits.upper().checked_sub(turned.lower()).map_err(failed)?,
        )
        .map_err(failed)?;
        let mut notes = vec![
            "the bore is the maker's housing less two walls; never ream it: the lining is thin"
                .to_owned(),
        ];
        fast(text, Bush::Lined, nominal, &mut notes);
        Ok(Answer::BushingFit(Box::new(BushingAnswer {
            found: None,
            reasons: vec![found.reason()],
            nominal_mm: Mm(nominal),
            kind: Bush::Lined.words(),
            material: found.family.name().to_owned(),
            housing_material: String::new(),
            housing: None,
            outside: None,
            bore: None,
            interference: None,
            closes_in: None,
            pressure_mpa: None,
            press_force_n: None,
            yields: false,
            yielded_share: 0.0,
            bore_in_place: found.limits.into(),
            running: running.into(),
            running_by: if asked.is_some() { "as given" } else { "by its maker's table" }
                .to_owned(),
            known: found.known,
            unconfirmed: "this bushing".to_owned(),
            shaft: ShaftFigures {
                given: given.is_some(),
                aim_mm: Mm(shaft.aim),
                lower_mm: shaft.limits.map(|limits| Mm(limits.lower())),
                upper_mm: shaft.limits.map(|limits| Mm(limits.upper())),
            },
            clearance: clearance.into(),
            ream_in_place: None,
            sized_by: None,
            bore_before: None,
            in_service: Vec::new(),
            length_over_bore: None,
            speed_m_per_s: speed(text, nominal).map(three_figures),
            notes,
            cautions: [Hazard::Pressing, Hazard::People].map(Hazard::caution).to_vec(),
        })))
    }
}
