//! Numbers in words: `three hook bores`, `half inch`.

use fits_core::{job::whole::SizeKind, size::Unit};

use super::{
    lexicon::{feature, inwardness, is_small, leads_to_mate},
    numbers::is_series,
    token::{Kind, Num, Token},
};
use crate::sentence::spelled::number;

/// Reads the numbers that are written as words: how many of a thing, or a size.
pub(super) fn spoken(found: &mut Vec<Token>) {
    let mut at = 0;
    while at < found.len() {
        if let Some(many) = found[at].word().and_then(number).filter(|many| (2..=24).contains(many))
            && counts(&found[at + 1..])
        {
            found[at].kind = Kind::Count(many);
        }
        part_of_an_inch(found, at);
        at += 1;
    }
}

/// Do several things, or a thread, follow?
fn counts(behind: &[Token]) -> bool {
    if matches!(behind.first().map(|next| &next.kind), Some(Kind::Thread(_))) {
        return true;
    }
    let mut words = behind
        .iter()
        .take(4)
        .map_while(Token::word)
        .take_while(|word| !is_small(word) && !leads_to_mate(word));
    words.any(|word| {
        word.ends_with('s')
            && (inwardness(word).is_some()
                || feature(word).is_some_and(|side| side != SizeKind::Length))
    })
}

/// `half inch bore`, `a quarter inch`.
fn part_of_an_inch(found: &mut Vec<Token>, at: usize) {
    let under = match found[at].word() {
        Some("half") => 2,
        Some("quarter") => 4,
        _ => return,
    };
    let is_inch =
        found.get(at + 1).and_then(Token::word).is_some_and(|word| matches!(word, "inch" | "in"));
    // `one and a half inch`, `three quarter inch`: more than this.
    let more = at > 0
        && (found[at - 1]
            .word()
            .is_some_and(|word| matches!(word, "a" | "an" | "and") || number(word).is_some())
            || matches!(found[at - 1].kind, Kind::Num(_) | Kind::Count(_)));
    if !is_inch || more {
        return;
    }
    let place = found[at].at.start..found[at + 1].at.end;
    // `half inch Whit`
    if let Some(last) = found.get(at + 2)
        && let Some(series) = last.word().filter(|word| is_series(word))
    {
        let name = format!("1/{under} {}", series.to_uppercase());
        let place = place.start..last.at.end;
        found.splice(at..at + 3, [Token { kind: Kind::Thread(name), at: place }]);
        return;
    }
    let num = Num {
        over: 1,
        under,
        unit: Some(Unit::Inch),
        vulgar: true,
        leading_point: false,
        places: 0,
        at: place.clone(),
    };
    found.splice(at..at + 2, [Token { kind: Kind::Num(num), at: place }]);
}
