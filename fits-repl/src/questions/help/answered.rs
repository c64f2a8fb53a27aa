//! Help, by topic.

use std::borrow::Cow;

use serde::{Serialize, Serializer};

/// Help on a topic.
#[derive(Clone, Debug, Serialize)]
pub struct HelpAnswer {
    /// The topic.
    pub topic: &'static str,
    /// The text, line by line.
    pub lines: Cow<'static, [&'static str]>,
    /// Queries to try, each with what it gives.
    #[serde(serialize_with = "examples_as_objects")]
    pub examples: &'static [(&'static str, &'static str)],
}

pub(crate) fn examples_as_objects<S: Serializer>(
    examples: &&'static [(&'static str, &'static str)],
    serializer: S,
) -> Result<S::Ok, S::Error> {
    #[derive(Serialize)]
    struct Example {
        query: &'static str,
        gives: &'static str,
    }
    serializer.collect_seq(examples.iter().map(|&(query, gives)| Example { query, gives }))
}
