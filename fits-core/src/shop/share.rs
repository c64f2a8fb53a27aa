//! A press that need not hold alone: what compound, key, pin or screw beside it
//! takes of a torque.
//!
//! A press and a bond are stiff and act together (in a joint pressed cold the film is
//! half wiped off). What holds by shear acts when they give: it takes the rest, and
//! where the load turns round it must take all of it.

use crate::{
    error::Error,
    size::Length,
    speech::{Figure, say},
};

/// The share of a compound's bond that is left where the parts are pressed together
/// cold: Croccolo, De Agostinis, Vincenzi 2012, bonded shrink joints, as summarised.
pub const PRESSED_COLD: f64 = 0.5;
/// Shear yield over tensile yield, von Mises.
const SHEAR: f64 = 0.577;
/// Factors against yield, steady and shock: common practice, no source.
const FACTORS: (f64, f64) = (2.0, 4.0);

/// What holds beside a press.
///
/// ```
/// use fits_core::shop::share::Beside;
/// let pin = Beside::CrossPin { diameter: "6mm".parse()? };
/// assert_eq!(pin.name(), "pin");
/// # Ok::<(), fits_core::Error>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize), serde(rename_all = "kebab-case"))]
#[non_exhaustive]
pub enum Beside {
    /// A pin across hub and shaft, in double shear.
    CrossPin {
        /// Its diameter.
        diameter: Length,
    },
    /// A key half in the shaft and half in the hub.
    Key {
        /// Its width.
        width: Length,
        /// Its height; square where none is said.
        height: Length,
        /// How long it bears.
        long: Length,
    },
    /// A screw or pin along the joint, half in each part.
    Screw {
        /// Its diameter; of a screw its root.
        diameter: Length,
        /// How long it bears.
        long: Length,
    },
}

impl Beside {
    /// What it is called.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::CrossPin { .. } => "pin",
            Self::Key { .. } => "key",
            Self::Screw { .. } => "screw",
        }
    }

    /// The torque that it may carry on a shaft, in newton metres, of a metal of a
    /// yield in megapascals.
    ///
    /// # Errors
    /// A size that is none, or a pin thicker than the shaft stands.
    ///
    /// ```
    /// use fits_core::shop::share::Beside;
    /// // 1/4 in across 1 in, 250 MPa: pi/4 of 6.35² twice over, 72 MPa, at 12.7 mm.
    /// let pin = Beside::CrossPin { diameter: "1/4in".parse()? };
    /// let torque = pin.carries("1in".parse()?, 250.0, false)?;
    /// assert!((torque - 2.0 * 31.67 * 72.125 * 12.7 / 1000.0).abs() < 0.05);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn carries(self, shaft: Length, yield_mpa: f64, shock: bool) -> Result<f64, Error> {
        let refuse = |why, advice: &str| Err(Error::out_of_reach(why, advice));
        let factor = if shock { FACTORS.1 } else { FACTORS.0 };
        let (shear, crush) = (SHEAR * yield_mpa / factor, yield_mpa / factor);
        let radius = shaft.millimetres() / 2.0;
        let sizes: &[Length] = match &self {
            Self::CrossPin { diameter } => &[*diameter],
            Self::Key { width, height, long } => &[*width, *height, *long],
            Self::Screw { diameter, long } => &[*diameter, *long],
        };
        if let Some(none) = sizes.iter().find(|size| !size.is_positive()) {
            return refuse(say!("a {} of {} holds nothing", self.name(), *none), "give its size");
        }
        let force = match self {
            Self::CrossPin { diameter } => {
                if diameter.checked_mul(2)? > shaft {
                    return refuse(
                        say!("a pin of {} leaves too little of a shaft of {}", diameter, shaft),
                        "a quarter to a third of the shaft is usual",
                    );
                }
                let d = diameter.millimetres();
                core::f64::consts::FRAC_PI_2 * d * d * shear
            }
            Self::Key { width, height, long } => {
                let long = long.millimetres();
                (width.millimetres() * shear).min(height.millimetres() / 2.0 * crush) * long
            }
            Self::Screw { diameter, long } => {
                diameter.millimetres() * long.millimetres() * shear.min(crush / 2.0)
            }
        };
        Ok(force * radius / 1000.0)
    }
}

/// One holder and its share.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Holder {
    /// What holds: `press`, `compound`, `pin`, `key`, `screw`.
    pub name: &'static str,
    /// What it may carry, in newton metres.
    pub carries_n_m: f64,
    /// What it takes of the torque, in newton metres.
    pub takes_n_m: f64,
}

/// A torque and what holds it.
#[derive(Clone, Debug, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Shared {
    /// Those that hold, in the order in which they are loaded.
    pub parts: Vec<Holder>,
    /// What none of them takes, in newton metres.
    pub left_n_m: f64,
}

impl Shared {
    /// Shares a torque among a press and a compound, which act together, and what
    /// holds by shear beside them. Where the load turns round the latter are loaded
    /// with all of it, as a press that works loose gives them.
    ///
    /// # Errors
    /// The torque is none.
    ///
    /// ```
    /// use fits_core::shop::share::Shared;
    /// let shared = Shared::of(60.0, &[("press", 35.0)], &[("pin", 58.0)], false)?;
    /// assert_eq!(shared.parts[1].takes_n_m, 25.0);
    /// assert_eq!(shared.left_n_m, 0.0);
    /// let reversing = Shared::of(60.0, &[("press", 35.0)], &[("pin", 58.0)], true)?;
    /// assert_eq!(reversing.left_n_m, 2.0);
    /// # Ok::<(), fits_core::Error>(())
    /// ```
    pub fn of(
        torque_n_m: f64,
        grip: &[(&'static str, f64)],
        shear: &[(&'static str, f64)],
        turns_round: bool,
    ) -> Result<Self, Error> {
        if torque_n_m.is_nan() || torque_n_m <= 0.0 {
            return Err(Error::out_of_reach(
                say!("a torque cannot be {}", Figure::NewtonMetres(torque_n_m)),
                "give the torque to hold",
            ));
        }
        let mut left = torque_n_m;
        let mut parts = Vec::new();
        let mut share = |left: &mut f64, name: &'static str, carries: f64| {
            let takes = carries.max(0.0).min(*left);
            *left -= takes;
            parts.push(Holder { name, carries_n_m: carries, takes_n_m: takes });
        };
        for (name, carries) in grip {
            share(&mut left, name, *carries);
        }
        if turns_round && !shear.is_empty() {
            left = torque_n_m;
        }
        for (name, carries) in shear {
            share(&mut left, name, *carries);
        }
        Ok(Self { parts, left_n_m: left })
    }
}
