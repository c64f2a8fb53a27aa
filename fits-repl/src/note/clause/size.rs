//! The sizes of a clause: what each is of, and which are none.

use std::ops::Range;

use fits_core::job::whole::SizeKind;

use super::{
    Clause,
    items::{Item, Placed},
    named, owner,
    parted::{before_read, class_after, is_correction, is_denied, off_after},
    whose::{self, is_off},
};
use crate::note::{
    Line,
    lexicon::stem,
    sizes::{self, Given},
    token::Kind,
    told::Told,
    wants::Wants,
};

/// A size of a clause goes to its feature.
pub(super) fn one_size(
    told: &mut Told,
    wants: &mut Wants,
    clause: &mut Clause,
    line: &mut Line,
    at: usize,
    kind: &Kind,
    place: &Range<usize>,
) {
    let items = clause.items;
    // `.9035 not .902`, `instead of the .125`, `1.5 or 2?`
    let is_other =
        at > 0 && line.asks && matches!(&items[at - 1].0, Item::Loose(word) if word == "or");
    let is_asked_of =
        line.asks && matches!(items.first(), Some((Item::Loose(word), _)) if word == "or");
    if is_asked_of
        || clause.sizes.first() != Some(&at) && (is_other || is_denied(items, at))
        || is_no_part_size(told, wants, clause, line, at, kind)
    {
        return;
    }
    let owned = clause.of[at].is_some();
    // `3 tenths over`: over the size that is wanted.
    if let Kind::Num(num) = kind
        && is_off(items, at, num)
    {
        let owner = owner_of(told, wants, clause, line, at, None).or(clause.last);
        match owner.filter(|owner| whose::read_off(told, items, at, num, *owner, line)) {
            Some(feature) => clause.last = Some(feature),
            None => told.ask_measured(line, num),
        }
        return;
    }
    let fits = clause.has_fit || line.fits || !clause.features.is_empty() && clause.sign == ',';
    if whose::is_amount(told, kind, line, fits, owned) {
        // `bore 7/8 less 1 thou`, and no fit: does it come off the size?
        let comes_off = at > 1
            && matches!(&items[at - 1].0, Item::Loose(word) if matches!(word.as_str(), "less" | "minus"))
            && matches!(items[at - 2].0, Item::Size(_));
        let is_alone = !fits && !items.iter().any(|(item, _)| matches!(item, Item::Mate { .. }));
        if comes_off && is_alone {
            let answer = Some("write the size that is left".to_owned());
            told.ask_of_figure(line, place.clone(), "does this come off the size?", answer);
            return;
        }
        whose::amount(&told.units, kind, &mut clause.fit, clause.twice, line);
        clause.twice = false;
        return;
    }
    if is_of_known(told, clause, line, at, kind, place)
        || is_tube_of_two(told, clause, line, at, kind, place)
    {
        return;
    }
    let owner = owner_of(told, wants, clause, line, at, Some(kind));
    let owner = if clause.others.contains(&at) {
        let is_near = match kind {
            Kind::Num(num) => clause
                .last
                .zip(told.units.length(num, line.unit))
                .is_some_and(|(last, size)| told.is_near(last, size)),
            _ => true,
        };
        if !is_near {
            return told.ask_size(line, &Given::plain(kind, place));
        }
        clause.last
    } else {
        owner
    };
    if owned && owner.is_none() && line.subject.is_none() && line.date.is_some() {
        return told.ask_size(line, &Given::plain(kind, place));
    }
    let class = class_after(items, at);
    let mate = items.iter().skip(at).find_map(|(item, _)| match item {
        Item::Mate { name, .. } => Some(name.as_str()),
        _ => None,
    });
    let given = Given {
        kind,
        place,
        owner,
        owner_said: owned,
        reads: clause.reads
            && !clause.negated
            && !before_read(items, at, line)
            && !whose::corrects(&told.units, items, at, line),
        works_to: clause.works_to,
        most: clause.most,
        mate,
        has_fit: clause.has_fit,
        off: off_after(items, at),
        is_plain: clause.is_plain || class.is_some(),
        class,
        second: second_role(clause, at),
    };
    clause.last = sizes::give(told, wants, line, &given).or(clause.last);
}

/// A size of the stock that a part is made from, or one that no longer holds.
fn is_no_part_size(
    told: &mut Told,
    wants: &mut Wants,
    clause: &mut Clause,
    line: &mut Line,
    at: usize,
    kind: &Kind,
) -> bool {
    let (items, owner) = (clause.items, clause.of[at]);
    let is_stocked = clause.skip_material && !matches!(kind, Kind::Thread(_))
        || told.units.is_steel_number(kind, line)
        || whose::is_stock_size(told, items, at, line, owner.is_some());
    // `not 18` alone: of whatever it was, it is that no more.
    let is_sure = owner.is_some() || is_right_behind_not(items, at);
    let denied = clause.negated && is_sure && !is_correction(items, at);
    if !is_stocked && !denied {
        return false;
    }
    if let (true, Some(owner)) = (clause.negated, owner) {
        let (item, place) = &items[owner];
        clause.last =
            owner::item_feature(told, wants, item, place, line, None, false).or(clause.last);
        line.feature = clause.last.or(line.feature);
        line.corrects = clause.last;
    }
    clause.skip_material = false;
    true
}

