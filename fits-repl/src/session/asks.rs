//! Questions that name no pair: drills, bearing seats.

use fits_core::{
    Length,
    standards::{
        bought::{Load, seat},
        drills::{Drill, Series},
        iso286::Feature,
    },
};

use super::{Session, resolve::from_core};
use crate::{
    answer::{Answer, DrillAnswer, Mm, NamedDrill, SeatAnswer, SeatFigures},
    problem::Problem,
    query::{Size, Spot},
};

const SERIES: [Series; 4] = [Series::Fraction, Series::Letter, Series::Number, Series::Metric];

impl Session {
    /// The nearest drills under and over a size, one of each series.
    pub(super) fn drills(&self, asked: &Size) -> Result<Answer, Problem> {
        let size = self.nominal(asked)?;
        let named = |drill: Drill| {
            // Both are sizes of drills or less: the difference is in range.
            let off = drill.diameter().checked_sub(size).unwrap_or(Length::ZERO);
            NamedDrill { name: drill.name(), mm: Mm(drill.diameter()), off_mm: Mm(off) }
        };
        let is_exact = |drill: &NamedDrill| drill.off_mm.0 == Length::ZERO;
        let sorted = |find: &dyn Fn(Series) -> Option<Drill>| {
            let mut found: Vec<NamedDrill> =
                SERIES.into_iter().filter_map(|series| find(series).map(named)).collect();
            found.retain(|drill| !is_exact(drill));
            found.sort_by_key(|drill| drill.off_mm.0.tenth_nanometres().unsigned_abs());
            found
        };
        let exact: Vec<NamedDrill> =
            Drill::all().filter(|drill| drill.diameter() == size).map(named).collect();
        // Strictly under and over: the exact ones stand by themselves.
        let step = Length::from_tenth_nanometres(1);
        let below = size.checked_sub(step).unwrap_or(size);
        let above = size.checked_add(step).unwrap_or(size);
        let under = sorted(&|series| Drill::under(below, &[series]));
        let over = sorted(&|series| Drill::over(above, &[series]));
        if exact.is_empty() && (under.is_empty() || over.is_empty()) {
            let (first, last) = (Drill::all().next(), Drill::all().next_back());
            let range = first.zip(last).map_or(String::new(), |(first, last)| {
                format!(
                    "listed drills run from {} to {}, as `drill {}`",
                    first.name(),
                    last.name(),
                    last.name()
                )
            });
            return Err(Problem::new(
                format!("no standard drill is near {size}"),
                asked.at.clone(),
            )
            .advise(range));
        }
        Ok(Answer::Drill(DrillAnswer { size_mm: Mm(size), exact, under, over }))
    }

    /// The usual classes for a bearing seat.
    pub(super) fn seats(
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
                format!("`{}` is no way of loading a bearing here", spot.value),
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
                known: seat.known,
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
