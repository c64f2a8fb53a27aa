//! [`ThreadPair`]: a screw's limits against a nut's.

use super::{DiameterLimits, Sizes};
use crate::size::{Length, inches};

/// How much room one diameter has between screw and nut: positive is play,
/// negative interference. `None` where a limit is not given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Play {
    /// The least: greatest screw in the least nut.
    pub least: Option<Length>,
    /// The greatest: least screw in the greatest nut.
    pub greatest: Option<Length>,
}

/// A screw against a nut of the same thread.
///
/// ```
/// use fits_core::standards::thread::{Thread, ThreadPair};
/// let thread: Thread = "3/8-24".parse()?;
/// let pair = ThreadPair::new(thread.external(None)?, thread.internal(None)?);
/// assert_eq!(pair.pitch().least, Some("0.0011in".parse()?));
/// assert_eq!(pair.interference(), None);
/// assert!(pair.minor().least.is_some_and(|play| play.is_positive()));
/// // The screw's largest outside is 0.0011 in under the nut's least.
/// assert_eq!(pair.major().least, Some("0.0011in".parse()?));
/// assert_eq!(pair.external(), &thread.external(None)?);
/// assert_eq!(pair.internal(), &thread.internal(None)?);
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct ThreadPair {
    external: Sizes,
    internal: Sizes,
}

impl ThreadPair {
    /// A pair of limits.
    ///
    /// ```
    /// use fits_core::standards::thread::{Thread, ThreadPair};
    /// let thread: Thread = "M10".parse()?;
    /// let pair = ThreadPair::new(thread.external(None)?, thread.internal(None)?);
    /// // 9.026 less 8.994 mm.
    /// assert_eq!(pair.pitch().least, Some("0.032mm".parse()?));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub const fn new(external: Sizes, internal: Sizes) -> Self {
        Self { external, internal }
    }

    /// The screw's limits.
    pub const fn external(&self) -> &Sizes {
        &self.external
    }

    /// The nut's limits.
    pub const fn internal(&self) -> &Sizes {
        &self.internal
    }

    /// Play at the pitch diameter.
    pub fn pitch(&self) -> Play {
        play(self.internal.pitch, self.external.pitch)
    }

    /// Play at the major diameter.
    pub fn major(&self) -> Play {
        play(self.internal.major, self.external.major)
    }

    /// Play at the minor diameter.
    pub fn minor(&self) -> Play {
        play(self.internal.minor, self.external.minor)
    }

    /// Where the limits let the two interfere, in a sentence; `None` where
    /// every good screw goes into every good nut.
    pub fn interference(&self) -> Option<String> {
        let most = [("pitch", self.pitch()), ("major", self.major()), ("minor", self.minor())]
            .into_iter()
            .filter_map(|(name, play)| play.least.map(|least| (name, least)))
            .filter(|(_, least)| least.is_negative())
            .min_by_key(|&(_, least)| least);
        most.map(|(name, least)| {
            let by = least.checked_abs().unwrap_or(least);
            format!(
                "the greatest {} screw is {by} ({} in) over the least {} nut at the {name} diameter",
                self.external.class,
                inches(by),
                self.internal.class,
            )
        })
    }
}

fn play(internal: DiameterLimits, external: DiameterLimits) -> Play {
    let less = |one: Option<Length>, other: Option<Length>| one?.checked_sub(other?).ok();
    Play { least: less(internal.min, external.max), greatest: less(internal.max, external.min) }
}
