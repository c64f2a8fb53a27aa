//! A phrase with words that nobody knows: what it may mean is asked, never
//! answered.

use std::ops::Range;

use crate::words::clause::opened_by;

use super::{
    ALL, Said, Setting, distinct,
    line::{Line, MEANT, is_kept},
    number::number,
    ready,
    settle::{in_units, numbers_in, settle},
    sizes::nominal_of,
    threads::thread_alone,
    token::{System, Token},
    view::View,
};

/// What a phrase may mean when some of its words are passed over.
pub(crate) struct Guess {
    /// The words that are not understood.
    pub unknown: Vec<String>,
    /// Plain queries that may be meant.
    pub choices: Vec<String>,
}

/// Questions about the program itself, which any words could ask.
const ABOUT: &[&str] = &["settings", "help", "why"];

/// Words that are passed over at most.
const MOST: usize = 6;

/// Passes over as few words as it can. Words that turn a meaning round, and
/// numbers, are never passed over.
pub(crate) fn guess(text: &str, setting: Setting) -> Option<Guess> {
    let text = &super::prepared(&super::plain_marks(text), setting)?.text;
    let words = text.split_whitespace().filter(|word| word.len() > 1).count();
    if text.len() > super::LONGEST || words < 4 || !text.bytes().any(|byte| byte.is_ascii_digit()) {
        return None;
    }
    let line = Line::new(text);
    let most = words.div_ceil(2).min(MOST);
    let known_to: [u64; MOST + 1] = line.known_to();
    let passed_over = |passed: usize, more: usize| {
        let mut all = Vec::new();
        let mut without = Vec::new();
        for (bit, (name, question)) in (0..).zip(ALL) {
            if ABOUT.contains(name) || known_to[passed] & (1 << bit) == 0 {
                continue;
            }
            let read = |view: &View| in_units(view, setting, question);
            let Some((view, words)) = line.view_without(bit, passed) else { continue };
            let Some(view) = ready(view) else { continue };
            let Some((said, words)) = (match more {
                0 => read(&view).map(|said| (said, words)),
                _ => without_words(&view, more, &read).map(|(said, more)| {
                    let mut words = words;
                    words.extend(more);
                    words.sort_by_key(|at| at.start);
                    (said, words)
                }),
            }) else {
                continue;
            };
            if without.is_empty() {
                without = words;
            }
            all.push((*name, said));
        }
        settle(all).map(|said| (without, said))
    };
    // What begins as a plain question does has its own words for what is wrong.
    let first = text.split_whitespace().next().unwrap_or_default();
    let opens = opened_by(&first.to_lowercase()).is_some();
    let found = (1..=most)
        .map(|passed| (passed, 0))
        .chain([(0, 1), (most, 1)])
        .chain(if opens { Vec::new() } else { vec![(0, 2)] })
        .find_map(|(passed, more)| passed_over(passed, more));
    // A bushing has an inside and an outside: without the word they would be other parts'.
    let is_bushing = |at: &Range<usize>| {
        let said = text[at.clone()].to_lowercase();
        ["bush", "sleeve", "liner"].iter().any(|word| said.contains(word))
    };
    let is_crowded = line.gist().0.numbers().count() > 1;
    let (passed, said) = found.filter(|(passed, _)| {
        !(opens && passed.iter().any(|at| at.start == 0)
            || is_crowded && passed.iter().any(is_bushing))
    })?;
    let choices = match said {
        Said::Ask { choices, .. } => choices,
        Said::Plain(lines) => {
            let plain = lines.join(" ; ");
            let others = others(&plain);
            std::iter::once(plain).chain(others).collect()
        }
    };
    let choices: Vec<String> = choices.into_iter().map(nominal_first).collect();
    // No choice leaves a number out.
    let typed = choices.first().map_or(0, |first| numbers_in(first));
    let mut choices = distinct(choices);
    choices.retain(|choice| numbers_in(choice) >= typed);
    // Nor the fit: two sizes alone say nothing of it.
    if line.gist().0.has("fit") {
        let is_bare = |pair: &str| pair.matches(' ').count() == 3;
        choices.retain(|choice| !(is_pair(choice) && is_bare(choice)));
    }
    let unknown = passed.into_iter().filter_map(|at| text.get(at).map(str::to_owned)).collect();
    Some(Guess { unknown, choices })
}

