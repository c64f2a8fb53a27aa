//! A pin across a shaft and its collar: what shears it and what crushes the holes.

use super::limits;
use crate::{
    error::Error,
    size::{Length, Limits},
    source::Known,
    speech::say,
};

/// A pin across a shaft and the collar on it, in double shear.
///
/// The three formulas are those of the textbooks for a cross pin under torque
/// (Roloff/Matek, machine elements; recalled, and derived again in the tests).
///
/// ```
/// use fits_core::standards::hardware::CrossPin;
/// let pin = CrossPin { shaft: "20mm".parse()?, pin: "5mm".parse()? };
/// assert_eq!(CrossPin::usual(pin.shaft)?.lower(), pin.pin);
/// // 10 N m: 500 N on each of two sections of 19.635 mm², 10 mm out.
/// let is_near = |pascals: f64, mpa: f64| (pascals / 1e6 - mpa).abs() < 0.01;
/// assert!(is_near(pin.shear(10.0) * 19.635, 500.0));
/// assert!(is_near(pin.shaft_pressure(10.0), 30.0));
/// assert!(is_near(pin.collar_pressure(10.0, "40mm".parse()?)?, 6.667));
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[expect(clippy::exhaustive_structs, reason = "a shaft and a pin are all")]
pub struct CrossPin {
    /// The shaft's diameter.
    pub shaft: Length,
    /// The pin's diameter.
    pub pin: Length,
}

impl CrossPin {
    /// The least and the greatest pin for a shaft: a quarter to a third of it.
    ///
    /// # Errors
    /// Out of range.
    ///
    /// ```
    /// use fits_core::standards::hardware::CrossPin;
    /// let pin = CrossPin::usual("24mm".parse()?)?;
    /// assert_eq!((pin.lower(), pin.upper()), ("6mm".parse()?, "8mm".parse()?));
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn usual(shaft: Length) -> Result<Limits, Error> {
        limits([shaft.checked_scale(1, 4)?, shaft.checked_scale(1, 3)?], Known::Practice)
    }

    fn metres(self) -> (f64, f64) {
        (self.shaft.millimetres() / 1000.0, self.pin.millimetres() / 1000.0)
    }

    /// The shear stress in the pin under a torque, in pascals for newton metres:
    /// the torque over two sections, each half the shaft's diameter out.
    ///
    /// ```
    /// use fits_core::standards::hardware::CrossPin;
    /// let joint = CrossPin { shaft: "25mm".parse()?, pin: "6mm".parse()? };
    /// // 4 T / (pi d² D).
    /// let expected = 4.0 * 10.0 / (std::f64::consts::PI * 0.006 * 0.006 * 0.025);
    /// assert!((joint.shear(10.0) - expected).abs() < 1.0);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn shear(self, torque_n_m: f64) -> f64 {
        let (shaft, pin) = self.metres();
        4.0 * torque_n_m / (std::f64::consts::PI * pin * pin * shaft)
    }

    /// The greatest pressure of the pin in the shaft's hole, which rises from
    /// nothing at the centre: pascals.
    ///
    /// ```
    /// use fits_core::standards::hardware::CrossPin;
    /// let joint = CrossPin { shaft: "25mm".parse()?, pin: "6mm".parse()? };
    /// // 6 T / (d D²).
    /// assert!((joint.shaft_pressure(10.0) - 6.0 * 10.0 / (0.006 * 0.025 * 0.025)).abs() < 1.0);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn shaft_pressure(self, torque_n_m: f64) -> f64 {
        let (shaft, pin) = self.metres();
        6.0 * torque_n_m / (pin * shaft * shaft)
    }

    /// The pressure of the pin in the wall of a collar of this outside diameter: pascals.
    ///
    /// # Errors
    /// The collar is no larger than the shaft.
    ///
    /// ```
    /// use fits_core::standards::hardware::CrossPin;
    /// let joint = CrossPin { shaft: "25mm".parse()?, pin: "6mm".parse()? };
    /// // T / (d s (D + s)), the collar's wall s being 7.5 mm.
    /// let pressure = joint.collar_pressure(10.0, "40mm".parse()?)?;
    /// assert!((pressure - 10.0 / (0.006 * 0.0075 * 0.0325)).abs() < 1.0);
    /// assert!(joint.collar_pressure(10.0, "20mm".parse()?).is_err());
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn collar_pressure(self, torque_n_m: f64, outside: Length) -> Result<f64, Error> {
        if outside <= self.shaft {
            return Err(Error::not_a_pair(say!(
                "a collar of {} leaves no wall about a shaft of {}",
                outside,
                self.shaft
            )));
        }
        let ((shaft, pin), outside) = (self.metres(), outside.millimetres() / 1000.0);
        Ok(4.0 * torque_n_m / (pin * (outside * outside - shaft * shaft)))
    }
}
