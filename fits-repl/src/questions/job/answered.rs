//! A job at the prompt: opened, shown, gone on with, read into.

use std::path::Path;

use fits_core::job::whole::Job;
use serde::Serialize;

use super::{
    asked::JobQuery,
    figures::{CutFigures, figures},
    page, told,
};
use crate::{answer::Answer, files::JobFile, note, problem::Problem, session::Session};

/// What is open, asked or done of a job.
#[derive(Clone, Debug, Serialize, schemars::JsonSchema)]
pub struct JobAnswer {
    /// The note.
    pub file: String,
    /// What was done, or happened to the file.
    pub notes: Vec<String>,
    /// Its features.
    pub features: Vec<CutFigures>,
    /// What is to be asked.
    pub questions: Vec<String>,
    /// What is next.
    pub next_feature: Option<String>,
    #[serde(skip)]
    pub(crate) page: String,
}

impl Session {
    pub(crate) fn job_query(&mut self, query: &JobQuery, line: &str) -> Result<Answer, Problem> {
        let all = 0..line.len();
        if let JobQuery::Open(path) = query {
            // The prompt tries a line at every key: nothing is read there.
            if self.trying {
                return Ok(answer("", Vec::new(), &Job::default(), String::new()));
            }
            // Lines out of a pipe touch no file but those on the command line.
            if self.today.is_none() {
                return Err(Problem::new("notes are opened at the prompt", all)
                    .advise("the command fits job FILE reads one"));
            }
            return self
                .open_job(path)
                .map_err(|error| Problem::new(error.to_string(), all).failure());
        }
        let Some(mut file) = self.shop.job.take() else {
            return Err(
                Problem::new("no job is open", all).advise("as in `job open cider_press.job`")
            );
        };
        if matches!(query, JobQuery::Close) && !self.trying {
            return Ok(answer(
                &file.name(),
                vec![format!("{} is put away", file.name())],
                &Job::default(),
                String::new(),
            ));
        }
        let mut notes = Vec::new();
        if !self.trying {
            match file.again() {
                Ok(true) => notes.push(format!("{} was changed: read again", file.name())),
                Ok(false) => {}
                Err(error) => notes.push(format!("{error}; shown as it was read last")),
            }
        }
        let job = note::read(file.text());
        let page = match query {
            JobQuery::Next => {
                let mut out = String::new();
                super::next::next(&mut out, &job, &mut self.trial());
                out
            }
            _ => page::page(&job, file.text(), &file.name()),
        };
        let answer = answer(&file.name(), notes, &job, page);
        self.shop.job = Some(file);
        Ok(answer)
    }

    /// Opens a note, and shows it.
    ///
    /// # Errors
    /// It cannot be read.
    fn open_job(&mut self, path: &Path) -> std::io::Result<Answer> {
        let file = JobFile::open(path)?;
        let job = note::read(file.text());
        let shown = page::page(&job, file.text(), &file.name());
        let answer = answer(&file.name(), Vec::new(), &job, shown);
        self.shop.job = Some(file);
        Ok(answer)
    }

