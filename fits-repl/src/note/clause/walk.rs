//! The items of a clause but its sizes: features, fits, mates, classes.

use std::ops::Range;

use fits_core::job::whole::{FitSaid, SizeKind};

use super::{
    Clause,
    items::Item,
    owner,
    parted::{class_after, is_after_size},
    size, whose,
};
use crate::note::{Line, counts::is_ratio, kinds, lexicon, token::Kind, told::Told, wants::Wants};

/// One item of a clause.
pub(super) fn one(
    told: &mut Told,
    wants: &mut Wants,
    clause: &mut Clause,
    line: &mut Line,
    at: usize,
    item: &Item,
    place: &Range<usize>,
) {
    match item {
        // `is` is a reading only where the size is one by its shape.
        Item::Reads(sure) => clause.reads |= *sure,
        // `taper 1 in 8`: no size, and kept.
        Item::Loose(word) if is_ratio(word) => told.remark(line.number, word, line.subject),
        // `stock 1-1/4`, not `1.000 ground stock 22 long`.
        Item::Stock => {
            clause.skip_material = clause.sizes.first().is_none_or(|first| at < *first);
        }
        Item::Fit(words, word) => {
            // `on a 1/4 dowel driven in the cheek`: it is the dowel that is.
            if let (Some(to), true) = (clause.mate_to, clause.mate.is_some()) {
                mate_said(told, wants, clause, line);
                clause.last = Some(to);
            }
            let fit = &mut clause.fit;
            if !fit.words.is_empty() {
                fit.words.push_str(", ");
            }
            fit.words.push_str(words);
            fit.word = fit.word.or(*word);
        }
        Item::Feature { .. } => {
            let has_size = clause.of.contains(&Some(at));
            if !has_size || clause.sizes.is_empty() {
                let feature = owner::item_feature(told, wants, item, place, line, None, !has_size);
                clause.seen[at] = feature;
                clause.last = feature.or(clause.last);
                line.feature = feature.or(line.feature);
            }
        }
        Item::Size(kind) => size::one_size(told, wants, clause, line, at, kind, place),
        Item::Mate { name, part, is_sure } if clause.mate.is_none() || *is_sure => {
            // One clause, two mates: `press in housing, runs on it` are two clauses.
            mate_said(told, wants, clause, line);
            // `pressed into the beam`: how it is to go there.
            let pressed = clause.items[..at].iter().any(|(item, _)| matches!(item, Item::InPlace));
            if pressed && clause.fit.words.is_empty() && !line.reads {
                let word = lexicon::fit(&["press"]).and_then(|(_, word)| word);
                clause.fit = FitSaid { words: "pressed".into(), word, clearance: None };
            }
            // `bore 25.01 after pressing into the frame`: it is not the bore that goes there.
            let last = clause.last.map(|at| &told.job.features[at]);
            if pressed
                && line.reads
                && last
                    .is_some_and(|one| one.side == SizeKind::Hole && told.names.is_listed(one.part))
            {
                return;
            }
            clause.mate = Some((name.clone(), *part, place.clone(), *is_sure));
            line.mate_name = Some(name.clone());
            line.mate_part = *part;
        }
        Item::MateFeature(name, side) => mates_feature(told, clause, line, at, name, *side),
        Item::OfMate(kind) => mates_size(told, wants, clause, line, at, kind, place),
        // `not h6`: the class that stood there holds no more.
        Item::Class(class) if at > 0 && matches!(clause.items[at - 1].0, Item::Not) => {
            if let Some(feature) = clause.last.or(line.feature) {
                let stands = &mut told.job.features[feature].class;
                stands.take_if(|stands| stands == class);
            }
        }
        Item::Class(class) if !is_after_size(clause.items, at) => {
            whose::lone_class(told, class, &mut clause.mate, clause.last, line, place);
        }
        Item::Part(part) if clause.features.len() == 1 && clause.sizes.len() <= 1 => {
            let feature = clause.last.filter(|at| {
                let one = &told.job.features[*at];
                one.side == SizeKind::Length && one.readings.is_empty()
            });
            if let Some(feature) = feature {
                told.move_to(feature, *part);
            }
        }
        _ => {}
    }
}

