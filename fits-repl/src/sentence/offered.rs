//! A phrase that no question takes whole: what its figures and its plainest words
//! may ask is offered, never answered.

use crate::words::clause::{opened_by, reserved};

use super::{
    Said, Setting, distinct,
    holes::fraction_threads,
    in_units,
    loose::Guess,
    numbers_in, ready,
    sizes::{Fit, fit_of, is_nominal},
    threads::thread_alone,
    token::{Num, System, Token},
    tools::trimmed,
    view::{Item, Line, View},
};

/// Words that turn a meaning round or change a figure: nothing is offered then.
const TURNS: &[&str] = &[
    "not",
    "no",
    "never",
    "without",
    "except",
    "neither",
    "nor",
    "unless",
    "isn't",
    "isnt",
    "don't",
    "dont",
    "wasn't",
    "doesn't",
    "doesnt",
    "won't",
    "wont",
    "instead",
    "wait",
    "sorry",
    "scratch",
    "correction",
    "meant",
    "oops",
    "radius",
    "rad",
    "per",
    "side",
    "circumference",
    "area",
    "half",
    "twice",
    "double",
    "third",
    "thirds",
    "wrong",
    "tapered",
    "assemble",
    "=",
    "than",
    "rather",
];

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
    let text = &super::prepared(&super::plain_marks(text), setting)?.text;
    let line = Line::new(text);
    let (view, unknown) = line.gist();
    let turns = text.split([' ', ',', '?', '.']).any(|word| {
        let word = word.to_lowercase();
        TURNS.contains(&&*word)
    });
    if view.items.len() < 2 {
        return None;
    }
    let view = ready(view)?;
    if turns {
        // Whatever is said of it, a bearing has a ring that turns.
        let choices = of_a_bearing(&view)?;
        return Some(Guess { unknown: Vec::new(), choices });
    }
    let typed = view.figures();
    let choices = in_units(&view, setting, |view, system| {
        let all = may_be(view, system)?;
        Some(Said::ask("", all.into_iter().filter(|one| numbers_in(one) >= typed).collect()))
    })?;
    let Said::Ask { choices, .. } = choices else { return None };
    let unknown = unknown.into_iter().filter_map(|at| text.get(at).map(str::to_owned)).collect();
    Some(Guess { unknown, choices: distinct(choices) })
}

/// Why a phrase has no answer, where that is plain.
pub(crate) enum Lack {
    /// A word that no question knows, and where it stands.
    Word(std::ops::Range<usize>),
    /// Heat, and nothing that is heated.
    Heated,
    /// A fit, and no size.
    Size,
}

