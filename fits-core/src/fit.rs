//! A hole's limits against a shaft's: clearance range, kind, basis, likelihood.

#[cfg(feature = "serde")]
use serde::{Deserialize, Serialize};

use crate::{
    error::Error,
    size::{Length, Limits},
    source::Known,
    standards::iso286::{Class, Feature, Grade, Letter, grade_within},
};

/// The kind of a fit (ISO 286-1:2010, 3.3).
///
/// ```
/// use fits_core::Kind;
/// assert_eq!(Kind::Transition.word(), "transition");
/// ```
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(Serialize, Deserialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "lowercase"))]
#[expect(clippy::exhaustive_enums, reason = "there is play, grip or either")]
pub enum Kind {
    /// There is always clearance, be it zero at the closest.
    Clearance,
    /// Clearance or interference, as the parts fall.
    Transition,
    /// There is always interference, be it zero at the loosest.
    Interference,
}

impl Kind {
    /// The standard's word.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Clearance => "clearance",
            Self::Transition => "transition",
            Self::Interference => "interference",
        }
    }

    /// The kind of a clearance range; interference is clearance below 0.
    ///
    /// ```
    /// use fits_core::{Kind, Limits};
    /// let range = Limits::new("-0.002mm".parse()?, "0.011mm".parse()?)?;
    /// assert_eq!(Kind::of_clearance(range), Kind::Transition);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub const fn of_clearance(clearance: Limits) -> Self {
        if !clearance.lower().is_negative() {
            Self::Clearance
        } else if !clearance.upper().is_positive() {
            Self::Interference
        } else {
            Self::Transition
        }
    }
}

/// Which part the fit is built on (ISO 286-1:2010, 3.4).
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(Serialize, Deserialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "lowercase"))]
#[expect(clippy::exhaustive_enums, reason = "each zone is basic or is not")]
pub enum Basis {
    /// The hole is an H: its lower limit is the nominal size.
    Hole,
    /// The shaft is an h: its upper limit is the nominal size.
    Shaft,
    /// H with h: either way of seeing it is right.
    Both,
    /// Neither an H nor an h.
    Neither,
}

/// A hole and a shaft that go together.
///
/// Clearance is hole less shaft; interference is clearance below 0.
///
/// ```
/// use fits_core::{Fit, Kind, Length};
/// let fit = Fit::of_classes(Length::from_millimetres(20)?, "H7".parse()?, "k6".parse()?)?;
/// assert_eq!(fit.kind(), Kind::Transition);
/// // −0.015 to +0.019: a turned pair is loose a little more often than tight.
/// assert!((0.50..0.75).contains(&fit.chance_of_clearance().even));
/// assert_eq!(fit.hole().upper(), "20.021mm".parse()?);
/// assert_eq!(fit.shaft().lower(), "20.002mm".parse()?);
/// assert_eq!(fit.clearance_aim(), fit.clearance().middle());
/// assert_eq!((fit.nominal(), fit.basis()), ("20mm".parse()?, fits_core::Basis::Hole));
/// assert!(!fit.known().is_unconfirmed());
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Fit {
    nominal: Length,
    hole: Limits,
    shaft: Limits,
    clearance: Limits,
    basis: Basis,
}

/// The chance that a pair has clearance, under two models of where sizes fall.
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Chance {
    /// Sizes spread evenly between the limits.
    pub even: f64,
    /// Sizes normal about the middle, the limits at three standard deviations.
    pub normal: f64,
}

