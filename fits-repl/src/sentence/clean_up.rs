//! A worn bore by its readings: the least that cleans it up.

use std::fmt::Write as _;

use crate::sentence::{
    Said,
    token::{Num, System, Token},
    view::View,
};

/// `old bore reads .753 .757 .761, what does it clean up at, was 3/4`.
pub(crate) fn clean_up(view: &View, system: System) -> Option<Said> {
    view.only(
        &[
            "head", "hole", "was", "should", "trouble", "role", "reads", "hub", "bushing",
            "material", "shaft",
        ],
        |token| matches!(token, Token::Number(_)),
    )?;
    if view.has("shaft") && !view.types(&["boss"]) {
        return None;
    }
    let is_asked = view.says("head", "clean");
    let (mut sizes, mut sides) = ([None; 2], [None; 2]);
    let mut readings: Vec<&Num> = Vec::new();
    // The old size or the wanted one, where it comes next; else a reading.
    let mut next: Option<usize> = None;
    for (at, item) in view.items.iter().enumerate() {
        let beside = |at: Option<usize>| match at.and_then(|at| view.items.get(at))?.token {
            Token::Word { kind: "role", name } => Some(name),
            _ => None,
        };
        match &item.token {
            Token::Word { kind: "was", .. } => next = Some(0),
            Token::Word { kind: "should", .. } => next = Some(1),
            Token::Word { kind: "reads" | "trouble" | "hole", .. } => next = None,
            Token::Number(num) => {
                let side = beside(Some(at + 1)).or_else(|| beside(at.checked_sub(1)));
                let slot = match (side, next.take()) {
                    (Some("od"), _) => &mut sides[0],
                    (Some("wall"), _) => &mut sides[1],
                    (Some(_), _) => return None,
                    (None, Some(size)) => &mut sizes[size],
                    (None, None) => {
                        readings.push(num);
                        continue;
                    }
                };
                if slot.replace(num).is_some() {
                    return None;
                }
            }
            _ => {}
        }
    }
    let ([was, should], [od, wall]) = (sizes, sides);
    // Readings of one bore; two and more are a worn one without a question.
    let first = readings.first()?.mm(system);
    let is_near = |num: &&Num| (num.mm(system) - first).abs() < 0.1 * first;
    if readings.len() > 6
        || !readings.iter().chain(&was).chain(&should).all(is_near)
        || !is_asked && (readings.len() < 2 || !view.has("trouble") || was.is_none())
        || view.words("material").count() > 1
    {
        return None;
    }
    let mut plain = "clean up".to_owned();
    for num in readings {
        let _ = write!(plain, " {}", num.plain(system));
    }
    for (word, num) in [("was", was), ("should be", should), ("od", od), ("wall", wall)] {
        if let Some(num) = num {
            let _ = write!(plain, ", {word} {}", num.plain(system));
        }
    }
    match (view.word("material"), view.has("bushing")) {
        (None, _) => {}
        (Some(metal), true) => {
            let _ = write!(plain, ", bush {metal}");
        }
        (Some(_), false) => return None,
    }
    Some(Said::plain(plain))
}
