//! A phrase that no question takes, beside the phrases that are known: what those
//! most like it mean is offered, never answered.

mod known;
#[cfg(test)]
mod made;
mod slot;

use self::{
    known::{Bank, Known},
    slot::{MAY_BE_WORDS, Parted, Slot, needs, parted},
};
use super::{
    Setting,
    line::{Line, TURNS},
    offered::OWN_WORDS,
    ready,
    settle::in_units,
};

/// What is less like than this is not offered.
const LEAST: f64 = 0.2;

/// The same of a sum.
const LEAST_OF_A_SUM: f64 = 0.5;

/// Known phrases whose sizes are compared as well.
const MOST: usize = 60;

/// How much it counts that the sizes stand beside the same words.
const FITS: f64 = 0.15;

/// What the phrases most like this one mean, with its own figures, and how like they are.
pub(crate) fn alike(text: &str, setting: Setting) -> Option<Vec<Alike>> {
    let words = text.split_whitespace().count();
    let first = text.split_whitespace().next().unwrap_or_default();
    if text.len() > super::LONGEST || !(4..=40).contains(&words) || OWN_WORDS.contains(&first) {
        return None;
    }
    let text = &super::prepared(&super::plain_marks(text), setting)?.text;
    let turns = |word: &str| TURNS.contains(&&*word.to_lowercase());
    if text.split([' ', ',', '?', '.']).any(turns) {
        return None;
    }
    let line = Line::new(text);
    let (view, unknown) = line.gist();
    let view = ready(view)?;
    let all = std::cell::RefCell::new(Vec::new());
    // Under each unit that bare numbers may have.
    in_units(&view, setting, |view, system| {
        let phrase = parted(&line, view, &unknown, system);
        all.borrow_mut().extend(most_alike(&phrase));
        None
    });
    let mut all = all.into_inner();
    all.sort_by(|a: &Alike, b| b.likeness.total_cmp(&a.likeness));
    Some(all)
}

/// What a phrase like one that is known may mean.
#[derive(Debug)]
pub(crate) struct Alike {
    pub(crate) plain: String,
    /// One is the same.
    pub(crate) likeness: f64,
}

/// The plain queries of the phrases most like it, the most alike first.
fn most_alike(phrase: &Parted) -> Vec<Alike> {
    let bank = Bank::get();
    let length = bank.length(phrase.words.iter().map(String::as_str));
    let likeness = |known: &Known| {
        let shared = phrase.words.iter().filter(|word| known.words.contains(&word.as_str()));
        let shared: f64 = shared.map(|word| bank.weight(word).powi(2)).sum();
        shared / length / known.length
    };
    let needs = needs(phrase.slots.iter().map(|slot| slot.kind));
    let mut near: Vec<(f64, &Known)> = bank
        .all
        .iter()
        .filter(|known| may_fill(phrase, &needs, known))
        .map(|known| (likeness(known), known))
        .filter(|(like, _)| *like >= LEAST)
        .collect();
    near.sort_by(|a, b| b.0.total_cmp(&a.0));
    near.truncate(MOST);
    // A sum can be made of any figures: it is offered only where much is alike.
    let is_sum =
        |plain: &str| plain.starts_with(['(', '{']) && plain.contains([')', '*', '+', '-']);
    let filled = near.into_iter().filter_map(|(like, known)| {
        let (fits, order) = best_order(bank, phrase, known)?;
        let likeness = like + FITS * fits;
        let least = if is_sum(known.plain) { LEAST_OF_A_SUM } else { LEAST };
        let plain = (likeness >= least).then(|| fill(phrase, known, &order))??;
        Some(Alike { plain, likeness })
    });
    let mut filled: Vec<Alike> = filled.collect();
    filled.sort_by(|a, b| b.likeness.total_cmp(&a.likeness));
    let mut all: Vec<Alike> = Vec::new();
    for one in filled {
        if !all.iter().any(|other| other.plain == one.plain) {
            all.push(one);
        }
    }
    all.truncate(8);
    all
}

/// Slots of a kind, by their places.
fn of_kind<'a>(slots: &'a [Slot], kind: &'a str) -> impl Iterator<Item = usize> + Clone + 'a {
    (0..slots.len()).filter(move |at| slots[*at].kind == kind)
}

