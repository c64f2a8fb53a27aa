//! Writing sizes for the eye, without ever passing a bad part.

use core::fmt;

use super::{Length, Limits, Unit, length::divide_half_even};

/// Which way a shown figure is rounded.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Rounding {
    /// To the nearest, halves to even: readings, differences, nominal sizes.
    Nearest,
    /// Downward: an upper limit, so that the shown one lies inside.
    Down,
    /// Upward: a lower limit, so that the shown one lies inside.
    Up,
}

/// A unit and how many decimals of it to show.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(clippy::exhaustive_structs, reason = "a unit and how many decimals are all")]
pub struct Decimals {
    /// The unit.
    pub unit: Unit,
    /// Decimals after the point, at most nine.
    pub places: u8,
}

impl Decimals {
    /// Millimetres to 0.001.
    pub const MILLIMETRES: Self = Self { unit: Unit::Millimetre, places: 3 };
    /// Inches to 0.0001.
    pub const INCHES: Self = Self { unit: Unit::Inch, places: 4 };

    fn step(self) -> (i128, i128) {
        (
            i128::from(self.unit.length().tenth_nanometres()),
            10_i128.pow(u32::from(self.places.min(9))),
        )
    }

    /// The number of last-place steps that this length rounds to.
    fn steps(self, length: Length, rounding: Rounding) -> i128 {
        let (unit, scale) = self.step();
        let scaled = i128::from(length.tenth_nanometres()) * scale;
        match rounding {
            Rounding::Down => scaled.div_euclid(unit),
            Rounding::Up => -(-scaled).div_euclid(unit),
            // A unit is never zero.
            Rounding::Nearest => divide_half_even(scaled, unit).unwrap_or_default(),
        }
    }

    /// This length moved onto the last place shown, as near as 0.1 nm allows.
    ///
    /// ```
    /// use fits_core::size::{Decimals, Rounding};
    /// let size = "20.0146mm".parse()?;
    /// assert_eq!(Decimals::MILLIMETRES.round(size, Rounding::Nearest), "20.015mm".parse()?);
    /// assert_eq!(Decimals::MILLIMETRES.round(size, Rounding::Down), "20.014mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn round(self, length: Length, rounding: Rounding) -> Length {
        let (unit, scale) = self.step();
        let count = divide_half_even(self.steps(length, rounding) * unit, scale)
            .and_then(|count| i64::try_from(count).ok());
        count.map_or(length, Length::from_tenth_nanometres)
    }

    /// Enough places for limits in this unit: three of a millimetre, four of
    /// an inch, and up to two more where rounding the limits inward would
    /// take more than a tenth of the tolerance.
    ///
    /// ```
    /// use fits_core::{Limits, size::{Decimals, Rounding, Unit}};
    /// let hole = Limits::new("20mm".parse()?, "20.021mm".parse()?)?;
    /// let decimals = Decimals::for_limits(Unit::Inch, hole);
    /// assert_eq!(decimals.places, 5);
    /// // The upper limit as a person reads it lies inside.
    /// assert_eq!(decimals.round(hole.upper(), Rounding::Down), "0.78822in".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn for_limits(unit: Unit, limits: Limits) -> Self {
        let base = if unit == Unit::Inch { 4 } else { 3 };
        let tolerance = i128::from(limits.tolerance().tenth_nanometres());
        (base..base + 2)
            .map(|places| Self { unit, places })
            .find(|decimals| {
                let (unit, scale) = decimals.step();
                let shown = decimals.steps(limits.upper(), Rounding::Down)
                    - decimals.steps(limits.lower(), Rounding::Up);
                // shown·unit/scale ≥ 0.9·tolerance, in integers.
                shown >= 0 && shown * unit * 10 >= tolerance * scale * 9
            })
            .unwrap_or(Self { unit, places: base + 2 })
    }
}

impl Length {
    /// This length as text in a unit, rounded one way, without the unit.
    ///
    /// ```
    /// use fits_core::{Length, size::{Decimals, Rounding}};
    /// let upper: Length = "20.021mm".parse()?;
    /// assert_eq!(upper.shown(Decimals::INCHES, Rounding::Down).to_string(), "0.7882");
    /// assert_eq!(upper.shown(Decimals::INCHES, Rounding::Up).to_string(), "0.7883");
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn shown(self, decimals: Decimals, rounding: Rounding) -> impl fmt::Display {
        Shown { steps: decimals.steps(self, rounding), places: usize::from(decimals.places.min(9)) }
    }
}

/// A length in inches with as many places as it takes, at most nine.
pub(crate) fn inches(length: Length) -> String {
    let decimals = Decimals { unit: Unit::Inch, places: 9 };
    let text = length.shown(decimals, Rounding::Nearest).to_string();
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

struct Shown {
    steps: i128,
    places: usize,
}

impl fmt::Display for Shown {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = if self.steps < 0 { "-" } else { "" };
        let steps = self.steps.unsigned_abs();
        // At most nine places.
        let scale = 10_u128.pow(u32::try_from(self.places).unwrap_or(0));
        let text = if self.places == 0 {
            format!("{sign}{steps}")
        } else {
            format!("{sign}{}.{:0places$}", steps / scale, steps % scale, places = self.places)
        };
        f.pad(&text)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn shown(text: &str, decimals: Decimals, rounding: Rounding) -> String {
        text.parse::<Length>().expect(text).shown(decimals, rounding).to_string()
    }

    #[test]
    fn limits_round_inward_and_the_rest_to_the_nearest() {
        let mm = Decimals::MILLIMETRES;
        assert_eq!(shown("0.75in", mm, Rounding::Nearest), "19.050");
        assert_eq!(shown("0.7503in", mm, Rounding::Down), "19.057");
        assert_eq!(shown("0.7503in", mm, Rounding::Up), "19.058");
        assert_eq!(shown("-0.0005in", mm, Rounding::Down), "-0.013");
        assert_eq!(shown("-0.0005in", mm, Rounding::Up), "-0.012");
        assert_eq!(shown("-0.0001mm", mm, Rounding::Nearest), "0.000");
        assert_eq!(shown("0.0005mm", mm, Rounding::Nearest), "0.000");
        assert_eq!(shown("0.0015mm", mm, Rounding::Nearest), "0.002");
    }

    #[test]
    fn inches_take_a_fifth_place_where_the_tolerance_needs_it() {
        let places = |lower: &str, upper: &str, unit| {
            let limits = Limits::new(lower.parse().expect(lower), upper.parse().expect(upper))
                .expect("limits");
            Decimals::for_limits(unit, limits).places
        };
        assert_eq!(places("20mm", "20.021mm", Unit::Inch), 5);
        assert_eq!(places("0.7500in", "0.7508in", Unit::Inch), 4);
        assert_eq!(places("20mm", "20.021mm", Unit::Millimetre), 3);
        assert_eq!(places("20mm", "20.0025mm", Unit::Millimetre), 4);
        assert_eq!(places("20mm", "20.13mm", Unit::Inch), 4);
    }
}
