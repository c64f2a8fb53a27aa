//! The part and the feature that a mate said by its name means.

use fits_core::{
    Length,
    job::whole::{NominalSize, SizeKind},
};

use super::Joints;
use crate::note::{
    kinds::is_numbered,
    lexicon::{feature, stems},
    names::is_instance,
    told::Told,
    wants::Wanted,
};

/// `worm bore` of a body, beside a worm with a bore: the whole name of a feature comes
/// before a part's and what is on it.
pub(super) fn whole_name(
    told: &Told,
    want: &Wanted,
    side: SizeKind,
    size: Option<Length>,
) -> Option<usize> {
    let said = stems(&want.name);
    let is_open = want.part.is_none() && want.to.is_none() && !want.hinted;
    if !is_open || said.len() < 2 || told.names.exactly(&said.concat()).is_some() {
        return None;
    }
    let own = told.job.features[want.feature].part;
    let fits = |at: &usize| {
        let other = &told.job.features[*at];
        let is_size = |size| other.size().is_none() || told.is_near(*at, size);
        // `lid screws` are the threads that go through the lid's holes.
        let is_side =
            other.side == side || side == SizeKind::Shaft && other.side == SizeKind::Thread;
        told.names.features[*at] == said && other.part != own && is_side && size.is_none_or(is_size)
    };
    let mut all = (0..told.job.features.len()).filter(fits);
    all.next().filter(|_| all.next().is_none())
}

/// `pillar holes 8 H7`, `pinion end 6 g6`: a feature that is named after a part with such a
/// size on the other side, where nothing was said of what either goes with.
pub(super) fn named_after(joints: &mut Joints, told: &mut Told) {
    for at in 0..told.job.features.len() {
        let one = &told.job.features[at];
        let [after @ .., _] = told.names.features[at].as_slice() else { continue };
        let (Some(size), false) = (one.size(), after.is_empty()) else { continue };
        let side = match one.side {
            SizeKind::Hole => SizeKind::Shaft,
            SizeKind::Shaft => SizeKind::Hole,
            _ => continue,
        };
        let Some(part) = told.names.exactly(&after.concat()).filter(|part| *part != one.part)
        else {
            continue;
        };
        let waits = |other: &usize| joints.mates_at(*other).is_empty();
        let near = told
            .features_of(part)
            .find(|(other, its)| its.side == side && told.is_near(*other, size) && waits(other));
        let said = told.job.said.iter().position(|said| said.feature == at);
        if let (Some((to, _)), Some(said), true) = (near, said, waits(&at)) {
            let want = Wanted { feature: at, line: one.line, said, ..Wanted::default() };
            joints.join(&mut told.job, &want, to);
        }
    }
}

/// `Bush bore`: a mate by its part and its feature; the part alone, with the
/// feature where it is there.
pub(super) fn split_name(told: &Told, want: &Wanted, side: SizeKind) -> Option<Wanted> {
    let said = stems(&want.name);
    let whole = told.part_called(&said).is_some_and(|(_, score)| score >= 85);
    let known = |words: &[String]| {
        let Some((part, score)) = told.part_called(words).filter(|(_, score)| *score >= 70) else {
            // `bevel boss`, `gudgeon journal`: the only part whose name begins or ends so.
            let [word] = words else { return None };
            let only = || match told.names.ending(word).as_slice() {
                [only] => Some(*only),
                _ => None,
            };
            return told.names.beginning(word).or_else(only);
        };
        Some(if score < 85 { of_number(told, part, &want.name, words) } else { part })
    };
    if want.part.is_some() || want.to.is_some() || said.len() < 2 || whole {
        return None;
    }
    let own = told.job.features[want.feature].part;
    let (count, part) =
        (1..said.len()).rev().find_map(|count| Some((count, known(&said[..count])?)))?;
    let to = told.feature_called(part, &said[count..].join(" "), Some(side));
    // `sector hub`, of a sector that has a hub bore.
    let begins = |at: usize| told.names.features[at].starts_with(&said[count..]);
    let is_feature =
        said[count..].iter().any(|word| feature(word).is_some()) || to.is_some_and(begins);
    (is_feature && part != own).then(|| Wanted {
        name: told.job.parts[part].name.clone(),
        part: Some(part),
        to,
        hinted: false,
        ..want.clone()
    })
}

