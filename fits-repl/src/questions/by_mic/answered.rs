//! A thread by its outside and its pitch, answered.

use std::ops::Range;

use fits_core::{
    Length,
    size::Unit,
    source::Known,
    standards::{
        drills::Drill,
        thread::{Designation, LikelyThread as Candidate, Pitch, Side, SquareThread, by_mic},
    },
};
use serde::Serialize;

use crate::{
    answer::Mm,
    problem::Problem,
    query::{Expression, Size, Spot},
    questions::{by_mic::asked::EXAMPLE, part::resolve::from_core},
    session::Session,
    words::said::Said,
};

/// What a thread may be.
#[derive(Clone, Debug, Serialize, schemars::JsonSchema)]
pub struct ThreadsByMicAnswer {
    /// The size read.
    pub size_mm: Mm,
    /// `outside` of a screw, or the `bore` of a nut.
    pub of: &'static str,
    /// The pitch read.
    pub pitch_mm: f64,
    /// The threads, the likeliest first.
    pub threads: Vec<ByMicFigures>,
}

/// A thread that it may be.
#[derive(Clone, Debug, Serialize, schemars::JsonSchema)]
pub struct ByMicFigures {
    /// Its designation.
    pub name: String,
    /// What kind it is.
    pub system: &'static str,
    /// Its pitch.
    pub pitch_mm: f64,
    /// Turns per inch, of an inch thread.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tpi: Option<f64>,
    /// The angle between its flanks.
    pub angle_deg: f64,
    /// What a new one measures at the least.
    pub crest_min_mm: Mm,
    /// And at the most.
    pub crest_max_mm: Mm,
    /// How far the size read lies outside that; below 0 it is smaller.
    pub outside_mm: Mm,
    /// Its pitch less the one read, in percent.
    pub pitch_off_percent: f64,
    /// Is it on a taper?
    pub tapers: bool,
    /// The drill for its tap by the first of two sources, of a model engineers' thread.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tap_drill_mm: Option<Mm>,
    /// By the second, tighter.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub second_tap_drill_mm: Option<Mm>,
    /// How its figures are known.
    pub known: Known,
    /// For rendering.
    #[serde(skip)]
    pub pitch: Pitch,
}

/// A square thread.
#[derive(Clone, Debug, Serialize, schemars::JsonSchema)]
pub struct SquareThreadAnswer {
    /// Its outside.
    pub major_mm: Mm,
    /// Its pitch.
    pub pitch_mm: f64,
    /// Depth of thread and width of the tool: half the pitch.
    pub half_pitch_mm: Mm,
    /// Its root, and the nut's bore before clearance.
    pub minor_mm: Mm,
    /// Diameter at half the depth.
    pub middle_mm: Mm,
    /// No standard limits it.
    pub has_limits: bool,
}

/// The hole for a wire insert.
#[derive(Clone, Debug, Serialize, schemars::JsonSchema)]
pub struct InsertAnswer {
    /// The thread that it leaves.
    pub designation: String,
    /// The bore before the insert's tap, the least.
    pub bore_min_mm: Mm,
    /// And the most.
    pub bore_max_mm: Mm,
    /// The drill.
    pub drill_name: Option<&'static str>,
    /// Its diameter.
    pub drill_mm: Option<Mm>,
    /// Pitch diameter of the insert's tap, the least.
    pub tap_pitch_diameter_mm: Mm,
    /// Major diameter of the insert's tap, the least.
    pub tap_major_mm: Mm,
    /// How it is known.
    pub known: Known,
}

/// Is a size of the line said in millimetres?
pub(crate) fn says_millimetres(said: &Said) -> bool {
    said.first_size().is_some_and(|size| {
        matches!(size.value, Expression::Number(_, Some(Unit::Millimetre | Unit::Micrometre)))
    })
}

impl Session {
    /// A number alone, in the units that the question is thought in.
    fn read_size(&self, size: &Size) -> Result<Length, Problem> {
        match size.value {
            Expression::Number(number, None) => {
                number.of(self.shown.unit()).map_err(|error| from_core(&error, size.at.clone()))
            }
            _ => self.nominal(size),
        }
    }

