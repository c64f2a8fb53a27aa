//! The one table of clauses: what can be typed, what it takes and what it says.

use crate::questions::CLAUSES;

/// A word that opens a question or stands in one.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Clause {
    /// The word.
    pub(crate) word: &'static str,
    /// What comes after it.
    pub(crate) takes: &'static str,
    /// What it says, in a few words.
    pub(crate) says: &'static str,
    /// No name goes on over it: `hub cast iron long 20`.
    is_reserved: bool,
}

impl Clause {
    /// One that no name goes on over.
    pub(crate) const fn new(word: &'static str, takes: &'static str, says: &'static str) -> Self {
        Self { word, takes, says, is_reserved: true }
    }

    /// One that may also be a part of a name.
    pub(crate) const fn free(word: &'static str, takes: &'static str, says: &'static str) -> Self {
        Self { word, takes, says, is_reserved: false }
    }
}

impl Clause {
    /// Its line in the help.
    pub(crate) fn line(&self) -> String {
        let Self { word, takes, says, .. } = self;
        if takes.is_empty() { format!("{word}: {says}") } else { format!("{word} {takes}: {says}") }
    }
}

/// Every word that no name goes on over.
pub(crate) fn reserved() -> impl Iterator<Item = &'static str> {
    CLAUSES
        .iter()
        .flat_map(|clauses| clauses.iter())
        .filter(|clause| clause.is_reserved)
        .map(|clause| clause.word)
}

/// What a word says in each question that knows it.
pub(crate) fn named(word: &str) -> impl Iterator<Item = &'static Clause> {
    CLAUSES.iter().flat_map(|clauses| clauses.iter()).filter(move |clause| clause.word == word)
}

/// The clauses of the question that a word opens.
#[cfg_attr(not(feature = "command"), allow(dead_code, reason = "for completion at the prompt"))]
pub(crate) fn opened_by(word: &str) -> Option<&'static [Clause]> {
    let opens = |clauses: &&[Clause]| clauses.first().is_some_and(|first| first.word == word);
    CLAUSES.iter().copied().find(opens)
}
