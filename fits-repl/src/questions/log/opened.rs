//! How a pass log begins, and where it is kept.

use std::sync::{Arc, Mutex};

use fits_core::{
    job::{Entry, LogState, Opening, PassLog, VERSION},
    shop::adviser::{FinishedPass, Prior, Settings, learn},
    standards::{
        iso286::Feature,
        materials::{Family, Material},
    },
};

use crate::{
    answer::{Answer, LogFigures, LogsAnswer, Mm, OpenedLog, PassesAnswer},
    files::{self, LogFile},
    problem::Problem,
    query::{Machine, Part, Spot, Units},
    questions::{log::answered::shown_in, part::resolve::from_core},
    session::{Logs, Session},
};

/// Where an open log is kept.
#[derive(Clone, Debug)]
pub(crate) enum Stored {
    Memory,
    File { file: Arc<Mutex<LogFile>>, name: String },
}

impl Stored {
    pub(crate) fn file(file: LogFile) -> Self {
        let name = file.name();
        Self::File { file: Arc::new(Mutex::new(file)), name }
    }

    /// Does something with the file, if there is one.
    pub(crate) fn with(
        &self,
        action: impl FnOnce(&mut LogFile) -> std::io::Result<()>,
    ) -> std::io::Result<()> {
        match self {
            Self::Memory => Ok(()),
            Self::File { file, .. } => match file.lock() {
                Ok(mut file) => action(&mut file),
                Err(_) => Err(std::io::Error::other("the log's file is in no known state")),
            },
        }
    }

    pub(crate) fn is_read_only(&self) -> bool {
        match self {
            Self::Memory => false,
            Self::File { file, .. } => file.lock().is_ok_and(|file| file.is_read_only()),
        }
    }

    pub(crate) fn name(&self) -> Option<String> {
        match self {
            Self::Memory => None,
            Self::File { name, .. } => Some(name.clone()),
        }
    }
}

/// A log taken up, or a file that waits for one.
#[derive(Clone, Debug)]
pub(crate) struct OpenLog {
    pub(crate) log: Option<PassLog>,
    pub(crate) stored: Stored,
    pub(crate) prior: Prior,
    pub(crate) learned_from: usize,
    /// The logs before it in the same file.
    pub(crate) earlier: Vec<PassLog>,
}

impl OpenLog {
    pub(crate) fn new(log: PassLog, stored: Stored, earlier: &[PassLog]) -> Self {
        let (prior, learned_from) = expected(&log.opening, earlier);
        Self { log: Some(log), stored, prior, learned_from, earlier: earlier.to_vec() }
    }

    pub(crate) fn waiting(stored: Stored) -> Self {
        let prior = Prior::usual(Feature::Hole, None, None);
        Self { log: None, stored, prior, learned_from: 0, earlier: Vec::new() }
    }

    pub(crate) fn on_trial(&self) -> Self {
        Self { stored: Stored::Memory, ..self.clone() }
    }
}

/// What a material of the tables belongs to; a log may name one of the crib.
pub(crate) fn family(name: Option<&str>) -> Option<Family> {
    name.and_then(|name| Material::find(name).ok()).map(Material::family)
}

/// What to expect of such a job: the usual, and what finished ones of the same
/// kind taught.
fn expected(opening: &Opening, logs: &[PassLog]) -> (Prior, usize) {
    let usual =
        Prior::usual(opening.feature, family(opening.material.as_deref()), opening.overhang);
    let jobs: Vec<Vec<FinishedPass>> = logs
        .iter()
        .filter(|log| {
            log.state() != LogState::Open
                && log.opening.feature == opening.feature
                && log.opening.material == opening.material
                && !log.entries.contains(&Entry::Lost)
        })
        .filter_map(|log| log.finished_passes().ok())
        .filter(|passes| !passes.is_empty())
        .collect();
    let slices: Vec<&[FinishedPass]> = jobs.iter().map(Vec::as_slice).collect();
    match learn(&usual, &slices) {
        Ok(learned) => (learned, jobs.len()),
        Err(_) => (usual, 0),
    }
}

impl Session {
    /// What the advice of a log keeps to.
    pub(crate) fn advice_of(&self, log: &PassLog) -> Settings {
        self.advice(family(log.opening.material.as_deref()))
    }

