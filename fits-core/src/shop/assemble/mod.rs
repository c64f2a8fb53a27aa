//! Parts pressed or shrunk together: pressure, stress, force, torque and heat.
//!
//! Floating point lives here and nowhere near a limit of size: what is known
//! of friction and strength has three figures at best.

mod cylinder;

pub use cylinder::{Compound, Ring, Stress, Surface};

use crate::{
    error::{Error, Kind},
    size::Length,
};

fn refused(why: String, advice: &str) -> Error {
    Error::new(Kind::NoJoint { why, advice: advice.to_owned() })
}

/// The length nearest to a number of millimetres.
fn millimetres(value: f64) -> Result<Length, Error> {
    Length::nearest(uom::si::f64::Length::new::<uom::si::length::millimeter>(value))
}
