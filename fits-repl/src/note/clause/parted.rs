//! A line parted into clauses, and what stands beside a size in one.

use super::items::{Item, Placed};
use crate::note::{
    Line, lexicon,
    token::{Kind, Num, Token},
};

/// `.3735 meas`: said behind the size.
pub(super) fn is_measured_behind(tokens: &[Token]) -> bool {
    let size = tokens.iter().rposition(|token| matches!(token.kind, Kind::Num(_)));
    let word = tokens.last().and_then(Token::word);
    size.is_some_and(|at| at + 2 == tokens.len())
        && word.is_some_and(crate::note::lexicon::surely_measured)
}

pub(super) fn class_after(items: &[Placed], at: usize) -> Option<String> {
    // `6.35 outside p6`: the word for the feature stands between.
    if let [(Item::Feature { .. }, _), (Item::Class(class), _), ..] = &items[at + 1..] {
        return Some(class.clone());
    }
    items
        .get(at + 1..)?
        .iter()
        .take(2)
        .find_map(|(item, _)| match item {
            Item::Class(class) => Some(class.clone()),
            _ => None,
        })
        .filter(|_| matches!(items.get(at + 1), Some((Item::Class(_) | Item::Off(..), _))))
}

pub(super) fn off_after(items: &[Placed], at: usize) -> Option<(Num, Num)> {
    items.get(at + 1..)?.iter().take(2).find_map(|(item, _)| match item {
        Item::Off(low, high) => Some((low.clone(), high.clone())),
        _ => None,
    })
}

pub(super) fn is_after_size(items: &[Placed], at: usize) -> bool {
    at > 0 && matches!(items[at - 1].0, Item::Size(_) | Item::OfMate(_))
}

/// `18 H7 -> 18.005`: what stands before the arrow is wanted.
pub(super) fn before_read(items: &[Placed], at: usize, line: &Line) -> bool {
    let reads = items[at..].iter().position(|(item, _)| matches!(item, Item::Reads(true)));
    let is_size = |(item, _): &Placed| matches!(item, Item::Size(Kind::Num(_)));
    !line.reads && reads.is_some_and(|reads| items[at + reads..].iter().any(is_size))
}

/// Does `not` or `instead of` stand right before a size?
pub(super) fn is_denied(items: &[Placed], at: usize) -> bool {
    let before = items[..at].iter().rev().map(|(item, _)| item);
    before
        .take_while(|item| matches!(item, Item::Not | Item::Loose(_)))
        .any(|item| matches!(item, Item::Not))
}

/// `56, not 54 mm`: the unit written beside one of the two holds for both.
pub(super) fn lend_unit(items: &mut [Placed]) {
    let Some(not) = items.iter().position(|(item, _)| matches!(item, Item::Not)) else { return };
    let (before, behind) = items.split_at_mut(not);
    let is_num = |(item, _): &&mut Placed| matches!(item, Item::Size(Kind::Num(_)));
    let pair = (before.iter_mut().rev().find(is_num), behind.iter_mut().find(is_num));
    if let (Some((Item::Size(Kind::Num(one)), _)), Some((Item::Size(Kind::Num(other)), _))) = pair
        && !(one.is_inch_shaped() || other.is_inch_shaped())
    {
        one.unit = one.unit.or(other.unit);
        other.unit = other.unit.or(one.unit);
    }
}

/// Behind `not`, a second size is what holds.
pub(super) fn is_correction(items: &[Placed], at: usize) -> bool {
    items[..at].iter().any(|(item, _)| matches!(item, Item::Size(_)))
}

pub(super) fn is_bare_size(tokens: &[Token]) -> bool {
    has_size(tokens)
        && tokens.iter().all(|token| {
            matches!(
                token.kind,
                Kind::Num(_) | Kind::Dims(_) | Kind::Class(_) | Kind::Off(..) | Kind::Sign(_)
            )
        })
}

pub(in crate::note) fn has_size(tokens: &[Token]) -> bool {
    tokens.iter().any(|token| {
        matches!(token.kind, Kind::Num(_) | Kind::Dims(_) | Kind::Range(..) | Kind::Thread(_))
    })
}

/// `ok` or `done` at the end.
pub(super) fn is_tick(found: &[Token]) -> bool {
    found
        .iter()
        .rev()
        .find_map(Token::word)
        .is_some_and(|word| matches!(word, "ok" | "done" | "okay"))
        || found
            .iter()
            .any(|token| matches!(token.kind, Kind::Sign('\u{2713}' | '\u{2714}' | '\u{221a}')))
}

