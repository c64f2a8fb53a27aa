//! What a bar weighs.

use crate::sentence::{
    Said,
    token::{Num, System, Token},
    view::View,
};

/// `what does 12 inches of 1 inch round steel weigh`: a section, a metal and a length.
pub(crate) fn weight(view: &View, system: System) -> Option<Said> {
    view.only(&["head", "section", "material", "role", "foot", "shaft"], |token| {
        matches!(token, Token::Number(_) | Token::Cross)
    })?;
    if !view.has("head") || view.words("material").count() > 1 {
        return None;
    }
    let mut sections = view.words("section");
    let section = sections.next().unwrap_or("round");
    if sections.next().is_some() {
        return None;
    }
    let numbers: Vec<(usize, &Num)> = view.numbers().collect();
    let section = if section == "round" { String::new() } else { format!("{section} ") };
    let is_long = |at: &usize| matches!(view.kind_at(at + 1), Some("role" | "foot"));
    let (at, first, after, second) = match numbers[..] {
        [(at, first), (after, second)] => (at, first, after, second),
        // `a foot of 1 inch steel`, or its length is not said.
        [(at, size)] if !is_long(&at) && !beside_head(view, at) => {
            let is_one = |word: &str| (0..at).any(|at| view.said(at).ends_with(word));
            let longs: &[&str] = if is_one("foot of") {
                &["1ft"]
            } else if is_one("metre of") || is_one("meter of") {
                &["1m"]
            } else if view.has("foot") {
                return None;
            } else {
                &["1ft", "1m"]
            };
            return Some(weighed(view, &format!("{section}{}", size.plain(system)), longs));
        }
        _ => return None,
    };
    let beside = |at: usize, kind: &str| {
        let is = |at: usize| view.kind_at(at) == Some(kind);
        is(at + 1) || at.checked_sub(1).is_some_and(is)
    };
    // The length is the one with `long` beside it, in feet, or before `of`.
    let after_it = [at, after].map(|at| is_long(&at));
    let leads = [at, after].map(|at| {
        let said = view.said(at + 1);
        let in_feet = matches!(view.kind_at(at + 1), Some("foot"));
        beside(at, "role") || in_feet || said == "of" || said == "length of"
    });
    // `600 length of 40 bar`: what stands after its number is its own.
    let leads = if after_it[0] == after_it[1] { leads } else { after_it };
    let crosses = view.count(|token| *token == Token::Cross);
    let is_crossed =
        crosses == 1 && view.items[at..after].iter().any(|item| item.token == Token::Cross);
    if crosses > usize::from(is_crossed) {
        return None;
    }
    let (size, long, place) = match leads {
        [true, false] => (second, first, at),
        [false, true] => (first, second, after),
        // `30 x 300`: a bar is named by its section first.
        [false, false] if is_crossed && first.mm(system) < second.mm(system) => {
            (first, second, after)
        }
        // `50mm brass round, 300mm`: the long one is its length, or so one hopes.
        [false, false] if view.word("foot").is_none() => {
            let of = |size: &Num, long: &Num| {
                let bar = format!("{section}{}", size.plain(system));
                weighed(view, &bar, &[&long.plain(system)]).queries()
            };
            let choices = [of(first, second), of(second, first)].concat();
            return Some(Said::ask("which of the two is its length is not said", choices));
        }
        _ => return None,
    };
    let long = match view.word("foot").filter(|_| beside(place, "foot")) {
        Some("m") => format!("{}m", long.text),
        Some(_) => format!("{}ft", long.text),
        None => long.plain(system),
    };
    Some(weighed(view, &format!("{section}{}", size.plain(system)), &[&long]))
}

/// `500 kg` is a weight.
fn beside_head(view: &View, at: usize) -> bool {
    matches!(view.kind_at(at + 1), Some("head"))
}

/// A bar of the metal that is said, so long; what is not said is asked.
fn weighed(view: &View, bar: &str, longs: &[&str]) -> Said {
    let metals = view.word("material").map_or(vec!["steel", "aluminium"], |metal| vec![metal]);
    let each = metals.iter().flat_map(|metal| {
        longs.iter().map(move |long| format!("weight {bar} {metal} long {long}"))
    });
    let choices: Vec<String> = each.collect();
    match &choices[..] {
        [one] => Said::plain(one),
        _ if metals.len() == 1 => Said::ask("its length is not said", choices),
        _ if longs.len() == 1 => Said::ask("its metal is not said", choices),
        _ => Said::ask("its metal and its length are not said", choices),
    }
}
