//! A phrase that no question takes whole: what its figures and its plainest words
//! may ask is offered, never answered.

use super::{
    Said, Setting, distinct, in_units,
    loose::Guess,
    numbers_in, ready,
    sizes::{Fit, fit_of, is_nominal},
    token::{Num, System, Token},
    view::{Item, KEPT, Line, View},
};

/// Words that turn nothing round where all that is offered is asked.
const HARMLESS: &[&str] =
    &["cut", "inch", "or", "one", "by", "both", "hot", "cold", "thin", "each", "off", "heavy"];

/// What begins so has its own words for what is wrong.
const OWN_WORDS: &[&str] =
    &["align", "assemble", "stack", "pick", "rehearse", "weight", "rescue", "log", "crib", "job"];

/// What may be meant by the figures, the fit and the parts that are named.
pub(crate) fn offered(text: &str, setting: Setting) -> Option<Guess> {
    let first = text.split_whitespace().next().unwrap_or_default();
    let words = text.split_whitespace().count();
    if text.len() > super::LONGEST || words < 4 || OWN_WORDS.contains(&first) {
        return None;
    }
    let text = &super::prepared(text, setting)?.text;
    let line = Line::new(text);
    let (view, unknown) = line.gist();
    let turns = text.split([' ', ',', '?', '.']).any(|word| {
        let word = word.to_lowercase();
        KEPT.contains(&&*word) && !HARMLESS.contains(&&*word)
    });
    if turns || view.items.len() < 2 {
        return None;
    }
    let view = ready(view)?;
    let typed = view.figures();
    let choices = in_units(&view, setting, |view, system| {
        let all = may_be(view, system)?;
        Some(Said::ask("", all.into_iter().filter(|one| numbers_in(one) >= typed).collect()))
    })?;
    let Said::Ask { choices, .. } = choices else { return None };
    let unknown = unknown.into_iter().filter_map(|at| text.get(at).map(str::to_owned)).collect();
    Some(Guess { unknown, choices: distinct(choices) })
}

fn may_be(view: &View, system: System) -> Option<Vec<String>> {
    let is_read = |token: &Token| {
        matches!(
            token,
            Token::Break
                | Token::Number(_)
                | Token::Thread { .. }
                | Token::Hole(_)
                | Token::Shaft(_)
                | Token::Pair(_)
                | Token::InchClass(_)
                | Token::Bearing(_)
                | Token::Cross
                | Token::Word { .. }
        )
    };
    if !view.tokens().all(is_read) {
        return None;
    }
    let fit = fit_of(view);
    if fit.is_none() && view.has("fit") {
        return None;
    }
    let numbers: Vec<(usize, &Num)> = view.numbers().collect();
    let threads: Vec<&String> = view
        .tokens()
        .filter_map(|token| match token {
            Token::Thread { name, .. } => Some(name),
            _ => None,
        })
        .collect();
    match (&threads[..], &numbers[..], &fit) {
        ([thread], [], None) => Some(of_thread(view, thread)),
        ([], [], None) => {
            let ball = view.one(|token| match token {
                Token::Bearing(ball) => Some(*ball),
                _ => None,
            })?;
            let number = ball.number();
            Some(vec![
                format!("bearing {number}, shaft turns"),
                format!("bearing {number}, housing turns"),
            ])
        }
        ([], [one], Some(fit)) => Some(of_one(view, *one, fit, system)),
        ([], [(_, num)], None) => Some(of_size(view, &num.plain(system))),
        ([], [(_, a), (_, b), (_, c)], _) if view.has("bushing") => {
            if view.has("role") {
                return None;
            }
            let mut sizes = [a, b, c];
            sizes[..2].sort_by(|a, b| a.mm(system).total_cmp(&b.mm(system)));
            let [id, od, long] = sizes.map(|num| num.plain(system));
            Some(bushings(&id, &od, &long))
        }
        ([], [a, b], _) => Some(of_two(view, *a, *b, fit.as_ref(), system)),
        _ => None,
    }
}

/// A bushing of either bronze.
fn bushings(id: &str, od: &str, long: &str) -> Vec<String> {
    ["bronze", "sintered bronze"]
        .map(|metal| format!("bushing {id} od {od} long {long}, hub steel, {metal}"))
        .to_vec()
}

fn of_thread(view: &View, thread: &str) -> Vec<String> {
    let ask = |tail: &str| format!("{thread}{tail}");
    let first = if view.says("head", "clearance") {
        " clearance"
    } else if view.says("head", "tap") || view.says("head", "drill") || view.says("head", "cltap") {
        " tap"
    } else if view.says("head", "feed") {
        " cut"
    } else if view.types(&["nut", "nuts"]) {
        " nut"
    } else {
        ""
    };
    [first, "", " tap", " clearance"].map(ask).to_vec()
}

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
fn metal(view: &View) -> String {
    let mut metals = view.words("material");
    match (metals.next(), metals.next()) {
        (Some(metal), None) => format!(", hub {metal}"),
        _ => String::new(),
    }
}

fn of_one(view: &View, (at, num): (usize, &Num), fit: &Fit, system: System) -> Vec<String> {
    let size = num.plain(system);
    let text = fit.text();
    if !matches!(fit, Fit::Word(_)) {
        let mut all = vec![format!("{size} {text}")];
        if let Fit::Hole(_) = fit {
            all.push(format!("ream {size} {text}"));
        }
        return all;
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

fn of_size(view: &View, size: &str) -> Vec<String> {
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
        all.extend(["sliding", "push", "press"].map(|word| format!("{size} {word}")));
    }
    all
}

fn of_two(
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
            let mut all = vec![
                format!("hole {hole}, shaft {shaft}{tail}"),
                format!("hole {shaft}, shaft {hole}{tail}"),
            ];
            if view.has("should") || view.has("trouble") || view.has("off") {
                let part = part_of(view, a.0).unwrap_or("hole");
                all.insert(0, format!("rescue {part} {first} should be {second}{tail}"));
                all.push(format!("rescue {part} {second} should be {first}{tail}"));
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
                Fit::Hole(_) | Fit::Shaft(_) => vec![
                    format!("{nominal} {class} = {reading}"),
                    format!("{reading} {class} = {nominal}"),
                ],
                _ => vec![
                    format!("{nominal} {class}, hole = {reading}"),
                    format!("{nominal} {class}, shaft = {reading}"),
                ],
            }
        }
        _ if view.has("bushing") => bushings(small, large, large),
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
