//! A reading that names its part only, or nothing.

use std::ops::Range;

use fits_core::{
    Length,
    job::whole::{FitSaid, SizeKind},
    size::Unit,
};

use super::{
    Line, kinds,
    lexicon::stems,
    names::is_instance,
    sizes::{self, Given},
    token::{Kind, Num},
    told::Told,
    wants::Wants,
};

/// Was it measured: said so, dated, or nearly the size that is wanted?
pub(super) fn is_read(
    told: &Told,
    line: &Line,
    owner: usize,
    num: &Num,
    size: Length,
    (reads, has_class): (bool, bool),
) -> bool {
    let one = &told.job.features[owner];
    // `keyway came out 5/32`: a fraction is a reading where a word says so.
    let came = reads && line.by_word && line.date.is_some() && one.nominal.is_some();
    if matches!(one.side, SizeKind::Thread) || num.vulgar && !came {
        return false;
    }
    let has_nominal = one.nominal.as_ref().is_some_and(|nominal| nominal.size().is_some());
    // `sleeve: 1.001 od, .875 bore`: a part that this line opens has no size to be read.
    let is_new = line.date.is_some()
        && told.job.parts[one.part].line == line.number
        && one.nominal.is_none();
    if is_new && (line.declares || has_class) && !line.by_word {
        return false;
    }
    // `backlash 6 thou`, of a day: nobody wishes for play in such words.
    let is_play = stems(&one.name).last().is_some_and(|word| is_play(word));
    let is_count = one.side == SizeKind::Length
        && !(is_play && line.date.is_some())
        && one.nominal.is_none()
        && !line.by_word
        && num.is_whole()
        && num.unit.is_some();
    if is_count || is_changed(told, line, owner, num, size) {
        return false;
    }
    // `bored to 34 H7`: nobody reads a class off a gauge.
    if has_class && !told.units.is_fine(num, line) {
        return false;
    }
    if (reads || line.reads)
        && (has_nominal
            || line.date.is_some()
            || line.by_word
            || line.reads
            || told.units.is_fine(num, line))
    {
        return true;
    }
    // `kwy cut 8.00` under a line with a date: written finer than a size is.
    if line.under_date && has_nominal && one.line != line.number && num.places > 1 {
        return told.is_near(owner, size);
    }
    let is_instance = || told.job.features.iter().any(|of| of.instances.contains(&owner));
    has_nominal
        && (one.line != line.number || is_instance())
        && told.is_near(owner, size)
        && one.size() != Some(size)
        && num.places >= 2
        && !line.is_row
}

/// `bore 0.9981, thats 1.7 ok`: a number beside what was read on the line is nothing of
/// the feature where it is far from that.
pub(super) fn is_beside(told: &Told, line: &Line, given: &Given, num: &Num) -> bool {
    let spoken = line.feature.filter(|at| given.owner.is_none_or(|owner| owner == *at));
    let last = spoken.and_then(|at| told.job.features[at].readings.last());
    let read = last.filter(|read| read.line == line.number).map(|read| read.size.millimetres());
    let unit = line.unit.or_else(|| spoken.map(|at| told.job.features[at].unit));
    let size = unit.and_then(|unit| num.length(unit)).map(Length::millimetres);
    let is_far = read.zip(size).is_some_and(|(read, size)| !(0.7..1.43).contains(&(size / read)));
    let is_bare = num.unit.is_none() && !num.vulgar && !given.owner_said;
    let of_another = || {
        let near = |size| (0..told.job.features.len()).any(|at| told.is_near(at, size));
        unit.and_then(|unit| num.length(unit)).is_some_and(near)
    };
    line.date.is_some() && is_bare && is_far && !of_another()
}

/// A word for how far two parts move on one another.
pub(super) fn is_play(word: &str) -> bool {
    matches!(word, "play" | "float" | "shake" | "backlash")
}

