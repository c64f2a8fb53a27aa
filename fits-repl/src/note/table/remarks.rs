//! Sizes in the cell for remarks: `4 deep`, `44.5 od x 3.2 wall`.

use super::features::is_key;
use crate::note::{
    Line, clause,
    lexicon::{feature, inwardness, stem},
    token::{Kind, Token, tokens},
    told::Told,
    wants::Wants,
};

/// What a remark says of the row's part, or of the row's feature: only what names its
/// sizes by a plain word.
pub(super) fn sizes_of_remark(
    told: &mut Told,
    wants: &mut Wants,
    (at, note): (usize, &str),
    raw: &str,
    line: &mut Line,
    (part, feature): (usize, Option<usize>),
) {
    let found = tokens(note, at);
    for piece in found.split(|token| matches!(token.kind, Kind::Sign(',' | ';' | '.'))) {
        if !is_plain(piece, is_key(told, part)) {
            continue;
        }
        let before = (line.is_row, line.subject, line.feature);
        (line.is_row, line.subject, line.feature) = (false, Some(part), feature);
        clause::text(told, wants, raw, piece, line);
        (line.is_row, line.subject, line.feature) = before;
    }
}

/// Does each size of a piece stand beside the word for it?
fn is_plain(piece: &[Token], is_key: bool) -> bool {
    let sizes = piece
        .iter()
        .filter(|token| matches!(token.kind, Kind::Num(_) | Kind::Dims(_) | Kind::Thread(_)))
        .count();
    // `M10 coach bolts` are what goes in; `was 12 thick` is no more.
    let is_other = |token: &Token| match &token.kind {
        Kind::Word(word) => {
            matches!(word.as_str(), "was" | "were" | "from" | "see" | "not" | "or" | "if" | "old")
                || inwardness(word).is_some() && feature(word).is_none()
        }
        kind => matches!(kind, Kind::Range(..) | Kind::Sign('?')),
    };
    let words = piece.iter().filter_map(Token::word);
    let named = words.filter(|word| feature(word).is_some()).count();
    let is_thread = piece.iter().any(|token| matches!(token.kind, Kind::Thread(_)));
    let is_whole_key = is_key
        && matches!(piece.first().map(|token| &token.kind), Some(Kind::Dims(all)) if all.len() == 3);
    let clear = piece.iter().position(is_other).is_none_or(|at| {
        // `M8 x 15 end in post`: a part behind the word that leads to it.
        at > 0 && piece[at - 1].word().is_some_and(|word| stem(word) == "in")
    });
    sizes > 0 && (named >= sizes || is_thread || is_whole_key) && clear
}
