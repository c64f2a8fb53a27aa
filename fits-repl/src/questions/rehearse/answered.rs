//! The tailstock, and the odds before cutting.

use fits_core::{
    shop::{
        Hazard,
        adviser::Prior,
        align::Taper,
        rehearse::{Fault, Rehearsal, RehearsedPart as Work},
    },
    standards::iso286::Feature,
};

use crate::{
    answer::{Answer, Mm, RehearsalAnswer, StrategyFigures, TaperedFigures},
    problem::Problem,
    query::{Measuring, Part, Spot},
    questions::part::{
        mates::Resolved,
        resolve::{One, from_core},
    },
    session::Session,
};

/// How many times a rehearsal runs where the query does not say.
const RUNS: u64 = 1000;
/// More runs than this add nothing.
const MOST_RUNS: u64 = 1_000_000;
/// A tool that hangs out so many times its thickness chatters and bends
/// (common practice, no source).
const LONG: f64 = 4.0;
/// Runs between two reports of progress.
const TELL: u64 = 50;

impl Session {
    /// What a taper does to a part so long.
    pub(crate) fn tapered(&self, part: &Part, taper: Taper) -> Result<TaperedFigures, Problem> {
        const EXAMPLE: &str = "as in `align 19.98 20.01 over 150, 20 g6 long 40`";
        let Some(long) = &part.long else {
            return Err(Problem::new("how long is it?", part.size.at.clone()).advise(EXAMPLE));
        };
        // A part's limits and its length are all that a taper asks of it.
        let said = part.measuring.as_deref();
        let of_readings = said.filter(|it| it.is_of_readings()).map(|_| long.at.clone());
        let unused = [
            said.and_then(|it| it.runs.as_ref()).map(|it| it.at.clone()),
            said.and_then(|it| it.seed.as_ref()).map(|it| it.at.clone()),
            said.and_then(|it| it.overhang.as_ref()).map(|it| it.at.clone()),
            said.and_then(|it| it.fault.as_ref()).map(|it| it.at.clone()),
            said.and_then(|it| it.within.as_ref()).map(|it| it.at.clone()),
            said.and_then(|it| it.room.as_ref()).map(|it| it.temperature.at.clone()),
            said.and_then(|it| it.instruments.first()).map(|it| it.at.clone()),
            part.from.as_ref().map(|it| it.at.clone()),
            part.warm.as_ref().map(|it| it.at.clone()),
            of_readings,
        ];
        if let Some(at) = unused.into_iter().flatten().next() {
            return Err(Problem::new("the tailstock does not go by this", at).advise(EXAMPLE));
        }
        let one = self.lone(&Part { long: None, ..part.clone() }, EXAMPLE)?;
        let length = self.length(long)?;
        if !length.is_positive() {
            return Err(Problem::new("a part's length is above 0", long.at.clone()).advise(EXAMPLE));
        }
        let failed = |error: fits_core::Error| from_core(&error, long.at.clone());
        let leaves = taper.leaves(one.limits.tolerance(), length).map_err(failed)?;
        Ok(TaperedFigures {
            feature: one.answer(),
            long_mm: Mm(length),
            taper_mm: Mm(taper.over(length).map_err(failed)?),
            leaves_mm: Mm(leaves),
            survives: leaves.is_positive(),
        })
    }

    /// The one feature of a query that has no room for a pair or a reading.
    pub(crate) fn lone(&self, part: &Part, example: &str) -> Result<One, Problem> {
        if let Some(reading) = &part.reading {
            return Err(
                Problem::new("there is no reading here", reading.at.clone()).advise(example)
            );
        }
        match self.resolve(part)? {
            Resolved::One(one) => Ok(one),
            _ => Err(Problem::new(
                "this asks about one feature, and a pair was given",
                part.size.at.clone(),
            )
            .advise(example)),
        }
    }

