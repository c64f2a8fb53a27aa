//! The pass log: entries taken, doubts asked about, advice given.

use fits_core::{
    Length,
    job::{Doubt, Entry, State},
    shop::adviser::{Action, Adviser, Because, Estimate, Prior, Story},
    size::{Decimals, Rounding},
    source::{Known, Reason},
    standards::{instruments::Instrument, iso286::Feature},
};

use super::{
    Logs, Session,
    mates::is_inch,
    open_log::{OpenLog, Stored, family},
    practice::work_cautions,
    resolve::from_core,
};
use crate::{
    answer::{Answer, EntryFigures, Mm, NextFigures, PassLogAnswer, RemarkFigures, StoryFigures},
    problem::Problem,
    query::{Dial, LogQuery, Size, Spot, Units},
};

/// So many passes in a row that missed: the machine is at fault, not a hand.
/// Common practice, no source.
const MOST_SLIPS: u32 = 3;
const CHECK_MACHINE: &str = "three passes in a row missed: check the machine (dial, locks, gibs, \
                             tool, how the work is held) and the gauge; then take a light cut, \
                             and measure it";

/// No tool takes a smaller part of what is dialled. Common practice, no source.
const LEAST_FACTOR: f64 = 0.75;
const MAY_COME_FREE: &str = "what is left to dial would pass the last limit if the slide came \
                             free: find out what held it, then take a light cut, and measure it";

impl Session {
    /// The units that an entry is typed in.
    pub(super) fn log_in(&self, entry: &LogQuery) -> Units {
        let typed = match entry {
            LogQuery::Cut { dial, read, .. } => [Some(dial), read.as_ref()],
            LogQuery::Spring { read, .. } => [read.as_ref(), None],
            LogQuery::Read { size, .. } => [Some(size), None],
            _ => [None, None],
        };
        let inch = typed.into_iter().flatten().find_map(|size| is_inch(&size.value));
        match inch {
            Some(true) => Units::Inches,
            Some(false) => Units::Millimetres,
            None => self.units,
        }
    }

    /// An entry or a question.
    pub(super) fn log(&mut self, spot: &Spot<LogQuery>) -> Result<Answer, Problem> {
        let at = &spot.at;
        let change = |session: &Self, size: &Size| {
            let dialled = session.nominal(size)?;
            match session.dial {
                Dial::Diameter => Ok(dialled),
                Dial::Radius => {
                    dialled.checked_mul(2).map_err(|error| from_core(&error, size.at.clone()))
                }
            }
        };
        let read = |session: &Self, size: &Option<Size>| {
            size.as_ref().map(|size| session.nominal(size)).transpose()
        };
        match &spot.value {
            LogQuery::Cut { dial, read: size, sure } => {
                if let Some(problem) = self.size_for_dial(dial, size.as_ref(), *sure) {
                    return Err(problem);
                }
                let entry =
                    Entry::Cut { dial: change(self, dial)?, read: read(self, size)?, sure: *sure };
                let place = size.as_ref().map_or(&dial.at, |size| &size.at).clone();
                self.enter(entry, at, place)
            }
            LogQuery::Spring { read: size, sure } => {
                let entry = Entry::Spring { read: read(self, size)?, sure: *sure };
                let place = size.as_ref().map_or(at, |size| &size.at).clone();
                self.enter(entry, at, place)
            }
            LogQuery::Read { size, sure } => {
                let entry = Entry::Read { size: self.nominal(size)?, sure: *sure };
                self.enter(entry, at, size.at.clone())
            }
            // Whoever takes back an entry that was refused means that one.
            LogQuery::Undo if self.refused && self.shop.log.is_some() => Err(Problem::new(
                "the line before this was refused: nothing was entered",
                at.clone(),
            )
            .advise(
                "nothing is taken back; `log` shows the entries, and a second `undo` \
                             takes back the last of them",
            )),
            LogQuery::Undo => self.enter(Entry::Undo, at, at.clone()),
            LogQuery::Done { sure } => {
                let doubted = if *sure { None } else { self.doubt(Entry::Done, at, at)? };
                doubted.map_or_else(|| self.enter(Entry::Done, at, at.clone()), Err)
            }
            LogQuery::Scrap => self.enter(Entry::Scrap, at, at.clone()),
            LogQuery::Show => match &self.shop.log {
                Some(OpenLog { log: Some(_), .. }) => self.shown_log(at, Vec::new()),
                _ => Ok(self.log_list()),
            },
            LogQuery::List => Ok(self.log_list()),
            LogQuery::Leave => {
                let Some(open) = self.shop.log.take() else { return Err(no_log(at)) };
                let was_kept = matches!(open.stored, Stored::File { .. });
                // One file holds whatever comes next, too.
                if matches!(self.shop.logs, Logs::File(_)) {
                    let earlier = open.earlier.iter().chain(&open.log).cloned().collect();
                    self.shop.log = Some(OpenLog { log: None, earlier, ..open });
                }
                let mut answer = self.log_list();
                if let (Answer::Logs(answer), false) = (&mut answer, was_kept) {
                    answer.notes = vec!["left; it was kept in memory only and is gone".to_owned()];
                }
                Ok(answer)
            }
            LogQuery::Open(name) => self.open_named(name),
        }
    }

