//! What a session keeps beside its answers: the crib, the settings and the
//! pass log, in memory or in files.

use std::{
    path::{Path, PathBuf},
    sync::Arc,
};

use fits_core::{Length, job::Crib};

use crate::{
    files::{self, CribFile, Dials, Home, LogFile, SettingsFile},
    query::{Dial, Machine},
    questions::log::opened::{OpenLog, Stored},
    session::Session,
};

/// Where pass logs are kept.
#[derive(Clone, Debug, Default)]
#[non_exhaustive]
pub enum Logs {
    /// Nowhere: a plan opens no log.
    Off,
    /// In memory, for as long as the program runs.
    #[default]
    Memory,
    /// A file each, in a folder.
    Folder(PathBuf),
    /// One after the other in one file.
    File(PathBuf),
}

/// The settings beside units and dial.
#[derive(Clone, Debug, Default)]
pub(crate) struct Kept {
    /// The division of the dials, where it was set.
    pub(crate) graduation: Option<Length>,
    /// What a whole turn of them reads, where it was set.
    pub(crate) dial_turn: Option<Length>,
    /// The least that the tools cut rather than rub, on the diameter.
    pub(crate) least_chip: Option<Length>,
    /// The chance of overshooting that a cut may have, 0 to 1.
    pub(crate) risk: Option<f64>,
    /// What readings of bores and of shafts are taken with, unless a query names
    /// another.
    pub(crate) instrument: [Option<String>; 2],
    /// What the top slide of the lathe is divided in, where it has one.
    pub(crate) top_slide: Option<Length>,
    /// The machine in force: the dials above are its own.
    pub(crate) machine: Machine,
    /// The dials of the other machine.
    pub(crate) other: Dials,
    /// What the work is made of, unless a query names another.
    pub(crate) material: Option<String>,
}

/// The crib, the pass log and their files.
#[derive(Debug, Default)]
pub(crate) struct Shop {
    pub(crate) crib: CribFile,
    pub(crate) settings: Option<SettingsFile>,
    pub(crate) logs: Logs,
    pub(crate) log: Option<OpenLog>,
    pub(crate) job: Option<files::JobFile>,
}

impl Shop {
    pub(crate) fn crib(&self) -> &Crib {
        self.crib.crib()
    }

    /// The same, where nothing is written.
    pub(crate) fn on_trial(&self) -> Self {
        Self {
            crib: self.crib.on_trial(),
            settings: None,
            logs: if matches!(self.logs, Logs::Off) { Logs::Off } else { Logs::Memory },
            log: self.log.as_ref().map(OpenLog::on_trial),
            job: self.job.clone(),
        }
    }
}

impl Session {
    /// Takes the crib from a file, and says what was wrong with it.
    pub fn use_crib(&mut self, file: PathBuf) -> Vec<String> {
        let (crib, notes) = CribFile::load(file);
        self.shop.crib = crib;
        notes
    }

    /// Takes the crib from the user's folder, and says what was wrong with it.
    pub fn use_own_crib(&mut self, home: &Home) -> Vec<String> {
        match &home.config {
            Some(folder) => self.use_crib(folder.join("crib.toml")),
            None => Vec::new(),
        }
    }

    /// Takes the settings from the user's folder and remembers them there, and
    /// says what was wrong with them.
    pub fn use_own_settings(&mut self, home: &Home) -> Vec<String> {
        let Some(folder) = &home.config else { return Vec::new() };
        let (file, kept, notes) = SettingsFile::load(folder.join("settings.toml"));
        self.shop.settings = Some(file);
        if let Some(units) = kept.units {
            self.take_units(units);
        }
        self.dial = kept.dial.unwrap_or(self.dial);
        self.kept = Arc::new(Kept {
            graduation: kept.graduation,
            dial_turn: kept.dial_turn,
            least_chip: kept.least_chip,
            risk: kept.risk,
            instrument: kept.instrument,
            top_slide: kept.top_slide,
            machine: Machine::Lathe,
            other: kept.boring_head,
            material: kept.material,
        });
        self.work_on(kept.machine.unwrap_or_default());
        notes
    }

    /// Keeps pass logs in a place, goes on with the one that is open there,
    /// and says which, and what was wrong with it.
    ///
    /// # Errors
    /// The one file named cannot be made or read.
    pub fn keep_logs(&mut self, logs: Logs) -> std::io::Result<Vec<String>> {
        let notes = match &logs {
            Logs::Off | Logs::Memory => Vec::new(),
            Logs::File(path) => {
                let opened = LogFile::open(path)?;
                self.take_up(opened)
            }
            Logs::Folder(folder) => {
                let listed = files::list(folder);
                match files::latest_open(&listed) {
                    Some(latest) => match LogFile::open(&latest.path) {
                        Ok(opened) => {
                            let notes = self.take_up(opened);
                            self.learn_from(files::finished(listed));
                            notes
                        }
                        Err(error) => vec![error.to_string()],
                    },
                    None => Vec::new(),
                }
            }
        };
        self.shop.logs = logs;
        Ok(notes)
    }

    /// Goes on with a log as it was found.
    pub(crate) fn take_up(&mut self, opened: files::Opened) -> Vec<String> {
        let files::Opened { file, mut logs, mut notes } = opened;
        let name = file.name();
        let stored = Stored::file(file);
        match logs.pop() {
            Some(log) => {
                if log.state() == fits_core::job::LogState::Open {
                    let count = log.standing().count();
                    let plural = if count == 1 { "entry" } else { "entries" };
                    notes.push(format!(
                        "pass log {name} is open: {} {}, {count} {plural}; `log` shows it",
                        log.opening.nominal, log.opening.class
                    ));
                }
                self.shop.log = Some(OpenLog::new(log, stored, &logs));
            }
            None => self.shop.log = Some(OpenLog::waiting(stored)),
        }
        notes
    }

    /// The folder of the logs, where they are kept in one.
    pub(crate) fn log_folder(&self) -> Option<&Path> {
        match &self.shop.logs {
            Logs::Folder(folder) => Some(folder),
            _ => None,
        }
    }

    /// Puts the dials of a machine in force.
    pub(crate) fn work_on(&mut self, machine: Machine) {
        if self.kept.machine == machine {
            return;
        }
        let kept = Arc::make_mut(&mut self.kept);
        let now =
            Dials { dial: Some(self.dial), graduation: kept.graduation, dial_turn: kept.dial_turn };
        let then = std::mem::replace(&mut kept.other, now);
        (kept.machine, kept.graduation) = (machine, then.graduation);
        kept.dial_turn = then.dial_turn;
        self.dial = then.dial.unwrap_or(Dial::Diameter);
    }
}
