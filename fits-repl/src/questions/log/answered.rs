//! The pass log: entries taken, one after the other.

use std::ops::Range;

use fits_core::{
    Length,
    job::{Doubt, Entry, LogState, Seen},
    size::{Decimals, Rounding},
};

use crate::{
    answer::Answer,
    problem::Problem,
    query::{Dial, LogQuery, Machine, Readings, Size, Spot, Units},
    questions::{
        log::{
            opened::{OpenLog, Stored, family},
            places::WasRead,
        },
        part::{mates::is_inch, resolve::from_core},
    },
    session::{Logs, Session},
};

impl Session {
    /// The units that an entry is typed in.
    pub(crate) fn log_in(&self, entry: &LogQuery) -> Units {
        let (dial, read) = match entry {
            LogQuery::Cut { dial, read, .. } => (Some(dial), read.as_ref()),
            LogQuery::Spring { read, .. } => (None, read.as_ref()),
            LogQuery::Read { read, .. } => (None, Some(read)),
            _ => (None, None),
        };
        let typed = dial.into_iter().chain(read.into_iter().flat_map(Readings::sizes));
        let inch = typed.into_iter().find_map(|size| is_inch(&size.value));
        match inch {
            Some(true) => Units::Inches,
            Some(false) => Units::Millimetres,
            None => self.units,
        }
    }

