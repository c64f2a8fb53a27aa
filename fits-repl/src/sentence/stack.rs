//! Parts end to end: the play left, or the part to make.

use std::fmt::Write as _;

use crate::sentence::{
    Said,
    links::{few, named_links, plain_links},
    token::{Num, System, Token},
    view::{Item, View},
};

/// Parts that are said as several.
pub(super) const SEVERAL: &[&str] =
    &["washers", "thrust washers", "shims", "spacers", "collars", "flanges"];

pub(crate) struct Link {
    pub(super) name: &'static str,
    pub(super) num: Num,
    pub(super) deviations: Option<String>,
    pub(super) times: u32,
    pub(super) is_gap: bool,
    pub(super) is_plus: bool,
    /// Several, and how many is not said: `washers .062`.
    pub(super) is_several: bool,
}

/// `1.250 .500 .062 in 1.830, play`: the last and largest is the gap that they are in.
fn in_the_last(view: &View, system: System) -> Option<View> {
    let numbers: Vec<(usize, &Num)> = view.numbers().collect();
    let ((at, gap), parts) = numbers.split_last()?;
    let lead = view.lead(*at, &["small"])?;
    let is_in = ["in", "inside", "into", "within"].contains(&&*view.said(lead));
    let is_largest = parts.len() > 1
        && parts.iter().all(|(_, num)| num.mm(system) < gap.mm(system))
        && !view.has("gap")
        && !view.tokens().any(|token| matches!(token, Token::Minus));
    if !(is_in && is_largest) {
        return None;
    }
    let mut items = view.items.clone();
    let named = |kind: &'static str, at: usize| {
        let start = view.items[at].at.start;
        Item { token: Token::Word { name: kind, kind }, at: start..start }
    };
    items.insert(*at, named("gap", *at));
    // What is told in turn are parts: a sign between two of them says no more.
    for item in &mut items {
        if item.token == Token::Plus {
            item.token = Token::Break;
        }
    }
    let has_parts = view.has("part");
    if !has_parts {
        for (at, _) in parts.iter().rev() {
            items.insert(*at, named("part", *at));
        }
    }
    Some(View { items, text: view.text.clone() })
}

/// `case 80.00 crank 79.40 washer 0.25, end float`: a first and largest size of what is no
/// part is the gap that the parts are in.
fn in_the_first(view: &View, system: System) -> Option<View> {
    let mut numbers = view.numbers();
    let (at, gap) = numbers.next()?;
    let is_named = |at: usize| matches!(view.kind_at(at), Some("part" | "gap"));
    let is_largest = numbers.all(|(_, num)| num.mm(system) < gap.mm(system));
    let parts = (0..view.items.len()).filter(|at| is_named(*at)).count();
    let is_free = (0..at).all(|at| !is_named(at)) && !is_named(at + 1) && !view.has("gap");
    let has_signs = view.tokens().any(|token| matches!(token, Token::Minus | Token::Plus));
    if !is_largest || !is_free || has_signs || parts + 1 != view.numbers().count() {
        return None;
    }
    let mut items = view.items.clone();
    let start = view.items[at].at.start;
    items.insert(at, Item { token: Token::Word { name: "gap", kind: "gap" }, at: start..start });
    Some(View { items, text: view.text.clone() })
}