    /// Opens a log for a plan that says where the work is.
    pub(crate) fn begin_log(
        &mut self,
        part: &Part,
        plan: &mut PassesAnswer,
    ) -> Result<(), Problem> {
        let (Some(from), Some(kind), Some(start)) =
            (&part.from, plan.feature.kind, plan.plan.start_mm)
        else {
            return Ok(());
        };
        let measuring = part.measuring.as_deref();
        let named = measuring.map_or(&[][..], |measuring| &measuring.instruments);
        let overhang = crate::questions::rehearse::answered::overhang(measuring)?;
        let nominal = plan.feature.nominal_mm.0;
        let on_head = self.kept.machine == Machine::BoringHead;
        let usual = if kind == Feature::Hole { "bore gauge" } else { "micrometer" };
        let material = self.cut_of(part, kind, &mut plan.notes)?.map(|(name, _)| name);
        let gauge = self.gauge(named, kind, nominal, &mut plan.notes)?;
        let is_named = gauge.is_some();
        // A size that no instrument of the tables reads is planned all the same.
        let gauge = match gauge.map_or_else(|| self.gauge_called(usual, kind, nominal), Ok) {
            Ok(gauge) => gauge,
            Err(error) => {
                if !matches!(self.shop.logs, Logs::Off) {
                    plan.is_not_logged = matches!(self.shop.logs, Logs::File(_));
                    plan.notes.push(format!("no log is opened: {error}"));
                }
                return Ok(());
            }
        };
        if !is_named && !matches!(self.shop.logs, Logs::Off) {
            plan.notes.push(format!(
                "no instrument was named: a {usual} is taken. Yours is remembered by \
                 `instrument {}`, or any other",
                if kind == Feature::Hole { "telescoping gauge" } else { "calliper" }
            ));
        }
        let opening = Opening {
            version: VERSION,
            feature: kind,
            nominal,
            class: plan.feature.class.to_owned(),
            lower: plan.feature.lower_mm.0,
            upper: plan.feature.upper_mm.0,
            start: start.0,
            step: self.step(),
            instrument: gauge.name,
            repeat: gauge.off.repeat,
            bias: gauge.off.bias,
            material,
            overhang,
            machine: on_head.then(|| Machine::BoringHead.word().to_owned()),
        };
        let finished = match (self.log_folder(), &self.shop.log) {
            (Some(folder), _) => files::finished(files::list(folder)),
            (None, Some(open)) => open.earlier.iter().chain(&open.log).cloned().collect(),
            _ => Vec::new(),
        };
        let keeps = matches!(self.shop.logs, Logs::Folder(_) | Logs::File(_));
        let (prior, learned_from) = expected(&opening, if keeps { &finished } else { &[] });
        let step = opening.step;
        let tolerance = opening.upper.checked_sub(opening.lower).unwrap_or(step);
        let log = PassLog::new(opening);
        let failed = |error: fits_core::Error| from_core(&error, from.at.clone());
        if let Some(problem) = self.goes_on(&log, part) {
            return Err(problem);
        }
        let adviser = log.adviser(prior, self.advice_of(&log)).map_err(failed)?;
        plan.next = self.next_figures(adviser.as_ref())?;
        let owner = self.log_owner(&log.opening).told_at_opening();
        self.open(plan, log, (prior, learned_from));
        plan.notes.extend(owner.filter(|_| plan.log.is_some()));
        // Advice that a coarse dial can hardly follow.
        if step > tolerance.half() {
            let than = if step > tolerance { "wider than" } else { "more than half of" };
            let parts = self.advice(None).dial_division(step).parts(tolerance);
            let to = shown_in(self.shown, step.checked_scale(1, parts.into()).unwrap_or(step));
            let how = match (self.advice(None).top_slide, on_head) {
                (Some(_), _) => format!("near size the top slide, set over, goes to {to}"),
                (None, true) => format!("near size a division is split to quarters, {to}"),
                (None, false) => format!(
                    "near size a division is split to quarters, {to}. A top slide set over by \
                     5.7 degrees reads a tenth: `top slide {}` says what it is divided in",
                    if self.shown == Units::Inches { "0.001in" } else { "0.02mm" }
                ),
            };
            plan.notes.push(format!(
                "one dial step is {} on the diameter, {than} the tolerance: {how}",
                shown_in(self.shown, step)
            ));
        }
        Ok(())
    }

    /// Asks where the same work was begun: to go on with its log, or not.
    fn goes_on(&self, log: &PassLog, part: &Part) -> Option<Problem> {
        let open = self.shop.log.as_ref().filter(|open| !open.stored.is_read_only())?;
        let begun = open.log.as_ref().filter(|begun| begun.state() == LogState::Open)?;
        let count = begun.standing().count();
        let what = |log: &PassLog| {
            let opening = &log.opening;
            (opening.feature, opening.nominal, opening.lower, opening.upper)
        };
        if count == 0 || what(begun) != what(log) {
            return None;
        }
        let plural = if count == 1 { "entry" } else { "entries" };
        let last = shown_in(self.shown, begun.last_reading());
        Some(
            Problem::new(
                format!("a pass log of this is open: {count} {plural}, last read {last}"),
                part.size.at.clone(),
            )
            .advise(
                "go on with it? `log` shows what to dial; for another part, `log leave` first, then \
                 this again",
            ),
        )
    }

