//! The least bore that cleans up a worn, tapered or egged one, and the next size.
//!
//! A circle of diameter d whose middle lies e from the bar's axis is cleaned up by
//! no bore less than d + 2 e.

use crate::{
    error::Error,
    size::{Length, Unit},
    speech::say,
};

/// What readings of a bore at several places come to.
///
/// ```
/// use fits_core::{shop::rescue::{CleanUp, next_size}, size::Unit};
/// let bore = CleanUp::of(&["0.753in".parse()?, "0.761in".parse()?], None, None)?;
/// assert_eq!(bore.on_its_middle, "0.761in".parse()?);
/// // Worn to one side: the worn side lies 0.008 in further from the old middle.
/// assert_eq!(bore.on_the_old_middle, "0.769in".parse()?);
/// assert_eq!(bore.next(Unit::Inch)?, "49/64in".parse()?);
/// assert_eq!(bore.next_on_old(Unit::Inch)?, "25/32in".parse()?);
/// assert_eq!(next_size("12.1mm".parse()?, Unit::Millimetre)?, "12.5mm".parse()?);
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct CleanUp {
    /// The least reading.
    pub least: Length,
    /// The greatest reading.
    pub greatest: Length,
    /// The least bore that cleans up if the bar is set to the middle of the bore as
    /// it is, and all places lie in line as far as was said.
    pub on_its_middle: Length,
    /// The same if the bar is set to the old middle and the wear lies to one side.
    pub on_the_old_middle: Length,
}

impl CleanUp {
    /// From readings of the diameter, the size before the wear (the least reading
    /// where it is not known), and how far places lie out of line.
    ///
    /// # Errors
    /// No reading, one that is not above 0, or a size before the wear above them.
    ///
    /// ```
    /// use fits_core::shop::rescue::CleanUp;
    /// let read = ["20.1mm".parse()?, "20.3mm".parse()?];
    /// let bore = CleanUp::of(&read, Some("20mm".parse()?), None)?;
    /// assert_eq!((bore.least, bore.greatest), (read[0], read[1]));
    /// assert!(CleanUp::of(&[], None, None).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn of(
        readings: &[Length],
        before: Option<Length>,
        out_of_line: Option<Length>,
    ) -> Result<Self, Error> {
        let (Some(&least), Some(&greatest)) = (readings.iter().min(), readings.iter().max()) else {
            return Err(Error::out_of_reach(
                "no reading of the bore is given",
                "give the diameters read",
            ));
        };
        if !least.is_positive() {
            return Err(Error::out_of_reach(say!("a bore cannot be {}", least), "read it again"));
        }
        let before = before.unwrap_or(least);
        if before > greatest {
            return Err(Error::out_of_reach(
                say!("the bore is not worn: it was {} and reads {} at most", before, greatest),
                "bore it to size",
            ));
        }
        let out = out_of_line.unwrap_or_default().checked_abs()?.checked_mul(2)?;
        Ok(Self {
            least,
            greatest,
            on_its_middle: greatest.checked_add(out)?,
            on_the_old_middle: greatest.checked_mul(2)?.checked_sub(before)?.checked_add(out)?,
        })
    }

    /// The next standard size that cleans up on the bore's own middle.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::{shop::rescue::CleanUp, size::Unit};
    /// let bore = CleanUp::of(&["20.1mm".parse()?, "20.3mm".parse()?], None, None)?;
    /// // Whole millimetres above 20.
    /// assert_eq!(bore.next(Unit::Millimetre)?, "21mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn next(&self, unit: Unit) -> Result<Length, Error> {
        next_size(self.on_its_middle, unit)
    }

    /// The next standard size that cleans up on the old middle.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::{shop::rescue::CleanUp, size::Unit};
    /// // All the wear may lie on one side.
    /// let bore = CleanUp::of(&["20.1mm".parse()?, "20.7mm".parse()?], Some("20mm".parse()?), None)?;
    /// assert_eq!(bore.next(Unit::Millimetre)?, "21mm".parse()?);
    /// assert_eq!(bore.next_on_old(Unit::Millimetre)?, "22mm".parse()?);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn next_on_old(&self, unit: Unit) -> Result<Length, Error> {
        next_size(self.on_the_old_middle, unit)
    }
}

/// The next size that bar and reamers are commonly had in, at or above a size:
/// 64ths of an inch to 1 in, 32nds to 2, 16ths beyond; half millimetres to 20 mm,
/// whole ones beyond. Common practice, no source.
///
/// # Errors
/// Out of range.
///
/// ```
/// use fits_core::{shop::rescue::next_size, size::Unit};
/// assert_eq!(next_size("0.51in".parse()?, Unit::Inch)?, "33/64in".parse()?);
/// assert_eq!(next_size("19.6mm".parse()?, Unit::Millimetre)?, "20mm".parse()?);
/// # Ok::<(), fits_core::Error>(())
/// ```
pub fn next_size(size: Length, unit: Unit) -> Result<Length, Error> {
    stepped(size, unit, true)
}

/// The size before it, at or under a size.
pub(super) fn size_under(size: Length, unit: Unit) -> Result<Length, Error> {
    stepped(size, unit, false)
}

fn stepped(size: Length, unit: Unit, is_up: bool) -> Result<Length, Error> {
    let inch = Length::INCH;
    let step = match unit {
        Unit::Inch if size <= inch => inch.checked_scale(1, 64)?,
        Unit::Inch if size <= inch.checked_mul(2)? => inch.checked_scale(1, 32)?,
        Unit::Inch => inch.checked_scale(1, 16)?,
        _ if size <= Length::from_millimetres(20)? => Length::MILLIMETRE.half(),
        _ => Length::MILLIMETRE,
    };
    let (count, by) = (size.tenth_nanometres(), step.tenth_nanometres());
    let more = i64::from(is_up && count.rem_euclid(by) > 0);
    step.checked_mul(count.div_euclid(by) + more)
}