    fn pitch_said(&self, said: &Said) -> Result<Pitch, Problem> {
        if let Some(turns) = said.size("tpi") {
            let wrong = || {
                Problem::new("turns to an inch are a number, as 18 or 11.5", turns.at.clone())
                    .advise(EXAMPLE)
            };
            let Expression::Number(number, None) = turns.value else { return Err(wrong()) };
            let (top, bottom) = number.ratio();
            let (top, bottom) = (i64::try_from(top), i64::try_from(bottom));
            let (Ok(top), Ok(bottom)) = (top, bottom) else { return Err(wrong()) };
            return Pitch::per_inch(top, bottom).map_err(|_| wrong());
        }
        let pitch = said.size("pitch").or_else(|| said.sizes.get(1)).ok_or_else(|| {
            Problem::new("the pitch is missing", said.end..said.end).advise(EXAMPLE)
        })?;
        let length = self.read_size(pitch)?;
        Pitch::of(length).map_err(|error| from_core(&error, pitch.at.clone()).advise(EXAMPLE))
    }

    fn size_said(&self, said: &Said) -> Result<Length, Problem> {
        if let Some(word) = said.words.first() {
            let message = format!("`{}` does not go with a thread's size and pitch", word.value);
            return Err(Problem::new(message, word.at.clone()).advise(EXAMPLE));
        }
        let size = said.sizes.first().ok_or_else(|| {
            Problem::new("the size read is missing", said.end..said.end).advise(EXAMPLE)
        })?;
        self.read_size(size)
    }

    /// What a thread may be.
    pub(crate) fn by_mic(
        &self,
        said: &Said,
        at: &Range<usize>,
    ) -> Result<ThreadsByMicAnswer, Problem> {
        let (size, pitch) = (self.size_said(said)?, self.pitch_said(said)?);
        let side = if said.has("nut") { Side::Internal } else { Side::External };
        let found = by_mic(size, pitch, side).map_err(|error| {
            let advice = format!("{}; {EXAMPLE}", error.advice());
            from_core(&error, at.clone()).advise(advice)
        })?;
        Ok(ThreadsByMicAnswer {
            size_mm: Mm(size),
            of: if side == Side::External { "outside" } else { "bore" },
            pitch_mm: pitch.millimetres(),
            threads: found.into_iter().map(figures).collect(),
        })
    }

    /// A square thread.
    pub(crate) fn square_thread(
        &self,
        said: &Said,
        at: &Range<usize>,
    ) -> Result<SquareThreadAnswer, Problem> {
        let (size, pitch) = (self.size_said(said)?, self.pitch_said(said)?);
        let thread =
            SquareThread::of(size, pitch).map_err(|error| from_core(&error, at.clone()))?;
        Ok(SquareThreadAnswer {
            major_mm: Mm(size),
            pitch_mm: pitch.millimetres(),
            half_pitch_mm: Mm(thread.half_pitch),
            minor_mm: Mm(thread.minor),
            middle_mm: Mm(thread.middle),
            has_limits: false,
        })
    }

    /// The hole for a wire insert.
    pub(crate) fn insert(typed: &Spot<Designation>) -> Result<InsertAnswer, Problem> {
        let failed = |error: fits_core::Error| from_core(&error, typed.at.clone());
        let thread = typed.value.resolve().map_err(failed)?;
        let hole = thread.insert_hole().map_err(failed)?;
        Ok(InsertAnswer {
            designation: thread.to_string(),
            bore_min_mm: Mm(hole.bore.lower()),
            bore_max_mm: Mm(hole.bore.upper()),
            drill_name: hole.drill.map(Drill::name),
            drill_mm: hole.drill.map(|drill| Mm(drill.diameter())),
            tap_pitch_diameter_mm: Mm(hole.pitch_diameter),
            tap_major_mm: Mm(hole.major),
            known: hole.known,
        })
    }
}

fn figures(found: Candidate) -> ByMicFigures {
    let turns = (found.pitch.turns_per_inch() * 1e6).round() / 1e6;
    ByMicFigures {
        pitch_mm: found.pitch.millimetres(),
        tpi: found.pitch.is_per_inch().then_some(turns),
        angle_deg: found.angle_degrees,
        crest_min_mm: Mm(found.crest.lower()),
        crest_max_mm: Mm(found.crest.upper()),
        outside_mm: Mm(found.outside),
        pitch_off_percent: (found.pitch_off * 1e4).round() / 100.0,
        tapers: found.tapers,
        tap_drill_mm: found.tap_drill.map(Mm),
        second_tap_drill_mm: found.second_tap_drill.map(Mm),
        known: found.known,
        pitch: found.pitch,
        name: found.name,
        system: found.system,
    }
}
