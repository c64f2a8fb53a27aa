//! A plug for the end of a tube that is known by its outside and its wall.

use crate::sentence::{
    Said,
    roles::assign,
    sizes::{Fit, fit_of},
    token::{Num, System, Token},
    vague::TAPPED,
    view::View,
};

/// `1 inch tube .065 wall, plug to push in the end`: the tube's bore and a word.
pub(crate) fn plug(view: &View, system: System) -> Option<Said> {
    if !view.types(&["tube", "tubing", "pipe"]) || view.has("material") || view.has("head") {
        return None;
    }
    let words = match (fit_of(view), view.word("vague")) {
        (Some(Fit::Word(word)), None) => vec![word],
        (None, Some("tapped")) if !view.has("fit") => TAPPED.to_vec(),
        _ => return None,
    };
    let numbers: Vec<(usize, &Num)> = view.numbers().collect();
    let [(a, x), (b, y)] = numbers[..] else { return None };
    let is_crossed = (a..b).any(|at| view.items[at].token == Token::Cross);
    let roles = assign(view, &["role"], &[], system)?;
    let wall_at = roles.get("wall").map(|taken| taken.at);
    let (od, wall) = match wall_at {
        Some(at) if at == a => (y, x),
        Some(at) if at == b => (x, y),
        // `25 x 2 tube`
        None if is_crossed => (x, y),
        _ => return None,
    };
    if wall.mm(system) > 0.25 * od.mm(system) || roles.count("od") + roles.count("wall") > 2 {
        return None;
    }
    od.less_twice(wall, system)?;
    let (od, wall) = (od.plain(system), wall.plain(system));
    let bore = format!("{od} - 2 * {wall}");
    let [word] = words[..] else {
        let each = words.iter().map(|word| format!("{bore} {word}, thin tube"));
        return Some(Said::ask("how tight is not said", each.collect()));
    };
    let thin = format!("{bore} {word}, thin tube");
    if word.contains("press") || word == "shrink" {
        let joint = format!("assemble {bore} {word}, hub steel od {od} wall {wall}, shaft steel");
        return Some(Said::ask(
            "the sizes alone, or whether the tube stands it?",
            vec![thin, joint],
        ));
    }
    Some(Said::plain(thin))
}

/// `id of 2 inch od 1/8 wall tube`, `1-1/8 x .035 tube id`: what is left inside.
pub(crate) fn inside(view: &View, system: System) -> Option<Said> {
    // Its bore goes by its sizes, whatever it is made of.
    view.only(&["role", "material", "hub"], |token| {
        matches!(token, Token::Number(_) | Token::Cross)
    })?;
    let numbers: Vec<(usize, &Num)> = view.numbers().collect();
    let [(first, a), (last, b)] = numbers[..] else { return None };
    let (at, od, wall) = if a.by_size(b, system).is_gt() { (first, a, b) } else { (last, b, a) };
    if wall.mm(system) > 0.25 * od.mm(system) {
        return None;
    }
    // What stands behind the larger one names it, else what stands before it.
    let role = |at: usize| match view.items.get(at)?.token {
        Token::Word { kind: "role", name } => Some(name),
        _ => None,
    };
    let named = role(at + 1).or_else(|| role(at.checked_sub(1)?));
    let is_crossed = view.items[first..last].iter().any(|item| item.token == Token::Cross);
    let (large, wall) = (od.plain(system), wall.plain(system));
    match named {
        // `1 inch id tube .049 wall what od`
        Some("id") if view.says("role", "od") && view.says("role", "wall") => {
            Some(Said::plain(format!("{large} + 2 * {wall}")))
        }
        Some("od") if !view.says("role", "wall") => None,
        None if !is_crossed || view.says("role", "od") => None,
        Some("od") | None if view.says("role", "id") => {
            Some(Said::plain(format!("{large} - 2 * {wall}")))
        }
        _ => None,
    }
}
