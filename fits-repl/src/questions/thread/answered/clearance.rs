//! Holes that a screw passes.

use fits_core::{
    Length, Limits,
    shop::tap::{Bit, ChartHole, ClearanceHole, Clearances, Screws},
    source::{Known, Reason},
    standards::thread::{Form, Nominal, Series, Side},
};

use crate::{
    answer::{Answer, ClearanceHoleAnswer, ClearanceHoleFigures, Mm},
    problem::Problem,
    query::Passes,
    questions::thread::answered::{
        Found,
        figures::{drawer, name},
    },
};

/// Holes that a screw passes: ISO 273, ASME B18.2.8, a chart of British drills,
/// and for screws that none of them lists the room that a listed one has.
pub(crate) fn clearance(found: &Found) -> Result<Answer, Problem> {
    let thread = &found.thread;
    if !thread.form().has_side(Side::External) || thread.taper().is_some() {
        let why = format!("{} is not a screw of one diameter", thread.form().name());
        return Err(Problem::new(why, found.query.ask.at.clone())
            .advise("a parallel screw passes a hole, as `M10 clearance` or `G1/2 clearance`"));
    }
    let screws = if thread.form().is_inch() { Screws::Inch } else { Screws::Metric };
    let is_of_table = matches!(thread.form(), Form::Metric | Form::Unified | Form::UnifiedRounded);
    let chart = ChartHole::of(thread);
    let mut figures = Vec::new();
    let mut reasons = Vec::new();
    let failed = |error: &fits_core::Error| found.failed(error);
    let source = match Clearances::of(screws, thread.major()) {
        Ok(holes) if is_of_table => {
            for hole in [holes.close, holes.normal, holes.loose] {
                let limits = hole.limits().map_err(|error| failed(&error))?;
                figures.push(listed(hole, limits, hole.drill().map(str::to_owned)));
                reasons.push(reason(hole, limits.lower(), String::new(), hole.known()));
            }
            table(screws)
        }
        Err(error) if is_of_table && thread.series() == Series::Special => {
            return Err(unlisted(found, screws, &error));
        }
        _ => {
            let (of, holes) = Clearances::from(screws, thread.major()).ok_or_else(|| {
                Problem::new(format!("no screw as thick as {thread} is listed"), found.at())
                    .advise("ISO 273 ends with `M150 clearance`")
            })?;
            if let Some(chart) = chart {
                let limits = chart.limits().map_err(|error| failed(&error))?;
                figures.push(ClearanceHoleFigures {
                    series: "chart",
                    drill: Some(chart.drill().to_owned()),
                    min_mm: Mm(limits.lower()),
                    max_mm: Mm(limits.upper()),
                });
                reasons.push(Reason {
                    figure: "chart hole".into(),
                    value: chart.hole().to_string().into(),
                    rule: "the drill of the chart; H13 on it, common practice".into(),
                    source: chart.source().into(),
                    known: chart.known().worst(Known::Practice),
                });
            }
            for hole in [holes.close, holes.normal, holes.loose] {
                let limits = hole.around(thread.major()).map_err(|error| failed(&error))?;
                let is_its_own = hole.major() == thread.major();
                let listed_drill = hole.drill().filter(|_| is_its_own).map(str::to_owned);
                figures.push(listed(hole, limits, listed_drill.or_else(|| named(found, limits))));
                let rule = format!(
                    "the room of {} around its own screw, {}; common practice, no source",
                    hole.screw(),
                    table(of)
                );
                let known = hole.known().worst(Known::Practice);
                reasons.push(reason(hole, limits.lower(), rule, known));
            }
            match (of, holes.close.major() == thread.major()) {
                (Screws::Inch, true) => "by diameter, as ASME B18.2.8 lists it",
                (Screws::Metric, true) => "by diameter, as ISO 273 lists it",
                (Screws::Inch, false) => "by diameter: the next screw's room, ASME B18.2.8",
                (Screws::Metric, false) => "by diameter: the next screw's room, ISO 273",
            }
        }
    };
    let asked = found.query.passes.as_ref().and_then(|passes| {
        let at = match passes.value {
            Passes::Close => 0,
            Passes::Normal => 1,
            Passes::Loose => 2,
        };
        // To the front, the others in their order.
        figures.get_mut(..=at + usize::from(chart.is_some()))?.rotate_right(1);
        figures.first().map(|hole| hole.series)
    });
    Ok(Answer::ClearanceHole(Box::new(ClearanceHoleAnswer {
        name: name(found, None, None),
        asked,
        holes: figures,
        source,
        reasons,
    })))
}

const fn table(screws: Screws) -> &'static str {
    match screws {
        Screws::Metric => "ISO 273",
        Screws::Inch => "ASME B18.2.8",
    }
}

fn listed(hole: ClearanceHole, limits: Limits, drill: Option<String>) -> ClearanceHoleFigures {
    ClearanceHoleFigures {
        series: hole.fit(),
        drill,
        min_mm: Mm(limits.lower()),
        max_mm: Mm(limits.upper()),
    }
}

/// The least drill of the thread's own system inside a hole's limits.
fn named(found: &Found, limits: Limits) -> Option<String> {
    let bits = Bit::standard(drawer(&found.thread)).into_iter();
    let inside = bits.filter(|bit| limits.contains(bit.diameter));
    inside.min_by_key(|bit| bit.diameter).map(|bit| bit.name.to_string())
}

fn reason(hole: ClearanceHole, least: Length, rule: String, known: Known) -> Reason {
    Reason {
        figure: format!("{} hole", hole.fit()),
        value: least.to_string().into(),
        rule: rule.into(),
        source: hole.source().into(),
        known,
    }
}

/// A size of the tables' own system that they do not list, and no list of
/// threads either.
fn unlisted(found: &Found, screws: Screws, error: &fits_core::Error) -> Problem {
    let mut problem = found.failed(error);
    // As the screw was named, not as it measures.
    let name = match found.thread.nominal() {
        Nominal::Millimetres(_) => format!("M{}", found.thread.nominal()),
        Nominal::Number(number) => format!("#{number}"),
        size => format!("{size} in"),
    };
    problem.message = format!("{} lists no clearance hole for {name} screws", table(screws));
    problem
}
