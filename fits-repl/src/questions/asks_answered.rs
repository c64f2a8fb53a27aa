//! Questions that name no pair: general tolerances, classes for a wanted
//! clearance, drills, bearing seats.

use fits_core::{
    Length, Limits,
    shop::pick,
    source::Known,
    standards::{
        b41,
        bought::{KeyStandard, Keyway, Load, seat},
        drills::{Drill, Series},
        iso286::{self, Feature},
        iso2768::{Class as General, Quantity},
    },
};

use crate::{
    answer::{
        Answer, CandidateFigures, DrillAnswer, GeneralAnswer, GradeAnswer, KeywayAnswer,
        KeywayFigures, Mm, NamedDrill, PickAnswer, SeatAnswer, SeatFigures,
    },
    problem::Problem,
    query::{GeneralKind, Size, Spot, Units, Wanted},
    questions::part::resolve::from_core,
    session::Session,
};

const SERIES: [Series; 4] = [Series::Fraction, Series::Letter, Series::Number, Series::Metric];

/// How many candidates an answer names.
const CANDIDATES: usize = 10;

impl Session {
    /// The general tolerance of an untoleranced size.
    pub(crate) fn general(
        &self,
        asked: &Size,
        text: &Spot<String>,
        kind: GeneralKind,
    ) -> Result<Answer, Problem> {
        let nominal = self.nominal(asked)?;
        let class: General = text.value.parse().map_err(|error: fits_core::Error| {
            from_core(&error, text.at.clone()).fix(text.at.clone(), "m")
        })?;
        let (quantity, kind) = quantity(kind);
        let refused = |error: fits_core::Error| {
            let problem = from_core(&error, asked.at.clone());
            match class.nearest(quantity, nominal) {
                Some(nearest) => problem.fix(text.at.clone(), nearest.letter()),
                None => problem,
            }
        };
        let [reason, ..] = &mut class.reasons(quantity, nominal).map_err(refused)?[..] else {
            return Err(Problem::new("the class gives no tolerance there", text.at.clone()));
        };
        let mut answer = GeneralAnswer {
            kind,
            nominal_mm: Mm(nominal),
            class: class.letter(),
            word: class.word(),
            plus_minus_mm: None,
            plus_minus_arcmin: None,
            lower_mm: None,
            upper_mm: None,
            source: std::mem::take(&mut reason.source),
            known: reason.known,
        };
        let either = match quantity {
            Quantity::Angular => {
                answer.plus_minus_arcmin = Some(class.angle(nominal).map_err(refused)?);
                return Ok(Answer::General(answer));
            }
            Quantity::Linear => class.linear(nominal).map_err(refused)?,
            Quantity::Edge => class.edge(nominal).map_err(refused)?,
        };
        answer.plus_minus_mm = Some(Mm(either));
        answer.lower_mm = nominal.checked_sub(either).ok().map(Mm);
        answer.upper_mm = nominal.checked_add(either).ok().map(Mm);
        Ok(Answer::General(answer))
    }

    /// A standard tolerance: of ASME B4.1 for a size in inches, of ISO 286-1
    /// for one in millimetres.
    pub(crate) fn grade(&self, size: &Size, text: &Spot<String>) -> Result<Answer, Problem> {
        let nominal = self.nominal(size)?;
        let at_fault = |error: &fits_core::Error| {
            if error.is_out_of_table() { size.at.clone() } else { text.at.clone() }
        };
        let number = text.value.trim_start_matches(|c: char| c.is_ascii_alphabetic());
        if self.shown == Units::Inches && number.len() == text.value.len() {
            let failed = |error: fits_core::Error| {
                from_core(&error, at_fault(&error)).advise(
                    "B4.1 has grades 4 to 13, as `3/4in grade 8`; `3/4in grade IT8` is ISO's",
                )
            };
            let grade: u8 = number.parse().map_err(|_| {
                Problem::new(format!("there is no grade {}", text.value), text.at.clone())
                    .advise("as in `3/4in grade 8`")
            })?;
            let tolerance = b41::grade_tolerance(grade, nominal).map_err(failed)?;
            let reason = b41::grade_reason(grade, nominal).map_err(failed)?;
            return Ok(Answer::Grade(GradeAnswer {
                nominal_mm: Mm(nominal),
                grade: grade.to_string(),
                tolerance_mm: Mm(tolerance),
                source: reason.source,
                known: reason.known,
            }));
        }
        let failed = |error: fits_core::Error| from_core(&error, at_fault(&error));
        let grade: iso286::Grade = number
            .parse()
            .map_err(|error: fits_core::Error| failed(error).fix(text.at.clone(), "7"))?;
        let tolerance = iso286::standard_tolerance(grade, nominal).map_err(failed)?;
        let reason = grade.reason(nominal).map_err(failed)?;
        Ok(Answer::Grade(GradeAnswer {
            nominal_mm: Mm(nominal),
            grade: format!("IT{grade}"),
            tolerance_mm: Mm(tolerance),
            source: reason.source,
            known: reason.known,
        }))
    }

