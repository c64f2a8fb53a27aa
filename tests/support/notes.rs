//! What the tests of job notes look up in a note.

use fits_core::{
    Length,
    job::whole::{Job, NominalSize},
};
use fits_repl::note;

/// The feature of that full name.
///
/// # Panics
/// Where there is none.
#[track_caller]
pub fn feature(job: &Job, name: &str) -> usize {
    let names: Vec<String> = (0..job.features.len()).map(|at| job.full_name(at)).collect();
    let at = names.iter().position(|one| one == name);
    at.unwrap_or_else(|| panic!("no {name}: {names:?}"))
}

/// The size of a feature.
///
/// # Panics
/// Where there is no such feature.
#[track_caller]
pub fn size(job: &Job, name: &str) -> Option<Length> {
    job.features[feature(job, name)].nominal.as_ref().and_then(NominalSize::size)
}

/// A size as it is written.
///
/// # Panics
/// Where it is none.
pub fn mm(text: &str) -> Length {
    text.parse().expect("a size")
}

/// The joint of the feature of that name: its other side's name, and the fit as said.
///
/// # Panics
/// Where there is none.
#[track_caller]
pub fn mate(text: &str, name: &str) -> (String, String) {
    let job = note::read(text);
    let at = feature(&job, name);
    let (_, mate) = job.mates_of(at).next().unwrap_or_else(|| panic!("no mate: {:#?}", job.mates));
    (job.full_name(mate.other(at)), mate.fit.words.clone())
}

/// The words of the first question.
pub fn asked(text: &str) -> Option<String> {
    let job = note::read(text);
    job.questions.iter().find(|one| !one.by_writer).map(|one| one.text.clone())
}
