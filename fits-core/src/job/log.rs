//! The pass log: what was dialled and what was read, in order. Nothing is
//! taken out of it: an undo is an entry of its own.

use crate::{
    error::Error,
    job::log_entry::Entry,
    size::{Length, Limits, divide_half_even},
    standards::{instruments::Uncertainty, iso286::Feature},
};

#[cfg(feature = "serde")]
use serde::{Deserialize, Serialize};
/// The version of the format that this one writes.
pub const VERSION: u32 = 1;

/// What a log is about: its first line.
///
/// ```
/// use fits_core::{job::Opening, standards::{instruments::Uncertainty, iso286::{Class, Feature}}};
/// let limits = "H7".parse::<Class>()?.limits("20mm".parse()?)?;
/// let off = Uncertainty { repeat: "0.003mm".parse()?, bias: "0.004mm".parse()? };
/// let (start, step) = ("19.6mm".parse()?, "0.01mm".parse()?);
/// let opening = Opening::new(Feature::Hole, "H7", limits, start, step, ("gauge", off));
/// assert_eq!(opening.limits()?, limits);
/// // Twice the root of the sum of squares.
/// assert_eq!(opening.uncertainty()?, "0.01mm".parse()?);
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(Serialize, Deserialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is built whole: what is new must be said by whoever builds one"
)]
pub struct Opening {
    /// The format's version.
    pub version: u32,
    /// A hole is bored, a shaft is turned.
    pub feature: Feature,
    /// The nominal size.
    pub nominal: Length,
    /// The class, or how the limits were given.
    pub class: String,
    /// The lower limit.
    pub lower: Length,
    /// The upper limit.
    pub upper: Length,
    /// What it measured at the start.
    pub start: Length,
    /// What the dial can be set to, as a change of diameter.
    pub step: Length,
    /// The instrument that reads it.
    pub instrument: String,
    /// How its readings of one size scatter, as a standard deviation.
    pub repeat: Length,
    /// What they may all be off by, as a standard deviation.
    pub bias: Length,
    /// What it is made of, where that was said.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub material: Option<String>,
    /// The free length of the tool or the work over its thickness, where that
    /// was said.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub overhang: Option<f64>,
    /// The machine it is cut on, where that is not a lathe.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub machine: Option<String>,
}

impl Opening {
    /// The work of one part on a lathe: the class or how the limits were given,
    /// the limits, what it measures at the start, what the dial can be set to
    /// as a change of diameter, and what reads it. The nominal size is the
    /// limits' middle, and nothing is known of material and tool, until they
    /// are set.
    ///
    /// ```
    /// use fits_core::job::{Opening, PassLog, LogState};
    /// use fits_core::standards::{instruments::Instrument, iso286::{Class, Feature}};
    /// let nominal = "20mm".parse()?;
    /// let limits = "H7".parse::<Class>()?.limits(nominal)?;
    /// let gauge = Instrument::find("bore gauge")?;
    /// let off = gauge.uncertainty(Feature::Hole, nominal)?;
    /// let named = (gauge.name(), off);
    /// let opening = Opening {
    ///     nominal,
    ///     ..Opening::new(
    ///         Feature::Hole, "H7", limits, "19.6mm".parse()?, "0.01mm".parse()?, named,
    ///     )
    /// };
    /// assert_eq!(PassLog::new(opening).state(), LogState::Open);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn new(
        feature: Feature,
        class: &str,
        limits: Limits,
        start: Length,
        step: Length,
        (instrument, off): (&str, Uncertainty),
    ) -> Self {
        Self {
            version: VERSION,
            feature,
            nominal: limits.middle(),
            class: class.to_owned(),
            lower: limits.lower(),
            upper: limits.upper(),
            start,
            step,
            instrument: instrument.to_owned(),
            repeat: off.repeat,
            bias: off.bias,
            material: None,
            overhang: None,
            machine: None,
        }
    }

    /// The limits to end in.
    ///
    /// # Errors
    /// They are crossed: the line was damaged.
    pub fn limits(&self) -> Result<Limits, Error> {
        Limits::new(self.lower, self.upper)
    }

    /// The expanded uncertainty of one reading, k = 2: what the instrument
    /// scatters and what all its readings may be off by together.
    ///
    /// # Errors
    /// Out of range: the line was damaged.
    pub fn uncertainty(&self) -> Result<Length, Error> {
        let [repeat, bias] = [self.repeat, self.bias].map(Length::in_micrometres);
        Length::nearest_micrometres(2.0 * libm::hypot(repeat, bias))
    }
}

/// What was read at one place of the part.
///
/// ```
/// use fits_core::job::Place;
/// let read = vec!["20.010mm".parse()?, "20.014mm".parse()?];
/// let place = Place { place: None, read, shown: Vec::new() };
/// assert_eq!(place.mean(), Some("20.012mm".parse()?));
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(Serialize, Deserialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is built whole: what is new must be said by whoever builds one"
)]
pub struct Place {
    /// Its name, where one was said.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub place: Option<String>,
    /// The readings, at 20 °C.
    pub read: Vec<Length>,
    /// The same as the instrument showed them, where the part was warm.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub shown: Vec<Length>,
}

