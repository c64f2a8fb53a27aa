//! `job open FILE`, `job`, `job close`, `next`.

use std::path::PathBuf;

use crate::{
    query::Query,
    words::{
        fault::{Parsed, fatal},
        keywords::keyword,
    },
};

/// What is asked of a job.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub enum JobQuery {
    /// The note at a path is opened.
    Open(PathBuf),
    /// All that is to cut and to ask.
    Show,
    /// What to do next at the bench.
    Next,
    /// The note is put away.
    Close,
}

/// Reads a line that begins with `job`, or is `next`.
pub(crate) fn read(input: &str, _: usize) -> Option<Parsed<'_, Query>> {
    if let Ok((rest, ())) = keyword("next")(input) {
        return rest.trim().is_empty().then_some(Ok(("", Query::Job(JobQuery::Next))));
    }
    let (rest, ()) = keyword("job")(input).ok()?;
    let rest = rest.trim_start();
    if rest.trim().is_empty() {
        return Some(Ok(("", Query::Job(JobQuery::Show))));
    }
    if let Ok((after, ())) = keyword("open")(rest) {
        let name = after.trim().trim_matches(['"', '\'']);
        if name.is_empty() {
            return Some(fatal(
                after,
                0,
                "the note's file is missing",
                "as in `job open cider_press.job`",
            ));
        }
        return Some(Ok(("", Query::Job(JobQuery::Open(PathBuf::from(name))))));
    }
    if let Ok((after, ())) = keyword("close")(rest)
        && after.trim().is_empty()
    {
        return Some(Ok(("", Query::Job(JobQuery::Close))));
    }
    None
}
