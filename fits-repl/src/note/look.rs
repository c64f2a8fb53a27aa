//! What a line or a whole note looks like before it is read.

use std::collections::HashSet;

use fits_core::size::Unit;

use super::{
    lexicon::{self, feature, is_material},
    lines, talk,
    token::{Kind, Token, tokens},
};

/// The unit of a line's bare numbers, where one of them is in millimetres.
pub(super) fn row_unit(found: &[Token]) -> Option<Unit> {
    let mut said = found.iter().filter_map(|token| match &token.kind {
        Kind::Num(num) => num.unit,
        _ => None,
    });
    let all_metric = said.clone().all(|unit| unit == Unit::Millimetre);
    // `nose nut - M20x1.5, 30 A/F`: what has a metric thread is made in millimetres.
    let is_nut = |token: &Token| {
        let stem = token.word().map(lexicon::stem).unwrap_or_default();
        matches!(stem.as_str(), "nut" | "screw" | "bolt" | "stud" | "setscrew" | "leadscrew")
    };
    let first = found.iter().position(is_size).unwrap_or(found.len());
    let is_screw = matches!(found.get(first).map(|token| &token.kind), Some(Kind::Thread(name))
        if name.starts_with('M'))
        && found[..first].iter().any(is_nut);
    let screw = is_screw.then_some(Unit::Millimetre);
    // `1.001 od, .875 bore`: decimals of an inch, whatever the rest of the note is in.
    let mut decimals = found.iter().filter_map(|token| match &token.kind {
        Kind::Num(num) if num.places > 0 => Some(num),
        _ => None,
    });
    let has_whole = found
        .iter()
        .any(|token| matches!(&token.kind, Kind::Num(num) if num.is_whole() && num.unit.is_none()));
    let is_inch = !has_whole
        && decimals.clone().any(|num| num.leading_point)
        && decimals.all(|num| num.places == 3 && num.unit.is_none());
    let screw = screw.or(is_inch.then_some(Unit::Inch));
    said.next().map_or(screw, |unit| Some(unit).filter(|_| all_metric))
}

fn is_size(token: &Token) -> bool {
    matches!(token.kind, Kind::Num(_) | Kind::Dims(_) | Kind::Range(..) | Kind::Thread(_))
}

/// `shaft, 5/8 drill rod` over `journals .500`: is a part turned down, in its line or in
/// those further in under it, from the stock that it is made of?
pub(super) fn is_turned_down(found: &[Token], below: &[&str]) -> bool {
    let turned = |found: &[Token]| {
        (0..found.len()).any(|at| {
            let is_end = found[at].word().is_some_and(|word| {
                matches!(
                    lexicon::stem(word).as_str(),
                    "journal" | "jnl" | "jrnl" | "seat" | "spigot" | "nose" | "neck" | "end"
                )
            });
            let sized =
                |at: usize| found.get(at).is_some_and(|next| matches!(next.kind, Kind::Num(_)));
            let word = found.get(at + 1).and_then(Token::word);
            let is_told = word.is_some_and(|word| word != "x" && !lexicon::leads_to_mate(word));
            is_end && (sized(at + 1) || sized(at + 2) && is_told)
        })
    };
    // `1/2 drill rod, runs in the frames, seat 12mm`: the rod itself runs there.
    let is_num = |token: &Token| matches!(token.kind, Kind::Num(_));
    let fit = found
        .iter()
        .position(|token| token.word().is_some_and(|word| lexicon::fit(&[word]).is_some()));
    if fit.is_some_and(|fit| found[..fit].iter().filter(|token| is_num(token)).count() < 2) {
        return false;
    }
    turned(found)
        || below
            .iter()
            .take_while(|line| line.starts_with([' ', '\t']) && !line.trim().is_empty())
            .any(|line| turned(&tokens(line, 0)))
}

/// Are there both inches and millimetres in a line?
pub(super) fn is_mixed(found: &[Token]) -> bool {
    let has = |unit: Unit| {
        found.iter().any(|token| matches!(&token.kind, Kind::Num(num) if num.unit == Some(unit)))
    };
    has(Unit::Inch) && has(Unit::Millimetre)
}

/// A text without the sizes that are struck out: `~~3/8 pins~~`.
pub(super) fn unstruck(raw: &str) -> String {
    let mut inside = false;
    let mut out = String::with_capacity(raw.len());
    for (at, piece) in raw.split("~~").enumerate() {
        if at > 0 {
            inside = !inside;
            out.push_str("  ");
        }
        out.extend(
            piece.chars().map(|c| if inside && (c.is_ascii_digit() || c == '/') { ' ' } else { c }),
        );
    }
    out
}

