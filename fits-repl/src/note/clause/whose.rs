//! Whose a size in a clause is: a noun before it, an amount of a fit, stock.

use std::ops::Range;

use fits_core::{
    job::whole::{FitSaid, SizeKind},
    size::Unit,
};

use super::{
    items::{Item, Placed},
    named::{Form, form_behind},
};
use crate::note::{
    Line,
    lexicon::{is_finish, is_material, is_stock, stems},
    token::{Kind, Num, Token},
    told::Told,
    units::Units,
    wants::Named,
};

/// The subject's own feature where only its mate is sized: `pawl on 1/4 dowel`.
pub(super) fn implied_side(
    told: &mut Told,
    line: &mut Line,
    mate: usize,
    kind: &Kind,
) -> Option<usize> {
    let subject = line.subject?;
    let Kind::Num(num) = kind else { return None };
    let size = told.units.length(num, line.unit)?;
    if let Some(near) = told.nearest(subject, None, size).filter(|at| told.is_near(*at, size)) {
        return Some(near);
    }
    let side = if told.inwardness(subject) > told.inwardness(mate) {
        SizeKind::Shaft
    } else {
        SizeKind::Hole
    };
    let name = if side == SizeKind::Shaft { "od" } else { "hole" };
    told.sized(line, subject, (name, side), num, &num.at)
}

/// A class with no size beside it: the mate's, or that of a size said before.
pub(super) fn lone_class(
    told: &mut Told,
    class: &str,
    mate: &mut Named,
    last: Option<usize>,
    line: &mut Line,
    place: &Range<usize>,
) {
    let is_hole = class.starts_with(|c: char| c.is_ascii_uppercase());
    if let (Some((name, part, _, _)), Some(last)) = (mate.as_mut(), last) {
        let own = told.job.features[last].side;
        let other = if own == SizeKind::Shaft { SizeKind::Hole } else { SizeKind::Shaft };
        if (other == SizeKind::Hole) == is_hole && own.surface().is_some() {
            let id = part.unwrap_or_else(|| told.part_named(name, line.number));
            *part = Some(id);
            let nominal = told.job.features[last].nominal.clone();
            let (unit, from) = (told.job.features[last].unit, told.job.features[last].unit_from);
            let word = if other == SizeKind::Hole { "bore" } else { "od" };
            let feature = told.feature(line, id, word, other, place.clone());
            if let Some(nominal) = nominal.filter(|_| told.job.features[feature].nominal.is_none())
            {
                told.size(line, feature, nominal, (unit, from));
            }
            told.job.features[feature].class = Some(class.to_owned());
            line.feature = Some(last);
            return;
        }
    }
    if let Some(feature) = last.or(line.feature).filter(|at| told.job.features[*at].class.is_none())
    {
        told.job.features[feature].class = Some(class.to_owned());
        told.say(line, feature);
    }
}

/// `9 lg not 10`: a size that is no finer than the one it stands for is wanted.
pub(super) fn corrects(units: &Units, items: &[Placed], at: usize, line: &Line) -> bool {
    let Item::Size(Kind::Num(num)) = &items[at].0 else { return false };
    let behind = items[at + 1..]
        .iter()
        .skip_while(|(item, _)| matches!(item, Item::Loose(_) | Item::Feature { .. }));
    let items: Vec<&Item> = behind.take(2).map(|(item, _)| item).collect();
    !units.is_fine(num, line)
        && matches!(items.as_slice(), [Item::Not, Item::Size(Kind::Num(was))] if was.places >= num.places)
}

/// The feature of the part spoken of that has the size behind `not`, or the only
/// one of that name in the note.
pub(super) fn instead_of(
    told: &Told,
    items: &[Placed],
    at: usize,
    (part, named): (Option<usize>, Option<usize>),
    line: &Line,
) -> Option<usize> {
    let mut behind = items[at + 1..]
        .iter()
        .skip_while(|(item, _)| matches!(item, Item::Loose(_) | Item::Feature { .. }));
    let (Some((Item::Not, _)), Some((Item::Size(Kind::Num(was)), _))) =
        (behind.next(), behind.next())
    else {
        return None;
    };
    let was = told.units.length(was, line.unit)?;
    let has = |at: &usize| {
        let one = &told.job.features[*at];
        one.size() == Some(was)
    };
    let own = part.and_then(|part| told.names.of(part).iter().copied().find(has));
    own.or_else(|| {
        let Item::Feature { name, side, .. } = &items[named?].0 else { return None };
        let said = stems(name);
        let is_called = |at: &usize| {
            told.job.features[*at].side == *side
                && said.iter().all(|word| told.names.features[*at].contains(word))
        };
        let mut all = (0..told.job.features.len()).filter(|at| has(at) && is_called(at));
        all.next().filter(|_| all.next().is_none())
    })
}

