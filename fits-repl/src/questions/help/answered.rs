//! Help, by topic.

use schemars::JsonSchema;
use serde::{Serialize, Serializer};

type Examples = &'static [(&'static str, &'static str)];

/// What there is to say on a topic.
#[derive(Clone, Copy, Debug)]
#[non_exhaustive]
pub struct HelpTopic {
    /// The topic.
    pub topic: &'static str,
    /// What else it is asked by.
    pub also: &'static [&'static str],
    /// The text, line by line.
    pub lines: &'static [&'static str],
    /// Queries to try, each with what it gives.
    pub examples: Examples,
}

impl HelpTopic {
    /// The help on it.
    pub fn answer(&self) -> HelpAnswer {
        let lines = self.lines.iter().map(|line| (*line).to_owned()).collect();
        HelpAnswer { topic: self.topic, lines, examples: self.examples }
    }
}

/// Help on a topic.
#[derive(Clone, Debug, JsonSchema, Serialize)]
#[non_exhaustive]
pub struct HelpAnswer {
    /// The topic.
    pub topic: &'static str,
    /// The text, line by line.
    pub lines: Vec<String>,
    /// Queries to try, each with what it gives.
    #[serde(serialize_with = "examples_as_objects")]
    #[schemars(with = "Vec<Example>")]
    pub examples: Examples,
}

/// A query to try.
#[derive(JsonSchema, Serialize)]
struct Example {
    /// The query.
    query: &'static str,
    /// What it gives.
    gives: &'static str,
}

fn examples_as_objects<S: Serializer>(
    examples: &Examples,
    serializer: S,
) -> Result<S::Ok, S::Error> {
    serializer.collect_seq(examples.iter().map(|&(query, gives)| Example { query, gives }))
}
