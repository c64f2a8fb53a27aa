//! The limits and aims of an answer as a person is shown them: in one unit,
//! limits rounded inward, aims on the side that leaves metal.

use fits_core::{
    Length, Limits,
    size::{Decimals, Rounding},
    standards::iso286::Feature,
};
use serde_json::{Map, Value};

use crate::{answer::Answer, query::Units, render::text::Text};

/// Under these names `min_mm` and `max_mm` are what something is cut to, or bought
/// as. Elsewhere they are a play that comes about, which is not rounded inward.
const CUT: [&str; 7] = ["always", "blank", "holes", "limits", "shaft_to_keep", "sizes", "usually"];

/// What an object is: the name that it, or the list around it, has, and what is cut
/// by it.
#[derive(Clone, Copy, Default)]
struct Place<'a> {
    name: &'a str,
    /// Of the object around it: `external` or `internal` for a thread.
    side: &'a str,
}

/// An object for each object of the answer that has limits, under the same name:
/// `lower`, `upper` and `aim` for `lower_mm`, `upper_mm` and `aim_mm`; `min`, `max`
/// and `aim` where these are what to cut; and `pitch_min`, `pitch_max` for what is
/// named so.
pub(crate) fn shown(answer: &Answer, units: Units) -> Map<String, Value> {
    let whole = serde_json::to_value(answer).unwrap_or_default();
    match of(&whole, Place::default(), units) {
        Some(Value::Object(found)) => found,
        _ => Map::new(),
    }
}

fn of(value: &Value, place: Place<'_>, units: Units) -> Option<Value> {
    let object = match value {
        Value::Object(object) => object,
        Value::Array(list) => {
            // Its places stay: an entry with nothing to show is null.
            let list: Vec<Value> =
                list.iter().map(|one| of(one, place, units).unwrap_or_default()).collect();
            return list.iter().any(|one| !one.is_null()).then_some(Value::Array(list));
        }
        _ => return None,
    };
    let mut found = Map::new();
    let word = |key| object.get(key).and_then(Value::as_str);
    let is_cut = CUT.contains(&place.name);
    let ends = limits(object, "lower_mm", "upper_mm").map(|limits| (limits, ["lower", "upper"]));
    let cut = || Some((limits(object, "min_mm", "max_mm")?, ["min", "max"]));
    if let Some((limits, names)) = ends.or_else(|| cut().filter(|_| is_cut)) {
        pair(&mut found, names, limits, units);
        if let Some(aim) = length(object, "aim_mm") {
            let kind = match (word("kind"), place.side) {
                (Some("hole"), _) | (None, "internal") => Some(Feature::Hole),
                (Some("shaft"), _) | (None, "external") => Some(Feature::Shaft),
                _ => None,
            };
            let aim = Text::aim_in(kind, limits, aim, units.unit());
            found.insert("aim".into(), aim.into());
        }
    }
    for key in object.keys() {
        if let Some(name) = key.strip_suffix("_min_mm")
            && let Some(limits) = limits(object, key, &format!("{name}_max_mm"))
        {
            pair(&mut found, [&format!("{name}_min"), &format!("{name}_max")], limits, units);
        }
    }
    for (key, value) in object {
        let place = Place { name: key, side: word("side").unwrap_or_default() };
        found.extend(of(value, place, units).map(|value| (key.clone(), value)));
    }
    (!found.is_empty()).then_some(Value::Object(found))
}

fn length(object: &Map<String, Value>, key: &str) -> Option<Length> {
    // A number of ours is the shortest text of its count of 0.1 nm.
    format!("{} mm", object.get(key)?.as_f64()?).parse().ok()
}

fn limits(object: &Map<String, Value>, lower: &str, upper: &str) -> Option<Limits> {
    Limits::new(length(object, lower)?, length(object, upper)?).ok()
}

fn pair(found: &mut Map<String, Value>, names: [&str; 2], limits: Limits, units: Units) {
    let unit = units.unit();
    if limits.lower() == limits.upper() {
        let one = Value::from(Text::size(limits.lower(), unit));
        found.extend(names.map(|name| (name.to_owned(), one.clone())));
        return;
    }
    let decimals = Decimals::for_limits(unit, limits);
    let ends = [(limits.lower(), Rounding::Up), (limits.upper(), Rounding::Down)];
    for (name, (end, rounding)) in names.into_iter().zip(ends) {
        let text = format!("{} {}", end.shown(decimals, rounding), unit.symbol());
        found.insert(name.to_owned(), text.into());
    }
}
