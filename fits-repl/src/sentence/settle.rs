//! One reading of a phrase out of those that its questions found.

use crate::sentence::{
    Said, Setting, distinct,
    token::{self, System},
    view::View,
};

/// How many numbers stand in a plain query: runs of digits, points and slashes,
/// but the digits of a class, as `h6`.
pub(super) fn numbers_in(line: &str) -> usize {
    let is_part = |c: char| c.is_ascii_digit() || matches!(c, '.' | '/');
    let words = line
        .split("..")
        .flat_map(|part| part.split(|c: char| !(is_part(c) || c.is_ascii_alphabetic())));
    let own = words.filter(|word| !word.starts_with(|c: char| c.is_ascii_alphabetic()));
    let parts = own.flat_map(|word| word.split(|c: char| !is_part(c)));
    parts.filter(|run| run.contains(|c: char| c.is_ascii_digit())).count()
}

/// The question under the units that bare numbers take; where that is not
/// known, under both.
pub(super) fn in_units(
    view: &View,
    setting: Setting,
    question: impl Fn(&View, System) -> Option<Said>,
) -> Option<Said> {
    // No reading leaves a number out, or a class.
    let typed = view.figures();
    let leaves_out = |lines: &[String]| {
        let has = |class: &str| {
            lines.iter().any(|line| line.to_lowercase().contains(&class.to_lowercase()))
        };
        lines.iter().map(|line| numbers_in(line)).sum::<usize>() < typed || !view.classes().all(has)
    };
    let question = |view: &View, system| {
        question(view, system)
            .filter(|said| !matches!(said, Said::Plain(lines) if leaves_out(lines)))
    };
    let both = || {
        let choices = [System::Inches, System::Millimetres]
            .into_iter()
            .filter_map(|system| question(view, system))
            .flat_map(Said::queries)
            .collect();
        let choices = distinct(choices);
        match choices.len() {
            0 => None,
            1 => choices.into_iter().next().map(Said::plain),
            _ => Some(Said::ask("inches or millimetres is not said", choices)),
        }
    };
    let (inch, metric) = view.evidence();
    let bare: Vec<_> = view.bare().collect();
    if bare.is_empty() {
        return question(view, if inch { System::Inches } else { System::Millimetres });
    }
    // Thousandths beside a bare 20: of inches, or of a part in millimetres?
    let large = bare.iter().any(|num| num.value >= 12.0 && !num.is_fraction);
    match (inch, metric) {
        (true, true) => return both(),
        (true, false) if large && view.tells_only_thou() => return both(),
        (true, false) => return question(view, System::Inches),
        (false, true) => return question(view, System::Millimetres),
        (false, false) => {}
    }
    let has_iso = view.tokens().any(|token| {
        matches!(
            token,
            token::Token::Hole(_)
                | token::Token::Shaft(_)
                | token::Token::Pair(_)
                | token::Token::General(_)
        )
    });
    let most = bare.iter().map(|num| num.value).fold(0.0, f64::max);
    match setting.units {
        Some(System::Inches) => {
            if most >= 12.0 {
                both()
            } else {
                question(view, System::Inches)
            }
        }
        Some(System::Millimetres) => {
            if most < 1.5
                && !view.has("instrument")
                && !view.says("role", "division")
                && !view.says("head", "dial")
            {
                both()
            } else {
                question(view, System::Millimetres)
            }
        }
        None => {
            if bare.iter().any(|num| num.leads && num.places >= 3) {
                question(view, System::Inches)
            } else if !has_iso && most <= 5.0 || most < 1.0 && !view.has("head") {
                both()
            } else {
                question(view, System::Millimetres)
            }
        }
    }
}

/// One reading is it; several that differ are asked about.
pub(super) fn settle(mut found: Vec<(&str, Said)>) -> Option<Said> {
    // What gives way to what: a head beats none.
    const GIVES_WAY: &[(&str, &str)] = &[
        ("reading", "plan"),
        ("reading", "rehearse"),
        ("thread", "tap"),
        ("thread", "clearance"),
        ("thread", "wires"),
        ("thread", "thread-cut"),
        ("fit", "suit"),
        ("fit", "plan"),
        ("fit", "bought"),
        ("fit", "ream"),
        ("fit", "reading"),
        ("suit", "plan"),
        ("suit", "bushing"),
        ("pair", "suit"),
        ("drill", "tap"),
        ("drill", "ream"),
        ("drill", "clearance"),
        ("size", "drill"),
        ("size", "stack"),
        ("size", "settings"),
        ("size", "fit"),
        ("assemble", "pick-press"),
        ("assemble", "bushing"),
        ("fit", "assemble"),
        ("bearing", "bought"),
        ("general", "grade"),
        ("fit", "warm"),
        ("fit", "pick"),
        ("clearance", "pick"),
        ("pair", "reading"),
        ("thread-cut", "tap"),
        ("suit", "rescue"),
        ("rescue", "pair"),
        ("rescue", "reading"),
        ("rescue", "bearing"),
        ("by-mic", "thread"),
        ("rescue", "clean-up"),
        ("reading", "clean-up"),
        ("suit", "clean-up"),
        ("pair", "clean-up"),
        ("plan", "clean-up"),
        ("hardware", "share"),
        ("pick-press", "share"),
        ("assemble", "share"),
        ("tap", "insert"),
        ("thread", "insert"),
        ("clearance", "insert"),
        ("ream", "crib"),
        ("drill", "crib"),
        ("tap", "crib"),
    ];
    let names: Vec<String> = found.iter().map(|(name, _)| (*name).to_owned()).collect();
    found.retain(|(name, ..)| {
        !GIVES_WAY
            .iter()
            .any(|(loser, winner)| loser == name && names.iter().any(|known| known == winner))
    });
    // A plain reading stands before questions back.
    let (_, first) = found.first()?.clone();
    if found.iter().all(|(_, said)| *said == first) {
        return Some(first);
    }
    let mut choices = Vec::new();
    let mut why = "it can be read in more than one way".to_owned();
    for (_, said) in found {
        match said {
            Said::Plain(lines) => choices.push(lines.join(" ; ")),
            Said::Ask { choices: more, why: reason } => {
                why = reason;
                choices.extend(more);
            }
        }
    }
    Some(Said::ask(why, distinct(choices)))
}