/// Words that name no part and no feature, right before a size, name what it
/// is of: `flange 24 x 3`, `tail 1/2 dia`. A diameter behind another feature
/// says how its size is meant.
pub(super) fn nouns(
    told: &Told,
    items: &mut Vec<Placed>,
    tokens: &[Token],
    line: &Line,
    reads: bool,
) {
    let waits = line.feature.is_some_and(|at| {
        let one = &told.job.features[at];
        one.line == line.number && one.nominal.is_none() && one.side.surface().is_some()
    });
    let is_dia =
        |item: &Item| matches!(item, Item::Feature { name, part: None, .. } if name == "dia");
    let is_surface = |item: &Item| {
        matches!(item, Item::Feature { side: SizeKind::Hole | SizeKind::Shaft, .. })
            && !is_dia(item)
    };
    let is_one = |item: &Item| matches!(item, Item::Size(_));
    let other = items.iter().any(|(item, _)| is_surface(item));
    for at in positions(items, is_dia) {
        let before = items[..at].iter().rev().position(|(item, _)| is_surface(item));
        let means = before.is_some_and(|back| {
            items[at - back..at].iter().filter(|(item, _)| is_one(item)).count() < 2
        }) || items.get(at + 1).is_some_and(|(item, _)| is_surface(item))
            && !items.get(at + 2).is_some_and(|(item, _)| is_one(item));
        if means || waits {
            items[at].0 = Item::Loose("dia".into());
        }
    }
    let Some(at) = items.iter().position(|(item, _)| !matches!(item, Item::Loose(_))) else {
        return;
    };
    let is_size = matches!(items[at].0, Item::Size(Kind::Num(_) | Kind::Dims(_)));
    let words: Vec<&str> = tokens.iter().map_while(Token::word).collect();
    let is_noun = |word: &&str| crate::note::lexicon::is_noun(word);
    if !is_size || at == 0 || words.len() != at || reads || waits || line.subject.is_none() {
        return;
    }
    let named = words.last().is_some_and(is_noun)
        && words.iter().all(|word| is_noun(word) || crate::note::lexicon::is_adjective(word))
        && words.len() < 4;
    if !named || other || is_stock_size(told, items, at, line, true) {
        return;
    }
    let side = match items.get(at + 1) {
        Some((item, _)) if is_dia(item) => SizeKind::Shaft,
        // `flange 1-3/8 x 1/8`: across and thick.
        _ if matches!(words.last(), Some(&("flange" | "flanges" | "head" | "hd" | "barrel"))) => {
            SizeKind::Shaft
        }
        // `tail 5/16 x 7/8 long` of a spindle: the word behind is the last one's.
        Some((Item::Feature { side: SizeKind::Length, .. }, _))
            if matches!(items[at].0, Item::Size(Kind::Dims(_))) =>
        {
            let is_round = line.subject.is_some_and(|part| told.inwardness(part) > 1);
            if is_round { SizeKind::Shaft } else { SizeKind::Other }
        }
        Some((Item::Feature { side, .. }, _)) => *side,
        _ if matches!(words.last(), Some(&("window" | "opening"))) => SizeKind::Hole,
        _ => SizeKind::Other,
    };
    let name = words.join(" ");
    let place = tokens[0].at.start..tokens[at - 1].at.end;
    items.splice(..at, [(Item::Feature { name, side, part: None, mate: None }, place)]);
    if matches!(items.get(2), Some((item, _)) if is_dia(item)) {
        items.remove(2);
    }
}

/// `3 tenths over`: a reading by what it is off from the one size wanted.
pub(super) fn read_off(
    told: &mut Told,
    items: &[Placed],
    at: usize,
    num: &Num,
    feature: usize,
    line: &mut Line,
) -> bool {
    let nominal = told.job.features[feature].size();
    let (Some(nominal), Some(off)) = (nominal, num.length(Unit::Inch)) else { return false };
    let size =
        if is_side(items, at, OVER) { nominal.checked_add(off) } else { nominal.checked_sub(off) };
    let Ok(size) = size else { return false };
    told.put_reading(line, feature, size, num.at.clone());
    true
}

