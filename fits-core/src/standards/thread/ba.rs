//! British Association threads (BS 93), 0 to 16 BA, in millimetres.

use super::{
    Class, DiameterLimits, Nominal, Pitch, Quality, Side, Sizes, Thread, ba_table as table,
};
use crate::{
    error::Error,
    size::{Decimals, Length, Rounding},
    source::{Known, Provenance, Reason},
};

/// A size; the effective and minor diameters are printed rounded.
#[derive(Debug)]
pub(super) struct Size {
    pub(super) pitch: Length,
    pub(super) major: Length,
    pub(super) effective: Length,
    pub(super) minor: Length,
    pub(super) from: Provenance,
}

/// Where the tolerances are read.
const SOURCE: &str = "Machinery's Handbook 31st ed., p. 2115, tolerance formulas of BS 93";

/// Up to this number there are two classes of screw, and room at the normal
/// one.
const LAST_OF_TWO_CLASSES: u8 = 10;

fn size(number: u8) -> Result<&'static Size, Error> {
    table::SIZES.get(usize::from(number)).ok_or_else(|| {
        Error::not_listed(format!("there is no {number} BA"), "BS 93 lists 0 to 16 BA")
    })
}

/// The number in the name; 255 is none.
const fn number(thread: &Thread) -> u8 {
    match thread.nominal() {
        Nominal::Number(number) => number,
        _ => u8::MAX,
    }
}

/// The major diameter and pitch of a number.
pub(super) fn named(number: u8) -> Result<(Length, Pitch), Error> {
    let size = size(number)?;
    Ok((size.major, Pitch::of(size.pitch)?))
}

/// The basic effective and minor diameters.
pub(super) fn basic(major: Length) -> Option<(Length, Length)> {
    let size = table::SIZES.iter().find(|size| size.major == major)?;
    Some((size.effective, size.minor))
}

/// Where the size is listed.
pub(super) fn listed(thread: &Thread) -> Option<Provenance> {
    size(number(thread)).ok().map(|size| size.from)
}

pub(super) const fn default_class() -> Class {
    Class::Word(Quality::Normal)
}

/// A tolerance: parts of the pitch in thousandths and micrometres.
fn tolerance(pitch: Length, thousandths: i128, micrometres: i64) -> Result<Length, Error> {
    let exact = pitch
        .checked_scale(thousandths, 1000)?
        .checked_add(Length::from_micrometres(micrometres)?)?;
    Ok(Decimals::MILLIMETRES.round(exact, Rounding::Nearest))
}

pub(super) fn sizes(thread: &Thread, side: Side, class: Option<Class>) -> Result<Sizes, Error> {
    let class = class.unwrap_or(default_class());
    let number = number(thread);
    let size = size(number)?;
    let has_two = number <= LAST_OF_TWO_CLASSES;
    let is_close = match (class, side) {
        (Class::Word(Quality::Normal), _) => false,
        (Class::Word(Quality::Close), Side::External) if has_two => true,
        _ => {
            return Err(Error::not_given(
                format!("BS 93 has no class {class} of {} thread at {thread}", side.word()),
                if side == Side::External && has_two {
                    "screws are close or normal"
                } else {
                    "the one class is normal"
                },
            ));
        }
    };
    let part = |thousandths, micrometres| tolerance(size.pitch, thousandths, micrometres);
    let (room, spreads) = match side {
        Side::External => {
            let (room, at_major, at_pitch, at_minor) = if is_close {
                (0, part(150, 0)?, part(80, 20)?, part(160, 40)?)
            } else if has_two {
                (25, part(200, 0)?, part(100, 25)?, part(200, 50)?)
            } else {
                (0, part(250, 0)?, part(100, 25)?, part(200, 50)?)
            };
            let room = Length::from_micrometres(room)?;
            let below = |basic: Length, by| {
                let top = basic.checked_sub(room)?;
                Ok::<_, Error>(DiameterLimits::of(top, top.checked_sub(by)?))
            };
            (
                room,
                [
                    below(size.major, at_major)?,
                    below(size.effective, at_pitch)?,
                    below(size.minor, at_minor)?,
                ],
            )
        }
        Side::Internal => (
            Length::ZERO,
            [
                DiameterLimits { max: None, min: Some(size.major) },
                DiameterLimits::of(size.effective.checked_add(part(120, 30)?)?, size.effective),
                DiameterLimits::of(size.minor.checked_add(part(375, 0)?)?, size.minor),
            ],
        ),
    };
    Ok(Sizes::of(side, class, spreads, room.checked_neg()?))
}

/// Why the limits are what they are.
pub(super) fn reasons(thread: &Thread, sizes: &Sizes) -> Vec<Reason> {
    let number = number(thread);
    let Ok(size) = size(number) else { return Vec::new() };
    let rule = match (sizes.side, sizes.class) {
        (Side::Internal, _) => "0.12 P + 0.03 mm",
        (Side::External, Class::Word(Quality::Close)) => "0.08 P + 0.02 mm",
        (Side::External, _) => "0.10 P + 0.025 mm",
    };
    let mut reasons = vec![Reason {
        figure: format!("{} effective diameter tolerance", sizes.class),
        value: sizes.pitch_tolerance.to_string().into(),
        rule: format!("{rule}, P {}", size.pitch).into(),
        source: SOURCE.to_owned(),
        known: Known::Seen,
    }];
    if sizes.deviation.is_negative() {
        reasons.push(Reason {
            figure: "allowance".to_owned(),
            value: "0.025 mm".into(),
            rule: "normal screws, 0 to 10 BA".into(),
            source: SOURCE.to_owned(),
            known: Known::Seen,
        });
    }
    reasons
}
