//! The names that an outline gives its parts and their features.

use std::ops::Range;

use crate::note::{
    lexicon::{self, feature, inwardness, is_material},
    talk,
    token::{Kind, Token, tokens},
    work,
};

/// The most words of a name.
const WORDS: usize = 4;

/// Orders with which no name begins: `2) Make the pins`.
const ORDERS: &[&str] = &[
    "make", "buy", "get", "order", "check", "measure", "fit", "assemble", "remove", "clean",
    "find", "weld", "cut", "mark", "saw", "set",
];

/// Where the name of a part ends that begins at a place of a line: before a size, a sign,
/// two spaces, its metal or its feature. None where it is an order: `turn the screw`.
pub(super) fn of_part(raw: &str, start: usize) -> Option<usize> {
    let found = tokens(&raw[start..], start);
    let is_order = |word: &str| work::orders(word) || ORDERS.contains(&word) || talk::asks(word);
    match &found.first()?.kind {
        Kind::Word(first) if !is_order(first) => {}
        // `2 6203 2RS`
        Kind::Code(_) => {}
        _ => return None,
    }
    let is_thing =
        |at: usize| found.get(at).and_then(Token::word).is_some_and(|it| inwardness(it).is_some());
    // `FRONT END  steel`: a word for a feature that a sign or two spaces set off.
    let is_end = |at: usize| {
        let is_feature = found[at].word().and_then(feature).is_some();
        let next = found.get(at + 1);
        let is_apart = |next: &Token| next.at.start > found[at].at.end + 1;
        is_feature && next.is_none_or(|next| is_apart(next) || matches!(next.kind, Kind::Sign(_)))
    };
    let goes_on = |at: &usize| {
        let token = &found[*at];
        let is_near = *at == 0 || token.at.start <= found[*at - 1].at.end + 1;
        is_near
            && *at < WORDS
            && match &token.kind {
                Kind::Word(word) => {
                    *at == 0 || is_thing(*at) || is_thing(*at + 1) || names(word) || is_end(*at)
                }
                Kind::Code(_) => true,
                _ => false,
            }
    };
    let count = (0..found.len()).take_while(goes_on).count();
    count.checked_sub(1).map(|last| found[last].at.end)
}

/// May a word behind the first be of a part's name?
fn names(word: &str) -> bool {
    !(is_material(word)
        || lexicon::leads_to_mate(word)
        || lexicon::is_small(word)
        || lexicon::says_measured(word)
        || lexicon::fit(&[word]).is_some()
        || feature(word).is_some()
        || matches!(word, "qty" | "off" | "bought" | "boughtin" | "make" | "new" | "old"))
}

/// The place of a feature's name in its text: `front dia` of `front dia 3/4, runs in 2b`,
/// `cross hole` of `1/8 cross hole`; blank where its text names none.
pub(super) fn of_feature(raw: &str, start: usize) -> Range<usize> {
    let found = tokens(&raw[start..], start);
    let is_size = |token: &Token| {
        matches!(token.kind, Kind::Num(_) | Kind::Range(..) | Kind::Thread(_) | Kind::Count(_))
    };
    let skipped = found.iter().take_while(|token| is_size(token)).count();
    let named: Vec<&Token> = found[skipped..]
        .iter()
        .take(WORDS)
        .take_while(|token| token.word().is_some_and(tells))
        .collect();
    match named.as_slice() {
        [] => start..start,
        [one] => one.at.clone(),
        [first, .., last] => first.at.start..last.at.end,
    }
}

/// May a word be of a feature's name?
fn tells(word: &str) -> bool {
    let is_no_name = lexicon::leads_to_mate(word)
        || lexicon::is_small(word)
        || lexicon::says_measured(word)
        || lexicon::fit(&[word]).is_some();
    is_work(word) || !(is_no_name || matches!(word, "turned" | "thru" | "through" | "qty"))
}

/// Is it the work on a bore that stands for its name: `13/16 ream`?
pub(super) fn is_work(name: &str) -> bool {
    matches!(name.to_lowercase().as_str(), "ream" | "reamed" | "rm" | "bored" | "drill" | "drilled")
}

/// What two names of one thing have in common: a ream is a bore.
pub(super) fn kind(name: &str) -> String {
    if is_work(name) { "bore".to_owned() } else { name.to_lowercase() }
}
