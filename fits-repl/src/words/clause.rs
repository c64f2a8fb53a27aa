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
    /// A line may begin with it.
    is_opener: bool,
}

impl Clause {
    /// One that no name goes on over, and that a line may begin with.
    pub(crate) const fn new(word: &'static str, takes: &'static str, says: &'static str) -> Self {
        Self { word, takes, says, is_reserved: true, is_opener: true }
    }

    /// One that may also be a part of a name.
    pub(crate) const fn free(word: &'static str, takes: &'static str, says: &'static str) -> Self {
        Self { word, takes, says, is_reserved: false, is_opener: false }
    }

    /// The same, where no line begins with it.
    pub(crate) const fn inside(self) -> Self {
        Self { is_opener: false, ..self }
    }

    /// The same, where a line may begin with it.
    pub(crate) const fn opens(self) -> Self {
        Self { is_opener: true, ..self }
    }
}

impl Clause {
    /// May a line begin with it?
    #[cfg_attr(not(feature = "command"), allow(dead_code, reason = "for completion"))]
    pub(crate) const fn opens_lines(&self) -> bool {
        self.is_opener
    }

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

/// Every clause that a line may begin with.
#[cfg_attr(not(feature = "command"), allow(dead_code, reason = "for completion at the prompt"))]
pub(crate) fn openers() -> impl Iterator<Item = &'static Clause> {
    CLAUSES.iter().flat_map(|clauses| clauses.iter()).filter(|clause| clause.is_opener)
}

/// The clauses of the question that a word opens.
pub(crate) fn opened_by(word: &str) -> Option<&'static [Clause]> {
    let opens = |clauses: &&[Clause]| clauses.first().is_some_and(|first| first.word == word);
    CLAUSES.iter().copied().find(opens)
}

/// What else the lines hold that begin so.
#[cfg_attr(not(feature = "command"), allow(dead_code, reason = "for completion at the prompt"))]
pub(crate) fn beside(line: &str) -> impl Iterator<Item = &'static Clause> {
    let begins = move |clause: &Clause| {
        let rest = line.strip_prefix(clause.word).filter(|_| clause.is_opener);
        rest.is_some_and(|rest| rest.is_empty() || rest.starts_with(char::is_whitespace))
    };
    let all = CLAUSES.iter().filter(move |clauses| clauses.iter().any(begins));
    all.flat_map(|clauses| clauses.iter()).filter(|clause| !clause.is_opener)
}
