//! A drill to choose from.

use crate::{
    size::Length,
    standards::drills::{Drill, Series},
};
use std::borrow::Cow;

/// A drill to choose from: from the standard sizes or from the owner's drawer.
#[derive(Clone, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(clippy::exhaustive_structs, reason = "a name and a diameter are all")]
pub struct Bit {
    /// What it is called.
    pub name: Cow<'static, str>,
    /// Its diameter.
    pub diameter: Length,
}

impl From<Drill> for Bit {
    fn from(drill: Drill) -> Self {
        Self { name: Cow::Borrowed(drill.name()), diameter: drill.diameter() }
    }
}

impl Bit {
    /// The standard sizes of some series, smallest first.
    ///
    /// ```
    /// use fits_core::{shop::tap::Bit, standards::drills::Series};
    /// let letters = Bit::standard(&[Series::Letter]);
    /// assert_eq!((letters.len(), letters[0].diameter), (26, "0.234in".parse()?));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn standard(series: &[Series]) -> Vec<Self> {
        Drill::all().filter(|drill| series.contains(&drill.series())).map(Self::from).collect()
    }

    /// A size without a name of its own, as `8.6 mm`.
    ///
    /// ```
    /// use fits_core::shop::tap::Bit;
    /// assert_eq!(Bit::sized("8.6mm".parse()?).name, "8.6 mm");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn sized(diameter: Length) -> Self {
        Self { name: Cow::Owned(diameter.to_string()), diameter }
    }
}