/// `not 18`, `not the 18`; `not less than 18` denies no size.
fn is_right_behind_not(items: &[Placed], at: usize) -> bool {
    let is_article =
        |item: &Item| matches!(item, Item::Loose(word) if matches!(word.as_str(), "the" | "a"));
    let mut before = items[..at].iter().rev().map(|(item, _)| item);
    matches!(before.find(|item| !is_article(item)), Some(Item::Not))
}

/// A size that corrects one, or that is a tube's outside.
fn is_of_known(
    told: &mut Told,
    clause: &mut Clause,
    line: &mut Line,
    at: usize,
    kind: &Kind,
    place: &Range<usize>,
) -> bool {
    let Kind::Num(num) = kind else { return false };
    if told.units.length(num, line.unit).is_none() {
        return false;
    }
    if let Some(feature) = line.corrects.take() {
        return told.size_num(line, feature, num);
    }
    let items = clause.items;
    // `3/4 tube`: a tube is used as it comes.
    let comes = clause.of[at].is_none() && !clause.reads && whose::comes_so(told, items, at, line);
    if let (true, Some(part)) = (comes, line.subject) {
        let feature = told.sized(line, part, ("od", SizeKind::Shaft), num, place);
        clause.last = clause.last.or(feature);
        return true;
    }
    // `7/16 not 1/2`: the size that was is known.
    let said = clause.of[at].and_then(|owner| match items[owner].0 {
        Item::Feature { part, .. } => part,
        _ => None,
    });
    let of = (said.or(line.subject), clause.of[at]);
    if let Some(was) = whose::instead_of(told, items, at, of, line)
        && (!clause.reads || whose::corrects(&told.units, items, at, line))
    {
        clause.last = Some(was);
        return told.size_num(line, was, num);
    }
    false
}

/// `alu tube 5 x 0.5`: outside and wall.
fn is_tube_of_two(
    told: &mut Told,
    clause: &mut Clause,
    line: &mut Line,
    at: usize,
    kind: &Kind,
    place: &Range<usize>,
) -> bool {
    let is_tube = |item: Option<&Placed>| matches!(item, Some((Item::Loose(word), _)) if named::is_tube(word));
    let beside = at.checked_sub(1).map(|before| &clause.items[before]);
    let (Kind::Dims(all), Some(part), None) = (kind, line.subject, clause.of[at]) else {
        return false;
    };
    let [outside, wall] = all.as_slice() else { return false };
    if !is_tube(beside) || 4.0 * wall.value() > outside.value() || clause.reads {
        return false;
    }
    let od = told.sized(line, part, ("od", SizeKind::Shaft), outside, place);
    told.sized(line, part, ("wall", SizeKind::Length), wall, place);
    clause.last = od.or(clause.last);
    od.is_some()
}

/// `8 x 20 deep`: what the word behind two sizes says of the second.
fn second_role(clause: &Clause, at: usize) -> Option<&'static str> {
    let owner = clause.of[at].filter(|owner| *owner > at)?;
    match &clause.items[owner].0 {
        Item::Feature { side: SizeKind::Length, name, .. } if is_long(name) => Some("length"),
        Item::Feature { side: SizeKind::Length, name, .. } => {
            Some(owner::role(&stem(name))).filter(|role| matches!(*role, "depth" | "thickness"))
        }
        _ => None,
    }
}

fn is_long(name: &str) -> bool {
    matches!(name, "lg" | "long" | "length")
}

/// The feature that a size is of: one that waits for it, or the one named beside it.
fn owner_of(
    told: &mut Told,
    wants: &mut Wants,
    clause: &mut Clause,
    line: &mut Line,
    at: usize,
    kind: Option<&Kind>,
) -> Option<usize> {
    let owner = clause.of[at];
    // A size behind its feature's name: `keyway  3/16 x 3/32`, `journal: .750`.
    let waits = line.feature.filter(|feature| {
        let one = &told.job.features[*feature];
        one.line == line.number
            && one.nominal.is_none()
            && one.readings.is_empty()
            && matches!(clause.sign, ' ' | ':' | '^' | ',' | '-')
    });
    let is_role = matches!(kind, Some(Kind::Dims(_))) && second_role(clause, at).is_some();
    if is_role {
        let named = || {
            let before = clause.features.iter().rev().find(|feature| **feature < at)?;
            clause.seen[*before].filter(|one| told.job.features[*one].side != SizeKind::Length)
        };
        return waits.or_else(named);
    }
    if owner.is_none() {
        return waits;
    }
    let owner = owner?;
    if clause.seen[owner].is_none() {
        let (item, place) = &clause.items[owner];
        clause.seen[owner] =
            owner::item_feature(told, wants, item, place, line, kind, kind.is_none());
    }
    clause.seen[owner]
}