    /// Is a size about that of the part whose log is open?
    pub(super) fn is_near_log(&self, size: Length) -> bool {
        let open = self.shop.log.as_ref().and_then(|open| open.log.as_ref());
        open.filter(|log| log.state() == State::Open).is_some_and(|log| {
            let last = log.last_reading().tenth_nanometres();
            // Within a tenth.
            (size.tenth_nanometres() - last).abs() <= last / 10
        })
    }

    /// Where the size was typed for the dial: what was dialled is the way to it.
    fn size_for_dial(&self, dial: &Size, read: Option<&Size>, sure: bool) -> Option<Problem> {
        let typed = self.nominal(dial).ok()?;
        if sure || !self.is_near_log(typed) {
            return None;
        }
        let log = self.shop.log.as_ref()?.log.as_ref()?;
        let to = read.map_or(Some(typed), |read| self.nominal(read).ok())?;
        let way = match log.opening.feature {
            Feature::Hole => to.checked_sub(log.last_reading()),
            Feature::Shaft => log.last_reading().checked_sub(to),
        }
        .ok()?;
        let problem = Problem::new(
            format!("{} is a size, and a cut takes what was dialled", shown_in(self.shown, typed)),
            dial.at.clone(),
        );
        if !way.is_positive() {
            return Some(problem.advise("nothing is entered; a size is entered as `read 19.792`"));
        }
        let decimals = match self.shown {
            Units::Millimetres => Decimals::MILLIMETRES,
            Units::Inches => Decimals::INCHES,
        };
        let unit = is_inch(&dial.value).map_or("", |_| decimals.unit.symbol());
        let figure = |size: Length| size.shown(decimals, Rounding::Nearest);
        let dialled = figure(self.dialled(way)).to_string();
        let dialled = dialled.trim_end_matches('0');
        let with = match read {
            None => format!("{dialled}{unit} = {}{unit}", figure(typed)),
            Some(_) => format!("{dialled}{unit}"),
        };
        Some(
            problem
                .advise("nothing is entered; if that is what it measured and this was dialled")
                .fix(dial.at.clone(), with),
        )
    }

    /// What makes an entry doubtful, as a question.
    fn doubt(
        &self,
        entry: Entry,
        whole: &std::ops::Range<usize>,
        place: &std::ops::Range<usize>,
    ) -> Result<Option<Problem>, Problem> {
        let Some(open) = &self.shop.log else { return Err(no_log(whole)) };
        let Some(log) = &open.log else { return Err(no_log(whole)) };
        let failed = |error: fits_core::Error| from_core(&error, place.clone());
        let Some(doubt) = log.doubt(open.prior, self.advice_of(log), entry).map_err(failed)? else {
            return Ok(None);
        };
        Ok(Some(self.asked(&doubt, entry, whole, place)))
    }

