//! Printed plastics on metal pins: what to draw. All of it is common practice.

use super::printed_table::PRINTED;
use crate::{
    error::Error,
    size::{Length, Limits},
    source::{Provenance, Reason},
    speech::say,
};

#[derive(Debug)]
pub(super) struct Row {
    pub(super) name: &'static str,
    pub(super) small: Length,
    pub(super) slip_least: Length,
    pub(super) slip_most: Length,
    pub(super) press_least: Length,
    pub(super) press_most: Length,
    pub(super) hot_c: f64,
    pub(super) note: &'static str,
    pub(super) from: Provenance,
}

/// How a printed part goes on its pin.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "Grip"))]
#[cfg_attr(feature = "serde", serde(rename_all = "lowercase"))]
#[non_exhaustive]
pub enum PrintedGrip {
    /// It turns or slides.
    Slip,
    /// It holds.
    Press,
}

/// A printed plastic.
///
/// ```
/// use fits_core::shop::service::Printed;
/// let petg = Printed::named("petg")?;
/// assert_eq!((petg.name(), petg.comes_out_small()), ("PETG", "0.25mm".parse()?));
/// assert_eq!(petg.reason().rule, petg.note());
/// assert_eq!(petg.creeps_above_c(), 65.0);
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
pub struct Printed(&'static Row);

impl Printed {
    /// The plastic of a name.
    ///
    /// # Errors
    /// None of that name; the advice lists them.
    ///
    /// ```
    /// use fits_core::shop::service::{PrintedGrip, Printed};
    /// let petg = Printed::named("petg")?;
    /// let hole = petg.drawn("8mm".parse()?, PrintedGrip::Slip)?;
    /// assert_eq!(hole.lower(), "8.3mm".parse()?);
    /// assert_eq!(petg.comes_out_small(), "0.25mm".parse()?);
    /// let left = petg.left("8mm".parse()?, PrintedGrip::Slip)?;
    /// assert_eq!((left.lower(), left.upper()), ("0.05mm".parse()?, "0.25mm".parse()?));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn named(name: &str) -> Result<Self, Error> {
        PRINTED.iter().find(|row| row.name.eq_ignore_ascii_case(name.trim())).map(Self).ok_or_else(
            || {
                let names: Vec<_> = PRINTED.iter().map(|row| row.name).collect();
                Error::not_listed(
                    say!("`{}` is not a printed plastic that is known here", name.trim()),
                    format!("known are {}", names.join(", ")),
                )
            },
        )
    }

    /// Its name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        self.0.name
    }

    /// How much a round hole commonly comes out small.
    #[must_use]
    pub const fn comes_out_small(self) -> Length {
        self.0.small
    }

    /// Above this it creeps, in degrees Celsius.
    #[must_use]
    pub const fn creeps_above_c(self) -> f64 {
        self.0.hot_c
    }

    /// The hole as drawn for a pin.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::shop::service::{PrintedGrip, Printed};
    /// let hole = Printed::named("PETG")?.drawn("8mm".parse()?, PrintedGrip::Slip)?;
    /// assert_eq!(hole.to_string(), "8.300 to 8.500 mm");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn drawn(self, pin: Length, grip: PrintedGrip) -> Result<Limits, Error> {
        let (least, most) = match grip {
            PrintedGrip::Slip => (self.0.slip_least, self.0.slip_most),
            PrintedGrip::Press => (self.0.press_least, self.0.press_most),
        };
        Ok(Limits::new(pin.checked_add(least)?, pin.checked_add(most)?)?
            .known_as(self.0.from.known))
    }

    /// The hole as it commonly comes out when drawn so, less the pin.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::shop::service::{PrintedGrip, Printed};
    /// // Drawn 8.3 to 8.5 mm, it comes out 0.25 mm small.
    /// let play = Printed::named("PETG")?.left("8mm".parse()?, PrintedGrip::Slip)?;
    /// assert_eq!((play.lower(), play.upper()), ("0.05mm".parse()?, "0.25mm".parse()?));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn left(self, pin: Length, grip: PrintedGrip) -> Result<Limits, Error> {
        let drawn = self.drawn(pin, grip)?;
        let less = pin.checked_add(self.0.small)?;
        Ok(Limits::new(drawn.lower().checked_sub(less)?, drawn.upper().checked_sub(less)?)?
            .known_as(self.0.from.known))
    }

    /// Where its figures come from.
    #[must_use]
    pub fn reason(self) -> Reason {
        Reason {
            figure: format!("printed {}", self.name()),
            value: format!("holes come out {} small", self.0.small).into(),
            rule: self.0.note.into(),
            source: self.0.from.text.into(),
            known: self.0.from.known,
        }
    }

    /// What is to be known of it.
    #[must_use]
    pub const fn note(self) -> &'static str {
        self.0.note
    }
}
