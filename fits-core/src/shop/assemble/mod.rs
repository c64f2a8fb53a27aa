//! Parts pressed or shrunk together: pressure, stress, force, torque and heat.
//!
//! Floating point lives here and nowhere near a limit of size: what is known
//! of friction and strength has three figures at best.

mod assembly;
mod choose;
mod cylinder;
mod friction;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod friction_table;
mod heat;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod heat_table;
mod joint;
mod lead_in;
mod plastic;

pub use assembly::{Assembly, MOST_PLASTIC};
pub use choose::{Grip, Wishes, grips};
pub(in crate::shop) use cylinder::no_wall;
pub use cylinder::{Compound, Ring, Stress, Surface};
pub use friction::{Friction, Joining, Lubricant, galls};
pub use heat::{Both, Bound, Heat};
pub use joint::{
    BRITTLE_MARGIN, GROUND, Joint, REAMED_AND_TURNED, SMOOTHING_LEAST, SMOOTHING_MOST, Sleeve,
    Worst,
};
pub use lead_in::{LeadIn, lead_in};
pub(in crate::shop) use plastic::Pair;
pub use plastic::{Yielded, Yielding};

use crate::{error::Error, size::Length};

/// The length nearest to a number of millimetres.
pub(super) fn millimetres(value: f64) -> Result<Length, Error> {
    Length::nearest_millimetres(value)
}
