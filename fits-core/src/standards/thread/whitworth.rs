//! Whitworth threads, BSW and BSF and special pitches (BS 84), in inches.
//!
//! The form and the ratio of the classes were read; the tolerance formulas
//! are recalled, so `why` marks them.

use super::{
    Class, DiameterLimits, Pitch, Quality, Series, Side, Sizes, Thread,
    acme::no_core,
    inch::{Listed, inches, to_tenth},
    unified_series::inch_parts,
    whitworth_table as table,
};
use crate::{
    error::Error,
    size::Length,
    source::{Known, Provenance, Reason},
};

/// Effective less major diameter over the pitch.
const DEPTH: f64 = 0.640_327_380_682;

/// The pitch of a size in a series.
pub(super) fn listed_pitch(major: Length, series: Series) -> Option<Pitch> {
    table::SIZES.iter().find(|entry| entry.major == major && entry.series == series)?.pitch().ok()
}

/// The series that lists a size with a pitch.
pub(super) fn series(major: Length, pitch: Pitch) -> Series {
    Listed::find(&table::SIZES, major, pitch).map_or(Series::Special, |entry| entry.series)
}

/// Where the size is listed.
pub(super) fn listed(thread: &Thread) -> Option<Provenance> {
    Listed::find(&table::SIZES, thread.major(), thread.pitch()).map(|size| size.from)
}

pub(super) const fn default_class(side: Side) -> Class {
    Class::Word(match side {
        Side::External => Quality::Medium,
        Side::Internal => Quality::Normal,
    })
}

/// The part of T that is the effective diameter's tolerance.
fn factor(class: Class, side: Side) -> Result<f64, Error> {
    match (class, side) {
        (Class::Word(Quality::Close), Side::External) => Ok(2.0 / 3.0),
        (Class::Word(Quality::Medium), _) => Ok(1.0),
        (Class::Word(Quality::Free), Side::External)
        | (Class::Word(Quality::Normal), Side::Internal) => Ok(1.5),
        _ => Err(Error::not_given(
            format!("BS 84 has no class {class} of {} thread", side.word()),
            match side {
                Side::External => "screws are close, medium or free",
                Side::Internal => "nuts are medium or normal",
            },
        )),
    }
}

/// T = 0.002 cbrt(D) + 0.003 sqrt(L) + 0.005 sqrt(P), inches.
fn unit(major: f64, engaged: f64, pitch: f64) -> f64 {
    0.002 * libm::cbrt(major) + 0.003 * libm::sqrt(engaged) + 0.005 * libm::sqrt(pitch)
}

/// A screw that is not close has room where it is 3/4 in or less.
fn has_allowance(thread: &Thread, class: Class, side: Side) -> bool {
    side == Side::External
        && class != Class::Word(Quality::Close)
        && thread.major() <= inch_parts(3, 4)
}

pub(super) fn sizes(
    thread: &Thread,
    side: Side,
    class: Option<Class>,
    engaged: Option<Length>,
) -> Result<Sizes, Error> {
    let class = class.unwrap_or(default_class(side));
    let factor = factor(class, side)?;
    let (major, pitch) = (inches(thread.major()), thread.pitch().inches());
    let unit = unit(major, engaged.map_or(major, inches), pitch);
    let tolerance = factor * unit;
    let root_of_pitch = libm::sqrt(pitch);
    let [effective, minor] = [DEPTH, 2.0 * DEPTH].map(|depth| to_tenth(major - depth * pitch));
    if !minor.is_positive() {
        return Err(no_core(thread));
    }
    let room = if has_allowance(thread, class, side) { to_tenth(0.3 * unit) } else { Length::ZERO };
    let below = |basic: Length, by: f64| {
        let top = basic.checked_sub(room)?;
        Ok::<_, Error>(DiameterLimits::of(top, top.checked_sub(to_tenth(by))?))
    };
    let above = |bottom: Length, by: f64| {
        Ok::<_, Error>(DiameterLimits::of(bottom.checked_add(to_tenth(by))?, bottom))
    };
    let spreads = match side {
        Side::External => {
            let at_root = if class == Class::Word(Quality::Close) { 0.013 } else { 0.02 };
            [
                below(thread.major(), tolerance + 0.01 * root_of_pitch)?,
                below(effective, tolerance)?,
                below(minor, tolerance + at_root * root_of_pitch)?,
            ]
        }
        Side::Internal => [
            DiameterLimits { max: None, min: Some(thread.major()) },
            above(effective, tolerance)?,
            above(minor, 0.2 * pitch + at_crest(thread.pitch()))?,
        ],
    };
    let outside = (thread.series() == Series::Special)
        .then_some("no listed size of BS 84: by the same formulas");
    Ok(Sizes { outside, ..Sizes::of(side, class, spreads, room.checked_neg()?) })
}

/// What the tolerance of a nut's minor diameter has besides 0.2 P.
fn at_crest(pitch: Pitch) -> f64 {
    let finer_than = |turns: i64| Pitch::per_inch(turns, 1).is_ok_and(|limit| pitch <= limit);
    if finer_than(26) {
        0.004
    } else if finer_than(22) {
        0.005
    } else {
        0.007
    }
}

/// Why the limits are what they are.
pub(super) fn reasons(thread: &Thread, sizes: &Sizes, engaged: Option<Length>) -> Vec<Reason> {
    let (major, pitch) = (inches(thread.major()), thread.pitch().inches());
    let length = engaged.map_or(major, inches);
    let unit = unit(major, length, pitch);
    let recalled = |figure: String, value: Length, rule: String| Reason {
        figure,
        value: format!("{} in", crate::size::inches(value)).into(),
        rule: rule.into(),
        source: "BS 84, bases of tolerances, from memory".to_owned(),
        known: Known::Memory,
    };
    let mut reasons = vec![recalled(
        format!("{} effective diameter tolerance", sizes.class),
        sizes.pitch_tolerance,
        format!(
            "{:.3} T, T = 0.002 cbrt(D) + 0.003 sqrt(L) + 0.005 sqrt(P) = {unit:.5} in, D {} in, L {} in, P {pitch:.5} in",
            factor(sizes.class, sizes.side).unwrap_or(1.0),
            crate::size::inches(thread.major()),
            crate::size::inches(engaged.unwrap_or(thread.major()))
        ),
    )];
    if sizes.deviation.is_negative() {
        reasons.push(recalled(
            "allowance".to_owned(),
            sizes.deviation.checked_abs().unwrap_or_default(),
            "0.3 T on medium and free screws to 3/4 in".to_owned(),
        ));
    }
    reasons
}
