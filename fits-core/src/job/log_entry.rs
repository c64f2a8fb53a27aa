//! What is entered in a log, and what an instrument showed.

#[cfg(feature = "serde")]
use serde::{Deserialize, Serialize};

use crate::{
    job::log::{Gauge, Place},
    size::Length,
    standards::iso286::Feature,
};

/// More than one reading of one cold part by the log's instrument: the places,
/// how warm it was, and what read it.
///
/// ```
/// use fits_core::job::{Place, Seen};
/// let read = vec!["20.010mm".parse()?, "20.013mm".parse()?];
/// let mut seen = Seen::default();
/// seen.places = vec![Place { place: None, read, shown: Vec::new() }];
/// assert_eq!(seen.scatter(), Some("0.003mm".parse()?));
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Debug, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(Serialize, Deserialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[non_exhaustive]
pub struct Seen {
    /// Each place with its readings, as typed in order.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Vec::is_empty"))]
    pub places: Vec<Place>,
    /// How warm the part was, in degrees Celsius, where that was said.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub at_c: Option<f64>,
    /// The material that its growth was worked out for.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub material: Option<String>,
    /// What it was read with, where that was not the log's instrument.
    #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
    pub gauge: Option<Gauge>,
}

impl Seen {
    fn is_plain(&self) -> bool {
        self.places.is_empty() && self.gauge.is_none()
    }

    /// The place where most is off: the largest of a bore, the smallest of a
    /// shaft. What is off there does not come back, so it decides.
    ///
    /// ```
    /// use fits_core::{job::{Entry, Place, Seen}, standards::iso286::Feature};
    /// let place = |name: &str, size: &str| {
    ///     let read = vec![size.parse()?];
    ///     Ok::<_, fits_core::Error>(Place { place: Some(name.into()), read, shown: Vec::new() })
    /// };
    /// let places = vec![place("front", "20.011mm")?, place("back", "20.004mm")?];
    /// let mut seen = Seen::default();
    /// seen.places = places;
    /// let named = |found: Option<(&Place, _)>| found.and_then(|(place, _)| place.place.clone());
    /// assert_eq!(named(seen.decides(Feature::Hole)).as_deref(), Some("front"));
    /// assert_eq!(named(seen.behind(Feature::Hole)).as_deref(), Some("back"));
    /// let entry = Entry::Read { size: "20.011mm".parse()?, sure: false, seen };
    /// assert_eq!(entry.readings(Feature::Hole), ["20.011mm".parse()?]);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn decides(&self, feature: Feature) -> Option<(&Place, Length)> {
        let places = self.places.iter().filter_map(|place| Some((place, place.mean()?)));
        match feature {
            Feature::Hole => places.max_by_key(|(_, size)| *size),
            Feature::Shaft => places.min_by_key(|(_, size)| *size),
        }
    }

    /// The place where most is left to take off.
    ///
    /// ```
    /// use fits_core::{job::{Place, Seen}, standards::iso286::Feature};
    /// let mut seen = Seen::default();
    /// for (name, size) in [("near", "20.01mm"), ("far", "20.004mm")] {
    ///     let read = vec![size.parse()?];
    ///     seen.places.push(Place { place: Some(name.into()), read, shown: Vec::new() });
    /// }
    /// // In a bore the smaller place has more to come out.
    /// let (place, size) = seen.behind(Feature::Hole).expect("two places");
    /// assert_eq!((place.place.as_deref(), size), (Some("far"), "20.004mm".parse()?));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn behind(&self, feature: Feature) -> Option<(&Place, Length)> {
        self.decides(match feature {
            Feature::Hole => Feature::Shaft,
            Feature::Shaft => Feature::Hole,
        })
    }

    /// From the least to the most that was read at one place.
    pub fn scatter(&self) -> Option<Length> {
        let of =
            |place: &Place| place.read.iter().max()?.checked_sub(*place.read.iter().min()?).ok();
        self.places.iter().filter_map(of).max()
    }
}

