//! The feature that the words of a clause name, or a new one.

use std::ops::Range;

use fits_core::job::whole::{Job, SizeKind};

use super::items::Item;
use crate::note::{
    Line,
    lexicon::{stem, stems},
    names::is_instance,
    readings,
    token::Kind,
    told::Told,
    wants::Wants,
};

/// The feature that an item of a clause names. `only_known` makes none.
#[allow(clippy::too_many_lines, reason = "one kind of words after another, each short")]
pub(super) fn item_feature(
    told: &mut Told,
    wants: &mut Wants,
    item: &Item,
    place: &Range<usize>,
    line: &mut Line,
    size: Option<&Kind>,
    only_known: bool,
) -> Option<usize> {
    let Item::Feature { name, side, part, mate } = item else { return None };
    // `nose taper 1 in 8, 28 big end`: of the taper, not of a connecting rod.
    let tapered = line.feature.filter(|_| line.tapers && is_taper_end(name));
    let (name, side) = &match tapered.map(|at| &told.job.features[at]) {
        // `tapered over 60 (big end .394)`: of a bar that is turned so.
        Some(one) if one.name == "taper length" => (format!("taper {name}"), SizeKind::Shaft),
        Some(one) => (format!("{} {name}", one.name), one.side),
        None => (name.clone(), *side),
    };
    // `on a shoulder screw, 5/16 shoulder`: the word is in the mate's name.
    if let Some(other) = &line.mate_name
        && part.is_none()
        && stems(name).len() == 1
        && stems(other).len() > 1
        && stems(other).contains(&stem(name))
    {
        let other = other.clone();
        line.subject = Some(told.part_named(&other, line.number));
        line.feature = None;
    }
    if let Some(part) = part {
        line.subject = Some(*part);
    }
    let head = stem(name.split_whitespace().last().unwrap_or_default());
    let is_role = matches!(
        head.as_str(),
        "long"
            | "lg"
            | "length"
            | "wide"
            | "width"
            | "thick"
            | "thickness"
            | "thk"
            | "deep"
            | "depth"
            | "high"
            | "height"
            | "overall"
            | "oal"
            | "pcd"
            | "bcd"
    ) && stems(name).len() == 1;
    let subject = part.or(line.subject);
    let of = |at: usize| (told.job.features[at].side, &told.job.features[at].name);
    // `60T, 2 1/2 pcd`: the circle of its teeth, not of holes.
    let is_pitch = is_role && role(&head) == "pcd" && line.geared;
    if let (true, Some(part)) = (is_pitch, subject)
        && !line.feature.is_some_and(|at| matches!(of(at).0, SizeKind::Hole | SizeKind::Thread))
    {
        return Some(told.feature(line, part, "pitch diameter", SizeKind::Other, place.clone()));
    }
    // `pitch diameter 45, width 16`: the wheel is so wide.
    line.feature = line.feature.filter(|at| !(is_role && of(*at).1.starts_with("pitch ")));
    // `3/16 wide, 3/32 deep, 7/8 long`: all of the keyway.
    if is_role && line.feature.is_some_and(|at| told.job.features[at].side == SizeKind::Length) {
        line.feature = line.role_of.or(line.feature);
    }
    if is_role {
        line.role_of = line.feature;
    }
    // A key is as wide as its way.
    if is_role
        && role(&head) == "width"
        && let Some(key) = subject.filter(|part| {
            line.feature.is_none_or(|at| told.job.features[at].part != *part)
                && told.names.parts[*part].last().is_some_and(|word| word == "key")
        })
    {
        return Some(told.feature(line, key, "width", SizeKind::Other, place.clone()));
    }
    // A keyway is as wide as its size says.
    let is_flat = |last: &usize| {
        told.job.features[*last].side == SizeKind::Other
            && Some(told.job.features[*last].part) == subject
    };
    if is_role
        && role(&head) == "width"
        && let Some(last) = line.feature.filter(is_flat)
    {
        return Some(last);
    }
    if is_role
        && let Some(last) = line.feature.filter(|last| {
            told.job.features[*last].side != SizeKind::Length
                && subject.is_none_or(|part| told.job.features[*last].part == part)
                && !(line.is_row)
        })
    {
        let name = format!("{} {}", told.job.features[last].name, role(&head));
        let part = told.job.features[last].part;
        return Some(told.feature(line, part, &name, SizeKind::Length, place.clone()));
    }
    let near = match size {
        Some(Kind::Num(num)) => told.units.length(num, line.unit),
        _ => None,
    };
    // A reading, or a line that names no part, speaks of what is there.
    let known =
        subject.and_then(|subject| told.feature_called(subject, name, None)).filter(|found| {
            let one = &told.job.features[*found];
            let marks = |words: &[String]| {
                words.iter().filter(|word| is_instance(word)).cloned().collect::<Vec<_>>()
            };
            let same_marks =
                marks(&stems(name)) == marks(&stems(&one.name)) || marks(&stems(name)).is_empty();
            let is_thread =
                one.side == SizeKind::Thread && matches!(size, Some(Kind::Thread(_)) | None);
            same_marks
                && (line.reads
                    || only_known
                    || one.line != line.number && (line.date.is_some() || line.under_date)
                    || is_thread
                    || one.nominal.is_none()
                    || stems(&one.name) == stems(name)
                    || one.side == *side && one.size() == near
                    || line.declares
                        && one.line == line.number
                        && (one.nominal.is_none() || size.is_none()))
        });
    if let Some(known) = known {
        return Some(known);
    }
    // `R .9980` under `journals 1`: one of those, as it came out.
    let marks: Vec<String> = stems(name).into_iter().filter(|word| is_instance(word)).collect();
    if let (Some(part), Some(size), false) = (subject, near, marks.is_empty()) {
        let plain = stems(name).into_iter().filter(|word| !is_instance(word));
        let base = told.feature_called(part, &plain.collect::<Vec<_>>().join(" "), Some(*side));
        let base = base.filter(|at| {
            let one = &told.job.features[*at];
            let was = one.size();
            one.line != line.number
                && told.is_near(*at, size)
                && was != Some(size)
                && !told.names.features[*at].iter().any(|word| is_instance(word))
        });
        if let Some(base) = base {
            return Some(instance_of(told, line.number, base, name, place));
        }
    }
    let everywhere = |told: &Told| {
        let called = |name: &str| -> Vec<usize> {
            (0..told.job.parts.len())
                .rev()
                .filter_map(|part| told.feature_called(part, name, Some(*side)))
                .collect()
        };
        let mut all = called(name);
        // `jrnl l` of the journals.
        if all.is_empty() {
            let plain: Vec<String> =
                stems(name).into_iter().filter(|word| !is_instance(word)).collect();
            all = called(&plain.join(" "));
        }
        let fits = |at: &usize| near.is_some_and(|size| told.is_near(*at, size));
        // A size that is a tenth off is of something else.
        let about = |at: &usize| {
            let nominal = told.job.features[*at].size();
            near.zip(nominal).is_none_or(|(size, nominal)| {
                (size.millimetres() / nominal.millimetres() - 1.0).abs() < 0.1
                    || (size.millimetres() / nominal.millimetres() - 25.4).abs() < 3.0
                    || (nominal.millimetres() / size.millimetres() - 25.4).abs() < 3.0
            })
        };
        all.iter().copied().find(fits).or(all.first().copied().filter(about))
    };
    let opened = line.declares && line.date.is_some();
    if (subject.is_none() || part.is_none() && line.date.is_some() && !opened)
        && *side != SizeKind::Length
        && let Some(found) = everywhere(told)
    {
        let one = told.job.features[found].clone();
        let marks: Vec<String> = stems(name).into_iter().filter(|word| is_instance(word)).collect();
        if marks.is_empty() || marks.iter().all(|mark| stems(&one.name).contains(mark)) {
            return Some(found);
        }
        // One of several alike: `journal L` of the journals.
        line.subject = Some(one.part);
        return Some(instance_of(told, line.number, found, name, place));
    }
    if only_known && *side == SizeKind::Length && !readings::is_play(&head) {
        return None;
    }
    // `first slab rolled, 8 thick`, of no part: nothing of the whole is that.
    if is_role && subject.is_none() && line.date.is_some() {
        return None;
    }
    // A feature with no part in its line is of the part spoken of last.
    let before = line.under.filter(|_| {
        line.date.is_none()
            && !line.reads
            && matches!(side, SizeKind::Shaft | SizeKind::Hole | SizeKind::Other)
    });
    // The hole that a pin goes in is its mate's.
    let is_pin = |part: usize| {
        told.names.parts[part]
            .last()
            .is_some_and(|word| matches!(word.as_str(), "pin" | "dowel" | "rivet"))
    };
    let subject = line
        .mate_part
        .filter(|_| *side == SizeKind::Hole && part.is_none() && subject.is_some_and(is_pin))
        .or(subject);
    let part = subject.or(before).unwrap_or_else(|| told.assembly(line.number));
    let name = match head.as_str() {
        "long" | "lg" => "overall length".to_owned(),
        _ if name == "bored" => "bore".to_owned(),
        _ if name == "turned" => "diameter".to_owned(),
        "tapped" | "threaded" | "tapping" => "thread".to_owned(),
        _ => name.clone(),
    };
    let made = told.feature(line, part, &name, *side, place.clone());
    if let Some(mate) = mate {
        wants.hint(told, line, made, mate, place);
    }
    Some(made)
}

