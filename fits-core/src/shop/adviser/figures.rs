//! What the adviser is given, and what it makes of it.

use crate::size::Length;

/// What is thought of machine and tool before the first pass.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is built whole: what is new must be said by whoever builds one"
)]
pub struct Prior {
    /// Cut factor: change of diameter for each unit dialled. Near 1, less for
    /// a tool that springs.
    pub gain: f64,
    /// Its standard deviation.
    pub gain_sd: f64,
    /// What every pass takes more than that, on the diameter.
    pub offset: Length,
    /// Its standard deviation.
    pub offset_sd: Length,
    /// Standard deviation of one pass from the next, all else alike.
    pub scatter: Length,
}

/// One thing that was done at the machine, and what was read after it: the
/// adviser's side of [`job::Entry`](crate::job::Entry).
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Observed {
    /// A pass, and what was read after it; nothing where it was not measured.
    Cut {
        /// The change of diameter dialled.
        dialled: Length,
        /// The readings after it.
        readings: Vec<Length>,
    },
    /// A pass without infeed.
    Spring {
        /// The readings after it.
        readings: Vec<Length>,
    },
    /// Readings without a pass.
    Read {
        /// What was read.
        readings: Vec<Length>,
    },
}

/// What is believed after the entries so far.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Estimate {
    /// The size.
    pub size: Length,
    /// Its standard deviation.
    pub size_sd: Length,
    /// The cut factor.
    pub gain: f64,
    /// Its standard deviation.
    pub gain_sd: f64,
    /// The offset of each pass.
    pub offset: Length,
    /// Its standard deviation.
    pub offset_sd: Length,
    /// The chance that the part is inside its limits now.
    pub good: f64,
    /// The chance that too much is off already.
    pub over: f64,
    /// The chance that there is metal left to take off.
    pub under: f64,
}

/// A reading that the log did not lead to expect.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Surprise {
    /// What was read: the mean, where several were taken.
    pub read: Length,
    /// What was expected.
    pub expected: Length,
    /// How many standard deviations lie between them, without a sign.
    pub deviations: f64,
}

/// What the tool does, for saying it in plain words.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Remark {
    /// What is expected of the next cut, less what is dialled, as a part of
    /// what is dialled: −0.03 where the tool cuts 3 % light.
    pub by: f64,
    /// Its standard deviation.
    pub by_sd: f64,
    /// What to dial.
    pub dial: Length,
    /// What one would dial of a tool that takes what it is set to.
    pub not: Length,
}
