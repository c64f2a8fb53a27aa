//! Which number is whose: roles and nouns take the nearest one.

use crate::sentence::{
    token::{Num, System, Token},
    view::View,
};

/// A number that a word has taken.
#[derive(Clone, Debug)]
pub(crate) struct Taken {
    /// The word's kind, or a role's name.
    pub(crate) by: &'static str,
    pub(crate) num: Num,
    /// The place of the number and of the word.
    pub(crate) at: usize,
    pub(crate) word: usize,
    /// A reading verb stands between or before it.
    pub(crate) is_measured: bool,
}

/// Every number, by the word that took it.
#[derive(Clone, Debug, Default)]
pub(crate) struct Roles {
    pub(crate) taken: Vec<Taken>,
    /// Numbers that no word took, with the place of each.
    pub(crate) free: Vec<(usize, Num, bool)>,
}

impl Roles {
    pub(crate) fn get(&self, by: &str) -> Option<&Taken> {
        self.taken.iter().find(|taken| taken.by == by)
    }

    pub(crate) fn num(&self, by: &str) -> Option<&Num> {
        self.get(by).map(|taken| &taken.num)
    }

    pub(crate) fn count(&self, by: &str) -> usize {
        self.taken.iter().filter(|taken| taken.by == by).count()
    }
}

struct Holder {
    by: &'static str,
    at: usize,
    must: bool,
    left: Option<(usize, usize)>,
    right: Option<(usize, usize)>,
    verb_right: bool,
}

/// What is said after a diameter.
pub(super) const DIAMETER: &[&str] = &["dia", "diam", "diameter", "round", "od"];

/// May a number be reached through this?
fn passes(token: &Token, by: &str) -> bool {
    match token {
        Token::Word { kind: "count" | "doubled", .. }
        | Token::Times(_)
        | Token::Deviations { .. } => matches!(by, "gap" | "part"),
        Token::Word { kind: "connector", name } => by == "start" && *name == "at",
        // `the pin, its .3748`
        Token::Word { kind: "start", name: "now" } => matches!(by, "hole" | "shaft" | "hub"),
        Token::Word { kind, .. } => matches!(
            *kind,
            "small"
                | "material"
                | "reads"
                | "state"
                | "asking"
                | "fit"
                | "should"
                | "head"
                | "place"
        ),
        Token::Hole(_) | Token::Shaft(_) | Token::Pair(_) | Token::Percent(_) => true,
        _ => false,
    }
}

/// The words that may hold a number, and the numbers within their reach.
fn holders(view: &View, kinds: &[&str], skip: &[usize], system: System) -> Vec<Holder> {
    let is_number = |at: usize| {
        matches!(view.items.get(at).map(|item| &item.token), Some(Token::Number(_)))
            && !skip.contains(&at)
    };
    let size = |at: usize| match view.items.get(at).map(|item| &item.token) {
        Some(Token::Number(num)) => num.mm(system),
        _ => 0.0,
    };
    let largest = (0..view.items.len()).map(size).fold(0.0, f64::max);
    let mut holders = Vec::new();
    for (at, item) in view.items.iter().enumerate() {
        let Token::Word { name, kind } = item.token else { continue };
        if !kinds.contains(&kind) {
            continue;
        }
        let by = match kind {
            "role" => name,
            "hub" if name == "ring" => "ring",
            other => other,
        };
        let reach = |step: isize| {
            let mut place = at.checked_add_signed(step)?;
            let mut cost = 1;
            loop {
                let token = &view.items.get(place)?.token;
                if is_number(place) {
                    return Some((place, cost));
                }
                if !passes(token, by) {
                    return None;
                }
                place = place.checked_add_signed(step)?;
                cost += 1;
            }
        };
        let said = view.said(at);
        let is_diameter = |at: usize| DIAMETER.contains(&&*view.said(at + 1));
        // `50 H7/s6 length 60`: a size before its class is no length, and no wall.
        let is_classed = |place: usize| {
            place < at
                && view.items[place..at].iter().any(|item| {
                    matches!(item.token, Token::Pair(_) | Token::Hole(_) | Token::Shaft(_))
                })
        };
        // `pin 3/4 lg 3/8 dia`: a diameter is no length, nor the length a pin.
        let is_others = |place: usize| match by {
            "long" => is_diameter(place) || is_classed(place),
            "od" | "id" | "wall" => is_classed(place),
            "hole" | "shaft" | "hub" => {
                place > at
                    && matches!(
                        view.items.get(place + 1).map(|item| &item.token),
                        Some(Token::Word { kind: "role", name: "long" })
                    )
                    && is_number(place + 2)
                    && is_diameter(place + 2)
            }
            _ => false,
        };
        // A fortieth of the largest is not a diameter and no length.
        let fits = |found: &(usize, usize)| {
            !is_others(found.0)
                && ((by == "tightness" && size(found.0) < largest / 25.0)
                    || matches!(
                        by,
                        "part"
                            | "gap"
                            | "wall"
                            | "start"
                            | "reads"
                            | "division"
                            | "chuck"
                            | "tailend"
                            | "apart"
                            | "centres"
                    )
                    || size(found.0) > largest / 40.0)
        };
        let right = reach(1)
            .filter(|_| !(by == "apart" && ["apart", "between them", "apart on"].contains(&&*said)))
            .filter(fits);
        let left = reach(-1)
            .filter(|_| !(by == "start" && name == "from"))
            .filter(|_| !(by == "apart" && ["over", "spacing", "distance"].contains(&&*said)))
            .filter(fits);
        let verb_right = right.is_some_and(|(place, _)| {
            view.items[at..place]
                .iter()
                .any(|item| matches!(item.token, Token::Word { kind: "reads", .. }))
        });
        // A noun that stands twice is one part: a second may go without.
        let must = kind == "role"
            && (matches!(name, "od" | "id" | "long" | "wall")
                || (name == "apart" && (left.is_some() || right.is_some())));
        holders.push(Holder { by, at, must, left, right, verb_right });
    }
    holders
}

