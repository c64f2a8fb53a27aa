//! Why a line could not be answered, where, and what would work.

use std::ops::Range;

use schemars::JsonSchema;
use serde::Serialize;

/// What kind of problem it is: for programs, and stable.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
#[non_exhaustive]
pub enum Code {
    /// The words are no query.
    NotUnderstood,
    /// The query is understood, and has no answer as it stands.
    NotAnswered,
    /// A size or class is outside what the tables give.
    OutOfTable,
    /// It could mean several queries: `choices` has them.
    WhichIsMeant,
    /// The bytes are not UTF-8.
    NotText,
    /// The line is longer than a query can be.
    TooLong,
    /// The line changes settings, the log or the crib where each line stands
    /// for itself.
    NotAlone,
    /// A file or the machine failed.
    Failed,
}

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
    /// What kind it is, unless choices or a failure say so: see [`Problem::code`].
    pub(crate) kind: Code,
}

/// Plain queries that a line could have meant; most problems have none, and a
/// problem is returned by every question: it stays small.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Choices(Option<Box<Rare>>);

/// What few problems have.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
struct Rare {
    queries: Vec<String>,
    /// What else may be put right instead of the fix.
    otherwise: Option<(Range<usize>, String)>,
    /// The message with its figures in inches.
    in_inches: Option<String>,
}

impl std::ops::Deref for Choices {
    type Target = [String];

    fn deref(&self) -> &[String] {
        self.0.as_deref().map_or(&[], |rare| &rare.queries)
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
            kind: Code::NotAnswered,
        }
    }

    /// Of this kind.
    #[must_use]
    pub(crate) const fn kind(mut self, kind: Code) -> Self {
        self.kind = kind;
        self
    }

    /// What kind it is.
    pub fn code(&self) -> Code {
        match self.kind {
            _ if self.is_failure => Code::Failed,
            _ if !self.choices.is_empty() => Code::WhichIsMeant,
            kind => kind,
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
        if !choices.is_empty() {
            self.choices.0.get_or_insert_default().queries = choices;
        }
        self
    }

    /// With the message as it is said in inches.
    #[must_use]
    pub(crate) fn or_in_inches(mut self, message: String) -> Self {
        if message != self.message {
            self.choices.0.get_or_insert_default().in_inches = Some(message);
        }
        self
    }

    /// Says the message in inches, where its figures are known.
    pub(crate) fn say_in_inches(&mut self) {
        if let Some(said) = self.choices.0.as_mut().and_then(|rare| rare.in_inches.take()) {
            self.message = said;
        }
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

    /// With what may be put right instead, as likely as the fix: which of the two is
    /// meant is asked.
    #[must_use]
    pub(crate) fn or_else_fix(mut self, at: Range<usize>, with: impl Into<String>) -> Self {
        self.choices.0.get_or_insert_default().otherwise = Some((at, with.into()));
        self
    }

    /// The line with the other way to put it right, if there is one.
    pub(crate) fn mended_otherwise(&self, line: &str) -> Option<String> {
        with_edit(line, self.choices.0.as_ref()?.otherwise.as_ref()?)
    }

    /// The line with the fix put in.
    pub fn mended(&self, line: &str) -> Option<String> {
        with_edit(line, self.fix.as_ref()?)
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

/// A line with other words at one place; none where it has no such place.
fn with_edit(line: &str, (at, with): &(Range<usize>, String)) -> Option<String> {
    let (before, after) = (line.get(..at.start)?, line.get(at.end..)?);
    // A unit that is put behind a figure takes the place of the one that stands there.
    let is_unit = at.is_empty() && matches!(&**with, "in" | "mm");
    let other = before.strip_suffix("mm").or_else(|| before.strip_suffix("in"));
    let before = other.filter(|_| is_unit).unwrap_or(before);
    Some(format!("{before}{with}{after}").trim().to_owned())
}