/// What a phrase lacks: of a plain query that is refused the grammar knows better.
pub(crate) fn lacks(text: &str) -> Option<Lack> {
    let first = text.split_whitespace().next().unwrap_or_default().to_lowercase();
    let is_keyword = |word: &str| reserved().any(|known| known == word);
    if text.len() > super::LONGEST
        || !text.is_ascii()
        || is_keyword(&first)
        || opened_by(&first).is_some()
    {
        return None;
    }
    let line = Line::new(text);
    let (view, unknown) = line.gist();
    let heats = text.split(' ').any(|word| word.to_lowercase().starts_with("heat"));
    let is_sized = view.tokens().any(|token| !matches!(token, Token::Break | Token::Word { .. }));
    let numbers: Vec<usize> = view.numbers().map(|(at, _)| at).collect();
    let is_warmth = numbers.iter().all(|at| {
        at.checked_sub(1)
            .is_some_and(|at| matches!(&*view.said(at), "to" | "at" | "up to" | "heat to"))
    });
    if heats && numbers.len() <= 1 && is_warmth {
        return Some(Lack::Heated);
    }
    if !is_sized && view.has("fit") && unknown.is_empty() {
        return Some(Lack::Size);
    }
    let is_word = |at: &std::ops::Range<usize>| {
        text.get(at.clone()).is_some_and(|word| {
            word.len() > 2
                && word.bytes().all(|byte| byte.is_ascii_alphabetic())
                && word.bytes().any(|byte| byte.is_ascii_lowercase())
                && !is_keyword(&word.to_lowercase())
        })
    };
    let is_long = text.split_whitespace().count() >= 4;
    unknown.into_iter().find(is_word).filter(|_| is_long).map(Lack::Word)
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
                | Token::Times(_)
                | Token::PerInch(_)
                | Token::Temperature(_)
                | Token::Gauge(_)
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
    let sizes: Vec<&Num> = numbers.iter().map(|(_, num)| *num).collect();
    if let Some(all) = of_a_bearing(view)
        .or_else(|| of_a_stack(view, &sizes, system))
        .or_else(|| of_a_pitch(view, &sizes, system))
        .or_else(|| of_heat(view, &sizes, fit.as_ref(), system))
        .or_else(|| of_a_joint(view, &sizes, fit.as_ref(), system))
    {
        return Some(all);
    }
    // What only those take is not dropped by the others.
    let is_theirs = |token: &Token| {
        matches!(
            token,
            Token::Temperature(_) | Token::PerInch(_) | Token::Gauge(_) | Token::Times(_)
        )
    };
    if view.count(is_theirs) > 0 {
        return None;
    }
    match (&threads[..], &numbers[..], &fit) {
        ([thread], [], None) => Some(of_thread(view, thread)),
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

/// The seats of a bearing, by which part turns.
fn of_a_bearing(view: &View) -> Option<Vec<String>> {
    let ball = view.one(|token| match token {
        Token::Bearing(ball) => Some(*ball),
        _ => None,
    })?;
    view.numbers().next().is_none().then_some(())?;
    let turns = |part: &str| format!("bearing {}, {part} turns", ball.number());
    Some(["shaft", "housing"].map(turns).to_vec())
}

/// The longest part less the others: the smallest once, or at both ends.
fn of_a_stack(view: &View, sizes: &[&Num], system: System) -> Option<Vec<String>> {
    let mut sizes = sizes.to_vec();
    sizes.sort_by(|a, b| b.mm(system).total_cmp(&a.mm(system)));
    let (gap, parts) = sizes.split_first().filter(|_| view.says("head", "stack"))?;
    let last = parts.last()?;
    let sum = |last_times: f64| {
        parts.iter().map(|num| num.mm(system)).sum::<f64>() + (last_times - 1.0) * last.mm(system)
    };
    let with = |times: &str| {
        let less = parts.iter().map(|num| {
            let times = if std::ptr::eq(*num, *last) { times } else { "" };
            format!(", -{times}{}", num.plain(system))
        });
        format!("stack {}{}", gap.plain(system), less.collect::<String>())
    };
    let room = gap.mm(system);
    let mut all = Vec::new();
    for (times, count) in [("", 1.0), ("2x ", 2.0)] {
        if sum(count) <= room {
            all.push(with(times));
        }
    }
    Some(all)
}

/// A pitch and no thread: those of the series that have it.
fn of_a_pitch(view: &View, sizes: &[&Num], system: System) -> Option<Vec<String>> {
    let turns = view.one(|token| match token {
        Token::PerInch(turns) => Some(turns.clone()),
        _ => None,
    })?;
    if view.tokens().any(|token| matches!(token, Token::Thread { .. })) {
        return None;
    }
    let tail = if view.has("head") { " cut" } else { "" };
    Some(match sizes {
        [] => UNIFIED
            .iter()
            .filter(|size| {
                let both = fraction_threads(size, "");
                both.is_some_and(|both| {
                    both.iter().any(|name| name.ends_with(&format!("-{turns}")))
                })
            })
            .map(|size| format!("{size}-{turns}{tail}"))
            .collect(),
        [size] if size.is_fraction || size.places == 0 => {
            let of = |series: &str| format!("{}-{turns}{series}", size.text);
            [" tap", " cut", " BSW", ""].map(of).to_vec()
        }
        [size] => vec![format!("thread {} {turns} tpi", size.plain(system))],
        _ => return None,
    })
}

/// Sizes that a coarse and a fine thread are listed for.
const UNIFIED: &[&str] = &["1/4", "5/16", "3/8", "7/16", "1/2", "9/16", "5/8", "3/4", "7/8"];

/// A size at a temperature: of which parts?
fn of_heat(view: &View, sizes: &[&Num], fit: Option<&Fit>, system: System) -> Option<Vec<String>> {
    let heat = view.one(|token| match token {
        Token::Temperature(text) => Some(text.clone()),
        _ => None,
    })?;
    let [size] = sizes else { return None };
    let heats = if heat.ends_with(['C', 'F']) {
        vec![heat]
    } else {
        vec![format!("{heat}C"), format!("{heat}F")]
    };
    let metals: Vec<&str> = view.words("material").collect();
    let pairs = match metals[..] {
        [one] => vec![(one, "steel"), ("steel", one)],
        [a, b] => vec![(a, b), (b, a)],
        _ => return None,
    };
    let fits = match fit {
        Some(Fit::Hole(_) | Fit::Shaft(_)) => return None,
        Some(fit) => vec![fit.text()],
        None => vec!["running", "press"],
    };
    let mut all = Vec::new();
    for heat in &heats {
        for fit in &fits {
            for (hole, shaft) in &pairs {
                let size = size.plain(system);
                all.push(format!("{size} {fit} warm {heat}, hole {hole}, shaft {shaft}"));
            }
        }
    }
    Some(all)
}

/// Parts pressed or shrunk whose hub is not said, or whose metal.
fn of_a_joint(
    view: &View,
    sizes: &[&Num],
    fit: Option<&Fit>,
    system: System,
) -> Option<Vec<String>> {
    let asks =
        ["force", "heat", "hold", "split", "closein"].iter().any(|head| view.says("head", head));
    let grips = matches!(fit, Some(Fit::Word(word)) if word.contains("press") || *word == "shrink");
    let is_play = view.says("head", "clearance") || view.says("vague", "clearance");
    let is_joint = (asks || grips && view.has("hub")) && !view.has("bushing") && !is_play;
    if !is_joint || !(2..=3).contains(&sizes.len()) || view.says("role", "long") {
        return None;
    }
    let mut sizes = sizes.to_vec();
    sizes.sort_by(|a, b| a.mm(system).total_cmp(&b.mm(system)));
    let largest = sizes.last()?.mm(system);
    let tight = (sizes[0].mm(system) < largest / 60.0).then(|| sizes.remove(0).plain(system));
    let metals: Vec<&str> = view.words("material").collect();
    let (hub, shaft) = match metals[..] {
        [] => ("steel", "steel"),
        [one] => (one, "steel"),
        [hub, shaft, ..] => (hub, shaft),
    };
    let fit = match (&tight, fit) {
        (Some(tight), _) => format!("interference {tight}"),
        (None, Some(fit @ (Fit::Word(_) | Fit::Pair(_) | Fit::Inch(_)))) => fit.text().to_owned(),
        (None, None) => "press".to_owned(),
        _ => return None,
    };
    let heated = if view.says("head", "heat") && fit != "shrink" { ", shrink" } else { "" };
    let of = |size: &Num, od: String, hub: &str, shaft: &str| {
        format!("assemble {} {fit}, hub {hub} od {od}, shaft {shaft}{heated}", size.plain(system))
    };
    let twice = |num: &Num, by: f64| {
        Num { value: num.value * by, text: trimmed(num.value * by), ..num.clone() }.plain(system)
    };
    let parts = [(hub, shaft), (shaft, hub)];
    let mut all: Vec<String> = match sizes[..] {
        [size] => parts
            .iter()
            .flat_map(|(hub, shaft)| [2.0, 3.0].map(|by| of(size, twice(size, by), hub, shaft)))
            .collect(),
        [size, od] if od.mm(system) > 1.05 * size.mm(system) => {
            parts.iter().map(|(hub, shaft)| of(size, od.plain(system), hub, shaft)).collect()
        }
        _ => return None,
    };
    all.dedup();
    if let ([size, od], true) = (&sizes[..], all.len() == 1) {
        let od = od.plain(system);
        all.extend(["cast iron", "aluminium"].map(|hub| of(size, od.clone(), hub, shaft)));
    }
    Some(all)
}

/// A bushing of either bronze.
fn bushings(id: &str, od: &str, long: &str) -> Vec<String> {
    ["bronze", "sintered bronze"]
        .map(|metal| format!("bushing {id} od {od} long {long}, hub steel, {metal}"))
        .to_vec()
}

fn of_thread(view: &View, thread: &str) -> Vec<String> {
    let ask = |tail: &str| {
        if tail.is_empty() { thread_alone(thread) } else { format!("{thread}{tail}") }
    };
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
    if all.is_empty()
        && (view.says("head", "turn") || view.says("head", "turnto") || view.has("reads"))
    {
        all.extend(["hole", "shaft"].map(|part| format!("{part} {size}, sliding")));
        all.push(format!("hole {size}, press"));
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
            all.extend([
                format!("hole {hole}, shaft {shaft}{tail}"),
                format!("hole {shaft}, shaft {hole}{tail}"),
            ]);
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
