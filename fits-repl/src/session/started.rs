//! A pass log that is opened in two lines: the aim, then where the work is.

use fits_core::standards::iso286::Feature;

use crate::{
    answer::Answer,
    problem::Problem,
    query::{Query, Units},
    questions::part::asked::{Tolerance, Work},
    sentence::{self, Said, Setting, System},
    session::Session,
    words,
};

/// What is to be made: `20mm H7`.
struct Aim {
    verb: &'static str,
    text: String,
    /// The work was said: `bore 20mm H7`.
    is_plan: bool,
}

impl Session {
    /// `boring to 26 H7`, then `now 25.4`: the work is begun from there. After a part of
    /// which no work was said it may be judged just as well, and is asked.
    pub(super) fn as_start(&mut self, line: &str) -> Option<Result<Answer, Problem>> {
        let aim = self.aim()?;
        let reading = self.start_of(&aim, line).or_else(|| self.only_reading(line))?;
        let Aim { verb, text: feature, is_plan } = aim;
        let plan = format!("{verb} {feature} from {reading}");
        let log_is_open = self.setting().log_is_open;
        if !is_plan || log_is_open {
            let other =
                if is_plan { format!("read {reading}") } else { format!("{feature} = {reading}") };
            let choices = self.working(vec![plan, other]);
            let why = if log_is_open {
                "is this of the log that is open, or where the new work begins?"
            } else {
                "judged as it reads, or where the work begins?"
            };
            if !is_plan && !log_is_open {
                self.may_begin(&format!("{verb} {feature}"), &reading, why);
            }
            let asked = Problem::new(why, 0..line.len());
            return (choices.len() > 1).then(|| Err(asked.choose(choices)));
        }
        let begins = self.whether().ask(&plan).is_ok();
        // Cut already: what it reads now is judged, if it can be of that size.
        let judged = format!("{feature} = {reading}");
        if !begins && !self.reads_near(&judged) {
            return None;
        }
        let said = if begins { plan } else { judged };
        self.answered(line, Said::Plain(vec![said]), Vec::new()).filter(Result::is_ok)
    }

    /// Is the reading within a twentieth of its size?
    fn reads_near(&self, judged: &str) -> bool {
        let Ok(Query::Part(part)) = words::read(judged) else { return false };
        let reading = part.reading.and_then(|reading| self.nominal(&reading).ok());
        self.nominal(&part.size).ok().zip(reading).is_some_and(|(size, reading)| {
            let (size, reading) = (size.millimetres(), reading.millimetres());
            (size - reading).abs() <= 0.05 * size
        })
    }

    /// Was the last question a plan that does not say where the work is?
    pub(super) fn awaits_start(&self) -> bool {
        let is_plan = || self.last.starts_with("bore ") || self.last.starts_with("turn ");
        is_plan() && self.aim().is_some_and(|aim| aim.is_plan)
    }

    /// What the last question was about, if it is one feature that nobody has begun.
    fn aim(&self) -> Option<Aim> {
        if self.alone {
            return None;
        }
        let Ok(Query::Part(part)) = words::read(&self.last) else { return None };
        let is_begun = part.from.is_some() || part.reading.is_some() || part.measuring.is_some();
        let is_pair = part.mate.is_some() || matches!(part.tolerance, Tolerance::Pair(..));
        if is_begun || is_pair || part.bought.is_some() || self.last.contains(',') {
            return None;
        }
        let (verb, is_plan) = match (part.work.map(|work| work.value), &part.tolerance) {
            (Some(Work::Ream), _) => return None,
            (Some(work), _) => (work, true),
            (None, Tolerance::Class(class)) => {
                let is_hole = class.letters().starts_with(|c: char| c.is_ascii_uppercase());
                (if is_hole { Work::Bore } else { Work::Turn }, false)
            }
            (None, _) => match part.feature?.value {
                Feature::Hole => (Work::Bore, false),
                Feature::Shaft => (Work::Turn, false),
            },
        };
        let verb = verb.word();
        let text = self.last.strip_prefix(verb).unwrap_or(&self.last).trim().to_owned();
        Some(Aim { verb, text, is_plan })
    }

    /// `start 1.0550`, `from .812`: where the work is, said behind its aim.
    fn start_of(&self, Aim { verb, text, .. }: &Aim, line: &str) -> Option<String> {
        self.start_behind(&format!("{verb} {text}"), line)
    }

    /// The same behind a plan: `turn 0.750in h7`.
    pub(super) fn start_behind(&self, plan: &str, line: &str) -> Option<String> {
        let whole = format!("{plan} {line}");
        let (verb, _) = plan.split_once(' ')?;
        if matches!(words::read(&whole), Ok(Query::Part(part)) if part.from.is_some()) {
            return whole.strip_prefix(&format!("{plan} from ")).map(str::to_owned);
        }
        match sentence::read(&whole, self.setting())? {
            Said::Plain(lines) => match &lines[..] {
                // The same aim, its size perhaps with the unit that it is in.
                [only] if only.starts_with(verb) => {
                    only.split_once(" from ").map(|(_, start)| start.to_owned())
                }
                _ => None,
            },
            Said::Ask { .. } => None,
        }
    }

    /// The one reading of a line that says nothing else, and what it was taken with.
    pub(super) fn only_reading(&self, line: &str) -> Option<String> {
        let shown = match self.shown {
            Units::Inches => System::Inches,
            Units::Millimetres => System::Millimetres,
        };
        let setting = self.setting();
        let setting =
            Setting { units: setting.units.or(Some(shown)), log_is_open: true, ..setting };
        let lines = match sentence::read(line, setting)? {
            Said::Plain(lines) => lines,
            Said::Ask { .. } => return None,
        };
        let [only] = <[String; 1]>::try_from(lines).ok()?;
        let reading = only.strip_prefix("read ")?;
        let is_one = !reading.contains('/')
            && reading.split_once(' ').is_none_or(|(_, rest)| rest.starts_with("with "));
        is_one.then(|| reading.to_owned())
    }
}
