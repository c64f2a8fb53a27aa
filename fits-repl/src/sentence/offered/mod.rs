//! A phrase that no question takes whole: what its figures and its plainest words
//! may ask is offered, never answered.

mod parts;
mod sizes;

use super::{
    Said, Setting, distinct,
    line::{Line, TURNS},
    loose::Guess,
    ready,
    settle::{in_units, numbers_in},
    sizes::fit_of,
    token::{Num, System, Token},
    view::{Item, View},
};
use crate::{
    sentence::offered::{
        parts::{
            bushings, of_a_bearing, of_a_bushing_in_its_hole, of_a_gripped_bushing, of_a_joint,
            of_a_pitch, of_a_stack, of_a_tube, of_heat, of_thread,
        },
        sizes::{of_one, of_several_fits, of_size, of_two},
    },
    words::clause::{opened_by, reserved},
};

/// What begins so has its own words for what is wrong.
pub(super) const OWN_WORDS: &[&str] =
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
    // `meant to be`, `without fuss`: known together, they turn nothing.
    let is_idle = |at: usize, item: &Item| {
        matches!(item.token, Token::Word { kind: "small" | "should" | "trouble", .. })
            && view.said(at).contains(' ')
    };
    let known = view.items.iter().enumerate();
    let known = known.filter(|(at, item)| !is_idle(*at, item)).map(|(_, item)| item.at.clone());
    let turns = known.chain(unknown.iter().cloned()).any(|at| {
        let said = text.get(at).unwrap_or_default().to_lowercase();
        said.split(' ').any(|word| TURNS.contains(&word))
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
    let numbers: Vec<(usize, &Num)> = view.numbers().collect();
    let threads: Vec<&String> = view
        .tokens()
        .filter_map(|token| match token {
            Token::Thread { name, .. } => Some(name),
            _ => None,
        })
        .collect();
    if let (None, [(_, num)], []) = (&fit, &numbers[..], &threads[..])
        && let Some(all) = of_several_fits(view, &num.plain(system))
    {
        return Some(all);
    }
    if fit.is_none() && view.has("fit") {
        return None;
    }
    let sizes: Vec<&Num> = numbers.iter().map(|(_, num)| *num).collect();
    if let Some(all) = of_a_bearing(view)
        .or_else(|| of_a_tube(view, &numbers, fit.as_ref(), system))
        .or_else(|| of_a_stack(view, &sizes, system))
        .or_else(|| of_a_pitch(view, &sizes, system))
        .or_else(|| of_heat(view, &sizes, fit.as_ref(), system))
        .or_else(|| of_a_gripped_bushing(view, &sizes, system))
        .or_else(|| of_a_bushing_in_its_hole(view, &sizes, system))
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
            sizes[..2].sort_by(|a, b| a.by_size(b, system));
            let [id, od, long] = sizes.map(|num| num.plain(system));
            Some(bushings(&id, &od, &long))
        }
        ([], [a, b], _) => Some(of_two(view, *a, *b, fit.as_ref(), system)),
        _ => None,
    }
}