/// Are the lines sentences, not notes: long, and most with a full stop behind a word?
pub(super) fn is_prose(text: &str) -> bool {
    let lines = || text.lines().take(400).filter(|line| !line.trim().is_empty());
    let words = |line: &str| {
        line.split_whitespace().filter(|word| word.starts_with(char::is_alphabetic)).count()
    };
    let stops = |line: &str| {
        line.split_whitespace()
            .filter(|word| {
                word.len() > 3 && word.ends_with('.') && word.starts_with(char::is_alphabetic)
            })
            .count()
    };
    let mut counts: Vec<usize> = lines().map(words).collect();
    counts.sort_unstable();
    let stops: usize = lines().map(stops).sum();
    counts.get(counts.len() / 2).is_some_and(|words| *words > 10) && stops * 2 > counts.len()
}

/// The names of parts that a note gives at the beginning of its lines: what
/// stands before a size, a metal, a feature and its size, or a colon.
pub(super) fn things(text: &str) -> HashSet<String> {
    let mut found = HashSet::new();
    if is_prose(text) {
        return found;
    }
    for raw in text.lines() {
        let (_, start) = lines::bullet(raw);
        let all = tokens(&raw[start..], start);
        // `they press into the saddle`
        for at in 3..all.len() {
            let word = |back: usize| all[at - back].word().unwrap_or_default();
            let ends = all.get(at + 1).is_none_or(|next| next.word().is_none());
            if matches!(word(3), "press" | "presses" | "pressed")
                && matches!(word(2), "in" | "into")
                && word(1) == "the"
                && lexicon::is_noun(word(0))
                && ends
            {
                found.insert(lexicon::stem(word(0)));
            }
        }
        let plain = |token: &Token| {
            token.word().is_some_and(|word| {
                word.len() > 2
                    && !lexicon::is_small(word)
                    && !lexicon::is_pronoun(word)
                    && !talk::amends(word)
                    && !lexicon::says_measured(word)
                    && !lexicon::leads_to_mate(word)
                    && !talk::asks(word)
                    && !is_material(word)
                    && feature(word).is_none()
                    && lexicon::fit(&[word]).is_none()
            })
        };
        // `trunnions (2): gunmetal`: a part, whatever its name is elsewhere.
        let of_stuff = |at: usize| {
            let next = all.get(at + 1..).unwrap_or_default();
            let signs = next
                .iter()
                .take_while(|token| {
                    matches!(token.kind, Kind::Sign(':' | ',' | '-') | Kind::Count(_))
                })
                .count();
            signs > 0
                && next.get(signs).and_then(Token::word).is_some_and(is_material)
                && all[at].word().is_some_and(|word| word.len() > 2 && feature(word).is_some())
        };
        let end = all
            .iter()
            .enumerate()
            .take_while(|(at, token)| plain(token) || start == 0 && of_stuff(*at))
            .count();
        let Some(last) = end.checked_sub(1).and_then(|last| all[last].word()) else { continue };
        let is_size =
            |token: &Token| matches!(token.kind, Kind::Num(_) | Kind::Dims(_) | Kind::Thread(_));
        let next = all.get(end);
        let at_margin = !raw.starts_with([' ', '\t', '-', '*']);
        let named = next.is_some_and(|token| {
            token.is_sign(':')
                || matches!(token.kind, Kind::Count(_))
                || at_margin
                    && (is_size(token)
                        || matches!(token.kind, Kind::Sign(',' | '(' | '-'))
                        || token.word().is_some_and(|word| {
                            is_material(word) || lexicon::fit(&[word]).is_some()
                        })
                        || token.word().and_then(feature).is_some()
                            && all.get(end + 1).is_some_and(is_size))
        });
        let has_size = all.iter().any(is_size);
        let is_head = all[0].word().is_some_and(lexicon::heads_readings);
        if !is_head && end < 4 && named && has_size && !lexicon::is_adjective(last) {
            found.insert(lexicon::stem(last));
        }
    }
    found
}

/// Does a line begin as a question does?
pub(super) fn asks_first(text: &str) -> bool {
    ["what", "which", "how"].iter().any(|word| text.to_lowercase().starts_with(word))
}
