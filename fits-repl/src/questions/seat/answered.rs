//! Classes for a rolling bearing's seat, answered.

use fits_core::{
    source::Known,
    standards::{
        bought::{Load, seat},
        iso286::Feature,
    },
};
use schemars::JsonSchema;
use serde::Serialize;

use crate::{
    answer::{Answer, Mm},
    problem::Problem,
    query::{Size, Spot},
    questions::part::resolve::from_core,
    session::Session,
};

impl Session {
    /// The usual classes for a bearing seat.
    pub(crate) fn seats(
        &self,
        feature: Feature,
        size: &Size,
        load: Option<&Spot<String>>,
    ) -> Result<Answer, Problem> {
        let nominal = self.nominal(size)?;
        let words = || Load::ALL.map(Load::words).join(", ");
        let Some(spot) = load else {
            return Err(Problem::new("how is the bearing loaded?", size.at.end..size.at.end)
                .advise(format!("say one of: {}; as `seat shaft 25 turns normal`", words())));
        };
        let wanted = spot
            .value
            .replace("rotating", "turns")
            .replace("turning", "turns")
            .replace("stationary", "stands")
            .replace("standing", "stands");
        let Some(load) = Load::ALL.into_iter().find(|load| load.words() == wanted) else {
            return Err(Problem::new(
                format!("`{}` is not a way of loading a bearing here", spot.value),
                spot.at.clone(),
            )
            .advise(format!("say one of: {}; as `seat shaft 25 turns normal`", words())));
        };
        let found = seat(feature, load, nominal).map_err(|error| {
            let at = if error.is_out_of_table() { size.at.clone() } else { spot.at.clone() };
            from_core(&error, at)
        })?;
        let mut seats = Vec::new();
        for seat in found {
            let limits =
                seat.class.limits(nominal).map_err(|error| from_core(&error, size.at.clone()))?;
            seats.push(SeatFigures {
                bearing: seat.bearing,
                class: seat.class.to_string(),
                lower_mm: Mm(limits.lower()),
                upper_mm: Mm(limits.upper()),
                finer: seat.finer.map(|class| class.to_string()),
                reason: seat.reason,
                source: seat.source,
                known: seat.known.worst(limits.known()),
            });
        }
        Ok(Answer::Seat(SeatAnswer {
            kind: feature,
            nominal_mm: Mm(nominal),
            load: load.words(),
            seats,
        }))
    }
}

/// The usual classes for a rolling bearing's seat.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
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
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
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
