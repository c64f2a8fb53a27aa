//! Two parts, each with a size and limits of its own.

use crate::sentence::{
    Said,
    sizes::{deviations_text, span_text},
    token::{Num, System, Token},
    view::View,
};

/// A part as its limits are said.
struct Part<'a> {
    size: &'a Num,
    /// As a plain query has it.
    plain: String,
    is_hole: bool,
}

/// `hole 40 H7 with shaft 40 n6`, `shaft 20 -0.02 -0.041, hole 20 H7`.
pub(super) fn each_part(view: &View, system: System) -> Option<Said> {
    view.only(&["hole", "shaft", "hub", "head", "reads"], |token| {
        matches!(
            token,
            Token::Number(_)
                | Token::Span(..)
                | Token::Deviations { .. }
                | Token::Hole(_)
                | Token::Shaft(_)
        )
    })?;
    let is_read = (0..view.items.len()).any(|at| {
        view.kind_at(at) == Some("reads") && !matches!(&*view.said(at), "is" | "'s" | "are")
    });
    if is_read {
        return None;
    }
    let is_asked = |head: &str| matches!(head, "clearance" | "interf" | "whatfit" | "ok");
    if !view.words("head").all(is_asked) {
        return None;
    }
    let starts: Vec<usize> = (0..view.items.len())
        .filter(|at| matches!(view.items[*at].token, Token::Number(_) | Token::Span(..)))
        .collect();
    let [first, second] = starts[..] else { return None };
    let end = end_of(view, first);
    let [lead, gap, tail] = [0..first, end..second, end_of(view, second)..view.items.len()]
        .map(|stretch| stretch.filter_map(|at| noun(view, at)).collect::<Vec<bool>>());
    let by_class = class_at(view, first + 1);
    let [of_first, of_second] = match (&lead[..], &gap[..], &tail[..]) {
        ([.., one], gap, tail) => [Some(*one), gap.last().or(tail.first()).copied()],
        ([], [one, .., other], _) | ([], [one], [other, ..]) => [Some(*one), Some(*other)],
        // `20 H7, shaft 20 g6`
        ([], [one], []) if by_class.is_some_and(|class| class != *one) => [None, Some(*one)],
        ([], gap, tail) => [gap.first().copied(), tail.first().copied()],
    };
    let (a, b) = (part(view, first, of_first, system)?, part(view, second, of_second, system)?);
    let (hole, shaft) = match (a.is_hole, b.is_hole) {
        (true, false) => (a, b),
        (false, true) => (b, a),
        _ => return None,
    };
    let limited =
        view.count(|token| !matches!(token, Token::Number(_) | Token::Word { .. } | Token::Break));
    let apart = (hole.size.mm(system) - shaft.size.mm(system)).abs();
    if limited < 2 || apart > 0.05 * hole.size.mm(system) {
        return None;
    }
    Some(Said::plain(format!("hole {}, shaft {}", hole.plain, shaft.plain)))
}

/// Is it the hole that is named here, or the shaft?
fn noun(view: &View, at: usize) -> Option<bool> {
    match view.kind_at(at)? {
        "hole" | "hub" => Some(true),
        "shaft" => Some(false),
        _ => None,
    }
}

/// Is the class that stands here a hole's, or a shaft's?
fn class_at(view: &View, at: usize) -> Option<bool> {
    match view.items.get(at)?.token {
        Token::Hole(_) => Some(true),
        Token::Shaft(_) => Some(false),
        _ => None,
    }
}

/// Where what is said of a size ends.
fn end_of(view: &View, at: usize) -> usize {
    let is_limit = |at: usize| {
        let next = view.items.get(at).map(|item| &item.token);
        matches!(next, Some(Token::Deviations { .. } | Token::Hole(_) | Token::Shaft(_)))
    };
    if is_limit(at + 1) { at + 2 } else { at + 1 }
}

/// The part whose size stands at a place.
fn part(view: &View, at: usize, by_noun: Option<bool>, system: System) -> Option<Part<'_>> {
    let next = view.items.get(at + 1).map(|item| &item.token);
    let (size, plain) = match (&view.items[at].token, next) {
        (Token::Span(low, high), _) if low.mm(system) < high.mm(system) => {
            (low, span_text(low, high, system))
        }
        (Token::Number(num), Some(Token::Deviations { upper, lower, is_both })) => {
            (num, deviations_text(num, upper, lower, *is_both, system))
        }
        (Token::Number(num), Some(Token::Hole(class) | Token::Shaft(class))) => {
            (num, format!("{} {class}", num.plain(system)))
        }
        _ => return None,
    };
    let by_class = class_at(view, at + 1);
    // A class of the other part contradicts its noun.
    if by_noun.zip(by_class).is_some_and(|(noun, class)| noun != class) {
        return None;
    }
    Some(Part { size, plain, is_hole: by_noun.or(by_class)? })
}
