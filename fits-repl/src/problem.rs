//! Why a line could not be answered, where, and what would work.

use std::ops::Range;

/// A line that could not be answered.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problem {
    /// What is wrong, one fact.
    pub message: String,
    /// Where, in bytes of the line.
    pub at: Range<usize>,
    /// The next step in words, empty where the fix says it all. A query in it
    /// stands between backquotes and works as it stands.
    pub advice: String,
    /// A part of the line and what to put there.
    pub fix: Option<(Range<usize>, String)>,
    /// Plain queries that the line could have meant, where it is asked back:
    /// none, or two at least, and each is answered.
    pub choices: Choices,
    /// A file or the machine failed, not the line.
    pub is_failure: bool,
}

/// Plain queries that a line could have meant; most problems have none.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
#[allow(clippy::box_collection, reason = "a problem is returned by every question: it stays small")]
pub struct Choices(Option<Box<Vec<String>>>);

impl Choices {
    fn new(queries: Vec<String>) -> Self {
        Self((!queries.is_empty()).then(|| Box::new(queries)))
    }
}

impl std::ops::Deref for Choices {
    type Target = [String];

    fn deref(&self) -> &[String] {
        self.0.as_deref().map_or(&[], Vec::as_slice)
    }
}

impl Problem {
    /// A problem at a place.
    pub fn new(message: impl Into<String>, at: Range<usize>) -> Self {
        Self {
            message: message.into(),
            at,
            advice: String::new(),
            fix: None,
            choices: Choices::default(),
            is_failure: false,
        }
    }

    /// With the next step in words.
    #[must_use]
    pub fn advise(mut self, advice: impl Into<String>) -> Self {
        self.advice = advice.into();
        self
    }

    /// With the queries that it could mean.
    #[must_use]
    pub fn choose(mut self, choices: Vec<String>) -> Self {
        self.choices = Choices::new(choices);
        self
    }

    /// A file failed: the line was understood.
    #[must_use]
    pub fn failure(mut self) -> Self {
        self.is_failure = true;
        self
    }

    /// With what to put in place of a part of the line.
    #[must_use]
    pub fn fix(mut self, at: Range<usize>, with: impl Into<String>) -> Self {
        self.fix = Some((at, with.into()));
        self
    }

    /// The line with the fix put in.
    pub fn mended(&self, line: &str) -> Option<String> {
        let (at, with) = self.fix.as_ref()?;
        let (before, after) = (line.get(..at.start)?, line.get(at.end..)?);
        Some(format!("{before}{with}{after}").trim().to_owned())
    }

    /// The advice and the mended line.
    pub fn hint(&self, line: &str) -> String {
        if !self.choices.is_empty() {
            let choices: Vec<_> = self.choices.iter().map(|choice| format!("`{choice}`")).collect();
            return format!("say which: {}", choices.join(" or "));
        }
        let mended = self.mended(line).map(|mended| format!("`{mended}`"));
        match (self.advice.as_str(), mended) {
            ("", None) => "see `help`".to_owned(),
            ("", Some(mended)) => format!("try {mended}"),
            (advice, Some(mended)) => format!("{advice}: {mended}"),
            (advice, None) => advice.to_owned(),
        }
    }
}