    /// The odds before cutting.
    pub(crate) fn rehearse(&self, part: &Part) -> Result<Answer, Problem> {
        const EXAMPLE: &str = "as in `rehearse 20 H7 from 19.6 with bore gauge`";
        const TURNED: &str = "as in `rehearse 20 g6 from 20.5 with micrometer`";
        let measuring = part.measuring.as_deref().cloned().unwrap_or_default();
        if let Some(at) = measuring.at.as_ref().or(measuring.room.as_ref()) {
            return Err(
                Problem::new("a rehearsal is at 20 °C", at.temperature.at.clone()).advise(EXAMPLE)
            );
        }
        // What it is made of changes how it cuts, not how it fits.
        let plain = Part { hub: None, from: None, ..part.clone() };
        let one = self.lone(&plain, EXAMPLE)?;
        let Some(kind) = one.kind else {
            return Err(Problem::new("is this a hole or a shaft?", part.size.at.clone())
                .advise("say which")
                .fix(part.size.at.start..part.size.at.start, "hole "));
        };
        let Some(from) = &part.from else {
            return Err(Problem::new(
                "where does the work start?",
                part.size.at.end..part.size.at.end,
            )
            .advise(EXAMPLE));
        };
        let start = self.nominal(from)?;
        let mut assumed = Vec::new();
        let gauge = self.gauge(&measuring.instruments, kind, one.nominal, &mut assumed)?;
        let Some(gauge) = gauge else {
            let end = from.at.end;
            let usual = if kind == Feature::Hole { " with bore gauge" } else { " with micrometer" };
            return Err(Problem::new("what is it measured with?", end..end)
                .advise("name it")
                .fix(end..end, usual));
        };
        let family = self.cut_of(part, kind, &mut assumed)?.map(|(_, family)| family);
        let overhang = overhang(Some(&measuring))?;
        let runs = if self.trying { 1 } else { runs(&measuring)? };
        let seed = measuring.seed.as_ref().map_or(1, |spot| spot.value);
        let machine = Prior::usual(kind, family, overhang);
        // As a log of the same part: no order under the least chip.
        let settings = self.advice(family).dial_division(self.step());
        let work = Work {
            limits: one.limits,
            feature: kind,
            start,
            machine,
            instrument: gauge.off,
            settings,
        };
        let failed = |error: fits_core::Error| from_core(&error, from.at.clone());
        let fault = measuring.fault.as_ref().map(fault_named).transpose()?;
        let mut rehearsal = Rehearsal::new(work, seed)
            .map_err(|error| {
                failed(error).advise(if kind == Feature::Hole { EXAMPLE } else { TURNED })
            })?
            .with_fault(fault);
        while rehearsal.runs() < runs {
            rehearsal.run().map_err(failed)?;
            if let Some(tell) = self.progress
                && (rehearsal.runs() % TELL == 0 || rehearsal.runs() == runs)
                && !tell(rehearsal.runs(), runs)
            {
                break;
            }
        }
        let mut reasons = gauge.reasons;
        reasons.extend(Prior::reasons(kind, family, overhang));
        Ok(Answer::Rehearsal(Box::new(RehearsalAnswer {
            strategies: strategies(&rehearsal),
            runs: rehearsal.runs(),
            seed,
            fault: fault.map(Fault::word),
            fault_says: fault.map(Fault::says),
            feature: one.answer(),
            from_mm: Mm(start),
            instrument: gauge.name,
            assumed,
            repeat_mm: Mm(gauge.off.repeat),
            bias_mm: Mm(gauge.off.bias),
            cut_factor: machine.gain,
            cut_factor_sd: machine.gain_sd,
            offset_sd_mm: Mm(machine.offset_sd),
            scatter_mm: Mm(machine.scatter),
            step_mm: Mm(settings.step),
            cautions: cautions(kind, overhang),
            reasons,
        })))
    }
}

fn fault_named(name: &Spot<String>) -> Result<Fault, Problem> {
    let found = Fault::ALL.into_iter().find(|fault| fault.word().eq_ignore_ascii_case(&name.value));
    found.ok_or_else(|| {
        let known = Fault::ALL.map(Fault::word).join(", ");
        Problem::new(format!("no fault is called {}", name.value), name.at.clone())
            .advise(format!("there are {known}; for instance"))
            .fix(name.at.clone(), Fault::Backlash.word())
    })
}

/// How each strategy fared, the adviser's first.
fn strategies(rehearsal: &Rehearsal) -> Vec<StrategyFigures> {
    let mut list: Vec<StrategyFigures> = rehearsal
        .odds()
        .into_iter()
        .map(|odds| StrategyFigures {
            strategy: odds.strategy.word(),
            good: odds.good,
            over: odds.over,
            under: odds.under,
            passes: odds.passes,
            readings: odds.readings,
        })
        .collect();
    list.reverse();
    list
}

/// What the work itself calls for: turning always, boring where the bar hangs
/// out far.
pub(crate) fn work_cautions(kind: Feature, overhang: Option<f64>) -> Vec<&'static str> {
    match kind {
        Feature::Hole => cautions(kind, overhang),
        Feature::Shaft => vec![Hazard::Turning.caution()],
    }
}

/// What a tool or a part that hangs out far calls for.
fn cautions(kind: Feature, overhang: Option<f64>) -> Vec<&'static str> {
    let hazard = if kind == Feature::Hole { Hazard::OverhungBoring } else { Hazard::Turning };
    overhang.filter(|times| *times > LONG).map(|_| hazard.caution()).into_iter().collect()
}

pub(crate) fn overhang(measuring: Option<&Measuring>) -> Result<Option<f64>, Problem> {
    match measuring.and_then(|measuring| measuring.overhang.as_ref()) {
        Some(spot) if !(0.1..=50.0).contains(&spot.value) => {
            Err(Problem::new("no tool hangs out so far", spot.at.clone()).advise(
                "free length over thickness, from 0.1 to 50, as `rehearse 20 H7 from 19.6 with bore gauge, overhang 5`",
            ))
        }
        found => Ok(found.map(|spot| spot.value)),
    }
}

fn runs(measuring: &Measuring) -> Result<u64, Problem> {
    match &measuring.runs {
        Some(spot) if spot.value == 0 || spot.value > MOST_RUNS => Err(Problem::new(
            format!("a rehearsal runs from 1 to {MOST_RUNS} times"),
            spot.at.clone(),
        )
        .fix(spot.at.clone(), RUNS.to_string())),
        found => Ok(found.as_ref().map_or(RUNS, |spot| spot.value)),
    }
}
