//! What may be asked of one size or two.

use crate::sentence::{
    loose::near_class,
    sizes::{Fit, is_nominal},
    token::{Num, System, Token},
    view::{Item, View},
};

/// The part that a number is of, by the noun beside it.
fn part_of(view: &View, at: usize) -> Option<&'static str> {
    // A noun, or none where another number comes first.
    let noun = |item: &Item| match item.token {
        Token::Word { kind: "hole" | "hub", .. } => Some(Some("hole")),
        Token::Word { kind: "shaft", .. } => Some(Some("shaft")),
        Token::Number(_) => Some(None),
        _ => None,
    };
    let before = view.items[..at].iter().rev().find_map(noun).flatten();
    before.or_else(|| view.items[at + 1..].iter().find_map(noun).flatten())
}

/// What the hub is made of, where one metal is named.
pub(super) fn metal(view: &View) -> String {
    let mut metals = view.words("material");
    match (metals.next(), metals.next()) {
        (Some(metal), None) => format!(", hub {metal}"),
        _ => String::new(),
    }
}

pub(super) fn of_one(
    view: &View,
    (at, num): (usize, &Num),
    fit: &Fit,
    system: System,
) -> Vec<String> {
    let size = num.plain(system);
    let text = fit.text();
    if !matches!(fit, Fit::Word(_)) {
        let near = near_class(&size, text);
        let (read, others): (Vec<_>, Vec<_>) =
            near.into_iter().partition(|other| other.contains(" = "));
        // `the bore came out at 30.02, drawing says H7`
        let (read, late) =
            if is_nominal(num, system) { (Vec::new(), read) } else { (read, Vec::new()) };
        return [read, vec![format!("{size} {text}")], late, others].concat();
    }
    let metal = metal(view);
    let whole = format!("{size} {text}{metal}");
    let part = |part: &str| format!("{part} {size}, {text}{metal}");
    let mut all = Vec::new();
    if let Some(bought) = view.word("bought") {
        all.push(format!("{bought} {size}, {text}{metal}"));
    }
    match part_of(view, at) {
        _ if is_nominal(num, system) => all.extend([whole, part("hole"), part("shaft")]),
        Some("shaft") => all.extend([part("shaft"), part("hole"), whole]),
        _ => all.extend([part("hole"), part("shaft"), whole]),
    }
    all
}

/// `RC5 versus RC7 on 1.500`: one size, and each fit that is named.
pub(super) fn of_several_fits(view: &View, size: &str) -> Option<Vec<String>> {
    let fit = |token: &Token| match token {
        Token::Pair(fit) | Token::InchClass(fit) => Some(fit.clone()),
        Token::Word { kind: "fit", name } => Some((*name).to_owned()),
        _ => None,
    };
    let mut all: Vec<String> = Vec::new();
    for fit in view.tokens().filter_map(fit).map(|fit| format!("{size} {fit}")) {
        if !all.contains(&fit) {
            all.push(fit);
        }
    }
    let is_class = |token: &Token| matches!(token, Token::Hole(_) | Token::Shaft(_));
    (all.len() > 1 && view.count(is_class) == 0).then_some(all)
}

pub(super) fn of_size(view: &View, size: &str) -> Vec<String> {
    let mut all = Vec::new();
    if let Some(bought) = view.word("bought") {
        all.extend([format!("{bought} {size}, press"), format!("{bought} {size}, running")]);
    }
    if view.has("key") {
        all.push(format!("keyway for {size}"));
    }
    if view.says("head", "ream") {
        all.push(format!("ream {size} H7"));
    }
    if view.says("head", "drill") {
        all.push(format!("drill {size}"));
    }
    if view.has("hole") || view.has("shaft") || view.has("hub") || view.has("bushing") {
        // What a piston's clearance is, its rings and metals say.
        let runs = (!view.types(&["piston", "pistons"])).then_some("running");
        let words = runs.into_iter().chain(["sliding", "push", "press"]);
        all.extend(words.map(|word| format!("{size} {word}")));
    }
    if all.is_empty()
        && (view.says("head", "turn") || view.says("head", "turnto") || view.has("reads"))
    {
        all.extend(["hole", "shaft"].map(|part| format!("{part} {size}, sliding")));
        all.push(format!("hole {size}, press"));
    }
    all
}