    /// An entry or a question.
    pub(crate) fn log(&mut self, spot: &Spot<LogQuery>) -> Result<Answer, Problem> {
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
        match &spot.value {
            LogQuery::Cut { dial, read, sure } => {
                let first = read.as_ref().and_then(|read| read.sizes().next());
                if let Some(problem) = self.size_for_dial(dial, first, *sure) {
                    return Err(problem);
                }
                self.is_on_its_machine(&dial.at)?;
                let dialled = change(self, dial)?;
                let WasRead { size, seen, notes } = self.was_read(read.as_ref())?;
                let entry = Entry::Cut { dial: dialled, read: size, sure: *sure, seen };
                let place = read.as_ref().map_or(dial.at.clone(), Readings::at);
                self.enter(entry, at, place, notes)
            }
            LogQuery::Spring { read, sure } => {
                let WasRead { size, seen, notes } = self.was_read(read.as_ref())?;
                let place = read.as_ref().map_or(at.clone(), Readings::at);
                self.enter(Entry::Spring { read: size, sure: *sure, seen }, at, place, notes)
            }
            LogQuery::Read { read, sure } => {
                let WasRead { size, seen, notes } = self.was_read(Some(read))?;
                let size = size.unwrap_or(Length::ZERO);
                self.enter(Entry::Read { size, sure: *sure, seen }, at, read.at(), notes)
            }
            // Whoever takes back an entry that was refused means that one.
            LogQuery::Undo
                if self.refused != crate::session::Refused::Nothing && self.shop.log.is_some() =>
            {
                Err(Problem::new(
                    "the line before this was refused: nothing was entered",
                    at.clone(),
                )
                .advise(
                    "nothing is taken back; `log` shows the entries, and a second `undo` \
                             takes back the last of them",
                ))
            }
            LogQuery::Undo => self.enter(Entry::Undo, at, at.clone(), Vec::new()),
            LogQuery::Done { sure } => {
                let doubted = if *sure { None } else { self.doubt(&Entry::Done, at, at)? };
                if let Some(problem) = doubted {
                    return Err(problem);
                }
                self.enter(Entry::Done, at, at.clone(), Vec::new())?;
                let notes = self.log_into_job();
                self.shown_log(at, notes)
            }
            LogQuery::Scrap => self.enter(Entry::Scrap, at, at.clone(), Vec::new()),
            LogQuery::Show => self.log_as_it_stands(at),
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

    /// The open log, or the list where none is open.
    pub(crate) fn log_as_it_stands(&self, at: &Range<usize>) -> Result<Answer, Problem> {
        match &self.shop.log {
            Some(OpenLog { log: Some(_), .. }) => self.shown_log(at, Vec::new()),
            _ => Ok(self.log_list()),
        }
    }

    /// Refuses what was dialled where the log is of another machine: the dials in
    /// force are not the ones that were turned.
    fn is_on_its_machine(&self, at: &Range<usize>) -> Result<(), Problem> {
        match self.other_machine() {
            Some(machine) => Err(Problem::new(
                format!(
                    "this log is on the {}, and the dials in force are the {}'s",
                    machine.word(),
                    self.kept.machine.word()
                ),
                at.clone(),
            )
            .advise(format!("set the machine first, as `machine {}`", machine.word()))),
            None => Ok(()),
        }
    }

    /// The machine of the open log, where another one is in force.
    pub(crate) fn other_machine(&self) -> Option<Machine> {
        let log = self.shop.log.as_ref()?.log.as_ref()?;
        let own = log.opening.machine.as_deref().and_then(Machine::named).unwrap_or_default();
        Some(own).filter(|own| *own != self.kept.machine && log.state() == LogState::Open)
    }

    /// Is a size about that of the part whose log is open?
    pub(crate) fn is_near_log(&self, size: Length) -> bool {
        let open = self.shop.log.as_ref().and_then(|open| open.log.as_ref());
        open.filter(|log| log.state() == LogState::Open).is_some_and(|log| {
            let last = log.last_reading().tenth_nanometres();
            // Within a tenth.
            (size.tenth_nanometres() - last).abs() <= last / 10
        })
    }

    /// Takes an entry: asked about first, on disk next, then answered.
    fn enter(
        &mut self,
        entry: Entry,
        whole: &Range<usize>,
        place: Range<usize>,
        mut notes: Vec<String>,
    ) -> Result<Answer, Problem> {
        let doubt = self.doubt(&entry, whole, &place)?;
        let of_log = self.shop.log.as_ref().and_then(|open| open.log.as_ref());
        let owner = self.advice(of_log.and_then(|log| family(log.opening.material.as_deref())));
        let Some(open) = &mut self.shop.log else { return Err(no_log(whole)) };
        let Some(log) = &mut open.log else { return Err(no_log(whole)) };
        match (log.state(), &entry) {
            (LogState::Open, Entry::Undo) if log.standing().next().is_none() => {
                return Err(Problem::new("there is nothing to take back", whole.clone())
                    .advise("`log` shows the entries"));
            }
            (LogState::Open, _) | (_, Entry::Undo) => {}
            (state, _) => {
                let word = if state == LogState::Done { "done" } else { "scrap" };
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
            (_, Entry::Cut { dial, read, seen, .. }) => {
                Entry::Cut { dial, read, sure: is_doubted && read.is_some(), seen }
            }
            (_, Entry::Spring { read, seen, .. }) => Entry::Spring { read, sure: is_doubted, seen },
            (_, Entry::Read { size, seen, .. }) => Entry::Read { size, sure: is_doubted, seen },
            (_, entry) => entry,
        };
        if let Entry::Cut { dial, read: Some(_), .. } = entry {
            let unread = Entry::Cut { dial, read: None, sure: false, seen: Seen::default() };
            if let Ok(Some(Doubt::PastLimit { by })) = log.doubt(open.prior, owner, &unread) {
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
}

/// A length as an instrument shows it.
pub(crate) fn shown_in(units: Units, size: Length) -> String {
    let decimals = match units {
        Units::Millimetres => Decimals::MILLIMETRES,
        Units::Inches => Decimals::INCHES,
    };
    format!("{} {}", size.shown(decimals, Rounding::Nearest), decimals.unit.symbol())
}

pub(crate) fn no_log(at: &Range<usize>) -> Problem {
    Problem::new("no pass log is open", at.clone())
        .advise("`bore 20 H7 from 19.6` opens one, `turn 20 g6 from 22` too")
}
