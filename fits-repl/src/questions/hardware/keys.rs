//! A Woodruff key and its keyseat.

use fits_core::{Error, Length, standards::hardware::Woodruff};

use super::{
    HardwareAnswer, HardwareText, at,
    figures::{Made, said},
    missing,
};
use crate::{problem::Problem, questions::part::resolve::from_core, session::Session};

impl Session {
    pub(super) fn woodruff(&self, text: &HardwareText) -> Result<HardwareAnswer, Problem> {
        let shaft = text.role("shaft").or_else(|| text.free().next());
        let on = shaft.map(|size| self.nominal(size)).transpose()?;
        if let (Some(_), Some(extra)) = (text.role("shaft"), text.free().next()) {
            return Err(Problem::new(
                "a word is missing that says what this size is",
                extra.at.clone(),
            )
            .advise(text.example()));
        }
        match (&text.name, shaft, on) {
            (Some(name), ..) => {
                let key = Woodruff::numbered(&name.value)
                    .map_err(|error| from_core(&error, name.at.clone()))?;
                let failed = |error: Error| match shaft {
                    Some(size) => from_core(&error, size.at.clone()),
                    None => from_core(&error, name.at.clone()),
                };
                keyseat(key, on, &[]).map_err(failed)
            }
            (None, Some(size), Some(on)) => {
                let keys = Woodruff::for_shaft(on).map_err(at(size))?;
                let Some((first, others)) = keys.split_first() else {
                    return Err(missing(text, "no key suits this shaft"));
                };
                keyseat(*first, Some(on), others).map_err(at(size))
            }
            _ => Err(missing(text, "the key's number or the shaft is missing")),
        }
    }
}

fn keyseat(key: Woodruff, shaft: Option<Length>, others: &[Woodruff]) -> Made {
    let title = match shaft {
        Some(shaft) => said!("Woodruff key {} in a shaft of {}", key.number(), shaft),
        None => said!("Woodruff key {}", key.number()),
    };
    let mut answer = HardwareAnswer::new("woodruff key", title);
    let [shaft_width, hub_width] = key.widths()?;
    if let Some(shaft) = shaft {
        let (top, across) = key.in_shaft(shaft)?;
        answer.limits("mic, shaft", across);
        let dial = key.shaft_depth()?;
        answer.limits(
            "from the top",
            fits_core::Limits::new(dial.lower().checked_add(top)?, dial.upper().checked_add(top)?)?
                .known_as(dial.known()),
        );
    }
    answer
        .limits("depth, shaft", key.shaft_depth()?)
        .limits("depth, hub", key.hub_depth()?)
        .limits("width, shaft", shaft_width)
        .limits("width, hub", hub_width)
        .limits("key's height", key.height()?)
        .size("key's width", key.width(), key.known())
        .size("cutter", key.diameter(), key.known());
    if shaft.is_some() {
        answer.note(
            "mic: bottom of the keyseat to the far side of a shaft of nominal size; from the top: \
             how far the cutter goes down after it touches",
        );
    }
    answer.note("depths at the side of the keyseat; the key itself is 0 to 1 thou over its width");
    match (shaft, key.shaft_range()) {
        (Some(shaft), Some((least, most))) if !key.suits(shaft) => {
            answer.note(said!("! this width is listed for shafts of {} to {}", least, most));
        }
        (_, Some((least, most))) => {
            answer.note(said!("this width suits shafts of {} to {}", least, most));
        }
        (_, None) => {}
    }
    if !others.is_empty() {
        let near: Vec<&str> = others.iter().take(6).map(|key| key.number()).collect();
        answer.note(said!(
            "chosen by a width near a quarter of the shaft and a cutter near its diameter \
             (common practice); others that suit: {}",
            near.join(", ")
        ));
    }
    answer.reasons = key.reasons()?;
    Ok(answer)
}