impl Place {
    /// The mean of its readings; nothing where there is none.
    pub fn mean(&self) -> Option<Length> {
        let sum: i128 = self.read.iter().map(|size| i128::from(size.tenth_nanometres())).sum();
        divide_half_even(sum, i128::try_from(self.read.len()).ok()?)
            .and_then(|mean| i64::try_from(mean).ok())
            .map(Length::from_tenth_nanometres)
    }
}

/// An instrument that one entry was read with, where it is not the log's own.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(Serialize, Deserialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[expect(
    clippy::exhaustive_structs,
    reason = "it is built whole: what is new must be said by whoever builds one"
)]
pub struct Gauge {
    /// Its name.
    pub name: String,
    /// How its readings of one size scatter, as a standard deviation.
    pub repeat: Length,
    /// What they may all be off by, as a standard deviation.
    pub bias: Length,
}

/// Where a log stands.
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "State"))]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "lowercase"))]
#[expect(
    clippy::exhaustive_enums,
    reason = "each is told, or acted on, in its own way: a new one must not pass unseen"
)]
pub enum LogState {
    /// Passes may follow.
    Open,
    /// The part is finished.
    Done,
    /// The part is scrap.
    Scrap,
}

/// A log: its opening and its entries as written.
///
/// ```
/// use fits_core::{Length, job::{Entry, Opening, PassLog, Seen, LogState}, standards::iso286::Feature};
/// let mut log = PassLog::new(Opening {
///     version: 1,
///     feature: Feature::Hole,
///     nominal: "20mm".parse()?,
///     class: "H7".into(),
///     lower: "20mm".parse()?,
///     upper: "20.021mm".parse()?,
///     start: "19.6mm".parse()?,
///     step: "0.01mm".parse()?,
///     instrument: "bore gauge".into(),
///     repeat: "0.002mm".parse()?,
///     bias: "0.002mm".parse()?,
///     material: None,
///     overhang: None,
///     machine: None,
/// });
/// log.entries.push(Entry::Cut { dial: "0.2mm".parse()?, read: None, sure: false, seen: Seen::default() });
/// log.entries.push(Entry::Undo);
/// assert_eq!(log.standing().count(), 0);
/// assert_eq!(log.state(), LogState::Open);
/// assert_eq!(log.stands(), [false, false]);
/// // The cut is taken back, so the start is the last reading, and it still holds.
/// assert_eq!(log.last_reading(), "19.6mm".parse()?);
/// assert!(log.is_read());
/// assert_eq!(log.finished_passes()?.len(), 0);
/// assert_eq!((log.last_places(), log.form()?, log.short()?), (None, None, None));
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(clippy::exhaustive_structs, reason = "a log opens, and entries follow")]
pub struct PassLog {
    /// What it is about.
    pub opening: Opening,
    /// Everything written since, undone or not.
    pub entries: Vec<Entry>,
}

impl PassLog {
    /// A log with no entry yet.
    ///
    /// ```
    /// use fits_core::{job::{Opening, PassLog}, standards::{instruments::Uncertainty, iso286::{Class, Feature}}};
    /// let limits = "h6".parse::<Class>()?.limits("20mm".parse()?)?;
    /// let off = Uncertainty { repeat: "0.002mm".parse()?, bias: "0.002mm".parse()? };
    /// let (start, step) = ("20.4mm".parse()?, "0.01mm".parse()?);
    /// let log = PassLog::new(Opening::new(Feature::Shaft, "h6", limits, start, step, ("mic", off)));
    /// assert_eq!((log.entries.len(), log.last_reading()), (0, start));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub const fn new(opening: Opening) -> Self {
        Self { opening, entries: Vec::new() }
    }

    /// For each entry: does it still stand? An undo itself never does; a lost
    /// line cannot be taken back.
    pub fn stands(&self) -> Vec<bool> {
        let mut stands = vec![true; self.entries.len()];
        for (at, entry) in self.entries.iter().enumerate() {
            if *entry != Entry::Undo {
                continue;
            }
            let last = (0..at)
                .rev()
                .find(|&before| stands.get(before) == Some(&true))
                .filter(|&before| self.entries.get(before) != Some(&Entry::Lost));
            for taken_back in last.into_iter().chain([at]) {
                if let Some(stands) = stands.get_mut(taken_back) {
                    *stands = false;
                }
            }
        }
        stands
    }

    /// The entries that still stand.
    pub fn standing(&self) -> impl DoubleEndedIterator<Item = Entry> {
        let stands = self.stands();
        let entries: Vec<Entry> = self
            .entries
            .iter()
            .zip(stands)
            .filter(|(_, stands)| *stands)
            .map(|(entry, _)| entry.clone())
            .collect();
        entries.into_iter()
    }

    /// Where it stands.
    pub fn state(&self) -> LogState {
        match self.standing().next_back() {
            Some(Entry::Done) => LogState::Done,
            Some(Entry::Scrap) => LogState::Scrap,
            _ => LogState::Open,
        }
    }

    /// The last reading that still stands, or the start.
    pub fn last_reading(&self) -> Length {
        self.standing().rev().find_map(|entry| entry.reading()).unwrap_or(self.opening.start)
    }

    /// Was it read after the last pass?
    pub fn is_read(&self) -> bool {
        match self.standing().next_back() {
            None => true,
            Some(entry) => entry.reading().is_some() || self.state() != LogState::Open,
        }
    }
}
