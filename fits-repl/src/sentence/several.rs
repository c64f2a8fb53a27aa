//! Several readings of one part.

use crate::{
    questions::part::measured_shown::ONE_GAUGE,
    sentence::{
        token::{Num, System},
        view::View,
    },
};

/// Of what several readings are.
pub(super) enum Whose {
    OnePlace,
    Places,
    Unsaid,
}

/// Two places are two sizes; one place measured again is one, and its mean counts. What
/// differs by more than a gauge does is not taken together unasked.
pub(super) fn whose(view: &View, readings: &[&Num], system: System) -> Whose {
    const PLACES: &[&str] = &[
        "end",
        "ends",
        "other",
        "top",
        "bottom",
        "middle",
        "mid",
        "mouth",
        "front",
        "back",
        "along",
        "places",
        "spots",
        "points",
        "way",
        "ways",
        "direction",
        "directions",
        "across",
        "inner",
        "outer",
        "near",
        "far",
        "halfway",
        "round",
        "around",
        "taper",
        "tapered",
        "oval",
    ];
    const AGAIN: &[&str] = &[
        "again", "readings", "times", "twice", "goes", "repeat", "repeated", "checked", "mean",
        "average",
    ];
    let typed = view.text.to_lowercase();
    let types = |words: &[&str]| {
        let is_letter = |c: char| c.is_ascii_alphabetic();
        typed.split(|c| !is_letter(c)).any(|word| words.contains(&word))
    };
    let sizes = readings.iter().map(|num| num.mm(system));
    let (least, most) = sizes.fold((f64::MAX, f64::MIN), |(a, b), mm| (a.min(mm), b.max(mm)));
    if types(PLACES) {
        Whose::Places
    } else if readings.len() < 2
        || types(AGAIN)
        // `my telescoping gauge gives 1.1878 then 1.1881`
        || types(&["then"]) && view.has("instrument")
        || most - least <= ONE_GAUGE.millimetres() + 1e-6
    {
        Whose::OnePlace
    } else {
        Whose::Unsaid
    }
}
