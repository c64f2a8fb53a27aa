//! Where reading stopped and why, counted from the end of the line: the one
//! measure that every parser has.

use nom::{Err, IResult, error::ErrorKind};

pub(crate) type Parsed<'a, T> = IResult<&'a str, T, Fault>;

/// A problem counted from the end of the line, where a parser stands.
#[derive(Debug)]
pub(crate) struct Fault {
    /// Bytes left where the problem begins and ends.
    pub(crate) left: usize,
    pub(crate) left_after: usize,
    pub(crate) known: Option<Box<Known>>,
}

/// What is known of a problem: nothing where a parser merely did not match.
#[derive(Debug)]
pub(crate) struct Known {
    pub(crate) message: String,
    pub(crate) advice: String,
    /// What to put between two places, each counted from the end.
    pub(crate) fix: Option<(usize, usize, String)>,
}

impl nom::error::ParseError<&str> for Fault {
    fn from_error_kind(input: &str, _: ErrorKind) -> Self {
        Self { left: input.len(), left_after: input.len(), known: None }
    }
    fn append(_: &str, _: ErrorKind, other: Self) -> Self {
        other
    }
    /// The branch that came further knows more.
    fn or(self, other: Self) -> Self {
        if self.left < other.left { self } else { other }
    }
}

/// A problem at the start of `input`, over `length` bytes, that ends the
/// reading: nothing else can be meant.
pub(crate) fn fatal<T>(
    input: &str,
    length: usize,
    message: impl Into<String>,
    advice: impl Into<String>,
) -> Result<T, Err<Fault>> {
    fatal_fix(input, length, message, advice, None)
}

/// The same, with what to put in place of the first `.0` bytes of `input`.
pub(crate) fn fatal_fix<T>(
    input: &str,
    length: usize,
    message: impl Into<String>,
    advice: impl Into<String>,
    fix: Option<(usize, String)>,
) -> Result<T, Err<Fault>> {
    let left = input.len();
    let fix = fix.map(|(over, with)| (left, left.saturating_sub(over), with));
    Err(Err::Failure(Fault {
        left,
        left_after: left.saturating_sub(length),
        known: Some(Box::new(Known { message: message.into(), advice: advice.into(), fix })),
    }))
}
