//! What a bar weighs.

use crate::sentence::{
    Said,
    token::{Num, System, Token},
    view::View,
};

/// `what does 12 inches of 1 inch round steel weigh`: a section, a metal and a length.
pub(crate) fn weight(view: &View, system: System) -> Option<Said> {
    view.only(&["head", "section", "material", "role", "foot", "shaft"], |token| {
        matches!(token, Token::Number(_))
    })?;
    if !view.has("head") || view.words("material").count() != 1 {
        return None;
    }
    let mut sections = view.words("section");
    let section = sections.next().unwrap_or("round");
    if sections.next().is_some() {
        return None;
    }
    let numbers: Vec<(usize, &Num)> = view.numbers().collect();
    let [(at, first), (after, second)] = numbers[..] else { return None };
    let beside = |at: usize, kind: &str| {
        let is = |at: usize| matches!(view.items.get(at).map(|item| &item.token), Some(Token::Word { kind: known, .. }) if *known == kind);
        is(at + 1) || at.checked_sub(1).is_some_and(is)
    };
    // The length is the one with `long` beside it, in feet, or before `of`.
    let leads = [at, after].map(|at| {
        let said = view.said(at + 1);
        beside(at, "role") || beside(at, "foot") || said == "of" || said == "length of"
    });
    let (size, long, is_feet) = match leads {
        [true, false] => (second, first, beside(at, "foot")),
        [false, true] => (first, second, beside(after, "foot")),
        _ => return None,
    };
    let long = if is_feet { format!("{}ft", long.text) } else { long.plain(system) };
    let metal = view.word("material")?;
    let section = if section == "round" { String::new() } else { format!("{section} ") };
    Some(Said::plain(format!("weight {section}{} {metal} long {long}", size.plain(system))))
}