/// The mate that stands so far.
fn mate_said(told: &mut Told, wants: &mut Wants, clause: &mut Clause, line: &mut Line) {
    let to = clause.mate_to.take();
    wants.finish_mate(told, line, &mut clause.mate, clause.last, &mut clause.fit, to);
}

/// `in the yoke hole`: the mate's own feature.
fn mates_feature(
    told: &mut Told,
    clause: &mut Clause,
    line: &mut Line,
    at: usize,
    name: &str,
    side: SizeKind,
) {
    clause.own_of_mate = None;
    let Some((mate, part, _, sure)) = &mut clause.mate else { return };
    // One of another size is not the one meant.
    let sized = matches!(clause.items.get(at + 1), Some((Item::OfMate(_), _)));
    let size = clause.items.get(at + 1).and_then(|(item, _)| match item {
        Item::OfMate(Kind::Num(num)) => told.units.length(num, line.unit),
        _ => None,
    });
    *sure = true;
    // `runs on screw neck`: a part that the note names further on, perhaps in full.
    if part.is_none() && !sized {
        *mate = format!("{mate} {name}");
        return;
    }
    let id = part.unwrap_or_else(|| told.part_named(mate, line.number));
    *part = Some(id);
    line.mate_part = Some(id);
    let found = told.feature_called(id, name, Some(side)).filter(|found| {
        told.job.features[*found].nominal.is_none()
            || size.is_none_or(|size| told.is_near(*found, size))
    });
    let found = found.unwrap_or_else(|| told.feature(line, id, name, side, clause.place(at)));
    clause.own_of_mate = Some(found);
    let is_side = side.surface().is_some() || side == SizeKind::Other;
    clause.mate_to = is_side.then_some(found).or(clause.mate_to);
}

/// A size of the mate, or of its feature.
fn mates_size(
    told: &mut Told,
    wants: &mut Wants,
    clause: &mut Clause,
    line: &mut Line,
    at: usize,
    kind: &Kind,
    place: &Range<usize>,
) {
    if let (Some(to), Kind::Num(num)) = (clause.own_of_mate, kind) {
        if told.units.length(num, line.unit).is_some() {
            let kept = line.feature;
            if clause.reads {
                told.reading(line, to, num);
            } else {
                told.size_num(line, to, num);
            }
            line.feature = kept.or(line.feature);
        }
        return;
    }
    let Some((name, part, _, sure)) = &mut clause.mate else { return };
    let id = part.unwrap_or_else(|| told.part_named(name, line.number));
    (*part, *sure) = (Some(id), true);
    line.mate_part = Some(id);
    // A key lies in a joint: it is no mate of a diameter.
    let is_key = told.names.parts[id].iter().any(|word| word == "key");
    let is_round = |at: usize| told.job.features[at].side.surface().is_some();
    if clause.last.is_none_or(is_round) && is_key {
        kinds::of_mate(told, wants, line, id, kind, place, None);
        clause.mate = None;
        line.feature = clause.last.or(line.feature);
        return;
    }
    // `3.5 for the 3 mm cable`: what the note does not know goes into the hole.
    let of_hole =
        clause.last.or(line.feature).filter(|at| told.job.features[*at].side == SizeKind::Hole);
    let is_unknown = || {
        let words = &told.names.parts[id];
        words.iter().all(|word| lexicon::inwardness(word).is_none())
            && told.features_of(id).next().is_none()
    };
    if let (Some(hole), Kind::Num(num)) = (of_hole, kind)
        && is_unknown()
    {
        clause.mate_to = told.sized(line, id, ("od", SizeKind::Shaft), num, place);
        clause.last = clause.last.or(Some(hole));
        line.feature = clause.last;
        return;
    }
    if clause.last.is_none() {
        clause.last = whose::implied_side(told, line, id, kind);
    }
    let class = class_after(clause.items, at);
    clause.mate_to = kinds::of_mate(told, wants, line, id, kind, place, class.as_deref());
}
