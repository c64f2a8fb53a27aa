//! What is wished of a joint, as it is typed.

use super::reader::{Now, clause, joint, unknown};
use crate::{
    query::{Amount, Dimension, Query, Size, Spot, Tolerance, WishText},
    questions::{joint::asked::GripText, part::clauses::once},
    words::{
        fault::Parsed,
        keywords::{keyword, separator, space, span},
        quantities::quantity,
    },
};

/// Words that begin a wish, and end a material's name too.
pub(super) const WISHES: &[&str] = &["holds", "press", "safe"];

/// After `pick SIZE`, where what follows is a wish, not a range.
pub(crate) fn pick(input: &str, total: usize, size: Size) -> Parsed<'_, Query> {
    let mut joint = joint(size, Tolerance::Bare);
    let mut wishes = WishText::default();
    let mut now = Now::Hub;
    let mut input = input;
    loop {
        let (rest, _) = separator(input)?;
        if rest.is_empty() {
            return Ok((rest, Query::PickGrip(Box::new(GripText { joint, wishes }))));
        }
        input = wish(rest, total, &mut wishes)?.0;
        if input.len() == rest.len() {
            let (end, known) = clause(rest, total, &mut joint, &mut now)?;
            if !known {
                return unknown(
                    rest,
                    "a torque to hold, a press or a part is said here, as in `pick 20 holds 30 Nm, hub steel od 40 long 25`",
                );
            }
            input = end;
        }
    }
}

/// Does a wish begin here?
pub(crate) fn starts_wish(input: &str) -> bool {
    keyword("holds")(input).is_ok()
        || keyword("press")(input).is_ok()
        || keyword("hub")(input).is_ok()
}

/// After `holds`: a torque, or a force, which is held along the axis.
pub(super) fn held(input: &str, total: usize) -> Parsed<'_, Amount> {
    let torque = quantity(
        input,
        total,
        Dimension::Torque,
        "the torque is missing after `holds`",
        "as in `pick 20 holds 30 Nm, hub steel od 40 long 25`",
    );
    match (torque, quantity(input, total, Dimension::Force, "", "")) {
        (Err(_), Ok(force)) => Ok(force),
        (torque, _) => torque,
    }
}

fn wish<'a>(input: &'a str, total: usize, wishes: &mut WishText) -> Parsed<'a, ()> {
    if let Ok((after, ())) = keyword("holds")(input) {
        let (after, _) = space(after)?;
        let (end, found) = held(after, total)?;
        return once(input, end, &mut wishes.holds, found);
    }
    if let Ok((after, ())) = keyword("press")(input) {
        let (after, _) = space(after)?;
        let after = keyword("under")(after).map_or(after, |(after, ())| after);
        let (after, _) = space(after)?;
        let (end, found) = quantity(
            after,
            total,
            Dimension::Force,
            "the force is missing after `press under`",
            "as in `pick 20 press under 20 kN, hub steel od 40 long 25`",
        )?;
        return once(input, end, &mut wishes.press_under, found);
    }
    if let Ok((after, ())) = keyword("hub")(input) {
        let (start, _) = space(after)?;
        if let Ok((end, ())) = keyword("safe")(start) {
            let at = span(total, input, end);
            return once(input, end, &mut wishes.hub_safe, Spot { value: (), at });
        }
    }
    Ok((input, ()))
}