/// `pinion bush`, taken for the bushes where it was said: the note opens a part
/// of that very name further down.
pub(super) fn named_below(told: &Told, want: &Wanted) -> Option<Wanted> {
    let said = stems(&want.name);
    let own = told.job.features[want.feature].part;
    // A heading over bearings that go by their number is none of them.
    let numbered = |was: usize| {
        let is_bearing = told.names.parts[was].last().is_some_and(|word| word == "bearing");
        let is_one = |part: &usize| is_numbered(&told.names.parts[*part]) && *part != own;
        let mut all = (0..told.names.parts.len()).filter(is_one);
        (is_bearing && !told.features_of(was).any(|(_, one)| one.nominal.is_some()))
            .then(|| all.next())
            .flatten()
    };
    let below = told.names.exactly(&said.concat());
    let below = below.filter(|part| told.job.parts[*part].line > want.line);
    let part = want.part.and_then(numbered).or(below)?;
    let was = want
        .part
        .filter(|was| *was != part && (told.names.parts[*was] != said || below.is_none()))?;
    let sized_here = want.to.is_some_and(|to| {
        let to = &told.job.features[to];
        to.part == was && to.line == want.line && to.nominal.is_some()
    });
    (part != own && !sized_here).then(|| Wanted { part: Some(part), to: None, ..want.clone() })
}

/// `the screw`, of a main screw and four cover screws: the one that is one.
fn of_number(told: &Told, part: usize, said: &str, words: &[String]) -> usize {
    let count = words.len();
    let is_many = |name: &str, count: usize| {
        name.split_whitespace().nth(count - 1).is_some_and(|word| word.ends_with('s'))
    };
    let many = is_many(said, count);
    let agrees = |part: &usize| {
        let name = &told.job.parts[*part].name.to_lowercase();
        is_many(name, name.split_whitespace().count().max(1)) == many
    };
    if agrees(&part) {
        return part;
    }
    let last = words.last().map_or("", String::as_str);
    let alike: Vec<usize> = told.names.ending(last).into_iter().filter(agrees).collect();
    if let [only] = alike.as_slice() { *only } else { part }
}

/// The part that a mate's name means.
pub(super) fn part_of(
    joints: &Joints,
    told: &Told,
    name: &str,
    own: usize,
    side: SizeKind,
    size: Option<Length>,
) -> Option<usize> {
    let said = stems(name);
    let (found, score) =
        told.part_called(&said).filter(|(part, _)| *part != own).unwrap_or_else(|| {
            // The part itself is no mate of its own: the next best.
            let last = said.last().filter(|_| said.len() == 1);
            let like = last.and_then(|last| {
                told.names.ending(last).into_iter().rev().find(|part| *part != own)
            });
            like.map_or((usize::MAX, 0), |part| (part, 60))
        });
    // A bearing is the one that goes by its number.
    let numbered = |part: &usize| {
        *part != own
            && told.names.parts[*part]
                .iter()
                .any(|word| word.len() > 2 && word.starts_with(|c: char| c.is_ascii_digit()))
    };
    if score < 100
        && said.last().is_some_and(|word| word == "bearing")
        && let Some(part) = (0..told.job.parts.len()).find(numbered)
    {
        return Some(part);
    }
    if score > 0 && found < told.job.parts.len() {
        let found = if score < 85 { of_number(told, found, name, &said) } else { found };
        // Several bushes: the one with such a size.
        let fits = |part: usize| {
            size.is_some_and(|size| {
                told.nearest(part, Some(side), size).is_some_and(|at| told.is_near(at, size))
            })
        };
        if score < 90 && !fits(found) {
            let last = told.names.parts[found].last().cloned().unwrap_or_default();
            let other =
                told.names.ending(&last).into_iter().find(|part| *part != own && fits(*part));
            return other.or(Some(found));
        }
        return Some(found);
    }
    // `in the tube`: the grip that is made of brass tube.
    if let Some(made_of) = said.last().and_then(|last| joints.made_of.get(last))
        && *made_of != own
    {
        return Some(*made_of);
    }
    // `into frame`, of a frame top plate alone; `worm bearings`, where all are `bearings`.
    let fits = |part: &usize| {
        let near =
            |size| told.nearest(*part, Some(side), size).is_some_and(|at| told.is_near(at, size));
        *part != own && size.is_some_and(near)
    };
    let begins = told.part_in_full(&said).filter(fits);
    let plain =
        || said.last().filter(|_| said.len() == 2).and_then(|last| told.names.exactly(last));
    if let Some(part) = begins.or_else(|| plain().filter(fits)) {
        return Some(part);
    }
    // `shaft`: the part that has journals or seats.
    if said.last().is_some_and(|word| matches!(word.as_str(), "shaft" | "crankshaft" | "axle")) {
        return (0..told.job.parts.len()).find(|part| {
            *part != own
                && told.features_of(*part).any(|(_, feature)| {
                    stems(&feature.name)
                        .iter()
                        .any(|word| matches!(word.as_str(), "journal" | "seat"))
                })
        });
    }
    None
}