/// `1/4 plate`, `3/4 crs`: what a part is made from, no size of it.
pub(super) fn is_stock_size(
    told: &Told,
    items: &[Placed],
    at: usize,
    line: &Line,
    owned: bool,
) -> bool {
    // `from 1-1/4 bar`, `from my 1-1/4 bar`
    let is = |back: usize, words: &[&str]| {
        let item = at.checked_sub(back).map(|before| &items[before].0);
        matches!(item, Some(Item::Loose(word)) if words.contains(&word.as_str()))
    };
    let own = usize::from(is(1, &["my", "the", "a", "old", "some"]));
    if !owned && is(1 + own, &["from"]) {
        return true;
    }
    let mut behind = items[at + 1..].iter().map_while(|(item, _)| match item {
        Item::Loose(word) => Some(word),
        _ => None,
    });
    let Some(mut word) = behind.next() else { return false };
    // `3/8 black plate`: its finish stands between.
    if is_finish(word)
        && let Some(form) = behind.clone().find(|word| !is_finish(word))
        && is_stock(form)
    {
        word = form;
    }
    // `25 square tube`
    let section = matches!(word.as_str(), "square" | "hex");
    if section && behind.next().is_some_and(|word| is_stock(word)) {
        return true;
    }
    if !owned && comes_so(told, items, at, line) {
        return line.turned && line.declares && form_behind(items, at) == Some(Form::Rod);
    }
    // `7/8 x 1-1/8 x 1 sintered`: a bush is listed by three.
    let three = matches!(&items[at].0, Item::Size(Kind::Dims(all)) if all.len() == 3);
    if three && line.subject.is_some_and(|part| told.names.is_listed(part)) {
        return false;
    }
    if matches!(items[at].0, Item::Size(Kind::Dims(_)))
        && matches!(word.as_str(), "flat" | "plate" | "bar" | "sheet" | "angle")
    {
        return true;
    }
    if !(is_stock(word) || is_material(word) && !owned)
        || owned && !matches!(word.as_str(), "flat" | "plate" | "bar" | "crs" | "stock" | "sheet")
    {
        return false;
    }
    // Ground stock is used as it comes.
    if matches!(word.as_str(), "ground" | "pgb") {
        return false;
    }
    // A pin is used as the rod comes, and so is a bar that is said to fit.
    let comes = |part: usize| {
        let is_rod = matches!(word.as_str(), "drill" | "silver");
        told.names.parts[part]
            .iter()
            .any(|word| matches!(word.as_str(), "pin" | "dowel" | "axle" | "peg"))
            || told.inwardness(part) >= 2 && (is_rod || line.fit_ahead) && !line.turned
    };
    !line.subject.is_some_and(comes)
}

/// `1.5 to 2 thou` beside a fit: how loose or tight, no size.
pub(super) fn is_amount(told: &Told, kind: &Kind, line: &Line, has_fit: bool, owned: bool) -> bool {
    let (low, high) = match kind {
        Kind::Num(num) => (num, num),
        Kind::Range(low, high) => (low, high),
        _ => return false,
    };
    let thou = matches!(high.unit, Some(Unit::Thou | Unit::Tenth | Unit::Micrometre));
    let length_said =
        line.feature.is_some_and(|feature| told.job.features[feature].side == SizeKind::Length);
    if owned && !(thou && !length_said && has_fit) {
        return false;
    }
    let small =
        |num: &Num| told.units.length(num, line.unit).is_some_and(|size| size.millimetres() < 1.3);
    thou && (line.feature.is_some() || has_fit) && !length_said
        || has_fit
            && small(low)
            && small(high)
            && (line.feature.is_some() || !line.declares && high.places > 0)
}

pub(super) fn amount(units: &Units, kind: &Kind, fit: &mut FitSaid, twice: bool, line: &Line) {
    let (low, high) = match kind {
        Kind::Num(num) => (num.clone(), num.clone()),
        Kind::Range(low, high) => (low.clone(), high.clone()),
        _ => return,
    };
    let times = if twice { 2 } else { 1 };
    let size = |num: &Num| units.length(num, line.unit)?.checked_mul(times).ok();
    let (Some(low), Some(high)) = (size(&low), size(&high)) else { return };
    fit.clearance = fits_core::Limits::new(low.min(high), low.max(high)).ok();
}

const OVER: &[&str] = &["over", "up", "big", "oversize", "large", "proud"];
const UNDER: &[&str] = &["under", "down", "small", "undersize", "shy"];

/// Does a word of such a list stand behind an item?
fn is_side(items: &[Placed], at: usize, words: &[&str]) -> bool {
    matches!(items.get(at + 1), Some((Item::Loose(word), _)) if words.contains(&word.as_str()))
}

/// Is it said by how much a size is off, not what it is?
pub(super) fn is_off(items: &[Placed], at: usize, num: &Num) -> bool {
    matches!(num.unit, Some(Unit::Thou | Unit::Tenth | Unit::Micrometre))
        && (is_side(items, at, OVER) || is_side(items, at, UNDER))
}

/// The one size of a clause that has words of no weight beside it.
pub(super) fn lone_size(tokens: &[Token]) -> Option<&Num> {
    let mut found = tokens.iter().filter_map(|token| match &token.kind {
        Kind::Num(num) => Some(num),
        _ => None,
    });
    let plain = |token: &Token| match &token.kind {
        Kind::Num(_) => true,
        Kind::Word(word) => {
            crate::note::lexicon::is_adjective(word)
                || matches!(word.as_str(), "one" | "another" | "and" | "side" | "end")
        }
        _ => false,
    };
    found.next().filter(|_| found.next().is_none() && tokens.iter().all(plain))
}

/// Is a part as large outside as what it is made from: tube, silver steel, drill rod?
pub(super) fn comes_so(told: &Told, items: &[Placed], at: usize, line: &Line) -> bool {
    let is_rod = |part| (0..2).contains(&told.inwardness(part));
    matches!(items[at].0, Item::Size(Kind::Num(_)))
        && match form_behind(items, at) {
            Some(Form::Tube) => true,
            Some(Form::Rod) => line.subject.is_some_and(is_rod),
            None => false,
        }
}

pub(super) fn positions(items: &[Placed], is: impl Fn(&Item) -> bool) -> Vec<usize> {
    items.iter().enumerate().filter(|(_, (item, _))| is(item)).map(|(at, _)| at).collect()
}