#[allow(clippy::too_many_lines, reason = "one rule after another, each short")]
pub(super) fn of_two(
    view: &View,
    a: (usize, &Num),
    b: (usize, &Num),
    fit: Option<&Fit>,
    system: System,
) -> Vec<String> {
    let (x, y) = (a.1.mm(system), b.1.mm(system));
    let (first, second) = (a.1.plain(system), b.1.plain(system));
    let is_close = (x - y).abs() < 0.05 * x.max(y);
    let hole_first = part_of(view, a.0) != Some("shaft") || part_of(view, b.0) == Some("shaft");
    let (hole, shaft) = if hole_first { (&first, &second) } else { (&second, &first) };
    let (small, large) = if x < y { (&first, &second) } else { (&second, &first) };
    match fit {
        None | Some(Fit::Word(_)) if is_close => {
            let tail = match fit {
                Some(fit) => format!(", {}", fit.text()),
                None => String::new(),
            };
            let mut all = Vec::new();
            // A nominal size, and a part of it as it measures.
            let read = match (is_nominal(a.1, system), is_nominal(b.1, system)) {
                (true, false) => Some((&first, &second, b.0)),
                (false, true) => Some((&second, &first, a.0)),
                _ => None,
            };
            if let (Some(fit), Some((nominal, reading, at))) = (fit, read) {
                let mut parts = ["hole", "shaft"];
                if part_of(view, at) == Some("shaft") {
                    parts.reverse();
                }
                all.extend(
                    parts.map(|part| format!("{nominal} {}, {part} = {reading}", fit.text())),
                );
            }
            // `I have 1.050 stock and need .9990, what cuts`
            let cuts = ["cuts", "passes", "stock", "bar", "bored", "boring", "drilled"];
            let typed = || view.text.split([' ', ',', '?']);
            let is_cut = typed().any(|word| cuts.contains(&&*word.to_lowercase()))
                && !typed().any(|word| word.to_lowercase().starts_with("ream"));
            if is_cut && fit.is_none() {
                all.push(format!("turn {small} h7 from {large}"));
                all.push(format!("bore {large} H7 from {small}"));
            }
            all.extend([
                format!("hole {hole}, shaft {shaft}{tail}"),
                format!("hole {shaft}, shaft {hole}{tail}"),
            ]);
            if view.has("should") || view.has("trouble") || view.has("off") {
                let part = part_of(view, a.0).unwrap_or("hole");
                let [is, should] = match read {
                    Some((nominal, reading, _)) => [reading, nominal],
                    None => [&first, &second],
                };
                all.insert(0, format!("rescue {part} {is} should be {should}{tail}"));
                all.push(format!("rescue {part} {should} should be {is}{tail}"));
            }
            all
        }
        Some(fit) if is_close => {
            let class = fit.text();
            let (nominal, reading) = match (is_nominal(a.1, system), is_nominal(b.1, system)) {
                (false, true) => (&second, &first),
                _ => (&first, &second),
            };
            match fit {
                Fit::Hole(_) | Fit::Shaft(_) => {
                    let work = if matches!(fit, Fit::Hole(_)) { "bore" } else { "turn" };
                    vec![
                        format!("{nominal} {class} = {reading}"),
                        format!("{work} {nominal} {class} from {reading}"),
                        format!("{reading} {class} = {nominal}"),
                    ]
                }
                _ => vec![
                    format!("{nominal} {class}, hole = {reading}"),
                    format!("{nominal} {class}, shaft = {reading}"),
                ],
            }
        }
        _ if view.has("bushing") => {
            let metals =
                [", hub steel, bronze", ", hub cast iron, bronze", ", hub steel, sintered bronze"];
            metals.map(|rest| format!("bushing {small} od {large} long {large}{rest}")).to_vec()
        }
        Some(fit) => {
            let fit = fit.text();
            let mut all = vec![
                format!("bore {large} {fit} from {small}"),
                format!("turn {small} {fit} from {large}"),
            ];
            if !hole_first || (view.has("shaft") && !view.has("hole")) {
                all.reverse();
            }
            if view.has("hub") || view.has("material") {
                let metal = metal(view);
                let hub = if metal.is_empty() { ", hub steel".to_owned() } else { metal };
                all.insert(0, format!("assemble {small} {fit}{hub} od {large}, shaft steel"));
            }
            all
        }
        None if view.has("start") || view.says("head", "passes") || view.has("shaft") => {
            match (view.has("hole"), view.has("shaft")) {
                (true, false) => {
                    ["H7", "sliding"].map(|fit| format!("bore {large} {fit} from {small}")).to_vec()
                }
                (false, true) => {
                    ["h7", "sliding"].map(|fit| format!("turn {small} {fit} from {large}")).to_vec()
                }
                _ => vec![
                    format!("turn {small} h7 from {large}"),
                    format!("bore {large} H7 from {small}"),
                ],
            }
        }
        None => Vec::new(),
    }
}