/// `brgs` behind `bore A` is bearing A.
pub(super) fn of_several(told: &Told, part: usize, name: &str, feature: &str) -> usize {
    let marks = |words: &[String]| words.iter().find(|word| is_instance(word)).cloned();
    if marks(&stems(name)).is_some() {
        return part;
    }
    let Some(mark) = marks(&stems(feature)) else { return part };
    let plain = |part: usize| {
        told.names.parts[part].iter().filter(|word| !is_instance(word)).cloned().collect::<Vec<_>>()
    };
    let own = plain(part);
    (0..told.job.parts.len())
        .find(|other| plain(*other) == own && told.names.parts[*other].contains(&mark))
        .unwrap_or(part)
}

/// The feature of the other part: the opposite side, the nearest size, the one that waits.
pub(super) fn mate_feature(
    joints: &Joints,
    told: &mut Told,
    part: usize,
    want: &Wanted,
    side: SizeKind,
    size: Option<Length>,
) -> usize {
    let busy = |at: usize| !joints.mates_at(at).is_empty();
    let own = stems(&told.job.parts[told.job.features[want.feature].part].name);
    // A size that was corrected counts too: the joint may have been said before.
    let off = |told: &Told, at: usize| {
        let one = &told.job.features[at];
        let all = one.nominal.iter().chain(one.earlier.iter().map(|(_, was)| was));
        all.filter_map(NominalSize::size)
            .zip(std::iter::repeat(size?))
            .map(|(one, other)| (one.tenth_nanometres() - other.tenth_nanometres()).abs())
            .min()
    };
    // A feature that names this part, as `gear seat` for the gear.
    let named =
        |told: &Told, at: usize| told.names.features[at].iter().any(|word| own.contains(word));
    let found = told
        .features_of(part)
        .map(|(at, _)| at)
        .filter(|at| told.job.features[*at].side == side && *at != want.feature)
        .filter(|at| {
            size.is_none()
                || off(told, *at).is_none_or(|off| {
                    told.is_near(*at, size.unwrap_or(Length::ZERO)) || off < 5_000_000
                })
        })
        .min_by_key(|at| {
            (
                off(told, *at).map_or(1, |off| i64::from(off > 100_000)),
                !named(told, *at),
                busy(*at),
                off(told, *at).unwrap_or(i64::MAX),
                *at,
            )
        });
    found.unwrap_or_else(|| {
        let word = match side {
            SizeKind::Hole if told.inwardness(part) < 0 => "bore",
            SizeKind::Hole => "hole",
            SizeKind::Shaft => "od",
            SizeKind::Thread => "thread",
            _ => "mate",
        };
        let one = told.job.features[want.feature].clone();
        let taken =
            told.features_of(part).any(|(_, feature)| feature.name == word && feature.side == side);
        let name = if taken {
            format!("{word} for {}", told.job.parts[one.part].name)
        } else {
            word.to_owned()
        };
        let made = told.new_feature(want.line, part, &name, side, want.at.clone());
        let feature = &mut told.job.features[made];
        (feature.nominal, feature.unit, feature.unit_from, feature.implied) =
            (one.nominal, one.unit, one.unit_from, true);
        made
    })
}