/// `tommy bar is 8mm`, of one that was 5/16: a new size in the other unit, and
/// written no finer than one.
fn is_changed(told: &Told, line: &Line, owner: usize, num: &Num, size: Length) -> bool {
    let one = &told.job.features[owner];
    let was = one.size();
    let other =
        matches!(num.unit, Some(Unit::Millimetre | Unit::Inch)) && num.unit != Some(one.unit);
    other
        && !line.by_word
        && !told.units.is_fine(num, line)
        && was.is_some_and(|was| {
            was != size && (0.7..1.43).contains(&(size.millimetres() / was.millimetres()))
        })
}

/// Of `journals 19.974 / 19.968` the second reading is the second journal's.
pub(super) fn next_alike(told: &Told, line: &Line, owner: usize, size: Length) -> usize {
    let taken = |told: &Told, at: usize| {
        told.job.features[at].readings.iter().any(|reading| reading.line == line.number)
    };
    let one = &told.job.features[owner];
    let head = |name: &str| stems(name).into_iter().find(|word| !is_instance(word));
    let (part, word) = (one.part, head(&one.name));
    let alike: Vec<usize> = told
        .features_of(part)
        .filter(|(_, other)| {
            head(&other.name) == word && other.side == told.job.features[owner].side
        })
        .map(|(at, _)| at)
        .collect();
    if !taken(told, owner) || alike.len() < 2 {
        return owner;
    }
    alike.into_iter().find(|at| !taken(told, *at) && told.is_near(*at, size)).unwrap_or(owner)
}

/// A reading that names its part only, or nothing.
#[allow(clippy::too_many_lines, reason = "one kind of words after another, each short")]
pub(super) fn reading_by_size(
    told: &mut Told,
    wants: &mut Wants,
    line: &mut Line,
    num: &Num,
    size: Length,
) -> Option<usize> {
    // `end play, I get .4 mm`: of what this line spoke of last.
    let waits = |at: &usize| {
        let one = &told.job.features[*at];
        let is_play = stems(&one.name).last().is_some_and(|word| word == "gap" || is_play(word));
        one.side == SizeKind::Length
            && one.readings.is_empty()
            && one.line == line.number
            && (is_play || one.nominal.is_none())
    };
    if let Some(feature) = line.feature.filter(|at| {
        (told.is_near(*at, size) || waits(at))
            && line.subject.is_none_or(|part| part == told.job.features[*at].part)
    }) {
        if told.job.features[feature].size() == Some(size) && !num.leading_point && num.places == 0
        {
            return Some(feature);
        }
        told.reading(line, feature, num);
        return Some(feature);
    }
    let parts: Vec<usize> =
        line.subject.map_or_else(|| (0..told.job.parts.len()).collect(), |part| vec![part]);
    let off = |told: &Told, at: usize| {
        let nominal = told.job.features[at].size().unwrap_or(Length::ZERO);
        (nominal.tenth_nanometres() - size.tenth_nanometres()).abs()
    };
    let mut near: Vec<usize> = parts
        .into_iter()
        .flat_map(|part| told.features_of(part).map(|(at, _)| at).collect::<Vec<_>>())
        .filter(|at| {
            let one = &told.job.features[*at];
            // A key is measured across.
            let is_key = || told.names.parts[one.part].iter().any(|word| word == "key");
            told.is_near(*at, size)
                && (one.side.surface().is_some() || one.side == SizeKind::Other && is_key())
        })
        .collect();
    // `bush bore 11.97, reamed 12.03`, of the bush that is of such a size.
    if near.is_empty() && line.date.is_some() {
        let last = line.subject.and_then(|part| told.names.parts[part].last());
        let alike = last.map(|last| told.names.ending(last)).unwrap_or_default();
        near.extend(alike.into_iter().flat_map(|part| told.names.of(part)).copied().filter(|at| {
            let one = &told.job.features[*at];
            told.is_near(*at, size)
                && one.side.surface().is_some()
                && one.readings.iter().any(|reading| reading.line == line.number)
        }));
    }
    // `reamed 10.03`, of a part of a note in inches that is made in millimetres.
    if near.is_empty()
        && num.unit.is_none()
        && let Some((part, metric)) = line.subject.zip(num.length(Unit::Millimetre))
    {
        near.extend(told.features_of(part).map(|(at, _)| at).filter(|at| {
            let one = &told.job.features[*at];
            one.unit == Unit::Millimetre
                && one.side.surface().is_some()
                && told.is_near(*at, metric)
        }));
    }
    near.sort_by_key(|at| off(told, *at));
    let kind = Kind::Num(num.clone());
    match near.as_slice() {
        [] => {
            // A first size may stand in a dated line.
            let Some(part) = line.subject else {
                if num.places > 1 {
                    told.ask_measured(line, num);
                }
                return None;
            };
            if num.is_inch_shaped() && num.vulgar || num.places < 2 {
                let given = Given::plain(&kind, &num.at);
                let (name, side) = kinds::default_feature(told, part, &given)?;
                // `runs out 0.3 over 610`: no second bore by a bare size.
                let known = told.feature_called(part, &name, Some(side));
                let is_far = |at| !sizes::is_about(&told.job, at, size);
                if known.is_some_and(is_far) || is_beside(told, line, &given, num) {
                    told.ask_measured(line, num);
                    return None;
                }
                let feature = told.feature(line, part, &name, side, num.at.clone());
                return Some(sizes::nominal(told, line, feature, size, num, &given));
            }
            if let Some(feature) = other_side(told, wants, line, part, size, &num.at) {
                told.reading(line, feature, num);
                return Some(feature);
            }
            // A bought part may have been measured before its size was written.
            let given = Given::plain(&kind, &num.at);
            if line.date.is_none()
                && let Some((name, side)) = kinds::default_feature(told, part, &given)
                && !told.features_of(part).any(|(_, one)| one.side == side)
            {
                let feature = told.feature(line, part, &name, side, num.at.clone());
                told.reading(line, feature, num);
                return Some(feature);
            }
            told.ask_measured(line, num);
            None
        }
        [first, second, ..]
            if line.subject.is_none() && off(told, *first) == off(told, *second) =>
        {
            let names = format!(
                "is this the {} or the {}?",
                told.job.full_name(*first),
                told.job.full_name(*second)
            );
            told.ask_of_figure(
                line,
                num.at.clone(),
                names,
                Some("name it before the reading".into()),
            );
            None
        }
        [first, ..] => {
            let first = *first;
            if is_changed(told, line, first, num, size) {
                told.size_num(line, first, num);
            } else {
                told.reading(line, first, num);
            }
            Some(first)
        }
    }
}