/// Has the phrase just what the query takes? What may be a word is said by both alike
/// where the query does not take it.
fn may_fill(phrase: &Parted, needs: &[&str], known: &Known) -> bool {
    known.needs == needs
        && MAY_BE_WORDS.iter().all(|kind| {
            let slots = known.slots.iter().zip(&known.is_used);
            let used = slots.filter(|(slot, is_used)| slot.kind == *kind && **is_used).count();
            let mut own = of_kind(&phrase.slots, kind).map(|at| &phrase.slots[at]);
            own.clone().count() == used
                || used == 0 && own.all(|slot| known.words.contains(&slot.as_word().as_str()))
        })
}

/// How two lengths stand to each other.
fn ratio(a: Option<f64>, b: Option<f64>) -> i8 {
    let (Some(a), Some(b)) = (a, b) else { return 0 };
    let by = a / b;
    match by {
        _ if (by - 1.0).abs() < 0.06 => 0,
        _ if by > 12.0 => 2,
        _ if by > 1.0 => 1,
        _ if by < 1.0 / 12.0 => -2,
        _ => -1,
    }
}

/// Which size of the phrase stands for which of the one that is known, and how well.
fn best_order(bank: &Bank, phrase: &Parted, known: &Known) -> Option<(f64, Vec<usize>)> {
    let own: Vec<usize> = of_kind(&phrase.slots, "size").collect();
    let theirs: Vec<usize> =
        (0..known.slots.len()).filter(|at| known.slots[*at].kind == "size").collect();
    if own.len() != theirs.len() || own.len() > 5 {
        return None;
    }
    let mut best: Option<(f64, Vec<usize>)> = None;
    for order in orders(own.len()) {
        let order: Vec<usize> = order.into_iter().map(|place| own[place]).collect();
        let Some(fits) = fits(bank, phrase, known, &theirs, &order) else { continue };
        if best.as_ref().is_none_or(|(most, _)| fits > *most) {
            best = Some((fits, order));
        }
    }
    best
}

fn fits(
    bank: &Bank,
    phrase: &Parted,
    known: &Known,
    theirs: &[usize],
    order: &[usize],
) -> Option<f64> {
    if theirs.is_empty() {
        return Some(1.0);
    }
    let mut sum = 0.0;
    for (place, (at, own)) in theirs.iter().zip(order).enumerate() {
        let (slot, own) = (&known.slots[*at], &phrase.slots[*own]);
        for side in 0..2 {
            if slot.beside[side] == own.beside[side] && !slot.beside[side].is_empty() {
                sum += if slot.beside[side] == "#" {
                    0.2
                } else {
                    bank.weight(slot.beside[side]) / 8.0
                };
            }
        }
        if place > 0 && order[place - 1] < order[place] {
            sum += 0.3;
        }
        for (other, other_own) in theirs.iter().zip(order).take(place) {
            let wanted = ratio(known.slots[*other].mm, slot.mm);
            let found = ratio(phrase.slots[*other_own].mm, own.mm);
            if (wanted == 0) != (found == 0) {
                return None;
            }
            sum -= 0.5 * f64::from((wanted - found).unsigned_abs());
        }
    }
    #[allow(clippy::cast_precision_loss, reason = "five at most")]
    let sizes = theirs.len() as f64;
    Some(sum / sizes)
}

/// Every order of so many places.
fn orders(count: usize) -> Vec<Vec<usize>> {
    if count == 0 {
        return vec![Vec::new()];
    }
    let mut all = Vec::new();
    for rest in orders(count - 1) {
        for at in 0..count {
            let mut order = rest.clone();
            order.insert(at, count - 1);
            all.push(order);
        }
    }
    all
}

/// The query with the phrase's own figures: the first of a kind for the first of it.
fn fill(phrase: &Parted, known: &Known, sizes: &[usize]) -> Option<String> {
    let mut plain = known.plain.to_owned();
    let mut sizes = sizes.iter().copied();
    for (at, slot) in known.slots.iter().enumerate() {
        let own = if slot.kind == "size" {
            sizes.next()
        } else {
            let before = known.slots[..at].iter().filter(|other| other.kind == slot.kind).count();
            of_kind(&phrase.slots, slot.kind).nth(before)
        };
        if known.is_used[at] {
            plain = plain.replace(&format!("{{{at}}}"), &phrase.slots[own?].plain);
        }
    }
    Some(plain)
}