/// Parts end to end, the play left, or the part to make.
#[allow(clippy::too_many_lines, reason = "one rule after another, each short")]
pub(crate) fn stack(view: &View, system: System) -> Option<Said> {
    let view = &with_counts(view)?;
    view.only(
        &[
            "head", "gap", "part", "less", "doubled", "count", "hub", "shaft", "bushing", "role",
            "want",
        ],
        |token| {
            matches!(
                token,
                Token::Number(_)
                    | Token::Deviations { .. }
                    | Token::Times(_)
                    | Token::Plus
                    | Token::Minus
                    | Token::Span(..)
            )
        },
    )?;
    if view.has("role") {
        return None;
    }
    if view.types(&["shim", "shims", "washer", "spacer"]) && view.numbers().count() == 2 {
        return shim(view, system);
    }
    if let Some(view) = each_of_several(view) {
        return stack(&view, system);
    }
    let largest = view.numbers().map(|(_, num)| num.mm(system)).fold(0.0, f64::max);
    let is_part = |num: &Num| num.mm(system).abs() > 0.1 * largest;
    if view.tokens().any(|token| matches!(token, Token::Deviations { upper, lower, is_both: false } if is_part(upper) || is_part(lower))) {
        return stack(&parted(view), system);
    }
    // `spindle 4.000, less hub 3.750`: where each is added or taken off, whose it is
    // says nothing more.
    let mut named = View { items: view.items.clone(), text: view.text.clone() };
    let takes_off = view.has("less");
    for item in &mut named.items {
        item.token = match item.token {
            Token::Word { kind: "hub" | "shaft" | "bushing", .. } if takes_off => {
                Token::Word { name: "-", kind: "small" }
            }
            // `frame 2.500, roller 2.375`: what stands about the others is the gap.
            Token::Word { kind: "hub", name: "hub" } => Token::Word { name: "gap", kind: "gap" },
            Token::Word { kind: "hub" | "shaft" | "bushing", .. } => {
                Token::Word { name: "part", kind: "part" }
            }
            _ => continue,
        };
    }
    let view = &named;
    if view.words("head").any(|head| !matches!(head, "stack" | "play" | "want" | "length")) {
        return None;
    }
    if let Some(view) = in_the_last(view, system) {
        return stack(&view, system);
    }
    if let Some(view) = in_the_first(view, system).filter(|_| view.says("head", "stack")) {
        return stack(&view, system);
    }
    if let Some(sum) = sum(view, system) {
        return Some(sum);
    }
    let named = view.has("gap") || view.has("part");
    let has_signs =
        view.has("less") || view.tokens().any(|token| matches!(token, Token::Minus | Token::Plus));
    // `gap 80, roller 78, washers 2 x 1`: what is left is asked.
    let in_gap = view.types(&["gap", "opening", "space", "between shoulders"]);
    let asks = view.says("head", "stack") || view.says("head", "play");
    let asks = asks || in_gap && view.has("part");
    let subtracts = has_signs && named;
    if !asks && !subtracts {
        return None;
    }
    let (wanted, skip) = wanted(view, system)?;
    let names = view
        .tokens()
        .filter(|token| matches!(token, Token::Word { kind: "gap" | "part", .. }))
        .count();
    let found = if named { named_links(view, system, &skip) } else { None };
    let (mut links, to_make) = match found {
        Some(found) => found,
        None if names <= 1 && has_signs => (plain_links(view, system, &skip)?, None),
        // `gap 3.000, parts 1.500, 1.250`: all but the gap are in it.
        None if names == 1 && view.has("gap") && !view.has("count") && !view.has("doubled") => {
            (plain_links(view, system, &skip)?, None)
        }
        None => return None,
    };
    let needed = if to_make.is_some() { 1 } else { 2 };
    if links.len() < needed || to_make.is_some() != wanted.is_some() {
        return None;
    }
    let says_plus = view.tokens().any(|token| matches!(token, Token::Plus));
    // `12 plus 6.5 in a 22 slot`: the signs join the parts.
    let is_in_gap = says_plus && names == 1 && view.has("gap") && !view.has("less");
    let all_plus = says_plus && !is_in_gap && links.iter().all(|link| link.is_plus);
    let longest = links
        .iter()
        .enumerate()
        .max_by(|a, b| a.1.num.mm(system).total_cmp(&b.1.num.mm(system)))
        .map(|(at, _)| at)?;
    let gaps = links.iter().filter(|link| link.is_gap).count();
    let gap = match (gaps, links.iter().position(|link| link.is_gap)) {
        (1, Some(gap)) => gap,
        // Two words that can be a gap: the longest is.
        (2.., _) if links.get(longest)?.is_gap => longest,
        // `12, 6.5 and 3.2 in a 22 slot`
        (0, _) if names == 1 && (!has_signs || is_in_gap) => longest,
        (0, _) if !named || names <= 1 => 0,
        _ => return None,
    };
    if gap != longest && !all_plus {
        return None;
    }
    for (at, link) in links.iter_mut().enumerate().filter(|(_, link)| link.is_gap) {
        if at == gap {
            // `two cheeks 2.000 apart`: one gap between the two.
            link.times = 1;
        } else {
            // `140.5 between shoulders, roller 120, two side plates 10 each`
            link.name = "part";
        }
    }
    let total: f64 = links
        .iter()
        .enumerate()
        .filter(|(at, _)| *at != gap)
        .map(|(_, link)| link.num.mm(system) * f64::from(link.times))
        .sum();
    let room = links.get(gap)?.num.mm(system);
    if to_make.is_none() && !all_plus && (total > room * 1.02 || total < 0.5 * room)
        || total >= room && to_make.is_some()
    {
        return None;
    }
    let first = links.remove(gap);
    links.insert(0, first);
    // `washers .062`: one, or one at each side?
    if links.iter().any(|link| link.is_several)
        && !view.types(&["total", "in total", "in all", "altogether", "together"])
    {
        let one = composed(&links, wanted.as_ref(), all_plus, system);
        links.iter_mut().filter(|link| link.is_several).for_each(|link| link.times = 2);
        let more: f64 =
            links[1..].iter().map(|link| link.num.mm(system) * f64::from(link.times)).sum();
        if more <= room * 1.02 {
            let two = composed(&links, wanted.as_ref(), all_plus, system);
            return Some(Said::ask("how many of them are in it is not said", vec![one, two]));
        }
        return Some(Said::plain(one));
    }
    Some(Said::plain(composed(&links, wanted.as_ref(), all_plus, system)))
}