/// `bush od is 1.2525 and the housing 1.2510`: the part's side of the joint
/// that the line speaks of.
pub(super) fn other_side(
    told: &mut Told,
    wants: &mut Wants,
    line: &mut Line,
    part: usize,
    size: Length,
    at: &Range<usize>,
) -> Option<usize> {
    let before =
        line.feature.or(told.last).filter(|before| told.job.features[*before].part != part)?;
    let one = told.job.features[before].clone();
    let read = one.readings.last().filter(|reading| reading.line == line.number)?;
    if (read.size.millimetres() / size.millimetres() - 1.0).abs() > 0.01 {
        return None;
    }
    let (name, side) = match one.side {
        SizeKind::Shaft if told.inwardness(part) < 0 => ("bore", SizeKind::Hole),
        SizeKind::Shaft => ("hole", SizeKind::Hole),
        SizeKind::Hole => ("od", SizeKind::Shaft),
        _ => return None,
    };
    let taken = told.features_of(part).any(|(_, other)| other.side == side && other.name == name);
    let name = if taken { format!("{name} 2") } else { name.to_owned() };
    let made = told.feature(line, part, &name, side, at.clone());
    let other = told.job.parts[one.part].name.clone();
    let mut mate = Some((other, Some(one.part), at.clone(), true));
    wants.finish_mate(told, line, &mut mate, Some(made), &mut FitSaid::default(), Some(before));
    Some(made)
}
