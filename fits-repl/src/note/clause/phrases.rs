//! Phrases that name a feature or say one thing.

use fits_core::job::whole::SizeKind;

use super::items::Item;
use crate::note::{
    Line,
    lexicon::{self, feature, inwardness, leads_to_mate, says_measured, stem},
    names::is_instance,
    token::{Kind, Token},
    told::Told,
};

/// One of several alike, by its mark alone.
pub(super) fn instance(told: &Told, word: &str, line: &Line) -> Option<Item> {
    let of_part = |at: &usize| Some(told.job.features[*at].part) == line.subject;
    let last = &told.job.features[line.feature.or(told.last.filter(of_part))?];
    let head: Vec<&str> = last
        .name
        .split_whitespace()
        .filter(|word| !is_instance(&stem(&word.to_lowercase())))
        .collect();
    let name = format!("{} {}", head.join(" "), word.to_uppercase());
    Some(Item::Feature { name, side: last.side, part: Some(last.part), mate: None })
}

/// Phrases that say one thing.
pub(super) fn phrase(words: &[&str]) -> Option<(Item, usize)> {
    Some(match words {
        ["in", "place", ..] | ["after", "pressing", ..] | ["when", "pressed", ..] => {
            (Item::InPlace, 2)
        }
        ["all", "round" | "around", ..] | ["per" | "each", "side", ..] => (Item::AllRound, 2),
        ["installed" | "fitted" | "pressed", ..] => (Item::InPlace, 1),
        ["instead", "of", ..] | ["rather", "than", ..] => (Item::Not, 2),
        ["not", ..] => (Item::Not, 1),
        ["stock", ..] => (Item::Stock, 1),
        // `sq for handle`, not `key 3/16 sq`.
        ["sq", "for" | "on", ..] => {
            let name = "square".to_owned();
            (Item::Feature { name, side: SizeKind::Other, part: None, mate: None }, 1)
        }
        // `one flat, 3/8 wide`, not `a flat bar`.
        ["one" | "a" | "two", flat @ ("flat" | "flats"), rest @ ..]
            if !rest.first().is_some_and(|next| lexicon::is_stock(next)) =>
        {
            let name = (*flat).to_owned();
            (Item::Feature { name, side: SizeKind::Other, part: None, mate: None }, 2)
        }
        ["flat" | "plate" | "sheet" | "angle", ..] => (Item::Loose(words[0].to_owned()), 1),
        ["tops" | "max" | "maximum", ..] | ["at", "most", ..] => (Item::Most, 1),
        ["old", "part" | "one", ..] => (Item::Old, 2),
        ["as", "bought" | "is" | "found", ..] => (Item::Loose("as".into()), 2),
        ["each" | "both" | "either", "end" | "ends", ..] => (Item::Loose(String::new()), 2),
        ["end", "play" | "float" | "play/float" | "shake", ..]
        | ["axial", "play" | "float", ..]
        | ["side", "play", ..] => (length(&words[..2]), 2),
        ["endplay" | "endfloat" | "end-play" | "end-float" | "float", ..] => {
            (length(&words[..1]), 1)
        }
        ["over", "all", ..] => (length(&["overall"]), 2),
        // `pin, 1-1/8 under head`
        ["under", "head", ..] | ["under", "the", "head", ..] => {
            (length(&["length under head"]), if words[1] == "the" { 3 } else { 2 })
        }
        ["key", "way", ..] => (
            Item::Feature { name: "keyway".into(), side: SizeKind::Other, part: None, mate: None },
            2,
        ),
        ["cross" | "x-hole" | "cross-hole", "hole", ..] => (
            Item::Feature {
                name: "cross hole".into(),
                side: SizeKind::Hole,
                part: None,
                mate: None,
            },
            2,
        ),
        ["x-hole" | "cross-hole" | "crosshole", ..] => (
            Item::Feature { name: words[0].into(), side: SizeKind::Hole, part: None, mate: None },
            1,
        ),
        _ => return None,
    })
}