/// `0.8757in H7 = 0.8750in` the other way round: a class is of the rounder size.
fn nominal_first(plain: String) -> String {
    let turned = || {
        let (part, read) = plain.split_once(" = ")?;
        let (size, class) = part.split_once(' ')?;
        let figure = |text: &str| {
            let bare = text.trim_end_matches(|c: char| c.is_ascii_alphabetic());
            let digits = bare.trim_end_matches('0');
            Some((bare.parse::<f64>().ok()?, digits.split_once('.').map_or(0, |(_, it)| it.len())))
        };
        let ((a, places), (b, rounder)) = (figure(size)?, figure(read)?);
        let is_turned = rounder < places && (a - b).abs() < 0.02 * b && !class.contains(' ');
        is_turned.then(|| format!("{read} {class} = {size}"))
    };
    turned().unwrap_or(plain)
}

/// Is a plain query a hole and a shaft, each by its size?
pub(crate) fn is_pair(plain: &str) -> bool {
    plain.starts_with("hole ") && plain.contains(", shaft ")
}

/// The question with so many words left out that it knows, but not there.
fn without_words(
    view: &View,
    more: usize,
    read: &impl Fn(&View) -> Option<Said>,
) -> Option<(Said, Vec<Range<usize>>)> {
    let places = (0..view.items.len()).filter(|at| {
        matches!(view.items[*at].token, Token::Word { kind, .. } if kind != "small" && !MEANT.contains(&kind))
            && !view.said(*at).split(' ').any(is_kept)
    });
    let places: Vec<usize> = places.take(12).collect();
    let others = |at: usize| places.iter().copied().filter(move |other| more == 2 && *other > at);
    let pairs = places.iter().flat_map(|at| {
        let alone = (more == 1).then_some(vec![*at]);
        alone.into_iter().chain(others(*at).map(|other| vec![*at, other]))
    });
    for left_out in pairs {
        let kept = view.items.iter().enumerate().filter(|(at, _)| !left_out.contains(at));
        let items = kept.map(|(_, item)| item.clone()).collect();
        let less = View { items, text: std::rc::Rc::clone(&view.text) };
        if let Some(said) = read(&less) {
            let at = |place: &usize| view.items[*place].at.clone();
            return Some((said, left_out.iter().map(at).collect()));
        }
    }
    None
}

/// Fit words in their order, from loose to tight.
const BY_TIGHTNESS: &[&str] = &[
    "loose running",
    "free running",
    "running",
    "sliding",
    "slip",
    "snug",
    "push",
    "light press",
    "press",
    "heavy press",
    "shrink",
];

/// What else a class at a size may be: a nominal size as it was read, a part alone, a
/// reamer, a mate, the classes next to it.
pub(super) fn near_class(size: &str, class: &str) -> Vec<String> {
    let is_class = class.bytes().all(|byte| byte.is_ascii_alphanumeric() || byte == b'/');
    let Some((num, _)) = number(size, 0).filter(|_| is_class) else { return Vec::new() };
    let letters = class.trim_end_matches(|c: char| c.is_ascii_digit());
    let grade: Option<u32> = class[letters.len()..].parse().ok();
    match (class.split_once('/'), grade) {
        (Some((hole, shaft)), _) => vec![format!("{size} {hole}"), format!("{size} {shaft}")],
        (None, Some(grade)) if ["RC", "LC", "LT", "LN", "FN"].contains(&letters) => {
            [grade.saturating_sub(1), grade + 1]
                .map(|grade| format!("{size} {letters}{grade}"))
                .to_vec()
        }
        (None, Some(_)) if letters.len() < 3 => {
            let is_read = num.places > 1 && !num.is_fraction;
            let nominal = nominal_of(&num, System::Millimetres).filter(|_| is_read);
            let read = nominal.map(|nominal| format!("{nominal} {class} = {size}"));
            let is_hole = letters.starts_with(|c: char| c.is_ascii_uppercase());
            let whole =
                if is_hole { format!("ream {size} {class}") } else { format!("{size} H7/{class}") };
            read.into_iter().chain([whole]).collect()
        }
        _ => Vec::new(),
    }
}