/// `washers 2 x 1`: two whole figures with a cross are a count and a size here.
fn with_counts(view: &View) -> Option<View> {
    let mut items = view.items.clone();
    while let Some(at) = items.iter().position(|item| item.token == Token::Cross) {
        let before = at.checked_sub(1)?;
        let (Token::Number(count), Some(Token::Number(_))) =
            (&items[before].token, items.get(at + 1).map(|item| &item.token))
        else {
            return None;
        };
        let count = few(count)?;
        items[before].token = Token::Times(count);
        items.remove(at);
    }
    Some(View { items, text: view.text.clone() })
}

/// `stack up 3 spacers .250 ±.001 and a washer .062 ±.002, total`: all of them together.
fn sum(view: &View, system: System) -> Option<Said> {
    const TOTAL: [&str; 8] =
        ["total", "in total", "in all", "altogether", "all told", "all up", "sum", "total up"];
    let is_play = view.types(&["play", "float", "slop", "clearance", "end play", "end float"]);
    let is_other = view.has("gap") || view.has("less") || view.has("want") || is_play;
    let is_minus = view.tokens().any(|token| matches!(token, Token::Minus));
    if !view.types(&TOTAL) || is_other || is_minus {
        return None;
    }
    let (links, None) = named_links(view, system, &[])? else { return None };
    (links.len() > 1).then(|| Said::plain(composed(&links, None, true, system)))
}

/// `washers .062 and .093`, `washers 0.25 0.25`: each figure is a part of its own.
fn each_of_several(view: &View) -> Option<View> {
    let names = |at: usize| matches!(view.kind_at(at), Some("part" | "gap"));
    let first = (0..view.items.len()).find(|at| {
        matches!(view.kind_at(*at), Some("part"))
            && SEVERAL.contains(&&*view.said(*at))
            && view.is_number(at + 1)
    })?;
    let mut figures = vec![first + 1];
    let mut at = first + 2;
    loop {
        let is_joined = matches!(&*view.said(at), "and" | "&" | ",");
        let next = if is_joined { at + 1 } else { at };
        // `washers .062 and 1.500 hub`: the second has a name of its own.
        if !view.is_number(next) || names(next + 1) {
            break;
        }
        figures.push(next);
        at = next + 1;
    }
    if figures.len() < 2 {
        return None;
    }
    let mut items = view.items.clone();
    for at in figures.iter().rev() {
        let start = view.items[*at].at.start;
        let part = Token::Word { name: "part", kind: "part" };
        items.insert(*at, Item { token: part, at: start..start });
    }
    items.remove(first);
    Some(View { items, text: view.text.clone() })
}

/// `end play .012, want .004, shim`: what takes up the rest.
fn shim(view: &View, system: System) -> Option<Said> {
    let is_read =
        |token: &Token| matches!(token, Token::Number(_) | Token::Break | Token::Word { .. });
    let numbers: Vec<&Num> = view.numbers().map(|(_, num)| num).collect();
    let [a, b] = numbers[..] else { return None };
    // `11 thou, I want 4`
    let of_both = a.unit.or(b.unit).filter(|_| a.places == 0 && b.places == 0);
    let [a, b] = [a, b].map(|num| Num { unit: num.unit.or(of_both), ..num.clone() });
    let (large, small) = if a.mm(system) > b.mm(system) { (&a, &b) } else { (&b, &a) };
    let is_small = large.mm(system) < 3.5 && small.mm(system) < large.mm(system);
    if !is_small || !view.tokens().all(is_read) || !view.says("head", "stack") {
        return None;
    }
    Some(Said::plain(format!("{} - {}", large.plain(system), small.plain(system))))
}