/// `gear seat` is the shaft's, `gear bore` the gear's.
pub(super) fn is_modifier(
    told: &Told,
    line: &Line,
    part: Option<usize>,
    rest: &[Token],
    taken: usize,
    name: &str,
    side: SizeKind,
) -> bool {
    let head = stem(name.split_whitespace().next().unwrap_or_default());
    if matches!(head.as_str(), "id" | "od") || matches!(name, "bored" | "turned") {
        return false;
    }
    // `P bore .7502` of a part that has a bore.
    if line.reads && part.is_some_and(|part| told.feature_called(part, name, Some(side)).is_some())
    {
        return false;
    }
    let inner =
        |words: &[Token]| words.iter().rev().find_map(|token| token.word().and_then(inwardness));
    let own = part.map_or_else(|| inner(&rest[..taken]).unwrap_or(0), |part| told.inwardness(part));
    if head == "seat" || head == "end" && line.subject.is_some() {
        return line.subject != part || part.is_none();
    }
    let Some(subject) = line.subject else {
        return part.is_none() && side == SizeKind::Hole && own == 3;
    };
    if Some(subject) == part {
        return false;
    }
    // A pin's hole is the hole that it goes in.
    let last = rest[..taken].last().and_then(Token::word).map(stem).unwrap_or_default();
    if side == SizeKind::Hole
        && matches!(last.as_str(), "pin" | "dowel" | "screw" | "bolt" | "key" | "rivet" | "stud")
    {
        return true;
    }
    // A cover with a register is still what a bush goes in, by its name.
    let by_name = told.names.parts[subject].iter().rev().find_map(|word| inwardness(word));
    let subject = told.inwardness(subject);
    match side {
        SizeKind::Hole => own > by_name.map_or(subject, |by_name| by_name.min(subject)),
        SizeKind::Shaft => own < subject,
        // `arm slots` under the ring that has them.
        SizeKind::Other => part.is_some() && !line.reads,
        _ => false,
    }
}

pub(super) fn length(words: &[&str]) -> Item {
    Item::Feature { name: words.join(" "), side: SizeKind::Length, part: None, mate: None }
}

pub(in crate::note) fn text_of(token: &Token) -> String {
    match &token.kind {
        Kind::Word(word) => word.clone(),
        Kind::Code(word) => word.to_uppercase(),
        Kind::Thread(name) => name.clone(),
        Kind::Num(num) => num.over.to_string(),
        _ => String::new(),
    }
}

/// `face to face`, `shldr-shldr`, `between shoulders`.
pub(super) fn length_between(rest: &[Token]) -> Option<(String, SizeKind, usize)> {
    let word = rest.first()?.word()?;
    if let Some((one, other)) = word.split_once('-')
        && stem(one) == stem(other)
        && one.len() > 2
    {
        return Some((word.to_owned(), SizeKind::Length, 1));
    }
    if word == "between" {
        let next = rest.get(1)?.word()?;
        let more = rest
            .get(2)
            .and_then(Token::word)
            .filter(|word| feature(word).is_some() || stem(word) == "flange" || *word == "faces");
        return Some(match more {
            Some(more) => (format!("between {next} {more}"), SizeKind::Length, 3),
            None => (format!("between {next}"), SizeKind::Length, 2),
        });
    }
    (1..=2).find_map(|before| {
        let [to, ..] = rest.get(before..)? else { return None };
        let last = rest.get(before - 1)?.word()?;
        let after = rest.get(before + 1)?.word()?;
        let is_pair = matches!(to.word()?, "to" | "-") && stem(last) == stem(after);
        is_pair.then(|| {
            let name: Vec<String> = rest[..before + 2].iter().map(text_of).collect();
            (name.join(" "), SizeKind::Length, before + 2)
        })
    })
}

/// `sq hole 3/8`, `boss keyway`: neither is round.
fn is_not_round(first: &Token, second: &Token) -> bool {
    let (Some(first), Some(second)) = (first.word(), second.word()) else { return false };
    let is_flat = |word: &str| {
        matches!(stem(word).as_str(), "keyway" | "keyseat" | "kway" | "slot" | "groove")
    };
    let is_square = matches!(stem(first).as_str(), "square" | "hex");
    is_square && feature(second) == Some(SizeKind::Hole)
        || feature(first).is_some_and(|side| side.surface().is_some()) && is_flat(second)
}