/// What else a person may have meant who is read as this plain query.
pub(crate) fn others(plain: &str) -> Vec<String> {
    let mut other = Vec::new();
    let swap = |a: &str, b: &str| plain.contains(a).then(|| plain.replacen(a, b, 1));
    if let Some(rest) = plain.strip_prefix("hole ").filter(|rest| !rest.contains("shaft")) {
        other.push(format!("shaft {rest}"));
    } else if let Some(rest) = plain.strip_prefix("shaft ").filter(|rest| !rest.contains("hole")) {
        other.push(format!("hole {rest}"));
    }
    if let Some((hole, shaft)) =
        plain.strip_prefix("hole ").and_then(|rest| rest.split_once(", shaft "))
    {
        other.push(format!("hole {shaft}, shaft {hole}"));
    }
    for cut in ["bore ", "turn "] {
        if let Some((size, start)) =
            plain.strip_prefix(cut).and_then(|rest| rest.split_once(" from "))
        {
            let start = start.split([',', ' ']).next().unwrap_or_default();
            other.push(format!("{size} = {start}"));
            other.push(size.to_owned());
        }
    }
    if let Some((size, _)) = plain.split_once(" = ") {
        other.push(size.to_owned());
    } else if let Some((size, class)) = plain.split_once(' ') {
        other.extend(near_class(size, class));
    }
    for lead in ["ream ", "drill ", "rehearse ", "keyway for "] {
        other.extend(
            plain
                .strip_prefix(lead)
                .map(|rest| rest.split_once(" from ").map_or(rest, |(size, _)| size).to_owned()),
        );
    }
    other.extend(swap(" tap", " clearance"));
    if let Some((thread, _)) = plain.split_once(" clearance").filter(|_| !plain.contains("pick")) {
        other.push(format!("{thread} tap"));
    }
    for tail in [" cut", " wires", " screw", " nut", " tap"] {
        other.extend(plain.split_once(tail).map(|(thread, _)| thread_alone(thread)));
    }
    other.extend(swap(" clearance ", " interference ").filter(|_| plain.starts_with("pick")));
    other.extend(swap(" interference ", " clearance ").filter(|_| plain.starts_with("pick")));
    if plain.starts_with("assemble ") {
        other.extend(
            plain.strip_suffix(", shrink").map(str::to_owned).or(Some(format!("{plain}, shrink"))),
        );
    }
    if plain.starts_with("bushing ") {
        other.extend(
            swap("sintered bronze", "bronze").or_else(|| swap(", bronze", ", sintered bronze")),
        );
    }
    other.extend(swap(" general m", " general f"));
    if let Some((first, rest)) = plain.strip_prefix("align ").and_then(|rest| rest.split_once(' '))
        && let Some((second, over)) = rest.split_once(" over ")
    {
        other.push(format!("align {second} {first} over {over}"));
    }
    // The words next to the one that was said.
    let (head, tail) = plain.split_once(", ").map_or((plain, ""), |(head, _)| (head, ""));
    if let Some((size, word)) = head.split_once(' ')
        && size.starts_with(|c: char| c.is_ascii_digit())
        && let Some(at) = BY_TIGHTNESS.iter().position(|known| *known == word)
    {
        for near in [at.checked_sub(1), Some(at + 1)].into_iter().flatten() {
            other.extend(BY_TIGHTNESS.get(near).map(|word| format!("{size} {word}{tail}")));
        }
    }
    other.truncate(3);
    other
}