    /// The key and keyways of a shaft: DIN 6885 in millimetres, ANSI B17.1 in
    /// inches.
    pub(crate) fn keyway(&self, size: &Size) -> Result<Answer, Problem> {
        let shaft = self.nominal(size)?;
        let (standard, other) = match self.shown {
            Units::Millimetres => (KeyStandard::Din6885, None),
            Units::Inches => (KeyStandard::AnsiB171, Some(KeyStandard::AnsiB171Rectangular)),
        };
        let failed = |error: fits_core::Error| from_core(&error, size.at.clone());
        let found = Keyway::for_shaft(standard, shaft).map_err(failed)?;
        // The smallest shafts have no rectangular key.
        let rectangular = other.and_then(|other| Keyway::for_shaft(other, shaft).ok());
        Ok(Answer::Keyway(Box::new(KeywayAnswer {
            shaft_mm: Mm(shaft),
            standard: standard.name(),
            depth_from: if standard.is_from_side() { "side" } else { "top" },
            key: keyway_figures(found).map_err(failed)?,
            rectangular: rectangular.map(keyway_figures).transpose().map_err(failed)?,
            reasons: found.reasons().map_err(failed)?,
        })))
    }

    /// Standard classes that give a wanted clearance or interference.
    pub(crate) fn pick(
        &self,
        size: &Size,
        wanted: Wanted,
        from: &Size,
        to: &Size,
    ) -> Result<Answer, Problem> {
        let nominal = self.nominal(size)?;
        let failed = |error: fits_core::Error| from_core(&error, from.at.start..to.at.end);
        let ends = [self.length(from)?, self.length(to)?];
        let [first, second] = match wanted {
            Wanted::Clearance => ends,
            Wanted::Interference => {
                [ends[1].checked_neg().map_err(failed)?, ends[0].checked_neg().map_err(failed)?]
            }
        };
        let range = Limits::new(first, second).map_err(|error| {
            failed(error).advise("the smaller comes first, as `pick 20 clearance 0.01..0.04`")
        })?;
        let mut found = pick(nominal, range).map_err(|error| from_core(&error, size.at.clone()))?;
        let count = found.iter().filter(|candidate| !candidate.is_miss()).count();
        found.truncate(CANDIDATES);
        let candidates = found.iter().map(|candidate| CandidateFigures {
            class: candidate.classes.to_string(),
            min_mm: Mm(candidate.fit.clearance().lower()),
            max_mm: Mm(candidate.fit.clearance().upper()),
            preferred: candidate.preferred,
            outside_mm: Mm(candidate.outside),
            known: candidate.fit.known(),
        });
        let known = found.iter().map(|it| it.fit.known()).fold(Known::Given, Known::worst);
        Ok(Answer::Pick(PickAnswer {
            nominal_mm: Mm(nominal),
            wanted_min_mm: Mm(range.lower()),
            wanted_max_mm: Mm(range.upper()),
            found: count,
            candidates: candidates.collect(),
            known,
        }))
    }

    /// The nearest drills under and over a size, one of each series.
    pub(crate) fn drills(&self, asked: &Size) -> Result<Answer, Problem> {
        let size = self.nominal(asked)?;
        let named = |drill: Drill| {
            // Both are sizes of drills or less: the difference is in range.
            let off = drill.diameter().checked_sub(size).unwrap_or(Length::ZERO);
            NamedDrill {
                name: drill.name(),
                mm: Mm(drill.diameter()),
                off_mm: Mm(off),
                source: drill.source(),
                known: drill.known(),
            }
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
        let crib = self.own_drills_about(size);
        Ok(Answer::Drill(DrillAnswer { size_mm: Mm(size), exact, under, over, crib }))
    }

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

fn keyway_figures(found: Keyway) -> Result<KeywayFigures, fits_core::Error> {
    let [shaft, hub] = found.widths()?;
    let (shaft_depth, hub_depth) = (found.shaft_depth()?, found.hub_depth()?);
    let (across_shaft, across_hub) = (found.across_shaft()?, found.across_hub()?);
    Ok(KeywayFigures {
        width_mm: Mm(found.width()),
        height_mm: Mm(found.height()),
        shaft_width_min_mm: Mm(shaft.limits.lower()),
        shaft_width_max_mm: Mm(shaft.limits.upper()),
        hub_width_min_mm: Mm(hub.limits.lower()),
        hub_width_max_mm: Mm(hub.limits.upper()),
        shaft_depth_min_mm: Mm(shaft_depth.lower()),
        shaft_depth_max_mm: Mm(shaft_depth.upper()),
        hub_depth_min_mm: Mm(hub_depth.lower()),
        hub_depth_max_mm: Mm(hub_depth.upper()),
        across_shaft_min_mm: Mm(across_shaft.lower()),
        across_shaft_max_mm: Mm(across_shaft.upper()),
        across_hub_min_mm: Mm(across_hub.lower()),
        across_hub_max_mm: Mm(across_hub.upper()),
        source: found.source(),
        known: found.known().worst(shaft.known).worst(hub.known),
        note: found.note(),
    })
}

/// The core's name and ours for what a general tolerance is asked of.
pub(crate) const fn quantity(kind: GeneralKind) -> (Quantity, &'static str) {
    match kind {
        GeneralKind::Linear => (Quantity::Linear, "linear"),
        GeneralKind::BrokenEdge => (Quantity::Edge, "edge"),
        GeneralKind::Angle => (Quantity::Angular, "angle"),
    }
}