    fn asked(
        &self,
        doubt: &Doubt,
        entry: Entry,
        whole: &std::ops::Range<usize>,
        place: &std::ops::Range<usize>,
    ) -> Problem {
        let said = |size: Length| shown_in(self.shown, size);
        let read = entry.reading().map(said).unwrap_or_default();
        let gauge = Story::Gauge { by: Length::ZERO };
        let advice = match doubt {
            Doubt::Jump { story: Some(story), .. } => {
                format!("probably {}; {}", story_in(self.shown, *story), story.check())
            }
            Doubt::Jump { story: None, .. } => {
                "no slip of dial or gauge explains it; measure again".to_owned()
            }
            Doubt::NoPass { .. } | Doubt::WrongWay { .. } => gauge.check().to_owned(),
            _ => String::new(),
        };
        let message = match doubt {
            Doubt::Unit { expected, is_inch } => {
                let (unit, units) = if *is_inch { ("in", "inches") } else { ("mm", "millimetres") };
                let problem = Problem::new(
                    format!("{read} was read, and about {} is expected", said(*expected)),
                    place.clone(),
                );
                // The unit that was typed gives way to the one meant.
                return problem
                    .advise(format!("nothing is entered; if {units} were meant, say so"))
                    .fix(place.end..place.end, unit);
            }
            Doubt::NoPass { before, .. } => {
                format!("{read} after {} with no cut between", said(*before))
            }
            Doubt::WrongWay { before, .. } => {
                format!("{read} after {}: the wrong way, metal does not grow", said(*before))
            }
            Doubt::Jump { expected, .. } => {
                format!("{read} was read, and about {} is expected", said(*expected))
            }
            Doubt::PastLimit { by } => {
                format!("that cut goes {} past the last limit", said(*by))
            }
            Doubt::NotInLimits { size, .. } => {
                format!("it is not inside its limits: about {}", said(*size))
            }
            Doubt::NotRead => "it was not measured after the last pass".to_owned(),
        };
        Problem::new(message, place.clone())
            .advise(match advice.as_str() {
                "" => "nothing is entered; check it, and if it stands say so".to_owned(),
                advice => format!("nothing is entered; {advice}; if it stands say so"),
            })
            .fix(whole.end..whole.end, " sure")
    }

    /// Takes an entry: asked about first, on disk next, then answered.
    fn enter(
        &mut self,
        entry: Entry,
        whole: &std::ops::Range<usize>,
        place: std::ops::Range<usize>,
    ) -> Result<Answer, Problem> {
        let doubt = self.doubt(entry, whole, &place)?;
        let of_log = self.shop.log.as_ref().and_then(|open| open.log.as_ref());
        let owner = self.advice(of_log.and_then(|log| family(log.opening.material.as_deref())));
        let Some(open) = &mut self.shop.log else { return Err(no_log(whole)) };
        let Some(log) = &mut open.log else { return Err(no_log(whole)) };
        match (log.state(), entry) {
            (State::Open, Entry::Undo) if log.standing().next().is_none() => {
                return Err(Problem::new("there is nothing to take back", whole.clone())
                    .advise("`log` shows the entries"));
            }
            (State::Open, _) | (_, Entry::Undo) => {}
            (state, _) => {
                let word = if state == State::Done { "done" } else { "scrap" };
                return Err(Problem::new(format!("the pass log is closed: {word}"), whole.clone())
                    .advise("`undo` takes that back; `bore 20 H7 from 19.6` opens another"));
            }
        }
        let is_doubted = doubt.is_some();
        let entry = match (doubt, entry) {
            (
                Some(problem),
                Entry::Cut { sure: false, .. }
                | Entry::Spring { sure: false, .. }
                | Entry::Read { sure: false, .. },
            ) => return Err(problem),
            // Only what was doubted is marked.
            (_, Entry::Cut { dial, read, .. }) => {
                Entry::Cut { dial, read, sure: is_doubted && read.is_some() }
            }
            (_, Entry::Spring { read, .. }) => Entry::Spring { read, sure: is_doubted },
            (_, Entry::Read { size, .. }) => Entry::Read { size, sure: is_doubted },
            (_, entry) => entry,
        };
        let mut notes = Vec::new();
        if let Entry::Cut { dial, read: Some(_), .. } = entry {
            let unread = Entry::Cut { dial, read: None, sure: false };
            if let Ok(Some(Doubt::PastLimit { by })) = log.doubt(open.prior, owner, unread) {
                let by = shown_in(self.shown, by);
                notes.push(format!("that cut was set {by} past the last limit"));
            }
        }
        let is_read_only = open.stored.is_read_only();
        open.stored.with(|file| file.append(&entry)).map_err(|error| {
            let advice = if is_read_only {
                "leave the other fits, or see to the file; then open the log again"
            } else {
                "make room for it or mend that, then type it again"
            };
            Problem::new(format!("nothing is entered: {error}"), whole.clone())
                .advise(advice)
                .failure()
        })?;
        log.entries.push(entry);
        self.shown_log(&place, notes)
    }