    /// `journal = .7498` with a job open: nothing where the line is something
    /// else.
    pub(crate) fn job_reading(&mut self, line: &str) -> Option<Result<Answer, Problem>> {
        let mut file = self.shop.job.clone()?;
        let (name, size) = line.split_once('=')?;
        let (name, size) = (name.trim(), size.trim());
        let names_one = name.chars().all(|c| c.is_alphanumeric() || c == ' ' || c == '-')
            && name.starts_with(|c: char| c.is_alphabetic());
        if !names_one || !size.starts_with(|c: char| c.is_ascii_digit() || c == '.') {
            return None;
        }
        let mut notes = Vec::new();
        if !self.trying {
            match file.again() {
                Ok(true) => notes.push(format!("{} was changed: read again", file.name())),
                Ok(false) => {}
                Err(error) => {
                    return Some(Err(Problem::new(error.to_string(), 0..line.len()).failure()));
                }
            }
        }
        let job = note::read(file.text());
        let said = name.to_lowercase();
        let named: Vec<usize> = (0..job.features.len())
            .filter(|at| !job.is_split(*at))
            .filter(|at| {
                let (full, own) =
                    (job.full_name(*at).to_lowercase(), job.features[*at].name.to_lowercase());
                full == said || own == said
            })
            .collect();
        let feature = match named.as_slice() {
            [] => {
                let mut names: Vec<String> = (0..job.features.len())
                    .filter(|at| !job.is_split(*at) && job.features[*at].side.surface().is_some())
                    .map(|at| job.full_name(at))
                    .collect();
                names.truncate(6);
                let problem =
                    Problem::new(format!("the job has no feature `{name}`"), 0..name.len())
                        .advise(format!("it has: {}", names.join(", ")));
                // A plain query may be meant: `hole = 20.013` is none by itself.
                return Some(Err(problem));
            }
            [only] => *only,
            several => {
                let choices: Vec<String> =
                    several.iter().map(|at| format!("{} = {size}", job.full_name(*at))).collect();
                return Some(Err(Problem::new(
                    format!("`{name}` is a feature of {} parts", several.len()),
                    0..name.len(),
                )
                .choose(choices)));
            }
        };
        let full = job.full_name(feature);
        let today = self.today.map_or_else(String::new, |today| format!("{} ", today()));
        let entry = format!(
            "{}{full} = {size}",
            if today.is_empty() { "Readings: ".to_owned() } else { today }
        );
        let before = job.features[feature].readings.len();
        let check = |whole: &str| {
            let then = note::read(whole);
            let found = (0..then.features.len()).find(|at| then.full_name(*at) == full);
            match found.map(|at| then.features[at].readings.len()) {
                Some(now) if now == before + 1 => Ok(()),
                _ => Err(format!(
                    "`{entry}` would not be read as a reading of the {full}: write it into the note by hand"
                )),
            }
        };
        if self.trying {
            return Some(Ok(answer(&file.name(), notes, &Job::default(), String::new())));
        }
        let place = line.len() - size.len()..line.len();
        if let Err(error) = file.append(&entry, check) {
            let problem = Problem::new(error.to_string(), place);
            let is_other = error.kind() == std::io::ErrorKind::Other;
            return Some(Err(if is_other { problem } else { problem.failure() }));
        }
        notes.push(format!("written to {}: {entry}", file.name()));
        let then = note::read(file.text());
        notes.extend(changed(&job, &then));
        let mut next = String::new();
        super::next::next(&mut next, &then, &mut self.trial());
        let answer = answer(&file.name(), notes, &then, format!("NEXT\n{next}"));
        self.shop.job = Some(file);
        Some(Ok(answer))
    }
}

/// What a reading changed: the limits of its mates.
fn changed(before: &Job, after: &Job) -> Vec<String> {
    (0..after.features.len())
        .filter(|at| after.features[*at].reading().is_none())
        .filter_map(|at| {
            let name = after.full_name(at);
            let (limits, _) = after.limits(at)?.ok()?;
            let was = (0..before.features.len()).find(|at| before.full_name(*at) == name)?;
            let (old, _) = before.limits(was)?.ok()?;
            (old != limits).then(|| {
                let unit = after.features[at].unit;
                format!(
                    "the {name} is now cut to {}, it was {}",
                    page::range(limits, unit),
                    page::range(old, unit)
                )
            })
        })
        .collect()
}

fn answer(file: &str, notes: Vec<String>, job: &Job, page: String) -> Answer {
    let questions = job
        .questions
        .iter()
        .chain(&told::unsettled(job, &job.worked()))
        .map(|question| format!("line {}: {}", question.line, question.text))
        .collect();
    Answer::Job(Box::new(JobAnswer {
        file: file.to_owned(),
        notes,
        features: figures(job),
        questions,
        next_feature: job.next().map(|at| job.full_name(at)),
        page,
    }))
}