/// Does the word at a place tell one feature from others alike, as `L` in `journal L`?
fn marks_one(rest: &[Token], at: usize, side: SizeKind) -> bool {
    let Some(Token { kind: Kind::Word(word), .. }) = rest.get(at) else { return false };
    let text = word.to_lowercase();
    // `hole left at 10.2`: as it was.
    let stays = text == "left" && rest.get(at + 1).and_then(Token::word) == Some("at");
    is_instance(&stem(&text))
        && !stays
        && text != "c"
        && (side != SizeKind::Length || text.len() == 1)
}

/// A feature's own word and what tells it from others: how many tokens.
pub(super) fn feature_phrase(rest: &[Token]) -> Option<(String, SizeKind, usize)> {
    if let Some(found) = length_between(rest) {
        return Some(found);
    }
    let (side, skip) = match rest {
        [first, second, ..]
            if first.word().is_some_and(|word| {
                matches!(word, "boss" | "bolt" | "cross" | "taper" | "blind" | "through")
            }) && second.word().and_then(feature) == Some(SizeKind::Hole) =>
        {
            (SizeKind::Hole, 2)
        }
        // `seat bore`, `pivot hole`: what the last word says.
        [first, second, ..]
            if first.word().and_then(feature) == Some(SizeKind::Shaft)
                && !first.word().is_some_and(|word| {
                    matches!(stem(word).as_str(), "dia" | "od" | "turned" | "body" | "boss")
                })
                && second.word().is_some_and(|word| {
                    matches!(
                        stem(word).as_str(),
                        "bore" | "hole" | "recess" | "counterbore" | "pocket"
                    ) && word != "bored"
                }) =>
        {
            (SizeKind::Hole, 2)
        }
        [first, second, ..] if is_not_round(first, second) => (SizeKind::Other, 2),
        // Of teeth: nothing goes in or on it.
        [first, second, ..]
            if first.word() == Some("pitch")
                && second.word().is_some_and(|word| stem(word) == "dia") =>
        {
            (SizeKind::Other, 2)
        }
        // Those of a connecting rod.
        [first, second, ..]
            if first.word().is_some_and(|word| matches!(word, "big" | "small" | "little"))
                && second.word() == Some("end") =>
        {
            (SizeKind::Hole, 2)
        }
        [first, ..] => (first.word().and_then(feature)?, 1),
        [] => return None,
    };
    let word = rest[0].word()?;
    // `shoulder screw` is a part.
    if matches!(
        stem(word).as_str(),
        "shoulder" | "threaded" | "body" | "boss" | "square" | "hex" | "flat"
    ) && rest
        .get(skip)
        .and_then(Token::word)
        .is_some_and(|next| inwardness(next).is_some() || matches!(next, "bar" | "stock" | "tube"))
        && skip == 1
    {
        return None;
    }
    // `pawl pivots on`: what it does.
    if lexicon::fit(&[word]).is_some()
        && rest.get(1).and_then(Token::word).is_some_and(leads_to_mate)
    {
        return None;
    }
    let mut name: Vec<String> = rest[..skip].iter().map(text_of).collect();
    let mut taken = skip;
    while let Some(next) = rest.get(taken) {
        let text = text_of(next).to_lowercase();
        let is_mark = marks_one(rest, taken, side);
        let goes_on = matches!(next.kind, Kind::Word(_))
            && taken < skip + 2
            && matches!(side, SizeKind::Shaft | SizeKind::Hole | SizeKind::Other)
            && (rest.get(taken + 1).and_then(Token::word) == Some("side")
                || !lexicon::is_small(&text) && lexicon::fit(&[&text]).is_none())
            && !lexicon::is_material(&text)
            && !says_measured(&text)
            && !leads_to_mate(&text)
            && text.len() > 2
            && !matches!(
                text.as_str(),
                "same"
                    | "bought"
                    | "done"
                    | "less"
                    | "minus"
                    | "max"
                    | "min"
                    | "tops"
                    | "mics"
                    | "should"
            )
            && (matches!(text.as_str(), "side" | "end")
                || rest
                    .get(taken + 1)
                    .and_then(Token::word)
                    .is_some_and(|word| matches!(word, "side" | "end")));
        if !(is_mark || goes_on) {
            break;
        }
        name.push(text_of(next));
        taken += 1;
    }
    Some((name.join(" "), side, taken))
}