    /// Where the figures of the advice come from.
    pub(super) fn why_log(&self) -> Vec<Reason> {
        let Some(OpenLog { log: Some(log), learned_from, prior, .. }) = &self.shop.log else {
            return Vec::new();
        };
        let opening = &log.opening;
        let family = family(opening.material.as_deref());
        let mut figures = Prior::reasons(opening.feature, family, opening.overhang);
        if *learned_from > 0 {
            figures.push(Reason {
                figure: "cut factor learned".into(),
                value: format!("{:.3} ± {:.3}", prior.gain, prior.gain_sd),
                rule: format!("from {learned_from} finished logs; the usual counts as three"),
                source: "the pass logs kept".into(),
                known: Known::Seen,
            });
        }
        let off = format!(
            "repeat {}, bias {}",
            super::why::said(self.shown, opening.repeat),
            super::why::said(self.shown, opening.bias)
        );
        let instrument = Instrument::find(&opening.instrument).ok();
        match instrument.and_then(|it| it.reasons(opening.feature, opening.nominal).ok()) {
            Some(reasons) => figures.extend(reasons),
            None => figures.push(Reason {
                figure: opening.instrument.clone(),
                value: off,
                rule: "standard deviations".into(),
                source: "the crib".into(),
                known: Known::Seen,
            }),
        }
        figures.push(Reason {
            figure: "the size, and what to dial".into(),
            value: "the best estimate".into(),
            rule: format!(
                "each pass changes the size by cut factor x dialled + offset, and by what \
                 passes scatter; each reading weighs by its uncertainty; the dial that ends \
                 inside most often, at most {} % to overshoot",
                (self.advice(None).risk * 1000.0).round() / 10.0
            ),
            source: "R. E. Kalman, J. Basic Engineering 82 (1960)".into(),
            known: Known::Formula,
        });
        figures
    }

    /// The log as it stands, with what to do next.
    pub(super) fn shown_log(
        &self,
        at: &std::ops::Range<usize>,
        mut notes: Vec<String>,
    ) -> Result<Answer, Problem> {
        let Some(open) = &self.shop.log else { return Err(no_log(at)) };
        let Some(log) = &open.log else { return Err(no_log(at)) };
        let failed = |error: fits_core::Error| from_core(&error, at.clone());
        let adviser = log.adviser(open.prior, self.advice_of(log)).map_err(failed)?;
        let known = adviser.as_ref().map(Adviser::estimate).transpose().map_err(failed)?;
        let opening = &log.opening;
        if open.stored.is_read_only() && notes.is_empty() {
            notes.push("this log is only read here: another fits has it, or the file is".into());
        }
        let stands = log.stands();
        let entries = log.entries.iter().zip(stands).map(|(entry, stands)| EntryFigures {
            entry: entry.name(),
            dial_mm: match entry {
                Entry::Cut { dial, .. } => Some(Mm(*dial)),
                _ => None,
            },
            reading_mm: entry.reading().map(Mm),
            undone: !stands && *entry != Entry::Undo,
        });
        let story = adviser.as_ref().and_then(Adviser::story).map(|story| StoryFigures {
            story: story.word(),
            says: story_in(self.shown, story),
            check: story.check(),
        });
        let remark = adviser.as_ref().and_then(Adviser::remark).map(|remark| RemarkFigures {
            by: remark.by,
            dial_mm: Mm(remark.dial),
            not_mm: Mm(remark.not),
        });
        let state = log.state();
        let next = match state {
            State::Open => Some(next_figures(adviser.as_ref())?),
            State::Done | State::Scrap => None,
        };
        Ok(Answer::PassLog(Box::new(PassLogAnswer {
            limits: opening.limits().map_err(failed)?,
            log: open.stored.name(),
            state,
            kind: opening.feature,
            nominal_mm: Mm(opening.nominal),
            class: opening.class.clone(),
            lower_mm: Mm(opening.lower),
            upper_mm: Mm(opening.upper),
            start_mm: Mm(opening.start),
            step_mm: Mm(opening.step),
            instrument: opening.instrument.clone(),
            entries: entries.collect(),
            size_mm: known.map(|known| Mm(known.size)),
            size_sd_mm: known.map(|known| Mm(known.size_sd)),
            probability_good: known.map(|known| known.good),
            cut_factor: known.map(|known| known.gain),
            story: story.filter(|_| state == State::Open),
            remark: remark.filter(|_| state == State::Open),
            learned_from: open.learned_from,
            // Once: what follows the first entry has been said with the plan.
            cautions: if log.entries.is_empty() {
                work_cautions(opening.feature, opening.overhang)
            } else {
                Vec::new()
            },
            next,
            notes,
        })))
    }
}