impl Fit {
    /// The fit of two classes at a nominal size.
    ///
    /// # Errors
    /// A class is not defined there, or the pair is not a hole and a shaft.
    ///
    /// ```
    /// use fits_core::Fit;
    /// let fit = Fit::of_classes("20mm".parse()?, "H7".parse()?, "p6".parse()?)?;
    /// assert_eq!(fit.interference().to_string(), "0.001 to 0.035 mm");
    /// // Two holes are no pair.
    /// assert!(Fit::of_classes("20mm".parse()?, "H7".parse()?, "H6".parse()?).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn of_classes(nominal: Length, hole: Class, shaft: Class) -> Result<Self, Error> {
        Self::are_a_pair(hole, shaft)?;
        let basis = match (hole.letter == Letter::H, shaft.letter == Letter::H) {
            (true, true) => Basis::Both,
            (true, false) => Basis::Hole,
            (false, true) => Basis::Shaft,
            (false, false) => Basis::Neither,
        };
        Self::build(nominal, hole.limits(nominal)?, shaft.limits(nominal)?, basis)
    }

    /// Refuses classes that are not a hole's and a shaft's, in this order.
    pub(crate) fn are_a_pair(hole: Class, shaft: Class) -> Result<(), Error> {
        if hole.feature != Feature::Hole || shaft.feature != Feature::Shaft {
            return Err(not_a_pair(hole, shaft));
        }
        Ok(())
    }

    /// The fit of limits that need not come from any class.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::{Basis, Fit, Kind, Limits, standards::iso286::Feature};
    /// let tube = Limits::new("21.9mm".parse()?, "22.1mm".parse()?)?;
    /// let plug = Limits::new("21.8mm".parse()?, "21.85mm".parse()?)?;
    /// let fit = Fit::of_limits("22mm".parse()?, tube, plug)?;
    /// assert_eq!((fit.kind(), fit.basis()), (Kind::Clearance, Basis::Neither));
    /// assert_eq!(fit.part(Feature::Shaft), plug);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn of_limits(nominal: Length, hole: Limits, shaft: Limits) -> Result<Self, Error> {
        Self::build(nominal, hole, shaft, Basis::Neither)
    }

    /// The same, with the basis seen from the limits: hole-basis where the
    /// hole begins at the nominal size, shaft-basis where the shaft ends there.
    pub(crate) fn of_limits_about(
        nominal: Length,
        hole: Limits,
        shaft: Limits,
    ) -> Result<Self, Error> {
        let basis = match (hole.lower() == nominal, shaft.upper() == nominal) {
            (true, true) => Basis::Both,
            (true, false) => Basis::Hole,
            (false, true) => Basis::Shaft,
            (false, false) => Basis::Neither,
        };
        Self::build(nominal, hole, shaft, basis)
    }

    pub(crate) fn build(
        nominal: Length,
        hole: Limits,
        shaft: Limits,
        basis: Basis,
    ) -> Result<Self, Error> {
        let clearance = Limits::new(
            hole.lower().checked_sub(shaft.upper())?,
            hole.upper().checked_sub(shaft.lower())?,
        )?
        .known_as(hole.known().worst(shaft.known()));
        Ok(Self { nominal, hole, shaft, clearance, basis })
    }

    /// The nominal size that both parts share.
    pub const fn nominal(&self) -> Length {
        self.nominal
    }

    /// The hole's limits of size.
    pub const fn hole(&self) -> Limits {
        self.hole
    }

    /// The shaft's limits of size.
    pub const fn shaft(&self) -> Limits {
        self.shaft
    }

    /// The limits of one of the two.
    ///
    /// ```
    /// use fits_core::{Fit, standards::iso286::Feature};
    /// let fit = Fit::of_classes("20mm".parse()?, "H7".parse()?, "g6".parse()?)?;
    /// assert_eq!(fit.part(Feature::Shaft), fit.shaft());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub const fn part(&self, feature: Feature) -> Limits {
        match feature {
            Feature::Hole => self.hole,
            Feature::Shaft => self.shaft,
        }
    }

    /// Least and greatest clearance; interference is below 0.
    pub const fn clearance(&self) -> Limits {
        self.clearance
    }

    /// Least and greatest interference, on the diameter; clearance is below 0.
    /// It is what [`Joint`](crate::shop::assemble::Joint) takes.
    ///
    /// ```
    /// use fits_core::{Fit, Length};
    /// let press = Fit::of_classes(Length::from_millimetres(25)?, "H7".parse()?, "s6".parse()?)?;
    /// assert_eq!(press.interference().to_string(), "0.014 to 0.048 mm");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn interference(&self) -> Limits {
        let opposite = |length: Length| {
            Length::from_tenth_nanometres(length.tenth_nanometres().saturating_neg())
        };
        let (least, most) = (opposite(self.clearance.upper()), opposite(self.clearance.lower()));
        // They do not cross, since the clearance does not.
        Limits::new(least, most).map_or(self.clearance, |it| it.known_as(self.known()))
    }

    /// The fit of a part in hand with a mate cut to suit it, from the tight end
    /// of this fit's clearance range: `percent` of the range, or all of it where
    /// the part in hand varies by more than that.
    ///
    /// # Errors
    /// As [`Fit::suit_limits`].
    ///
    /// ```
    /// use fits_core::{Fit, Length, Limits, standards::iso286::Feature};
    /// let push = Fit::of_classes(Length::from_millimetres(20)?, "H7".parse()?, "js6".parse()?)?;
    /// let hole: Length = "20.013mm".parse()?;
    /// let suited = push.suited(Feature::Hole, Limits::new(hole, hole)?, 50)?;
    /// assert_eq!(suited.shaft().upper(), "20.0195mm".parse()?);
    /// assert_eq!(suited.clearance_aim(), "0.002mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn suited(&self, in_hand: Feature, limits: Limits, percent: u8) -> Result<Self, Error> {
        let range = self.clearance;
        let share = range.tolerance().checked_scale(i128::from(percent), 100)?;
        let tight = Limits::new(range.lower(), range.lower().checked_add(share)?)?;
        let mate = Self { clearance: tight, ..*self }
            .suit_limits(in_hand, limits)
            .or_else(|_| self.suit_limits(in_hand, limits))?;
        let (hole, shaft) = match in_hand {
            Feature::Hole => (limits, mate),
            Feature::Shaft => (mate, limits),
        };
        Self::build(self.nominal, hole, shaft, self.basis)
    }

    /// The fit of a part that is only known to lie within limits of its own, and
    /// that varies by so much that [`Fit::suited`] leaves its mate no tolerance
    /// that can be reamed or turned (IT6), or honed where it is to hold (IT4). The
    /// mate keeps this fit's own width and
    /// its tight end: with the worst part in hand it is no tighter than this fit,
    /// and the spread of the part makes it looser. A hole that would be below the
    /// nominal size is made to that size, as everyone reams it. None where the
    /// part varies little enough.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::{Limits, standards::{b41, iso286::Feature}};
    /// // A 3/8 shoulder screw, 0.371 to 0.373 in, and RC4.
    /// let fit = "RC4".parse::<b41::Class>()?.fit("3/8in".parse()?)?;
    /// let screw = Limits::new("0.371in".parse()?, "0.373in".parse()?)?;
    /// let made = fit.suited_beyond(Feature::Shaft, screw)?.expect("two thou of spread");
    /// assert_eq!(made.hole().lower(), "0.375in".parse()?);
    /// assert_eq!(made.hole().upper(), "0.3759in".parse()?);
    /// assert_eq!(made.clearance().lower(), "0.002in".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn suited_beyond(&self, in_hand: Feature, limits: Limits) -> Result<Option<Self>, Error> {
        // What is to hold may be honed; what is to run is reamed or turned.
        let finest = if self.clearance.lower().is_negative() { Grade::it(4) } else { Grade::it(6) };
        let can_be_made = |mate: Limits| {
            grade_within(mate.tolerance(), self.nominal)
                .zip(finest)
                .is_some_and(|(grade, finest)| grade >= finest)
        };
        if limits.tolerance() == Length::ZERO
            || self.suit_limits(in_hand, limits).is_ok_and(can_be_made)
        {
            return Ok(None);
        }
        let (tight, width) = (self.clearance.lower(), self.part(in_hand.mate()).tolerance());
        let (hole, shaft) = match in_hand {
            Feature::Shaft => {
                let least = limits.upper().checked_add(tight)?;
                let lower = if tight.is_negative() { least } else { least.max(self.nominal) };
                (Limits::new(lower, lower.checked_add(width)?)?, limits)
            }
            Feature::Hole => {
                let upper = limits.lower().checked_sub(tight)?;
                (limits, Limits::new(upper.checked_sub(width)?, upper)?)
            }
        };
        let known = self.known().worst(limits.known());
        Self::build(self.nominal, hole.known_as(known), shaft.known_as(known), self.basis).map(Some)
    }

    /// How the fit is known: no better than either of its parts.
    pub const fn known(&self) -> Known {
        self.clearance.known()
    }

    /// The clearance when both parts are cut to their aims.
    pub fn clearance_aim(&self) -> Length {
        // Both lie within their limits, whose difference `build` has checked.
        Length::from_tenth_nanometres(
            self.hole.middle().tenth_nanometres() - self.shaft.middle().tenth_nanometres(),
        )
    }

    /// Clearance, transition or interference.
    pub const fn kind(&self) -> Kind {
        Kind::of_clearance(self.clearance)
    }

    /// Hole-basis, shaft-basis, both or neither.
    pub const fn basis(&self) -> Basis {
        self.basis
    }

    /// The chance that a pair made anywhere inside the limits has clearance.
    pub fn chance_of_clearance(&self) -> Chance {
        let (low, high) =
            (self.clearance.lower().millimetres(), self.clearance.upper().millimetres());
        let (hole, shaft) =
            (self.hole.tolerance().millimetres(), self.shaft.tolerance().millimetres());
        // Sum of two even spreads: the area of the rectangle above the line
        // of no clearance, by inclusion and exclusion of its four corners.
        let corner = |x: f64| if x > 0.0 { x * x / 2.0 } else { 0.0 };
        let even = if hole > 0.0 && shaft > 0.0 {
            (corner(high) - corner(high - hole) - corner(high - shaft) + corner(low))
                / (hole * shaft)
        } else if high > low {
            high / (high - low)
        } else {
            f64::from(u8::from(low > 0.0))
        };
        let spread = libm::hypot(hole, shaft) / 6.0;
        let middle = f64::midpoint(low, high);
        let normal = if spread > 0.0 {
            0.5 * libm::erfc(-middle / spread / core::f64::consts::SQRT_2)
        } else {
            f64::from(u8::from(middle > 0.0))
        };
        Chance { even: even.clamp(0.0, 1.0), normal }
    }

    /// The limits for the part still to be cut when the other one has been
    /// measured, from the fit's own clearance range. Their middle gives the
    /// range's middle.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::{Fit, Length, standards::iso286::Feature};
    /// let fit = Fit::of_classes(Length::from_millimetres(20)?, "H7".parse()?, "g6".parse()?)?;
    /// let shaft = fit.suit(Feature::Hole, "20.013mm".parse()?)?;
    /// assert_eq!(shaft.lower().to_string(), "19.972 mm");
    /// assert_eq!(shaft.upper().to_string(), "20.006 mm");
    /// assert_eq!(shaft.middle().to_string(), "19.989 mm");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn suit(&self, measured: Feature, size: Length) -> Result<Limits, Error> {
        self.suit_limits(measured, Limits::new(size, size)?)
    }

    /// The limits for the part still to be cut when the other one is only
    /// known to lie within limits of its own: wherever it lies there, the
    /// clearance stays in the fit's range.
    ///
    /// # Errors
    /// Out of range, or the part in hand varies by more than the fit allows.
    ///
    /// ```
    /// use fits_core::{Fit, Length, Limits, standards::iso286::Feature};
    /// let fit = Fit::of_classes(Length::from_millimetres(20)?, "H7".parse()?, "g6".parse()?)?;
    /// let in_hand = Limits::new("19.98mm".parse()?, "19.99mm".parse()?)?;
    /// let hole = fit.suit_limits(Feature::Shaft, in_hand)?;
    /// assert_eq!(hole.lower().to_string(), "19.997 mm");
    /// assert_eq!(hole.upper().to_string(), "20.021 mm");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn suit_limits(&self, in_hand: Feature, limits: Limits) -> Result<Limits, Error> {
        let (least, most) = (self.clearance.lower(), self.clearance.upper());
        let (lower, upper) = match in_hand {
            Feature::Hole => {
                (limits.upper().checked_sub(most)?, limits.lower().checked_sub(least)?)
            }
            Feature::Shaft => {
                (limits.upper().checked_add(least)?, limits.lower().checked_add(most)?)
            }
        };
        if lower > upper {
            return Err(Error::no_plan(format!(
                "the {in_hand} varies by {}, and the fit's clearance by {}: no {} suits all of it",
                limits.tolerance(),
                self.clearance.tolerance(),
                in_hand.mate()
            )));
        }
        Ok(Limits::new(lower, upper)?.known_as(self.known().worst(limits.known())))
    }
}

fn not_a_pair(hole: Class, shaft: Class) -> Error {
    let why = match (hole.feature, shaft.feature) {
        (Feature::Hole, Feature::Hole) => format!("{hole} and {shaft} are two holes"),
        (Feature::Shaft, Feature::Shaft) => format!("{hole} and {shaft} are two shafts"),
        _ => format!("the hole comes first: {shaft} is the hole, {hole} the shaft"),
    };
    Error::not_a_pair(why)
}