    /// Opens the log, or says why there is none.
    fn open(&mut self, plan: &mut PassesAnswer, log: PassLog, expected: (Prior, usize)) {
        if matches!(self.shop.logs, Logs::Off) {
            return;
        }
        let mut earlier = Vec::new();
        let mut waiting = None;
        if let Some(open) = &self.shop.log {
            let has_entries = open.log.as_ref().is_some_and(|log| {
                log.state() == LogState::Open && log.standing().next().is_some()
            });
            // What another program writes is not in the way.
            let is_going = has_entries && !open.stored.is_read_only();
            if is_going {
                let name = open.stored.name().map_or(String::new(), |name| format!(" {name}"));
                plan.is_not_logged = matches!(self.shop.logs, Logs::File(_));
                plan.notes.push(format!(
                    "no log is opened: the pass log{name} goes on; `done`, `scrap` or `log leave` \
                     ends it"
                ));
                return;
            }
            if matches!(self.shop.logs, Logs::File(_)) {
                earlier = open.earlier.iter().chain(&open.log).cloned().collect();
                waiting = Some(open.stored.clone());
            }
        }
        let stored = match (&self.shop.logs, waiting) {
            (_, Some(stored)) => stored.with(|file| file.begin(&log.opening)).map(|()| stored),
            (Logs::Folder(folder), None) => {
                LogFile::create(folder, &stem(plan, self.shown), &log.opening).map(Stored::file)
            }
            _ => Ok(Stored::Memory),
        };
        match stored {
            Ok(stored) => {
                plan.log = Some(OpenedLog {
                    name: stored.name(),
                    step_mm: Mm(log.opening.step),
                    learned_from: expected.1,
                });
                let (prior, learned_from) = expected;
                self.shop.log =
                    Some(OpenLog { log: Some(log), stored, prior, learned_from, earlier });
            }
            Err(error) => {
                plan.is_not_logged = true;
                plan.notes.push(format!("no log is opened, nothing is kept: {error}"));
            }
        }
    }

    pub(crate) fn open_named(&mut self, name: &Spot<String>) -> Result<Answer, Problem> {
        let listed = self.log_folder().map(files::list).unwrap_or_default();
        let Some(found) = listed.iter().find(|log| log.name == name.value) else {
            let problem =
                Problem::new(format!("there is no pass log {}", name.value), name.at.clone());
            return Err(match listed.first() {
                Some(latest) => problem
                    .advise("`log list` names them; the last one")
                    .fix(name.at.clone(), latest.name.clone()),
                None => problem.advise("none is kept; `bore 20 H7 from 19.6` opens one"),
            });
        };
        if self.shop.log.as_ref().is_some_and(|open| {
            open.stored.name().as_ref() == Some(&found.name) && !open.stored.is_read_only()
        }) {
            return self.shown_log(&name.at, Vec::new());
        }
        let opened = LogFile::open(&found.path)
            .map_err(|error| Problem::new(error.to_string(), name.at.clone()).failure())?;
        let (listed_name, earlier) = (found.name.clone(), files::finished(listed));
        let notes = self.take_up(opened);
        self.learn_from(earlier);
        let opening = format!("pass log {listed_name} is open");
        let notes = notes.into_iter().filter(|note| !note.starts_with(&opening)).collect();
        self.shown_log(&name.at, notes)
    }

    /// What finished logs teach of the one that was taken up.
    pub(crate) fn learn_from(&mut self, finished: Vec<PassLog>) {
        if let Some(open) = &mut self.shop.log
            && let Some(log) = &open.log
        {
            let others: Vec<PassLog> = finished.into_iter().filter(|other| other != log).collect();
            (open.prior, open.learned_from) = expected(&log.opening, &others);
        }
    }

    pub(crate) fn log_list(&self) -> Answer {
        let name = |open: &OpenLog| open.log.is_some().then(|| open.stored.name()).flatten();
        let logs = self.log_folder().map(files::list).unwrap_or_default();
        let notes = if self.log_folder().is_none() && self.shop.log.is_none() {
            vec!["no pass log is open; `bore 20 H7 from 19.6` opens one".to_owned()]
        } else {
            Vec::new()
        };
        Answer::Logs(LogsAnswer {
            open: self.shop.log.as_ref().and_then(name),
            logs: logs
                .into_iter()
                .map(|listed| LogFigures {
                    state: listed.log.state(),
                    entries: listed.log.standing().count(),
                    reading_mm: Mm(listed.log.last_reading()),
                    name: listed.name,
                })
                .collect(),
            notes,
        })
    }
}

/// The start of a log file's name: what is done, to what.
fn stem(plan: &PassesAnswer, units: Units) -> String {
    let nominal =
        crate::questions::why::answered::said(units, plan.feature.nominal_mm.0).replace(' ', "");
    let text = format!("{} {} {}", plan.work, nominal.trim_end_matches("mm"), plan.feature.class);
    text.chars()
        .map(|c| if c.is_ascii_alphanumeric() || c == '.' { c } else { '-' })
        .take(40)
        .collect()
}