/// `12.0 plus 6.5 plus 3.2`: parts, and no tolerance of the first.
fn parted(view: &View) -> View {
    let mut items = Vec::new();
    for item in &view.items {
        let Token::Deviations { upper, lower, is_both: false } = &item.token else {
            items.push(item.clone());
            continue;
        };
        for num in [upper, lower] {
            let sign = if num.is_negative { Token::Minus } else { Token::Plus };
            let parts = [sign, Token::Number(Num { is_negative: false, ..num.clone() })];
            items.extend(parts.map(|token| Item { token, at: item.at.clone() }));
        }
    }
    View { items, text: view.text.clone() }
}

/// The links as a plain query has them, the gap first.
fn composed(links: &[Link], wanted: Option<&(Num, Num)>, all_plus: bool, system: System) -> String {
    let mut text = String::from("stack ");
    for (at, link) in links.iter().enumerate() {
        if at > 0 {
            text.push_str(", ");
        }
        if !link.name.is_empty() {
            text.push_str(link.name);
            text.push(' ');
        }
        if at > 0 {
            text.push(if all_plus { '+' } else { '-' });
        }
        if link.times > 1 {
            let _ = write!(text, "{}x ", link.times);
        }
        text.push_str(&link.num.plain(system));
        if let Some(deviations) = &link.deviations {
            text.push_str(deviations);
        }
    }
    if let Some((from, to)) = wanted {
        let _ = write!(text, ", make -?, play {}..{}", from.plain(system), to.plain(system));
    }
    text
}

/// The play that is wanted and the places of its numbers.
#[allow(clippy::type_complexity, reason = "a range, and what it takes")]
pub(crate) fn wanted(view: &View, system: System) -> Option<(Option<(Num, Num)>, Vec<usize>)> {
    let is_play = |at: usize| {
        matches!(
            view.items.get(at).map(|item| &item.token),
            Some(Token::Word { kind: "head", name: "stack" | "play" })
        )
            // `how much float` asks for it.
            && !view.said(at).starts_with("how")
    };
    let is_want = |at: usize| {
        matches!(
            view.items.get(at).map(|item| &item.token),
            Some(
                Token::Word { kind: "head", name: "want" } | Token::Word { kind: "connector", .. }
            )
        )
    };
    let is_small = |at: usize| matches!(view.kind_at(at), Some("small"));
    let largest = view.numbers().map(|(_, num)| num.mm(system)).fold(0.0, f64::max);
    let beside = |from: usize, to: usize| {
        let mut after = to + 1;
        while is_small(after) {
            after += 1;
        }
        let mut before = from;
        while before > 0 && is_small(before - 1) {
            before -= 1;
        }
        is_play(after)
            || (before > 0
                && (is_play(before - 1) || (is_want(before - 1) && view.says("head", "want"))))
    };
    let numbers: Vec<(usize, &Num)> = view.numbers().collect();
    for pair in numbers.windows(2) {
        let [(a, low), (b, high)] = pair else { continue };
        let joined = *b == a + 2 && matches!(&*view.said(a + 1), "to" | "and" | "-");
        if joined && beside(*a, *b) {
            let unit = low.unit.or(high.unit);
            let (low, high) = (
                Num { unit, ..(*low).clone() },
                Num { unit: high.unit.or(unit), ..(*high).clone() },
            );
            if low.mm(system) >= high.mm(system) || high.mm(system) > largest / 20.0 {
                return None;
            }
            return Some((Some((low, high)), vec![*a, *b]));
        }
    }
    for (at, num) in &numbers {
        if num.mm(system) < largest / 20.0
            && beside(*at, *at)
            && !matches!(view.kind_at(at + 1), Some("part" | "gap"))
            && view.has("head")
        {
            let is_said = view.says("head", "want")
                || view.says("head", "length")
                || (at + 1 < view.items.len() && is_play(at + 1));
            if is_said {
                return Some((Some(((*num).clone(), (*num).clone())), vec![*at]));
            }
        }
    }
    Some((None, Vec::new()))
}
