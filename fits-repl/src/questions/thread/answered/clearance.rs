//! Holes that a screw passes.

use fits_core::{
    shop::tap::{Clearances, Screws},
    standards::thread::{Form, Nominal},
};

use crate::{
    answer::{Answer, ClearanceHoleAnswer, ClearanceHoleFigures, Mm},
    problem::Problem,
    query::Passes,
    questions::thread::answered::{Found, figures::name},
};

/// Holes that a screw passes: ISO 273, ASME B18.2.8.
pub(crate) fn clearance(found: &Found) -> Result<Answer, Problem> {
    let thread = &found.thread;
    let screws = match thread.form() {
        Form::Metric => Screws::Metric,
        Form::Unified | Form::UnifiedRounded => Screws::Inch,
        form => {
            return Err(Problem::new(
                format!("no table of clearance holes is known for {} threads", form.name()),
                found.query.ask.at.clone(),
            )
            .advise("metric and Unified screws have one, as `M10 clearance`"));
        }
    };
    let table = if screws == Screws::Metric { "ISO 273" } else { "ASME B18.2.8" };
    let holes = Clearances::of(screws, thread.major()).map_err(|error| {
        let mut problem = found.failed(&error);
        // As the screw was named, not as it measures.
        let name = match thread.nominal() {
            Nominal::Millimetres(_) => format!("M{}", thread.nominal()),
            Nominal::Number(number) => format!("#{number}"),
            size => format!("{size} in"),
        };
        problem.message = format!("{table} lists no clearance hole for {name} screws");
        problem
    })?;
    let mut figures = Vec::new();
    let mut reasons = Vec::new();
    for hole in [holes.close, holes.normal, holes.loose] {
        let limits = hole.limits().map_err(|error| found.failed(&error))?;
        figures.push(ClearanceHoleFigures {
            series: hole.fit(),
            drill: hole.drill().map(str::to_owned),
            min_mm: Mm(limits.lower()),
            max_mm: Mm(limits.upper()),
        });
        reasons.push(fits_core::source::Reason {
            figure: format!("{} hole", hole.fit()),
            value: hole.hole().to_string(),
            rule: String::new(),
            source: hole.source().into(),
            known: hole.known(),
        });
    }
    let asked = found.query.passes.as_ref().and_then(|passes| {
        let at = match passes.value {
            Passes::Close => 0,
            Passes::Normal => 1,
            Passes::Loose => 2,
        };
        // To the front, the others in their order.
        figures.get_mut(..=at)?.rotate_right(1);
        figures.first().map(|hole| hole.series)
    });
    Ok(Answer::ClearanceHole(Box::new(ClearanceHoleAnswer {
        name: name(found, None, None),
        asked,
        holes: figures,
        source: table,
        reasons,
    })))
}
