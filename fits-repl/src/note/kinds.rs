//! What sizes mean by the kind of part: `A x B x C`, a tube, a thread.

use std::ops::Range;

use fits_core::job::whole::{NominalSize, SizeKind};

use super::{
    Line,
    lexicon::{inwardness, stems},
    names::Names,
    sizes::{self, Given},
    token::{Kind, Num},
    told::Told,
    wants::Wants,
};

/// What a bare size is on a part of that kind.
pub(super) fn default_feature(
    told: &Told,
    part: usize,
    given: &Given,
) -> Option<(String, SizeKind)> {
    let own = told.inwardness(part);
    let name = |name: &str, side| Some((name.to_owned(), side));
    if let Some(class) = &given.class {
        let is_hole = class.starts_with(|c: char| c.is_ascii_uppercase());
        return if is_hole {
            name(if own < 0 { "bore" } else { "hole" }, SizeKind::Hole)
        } else {
            name("od", SizeKind::Shaft)
        };
    }
    let words = &told.names.parts[part];
    let is = |list: &[&str]| words.iter().any(|word| list.contains(&word.as_str()));
    if is(&["washer", "spacer", "shim", "gasket"]) {
        return name("thickness", SizeKind::Length);
    }
    if is(&["key"]) {
        return name("width", SizeKind::Other);
    }
    if is(&["screw", "bolt"]) && is(&["shoulder"]) {
        return name("shoulder", SizeKind::Shaft);
    }
    // A bare size beside a thread is of something else.
    let has_thread = told.features_of(part).any(|(_, one)| one.side == SizeKind::Thread);
    if is(&["screw", "bolt", "nut", "stud"]) && has_thread {
        return None;
    }
    if let Some(mate) = given.mate {
        let other = stems(mate).iter().rev().find_map(|word| inwardness(word)).unwrap_or(0);
        return if own >= other {
            name("od", SizeKind::Shaft)
        } else {
            name("bore", SizeKind::Hole)
        };
    }
    // `plate 12mm`, right behind its name: as thick as that, or bored to it?
    let behind_name = given.place.start <= told.job.parts[part].name.len() + 3;
    if words.last().is_some_and(|word| word == "plate") && behind_name && !given.has_fit {
        return None;
    }
    match own {
        2.. => name("od", SizeKind::Shaft),
        ..=0 if given.has_fit => name("hole", SizeKind::Hole),
        ..=-1 | 1 => name("bore", SizeKind::Hole),
        _ => None,
    }
}

/// `3/4 x 1 x 1` by the kind of the part, or by the feature that it is of.
pub(super) fn dims(
    told: &mut Told,
    wants: &mut Wants,
    line: &mut Line,
    all: &[Num],
    given: &Given,
) -> Option<usize> {
    let place = given.place;
    if let Some(owner) = given.owner {
        let one = told.job.features[owner].clone();
        // `1 1/4 x 4` of a thread is its pitch.
        if one.side == SizeKind::Thread && all.len() == 2 {
            return thread_of(told, line, owner, all);
        }
        // `1-1/4 x .109 wall`: the outside and the wall of a tube.
        if stems(&one.name).last().is_some_and(|word| word == "wall")
            && let [outside, wall] = all
            && 2.0 * wall.value() < outside.value()
        {
            return tube(told, line, one.part, all, place);
        }
        let [first, second, rest @ ..] = all else { return None };
        let number = Given {
            kind: given.kind,
            place,
            owner: Some(owner),
            owner_said: true,
            class: given.class.clone(),
            off: given.off.clone(),
            mate: None,
            ..*given
        };
        let feature = sizes::number(told, wants, line, first, &number)?;
        let what = if one.side == SizeKind::Other { "depth" } else { "length" };
        let is_flange = stems(&one.name).last().is_some_and(|word| word == "flange");
        let what = if is_flange { "thickness" } else { what };
        // `pocket 30 x 20 x 6 deep`: the word behind them is the last one's.
        let (what, last) = match given.second {
            Some(role) if rest.is_empty() => (role, "length"),
            Some(role @ ("depth" | "thickness")) => ("width", role),
            _ if what == "length" && !rest.is_empty() => ("width", "length"),
            _ => (what, "length"),
        };
        let more = [(what, Some(second)), (last, rest.first())];
        for (what, num) in more {
            let name = format!("{} {what}", one.name);
            if let Some(num) = num {
                told.sized(line, one.part, (&name, SizeKind::Length), num, place)?;
            }
        }
        line.feature = Some(feature);
        return Some(feature);
    }
    let part = line.subject?;
    let words = told.names.parts[part].clone();
    let is = |list: &[&str]| words.iter().any(|word| list.contains(&word.as_str()));
    let threaded = is(&["screw", "nut"])
        && !is(&["shoulder"])
        && all.len() == 2
        && all[1].is_whole()
        && all[0].vulgar
        && all[1].over < 20;
    if threaded {
        let feature = told.feature(line, part, "thread", SizeKind::Thread, place.clone());
        return thread_of(told, line, feature, all);
    }
    let numbered = is_numbered(&words);
    if is_bearing(&told.names, part, all) {
        line.unit = line.unit.or(Some(fits_core::size::Unit::Millimetre));
    }
    let listed = is(&["bush", "bearing", "sleeve", "liner", "seal"]) || numbered;
    let sides: &[(&str, SizeKind)] = if listed {
        &[("bore", SizeKind::Hole), ("od", SizeKind::Shaft), ("length", SizeKind::Length)]
    } else if is(&["key"]) {
        &[("width", SizeKind::Other), ("height", SizeKind::Other), ("length", SizeKind::Length)]
    } else if is(&["tube", "handle", "pipe"])
        && all.len() == 2
        // `handle, 8 x 200` has no wall.
        && 2.0 * all[1].value() < all[0].value()
    {
        return tube(told, line, part, all, place);
    } else if is(&["washer", "collar", "spacer"]) && all.len() == 3 {
        &[("bore", SizeKind::Hole), ("od", SizeKind::Shaft), ("thickness", SizeKind::Length)]
    } else if is(&["screw", "bolt"]) {
        &[("shoulder", SizeKind::Shaft), ("shoulder length", SizeKind::Length)]
    } else if told.inwardness(part) >= 2
        || is(&["tube", "handle", "pipe"]) && all.len() == 2
        // `bought, Ø25 x 450`: it comes so.
        || told.job.parts[part].bought && all.len() == 2 && place.start < all[0].at.start
    {
        &[("od", SizeKind::Shaft), ("length", SizeKind::Length)]
    } else {
        return None;
    };
    list(told, line, part, all, sides, place, given.class.as_deref())
}