fn is_taper_end(name: &str) -> bool {
    matches!(stems(name).as_slice(), [of, end]
        if end == "end" && matches!(of.as_str(), "big" | "small" | "little" | "large"))
}

/// Does a hole that this line has named wait for its size?
pub(super) fn hole_waits(job: &Job, line: &Line) -> bool {
    line.feature.is_some_and(|at| {
        let one = &job.features[at];
        one.line == line.number && one.side == SizeKind::Hole && one.nominal.is_none()
    })
}

/// One of several alike: `journal L` of the journals.
pub(super) fn instance_of(
    told: &mut Told,
    line: usize,
    of: usize,
    name: &str,
    place: &Range<usize>,
) -> usize {
    let one = told.job.features[of].clone();
    let new = told.new_feature(line, one.part, name, one.side, place.clone());
    let made = &mut told.job.features[new];
    (made.nominal, made.unit, made.unit_from, made.class) =
        (one.nominal, one.unit, one.unit_from, one.class);
    told.job.features[of].instances.push(new);
    new
}

pub(in crate::note) fn role(head: &str) -> &'static str {
    match head {
        "wide" | "width" => "width",
        "thick" | "thickness" | "thk" => "thickness",
        "deep" | "depth" => "depth",
        "high" | "height" => "height",
        "pcd" | "bcd" => "pcd",
        _ => "length",
    }
}