/// One entry. Lengths are changes of diameter and diameters.
///
/// ```
/// use fits_core::job::{Entry, Seen};
/// let size = "20.01mm".parse()?;
/// let read = Entry::Read { size, sure: false, seen: Seen::default() };
/// assert_eq!((read.name(), read.reading()), ("read", Some(size)));
/// assert_eq!((Entry::Done.reading(), Entry::Done.seen()), (None, None));
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(Serialize, Deserialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[cfg_attr(feature = "serde", serde(tag = "entry", rename_all = "lowercase"))]
#[non_exhaustive]
pub enum Entry {
    /// A pass: what was dialled, as a change of diameter, and what it measured.
    Cut {
        /// The change of diameter dialled.
        dial: Length,
        /// What it measured after, where it was measured.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
        read: Option<Length>,
        /// It was confirmed against a doubt.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "is_false"))]
        sure: bool,
        /// Where it was measured and how warm, beyond one reading at 20 °C.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Seen::is_plain"))]
        seen: Seen,
    },
    /// A pass without infeed.
    Spring {
        /// What it measured after.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Option::is_none"))]
        read: Option<Length>,
        /// It was confirmed against a doubt.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "is_false"))]
        sure: bool,
        /// Where it was measured and how warm, beyond one reading at 20 °C.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Seen::is_plain"))]
        seen: Seen,
    },
    /// A reading without a pass.
    Read {
        /// What it measured.
        size: Length,
        /// It was confirmed against a doubt.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "is_false"))]
        sure: bool,
        /// Where it was measured and how warm, beyond one reading at 20 °C.
        #[cfg_attr(feature = "serde", serde(default, skip_serializing_if = "Seen::is_plain"))]
        seen: Seen,
    },
    /// The entry before it that still stands is taken back.
    Undo,
    /// The part is finished.
    Done,
    /// The part is scrap.
    Scrap,
    /// A line that could not be read stood here; never written.
    #[cfg_attr(feature = "serde", serde(skip))]
    Lost,
}

#[cfg(feature = "serde")]
#[allow(clippy::trivially_copy_pass_by_ref, reason = "serde's signature")]
fn is_false(flag: &bool) -> bool {
    !flag
}

impl Entry {
    /// Its name, as the file has it.
    pub const fn name(&self) -> &'static str {
        match self {
            Self::Cut { .. } => "cut",
            Self::Spring { .. } => "spring",
            Self::Read { .. } => "read",
            Self::Undo => "undo",
            Self::Done => "done",
            Self::Scrap => "scrap",
            Self::Lost => "lost",
        }
    }

    /// What it measured: of several places the one that decides.
    pub const fn reading(&self) -> Option<Length> {
        match self {
            Self::Cut { read, .. } | Self::Spring { read, .. } => *read,
            Self::Read { size, .. } => Some(*size),
            _ => None,
        }
    }

    /// Where it was measured, how warm and with what, beyond one reading at 20 °C
    /// of the log's instrument.
    pub fn seen(&self) -> Option<&Seen> {
        match self {
            Self::Cut { seen, .. } | Self::Spring { seen, .. } | Self::Read { seen, .. } => {
                Some(seen).filter(|seen| !seen.is_plain())
            }
            _ => None,
        }
    }

    /// Every reading of the place that decides.
    ///
    /// ```
    /// use fits_core::{job::{Entry, Seen}, standards::iso286::Feature};
    /// let size = "20.01mm".parse()?;
    /// let read = Entry::Read { size, sure: false, seen: Seen::default() };
    /// assert_eq!(read.readings(Feature::Hole), [size]);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn readings(&self, feature: Feature) -> Vec<Length> {
        match self.seen().and_then(|seen| seen.decides(feature)) {
            Some((place, _)) => place.read.clone(),
            None => self.reading().into_iter().collect(),
        }
    }
}
