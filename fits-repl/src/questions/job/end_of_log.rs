//! A pass log and the feature of the open job that it is of: where the log is
//! done, its last reading becomes the feature's.

use fits_core::{
    job::{
        LogState, Opening,
        whole::{Job, NominalSize},
    },
    size::Unit,
};

use super::page;
use crate::{answer::Answer, note, query::Units, session::Session};

/// A tenth of a millimetre, in tenths of a nanometre.
const ABOUT: i64 = 1_000_000;

/// Whose log it is, by side, size and limits.
pub(crate) enum Owner {
    /// No job is open, or none of its features waits for such a size.
    None,
    /// One waits: its full name.
    One(String),
    /// Several wait.
    Several(Vec<String>),
}

impl Owner {
    /// What is said of it when the log is opened.
    pub(crate) fn told_at_opening(&self) -> Option<String> {
        match self {
            Self::None => None,
            Self::One(name) => Some(format!(
                "of the open job it is the {name}: at `done` its last reading is written there"
            )),
            Self::Several(names) => Some(format!(
                "of the open job it may be the {}: at `done` you are asked which",
                names.join(" or the ")
            )),
        }
    }
}

impl Session {
    /// The feature of the open job that a log is of.
    pub(crate) fn log_owner(&self, opening: &Opening) -> Owner {
        let Some(file) = &self.shop.job else { return Owner::None };
        let job = note::read(file.text());
        let mut found = waiting(&job, opening, true);
        if found.is_empty() {
            found = waiting(&job, opening, false);
        }
        let mut names: Vec<String> = found.into_iter().map(|at| job.full_name(at)).collect();
        match names.len() {
            0 => Owner::None,
            1 => Owner::One(names.remove(0)),
            _ => Owner::Several(names),
        }
    }

    /// Writes the end of the log that is done into the open job, and says so.
    pub(crate) fn log_into_job(&mut self) -> Vec<String> {
        let Some(log) = self.shop.log.as_ref().and_then(|open| open.log.as_ref()) else {
            return Vec::new();
        };
        if log.state() != LogState::Done || self.trying {
            return Vec::new();
        }
        let owner = self.log_owner(&log.opening);
        let size = page::exact(log.last_reading(), log_unit(self.shown));
        match owner {
            Owner::None => Vec::new(),
            Owner::One(name) => match self.job_reading(&format!("{name} = {size}")) {
                Some(Ok(Answer::Job(answer))) => answer.notes,
                Some(Err(problem)) => vec![format!(
                    "it is not written into the job: {}; type `{name} = {size}` there",
                    problem.message
                )],
                _ => Vec::new(),
            },
            Owner::Several(names) => {
                let typed: Vec<String> =
                    names.iter().map(|name| format!("`{name} = {size}`")).collect();
                vec![format!("which feature of the open job was it? Type {}", typed.join(" or "))]
            }
        }
    }
}

/// The unit that readings are written in.
const fn log_unit(shown: Units) -> Unit {
    match shown {
        Units::Inches => Unit::Inch,
        Units::Millimetres => Unit::Millimetre,
    }
}

/// Features of the job that wait for such a size, or for just these limits.
fn waiting(job: &Job, opening: &Opening, by_limits: bool) -> Vec<usize> {
    (0..job.features.len())
        .filter(|at| {
            let feature = &job.features[*at];
            feature.side.surface() == Some(opening.feature)
                && feature.reading().is_none()
                && !job.is_split(*at)
                && if by_limits {
                    job.limits(*at).and_then(Result::ok).is_some_and(|(limits, _)| {
                        limits.lower() == opening.lower && limits.upper() == opening.upper
                    })
                } else {
                    let nominal = feature.nominal.as_ref().and_then(NominalSize::size);
                    // Limits that were typed have their own middle for a nominal.
                    nominal.is_some_and(|size| {
                        let off = size.tenth_nanometres() - opening.nominal.tenth_nanometres();
                        off.abs() <= ABOUT
                    })
                }
        })
        .collect()
}
