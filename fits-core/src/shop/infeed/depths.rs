//! How deep each pass goes: by the tool maker's count of passes, or equal areas
//! from the first cut.

use super::{How, LEAST, table};
use crate::{
    error::Error,
    size::Length,
    source::{Known, Provenance},
};

/// More cuts than this are not worth listing.
const MOST_CUTS: u32 = 40;

#[derive(Clone, Copy, Debug)]
pub(super) struct PassCount {
    pub(super) up_to: Length,
    pub(super) high: u32,
    pub(super) from: Provenance,
}

/// What each pass before the last takes, in divisions of the dial: along the
/// shares of the depth, never more than the pass before, never under the least
/// cut. The last cut is left that least or less, not under half of it.
#[allow(clippy::cast_precision_loss, reason = "divisions of a dial, some thousands at most")]
#[allow(clippy::cast_possible_truncation, reason = "a share of the divisions, so in range")]
pub(super) fn takes(how: &How, depth: Length, shares: &[f64]) -> Result<Vec<i64>, Error> {
    let (step, all) = (how.division(), how.dialled(depth)?);
    let least = how.dialled(LEAST)?;
    let up = |part: i64| part / step + i64::from(part % step > 0);
    let mut rough = up(all.saturating_sub(least).max(0));
    let left = |rough: i64| all.saturating_sub(rough.saturating_mul(step));
    if left(rough) < least / 2 {
        rough = (rough - 1).max(0);
    }
    // A pass takes the least cut, and no less than the last.
    let floor = up(least).max(up(left(rough)));
    if rough < floor {
        return Ok(Vec::new());
    }
    let mut list: Vec<i64> = Vec::new();
    let mut at = 0;
    for share in shares {
        let to = libm::round(rough as f64 * share) as i64;
        let takes = (to - at).max(floor).min(rough - at);
        if takes >= floor {
            list.push(takes);
            at += takes;
        }
    }
    // What is left over goes to the lightest.
    let chunk = ((rough - at) / i64::from(MOST_CUTS)).max(1);
    while at < rough {
        let more = chunk.min(rough - at);
        if let Some(lightest) = list.iter_mut().rev().min_by_key(|takes| **takes) {
            *lightest += more;
        }
        at += more;
    }
    // Rounding to divisions may have turned two neighbours round.
    list.sort_unstable_by(|a, b| b.cmp(a));
    Ok(list)
}

/// Is the groove wide enough at its bottom that its area is a trapezium's?
pub(super) fn is_trapezoid(half_angle_degrees: f64) -> bool {
    half_angle_degrees < 20.0
}

/// The groove that a flat tool cuts, in millimetres.
pub(super) struct Trapezium {
    flat: f64,
    slope: f64,
}

impl Trapezium {
    pub(super) fn new(flat: Length, half_angle_degrees: f64) -> Self {
        let flat = flat.millimetres().max(0.0);
        Self { flat, slope: libm::tan(half_angle_degrees.to_radians()) }
    }

    fn area(&self, depth: f64) -> f64 {
        depth * (self.flat + depth * self.slope)
    }

    /// The depth at which so much is cut: the area's formula solved for it.
    fn depth(&self, area: f64) -> f64 {
        let root = libm::sqrt(self.flat * self.flat + 4.0 * self.slope * area);
        2.0 * area / (self.flat + root)
    }

    /// Shares of the depth after each of so many equal cuts.
    pub(super) fn shares(&self, rough: Length, cuts: u32) -> Vec<f64> {
        let rough = rough.millimetres();
        let each = self.area(rough) / f64::from(cuts);
        (1..=cuts).map(|number| self.depth(each * f64::from(number)) / rough).collect()
    }

    /// How many equal cuts make the first one so deep at most.
    pub(super) fn cuts_for(&self, first: Length, rough: Length) -> Result<u32, Error> {
        let deepest = rough.millimetres();
        let least = self.depth(self.area(deepest) / f64::from(MOST_CUTS));
        check_first(first, least, rough)?;
        let wanted = libm::ceil(self.area(deepest) / self.area(first.millimetres()) - 1e-9);
        Ok((1..=MOST_CUTS).find(|count| f64::from(*count) >= wanted).unwrap_or(MOST_CUTS))
    }
}

/// How many equal areas of a vee make the first cut so deep.
pub(super) fn cuts_for(first: Length, rough: Length) -> Result<u32, Error> {
    check_first(first, rough.millimetres() / libm::sqrt(f64::from(MOST_CUTS)), rough)?;
    let ratio = rough.millimetres() / first.millimetres();
    let wanted = libm::ceil(ratio * ratio - 1e-9);
    // The last count within reach of the shallowest first cut is MOST_CUTS.
    Ok((1..=MOST_CUTS).find(|count| f64::from(*count) >= wanted).unwrap_or(MOST_CUTS))
}

/// Is a first cut between the least, in millimetres, and all there is to rough?
fn check_first(first: Length, least: f64, rough: Length) -> Result<(), Error> {
    // To whole micrometres inwards, so that both ends can be asked for.
    let shallowest = Length::nearest_millimetres(libm::ceil(least * 1e3) / 1e3)?;
    let deepest = Length::nearest_millimetres(libm::floor(rough.millimetres() * 1e3) / 1e3)?;
    let shallowest = shallowest.max(LEAST).min(deepest);
    if first < shallowest || first > deepest {
        return Err(Error::out_of_reach(
            format!("a first cut of {first} does not go with this thread's depth"),
            format!("from {shallowest} to {deepest}"),
        ));
    }
    Ok(())
}

impl PassCount {
    /// By pitch and form; beyond the table its last row.
    pub(super) fn of(pitch: Length, half_angle_degrees: f64) -> Self {
        let rows: &[Self] =
            if is_trapezoid(half_angle_degrees) { &table::TRAPEZOID } else { &table::VEE };
        rows.iter().find(|row| pitch <= row.up_to).or(rows.last()).copied().unwrap_or(Self {
            up_to: pitch,
            high: 10,
            from: Provenance { known: Known::Practice, text: "" },
        })
    }
}
