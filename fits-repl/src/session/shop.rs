//! What a session keeps beside its answers: the crib, the settings and the
//! pass log, in memory or in files.

use std::{
    path::{Path, PathBuf},
    sync::Arc,
};

use fits_core::{Length, job::Crib, standards::iso286::Feature};

use crate::{
    answer::{Answer, InForce, Mm, OtherMachine},
    files::{self, CribFile, Dials, Home, LogFile, SettingsFile},
    problem::Problem,
    query::{Dial, Machine, Size, Spot, Units},
    questions::{
        log::opened::{OpenLog, Stored},
        why::answered::said,
    },
    session::Session,
};

/// Where pass logs are kept.
#[derive(Clone, Debug, Default)]
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
    /// The division of the dials, where it was told.
    pub(crate) graduation: Option<Length>,
    /// What a whole turn of them reads, where it was told.
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
    settings: Option<SettingsFile>,
    pub(crate) logs: Logs,
    pub(crate) log: Option<OpenLog>,
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
        self.units = kept.units.unwrap_or(self.units);
        self.units_chosen |= kept.units.is_some();
        self.shown = self.units;
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
                if log.state() == fits_core::job::State::Open {
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

    /// The settings in force; one of them was just set and is remembered.
    pub(crate) fn in_force(&self, set: Option<&str>) -> Answer {
        let on_head = self.kept.machine == Machine::BoringHead;
        let note = set.zip(self.shop.settings.as_ref()).map(|(key, file)| {
            let value = |key: &str| match key {
                "units" => Some(if self.units == Units::Inches { "in" } else { "mm" }.to_owned()),
                "dial" => Some(self.dial.word().to_owned()),
                "graduation" => self.kept.graduation.map(|length| length.to_string()),
                "dial_turn" => self.kept.dial_turn.map(|length| length.to_string()),
                "least_chip" => self.kept.least_chip.map(|length| length.to_string()),
                "risk" => self.kept.risk.map(|risk| risk.to_string()),
                "top_slide" => self.kept.top_slide.map(|length| length.to_string()),
                "machine" => Some(self.kept.machine.word().to_owned()),
                "instrument_bores" => self.kept.instrument[0].clone(),
                "instrument_shafts" => self.kept.instrument[1].clone(),
                _ => self.kept.material.clone(),
            };
            let keys: &[&str] = match key {
                "instrument" => &["instrument_bores", "instrument_shafts"],
                _ => &[key],
            };
            let kept = keys.iter().try_for_each(|key| {
                // Each machine has dials of its own.
                let is_dial = matches!(*key, "dial" | "graduation" | "dial_turn");
                let name =
                    if is_dial && on_head { format!("boring_head_{key}") } else { (*key).into() };
                file.keep(&name, value(key).as_deref())
            });
            match kept {
                Ok(()) => "remembered".to_owned(),
                Err(error) => format!("not remembered: {error}"),
            }
        });
        Answer::Settings(Box::new(InForce {
            settings: self.settings(),
            graduation_mm: self.kept.graduation.map(Mm),
            dial_turn_mm: self.kept.dial_turn.map(Mm),
            least_chip_mm: self.kept.least_chip.map(Mm),
            risk: self.kept.risk,
            machine: self.kept.machine,
            other_machine: OtherMachine {
                machine: if on_head { Machine::Lathe } else { Machine::BoringHead },
                dial: self.kept.other.dial.unwrap_or(Dial::Diameter),
                graduation_mm: self.kept.other.graduation.map(Mm),
                dial_turn_mm: self.kept.other.dial_turn.map(Mm),
            },
            top_slide_mm: self.kept.top_slide.map(Mm),
            instrument: self.kept.instrument.iter().flatten().next().cloned(),
            instrument_bores: self.kept.instrument[0].clone(),
            instrument_shafts: self.kept.instrument[1].clone(),
            material: self.kept.material.clone(),
            note,
        }))
    }

    pub(crate) fn set_graduation(&mut self, size: &Size) -> Result<Answer, Problem> {
        let division = self.nominal(size)?;
        if !(Length::MICROMETRE..=Length::MILLIMETRE).contains(&division) {
            return Err(Problem::new("no dial is divided so", size.at.clone())
                .advise("as in `dial graduation 0.02mm` or `dial graduation 0.001in`"));
        }
        if let Some(turn) = self.kept.dial_turn.filter(|turn| *turn < division) {
            let turn = said(self.shown, turn);
            return Err(Problem::new(
                format!("a turn of the dial is {turn}, which is smaller"),
                size.at.clone(),
            )
            .advise("set the turn first, as `dial turn 2mm` or `dial turn 0.1in`"));
        }
        Arc::make_mut(&mut self.kept).graduation = Some(division);
        Ok(self.in_force(Some("graduation")))
    }

    pub(crate) fn set_turn(&mut self, size: &Size) -> Result<Answer, Problem> {
        let turn = self.nominal(size)?;
        let division = self.dial_division();
        if turn < division || turn > Length::INCH {
            let message = if turn < division {
                format!(
                    "a turn of the dial is no less than a division, {}",
                    said(self.shown, division)
                )
            } else {
                "no dial turns so far".to_owned()
            };
            return Err(Problem::new(message, size.at.clone())
                .advise("as the dial shows it, `dial turn 2mm` or `dial turn 0.1in`"));
        }
        Arc::make_mut(&mut self.kept).dial_turn = Some(turn);
        Ok(self.in_force(Some("dial_turn")))
    }

    pub(crate) fn set_least_chip(&mut self, size: &Size) -> Result<Answer, Problem> {
        let least = self.nominal(size)?;
        if !(Length::MICROMETRE..=Length::MILLIMETRE).contains(&least) {
            return Err(Problem::new("no tool rubs at such a cut", size.at.clone())
                .advise("on the diameter, as `least chip 0.02mm` or `least chip 0.001in`"));
        }
        Arc::make_mut(&mut self.kept).least_chip = Some(least);
        Ok(self.in_force(Some("least_chip")))
    }

    /// The divisions of the lathe's top slide; nothing where it has none.
    pub(crate) fn set_top_slide(&mut self, size: Option<&Size>) -> Result<Answer, Problem> {
        let division = size.map(|size| self.nominal(size)).transpose()?;
        if let (Some(size), Some(division)) = (size, division)
            && !(Length::MICROMETRE..=Length::MILLIMETRE).contains(&division)
        {
            return Err(Problem::new("no top slide is divided so", size.at.clone())
                .advise("its travel, as `top slide 0.02mm` or `top slide 0.001in`"));
        }
        Arc::make_mut(&mut self.kept).top_slide = division;
        Ok(self.in_force(Some("top_slide")))
    }

    pub(crate) fn set_machine(&mut self, name: Option<Spot<String>>) -> Result<Answer, Problem> {
        let Some(name) = name else { return Ok(self.in_force(None)) };
        let Some(machine) = Machine::named(&name.value.to_lowercase()) else {
            return Err(Problem::new(format!("no machine is called {}", name.value), name.at)
                .advise("`machine lathe` or `machine boring head`"));
        };
        self.work_on(machine);
        Ok(self.in_force(Some("machine")))
    }

    /// Puts the dials of a machine in force.
    fn work_on(&mut self, machine: Machine) {
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

    /// The chance of overshooting that a cut may have: a word, a percentage or
    /// a number from 0 to 1. The words are common practice, no source.
    pub(crate) fn set_risk(&mut self, typed: Option<Spot<String>>) -> Result<Answer, Problem> {
        let Some(typed) = typed else { return Ok(self.in_force(None)) };
        let text = typed.value.to_lowercase();
        let percentage = text.strip_suffix('%').or_else(|| text.strip_suffix("percent"));
        let number = percentage.unwrap_or(&text).trim().parse::<f64>().ok();
        let risk = match (text.as_str(), number, percentage) {
            ("careful", ..) => Some(0.01),
            ("usual", ..) => None,
            ("bold", ..) => Some(0.1),
            (_, Some(number), Some(_)) => Some(number / 100.0),
            (_, Some(number), None) => Some(number),
            (_, None, _) => {
                return Err(Problem::new("this is no chance of overshooting", typed.at)
                    .advise("`risk careful`, `risk usual`, `risk bold`, or as `risk 5%`"));
            }
        };
        if risk.is_some_and(|risk| !(risk > 0.0 && risk < 1.0)) {
            let problem = Problem::new("a risk lies between 0 and 1", typed.at.clone());
            return Err(
                match number.filter(|it| percentage.is_none() && *it > 0.0 && *it < 100.0) {
                    Some(_) => problem
                        .advise("if a percentage was meant")
                        .fix(typed.at.end..typed.at.end, "%"),
                    None => problem.advise("of a hundred cuts so many overshoot, as `risk 5%`"),
                },
            );
        }
        Arc::make_mut(&mut self.kept).risk = risk;
        Ok(self.in_force(Some("risk")))
    }

    pub(crate) fn set_instrument(&mut self, name: Option<Spot<String>>) -> Result<Answer, Problem> {
        let Some(name) = name else { return Ok(self.in_force(None)) };
        let mut name = name;
        let mut only = None;
        for (words, kind) in [
            ("for bores", Feature::Hole),
            ("for holes", Feature::Hole),
            ("for shafts", Feature::Shaft),
        ] {
            let typed = name.value.to_lowercase();
            if let Some(rest) = typed.strip_prefix(words) {
                let from = name.value.len() - rest.trim_start().len();
                name.value.drain(..from);
                name.at.start += from;
                only = Some(kind);
            }
        }
        let found = self.instrument_named(&name)?;
        let measures = |kind| match self.listed_kinds(&found) {
            Some(listed) => listed.measures(kind),
            None => true,
        };
        if let Some(kind) = only.filter(|kind| !measures(*kind)) {
            return Err(Problem::new(format!("a {found} measures no {kind}"), name.at)
                .advise("as in `instrument for bores telescoping gauge`"));
        }
        let kinds = [Feature::Hole, Feature::Shaft]
            .map(|kind| measures(kind) && only.is_none_or(|only| only == kind));
        let kept = Arc::make_mut(&mut self.kept);
        for (place, is_set) in kept.instrument.iter_mut().zip(kinds) {
            if is_set {
                *place = Some(found.clone());
            }
        }
        Ok(self.in_force(Some("instrument")))
    }

    pub(crate) fn set_material(&mut self, name: Option<Spot<String>>) -> Result<Answer, Problem> {
        let Some(name) = name else { return Ok(self.in_force(None)) };
        let (found, _) = self.material_kind(&name)?;
        Arc::make_mut(&mut self.kept).material = Some(found);
        Ok(self.in_force(Some("material")))
    }
}