/// Assigns the numbers to `kinds` of words. None where two ways are alike and
/// differ, or a role that must have a number finds none.
pub(crate) fn assign(view: &View, kinds: &[&str], skip: &[usize], system: System) -> Option<Roles> {
    let holders = holders(view, kinds, skip, system);
    let mut best: Option<(i64, Vec<Option<usize>>)> = None;
    let mut tie = false;
    let mut chosen = vec![None; holders.len()];
    search(&holders, 0, &mut chosen, &mut best, &mut tie, 0);
    let (_, chosen) = best?;
    if tie {
        return None;
    }
    let mut roles = Roles::default();
    let mut used = vec![false; view.items.len()];
    for (holder, place) in holders.iter().zip(&chosen) {
        let Some(place) = *place else { continue };
        let Token::Number(num) = &view.items.get(place)?.token else { continue };
        used[place] = true;
        roles.taken.push(Taken {
            by: holder.by,
            num: num.clone(),
            at: place,
            word: holder.at,
            is_measured: measured(view, place),
        });
    }
    for (at, num) in view.numbers() {
        if !used.get(at).copied().unwrap_or(true) && !skip.contains(&at) {
            roles.free.push((at, num.clone(), measured(view, at)));
        }
    }
    Some(roles)
}

/// Does a reading verb lead to this number?
fn measured(view: &View, place: usize) -> bool {
    view.items[..place]
        .iter()
        .rev()
        .take_while(|item| {
            matches!(
                item.token,
                Token::Word { kind: "small" | "reads" | "start" | "connector", .. }
            )
        })
        .any(|item| matches!(item.token, Token::Word { kind: "reads", .. }))
}

fn search(
    holders: &[Holder],
    at: usize,
    chosen: &mut Vec<Option<usize>>,
    best: &mut Option<(i64, Vec<Option<usize>>)>,
    tie: &mut bool,
    score: i64,
) {
    let Some(holder) = holders.get(at) else {
        let score = score - direction(holders, chosen);
        match best {
            Some((most, known)) if *most == score => {
                // The same numbers for the same kinds of words are not a tie.
                if mapping(holders, known) != mapping(holders, chosen) {
                    *tie = true;
                }
            }
            Some((most, _)) if *most > score => {}
            _ => {
                *best = Some((score, chosen.clone()));
                *tie = false;
            }
        }
        return;
    };
    if at > 9 {
        return;
    }
    for (side, option) in [(0, holder.right), (1, holder.left)] {
        let Some((place, cost)) = option else { continue };
        if chosen[..at].contains(&Some(place)) {
            continue;
        }
        chosen[at] = Some(place);
        let verb = if holder.verb_right && side == 0 { 40 } else { 0 };
        let cost = i64::try_from(cost).unwrap_or(99);
        // `25 long` and `1 OD` are commoner than `long 25`.
        let adjective = if holder.by == "hole" {
            2
        } else if side == 1 && holder.must {
            3
        } else {
            0
        };
        search(holders, at + 1, chosen, best, tie, score + 1000 + verb + adjective - 4 * cost);
        chosen[at] = None;
    }
    if !holder.must {
        chosen[at] = None;
        search(holders, at + 1, chosen, best, tie, score);
    }
}

fn mapping(holders: &[Holder], chosen: &[Option<usize>]) -> Vec<(&'static str, usize)> {
    let mut pairs: Vec<_> = holders
        .iter()
        .zip(chosen)
        .filter_map(|(holder, place)| place.map(|place| (holder.by, place)))
        .collect();
    pairs.sort_unstable();
    pairs
}

/// Roles one way, all before or all after their numbers, cost nothing.
fn direction(holders: &[Holder], chosen: &[Option<usize>]) -> i64 {
    let sides = |side: fn(&Holder, usize) -> bool| {
        holders
            .iter()
            .zip(chosen)
            .filter(|(holder, place)| {
                matches!(holder.by, "od" | "id" | "long" | "wall" | "tightness")
                    && place.is_some_and(|place| side(holder, place))
            })
            .count()
    };
    let (after, before) =
        (sides(|holder, place| place > holder.at), sides(|holder, place| place < holder.at));
    i64::try_from(after.min(before) * 30).unwrap_or(0)
}