/// What to do next, as figures.
pub(super) fn next_figures(adviser: Option<&Adviser>) -> Result<NextFigures, Problem> {
    let Some(adviser) = adviser else {
        return Ok(NextFigures {
            action: Action::ReadAgain.word(),
            dial_mm: None,
            expect_mm: None,
            measuring: true,
            readings: 1,
            reason: Some("the size is not known"),
            probability_good: None,
            probability_over: None,
        });
    };
    let next = adviser.next();
    let known = adviser.estimate().map_err(|error| from_core(&error, 0..0))?;
    let stop = if adviser.slips() >= MOST_SLIPS {
        Some(CHECK_MACHINE)
    } else {
        next.dial.filter(|dial| trusts_a_slip(adviser, &known, *dial)).map(|_| MAY_COME_FREE)
    };
    if let Some(reason) = stop {
        return Ok(NextFigures {
            action: Action::Stop.word(),
            dial_mm: None,
            expect_mm: None,
            measuring: false,
            readings: 0,
            reason: Some(reason),
            probability_good: Some(known.good),
            probability_over: Some(known.over),
        });
    }
    let expect = next
        .dial
        .filter(|dial| dial.is_positive())
        .map(|dial| {
            let mut trial = adviser.clone();
            trial.cut(dial, &[])?;
            trial.estimate().map(|known| Mm(known.size))
        })
        .transpose()
        .map_err(|error| from_core(&error, 0..0))?;
    Ok(NextFigures {
        action: next.action.word(),
        dial_mm: next.dial.map(Mm),
        expect_mm: expect,
        measuring: next.measuring,
        readings: next.readings,
        reason: next.because.map(Because::word),
        probability_good: Some(next.good),
        probability_over: Some(next.over),
    })
}

/// Is an order past the last limit by what is dialled, and short of it only
/// because the passes took less than any tool does? Two slips alike look like
/// such a tool.
fn trusts_a_slip(adviser: &Adviser, known: &Estimate, dial: Length) -> bool {
    let far = |limit: Length| {
        limit.checked_sub(known.size).and_then(Length::checked_abs).unwrap_or(Length::ZERO)
    };
    let limits = adviser.limits();
    known.gain < LEAST_FACTOR && dial > far(limits.lower()).max(far(limits.upper()))
}

/// What probably happened, in words.
fn story_in(units: Units, story: Story) -> String {
    let said = |size: Length| shown_in(units, size);
    let off = |size: Length| said(size.checked_abs().unwrap_or(size));
    match story {
        Story::OtherUnit { meant, .. } => {
            format!("it was read in the other unit: {} was meant", said(meant))
        }
        Story::Point { meant } => format!("the decimal point is off: {} was meant", said(meant)),
        Story::WholeTurn { turns, turn } => {
            let way = if turns < 0 { "short" } else { "too far" };
            let count = match turns.unsigned_abs() {
                1 => "one whole turn".to_owned(),
                count => format!("{count} whole turns"),
            };
            format!("the dial stood {count} {way} (a turn is {} on the diameter)", said(turn))
        }
        Story::ReadsRadius { ratio } => {
            format!("the dial counts the radius: {ratio:.1} times as much came off")
        }
        Story::ReadsDiameter { ratio } => {
            format!("the dial counts the diameter: {:.0} % of it came off", ratio * 100.0)
        }
        Story::HardlyMoved { took } => {
            format!("the slide hardly moved, or the tool did not reach: {} came off", off(took))
        }
        Story::Backlash { short } => {
            format!("backlash: {} less came off than was expected", said(short))
        }
        Story::Gauge { by } => {
            format!("the gauge, or how it was held: {} from what was expected", off(by))
        }
    }
}

/// A length as an instrument shows it.
pub(super) fn shown_in(units: Units, size: Length) -> String {
    let decimals = match units {
        Units::Millimetres => Decimals::MILLIMETRES,
        Units::Inches => Decimals::INCHES,
    };
    format!("{} {}", size.shown(decimals, Rounding::Nearest), decimals.unit.symbol())
}

fn no_log(at: &std::ops::Range<usize>) -> Problem {
    Problem::new("no pass log is open", at.clone())
        .advise("`bore 20 H7 from 19.6` opens one, `turn 20 g6 from 22` too")
}