/// `turn it down to 1.0007?`, of a day: the writer's question, and nothing that was read.
pub(super) fn asks_for_work(raw: &str, clause: &[Token], line: &Line) -> bool {
    let ends = clause.last().and_then(|last| raw.get(last.at.end..));
    line.date.is_some()
        && clause.first().and_then(Token::word).is_some_and(crate::note::work::orders)
        && ends.is_some_and(|behind| behind.trim_start().starts_with('?'))
}

/// Does a sign with a blank on each side part words, not two sizes?
fn is_spaced(found: &[Token], at: usize) -> bool {
    let is_num = |token: &Token| matches!(token.kind, Kind::Num(_));
    found.get(at + 1).is_some_and(|next| {
        let (before, own) = (&found[at - 1], &found[at]);
        before.at.end < own.at.start
            && own.at.end < next.at.start
            && !(is_num(before) && is_num(next))
    })
}

/// Do the words up to the first size name a feature, and say nothing of a reading?
fn names_feature(found: &[Token]) -> bool {
    let words: Vec<&str> = found.iter().map_while(Token::word).collect();
    has_size(found.get(words.len()..).unwrap_or_default().get(..1).unwrap_or_default())
        && words.iter().any(|word| lexicon::feature(word).is_some())
        && !words.iter().any(|word| lexicon::says_measured(word))
}

/// Where the text before a token ends: `47 H8 x 7 dp` has its class behind both sizes.
fn end_before(found: &[Token], at: usize) -> usize {
    let last = |token: &Token| match &token.kind {
        Kind::Dims(all) => all.iter().map(|num| num.at.end).chain([token.at.end]).max(),
        _ => Some(token.at.end),
    };
    let is_class = matches!(found[at - 1].kind, Kind::Class(_));
    let before = &found[at.saturating_sub(1 + usize::from(is_class))..at];
    before.iter().filter_map(last).max().unwrap_or_default()
}

/// The clauses with the sign before each.
pub(super) fn clauses(found: &[Token], dated: bool) -> Vec<(char, &[Token])> {
    let mut out = Vec::new();
    let mut start = 0;
    let mut sign = '^';
    for (at, token) in found.iter().enumerate() {
        let spaced_dash = token.is_sign('-');
        // `journal, inboard: same`: the mark belongs to the name.
        let marks = token.is_sign(',')
            && at > start
            && found.get(at + 1).and_then(Token::word).is_some_and(|word| {
                crate::note::names::is_instance(&crate::note::lexicon::stem(word))
            })
            && found.get(at + 2).is_some_and(|next| next.is_sign(':') || next.is_sign('='));
        if marks {
            continue;
        }
        let breaks = match token.kind {
            Kind::Sign(c @ (',' | ';' | ':' | '(' | ')' | '|' | '\t' | '!' | '+')) => Some(c),
            Kind::Sign('?') => Some('?'),
            // `spindle 9.985 √ bushes 10.005`: what follows a tick is of its own.
            Kind::Sign('.' | '\u{2713}' | '\u{2714}' | '\u{221a}') => Some('.'),
            Kind::Sign('-') if spaced_dash => Some('-'),
            // `slot came out 14.2 -> rod thickness 13.9`: what it takes elsewhere.
            Kind::Sign('>')
                if dated && has_size(&found[start..at]) && names_feature(&found[at + 1..]) =>
            {
                Some('>')
            }
            // `runs in the frames / seat 12mm`, not `.750 / .875`.
            Kind::Sign('/') if at > start && is_spaced(found, at) => Some(','),
            // `.9995 and the housing 1.2510`: each has its own.
            Kind::Word(ref word)
                if matches!(word.as_str(), "and" | "so")
                    && has_size(&found[start..at])
                    && has_size(&found[at..]) =>
            {
                Some(' ')
            }
            _ => None,
        };
        if let Some(next) = breaks {
            if at > start {
                out.push((sign, &found[start..at]));
            }
            (start, sign) = (at + 1, next);
        } else if at > start
            && token.at.start >= end_before(found, at) + 2
            && !matches!(found[at - 1].kind, Kind::Sign(_))
        {
            out.push((sign, &found[start..at]));
            (start, sign) = (at, ' ');
        }
    }
    if start < found.len() {
        out.push((sign, &found[start..]));
    }
    out
}
