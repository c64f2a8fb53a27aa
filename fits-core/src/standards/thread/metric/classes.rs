//! Classes of ISO 965-1: the medium one of each group of engagement, and what the
//! standard has on each side.

use super::{
    super::{Class, Form, Side, Thread, Zone},
    Engagement, micrometres,
};
use crate::{error::Error, size::Length};

/// The medium class of the group N: 6g and 6H; up to M1.4 6h and 5H, and 4H
/// where the table has no other grade.
pub(in crate::standards::thread) fn default_class(thread: &Thread, side: Side) -> Class {
    let is_watch = thread.major <= micrometres(1400);
    match side {
        Side::External if is_watch => Class::of(6, 'h'),
        Side::External => Class::of(6, 'g'),
        Side::Internal if is_watch && thread.pitch.nearest() < micrometres(250) => {
            Class::of(4, 'H')
        }
        Side::Internal if is_watch => Class::of(5, 'H'),
        Side::Internal => Class::of(6, 'H'),
    }
}

/// The medium class of another group: S 5g6g and 5H, L 7g6g and 7H.
pub(super) fn class_for(thread: &Thread, side: Side, engaged: Length) -> Class {
    let grade = match Engagement::of(thread, engaged) {
        Engagement::Normal => return default_class(thread, side),
        Engagement::Short => 5,
        Engagement::Long => 7,
    };
    match side {
        Side::External => Class::Zones {
            pitch: Zone { grade, position: 'g' },
            crest: Zone { grade: 6, position: 'g' },
        },
        Side::Internal => Class::of(grade, 'H'),
    }
}

/// The zones of a class that the standard has on this side.
pub(super) fn zones(side: Side, class: Class) -> Result<(Zone, Zone), Error> {
    let (letters, pitch_grades, crest_grades): (&[char], _, &[u8]) = match side {
        Side::External => (&['e', 'f', 'g', 'h'], 3..=9, &[4, 6, 8]),
        Side::Internal => (&['G', 'H'], 4..=8, &[4, 5, 6, 7, 8]),
    };
    let refuse = |why: String| {
        let usual = usual(side);
        let advice = match nearest(side, class) {
            Some(near) if near != usual => {
                format!("the nearest is {near}, the usual one {usual}")
            }
            _ => format!("the usual one is {usual}"),
        };
        Err(Error::not_given(why, advice))
    };
    let Class::Zones { pitch, crest } = class else {
        return refuse(format!("a metric thread has no class {class}"));
    };
    for zone in [pitch, crest] {
        let letter = zone.position;
        if matches!((side, letter), (Side::External, 'a'..='d')) {
            return refuse(format!(
                "the deviations of position {letter} (ISO 965-1:2013) are not held here"
            ));
        }
        if !letters.contains(&letter) {
            return refuse(format!("no {} metric thread has class {class}", side.word()));
        }
    }
    if pitch.position != crest.position {
        return refuse(format!("{class} has two positions: a thread has one"));
    }
    if !pitch_grades.contains(&pitch.grade) {
        return refuse(format!(
            "no grade {} for the pitch diameter of {} threads: {} to {}",
            pitch.grade,
            side.word(),
            pitch_grades.start(),
            pitch_grades.end()
        ));
    }
    if !crest_grades.contains(&crest.grade) {
        let grades: Vec<String> = crest_grades.iter().map(u8::to_string).collect();
        return refuse(format!(
            "no grade {} for the crest diameter of {} threads: {}",
            crest.grade,
            side.word(),
            grades.join(", ")
        ));
    }
    Ok((pitch, crest))
}

/// The class of this side with the nearest grades and position.
pub(in crate::standards::thread) fn nearest(side: Side, class: Class) -> Option<Class> {
    let Class::Zones { pitch, crest } = class else { return None };
    let (position, pitch, crest) = match side {
        Side::External => {
            let position = match pitch.position {
                letter @ ('e' | 'f' | 'g' | 'h') => letter,
                'a'..='d' => 'e',
                _ => 'g',
            };
            // Grades of the crest: 4, 6 and 8.
            let crest = match crest.grade {
                0..=4 => 4,
                5..=7 => 6,
                _ => 8,
            };
            (position, pitch.grade.clamp(3, 9), crest)
        }
        Side::Internal => {
            let position = if pitch.position == 'G' { 'G' } else { 'H' };
            (position, pitch.grade.clamp(4, 8), crest.grade.clamp(4, 8))
        }
    };
    let zone = |grade| Zone { grade, position };
    Some(Class::Zones { pitch: zone(pitch), crest: zone(crest) })
}

/// The medium class.
pub(in crate::standards::thread) const fn usual(side: Side) -> Class {
    match side {
        Side::External => Class::of(6, 'g'),
        Side::Internal => Class::of(6, 'H'),
    }
}

/// The side of a Unified class that was said of a metric thread.
pub(in crate::standards::thread) fn unified_side(class: Class) -> Option<Side> {
    match class {
        Class::Zones { pitch: Zone { grade: 1..=3, position }, .. } => match position {
            'A' => Some(Side::External),
            'B' => Some(Side::Internal),
            _ => None,
        },
        _ => None,
    }
}

/// Is it a class of the standard?
pub(in crate::standards::thread) fn check(class: Class) -> Result<(), Error> {
    if let Some(side) = unified_side(class) {
        let part = if side == Side::External { "screw" } else { "nut" };
        return Err(Error::not_given(
            format!("{class} is a class of the Unified {part}"),
            format!("the usual metric one is {}", usual(side)),
        ));
    }
    let side = class.side(Form::Metric).unwrap_or(Side::External);
    zones(side, class).map(|_| ())
}