/// Are these the sizes of a bearing? It is listed in millimetres, whatever the
/// rest of the note is in.
pub(super) fn is_bearing(names: &Names, part: usize, all: &[Num]) -> bool {
    let words = &names.parts[part];
    (is_numbered(words) || words.iter().any(|word| matches!(word.as_str(), "bearing" | "seal")))
        && all.iter().all(|num| num.is_whole() && num.unit.is_none())
        && all[0].over > 2
        && all.get(1).is_some_and(|outside| outside.over > all[0].over)
}

pub(super) fn list(
    told: &mut Told,
    line: &mut Line,
    part: usize,
    all: &[Num],
    sides: &[(&str, SizeKind)],
    place: &Range<usize>,
    class: Option<&str>,
) -> Option<usize> {
    let mut first = None;
    let mut sides = sides.to_vec();
    // `14 x 10 x 15`, of a bush: no bore is larger than the outside.
    if let ([("bore", _), ("od", _), ..], [one, other, ..]) = (sides.as_slice(), all)
        && one.value() > other.value()
        && one.unit == other.unit
    {
        sides.swap(0, 1);
    }
    for (num, (name, side)) in all.iter().zip(sides) {
        let size = told.units.length(num, line.unit)?;
        let from = told.units.unit_of(num, line.unit);
        let called = told.feature_called(part, name, Some(side));
        let feature = called.unwrap_or_else(|| told.feature(line, part, name, side, place.clone()));
        told.size(line, feature, NominalSize::Size(size), from);
        if first.is_none() {
            told.job.features[feature].class = class.map(str::to_owned);
        }
        first = first.or(Some(feature));
    }
    line.feature = first;
    first
}

/// `7/8 x .035 wall`: the bore is the outside less twice the wall.
pub(super) fn tube(
    told: &mut Told,
    line: &mut Line,
    part: usize,
    all: &[Num],
    place: &Range<usize>,
) -> Option<usize> {
    let (outside, wall) =
        (told.units.length(&all[0], line.unit)?, told.units.length(&all[1], line.unit)?);
    let from = told.units.unit_of(&all[0], line.unit);
    let od = told.feature(line, part, "od", SizeKind::Shaft, place.clone());
    told.size(line, od, NominalSize::Size(outside), from);
    // `x 20 s.w.g.`: a gauge is no wall.
    let twice = wall.checked_mul(2).ok()?;
    let Some(bore) = outside.checked_sub(twice).ok().filter(|bore| bore.is_positive()) else {
        return Some(od);
    };
    let inside = told.feature(line, part, "bore", SizeKind::Hole, place.clone());
    told.size(line, inside, NominalSize::Size(bore), from);
    Some(inside)
}

pub(super) fn thread_of(
    told: &mut Told,
    line: &mut Line,
    feature: usize,
    all: &[Num],
) -> Option<usize> {
    let [size, pitch] = all else { return None };
    let written = |num: &Num| {
        if num.vulgar && num.over > num.under {
            format!("{}-{}/{}", num.over / num.under, num.over % num.under, num.under)
        } else if num.vulgar {
            format!("{}/{}", num.over, num.under)
        } else {
            format!("{}", num.value())
        }
    };
    let name = format!("{}-{} tpi", written(size), written(pitch));
    let from = told.units.unit_of(size, line.unit);
    told.size(line, feature, NominalSize::Thread(name), from);
    Some(feature)
}

/// The size of a part that another goes on or in: `on 1/4 dowel`.
pub(super) fn of_mate(
    told: &mut Told,
    wants: &mut Wants,
    line: &mut Line,
    part: usize,
    kind: &Kind,
    place: &Range<usize>,
    class: Option<&str>,
) -> Option<usize> {
    let subject = line.subject;
    let declared = std::mem::replace(&mut line.declares, false);
    line.subject = Some(part);
    let kept = line.feature.take();
    let class = class.map(str::to_owned);
    let given = Given { class, reads: line.reads, has_fit: true, ..Given::plain(kind, place) };
    let found = sizes::give(told, wants, line, &given);
    // What is said next may still be of it: `on shoulder screw 10 f9, M8`.
    line.feature = found.or(kept);
    (line.subject, line.declares) = (subject, declared);
    found
}

/// Does a part go by its number, as a bearing does?
pub(super) fn is_numbered(words: &[String]) -> bool {
    words.iter().any(|word| word.len() > 2 && word.starts_with(|c: char| c.is_ascii_digit()))
}
