//! Small parts that hold others in place and what is cut for them: grooves of
//! retaining rings and O-rings, holes of pins, Woodruff keyseats, plugs of
//! square tube.
//!
//! From `data/hardware/`, whose rows say how each figure is known.

mod clevis;
#[cfg(feature = "uom")]
mod cross_pin;
mod gland;
mod orings;
mod pins;
mod rings;
mod square_tube;
#[rustfmt::skip]
#[allow(clippy::unreadable_literal, reason = "generated")]
mod table;
mod woodruff;

pub use clevis::{ClevisPin, CotterPin};
#[cfg(feature = "uom")]
pub use cross_pin::CrossPin;
pub use gland::Gland;
pub use orings::{GlandUse, ORing, RingFit, RingOn};
pub use pins::{SpringPin, SpringPinKind, TaperPin};
pub use rings::{RetainingRing, RingKind};
pub use square_tube::{SquareTube, TubeStandard};
pub use woodruff::Woodruff;

use crate::{
    error::Error,
    size::{Length, Limits, Unit},
    source::Known,
    speech::Speech,
    standards::bought::spoken,
};

/// Does a listed size go by this name? Inch lists print 3/16 as 0.188.
fn is_called(listed: Length, asked: Length) -> bool {
    const ROUNDED: i64 = 152_400; // 0.6 thou
    listed.tenth_nanometres().abs_diff(asked.tenth_nanometres()) <= ROUNDED.unsigned_abs()
}

/// Limits of a row.
fn limits([low, high]: [Length; 2], known: Known) -> Result<Limits, Error> {
    Ok(Limits::new(low, high)?.known_as(known))
}

/// A size that a list does not hold, with its neighbours there.
fn not_listed(
    why: Speech,
    listed: impl Iterator<Item = Length>,
    asked: Length,
    unit: Unit,
) -> Error {
    let (mut below, mut above) = (None, None);
    for size in listed {
        if size < asked {
            below = below.max(Some(size));
        } else if above.is_none_or(|least| size < least) {
            above = Some(size);
        }
    }
    let near: Vec<String> =
        [below, above].into_iter().flatten().map(|size| spoken(size, unit)).collect();
    Error::not_listed(why, format!("listed near it: {}", near.join(", ")))
}
