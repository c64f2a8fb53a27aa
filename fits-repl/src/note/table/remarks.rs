//! Sizes in the cell for remarks: `4 deep`, `44.5 od x 3.2 wall`.

use fits_core::job::whole::SizeKind;

use super::features::is_key;
use crate::note::{
    Line, clause,
    lexicon::{self, feature, inwardness, stem},
    token::{Kind, Num, Token, tokens},
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
        if by_its_words(told, wants, raw, piece, line, (part, feature))
            || !is_plain(piece, is_key(told, part))
        {
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

/// `flanged 36 x 4`, `keyed 5`, `41 from worm bore`, `3 in of thread`, `taper pin 6`: words
/// that say of themselves what the size is of. False for all others.
fn by_its_words(
    told: &mut Told,
    wants: &mut Wants,
    raw: &str,
    piece: &[Token],
    line: &mut Line,
    (part, feature): (usize, Option<usize>),
) -> bool {
    let words: Vec<&str> = piece.iter().filter_map(Token::word).collect();
    let sizes = piece.iter().filter_map(|token| match &token.kind {
        Kind::Num(num) => Some(vec![num.clone()]),
        Kind::Dims(all) => Some(all.clone()),
        _ => None,
    });
    let sizes: Vec<Vec<Num>> = sizes.collect();
    let ([all], Some(first)) = (sizes.as_slice(), piece.first()) else { return false };
    if words.len() + 1 != piece.len() {
        return false;
    }
    let at = first.at.start..piece[piece.len() - 1].at.end;
    let base = feature.map(|at| told.job.features[at].name.clone());
    let leads = first.word().is_some();
    match (words.as_slice(), all.as_slice()) {
        (["flange" | "flanged"], [across, thick]) if leads => {
            told.sized(line, part, ("flange", SizeKind::Shaft), across, &at);
            told.sized(line, part, ("flange thickness", SizeKind::Length), thick, &at);
        }
        (["keyed"], [wide]) if leads => {
            told.sized(line, part, ("keyway", SizeKind::Other), wide, &at);
        }
        (["from", rest @ ..], [apart])
            if !leads && rest.iter().any(|word| lexicon::feature(word).is_some()) =>
        {
            let name = format!("{} from {}", base.unwrap_or_default(), rest.join(" "));
            told.sized(line, part, (name.trim(), SizeKind::Length), apart, &at);
        }
        (["of", "thread"], [long]) if !leads => {
            told.sized(line, part, ("thread length", SizeKind::Length), long, &at);
        }
        ([.., noun, "gap"], [wide]) if leads && lexicon::feature(noun).is_none() => {
            told.sized(line, part, (&words.join(" "), SizeKind::Length), wide, &at);
        }
        // What goes in beside it, by its own name: a part that the note sizes here.
        ([.., name], [_])
            if is_bought_in(name)
                && told.names.part_phrase(&words_of(piece)) == Some(words.len()) =>
        {
            let before = (line.is_row, line.subject, line.feature, line.declares);
            let id = told.part_named(&words.join(" "), line.number);
            (line.is_row, line.subject, line.feature, line.declares) =
                (false, Some(id), None, true);
            let size = piece.iter().filter(|token| token.word().is_none()).cloned();
            clause::text(told, wants, raw, &size.collect::<Vec<_>>(), line);
            (line.is_row, line.subject, line.feature, line.declares) = before;
        }
        _ => return false,
    }
    true
}

/// The words of a piece.
fn words_of(piece: &[Token]) -> Vec<Token> {
    piece.iter().filter(|token| token.word().is_some()).cloned().collect()
}

/// Is it what is put in beside a joint, and has one size that counts?
fn is_bought_in(word: &str) -> bool {
    matches!(stem(word).as_str(), "pin" | "dowel" | "gasket" | "shim" | "rivet" | "circlip")
}
